"""Thirty years of upkeep: when the coats fall due, what they cost in the money of today, and how sure that is."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from random import Random

from speclint.forecast.due import due_years
from speclint.forecast.jobs import Job
from speclint.forecast.rates import Rates
from speclint.science.cost import present_value_factor

SAMPLES = 2000
SEED = 20


@dataclass(frozen=True, slots=True)
class Spread:
    """A figure with its range.

    Attributes:
        low: Eight cases of ten lie above it, or at it, up to `high`.
        likely: The middle of the cases.
        high: See `low`.
    """

    low: float
    likely: float
    high: float


@dataclass(frozen=True, slots=True)
class PartOutlook:
    """What a job comes to over the years.

    Attributes:
        job: The job.
        due: Years from the start in which a coat falls due, at the likely life. [a]
        coats: How many times it is done.
        spent: Money of today spent on it, not discounted.
        present: Its present value.
    """

    job: Job
    due: tuple[float, ...]
    coats: Spread
    spent: Spread
    present: Spread


@dataclass(frozen=True, slots=True)
class Outlook:
    """What all jobs come to.

    Attributes:
        years: Of the forecast. [a]
        parts: One for each job.
        spent: Money of today, not discounted.
        present: Present value: the life-cycle cost of the coats.
        hours: Of work. [h]
        by_year: Money of today falling due in each year at the likely lives.
        samples: Cases drawn.
    """

    years: int
    parts: tuple[PartOutlook, ...]
    spent: Spread
    present: Spread
    hours: float
    by_year: tuple[float, ...]
    samples: int


def outlook(
    jobs: list[Job],
    rates: Rates,
    years: int,
    samples: int = SAMPLES,
    seed: int = SEED,
    moved: Callable[[tuple[float, ...]], tuple[float, ...]] = tuple,
) -> Outlook:
    """The outlook of some jobs.

    Each case draws for each kind of finish one luck, which gives each part that wears it its life, between the least
    and the greatest with the likely one as its peak; and for the whole home one factor on money and hours. Parts in one
    finish share their luck because product, painter and seasons are the same. The same seed draws the same cases, for
    alternates too.

    Args:
        jobs: The jobs.
        rates: What work and goods cost.
        years: Of the forecast. [a]
        samples: Cases drawn.
        seed: Of the draws.
        moved: Moves the years in which likely coats fall due into the season for coating; money is not moved with them.
    """
    discount, unsure = rates["discount"], rates["unsure"]
    shared = Random(f"{seed} money")
    factors = [shared.triangular(1 - unsure, 1 + unsure, 1.0) for _ in range(samples)]
    whole_spent, whole_present = [0.0] * samples, [0.0] * samples
    worth = [present_value_factor(discount, float(year)) if year <= years else 0.0 for year in range(years + 1)]
    parts = []
    for job in jobs:
        own = Random(f"{seed} {job.what}")
        coats, spent, present = [], [], []
        for case in range(samples):
            low, likely, high = job.lives
            due = due_years(own.triangular(low, high, likely), years, job.first)
            cost = job.cost * factors[case]
            value = cost * sum(_worth(worth, at) for at in due)
            coats.append(float(len(due)))
            spent.append(cost * len(due))
            present.append(value)
            whole_spent[case] += spent[-1]
            whole_present[case] += value
        due = moved(due_years(job.lives[1], years, job.first))
        parts.append(PartOutlook(job, due, _spread(coats), _spread(spent), _spread(present)))
    by_year = [0.0] * years
    for part in parts:
        for at in part.due:
            by_year[min(years - 1, int(at))] += part.job.cost
    hours = sum(part.job.hours * len(part.due) for part in parts)
    return Outlook(years, tuple(parts), _spread(whole_spent), _spread(whole_present), hours, tuple(by_year), samples)


def _worth(worth: list[float], at: float) -> float:
    """The present value factor at a time, on a straight line between whole years."""
    year = int(at)
    if year + 1 >= len(worth):
        return worth[-1]
    return worth[year] + (worth[year + 1] - worth[year]) * (at - year)


def _spread(cases: list[float]) -> Spread:
    """The middle of the cases, and the bounds between which eight of ten lie."""
    if not cases:
        return Spread(0.0, 0.0, 0.0)
    ordered = sorted(cases)
    last = len(ordered) - 1
    return Spread(ordered[round(0.1 * last)], ordered[round(0.5 * last)], ordered[round(0.9 * last)])
