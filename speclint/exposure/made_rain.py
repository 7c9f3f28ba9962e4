"""A joint table made for a place without an hourly record: directions as known, speeds and rate as is common."""

from __future__ import annotations

import math
from collections.abc import Sequence
from functools import lru_cache

from speclint.exposure.rain_rays import JointRain
from speclint.science.driving_rain import mean_wall_driving_rain
from speclint.tables.rain_record import SECTOR, Cell

RAIN_WIND = 1.22
"""Wind while it rains over the mean wind: the middle of the 59 sure records of the tables. [-]"""
RATE = 1.5
"""Rate that stands for all hours of rain; with it and `RAIN_WIND` the share that passes an edge is met without bias,
within 0.10 (root of the mean square) at 62 records. [mm/h]"""
SPEEDS = 16
DIRECTIONS = 360 // SECTOR


@lru_cache(maxsize=32)
def made_rain(shares: tuple[float, ...], rain: float, mean_wind: float) -> JointRain:
    """The joint table of `made_cells` with its curves, worked out once."""
    return JointRain(made_cells(shares, rain, mean_wind))


def made_cells(shares: Sequence[float], rain: float, mean_wind: float) -> tuple[Cell, ...]:
    """A joint table from yearly means: wind speeds after Rayleigh, one rate, the amount by the fit to 59 airports.

    Args:
        shares: Shares of the driving rain from each ten degrees, north first. [-]
        rain: Rain of a mean year, without snow. [mm]
        mean_wind: Mean wind speed at 10 m on an open field. [m/s]
    """
    whole = sum(shares)
    omni = mean_wall_driving_rain(rain, mean_wind) * math.pi if rain > 0 and mean_wind > 0 else 0.0
    middles = [(speed + 0.5) / SPEEDS for speed in range(SPEEDS)]
    speeds = [RAIN_WIND * mean_wind * math.sqrt(-math.log(1 - middle) * 4 / math.pi) for middle in middles]
    cells = []
    for sector, share in enumerate(shares):
        part = share / whole
        for speed in speeds if part > 0 else ():
            driven = omni * part * speed / sum(speeds)
            hours = rain / RATE * part / SPEEDS
            cells.append(Cell(sector * SECTOR, speed, RATE, hours, hours * RATE, (driven,)))
    return tuple(cells)


def turned(shares: Sequence[float], turn: float) -> list[float]:
    """Shares by ten degrees turned clockwise by an angle [deg], read between the directions on a straight line."""
    steps = turn / SECTOR
    whole, part = math.floor(steps), steps - math.floor(steps)
    count = len(shares)
    return [shares[(at - whole) % count] * (1 - part) + shares[(at - whole - 1) % count] * part for at in range(count)]


def mean_direction(shares: Sequence[float]) -> tuple[float, float]:
    """The direction that driving rain comes from on the whole, and how steadily.

    Returns:
        Clockwise from north [deg]; 1 where all comes from one direction, 0 where from all alike [-].
    """
    north = sum(share * math.cos(math.radians(at * SECTOR)) for at, share in enumerate(shares))
    east = sum(share * math.sin(math.radians(at * SECTOR)) for at, share in enumerate(shares))
    whole = sum(shares)
    return math.degrees(math.atan2(east, north)) % 360, math.hypot(north, east) / whole if whole > 0 else 0.0


def shares_by_ten(stated: Sequence[tuple[float, float]]) -> list[float]:
    """Shares stated by bearing as shares by ten degrees; each is spread evenly halfway to its neighbours, within 45.

    Args:
        stated: Bearing [deg] and share [%] of each, bearings rising.
    """
    found = [0.0] * DIRECTIONS
    bearings = [bearing for bearing, _ in stated]
    for at, (bearing, share) in enumerate(stated):
        before = (bearing - bearings[at - 1]) % 360 or 360.0
        after = (bearings[(at + 1) % len(bearings)] - bearing) % 360 or 360.0
        low, high = bearing - min(45.0, before / 2), bearing + min(45.0, after / 2)
        tenths = [low + (high - low) * (step + 0.5) / 40 for step in range(40)]
        for place in tenths:
            found[round(place / SECTOR) % DIRECTIONS] += share / 40
    return found
