"""Driving rain by direction and slant: a joint table of wind and rain made ready for any roof edge.

Rain that a wind of speed U drives passes a roof edge where its drops fall more slowly than U times the slant that the
edge lets through. So for each direction one curve, of the share that passes against the slant, answers every point of
every wall; the free driving rain stays the exact sum of the hours.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from functools import cached_property, lru_cache
from typing import NamedTuple

from speclint.science.raindrops import FASTEST, SPREAD, diameter_falling_at, share_falling_past_edge, size_steepness
from speclint.tables.rain_record import SECTOR, Cell

FIRST, RATIO, KNOTS = 0.01, 1.15, 59
"""The slants at which the curves are kept: geometric from 0.01 to about 33. [-]"""
_LOG_RATIO = math.log(RATIO)
LAST_KNOT = KNOTS - 1
PER_LOG = 1 / _LOG_RATIO


class RainSector(NamedTuple):
    """Driving rain from one direction.

    Attributes:
        azimuth: From which the wind blows. [deg]
        driven: In each year, onto an open wall that faces the wind. [L/m2]
        hours: In a mean year. [h]
        rain: In a mean year, through a level plane. [mm]
        passing: Share that passes an edge, at each slant of the curve. [-]
    """

    azimuth: float
    driven: tuple[float, ...]
    hours: float
    rain: float
    passing: tuple[float, ...]


def rain_sectors(cells: Sequence[Cell]) -> tuple[RainSector, ...]:
    """The curves of a joint table, by ten degrees; at a house the slant is multiplied by its wind factor."""
    sectors = []
    curves: dict[tuple[tuple[float, float, float], ...], tuple[float, ...]] = {}
    for tenth, found in _by_tenths(cells):
        years = len(found[0].driven)
        driven = tuple(sum(cell.driven[year] for cell in found) for year in range(years))
        hours, rain = sum(cell.hours for cell in found), sum(cell.rain for cell in found)
        azimuth = _mean_azimuth(tenth, found)
        sectors.append(RainSector(azimuth, driven, hours, rain, _curve_once(found, curves)))
    return tuple(sectors)


def _by_tenths(cells: Sequence[Cell]) -> list[tuple[int, list[Cell]]]:
    """The cells of each ten degrees, north first."""
    found: dict[int, list[Cell]] = {}
    for cell in cells:
        found.setdefault(round(cell.direction / SECTOR) % (360 // SECTOR), []).append(cell)
    return sorted(found.items())


def _mean_azimuth(tenth: int, cells: list[Cell]) -> float:
    """The mean direction of some cells of one ten degrees, weighted by driving rain. [deg]"""
    whole = sum(sum(cell.driven) for cell in cells)
    if whole <= 0:
        return float(tenth * SECTOR)
    aside = sum(sum(cell.driven) * ((cell.direction - tenth * SECTOR + 180) % 360 - 180) for cell in cells)
    return (tenth * SECTOR + aside / whole) % 360


def _curve_once(
    cells: list[Cell], curves: dict[tuple[tuple[float, float, float], ...], tuple[float, ...]]
) -> tuple[float, ...]:
    """The curve of some cells; directions with like speeds, rates and weights, as in a made table, share one."""
    total = sum(sum(cell.driven) for cell in cells) or 1.0
    key = tuple([(cell.speed, cell.rate, round(sum(cell.driven) / total, 9)) for cell in cells])
    if key not in curves:
        curves[key] = _curve(cells)
    return curves[key]


def _curve(cells: list[Cell]) -> tuple[float, ...]:
    """Share of driving rain that passes an edge, at each slant, weighted by what each cell drives."""
    weights = [sum(cell.driven) for cell in cells]
    total = sum(weights) or 1.0
    sums = [0.0] * KNOTS
    water = _water()
    for cell, weight in zip(cells, weights, strict=True):
        steepness = -size_steepness(cell.rate)
        first = math.log(cell.speed) * _FINE + _SHIFT
        for knot in range(KNOTS):
            place = int(first + knot * _STEP)
            if place >= _POINTS:
                for later in range(knot, KNOTS):
                    sums[later] += weight
                break
            if place > 0:
                sums[knot] += weight * (1.0 - math.exp(steepness * water[place]))
    return tuple(amount / total for amount in sums)


_POINTS = 1200
_LOW = math.log(0.02)  # m/s: a drop that falls so slowly carries no water to speak of
_FINE = _POINTS / (math.log(FASTEST) - _LOW)
_STEP = _LOG_RATIO * _FINE
_SHIFT = (math.log(FIRST) - _LOW) * _FINE + 0.5


@lru_cache(maxsize=1)
def _water() -> tuple[float, ...]:
    """Diameter of the drop that falls at each of many speeds, to the power by which the water in the air goes."""
    return tuple(diameter_falling_at(math.exp(_LOW + point / _FINE)) ** SPREAD for point in range(_POINTS))


class JointRain:
    """A joint table and its curves, each worked out once when first asked for.

    Attributes:
        cells: The joint table.
        plumb: Rain of a mean year that falls in calm air. [mm]
    """

    def __init__(self, cells: tuple[Cell, ...], plumb: float = 0.0) -> None:
        self.cells = cells
        self.plumb = plumb

    @cached_property
    def sectors(self) -> tuple[RainSector, ...]:
        """Driving rain by direction, for walls."""
        return rain_sectors(self.cells)

    @cached_property
    def level(self) -> LevelRain:
        """Rain by direction, for level surfaces."""
        return LevelRain(level_sectors(self.cells), self.plumb)


class LevelSector(NamedTuple):
    """Rain from one direction as it falls on level surfaces.

    Attributes:
        azimuth: From which the wind blows. [deg]
        rain: In a mean year, through a level plane. [mm]
        passing: Share that passes an edge and lands on a level surface under it, at each slant of the curve. [-]
    """

    azimuth: float
    rain: float
    passing: tuple[float, ...]


class LevelRain(NamedTuple):
    """Rain on level surfaces: by direction, and plumb in calm air.

    Attributes:
        sectors: By direction.
        plumb: In a mean year in calm air. [mm]
    """

    sectors: tuple[LevelSector, ...]
    plumb: float


def level_sectors(cells: Sequence[Cell]) -> tuple[LevelSector, ...]:
    """The curves of a joint table for level surfaces; rates are taken at the nearest half doubling."""
    return tuple(
        LevelSector(_mean_azimuth(tenth, found), sum(cell.rain for cell in found), _level_curve(found))
        for tenth, found in _by_tenths(cells)
    )


def _level_curve(cells: list[Cell]) -> tuple[float, ...]:
    total = sum(cell.rain for cell in cells) or 1.0
    sums = [0.0] * KNOTS
    for cell in cells:
        falling = _falling(round(2 * math.log2(cell.rate)))
        first = math.log(cell.speed) * _COARSE + (math.log(FIRST) - _LOW) * _COARSE + 0.5
        for knot in range(KNOTS):
            place = int(first + knot * _LOG_RATIO * _COARSE)
            if place >= _COARSE_POINTS:
                for later in range(knot, KNOTS):
                    sums[later] += cell.rain
                break
            if place > 0:
                sums[knot] += cell.rain * falling[place]
    return tuple(amount / total for amount in sums)


_COARSE_POINTS = 120
_COARSE = _COARSE_POINTS / (math.log(FASTEST) - _LOW)


@lru_cache(maxsize=64)
def _falling(half_doublings: int) -> tuple[float, ...]:
    """Share that lands past an edge at each of many speeds, for one rate."""
    rate = 2 ** (half_doublings / 2)
    return tuple(share_falling_past_edge(math.exp(_LOW + at / _COARSE), rate) for at in range(_COARSE_POINTS))


def at_slant(curve: tuple[float, ...], slant: float) -> float:
    """A curve's value at a slant, read between its knots evenly in the logarithm of the slant."""
    return at_place(curve, place_of(slant)) if slant > 0 else 0.0


def place_of(slant: float) -> float:
    """Where a slant above zero lies among the knots; 0 is the first."""
    return math.log(slant / FIRST) / _LOG_RATIO


def at_place(curve: tuple[float, ...], place: float) -> float:
    """A curve's value at a place among its knots; before the first it falls with the slant."""
    if place <= 0.0:
        return curve[0] * math.exp(place * _LOG_RATIO)
    knot = int(place)
    if knot >= LAST_KNOT:
        return curve[LAST_KNOT]
    low = curve[knot]
    return low + (curve[knot + 1] - low) * (place - knot)
