"""The rain of a lot, as the measures of its walls use it."""

from __future__ import annotations

import math
from collections.abc import Sequence
from functools import lru_cache
from typing import NamedTuple

from speclint.exposure.made_rain import mean_direction
from speclint.exposure.rain_rays import JointRain, RainSector
from speclint.exposure.strike import free_by_year
from speclint.tables.rain_record import SECTOR

POINTS = 16

# How the driving rain of a wall stood to its estimate, eight walls of ten in between, over the 59 sure records that
# ship; a test works every pair out again. The first and the last two hold amounts; the others hold the shape of the
# rose alone (each wall over the mean of its sixteen), and are taken together with the amount.
SPREADS = {
    "record nearby":     (0.54, 1.84),  # records within 150 km of each other
    "nearest records":   (0.56, 1.56),  # the mean rose of the three nearest
    "stated direction":  (0.71, 1.51),  # the mean steady rose, turned to the true direction
    "no direction":      (0.44, 1.62),  # every bearing alike
    "one year":          (0.65, 1.37),  # one year against the mean of three
    "amount from means": (0.88, 1.17),  # from the record's own rain and wind
}  # fmt: skip
BORROWED_WIND = (0.85, 1.2)
"""For the amount, where the wind is that of another station: a quarter less or more of it; ours."""


class RainClimate(NamedTuple):
    """Driving rain of a lot on an open field.

    Attributes:
        title: Where it comes from, in a few words.
        source: own record, record, record nearby, stated shares, stated direction, nearest records or no direction.
        rain: The joint table and its curves.
        spread: Least and greatest factor on the driving rain of a wall, from what is unsure about the source.
        years: Years of the record; 0 where the table is made from means.
        damp: Hours of damp air above freezing in a mean year, where the record tells. [h]
    """

    title: str
    source: str
    rain: JointRain
    spread: tuple[float, float]
    years: int
    damp: float | None

    def __str__(self) -> str:
        return self.title

    @property
    def sectors(self) -> tuple[RainSector, ...]:
        """Driving rain by direction."""
        return self.rain.sectors

    @property
    def walls(self) -> tuple[float, ...]:
        """Driving rain of a mean year on open walls that face the sixteen points, north first. [L/m2]"""
        return _walls(self.rain)

    @property
    def direction(self) -> tuple[float, float]:
        """The direction that driving rain comes from on the whole [deg], and its steadiness [-]."""
        return _direction(self.rain)


@lru_cache(maxsize=64)
def _walls(rain: JointRain) -> tuple[float, ...]:
    return tuple(_mean(free_by_year(rain.sectors, point * 360 / POINTS)) for point in range(POINTS))


@lru_cache(maxsize=64)
def _direction(rain: JointRain) -> tuple[float, float]:
    shares = [0.0] * (360 // SECTOR)
    for sector in rain.sectors:
        shares[round(sector.azimuth / SECTOR) % (360 // SECTOR)] += sum(sector.driven)
    return mean_direction(shares)


def widened(*spreads: tuple[float, float]) -> tuple[float, float]:
    """Spreads that have nothing to do with each other, taken together."""
    low = math.sqrt(sum(math.log(spread[0]) ** 2 for spread in spreads))
    high = math.sqrt(sum(math.log(spread[1]) ** 2 for spread in spreads))
    return math.exp(-low), math.exp(high)


def _mean(values: Sequence[float]) -> float:
    return sum(values) / len(values) if values else 0.0
