"""The face of a wall on its elevation: shaded courses and their numbers, joints, log ends, openings."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from math import ceil

from speclint.drawing.layers import Layer
from speclint.drawing.paper import Paper
from speclint.drawing.room import Room
from speclint.drawing.wall_frame import Course, Opening, WallFrame

LINE = 9.4  # pixels between numbers on the courses
DIGIT, LETTERS = 6.2, {".": 3.1, "%": 9.8}  # pixels that lettering on a course takes
THIN = 3.0  # pixels: a lower course has no number
CLOSE = 6.5  # pixels: lower courses have a single line for a joint
HOOD_PAST, HOOD_THICK = 0.3, 0.12  # metres past either side of a door, and its edge: as drawn


@dataclass(frozen=True, slots=True)
class Piece:
    """A part of a course with one amount: its left and right edge at its bottom and top [m], and its zone."""

    lower: tuple[float, float]
    upper: tuple[float, float]
    value: float
    zone: int


def pieces(frame: WallFrame, layer: Layer, at: int) -> Iterator[Piece]:
    """The parts of a course: one, or one for each zone of the wall."""
    value = layer.values[at] if at < len(layer.values) else None
    course = frame.courses[at]
    lower, upper = frame.half_width(course.bottom), frame.half_width(course.top)
    row = layer.parts[at] if at < len(layer.parts) else ()
    if not row:
        if value is not None:
            yield Piece(lower, upper, value, 0)
        return
    for zone, amount in zip(layer.zones, row, strict=True):
        cut_low, cut_high = (
            (max(edge[0], zone.left), min(edge[1], zone.right)) for edge in (lower, upper)
        )  # fmt: skip
        if amount is not None and cut_low[1] > cut_low[0] and cut_high[1] >= cut_high[0]:
            yield Piece(cut_low, cut_high, amount, zone.number)


def shade(paper: Paper, frame: WallFrame, layer: Layer, hidden: bool) -> None:
    """The courses filled by a layer, zone by zone."""
    paper.open(f"layer layer-{layer.name}", "", **({"style": "display: none"} if hidden else {}))
    for at, course in enumerate(frame.courses):
        low, high = frame.starts + course.bottom, frame.starts + course.top
        for piece in pieces(frame, layer, at):
            shape = [(piece.lower[0], low), (piece.lower[1], low), (piece.upper[1], high), (piece.upper[0], high)]
            where = f", zone {piece.zone}" if piece.zone else ""
            paper.open("course", f"course {at + 1}{where}: {layer.told(piece.value)}")
            paper.path(shape, "shade", closed=True, fill=layer.scale.shades[layer.scale.at(piece.value)])
            paper.close()
    paper.close()


def numbers(paper: Paper, frame: WallFrame, layer: Layer, hidden: bool, room: Room) -> None:
    """The amounts on the courses, as many as have room, each clear of what is drawn before the wall."""
    paper.open(f"layer layer-{layer.name}", "", **({"style": "display: none"} if hidden else {}))
    free = room.copy()
    tall = [(course.top - course.bottom) * paper.scale for course in frame.courses]
    every = ceil(LINE / max(1.0, max(tall, default=1.0)))
    for at, course in enumerate(frame.courses):
        if at % every == 0 and tall[at] >= THIN:
            for piece in pieces(frame, layer, at):
                _number(paper, frame, layer, course, piece, free)
    paper.close()


def _number(paper: Paper, frame: WallFrame, layer: Layer, course: Course, piece: Piece, room: Room) -> None:
    words = layer.told(piece.value)
    wide = sum(LETTERS.get(letter, DIGIT) for letter in words) + 2
    left, right = paper.x(max(piece.lower[0], piece.upper[0])) + 1, paper.x(min(piece.lower[1], piece.upper[1])) - 3
    y = paper.y(frame.starts + (course.bottom + course.top) / 2)
    x = right
    while x - wide >= left:
        if room.take((x - wide, y - LINE / 2, x, y + LINE / 2)):
            level = layer.scale.at(piece.value)
            look = f"fill: {layer.scale.ink[level]}; stroke: {layer.scale.shades[level]}"
            paper.put(f'<text class="number" style="{look}" x="{x:.1f}" y="{y + 3.9:.1f}" text-anchor="end">'
                      f"{words}</text>")  # fmt: skip
            return
        x -= 3


def wood(paper: Paper, frame: WallFrame) -> None:
    """The joints of the courses, seen on every shade, the outline of the wood, and the log ends at its corners."""
    stacked = frame.wall["stacked"] == "yes"
    for course in frame.courses[1:]:
        left, right = frame.half_width(course.bottom)
        y = frame.starts + course.bottom
        wide = stacked and (course.top - course.bottom) * paper.scale > CLOSE
        for look in ("joint-light", "joint") if wide else ("joint",):
            paper.line((left, y), (right, y), look)
    outline = [(0.0, frame.starts), (frame.length, frame.starts), (frame.length, frame.starts + frame.height)]
    if frame.gable:
        outline.append((frame.peak_x, frame.starts + frame.peak))
    outline.append((0.0, frame.starts + frame.height))
    paper.path(outline, "edge", closed=True)
    if stacked:
        for side, reach in enumerate(frame.ends):
            if reach > 0 or frame.low_ends[side] > 0:
                _log_ends(paper, frame, side, reach)


def _log_ends(paper: Paper, frame: WallFrame, side: int, reach: float) -> None:
    """Ends of this wall's logs, the lowest as long as stated; between them those of the other wall, seen end on."""
    for at, course in enumerate(frame.courses):
        if course.top > frame.height + 0.01:
            break
        low, high = frame.starts + course.bottom, frame.starts + course.top
        if at % 2 == 0:
            far = frame.low_ends[side] if at == 0 else reach
            left, right = (-far, 0.0) if side == 0 else (frame.length, frame.length + far)
            paper.box(left, low + 0.01, right, high - 0.01, "thin wood")
        else:
            thick = (course.top - course.bottom) / 2
            paper.circle(_end_on(frame, side, low, high), thick * paper.scale * 0.92, "thin wood")


def _end_on(frame: WallFrame, side: int, low: float, high: float) -> tuple[float, float]:
    thick = (high - low) / 2
    return (thick if side == 0 else frame.length - thick), (low + high) / 2


def take_wood(paper: Paper, frame: WallFrame, room: Room) -> None:
    """Keep numbers off openings, hoods and log ends."""
    for one in frame.openings:
        low, high = frame.starts + one.sill, frame.starts + one.sill + one.height
        room.keep(paper, one.left - 0.1, low - 0.1, one.left + one.width + 0.1, high + 0.1 + one.headspace)
        if one.hood:
            room.keep(paper, one.left - HOOD_PAST, high, one.left + one.width + HOOD_PAST, high + 0.5)
    if frame.wall["stacked"] == "yes":
        thick = frame.courses[0].top if frame.courses else 0.0
        for side, reach in enumerate(frame.ends):
            if reach > 0:
                left = 0.0 if side == 0 else frame.length - thick
                room.keep(paper, left, frame.starts, left + thick, frame.starts + frame.height)


def opening(paper: Paper, one: Opening, frame: WallFrame) -> None:
    """A window with its muntins, or a door with its panels, its hood and landing; the gap over the frame is drawn."""
    left, right = one.left, one.left + one.width
    low, high = frame.starts + one.sill, frame.starts + one.sill + one.height
    paper.open("opening", one.label)
    paper.box(left - 0.09, low - 0.09, right + 0.09, high + 0.09 + one.headspace, "edge wood")
    paper.box(left, low, right, high, "edge glass")
    if one.headspace:
        paper.line((left - 0.09, high + 0.09), (right + 0.09, high + 0.09), "hair")
    if one.kind == "window":
        paper.line(((left + right) / 2, low), ((left + right) / 2, high), "thin")
        paper.line((left, (low + high) / 2), (right, (low + high) / 2), "thin")
    elif one.width > 1.4:
        paper.line(((left + right) / 2, low), ((left + right) / 2, high), "edge")
    else:
        paper.box(left + 0.12, low + 0.15, right - 0.12, low + one.height * 0.45, "thin")
        paper.box(left + 0.12, low + one.height * 0.52, right - 0.12, high - 0.15, "thin")
    paper.close()
    if one.kind == "door":
        _at_door(paper, one, frame, low, high)


def _at_door(paper: Paper, one: Opening, frame: WallFrame, low: float, high: float) -> None:
    """The hood over a door, and the landing before it where no deck or porch floor is."""
    left, right = one.left - HOOD_PAST, one.left + one.width + HOOD_PAST
    if one.hood:
        paper.open("hood", f"hood over {one.label}")
        at = high + 0.09 + one.headspace
        paper.path([(left, at), (right, at), (right - 0.1, at + 0.3), (left + 0.1, at + 0.3)], "edge roof", closed=True)
        paper.box(left, at - HOOD_THICK, right, at, "edge roof")
        paper.close()
    top = low - one.step if one.step is not None else 0.0
    if top > 0.05 and not frame.wall["decks"] and not frame.wall["porches"]:
        paper.open("landing", f"landing before {one.label}")
        paper.box(left, 0.0, right, top, "edge masonry")
        if top > 0.35:
            paper.line((left, top / 2), (right, top / 2), "thin")
        paper.close()
