"""`draw` and `report` as commands: files written, units, alternates, and wrong use."""

from __future__ import annotations

import sys
from pathlib import Path

import pytest

from speclint.commands.draw import _plain
from speclint.outputs.letter import visible
from tests.commands.conftest import Run

PLAN = """site { weather "Marquette, MI";  terrain wooded;  rain wind SW }
typical wall { build log round 10";  starts 20";  ground lawn;  grade 5% }
wall south { faces S;  length 40';  height 9' }
wall west { faces W;  length 30';  height 9';  peak 20' }
roof main { covers south, west;  gables west;  form gable;  pitch 8:12;  run 15';  eaves 2';  rakes 2';  gutters none }
alternate "wide" { roof main { eaves 4' } }
"""


def test_every_wall_is_drawn_by_every_layer_with_plan_compass_and_alternates(run: Run, tmp_path: Path) -> None:
    result = run("draw", "a.plan", "--into", "out", "--today", "2026-11-25", a=PLAN)
    assert (0, "") == (result.status, result.err)
    wanted = {
        f"elevation-{wall}-{layer}.svg" for wall in ("south", "west") for layer in ("rain", "sun", "finish", "decay")
    }
    wanted |= {"section-south.svg", "section-west.svg", "roof-plan.svg", "compass.svg"}
    wanted |= {"alternate-wide-elevation-south-rain.svg"}
    assert wanted == {path.name for path in (tmp_path / "out").iterdir()}
    assert len(wanted) == len(result.out.splitlines())


WALLS = """typical wall {{ build log round 10";  starts 20";  ground lawn;  grade 5%;  length 40';  height 9' }}
wall {0} {{ faces S }}
wall {1} {{ faces N }}
roof main {{ covers {0}, {1};  form gable;  pitch 8:12;  run 15';  eaves 2';  gutters none }}
alternate "wide" {{ roof main {{ eaves 4' }} }}
alternate "Wide" {{ roof main {{ eaves 5' }} }}
site {{ weather "Marquette, MI";  terrain wooded;  rain wind SW }}
"""


@pytest.mark.parametrize(
    ("names", "expected"),
    [
        (("a.1", "a-1"), ["a-1", "a-1-2"]),
        (("South", "south"), ["south", "south-2"]),
        (("Straße", "strasse"), ["strasse", "strasse-2"]),
        (("юг", "南"), ["юг", "南"]),
        (("x" * 150, "x" * 151), ["x" * 80, f"{'x' * 80}-2"]),
        (("南" * 100, "南" * 101), ["南" * 26, f"{'南' * 26}-2"]),
    ],
    ids=lambda given: given[0][:5],
)
def test_every_wall_has_drawings_of_its_own_whatever_it_is_called(
    run: Run, tmp_path: Path, names: tuple[str, str], expected: list[str]
) -> None:
    result = run("draw", "a.plan", "--into", "out", "--shade", "rain", a=WALLS.format(*names))
    drawn = [path.name for path in (tmp_path / "out").iterdir()]
    assert (0, "", len(drawn)) == (result.status, result.err, len(result.out.splitlines()))
    assert sorted(f"elevation-{name}-rain.svg" for name in expected) == sorted(
        name for name in drawn if name.startswith("elevation")
    )
    assert len(drawn) == len({name.casefold() for name in drawn})
    assert sorted(
        f"alternate-{wide}-elevation-{name}-rain.svg" for name in expected for wide in ("wide", "wide-2")
    ) == sorted(name for name in drawn if name.startswith("alternate"))


def test_an_alternate_and_a_wall_that_together_read_like_others_are_told_apart(run: Run, tmp_path: Path) -> None:
    plan = WALLS.format("z", "y-elevation-z").replace('"wide"', '"x"').replace('"Wide"', '"x-elevation-y"')
    run("draw", "a.plan", "--into", "out", "--shade", "rain", a=plan)
    assert 4 == len(list((tmp_path / "out").glob("alternate-*")))


@pytest.mark.parametrize(
    ("name", "expected"),
    [
        ("../../x", "x"),
        (".hidden", "hidden"),
        ("a/b\\c:d", "a-b-c-d"),
        ("con", "con"),
        ("\u202e...", "unnamed"),
        ("a\udcffb", "a-b"),
        ("", "unnamed"),
        ("E\u0301te\u0301", "été"),
        ("के", "के"),
    ],
)
def test_no_name_leads_out_of_the_folder_or_hides_a_drawing(name: str, expected: str) -> None:
    assert expected == _plain(name)


def test_a_file_system_of_plain_letters_gets_plain_letters(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(sys, "getfilesystemencoding", lambda: "ascii")
    assert ("unnamed", "a-b") == (_plain("南"), _plain("aéb"))


@pytest.mark.parametrize(
    "folder", ["a.plan/b", "x" * 300, "nul\0", "/proc/nothere/x"], ids=["file", "long", "nul", "proc"]
)
def test_a_folder_that_cannot_be_made_is_told(run: Run, folder: str) -> None:
    result = run("draw", "a.plan", "--into", folder, a=PLAN)
    assert (3, f"speclint: {visible(folder)}: the folder cannot be made: ") == (
        result.status,
        result.err[: len(visible(folder)) + 39],
    )


def test_a_plan_by_the_name_of_a_drawing_is_not_drawn_over(run: Run, tmp_path: Path) -> None:
    (tmp_path / "compass.svg").write_text(PLAN, encoding="utf-8")
    result = run("draw", "compass.svg", "--into", ".")
    assert (3, PLAN) == (result.status, (tmp_path / "compass.svg").read_text(encoding="utf-8"))


def test_one_layer_can_be_asked_for(run: Run, tmp_path: Path) -> None:
    run("draw", "a.plan", "--into", "out", "--shade", "sun", a=PLAN)
    assert [] == [path.name for path in (tmp_path / "out").glob("elevation-*") if not path.name.endswith("-sun.svg")]


def test_drawings_are_in_the_units_of_the_reader(run: Run, tmp_path: Path) -> None:
    run("draw", "a.plan", "--into", "out", "--units", "metric", a=PLAN)
    assert "12.19 m" in (tmp_path / "out" / "elevation-south-rain.svg").read_text(encoding="utf-8")


def test_the_report_is_one_file(run: Run, tmp_path: Path) -> None:
    result = run("report", "a.plan", "--to", "house.html", "--today", "2026-11-25", a=PLAN)
    assert (0, "house.html\n", "") == (result.status, result.out, result.err)
    text = (tmp_path / "house.html").read_text(encoding="utf-8")
    assert text.startswith("<!DOCTYPE html>")
    assert "2026-11-25" in text
    assert ["house.html"] == [path.name for path in tmp_path.iterdir() if path.suffix != ".plan"]


@pytest.mark.parametrize(
    ("asked", "told"),
    [
        (("draw", "--into", "out"), "name a plan, or ask for --demo"),
        (("draw", "a.plan", "--into", "a.plan"), "is a file: name a folder"),
        (("draw", "a.plan", "--into", "out", "--alternate", "none"), "there is no alternate"),
        (("draw", "a.plan", "--into", "out", "--today", "soon"), "write the day as"),
        (("report", "a.plan"), "name a file to write with --to"),
        (("report", "a.plan", "--to", "x.html", "--years", "0"), "a forecast runs"),
        (("report", "a.plan", "--to", "x.html", "--rates", "no.rates"), "cannot be read"),
        (("report", "a.plan", "--to", "no/such/folder/x.html"), "cannot be written"),
        (("watch", "none.plan"), "cannot be read"),
        (("watch", "a.plan", "--port", "70000"), "cannot be had"),
    ],
)
def test_wrong_use_is_told_and_nothing_is_left_behind(
    run: Run, tmp_path: Path, asked: tuple[str, ...], told: str
) -> None:
    result = run(*asked, a=PLAN)
    assert (True, True) == (result.status in (2, 3), told in result.err)
    assert [] == [path.name for path in tmp_path.rglob("*") if path.is_file() and path.suffix != ".plan"]


def test_a_plan_with_nothing_to_draw_is_told(run: Run) -> None:
    result = run("draw", "a.plan", "--into", "out", a="site { }\n")
    assert (3, True) == (result.status, "there is nothing to draw yet" in result.err)


def test_a_plan_with_a_mistake_is_drawn_as_far_as_it_can_be_read(run: Run, tmp_path: Path) -> None:
    result = run("draw", "a.plan", "--into", "out", "--shade", "rain", a=PLAN + "wall x { heigth 2' }\n")
    assert (2, True) == (result.status, (tmp_path / "out" / "elevation-south-rain.svg").is_file())


def test_pdf_without_its_library_is_told(run: Run, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setitem(sys.modules, "weasyprint", None)
    result = run("report", "a.plan", "--pdf", "a.pdf", a=PLAN)
    assert (3, True) == (result.status, "install speclint[pdf]" in result.err)


def test_a_live_page_without_its_library_is_told(run: Run, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setitem(sys.modules, "uvicorn", None)
    result = run("watch", "a.plan", a=PLAN)
    assert (3, True) == (result.status, "install speclint[watch]" in result.err)
