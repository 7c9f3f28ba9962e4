"""A calm default: few findings on a plan that a competent designer draws, and one finding to a cause."""

from __future__ import annotations

import pytest

from speclint.pipeline import PlanText, review
from tests.laws.houses import example, read
from tests.specs.expected import DAY, book

# Two rules that ask for a change of the same setting, each for a reason of its own.
TWO_REASONS = {
    frozenset({"sill-too-near-grade", "snow-banked-against-wood"}): "splash and insects; lying snow",
    frozenset({"high-gable-in-short-lived-finish", "borate-without-cover"}): "upkeep out of reach; washed-out borate",
}


def test_the_lake_demo_gives_no_more_than_twenty_five_findings() -> None:
    result = review(PlanText(example("tamarack-point"), "a.plan", read), book(), DAY)
    assert 25 >= len({(ruling.rule, ruling.grade) for ruling in result.rulings})


@pytest.mark.parametrize("name", ["tamarack-point", "cedar-spit", "high-desert-cabin", "starter", "quiet-harbor"])
def test_no_two_rules_ask_for_one_change_of_an_element(name: str) -> None:
    adjusts = {rule.name: rule.adjust[:1] for rule in book().rules}
    asked: dict[tuple[str, str], set[str]] = {}
    for ruling in review(PlanText(example(name), "a.plan", read), book(), DAY).rulings:
        for setting in adjusts[ruling.rule]:
            asked.setdefault((ruling.element, setting), set()).add(ruling.rule)
    assert {} == {key: rules for key, rules in asked.items() if len(rules) > 1 and frozenset(rules) not in TWO_REASONS}
