"""A directed graph of a home as plain data: nodes, ties with words and shares, and what can be asked of them.

A review must start fast, so what it asks is answered with the standard library; networkx, which takes longer to load
than a whole review, is called where a command asks for more.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from graphlib import CycleError, TopologicalSorter
from typing import TYPE_CHECKING, NamedTuple

if TYPE_CHECKING:
    import networkx

    Graph = networkx.MultiDiGraph[str]

MOST_STOPS = 20  # of one way in words; ours


class Node(NamedTuple):
    """A stop on a way through the home, by the name that the reader is shown.

    Attributes:
        name: Its name, unlike all others of its web.
        kind: What it is, such as `gutter` or `footing`.
        element: Label of the element it belongs to; empty where it belongs to none.
        says: What is to be said of it where a way ends there, or why it is bare; empty where nothing is.
        reads: Facts that its own amount is made of, as pairs of an element's label and a name.
        own: Its own amount; nothing where it is not known.
    """

    name: str
    kind: str
    element: str = ""
    says: str = ""
    reads: tuple[tuple[str, str], ...] = ()
    own: float | None = 0.0


class Tie(NamedTuple):
    """A step from one node to another, in words that fill the gap between their names.

    Attributes:
        source: Name of the node it leaves.
        target: Name of the node it reaches.
        words: What lies between, such as `drips on`.
        share: How much of what the source holds goes this way, 0 to 1. [-]
        kind: What sort of step it is, such as `point` for water at one spot.
        spots: At how many spots alike it arrives. [-]
    """

    source: str
    target: str
    words: str
    share: float = 1.0
    kind: str = ""
    spots: float = 1.0


class Web:
    """Nodes and ties; every tie names two nodes of the web."""

    def __init__(self, nodes: Iterable[Node], ties: Iterable[Tie]) -> None:
        self.nodes = {node.name: node for node in nodes}
        self.ties = list(ties)
        self._out: dict[str, list[Tie]] = {name: [] for name in self.nodes}
        self._into: dict[str, list[Tie]] = {name: [] for name in self.nodes}
        for tie in self.ties:
            self._out[tie.source].append(tie)
            self._into[tie.target].append(tie)

    def out_of(self, name: str) -> list[Tie]:
        """The ties that leave a node."""
        return self._out[name]

    def into(self, name: str) -> list[Tie]:
        """The ties that reach a node."""
        return self._into[name]

    def of(self, element: str) -> list[Node]:
        """The nodes that belong to an element."""
        return [node for node in self.nodes.values() if node.element == element]

    def circle(self) -> tuple[str, ...]:
        """A way that comes back to its start, as the names of its nodes, the first named again at the end."""
        sorter = TopologicalSorter({name: [tie.source for tie in self._into[name]] for name in self.nodes})
        try:
            sorter.prepare()
        except CycleError as found:
            return tuple(found.args[1])
        return ()

    def unrolled(self) -> tuple[Web, list[tuple[str, ...]]]:
        """The web without the last tie of each circle, and the circles."""
        circles = list(self._circles())
        closing = {around[-2:] for around in circles}
        if not circles:
            return self, circles
        return Web(self.nodes.values(), [tie for tie in self.ties if (tie.source, tie.target) not in closing]), circles

    def _circles(self) -> Iterator[tuple[str, ...]]:
        """A circle for each tie that closes one, met by walking every way to its end once."""
        done: set[str] = set()
        for root in self.nodes:
            way, onward = ([root], [iter(self._out[root])]) if root not in done else ([], [])
            place = {root: 0}
            closing: set[tuple[str, str]] = set()
            while way:
                tie = next(onward[-1], None)
                if tie is None:
                    done.add(way[-1])
                    del place[way.pop()]
                    onward.pop()
                elif tie.target in place:
                    if (tie.source, tie.target) not in closing:
                        yield (*way[place[tie.target] :], tie.target)
                    closing.add((tie.source, tie.target))
                elif tie.target not in done:
                    place[tie.target] = len(way)
                    way.append(tie.target)
                    onward.append(iter(self._out[tie.target]))

    def in_order(self) -> list[str]:
        """The names of the nodes, each after all that lead to it.

        Raises:
            ValueError: If a way comes back to its start.
        """
        return list(
            TopologicalSorter({name: [tie.source for tie in self._into[name]] for name in self.nodes}).static_order()
        )

    def reached(self, start: str) -> list[str]:
        """The names of a node and of all that can be reached from it, nearest first."""
        found = {start}
        ahead = [start]
        for name in ahead:  # grows while it is walked
            for tie in self._out[name]:
                if tie.target not in found:
                    found.add(tie.target)
                    ahead.append(tie.target)
        return ahead

    def way(self, start: str, end: str) -> tuple[Tie, ...]:
        """A shortest way from one node to another; no ties where there is none, or they are the same."""
        came: dict[str, Tie] = {}
        for name in self.reached(start):
            for tie in self._out[name]:
                if tie.target != start:
                    came.setdefault(tie.target, tie)
        ties: list[Tie] = []
        while end != start:
            if end not in came:
                return ()
            ties.append(came[end])
            end = came[end].source
        return tuple(reversed(ties))

    def ends(self) -> Iterator[Node]:
        """The nodes that no tie leaves."""
        return (node for name, node in self.nodes.items() if not self._out[name])

    def graph(self) -> Graph:
        """The web as a graph of networkx, for what only a graph library answers."""
        import networkx

        graph: Graph = networkx.MultiDiGraph()
        for node in self.nodes.values():
            graph.add_node(node.name, kind=node.kind, element=node.element)
        for tie in self.ties:
            graph.add_edge(tie.source, tie.target, words=tie.words, share=tie.share, kind=tie.kind)
        return graph


def told(way: Iterable[Tie]) -> str:
    """A way in words: its nodes by name, with what lies between; the slope between a roof and its eave is passed.

    Of a way with more stops than anybody reads, the first and the last are told.
    """
    start, steps = "", []
    for tie in way:
        start = start or tie.source
        if not tie.target.startswith("slope of "):
            steps.append(f"{tie.words} {tie.target}")
    if len(steps) > MOST_STOPS:
        steps[MOST_STOPS - 1 : -1] = [f"goes on by {len(steps) - MOST_STOPS} more"]
    return f"{start} {', which '.join(steps)}" if steps else ""
