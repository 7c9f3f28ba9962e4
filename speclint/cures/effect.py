"""What changes do besides: the weather on the walls, the life of their finish, and the money of the upkeep."""

from __future__ import annotations

from dataclasses import dataclass

from speclint.forecast.jobs import jobs_of
from speclint.forecast.outlook import Outlook, outlook
from speclint.forecast.rates import Rates
from speclint.measures.facts import Sheet
from speclint.quantity import Quantity
from speclint.units import System

# of which kind, which measure, and whether less of it is better
WATCHED = (
    ("wall", "rain share", True),
    ("wall", "ultraviolet share", True),
    ("wall", "finish life", False),
    ("deck", "finish life", False),
    ("rail", "finish life", False),
    ("post", "finish life", False),
)


@dataclass(frozen=True, slots=True)
class Shift:
    """A measure before and after, as the reader writes it, and whether it got better."""

    element: str
    measure: str
    before: str
    after: str
    better: bool


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
        shifts = tuple(
            shift
            for kind, measure, less in WATCHED
            for element in sheet.home.of_kind(kind)
            if (shift := self._shift(sheet, element.label, measure, less)) is not None
        )
        after, told = self._upkeep(sheet)
        return Effect(shifts, after.spent.likely - self.before.spent.likely if told == self.told else None)

    def _upkeep(self, sheet: Sheet) -> tuple[Outlook, frozenset[str]]:
        jobs, _ = jobs_of(sheet, self.rates)
        return outlook(jobs, self.rates, self.years), frozenset(job.part for job in jobs)

    def _shift(self, sheet: Sheet, label: str, measure: str, less: bool) -> Shift | None:
        found = []
        for one in (self.base, sheet):
            facts = one.facts.get(label)
            quantity = one.quantity(facts, measure) if facts is not None else None
            if not isinstance(quantity, Quantity) or not isinstance(quantity.value, float | int):
                return None
            found.append(quantity)
        before, after = (quantity.shown(self.system) for quantity in found)
        if before == after:
            return None
        return Shift(label, measure, before, after, (found[1].value < found[0].value) == less)
