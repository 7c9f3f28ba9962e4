"""Many plans in one run: folders, processes, order."""

from __future__ import annotations

import json
import os
import pty
import subprocess
import sys
from concurrent.futures.process import BrokenProcessPool
from pathlib import Path

import pytest

from speclint.commands.asked import SEVERITIES, grave
from speclint.commands.many import processors
from speclint.commands.walk import plans_of
from speclint.rulebook.rule import GRADES
from tests.commands.conftest import ROOT, Run

LOW = 'wall west { build log round 10"; starts 4" }\n'
GOOD = 'wall west { build log round 10"; starts 40" }\n'
TYPICALS = (
    '# for all\nuse "b/more.plan"\ntypical wall { build log round 10"; note "wall west { }" }\n\n typical post { }\n'
)


def written(folder: Path, **files: str) -> None:
    for name, text in files.items():
        place = folder / f"{name.replace('__', '/')}.plan"
        place.parent.mkdir(parents=True, exist_ok=True)
        place.write_text(text, encoding="utf-8")


def houses(folder: Path, count: int = 12) -> None:
    written(folder, **{f"house{at:02d}": LOW.replace('4"', f'{at}"') for at in range(count)})


def heads(out: str) -> list[str]:
    return [line.removeprefix("PLAN REVIEW  ") for line in out.splitlines() if line.startswith("PLAN REVIEW")]


def test_a_folder_is_reviewed_plan_by_plan_in_the_order_of_names(run: Run, tmp_path: Path) -> None:
    written(tmp_path, b=LOW, a__z=LOW, a__y=LOW, c=GOOD)
    (tmp_path / "notes.txt").write_text("no plan")
    told = run("review", ".")
    assert (1, ["b.plan", "c.plan", "a/y.plan", "a/z.plan"]) == (told.status, heads(told.out))


def test_hidden_folders_and_files_are_left_alone(run: Run, tmp_path: Path) -> None:
    written(tmp_path, a=LOW)
    (tmp_path / ".old").mkdir()
    (tmp_path / ".old" / "b.plan").write_text(LOW)
    (tmp_path / ".c.plan").write_text(LOW)
    assert ["a.plan"] == heads(run("review", ".").out)


def test_a_file_of_typicals_that_another_plan_uses_is_reviewed_with_that_plan_only(run: Run, tmp_path: Path) -> None:
    written(
        tmp_path,
        house='use "shared.plan"\nwall west { starts 4" }',
        shared=TYPICALS,
        b__more="typical rail { }",
        lone="typical rail { }",
    )
    assert ["house.plan", "lone.plan"] == heads(run("review", ".").out)


def test_a_used_file_that_states_an_element_is_a_plan_of_its_own(run: Run, tmp_path: Path) -> None:
    written(tmp_path, house='use "shared.plan"\n', shared=f"{TYPICALS}{LOW}", b__more="")
    assert {"house.plan", "shared.plan"} <= set(heads(run("review", ".").out))


def test_a_file_that_is_named_is_reviewed_whatever_uses_it(run: Run, tmp_path: Path) -> None:
    written(tmp_path, house='use "shared.plan"\n' + LOW, shared="typical wall { }")
    assert ["shared.plan", "house.plan"] == heads(run("review", "shared.plan", ".").out)


def test_a_plan_named_twice_is_reviewed_once(run: Run, tmp_path: Path) -> None:
    written(tmp_path, a=LOW)
    assert ["a.plan"] == heads(run("review", "a.plan", ".", "a.plan").out)


def test_a_folder_without_a_plan_is_refused(run: Run, tmp_path: Path) -> None:
    (tmp_path / "empty").mkdir()
    told = run("review", "empty")
    says = "speclint: empty: there is no plan in it (a file whose name ends in .plan)\n"
    assert (3, "", says) == (told.status, told.out, told.err)


def test_a_circle_of_links_ends(tmp_path: Path) -> None:
    written(tmp_path, a=LOW)
    (tmp_path / "round").symlink_to(tmp_path, target_is_directory=True)
    assert ([f"{tmp_path.as_posix()}/a.plan"], [], True) == plans_of([str(tmp_path)])


def test_a_folder_gives_a_list_of_objects_even_for_one_plan(run: Run, tmp_path: Path) -> None:
    written(tmp_path, a=LOW)
    told = run("review", ".", "--json").out
    assert (["a.plan"], told) == (
        [one["plan"] for one in json.loads(told)],
        json.dumps(json.loads(told), indent=2, ensure_ascii=False) + "\n",
    )


@pytest.mark.parametrize("form", [(), ("--json",), ("--sarif",), ("--junit",)])
def test_the_bytes_are_the_same_whatever_the_number_of_workers(
    start: Run, tmp_path: Path, form: tuple[str, ...]
) -> None:
    houses(tmp_path)
    written(tmp_path, house05="wall a { heigth 9' }")
    told = [start("review", ".", "--afresh", "--workers", str(many), *form) for many in (1, 2, 3)]
    assert (2, [told[0]] * 3) == (told[0].status, told)
    assert 2000 < len(told[0].out)


def test_processes_may_be_spawned(tmp_path: Path) -> None:
    houses(tmp_path)
    code = (
        "import multiprocessing, sys\n"
        "from speclint.commands.main import main\n"
        "if __name__ == '__main__':\n"
        "    multiprocessing.set_start_method('spawn')\n"
        "    sys.exit(main(['review', 'plans', '--brief', '--afresh', '--workers', sys.argv[1]]))\n"
    )
    (tmp_path / "plans").mkdir()
    houses(tmp_path / "plans")
    (tmp_path / "run.py").write_text(code)
    environment = {**os.environ, "PYTHONPATH": str(ROOT)}
    one, two = (
        subprocess.run(
            [sys.executable, "run.py", workers], cwd=tmp_path, env=environment, capture_output=True, timeout=120
        )
        for workers in ("1", "2")
    )
    assert (1, b"", one.stdout) == (two.returncode, two.stderr, two.stdout)
    assert 12 == len(heads(two.stdout.decode()))


def test_a_plan_that_cannot_be_opened_keeps_no_other_from_being_reviewed(start: Run, tmp_path: Path) -> None:
    houses(tmp_path)
    (tmp_path / "house03.plan").write_bytes(b"\xff\xfe")
    told = start("review", ".", "--workers", "2", "--afresh")
    assert (2, 11, 1) == (told.status, len(heads(told.out)), told.err.count("\n"))


def test_an_alternate_that_a_plan_lacks_is_told_plan_by_plan(start: Run, tmp_path: Path) -> None:
    houses(tmp_path)
    told = start("review", ".", "--workers", "2", "--alternate", "x")
    assert (3, "", 12) == (told.status, told.out, told.err.count("there is no alternate “x”"))


@pytest.mark.parametrize("count", ["0", "-1"])
def test_nobody_at_work_is_refused(run: Run, count: str) -> None:
    told = run("review", "--demo", "--workers", count)
    assert (3, f"speclint: --workers {count}: at least one has to work\n") == (told.status, told.err)


def test_a_broken_rulebook_is_told_once(start: Run, tmp_path: Path) -> None:
    houses(tmp_path)
    (tmp_path / "rules").mkdir()
    (tmp_path / "rules" / "bad.md").write_text("no rule")
    told = start("review", ".", "--house-rules", "rules", "--workers", "2")
    assert (3, "", 1) == (told.status, told.out, told.err.count("the rulebook cannot be used"))


def test_a_process_that_is_stopped_from_outside_is_told(
    run: Run, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    def gone(*_: object, **__: object) -> None:
        raise BrokenProcessPool

    houses(tmp_path)
    monkeypatch.setattr("concurrent.futures.ProcessPoolExecutor.map", gone)
    told = run("review", ".", "--afresh", "--workers", "2")
    says = "speclint: a process that reviews was stopped from outside; `--workers 1` does without them\n"
    assert (3, "", says) == (told.status, told.out, told.err)


def at_terminal(folder: Path, *words: str) -> str:
    """What a run writes to a standard error that is a terminal."""
    top, bottom = pty.openpty()
    environment = {**os.environ, "PYTHONPATH": str(ROOT)}
    command = [sys.executable, "-m", "speclint", "review", ".", "--afresh", *words]
    subprocess.run(command, cwd=folder, env=environment, stdout=subprocess.DEVNULL, stderr=bottom, timeout=120)
    os.close(bottom)
    told = b""
    try:
        while piece := os.read(top, 65536):
            told += piece
    except OSError:  # the end, on this system
        os.close(top)
    return told.decode()


def test_plans_are_counted_on_a_terminal_and_the_count_is_taken_away(tmp_path: Path) -> None:
    houses(tmp_path)
    told = at_terminal(tmp_path, "--workers", "2")
    assert (True, True) == ("\r12 of 12 plans" in told, told.endswith(f"\r{' ' * len('12 of 12 plans')}\r"))


def test_few_plans_are_not_counted(tmp_path: Path) -> None:
    houses(tmp_path, 3)
    assert "" == at_terminal(tmp_path)


def test_nothing_is_counted_off_a_terminal(start: Run, tmp_path: Path) -> None:
    houses(tmp_path)
    assert "" == start("review", ".", "--afresh").err


def test_the_grades_of_the_command_line_are_those_of_the_rulebook() -> None:
    assert (GRADES, ("hold", "revise")) == (SEVERITIES, grave("revise"))


def test_there_is_at_least_one_processor() -> None:
    assert processors() >= 1
