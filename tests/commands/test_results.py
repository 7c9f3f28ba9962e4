"""Files that results are written to: an earlier result may be replaced, and never what the run reads."""

from __future__ import annotations

import os
from pathlib import Path

import pytest

from tests.commands.conftest import Run

PLAN = "use \"std.txt\"\nwall west { faces W;  length 30';  height 9' }\n"
STANDARD = 'use "more.txt"\ntypical wall { build log round 10";  starts 20" }\n'
WRITING = [
    ("review", "a.plan", "--into"),
    ("review", ".", "--into"),
    ("review", "a.plan", "--json", "--into"),
    ("compare", "b.plan", "a.plan", "--into"),
    ("compare", "a.plan", "b.plan", "--into"),
    ("report", "a.plan", "--to"),
    ("report", "a.plan", "--pdf"),
    ("lesson", "posts-and-bases", "a.plan", "--to"),
    ("lesson", "posts-and-bases", "--exercise"),
    ("upkeep", "a.plan", "--calendar", "--into"),
    ("upkeep", "a.plan", "--csv", "--into"),
    ("trace", "a.plan", "--dot", "--into"),
    ("sequence", "a.plan", "--into"),
]


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    (tmp_path / "std.txt").write_text(STANDARD, encoding="utf-8")
    (tmp_path / "more.txt").write_text("# nothing yet\n", encoding="utf-8")
    (tmp_path / "again").symlink_to("a.plan")
    return tmp_path


@pytest.mark.parametrize("asked", WRITING, ids=" ".join)
@pytest.mark.parametrize("target", ["a.plan", "./a.plan", "again", "b.plan"])
def test_a_plan_is_never_written_over(run: Run, folder: Path, asked: tuple[str, ...], target: str) -> None:
    result = run(*asked, target, a=PLAN, b=PLAN)
    assert (3, "", PLAN, PLAN) == (
        result.status,
        result.out,
        (folder / "a.plan").read_text(encoding="utf-8"),
        (folder / "b.plan").read_text(encoding="utf-8"),
    )
    assert f"{target}" in result.err
    assert "left as it is" in result.err or "left as it was" in result.err or "was left" in result.err


@pytest.mark.parametrize("asked", [one for one in WRITING if "--exercise" not in one], ids=" ".join)
@pytest.mark.parametrize("target", ["std.txt", "more.txt"])
def test_a_file_that_the_plan_uses_is_not_written_over(
    run: Run, folder: Path, asked: tuple[str, ...], target: str
) -> None:
    before = (folder / target).read_text(encoding="utf-8")
    result = run(*asked, target, a=PLAN, b=PLAN)
    assert (3, before) == (result.status, (folder / target).read_text(encoding="utf-8"))
    told = f"speclint: {target}: is read by this run and was left as it is; name another file to write\n"
    assert result.err.endswith(told)


def test_a_rain_record_that_the_plan_names_is_not_written_over(run: Run, folder: Path) -> None:
    (folder / "rain.csv").write_text("no record", encoding="utf-8")
    plan = 'wall west { build log round 10"; starts 20" }\nsite { rain record "rain.csv" }\n'
    result = run("upkeep", "a.plan", "--csv", "--into", "rain.csv", a=plan)
    assert (3, "no record") == (result.status, (folder / "rain.csv").read_text(encoding="utf-8"))


@pytest.mark.parametrize("option", ["--rates", "--house-limits"])
def test_rates_and_limits_that_are_read_are_not_written_over(run: Run, folder: Path, option: str) -> None:
    (folder / "own").write_text("# own\n", encoding="utf-8")
    result = run("report", "a.plan", option, "own", "--to", "own", a=PLAN)
    assert (3, "# own\n") == (result.status, (folder / "own").read_text(encoding="utf-8"))


def test_a_page_of_house_rules_is_not_written_over(run: Run, folder: Path) -> None:
    (folder / "house").mkdir()
    (folder / "house" / "own.md").write_text("# own\n", encoding="utf-8")
    asked = ("report", "a.plan", "--house-rules", "house", "--to", os.path.join("house", "own.md"))
    assert (3, "# own\n") == (run(*asked, a=PLAN).status, (folder / "house" / "own.md").read_text(encoding="utf-8"))


@pytest.mark.parametrize("asked", [one for one in WRITING if "--exercise" not in one and "--pdf" not in one])
def test_an_earlier_result_is_replaced(run: Run, folder: Path, asked: tuple[str, ...]) -> None:
    (folder / "told.out").write_text("earlier", encoding="utf-8")
    run(*asked, "told.out", a=PLAN, b=PLAN)
    assert "earlier" not in (folder / "told.out").read_text(encoding="utf-8")


def test_an_exercise_that_is_worked_on_is_left_alone(run: Run, folder: Path) -> None:
    (folder / "mine").write_text("my work", encoding="utf-8")
    result = run("lesson", "posts-and-bases", "--exercise", "mine")
    told = "speclint: mine is already there; it was left as it is\n"
    assert (3, told, "my work") == (result.status, result.err, (folder / "mine").read_text(encoding="utf-8"))


@pytest.mark.parametrize(
    "asked",
    [
        ("lesson", "posts-and-bases", "--exercise", "x", "--to", "./x"),
        ("report", "a.plan", "--pdf", "x", "--to", "./x"),
    ],
    ids=["lesson", "report"],
)
def test_two_results_do_not_go_to_one_file(run: Run, folder: Path, asked: tuple[str, ...]) -> None:
    result = run(*asked, a=PLAN)
    assert (3, False) == (result.status, (folder / "x").exists())
    assert result.err.endswith("./x: two results would be written to it; name two files\n")
