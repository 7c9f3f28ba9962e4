"""What a condition lacks: its answer and the facts that are missing, and no more, since most of a review asks for that.

`weigh` reads the same conditions and tells which comparison decides; a test holds the two against each other.
"""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from speclint.measures.facts import Facts
from speclint.quantity import Absent, Missing
from speclint.rulebook.compile import SLACK, held_to_limit, pick
from speclint.rulebook.metric import may_round, taken_as_met
from speclint.rulebook.rule import Expression, Limit

Lost = tuple[Missing, ...]


class Lacking:
    """Reads the conditions of one rule for one element.

    Args:
        limits: The limits of the rule, by name.
    """

    __slots__ = ("limits",)

    def __init__(self, limits: Mapping[str, Limit]) -> None:
        self.limits = limits

    def condition(self, e: Expression, facts: Facts) -> tuple[bool | None, Lost]:
        """The answer of a condition, and what is missing."""
        form = e[0]
        if form == "is":
            value, lost = self.value(e[1], facts)
            return (None, lost) if value is None else ((value in e[2]) == e[3], ())
        if form == "compare":
            left, lost = self.value(e[2], facts)
            right, lost_too = self.value(e[3], facts)
            if left is None or right is None:
                return None, lost + lost_too
            holds: bool | None = _holds(e[1], left, right)
            if not holds and held_to_limit(e) and may_round(self.limits[e[3][1]]):
                holds = taken_as_met(e[1], self._quantity(e[2], facts), right)
            return holds, ()
        if form in ("both", "either"):
            return _joined([self.condition(part, facts) for part in e[1]], form == "either")
        if form == "known":
            value, lost = self.value(e[1], facts)
            return (value is not None) == e[2], lost
        if form == "not":
            holds, lost = self.condition(e[1], facts)
            return (None if holds is None else not holds), lost
        if form in ("every", "some"):
            answers = [self.condition(e[2], part) for part in followed(e[1], facts) or ()]
            return _joined(answers, form == "some") if answers else (form == "every", ())
        raise AssertionError(e)

    def value(self, e: Expression, facts: Facts) -> tuple[Any, Lost]:
        """The value of an expression, or nothing and what is missing."""
        form = e[0]
        if form == "field":
            return self._field(e[1], e[2], e[3], facts)
        if form == "limit":
            return self.limits[e[1]].value, ()
        if form == "number":
            return e[1], ()
        if form in ("sum", "product"):
            return self._two(e[2], e[3], facts, e[1])
        if form in ("larger", "smaller"):
            return self._two(e[1], e[2], facts, form)
        if form in ("largest", "smallest"):
            found = [self._field((), e[2], e[3], part) for part in followed(e[1], facts) or ()]
            value = pick(max if form == "largest" else min, [one for one, _ in found])
            return value, tuple(one for _, some in found for one in some)
        if form == "count":
            return float(len(followed(e[1], facts) or ())), ()
        raise AssertionError(e)

    def _quantity(self, e: Expression, facts: Facts) -> Any:
        """The quantity that a field is, where it is known."""
        part = followed(e[1], facts)
        return part.sheet.quantity(part, e[2])

    def _two(self, one: Expression, other: Expression, facts: Facts, sign: str) -> tuple[Any, Lost]:
        a, lost = self.value(one, facts)
        b, lost_too = self.value(other, facts)
        if a is None or b is None:
            return None, lost + lost_too
        match sign:
            case "+":
                return a + b, ()
            case "-":
                return a - b, ()
            case "*":
                return a * b, ()
            case "/":
                return (a / b if b else None), ()
            case "larger":
                return max(a, b), ()
        return min(a, b), ()

    def _field(self, relations: tuple[str, ...], name: str, dimension: str, facts: Facts) -> tuple[Any, Lost]:
        for relation in relations:
            following = facts[relation]
            if following is None:
                return None, (Missing(facts.label, relation, facts.element.place),)
            facts = following
        if dimension == "part":
            found = facts[name]
            if found is None or found == ():
                return None, (Missing(facts.label, name, facts.element.place),)
            return ", ".join(part.label for part in ((found,) if isinstance(found, Facts) else found)), ()
        quantity = facts.sheet.quantity(facts, name)
        return (None, quantity.missing) if isinstance(quantity, Absent) else (quantity.value, ())


def followed(relations: tuple[str, ...], facts: Facts) -> Any:
    """The elements that relations lead to from an element; nothing where one leads nowhere."""
    found: Any = facts
    for name in relations:
        if found is None:
            return None
        found = found[name]
    return found


def _holds(sign: str, left: float, right: float) -> bool:
    if sign == ">=":
        return left >= right - SLACK
    if sign == "<=":
        return left <= right + SLACK
    return left > right + SLACK if sign == ">" else left < right - SLACK


def _joined(answers: list[tuple[bool | None, Lost]], deciding: bool) -> tuple[bool | None, Lost]:
    """Of several answers the first that decides; else what all that are not known lack; else the other answer."""
    unknown: Lost = ()
    open_still = False
    for holds, lost in answers:
        if holds is deciding:
            return holds, lost
        if holds is None:
            open_still = True
            unknown += lost
    return (None, unknown) if open_still else (not deciding, answers[0][1])
