"""`speclint tidy`: files laid out in place, shown, or asked after; whatever happens, no plan is lost."""

from __future__ import annotations

import os
import random
import shutil
import signal
import subprocess
import sys
import time
from pathlib import Path

import pytest

from speclint.commands import tidy
from speclint.commands.files import write_file
from speclint.language.layout import tidied
from tests.commands.conftest import ROOT, Run, Told

LOOSE = "wall a{height 9';length 3 m}   # why\n\n\n"
TIDY = "wall a { height 9';  length 3 m }  # why\n"
OPEN = 'wall a {\n    because "open\n'
TRIALS = 40


def test_a_plan_is_laid_out_in_place_and_nothing_is_printed(run: Run, tmp_path: Path) -> None:
    assert (Told(0, "", ""), TIDY) == (run("tidy", "a.plan", a=LOOSE), (tmp_path / "a.plan").read_text())


def test_a_plan_that_is_laid_out_is_not_written_again(run: Run, tmp_path: Path) -> None:
    (tmp_path / "a.plan").write_text(TIDY)
    before = os.stat(tmp_path / "a.plan")
    run("tidy", "a.plan")
    after = os.stat(tmp_path / "a.plan")
    assert (before.st_ino, before.st_mtime_ns) == (after.st_ino, after.st_mtime_ns)


def test_line_ends_and_the_mark_of_byte_order_stay_in_the_file(run: Run, tmp_path: Path) -> None:
    run("tidy", "a.plan", a=b"\xef\xbb\xbfwall a {\r\nfaces S }\r\n")
    assert b"\xef\xbb\xbfwall a {\r\n    faces S\r\n}\r\n" == (tmp_path / "a.plan").read_bytes()


def test_every_plan_in_a_folder_and_below_it_is_laid_out_but_for_hidden_ones(run: Run, tmp_path: Path) -> None:
    for name in ("b.plan", "deep/er/c.plan", ".hidden/d.plan", "notes.txt"):
        (tmp_path / name).parent.mkdir(parents=True, exist_ok=True)
        (tmp_path / name).write_text(LOOSE)
    run("tidy", ".", "b.plan")
    changed = {name for name in ("b.plan", "deep/er/c.plan", ".hidden/d.plan", "notes.txt")
               if (tmp_path / name).read_text() == TIDY}  # fmt: skip
    assert {"b.plan", "deep/er/c.plan"} == changed


def test_asked_it_names_the_plans_that_are_not_laid_out_and_writes_nothing(run: Run, tmp_path: Path) -> None:
    told = run("tidy", "--ask", "a.plan", "b.plan", a=LOOSE, b=TIDY)
    says = "speclint: 1 plan is not in the usual layout; without --ask it is made so\n"
    assert (Told(1, "a.plan\n", says), LOOSE) == (told, (tmp_path / "a.plan").read_text())


def test_asked_of_plans_that_are_laid_out_it_says_nothing(run: Run) -> None:
    assert Told(0, "", "") == run("tidy", "--ask", ".", a=TIDY)


def test_shown_a_plan_is_printed_and_not_written(run: Run, tmp_path: Path) -> None:
    assert (Told(0, TIDY, ""), LOOSE) == (run("tidy", "--show", "a.plan", a=LOOSE), (tmp_path / "a.plan").read_text())


def test_only_one_plan_can_be_shown(run: Run) -> None:
    assert Told(3, "", "speclint: --show prints one plan; name one\n") == run("tidy", "--show", ".", a=TIDY, b=TIDY)


def test_a_plan_from_standard_input_is_printed_to_the_byte(tmp_path: Path) -> None:
    given = "\ufeffwall ä{faces S}\r\n# 😀".encode()
    done = subprocess.run(
        [sys.executable, "-m", "speclint", "tidy", "-"],
        input=given,
        capture_output=True,
        cwd=tmp_path,
        env={**os.environ, "PYTHONPATH": str(ROOT), "PYTHONIOENCODING": "ascii"},
    )
    assert ("\ufeffwall ä { faces S }\r\n# 😀\r\n".encode(), b"", 0) == (done.stdout, done.stderr, done.returncode)


def test_standard_input_can_be_asked_after(start: Run) -> None:
    says = "speclint: 1 plan is not in the usual layout; without --ask it is made so\n"
    assert Told(1, "standard input\n", says) == start("tidy", "--ask", "-", given=LOOSE.encode())


def test_a_plan_that_is_not_whole_is_refused_with_the_places_and_left_as_it_is(run: Run, tmp_path: Path) -> None:
    told = run("tidy", "a.plan", "b.plan", a=OPEN, b=LOOSE)
    says = (
        "a.plan:1:8: the block of “wall a” opened here is not closed (add a closing } where the block ends)\n"
        'a.plan:2:13: the quotation mark opened here is not closed (close it with " on the same line)\n'
        "speclint: a.plan: cannot be laid out until it can be read whole; it is left as it is\n"
    )
    files = tuple((tmp_path / name).read_text() for name in ("a.plan", "b.plan"))
    assert (Told(2, "", says), (OPEN, TIDY)) == (told, files)


@pytest.mark.parametrize(
    ("words", "says"),
    [
        ((), "name a plan or a folder to lay out"),
        (("none.plan",), "none.plan: cannot be read: there is no such file"),
        (("empty",), "empty: the folder holds no plan (a file whose name ends in .plan)"),
    ],
)
def test_wrong_use_is_told(run: Run, tmp_path: Path, words: tuple[str, ...], says: str) -> None:
    (tmp_path / "empty").mkdir()
    told = run("tidy", *words)
    assert (True, "", f"speclint: {says}\n") == (told.status in (2, 3), told.out, told.err)


def test_a_file_changed_meanwhile_is_left_and_the_layout_is_kept_beside(
    run: Run, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    def somebody_else(text: str) -> str:
        (tmp_path / "a.plan").write_text("wall theirs\n")
        return tidied(text)

    monkeypatch.setattr(tidy, "tidied", somebody_else)
    told = run("tidy", "a.plan", a=LOOSE)
    kept = ((tmp_path / "a.plan").read_text(), (tmp_path / "a.plan.tidied").read_text())
    assert (3, True, ("wall theirs\n", TIDY)) == (told.status, "a.plan.tidied" in told.err, kept)


def test_a_layout_that_would_say_something_else_is_never_written(
    run: Run, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(tidy, "tidied", lambda text: text.replace("9'", "8'"))
    told = run("tidy", "a.plan", a=LOOSE)
    says = "speclint: a.plan: its layout would change what it says, a fault of speclint; it is left as it is\n"
    assert (Told(3, "", says), LOOSE) == (told, (tmp_path / "a.plan").read_text())


def test_a_terminal_is_not_steered_by_a_plan_that_is_shown(
    run: Run, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    monkeypatch.setattr(sys.stdout, "isatty", lambda: True)
    assert Told(0, "wall a  # \\x1b[31m\n", "") == run("tidy", "--show", "a.plan", a="wall a # \x1b[31m\r\n")


def killed_after(seconds: float, plan: Path) -> int:
    """Start the command on a plan in a process of its own and kill it after a time; its exit status."""
    command = [sys.executable, "-m", "speclint", "tidy", str(plan)]
    process = subprocess.Popen(command, env={**os.environ, "PYTHONPATH": str(ROOT)})
    try:
        return process.wait(seconds)
    except subprocess.TimeoutExpired:
        process.send_signal(signal.SIGKILL)
        return process.wait()


def test_a_plan_is_whole_whenever_the_command_is_killed(tmp_path: Path) -> None:
    old = "".join(f"wall w{at}{{faces S;length {at}';height 9'}} # why\n" for at in range(1500)).encode()
    new = tidied(old.decode()).encode()
    plan = tmp_path / "big.plan"
    write_file(plan, old)
    began = time.monotonic()
    assert 0 == killed_after(60, plan)
    whole = time.monotonic() - began
    chance = random.Random(20261126)
    ends: dict[tuple[bool, bool], int] = {}
    for _ in range(TRIALS):
        write_file(plan, old)
        was_killed = killed_after(whole * chance.uniform(0.2, 1.1), plan) == -signal.SIGKILL
        content = plan.read_bytes()
        assert content in (old, new)
        ends[was_killed, content == new] = ends.get((was_killed, content == new), 0) + 1
    assert ends.get((True, False), 0) > 0


def test_a_plan_is_whole_when_the_command_is_killed_while_it_writes(tmp_path: Path) -> None:
    old, new = LOOSE.encode(), TIDY.encode()
    for step in ("before", "after"):
        plan = tmp_path / step / "a.plan"
        plan.parent.mkdir()
        plan.write_bytes(old)
        code = (
            "import os, signal, sys\n"
            "put = os.replace\n"
            f"before = {step == 'before'}\n"
            "def stopped(*places):\n"
            "    before or put(*places)\n"
            "    os.kill(os.getpid(), signal.SIGKILL)\n"
            "os.replace = stopped\n"
            "from speclint.commands.main import main\n"
            f"main(['tidy', {str(plan)!r}])\n"
        )
        done = subprocess.run([sys.executable, "-c", code], env={**os.environ, "PYTHONPATH": str(ROOT)})
        assert (-signal.SIGKILL, old if step == "before" else new) == (done.returncode, plan.read_bytes())


def test_what_a_killed_run_left_is_no_plan_and_does_not_hinder_the_next(run: Run, tmp_path: Path) -> None:
    shutil.copy(__file__, tmp_path / ".a.plan.4711")
    assert (Told(0, "", ""), TIDY) == (run("tidy", ".", a=LOOSE), (tmp_path / "a.plan").read_text())
