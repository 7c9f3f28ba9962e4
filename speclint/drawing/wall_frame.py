"""The outline of a wall seen from outside, and what stands on it where: metres, from its left end and from grade."""

from __future__ import annotations

from dataclasses import dataclass

from speclint.measures.course_table import course_table
from speclint.measures.facts import Facts, Sheet
from speclint.quantity import Quantity

GABLE_PEAK = 1.6  # taken where neither peak nor pitch is known: height at the ridge over that at the plate


@dataclass(frozen=True, slots=True)
class Opening:
    """A window or door on a wall: its left edge, sill, width and height, hood and step down to the outside. [m]"""

    label: str
    kind: str
    left: float
    sill: float
    width: float
    height: float
    headspace: float
    hood: float = 0.0
    step: float | None = None


@dataclass(frozen=True, slots=True)
class Course:
    """A course or band: its bottom and top above the lowest wood. [m]"""

    bottom: float
    top: float


@dataclass(frozen=True, slots=True)
class WallFrame:
    """What an elevation needs to know of a wall.

    Attributes:
        wall: The wall.
        length: Along the ground. [m]
        starts: Lowest wood above grade. [m]
        height: From the lowest wood to the eave or plate. [m]
        peak: From the lowest wood to the ridge; the height where it is no gable. [m]
        gable: Whether it is one.
        reach: Of the roof past the face of this wall. [m]
        side: Of the roof past the ends of this wall. [m]
        pitch: Of the roof; 0 where it is not known.
        ridge: Height of the ridge above grade. [m]
        courses: Lowest first.
        openings: On it.
        ends: How far log ends stand out past its left and right end. [m]
        guessed: What was taken because the plan does not say.
    """

    wall: Facts
    length: float
    starts: float
    height: float
    peak: float
    gable: bool
    reach: float
    side: float
    pitch: float
    ridge: float
    courses: tuple[Course, ...]
    openings: tuple[Opening, ...]
    ends: tuple[float, float]
    guessed: tuple[str, ...]

    @property
    def eave(self) -> float:
        """Height of the roof edge above grade: level with the top of the wall, less what hangs below it. [m]"""
        roof = self.wall["roof"]
        return float(self.starts + self.height - ((roof["edge drop"] or 0.0) if roof is not None else 0.0))

    def span_of(self, porch: Facts) -> tuple[float, float]:
        """Left and right end of a porch along the wall; in its middle where the plan does not say where. [m]"""
        length = float(porch["length"] or self.length)
        left = porch["from left"] if porch["from left"] is not None else (self.length - length) / 2
        return float(left), float(left) + length

    def deck_top(self, deck: Facts) -> float:
        """Height of the walking surface of a deck above grade. [m]"""
        below = deck["below wood"]
        return float(self.starts - below if below is not None else deck["height"] or 0.3)

    def half_width(self, above: float) -> tuple[float, float]:
        """Left and right edge of the wood at a height above the lowest wood. [m]"""
        if not self.gable or above <= self.height or self.peak <= self.height:
            return 0.0, self.length
        share = min(1.0, (above - self.height) / (self.peak - self.height))
        return share * self.length / 2, self.length * (1 - share / 2)


def wall_frame(sheet: Sheet, wall: Facts) -> WallFrame | None:
    """The frame of a wall; nothing where its length or height is not stated."""
    length, height = wall["length"], wall["height"]
    if length is None or height is None:
        return None
    guessed: list[str] = []
    starts = wall["starts"]
    if starts is None:
        starts = 0.3
        guessed.append("height of the lowest wood")
    gable = wall["gable"] == "yes"
    roof = wall["roof"]
    pitch = float((roof["pitch"] if roof is not None else None) or 0.0)
    peak = height
    if gable:
        peak = wall["peak"] or (height + pitch * length / 2 if pitch else height * GABLE_PEAK)
        if wall["peak"] is None:
            guessed.append("peak")
    reach = _known(sheet, wall, "roof reach")
    if reach is None:
        reach = 0.3
        guessed.append("reach of the roof")
    side = (roof["eaves" if gable else "rakes"] if roof is not None else None) or 0.0
    run = (roof["run"] if roof is not None else None) or 0.0
    ridge = starts + (peak if gable else height + pitch * run)
    rows = course_table(sheet, wall).rows
    courses = tuple(Course(float(row["bottom"] or 0), float(row["top"] or 0)) for row in rows)
    if not courses:
        step = wall["course"] or 0.25
        tops = [min(peak, step * (at + 1)) for at in range(int(peak / step + 0.999))]
        courses = tuple(Course(step * at, top) for at, top in enumerate(tops))
    openings = _openings(wall, guessed)
    return WallFrame(
        wall,
        length,
        starts,
        height,
        peak,
        gable,
        reach,
        side,
        pitch,
        ridge,
        courses,
        openings,
        _ends(wall),
        tuple(guessed),
    )


def _known(sheet: Sheet, wall: Facts, name: str) -> float | None:
    found = sheet.quantity(wall, name)
    return float(found.value) if isinstance(found, Quantity) else None


def _openings(wall: Facts, guessed: list[str]) -> tuple[Opening, ...]:
    """The openings; those whose place is not stated stand evenly along the wall, or about the middle of a gable."""
    placed: list[Opening] = []
    low: list[Facts] = []
    high: list[Facts] = []
    for opening in (*wall["windows"], *wall["doors"]):
        if opening["from left"] is not None and (opening["count"] or 1) <= 1:
            placed.append(_opening(opening, opening["from left"] - _width(opening) / 2))
        else:
            row = high if (opening["sill"] or 0.0) >= 0.95 * wall["height"] else low
            row += [opening] * int(opening["count"] or 1)
    if low or high:
        guessed.append("places of openings along the wall")
    gap = (wall["length"] - sum(_width(opening) for opening in low)) / (len(low) + 1)
    at = gap
    for opening in low:
        placed.append(_opening(opening, at))
        at += _width(opening) + gap
    step = 1.15 * max((_width(opening) for opening in high), default=0.0)
    at = wall["length"] / 2 - step * len(high) / 2
    for opening in high:
        placed.append(_opening(opening, at + (step - _width(opening)) / 2))
        at += step
    return tuple(placed)


def _width(opening: Facts) -> float:
    return float(opening["width"] or 0.9)


def _opening(opening: Facts, left: float) -> Opening:
    kind = opening.element.kind
    sill = opening["sill"] if opening["sill"] is not None else (0.0 if kind == "door" else 0.9)
    height = opening["height"] or (2.0 if kind == "door" else 1.2)
    hood, step = (opening["hood"] or 0.0, opening["step"]) if kind == "door" else (0.0, None)
    gap = opening["headspace"] or 0.0
    return Opening(opening.label, kind, left, sill, _width(opening), height, gap, hood, step)


def left_of(wall: Facts, other: Facts) -> bool:
    """Whether another wall meets this one at its left end, seen from outside."""
    mine, theirs = wall["faces"], other["faces"]
    if mine is None or theirs is None:
        return False
    return bool(0 < (theirs - mine) % 360 < 180)


def _ends(wall: Facts) -> tuple[float, float]:
    found = [0.0, 0.0]
    for corner in wall["corners"]:
        others = [other for other in corner["of"] or () if other is not wall]
        if others and corner["ends"] is not None:
            found[0 if left_of(wall, others[0]) else 1] = corner["ends"]
    return found[0], found[1]
