"""A roof plan: each slope to scale from above, with the way of its water, areas, gutters and outlets."""

from __future__ import annotations

from dataclasses import dataclass

from speclint.drawing.paper import Paper
from speclint.measures.facts import Facts, Sheet
from speclint.measures.water_path import flow_of
from speclint.quantity import Quantity
from speclint.relations.flow import Flow
from speclint.science.roof_water import runoff
from speclint.units import System, show

GAP = 2.4  # metres between roofs
BAND = 3.2  # metres below an eave for what lies there and where the water ends
SCALE = 26.0
LETTER = 0.42  # metres that a line of lettering takes at that scale


@dataclass(frozen=True, slots=True)
class Slope:
    """A slope as drawn: the wall under its eave, its length along it and its level depth. [m]"""

    wall: Facts
    length: float
    depth: float
    node: str
    eave: str


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
    paper = Paper(0.0, -lower, sum(widths) + GAP * (len(roofs) - 1), upper, SCALE, (30, 30, 30, 40))
    rain = sheet.quantity(sheet["site"], "design rain") if "site" in sheet.facts else None
    told = _Told(flow, float(rain.value) if isinstance(rain, Quantity) else None, system)
    left = 0.0
    for (roof, slopes), width in zip(roofs, widths, strict=True):
        _roof(paper, roof, slopes, left + width / 2, told)
        left += width + GAP
    about = "; ".join(f"{roof.label}: {len(slopes)} slopes" for roof, slopes in roofs)
    shown = f"design rain {rain.shown(system)}" if isinstance(rain, Quantity) else "design rain not known"
    return paper.svg("Roof plan and water", about, [sheet.home.name, shown, "roofs side by side, not in place"], name)


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
        found.append(Slope(wall, wall["length"] + 2 * rake, run + reach, tie.target, eave))
    return found[:2] if roof["form"] != "hip" else found


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
        paper.text(spot, told.at(slope.node), "note", "middle", (0, 0))
        paper.text(spot, f"over {slope.wall.label}", "small", "middle", (0, 13))
        _edge(paper, slope, left, right, eave, down, told)
    if hip:
        for side, slope in ((-1.0, slopes[2]), (1.0, slopes[3])):
            x = middle + side * pairs[0][0].length / 2
            paper.path([(x, slopes[0].depth), (x - side * slopes[0].depth, 0.0), (x, -slopes[1].depth)], "edge")
            paper.text((x, 0.0), told.at(slope.node), "small", "end" if side > 0 else "start", (-8 * side, 3))
    paper.text((middle, 0.0), roof.label, "title", "middle", (0, -6))
    paper.line((middle - slopes[0].length / 2, 0.0), (middle + slopes[0].length / 2, 0.0), "edge")


def _arrow(paper: Paper, x: float, down: float, slope: Slope) -> None:
    start, tip = down * slope.depth * 0.62, down * slope.depth * 0.93
    paper.line((x, start), (x, tip), "water")
    paper.path([(x - 0.18, tip - down * 0.3), (x, tip), (x + 0.18, tip - down * 0.3)], "water")


def _edge(paper: Paper, slope: Slope, left: float, right: float, eave: float, down: float, told: _Told) -> None:
    """What is at the eave and beyond: gutter and outlets, lower roofs, decks, and where the water ends."""
    flow = told.flow
    reach = slope.wall["roof reach"] or 0.0
    face = eave - down * reach
    middle = (left + right) / 2
    for deck in slope.wall["decks"]:
        out = face + down * (deck["depth"] or 0.0)
        paper.path(
            [(left + 0.3, face), (right - 0.3, face), (right - 0.3, out), (left + 0.3, out)], "hidden", closed=True
        )
        if not deck["under"]:
            paper.text((left + 0.5, out), f"{deck.label}, {told.at(deck.label)}", "small", "start", (0, -5 * down))
    for porch in slope.wall["porches"]:
        length, depth = porch["length"], porch["depth"]
        if length is None or depth is None:
            continue
        start = (left + right - length) / 2 if porch["from left"] is None else left + porch["from left"]
        out = face + down * depth
        paper.path(
            [(start, eave), (start + length, eave), (start + length, out), (start, out)], "edge glass", closed=True
        )
        words = f"{porch.label}, {told.at(porch.label)}"
        paper.text((start + length / 2, (eave + out) / 2), words, "small", "middle", (0, 4))
    for gutter in slope.wall["gutters"]:
        paper.path(
            [(left, eave), (right, eave), (right, eave + down * 0.22), (left, eave + down * 0.22)], "cut", closed=True
        )
        spouts = [one for spout in gutter["downspouts"] for one in [spout] * int(spout["count"] or 1)]
        for at in range(len(spouts)):
            x = (
                left + 0.3
                if at == 0
                else right - 0.3
                if at == len(spouts) - 1
                else left + (right - left) * at / len(spouts)
            )
            paper.circle((x, eave + down * 0.11), 5, "solid")
    ends = (
        [flow.web.nodes[name] for name in flow.web.reached(slope.eave) if not flow.web.out_of(name)]
        if slope.eave
        else []
    )
    out = eave + down * (_beyond(slope) + 0.35)
    for row, end in enumerate(node for node in ends if flow.at[node.name].amount > 0):
        words = f"to {end.name}" if end.kind == "away" else f"{end.name}: {end.says}"
        shift = (14 * row + 10) * (1 if down < 0 else -1) + (6 if down < 0 else 0)
        paper.text((middle, out), words, "small", "middle", (0, shift))
