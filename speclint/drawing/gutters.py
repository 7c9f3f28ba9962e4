"""Gutters on an elevation, each at its own edge, and their downspouts."""

from __future__ import annotations

from speclint.drawing.before import porch_heights
from speclint.drawing.paper import Paper
from speclint.drawing.wall_frame import WallFrame
from speclint.measures.facts import Facts

TALL = 0.13  # height of a gutter as drawn [m]
IN = 0.15  # from the end of a wall or porch to a downspout, as drawn [m]


def edge_of(frame: WallFrame, gutter: Facts) -> tuple[float, float, float] | None:
    """Left and right end and top of a gutter: at the main eave, or at the edge of its porch; nothing at neither. [m]"""
    porch = gutter["porch"]
    if porch is None:
        return None if frame.gable else (-frame.side, frame.length + frame.side, frame.eave)
    if porch not in frame.wall["porches"]:
        return None
    return *frame.span_of(porch), porch_heights(frame, porch)[0]


def gutters(paper: Paper, frame: WallFrame) -> None:
    """Gutters over the wall and before it, and their downspouts."""
    for gutter in frame.wall["gutters"]:
        edge = edge_of(frame, gutter)
        if edge is not None:
            left, right, top = edge
            paper.open("gutter", gutter.label)
            paper.box(left, top - TALL, right, top, "edge glass")
            paper.close()
    for x, top in spouts(frame):
        paper.box(x - 0.04, 0.1, x + 0.04, top - TALL, "edge glass")


def spouts(frame: WallFrame) -> list[tuple[float, float]]:
    """Where downspouts come down, and from what height: at the ends, and evenly between where there are more. [m]"""
    found = []
    for gutter in frame.wall["gutters"]:
        edge = edge_of(frame, gutter)
        if edge is None:
            continue
        left, right = (0.0, frame.length) if gutter["porch"] is None else edge[:2]
        for spout in gutter["downspouts"]:
            count = int(spout["count"] or 1)
            for one in range(count):
                ends = left + IN if one % 2 == 0 else right - IN
                even = left + IN + (right - left - 2 * IN) * one / max(1, count - 1)
                found.append((ends if count < 3 else even, edge[2]))
    return found
