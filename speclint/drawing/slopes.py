"""The slopes of roofs as a plan draws them, and the way of their water in words."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace
from math import cos, radians

from speclint.measures.facts import Facts
from speclint.relations.flow import Flow
from speclint.science.roof_water import runoff
from speclint.units import System, show

LETS_GO = {
    "splash block": " onto a splash block",
    "extension": " from an extension",
    "daylight": " from a buried pipe",
    "drywell": " in a buried pit",
}  # fmt: skip


@dataclass(frozen=True, slots=True)
class Slope:
    """A slope as drawn: the wall under its eave, its length along it, its level depth, and its reach past. [m]"""

    wall: Facts
    length: float
    depth: float
    node: str
    eave: str
    rake: float
    hip: bool = False

    @property
    def inset(self) -> float:
        """How far its ridge stops short of its eave at both ends. [m]"""
        return min(self.depth, self.length / 2) if self.hip else 0.0

    @property
    def area(self) -> float:
        """As drawn. [m2]"""
        return (self.length - self.inset) * self.depth


@dataclass(frozen=True, slots=True)
class Told:
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


def slopes_of(roof: Facts, flow: Flow) -> list[Slope]:
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
    if roof["form"] == "hip" and len(found) >= 4:
        across = max(found, key=lambda slope: slope.length).wall["faces"]
        long = [slope for slope in found if _in_line(slope.wall["faces"], across)][:2]
        if len(long) == 2:
            slopes = [*_north_up(long), *[slope for slope in found if slope not in long][:2]]
            return [replace(slope, hip=True) for slope in slopes]
    return _north_up(found[:2])


def _in_line(faces: float | None, across: float | None) -> bool:
    return faces is None or across is None or abs((faces - across + 90) % 180 - 90) < 45


def _north_up(slopes: list[Slope]) -> list[Slope]:
    return sorted(slopes, key=lambda slope: -cos(radians(slope.wall["faces"] or 0.0)))


def gutters_of(slope: Slope) -> list[Facts]:
    """The gutters at the eave of a slope; those of porches before it are at the edges of these."""
    return [gutter for gutter in slope.wall["gutters"] if gutter["porch"] is None]


def slope_rows(slope: Slope, told: Told) -> Iterator[str]:
    """The water of a slope: how much of it, why not as drawn, and what of it goes another way than to the eave."""
    yield told.at(slope.node)
    yield f"over {slope.wall.label}"
    yield from _stated(slope, told)
    web = told.flow.web
    for tie in web.out_of(slope.node):
        if web.nodes[tie.target].kind == "valley" and told.flow.by(tie) > 0:
            foot = ", ".join(after.target.partition(" at the foot of ")[0] for after in web.out_of(tie.target))
            area = show(told.flow.by(tie), "area", told.system)
            yield f"{area} of it by {tie.target}{f' to {foot}' if foot else ''}"


def _stated(slope: Slope, told: Told) -> list[str]:
    """Why the area of a slope is not the one that is drawn: its gutter states what it drains."""
    drawn, passed = slope.area, told.flow.at[slope.node].amount
    named = [gutter.label for gutter in gutters_of(slope) if gutter["drains"] is not None]
    if abs(drawn - passed) < 0.02 * drawn:
        same = show(drawn, "area", told.system) == show(passed, "area", told.system)
        if same or not named:
            return []
    area = show(drawn, "area", told.system)
    state = "states" if len(named) == 1 else "state"
    return [f"as {' and '.join(named)} {state}; as drawn {area}" if named else f"as drawn {area}"]


def porch_rows(porch: Facts, told: Told) -> Iterator[str]:
    """The water of a porch roof: all of it, and what of it comes from above."""
    passed, own = told.flow.at[porch.label].amount, told.flow.web.nodes[porch.label].own or 0.0
    yield f"{porch.label}: {told.words(passed)}"
    if passed - own > 0.01 * passed:
        parts = show(own, "area", told.system), show(passed - own, "area", told.system)
        yield f"{parts[0]} of its own and {parts[1]} from the roof above"


def ends_of(slope: Slope, told: Told) -> Iterator[str]:
    """Where the water of a slope, and of the porches before it, ends in words, with how much of it."""
    flow = told.flow
    starts = [slope.eave] if slope.eave else []
    starts += [f"eave of {porch.label}" for porch in slope.wall["porches"]]
    names = dict.fromkeys(name for start in starts if start in flow.web.nodes for name in flow.web.reached(start))
    reached = [flow.web.nodes[name] for name in names]
    for node in reached:
        if node.kind == "downspout" and flow.at[node.name].amount > 0:
            yield _spout_words(slope.wall.sheet.facts[node.element], told, node.name)
    for node in reached:
        before = [tie for tie in flow.web.into(node.name) if tie.source in names]
        if any(flow.web.nodes[tie.source].kind in ("downspout", "ground") for tie in before):
            continue
        amount = sum(flow.by(tie) for tie in before)  # what comes there from elsewhere is told elsewhere
        if not before or amount <= 0:
            continue
        if node.kind == "ground":
            yield f"drips on the {node.name}: {told.words(amount)}"
        elif not flow.web.out_of(node.name):
            yield f"{node.name}: {told.words(amount)}{f'; {node.says}' if node.says else ''}"


def _spout_words(spout: Facts, told: Told, name: str) -> str:
    far, onto = spout["distance"], LETS_GO.get(str(spout["ends"]), "")
    where = f"lets go {show(far, 'length', told.system)} from the wall{onto}" if far is not None else "lets go"
    return f"{spout.label} {where}: {told.at(name)}"
