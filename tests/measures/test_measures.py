"""Measures bound to parts of a home: hand-computed values, what is missing, and what each number unfolds to."""

from __future__ import annotations

import pytest

from speclint.language.parse import parse
from speclint.measures.facts import CircularMeasure, Facts, Working
from speclint.measures.register import Measure, UnknownMeasure, find_measure, measures
from speclint.model.build import build
from speclint.model.element import settings_of
from speclint.model.kinds import KINDS
from speclint.quantity import Quantity
from speclint.units import Dimension
from tests.measures.sheets import absent, found

HOUSE = """
site { weather "Marquette, MI"; rain wind SW; ground snow 70 psf; frost depth 60"; rain intensity 4 in/h }
wall south {
    faces S; length 40'; height 8'; build log round 10"; scribed yes; species lodgepole pine; seasoning green
    starts 12"; ground lawn
}
wall west { faces W; length 30'; height 8'; peak 20'; build log round 10"; starts 12" }
roof main {
    covers south, west; gables west; form gable; pitch 10:12; eaves 2'; rakes 1'; run 15'
    gutters none; covering standing seam
}
porch lake { along south; length 40'; depth 8'; roof height 8'; hung on wall }
post lake { under porch lake; size 8x8; height 8'; footing 48" }
window west { wall west; sill 4'; height 5' }
gutter south { on roof main; over south; profile ogee 5"; length 40'; fall 1/16" per ft }
downspout south { gutter south; count 2; size 3x4 }
"""


@pytest.mark.parametrize(
    ("label", "name", "shown"),
    [
        ("wall south", "roof reach", "2'-0\""),
        ("wall west", "roof reach", '12"'),
        ("wall south", "gable", "no"),
        ("wall west", "gable", "yes"),
        ("wall west", "wood height", "20'-0\""),
        ("wall south", "cover ratio", "1.00"),  # porch: 8 ft over 8 ft
        ("wall west", "cover ratio", "0.12"),  # rake: 1 ft over 8 ft
        ("wall west", "sheltered height", '20 3/4"'),  # 12 in / tan 30
        ("wall west", "faces rain", "yes"),
        ("wall south", "faces rain", "yes"),
        ("wall south", "overhang need", '18"'),
        ("wall west", "overhang need", '12"'),
        ("wall south", "overhang for height", '12"'),
        ("wall south", "settlement", '5 3/4"'),  # 6 percent of 8 ft
        ("post lake", "travel need", '6 3/4"'),
        ("post lake", "footing clearance", '-12"'),
        ("window west", "cover ratio", "0.06"),  # 1 ft over 16 ft
        ("gutter south", "roof area", "714 ft2"),  # (15 + 2) by (40 + 2 x 1)
        ("gutter south", "demand", "3,427 ft2 at 1 in/h"),  # 714 x 1.2 x 4
        ("gutter south", "capacity", "5,520 ft2 at 1 in/h"),
        ("downspout south", "demand", "1,714 ft2 at 1 in/h"),
        ("downspout south", "capacity", "14,400 ft2 at 1 in/h"),
        ("roof main", "slippery", "yes"),
        ("roof main", "ice barrier need", "6'-3 1/2\""),  # (24 + 10 + 24) x hypot(1, 10/12)
        ("site", "decay hazard", "moderate"),
    ],
)
def test_a_measure_has_the_value_worked_by_hand(label: str, name: str, shown: str) -> None:
    assert shown == found(label, name, HOUSE).shown()


def test_a_number_unfolds_to_the_statements_it_came_from() -> None:
    def leaves(quantity: Quantity) -> set[str]:
        if not quantity.inputs:
            return {f"{quantity.name} of {quantity.element}"}
        return set().union(*(leaves(part) for part in quantity.inputs))

    wanted = {"height of wall south", "species of wall south", "seasoning of wall south", "scribed of wall south"}
    assert wanted <= leaves(found("post lake", "travel need", HOUSE))


def test_every_computed_number_that_follows_a_publication_carries_its_citation() -> None:
    citations = found("wall south", "overhang need", HOUSE).citations
    assert ["hud-durability-2002"] == [citation.key for citation in citations]


def test_an_assumed_input_says_that_speclint_assumed_it() -> None:
    inputs = found("wall south", "settlement", HOUSE).inputs
    assert ["assumed by speclint"] == [part.how for part in inputs if part.name == "service moisture"]


def test_the_nearest_station_stands_for_coordinates_and_says_how_far_it_is() -> None:
    notes = found("site", "station", "site { latitude 46.55; longitude -87.40 }").notes
    assert any(note.startswith("nearest station: Marquette") and note.endswith("km away") for note in notes)


def test_a_far_station_is_said_to_be_far() -> None:
    notes = found("site", "station", "site { latitude 51; longitude -95 }").notes
    assert any("far for one climate" in note for note in notes)


def test_no_station_stands_for_a_lot_half_the_world_away() -> None:
    _, mistakes = build([parse("site { latitude 39.3; longitude 120.2 }", "a.plan")], "a.plan")
    told = [(mistake.message.split(";")[0], mistake.help) for mistake in mistakes]
    assert [("no weather station is within 500 km", "did you mean longitude -120.2?")] == told


def test_a_short_porch_does_not_shelter_the_whole_wall() -> None:
    short = HOUSE.replace("along south; length 40'", "along south; length 12'")
    assert ("1.00", "0.25") == (
        found("wall south", "cover ratio", HOUSE).shown(),
        found("wall south", "cover ratio", short).shown(),
    )


def test_an_opening_under_a_short_porch_is_covered_by_it_where_the_plan_says_so() -> None:
    short = HOUSE.replace("along south; length 40'", "along south; length 12'")
    door = 'door front { wall south; under lake; sill 0"; height 6\'-8" }\n'
    assert ("1.00", "0.25") == tuple(
        found("door front", "cover ratio", short + text).shown() for text in (door, door.replace("under lake; ", ""))
    )


def test_the_wood_above_a_porch_roof_counts_for_itself() -> None:
    tall = HOUSE.replace("length 40'; height 8'", "length 40'; height 16'")
    assert "0.25" == found("wall south", "cover ratio", tall).shown()  # the eave: 2 ft over 8 ft


def test_a_post_beside_a_tall_wall_follows_it_only_where_the_porch_roof_hangs() -> None:
    tall = HOUSE.replace("length 40'; height 8'", "length 40'; height 16'")
    assert '5 3/4"' == found("post lake", "settling past", tall).shown()  # 6 percent of 8 ft


def test_a_station_much_higher_than_the_lot_is_said_to_be_so() -> None:
    text = 'site { weather "Denver, CO"; elevation 500 m }'
    assert any("above the lot" in note for note in found("site", "decay hazard index", text).notes)


@pytest.mark.parametrize(
    ("text", "label", "name", "missing"),
    [
        ("wall a { height 8' }", "wall a", "roof reach", [("wall a", "roof")]),
        ("wall a { height 8' }\nroof b { covers a }", "wall a", "roof reach", [("roof b", "form")]),
        ("wall a { build log round }", "wall a", "settlement", [("wall a", "height")]),
        ("site { frost depth 4' }", "site", "decay hazard index", [("site", "weather")]),
        ("post a { height 8' }", "post a", "footing clearance", [("post a", "footing")]),
    ],
)
def test_a_measure_that_lacks_an_input_says_which(
    text: str, label: str, name: str, missing: list[tuple[str, str]]
) -> None:
    assert missing == [(one.element, one.setting) for one in absent(label, name, text).missing]


def test_a_measure_outside_its_table_says_so_and_asks_nothing() -> None:
    text = "deck a { joists 3x14 at 16\"; joist species southern pine; along b }\nwall b { height 8' }"
    result = absent("deck a", "joist span limit", text)
    assert ((), True) == (result.missing, "does not go so far" in result.reason)


def test_a_name_that_is_no_measure_is_a_fault_of_the_program() -> None:
    with pytest.raises(UnknownMeasure, match=r"^wanted a measure of a wall; got 'wall heigth'$"):
        find_measure("wall", "wall heigth")


def test_a_measure_that_needs_itself_is_a_fault_of_the_program(monkeypatch: pytest.MonkeyPatch) -> None:
    def ring(facts: Facts, work: Working) -> float:
        return float(work.need(facts, "ring"))

    monkeypatch.setitem(measures()["wall"], "ring", Measure("wall", "ring", "length", "a circle", ring))  # type: ignore[arg-type]
    with pytest.raises(CircularMeasure, match=r"^ring of wall south needs itself$"):
        found("wall south", "ring", HOUSE)


def test_every_measure_has_a_known_dimension_and_a_meaning() -> None:
    known = {*Dimension.__args__, "yes or no", "choice", "text"}  # type: ignore[attr-defined]
    looked = [measure for kinds in measures().values() for measure in kinds.values()]
    assert 60 < len(looked)
    assert [] == [measure.name for measure in looked if measure.dimension not in known or not measure.meaning]


def test_no_measure_hides_a_setting_of_its_element() -> None:
    hidden = [(kind, name) for kind, named in measures().items() for name in named if name in settings_of(KINDS[kind])]
    assert [] == hidden


def test_a_deck_in_the_open_is_read_at_its_snow_and_a_roofed_one_at_its_live_load() -> None:
    text = """
site { ground snow 70 psf }
wall a { height 8' }
porch p { along a; depth 8' }
deck open { along a; joists 2x8 at 16"; joist species southern pine }
deck roofed { along a; under p; joists 2x8 at 16"; joist species southern pine }
"""
    limits = [found(f"deck {name}", "joist span limit", text).value for name in ("open", "roofed")]
    assert limits[0] < limits[1]


def test_a_post_under_a_beam_follows_the_wall_as_one_under_the_porch_does() -> None:
    beam = HOUSE.replace(
        "post lake { under porch lake;", "beam lake { under porch lake }\npost lake { under beam lake;"
    )
    assert found("post lake", "settling past", HOUSE).value == found("post lake", "settling past", beam).value > 0


def test_a_post_under_a_beam_under_a_porch_is_roofed_and_rained_on_like_one_under_the_porch() -> None:
    house = HOUSE.replace("site {", "site { terrain suburban;").replace("post lake {", 'post lake { inset 12";')
    beam = house.replace("post lake {", "beam lake { under porch lake }\npost lake {").replace(
        "under porch lake; size", "under beam lake; size"
    )
    deck = house.replace("post lake {", "deck lake { along south }\npost lake {").replace(
        "under porch lake; size", "under deck lake; size"
    )
    assert ["yes", "yes", "no"] == [found("post lake", "roofed", text).value for text in (house, beam, deck)]
    straight, by_beam, open_above = (found("post lake", "rain share", text).value for text in (house, beam, deck))
    assert 0 < straight == by_beam < open_above == 1
    free = found("post lake", "free driving rain", beam).value
    assert found("wall south", "free driving rain", beam).value == free > 0


def test_a_beam_under_a_porch_that_names_no_wall_asks_for_it() -> None:
    text = "porch lake { depth 8' }\nbeam lake { under porch lake; past edge 6\" }"
    missing = absent("beam lake", "rain on top", 'site { weather "Marquette, MI"; rain wind SW }\n' + text).missing
    assert [("porch lake", "along")] == [(one.element, one.setting) for one in missing]


def test_a_porch_that_names_no_wall_leaves_the_settling_beside_its_posts_unknown() -> None:
    missing = absent("post lake", "settling past", HOUSE.replace("porch lake { along south;", "porch lake {")).missing
    assert [("porch lake", "along")] == [(one.element, one.setting) for one in missing]


def test_a_junction_of_a_porch_roof_settles_where_it_meets_the_wall() -> None:
    tall = HOUSE.replace("length 40'; height 8'", "length 40'; height 16'")
    text = tall + "junction lake { roof porch lake; wall south }\n"
    assert found("post lake", "settling past", tall).value == found("junction lake", "settling past", text).value


def test_a_gutter_that_names_no_wall_still_drains_the_eaves() -> None:
    text = HOUSE.replace("on roof main; over south;", "on roof main;")
    assert "714 ft2" == found("gutter south", "roof area", text).shown()


def test_a_porch_of_unknown_length_shelters_nothing_for_certain() -> None:
    missing = absent("wall south", "cover ratio", HOUSE.replace("along south; length 40'", "along south")).missing
    assert [("porch lake", "length")] == [(one.element, one.setting) for one in missing]
