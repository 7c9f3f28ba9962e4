"""The outline of a wall seen from outside, and what stands on it where: metres, from its left end and from grade."""

from __future__ import annotations

from dataclasses import dataclass

from speclint.drawing.roof_lines import REACH, STARTS, reach_of, roof_lines
from speclint.measures.course_table import course_table
from speclint.measures.facts import Facts, Sheet
from speclint.units import System, show

GABLE_PEAK = 1.6  # taken where neither peak nor pitch is known: height at the ridge over that at the plate
UNKNOWN_RISE = 0.6  # from drip edge to ridge as drawn where the plan does not tell [m]
ALONG = 10.0  # degrees: walls that look more nearly the same or the opposite way have no corner that is drawn
FEW = 0.02  # metres: a lesser height between wall and roof is not told


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
        eave: Height of the drip edge above grade; at a gable that of the eaves to both sides. [m]
        ridge: Height above grade at which the undersides of the slopes meet: the same in every view of a roof. [m]
        tips: How far the drip edges beside a gable stand out past its left and right end, and their heights. [m]
        high: Whether it is at the high side of a shed.
        lean: Whether it is the end of a shed that is high at its left (-1) or its right (1); 0 otherwise.
        courses: Lowest first.
        openings: On it.
        ends: How far log ends stand out past its left and right end. [m]
        low_ends: The same of its lowest log. [m]
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
    eave: float
    ridge: float
    tips: tuple[tuple[float, float], tuple[float, float]]
    high: bool
    lean: int
    courses: tuple[Course, ...]
    openings: tuple[Opening, ...]
    ends: tuple[float, float]
    low_ends: tuple[float, float]
    guessed: tuple[str, ...]

    def under_roof(self, x: float) -> float:
        """Height of the underside of the roof over a gable, at a distance from the left end of its wall. [m]"""
        (left, low), (right, other) = self.tips
        top = self.peak_x
        if self.lean < 0 or (self.lean == 0 and x > top):
            left, low, x, top = right, other, self.length - x, self.length - top
        return low + (self.ridge - low) * (x + left) / (top + left)

    @property
    def peak_x(self) -> float:
        """Where a gable is highest, from the left end of the wall: in its middle, or at the high side of a shed. [m]"""
        return self.length * (1 + self.lean) / 2

    def wood_top(self, x: float) -> float:
        """Height of the highest wood at a distance from the left end of the wall. [m]"""
        if not self.gable:
            return self.starts + self.height
        far = self.length if self.lean else self.length / 2
        return self.starts + self.peak - (self.peak - self.height) * abs(x - self.peak_x) / far

    @property
    def top(self) -> float:
        """Height of the underside of the roof where it is highest. [m]"""
        past = self.reach if self.high else self.tips[0 if self.lean < 0 else 1][0] if self.lean else 0.0
        return max(self.ridge + past * self.pitch, self.starts + self.peak)

    @property
    def raised(self) -> float:
        """How far the underside of the roof passes above the top of the wall, at its face or at its peak. [m]"""
        if self.gable:
            return self.ridge - self.starts - self.peak
        plane = self.ridge if self.high else self.eave + self.reach * self.pitch
        return plane - self.starts - self.height

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
        if self.lean:
            return (share * self.length, self.length) if self.lean > 0 else (0.0, (1 - share) * self.length)
        return share * self.length / 2, self.length * (1 - share / 2)


def wall_frame(sheet: Sheet, wall: Facts) -> WallFrame | None:
    """The frame of a wall; nothing where its length or height is not stated."""
    length, height = wall["length"], wall["height"]
    if length is None or height is None:
        return None
    guessed: list[str] = []
    starts = wall["starts"]
    if starts is None:
        starts = STARTS
        guessed.append("height of the lowest wood")
    gable = wall["gable"] == "yes"
    roof = wall["roof"]
    pitch = float((roof["pitch"] if roof is not None else None) or 0.0)
    peak = height
    if gable:
        peak = wall["peak"] or (height + pitch * length / 2 if pitch else height * GABLE_PEAK)
        if wall["peak"] is None:
            guessed.append("peak")
    reach = reach_of(sheet, wall)
    if reach is None:
        reach = REACH
        guessed.append("reach of the roof")
    side = 0.0
    if roof is not None:
        side = float(roof["eaves" if gable or roof["form"] == "hip" else "rakes"] or 0.0)
    top = float(starts + height)
    eave, ridge, tips, high, lean = top, None, ((side, top), (side, top)), False, 0
    if roof is not None:
        lines = roof_lines(sheet, roof)
        base = starts if lines.from_wood else 0.0
        pitch, high = lines.pitch, wall.label in lines.high
        ridge = base + lines.ridge if lines.ridge is not None else None
        eave = top - float(roof["edge drop"] or 0.0)
        edges = {label: (lines.reaches[label], base + edge) for label, edge in lines.edges.items()}
        tips = _tips(wall, roof, edges, (side, eave))
        lean = _lean(wall, roof, lines.high) if gable else 0
        side = max(side, tips[0][0], tips[1][0]) if gable else side
        guessed += lines.taken
    if ridge is None and gable:
        ridge = starts + peak
    elif ridge is None:
        ridge = eave + UNKNOWN_RISE
        guessed += ["height of the ridge"] if roof is not None else []
    rows = course_table(sheet, wall).rows
    courses = tuple(Course(float(row["bottom"] or 0), float(row["top"] or 0)) for row in rows)
    if not courses:
        step = wall["course"] or 0.25
        tops = [min(peak, step * (at + 1)) for at in range(int(peak / step + 0.999))]
        courses = tuple(Course(step * at, top) for at, top in enumerate(tops))
    openings = _openings(wall, guessed)
    guessed += [f"the end at which {corner.label} is" for corner in wall["corners"] if _either_end(wall, corner)]
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
        eave,
        ridge,
        tips,
        high,
        lean,
        courses,
        openings,
        _ends(wall, "ends"),
        _ends(wall, "lowest ends"),
        tuple(guessed),
    )


def _lean(wall: Facts, roof: Facts, high: frozenset[str]) -> int:
    """At which side the end of a shed is high: -1 for the left, 1 for the right, 0 where it is not told."""
    others = [other for other in roof["covers"] or () if other.label in high and other["faces"] is not None]
    if not others or wall["faces"] is None:
        return 0
    return -1 if left_of(wall, others[0]) else 1


def peak_words(frame: WallFrame, system: System) -> list[str]:
    """Where a gable is stated higher than its roof: by how much."""
    if not frame.gable or frame.wall["peak"] is None or frame.raised > -FEW:
        return []
    return [f"its peak is stated {show(-frame.raised, 'length', system)} above the ridge that run and pitch give"]


def _tips(
    wall: Facts, roof: Facts, edges: dict[str, tuple[float, float]], own: tuple[float, float]
) -> tuple[tuple[float, float], tuple[float, float]]:
    """The drip edges to the left and right of a gable: those over its neighbours, or as its own wall would have."""
    found = [own, own]
    for other in roof["covers"] or ():
        if other.label in edges and wall["faces"] is not None and other["faces"] is not None:
            found[0 if left_of(wall, other) else 1] = edges[other.label]
    return found[0], found[1]


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


def at_end(wall: Facts, other: Facts) -> bool:
    """Whether the corner of two walls is drawn at an end of the first: they stand across, or its own logs end there."""
    mine, theirs = wall["faces"], other["faces"]
    return mine is None or theirs is None or wall["stacked"] == "yes" or not _along(mine, theirs)


def _along(mine: float, theirs: float) -> bool:
    return abs((theirs - mine + 90) % 180 - 90) <= ALONG


def _either_end(wall: Facts, corner: Facts) -> bool:
    """Whether a corner of a wall may be at either end of it, by the ways its walls look."""
    others = [other for other in corner["of"] or () if other is not wall and at_end(wall, other)]
    return any(
        wall["faces"] is not None and other["faces"] is not None and _along(wall["faces"], other["faces"])
        for other in others
    )


def _ends(wall: Facts, name: str) -> tuple[float, float]:
    """How far log ends stand out past the left and right end; the lowest are as long as the others if not stated."""
    found = [0.0, 0.0]
    for corner in wall["corners"]:
        others = [other for other in corner["of"] or () if other is not wall and at_end(wall, other)]
        reach = corner[name] if corner[name] is not None else corner["ends"]
        if others and reach is not None:
            found[0 if left_of(wall, others[0]) else 1] = reach
    return found[0], found[1]
