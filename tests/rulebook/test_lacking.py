"""The light reading of a condition agrees with the one that tells which comparison decides."""

from __future__ import annotations

import pytest

from speclint.measures.facts import Sheet
from speclint.pipeline import PlanText, read_home
from speclint.rulebook.book import load_rulebook
from speclint.rulebook.lacking import Lacking
from speclint.rulebook.weigh import Weigher
from tests.specs.expected import SPECS, names

SPARE = (
    "wall north { faces N; length 9 m; build log round }\nroof main { covers north }\nporch lake { along north }\n"
    "post lake { under porch lake; count 2 }\nbeam lake { on post lake }\ndeck lake { along north }\n"
    "window one { wall north }\nchimney hearth { roof main }\ngutter north { on roof main }"
)


def sheet_of(name: str) -> Sheet:
    text = SPARE if name == "spare" else (SPECS / f"{name}.plan").read_text(encoding="utf-8")
    return read_home(PlanText(text, f"{name}.plan", lambda used: (SPECS / used).read_text(encoding="utf-8")))[0]


@pytest.mark.parametrize("name", [*names(), "spare"])
def test_both_readings_give_one_answer_and_miss_the_same_facts(name: str) -> None:
    sheet = sheet_of(name)
    answers: dict[bool | None, int] = {}
    for rule in load_rulebook().rules:
        limits = {limit.name: limit for limit in rule.limits}
        weigher, lacking = Weigher(limits), Lacking(rule)
        conditions = [tier.condition for tier in rule.tiers] + ([rule.where] if rule.where else [])
        for facts in (one for kind in rule.kinds for one in sheet.of_kind(kind)):
            for condition in conditions:
                full = weigher.condition(condition, facts)
                holds, missing = lacking.asks(condition)(facts)
                assert full.holds is holds, (rule.name, facts.label)
                assert full.missing == missing or holds is not None, (rule.name, facts.label)
                answers[full.holds] = answers.get(full.holds, 0) + 1
    assert answers[True] > 20
    assert answers[False] > 20
    if name == "spare":
        assert answers[None] > 100
