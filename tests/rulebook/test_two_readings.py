"""The compiled rules and the weigher read one text: they must answer alike, on every rule and element of every plan."""

from __future__ import annotations

import pytest

from speclint.commands.files import read_text
from speclint.pipeline import PlanText, read_home
from speclint.rulebook.weigh import Weigher
from tests.specs.expected import SPECS, book, names


@pytest.mark.parametrize("name", names())
def test_the_compiled_rules_answer_as_the_weigher_does(name: str) -> None:
    plan = PlanText(read_text(SPECS / f"{name}.plan"), f"{name}.plan", lambda used: read_text(SPECS / used))
    sheet, _ = read_home(plan)
    compiled = book().judges
    looked, differing = 0, []
    for facts in sheet.facts.values():
        found = {
            (rule, tier): answer for rule, tier, answer, _ in compiled.get(facts.element.kind, lambda f: [])(facts)
        }
        for (index, tier), answer in found.items():
            rule = book().rules[index]
            weigher = Weigher({limit.name: limit for limit in rule.limits})
            weighed = weigher.condition(rule.tiers[tier].condition, facts).holds
            looked += 1
            if weighed is not answer:
                differing.append((rule.name, tier, facts.label, answer, weighed))
        for index, rule in enumerate(book().rules):
            if facts.element.kind in rule.kinds and (index, 0) not in found:
                weigher = Weigher({limit.name: limit for limit in rule.limits})
                about = rule.where is None or weigher.condition(rule.where, facts).holds is not False
                looked += 1
                if about and weigher.condition(rule.tiers[0].condition, facts).holds is not True:
                    differing.append((rule.name, 0, facts.label, True, None))
    assert (True, []) == (looked > 100, differing)
