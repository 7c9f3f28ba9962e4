"""Tests tried against faults made on purpose: `python -m tests.hard.mutants --sample 150 --seed 1 [--only science]`.

Of each package a sample of faults is drawn with equal chances. Every fault has a process of its own, in which the
module is made from the faulty text. Which tests call which function is noted once, each file of tests in a process of
its own; against a fault run the files that call its function (or import its module), the tests that call it
themselves first, until one fails. A fault that none of them sees is told with its place. A fault counts as seen too
where the tests break down, or need many times the processor time that they should; time that others take of the
machine does not count. Nothing is written into the checkout.
"""

from __future__ import annotations

import argparse
import hashlib
import importlib
import importlib.abc
import importlib.machinery
import importlib.util
import json
import os
import random
import resource
import signal
import sys
import tempfile
import time
import traceback
from collections import Counter
from collections.abc import Callable, Iterator, Sequence
from math import sqrt
from pathlib import Path
from types import FrameType, ModuleType
from typing import Any, NamedTuple

from tests.hard.faults import Fault, faults_of, modules_of, places_of

ROOT = Path(__file__).resolve().parents[2]
PACKAGES = ("science", "measures", "rulebook")
NEAR = (
    "published",
    "science",
    "exposure",
    "measures",
    "rulebook",
    "rules",
    "specs",
    "relations",
    "forecast",
    "drawing",
)
FAR = ("tables", "outputs", "laws", "review", "cures")  # slow, and seldom the only ones that see a fault
LIBRARIES = ("pytest", "hypothesis.strategies", "lark", "networkx", "jinja2", "rich.console")  # imported once for all
LOADED = ("-W", "ignore::pytest.PytestAssertRewriteWarning")  # of libraries that are there already
TIMES, SECONDS = 5, 30  # processor time that tests may take of a fault: so many times their own, and so much more
HOUR = 3600  # of the clock, at the most, for what waits without working
WHOLE = "<module>"
ENDS = {0: "", 1: "a test fails", 2: "breaks down", 3: "breaks down", 4: "breaks down"}


class Mutant(NamedTuple):
    """A module with a fault."""

    module: str
    text: str
    fault: Fault

    @property
    def where(self) -> str:
        """The place of the fault, and what it is."""
        return f"{self.module.replace('.', '/')}.py:{self.fault.line}: {self.fault.told(self.text)}"

    @property
    def called(self) -> str:
        """The function in which the fault is, as the notes of calls name it."""
        name = places_of(self.text).get(self.fault.line, WHOLE)
        return f"{self.module} {name}"


class Calls(NamedTuple):
    """What a file of tests calls.

    Attributes:
        seconds: Processor time of the file.
        always: Functions called while it is imported and its tests are gathered.
        tests: Of each test its processor time, and what it calls.
    """

    seconds: float
    always: list[str]
    tests: dict[str, tuple[float, list[str]]]

    @property
    def all(self) -> set[str]:
        """Every function that is called."""
        return {*self.always, *(name for _, names in self.tests.values() for name in names)}


class Faulty(importlib.abc.MetaPathFinder, importlib.abc.Loader):
    """Makes one module from its faulty text, and leaves all others alone."""

    def __init__(self, mutant: Mutant) -> None:
        self.mutant = mutant

    def find_spec(
        self, name: str, path: Sequence[str] | None, target: ModuleType | None = None
    ) -> importlib.machinery.ModuleSpec | None:
        """Where the faulty module comes from."""
        if name != self.mutant.module:
            return None
        file = ROOT / (name.replace(".", "/") + ".py")
        return importlib.util.spec_from_file_location(name, file, loader=self)  # type: ignore[arg-type]

    def create_module(self, spec: importlib.machinery.ModuleSpec) -> None:
        """As any module."""

    def exec_module(self, module: ModuleType) -> None:
        """Run the faulty text."""
        text = self.mutant.fault.made_in(self.mutant.text)
        exec(compile(text, str(module.__file__), "exec"), module.__dict__)

    def get_source(self, name: str) -> str:
        """The text as it should be, for messages."""
        return self.mutant.text


class Noter:
    """A companion of the test runner that notes which functions of the packages each test calls."""

    def __init__(self) -> None:
        self.folders = tuple(str(ROOT / "speclint" / package) + os.sep for package in PACKAGES)
        self.now: set[str] = set()
        self.always: list[str] = []
        self.tests: dict[str, tuple[float, list[str]]] = {}
        sys.settrace(self.trace)

    def trace(self, frame: FrameType, event: str, argument: Any) -> None:
        """Note a call."""
        file = frame.f_code.co_filename
        if file.startswith(self.folders):
            module = file[len(str(ROOT)) + 1 : -3].replace(os.sep, ".")
            self.now.add(f"{module} {frame.f_code.co_qualname}")

    def pytest_collection_finish(self) -> None:
        """All that was called so far belongs to every test."""
        self.always, self.now = sorted(self.now), set()

    def pytest_runtest_logfinish(self, nodeid: str) -> None:
        """What was called since the last test belongs to this one."""
        before = sum(seconds for seconds, _ in self.tests.values())
        self.tests[nodeid] = (time.process_time() - before, sorted(self.now))
        self.now = set()


class Runner:
    """A companion of the test runner that orders the tests, and tells the first that fails."""

    def __init__(self, first: Callable[[str], float], told: Path) -> None:
        self.first, self.told = first, told

    def pytest_collection_modifyitems(self, items: list[Any]) -> None:
        """The tests most likely to see the fault first."""
        items.sort(key=lambda item: self.first(item.nodeid))

    def pytest_runtest_logreport(self, report: Any) -> None:
        """Tell which test failed."""
        if report.failed:
            self.told.write_text(report.nodeid, encoding="utf-8")


class Outcome(NamedTuple):
    """How the tests of a mutant ended: empty words where none of them saw it."""

    mutant: Mutant
    how: str
    by: str


def mutants_of(package: str, sample: int, seed: int) -> list[Mutant]:
    """A sample of the faults of a package, all with equal chances; all of them where it is 0."""
    every = [Mutant(name, text, fault) for name, text in modules_of(package) for fault in faults_of(text)]
    if not 0 < sample < len(every):
        return every
    return random.Random(f"{package} {seed}").sample(every, sample)


def in_process(folder: Path, files: Sequence[str], companion: Callable[[], Any], limit: float, done: Any) -> int:
    """Start a process that runs files of tests until one fails.

    Args:
        folder: Its own, empty folder.
        files: Files of tests, from the root.
        companion: Makes what goes along with the test runner.
        limit: Processor time at the most. [s]
        done: Called with the companion and the exit status, at the end.

    Returns:
        Number of the process, whose exit status is that of the tests.
    """
    child = os.fork()
    if child:
        return child
    status = 99
    try:
        os.setsid()
        signal.alarm(HOUR)
        resource.setrlimit(resource.RLIMIT_CPU, (int(limit) + 1, int(limit) + 1))
        told = os.open(folder / "told", os.O_RDWR | os.O_CREAT)
        for stream in (0, 1, 2):
            os.dup2(told, stream)
        # A cache of its own, empty: what was kept by a faultless program would hide a fault.
        os.environ |= {"SPECLINT_CACHE": str(folder / "cache"), "TMPDIR": str(folder)}
        tempfile.tempdir = str(folder)
        import pytest

        beside = companion()
        words = ["-x", "-q", "-p", "no:cacheprovider", "-p", "no:xdist", *LOADED, *(str(ROOT / file) for file in files)]
        status = int(pytest.main(words, plugins=[beside]))
        sys.settrace(None)
        done(beside, status)
    except BaseException:
        status = 99
        traceback.print_exc()
    finally:
        sys.stderr.flush()
        os._exit(status)


def calls(far: bool, cores: int, before: Path | None = None) -> dict[str, Calls]:
    """What each file of tests calls.

    Args:
        far: Whether the slow tests are run too.
        cores: How many files run at a time.
        before: A file that keeps the notes for the next time; those of files that have changed are made anew.

    Raises:
        SystemExit: If a test fails without any fault.
    """
    folders = (*NEAR, *FAR) if far else NEAR
    files = [
        str(file.relative_to(ROOT)) for one in folders for file in sorted((ROOT / "tests" / one).glob("test_*.py"))
    ]
    program = b"".join(path.read_bytes() for path in sorted((ROOT / "speclint").rglob("*.py")))
    keys = {file: hashlib.sha256(program + (ROOT / file).read_bytes()).hexdigest() for file in files}
    kept = json.loads(before.read_text()) if before is not None and before.exists() else {}

    def start(file: str, folder: Path) -> int:
        def done(noter: Noter, status: int) -> None:
            (folder / "calls").write_text(json.dumps((time.process_time(), noter.always, noter.tests)))

        return in_process(folder, [file], Noter, HOUR, done)

    for file, folder, status in _by_turns([file for file in files if keys[file] not in kept], start, cores):
        if status != 0:
            raise SystemExit(f"{file} fails without any fault:\n{(folder / 'told').read_text()}")
        kept[keys[file]] = json.loads((folder / "calls").read_text())
    if before is not None:
        before.write_text(json.dumps({key: kept[key] for key in keys.values()}))
    return {file: Calls(*kept[keys[file]]) for file in files}


def tried(mutants: Sequence[Mutant], known: dict[str, Calls], cores: int) -> Iterator[Outcome]:
    """Each mutant and how its tests ended, in the order in which they are done."""

    def start(mutant: Mutant, folder: Path) -> int:
        name = mutant.called
        files = [file for file, of in known.items() if name in of.all]
        own = {test: took for file in files for test, (took, names) in known[file].tests.items() if name in names}

        def companion() -> Runner:
            sys.meta_path.insert(0, Faulty(mutant))
            return Runner(lambda test: own.get(test, HOUR), folder / "by")

        limit = TIMES * sum(known[file].seconds for file in files) + SECONDS
        return in_process(folder, files, companion, limit, lambda beside, status: None) if files else 0

    for mutant, folder, status in _by_turns(mutants, start, cores):
        by = (folder / "by").read_text() if (folder / "by").exists() else ""
        if status not in ENDS and status >= 0:
            raise SystemExit(f"{mutant.where}: the tests could not be run:\n{(folder / 'told').read_text()}")
        yield Outcome(mutant, ENDS.get(status, "takes too long"), by)


def _by_turns(things: Sequence[Any], start: Callable[[Any, Path], int], cores: int) -> Iterator[tuple[Any, Path, int]]:
    """Start a process for each thing, so many at a time; the thing, its folder and the exit status."""
    waiting = list(reversed(things))
    running: dict[int, tuple[Any, tempfile.TemporaryDirectory[str]]] = {}
    while waiting or running:
        while waiting and len(running) < cores:
            thing, place = waiting.pop(), tempfile.TemporaryDirectory(ignore_cleanup_errors=True)
            child = start(thing, Path(place.name))
            if child:
                running[child] = thing, place
            else:  # nothing runs it
                yield thing, Path(place.name), 0
        if running:
            child, status = os.wait()
            thing, place = running.pop(child)
            yield thing, Path(place.name), os.waitstatus_to_exitcode(status)
            place.cleanup()


def interval(seen: int, of: int) -> tuple[float, float]:
    """The share that was seen lies between these with 95 of 100 chances (Wilson's score interval)."""
    z = 1.959964
    share = seen / of
    middle = (share + z * z / (2 * of)) / (1 + z * z / of)
    half = z / (1 + z * z / of) * sqrt(share * (1 - share) / of + z * z / (4 * of * of))
    return middle - half, middle + half


def main(words: list[str] | None = None) -> int:
    """Try the tests; exit status 1 where a package is below the bar."""
    parser = argparse.ArgumentParser(prog="python -m tests.hard.mutants", description=__doc__)
    parser.add_argument("--only", choices=PACKAGES, action="append", help="a package; may be given again")
    parser.add_argument("--sample", type=int, default=150, help="faults of each package; 0 for all")
    parser.add_argument("--seed", type=int, default=1)
    parser.add_argument("--cores", type=int, default=os.cpu_count() or 1)
    parser.add_argument("--bar", type=float, default=0.85)
    parser.add_argument("--far", action="store_true", help=f"run the slow tests too: {', '.join(FAR)}")
    parser.add_argument("--calls", type=Path, help="file that keeps the notes of calls for the next time")
    stated = parser.parse_args(words)
    os.chdir(ROOT)
    for name in LIBRARIES:
        importlib.import_module(name)
    known = calls(stated.far, stated.cores, stated.calls)
    low = 0
    for package in stated.only or PACKAGES:
        began, mutants = time.monotonic(), mutants_of(package, stated.sample, stated.seed)
        ends: Counter[str] = Counter()
        folders: Counter[str] = Counter()
        for outcome in tried(mutants, known, stated.cores):
            ends[outcome.how] += 1
            if outcome.by:
                folders[outcome.by.split("/")[1]] += 1
            if not outcome.how:
                print(f"not seen: {outcome.mutant.where}", flush=True)
        seen = len(mutants) - ends.pop("", 0)
        least, most = interval(seen, len(mutants))
        print(
            f"{package}: {seen} of {len(mutants)} seen, {seen / len(mutants):.1%} ({least:.1%} to {most:.1%}); "
            f"seed {stated.seed}, {time.monotonic() - began:.0f} s\n"
            f"  {_counted(ends)}\n  first seen in {_counted(folders)}",
            flush=True,
        )
        low += seen / len(mutants) < stated.bar
    return 1 if low else 0


def _counted(counts: Counter[str]) -> str:
    return ", ".join(f"{name} {count}" for name, count in counts.most_common()) or "none"


if __name__ == "__main__":
    sys.exit(main())
