"""What changes do besides: the weather on the walls, the life of their finish, and the money of the upkeep."""

from __future__ import annotations

from dataclasses import dataclass

from speclint.forecast.jobs import jobs_of
from speclint.forecast.outlook import Outlook, outlook
from speclint.forecast.rates import Rates
from speclint.measures.facts import Sheet
from speclint.review.shifts import Shift, Watched, shifts
from speclint.units import System

# of which kind, which measure, and whether less of it is better
WATCHED: Watched = (
    (("wall",), "rain share", True),
    (("wall",), "ultraviolet share", True),
    (("wall", "deck", "rail", "post"), "finish life", False),
)


@dataclass(frozen=True, slots=True)
class Effect:
    """What changes do besides clearing findings.

    Attributes:
        shifts: Measures that change by as much as shows.
        upkeep: Money of today by which the upkeep of the years grows (below zero: shrinks); nothing where the parts
            that are told differ, so that two sums cannot be compared.
    """

    shifts: tuple[Shift, ...]
    upkeep: float | None


class Effects:
    """Compares homes with the home as drawn."""

    def __init__(self, base: Sheet, rates: Rates, years: int, system: System) -> None:
        self.base, self.rates, self.years, self.system = base, rates, years, system
        self.before, self.told = self._upkeep(base)

    def of(self, sheet: Sheet) -> Effect:
        """What a changed home does besides."""
        both = {label: label for label in self.base.facts if label in sheet.facts}
        found = shifts(self.base, sheet, both, self.system, WATCHED)
        after, told = self._upkeep(sheet)
        return Effect(found, after.spent.likely - self.before.spent.likely if told == self.told else None)

    def _upkeep(self, sheet: Sheet) -> tuple[Outlook, frozenset[str]]:
        jobs, _ = jobs_of(sheet, self.rates)
        return outlook(jobs, self.rates, self.years), frozenset(job.part for job in jobs)
