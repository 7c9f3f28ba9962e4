"""The way of water and the way of loads as trees of lines, with what each passes on."""

from __future__ import annotations

import textwrap
from collections.abc import Callable

from speclint.measures.bearing import bearing_of
from speclint.measures.facts import Facts, Sheet
from speclint.measures.heights import height_of
from speclint.measures.moving import Moving, moving_of
from speclint.measures.water_path import flow_of
from speclint.outputs.letter import Line, Part, Role
from speclint.quantity import Quantity
from speclint.relations.bearing import NOT_DRAWN, PASSES, bearing_web
from speclint.relations.flow import Flow
from speclint.relations.web import Tie, Web, told
from speclint.science.roof_water import runoff
from speclint.units import System, show

ENDS = {
    "away": "led away",
    "stays": "STAYS AT THE HOUSE",
    "nowhere": "ENDS NOWHERE",
    "not known": "NOT KNOWN",
    "roof": "NOT KNOWN",
    "eave": "GOES ROUND",
    "wood": "ENDS ON WOOD",
}
DEEPEST = 60  # columns by which a tree is set in
ROOTS = ("roof", "porch", "deck", "stair", "rail")


class _Trees:
    """Trees of a web: every node once in full, later only by name."""

    def __init__(
        self,
        web: Web,
        numbers: Callable[[str, Tie | None], str],
        carries: Callable[[Tie], bool],
        more: Callable[[str], str],
        wide: int,
    ) -> None:
        self.web, self.numbers, self.carries, self.more, self.wide = web, numbers, carries, more, wide
        self.lines: list[Line] = []
        self.told: set[str] = set()
        self.ahead: list[str] = []

    def add(self, name: str) -> None:
        """The tree below a node; what lies too deep for the screen follows as a tree of its own."""
        self.ahead = [name]
        for root in self.ahead:  # grows while it is walked
            self.lines.append((Part(self.numbers(root, None), "number"), Part(root, "element")))
            self._below(root, "", root)
            self.lines.append(())

    def _below(self, name: str, stem: str, root: str) -> None:
        self.told.add(name)
        ties = [tie for tie in self.web.out_of(name) if self.carries(tie)]
        for tie in ties:
            last = tie is ties[-1]
            target = self.web.nodes[tie.target]
            again = tie.target in self.told and bool(self.web.out_of(tie.target))
            deep = len(stem) >= DEEPEST and not again and bool(self.web.out_of(tie.target))
            says = f": {target.says}" if target.says and target.kind != "away" else self.more(tie.target)
            says = " (as above)" if again else " (goes on below)" if deep else says
            named = f"{tie.target.replace(f' of {root}', '')}{says}"
            role: Role = "revise" if target.says and target.kind != "away" and not again else "plain"
            below = stem + ("  " if last else "│ ")
            self._line(self.numbers(tie.target, tie), f"{stem}{'└ ' if last else '├ '}{tie.words} ", named, role, below)
            if deep:
                self.ahead.append(tie.target)
                self.told.add(tie.target)
            elif not again:
                self._below(tie.target, below, root)

    def _line(self, numbers: str, words: str, named: str, role: Role, stem: str) -> None:
        """One step of the tree, its text carried on below where the screen is too narrow."""
        room = max(16, self.wide - len(numbers) - len(words))
        first, *rest = textwrap.wrap(named, room) or [""]
        self.lines.append((Part(numbers, "number"), Part(words, "quiet"), Part(first, role)))
        margin = " " * len(numbers) + stem + "  "
        for text in textwrap.wrap(" ".join(rest), max(16, self.wide - len(margin))):
            self.lines.append((Part(margin, "quiet"), Part(text, role)))


def water_lines(sheet: Sheet, system: System, only: Facts | None = None, wide: int = 110) -> list[Line]:
    """Each roof's water to its end: areas, flows and heights, ends, streams at one spot, and the wood on the way."""
    flow = flow_of(sheet)
    rain = sheet.quantity(sheet["site"], "design rain")
    known = rain if isinstance(rain, Quantity) else None
    lines: list[Line] = [(Part("WATER", "title"), Part(f"  {sheet.home.name}"))]
    if known is None:
        told_rain = "the design rain is not known: state “rain intensity” or the weather of the site to see flows"
    else:
        told_rain = f"design rain {known.shown(system)}; level areas, flows at that rain, heights of edges"
    lines += [(Part(told_rain, "quiet"),), ()]
    numbers = _numbers(sheet, flow, known, system)
    trees = _Trees(
        flow.web, numbers, lambda tie: tie.share > 0 or tie.kind == "splash", lambda name: _full(sheet, name), wide
    )
    if only is not None:
        starts = [node.name for node in flow.web.of(only.label)]
        starts = [name for name in starts if not any(tie.source in starts for tie in flow.web.into(name))]
        lines += _upstream(flow, starts, only, system)
    else:
        starts = _sources(flow)
    for name in starts:
        trees.add(name)
    lines += trees.lines
    if only is None:
        lines += _ends(flow, known, system) + _spots(flow, known, system) + _bare(flow)
    return lines


def _height(height: float | None, system: System) -> str:
    return "" if height is None else "grade" if height == 0 else show(height, "length", system)


def _full(sheet: Sheet, name: str) -> str:
    """How full a gutter or downspout runs in the design rain."""
    facts = sheet.facts.get(name)
    if facts is None or facts.element.kind not in ("gutter", "downspout"):
        return ""
    demand, capacity = facts["demand"], facts["capacity"]
    return f", {demand / capacity:.0%} of what it can carry" if demand is not None and capacity else ""


def _sources(flow: Flow) -> list[str]:
    """The roofs and open decks at which water begins; one that gets none, as a deck under a porch, is left out."""
    starts = [name for name in flow.web.nodes if not flow.web.into(name)]
    return [name for name in starts if flow.at[name].amount > 0 or flow.at[name].unknown]


def _upstream(flow: Flow, starts: list[str], only: Facts, system: System) -> list[Line]:
    """The ways by which water comes to a part."""
    if not starts:
        return [(Part(f"no roof water in the plan passes {only.label}"),), ()]
    ways: list[Line] = []
    for name in starts:
        for source in flow.sources(name):
            if source != name and flow.web.way(source, name):
                ways.append((Part("  "), Part(told(flow.web.way(source, name)))))
    return [(Part(f"reaches {only.label}", "label"),), *ways, ()] if ways else []


def _numbers(sheet: Sheet, flow: Flow, rain: Quantity | None, system: System) -> Callable[[str, Tie | None], str]:
    def numbers(name: str, tie: Tie | None) -> str:
        carried = flow.at[name]
        amount = carried.amount if tie is None else flow.by(tie)
        height = height_of(sheet, flow.web.nodes[name])
        if tie is not None and tie.kind == "splash":
            return " " * 33
        mark = "at least " if carried.unknown and amount else ""
        area = "not known" if carried.unknown and not amount else mark + show(amount, "area", system)
        rate = show(runoff(amount, rain.value), "flow", system) if rain is not None and amount else ""
        return f"{area:>12}{rate:>10}{_height(height, system):>9}  "

    return numbers


def _ends(flow: Flow, rain: Quantity | None, system: System) -> list[Line]:
    lines: list[Line] = [(Part("WHERE IT ENDS", "label"),)]
    for node in flow.web.ends():
        amount = flow.at[node.name].amount
        if amount <= 0 and not flow.at[node.name].unknown:
            continue
        rate = show(runoff(amount, rain.value), "flow", system) if rain is not None else ""
        kind = ENDS.get(node.kind, "ENDS NOWHERE")
        says = f": {node.says}" if node.says else ""
        role: Role = "plain" if node.kind == "away" else "revise"
        numbers = f"{show(amount, 'area', system):>12}{rate:>10}           "
        lines.append((Part(numbers, "number"), Part(f"{kind}  ", role), Part(f"{node.name}{says}", "quiet")))
    for circle in flow.circles:
        lines.append((Part(f"{'':>33}"), Part("GOES ROUND  ", "revise"), Part(" to ".join(circle), "quiet")))
    return [*lines, ()]


def _spots(flow: Flow, rain: Quantity | None, system: System) -> list[Line]:
    """Streams that arrive at one spot, the greatest first."""
    found = [(flow.by(tie) / tie.spots, tie) for tie in flow.web.ties if tie.kind == "point" and flow.by(tie) > 0]
    if not found:
        return []
    lines: list[Line] = [(Part("GATHERED AT ONE SPOT", "label"),)]
    for amount, tie in sorted(found, key=lambda pair: -pair[0]):
        rate = show(runoff(amount, rain.value), "flow", system) if rain is not None else ""
        each = f", each of {tie.spots:.0f}" if tie.spots > 1 else ""
        numbers = f"{show(amount, 'area', system):>12}{rate:>10}           "
        lines.append((Part(numbers, "number"), Part(f"{tie.source} {tie.words} {tie.target}{each}")))
    return [*lines, ()]


def _bare(flow: Flow) -> list[Line]:
    """The first bare wood on each way, with the whole way from its roof."""
    lines: list[Line] = []
    for start in _sources(flow):
        bare = [name for name in flow.web.reached(start) if flow.web.nodes[name].kind == "wood"]
        for name in [name for name in bare if flow.web.nodes[name].says][:1]:
            lines.append((Part("  "), Part(name, "element"), Part(f": {flow.web.nodes[name].says}")))
            lines.append((Part("    "), Part(told(flow.web.way(start, name)), "quiet")))
    heading: Line = (Part("FIRST BARE WOOD ON THE WAY", "label"),)
    return [heading, *(lines or [(Part("  none that the plan tells of"),)]), ()]


def bearing_lines(sheet: Sheet, system: System, only: Facts | None = None, wide: int = 110) -> list[Line]:
    """Each load to the soil, what it passes that should carry none, and what moves past what."""
    web, circles = bearing_of(sheet)
    lines: list[Line] = [
        (Part("BEARING", "title"), Part(f"  {sheet.home.name}")),
        (Part("what the plan says bears on what; no strength is judged here: that is a licensed engineer's", "quiet"),),
        (),
    ]
    trees = _Trees(web, lambda name, tie: "", lambda tie: True, lambda name: _depth(sheet, web, name, system), wide)
    if only is not None:
        starts = [only.label] if only.label in web.nodes else []
        if not starts:
            return [*lines, (Part(f"{only.label} carries nothing and bears on nothing in the plan"),), ()]
    else:
        starts = [node.name for kind in ROOTS for node in web.nodes.values() if node.kind == kind]
        starts += [name for name in web.nodes if not web.into(name) and name not in starts]
    for name in starts:
        trees.add(name)
    lines += trees.lines
    for circle in circles:
        lines.append((Part("GOES ROUND  ", "revise"), Part(" on ".join(circle))))
    broken = [node for node in web.nodes.values() if node.kind in (NOT_DRAWN, *PASSES)]
    for node in broken:
        above = ", ".join(tie.source for tie in web.into(node.name))
        lines.append((Part("NOT TO THE SOIL  ", "revise"), Part(f"{above}: {node.name}")))
    if broken or circles:
        lines.append(())
    moving = [one for one in moving_of(sheet) if only is None or one.part == only.label]
    return [*lines, *_moving_lines(moving, system)]


def _depth(sheet: Sheet, web: Web, name: str, system: System) -> str:
    """The depth of a footing beside the frost line."""
    node = web.nodes[name]
    if node.kind != "footing":
        return ""
    depth, frost = sheet[node.element]["footing"], sheet["site"]["frost depth"]
    if depth is None or frost is None:
        return ""
    return f", {show(depth, 'length', system)} deep where frost reaches {show(frost, 'length', system)}"


def _moving_lines(moving: list[Moving], system: System) -> list[Line]:
    lines: list[Line] = [(Part("WHAT MOVES PAST WHAT", "label"),)]
    for one in moving:
        room = "room not stated" if one.room is None else f"room {show(one.room, 'length', system)}"
        if one.how == "fixed":
            room = "fixed"
        elif one.room is None and one.enough:
            room = "free to slide"
        verdict = {True: "enough", False: "TOO LITTLE", None: "not known"}[one.enough]
        role: Role = "good" if one.enough else "revise"
        text = f"  {one.part} at {one.past}: {show(one.down, 'length', system)} wanted, {room}, "
        lines.append((Part(text), Part(verdict, role)))
    if not moving:
        lines.append((Part("  nothing that the plan tells of"),))
    return [*lines, ()]


def drawn_web(sheet: Sheet, bearing: bool) -> Web:
    """The whole web that is traced, circles and all."""
    return bearing_web(sheet.home) if bearing else flow_of(sheet).drawn
