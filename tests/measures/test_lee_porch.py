"""What a porch on the dry side leaves bare on the wet one."""

from __future__ import annotations

import pytest

from speclint.language.parse import parse
from speclint.measures.facts import Facts, Sheet
from speclint.model.build import build

HOUSE = """
site { weather "Marquette, MI"; terrain suburban; rain wind SW }
wall west { faces SW; build log round 10"; length 40'; height 10' }
wall east { faces NE; build log round 10"; length 40'; height 10' }
roof main { covers west, east; form gable; eaves 1'-6" }
"""
EAST = "porch east { along east; length 40'; depth 8'; roof height 9' }\n"
WEST = "porch west { along west; length 40'; depth 8'; roof height 9' }\n"


def facts(text: str, label: str) -> Facts:
    home, mistakes = build([parse(text, "a.plan")], "a.plan")
    assert () == mistakes
    return Sheet(home)[label]


def test_a_porch_misses_what_passes_the_roof_over_the_wet_wall() -> None:
    porch = facts(HOUSE + EAST, "porch east")
    west, east = porch.sheet["wall west"], porch.sheet["wall east"]
    assert porch["wettest bare wall"] == "wall west"
    assert porch["rain it misses"] == pytest.approx(
        west["free driving rain"] * west["rain share"] / east["free driving rain"]
    )


def test_a_porch_on_the_wet_side_misses_less_than_blows_at_its_own_wall() -> None:
    assert facts(HOUSE + WEST, "porch west")["rain it misses"] < 1


def test_nothing_is_missed_where_every_wall_has_a_porch_or_the_bare_wall_is_of_stone() -> None:
    assert facts(HOUSE + EAST + WEST, "porch east")["rain it misses"] == 0
    stone = HOUSE.replace('faces SW; build log round 10"', "faces SW; build framed with stone")
    assert facts(stone + EAST, "porch east")["rain it misses"] == 0


def test_a_deeper_roof_over_the_bare_wall_leaves_less_to_miss() -> None:
    shallow = facts(HOUSE + EAST, "porch east")["rain it misses"]
    deep = facts(HOUSE.replace("eaves 1'-6\"", "eaves 3'"), "wall west")["rain share"]
    assert facts(HOUSE.replace("eaves 1'-6\"", "eaves 3'") + EAST, "porch east")["rain it misses"] < shallow
    assert deep < facts(HOUSE, "wall west")["rain share"]
