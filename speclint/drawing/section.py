"""A section through a wall: roof edge, wood, foundation and ground, with the angles of rain and sun, to scale."""

from __future__ import annotations

import textwrap
from collections.abc import Iterator

from speclint.drawing.cut import INSIDE, Cut, Point, cut_of, half_side, post_at, posts_of
from speclint.drawing.layers import Layer, layers_of
from speclint.drawing.paper import SMALL_LETTER, Paper
from speclint.drawing.rays import LINE, rays
from speclint.drawing.roof_lines import LEVEL, roof_lines
from speclint.drawing.wall_frame import FEW, peak_words, wall_frame
from speclint.measures.facts import Facts, Sheet
from speclint.science.ice import INSIDE_WALL
from speclint.units import System, show

WIDE, TALL = 540.0, 470.0  # pixels
ROOF = 0.22  # thickness of a roof as drawn [m]
RAKE = 0.05  # thickness of a board at a rake as drawn [m]
JOIST = 0.27  # depth of a deck as drawn [m]
TALL_ENOUGH = 16.0  # pixels: a lower footing has its depth told below it
LEFT, RIGHT = 84.0, 236.0  # pixels for labels at both sides


def section(sheet: Sheet, wall: Facts, system: System = "imperial", name: str = "") -> str | None:
    """The section as SVG; nothing where the wall's length or height is not stated."""
    frame = wall_frame(sheet, wall)
    if frame is None:
        return None
    cut = cut_of(frame, system)
    scale = min(72.0, WIDE / (cut.out + INSIDE), TALL / (cut.top + cut.below))
    paper = Paper(-INSIDE, -cut.below, cut.out, cut.top, scale, (LEFT, 16, RIGHT, 58))
    _ground(paper, cut)
    _wall(paper, cut, next(layer for layer in layers_of(sheet, wall) if layer.name == "rain"))
    _roof(paper, cut)
    for porch in wall["porches"][:1] if cut.porch is not None else ():
        _porch(paper, cut, porch)
    _deck(paper, cut)
    for porch in wall["porches"][:1] if cut.porch is not None else ():
        _footing(paper, cut, porch)
    suns = rays(paper, sheet, cut)
    _dimensions(paper, cut)
    rows = textwrap.wrap(suns, int((paper.width - 20) / SMALL_LETTER))
    for row, words in enumerate(rows):
        paper.text((-INSIDE, -cut.below), words, "small", "start", (12 - LEFT, 44 + LINE * row))
    paper.grow(paper.y(-cut.below) + 58 + LINE * (len(rows) - 1))
    facing = show(wall["faces"], "angle", system) if wall["faces"] is not None else "not stated"
    reach, starts = show(cut.edge[0], "length", system), show(frame.starts, "length", system)
    about = f"roof edge {reach} out; wood starts {starts} up; {suns}"
    through = ", through the porch" if cut.porch is not None else ""
    strip = [sheet.home.name, f"outside to the right, faces {facing}{through}", *_edge_words(cut)]
    return paper.svg(f"Section, {wall.label}", about, strip, name)


def _edge_words(cut: Cut) -> Iterator[str]:
    """The heights of drip edge and ridge, and what is taken of them."""
    frame = cut.frame
    if frame.wall["roof"] is None:
        return
    base = frame.starts if roof_lines(frame.wall.sheet, frame.wall["roof"]).from_wood else 0.0
    above = "above the lowest wood" if base else "above grade"
    edge, ridge = (show(height - base, "length", cut.system) for height in (frame.eave, frame.ridge))
    heights = f"drip edge {edge} and ridge {ridge} {above}"
    yield f"{heights}; taken: {LEVEL}" if LEVEL in frame.guessed else heights
    yield from peak_words(frame, cut.system)


def _ground(paper: Paper, cut: Cut) -> None:
    """Grade, and the foundation down to a break: how deep it goes no plan states."""
    frame = cut.frame
    house = next(iter(frame.wall.sheet.of_kind("foundation")), None)
    face = (house["face"] if house is not None else None) or 0.0
    left, low = -cut.thick + 0.02, -cut.below + 0.12
    paper.box(left, low, face, frame.starts, "edge masonry")
    _break_below(paper, left, face, low)
    paper.text((left, low), "depth not stated", "small clear", "end", (-8, 2))
    paper.path([(face, 0.0), (cut.out, -cut.falls * cut.out)], "cut")
    for at in range(int((cut.out - face) / 0.2)):
        x = face + 0.2 * at + 0.1
        paper.line((x, -cut.falls * x), (x - 0.09, -cut.falls * x - 0.12), "hair")
    paper.path([(-INSIDE, frame.starts + 0.02), (-cut.thick, frame.starts + 0.02)], "thin")
    grade = frame.wall["paving" if frame.wall["ground"] == "paving" else "grade"]
    toward = " toward the house" if grade is not None and grade < 0 else ""
    words = "fall of the ground not stated"
    if grade is not None:
        words = f"ground falls {show(abs(grade), 'slope', cut.system)}{toward}"
    ground = frame.wall["ground"]
    paper.text((-INSIDE, -cut.below), f"{ground}; {words}" if ground else words, "small", "start", (12 - LEFT, 30))


def _break_below(paper: Paper, left: float, right: float, low: float) -> None:
    """A break at the lower end of what goes on below it."""
    width = right - left
    teeth = [(left - 0.12 + (width + 0.24) * at / 6, low + (0.07 if at % 2 else -0.07)) for at in range(7)]
    paper.path([(left - 0.12, low - 0.16), *teeth, (right + 0.12, low - 0.16)], "blank", closed=True, fill="#ffffff")
    paper.path(teeth, "thin")


def _wall(paper: Paper, cut: Cut, layer: Layer) -> None:
    """The courses, cut through, each shaded by the driving rain that strikes it there."""
    frame, thick = cut.frame, cut.thick
    log = frame.wall["build"] == "log round"
    under = next((zone.number - 1 for zone in layer.zones if "under" in zone.words.split()[0]), None)
    for at, course in enumerate(frame.courses):
        value = layer.values[at] if at < len(layer.values) else None
        if under is not None and at < len(layer.parts) and layer.parts[at]:
            value = layer.parts[at][under]
        fill = "#ffffff" if value is None else layer.scale.shades[layer.scale.at(value)]
        low, high = frame.starts + course.bottom, frame.starts + course.top
        if log:
            x, y = paper.x(-thick / 2), paper.y((low + high) / 2)
            paper.put(f'<ellipse class="edge" cx="{x:.1f}" cy="{y:.1f}" rx="{thick / 2 * paper.scale:.1f}" '
                      f'ry="{(high - low) / 2 * paper.scale:.1f}" style="fill: {fill}"/>')  # fmt: skip
        else:
            paper.box(-thick, low, 0.0, high, "edge", fill)


def _roof(paper: Paper, cut: Cut) -> None:
    """The roof over the wall, and how far it stands above the wood there."""
    frame, (reach, height) = cut.frame, cut.eave
    top = frame.starts + (frame.peak if frame.gable else frame.height)
    if frame.raised > FEW:
        at_wall = top + frame.raised
        paper.box(-cut.thick * 0.8, top, -cut.thick * 0.2, at_wall, "untold")
        at, down = (top, 16) if frame.high else (top + frame.raised / 2, -3)  # a roof that falls inside is clear below
        for row, words in enumerate(("roof raised", show(frame.raised, "length", cut.system))):
            paper.text((-cut.thick, at), words, "small clear", "end", (-6, 14 * row + down))
    if frame.gable:
        if frame.raised > FEW:  # the rake hangs down to the level of the wood
            paper.box(reach - RAKE, height, reach, frame.ridge, "edge roof")
        paper.box(-INSIDE, frame.ridge, reach, frame.ridge + ROOF, "edge roof")
        return
    if frame.high and frame.top > height + FEW:  # what is at the high edge hangs down to the level of the wood
        paper.box(reach - RAKE, height, reach, frame.top, "edge roof")
        height = frame.top
    pitch = -frame.pitch if frame.high else frame.pitch
    inner = height + (reach + INSIDE) * pitch
    up = ROOF * (1 + pitch**2) ** 0.5
    corners = [(reach, height), (-INSIDE, inner), (-INSIDE, inner + up), (reach, height + up)]
    paper.path(corners, "edge roof", closed=True)
    _ice_barrier(paper, cut)
    if any(gutter["porch"] is None for gutter in frame.wall["gutters"]):
        paper.path([(reach, height + 0.1), (reach, height - 0.02), (reach + 0.13, height - 0.02),
                    (reach + 0.13, height + 0.1)], "edge")  # fmt: skip


def _ice_barrier(paper: Paper, cut: Cut) -> None:
    """The ice barrier up the slope from the edge, as wide as stated, and the line that it is to reach."""
    frame, (reach, height) = cut.frame, cut.eave
    roof = frame.wall["roof"]
    stated = roof["ice barrier"] if roof is not None else None
    if stated is None or frame.high:
        return
    pitch, rise = frame.pitch, (1 + frame.pitch**2) ** 0.5
    up = ROOF * rise  # the top of the roof over its underside

    def on_roof(x: float) -> Point:
        return x, height + (reach - x) * pitch + up

    need = -cut.thick - INSIDE_WALL
    if need > -INSIDE + 0.02:
        x, y = on_roof(need)
        paper.path([(x, y - up - 0.1), (x, y + 0.4)], "untold")
        told = '24"' if cut.system == "imperial" else show(INSIDE_WALL, "length", cut.system)
        paper.text((x, y + 0.4), f"{told} inside the wall", "small clear", "start", (4, 6))
    end = max(-INSIDE, reach - stated / rise)
    words = f"ice barrier {show(stated, 'length', cut.system)}"
    if stated > 0:
        paper.path([on_roof(reach), on_roof(end)], "barrier")
    paper.text(on_roof(reach + 0.7 * (end - reach) if stated > 0 else reach), words, "small clear", "start", (8, -8))


def _porch(paper: Paper, cut: Cut, porch: Facts) -> None:
    """The roof of a porch, and one of its posts."""
    assert cut.porch is not None
    (depth, low), high = cut.porch
    paper.path([(0.0, high), (depth, low), (depth, low + 0.15), (0.0, high + 0.15)], "edge roof", closed=True)
    pitch = (high - low) / depth if depth else 0.0
    for post in posts_of(cut.frame, porch):
        side, x = half_side(post), post_at(post, porch)
        paper.box(x - side, _foot(cut, post, x), x + side, high - x * pitch, "edge wood")


def _foot(cut: Cut, post: Facts, x: float) -> float:
    """Height of the foot of a post, above the ground where it stands. [m]"""
    up = post["foot above grade"] if post["foot above grade"] is not None else 0.15
    return float(up) - cut.falls * x


def _footing(paper: Paper, cut: Cut, porch: Facts) -> None:
    """The footing of a post, from under its foot down to its stated depth below the ground where it stands."""
    for post in posts_of(cut.frame, porch):
        x, half = post_at(post, porch), 1.6 * half_side(post)
        grade, frost = -cut.falls * x, post["footing"]
        low = max(-cut.below + 0.12, grade - frost) if frost is not None else -cut.below + 0.12
        paper.box(x - half, low, x + half, max(grade + 0.05, _foot(cut, post, x) - 0.02), "edge masonry")
        if frost is None or low > grade - frost + 0.01:
            _break_below(paper, x - half, x + half, low)
        words = "depth of footing not stated"
        if frost is not None:
            words = f"footing {show(frost, 'length', cut.system)} deep"
            if low <= grade - frost + 0.01 and frost * paper.scale > TALL_ENOUGH:
                paper.upward(x + half, low, grade, words, 8)
                return
        paper.text((x, low), words, "small clear", "middle", (0, 18))


def _deck(paper: Paper, cut: Cut) -> None:
    """The deck, to its stated depth, or to a break."""
    if cut.deck is None:
        return
    out, top, gap = cut.deck
    paper.box(gap, top - 0.03, out, top, "edge wood")
    paper.box(gap, top - JOIST, out, top - 0.03, "thin wood")
    if not cut.ends:
        teeth = [(out + (0.07 if at % 2 else -0.07), top + 0.1 - (JOIST + 0.2) * at / 6) for at in range(7)]
        right = out + 0.16
        paper.path([(right, top + 0.1), *teeth, (right, top - JOIST - 0.1)], "blank", closed=True, fill="#ffffff")
        paper.path(teeth, "thin")
        deck = cut.frame.wall["decks"][0]
        stated = deck["depth"]
        words = f"{deck.label} goes on to {show(stated, 'length', cut.system)}" if stated else "its depth not stated"
        paper.text((out, top - JOIST), words, "small clear", "end", (0, 16))


def _dimensions(paper: Paper, cut: Cut) -> None:
    frame, edge, system = cut.frame, cut.edge, cut.system
    if edge[0] > 0.1:
        paper.across(0.0, edge[0], edge[1], show(edge[0], "length", system), 18)
    paper.upward(-INSIDE, 0.0, frame.starts, show(frame.starts, "length", system), -10)
    top = frame.starts + (frame.peak if frame.gable else frame.height)
    paper.upward(-INSIDE, frame.starts, top, show(top - frame.starts, "length", system), -10)
