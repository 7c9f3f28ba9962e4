"""A rounded metric size stands for the inches of a limit, by how the plan writes it and not by the reader's units."""

from __future__ import annotations

import pytest

from speclint.pipeline import PlanText, review
from speclint.rulebook.metric import ROUNDING
from speclint.units import System
from tests.specs.expected import DAY, book

RAKE = "wall east { faces E; length 30'; height 9'; build log round 10\" }\n"
RAKE += "roof main { covers east; gables east; form gable; pitch 6:12; eaves 2'; rakes %s }\n"


def nothing(name: str) -> str:
    raise AssertionError(name)


def told(text: str, rule: str, system: System = "imperial") -> list[str]:
    return [
        one.grade for one in review(PlanText(text, "a.plan", nothing), book(), DAY, system).rulings if one.rule == rule
    ]


@pytest.mark.parametrize(
    ("rakes", "found"),
    [
        ("600 mm", []),
        ("0.6 m", []),
        ("60 cm", []),
        ('24"', []),
        ('23.62"', ["revise"]),  # the same length written in inches
        ("598 mm", ["revise"]),  # no customary size
        ("590 mm", ["revise"]),  # beyond three in a hundred
    ],
)
def test_a_limit_in_inches_takes_the_customary_metric_size(rakes: str, found: list[str]) -> None:
    assert found == told(RAKE % rakes, "rake-too-short")


@pytest.mark.parametrize("system", ["imperial", "metric"])
def test_the_units_of_the_reader_change_nothing(system: System) -> None:
    assert [] == told(RAKE % "600 mm", "rake-too-short", system)


def test_a_measure_made_of_metric_sizes_is_taken_so_too() -> None:
    post = 'post a { base standoff %s on pier; foot above grade 12"; wood sapwood; treatment none }'
    grades = [told(post % size, "post-foot-too-low") for size in ("25 mm", '0.98"', "20 mm")]
    assert [[], ["revise"], ["revise"]] == grades


def test_a_rule_that_allows_no_variance_is_kept_to_the_letter() -> None:
    deck = 'deck sun { height 48" }\nrail sun { on deck sun; height %s }\n'
    assert (["hold"], []) == (told(deck % "900 mm", "guard-too-low"), told(deck % '36"', "guard-too-low"))


def test_rounding_is_three_in_a_hundred() -> None:
    assert 0.03 == ROUNDING
