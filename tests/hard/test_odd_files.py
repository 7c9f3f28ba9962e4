"""What is no plan at all in the place of one: a clear message, the right status, in a short time."""

from __future__ import annotations

import os
import subprocess
import sys
import threading
import time
from pathlib import Path

import pytest

from speclint.commands import files
from speclint.commands.main import main
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
# a folder without plans, two that are not of a kind, and what cannot be written anew
WRONG_USE = {"folder": ("review", "tidy", "compare"), "circle of links": (), "endless": ("tidy", "cure")}
USES = {
    "../secret.plan": "lies outside the folder of the plan",
    "../../../../../../etc/passwd": "lies outside the folder of the plan",
    "/etc/passwd": "lies outside the folder of the plan",
    "out.plan": "cannot be read: it lies outside the folder of the plan",
    "pipe": "cannot be read: it is no ordinary file",
    "below": "cannot be read: it is a folder; name a file in it",
    "around.plan": "cannot be read: Too many levels of symbolic links",
    "zeros.plan": "cannot be read: it is not a text file",
    "house.plan": "uses itself: house.plan uses house.plan",
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
    assert 2 == done.returncode
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
    assert (3 if command in WRONG_USE[kind] else 2) == done.returncode
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


@pytest.mark.parametrize("command", COMMANDS)
@pytest.mark.parametrize("used", USES)
def test_a_used_file_that_is_none_is_told_at_its_place(
    used: str, command: str, folder: Path, capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch
) -> None:
    (folder / "secret.plan").write_text("wall concealed { height 9' }", encoding="utf-8")
    plans = folder / "plans"
    (plans / "below").mkdir(parents=True)
    (plans / "out.plan").symlink_to(folder / "secret.plan")
    (plans / "around.plan").symlink_to("around.plan")
    (plans / "zeros.plan").write_bytes(bytes(100))
    os.mkfifo(plans / "pipe")
    (plans / "house.plan").write_text(f'wall south {{ height 9\' }}\nuse "{used}"\n', encoding="utf-8")
    (plans / "good.plan").write_text("wall south { height 9' }\n", encoding="utf-8")
    monkeypatch.chdir(plans)
    status = main([word.format("house.plan") for word in COMMANDS[command]])
    said = "".join(capsys.readouterr())
    if command == "tidy":  # it lays out one file, whatever that uses
        assert (0, "") == (status, said)
    else:
        assert 2 == status
        assert f"house.plan:2:5{':' if command in ('cure', 'report', 'draw') else ' '}" in said
        assert f'"{used}" {USES[used]}' in " ".join(said.split())
    assert not any(word in said for word in ("concealed", "root:", "Traceback"))


@pytest.mark.parametrize("command", COMMANDS)
def test_a_pipe_that_nobody_writes_into_is_given_up(
    command: str, folder: Path, capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch
) -> None:
    os.mkfifo(folder / "odd.plan")
    monkeypatch.chdir(folder)
    monkeypatch.setattr(files, "WAIT", 0.1)
    writes = command in ("tidy", "cure")
    status = main([word.format("odd.plan") for word in COMMANDS[command]])
    why = "cannot be written anew: it is no ordinary file" if writes else "cannot be read: nobody writes into this pipe"
    assert (3 if writes else 2) == status
    assert f"speclint: odd.plan: {why}" in capsys.readouterr().err.splitlines()


@pytest.mark.parametrize("pause", [0.0, 0.2, 0.6])
def test_a_pipe_whose_writer_comes_late_or_is_slow_is_read_whole(
    pause: float, folder: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(files, "WAIT", 0.4)
    os.mkfifo(folder / "odd.plan")
    text = b"wall a { height 9' }\n" * 10_000  # more than a pipe holds

    def write() -> None:
        with (folder / "odd.plan").open("wb") as pipe:
            time.sleep(pause)
            pipe.write(text)

    writer = threading.Thread(target=write)
    writer.start()
    assert text == files.bytes_of(folder / "odd.plan")
    writer.join()
