"""The calendar file after RFC 5545: its frame, its folding, its days, and what it asks to look at."""

from __future__ import annotations

import re
from datetime import date

import pytest

from speclint.forecast.inspections import Inspection, inspections_of
from speclint.forecast.outlook import outlook
from speclint.outputs.calendar import calendar_text
from tests.forecast.test_outlook import HOUSE, a_job, rates_of, sheet

START = date(2026, 11, 25)


def written(inspections: list[Inspection], part: str = "wall a") -> str:
    return calendar_text("a.plan", outlook([a_job(part=part)], rates_of(0.03), 30, samples=5), inspections, START)


def unfolded(text: str) -> list[str]:
    return text.replace("\r\n ", "").split("\r\n")


def test_lines_end_as_the_format_asks_and_none_is_too_long() -> None:
    text = written([Inspection(("wall ä",), "look, then; look again \\ " + "é" * 80, "because", (4, 10))])
    assert text.endswith("END:VCALENDAR\r\n")
    assert "\n" not in text.replace("\r\n", "")
    assert max(len(line.encode("utf-8")) for line in text.split("\r\n")) <= 75


def test_marks_of_the_format_are_written_out() -> None:
    (summary,) = (line for line in unfolded(written([Inspection((), "a, b; c \\ d", "e", (4,))])) if "A\\, b" in line)
    assert "SUMMARY:A\\, b\\; c \\\\ d" == summary


def test_every_event_is_whole_and_has_a_name_of_its_own() -> None:
    lines = unfolded(written(inspections_of(sheet(HOUSE))))
    events = lines.count("BEGIN:VEVENT")
    assert events == lines.count("END:VEVENT") > 5
    names = [line for line in lines if line.startswith("UID:")]
    assert events == len(set(names))
    for field in ("DTSTAMP:20261125T000000Z", "TRANSP:TRANSPARENT"):
        assert events == lines.count(field)


def test_days_are_not_before_the_start() -> None:
    days = re.findall(r"DTSTART;VALUE=DATE:(\d{8})", written(inspections_of(sheet(HOUSE))))
    assert days
    assert min(days) >= "20261125"


def test_an_inspection_for_some_years_ends() -> None:
    assert "RRULE:FREQ=YEARLY;COUNT=5" in written([Inspection((), "x", "y", (4,), 5)])


def test_coats_stand_on_their_likely_days() -> None:
    days = [line for line in unfolded(written([])) if line.startswith("DTSTART")]
    assert "DTSTART;VALUE=DATE:20311125" == days[0]
    assert 5 == len(days)


def found(what: str, more: str = "", text: str = HOUSE) -> Inspection:
    (one,) = (one for one in inspections_of(sheet(text + more)) if what in one.what)
    return one


GUTTER = "gutter south { on roof main; over south }"


@pytest.mark.parametrize(
    ("care", "months", "every"),
    [
        ("", (4, 10), 1),
        ("care { gutters 1 year }", (10,), 1),
        ("care { gutters 180 days }", (4, 10), 1),
        ("care { gutters 120 days }", (4, 8, 12), 1),
        ("care { gutters 2 years }", (10,), 2),
        ("care { gutters 20 days }", tuple(range(1, 13)), 1),
    ],
)
def test_gutters_are_cleaned_as_often_as_the_plan_says(care: str, months: tuple[int, ...], every: int) -> None:
    one = found("clear gutters", GUTTER + care)
    assert (months, every) == (one.months, one.every)
    assert one.stated in care


def test_walls_are_washed_as_often_as_the_plan_says() -> None:
    assert (4,) == found("wash from").months
    often = found("wash from", "care { wash 180 days }")
    assert ((4, 10), "180 days") == (often.months, often.stated)
    seldom = found("wash from", "care { wash 3 years }")
    assert ((4,), 3) == (seldom.months, seldom.every)


def test_what_is_done_every_third_year_recurs_so() -> None:
    assert "RRULE:FREQ=YEARLY;INTERVAL=3" in written([Inspection((), "x", "y", (4,), every=3)]).split("\r\n")
    assert "RRULE:FREQ=YEARLY;INTERVAL=3;COUNT=2" in written([Inspection((), "x", "y", (4,), 5, every=3)])


def test_panels_are_lifted_out_where_they_lift_out() -> None:
    rail = "rail r { height 3'; lifts out HOW }"
    assert "lift out panels" in found("shake the rails", rail.replace("HOW", "yes")).what
    assert "panels stay in place" in found("shake the rails", rail.replace("HOW", "no")).what
    assert "panels stay in place" in found("shake the rails", "rail r { height 3' }").what
    both = inspections_of(sheet(HOUSE + rail.replace("HOW", "yes") + "rail s { lifts out no }"))
    assert [("rail r",), ("rail s",)] == [one.parts for one in both if "shake" in one.what]


@pytest.mark.parametrize(
    ("more", "words"),
    [
        ("gutter south { on roof main; over south }", "clear gutters"),
        ("deck d { along south }", "ledgers, hangers"),
        ("rail r { height 3' }", "shake the rails"),
        ("stone s { at wall south }", "weeps are open"),
        ("planting p { along south }", "trim plants"),
    ],
)
def test_what_the_plan_holds_is_looked_at(more: str, words: str) -> None:
    assert not any(words in one.what for one in inspections_of(sheet(HOUSE)))
    assert any(words in one.what for one in inspections_of(sheet(HOUSE + more)))


def test_termites_are_looked_for_where_there_are_some() -> None:
    heavy = HOUSE.replace("terrain suburban", "terrain suburban; termites heavy")
    assert any("mud tubes" in one.what for one in inspections_of(sheet(heavy)))
    assert not any("mud tubes" in one.what for one in inspections_of(sheet(HOUSE)))


def test_south_of_the_equator_spring_is_in_october() -> None:
    south = HOUSE.replace('weather "Duluth, MN"', "latitude -14.3; longitude -170.7")
    months = {
        month for one in inspections_of(sheet(south)) if "wash from the bottom" in one.what for month in one.months
    }
    assert {10} == months
