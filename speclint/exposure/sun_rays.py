"""Sun by direction and height: the year's beam made ready for any roof edge, as driving rain is in `rain_rays`.

The sun's beam from one direction passes a roof edge while the tangent of its height is less than the slant that the
edge lets through, so a running sum of beam over that tangent answers every point of every wall.
"""

from __future__ import annotations

import math
from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from typing import NamedTuple

BIN = 10.0
"""Width of a direction in the running sums. [deg]"""


class SunHour(NamedTuple):
    """The sun at one moment, and the hours of the year that it stands for.

    Attributes:
        altitude: Height of the sun. [deg]
        azimuth: Clockwise from north. [deg]
        hours: Of the year, or of the month. [h]
        beam: Beam square to the sun, clouds counted. [W/m2]
        diffuse: From the sky onto the level, clouds counted. [W/m2]
        ultraviolet_beam: The same of 300 to 400 nm. [W/m2]
        ultraviolet_diffuse: The same of 300 to 400 nm. [W/m2]
        snow: Whether snow lies on the ground.
    """

    altitude: float
    azimuth: float
    hours: float
    beam: float
    diffuse: float
    ultraviolet_beam: float
    ultraviolet_diffuse: float
    snow: bool = False


class SunSector(NamedTuple):
    """Running sums of beam from one direction.

    Attributes:
        azimuth: Mean direction of the beam. [deg]
        slants: Tangents of the sun's height, least first. [-]
        beam: Sum up to each: beam on an upright plane that faces the sector. [kWh/m2]
        ultraviolet: The same of 300 to 400 nm. [kWh/m2]
    """

    azimuth: float
    slants: tuple[float, ...]
    beam: tuple[float, ...]
    ultraviolet: tuple[float, ...]


@dataclass(frozen=True, slots=True, eq=False)
class SunYear:
    """A year, or a month, of sun.

    Attributes:
        sectors: The beam by direction.
        diffuse: From the sky onto the level. [kWh/m2]
        level: Beam and sky onto the level. [kWh/m2]
        ultraviolet_diffuse: The same as `diffuse` of 300 to 400 nm. [kWh/m2]
        ultraviolet_level: The same as `level` of 300 to 400 nm. [kWh/m2]
        on_snow: What of `level` comes while snow lies. [kWh/m2]
        ultraviolet_on_snow: What of `ultraviolet_level` comes while snow lies. [kWh/m2]
    """

    sectors: tuple[SunSector, ...]
    diffuse: float
    level: float
    ultraviolet_diffuse: float
    ultraviolet_level: float
    on_snow: float = 0.0
    ultraviolet_on_snow: float = 0.0


def sun_year(hours: Iterable[SunHour]) -> SunYear:
    """The running sums of a year, or of a month, of sun."""
    bins: dict[int, list[tuple[float, float, float, float]]] = {}
    diffuse = level = ultraviolet_diffuse = ultraviolet_level = on_snow = ultraviolet_on_snow = 0.0
    for hour in hours:
        height = math.radians(hour.altitude)
        upright, kilo = math.cos(height), hour.hours / 1000
        rows = bins.setdefault(int(hour.azimuth // BIN), [])
        beam, ultraviolet = hour.beam * upright * kilo, hour.ultraviolet_beam * upright * kilo
        rows.append((math.tan(height), beam, ultraviolet, hour.azimuth))
        diffuse += hour.diffuse * kilo
        ultraviolet_diffuse += hour.ultraviolet_diffuse * kilo
        on_level = (hour.diffuse + hour.beam * math.sin(height)) * kilo
        ultraviolet_too = (hour.ultraviolet_diffuse + hour.ultraviolet_beam * math.sin(height)) * kilo
        level += on_level
        ultraviolet_level += ultraviolet_too
        if hour.snow:
            on_snow += on_level
            ultraviolet_on_snow += ultraviolet_too
    sectors = tuple(_sector(sorted(rows)) for _, rows in sorted(bins.items()))
    return SunYear(sectors, diffuse, level, ultraviolet_diffuse, ultraviolet_level, on_snow, ultraviolet_on_snow)


def _sector(rows: Sequence[tuple[float, float, float, float]]) -> SunSector:
    beam = ultraviolet = 0.0
    beams, ultraviolets = [], []
    for _, one, other, _ in rows:
        beam += one
        ultraviolet += other
        beams.append(beam)
        ultraviolets.append(ultraviolet)
    weight = sum(one for _, one, _, _ in rows)
    mean = sum(one * azimuth for _, one, _, azimuth in rows) / weight if weight > 0 else rows[0][3]
    return SunSector(mean, tuple(slant for slant, _, _, _ in rows), tuple(beams), tuple(ultraviolets))
