"""Rain and sun on one face, place by place: the sums that the courses of a wall are made of."""

from __future__ import annotations

import math
from collections.abc import Callable, Sequence
from dataclasses import dataclass

from speclint.exposure.cover import Edge, sky_left, slant_passed
from speclint.exposure.rain_rays import LevelSector, RainSector, at_slant
from speclint.exposure.sun_rays import SunYear, passed

GRAZING = 1e-9
Skyline = Callable[[float], float]
"""Height angle [deg] of the skyline in a direction [deg]."""


@dataclass(frozen=True, slots=True)
class FrontSector:
    """A sector of driving rain before one face: its angles to the face and its weight there.

    Attributes:
        across: Cosine to the outward normal. [-]
        along: Sine; positive from the left, seen from outside. [-]
        driven: Mean of the years on the open face. [L/m2]
        hours: In a mean year. [h]
        passing: The sector's curve.
    """

    across: float
    along: float
    driven: float
    hours: float
    passing: tuple[float, ...]


def front(sectors: Sequence[RainSector], azimuth: float) -> list[FrontSector]:
    """The sectors of driving rain that lie before a face."""
    found = []
    for sector in sectors:
        turn = math.radians(sector.azimuth - azimuth)
        across = math.cos(turn)
        if across > GRAZING:
            driven = across * sum(sector.driven) / max(1, len(sector.driven))
            found.append(FrontSector(across, math.sin(turn), driven, sector.hours, sector.passing))
    return found


def free_by_year(sectors: Sequence[RainSector], azimuth: float) -> tuple[float, ...]:
    """Driving rain on an open face in each year. [L/m2]"""
    years = max((len(sector.driven) for sector in sectors), default=0)
    sums = [0.0] * years
    for sector in sectors:
        across = math.cos(math.radians(sector.azimuth - azimuth))
        if across > GRAZING:
            for year, driven in enumerate(sector.driven):
                sums[year] += across * driven
    return tuple(sums)


@dataclass(frozen=True, slots=True)
class Struck:
    """Driving rain at a place on a face.

    Attributes:
        share: Part of the rain driven at the open face that passes the edges. [-]
        low: The same with the wind as weak as it may be. [-]
        high: The same with the wind as strong as it may be. [-]
        hours: In a mean year, weighted by the share that passes. [h]
    """

    share: float
    low: float
    high: float
    hours: float


def rain_at(sectors: Sequence[FrontSector], edges: Sequence[Edge], winds: tuple[float, float, float]) -> Struck:
    """Driving rain that passes the edges to a place on a face.

    Args:
        sectors: The rain before the face.
        edges: The roof edges over the place.
        winds: Wind at the house over wind on an open field: as it is taken, at the least, and at the most. [-]
    """
    driven = hours = middle = low = high = 0.0
    wind, least, most = winds
    for sector in sectors:
        driven += sector.driven
        slant = slant_passed(edges, sector.across, sector.along)
        if slant == math.inf:
            middle, low, high = middle + sector.driven, low + sector.driven, high + sector.driven
            hours += sector.hours
            continue
        share = at_slant(sector.passing, slant * wind)
        middle += sector.driven * share
        hours += sector.hours * share
        low += sector.driven * at_slant(sector.passing, slant * least)
        high += sector.driven * at_slant(sector.passing, slant * most)
    if driven <= 0:
        return Struck(0.0, 0.0, 0.0, 0.0)
    return Struck(middle / driven, low / driven, high / driven, hours)


def falling_at(sectors: Sequence[LevelSector], azimuth: float, edges: Sequence[Edge], wind: float) -> float:
    """Share of all rain of the year that lands on a level surface before a wall and under roof edges.

    Rain from behind the wall is kept off by the house; so is rain that falls plumb on the roof.

    Args:
        sectors: Rain by direction, for level surfaces.
        azimuth: The way the wall looks, before which the surface lies. [deg]
        edges: The roof edges over it; none is an open surface.
        wind: Wind at the house over wind on an open field. [-]
    """
    if not edges:
        return 1.0
    landed = whole = 0.0
    for sector in sectors:
        whole += sector.rain
        turn = math.radians(sector.azimuth - azimuth)
        across = math.cos(turn)
        if across > GRAZING:
            slant = slant_passed(edges, across, math.sin(turn))
            landed += sector.rain * (at_slant(sector.passing, slant * wind) if slant < math.inf else 1.0)
    return landed / whole if whole > 0 else 0.0


@dataclass(frozen=True, slots=True)
class Sunned:
    """Sun on a place, in a year or a month.

    Attributes:
        beam: From the sun itself. [kWh/m2]
        total: Beam, sky and ground. [kWh/m2]
        ultraviolet: The same of 300 to 400 nm. [kWh/m2]
    """

    beam: float
    total: float
    ultraviolet: float


def sun_at(
    sun: SunYear,
    azimuth: float,
    edges: Sequence[Edge],
    albedo: float,
    ultraviolet_albedo: float,
    skyline: Skyline | None = None,
    ground_seen: float = 1.0,
) -> Sunned:
    """Sun on a place on an upright face.

    Args:
        sun: The year, or the month.
        azimuth: The way the face looks. [deg]
        edges: The roof edges over the place.
        albedo: Share of sun that the ground throws back. [-]
        ultraviolet_albedo: The same of ultraviolet. [-]
        skyline: Height angle of the skyline by direction; none is an open horizon.
        ground_seen: Part of the ground before an open wall that the place sees in the sun. [-]
    """
    beam = ultraviolet = 0.0
    for sector in sun.sectors:
        turn = math.radians(sector.azimuth - azimuth)
        across = math.cos(turn)
        if across <= GRAZING:
            continue
        least = math.tan(math.radians(skyline(sector.azimuth))) if skyline else 0.0
        one, other = passed(sector, slant_passed(edges, across, math.sin(turn)), least)
        beam += across * one
        ultraviolet += across * other
    sky = sky_left(edges, _mean_skyline(skyline, azimuth)) / 2
    ground = ground_seen / 2
    return Sunned(
        beam,
        beam + sun.diffuse * sky + sun.level * albedo * ground,
        ultraviolet + sun.ultraviolet_diffuse * sky + sun.ultraviolet_level * ultraviolet_albedo * ground,
    )


def _mean_skyline(skyline: Skyline | None, azimuth: float) -> float:
    """The skyline before a face, weighted as an evenly bright sky counts there. [deg]"""
    if skyline is None:
        return 0.0
    turns = range(-80, 81, 20)
    weights = [math.cos(math.radians(turn)) for turn in turns]
    return sum(weight * skyline(azimuth + turn) for weight, turn in zip(weights, turns, strict=True)) / sum(weights)
