"""A roof plan: each slope to scale from above, walls dashed under it, with the way of its water and its outlets."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from math import cos, radians, sin

from speclint.drawing.paper import Paper
from speclint.measures.facts import Facts, Sheet
from speclint.measures.water_path import flow_of
from speclint.quantity import Quantity
from speclint.relations.flow import Flow
from speclint.science.roof_water import runoff
from speclint.units import System, show

GAP = 2.4  # metres between roofs
BAND = 2.2  # metres below an eave for what lies there and where the water ends
SCALE = 26.0
LETS_GO = {
    "splash block": " onto a splash block",
    "extension": " from an extension",
    "daylight": " from a buried pipe",
    "drywell": " in a buried pit",
}  # fmt: skip
KEY = 62.0  # pixels for the key and the scale bar


@dataclass(frozen=True, slots=True)
class Slope:
    """A slope as drawn: the wall under its eave, its length along it, its level depth, and its reach past. [m]"""

    wall: Facts
    length: float
    depth: float
    node: str
    eave: str
    rake: float


def roof_plan(sheet: Sheet, system: System = "imperial", name: str = "") -> str | None:
    """The plan as SVG; nothing where no roof has a slope whose size is known."""
    flow = flow_of(sheet)
    roofs = [(roof, _slopes(roof, flow)) for roof in sheet.of_kind("roof")]
    roofs = [(roof, slopes) for roof, slopes in roofs if slopes]
    if not roofs:
        return None
    widths = [_width(sheet, slopes) for _, slopes in roofs]
    upper = max(_upper(sheet, slopes) for _, slopes in roofs)
    lower = max(_lower(sheet, slopes) for _, slopes in roofs)
    paper = Paper(0.0, -lower, sum(widths) + GAP * (len(roofs) - 1), upper, SCALE, (30, 20, 30, KEY), 470.0)
    rain = sheet.quantity(sheet["site"], "design rain") if "site" in sheet.facts else None
    told = _Told(flow, float(rain.value) if isinstance(rain, Quantity) else None, system)
    left = 0.0
    for (roof, slopes), width in zip(roofs, widths, strict=True):
        _roof(paper, roof, slopes, left + width / 2, told)
        left += width + GAP
    _key(paper, system)
    about = "; ".join(f"{roof.label}: {len(slopes)} slopes" for roof, slopes in roofs)
    shown = f"design rain {rain.shown(system)}" if isinstance(rain, Quantity) else "design rain not known"
    strip = [sheet.home.name, shown, *(["roofs side by side, not in place"] if len(roofs) > 1 else [])]
    return paper.svg("Roof plan and water", about, strip, name)


def _key(paper: Paper, system: System) -> None:
    """What the lines and marks are, and a scale bar."""
    x, y = 14.0, paper.height - KEY + 34
    for look, words, wide in (
        ("hidden", "wall below", 84.0),
        ("untold", "deck below", 84.0),
        ("cut", "gutter", 62.0),
        ("water", "way of the water", 112.0),
    ):
        paper.put(f'<line class="{look}" x1="{x:.1f}" y1="{y - 3:.1f}" x2="{x + 24:.1f}" y2="{y - 3:.1f}"/>')
        paper.put(f'<text class="small" x="{x + 28:.1f}" y="{y:.1f}">{words}</text>')
        x += 30 + wide - 22
    paper.put(f'<circle class="solid" cx="{x + 5:.1f}" cy="{y - 3:.1f}" r="4"/>')
    paper.put(f'<text class="small" x="{x + 13:.1f}" y="{y:.1f}">downspout</text>')
    paper.scale_bar(system, 14.0, y + 12)


@dataclass(frozen=True, slots=True)
class _Told:
    """Amounts of water in words."""

    flow: Flow
    rain: float | None
    system: System

    def at(self, node: str) -> str:
        """The area whose water passes a node, and its flow."""
        return self.words(self.flow.at[node].amount)

    def words(self, amount: float) -> str:
        """An area and its flow."""
        area = show(amount, "area", self.system)
        return f"{area}, {show(runoff(amount, self.rain), 'flow', self.system)}" if self.rain is not None else area


def _slopes(roof: Facts, flow: Flow) -> list[Slope]:
    found = []
    for tie in flow.web.out_of(roof.label) if roof.label in flow.web.nodes else ():
        wall = roof.sheet.facts.get(tie.target.partition(" over ")[2])
        if wall is None or wall["length"] is None:
            continue
        reach, run = wall["roof reach"], roof["run"]
        if reach is None or run is None:
            continue
        rake = reach if roof["form"] == "hip" else (roof["rakes"] or 0.0)
        eave = next((out.target for out in flow.web.out_of(tie.target) if out.target.startswith("eave of ")), "")
        found.append(Slope(wall, wall["length"] + 2 * rake, run + reach, tie.target, eave, rake))
    if roof["form"] == "hip":
        return found
    return sorted(found[:2], key=lambda slope: -cos(radians(slope.wall["faces"] or 0.0)))  # north up


def _width(sheet: Sheet, slopes: list[Slope]) -> float:
    return max(9.0, *(slope.length for slope in slopes))


def _upper(sheet: Sheet, slopes: list[Slope]) -> float:
    return slopes[0].depth + _beyond(slopes[0]) + BAND if len(slopes) > 1 else 1.0


def _lower(sheet: Sheet, slopes: list[Slope]) -> float:
    slope = slopes[1] if len(slopes) > 1 else slopes[0]
    return slope.depth + _beyond(slope) + BAND


def _beyond(slope: Slope) -> float:
    """How far porches and decks reach past the eave. [m]"""
    reach = slope.wall["roof reach"] or 0.0
    depths = [part["depth"] or 0.0 for name in ("porches", "decks") for part in slope.wall[name]]
    return max(0.0, *(depth - reach for depth in depths), 0.0) if depths else 0.0


def _roof(paper: Paper, roof: Facts, slopes: list[Slope], middle: float, told: _Told) -> None:
    hip = roof["form"] == "hip" and len(slopes) >= 4
    pairs = [(slopes[0], -1.0)] if len(slopes) == 1 else [(slopes[0], 1.0), (slopes[1], -1.0)]
    for slope, down in pairs:
        left, right = middle - slope.length / 2, middle + slope.length / 2
        inset = min(slope.depth, slope.length / 2) if hip else 0.0
        eave = down * slope.depth
        paper.path([(left + inset, 0.0), (right - inset, 0.0), (right, eave), (left, eave)], "edge roof", closed=True)
        _arrow(paper, middle, down, slope)
        spot = (middle, down * slope.depth * 0.42)
        for row, words in enumerate((told.at(slope.node), f"over {slope.wall.label}", *_stated(slope, told))):
            paper.text(spot, words, "small" if row else "note", "middle", (0, 14 * row))
        _edge(paper, slope, left, right, eave, down, told)
    if hip:
        for side, slope in ((-1.0, slopes[2]), (1.0, slopes[3])):
            x = middle + side * pairs[0][0].length / 2
            paper.path([(x, slopes[0].depth), (x - side * slopes[0].depth, 0.0), (x, -slopes[1].depth)], "edge")
            paper.text((x, 0.0), told.at(slope.node), "small", "end" if side > 0 else "start", (-8 * side, 3))
    paper.text((middle, 0.0), roof.label, "title", "middle", (0, -6))
    inset = min(slopes[0].depth, slopes[0].length / 2) if hip else 0.0
    half = slopes[0].length / 2 - inset
    paper.line((middle - half, 0.0), (middle + half, 0.0), "edge")
    _walls(paper, pairs, middle)
    _north(paper, middle + slopes[0].length / 2 - 0.9, pairs[0][0].wall["faces"], pairs[0][1])
    for row, chimney in enumerate(roof["chimneys"]):
        words = f"{chimney.label}, not drawn: place not stated"
        paper.text((middle, 0.0), words, "small clear", "middle", (0, 14 + 14 * row))


def _stated(slope: Slope, told: _Told) -> list[str]:
    """Why the area of a slope is not the one that is drawn: its gutter states what it drains."""
    drawn, passed = slope.length * slope.depth, told.flow.at[slope.node].amount
    if abs(drawn - passed) < 0.02 * drawn:
        stated = [gutter.label for gutter in slope.wall["gutters"] if gutter["drains"] is not None]
        same = show(drawn, "area", told.system) == show(passed, "area", told.system)
        if same or not stated:
            return []
    names = ", ".join(gutter.label for gutter in slope.wall["gutters"] if gutter["drains"] is not None)
    area = show(drawn, "area", told.system)
    return [f"as {names} states; as drawn {area}" if names else f"as drawn {area}"]


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


def _arrow(paper: Paper, x: float, down: float, slope: Slope) -> None:
    start, tip = down * slope.depth * 0.62, down * slope.depth * 0.93
    paper.line((x, start), (x, tip), "water")
    paper.path([(x - 0.18, tip - down * 0.3), (x, tip), (x + 0.18, tip - down * 0.3)], "water")


def _edge(paper: Paper, slope: Slope, left: float, right: float, eave: float, down: float, told: _Told) -> None:
    """What is at the eave and beyond: gutter and outlets, lower roofs, decks, and where the water ends."""
    reach = slope.wall["roof reach"] or 0.0
    face = eave - down * reach
    middle = (left + right) / 2
    for deck in slope.wall["decks"]:
        _deck(paper, deck, (left + slope.rake, right - slope.rake), face, down, told)
    for porch in slope.wall["porches"]:
        _porch(paper, porch, (left + slope.rake, right - slope.rake), (face, eave), down, told)
    for gutter in slope.wall["gutters"]:
        paper.box(left, min(eave, eave + down * 0.22), right, max(eave, eave + down * 0.22), "cut")
        spouts = [one for spout in gutter["downspouts"] for one in [spout] * int(spout["count"] or 1)]
        for at in range(len(spouts)):
            ends = left + 0.3, right - 0.3
            x = ends[0] if len(spouts) == 1 else ends[0] + (ends[1] - ends[0]) * at / (len(spouts) - 1)
            paper.circle((x, eave + down * 0.11), 5, "solid")
    out = eave + down * (_beyond(slope) + 0.35)
    for row, words in enumerate(_ends(slope, told)):
        shift = (14 * row + 10) * (1 if down < 0 else -1) + (6 if down < 0 else 0)
        paper.text((middle, out), words, "small", "middle", (0, shift))


def _deck(paper: Paper, deck: Facts, ends: tuple[float, float], face: float, down: float, told: _Told) -> None:
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
    paper: Paper, porch: Facts, ends: tuple[float, float], edges: tuple[float, float], down: float, told: _Told
) -> None:
    """A porch roof beyond the eave of the main roof, with its own water and what comes from above."""
    if porch["length"] is None or porch["depth"] is None:
        return
    left, right = _along(porch, ends, down)
    face, eave = edges
    out = face + down * float(porch["depth"])
    paper.path([(left, eave), (right, eave), (right, out), (left, out)], "edge glass", closed=True)
    passed, own = told.flow.at[porch.label].amount, told.flow.web.nodes[porch.label].own or 0.0
    rows = [f"{porch.label}: {told.words(passed)}"]
    if passed - own > 0.01 * passed:
        parts = show(own, "area", told.system), show(passed - own, "area", told.system)
        rows.append(f"{parts[0]} of its own and {parts[1]} from the roof above")
    for row, words in enumerate(rows):
        spot = ((left + right) / 2, (eave + out) / 2)
        paper.text(spot, words, "small", "middle", (0, 4 + 14 * row - 7 * (len(rows) - 1)))


def _ends(slope: Slope, told: _Told) -> Iterator[str]:
    """Where the water of a slope ends, in words, with how much of it."""
    flow = told.flow
    if not slope.eave:
        return
    reached = [flow.web.nodes[name] for name in flow.web.reached(slope.eave)]
    for node in reached:
        if node.kind != "downspout" or flow.at[node.name].amount <= 0:
            continue
        spout = slope.wall.sheet.facts[node.element]
        far = spout["distance"]
        onto = LETS_GO.get(str(spout["ends"]), "")
        where = f"lets go {show(far, 'length', told.system)} from the wall{onto}" if far is not None else "lets go"
        yield f"{node.element} {where}: {told.at(node.name)}"
    for node in reached:
        before = [other for other in reached if any(tie.target == node.name for tie in flow.web.out_of(other.name))]
        if flow.at[node.name].amount <= 0 or any(other.kind in ("downspout", "ground") for other in before):
            continue
        if node.kind == "ground":
            yield f"drips on the {node.name}: {told.at(node.name)}"
        elif not flow.web.out_of(node.name):
            yield f"{node.name}: {told.at(node.name)}; {node.says}"
