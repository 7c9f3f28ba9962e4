"""Every valid plan parses, prints and parses to the same, builds without a mistake, and is reviewed."""

from __future__ import annotations

from dataclasses import fields
from typing import Any

from hypothesis import given, settings

from speclint.language.parse import parse
from speclint.language.printer import print_plan
from speclint.model.build import build
from speclint.pipeline import PlanText, review
from tests.language.meaning import meaning
from tests.language.test_any_text import nothing
from tests.model.plans import plans
from tests.specs.expected import DAY, book


def mistakes_of(text: str, alternate: str = "") -> list[str]:
    tree = parse(text, "a.plan")
    mistakes = build([tree], "a.plan", alternate)[1]
    return [f"{m.line}:{m.column} {m.message} ({m.help})" for m in (*tree.mistakes, *mistakes)]


def values_of(text: str) -> dict[str, dict[str, Any]]:
    """The values of every element, without their places."""
    home, _ = build([parse(text, "a.plan")], "a.plan")
    return {
        label: {one.name: getattr(element, one.name) for one in fields(element) if one.name not in ("place", "given")}
        for label, element in home.elements.items()
    }


@given(plans())
@settings(max_examples=150)
def test_a_valid_plan_has_no_mistake(text: str) -> None:
    assert [] == mistakes_of(text)


@given(plans())
@settings(max_examples=150)
def test_a_valid_plan_parses_prints_and_parses_to_the_same(text: str) -> None:
    statements = parse(text, "a.plan").statements
    assert meaning(statements) == meaning(parse(print_plan(statements), "a.plan").statements)


@given(plans())
def test_a_printed_plan_builds_the_same_home(text: str) -> None:
    assert values_of(text) == values_of(print_plan(parse(text, "a.plan").statements))


@given(plans())
def test_a_valid_plan_is_reviewed_in_either_units_without_a_mistake(text: str) -> None:
    imperial, metric = (
        review(PlanText(text, "a.plan", nothing), book(), DAY, system) for system in ("imperial", "metric")
    )
    assert ((), [(r.rule, r.element) for r in imperial.rulings]) == (
        imperial.mistakes,
        [(r.rule, r.element) for r in metric.rulings],
    )
