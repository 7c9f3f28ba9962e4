"""Everything that a report needs, from a plan: its review, its upkeep, and the same for each alternate."""

from __future__ import annotations

import datetime
from collections.abc import Callable

from speclint.forecast.whole import Forecast
from speclint.measures.facts import Sheet
from speclint.pipeline import PlanText, read_home, review
from speclint.report.advice import compared
from speclint.report.build import Material
from speclint.rulebook.book import Rulebook
from speclint.units import System

LONGEST = 60  # letters of a name


def material_of(
    plan: PlanText,
    book: Rulebook,
    forecast: Callable[[Sheet], Forecast],
    today: datetime.date,
    system: System,
    alternate: str = "",
) -> Material:
    """What the report of a plan is made of.

    Args:
        plan: The plan.
        book: The rulebook.
        forecast: The upkeep of a home.
        today: The day of the report.
        system: The units of the reader.
        alternate: Name of the alternate to report; the plan as drawn where it is empty.

    Raises:
        LookupError: If the plan has no such alternate.
    """

    def of(name: str) -> tuple[Sheet, Forecast]:
        sheet, _ = read_home(plan, name)
        return sheet, forecast(sheet)

    sheet, upkeep = of(alternate)
    told = review(plan, book, today.isoformat(), system, alternate)
    others, changed = [], []
    for name in sheet.home.alternates if not alternate else ():
        other, its = of(name)
        judged = review(plan, book, today.isoformat(), system, name)
        others.append(compared(name, (sheet, told, upkeep), (other, judged, its)))
        changed.append((name, other))
    return Material(sheet, told, upkeep, tuple(others), tuple(changed), today, system, *titles_of(plan))


def titles_of(plan: PlanText) -> tuple[str, str]:
    """The name of the house and what is said of it: the first line of remarks, or the name of the file in words."""
    first = plan.text.lstrip().partition("\n")[0]
    if first.startswith("#"):
        name, _, about = first.lstrip("# ").strip().partition(":")
        if 0 < len(name) <= LONGEST:
            return name.rstrip("."), about.strip().rstrip(".")
    stem = plan.name.replace("\\", "/").rsplit("/", 1)[-1].removesuffix(".plan")
    words = stem.replace("-", " ").replace("_", " ").strip()
    return (f"{words[0].upper()}{words[1:]}" if words else plan.name), ""
