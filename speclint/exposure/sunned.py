"""Sun on the courses of a face, past its roof edges and over its skyline."""

from __future__ import annotations

import math
from functools import lru_cache
from typing import NamedTuple

from speclint.exposure.face import Face, bands
from speclint.exposure.strike import Skyline, Sunned, sun_at, sun_before
from speclint.exposure.sun_rays import SunYear


class Rise(NamedTuple):
    """What stands on the horizon before a face.

    Attributes:
        azimuth: Of its middle. [deg]
        half: Of its width on either side. [deg]
        height: Height angle. [deg]
    """

    azimuth: float
    half: float
    height: float


class Ground(NamedTuple):
    """The ground before a face.

    Attributes:
        albedo: Share of sun that it throws back. [-]
        ultraviolet: The same of ultraviolet. [-]
        floor: Of a porch below the lowest wood. [m]
    """

    albedo: float
    ultraviolet: float
    floor: float


@lru_cache(maxsize=512)
def sunned_courses(
    face: Face, course: float, sun: SunYear, ground: Ground, rises: tuple[Rise, ...]
) -> tuple[Sunned, ...]:
    """Sun on each course of a face, lowest first; a face that stays the same from plan to plan is summed once.

    Args:
        face: The face.
        course: Height of a course. [m]
        sun: The year, or the month.
        ground: The ground before it.
        rises: What stands on the horizon before it; none is a level horizon.
    """
    before = sun_before(sun, face.azimuth, _skyline(rises) if rises else None)
    found = []
    for bottom, top in bands(face.peak, course):
        middle = (bottom + top) / 2
        beam = total = ultraviolet = 0.0
        for along, part in face.places(middle):
            seen = _ground_seen(face, along, middle, ground.floor)
            one = sun_at(before, face.edges(along, middle), ground.albedo, ground.ultraviolet, seen)
            beam += part * one.beam
            total += part * one.total
            ultraviolet += part * one.ultraviolet
        found.append(Sunned(beam, total, ultraviolet))
    return tuple(found)


def _skyline(rises: tuple[Rise, ...]) -> Skyline:
    def height_at(bearing: float) -> float:
        return max(
            (rise.height for rise in rises if abs((bearing - rise.azimuth + 180) % 360 - 180) <= rise.half), default=0.0
        )

    return height_at


def _ground_seen(face: Face, along: float, height: float, floor: float) -> float:
    """Under a porch the floor is in shade: only the ground beyond it throws light back."""
    depth = face.under_lean(along, height)
    up = max(0.01, height + floor)
    return up / math.hypot(up, depth) if depth > 0 else 1.0
