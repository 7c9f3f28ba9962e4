"""The courses of a wall, with what rain and sun do to each."""

from __future__ import annotations

from collections.abc import Sequence
from functools import lru_cache
from itertools import pairwise
from typing import NamedTuple

from speclint.exposure.face import Face, bands
from speclint.exposure.rain_rays import JointRain, RainSector
from speclint.exposure.strike import FrontSector, front, rain_at

EVERY = 3


class Course(NamedTuple):
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


class Courses(NamedTuple):
    """All courses of a wall, lowest first."""

    rows: tuple[Course, ...]

    def __str__(self) -> str:
        return f"{len(self.rows)} courses"

    def mean(self, attribute: str) -> float:
        """The mean over the wall of an attribute of its courses, by area."""
        area = sum(row.area for row in self.rows)
        return sum(float(getattr(row, attribute)) * row.area for row in self.rows) / area if area > 0 else 0.0


@lru_cache(maxsize=512)
def courses_in(face: Face, course: float, rain: JointRain, winds: tuple[float, float, float]) -> tuple[Course, ...]:
    """The courses of a face in the rain of a lot; a face that stays the same from plan to plan is summed once."""
    return courses(face, course, rain.sectors, winds)


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
    taken, least, most = winds
    found: list[tuple[float, float, float]] = []  # share, worst share, hours
    spans = bands(face.peak, course)
    for bottom, top in spans:
        middle = (bottom + top) / 2
        share = hours = worst = 0.0
        for along, part in face.places(middle):
            struck = rain_at(before, face.edges(along, middle), taken)
            share += part * struck.share
            hours += part * struck.hours
            worst = max(worst, struck.share)
        found.append((share, worst, hours))
    moved = _moved(face, spans, before, winds) if least != taken or most != taken else [(0.0, 0.0)] * len(spans)
    return tuple(
        Course(
            at + 1,
            bottom,
            top,
            face.width((bottom + top) / 2) * (top - bottom),
            share,
            max(0.0, share + down),
            min(1.0, share + up),
            worst,
            hours,
        )
        for at, ((bottom, top), (share, worst, hours), (down, up)) in enumerate(zip(spans, found, moved, strict=True))
    )


def _moved(
    face: Face,
    spans: Sequence[tuple[float, float]],
    before: Sequence[FrontSector],
    winds: tuple[float, float, float],
) -> list[tuple[float, float]]:
    """How far a weaker and a stronger wind move the share of each course.

    Read in the middle of the wall at every third course and at the last, and on straight lines between them.
    """
    nodes = sorted({*range(0, len(spans), EVERY), len(spans) - 1})
    at_nodes = []
    for node in nodes:
        middle = sum(spans[node]) / 2
        places = face.places(middle)
        edges = face.edges(places[len(places) // 2][0], middle)
        taken, least, most = (rain_at(before, edges, wind).share for wind in winds)
        at_nodes.append((min(0.0, least - taken), max(0.0, most - taken)))
    moved: list[tuple[float, float]] = [at_nodes[0]]
    for (start, low), (end, high) in pairwise(zip(nodes, at_nodes, strict=True)):
        for at in range(start + 1, end + 1):
            part = (at - start) / (end - start)
            moved.append((low[0] + (high[0] - low[0]) * part, low[1] + (high[1] - low[1]) * part))
    return moved
