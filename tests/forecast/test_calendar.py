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
