"""Choices of measures that no other test comes to: what is taken where two parts vie, or where one is left out."""

from __future__ import annotations

import pytest

from speclint.units import FOOT, INCH
from tests.measures.sheets import found

WALLS = """
wall south { faces S; length 40'; height 18'; starts 20"; build log round 10"; settling 5% }
wall west { faces W; length 30'; height 9'; peak 18'; starts 20"; build log round 10"; settling 2% }
roof main { covers south, west; gables west; form gable; pitch 8:12; eaves 2'; rakes 1'; gutters none; run 15' }
porch low { along south; depth 6'; length 20'; roof height 8'; roof pitch 3:12 }
porch high { along south; depth 9'; length 20'; roof height 17'-6"; roof pitch 3:12 }
"""


def test_no_gutter_is_wanted_over_a_gable() -> None:
    assert found("wall west", "gutter above", WALLS).value == "yes"
    assert found("wall south", "gutter above", WALLS).value == "no"


def test_a_wall_over_two_porch_roofs_is_reached_past_the_higher() -> None:
    notes = found("wall south", "access", WALLS).notes
    assert not [note for note in notes if "porch roof" in note]  # 18' is little over 17'-6"
    lower = WALLS.replace("roof height 17'-6\"", "roof height 9'")
    assert [note for note in found("wall south", "access", lower).notes if "porch roof" in note]


def test_a_window_is_covered_by_the_deepest_of_its_roofs() -> None:
    window = "window one { wall south; sill 2'-6\"; height 4' }"
    long = WALLS.replace("depth 6'; length 20'", "depth 6'; length 40'").replace(
        "depth 9'; length 20'", "depth 9'; length 40'"
    )
    assert found("window one", "cover", long + window).value == pytest.approx(9 * FOOT)
    assert found("window one", "cover", WALLS + window).value == pytest.approx(2 * FOOT)


def test_the_gutter_of_a_porch_whose_water_is_not_drawn_takes_its_depth_along_the_gutter() -> None:
    bare = "porch low { depth 6'; roof height 8' }\ngutter low { on porch low; length 20' }"
    assert found("gutter low", "roof area", bare).value == pytest.approx(6 * 20 * FOOT * FOOT)


def test_flashing_slides_an_inch_further_than_the_wall_and_two_at_a_chimney() -> None:
    plan = WALLS + "junction low { roof porch low; wall south }\nchimney one { roof main }"
    for label, left in (("junction low", 1 * INCH), ("chimney one", 2 * INCH)):
        past = float(found(label, "settling past", plan).value)
        assert past > 0.25 * INCH
        assert found(label, "slip need", plan).value == pytest.approx(past + left)


def test_a_chimney_settles_past_the_wall_that_comes_down_most() -> None:
    plan = WALLS + "chimney one { roof main }"
    most = max(float(found(f"wall {name}", "settlement", plan).value) for name in ("south", "west"))
    assert float(found("chimney one", "settling past", plan).value) >= most
