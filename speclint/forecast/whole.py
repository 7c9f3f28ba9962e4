"""All that is told of the upkeep of a home: the coats, what is left out of them, inspections, and what to ask."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from datetime import date

from speclint.forecast.due import Season, in_season, season_of
from speclint.forecast.inspections import Inspection, inspections_of
from speclint.forecast.jobs import COATS, Job, NotForecast, jobs_of, uncoated_of
from speclint.forecast.outlook import Outlook, outlook
from speclint.forecast.rates import Rates
from speclint.measures.facts import Facts, Sheet
from speclint.model.element import Element
from speclint.science.access import MEANS

LIFT = MEANS[-1]
# kind of element, and what of it is not reckoned
LEFT_OUT = (
    ("corner", "log ends"),
    ("purlin", "purlin ends"),
    ("beam", "beams"),
    ("stair", "stairs"),
    ("ledger", "ledgers"),
    ("window", "frames of windows"),
    ("door", "doors"),
    ("roof", "eaves and trim"),
)
NEVER_COUNTED = "washing between coats, gutter cleaning, sealant and repairs"


@dataclass(frozen=True, slots=True)
class Access:
    """What the plan says of reaching high wood; empty where it does not.

    Attributes:
        reach: What the owner works from without hiring.
        lift: Whether a lift or scaffold can stand beside every high wall.
    """

    reach: str = ""
    lift: str = ""


@dataclass(frozen=True, slots=True)
class Forecast:
    """All that is told of the upkeep of a home.

    Attributes:
        plan: The name of the plan.
        outlook: The coats.
        untold: Parts whose upkeep cannot be told.
        inspections: What is looked at every year.
        rates: At which the costs are reckoned.
        start: The day from which the years are counted.
        states: How often the plan means to refinish, as it states it; empty where it does not.
        uncoated: Parts that take no coat, and why.
        uncounted: What of the home no coat is reckoned for, though it may take one.
        season: In which coats go on.
        access: What the plan says of reaching high wood.
        asks: What would settle the forecast: each a setting, and what is taken meanwhile.
        elements: The elements of the home, by label.
    """

    plan: str
    outlook: Outlook
    untold: tuple[NotForecast, ...]
    inspections: tuple[Inspection, ...]
    rates: Rates
    start: date
    states: str
    uncoated: tuple[NotForecast, ...]
    uncounted: tuple[str, ...]
    season: Season
    access: Access
    asks: tuple[str, ...]
    elements: Mapping[str, Element]

    @property
    def of(self) -> int:
        """How many parts take a coat, told or not."""
        return len(self.outlook.parts) + len(self.untold)

    def lifted(self) -> list[Job]:
        """The jobs that take a scaffold or lift."""
        return [part.job for part in self.outlook.parts if LIFT in part.job.reached]


def forecast_of(sheet: Sheet, rates: Rates, years: int, start: date) -> Forecast:
    """The forecast of a home."""
    jobs, untold = jobs_of(sheet, rates)
    season = season_of(sheet)
    care = next(iter(sheet.of_kind("care")), None)
    access = Access(_stated(care, "reach"), _stated(care, "lift access"))
    return Forecast(
        sheet.home.name,
        outlook(jobs, rates, years, moved=lambda due: in_season(due, start, years, season)),
        tuple(untold),
        tuple(inspections_of(sheet)),
        rates,
        start,
        _stated(care, "refinish"),
        tuple(uncoated_of(sheet)),
        tuple(_uncounted(sheet)),
        season,
        access,
        tuple(_asks(sheet, jobs, season, access)),
        sheet.home.elements,
    )


def _stated(care: Facts | None, setting: str) -> str:
    if care is None or care[setting] is None:
        return ""
    return care.element.given[setting].text


def _uncounted(sheet: Sheet) -> Iterator[str]:
    """What no coat is reckoned for: by kind, and named where there are few."""
    for kind, what in LEFT_OUT:
        names = [element.name for element in sheet.home.of_kind(kind)]
        if names:
            yield what if kind in ("window", "door", "roof") else f"{what} ({', '.join(names)})"


def _asks(sheet: Sheet, jobs: list[Job], season: Season, access: Access) -> Iterator[str]:
    """What the plan leaves out on which the forecast rests, and what is taken instead."""
    if not season.station:
        yield "weather of site: without it no season for coating is known"
    for setting, kind, taken in (
        ("top", "rail", "a flat bare top is taken, on which a coat lasts half as long as on the sides of the rail"),
        ("lifts out", "rail", "panels that stay in place are taken"),
        ("coats", "wall", f"{COATS:g} are taken"),
    ):
        parts = [job.part for job in jobs if sheet[job.part].element.kind == kind and sheet[job.part][setting] is None]
        if parts:
            yield f"{setting} of {', '.join(parts)}: {taken}"
    if any(LIFT in job.reached for job in jobs) and not access.lift:
        yield "lift access of care: a lift is priced as if it could stand beside every high wall"
    if any(job.means != MEANS[0] for job in jobs) and not access.reach:
        yield "reach of care: what the owner works from without hiring"
