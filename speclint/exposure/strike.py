"""Rain and sun on one face, place by place: the sums that the courses of a wall are made of."""

from __future__ import annotations

import math
from bisect import bisect_left
from collections.abc import Callable, Sequence
from typing import NamedTuple

from speclint.exposure.cover import Edge, sky_left, slant_passed, slopes
from speclint.exposure.rain_rays import LAST_KNOT, PER_LOG, LevelRain, RainSector, at_place, at_slant, place_of
from speclint.exposure.sun_rays import SunYear
from speclint.science import sun_on_walls

GRAZING = 1e-9
SNOW, ULTRAVIOLET_SNOW = sun_on_walls.ground_albedo("lawn", snow=True), sun_on_walls.ultraviolet_albedo(snow=True)
Skyline = Callable[[float], float]
"""Height angle [deg] of the skyline in a direction [deg]."""


class FrontSector(NamedTuple):
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


class Struck(NamedTuple):
    """Driving rain at a place on a face.

    Attributes:
        share: Part of the rain driven at the open face that passes the edges. [-]
        hours: In a mean year, weighted by the share that passes. [h]
    """

    share: float
    hours: float


def rain_at(sectors: Sequence[FrontSector], edges: Sequence[Edge], wind: float) -> Struck:
    """Driving rain that passes the edges to a place on a face.

    Args:
        sectors: The rain before the face.
        edges: The roof edges over the place.
        wind: Wind at the house over wind on an open field. [-]
    """
    if not edges:
        free = sum(sector.driven for sector in sectors)
        return Struck(1.0 if free > 0 else 0.0, sum(sector.hours for sector in sectors))
    sloping = slopes(edges)
    (front_slope, left_slope, right_slope), *others = sloping
    here = place_of(wind) if wind > 0 else -math.inf
    driven = hours = struck = 0.0
    for across, along, weight, time, curve in sectors:  # written out at length: most of the time of a review is here
        driven += weight
        slant = front_slope * across
        side = along * left_slope if along > 0.0 else -along * right_slope
        if side > slant:
            slant = side
        for front_of, left_of, right_of in others:
            next_ = front_of * across
            side = along * left_of if along > 0.0 else -along * right_of
            if side > next_:
                next_ = side
            if next_ < slant:
                slant = next_
        if slant <= 0.0:
            continue
        if slant == math.inf:
            struck += weight
            hours += time
            continue
        place = math.log(slant) * PER_LOG + here
        if 0.0 < place < LAST_KNOT:
            knot = int(place)
            low = curve[knot]
            share = low + (curve[knot + 1] - low) * (place - knot)
        else:
            share = at_place(curve, place)
        struck += weight * share
        hours += time * share
    return Struck(struck / driven if driven > 0 else 0.0, hours)


def falling_at(rain: LevelRain, azimuth: float, edges: Sequence[Edge], wind: float) -> float:
    """Share of the year's rain above freezing that lands on a level surface before a wall and under roof edges.

    Rain from behind the wall is kept off by the house; so is rain that falls plumb on the roof.

    Args:
        rain: Rain on level surfaces.
        azimuth: The way the wall looks, before which the surface lies. [deg]
        edges: The roof edges over it; none is an open surface.
        wind: Wind at the house over wind on an open field. [-]
    """
    if not edges:
        return 1.0
    landed, whole = 0.0, rain.plumb
    for sector in rain.sectors:
        whole += sector.rain
        turn = math.radians(sector.azimuth - azimuth)
        across = math.cos(turn)
        if across > GRAZING:
            slant = slant_passed(edges, across, math.sin(turn))
            landed += sector.rain * (at_slant(sector.passing, slant * wind) if slant < math.inf else 1.0)
    return landed / whole if whole > 0 else 0.0


class Sunned(NamedTuple):
    """Sun on a place, in a year or a month.

    Attributes:
        beam: From the sun itself. [kWh/m2]
        total: Beam, sky and ground. [kWh/m2]
        ultraviolet: The same of 300 to 400 nm. [kWh/m2]
    """

    beam: float
    total: float
    ultraviolet: float


class FrontSun(NamedTuple):
    """A sector of sun before one face.

    Attributes:
        across: Cosine to the outward normal. [-]
        along: Sine; positive from the left, seen from outside. [-]
        slants: Tangents of the sun's height, least first. [-]
        beam: Running sum of beam up to each, above the skyline. [kWh/m2]
        ultraviolet: The same of 300 to 400 nm. [kWh/m2]
    """

    across: float
    along: float
    slants: tuple[float, ...]
    beam: tuple[float, ...]
    ultraviolet: tuple[float, ...]


class SunBefore(NamedTuple):
    """The sun of a year, or a month, before one face.

    Attributes:
        year: The sun.
        sectors: Those before the face.
        sky_hidden: Mean height angle of the skyline. [deg]
    """

    year: SunYear
    sectors: tuple[FrontSun, ...]
    sky_hidden: float


def sun_before(sun: SunYear, azimuth: float, skyline: Skyline | None = None) -> SunBefore:
    """The sun that can reach a face, over its skyline.

    Args:
        sun: The year, or the month.
        azimuth: The way the face looks. [deg]
        skyline: Height angle of the skyline by direction; none is an open horizon.
    """
    found = []
    for sector in sun.sectors:
        turn = math.radians(sector.azimuth - azimuth)
        across = math.cos(turn)
        if across <= GRAZING:
            continue
        hidden = bisect_left(sector.slants, math.tan(math.radians(skyline(sector.azimuth)))) if skyline else 0
        beam, ultraviolet = sector.beam, sector.ultraviolet
        if hidden:
            lost, lost_too = beam[hidden - 1], ultraviolet[hidden - 1]
            beam = tuple(max(0.0, one - lost) for one in beam)
            ultraviolet = tuple(max(0.0, one - lost_too) for one in ultraviolet)
        found.append(FrontSun(across, math.sin(turn), sector.slants, beam, ultraviolet))
    return SunBefore(sun, tuple(found), _mean_skyline(skyline, azimuth))


def sun_at(
    before: SunBefore,
    edges: Sequence[Edge],
    albedo: float,
    ultraviolet_albedo: float,
    ground_seen: float = 1.0,
) -> Sunned:
    """Sun on a place on an upright face.

    Args:
        before: The sun before the face.
        edges: The roof edges over the place.
        albedo: Share of sun that the ground throws back where no snow lies. [-]
        ultraviolet_albedo: The same of ultraviolet. [-]
        ground_seen: Part of the ground before an open wall that the place sees in the sun. [-]
    """
    sloping = slopes(edges)
    beam = ultraviolet = 0.0
    for across, along, slants, beams, ultraviolets in before.sectors:
        slant = math.inf
        for front_of, left_of, right_of in sloping:
            one = front_of * across
            side = along * left_of if along > 0.0 else -along * right_of
            if side > one:
                one = side
            if one < slant:
                slant = one
        upper = bisect_left(slants, slant)
        if upper:
            beam += across * beams[upper - 1]
            ultraviolet += across * ultraviolets[upper - 1]
    sun = before.year
    sky, ground = sky_left(edges, before.sky_hidden) / 2, ground_seen / 2
    thrown = sun.level * albedo + sun.on_snow * (SNOW - albedo)
    thrown_too = sun.ultraviolet_level * ultraviolet_albedo
    thrown_too += sun.ultraviolet_on_snow * (ULTRAVIOLET_SNOW - ultraviolet_albedo)
    return Sunned(
        beam,
        beam + sun.diffuse * sky + thrown * ground,
        ultraviolet + sun.ultraviolet_diffuse * sky + thrown_too * ground,
    )


def _mean_skyline(skyline: Skyline | None, azimuth: float) -> float:
    """The skyline before a face, weighted as an evenly bright sky counts there. [deg]"""
    if skyline is None:
        return 0.0
    turns = range(-80, 81, 20)
    weights = [math.cos(math.radians(turn)) for turn in turns]
    return sum(weight * skyline(azimuth + turn) for weight, turn in zip(weights, turns, strict=True)) / sum(weights)
