"""What a section cuts through: the wall, its roof, a porch, a deck and the ground, and where a ray ends on them."""

from __future__ import annotations

from dataclasses import dataclass

from speclint.drawing.before import carriers, porch_heights
from speclint.drawing.wall_frame import WallFrame
from speclint.measures.facts import Facts
from speclint.units import System

INSIDE, OUTSIDE, BELOW = 1.3, 2.4, 0.9  # metres drawn, at the least
DEEP, FAR = 2.4, 6.6  # metres drawn at the most: what goes deeper or farther out ends at a break
UNTOLD_DECK = 2.0  # depth of a deck as drawn where it is not stated [m]
FRAMED = 0.17  # thickness of a framed wall as drawn [m]

Point = tuple[float, float]


@dataclass(frozen=True, slots=True)
class Cut:
    """What is cut through: the frame, and what rain and sun meet outside. [m]

    Attributes:
        frame: The wall.
        out: How far outside is drawn.
        below: How far down is drawn.
        top: How high is drawn.
        thick: Of the wall.
        eave: The edge of the main roof.
        porch: The outer edge of the porch roof and the height of its joint; nothing where there is none.
        deck: Outer edge as drawn, top and inner edge of the deck; nothing where there is none.
        ends: Whether the deck ends there, and does not go on beyond a break.
        falls: Fall of the ground.
        system: Units of the words.
    """

    frame: WallFrame
    out: float
    below: float
    top: float
    thick: float
    eave: Point
    porch: tuple[Point, float] | None
    deck: tuple[float, float, float] | None
    ends: bool
    falls: float
    system: System

    @property
    def edge(self) -> Point:
        """The edge that governs what reaches the wall from outside: that of the porch where there is one."""
        return self.porch[0] if self.porch is not None else self.eave

    def stop(self, start: Point, slope: float) -> tuple[Point, str]:
        """Where a ray that falls `slope` to one of its way toward the house ends, and on what."""
        hits: list[tuple[float, str]] = []  # x, on what
        hits.append((0.0, "wall"))
        if self.porch is not None and start[1] > self.porch[1] - 0.01:
            (far, low), high = self.porch
            fall = (high - low) / far if far else 0.0
            x = (high - start[1] + slope * start[0]) / (slope + fall)
            hits.append((x, "porch roof"))
        if self.deck is not None:
            x = start[0] - (start[1] - self.deck[1]) / slope
            if self.deck[2] <= x <= self.deck[0]:
                hits.append((x, "deck"))
        x = (slope * start[0] - start[1]) / (slope - self.falls) if slope > self.falls else -1.0
        hits.append((x, "ground"))
        x, what = max((hit for hit in hits if 0 <= hit[0] <= start[0]), default=(0.0, "wall"))
        return (x, start[1] - slope * (start[0] - x)), what


def cut_of(frame: WallFrame, system: System) -> Cut:
    """The cut through a wall, where its first porch and its first deck are."""
    wall = frame.wall
    part = next((one for one in wall["porches"] if one["depth"] is not None), None)
    porch = None
    if part is not None:
        low, high = porch_heights(frame, part)
        porch = ((float(part["depth"]), low), high)
    decks = wall["decks"][:1]
    depth = next((float(one["depth"] or UNTOLD_DECK) for one in decks), 0.0)
    out = max(frame.reach + 1.2, porch[0][0] + 1.2 if porch is not None else 0.0, OUTSIDE, min(FAR, depth + 0.5))
    height = frame.starts + frame.peak if frame.gable else frame.eave
    top = 0.9 + (max(height, frame.ridge) if frame.gable else height + (INSIDE + frame.reach) * frame.pitch)
    deck = None
    for one in decks:
        gap = (one["gap"] or 0.0) if one["held by"] == "posts" else 0.0
        deck = (min(out - 0.3, depth), frame.deck_top(one), float(gap))
    falls = float(wall["paving" if wall["ground"] == "paving" else "grade"] or 0.0)
    thick = float(wall["log size"] or FRAMED)
    deepest = max(
        (falls * post_at(post, part) + (post["footing"] or 0.0) for post in posts_of(frame, part)), default=0.0
    )
    below = min(DEEP, max(BELOW, falls * out + 0.4, deepest + 0.2))
    ends = depth <= out - 0.3 and all(one["depth"] is not None for one in decks)
    return Cut(frame, out, below, top, thick, (frame.reach, height), porch, deck, ends, falls, system)


def posts_of(frame: WallFrame, porch: Facts | None) -> list[Facts]:
    """The post of a porch that is drawn."""
    return carriers(frame, porch)[:1] if porch is not None else []


def half_side(post: Facts) -> float:
    return float(post["size"][0] if post["size"] else 0.15) / 2


def post_at(post: Facts, porch: Facts | None) -> float:
    """How far out the middle of a post stands. [m]"""
    depth = float(porch["depth"] or 0.0) if porch is not None else 0.0
    return depth - float(0.3 if post["inset"] is None else post["inset"]) - half_side(post)
