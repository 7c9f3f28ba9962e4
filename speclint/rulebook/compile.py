"""Checked rules to Python code: one function for each kind of element judges all its rules at once.

A condition answers yes, no or not known (`True`, `False`, `None`), after Kleene's strong logic of three values.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Sequence
from itertools import count
from math import inf
from typing import Any

from speclint.rulebook.metric import ROUNDING, may_round, taken_as_met
from speclint.rulebook.rule import Expression, Rule

SLACK = 1e-6  # metres and the like: inches and millimetres of one length must compare as equal
# A comparison with a limit reads what it needs as a name of its own: `above_7_0` is limit 0 of rule 7 less the slack.
_BOUND = {">=": "above", "<=": "below", ">": "below", "<": "above"}


def held_to_limit(e: Expression) -> bool:
    """Whether a comparison holds one length of the plan to a limit."""
    return e[1] in (">=", "<=") and e[2][0] == "field" and e[2][3] == "length" and e[3][0] == "limit"


# What a judge returns for each rule that is not met: (index of the rule, index of the tier, answer, answer of "where").
Finding = tuple[int, int, bool | None, bool | None]
Judge = Callable[[Any], list[Finding]]


def source_for(kind: str, rules: Iterable[tuple[int, Rule]]) -> str:
    """The text of the function that judges one kind of element.

    Args:
        kind: Kind of element.
        rules: The rules about that kind, each with its index in the rulebook.
    """
    lines = [f"def judge_{kind}(f):", "    out = []"]
    for index, rule in rules:
        writer = _Writer(index, rule)
        indent = "    "
        where = "True"
        if rule.where is not None:
            lines.append(f"    w = {writer.condition(rule.where)}")
            lines.append("    if w is not False:")
            indent, where = "        ", "w"
        lines += writer.tiers(indent, where)
    lines.append("    return out")
    return "\n".join(lines)


class _Writer:
    """Writes the expressions of one rule as Python."""

    def __init__(self, index: int, rule: Rule) -> None:
        self.index, self.rule = index, rule
        self.limits = {limit.name: number for number, limit in enumerate(rule.limits)}
        self.names = (f"t{number}" for number in count())

    def tiers(self, indent: str, where: str) -> list[str]:
        """The requirements in turn: the first that fails is told, and so is the first that cannot be answered."""
        if len(self.rule.tiers) == 1:
            answer = f"c = {self.condition(self.rule.tiers[0].condition)}"
            return [indent + answer, f"{indent}if c is not True: out.append(({self.index}, 0, c, {where}))"]
        lines = [f"{indent}u = -1"]
        for number, tier in enumerate(self.rule.tiers):
            lines.append(f"{indent}c = {self.condition(tier.condition)}")
            lines.append(f"{indent}if c is False: out.append(({self.index}, {number}, c, {where}))")
            last = number + 1 == len(self.rule.tiers)
            if number == 0:
                lines.append(f"{indent}elif c is None: u = 0")
            else:
                lines.append(f"{indent}elif c is None and u < 0: u = {number}")
            if not last:
                lines.append(f"{indent}if c is not False:")
                indent += "    "
        outer = indent[: -4 * (len(self.rule.tiers) - 1)]
        lines.append(f"{outer}if u >= 0: out.append(({self.index}, u, None, {where}))")
        return lines

    def condition(self, e: Expression) -> str:
        """An expression that is `True`, `False` or `None`."""
        match e[0]:
            case "compare":
                a, sign, left = next(self.names), e[1], self.value(e[2])
                if e[3][0] == "limit":
                    bound = f"{_BOUND[sign]}_{self._limit(e[3])}"
                    return f"(None if ({a} := {left}) is None else {a} {sign} {bound}{self._near(e, a)})"
                b, right = next(self.names), self.value(e[3])
                slack = "- S" if _BOUND[sign] == "above" else "+ S"
                return f"(None if ({a} := {left}) is None or ({b} := {right}) is None else {a} {sign} {b} {slack})"
            case "is":
                a = next(self.names)
                test = f"{a} in {e[2]!r}" if e[3] else f"{a} not in {e[2]!r}"
                return f"(None if ({a} := {self.value(e[1])}) is None else {test})"
            case "known":
                return f"({self.value(e[1])} is {'not ' if e[2] else ''}None)"
            case "not":
                a = next(self.names)
                return f"(None if ({a} := {self.condition(e[1])}) is None else not {a})"
            case "both" | "either":
                return self._chain(e[1], "False" if e[0] == "both" else "True")
            case "every" | "some":
                return f"{e[0]}({self._follow(e[1])}, lambda f: {self.condition(e[2])})"
        raise AssertionError(e)

    def _limit(self, e: Expression) -> str:
        return f"{self.index}_{self.limits[e[1]]}"

    def _near(self, e: Expression, value: str) -> str:
        """What else meets a limit in inches: the rounded metric size of it."""
        if not held_to_limit(e):
            return ""
        limit = self._limit(e[3])
        come_near = f"{value} {e[1]} near{_BOUND[e[1]]}_{limit}"  # few that fail do
        return f" or {come_near} and near({e[1]!r}, f, {e[2][1]!r}, {e[2][2]!r}, L_{limit})"

    def _chain(self, parts: tuple[Expression, ...], deciding: str) -> str:
        names = [next(self.names) for _ in parts]
        tests = [f"({name} := {self.condition(part)}) is {deciding}" for name, part in zip(names, parts, strict=True)]
        unknown = " or ".join(f"{name} is None" for name in names)
        other = "True" if deciding == "False" else "False"
        return f"({deciding} if {' or '.join(tests)} else None if {unknown} else {other})"

    def value(self, e: Expression) -> str:
        """An expression that is a value or `None`."""
        match e[0]:
            case "field":
                return f"f[{e[2]!r}]" if not e[1] else f"of({self._follow(e[1])}, {e[2]!r})"
            case "limit":
                return f"L_{self._limit(e)}"
            case "number":
                return repr(e[1])
            case "sum" | "product":
                a, b = next(self.names), next(self.names)
                left, right = self.value(e[2]), self.value(e[3])
                zero = f" or {b} == 0" if e[1] == "/" else ""
                return f"(None if ({a} := {left}) is None or ({b} := {right}) is None{zero} else {a} {e[1]} {b})"
            case "larger" | "smaller":
                return f"pick({'max' if e[0] == 'larger' else 'min'}, ({self.value(e[1])}, {self.value(e[2])}))"
            case "largest" | "smallest":
                values = f"[g[{e[2]!r}] for g in {self._follow(e[1])} or ()]"
                return f"pick({'max' if e[0] == 'largest' else 'min'}, {values})"
            case "count":
                return f"float(len({self._follow(e[1])} or ()))"
        raise AssertionError(e)

    def _follow(self, relations: tuple[str, ...]) -> str:
        text = f"f[{relations[0]!r}]"
        for name in relations[1:]:
            text = f"of({text}, {name!r})"
        return text


def every(elements: Any, test: Callable[[Any], bool | None]) -> bool | None:
    """Whether the test holds for every element; not known where one is not known and none fails."""
    answer: bool | None = True
    for element in elements or ():
        found = test(element)
        if found is False:
            return False
        if found is None:
            answer = None
    return answer


def some(elements: Any, test: Callable[[Any], bool | None]) -> bool | None:
    """Whether the test holds for some element; not known where one is not known and none holds."""
    answer: bool | None = False
    for element in elements or ():
        found = test(element)
        if found is True:
            return True
        if found is None:
            answer = None
    return answer


def of(element: Any, name: str) -> Any:
    """A fact of a related element, or nothing where there is no such element."""
    return None if element is None else element[name]


def pick(choose: Callable[[Any], Any], values: Any) -> Any:
    """The least or greatest of the values; nothing where one is not known or there are none."""
    kept = list(values)
    return None if not kept or any(value is None for value in kept) else choose(kept)


def judges(code: Any, rules: Sequence[Rule]) -> dict[str, Judge]:
    """The functions that compiled code defines, by kind of element.

    Args:
        code: The compiled code.
        rules: The rules it was compiled from, with the limits that hold.
    """
    space: dict[str, Any] = {"every": every, "some": some, "of": of, "pick": pick, "near": near, "S": SLACK}
    for number, rule in enumerate(rules):
        for at, limit in enumerate(rule.limits):
            value, name = limit.value, f"_{number}_{at}"
            space["L" + name], space["above" + name], space["below" + name] = value, value - SLACK, value + SLACK
            if limit.dimension == "length":
                least, most = (value * (1 - ROUNDING), value * (1 + ROUNDING)) if may_round(limit) else (inf, -inf)
                space["nearabove" + name], space["nearbelow" + name] = least, most
    exec(code, space)
    return {name.removeprefix("judge_"): made for name, made in space.items() if name.startswith("judge_")}


def near(sign: str, facts: Any, ways: tuple[str, ...], name: str, bound: float) -> bool:
    """Whether a fact of an element that the ways lead to is the rounded metric size of a bound."""
    for way in ways:
        facts = facts[way]
    return taken_as_met(sign, facts.sheet.quantity(facts, name), bound)
