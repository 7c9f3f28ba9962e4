"""The parts of a wall along which its cover differs: under a porch roof, and beyond its ends."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from itertools import pairwise

from speclint.exposure.courses import courses_in
from speclint.exposure.face import Face
from speclint.exposure.sun_climate import SunClimate
from speclint.exposure.sunned import Ground, sunned_courses
from speclint.measures.exposure import course_height
from speclint.measures.faces import face_of
from speclint.measures.facts import Facts, NotStated, Sheet, Working
from speclint.measures.sun import rises_before
from speclint.science.sun_on_walls import ground_albedo, ultraviolet_albedo

SHORT = 0.05  # metres: a shorter part is not told apart


@dataclass(frozen=True, slots=True)
class Zone:
    """A part of a wall below its porch roofs.

    Attributes:
        number: From 1 at the left.
        left: Where it begins, from the left end of the wall. [m]
        right: Where it ends. [m]
        top: Height up to which its cover differs from that of its neighbours. [m]
        words: What is over it.
        rain: Rain share of each course, lowest first. [-]
        light: Ultraviolet share of each course; empty where the sun is not known. [-]
    """

    number: int
    left: float
    right: float
    top: float
    words: str
    rain: tuple[float, ...]
    light: tuple[float, ...]


def zones_of(sheet: Sheet, wall: Facts) -> tuple[Zone, ...]:
    """The zones of a wall from left to right; none where no porch ends before it, or rain cannot be told."""
    if not wall["porches"]:
        return ()
    work = Working(sheet, wall, "zones", "record")
    try:
        face = face_of(wall, work)
        climate = work.need(wall["site"], "rain climate", "site")
        factor = float(work.need(wall, "wind factor"))
        height = course_height(wall, work)
    except NotStated:
        return ()
    parts = _parts(face)
    if len(parts) < 2:
        return ()
    found = []
    for number, (left, right) in enumerate(parts, 1):
        part = face._replace(only=(left, right))
        over = [lean for lean in face.leans if lean.left <= (left + right) / 2 <= lean.right]
        rain = tuple(row.rain for row in courses_in(part, height, climate.rain, (factor, factor, factor)))
        words = "under the porch roof" if over else "beyond the porch, under the main roof edge"
        top = max(lean.at_wall for lean in face.leans)
        found.append(Zone(number, left, right, top, words, rain, _light(wall, work, part, height)))
    return tuple(found)


def _parts(face: Face) -> list[tuple[float, float]]:
    ends = (end for lean in face.leans for end in (lean.left, lean.right))
    cuts = sorted({0.0, face.length, *(min(face.length, max(0.0, end)) for end in ends)})
    return [(low, high) for low, high in pairwise(cuts) if high - low > SHORT]


def _light(wall: Facts, work: Working, part: Face, height: float) -> tuple[float, ...]:
    """Ultraviolet light on each course of a part against an open wall to the noon sun."""
    climate = work.maybe(wall["site"], "sun climate")
    if not isinstance(climate, SunClimate):
        return ()
    try:
        rises = rises_before(wall, work)
    except NotStated:
        return ()
    floor = max((float(work.maybe(porch, "floor below wood") or 0.0) for porch in wall["porches"]), default=0.0)
    surface = str(work.maybe(wall, "ground") or "lawn")
    ground = Ground(ground_albedo(surface), ultraviolet_albedo(False), floor)
    rows = sunned_courses(part, height, climate.year, ground, rises)
    return tuple(row.ultraviolet / climate.open_wall.ultraviolet for row in rows)


def told_apart(zones: Sequence[Zone], middle: float) -> bool:
    """Whether the zones differ at a height."""
    return any(middle < zone.top for zone in zones)
