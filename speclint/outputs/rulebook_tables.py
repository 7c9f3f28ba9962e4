"""The rulebook seen from other sides: by grade, by element, by basis, and by the relations that rules read."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from typing import Any

from speclint.citation import publication
from speclint.measures.register import measures
from speclint.model.kinds import KINDS
from speclint.rulebook.book import Rulebook
from speclint.rulebook.rule import GRADES, Rule

RELATIONS = {
    "water path": ("water_path", "water"),
    "bearing and movement": ("bearing", "movement", "footings"),
    "order of work": ("work_order",),
}
TOUCHING = "touching"


def relations_of(rule: Rule) -> list[str]:
    """The relations that a rule reads: through what it computes, or by going from one element to another."""
    names = set(_names(rule))
    modules = {
        measure.function.__module__.rsplit(".", 1)[-1]
        for found in measures().values()
        for name, measure in found.items()
        if name in names
    }
    found = [relation for relation, homes in RELATIONS.items() if modules & set(homes)]
    if rule.kinds == ("step",) and "order of work" not in found:
        found.append("order of work")
    return [*found, TOUCHING] if any(_steps(rule)) else found


def tables(book: Rulebook) -> list[str]:
    """The tables as lines of Markdown."""
    parts = ["", "## By grade", ""]
    for grade in GRADES:
        held = [rule for rule in book.rules if grade in {tier.grade for tier in rule.tiers}]
        parts.append(f"- `{grade}` ({len(held)}): {_linked(held)}")
    parts += ["", "## By element", ""]
    for kind in KINDS:
        about = [rule for rule in book.rules if kind in rule.kinds]
        if about:
            parts.append(f"- {kind} ({len(about)}): {_linked(about)}")
    parts += ["", "## By what they rest on", "", "A rule that rests on several stands under each.", ""]
    resting: dict[str, list[Rule]] = {}
    for rule in book.rules:
        for name in dict.fromkeys(
            publication(basis.key).title if basis.key else basis.standing for basis in rule.basis
        ):
            resting.setdefault(name, []).append(rule)
    parts += [f"- {name} ({len(rules)}): {_linked(rules)}" for name, rules in sorted(resting.items())]
    parts += [
        "",
        "## By the relations they read",
        "",
        "Water path, bearing and movement, and order of work are graphs of the whole plan; touching is one element "
        "naming another. `speclint trace` and `speclint sequence` show the graphs.",
        "",
        "| rule | " + " | ".join([*RELATIONS, TOUCHING]) + " |",
        "|---|" + "---|" * (len(RELATIONS) + 1),
    ]
    counts = dict.fromkeys([*RELATIONS, TOUCHING], 0)
    for rule in book.rules:
        read = relations_of(rule)
        if read:
            marks = ["yes" if relation in read else "" for relation in counts]
            parts.append(f"| [`{rule.name}`]({rule.name}.md) | {' | '.join(marks)} |")
        for relation in read:
            counts[relation] += 1
    told = ", ".join(f"{relation} {count}" for relation, count in counts.items())
    plain = sum(not relations_of(rule) for rule in book.rules)
    return [*parts, "", f"In all: {told}; {plain} rules read one element and its lot alone."]


def _linked(rules: Iterable[Rule]) -> str:
    return ", ".join(f"[{rule.name}]({rule.name}.md)" for rule in rules)


def _names(rule: Rule) -> Iterator[str]:
    for expression in _expressions(rule):
        yield from _words(expression)


def _expressions(rule: Rule) -> list[Any]:
    found: list[Any] = [rule.where, rule.stated, rule.needed, *(tier.condition for tier in rule.tiers)]
    return [expression for expression in found if expression is not None]


def _words(expression: Any) -> Iterator[str]:
    """Every text in an expression: names of facts among them, and nothing else that is also the name of a measure."""
    for part in expression:
        if isinstance(part, str):
            yield part
        elif isinstance(part, tuple):
            yield from _words(part)


def _steps(rule: Rule) -> Iterator[str]:
    """The relations that lead from the rule's element to another that is no single one of the plan."""
    for expression in _expressions(rule):
        yield from _led(expression)


def _led(expression: Any) -> Iterator[str]:
    if expression and expression[0] in ("field", "every", "some", "count", "largest", "smallest"):
        yield from (name for name in expression[1] if name not in KINDS or not KINDS[name].single)
    for part in expression:
        if isinstance(part, tuple):
            yield from _led(part)
