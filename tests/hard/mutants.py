"""Tests tried against faults made on purpose: `python -m tests.hard.mutants --sample 150 --seed 1 [PACKAGE ...]`.

Of each package a sample of faults is drawn with equal chances. Every fault has a process of its own, in which the
module is made from the faulty text; the tests run there, those nearest first, until one fails. A fault that none of
them sees is told with its place. Nothing is written into the checkout.
"""

from __future__ import annotations

import argparse
import importlib.abc
import importlib.machinery
import importlib.util
import os
import random
import shutil
import signal
import sys
import tempfile
import time
from collections.abc import Iterator, Sequence
from math import sqrt
from pathlib import Path
from types import ModuleType
from typing import NamedTuple

from tests.hard.faults import Fault, faults_of, modules_of

ROOT = Path(__file__).resolve().parents[2]
SECONDS = 150  # that the tests of one fault may take
FAR = ("relations", "forecast", "drawing")
TESTS = {
    "science": ("published", "science", "specs", "exposure", "measures", "tables", "rules", *FAR),
    "measures": ("specs", "measures", "rules", "exposure", "rulebook", *FAR),
    "rulebook": ("rulebook", "specs", "rules", *FAR),
}
OTHERS = "no:cacheprovider", "no:xdist"


class Mutant(NamedTuple):
    """A module with a fault."""

    module: str
    text: str
    fault: Fault

    @property
    def where(self) -> str:
        """The place of the fault, and what it is."""
        return f"{self.module.replace('.', '/')}.py:{self.fault.line}: {self.fault.told(self.text)}"


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


def mutants_of(package: str, sample: int, seed: int) -> list[Mutant]:
    """A sample of the faults of a package, all with equal chances; all of them where it is 0."""
    every = [Mutant(name, text, fault) for name, text in modules_of(package) for fault in faults_of(text)]
    if not 0 < sample < len(every):
        return every
    return random.Random(f"{package} {seed}").sample(every, sample)


def outcome(package: str, mutant: Mutant | None, cache: Path) -> int:
    """In a process of its own: the exit status of the tests against a mutant, or against no fault at all."""
    child = os.fork()
    if child:
        return child
    status = 99
    try:
        os.setsid()
        signal.alarm(SECONDS)
        quiet = os.open(os.devnull, os.O_RDWR)
        for stream in (0, 1, 2):
            os.dup2(quiet, stream)
        with tempfile.TemporaryDirectory() as folder:
            kept = Path(folder) / "cache"
            # What is kept depends on files, which have not changed: only what no fault can have a part in may stay.
            keep = ("plan-grammar.bin", "rulebook.bin") if package != "rulebook" else ("plan-grammar.bin",)
            kept.mkdir()
            for name in keep:
                if (cache / name).exists():
                    shutil.copy(cache / name, kept / name)
            os.environ |= {"SPECLINT_CACHE": str(kept), "TMPDIR": folder}
            tempfile.tempdir = folder
            if mutant is not None:
                sys.meta_path.insert(0, Faulty(mutant))
            import pytest

            paths = [str(ROOT / "tests" / name) for name in TESTS[package]]
            words = ["-x", "-q", *(word for one in OTHERS for word in ("-p", one)), *paths]
            status = int(pytest.main(words))
    finally:
        os._exit(status)


def tried(package: str, mutants: Sequence[Mutant], cores: int, cache: Path) -> Iterator[tuple[Mutant, bool]]:
    """Each mutant, and whether a test saw it, in the order in which they are done."""
    waiting = list(reversed(mutants))
    running: dict[int, Mutant] = {}
    while waiting or running:
        while waiting and len(running) < cores:
            mutant = waiting.pop()
            running[outcome(package, mutant, cache)] = mutant
        child, status = os.wait()
        yield running.pop(child), os.waitstatus_to_exitcode(status) != 0


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
    parser.add_argument("packages", nargs="*", metavar="PACKAGE", help=", ".join(TESTS))
    parser.add_argument("--sample", type=int, default=150, help="faults of each package; 0 for all")
    parser.add_argument("--seed", type=int, default=1)
    parser.add_argument("--cores", type=int, default=os.cpu_count() or 1)
    parser.add_argument("--bar", type=float, default=0.85)
    stated = parser.parse_args(words)
    low = 0
    with tempfile.TemporaryDirectory() as folder:
        cache = Path(folder)
        _warm(cache)
        for package in stated.packages or TESTS:
            child = outcome(package, None, cache)
            if os.waitstatus_to_exitcode(os.waitpid(child, 0)[1]) != 0:
                print(f"{package}: the tests fail without any fault")
                return 2
            began, mutants = time.monotonic(), mutants_of(package, stated.sample, stated.seed)
            seen = 0
            for mutant, killed in tried(package, mutants, stated.cores, cache):
                seen += killed
                if not killed:
                    print(f"not seen: {mutant.where}", flush=True)
            least, most = interval(seen, len(mutants))
            print(
                f"{package}: {seen} of {len(mutants)} seen, {seen / len(mutants):.1%} ({least:.0%} to {most:.0%}); "
                f"seed {stated.seed}, {time.monotonic() - began:.0f} s",
                flush=True,
            )
            low += seen / len(mutants) < stated.bar
    return 1 if low else 0


def _warm(cache: Path) -> None:
    """Keep what no fault of science or measures can have a part in, so that it is not made for each of them."""
    import subprocess

    environment = os.environ | {"SPECLINT_CACHE": str(cache)}
    subprocess.run(
        [sys.executable, "-m", "speclint", "review", "--demo"], cwd=ROOT, env=environment, stdout=subprocess.DEVNULL
    )


if __name__ == "__main__":
    sys.exit(main())
