"""The courses of a wall, with what rain and sun do to each."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass

from speclint.exposure.face import Face, bands
from speclint.exposure.rain_rays import RainSector
from speclint.exposure.strike import front, rain_at

PLACES = 5
PLACES_VARIED = 9
"""Places along a course: on a plain eave wall, and where the cover varies along the wall."""


@dataclass(frozen=True, slots=True)
class Course:
    """A course of logs, or a band of another wall.

    Attributes:
        number: From 1 at the lowest wood.
        bottom: Above the lowest wood. [m]
        top: Above the lowest wood. [m]
        area: Of wall. [m2]
        rain: Share of the free driving rain that strikes it. [-]
        rain_low: The same at the weakest wind. [-]
        rain_high: The same at the strongest wind. [-]
        rain_worst: The same at the worst place along it. [-]
        hours: With driving rain, in a mean year. [h]
    """

    number: int
    bottom: float
    top: float
    area: float
    rain: float
    rain_low: float
    rain_high: float
    rain_worst: float
    hours: float

    @property
    def middle(self) -> float:
        """Height of its middle above the lowest wood. [m]"""
        return (self.bottom + self.top) / 2


@dataclass(frozen=True, slots=True)
class Courses:
    """All courses of a wall, lowest first."""

    rows: tuple[Course, ...]

    def __str__(self) -> str:
        return f"{len(self.rows)} courses"

    def mean(self, attribute: str) -> float:
        """The mean over the wall of an attribute of its courses, by area."""
        area = sum(row.area for row in self.rows)
        return sum(float(getattr(row, attribute)) * row.area for row in self.rows) / area if area > 0 else 0.0


def courses(
    face: Face, course: float, sectors: Sequence[RainSector], winds: tuple[float, float, float]
) -> tuple[Course, ...]:
    """What driving rain does to each course of a face.

    Args:
        face: The face.
        course: Height of a course. [m]
        sectors: Driving rain of the lot by direction.
        winds: Wind at the house over wind on an open field: as taken, at the least, and at the most. [-]
    """
    before = front(sectors, face.azimuth)
    varied = bool(face.leans) or face.peak > face.height
    rows = []
    for number, (bottom, top) in enumerate(bands(face.peak, course), 1):
        middle = (bottom + top) / 2
        places = list(face.places(middle, PLACES_VARIED if varied else PLACES))
        struck = [rain_at(before, face.edges(along, middle), winds) for along in places]
        count = len(struck)
        rows.append(
            Course(
                number,
                bottom,
                top,
                face.width(middle) * (top - bottom),
                math.fsum(one.share for one in struck) / count,
                math.fsum(one.low for one in struck) / count,
                math.fsum(one.high for one in struck) / count,
                max(one.share for one in struck),
                math.fsum(one.hours for one in struck) / count,
            )
        )
    return tuple(rows)
