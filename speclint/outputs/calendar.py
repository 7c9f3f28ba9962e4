"""The upkeep of a home as a calendar file after RFC 5545, which any calendar program reads."""

from __future__ import annotations

import hashlib
from datetime import date

from speclint.forecast.due import due_day
from speclint.forecast.inspections import Inspection, first_day
from speclint.forecast.outlook import Outlook

LINE = 75  # octets of a line


def calendar_text(plan: str, outlook: Outlook, inspections: list[Inspection], start: date) -> str:
    """The calendar: inspections that recur, and the days on which coats are likely to fall due.

    Args:
        plan: The name of the plan.
        outlook: The upkeep of its coats.
        inspections: What is looked at every year.
        start: The day from which the years are counted.
    """
    lines = ["BEGIN:VCALENDAR", "VERSION:2.0", "PRODID:-//speclint//upkeep//EN", "CALSCALE:GREGORIAN"]
    for one in inspections:
        for month in one.months:
            lines += _inspection(plan, one, month, start)
    for part in outlook.parts:
        for at in part.due:
            day = due_day(start, at)
            words = f"Look at {part.job.part}: a coat of {part.job.what} is likely to be due"
            low, _, high = (life / 365.25 for life in part.job.lives)
            told = f"Likely; it may come {low:.1f} to {high:.1f} years after the last. Reached from: {part.job.means}."
            lines += _event(f"{plan} {part.job.part} {at:.3f}", day, words, told, start)
    return "".join(_folded(line) + "\r\n" for line in [*lines, "END:VCALENDAR"])


def _inspection(plan: str, one: Inspection, month: int, start: date) -> list[str]:
    often = f";INTERVAL={one.every}" if one.every > 1 else ""
    rounds = f";COUNT={-(-one.years // one.every)}" if one.years else ""
    rule = f"RRULE:FREQ=YEARLY{often}{rounds}"
    told = f"{one.why}. {', '.join(one.parts)}".strip(". ") + "."
    return _event(
        f"{plan} {one.what} {month}", first_day(start, month), one.what[0].upper() + one.what[1:], told, start, rule
    )


def _event(name: str, day: date, summary: str, description: str, stamp: date, rule: str = "") -> list[str]:
    own = hashlib.blake2b(name.encode("utf-8", "surrogatepass"), digest_size=10).hexdigest()
    return [
        "BEGIN:VEVENT",
        f"UID:{own}@speclint",
        f"DTSTAMP:{stamp:%Y%m%d}T000000Z",
        f"DTSTART;VALUE=DATE:{day:%Y%m%d}",
        *([rule] if rule else []),
        f"SUMMARY:{_escaped(summary)}",
        f"DESCRIPTION:{_escaped(description)}",
        "TRANSP:TRANSPARENT",
        "END:VEVENT",
    ]


def _escaped(text: str) -> str:
    """A text with the marks that the format takes for its own written out."""
    for mark in ("\\", ";", ","):
        text = text.replace(mark, f"\\{mark}")
    return "".join(one if one >= " " else " " for one in text)


def _folded(line: str) -> str:
    """A line parted so that no piece is longer than the format allows, without parting a character."""
    pieces, piece, size = [], "", 0
    for one in line:
        octets = len(one.encode("utf-8"))
        if size + octets > LINE:
            pieces.append(piece)
            piece, size = " ", 1
        piece += one
        size += octets
    return "\r\n".join([*pieces, piece])
