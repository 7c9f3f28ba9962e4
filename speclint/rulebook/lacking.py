"""What a condition lacks: its answer and the facts that are missing, and no more, since most of a review asks for that.

`weigh` reads the same conditions and tells which comparison decides; a test holds the two against each other.
"""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

from speclint.measures.facts import Facts
from speclint.quantity import Absent, Missing
from speclint.rulebook.compile import SLACK, held_to_limit, pick
from speclint.rulebook.metric import may_round, taken_as_met
from speclint.rulebook.rule import Expression, Rule

Lost = tuple[Missing, ...]
Asks = Callable[[Facts], tuple[bool | None, Lost]]
Reads = Callable[[Facts], tuple[Any, Lost]]


class Lacking:
    """What one rule lacks to judge an element: its conditions made into functions, since they are asked of every plan.

    Args:
        rule: The rule.
    """

    __slots__ = ("limits", "tiers", "where")

    def __init__(self, rule: Rule) -> None:
        self.limits = {limit.name: limit for limit in rule.limits}
        self.tiers = [self.asks(tier.condition) for tier in rule.tiers]
        self.where = None if rule.where is None else self.asks(rule.where)

    def missing(self, facts: Facts, tier: int) -> Lost:
        """What is missing to answer a tier of the rule and whether the rule is about the element; each fact once."""
        lost = self.tiers[tier](facts)[1]
        if self.where is not None:
            lost += self.where(facts)[1]
        return tuple(dict.fromkeys(lost)) if len(lost) > 1 else lost

    def asks(self, e: Expression) -> Asks:
        """The function that answers a condition of an element, and tells what is missing."""
        match e[0]:
            case "is":
                return _is(self.reads(e[1]), e[2], e[3])
            case "compare":
                return self._compare(e)
            case "both" | "either":
                return _joined([self.asks(part) for part in e[1]], e[0] == "either")
            case "known":
                return _known(self.reads(e[1]), e[2])
            case "not":
                return _not(self.asks(e[1]))
            case "every" | "some":
                return _quantified(e[1], self.asks(e[2]), e[0] == "some")
        raise AssertionError(e)

    def reads(self, e: Expression) -> Reads:
        """The function that gives the value of an expression, or nothing and what is missing."""
        match e[0]:
            case "field":
                return _field(e[1], e[2], e[3])
            case "limit":
                return _constant(self.limits[e[1]].value)
            case "number":
                return _constant(e[1])
            case "sum" | "product":
                return _two(self.reads(e[2]), self.reads(e[3]), OPERATORS[e[1]])
            case "larger" | "smaller":
                return _two(self.reads(e[1]), self.reads(e[2]), max if e[0] == "larger" else min)
            case "largest" | "smallest":
                return _picked(e[1], _field((), e[2], e[3]), max if e[0] == "largest" else min)
            case "count":
                relations = e[1]
                return lambda facts: (float(len(followed(relations, facts) or ())), ())
        raise AssertionError(e)

    def _compare(self, e: Expression) -> Asks:
        left, right, holds = self.reads(e[2]), self.reads(e[3]), HOLDS[e[1]]
        rounded = held_to_limit(e) and may_round(self.limits[e[3][1]])

        def ask(facts: Facts) -> tuple[bool | None, Lost]:
            one, lost = left(facts)
            other, lost_too = right(facts)
            if one is None or other is None:
                return None, lost + lost_too
            met = holds(one, other)
            if rounded and not met:
                part = followed(e[2][1], facts)
                met = taken_as_met(e[1], part.sheet.quantity(part, e[2][2]), other)
            return met, ()

        return ask


OPERATORS: dict[str, Callable[[Any, Any], Any]] = {
    "+": lambda a, b: a + b,
    "-": lambda a, b: a - b,
    "*": lambda a, b: a * b,
    "/": lambda a, b: a / b if b else None,
}
HOLDS: dict[str, Callable[[float, float], bool]] = {
    ">=": lambda a, b: a >= b - SLACK,
    "<=": lambda a, b: a <= b + SLACK,
    ">": lambda a, b: a > b + SLACK,
    "<": lambda a, b: a < b - SLACK,
}


def _constant(value: Any) -> Reads:
    told = (value, ())
    return lambda facts: told


def _field(relations: tuple[str, ...], name: str, dimension: str) -> Reads:
    """Reads a fact of an element, or of the one that relations lead to."""
    own = _parts(name) if dimension == "part" else _fact(name)
    if not relations:
        return own

    def read(facts: Facts) -> tuple[Any, Lost]:
        for relation in relations:
            following = facts[relation]
            if following is None:
                return None, (Missing(facts.label, relation, facts.element.place),)
            facts = following
        return own(facts)

    return read


def _fact(name: str) -> Reads:
    def read(facts: Facts) -> tuple[Any, Lost]:
        found = facts.told.get(name) or facts.sheet.quantity(facts, name)
        return (None, found.missing) if isinstance(found, Absent) else (found.value, ())

    return read


def _parts(name: str) -> Reads:
    """Reads the parts that an element names, as their labels in one text."""

    def read(facts: Facts) -> tuple[Any, Lost]:
        found = facts[name]
        if found is None or found == ():
            return None, (Missing(facts.label, name, facts.element.place),)
        return ", ".join([part.label for part in ((found,) if isinstance(found, Facts) else found)]), ()

    return read


def _two(one: Reads, other: Reads, join: Callable[[Any, Any], Any]) -> Reads:
    def read(facts: Facts) -> tuple[Any, Lost]:
        a, lost = one(facts)
        b, lost_too = other(facts)
        return (None, lost + lost_too) if a is None or b is None else (join(a, b), ())

    return read


def _picked(relations: tuple[str, ...], each: Reads, choose: Callable[[Any], Any]) -> Reads:
    def read(facts: Facts) -> tuple[Any, Lost]:
        found = [each(part) for part in followed(relations, facts) or ()]
        return pick(choose, [one for one, _ in found]), tuple([one for _, lost in found for one in lost])

    return read


def _is(read: Reads, words: Any, wanted: bool) -> Asks:
    def ask(facts: Facts) -> tuple[bool | None, Lost]:
        value, lost = read(facts)
        return (None, lost) if value is None else ((value in words) == wanted, ())

    return ask


def _known(read: Reads, wanted: bool) -> Asks:
    def ask(facts: Facts) -> tuple[bool | None, Lost]:
        value, lost = read(facts)
        return (value is not None) == wanted, lost

    return ask


def _not(inner: Asks) -> Asks:
    def ask(facts: Facts) -> tuple[bool | None, Lost]:
        holds, lost = inner(facts)
        return (None if holds is None else not holds), lost

    return ask


def _joined(parts: list[Asks], deciding: bool) -> Asks:
    """Of several answers the first that decides; else what all that are not known lack; else the other answer."""

    def ask(facts: Facts) -> tuple[bool | None, Lost]:
        return _decided([part(facts) for part in parts], deciding)

    return ask


def _quantified(relations: tuple[str, ...], each: Asks, deciding: bool) -> Asks:
    def ask(facts: Facts) -> tuple[bool | None, Lost]:
        answers = [each(part) for part in followed(relations, facts) or ()]
        return _decided(answers, deciding) if answers else (not deciding, ())

    return ask


def _decided(answers: list[tuple[bool | None, Lost]], deciding: bool) -> tuple[bool | None, Lost]:
    unknown: Lost = ()
    open_still = False
    for holds, lost in answers:
        if holds is deciding:
            return holds, lost
        if holds is None:
            open_still = True
            unknown += lost
    return (None, unknown) if open_still else (not deciding, answers[0][1])


def followed(relations: tuple[str, ...], facts: Facts) -> Any:
    """The elements that relations lead to from an element; nothing where one leads nowhere."""
    found: Any = facts
    for name in relations:
        if found is None:
            return None
        found = found[name]
    return found
