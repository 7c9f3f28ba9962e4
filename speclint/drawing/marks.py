"""The marks on an elevation: ground, lines of shelter and splash, zones, dimensions, and the legend beside it."""

from __future__ import annotations

import textwrap
from collections.abc import Iterator
from html import escape

from speclint.drawing.before import carries_any
from speclint.drawing.layers import WHOLE, Layer
from speclint.drawing.paper import Paper
from speclint.drawing.room import Room
from speclint.drawing.wall_frame import WallFrame
from speclint.drawing.zones import Zone
from speclint.units import System, show

BELOW = 0.55  # metres of ground drawn below grade
LEAST_SPLASH = 0.02  # metres: less is not marked
TICK = 0.18  # metres between the ticks of the ground
KEY_WIDE, BOLD_WIDE = 32, 29  # letters in a line of the legend, and of its title


def ground(paper: Paper, frame: WallFrame, side: float) -> None:
    """Grade, what covers the ground, and the foundation down into it."""
    paper.box(-0.05, -BELOW + 0.25, frame.length + 0.05, frame.starts, "edge masonry")
    paper.box(-side, -BELOW, frame.length + side, 0.0, "blank")
    paper.path([(0.0, 0.0), (0.0, -BELOW + 0.25), (frame.length, -BELOW + 0.25), (frame.length, 0.0)], "hidden")
    paper.line((-side, 0.0), (frame.length + side, 0.0), "cut")
    for at in range(int((frame.length + 2 * side) / TICK)):
        x = -side + at * TICK
        paper.line((x + TICK / 2, 0.0), (x, -0.12), "hair")


def ground_words(frame: WallFrame) -> str:
    """What covers the ground."""
    told = frame.wall["ground"]
    return f"ground: {told}" if told else "ground not stated"


def shelter_height(frame: WallFrame) -> float | None:
    """Height above grade from which the roof edge keeps off rain 30 degrees off plumb; nothing where it keeps none."""
    sheltered = frame.wall["sheltered height"]
    if sheltered is None or frame.gable:
        return None
    height = frame.eave - float(sheltered)
    return height if frame.starts < height < frame.eave else None


def open_spans(frame: WallFrame, height: float) -> list[tuple[float, float]]:
    """The stretches of the wall at a height above grade that no porch roof shelters. [m]"""
    at, found = 0.0, []
    spans = [
        frame.span_of(porch)
        for porch in frame.wall["porches"]
        if height < frame.starts + float(porch["roof height"] or 0.0)
    ]
    for left, right in sorted(spans):
        if left - at > 0.02:
            found.append((at, left))
        at = max(at, right)
    if frame.length - at > 0.02:
        found.append((at, frame.length))
    return found


def lines(paper: Paper, frame: WallFrame) -> None:
    """The line down to which the roof edge shelters, beyond porches, and the line up to which splash wets the wall."""
    height = shelter_height(frame)
    if height is not None:
        for left, right in open_spans(frame, height):
            for look in ("under", "sheltered"):
                paper.line((left, height), (right, height), look)
    splash = frame.wall["splash height"]
    if splash is not None and splash > LEAST_SPLASH:
        for look in ("under", "splash"):
            paper.line((-0.3, splash), (frame.length + 0.3, splash), look)


def take_room(paper: Paper, frame: WallFrame, room: Room) -> None:
    """Keep numbers off the lines."""
    near = 2.5 / paper.scale
    height, splash = shelter_height(frame), frame.wall["splash height"]
    if height is not None:
        for left, right in open_spans(frame, height):
            room.keep(paper, left, height - near, right, height + near)
    if splash is not None and splash > LEAST_SPLASH:
        room.keep(paper, 0.0, float(splash) - near, frame.length, float(splash) + near)


def key_of(frame: WallFrame, system: System) -> list[tuple[str, str]]:
    """The lines of an elevation: the look of each, and what it means."""
    found = []
    height = shelter_height(frame)
    if height is not None and open_spans(frame, height):
        up = show(height - frame.starts, "length", system)
        beyond = ", beyond the porch" if frame.wall["porches"] else ""
        found.append(("sheltered", f"the roof edge keeps off rain 30 deg off plumb above this line, {up} up{beyond}"))
    splash = frame.wall["splash height"]
    if splash is not None and splash > LEAST_SPLASH:
        found.append(("splash", f"splash from the ground wets up to {show(float(splash), 'length', system)}"))
    hidden = "behind the porch roof, or below grade" if frame.wall["porches"] else "below grade"
    found.append(("hidden", f"{hidden}; how deep the foundation goes is not stated"))
    if any(porch["hung on"] != "main roof" and not carries_any(porch) for porch in frame.wall["porches"]):
        found.append(("untold", "posts that the plan does not state"))
    return found


def zone_marks(paper: Paper, zones: tuple[Zone, ...], drop: float) -> None:
    """The zones of the wall, numbered below it, and broken where a porch ends."""
    for zone in zones:
        x1, x2, y = paper.x(zone.left), paper.x(zone.right), paper.y(-BELOW) + drop
        paper.put(f'<path class="thin" d="M {x1 + 1:.1f} {y - 5:.1f} L {x1 + 1:.1f} {y:.1f} L {x2 - 1:.1f} {y:.1f} '
                  f'L {x2 - 1:.1f} {y - 5:.1f}"/>')  # fmt: skip
        middle = (x1 + x2) / 2
        paper.put(f'<rect class="zone" x="{middle - 8:.1f}" y="{y - 8:.1f}" width="16" height="16"/>')
        paper.put(f'<text class="zone-text" x="{middle:.1f}" y="{y + 4:.1f}">{zone.number}</text>')


def dimensions(paper: Paper, frame: WallFrame, system: System, drop: float) -> None:
    """Length below the wall, heights at its right."""
    paper.across(0.0, frame.length, -BELOW, show(frame.length, "length", system), drop)
    right = frame.length + max(frame.side, frame.ends[1], frame.low_ends[1], 0.4)
    paper.upward(right, 0.0, frame.starts, show(frame.starts, "length", system), 12)
    paper.upward(right, frame.starts, frame.starts + frame.height, show(frame.height, "length", system), 12)
    if frame.gable:
        peak = frame.starts + frame.peak
        paper.upward(right, frame.starts + frame.height, peak, show(frame.peak - frame.height, "length", system), 12)


def classes_of(layer: Layer) -> list[tuple[str, str, int, int]]:
    """The classes of a layer: name, shade, and how many courses of all are in each; a course in zones by its mean."""
    counts = [0] * len(layer.scale.names)
    for value in layer.values:
        if value is not None:
            counts[layer.scale.at(value)] += 1
    rows = zip(layer.scale.names, layer.scale.shades, counts, strict=True)
    return [(name, shade, count, len(layer.values)) for name, shade, count in rows]


def zone_words(layer: Layer) -> list[str]:
    """What each zone has at its lowest course, in words."""
    first = next((row for row in layer.parts if row), ())
    return [
        f"zone {zone.number}: {zone.words}; {layer.told(amount)} at its lowest course"
        for zone, amount in zip(layer.zones, first, strict=False)
        if amount is not None
    ]


def legend(
    paper: Paper, x: float, layer: Layer, key: list[tuple[str, str]], zones: tuple[Zone, ...], hidden: bool
) -> float:
    """The classes of a layer with their shades, its zones and lines, and what the whole wall has; where it ends."""
    paper.open(f"layer layer-{layer.name}", "", **({"style": "display: none"} if hidden else {}))
    y = _rows(paper, x, paper.margin[1] + 10, layer.title, True, BOLD_WIDE) + 2
    if layer.missing:
        y = _rows(paper, x, y, f"not known: {layer.missing}")
    else:
        for name, shade, count, of in classes_of(layer):
            paper.put(f'<rect class="edge" x="{x:.1f}" y="{y:.1f}" width="22" height="13" style="fill: {shade}"/>')
            paper.put(f'<text class="small" x="{x + 28:.1f}" y="{y + 10:.1f}">{escape(name)}: {count} of {of}</text>')
            y += 17
        y += 12
        if layer.whole:
            y = _rows(paper, x, y, f"{WHOLE[layer.name]}: {layer.whole}")
        for words in _zone_rows(layer, zones):
            y = _rows(paper, x, y, words)
    y += 6
    for look, words in key:
        paper.put(f'<line class="{look}" x1="{x:.1f}" y1="{y - 3:.1f}" x2="{x + 34:.1f}" y2="{y - 3:.1f}"/>')
        y = _rows(paper, x + 40, y, words, False, KEY_WIDE - 6) + 2
    paper.close()
    return y


def _zone_rows(layer: Layer, zones: tuple[Zone, ...]) -> Iterator[str]:
    if layer.zones:
        yield "courses are counted by their mean"
        yield from zone_words(layer)
    elif zones:
        yield "zones not told apart: each number is the mean along its course"


def _rows(paper: Paper, x: float, y: float, words: str, bold: bool = False, wide: int = KEY_WIDE) -> float:
    """Words in lines; where the next line goes. [px]"""
    weight = ' font-weight="bold"' if bold else ""
    for row in textwrap.wrap(words, wide):
        paper.put(f'<text class="small"{weight} x="{x:.1f}" y="{y:.1f}">{escape(row)}</text>')
        y += 13
    return y
