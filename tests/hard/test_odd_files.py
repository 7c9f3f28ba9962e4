"""What is no plan at all in the place of one: a clear message, the right status, in a short time."""

from __future__ import annotations

import os
import subprocess
import sys
from pathlib import Path

import pytest

from tests.specs.expected import SPECS

MADE = {
    "noise": bytes(range(256)) * 20,
    "nothing but zeros": b"\0" * 4000,
    "wide letters": "wall south { height 9' }".encode("utf-16"),
    "one long word": b"a" * 2_000_001,
    "too large": b"# long\n" * 700_000,
}
COMMANDS = {
    "review": ("review", "{}"),
    "tidy": ("tidy", "{}"),
    "cure": ("cure", "{}", "--write"),
    "compare": ("compare", "good.plan", "{}"),
    "report": ("report", "{}", "--to", "out.html"),
    "draw": ("draw", "{}", "--into", "sheets"),
}


def told(folder: Path, words: list[str], seconds: float = 20) -> subprocess.CompletedProcess[str]:
    environment = {**os.environ, "PYTHONPATH": str(SPECS.parent)}
    words = [sys.executable, "-m", "speclint", *words]
    return subprocess.run(
        words, cwd=folder, env=environment, capture_output=True, text=True, timeout=seconds, stdin=subprocess.DEVNULL
    )


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    (tmp_path / "good.plan").write_text("wall south { height 9' }\n", encoding="utf-8")
    return tmp_path


@pytest.mark.parametrize("command", COMMANDS)
@pytest.mark.parametrize("name", MADE)
def test_a_file_that_is_no_plan_is_told_and_left_as_it_is(name: str, command: str, folder: Path) -> None:
    file = folder / "odd.plan"
    file.write_bytes(MADE[name])
    done = told(folder, [word.format("odd.plan") for word in COMMANDS[command]])
    assert done.returncode in (2, 3)
    assert "odd.plan" in done.stderr + done.stdout
    assert "Traceback" not in done.stderr
    assert file.read_bytes() == MADE[name]


@pytest.mark.parametrize("command", COMMANDS)
@pytest.mark.parametrize("kind", ["folder", "circle of links", "endless"])
def test_what_is_no_file_is_told(kind: str, command: str, folder: Path) -> None:
    odd = folder / "odd.plan"
    if kind == "folder":
        odd.mkdir()
    else:
        odd.symlink_to("odd.plan" if kind == "circle of links" else "/dev/zero")
    done = told(folder, [word.format("odd.plan") for word in COMMANDS[command]])
    assert done.returncode in (2, 3)
    assert "odd.plan" in done.stderr
    assert "Traceback" not in done.stderr


@pytest.mark.parametrize("words", [["review", "."], ["tidy", ".", "--ask"], ["compare", ".", "."]])
def test_a_pipe_in_a_folder_is_passed_over(words: list[str], folder: Path) -> None:
    os.mkfifo(folder / "odd.plan")
    done = told(folder, words)
    assert done.returncode in (0, 1)
    assert "odd.plan" not in done.stderr + done.stdout


def test_a_long_chain_of_used_files_is_told(folder: Path) -> None:
    for at in range(400):
        (folder / f"p{at}.plan").write_text(f'use "p{at + 1}.plan"\n', encoding="utf-8")
    done = told(folder, ["review", "p0.plan"])
    assert done.returncode == 2
    assert "Traceback" not in done.stderr
    assert "files" in done.stdout.split("CANNOT BE READ")[1].split("HOLD")[0]
