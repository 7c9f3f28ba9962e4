"""The first graphs of a home: what covers what, what stands on what, and where each roof edge drips."""

from __future__ import annotations

from typing import TYPE_CHECKING, NamedTuple

from speclint.model.home import Home
from speclint.model.porch import Beam, Deck, Ledger, Porch, Post
from speclint.model.roof import Downspout, Gutter, Roof
from speclint.model.wall import Door, Wall, Window

if TYPE_CHECKING:
    import networkx

    Graph = networkx.DiGraph[str]

GROUND = "the ground"


class Edge(NamedTuple):
    """One step of a graph: from an element to an element, or to the ground, with the reason in words."""

    source: str
    target: str
    words: str


def covers(home: Home) -> list[Edge]:
    """What keeps the sky off what: roofs over walls, porches over walls, decks and posts, walls over their openings."""
    edges: list[Edge] = []
    for label, element in home.elements.items():
        if isinstance(element, Roof):
            edges += [Edge(label, wall, "roofs over") for wall in element.covers or ()]
        elif isinstance(element, Porch):
            edges += [Edge(label, wall, "runs along") for wall in element.along or ()]
        elif isinstance(element, Wall):
            edges += [Edge(porch, label, "shelters") for porch in element.sheltered_by or ()]
        elif isinstance(element, Deck) and element.under:
            edges.append(Edge(element.under, label, "roofs over"))
        elif isinstance(element, Post):
            edges += [Edge(above, label, "stands over") for above in element.under or () if above.startswith("porch ")]
        elif isinstance(element, Window | Door) and element.wall:
            edges.append(Edge(element.wall, label, "holds"))
    return list(dict.fromkeys(edges))


def stands_on(home: Home) -> list[Edge]:
    """What each part bears on, down to the ground as far as the plan says."""
    edges: list[Edge] = []
    for label, element in home.elements.items():
        if isinstance(element, Post):
            edges += [Edge(above, label, "is carried by") for above in element.under or ()]
            if element.stands_on in ("pier", "slab", "soil", "wall", "deck framing"):
                edges.append(Edge(label, GROUND, f"stands on a {element.stands_on}"))
        elif isinstance(element, Beam):
            edges += [Edge(above, label, "is carried by") for above in element.under or ()]
            edges += [Edge(label, below, "bears on") for below in element.on or ()]
        elif isinstance(element, Ledger) and element.carries:
            edges.append(Edge(element.carries, label, "hangs on"))
        elif isinstance(element, Wall):
            edges.append(Edge(label, GROUND, "stands on the foundation"))
    return list(dict.fromkeys(edges))


def drips_on(home: Home) -> list[Edge]:
    """Where the water of each roof edge goes: into a gutter, onto a porch roof or deck below, or onto the ground."""
    edges: list[Edge] = []
    guttered: dict[tuple[str, str], str] = {}
    for label, element in home.elements.items():
        if isinstance(element, Gutter) and element.on:
            guttered[element.on, element.over or ""] = label
            edges.append(Edge(element.on, label, "drains to"))
        elif isinstance(element, Downspout) and element.gutter:
            edges += [Edge(element.gutter, label, "drains to"), Edge(label, GROUND, element.ends or "drains to")]
    for label, element in home.elements.items():
        if isinstance(element, Roof):
            eaves = [wall for wall in element.covers or () if wall not in (element.gables or ())]
            for wall in eaves:
                if (label, wall) not in guttered and element.gutters != "all eaves":
                    edges.append(_below(home, label, wall))
        elif isinstance(element, Porch) and element.gutters != "yes" and (label, "") not in guttered:
            edges.append(Edge(label, GROUND, f"drips {', '.join(element.along or ())}".strip()))
    return list(dict.fromkeys(edges))


def _below(home: Home, roof: str, wall: str) -> Edge:
    """What the free eave of a roof over a wall drips on first."""
    for label, element in home.elements.items():
        if isinstance(element, Porch) and wall in (element.along or ()):
            return Edge(roof, label, f"drips over {wall} onto")
    for label, element in home.elements.items():
        if isinstance(element, Deck) and wall in (element.along or ()):
            return Edge(roof, label, f"drips over {wall} onto")
    return Edge(roof, GROUND, f"drips over {wall} onto")


def graph_of(edges: list[Edge]) -> Graph:
    """The edges as a directed graph, the words kept on each."""
    import networkx

    graph: Graph = networkx.DiGraph()
    for edge in edges:
        graph.add_edge(edge.source, edge.target, words=edge.words)
    return graph


def path_down(home: Home, label: str) -> list[str]:
    """The shortest way from an element down to the ground, or nothing where the plan shows none."""
    import networkx

    graph = graph_of(stands_on(home))
    if label not in graph or GROUND not in graph or not networkx.has_path(graph, label, GROUND):
        return []
    return list(networkx.shortest_path(graph, label, GROUND))
