"""The table of a wall's courses: what the angle rule covers, splash, and columns that cannot be told."""

from __future__ import annotations

from math import radians, tan

import pytest

from speclint.measures.course_table import course_table
from speclint.science.splash import splash_dose
from tests.measures.sheets import sheet

FOOT = 0.3048
WALL = """
site { weather "Boston, MA"; terrain open country }
wall south { faces S; length 40'; height 9'; starts 18"; ground lawn; build log round 10"; course 9" }
roof main { covers south; form gable; pitch 8:12; eaves 2'; rakes 1'; gutters none }
"""
GABLE = WALL.replace("height 9'", "height 9'; peak 16'").replace("covers south;", "covers south; gables south;")


def rows(text: str) -> tuple[dict[str, float | str | None], ...]:
    facts = sheet(text)
    return course_table(facts, facts["wall south"]).rows


def middles(text: str) -> list[float]:
    return [(float(row["bottom"] or 0) + float(row["top"] or 0)) / 2 for row in rows(text)]


@pytest.mark.parametrize("drop", [0, 1.5])
def test_under_an_eave_the_courses_above_the_line_off_the_roof_edge_are_covered(drop: float) -> None:
    text = WALL.replace("eaves 2';", f"eaves 2'; edge drop {12 * drop:g}\";")
    line = (9 - drop) * FOOT - 2 * FOOT / tan(radians(30))
    expected = ["yes" if middle >= line else "no" for middle in middles(text)]
    assert {"yes", "no"} == set(expected)
    assert expected == [row["under the angle rule"] for row in rows(text)]


def test_under_a_rake_courses_are_covered_at_their_ends_before_they_are_covered_whole() -> None:
    covered = [row["under the angle rule"] for row in rows(GABLE)]
    assert ["no", "in part", "yes"] == list(dict.fromkeys(covered))


def test_a_roof_edge_that_hangs_lower_leaves_less_wood_in_the_rain_under_an_eave_and_no_less_under_a_rake() -> None:
    hung = [text.replace("eaves 2';", "eaves 2'; edge drop 18\";") for text in (WALL, GABLE)]
    eave, rake = (sheet(text)["wall south"]["exposed height"] for text in (WALL, GABLE))
    lower_eave, lower_rake = (sheet(text)["wall south"]["exposed height"] for text in hung)
    assert (pytest.approx(eave - 1.5 * FOOT), pytest.approx(rake)) == (lower_eave, lower_rake)


def test_without_a_roof_edge_there_are_no_rows_but_what_is_wanted() -> None:
    facts = sheet(WALL.replace("eaves 2'; ", ""))
    table = course_table(facts, facts["wall south"])
    assert () == table.rows
    assert "eaves" in {missing.setting for one in table.absent for missing in one.missing}


def test_splash_falls_off_from_the_ground_up() -> None:
    expected = [splash_dose(1.5 * FOOT + middle, 2 * FOOT, "lawn", False) for middle in middles(WALL)]
    assert pytest.approx(expected) == [row["splash dose"] for row in rows(WALL)]


@pytest.mark.parametrize("left_out", ["ground lawn; ", 'starts 18"; ', "; gutters none"])
def test_splash_is_not_told_where_one_thing_it_hangs_on_is_not_stated(left_out: str) -> None:
    text = WALL.replace(left_out, "")
    assert text != WALL
    assert {None} == {row["splash dose"] for row in rows(text)}
