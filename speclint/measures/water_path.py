"""The way of water through the home: how much reaches each part, gathered where, and whether it comes to an end."""

from __future__ import annotations

from speclint.citation import Citation
from speclint.measures.facts import Facts, Sheet, Working
from speclint.measures.register import measure
from speclint.relations.flow import Flow
from speclint.relations.water import water_web
from speclint.relations.web import Node, Tie, told
from speclint.science.roof_water import runoff

GEOMETRY = Citation("", "level areas of the plan, followed from edge to edge", "ours")
ENDINGS = ("nowhere", "stays", "not known", "away")  # the worst first
CARRIERS = "roof, porch, gutter, downspout, valley, deck"
WOODEN = "deck, beam, post, wall, corner"


def flow_of(sheet: Sheet) -> Flow:
    """The way of water through the home of a sheet, drawn once."""
    if "water" not in sheet.drawn:
        sheet.drawn["water"] = Flow(water_web(sheet.home, sheet.value))
    found = sheet.drawn["water"]
    assert isinstance(found, Flow)
    return found


@measure(CARRIERS, "roof water", "area", "level area of roof and deck whose rain passes it")
def roof_water(part: Facts, work: Working) -> float:
    """All that drains to it, from every roof above, by the shares of the edges between."""
    flow = flow_of(part.sheet)
    for source in flow.sources(part.label):
        for label, name in flow.web.nodes[source].reads:
            if flow.web.nodes[source].own is None:
                work.need(part.sheet[label], name)
            else:
                work.maybe(part.sheet[label], name)
    carried = flow.at[part.label]
    if carried.unknown:
        raise work.absent(f"the area of {', '.join(carried.unknown)} is not known")
    work.cite(GEOMETRY)
    return carried.amount


@measure(CARRIERS, "water flow", "flow", "the rate at which water passes it in the design rain")
def water_flow(part: Facts, work: Working) -> float:
    """Its roof water in the design rain, none held back."""
    rain = float(work.need(part["site"], "design rain", "site"))
    return float(work.call(runoff, area=work.need(part, "roof water"), intensity=rain))


@measure(CARRIERS, "water ends", "choice", "the worst end that its water comes to")
def water_ends(part: Facts, work: Working) -> str:
    """Whether it is led away, stays at the house, ends nowhere, or the plan does not say."""
    end = _worst_end(flow_of(part.sheet), part.label)
    work.text = _shown_end(end)
    return "not known" if end.kind == "roof" else end.kind if end.kind in ENDINGS else "nowhere"


@measure(CARRIERS, "water way", "text", "the way of its water to the worst end")
def water_way(part: Facts, work: Working) -> str:
    """Every step from it to where its water ends."""
    flow = flow_of(part.sheet)
    end = _worst_end(flow, part.label)
    return told(flow.web.way(part.label, end.name)) or _shown_end(end)


def _worst_end(flow: Flow, label: str) -> Node:
    ends = [node for name in flow.web.reached(label) if not flow.web.out_of(name) for node in [flow.web.nodes[name]]]
    ends = [node for node in ends if node.kind != "wood"] or ends
    return min(ends, key=lambda node: ENDINGS.index(node.kind) if node.kind in ENDINGS else 0)


def _shown_end(end: Node) -> str:
    return f"{end.name}: {end.says}" if end.says else end.name


@measure("downspout, valley", "meets nothing", "yes or no", "whether what it empties on is not in the plan")
def meets_nothing(part: Facts, work: Working) -> str:
    """Whether the very next stop of its water is one that the plan lacks."""
    flow = flow_of(part.sheet)
    for tie in flow.web.out_of(part.label):
        if flow.web.nodes[tie.target].kind == "nowhere":
            work.text = tie.target
            return "yes"
    return "no"


@measure(
    "roof, porch, gutter, downspout, valley", "water circle", "text", "the circle in which its water is drawn to run"
)
def water_circle(part: Facts, work: Working) -> str:
    """The circle, told at the part of it that the plan names first; nothing to tell elsewhere."""
    for circle in flow_of(part.sheet).circles:
        elements = [label for label in part.sheet.home.elements if label in circle]
        if elements and elements[0] == part.label:
            at = circle.index(part.label)
            return " to ".join([*circle[at:-1], *circle[: at + 1]])
    return "none"


@measure("deck, stair", "eave water", "area", "roof area whose water drips on it from free eaves above")
def eave_water(deck: Facts, work: Working) -> float:
    """What reaches it or its rim straight from eaves, of roofs and of the porch over it."""
    flow = flow_of(deck.sheet)
    spots = [spot for spot in (deck.label, f"rim of {deck.label}") if spot in flow.web.nodes]
    ties = [tie for spot in spots for tie in flow.web.into(spot) if flow.web.nodes[tie.source].kind == "eave"]
    for tie in ties:
        unknown = flow.at[tie.source].unknown
        if unknown:
            raise work.absent(f"the area of {', '.join(unknown)} is not known")
    work.cite(GEOMETRY)
    return sum(flow.by(tie) for tie in ties)


@measure(
    WOODEN, "stream", "area", "most roof area whose water strikes its bare wood at one spot, by way of another part"
)
def stream(part: Facts, work: Working) -> float:
    """Zero where only rain, a drip line or its own downspout or valley wets it: those are other rules' matter."""
    found = _far_stream(part)
    if found is None:
        return 0.0
    work.note(told(found[1]))
    work.cite(GEOMETRY)
    return found[0]


@measure(WOODEN, "stream way", "text", "the way of that water, from the roof to the wood")
def stream_way(part: Facts, work: Working) -> str:
    """Every step of it."""
    found = _far_stream(part)
    return told(found[1]) if found else "none"


def _far_stream(part: Facts) -> tuple[float, tuple[Tie, ...]] | None:
    """The most water that reaches bare wood of a part from a spot higher up, with another element between."""
    flow = flow_of(part.sheet)
    best: tuple[float, tuple[Tie, ...]] | None = None
    for node in flow.web.of(part.label):
        if node.kind != "wood" or not node.says or part.label in (tie.source for tie in flow.web.into(node.name)):
            continue
        best = _farther(flow, node, part.label, best)
    if part.element.kind == "deck":
        for node in flow.web.of(part.label):
            if node.kind == "wood" and node.says:
                best = _farther(flow, node, part.label, best)
    return best


def _farther(
    flow: Flow, node: Node, label: str, best: tuple[float, tuple[Tie, ...]] | None
) -> tuple[float, tuple[Tie, ...]] | None:
    for tie in flow.web.ties:
        if tie.kind != "point" or not flow.web.nodes[tie.target].element:
            continue
        between = flow.web.nodes[tie.target].element
        way = flow.web.way(tie.target, node.name)
        if between == label or not way:
            continue
        amount = flow.at[tie.source].amount / tie.spots
        for step in way:
            amount *= step.share
        if amount > 0 and (best is None or amount > best[0]):
            start = next(iter(flow.sources(tie.source)[::-1]), tie.source)
            best = (amount, (*flow.web.way(start, tie.source), tie, *way))
    return best
