"""An elevation to scale: ground, courses, openings, roof, porch and posts, shaded course by course, findings pinned."""

from __future__ import annotations

import textwrap
from collections.abc import Sequence
from dataclasses import dataclass
from html import escape

from speclint.drawing import before, gutters, marks, over, pin_marks, wall_face
from speclint.drawing.layers import Layer, layers_of
from speclint.drawing.paper import RADIUS, SMALL_LETTER, Paper
from speclint.drawing.pins import Pin, Spot, spots
from speclint.drawing.room import Room
from speclint.drawing.wall_frame import WallFrame, peak_words, wall_frame
from speclint.drawing.zones import Zone
from speclint.measures.facts import Facts, Sheet
from speclint.units import System, show

WIDE, TALL = 610.0, 270.0  # pixels that the wall and its roof may take
NARROW, LOW = 244.0, 230.0  # the same on a sheet for a telephone
MOST = 62.0  # pixels to the metre
HEIGHTS = 82.0  # pixels for the heights at the right
LEGEND = 212.0  # pixels
BAR = 3.8  # metres from the right end of the wall to the scale bar

_Row = tuple[str, list[pin_marks.Mark], str]  # words, marks, words after them


@dataclass(frozen=True, slots=True)
class View:
    """How an elevation is to be drawn.

    Attributes:
        system: Units of its words.
        shown: Name of the layer that is seen; the others lie hidden under it. Empty for none.
        only: Whether the other layers are left out altogether.
        pins: Findings to pin.
        link: What a pin links to, `{number}` being that of the finding; empty for no links.
        name: Identity of the drawing within a page.
        legend: Whether the sheet has a title strip and tells classes, zones and lines; a page tells them beside it.
        narrow: Whether the sheet is for the width of a telephone.
    """

    system: System = "imperial"
    shown: str = "rain"
    only: bool = True
    pins: tuple[Pin, ...] = ()
    link: str = ""
    name: str = ""
    legend: bool = True
    narrow: bool = False


@dataclass(frozen=True, slots=True)
class _Drawn:
    """What all parts of one drawing share."""

    paper: Paper
    frame: WallFrame
    layers: list[Layer]
    view: View
    zones: tuple[Zone, ...]
    spots: list[Spot]

    def hidden(self, layer: Layer) -> bool:
        return layer.name != self.view.shown


def elevation(sheet: Sheet, wall: Facts, view: View) -> str | None:
    """The elevation of a wall as SVG; nothing where its length or height is not stated."""
    frame = wall_frame(sheet, wall)
    if frame is None:
        return None
    told = layers_of(sheet, wall)
    layers = [layer for layer in told if not view.only or layer.name == view.shown]
    found = list(spots(frame, view.pins))
    zones = next((layer.zones for layer in told if layer.zones), ())
    drawn = _Drawn(_paper(frame, view, found, bool(layers), bool(zones)), frame, layers, view, zones, found)
    _draw(drawn)
    facing = show(wall["faces"], "angle", view.system) if wall["faces"] is not None else "not stated"
    strip = [sheet.home.name, f"faces {facing}", marks.ground_words(frame), *peak_words(frame, view.system)]
    if frame.guessed:
        strip.insert(0, f"taken, not stated: {', '.join(frame.guessed)}")
    role = "group" if view.link and view.pins else "img"
    about = _about(drawn)
    return drawn.paper.svg(f"Elevation, {wall.label}", about, strip if view.legend else [], view.name, role)


def _side(frame: WallFrame) -> float:
    return max(frame.side, *frame.ends, *frame.low_ends, 0.4)


def _paper(frame: WallFrame, view: View, found: list[Spot], layered: bool, zoned: bool) -> Paper:
    side = _side(frame)
    top = frame.top + over.BOARD + 0.15
    wide, tall = (NARROW, LOW) if view.narrow else (WIDE, TALL)
    scale = min(MOST, wide / (frame.length + 2 * side), tall / top)
    beside = LEGEND if view.legend and layered else 0.0
    below = 54.0 + (20 if zoned else 0) + _rows_tall(found, frame, view)
    margin = (12.0, 16.0, HEIGHTS + beside, below)
    least = 300.0 if view.narrow else 420.0
    return Paper(-side, -marks.BELOW, frame.length + side, top, scale, margin, least)


def _draw(drawn: _Drawn) -> None:
    """Everything, from the ground forward."""
    paper, frame, view = drawn.paper, drawn.frame, drawn.view
    marks.ground(paper, frame, _side(frame))
    for layer in drawn.layers:
        wall_face.shade(paper, frame, layer, drawn.hidden(layer))
    before.stone(paper, frame)
    wall_face.wood(paper, frame)
    for opening in frame.openings:
        wall_face.opening(paper, opening, frame)
    if frame.gable:
        over.gable_roof(paper, frame)
    else:
        over.slope(paper, frame)
    marks.lines(paper, frame)
    before.decks(paper, frame)
    for porch in frame.wall["porches"]:
        before.porch(paper, frame, porch)
    before.rails(paper, frame)
    before.plantings(paper, frame)
    gutters.gutters(paper, frame)
    marks.zone_marks(paper, drawn.zones, 14)
    marks.dimensions(paper, frame, view.system, 44 if drawn.zones else 24)
    bar = paper.y(-marks.BELOW) + (52 if drawn.zones else 32)
    paper.scale_bar(view.system, 14.0 if view.narrow else paper.x(frame.length) - BAR * paper.scale, bar)
    room = _pins(drawn)
    wall_face.take_wood(paper, frame, room)
    before.take_room(paper, frame, room)
    marks.take_room(paper, frame, room)
    for x, y, size in over.purlin_ends(frame) if frame.gable else ():
        room.keep(paper, x - size, y - size, x + size, y + size)
    if not frame.gable and frame.wall["roof"] is not None:
        room.keep(paper, -frame.side, frame.eave, frame.length + frame.side, frame.ridge)
    for x, top in gutters.spouts(frame):
        room.keep(paper, x - 0.06, 0.0, x + 0.06, top)
    for layer in drawn.layers:
        wall_face.numbers(paper, frame, layer, drawn.hidden(layer), room)
    _rows(drawn, bar + 16)
    if view.legend:
        x = paper.x(frame.length + _side(frame)) + HEIGHTS
        for layer in drawn.layers:
            key = marks.key_of(frame, view.system)
            paper.grow(marks.legend(paper, x, layer, key, drawn.zones, drawn.hidden(layer)))


def _about(drawn: _Drawn) -> str:
    """The drawing in words, for whoever does not see it."""
    frame, view = drawn.frame, drawn.view
    told = [f"{show(frame.length, 'length', view.system)} long, {len(frame.courses)} courses"]
    for layer in drawn.layers:
        if drawn.hidden(layer):
            continue
        if layer.missing:
            told.append(f"{layer.title}: {layer.missing}")
        else:
            known = [value for value in layer.values if value is not None]
            ends = f"{layer.told(known[0])} at the lowest course, {layer.told(known[-1])} at the top"
            told.append(f"{layer.title}: {ends}")
    count = len({spot.pin.number for spot in drawn.spots})
    return "; ".join([*told, f"{count} {'finding' if count == 1 else 'findings'} pinned"])


def _pins(drawn: _Drawn) -> Room:
    """Pins at their faults; what they take."""
    paper = drawn.paper
    within = (0.0, 0.0, paper.x(drawn.frame.length + _side(drawn.frame)) + 10, paper.y(-marks.BELOW) + 6)
    told_below = drawn.view.narrow and pin_marks.crowded(drawn.spots)
    return pin_marks.place(paper, [] if told_below else pin_marks.marks_of(drawn.spots), within, drawn.view.link)


def _of_row(spot: Spot) -> bool:
    return spot.at is None and spot.drawn


def _undrawn(found: Sequence[Spot], frame: WallFrame) -> list[tuple[str, list[Pin]]]:
    """Parts of the wall that are not drawn, each with its pins; those with pins first."""
    pins: dict[str, list[Pin]] = {part.label: [] for part in before.not_drawn(frame)}
    for spot in found:
        if spot.at is None and not spot.drawn:
            pins.setdefault(spot.pin.element, []).append(spot.pin)
    return sorted(pins.items(), key=lambda item: not item[1])


def _rows_of(found: Sequence[Spot], frame: WallFrame, view: View) -> list[_Row]:
    """What stands below the drawing, row by row: words, marks, and words after them."""
    wide = NARROW - 20 if view.narrow else WIDE - 130
    whole = pin_marks.rows_of([spot.pin for spot in found if _of_row(spot)], wide)
    rows: list[_Row] = []
    if whole and view.narrow:
        rows.append(("about the wall as a whole:", [], ""))
    for at, each in enumerate(whole):
        rows.append(("" if view.narrow or at else "the wall as a whole:", each, ""))
    if view.narrow and pin_marks.crowded(found):  # no room on the wall for so many
        rows += [("", [mark], part) for part, mark in pin_marks.by_part(found)]
    undrawn = _undrawn(found, frame)
    bare = [label for label, pins in undrawn if not pins]
    for label, pins in undrawn:
        if view.narrow and pins:  # the words above, for they are too long beside
            rows.append((f"{label}, not drawn: place not stated", [], ""))
            rows += [("", each, "") for each in pin_marks.rows_of(pins, wide)]
            continue
        lines = pin_marks.rows_of(pins, wide - 100)
        rows += [("", each, "") for each in lines[:-1]]
        rows += [("", each, f"{label}, not drawn: place not stated") for each in lines[-1:]]
    if rows and rows[-1][1] and rows[-1][2] and bare and not view.narrow:  # one line for both saves height on paper
        rows[-1] = (*rows[-1][:2], f"{rows[-1][2]}; nor is that of {', '.join(bare)}")
    elif bare:
        words = f"not drawn, place not stated: {', '.join(bare)}"
        rows += [(line, [], "") for line in textwrap.wrap(words, int((wide + 50) / SMALL_LETTER))]
    return rows


def _tall(row: _Row) -> float:
    return 2 * RADIUS + pin_marks.APART if row[1] else 15.0


def _rows_tall(found: Sequence[Spot], frame: WallFrame, view: View) -> float:
    return sum(_tall(row) for row in _rows_of(found, frame, view))


def _rows(drawn: _Drawn, y: float) -> None:
    """Below the drawing: findings about the whole wall, and parts that are not drawn."""
    paper, view = drawn.paper, drawn.view
    for one in _rows_of(drawn.spots, drawn.frame, view):
        words, each, after = one
        x, low = 14.0, y + (RADIUS + 4 if each else 10)
        if words:
            paper.put(f'<text class="small" x="{x:.1f}" y="{low:.1f}">{escape(words)}</text>')
            x += len(words) * SMALL_LETTER + 2 if each else 0
        x = pin_marks.row(paper, each, x, y, view.link)
        if after:
            paper.put(f'<text class="small" x="{x + 2:.1f}" y="{low:.1f}">{escape(after)}</text>')
        y += _tall(one)
