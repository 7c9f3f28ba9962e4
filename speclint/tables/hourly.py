"""An hourly record of the user's own: a plain CSV file, read with every fault named and nothing filled in.

The first line names the columns, each with its unit in brackets, in any order:

    time, wind direction [deg], wind speed [m/s], rain [mm], temperature [C], humidity [%]

`time` is local standard time, one row an hour, as 2024-03-01 14:00; minutes after the hour make no difference. Wind
blows from the direction, clockwise from north; in calm air the speed is 0. An empty cell was not observed.
Temperature and humidity may be left out; without temperatures snow counts as rain.
"""

from __future__ import annotations

import csv
import io
from calendar import isleap
from collections.abc import Callable
from dataclasses import dataclass
from datetime import datetime, timedelta
from itertools import pairwise

from speclint.citation import Citation
from speclint.language.nearest import did_you_mean
from speclint.tables.rain_record import Hour, RainRecord, reduced

ENOUGH = 0.9  # ours: share of a year's hours that wind and rain must both be there for
TOO_MANY = 0.05  # ours: share of rows in one hour with another from which the file is no hourly record
TOLD = 5  # faults told one by one; the rest are counted

Unit = Callable[[float], float]
# column: (its units and how each becomes ours, least, greatest in our unit, whether it may be left out)
COLUMNS: dict[str, tuple[dict[str, Unit], float, float, bool]] = {
    "wind direction": ({"deg": lambda x: x}, 0.0, 360.0, False),
    "wind speed": (
        {"m/s": lambda x: x, "km/h": lambda x: x / 3.6, "mph": lambda x: x * 0.44704, "kn": lambda x: x * 1852 / 3600},
        0.0, 75.0, False,
    ),
    "rain": ({"mm": lambda x: x, "in": lambda x: x * 25.4}, 0.0, 250.0, False),
    "temperature": ({"C": lambda x: x, "F": lambda x: (x - 32) / 1.8}, -70.0, 60.0, True),
    "humidity": ({"%": lambda x: x}, 0.0, 105.0, True),
}  # fmt: skip


@dataclass(frozen=True, slots=True)
class Fault:
    """Something wrong in the file: where, and what."""

    line: int
    column: int
    message: str
    help: str = ""


@dataclass(frozen=True, slots=True)
class Reading:
    """What could be read of a file.

    Attributes:
        record: The record; None where the file cannot be used.
        faults: What makes the file unusable; empty where there is a record.
        notes: Gaps, rows left out and years left out, in words.
    """

    record: RainRecord | None
    faults: tuple[Fault, ...]
    notes: tuple[str, ...]


def read_hourly(text: str, name: str) -> Reading:
    """The record in a CSV text; see the module for its form. Nothing is filled in.

    Args:
        text: The file.
        name: By which messages call it.
    """
    rows = csv.reader(io.StringIO(text.removeprefix("\ufeff")))
    try:
        heading = [cell.strip() for cell in next(rows)]
    except StopIteration:
        return Reading(None, (Fault(1, 1, f"{name} is empty", "its first line names the columns"),), ())
    except csv.Error as trouble:
        return Reading(None, (Fault(1, 1, f"the first line cannot be read: {trouble}"),), ())
    if len(heading) == 1 and ";" in heading[0]:
        return Reading(None, (Fault(1, 1, "the columns are parted by semicolons", "part them by commas"),), ())
    columns, faults = _columns(heading)
    if faults:
        return Reading(None, tuple(faults), ())
    hours: dict[datetime, Hour] = {}
    bad: list[str] = []
    try:
        for row in rows:
            if any(cell.strip() for cell in row):
                _take(row, rows.line_num, columns, len(heading), hours, bad)
    except csv.Error as trouble:
        return Reading(None, (Fault(rows.line_num, 1, f"the line cannot be read: {trouble}"),), ())
    if len(bad) and sum("stands twice" in one for one in bad) > TOO_MANY * (len(hours) + len(bad)):
        help = "sum the rain, and average the wind, over whole hours"
        return Reading(None, (Fault(2, 1, f"{name} holds more than one row an hour", help),), ())
    notes = _rows_left_out(bad)
    if not hours:
        return Reading(None, (Fault(2, 1, f"{name} holds no hour that can be used", "; ".join(notes)),), tuple(notes))
    notes += _gaps(hours)
    whole = _whole_years(hours, notes)
    if not whole:
        help = "; ".join(notes) or "a year needs nine of ten hours with wind and rain"
        return Reading(None, (Fault(2, 1, f"{name} holds no whole year of wind and rain", help),), tuple(notes))
    accounts, cells, wind = reduced(hour for _, hour in sorted(hours.items()) if hour.year in whole)
    citation = Citation("", f"hourly record {name} of the user's own", "ours")
    return Reading(
        RainRecord(name, "", None, None, None, wind, accounts, cells, citation, "; ".join(notes)), (), tuple(notes)
    )


def _columns(heading: list[str]) -> tuple[dict[str, tuple[int, Unit]], list[Fault]]:
    """Where each column stands and how its cells become ours; every fault of the first line."""
    found: dict[str, tuple[int, Unit]] = {}
    faults: list[Fault] = []
    wanted = ["time", *(f"{name} [{next(iter(units))}]" for name, (units, *_) in COLUMNS.items())]
    at = 1
    for index, cell in enumerate(heading):
        name, _, unit = (part.strip(" ]") for part in cell.lstrip("\ufeff").partition("["))
        if name in found:
            faults.append(Fault(1, at, f"the column “{name}” stands twice"))
        elif name == "time" and unit:
            faults.append(Fault(1, at, f"“{cell}” is not local standard time", "write the heading as: time"))
        elif name == "time":
            found[name] = (index, float)
        elif name not in COLUMNS:
            help = did_you_mean(name, COLUMNS) or f"the columns are: {', '.join(wanted)}"
            faults.append(Fault(1, at, f"“{cell}” is not a column of an hourly record", help))
        elif unit not in COLUMNS[name][0]:
            units = " or ".join(f"{name} [{one}]" for one in COLUMNS[name][0])
            faults.append(Fault(1, at, f"“{cell}” names no unit that can be read", f"write {units}"))
        else:
            found[name] = (index, COLUMNS[name][0][unit])
        at += len(cell) + 1
    named = {cell.partition("[")[0].strip() for cell in heading}
    for name in ("time", *(name for name, column in COLUMNS.items() if not column[3])):
        if name not in named:
            faults.append(Fault(1, 1, f"the column “{name}” is missing", f"the columns are: {', '.join(wanted)}"))
    return found, faults


def _take(
    row: list[str],
    line: int,
    columns: dict[str, tuple[int, Unit]],
    width: int,
    hours: dict[datetime, Hour],
    bad: list[str],
) -> None:
    """Keep the hour of a row, or the reason why it is left out."""
    if len(row) != width:
        bad.append(f"line {line}: {len(row)} cells where the first line names {width}")
        return
    stamp = row[columns["time"][0]].strip()
    try:
        time = datetime.fromisoformat(stamp)
    except ValueError:
        bad.append(f"line {line}: “{stamp}” is not a time such as 2024-03-01 14:00")
        return
    if time.tzinfo is not None:
        bad.append(f"line {line}: {stamp} has an offset; local standard time is wanted")
        return
    time = time.replace(minute=0, second=0, microsecond=0)
    if time in hours:
        bad.append(f"line {line}: the hour {time:%Y-%m-%d %H:%M} stands twice")
        return
    values: dict[str, float | None] = {}
    for name, (_, low, high, _) in COLUMNS.items():
        cell = row[columns[name][0]].strip() if name in columns else ""
        try:
            value = columns[name][1](_number(cell)) if cell else None
        except ValueError:
            bad.append(f"line {line}: {name} “{cell}” is not a number")
            return
        if value is not None and not low <= value <= high:  # not a number is out of range, too
            bad.append(f"line {line}: {name} {cell} is out of range")
            return
        values[name] = value
    hours[time] = Hour(
        time.year,
        values["wind direction"],
        values["wind speed"],
        values["rain"],
        values["temperature"],
        values["humidity"],
    )


def _number(cell: str) -> float:
    """A cell as a plain number.

    Raises:
        ValueError: If it is none.
    """
    if "_" in cell:
        raise ValueError(cell)
    return float(cell)


def _rows_left_out(bad: list[str]) -> list[str]:
    more = [f"and {len(bad) - TOLD} more"] if len(bad) > TOLD else []
    return [f"{len(bad)} rows left out: {'; '.join([*bad[:TOLD], *more])}"] if bad else []


def _gaps(hours: dict[datetime, Hour]) -> list[str]:
    """Hours that are not there between the first and the last, and the longest run of them."""
    times = sorted(hours)
    step = timedelta(hours=1)
    runs = [(int((later - time) / step) - 1, time + step) for time, later in pairwise(times) if later - time > step]
    if not runs:
        return []
    longest, start = max(runs)
    total = sum(length for length, _ in runs)
    return [f"{total} hours are missing; the longest gap is {longest} hours from {start:%Y-%m-%d %H:%M}"]


def _hours_of(year: int) -> int:
    return 8784 if isleap(year) else 8760


def _whole_years(hours: dict[datetime, Hour], notes: list[str]) -> set[int]:
    """The calendar years with enough hours of wind and rain; the others are noted."""
    known: dict[int, int] = {}
    for hour in hours.values():
        blown = hour.speed is not None and (hour.direction is not None or hour.speed == 0)
        known[hour.year] = known.get(hour.year, 0) + (blown and hour.rain is not None)
    for year, count in sorted(known.items()):
        if count < ENOUGH * _hours_of(year):
            notes.append(f"{year} left out: wind and rain are known in {count} hours of {_hours_of(year)}")
    return {year for year, count in known.items() if count >= ENOUGH * _hours_of(year)}
