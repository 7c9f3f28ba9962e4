"""An elevation to scale: ground, courses, openings, roof, porch and posts, shaded course by course, findings pinned."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from speclint.drawing.layers import Layer, layers_of
from speclint.drawing.paper import Paper
from speclint.drawing.pins import Pin, spots
from speclint.drawing.wall_frame import Opening, WallFrame, wall_frame
from speclint.measures.facts import Facts, Sheet
from speclint.units import System, show

BELOW = 0.55  # metres of ground drawn below grade
WIDE = 760.0  # pixels that the wall and its roof may take
MOST, LEAST = 62.0, 24.0  # pixels to the metre
BOARD = 0.22  # thickness of a roof edge as drawn [m]
LEGEND = 190.0  # pixels
GROUNDS = {
    "bare soil": "bare soil", "lawn": "lawn", "mulch": "mulch", "washed stone": "washed stone", "gravel": "gravel",
    "paving": "paving", "decking": "decking",
}  # fmt: skip


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
    """

    system: System = "imperial"
    shown: str = "rain"
    only: bool = True
    pins: tuple[Pin, ...] = ()
    link: str = ""
    name: str = ""


def elevation(sheet: Sheet, wall: Facts, view: View) -> str | None:
    """The elevation of a wall as SVG; nothing where its length or height is not stated."""
    frame = wall_frame(sheet, wall)
    if frame is None:
        return None
    layers = [layer for layer in layers_of(sheet, wall) if not view.only or layer.name == view.shown]
    side = max(frame.side, *frame.ends, 0.4)
    top = max(frame.ridge, frame.starts + frame.height) + BOARD + 0.3
    scale = max(LEAST, min(MOST, WIDE / (frame.length + 2 * side)))
    paper = Paper(-side, -BELOW, frame.length + side, top, scale, (118, 26, 78 + (LEGEND if layers else 0), 58))
    _ground(paper, frame, side)
    if not frame.gable:
        _roof_behind(paper, frame)
    for layer in layers:
        _shading(paper, frame, layer, view)
    _wood(paper, frame)
    for opening in frame.openings:
        _opening(paper, opening, frame)
    if frame.gable:
        _gable_roof(paper, frame)
    for porch in wall["porches"]:
        _porch(paper, frame, porch, wall)
    _decks(paper, frame)
    _gutters(paper, frame)
    _lines(paper, frame, sheet, view.system)
    _dimensions(paper, frame, view.system)
    for layer in layers:
        _legend(paper, frame, layer, view, side)
    _pins(paper, frame, view)
    facing = show(wall["faces"], "angle", view.system) if wall["faces"] is not None else "not stated"
    strip = [sheet.home.name, f"faces {facing}", f"1:{_ratio(scale)} on a screen of 96 dots to the inch"]
    if frame.guessed:
        strip.insert(0, f"taken, not stated: {', '.join(frame.guessed)}")
    role = "group" if view.link and view.pins else "img"
    return paper.svg(f"Elevation, {wall.label}", _about(frame, layers, view), strip, view.name, role)


def _ratio(scale: float) -> int:
    return round(96 / 0.0254 / scale)


def _about(frame: WallFrame, layers: Sequence[Layer], view: View) -> str:
    """The drawing in words, for whoever does not see it."""
    told = [f"{show(frame.length, 'length', view.system)} long, {len(frame.courses)} courses"]
    for layer in layers:
        if layer.name != view.shown:
            continue
        if layer.missing:
            told.append(f"{layer.title}: {layer.missing}")
        else:
            known = [value for value in layer.values if value is not None]
            told.append(
                f"{layer.title}: {layer.told(known[0])} at the lowest course, {layer.told(known[-1])} at the top"
            )
    return "; ".join([*told, f"findings pinned: {len(view.pins)}"])


def _ground(paper: Paper, frame: WallFrame, side: float) -> None:
    """Grade, what covers the ground, and the foundation down into it."""
    paper.box(-0.05, -BELOW + 0.25, frame.length + 0.05, frame.starts, "edge masonry")
    paper.box(-side, -BELOW, frame.length + side, 0.0, "blank")
    paper.path([(0.0, 0.0), (0.0, -BELOW + 0.25), (frame.length, -BELOW + 0.25), (frame.length, 0.0)], "hidden")
    paper.line((-side, 0.0), (frame.length + side, 0.0), "cut")
    step = 0.18
    for at in range(int((frame.length + 2 * side) / step)):
        x = -side + at * step
        paper.line((x + 0.09, 0.0), (x, -0.12), "hair")
    ground = frame.wall["ground"]
    words = f"ground: {GROUNDS[ground]}" if ground in GROUNDS else "ground not stated"
    paper.text((-side, -BELOW + 0.25), words, "small", "start", (0, 13))


def _roof_behind(paper: Paper, frame: WallFrame) -> None:
    """The slope of the roof over an eave wall, seen face on."""
    roof = frame.wall["roof"]
    if roof is None:
        return
    eave = frame.starts + frame.height - (roof["edge drop"] or 0.0)
    left, right, top = -frame.side, frame.length + frame.side, max(frame.ridge, eave + 0.6)
    hip = (roof["run"] or 0.0) if roof["form"] == "hip" else 0.0
    hip = min(hip, frame.length / 2)
    corners = [(left, eave), (right, eave), (right - hip, top), (left + hip, top)]
    paper.path(corners, "edge roof", closed=True)
    covering = roof["covering"] or ""
    if "seam" in covering or "metal" in covering:
        count = int((right - left) / 0.45)
        for at in range(1, count):
            x = left + (right - left) * at / count
            bottom, up = eave, top
            if hip:
                up = min(top, eave + (top - eave) * min(1.0, (x - left) / hip, (right - x) / hip))
            paper.line((x, bottom), (x, up), "hair")
    else:
        rows = int((top - eave) / 0.28)
        for at in range(1, rows):
            y = eave + (top - eave) * at / rows
            inset = hip * at / rows
            paper.line((left + inset, y), (right - inset, y), "hair")
    paper.line((left, eave), (right, eave), "cut")


def _shading(paper: Paper, frame: WallFrame, layer: Layer, view: View) -> None:
    """The courses filled by the layer, each with its number where there is room."""
    hidden = {} if layer.name == view.shown else {"style": "display: none"}
    paper.open(f"layer layer-{layer.name}", "", **hidden)
    every = max(1, round(12 / max(1.0, (frame.courses[0].top - frame.courses[0].bottom) * paper.scale)))
    for at, course in enumerate(frame.courses):
        value = layer.values[at] if at < len(layer.values) else None
        if value is None:
            continue
        level = layer.scale.at(value)
        (left, right), (upper_left, upper_right) = frame.half_width(course.bottom), frame.half_width(course.top)
        low, high = frame.starts + course.bottom, frame.starts + course.top
        shape = [(left, low), (right, low), (upper_right, high), (upper_left, high)]
        paper.open("course", f"course {at + 1}: {layer.told(value)}")
        paper.path(shape, "shade", closed=True, fill=layer.scale.shades[level])
        paper.close()
        if at % every == 0 and upper_right - upper_left > 1.2:
            paper.put(f'<g style="fill: {layer.scale.ink[level]}">')
            clear = (course.top - course.bottom) if frame.ends[1] > 0 and course.top <= frame.height + 0.01 else 0.0
            x = (upper_right + right) / 2 - 0.06 - clear
            y = paper.y((low + high) / 2) + 3
            paper.put(f'<text class="number" style="fill: {layer.scale.ink[level]}" x="{paper.x(x):.1f}" y="{y:.1f}" '
                      f'text-anchor="end">{layer.told(value)}</text>')  # fmt: skip
            paper.close()
    paper.close()


def _wood(paper: Paper, frame: WallFrame) -> None:
    """The joints of the courses, the outline of the wood, and the log ends at its corners."""
    stacked = frame.wall["stacked"] == "yes"
    for course in frame.courses[1:]:
        left, right = frame.half_width(course.bottom)
        paper.line(
            (left, frame.starts + course.bottom), (right, frame.starts + course.bottom), "thin" if stacked else "hair"
        )
    outline = [(0.0, frame.starts), (frame.length, frame.starts), (frame.length, frame.starts + frame.height)]
    if frame.gable:
        outline.append((frame.length / 2, frame.starts + frame.peak))
    outline.append((0.0, frame.starts + frame.height))
    paper.path(outline, "edge", closed=True)
    if not stacked:
        return
    for side, reach in enumerate(frame.ends):
        if reach <= 0:
            continue
        for at, course in enumerate(frame.courses):
            if course.top > frame.height + 0.01:
                break
            low, high = frame.starts + course.bottom, frame.starts + course.top
            if at % 2 == 0:
                left, right = (-reach, 0.0) if side == 0 else (frame.length, frame.length + reach)
                paper.box(left, low + 0.01, right, high - 0.01, "thin wood")
            else:
                thick = (course.top - course.bottom) / 2
                x = thick if side == 0 else frame.length - thick
                paper.circle((x, (low + high) / 2), thick * paper.scale * 0.92, "thin wood")


def _opening(paper: Paper, opening: Opening, frame: WallFrame) -> None:
    """A window with its muntins, or a door with its panel; the settling gap over the frame is drawn."""
    left, right = opening.left, opening.left + opening.width
    low, high = frame.starts + opening.sill, frame.starts + opening.sill + opening.height
    paper.open("opening", opening.label)
    paper.box(left - 0.09, low - 0.09, right + 0.09, high + 0.09 + opening.headspace, "edge wood")
    paper.box(left, low, right, high, "edge glass")
    if opening.headspace:
        paper.line((left - 0.09, high + 0.09), (right + 0.09, high + 0.09), "hair")
    if opening.kind == "window":
        paper.line(((left + right) / 2, low), ((left + right) / 2, high), "thin")
        paper.line((left, (low + high) / 2), (right, (low + high) / 2), "thin")
    elif opening.width > 1.4:
        paper.line(((left + right) / 2, low), ((left + right) / 2, high), "edge")
    else:
        paper.box(left + 0.12, low + 0.15, right - 0.12, low + opening.height * 0.45, "thin")
        paper.box(left + 0.12, low + opening.height * 0.52, right - 0.12, high - 0.15, "thin")
    paper.close()


def _gable_roof(paper: Paper, frame: WallFrame) -> None:
    """The rake of the roof over a gable, out to the eaves at both sides, and the ends of purlins in it."""
    rise = (frame.peak - frame.height) / (frame.length / 2)
    out = frame.side
    foot = frame.starts + frame.height - rise * out
    top = frame.starts + frame.peak
    middle = frame.length / 2
    upper = [(-out, foot + BOARD), (middle, top + BOARD), (frame.length + out, foot + BOARD)]
    lower = [(frame.length + out, foot), (middle, top), (-out, foot)]
    paper.path([*upper, *lower], "edge roof", closed=True)
    for purlin in frame.wall["purlins"]:
        count = int(purlin["count"] or 1)
        size = (frame.wall["log size"] or 0.25) / 2
        for at in range(count):
            share = at / max(1, count - 1) if count > 1 else 0.5
            x = frame.length * (0.12 + 0.76 * share) if count > 1 else middle
            y = top - rise * abs(x - middle) - size - 0.02
            paper.circle((x, y), size * paper.scale, "edge wood")


def _porch(paper: Paper, frame: WallFrame, porch: Facts, wall: Facts) -> None:
    """A porch before the wall: its roof, see-through so that the courses behind stay seen, its posts and its edge."""
    depth, length = porch["depth"], porch["length"]
    if depth is None or length is None:
        return
    at = porch["from left"] if porch["from left"] is not None else (frame.length - length) / 2
    high = frame.starts + (porch["roof height"] or min(2.6, frame.height * 0.9))
    eave = high - depth * (porch["roof pitch"] or 0.2)
    paper.open("porch", porch.label)
    paper.path([(at, eave), (at + length, eave), (at + length, high), (at, high)], "edge", closed=True)
    for row in range(1, 4):
        y = eave + (high - eave) * row / 4
        paper.line((at, y), (at + length, y), "hair")
    paper.box(at, eave - BOARD, at + length, eave, "edge roof")
    posts = [post for post in wall.sheet.of_kind("post") if _carries(post, porch)]
    for post in posts[:1]:
        count = int(post["count"] or 2)
        side = (post["size"][0] if post["size"] else 0.15) / 2
        foot = post["foot above grade"] if post["foot above grade"] is not None else 0.15
        for one in range(count):
            x = at + 0.2 + (length - 0.4) * one / max(1, count - 1)
            paper.box(x - side * 1.5, -0.02, x + side * 1.5, foot, "edge masonry")
            paper.box(x - side, foot, x + side, eave - BOARD, "edge wood")
    paper.close()


def _carries(post: Facts, porch: Facts) -> bool:
    above = [*(post["under"] or ())]
    beams = [beam for beam in post["beams"] if post in (beam["on"] or ())]
    above += [part for beam in beams for part in (beam["under"] or ())]
    return porch in above and post["temporary"] != "yes"


def _decks(paper: Paper, frame: WallFrame) -> None:
    """The walking surface of decks before the wall, with their rails."""
    for deck in frame.wall["decks"]:
        if deck["height"] is None:
            continue
        porch = deck["porch"]
        length = (porch["length"] if porch is not None else None) or frame.length
        at = (porch["from left"] if porch is not None else None) or (frame.length - length) / 2
        below = deck["below wood"]
        top = frame.starts - below if below is not None else deck["height"]
        paper.open("deck", deck.label)
        paper.box(at, top - 0.28, at + length, top, "edge wood")
        for rail in (*deck["rails"], *(porch["rails"] if porch is not None else ())):
            up = rail["height"] or 0.9
            paper.line((at, top + up), (at + length, top + up), "edge")
            paper.line((at, top + 0.1), (at + length, top + 0.1), "thin")
        paper.close()


def _gutters(paper: Paper, frame: WallFrame) -> None:
    """Gutters over the wall, and their downspouts."""
    if frame.gable:
        return
    eave = frame.starts + frame.height - ((frame.wall["roof"]["edge drop"] or 0.0) if frame.wall["roof"] else 0.0)
    for gutter in frame.wall["gutters"]:
        paper.open("gutter", gutter.label)
        paper.box(-frame.side, eave - 0.13, frame.length + frame.side, eave, "edge glass")
        for spout in gutter["downspouts"]:
            count = int(spout["count"] or 1)
            for one in range(count):
                x = (0.15 if one % 2 == 0 else frame.length - 0.15) if count < 3 else frame.length * one / (count - 1)
                paper.box(x - 0.04, 0.1, x + 0.04, eave - 0.13, "edge glass")
        paper.close()


def _lines(paper: Paper, frame: WallFrame, sheet: Sheet, system: System) -> None:
    """The line down to which the roof edge shelters, and the line up to which splash wets the wall."""
    sheltered, splash = frame.wall["sheltered height"], frame.wall["splash height"]
    if sheltered is not None and not frame.gable and 0 < sheltered < frame.height:
        y = frame.starts + frame.height - sheltered
        paper.line((0.0, y), (frame.length, y), "sheltered")
        left = -max(frame.side, frame.ends[0], 0.4)
        paper.line((left, y), (0.0, y), "hair")
        paper.text((left, y), "sheltered from", "small", "end", (-6, -2))
        paper.text((left, y), "rain at 30 deg", "small", "end", (-6, 9))
    if splash is not None and splash > 0.02:
        left = -max(frame.side, frame.ends[0], 0.4)
        paper.line((left, splash), (frame.length + 0.3, splash), "splash")
        paper.text((left, splash), f"splash to {show(splash, 'length', system)}", "small", "end", (-6, 3))


def _dimensions(paper: Paper, frame: WallFrame, system: System) -> None:
    paper.across(0.0, frame.length, -BELOW, show(frame.length, "length", system), 26)
    _scale_bar(paper, system)
    right = frame.length + max(frame.side, frame.ends[1], 0.4)
    paper.upward(right, 0.0, frame.starts, show(frame.starts, "length", system), 14)
    paper.upward(right, frame.starts, frame.starts + frame.height, show(frame.height, "length", system), 14)
    if frame.gable:
        peak = frame.starts + frame.peak
        paper.upward(right, frame.starts + frame.height, peak, show(frame.peak - frame.height, "length", system), 14)


def _scale_bar(paper: Paper, system: System) -> None:
    """A bar of ten feet or three metres, in two halves."""
    whole, words = (3.048, "10 ft") if system == "imperial" else (3.0, "3 m")
    x, y, half = 14.0, paper.height - 14.0, whole * paper.scale / 2
    paper.put(f'<rect class="solid" x="{x:.1f}" y="{y:.1f}" width="{half:.1f}" height="5"/>')
    paper.put(f'<rect class="thin" x="{x + half:.1f}" y="{y:.1f}" width="{half:.1f}" height="5"/>')
    paper.put(f'<text class="small" x="{x + 2 * half + 6:.1f}" y="{y + 6:.1f}">{words}</text>')


def _legend(paper: Paper, frame: WallFrame, layer: Layer, view: View, side: float) -> None:
    """The classes of a layer with their shades, and what the wall as a whole has."""
    hidden = {} if layer.name == view.shown else {"style": "display: none"}
    paper.open(f"layer layer-{layer.name}", "", **hidden)
    x, y = paper.x(frame.length + side) + 78, paper.margin[1] + 10
    import textwrap

    for row in textwrap.wrap(layer.title, 30):
        paper.put(f'<text class="small" font-weight="bold" x="{x:.1f}" y="{y:.1f}">{row}</text>')
        y += 13
    if layer.missing:
        for row in textwrap.wrap(f"not known: {layer.missing}", 32):
            paper.put(f'<text class="small" x="{x:.1f}" y="{y:.1f}">{_plain(row)}</text>')
            y += 13
        paper.close()
        return
    y += 2
    counts = [0] * len(layer.scale.names)
    for value in layer.values:
        if value is not None:
            counts[layer.scale.at(value)] += 1
    for name, shade, count in zip(layer.scale.names, layer.scale.shades, counts, strict=True):
        paper.put(f'<rect class="edge" x="{x:.1f}" y="{y:.1f}" width="22" height="13" style="fill: {shade}"/>')
        paper.put(
            f'<text class="small" x="{x + 28:.1f}" y="{y + 10:.1f}">{name}: {count} of {len(layer.values)}</text>'
        )
        y += 17
    if layer.whole:
        paper.put(f'<text class="small" x="{x:.1f}" y="{y + 12:.1f}">wall as a whole: {layer.whole}</text>')
    paper.close()


def _plain(text: str) -> str:
    from html import escape

    return escape(text)


def _pins(paper: Paper, frame: WallFrame, view: View) -> None:
    for pin, at, shift in spots(frame, view.pins):
        link = view.link.replace("{number}", str(pin.number)) if view.link else ""
        paper.pin(at, str(pin.number), pin.hold, link, f"{pin.number}: {pin.title}, {pin.element}", shift)
