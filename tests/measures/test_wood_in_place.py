"""Wood in its place: the worst course of a wall, log gables and chimneys, dry climates, borrowed humidity, names."""

from __future__ import annotations

import pytest

from speclint.language.parse import parse
from speclint.measures.facts import Sheet
from speclint.model.build import build
from tests.laws.houses import example
from tests.measures.sheets import found, sheet

LAKE = example("tamarack-point")
WEST_PORCH = "porch west { along west;  depth 12';  length 30';  roof height 9';  roof pitch 3:12;  hung on posts }\n"


@pytest.mark.parametrize("more", ["", WEST_PORCH], ids=["open", "under a porch"])
@pytest.mark.parametrize("wall", ["wall west", "wall north", "wall south"])
def test_a_wall_is_as_exposed_to_decay_as_its_worst_course(wall: str, more: str) -> None:
    facts = sheet(LAKE + more)[wall]
    assert facts["decay exposure"] == pytest.approx(max(facts["decay by course"]))


def test_a_deep_porch_lowers_the_exposure_of_the_wall_behind_it() -> None:
    assert (
        found("wall west", "decay exposure", LAKE + WEST_PORCH).value
        < 0.9 * found("wall west", "decay exposure", LAKE).value
    )


def test_the_lowest_course_near_the_ground_gets_no_more_shelter_than_the_guide_grants() -> None:
    low = sheet(LAKE + WEST_PORCH)["wall west"]["decay by course"]
    high = sheet(LAKE.replace('starts 9" above grade', 'starts 30" above grade') + WEST_PORCH)["wall west"][
        "decay by course"
    ]
    assert low[0] > 1.5 * high[0]


def test_a_chimney_sees_the_settling_of_log_gables_up_to_where_it_passes_the_roof() -> None:
    text = LAKE.replace("at slope", "at ridge")
    rate = found("wall west", "settling rate", LAKE).value
    halfway, ridge = (10.5 + 23) / 2 * 0.3048, 23 * 0.3048
    assert pytest.approx(rate * halfway) == found("chimney hearth", "settling past", LAKE).value
    assert pytest.approx(rate * ridge) == found("chimney hearth", "settling past", text).value


def test_heartwood_of_a_durable_species_is_enough_for_a_beam_above_ground() -> None:
    plan = example("cedar-spit").replace('use "standards/coast.plan"', "")
    told = {}
    for wood in ("heartwood", "sapwood"):
        home, _ = build([parse(plan.replace("material log;", f"material log;  wood {wood};"), "a.plan")], "a.plan")
        told[wood] = Sheet(home)["beam surf"]
    assert ("UC3B", "UC3B") == (told["heartwood"]["treatment class needed"], told["sapwood"]["treatment class needed"])
    assert ("yes", "no") == (told["heartwood"]["treatment enough"], told["sapwood"]["treatment enough"])


def test_a_climate_drier_than_the_guide_is_reckoned_at_its_least() -> None:
    dry = found("wall north", "decay exposure", example("high-desert-cabin"))
    assert any("reckoned as that" in note for note in dry.notes)


def test_humidity_is_borrowed_from_a_place_that_is_alike_rather_than_near() -> None:
    title = found("site", "moisture by month", 'site { weather "Newport, OR" }').value.title
    assert "Eugene" not in title
    assert "humidity of" in title


def test_a_coast_by_the_ocean_is_damp_all_year() -> None:
    assert found("site", "driest month moisture", 'site { weather "Newport, OR" }').value > 14


@pytest.mark.parametrize("species", ["western redcedar", "WRC"])
def test_a_species_lasts_as_long_by_any_of_its_names(species: str) -> None:
    text = f"wall a {{ build framed with siding; species {species}; finish semitransparent stain; surface sawn }}\n"
    low = found("wall a", "finish life", 'site { weather "Duluth, MN"; terrain wooded }\n' + _open(text)).value
    assert (
        low
        == found(
            "wall a",
            "finish life",
            'site { weather "Duluth, MN"; terrain wooded }\n' + _open(text.replace("WRC", "western redcedar")),
        ).value
    )


def _open(text: str) -> str:
    more = "faces S; length 30'; height 9'; starts 20\"; ground lawn; "
    return (
        text.replace("{ build", "{ " + more + "build")
        + "roof r { covers a; form shed; low side a; eaves 1'; pitch 4:12; run 12'; gutters none }\n"
    )


def test_green_wood_checks_no_less_for_not_being_measured() -> None:
    text = (
        'site { weather "Duluth, MN" }\nwall a { build log round 10"; species western redcedar; seasoning green%s }\n'
    )
    assert (
        found("wall a", "check opening", text % "").value
        >= found("wall a", "check opening", text % "; moisture 30%").value
    )
