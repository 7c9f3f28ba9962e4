"""The room left on a sheet for lettering and pins: boxes in pixels that nothing else may cover."""

from __future__ import annotations

from collections.abc import Iterable
from math import cos, pi, sin

from speclint.drawing.paper import RADIUS, Paper

RINGS = 25  # rings about a fault that are looked through for room

Box = tuple[float, float, float, float]  # left, top, right, bottom


class Room:
    """Boxes that are taken."""

    def __init__(self, taken: Iterable[Box] = ()) -> None:
        self.taken = list(taken)

    def copy(self) -> Room:
        """The same room, to be filled apart from this one."""
        return Room(self.taken)

    def keep(self, paper: Paper, left: float, bottom: float, right: float, top: float) -> None:
        """Keep a box free that is told in metres."""
        self.taken.append((paper.x(left), paper.y(top), paper.x(right), paper.y(bottom)))

    def free(self, box: Box) -> bool:
        """Whether nothing is where a box would be."""
        left, top, right, bottom = box
        return not any(
            left < other[2] and other[0] < right and top < other[3] and other[1] < bottom for other in self.taken
        )

    def take(self, box: Box) -> bool:
        """Take a box if it is free; whether it was."""
        if not self.free(box):
            return False
        self.taken.append(box)
        return True


def settle(room: Room, x: float, y: float, within: Box, half: float = RADIUS) -> tuple[float, float]:
    """Where a pin of a fault goes, and takes its room: on the fault, or as near to it as there is room.

    Args:
        room: What is taken by other pins.
        x: Of the fault. [px]
        y: Of the fault. [px]
        within: The sheet that the pin has to stay on.
        half: Half the width of the pin. [px]
    """
    rings = [(x, y)]
    for ring in range(1, RINGS):
        away, count = ring * RADIUS * 1.1, 8 * ring
        rings += [(x + away * sin(2 * pi * at / count), y - away * cos(2 * pi * at / count)) for at in range(count)]
    for at_x, at_y in rings:
        inside = within[0] + half <= at_x <= within[2] - half and within[1] + RADIUS <= at_y <= within[3] - RADIUS
        if inside and room.take((at_x - half - 1, at_y - RADIUS - 1, at_x + half + 1, at_y + RADIUS + 1)):
            return at_x, at_y
    return x, y
