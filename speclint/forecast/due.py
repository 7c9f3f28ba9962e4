"""When coats fall due: by the life of the coat, and then in the months in which a coat can go on."""

from __future__ import annotations

from calendar import monthrange
from dataclasses import dataclass
from datetime import date, timedelta

from speclint.measures.climate import station_of
from speclint.measures.facts import NotStated, Sheet, Working
from speclint.units import System, show

YEAR = 365.25
COATS_FROM = 10.0  # deg C, which is 50 F: the lowest for waterborne finishes; see the rule on coats in the cold
WHOLE_YEAR = tuple(range(1, 13))
MONTHS = ("Jan", "Feb", "Mar", "Apr", "May", "Jun", "Jul", "Aug", "Sep", "Oct", "Nov", "Dec")


@dataclass(frozen=True, slots=True)
class Season:
    """The months in which a coat can go on.

    Attributes:
        months: Of the year, 1 to 12; all of them where the season is not known or the climate gives none.
        coldest: Lowest temperature in which a coat goes on. [deg C]
        stated: Whether the plan states it.
        station: Whose normals tell the months; empty where no station is known.
        none: Whether no month of the year is warm enough.
    """

    months: tuple[int, ...] = WHOLE_YEAR
    coldest: float = COATS_FROM
    stated: bool = False
    station: str = ""
    none: bool = False

    def words(self, system: System) -> str:
        """The season in one sentence."""
        least = show(self.coldest, "temperature", system)
        if not self.station:
            return "not known without the weather of the site: days stand where the life of the coat ends"
        if self.none:
            return f"no month at {self.station} has a mean of {least}: days stand where the life of the coat ends"
        whose = "as the plan states" if self.stated else "for waterborne finishes"
        if len(self.months) == len(WHOLE_YEAR):
            return f"all year: every month at {self.station} has a mean of {least} or more ({whose})"
        return (
            f"{_named(self.months)}, the months at {self.station} with a mean of {least} or more ({whose}); a coat due "
            "outside them is moved to their nearest day; nights are colder than the mean, so pick the days"
        )


def _named(months: tuple[int, ...]) -> str:
    """The months as `May to Sep`; one by one where they are not in a row."""
    first = next((month for month in months if (month - 2) % 12 + 1 not in months), months[0])
    row = [(first - 1 + step) % 12 + 1 for step in range(len(months))]
    if set(row) != set(months) or len(months) == 1:
        return ", ".join(MONTHS[month - 1] for month in months)
    return f"{MONTHS[row[0] - 1]} to {MONTHS[row[-1] - 1]}"


def season_of(sheet: Sheet) -> Season:
    """The coating season of a home: by the normals of its station and the temperature that its plan states."""
    care = next(iter(sheet.of_kind("care")), None)
    stated = care["coating temperature"] if care else None
    coldest = COATS_FROM if stated is None else float(stated)
    if "site" not in sheet.facts:
        return Season(coldest=coldest, stated=stated is not None)
    try:
        station = station_of(sheet["site"], Working(sheet, sheet["site"], "coating season", "record"))
    except NotStated:
        return Season(coldest=coldest, stated=stated is not None)
    warm = tuple(month for month, mean in enumerate(station.mean_temperature, 1) if mean >= coldest)
    return Season(warm or WHOLE_YEAR, coldest, stated is not None, station.title, not warm)


def due_years(life: float, years: int, first: float = 1.0) -> tuple[float, ...]:
    """The years in which a coat of a life [d] falls due; the coat of the building itself lasts `first` of that. [a]"""
    each = life / YEAR
    found, at = [], each * first
    while at < years - 1e-9:
        found.append(at)
        at += each
    return tuple(found)


def due_day(start: date, at: float) -> date:
    """The day that lies a number of years after the start."""
    return start + timedelta(days=round(at * YEAR))


def in_season(due: tuple[float, ...], start: date, years: int, season: Season) -> tuple[float, ...]:
    """Years in which coats fall due [a], each moved to the nearest day of the season that lies in the forecast.

    Two that would be moved to one day are one.
    """
    if len(season.months) == len(WHOLE_YEAR):
        return due
    moved = []
    for at in due:
        day = due_day(start, at)
        if day.month not in season.months:
            near = [(one - start).days / YEAR for one in _edges(day, season.months)]
            inside = [one for one in near if 0 <= one < years]
            at = min(inside, key=lambda one: abs(one - at), default=at)
        moved.append(at)
    return tuple(sorted(set(moved)))


def _edges(day: date, months: tuple[int, ...]) -> tuple[date, date]:
    """The last day of the season before a day outside it, and the first of the season after it."""
    before = after = day
    while before.month not in months:
        before = before.replace(day=1) - timedelta(days=1)
    while after.month not in months:
        after = after.replace(day=monthrange(after.year, after.month)[1]) + timedelta(days=1)
    return before, after
