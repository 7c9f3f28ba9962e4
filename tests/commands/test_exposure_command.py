"""`exposure`, the courses of `measures`, the topics of `explain`, and hourly records named in a plan."""

from __future__ import annotations

import csv
import io
import json
from pathlib import Path

import pytest

from tests.commands.conftest import Run
from tests.tables.test_hourly import HEADING, a_year

HOUSE = """
site { weather "Boston, MA"; terrain suburban }
wall south { faces S; length 40'; height 9'; starts 18"; ground lawn; build log round 10"; course 9" }
wall west { faces W; length 30'; height 9'; peak 20'; starts 18"; ground lawn; build log round 10"; course 9" }
roof main { covers south, west; gables west; form gable; pitch 8:12; eaves 2'; rakes 1'; gutters none }
alternate "wide eaves" { roof main { eaves 3'; rakes 3' } }
"""
OWN = HOUSE.replace("terrain suburban", 'terrain suburban; rain record "lot.csv"')


def test_the_screen_shows_every_wall_its_courses_and_what_cover_would_do(run: Run) -> None:
    result = run("exposure", "a.plan", a=HOUSE)
    assert (0, "") == (result.status, result.err)
    for told in (
        "hourly record of Boston, MA, 2017-2019",
        "strikes  ",
        "in tenths",
        "What more cover would do",
        "8' porch",
        "hourly means",
    ):
        assert told in result.out, told
    strips = [line for line in result.out.splitlines() if "courses exposed" in line]
    assert ["south", "west"] == [strip.split()[0] for strip in strips]
    assert [12, 27] == [len(strip.split()[1]) for strip in strips]


def test_the_worst_wall_leads_with_the_cover_that_is_enough(run: Run) -> None:
    bare = HOUSE.replace("eaves 2'; rakes 1'", 'eaves 0"; rakes 0"').replace("faces S", "faces E")
    told = run("exposure", "a.plan", a=bare).out
    (worst,) = (line for line in told.splitlines() if line.startswith("Worst"))
    assert "wall south: 1.7" in worst
    assert "enough: " in worst
    assert "No wall is exposed as drawn" in run("exposure", "a.plan", a=HOUSE).out


def test_a_wall_can_be_asked_for_by_its_name_alone(run: Run) -> None:
    by_label, by_name = run("exposure", "a.plan", "wall", "west", a=HOUSE), run("exposure", "a.plan", "west", a=HOUSE)
    assert (0, by_label.out) == (by_name.status, by_name.out)


def test_one_wall_can_be_asked_for(run: Run) -> None:
    result = run("exposure", "a.plan", "wall", "west", a=HOUSE)
    assert (0, False) == (result.status, "\nsouth " in result.out)


def test_alternates_are_compared(run: Run) -> None:
    result = run("exposure", "a.plan", "--alternates", a=HOUSE)
    assert (0, True) == (result.status, "wide eaves" in result.out)
    assert "  less" in result.out
    assert "  more" not in result.out


@pytest.mark.parametrize(
    ("words", "status", "told"),
    [
        (("exposure",), 3, "name a plan, or ask for --demo"),
        (("exposure", "none.plan"), 2, "there is no such file"),
        (("exposure", "a.plan", "wall", "wset"), 3, "there is no “wall wset” in the plan"),
        (("exposure", "a.plan", "roof", "main"), 3, "roof main is no wall"),
        (("exposure", "a.plan", "--alternate", "none"), 3, "there is no alternate “none”"),
        (("measures", "a.plan", "roof", "main", "--courses"), 3, "only walls have courses"),
        (("measures", "a.plan", "--csv", "--json"), 3, "not allowed with"),
    ],
)
def test_wrong_use_is_told(run: Run, words: tuple[str, ...], status: int, told: str) -> None:
    result = run(*words, a=HOUSE)
    assert (status, True) == (result.status, told in result.err), result.err


@pytest.mark.parametrize(
    ("plan", "told"),
    [
        (HOUSE.replace("faces S; ", ""), "faces of wall south"),
        (HOUSE.replace("; terrain suburban", ""), "terrain of site"),
        (HOUSE.replace('weather "Boston, MA"; ', ""), "weather of site"),
    ],
)
def test_what_the_plan_does_not_say_is_named_in_place_of_a_number(run: Run, plan: str, told: str) -> None:
    result = run("exposure", "a.plan", a=plan)
    assert (0, True) == (result.status, told in result.out), result.out


def test_the_courses_are_shown_top_first(run: Run) -> None:
    result = run("measures", "a.plan", "--courses", a=HOUSE)
    assert 0 == result.status
    numbers = [int(line.split()[0]) for line in result.out.splitlines() if line.strip()[:1].isdigit()]
    assert [*range(12, 0, -1), *range(27, 0, -1)] == numbers


def test_the_rows_for_a_spreadsheet_hold_every_course_in_si(run: Run) -> None:
    result = run("measures", "a.plan", "wall", "west", "--csv", a=HOUSE)
    rows = list(csv.DictReader(io.StringIO(result.out)))
    shares = [row for row in rows if row["course"] and row["measure"] == "rain share"]
    assert 27 == len(shares)
    assert all(float(row["low"]) <= float(row["value"]) <= float(row["high"]) for row in shares)
    (whole,) = (row for row in rows if not row["course"] and row["measure"] == "rain share")
    areas = [float(row["value"]) for row in rows if row["measure"] == "area"]
    mean = sum(float(row["value"]) * area for row, area in zip(shares, areas, strict=True)) / sum(areas)
    assert mean == pytest.approx(float(whole["value"]), rel=1e-4)
    (reach,) = (row for row in rows if row["measure"] == "roof reach")
    assert (0.3048, "m") == (float(reach["value"]), reach["unit"])


def test_the_object_for_programs_holds_courses_and_bounds(run: Run) -> None:
    found = json.loads(run("measures", "a.plan", "wall", "south", "--json", a=HOUSE).out)
    assert 12 == len(found["courses"]["wall south"])
    share = next(one for one in found["elements"]["wall south"] if one["name"] == "rain share")
    assert share["low"] < share["value"] < share["high"]
    assert share["bounds"]


def test_a_gable_course_is_covered_whole_at_its_ends_or_not_at_all(run: Run) -> None:
    courses = json.loads(run("measures", "a.plan", "wall", "west", "--json", a=HOUSE).out)["courses"]["wall west"]
    told = [course["under the angle rule"] for course in courses]
    assert ["no", "in part", "yes"] == list(dict.fromkeys(told))  # lowest first
    under_plate = [course["top"] for course in courses if course["under the angle rule"] == "no"]
    assert 9 * 0.3048 - 0.3048 * 3**0.5 == pytest.approx(max(under_plate), abs=9 * 0.0254)


def test_the_slant_over_an_eave_wall_begins_at_the_drip_edge(run: Run) -> None:
    def covered(text: str) -> int:
        found = json.loads(run("measures", "a.plan", "wall", "south", "--json", a=text).out)["courses"]["wall south"]
        return [course["under the angle rule"] for course in found].count("yes")

    assert covered(HOUSE) < covered(HOUSE.replace("form gable;", 'form gable; edge drop 18";'))


DRY = HOUSE.replace("terrain suburban", 'terrain suburban; rain record "dry.csv"').replace(
    "ground lawn;", "ground lawn; species western redcedar; finish semitransparent stain;"
)


def test_a_record_without_rain_is_drawn_and_reported(run: Run, tmp_path: Path) -> None:
    dry = a_year(HEADING, row="{time},225,5.0,0.0,10,85")
    (tmp_path / "dry.csv").write_text(dry)
    for words in (("draw", "a.plan", "--into", "drawings"), ("report", "a.plan", "--to", "a.html")):
        result = run(*words, a=DRY)
        assert 0 == result.status, result.err


@pytest.mark.parametrize("topic", ["rain", "sun", "splash"])
def test_topics_teach_with_the_numbers_of_the_plan(run: Run, topic: str) -> None:
    alone = run("explain", topic)
    taught = run("explain", topic, "a.plan", "wall.west", a=HOUSE)
    assert (0, 0) == (alone.status, taught.status)
    assert "wall west" in taught.out
    assert "wall south" not in taught.out
    assert "Limits" in taught.out
    assert alone.out.splitlines()[1] in taught.out


def test_rain_is_taught_with_an_hour_worked_out(run: Run) -> None:
    told = run("explain", "rain", "a.plan", "wall.south", a=HOUSE).out
    (worked,) = (line for line in told.splitlines() if "2/9 x" in line)
    before, after = worked.split(" = ")
    numbers = before.replace("2/9 x", "").replace("^(8/9)", "").replace("cos(", "").replace(")", "").split(" x ")
    speed, rate, angle = (float(number) for number in numbers)
    from math import cos, radians

    assert float(after.split()[0]) == pytest.approx(2 / 9 * speed * rate ** (8 / 9) * cos(radians(angle)), rel=0.05)


def test_a_record_of_the_users_own_is_read_beside_the_plan(run: Run, tmp_path: Path) -> None:
    (tmp_path / "lot.csv").write_text(a_year(), encoding="utf-8")
    first, again = (run("exposure", "a.plan", a=OWN) for _ in range(2))
    assert (0, "") == (first.status, first.err)
    assert "hourly record of lot.csv, 2023" in first.out
    assert "one year of record" in first.out
    assert first.out == again.out


def test_a_changed_record_is_read_anew(run: Run, tmp_path: Path) -> None:
    (tmp_path / "lot.csv").write_text(a_year(), encoding="utf-8")
    one = run("exposure", "a.plan", a=OWN).out
    (tmp_path / "lot.csv").write_text(a_year(row="{time},225,9.0,{rain},10,85"), encoding="utf-8")
    assert one != run("exposure", "a.plan", a=OWN).out


def test_gaps_of_a_record_are_told(run: Run, tmp_path: Path) -> None:
    (tmp_path / "lot.csv").write_text(a_year(drop=range(100, 200)), encoding="utf-8")
    result = run("exposure", "a.plan", a=OWN)
    assert 0 == result.status
    assert "100 hours are missing" in " ".join(result.out.split())


@pytest.mark.parametrize(
    ("text", "place", "told"),
    [
        (None, "a.plan:2:", "the rain record lot.csv cannot be read: there is no such file"),
        (a_year(HEADING.replace("rain [mm]", "rain")), "lot.csv:1:", "names no unit that can be read"),
        (a_year(drop=range(4000, 8760)), "lot.csv:2:", "holds no whole year of wind and rain"),
        ("", "lot.csv:1:", "is empty"),
    ],
)
def test_a_record_that_cannot_be_used_is_told_at_its_place(
    run: Run, tmp_path: Path, text: str | None, place: str, told: str
) -> None:
    if text is not None:
        (tmp_path / "lot.csv").write_text(text, encoding="utf-8")
    for command in ("exposure", "review"):
        result = run(command, "a.plan", a=OWN)
        words = " ".join((result.err + result.out).split())
        assert (2, True, True) == (result.status, place in words, told in words), words


def test_a_record_outside_the_folder_of_the_plan_is_not_read(run: Run) -> None:
    result = run("exposure", "a.plan", a=OWN.replace("lot.csv", "../lot.csv"))
    assert (2, True) == (result.status, "outside the folder" in result.err)


@pytest.mark.parametrize(
    ("setting", "told"),
    [
        ('rain record "Bostn, MA"', "there is no hourly rain record “Bostn, MA”"),
        ("rain shares S 30%, W 30%", "the shares of “rain shares” add to 60%"),
        ("rain shares S 50%, S 50%", "“S” is named twice"),
        ("rain shares 50%", "“50%” is not a bearing"),
        ("rain shares S", "does not fit after “S”"),
        ("skyline W 95 deg", "“95 deg” is out of range"),
        ("skyline W 30%", "“30%” does not fit after “W”"),
        ("latitude 95", "out of range"),
    ],
)
def test_a_bad_word_about_the_weather_is_told_at_its_place(run: Run, setting: str, told: str) -> None:
    result = run("exposure", "a.plan", a=HOUSE.replace("terrain suburban", f"terrain suburban; {setting}"))
    assert (2, True, True) == (result.status, "a.plan:2:" in result.err, told in result.err), result.err
