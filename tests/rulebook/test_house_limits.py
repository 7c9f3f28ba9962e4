"""A company's own limits: what they change, and what is refused where."""

from __future__ import annotations

import pytest

from speclint.language.parse import parse
from speclint.measures.facts import Sheet
from speclint.model.build import build
from speclint.review.cautions import cautions
from speclint.review.judge import judge
from speclint.rulebook.book import load_rulebook
from speclint.rulebook.house_limits import with_house_limits
from speclint.rulebook.rule import BrokenRulebook
from speclint.ruling import Ruling

PLAN = 'wall west { build log round 10"; starts 10" }'


def ruled(limits: str) -> list[Ruling]:
    book = with_house_limits(load_rulebook(), limits, "house.limits")
    trips, _ = judge(Sheet(build([parse(PLAN, "a.plan")], "a.plan")[0]), book, "imperial")
    return [ruling for ruling in trips if ruling.rule == "sill-too-near-grade"]


def refused(limits: str) -> list[str]:
    with pytest.raises(BrokenRulebook) as trouble:
        with_house_limits(load_rulebook(), limits, "house.limits")
    return [f"{one.line}:{one.column} {one.message}" for one in trouble.value.troubles]


def test_the_shipped_limits_hold_where_the_house_says_nothing() -> None:
    assert [("revise", '12"')] == [(ruling.grade, ruling.needed) for ruling in ruled("")]


def test_a_limit_of_the_house_takes_the_place_of_the_shipped_one_and_says_so() -> None:
    (ruling,) = ruled('rule sill-too-near-grade { code floor 11" }')
    assert ("hold", '11"', "ours: house limit in house.limits") == (ruling.grade, ruling.needed, ruling.basis[0])


def test_the_house_can_change_the_grade() -> None:
    assert ["note"] == [ruling.grade for ruling in ruled("rule sill-too-near-grade { grade note }")]


def test_a_rule_set_aside_is_silent_and_the_review_says_that_it_is() -> None:
    limits = 'rule sill-too-near-grade { set aside "we build on piers" }'
    book = with_house_limits(load_rulebook(), limits, "house.limits")
    assert ([], True) == (
        ruled(limits),
        any("sill-too-near-grade (we build on piers)" in c for c in cautions([], book)),
    )


@pytest.mark.parametrize(
    ("limits", "told"),
    [
        ('rule sill-to-near-grade { code floor 9" }', ["1:6 “sill-to-near-grade” is no rule of the rulebook"]),
        ('rule sill-too-near-grade { code flor 9" }', ["1:28 “code flor” is no limit of sill-too-near-grade"]),
        ("rule sill-too-near-grade { code floor 9 psf }", ["1:39 “9 psf” does not fit “code floor”, which is 8\""]),
        ("rule sill-too-near-grade { grade forbid }", ["1:34 “forbid” is not a grade"]),
        ('rule sill-too-near-grade { code floor 9" 10" }', ['1:42 “10"” is not expected after the value']),
        ('wall a { starts 9" }', ["1:1 “wall” does not name a rule"]),
        (
            'rule sill-too-near-grade { code floor 9"',
            ["1:26 the block of “rule sill-too-near-grade” opened here is not closed"],
        ),
    ],
)  # fmt: skip
def test_a_file_of_limits_that_cannot_be_used_is_refused_at_its_place(limits: str, told: list[str]) -> None:
    assert told == refused(limits)


@pytest.mark.parametrize(("written", "slope"), [("25%", 0.25), ("3:12", 0.25), ('1/2" per ft', 1 / 24)])
def test_a_slope_may_be_written_in_percent(written: str, slope: float) -> None:
    book = with_house_limits(load_rulebook(), f"rule porch-roof-too-flat {{ good slope {written} }}", "house.limits")
    rule = book.named("porch-roof-too-flat")
    assert rule is not None
    shipped = load_rulebook().named("porch-roof-too-flat")
    assert shipped is not None
    assert [(one.name, one.dimension) for one in shipped.limits] == [(one.name, one.dimension) for one in rule.limits]
    values = {limit.name: limit.value for limit in rule.limits}
    assert (pytest.approx(slope), shipped.limits[0].value) == (values["good slope"], values[shipped.limits[0].name])


def test_several_limits_and_a_grade_of_one_rule_are_all_taken() -> None:
    limits = 'rule sill-too-near-grade { code floor 9"; grade note }\nrule porch-roof-too-flat { good slope 3:12 }'
    book = with_house_limits(load_rulebook(), limits, "house.limits")
    sill, porch = book.named("sill-too-near-grade"), book.named("porch-roof-too-flat")
    assert sill is not None
    assert porch is not None
    assert ({"note"}, True) == ({tier.grade for tier in sill.tiers}, '9"' in [limit.text for limit in sill.limits])
    assert "3:12" in [limit.text for limit in porch.limits]
    assert [rule.name for rule in load_rulebook().rules] == [rule.name for rule in book.rules]
