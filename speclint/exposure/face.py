"""The geometry of one wall: where its wood is, and the roof edges over each place on it."""

from __future__ import annotations

import math
from itertools import pairwise
from typing import NamedTuple

from speclint.exposure.cover import Edge

SHORT = 0.15  # share of the wall below which a part is read in its middle
MIDDLE = ((0.5, 1.0),)
HALVED = ((0.5 - math.sqrt(1 / 12), 0.5), (0.5 + math.sqrt(1 / 12), 0.5))
GAUSS = ((0.5 - math.sqrt(0.15), 5 / 18), (0.5, 8 / 18), (0.5 + math.sqrt(0.15), 5 / 18))


class Lean(NamedTuple):
    """A lower roof along a wall: a porch.

    Attributes:
        left: Its left end from the left end of the wall, seen from outside; negative where it runs past. [m]
        right: Its right end from the left end of the wall. [m]
        depth: From the wall out to its edge. [m]
        edge: Height of its outer edge above the wall's lowest wood. [m]
        at_wall: Height at which its roof meets the wall, above the wall's lowest wood. [m]
    """

    left: float
    right: float
    depth: float
    edge: float
    at_wall: float


class Face(NamedTuple):
    """An outside wall face. Heights are above its lowest wood.

    Attributes:
        azimuth: The way it looks. [deg]
        length: Along the ground. [m]
        height: Of the wood at the eave, or at the plate of a gable. [m]
        peak: Of a gable's highest wood; the height at the eave where it is no gable. [m]
        reach: Of the roof edge past it. [m]
        hangs: How far the drip edge hangs below the top of the wall. [m]
        past_ends: How far the roof runs past its ends. [m]
        leans: Lower roofs along it.
        storey_out: How far an upper storey stands out over it; 0 where none does. [m]
        storey_at: Underside of that storey. [m]
        only: The part along it that is read, from its left end; all of it where there is none. [m]
    """

    azimuth: float
    length: float
    height: float
    peak: float
    reach: float
    hangs: float = 0.0
    past_ends: float = 0.0
    leans: tuple[Lean, ...] = ()
    storey_out: float = 0.0
    storey_at: float = 0.0
    only: tuple[float, float] | None = None

    def top(self, along: float) -> float:
        """Height of the wood at a distance from the left end [m]; a gable is even on both sides of its peak."""
        half = self.length / 2
        return self.height + (self.peak - self.height) * (1 - abs(along - half) / half)

    def width(self, height: float) -> float:
        """Length of wall that reaches a height. [m]"""
        if height <= self.height:
            return self.length
        rise = self.peak - self.height
        return self.length * max(0.0, 1 - (height - self.height) / rise) if rise > 0 else 0.0

    def places(self, height: float) -> list[tuple[float, float]]:
        """Places along the wall that reaches a height, and the share of the wall that each stands for.

        The wall is parted where its cover changes: at the peak of a gable, at and near the ends of porch roofs. A part
        is read at three points of the Gauss rule, at two where there are many parts, in its middle where it is short.
        """
        width = self.width(height)
        start = (self.length - width) / 2
        cuts = {start, start + width}
        if self.peak > self.height:
            cuts.add(self.length / 2)
        for lean in self.leans:
            if height < lean.at_wall:
                near = min(lean.depth, (lean.right - lean.left) / 3)  # where rain comes in under the end
                ends = (lean.left, lean.left + near, lean.right - near, lean.right)
                cuts.update(cut for cut in ends if start < cut < start + width)
        ordered = sorted(cuts)
        found = []
        for low, high in pairwise(ordered):
            part = (high - low) / width
            rule = MIDDLE if part < SHORT else HALVED if len(ordered) > 3 else GAUSS
            found += [(low + (high - low) * place, part * weight) for place, weight in rule]
        return found if self.only is None else _inside(found, *self.only)

    def edges(self, along: float, height: float) -> tuple[Edge, ...]:
        """The roof edges over a place on the face: the main roof, an upper storey, porches."""
        out = self.storey_out
        below = out > 0 and height < self.storey_at
        reach = self.reach if below or out <= 0 else max(0.0, self.reach - out)
        found = [
            Edge(
                reach,
                self.top(along) - self.hangs - height,
                along + self.past_ends,
                self.length - along + self.past_ends,
            )
        ]
        if reach <= 0:
            found = []
        if below:
            found.append(Edge(out, self.storey_at - height, along, self.length - along))
        for lean in self.leans:
            if height < lean.at_wall and lean.left <= along <= lean.right:
                found.append(Edge(lean.depth, max(0.0, lean.edge - height), along - lean.left, lean.right - along))
        return tuple(found)

    def under_lean(self, along: float, height: float) -> float:
        """Depth of the porch floor before a place under a porch roof; 0 where there is none. [m]"""
        return max(
            (lean.depth for lean in self.leans if height < lean.at_wall and lean.left <= along <= lean.right),
            default=0.0,
        )


def bands(wood: float, course: float) -> list[tuple[float, float]]:
    """The courses, or bands of equal height, from the lowest wood up to the top.

    Args:
        wood: Height of the wood. [m]
        course: Height that each adds; the last is cut where the wood ends. [m]

    Returns:
        Bottom and top of each, lowest first. [m]
    """
    count = max(1, math.ceil(wood / course - 1e-6))
    return [(index * course, min(wood, (index + 1) * course)) for index in range(count)]


def _inside(places: list[tuple[float, float]], left: float, right: float) -> list[tuple[float, float]]:
    """The places that lie in a part of a face; its middle where none does."""
    inside = [(along, share) for along, share in places if left <= along <= right]
    whole = sum(share for _, share in inside)
    if whole <= 0:
        return [((left + right) / 2, 1.0)]
    return [(along, share / whole) for along, share in inside]
