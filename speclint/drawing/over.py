"""What is over a wall on its elevation: the slope of the roof, the rake of a gable, purlin ends."""

from __future__ import annotations

from speclint.drawing.paper import Paper
from speclint.drawing.wall_frame import WallFrame

BOARD = 0.22  # thickness of a roof edge as drawn [m]
SEAM, ROW = 0.45, 0.28  # metres between seams and between rows of a covering, as drawn


def slope(paper: Paper, frame: WallFrame) -> None:
    """The slope of the roof over an eave wall, seen face on: it stands before what of the wall is above its edge."""
    roof = frame.wall["roof"]
    if roof is None:
        return
    left, right, top = -frame.side, frame.length + frame.side, frame.ridge
    if frame.high or top < frame.eave + BOARD:  # the slope falls away behind its high edge
        paper.box(left, frame.eave, right, max(frame.eave, frame.top if frame.high else 0.0) + BOARD, "edge roof")
        return
    hip = min((roof["run"] or 0.0) + frame.side if roof["form"] == "hip" else 0.0, (right - left) / 2)
    paper.path(
        [(left, frame.eave), (right, frame.eave), (right - hip, top), (left + hip, top)], "edge roof", closed=True
    )
    covering = roof["covering"] or ""
    if "seam" in covering or "metal" in covering:
        _seams(paper, frame.eave, left, right, top, hip)
    else:
        rows = int((top - frame.eave) / ROW)
        for at in range(1, rows):
            y = frame.eave + (top - frame.eave) * at / rows
            paper.line((left + hip * at / rows, y), (right - hip * at / rows, y), "hair")
    paper.line((left, frame.eave), (right, frame.eave), "cut")


def _seams(paper: Paper, eave: float, left: float, right: float, top: float, hip: float) -> None:
    count = int((right - left) / SEAM)
    for at in range(1, count):
        x = left + (right - left) * at / count
        up = min(top, eave + (top - eave) * min(1.0, (x - left) / hip, (right - x) / hip)) if hip else top
        paper.line((x, eave), (x, up), "hair")


def gable_roof(paper: Paper, frame: WallFrame) -> None:
    """The rake over a gable, from drip edge to ridge: down to the wood where the roof stands above it."""
    (left, low), (right, other) = frame.tips
    ends = (-left, low), (frame.length + right, other)
    tips = [(x, y if frame.lean != side else frame.under_roof(x)) for side, (x, y) in zip((-1, 1), ends, strict=True)]
    ridge = [] if frame.lean else [(frame.peak_x, frame.ridge)]
    wood = sorted({0.0, frame.peak_x, frame.length}, reverse=True)
    under = [(x, min(frame.wood_top(x), frame.under_roof(x))) for x in wood]
    upper = [(x, y + BOARD) for x, y in (tips[0], *ridge, tips[1])]
    paper.path([*upper, ends[1], *under, ends[0]], "edge roof", closed=True)
    paper.path([tips[0], *ridge, tips[1]], "thin")
    for x, y, size in purlin_ends(frame):
        paper.circle((x, y), size * paper.scale, "edge wood")


def purlin_ends(frame: WallFrame) -> list[tuple[float, float, float]]:
    """Middle and radius of the ends of purlins in a gable; their places along the rake are not in a plan. [m]"""
    found = []
    for purlin in frame.wall["purlins"]:
        count = int(purlin["count"] or 1)
        size = (frame.wall["log size"] or 0.25) / 2
        for at in range(count):
            x = (
                frame.length * (0.12 + 0.76 * at / (count - 1))
                if count > 1
                else min(max(frame.peak_x, 0.12 * frame.length), 0.88 * frame.length)
            )
            found.append((x, frame.wood_top(x) - size - 0.02, size))
    return found
