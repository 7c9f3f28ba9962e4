"""Everything that a report needs, from a plan: its review, its upkeep, and the same for each alternate."""

from __future__ import annotations

import datetime
from collections.abc import Callable

from speclint.measures.facts import Sheet
from speclint.outputs.upkeep import Forecast
from speclint.pipeline import PlanText, read_home, review
from speclint.report.build import Material
from speclint.report.story import compared
from speclint.rulebook.book import Rulebook
from speclint.units import System


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
        others.append(compared(name, (sheet, told, upkeep), (other, judged, its), system))
        changed.append((name, other))
    return Material(sheet, told, upkeep, tuple(others), tuple(changed), today, system)
