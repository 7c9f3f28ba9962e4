"""speclint as a program: closed pipes, plain terminals, caches that are no use."""

from __future__ import annotations

import os
import subprocess
import sys
from pathlib import Path

import pytest

from tests.commands.conftest import ROOT, Run


def test_the_module_runs_as_a_program(start: Run) -> None:
    told = start("review", "-", given=b'wall a { build log round 10"; starts 4" }')
    assert (1, "", True) == (told.status, told.err, "Wood starts too near the ground" in told.out)


@pytest.mark.parametrize(
    ("words", "status"),
    [
        (("review", "--demo"), 1),
        (("review", "--demo", "--json"), 1),
        (("review", "nope.plan", "--demo"), 2),
        (("compare", "gone.plan", "gone.plan"), 2),
        (("rulebook",), 0),
        (("measures", "--demo"), 0),
        (("--help",), 0),
    ],
)
@pytest.mark.parametrize("unbuffered", ["1", ""])
def test_a_pipe_that_closes_early_leaves_the_status_as_it_is(
    tmp_path: Path, words: tuple[str, ...], status: int, unbuffered: str
) -> None:
    environment = {**os.environ, "PYTHONPATH": str(ROOT), "PYTHONUNBUFFERED": unbuffered}
    command = [sys.executable, "-m", "speclint", *words]
    with subprocess.Popen(
        command, cwd=tmp_path, env=environment, stdout=subprocess.PIPE, stderr=subprocess.PIPE
    ) as one:
        assert one.stdout is not None
        assert one.stderr is not None
        one.stdout.close()
        told = one.stderr.read().decode()
    assert (status, False) == (one.returncode, "Traceback" in told)


def test_messages_that_nobody_reads_leave_the_status_as_it_is(tmp_path: Path) -> None:
    environment = {**os.environ, "PYTHONPATH": str(ROOT)}
    command = [sys.executable, "-m", "speclint", "review", "nope.plan"]
    with subprocess.Popen(command, cwd=tmp_path, env=environment, stderr=subprocess.PIPE) as one:
        assert one.stderr is not None
        one.stderr.close()
    assert 2 == one.returncode


@pytest.mark.parametrize(
    "words",
    [
        ("trace", "LONG", "--demo"),
        ("report", "LONG", "--to", "x.html"),
        ("compare", "LONG", "LONG"),
        ("explain", "sill-too-near-grade", "LONG"),
        ("tidy", "LONG"),
        ("begin", "LONG"),
        ("review", "LONG", "--into", "LONG"),
    ],
    ids=lambda words: words[0],
)
def test_a_name_longer_than_any_file_can_have_is_told(run: Run, words: tuple[str, ...]) -> None:
    told = run(*(word.replace("LONG", "x" * 300) for word in words))
    assert (True, True) == (told.status in (2, 3), "x" * 300 in told.err)


def test_an_output_that_is_full_is_told(start: Run, tmp_path: Path) -> None:
    with open("/dev/full", "wb") as full:
        environment = {**os.environ, "PYTHONPATH": str(ROOT)}
        done = subprocess.run(
            [sys.executable, "-m", "speclint", "review", "--demo"],
            cwd=tmp_path,
            env=environment,
            stdout=full,
            stderr=subprocess.PIPE,
        )
    told = "speclint: the result cannot be written: No space left on device\n"
    assert (3, told) == (done.returncode, done.stderr.decode())


@pytest.mark.parametrize("words", [("review", "--demo"), ("rulebook",), ("explain", "wall"), ("--help",)])
def test_a_terminal_that_knows_plain_letters_only_gets_plain_letters(start: Run, words: tuple[str, ...]) -> None:
    told = start(*words, environment={"PYTHONIOENCODING": "ascii"})
    assert (True, True, "") == (told.out.isascii(), bool(told.out), told.err)


def test_marks_of_the_trade_are_put_in_plain_letters(start: Run) -> None:
    told = start("review", "-", given=b"wall a { heigth 9' }", environment={"PYTHONIOENCODING": "ascii"})
    assert '"heigth" is not a setting of a wall' in told.out


@pytest.mark.parametrize("kind", ["under a file", "garbage", "empty files", "a folder in the place of a file"])
def test_a_cache_that_is_no_use_is_no_news(start: Run, tmp_path: Path, kind: str) -> None:
    cache = tmp_path / "cache"
    if kind == "under a file":
        cache.write_text("")
        cache = cache / "below"
    else:
        cache.mkdir()
        for name in ("rulebook.bin", "plan-grammar.bin"):
            if kind == "a folder in the place of a file":
                (cache / name).mkdir()
            else:
                (cache / name).write_bytes(b"" if kind == "empty files" else os.urandom(3000))
    given = b'wall a { build log round 10"; starts 4" }'
    told = start("review", "-", given=given, environment={"SPECLINT_CACHE": str(cache)})
    assert (1, "", True) == (told.status, told.err, "Wood starts too near the ground" in told.out)


def test_a_full_cache_gives_the_same_letter_as_an_empty_one(start: Run, tmp_path: Path) -> None:
    environment = {"SPECLINT_CACHE": str(tmp_path / "cache")}
    first = start("review", "--demo", environment=environment)
    assert (first, True) == (
        start("review", "--demo", environment=environment),
        (tmp_path / "cache" / "rulebook.bin").is_file(),
    )


def test_no_home_and_no_cache_folder_is_no_news(start: Run) -> None:
    told = start("review", "--demo", environment={"SPECLINT_CACHE": "", "XDG_CACHE_HOME": "", "HOME": "/nonexistent"})
    assert (True, "") == ("PLAN REVIEW" in told.out, told.err)


def test_a_user_without_a_home_is_no_news(run: Run, monkeypatch: pytest.MonkeyPatch) -> None:
    def nobody() -> Path:
        raise RuntimeError("Could not determine home directory.")

    monkeypatch.delenv("SPECLINT_CACHE")
    monkeypatch.delenv("XDG_CACHE_HOME", raising=False)
    monkeypatch.setattr(Path, "home", nobody)
    told = run("review", "--demo")
    assert ("", True) == (told.err, "PLAN REVIEW" in told.out)


def test_colour_is_left_out_where_nobody_sees_it(start: Run) -> None:
    assert "\x1b" not in start("review", "--demo", environment={"TERM": "xterm-256color"}).out
