"""Why a condition answers as it does: the comparison that decides, and what was not stated."""

from __future__ import annotations

from typing import Any, NamedTuple

from speclint.measures.facts import Facts
from speclint.quantity import Absent, Missing, Quantity
from speclint.rulebook.compile import SLACK, held_to_limit, pick
from speclint.rulebook.lacking import followed
from speclint.rulebook.metric import may_round, taken_as_met
from speclint.rulebook.rule import Expression, Limit


class Side(NamedTuple):
    """One side of a comparison: its value, dimension, and the quantity it is, where it is one."""

    value: Any
    dimension: str
    quantity: Quantity | None = None
    text: str = ""


class Answer(NamedTuple):
    """The answer of a condition, the comparison that decided it, and what is missing where it is not known."""

    holds: bool | None
    stated: Side | None = None
    needed: Side | None = None
    sign: str = ""
    part: Facts | None = None
    missing: tuple[Missing, ...] = ()
    also: tuple[Answer, ...] = ()


class Weigher:
    """Weighs the conditions of one rule for one element."""

    def __init__(self, limits: dict[str, Limit]) -> None:
        self.limits = limits

    def condition(self, e: Expression, facts: Facts) -> Answer:
        """The answer of a condition and what decided it."""
        match e[0]:
            case "compare":
                return self._compare(e, facts)
            case "is":
                return self._is(e, facts)
            case "known":
                side, missing = self.value(e[1], facts)
                known = side is not None and side.value is not None
                return Answer(known == e[2], side, Side("stated" if e[2] else "not stated", "text"), missing=missing)
            case "not":
                inner = self.condition(e[1], facts)
                return inner._replace(holds=None if inner.holds is None else not inner.holds, sign="")
            case "both" | "either":
                return self._several(e, facts)
            case "every" | "some":
                return self._quantified(e, facts)
        raise AssertionError(e)

    def _several(self, e: Expression, facts: Facts) -> Answer:
        answers = [self.condition(part, facts) for part in e[1]]
        deciding = e[0] != "both"
        decided = [answer for answer in answers if answer.holds is deciding]
        if decided:
            sized = [answer for answer in decided[1:] if answer.sign and answer.stated and answer.needed]
            return decided[0]._replace(also=() if deciding else (*decided[0].also, *sized))
        unknown = [answer for answer in answers if answer.holds is None]
        if unknown:
            return unknown[0]._replace(missing=tuple(m for answer in unknown for m in answer.missing))
        with_sign = [answer for answer in answers if answer.sign]
        return (with_sign or answers)[0]

    def _quantified(self, e: Expression, facts: Facts) -> Answer:
        answers = [
            answer._replace(part=part)
            for part in followed(e[1], facts) or ()
            for answer in [self.condition(e[2], part)]
        ]
        deciding = e[0] == "some"
        for answer in answers:
            if answer.holds is deciding:
                return answer
        unknown = [answer for answer in answers if answer.holds is None]
        if unknown:
            return unknown[0]._replace(missing=tuple(m for answer in unknown for m in answer.missing))
        if answers:
            return answers[0]
        return Answer(not deciding, Side(f"no {e[1][-1].removesuffix('s')}", "text"))

    def _is(self, e: Expression, facts: Facts) -> Answer:
        side, missing = self.value(e[1], facts)
        wanted = " or ".join(e[2])
        needed = Side(wanted if e[3] else f"other than {wanted}", "text")
        if side is None or side.value is None:
            return Answer(None, None, needed, missing=missing)
        return Answer((side.value in e[2]) == e[3], side, needed)

    def _compare(self, e: Expression, facts: Facts) -> Answer:
        (left, lost), (right, lost_too) = self.value(e[2], facts), self.value(e[3], facts)
        if left is None or right is None:
            return Answer(None, left, right, e[1], missing=lost + lost_too)
        slack = SLACK if e[1] in ("<=", ">") else -SLACK
        bound = right.value + slack
        holds = {
            ">=": left.value >= bound,
            "<=": left.value <= bound,
            ">": left.value > bound,
            "<": left.value < bound,
        }[e[1]]
        if not holds and held_to_limit(e) and may_round(self.limits[e[3][1]]):
            holds = taken_as_met(e[1], left.quantity, right.value)
        return Answer(holds, left, right, e[1])

    def value(self, e: Expression, facts: Facts) -> tuple[Side | None, tuple[Missing, ...]]:
        """The value of an expression, or what is missing."""
        match e[0]:
            case "field":
                return self._field(e, facts)
            case "limit":
                limit = self.limits[e[1]]
                return Side(limit.value, limit.dimension, None, limit.text), ()
            case "number":
                return Side(e[1], e[2]), ()
            case "sum" | "product":
                return self._arithmetic(e, facts)
            case "larger" | "smaller":
                sides, missing = self._both(e[1], e[2], facts)
                if sides is None:
                    return None, missing
                choose = max if e[0] == "larger" else min
                return choose(sides, key=lambda side: side.value), ()
            case "largest" | "smallest":
                found = [self._field(("field", (), e[2], e[3]), part) for part in followed(e[1], facts) or ()]
                missing = tuple(m for _, lost in found for m in lost)
                choose = max if e[0] == "largest" else min
                value = pick(choose, [side.value if side else None for side, _ in found])
                return next((side for side, _ in found if side and side.value == value), None), missing
            case "count":
                return Side(float(len(followed(e[1], facts) or ())), "count"), ()
        raise AssertionError(e)

    def _both(
        self, one: Expression, other: Expression, facts: Facts
    ) -> tuple[tuple[Side, Side] | None, tuple[Missing, ...]]:
        (left, lost), (right, lost_too) = self.value(one, facts), self.value(other, facts)
        if left is None or right is None:
            return None, lost + lost_too
        return (left, right), ()

    def _arithmetic(self, e: Expression, facts: Facts) -> tuple[Side | None, tuple[Missing, ...]]:
        sides, missing = self._both(e[2], e[3], facts)
        if sides is None:
            return None, missing
        a, b = sides[0].value, sides[1].value
        if e[1] == "/" and b == 0:
            return None, ()
        value = {"+": lambda: a + b, "-": lambda: a - b, "*": lambda: a * b, "/": lambda: a / b}[e[1]]()
        return Side(value, e[4], sides[0].quantity), ()

    def _field(self, e: Expression, facts: Facts) -> tuple[Side | None, tuple[Missing, ...]]:
        element: Facts | None = facts
        for name in e[1]:
            assert element is not None
            following = element[name]
            if following is None:
                return None, (Missing(element.label, name, element.element.place),)
            element = following
        assert element is not None
        if e[3] == "part":
            found = element[e[2]]
            if found is None or found == ():
                return None, (Missing(element.label, e[2], element.element.place),)
            named = (found,) if isinstance(found, Facts) else found
            return Side(", ".join(part.label for part in named), "text"), ()
        quantity = element.sheet.quantity(element, e[2])
        if isinstance(quantity, Absent):
            return None, quantity.missing
        return Side(quantity.value, quantity.dimension, quantity, quantity.text), ()

    def not_stated(self, e: Expression, facts: Facts) -> list[tuple[str, tuple[Missing, ...]]]:
        """The facts that a condition wants stated and that are not, by name, with what each lacks.

        Of rivals, those of the first.
        """
        match e[0]:
            case "known":
                side, missing = self.value(e[1], facts)
                return [(e[1][2], missing)] if e[2] and (side is None or side.value is None) else []
            case "both":
                return [fact for part in e[1] for fact in self.not_stated(part, facts)]
            case "either":
                return self.not_stated(e[1][0], facts) if self.condition(e, facts).holds is False else []
        return []
