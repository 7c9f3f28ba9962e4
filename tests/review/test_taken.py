"""What the review took for walls is listed among its assumptions."""

from __future__ import annotations

import pytest

from speclint.pipeline import PlanText, review
from tests.measures.sheets import found
from tests.specs.expected import DAY, book

HOUSE = (
    "wall south {{ faces S; length 30'; height 9'; build log round 10\"; species eastern white pine\n"
    "    seasoning green; finish semitransparent stain{more} }}\n"
    "window a {{ wall south; height 4'; sill 3'; headspace 6\" }}\ncare {{ refinish 3 years }}\n"
)


def nothing(name: str) -> str:
    raise AssertionError(name)


def assumed(more: str) -> dict[str, str]:
    result = review(PlanText(HOUSE.format(more=more), "a.plan", nothing), book(), DAY)
    return {one.setting: one.value for one in result.assumed if one.element == "wall south"}


def test_what_a_wall_leaves_out_and_rules_take_is_listed() -> None:
    rate = found("wall south", "settling rate", HOUSE.format(more="")).value
    told = assumed("")
    assert (f"{rate * 100:.2g}%", "peeled") == (told["settling"], told["surface"])


@pytest.mark.parametrize(("more", "setting"), [("; settling 4%", "settling"), ("; surface planed", "surface")])
def test_what_a_wall_states_is_not_listed(more: str, setting: str) -> None:
    assert setting not in assumed(more)
