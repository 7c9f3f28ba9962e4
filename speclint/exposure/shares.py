"""Shares of the rain of a lot at single places; a place that stays the same from plan to plan is summed once."""

from __future__ import annotations

from functools import lru_cache

from speclint.exposure.cover import Edge
from speclint.exposure.rain_rays import JointRain
from speclint.exposure.strike import FrontSector, falling_at, free_by_year, front, rain_at


@lru_cache(maxsize=256)
def _before(rain: JointRain, azimuth: float) -> tuple[FrontSector, ...]:
    return tuple(front(rain.sectors, azimuth))


@lru_cache(maxsize=2048)
def upright_share(rain: JointRain, azimuth: float, edges: tuple[Edge, ...], wind: float) -> float:
    """Share of the rain driven at an upright face that passes the edges over a place on it.

    Args:
        rain: The rain of the lot.
        azimuth: The way the face looks. [deg]
        edges: The roof edges over the place.
        wind: Wind at the house over wind on an open field. [-]
    """
    return rain_at(_before(rain, azimuth), edges, wind).share


@lru_cache(maxsize=1024)
def level_share(rain: JointRain, azimuth: float, edges: tuple[Edge, ...], wind: float) -> float:
    """Share of the year's rain that lands on a level place before a wall; arguments as for an upright one."""
    return falling_at(rain.level, azimuth, edges, wind)


@lru_cache(maxsize=256)
def free_years(rain: JointRain, azimuth: float) -> tuple[float, ...]:
    """Driving rain in each year on an open face that looks a way [deg], on an open field. [L/m2]"""
    return free_by_year(rain.sectors, azimuth)
