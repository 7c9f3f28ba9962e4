"""The sun of a lot: a mean year of clear sky, dimmed by the clouds of each month."""

from __future__ import annotations

import math
from collections.abc import Sequence
from functools import lru_cache
from pathlib import Path
from typing import NamedTuple

from speclint.exposure import sun_rays
from speclint.exposure.strike import Sunned, sun_at, sun_before
from speclint.exposure.sun_rays import SunHour, SunSector, SunYear, sun_year
from speclint.kept import keep, kept, plain, state_of
from speclint.science import sky, sun
from speclint.science.sky import clear_sky, sunshine_share_to_global, ultraviolet
from speclint.science.sun import year_of_sun
from speclint.science.sun_on_walls import ground_albedo, ultraviolet_albedo

DAYS, STEP = 24, 30.0
OPEN_GROUND = "lawn"
NO_SNOW: tuple[bool, ...] = (False,) * 12
KEPT = "sun-year.bin"


class SunClimate(NamedTuple):
    """Sun of a lot.

    Attributes:
        title: Where it comes from, in a few words.
        latitude: North is positive. [deg]
        sunshine: Share of the possible sunshine of each month; all 1 for a year of clear sky. [-]
        snow: Whether snow lies in each month.
        year: The mean year.
    """

    title: str
    latitude: float
    sunshine: tuple[float, ...]
    snow: tuple[bool, ...]
    year: SunYear

    def __str__(self) -> str:
        return self.title

    @property
    def noon(self) -> float:
        """The bearing of the noon sun. [deg]"""
        return 180.0 if self.latitude >= 0 else 0.0

    @property
    def open_wall(self) -> Sunned:
        """Sun of the year on an open upright wall that faces the noon sun over grass, and snow where it lies."""
        return _open_wall(self.year, self.noon)

    def month(self, number: int) -> SunYear:
        """The sun of one month, 1 to 12."""
        return sun_year(_hours(self.latitude, self.sunshine, self.snow, number))


@lru_cache(maxsize=32)
def sun_climate(
    title: str, latitude: float, sunshine: tuple[float, ...], snow: tuple[bool, ...] = NO_SNOW
) -> SunClimate:
    """The sun of a place.

    Args:
        title: Where the sunshine comes from, in a few words.
        latitude: North is positive. [deg]
        sunshine: Share of the possible sunshine of each month. [-]
        snow: Whether snow lies in each month.
    """
    return SunClimate(title, latitude, sunshine, snow, _mean_year(latitude, sunshine, snow))


def _mean_year(latitude: float, sunshine: tuple[float, ...], snow: tuple[bool, ...]) -> SunYear:
    """The mean year, kept for the next start, since every review of a lot asks for the same."""
    key = f"{_state()} {latitude!r} {sunshine!r} {snow!r}"
    found = kept(KEPT, key)
    if found is not None:
        sectors, sums = found
        return SunYear(tuple(SunSector(*sector) for sector in sectors), *sums)
    year = sun_year(_hours(latitude, sunshine, snow, 0))
    sums = (year.diffuse, year.level, year.ultraviolet_diffuse, year.ultraviolet_level)
    sums = (*sums, year.on_snow, year.ultraviolet_on_snow)
    keep(KEPT, key, (plain(year.sectors), sums))
    return year


@lru_cache(maxsize=1)
def _state() -> str:
    """The state of the code that the year rests on."""
    return state_of([Path(name) for name in (__file__, sky.__file__, sun.__file__, sun_rays.__file__)])


@lru_cache(maxsize=32)
def _open_wall(year: SunYear, noon: float) -> Sunned:
    return sun_at(sun_before(year, noon), (), ground_albedo(OPEN_GROUND), ultraviolet_albedo(False))


def _hours(latitude: float, sunshine: Sequence[float], snow: Sequence[bool], month: int) -> list[SunHour]:
    """The sampled hours of a month, or of the year where it is 0.

    Clouds leave the beam the share of sunshine, and the whole its share by sunshine over that of a clear day; what
    the beam does not bring comes from the sky.
    """
    found = []
    for sample in year_of_sun(latitude, DAYS, STEP):
        if month not in (0, sample.month):
            continue
        share, snowy = sunshine[sample.month - 1], snow[sample.month - 1]
        whole = sunshine_share_to_global(share) / sunshine_share_to_global(1.0)
        beam, diffuse = clear_sky(sample.altitude, sample.day)
        other_beam, other_diffuse = ultraviolet(sample.altitude, sample.day, ultraviolet_albedo(snowy))
        high = math.sin(math.radians(sample.altitude))
        found.append(
            SunHour(
                sample.altitude,
                sample.azimuth,
                sample.hours,
                share * beam,
                whole * (beam * high + diffuse) - share * beam * high,
                share * other_beam,
                whole * (other_beam * high + other_diffuse) - share * other_beam * high,
                snowy,
            )
        )
    return found
