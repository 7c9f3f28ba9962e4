"""A program that is killed while it writes loses nothing: what lies there is the old file or the whole new one."""

from __future__ import annotations

import os
import random
import shutil
import signal
import subprocess
import sys
import time
from contextlib import suppress
from pathlib import Path
from typing import Any

import pytest

from tests.specs.expected import DAY, SPECS

PLAN = """site { weather "Marquette, MI"; frost depth 60" }
typical wall { build log round 10";  species eastern white pine;  starts 6" above grade }
wall south { faces S;   length 46'; height 9'-6" }   # toward the lake
roof main { covers south; pitch 10:12; eaves 12"; form hip }
"""
WRITERS = {
    "cure": ("cure", "house.plan", "--write"),
    "alternate": ("cure", "house.plan", "--as-alternate", "better"),
    "tidy": ("tidy", "house.plan"),
    "report": ("report", "house.plan", "--to", "house.html", "--today", DAY),
    "draw": ("draw", "house.plan", "--into", "sheets"),
    "calendar": ("upkeep", "house.plan", "--calendar", "--into", "house.ics", "--today", DAY),
    "sarif": ("review", "house.plan", "--sarif", "--into", "house.sarif", "--today", DAY, "--afresh"),
}  # fmt: skip
STEPS = ("open", "os.rename", "os.remove", "os.mkdir", "os.chmod", "os.truncate", "shutil.move")
MOST = 60  # steps of one command that write


def files_of(folder: Path) -> dict[str, bytes]:
    """Every file below a folder by its name there."""
    return {str(path.relative_to(folder)): path.read_bytes() for path in folder.rglob("*") if path.is_file()}


def begin(folder: Path) -> dict[str, bytes]:
    """A plan, and an old file in the place of each that is written."""
    shutil.rmtree(folder, ignore_errors=True)
    (folder / "sheets").mkdir(parents=True)
    (folder / "house.plan").write_text(PLAN, encoding="utf-8")
    for name in ("house.html", "house.ics", "house.sarif", "sheets/roof-plan.svg"):
        (folder / name).write_text(f"the old {name}", encoding="utf-8")
    return files_of(folder)


def killed_at(folder: Path, words: tuple[str, ...], step: int) -> bool:
    """Run a command in a process that is killed just before its n-th step on files; whether it came so far."""
    child = os.fork()
    if child == 0:
        try:
            os.chdir(folder)
            quiet = os.open(os.devnull, os.O_RDWR)
            for stream in (1, 2):
                os.dup2(quiet, stream)
            taken = 0

            def watch(event: str, about: tuple[Any, ...]) -> None:
                nonlocal taken
                if event in STEPS and _writes(event, about, folder):
                    taken += 1
                    if taken == step:
                        os.kill(os.getpid(), signal.SIGKILL)

            sys.addaudithook(watch)
            from speclint.commands.main import main

            main(list(words))
        finally:
            os._exit(0)
    return os.waitstatus_to_exitcode(os.waitpid(child, 0)[1]) == -signal.SIGKILL


def _writes(event: str, about: tuple[Any, ...], folder: Path) -> bool:
    """Whether a step changes a file of the folder."""
    if not str(about[0]).startswith((str(folder), "house", "sheets", ".")):
        return False
    return event != "open" or bool(about[2] & (os.O_WRONLY | os.O_RDWR | os.O_CREAT | os.O_TRUNC))


def is_old_or_new(found: dict[str, bytes], old: dict[str, bytes], new: dict[str, bytes]) -> None:
    """Every file is as it was or as it should be; what else is left is hidden, and no plan."""
    for name, content in found.items():
        if name in old or name in new:
            assert content in (old.get(name), new.get(name)), name
        else:
            assert Path(name).name.startswith("."), name
            assert not name.endswith(".plan")
    assert old.keys() <= found.keys()


@pytest.fixture
def whole(request: pytest.FixtureRequest, tmp_path: Path) -> tuple[tuple[str, ...], dict[str, bytes]]:
    """The words of a command, and the files as it leaves them."""
    words = WRITERS[request.param]
    old = begin(tmp_path / "whole")
    assert not killed_at(tmp_path / "whole", words, 0)
    new = files_of(tmp_path / "whole")
    assert new != old
    return words, new


@pytest.mark.parametrize("whole", WRITERS, indirect=True)
def test_killed_before_any_step_that_writes(whole: tuple[tuple[str, ...], dict[str, bytes]], tmp_path: Path) -> None:
    words, new = whole
    folder = tmp_path / "killed"
    steps = 0
    for step in range(1, MOST):
        old = begin(folder)
        if not killed_at(folder, words, step):
            break
        steps = step
        is_old_or_new(files_of(folder), old, new)
    else:
        pytest.fail("the command takes more steps than are tried")
    assert steps >= 2  # it writes beside, and it puts in place
    assert new == {name: content for name, content in files_of(folder).items() if not Path(name).name.startswith(".")}


@pytest.mark.parametrize("whole", ["cure", "report", "draw"], indirect=True)
def test_killed_at_any_moment(whole: tuple[tuple[str, ...], dict[str, bytes]], tmp_path: Path) -> None:
    words, new = whole
    folder, chance = tmp_path / "killed", random.Random(7)
    environment = {**os.environ, "PYTHONPATH": str(SPECS.parent)}
    for _ in range(4):
        old = begin(folder)
        program = subprocess.Popen(
            [sys.executable, "-m", "speclint", *words],
            cwd=folder,
            env=environment,
            stdout=subprocess.DEVNULL,
            stderr=subprocess.DEVNULL,
        )
        time.sleep(chance.uniform(0.2, 0.9))
        with suppress(ProcessLookupError):
            program.kill()
        program.wait()
        is_old_or_new(files_of(folder), old, new)
