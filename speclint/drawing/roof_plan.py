"""A roof plan: each slope to scale from above, walls dashed under it, with the way of its water and its outlets."""

from __future__ import annotations

import textwrap
from math import cos, radians, sin

from speclint.drawing.paper import SMALL_LETTER, Paper
from speclint.drawing.slopes import Slope, Told, ends_of, gutters_of, porch_rows, slope_rows, slopes_of
from speclint.measures.facts import Facts, Sheet
from speclint.measures.water_path import flow_of
from speclint.quantity import Quantity
from speclint.units import System

GAP = 1.2  # metres between roofs
SCALE = 26.0
COLUMN, ALONE = 14.0, 19.4  # metres across that a roof has for what is written, beside others and alone
ROW = 14.0  # pixels from row to row
FREE = 26.0  # pixels between what is drawn and where its water ends
KEY = 62.0  # pixels for the key and the scale bar
DOT = 5.0  # radius of a downspout [px]


def roof_plan(sheet: Sheet, system: System = "imperial", name: str = "") -> str | None:
    """The plan as SVG; nothing where no roof has a slope whose size is known."""
    flow = flow_of(sheet)
    roofs = [(roof, slopes_of(roof, flow)) for roof in sheet.of_kind("roof")]
    roofs = [(roof, slopes) for roof, slopes in roofs if slopes]
    if not roofs:
        return None
    rain = sheet.quantity(sheet["site"], "design rain") if "site" in sheet.facts else None
    told = Told(flow, float(rain.value) if isinstance(rain, Quantity) else None, system)
    least = COLUMN if len(roofs) > 1 else ALONE
    widths = [max(least, *(slope.length for slope in slopes)) for _, slopes in roofs]
    pairs = list(zip(roofs, widths, strict=True))
    upper = max(_upper(slopes, width, told) for (_, slopes), width in pairs)
    lower = max(_lower(slopes, width, told) for (_, slopes), width in pairs)
    paper = Paper(0.0, -lower, sum(widths) + GAP * (len(roofs) - 1), upper, SCALE, (30, 20, 30, KEY), 470.0)
    left = 0.0
    for (roof, slopes), width in zip(roofs, widths, strict=True):
        _roof(paper, roof, slopes, (left + width / 2, width), told)
        left += width + GAP
    _key(paper, system)
    about = "; ".join(f"{roof.label}: {len(slopes)} slopes" for roof, slopes in roofs)
    shown = f"design rain {rain.shown(system)}" if isinstance(rain, Quantity) else "design rain not known"
    strip = [sheet.home.name, shown, *(["roofs side by side, not in place"] if len(roofs) > 1 else [])]
    return paper.svg("Roof plan and water", about, strip, name)


def _key(paper: Paper, system: System) -> None:
    """What the lines and marks are, and a scale bar."""
    x, y = 14.0, paper.height - KEY + 34
    for look, words in (
        ("hidden", "wall below"),
        ("untold", "deck below"),
        ("cut", "gutter"),
        ("water", "way of the water"),
    ):
        paper.put(f'<line class="{look}" x1="{x:.1f}" y1="{y - 3:.1f}" x2="{x + 24:.1f}" y2="{y - 3:.1f}"/>')
        paper.put(f'<text class="small" x="{x + 28:.1f}" y="{y:.1f}">{words}</text>')
        x += 42 + len(words) * SMALL_LETTER
    paper.put(f'<circle class="solid" cx="{x + 5:.1f}" cy="{y - 3:.1f}" r="4"/>')
    paper.put(f'<text class="small" x="{x + 13:.1f}" y="{y:.1f}">downspout</text>')
    paper.scale_bar(system, 14.0, y + 12)


def _upper(slopes: list[Slope], width: float, told: Told) -> float:
    """How far up the sheet a roof takes room, from its ridge. [m]"""
    return _room(slopes[0], width, told) if len(slopes) > 1 else 1.0


def _lower(slopes: list[Slope], width: float, told: Told) -> float:
    """How far down the sheet a roof takes room, from its ridge. [m]"""
    return _room(slopes[1] if len(slopes) > 1 else slopes[0], width, told)


def _room(slope: Slope, width: float, told: Told) -> float:
    rows = len(_end_rows(slope, width, told))
    return slope.depth + _beyond(slope) + (FREE + ROW * rows) / SCALE


def _beyond(slope: Slope) -> float:
    """How far porches and decks reach past the eave. [m]"""
    reach = slope.wall["roof reach"] or 0.0
    depths = [part["depth"] or 0.0 for name in ("porches", "decks") for part in slope.wall[name]]
    return max(0.0, *(depth - reach for depth in depths), 0.0) if depths else 0.0


def _roof(paper: Paper, roof: Facts, slopes: list[Slope], place: tuple[float, float], told: Told) -> None:
    """A roof in its column: the middle of it, and its width. [m]"""
    middle, width = place
    pairs = [(slopes[0], -1.0)] if len(slopes) == 1 else [(slopes[0], 1.0), (slopes[1], -1.0)]
    for slope, down in pairs:
        left, right = middle - slope.length / 2, middle + slope.length / 2
        inset = slope.inset
        eave = down * slope.depth
        paper.path([(left + inset, 0.0), (right - inset, 0.0), (right, eave), (left, eave)], "edge roof", closed=True)
        inside = slope.length - inset - 0.6
        rows = [words for line in slope_rows(slope, told) for words in _wrap(line, inside)]
        first = max(0.3 * slope.depth * SCALE, 26.0 + ROW * len(roof["chimneys"]))
        if down > 0:
            first = -max(0.42 * slope.depth * SCALE, 20.0 + ROW * len(rows))
        for row, words in enumerate(rows):
            paper.text((middle, 0.0), words, "small" if row else "note", "middle", (0, first + ROW * row))
        after = max(0.62 * slope.depth, (first + ROW * len(rows) - 6) / SCALE if down < 0 else -first / SCALE + 0.5)
        _arrow(paper, middle, down, slope, after)
        _edge(paper, slope, (left, right, eave), down, told)
        _captions(paper, slope, (middle, eave), down, _end_rows(slope, width, told))
    for slope in slopes[2:] if slopes[0].hip else ():
        _hip_end(paper, slope, slopes, middle, told)
    paper.text((middle, 0.0), roof.label, "title", "middle", (0, -6))
    half = slopes[0].length / 2 - slopes[0].inset
    paper.line((middle - half, 0.0), (middle + half, 0.0), "edge")
    _walls(paper, pairs, middle)
    _north(
        paper, middle + slopes[0].length / 2 + (0.9 if slopes[0].hip else -0.9), pairs[0][0].wall["faces"], pairs[0][1]
    )
    for row, chimney in enumerate(roof["chimneys"]):
        words = f"{chimney.label}, not drawn: place not stated"
        paper.text((middle, 0.0), words, "small clear", "middle", (0, 14 + 14 * row))


def _hip_end(paper: Paper, slope: Slope, slopes: list[Slope], middle: float, told: Told) -> None:
    """A slope at an end of a hipped roof, on the side to which its wall looks, and its water."""
    turned = ((slope.wall["faces"] or 0.0) - (slopes[0].wall["faces"] or 0.0)) % 360
    side = 1.0 if turned < 180 else -1.0
    x = middle + side * slopes[0].length / 2
    tip = (x - side * slopes[0].inset, 0.0)
    paper.path([(x, slopes[0].depth), tip, (x, -slopes[1].depth)], "edge roof", closed=True)
    inner = x - side * slopes[0].rake  # inside the line of the wall
    wide = slopes[0].inset - slopes[0].rake - 0.8
    rows = [words for line in (told.at(slope.node), f"over {slope.wall.label}") for words in _wrap(line, wide)]
    for row, words in enumerate(rows):
        anchor = "end" if side > 0 else "start"
        paper.text((inner, 0.0), words, "small", anchor, (-6 * side, 4 + ROW * (row - (len(rows) - 1) / 2)))


def _wrap(words: str, wide: float) -> list[str]:
    """Words in rows that a width holds. [m]"""
    return textwrap.wrap(words, max(10, int(wide * SCALE / SMALL_LETTER)), break_on_hyphens=False)


def _walls(paper: Paper, pairs: list[tuple[Slope, float]], middle: float) -> None:
    """The walls under the roof: their faces along the eaves, and the ends that join them."""
    faces = []
    for slope, down in pairs:
        half = slope.length / 2 - slope.rake
        y = down * (slope.depth - (slope.wall["roof reach"] or 0.0))
        faces.append((half, y))
        paper.line((middle - half, y), (middle + half, y), "hidden")
    half = min(half for half, _ in faces)
    low, high = min(0.0, *(y for _, y in faces)), max(0.0, *(y for _, y in faces))
    for x in (middle - half, middle + half):
        paper.line((x, low), (x, high), "hidden")


def _north(paper: Paper, x: float, faces: float | None, down: float) -> None:
    """An arrow to the north: up the sheet is the way that the wall of the upper slope looks."""
    if faces is None:
        paper.text((x, 0.0), "north not stated", "small", "end", (0, -16))
        return
    up = faces if down > 0 else faces + 180.0
    across, along = sin(radians(-up)), cos(radians(-up))
    y, far = 1.15, 0.62
    paper.line((x - far * across, y - far * along), (x + far * across, y + far * along), "edge")
    tip = (x + far * across, y + far * along)
    for turn in (150.0, 210.0):
        side = (tip[0] + 0.3 * sin(radians(-up + turn)), tip[1] + 0.3 * cos(radians(-up + turn)))
        paper.line(tip, side, "edge")
    paper.text((x + (far + 0.35) * across, y + (far + 0.35) * along), "N", "note", "middle", (0, 4))


def _arrow(paper: Paper, x: float, down: float, slope: Slope, after: float) -> None:
    """The way of the water down a slope, from below what is written on it. [m]"""
    tip = slope.depth * 0.95
    start, tip = down * min(after, tip - 0.35), down * tip
    paper.line((x, start), (x, tip), "water")
    paper.path([(x - 0.18, tip - down * 0.3), (x, tip), (x + 0.18, tip - down * 0.3)], "water")


def _edge(paper: Paper, slope: Slope, edges: tuple[float, float, float], down: float, told: Told) -> None:
    """What is at the eave and beyond: gutter and outlets, lower roofs with theirs, decks."""
    left, right, eave = edges
    face = eave - down * (slope.wall["roof reach"] or 0.0)
    ends = left + slope.rake, right - slope.rake
    for deck in slope.wall["decks"]:
        _deck(paper, deck, ends, face, down, told)
    for porch in slope.wall["porches"]:
        _porch(paper, porch, ends, (face, eave), down, told)
    _gutter(paper, gutters_of(slope), (left, right, eave), down)


def _gutter(paper: Paper, gutters: list[Facts], edges: tuple[float, float, float], down: float) -> None:
    """The gutters along an edge, and their downspouts evenly along it."""
    left, right, edge = edges
    if gutters:
        paper.box(left, min(edge, edge + down * 0.22), right, max(edge, edge + down * 0.22), "cut")
    spouts = sum(int(spout["count"] or 1) for gutter in gutters for spout in gutter["downspouts"])
    for at in range(spouts):
        x = left + 0.3 if spouts == 1 else left + 0.3 + (right - left - 0.6) * at / (spouts - 1)
        paper.circle((x, edge + down * 0.11), DOT, "solid")


def _captions(paper: Paper, slope: Slope, at: tuple[float, float], down: float, rows: list[str]) -> None:
    """Where the water of a slope ends, beyond all that is drawn before it."""
    middle, eave = at
    out = eave + down * _beyond(slope)
    for row, words in enumerate(rows):
        shift = FREE + ROW * row - 4 if down < 0 else ROW * (row - len(rows) + 1) - FREE + 8
        paper.text((middle, out), words, "small", "middle", (0, shift))


def _end_rows(slope: Slope, width: float, told: Told) -> list[str]:
    """Where the water of a slope and of the porches before it ends, in rows that its column holds."""
    lines: list[str] = []
    for porch in slope.wall["porches"]:
        if porch["length"] is not None and porch["depth"] is not None:
            long = min(float(porch["length"]), slope.length - 2 * slope.rake)
            past = abs(float(porch["depth"]) - float(slope.wall["roof reach"] or 0.0))
            lines += [] if _inside(porch, long, past, told) else porch_rows(porch, told)
    lines += ends_of(slope, told)
    return [words for line in lines for words in _wrap(line, width)]


def _deck(paper: Paper, deck: Facts, ends: tuple[float, float], face: float, down: float, told: Told) -> None:
    """A deck, as long as the porch over it, or as the wall."""
    left, right = ends if deck["porch"] is None else _along(deck["porch"], ends, down)
    out = face + down * (deck["depth"] or 0.0)
    paper.path([(left, face), (right, face), (right, out), (left, out)], "untold", closed=True)
    if not deck["under"]:
        words = f"{deck.label}, {told.at(deck.label)}"
        paper.text((left + 0.2, out), words, "small clear", "start", (0, -5 * down + (8 if down > 0 else 0)))


def _along(porch: Facts, ends: tuple[float, float], down: float) -> tuple[float, float]:
    """The ends of a porch on the sheet: a wall that looks up the sheet has its left end at the right."""
    length = min(float(porch["length"] or ends[1] - ends[0]), ends[1] - ends[0])
    start = (ends[1] - ends[0] - length) / 2 if porch["from left"] is None else float(porch["from left"])
    left = ends[0] + start if down < 0 else ends[1] - start - length
    return left, left + length


def _porch(
    paper: Paper, porch: Facts, ends: tuple[float, float], edges: tuple[float, float], down: float, told: Told
) -> None:
    """A porch roof beyond the eave of the main roof, with its own water and what comes from above."""
    if porch["length"] is None or porch["depth"] is None:
        return
    left, right = _along(porch, ends, down)
    face, eave = edges
    out = face + down * float(porch["depth"])
    paper.path([(left, eave), (right, eave), (right, out), (left, out)], "edge glass", closed=True)
    mine = [gutter for gutter in porch.sheet.of_kind("gutter") if gutter["porch"] is porch]
    _gutter(paper, mine, (left, right, out), down)
    rows = _inside(porch, right - left, abs(out - eave), told) or [porch.label]
    for row, words in enumerate(rows):
        spot = ((left + right) / 2, (eave + out) / 2)
        paper.text(spot, words, "small", "middle", (0, 4 + ROW * row - ROW / 2 * (len(rows) - 1)))


def _inside(porch: Facts, wide: float, deep: float, told: Told) -> list[str]:
    """What is written on a porch roof; nothing where it has no room for that, and it is told beyond the eave. [m]"""
    rows = [words for line in porch_rows(porch, told) for words in _wrap(line, wide - 0.4)]
    return rows if len(rows) * ROW + 4 <= deep * SCALE else []
