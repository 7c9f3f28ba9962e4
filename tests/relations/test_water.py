"""The way of water: what is led where, that no water is lost, and what a plan's slips look like."""

from __future__ import annotations

import pytest
from hypothesis import given, settings

from speclint.language.parse import parse
from speclint.measures.facts import Sheet
from speclint.measures.water_path import flow_of
from speclint.model.build import build
from speclint.relations.flow import Flow
from speclint.relations.roof_plan import slope_area
from tests.laws.houses import PLANS, example, read
from tests.measures.sheets import absent, found, sheet
from tests.model.plans import plans

WALLS = "wall south { length 40';  starts 20\";  height 8';  ground lawn;  grade 5%;  build log round 10\" }\n"
ROOF = "roof main { covers south;  form shed;  low side south;  run 18';  eaves 2';  rakes 1' }\n"
GUTTER = "gutter south { on roof main;  over south;  length 40' }\n"
HOUSE = WALLS + ROOF
SQUARE_FOOT = 0.3048**2


def flow(text: str) -> Flow:
    return flow_of(sheet(text))


def ends(text: str) -> dict[str, float]:
    """The level areas [ft2] whose water ends at each end that gets some."""
    found = flow(text)
    return {
        node.name: round(found.at[node.name].amount / SQUARE_FOOT)
        for node in found.web.ends()
        if found.at[node.name].amount > 0
    }


def test_a_slope_is_as_deep_as_its_run_and_reach_and_as_long_as_its_wall_and_rakes() -> None:
    assert 840.0 == slope_area(18.0, 2.0, 40.0, 1.0, hipped=False)


def test_the_four_slopes_of_a_hip_make_up_its_rectangle() -> None:
    long, short = slope_area(13.0, 2.0, 40.0, 2.0, hipped=True), slope_area(13.0, 2.0, 26.0, 2.0, hipped=True)
    assert (40 + 4) * (26 + 4) == 2 * long + 2 * short


def test_a_free_eave_drips_on_the_ground_that_falls_away() -> None:
    assert {"ground away from the house": 840} == ends(HOUSE)


def test_ground_that_falls_to_the_house_keeps_its_water_there() -> None:
    text = HOUSE.replace("grade 5%", "grade -1%")
    assert ({"the foundation": 840}, "stays") == (ends(text), found("roof main", "water ends", text).value)


def test_a_drain_leads_off_what_falls_to_the_house() -> None:
    text = HOUSE.replace("grade 5%", "grade -1%") + "foundation main { drain daylight }\n"
    assert {"the foundation drain to daylight": 840} == ends(text)


def test_a_gutter_shorter_than_its_eave_takes_its_share_and_the_rest_drips() -> None:
    text = HOUSE + GUTTER.replace("40'", "30'") + "downspout south { gutter south;  ends daylight }\n"
    assert {"the end of a buried pipe": 630, "ground away from the house": 210} == ends(text)


def test_downspouts_share_the_water_of_their_gutter_by_their_number() -> None:
    text = HOUSE + GUTTER
    text += "downspout a { gutter south;  count 3;  ends daylight }\ndownspout b { gutter south;  ends drywell }\n"
    assert {"the end of a buried pipe": 630, "a buried pit": 210} == ends(text)


def test_a_porch_takes_its_length_of_the_eave_above() -> None:
    text = HOUSE + "porch lake { along south;  depth 8';  length 20' }\n"
    assert {"ground at the edge of porch lake": 420 + 160, "ground away from the house": 420} == ends(text)


def test_an_open_deck_under_an_eave_takes_its_drip_and_its_own_rain() -> None:
    text = HOUSE + "deck sun { along south;  depth 10';  boards five-quarter }\n"
    assert {"ground under deck sun": 840 + 400} == ends(text)


def test_a_deck_inside_the_drip_line_stays_out_of_it() -> None:
    text = HOUSE + "deck strip { along south;  depth 1' }\n"
    assert {"ground away from the house": 840, "ground under deck strip": 40} == ends(text)


@pytest.mark.parametrize(
    ("depth", "words"),
    [
        ("8'-2\"", "drips free on deck lake"),
        ("8'-0\"", "drips free on the rim of deck lake"),
        ("7'-7\"", "drips free on the rim of deck lake"),
        ("7'-6\"", "drips free on the ground at the edge of porch lake"),
    ],
)
def test_a_drip_within_six_inches_of_a_deck_falls_on_its_rim(depth: str, words: str) -> None:
    text = WALLS + "porch lake { along south;  depth 8';  length 20' }\n"
    text += f"deck lake {{ along south;  under lake;  depth {depth};  boards five-quarter }}\n"
    assert words in found("porch lake", "water way", text).value


def test_a_valley_takes_its_area_from_the_slopes_it_lies_between() -> None:
    text = HOUSE + "valley crook { of roof main;  between south;  foot free eave;  area 240 ft2 }\n"
    assert 240 == round(flow(text).at["valley crook"].amount / SQUARE_FOOT)
    assert {"ground away from the house": 840} == ends(text)


def test_an_eave_that_dies_at_a_wall_without_a_diverter_runs_down_it() -> None:
    text = HOUSE + "wall tower { build log round 10\";  grade 2%;  length 12' }\n"
    text += "junction tower { roof roof main;  wall tower;  eave dies yes;  kickout none }\n"
    assert 21 == round(flow(text).at["wall tower below junction tower"].amount / SQUARE_FOOT)


def test_wood_in_the_splash_of_its_strip_is_the_first_bare_wood() -> None:
    low = HOUSE.replace('starts 20"', 'starts 2"').replace("ground lawn", "ground paving;  paving 2%")
    low = low.replace("rakes 1'", "rakes 1';  gutters none")
    assert "lowest wood of wall south" in flow(low).web.reached("roof main")


def test_a_stream_is_followed_over_a_lower_roof_to_bare_wood() -> None:
    text = HOUSE + GUTTER + "porch lake { along south;  depth 8';  length 40' }\n"
    text += "deck lake { along south;  under lake;  depth 12';  joist tops bare;  boards five-quarter }\n"
    text += "downspout south { gutter south;  ends lower roof;  count 2 }\n"
    got = found("deck lake", "stream", text)
    assert 420 == round(got.value / SQUARE_FOOT)
    way = found("deck lake", "stream way", text).value
    wanted = "roof main runs to the eave", "drips through on the frame of deck lake"
    assert wanted == (way[: len(wanted[0])], way[-len(wanted[1]) :])


def test_a_downspout_into_nothing_is_told_with_its_way() -> None:
    text = HOUSE + GUTTER + "downspout south { gutter south;  ends deck }\n"
    assert "yes" == found("downspout south", "meets nothing", text).value
    assert "downspout south empties on a deck that is not drawn" == found("downspout south", "water way", text).value
    assert "nowhere" == found("roof main", "water ends", text).value


def test_a_gutter_without_a_downspout_ends_nowhere() -> None:
    assert "nowhere" == found("gutter south", "water ends", HOUSE + GUTTER).value


def test_water_led_in_a_circle_is_told_once_and_the_rest_is_still_followed() -> None:
    text = WALLS + "porch lake { along south;  depth 8';  length 40' }\ngutter lake { on porch lake }\n"
    text += "downspout lake { gutter lake;  ends lower roof;  onto porch lake }\n"
    told = [found(label, "water circle", text).value for label in ("porch lake", "gutter lake", "downspout lake")]
    wanted = "porch lake to eave of porch lake to gutter lake to downspout lake to porch lake"
    assert [wanted, "none", "none"] == told


def test_an_area_that_is_not_known_asks_for_what_it_is_made_of() -> None:
    missing = absent("gutter south", "roof water", HOUSE.replace("run 18';", "") + GUTTER).missing
    assert [("roof main", "run")] == [(one.element, one.setting) for one in missing]


def test_a_roof_whose_eaves_are_not_known_says_so() -> None:
    text = "wall a { length 9' }\nwall b { length 9' }\nroof main { covers a, b;  form gable }\n"
    assert "not stated" in flow(text).web.nodes["roof main"].says


def test_the_flow_is_the_area_in_the_design_rain() -> None:
    text = "site { rain intensity 2 in/h }\n" + HOUSE
    assert "17.5 gpm" == found("roof main", "water flow", text).shown()  # 840 ft2 x 2 in/h / 96.25


def test_a_gutter_must_carry_what_a_porch_roof_brings_besides_its_own() -> None:
    text = HOUSE + "porch lake { along south;  depth 8';  length 40' }\ngutter lake { on porch lake;  length 40' }\n"
    assert "1160 ft2" == found("gutter lake", "roof area", text).shown()  # 840 from above and 320 of its own


def test_a_stated_area_that_is_less_than_what_the_plan_leads_there_is_told() -> None:
    text = HOUSE + "porch lake { along south;  depth 8';  length 40' }\n"
    area = found("gutter lake", "roof area", text + "gutter lake { on porch lake;  drains 300 ft2 }\n")
    assert ("1160 ft2", True) == (area.shown(), "more than is stated" in " ".join(area.notes))


def lost(home: Sheet) -> float:
    """How much of all the rain on roofs and decks comes to no end. [m2]"""
    found = flow_of(home)
    own = sum(node.own or 0.0 for node in found.web.nodes.values())
    return own - sum(found.at[node.name].amount for node in found.web.ends())


@pytest.mark.parametrize("name", PLANS)
def test_no_water_of_an_example_is_lost(name: str) -> None:
    from speclint.pipeline import PlanText, read_home

    assert pytest.approx(0.0, abs=1e-6) == lost(read_home(PlanText(example(name), f"{name}.plan", read))[0])


@given(plans())
@settings(max_examples=100, deadline=None)
def test_no_water_of_a_generated_home_is_lost_and_every_way_ends(text: str) -> None:
    home, _ = build([parse(text, "a.plan")], "a.plan")
    drawn = Sheet(home)
    found = flow_of(drawn)
    scale = 1.0 + sum(node.own or 0.0 for node in found.web.nodes.values())
    assert () == found.web.circle()
    assert pytest.approx(0.0, abs=1e-6 * scale) == lost(drawn)
