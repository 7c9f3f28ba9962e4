"""What stands over and before a point of a wall: roof edges, and how slantingly rain or sun must come to pass them."""

from __future__ import annotations

import math
from collections.abc import Sequence
from typing import NamedTuple

OPEN = math.inf


class Edge(NamedTuple):
    """A level roof edge over a point, and the ends of that roof along the wall.

    Attributes:
        reach: Level distance from the point out to the edge. [m]
        drop: Height of the edge above the point. [m]
        left: Distance along the wall from the point to the end of the roof on the left, seen from outside. [m]
        right: The same on the right. [m]
    """

    reach: float
    drop: float
    left: float = OPEN
    right: float = OPEN


def slant_passed(edges: Sequence[Edge], across: float, along: float) -> float:
    """How far a ray may fall for each unit of its level way and still pass every edge to reach the point.

    A ray from a level direction passes under an edge when its level way, over the height of the edge, is longer than
    the reach square to the wall, or longer than the way to the end of the roof along the wall. Both are straight-line
    geometry; several edges must all be passed.

    Args:
        edges: The edges over the point.
        across: Cosine of the angle between the ray's level direction and the wall's outward normal; above 0.
        along: Its sine; positive where the ray comes from the left, seen from outside.

    Returns:
        Greatest fall per level way of a ray that arrives; infinite in the open. [-]
    """
    least = OPEN
    for front, left, right in slopes(edges):
        slant = front * across
        side = along * left if along > 0 else -along * right
        slant = max(slant, side)
        least = min(least, slant)
    return least


def slopes(edges: Sequence[Edge]) -> list[tuple[float, float, float]]:
    """The drop of each edge over its reach, and over the ways to its left and right ends; none is below 0. [-]"""
    found = []
    for edge in edges:
        drop = edge.drop
        if drop <= 0:
            return [(0.0, 0.0, 0.0)]
        front = drop / edge.reach if edge.reach > 0 else OPEN
        left = drop / edge.left if edge.left > 0 else OPEN
        found.append((front, left, drop / edge.right if edge.right > 0 else OPEN))
    return found


def sky_left(edges: Sequence[Edge], skyline: float = 0.0) -> float:
    """Share of the sky before a wall that the edges and an even skyline leave in sight, for an evenly bright sky.

    Each edge is taken as endless along the wall.

    Args:
        edges: The edges over the point.
        skyline: Height angle of the skyline. [deg]

    Returns:
        Share of the half sky before an open wall. [-]
    """
    top = min((edge.drop / math.hypot(edge.drop, edge.reach) for edge in edges if edge.reach > 0), default=1.0)
    return max(0.0, top - math.sin(math.radians(skyline)))
