"""What a web carries: own amounts passed on by shares, from every source to where it ends."""

from __future__ import annotations

from typing import NamedTuple

from speclint.relations.web import Tie, Web


class Carried(NamedTuple):
    """What passes a node.

    Attributes:
        amount: All of it, its own amount included, as far as it is known.
        at_points: The most that reaches it by one tie of the kind `point`, all that gathered before it counted.
        unknown: Names of the sources before it whose own amount is not known.
    """

    amount: float
    at_points: float
    unknown: tuple[str, ...]


class Flow:
    """What every node and tie of a web carries; of a circle, the tie that closes it carries nothing."""

    def __init__(self, drawn: Web) -> None:
        self.drawn = drawn
        self.web, self.circles = drawn.unrolled()
        self.at: dict[str, Carried] = {}
        for name in self.web.in_order():
            self.at[name] = self._carried(name)

    def by(self, tie: Tie) -> float:
        """What a tie carries."""
        return self.at[tie.source].amount * tie.share if tie in self.web.ties else 0.0

    def _carried(self, name: str) -> Carried:
        node = self.web.nodes[name]
        amount, points = node.own or 0.0, 0.0
        unknown = [] if node.own is not None else [name]
        for tie in self.web.into(name):
            before = self.at[tie.source]
            amount += before.amount * tie.share
            gathered = before.amount if tie.kind == "point" else before.at_points
            points = max(points, gathered * tie.share / tie.spots)
            unknown += before.unknown if tie.share else ()
        return Carried(amount, points, tuple(dict.fromkeys(unknown)))

    def sources(self, name: str) -> list[str]:
        """The names of the nodes whose own amount reaches a node."""
        before = [name]
        for found in before:  # grows while it is walked
            before += [tie.source for tie in self.web.into(found) if tie.share and tie.source not in before]
        return [found for found in before if self.web.nodes[found].own != 0.0]
