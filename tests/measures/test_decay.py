"""Decay of the parts of a home: worked by hand, three-valued, and never lower where the wood is worse off."""

from __future__ import annotations

import itertools

import pytest

from speclint.language.parse import parse
from speclint.measures.decay import PARTS, RECALLED, SAPWOOD
from speclint.measures.decay_places import DETAIL_OF, clearance_of
from speclint.measures.facts import Sheet, Working
from speclint.model.build import build
from speclint.model.element import settings_of
from speclint.model.kinds import KINDS
from speclint.quantity import Absent, Quantity
from speclint.science.decay_design import DETAILS, HELSINKI, climate_index, shelter_factor
from speclint.science.decay_dose import months_dose

SITE = 'site { weather "Marquette, MI"; terrain suburban }'
HOUSE = """
typical wall {
    length 40'; height 9'; starts 20"; ground washed stone; build log round 10"; course 9"
    joint rounded; checks filled; species western larch; wood mixed; treatment none; finish paint
}
wall south { faces S }
wall north { faces N }
wall west { faces W; peak 20' }
wall east { faces E; peak 20' }
corner sw { of south, west; ends 12"; lowest ends 12"; end grain sealed; notch saddle; downspout none }
purlin ridge { wall west; reach 10"; end grain capped; treatment none }
roof main {
    covers south, west, north, east; gables west, east; form gable; pitch 8:12; eaves 2'; rakes 1'; gutters none
}
porch lake { along south; length 40'; depth 8'; roof height 8'; hung on posts }
post lake {
    under porch lake; size 8x8; height 8'; inset 12"; base standoff; foot above grade 14"; top under a beam
    species western larch; wood heartwood; treatment none; finish none; stands on pier
}
deck sun {
    along north; height 4'; depth 10'; below wood 2"; above soil 30"; joist tops taped; treatment copper ground contact
}
beam sun { under deck sun; cap covered; end grain sealed; treatment none }
rail sun { on deck sun; height 36"; top bevel; weeps drilled; posts bolted }
stair sun { to deck sun; foot 8"; foot on hung; treatment copper above ground }
"""


def house(*changes: tuple[str, str], site: str = SITE) -> Sheet:
    text = site + HOUSE
    for before, after in changes:
        assert before in text, before
        text = text.replace(before, after)
    home, mistakes = build([parse(text, "a.plan")], "a.plan")
    assert () == mistakes
    return Sheet(home)


def found(label: str, name: str, *changes: tuple[str, str]) -> Quantity:
    facts = house(*changes)
    quantity = facts.quantity(facts[label], name)
    assert isinstance(quantity, Quantity), quantity
    return quantity


def absent(label: str, name: str, *changes: tuple[str, str]) -> Absent:
    facts = house(*changes)
    quantity = facts.quantity(facts[label], name)
    assert isinstance(quantity, Absent), quantity
    return quantity


def number(label: str, name: str, *changes: tuple[str, str]) -> float:
    return float(found(label, name, *changes).value)


EACH = ["wall south", "wall west", "corner sw", "purlin ridge", "post lake", "deck sun", "beam sun", "stair sun"]
LOTS = [("suburban", terrain) for terrain in ("wooded", "suburban", "open country", "open water")]


def test_every_kind_that_has_a_margin_is_looked_at() -> None:
    assert {kind.strip() for kind in PARTS.split(",")} == {label.split()[0] for label in EACH}


def test_a_post_in_the_open_is_the_worked_post_of_the_guide_in_its_own_climate() -> None:
    open_post = [
        ("under porch lake;", "under deck sun;"), ("standoff; foot above grade 14", "standoff; foot above grade 8"),
        ("top under a beam", "top metal"),
    ]  # fmt: skip
    hazard = number("site", "decay hazard index")
    worked = 1.0 * 1.0 * 1.5 * 1.0 * hazard / HELSINKI[1]
    assert worked == pytest.approx(number("post lake", "decay exposure", *open_post))
    assert worked * 1.0 / 2.0 == pytest.approx(number("post lake", "decay margin", *open_post))


def test_a_stair_in_the_open_is_worked_by_hand() -> None:
    worked = 1.0 * 1.0 * 1.5 * 1.4 * number("site", "decay hazard index") / HELSINKI[1]
    assert worked == pytest.approx(number("stair sun", "decay exposure"))
    assert worked * 1.0 / 5.0 == pytest.approx(number("stair sun", "decay margin"))


def test_larch_that_may_hold_sapwood_resists_as_in_the_example_of_the_guide() -> None:
    assert (1.5, 2.0) == (number("wall south", "decay resistance"), number("post lake", "decay resistance"))


@pytest.mark.parametrize("label", [*EACH, "rail sun"])
def test_an_exposure_lies_within_its_bounds_and_says_what_was_recalled(label: str) -> None:
    got = found(label, "decay exposure")
    assert got.low is not None
    assert got.high is not None
    assert got.low <= got.value <= got.high
    assert got.spread
    assert {"memory", "ours"} <= {citation.standing for citation in got.citations}


@pytest.mark.parametrize("label", EACH)
def test_a_margin_lies_within_its_bounds(label: str) -> None:
    got = found(label, "decay margin")
    assert got.low is not None
    assert got.high is not None
    assert got.low <= got.value <= got.high


def test_a_recalled_class_is_told() -> None:
    assert f"{RECALLED}medium detailing" in found("wall south", "decay exposure").notes
    assert f"{RECALLED}resistance class A" in found("deck sun", "decay resistance").notes


# laws


@pytest.mark.parametrize("lot", LOTS)
@pytest.mark.parametrize(
    ("label", "setting", "values"),
    [
        ("post lake", "foot above grade 14", ("-2", "2", "5", "8", "11", "12", "14", "40")),
        ("deck sun", "above soil 30", ("0", "2", "5", "8", "12", "13", "30")),
        ("stair sun", "foot 8", ("0", "2", "5", "8", "12", "20")),
    ],
)
def test_more_clearance_never_raises_the_margin(
    label: str, setting: str, values: tuple[str, ...], lot: tuple[str, str]
) -> None:
    stem = setting.rsplit(" ", 1)[0]
    found = [number(label, "decay margin", lot, (setting + '"', f'{stem} {value}"')) for value in values]
    assert sorted(found, reverse=True) == found
    assert found[-1] < found[0]


@pytest.mark.parametrize("label", ["wall south", "wall west", "corner sw"])
def test_a_wall_lifted_out_of_the_splash_has_a_lower_margin(label: str) -> None:
    found = [number(label, "decay margin", ('starts 20"', f'starts {height}"')) for height in (2, 8, 30)]
    assert found[2] < found[1] < found[0]


@pytest.mark.parametrize("treatment", ["none", "borate"])
@pytest.mark.parametrize("label", ["wall north", "wall west", "corner sw", "purlin ridge"])
def test_more_reach_never_raises_the_margin(label: str, treatment: str) -> None:
    found = [
        number(
            label,
            "decay margin",
            ("eaves 2'; rakes 1'", f"eaves {reach}'; rakes {reach}'"),
            ("treatment none", f"treatment {treatment}"),
        )
        for reach in (1, 2, 4, 8, 12)
    ]
    assert sorted(found, reverse=True) == found
    assert found[-1] < found[0]


def test_more_inset_never_raises_the_margin_of_a_post() -> None:
    found = [number("post lake", "decay margin", ('inset 12"', f'inset {inset}"')) for inset in (0, 6, 24, 60)]
    assert sorted(found, reverse=True) == found


@pytest.mark.parametrize(
    ("label", "setting", "table"),
    [
        ("wall south", "joint rounded", DETAIL_OF["log wall"]["joint"]),
        ("wall south", "checks filled", DETAIL_OF["log wall"]["checks"]),
        ("corner sw", "end grain sealed", DETAIL_OF["corner"]["end grain"]),
        ("corner sw", "notch saddle", DETAIL_OF["corner"]["notch"]),
        ("purlin ridge", "end grain capped", DETAIL_OF["purlin"]["end grain"]),
        ("deck sun", "joist tops taped", DETAIL_OF["deck"]["joist tops"]),
        ("stair sun", "foot on hung", DETAIL_OF["stair"]["foot on"]),
    ],
)
def test_a_better_class_of_detailing_never_raises_the_margin(label: str, setting: str, table: dict[str, str]) -> None:
    stem = setting.removesuffix(next(word for word in table if setting.endswith(" " + word)))
    words = sorted(table, key=lambda word: list(DETAILS).index(table[word]))
    found = [number(label, "decay margin", (setting, stem + word)) for word in words]
    assert sorted(found) == found


SPECIES = ("western larch", "lodgepole pine", "white spruce", "western redcedar", "black locust", "Douglas-fir")


@pytest.mark.parametrize("species", SPECIES)
@pytest.mark.parametrize("treatment", ["none", "borate", "copper above ground", "copper ground contact"])
def test_sapwood_never_beats_heartwood_and_treatment_never_harms(species: str, treatment: str) -> None:
    def resists(wood: str, treatment: str) -> float:
        return number(
            "post lake",
            "decay resistance",
            ("species western larch", f"species {species}"),
            ("wood heartwood; treatment none", f"wood {wood}; treatment {treatment}"),
        )

    found = [resists(wood, treatment) for wood in ("sapwood", "mixed", "heartwood")]
    assert sorted(found) == found
    assert resists("heartwood", "none") <= found[-1]


def test_treatments_resist_in_their_order() -> None:
    kinds = ("none", "borate", "copper above ground", "copper ground contact", "copper heavy duty")
    found = [
        number("beam sun", "decay resistance", ("sealed; treatment none", f"sealed; treatment {k}")) for k in kinds
    ]
    assert sorted(found) == found


def test_where_a_part_stands_in_the_plan_changes_no_margin() -> None:
    rail = 'rail sun { on deck sun; height 36"; top bevel; weeps drilled; posts bolted }\n'
    moved = ((rail, ""), ("purlin ridge {", rail + "purlin ridge {"), ("wall south { faces S }\n", ""))
    last = ("stair sun {", "wall south { faces S }\nstair sun {")
    before = [number(label, "decay margin") for label in EACH]
    assert before == [number(label, "decay margin", *moved, last) for label in EACH]


# verdicts and treatment


@pytest.mark.parametrize(
    ("changes", "verdict"),
    [
        ([("wood heartwood; treatment none", "wood heartwood; treatment copper ground contact")], "ample"),
        (
            [("species western larch; wood heartwood", "species lodgepole pine; wood sapwood"), ("standoff", "cup")],
            "over",
        ),
    ],
)
def test_a_verdict_follows_the_margin(changes: list[tuple[str, str]], verdict: str) -> None:
    assert verdict == found("post lake", "decay verdict", *changes).value


@pytest.mark.parametrize("label", EACH)
def test_a_verdict_is_near_where_the_method_cannot_tell(label: str) -> None:
    margin, verdict = number(label, "decay margin"), found(label, "decay verdict").value
    assert verdict == ("ample" if margin < 0.8 else "near" if margin <= 1.25 else "over")


def test_a_treated_post_in_the_ground_is_never_called_ample() -> None:
    changes = (
        ("base standoff", "base in soil"),
        ("treatment none; finish none", "treatment copper heavy duty; finish none"),
    )
    assert "wood in the ground" in absent("post lake", "decay verdict", *changes).reason
    assert ("UC4B", "yes") == tuple(
        found("post lake", f"treatment {word}", *changes).value for word in ("class needed", "enough")
    )


@pytest.mark.parametrize(
    ("label", "changes", "needed"),
    [
        ("wall south", [('starts 20"', 'starts 5"')], "UC4A"),
        ("wall north", [("eaves 2'", "eaves 12'")], "UC2"),
        ("wall west", [('starts 20"', 'starts 8"')], "UC3B"),
        ("corner sw", [("end grain sealed", "end grain none")], "UC3B"),
        ("corner sw", [("eaves 2'; rakes 1'", "eaves 12'; rakes 12'")], "UC3A"),
        ("post lake", [("base standoff", "base in concrete")], "UC4B"),
        ("post lake", [("stands on pier", "stands on soil")], "UC4A"),
        ("post lake", [('foot above grade 14"', 'foot above grade 4"')], "UC4A"),
        ("post lake", [], "UC3B"),
        ("post lake", [('inset 12"', 'inset 300"'), ("finish none; stands", "finish paint; stands")], "UC3A"),
        ("deck sun", [], "UC4A"),
        ("beam sun", [], "UC4A"),
        ("stair sun", [], "UC3B"),
        ("stair sun", [("foot on hung", "foot on soil")], "UC4A"),
        ("purlin ridge", [('reach 10"', "reach 3'")], "UC3B"),
    ],
)
def test_a_place_asks_for_its_use_category(label: str, changes: list[tuple[str, str]], needed: str) -> None:
    assert needed == found(label, "treatment class needed", *changes).value


@pytest.mark.parametrize(
    ("label", "changes", "enough"),
    [
        ("deck sun", [], "yes"),
        ("deck sun", [("copper ground contact", "copper above ground")], "no"),
        ("beam sun", [], "no"),
        ("stair sun", [], "yes"),
        ("post lake", [], "no"),
        ("post lake", [("species western larch; wood heartwood", "species western redcedar; wood heartwood")], "yes"),
        ("post lake", [("species western larch; wood heartwood", "species western redcedar; wood mixed")], "no"),
        ("post lake", [("wood heartwood; treatment none", "wood heartwood; treatment borate")], "no"),
        ("wall north", [("eaves 2'", "eaves 12'")], "yes"),
        ("corner sw", [("wood mixed; treatment none", "wood mixed; treatment copper above ground")], "yes"),
    ],
)
def test_treatment_is_enough_where_it_is_of_the_category_or_the_heartwood_resists(
    label: str, changes: list[tuple[str, str]], enough: str
) -> None:
    assert enough == found(label, "treatment enough", *changes).value


@pytest.mark.parametrize(("inset", "counts"), [("300", True), ("0", False)])
def test_borate_counts_only_where_rain_does_not_reach(inset: str, counts: bool) -> None:
    changes = (
        ("wood heartwood; treatment none", "wood sapwood; treatment borate"),
        ('inset 12"', f'inset {inset}"'),
    )
    got = found("post lake", "decay resistance", *changes)
    assert (2.0 if counts else 0.7) == got.value
    assert counts != any("washes out" in note for note in got.notes)


# what is not stated


@pytest.mark.parametrize(
    ("label", "name", "change", "missing"),
    [
        ("wall south", "decay exposure", ("; terrain suburban", ""), ("site", "terrain")),
        ("wall south", "decay detail", ("joint rounded; ", ""), ("wall south", "joint")),
        ("post lake", "decay exposure", ('foot above grade 14"; ', ""), ("post lake", "foot above grade")),
        ("post lake", "decay detail", ("; top under a beam", ""), ("post lake", "top")),
        ("post lake", "decay resistance", ("treatment none; finish none", "finish none"), ("post lake", "treatment")),
        (
            "post lake",
            "decay margin",
            ("species western larch; wood heartwood", "wood heartwood"),
            ("post lake", "species"),
        ),
        ("post lake", "treatment enough", ("wood heartwood; treatment", "treatment"), ("post lake", "wood")),
        (
            "deck sun",
            "treatment enough",
            ("taped; treatment copper ground contact", "taped"),
            ("deck sun", "treatment"),
        ),
        ("stair sun", "treatment class needed", ('foot 8"; ', ""), ("stair sun", "foot")),
    ],
)
def test_what_is_not_stated_is_asked_for(
    label: str, name: str, change: tuple[str, str], missing: tuple[str, str]
) -> None:
    assert [missing] == [(one.element, one.setting) for one in absent(label, name, change).missing]


def test_one_poor_statement_settles_the_class_of_detailing() -> None:
    assert "poor" == found("post lake", "decay detail", ("base standoff", "base cup"), ("; top under a beam", "")).value


def test_a_treated_post_needs_no_species() -> None:
    changes = (("species western larch; wood heartwood; treatment none", "treatment copper above ground"),)
    assert 5.0 == number("post lake", "decay resistance", *changes)


def test_wood_that_is_not_stated_is_reckoned_as_sapwood_and_may_be_heartwood() -> None:
    got = found("post lake", "decay resistance", ("wood heartwood; treatment", "treatment"))
    assert (0.7, 0.7, 2.0) == (got.value, got.low, got.high)
    assert SAPWOOD in got.notes


def test_a_species_that_the_table_does_not_hold_gives_no_resistance() -> None:
    got = absent(
        "post lake", "decay resistance", ("species western larch; wood heartwood", "species hem-fir; wood heartwood")
    )
    assert "the reference table holds no decay resistance of hem-fir" == got.reason


def test_stone_has_no_decay() -> None:
    assert (
        "its outside is no wood" == absent("wall south", "decay detail", ('log round 10"', "framed with stone")).reason
    )


# tables against the language


@pytest.mark.parametrize(("kind", "setting"), [(k, s) for k, tables in DETAIL_OF.items() for s in tables])
def test_every_choice_of_a_setting_has_a_class_of_detailing(kind: str, setting: str) -> None:
    choices = settings_of(KINDS["wall" if kind == "log wall" else kind])[setting].choices
    assert choices is not None
    assert set(choices) <= set(DETAIL_OF[kind][setting])
    assert set(DETAIL_OF[kind][setting].values()) <= set(DETAILS)


def test_the_climate_comes_from_the_hazard_index_of_the_site() -> None:
    towns = [("Marquette, MI", town) for town in ("Marquette, MI", "Mobile, AL")]
    cold, warm = (climate_index(number("site", "decay hazard index", town)) for town in towns)
    north, south = (number("stair sun", "decay exposure", town) for town in towns)
    assert south / north == pytest.approx(warm / cold)


def test_wood_kept_wet_gathers_more_in_a_warm_climate_and_never_more_than_the_year_has() -> None:
    doses = [number("site", "wet wood dose", ("Marquette, MI", town)) for town in ("Marquette, MI", "Mobile, AL")]
    assert all(0 < low < high < 365 for low, high in itertools.pairwise(doses))
    assert 0 == months_dose([20.0] * 12, [20.0] * 12)


@pytest.mark.parametrize(("wood", "better"), [("heartwood", True), ("sapwood", False)])
def test_a_beam_may_be_of_durable_heartwood(wood: str, better: bool) -> None:
    plain = found_beam("")
    assert (found_beam(f"wood {wood};") > plain) is better


def found_beam(more: str) -> float:
    """What a beam of redcedar resists."""
    text = f"beam b {{ size 8x8; species western redcedar; treatment none; {more} }}"
    home, mistakes = build([parse(text, "a.plan")], "a.plan")
    assert () == mistakes
    return float(Sheet(home)["beam b"]["decay resistance"])


def test_a_wall_whose_courses_are_not_known_is_sheltered_as_the_guide_says() -> None:
    without = ("length 40'; height 9'; starts", "height 9'; starts")
    facts, bare = house(without), house(without, ("eaves 2'", "eaves 0'"))
    wall = facts["wall south"]
    assert wall["courses"] is None
    reach, height = wall["roof reach"], wall["height"]
    share = shelter_factor(reach, height) / shelter_factor(0.0, height)
    assert wall["decay exposure"] / bare["wall south"]["decay exposure"] == pytest.approx(share)


def test_a_beam_lies_as_high_as_the_deck_it_carries_and_any_other_stands_high() -> None:
    facts = house()
    beam = facts["beam sun"]
    assert 30 * 0.0254 == pytest.approx(clearance_of(beam, Working(facts, beam, "clearance", "length")))
    other = house(("under deck sun; cap", "under porch lake; cap"))
    beam = other["beam sun"]
    assert clearance_of(beam, Working(other, beam, "clearance", "length")) is None
