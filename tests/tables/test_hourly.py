"""Hourly records of the user's own: read, with every fault named, and nothing filled in."""

from __future__ import annotations

from datetime import datetime, timedelta

import pytest

from speclint.tables.hourly import read_hourly

HEADING = "time,wind direction [deg],wind speed [m/s],rain [mm],temperature [C],humidity [%]"


def a_year(heading: str = HEADING, drop: range = range(0), row: str = "{time},225,5.0,{rain},10,85") -> str:
    """A year of hours with 1 mm of rain from the south-west every tenth hour."""
    start = datetime(2023, 1, 1)
    lines = [heading]
    for hour in range(8760):
        if hour not in drop:
            time = start + timedelta(hours=hour)
            lines.append(row.format(time=f"{time:%Y-%m-%d %H:%M}", rain=1.0 if hour % 10 == 0 else 0.0))
    return "\n".join(lines) + "\n"


def test_a_whole_year_is_reduced() -> None:
    reading = read_hourly(a_year(), "lot.csv")
    assert reading.faults == ()
    assert reading.notes == ()
    assert reading.record is not None
    assert 876.0 == pytest.approx(sum(cell.rain for cell in reading.record.cells))
    assert {225.0} == {cell.direction for cell in reading.record.cells}
    assert 876 * 5 * 2 / 9 == pytest.approx(sum(cell.driven[0] for cell in reading.record.cells))


@pytest.mark.parametrize(
    ("unit", "speed", "metres"),
    [("m/s", "10", 10.0), ("mph", "10", 4.4704), ("km/h", "36", 10.0), ("kn", "10", 5.1444)],
)
def test_units_are_those_of_the_heading(unit: str, speed: str, metres: float) -> None:
    row = "{time},225," + speed + ",{rain},10,85"
    record = read_hourly(a_year(HEADING.replace("[m/s]", f"[{unit}]"), row=row), "lot.csv").record
    assert record is not None
    assert metres == pytest.approx(record.mean_wind, rel=1e-4)


@pytest.mark.parametrize(
    ("heading", "message", "help"),
    [
        ("time,wind direction [deg],rain [mm]", "the column “wind speed” is missing", "wind speed [m/s]"),
        (HEADING.replace("rain [mm]", "rain [cm]"), "“rain [cm]” names no unit that can", "rain [mm] or rain [in]"),
        (HEADING.replace("rain [mm]", "rain"), "“rain” names no unit that can be read", "rain [mm]"),
        (HEADING.replace("rain [mm]", "rainn [mm]"), "“rainn [mm]” is not a column of an hourly record", "rain"),
        (HEADING + ",rain [mm]", "the column “rain” stands twice", ""),
        ("", "is empty", "its first line names the columns"),
    ],
)  # fmt: skip
def test_a_wrong_heading_is_refused_at_its_place(heading: str, message: str, help: str) -> None:
    reading = read_hourly(a_year(heading) if heading else "", "lot.csv")
    assert reading.record is None
    assert any(message in fault.message and help in fault.help and fault.line == 1 for fault in reading.faults)


@pytest.mark.parametrize(
    ("bad", "says"),
    [
        ("2023-01-02 00:00,225,5.0,wet,10,85", "line 26: rain “wet” is not a number"),
        ("2023-01-02 00:00,225,5.0,-1,10,85", "line 26: rain -1 is out of range"),
        ("2023-01-02 00:00,400,5.0,1,10,85", "line 26: wind direction 400 is out of range"),
        ("2023-01-02 00:00+01:00,225,5.0,1,10,85", "has an offset; local standard time is wanted"),
        ("2023-01-02 00:00,225,5.0,1_0,10,85", "line 26: rain “1_0” is not a number"),
        ("2023-01-02 00:00,225,5.0,nan,10,85", "line 26: rain nan is out of range"),
        ("2023-01-01 03:00,225,5.0,1,10,85", "line 26: the hour 2023-01-01 03:00 stands twice"),
        ("yesterday,225,5.0,1,10,85", "line 26: “yesterday” is not a time such as 2024-03-01 14:00"),
        ("2023-01-02 00:00,225", "line 26: 2 cells where the first line names 6"),
    ],
)
def test_a_bad_row_is_left_out_and_told(bad: str, says: str) -> None:
    lines = a_year().splitlines()
    lines[25] = bad
    reading = read_hourly("\n".join(lines), "lot.csv")
    assert reading.record is not None
    assert any(says in note for note in reading.notes), reading.notes
    assert any("1 hours are missing" in note for note in reading.notes)


def test_gaps_are_told_and_not_filled() -> None:
    reading = read_hourly(a_year(drop=range(1000, 1200)), "lot.csv")
    assert reading.record is not None
    assert ("200 hours are missing; the longest gap is 200 hours from 2023-02-11 16:00",) == reading.notes
    assert 856.0 == pytest.approx(sum(cell.rain for cell in reading.record.cells))


def test_half_a_year_is_no_record() -> None:
    reading = read_hourly(a_year(drop=range(4000, 8760)), "lot.csv")
    assert reading.record is None
    assert "lot.csv holds no whole year of wind and rain" == reading.faults[0].message
    assert "2023 left out: wind and rain are known in 4000 hours of 8760" in reading.faults[0].help


def test_empty_cells_were_not_observed() -> None:
    lines = a_year().splitlines()
    for at in range(1, 101):
        lines[at] = lines[at].replace(",5.0,", ",,")
    reading = read_hourly("\n".join(lines), "lot.csv")
    assert reading.record is not None
    assert 8660 == reading.record.accounts[0].hours


def test_minutes_past_the_hour_make_no_difference() -> None:
    on, past = (read_hourly(a_year().replace(":00,", f":{minutes},"), "lot.csv").record for minutes in ("00", "53"))
    assert on is not None
    assert past is not None
    assert on.cells == past.cells


def test_rows_of_ten_minutes_are_refused() -> None:
    lines = a_year().splitlines()
    tens = [lines[0]] + [line.replace(":00,", f":{ten}0,") for line in lines[1:2000] for ten in range(6)]
    reading = read_hourly("\n".join(tens), "lot.csv")
    assert reading.record is None
    assert "lot.csv holds more than one row an hour" == reading.faults[0].message


def test_semicolons_are_told() -> None:
    reading = read_hourly(a_year().replace(",", ";"), "lot.csv")
    assert "the columns are parted by semicolons" == reading.faults[0].message


def test_a_mark_of_the_byte_order_is_passed_over() -> None:
    assert read_hourly("\ufeff" + a_year(), "lot.csv").record is not None


def test_without_temperatures_it_is_not_known_what_froze() -> None:
    record = read_hourly(a_year(row="{time},225,5.0,{rain},,85"), "lot.csv").record
    assert record is not None
    assert record.accounts[0].freezing is None


def test_hours_that_drive_next_to_nothing_are_passed_over() -> None:
    record = read_hourly(a_year(row="{time},225,1e-300,1e-300,10,85"), "lot.csv").record
    assert record is not None
    assert record.cells == ()
