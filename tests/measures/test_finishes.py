"""How long coats last on the parts of a home, and what it takes to reach its wood."""

from __future__ import annotations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from speclint.quantity import Quantity
from tests.measures.sheets import absent, found, sheet
from tests.measures.test_exposure import BOSTON, WALLS

LAKE = """
site { weather "Marquette, MI"; rain wind SW; terrain open country }
"""
HOUSE = """
wall south {{ build {build}; faces S; length 40'; height 10'; starts 12"; finish {finish}; {more} }}
roof main {{ covers south; form gable; pitch 8:12; eaves {eaves}; gutters none }}
{rest}
"""
YEAR = 365.25


def plan(
    build: str = 'log round 10"',
    finish: str = "semitransparent stain",
    more: str = "",
    eaves: str = "2'",
    rest: str = "",
    site: str = "",
) -> str:
    return site + HOUSE.format(build=build, finish=finish, more=more, eaves=eaves, rest=rest)


def years(text: str, name: str = "likely finish life", label: str = "wall south") -> float:
    return float(found(label, name, text).value) / YEAR


def test_a_stained_round_wall_lasts_as_worked_by_hand() -> None:
    # light 1 / (1 + 0.8 x 0.2) / 0.7, rain 1 - 0.2 / tan 30; 4 to 7 years x 0.85 peeled x 0.9 round
    wear = 0.35 + 0.45 / 1.16 / 0.7 + 0.20 * (1 - 0.2 / 0.5773503)
    low, likely, high = (years(plan(), name) for name in ("finish life", "likely finish life", "longest finish life"))
    assert [4 * 0.765 / wear, 5.5 * 0.765 / wear, 7 * 0.765 / wear] == pytest.approx([low, likely, high])


def test_the_life_unfolds_to_its_table_weather_and_factors() -> None:
    life = found("wall south", "likely finish life", plan(more="colour dark"))
    assert life.notes == (
        "handbook range for semitransparent stain on upright wood: 4 to 8 years",
        "recalled, not read again: 4 to 7 years on saw-textured siding of pine, fir or spruce",
        "sun at the place not known: told from its bearing and its cover",
        "driving rain at the place not known: told from its cover",
        "divided by 1.26 for weather: 1.23 of the ultraviolet light of an open wall of middling sun, 0.65 of its rain, "
        "a dark colour",
        "times 0.77 for a peeled surface, round outside",
    )
    standings = {(citation.key, citation.place): citation.standing for citation in life.citations}
    assert ("published", "memory") == (
        standings["fpl-gtr-190", "Table 16-5"],
        standings["fpl-gtr-190", "Table 16-4"],
    )
    assert (life.low, life.high) == (
        found("wall south", "finish life", plan(more="colour dark")).value,
        found("wall south", "longest finish life", plan(more="colour dark")).value,
    )


def test_weather_of_the_place_takes_the_place_of_bearing_and_cover() -> None:
    life = found("wall south", "likely finish life", plan(site=LAKE))
    names = {quantity.name for quantity in life.inputs}
    assert ({"ultraviolet share", "rain exposure"} <= names, "cover ratio" in names) == (True, False)
    assert not [note for note in life.notes if "not known: told from" in note]


@pytest.mark.parametrize("site", ["", LAKE])
@pytest.mark.parametrize("colour", ["light", "dark"])
@settings(max_examples=12, deadline=None)
@given(eaves=st.integers(0, 60), more=st.integers(1, 36))
def test_a_deeper_eave_never_shortens_the_life(site: str, colour: str, eaves: int, more: int) -> None:
    shallow, deep = (
        years(plan(more=f"colour {colour}", eaves=f'{reach}"', site=site)) for reach in (eaves, eaves + more)
    )
    assert shallow <= deep + 1e-9


@pytest.mark.parametrize("site", ["", LAKE])
def test_a_porch_lengthens_the_life(site: str) -> None:
    porch = "porch lake { along south; length 40'; depth 8'; roof height 9' }"
    assert years(plan(site=site)) < years(plan(site=site, rest=porch))


@pytest.mark.parametrize("site", ["", LAKE])
def test_a_darker_colour_never_lengthens_the_life(site: str) -> None:
    lives = [years(plan(more=f"colour {colour}", site=site)) for colour in ("dark", "medium", "light")]
    assert sorted(lives) == lives


def test_surfaces_rank_as_finishers_tell() -> None:
    lives = [
        years(plan("log square", more=f"surface {surface}")) for surface in ("planed", "peeled", "hand-hewn", "sawn")
    ]
    assert (True, 4) == (sorted(lives) == lives, len(set(lives)))


@pytest.mark.parametrize(
    ("build", "more", "surface", "notes"),
    [
        ('log round 10"', "", "peeled", ("surface not stated: taken as peeled",)),
        ("log D", "", "planed", ("surface not stated: taken as planed",)),
        ("log square", "surface hand-hewn", "hand-hewn", ()),
    ],
)
def test_a_surface_is_as_stated_or_taken_with_a_note(build: str, more: str, surface: str, notes: tuple[str]) -> None:
    quantity = found("wall south", "wood surface", plan(build, more=more))
    assert (surface, notes) == (quantity.value, quantity.notes)


def test_cedar_holds_a_film_longer_than_pine() -> None:
    cedar, pine = (
        years(plan("framed with siding", "paint", f"species {name}"))
        for name in ("western redcedar", "eastern white pine")
    )
    assert cedar > pine


def test_one_coat_lasts_less_than_two_and_flat_paint_less_than_glossy() -> None:
    assert 0.75 == pytest.approx(years(plan(more="coats 1")) / years(plan(more="coats 2")))
    flat, gloss = (years(plan("framed with siding", "paint", f"sheen {sheen}")) for sheen in ("flat", "gloss"))
    assert 0.9 / 1.1 == pytest.approx(flat / gloss)
    assert years(plan(more="sheen flat")) == years(plan(more="sheen gloss"))


@pytest.mark.parametrize(
    ("finish", "more", "care", "share"),
    [
        ("solid stain", "seasoning green", "", 0.3),
        ("semitransparent stain", "seasoning green", "", 0.6),
        ("solid stain", "seasoning kiln-dried", "", 0.9),  # at 19 %, the most that kiln-dried allows
        ("solid stain", "seasoning kiln-dried to 22%", "", 0.6),
        ("solid stain", "seasoning green", "care { coating moisture 15% }", 1.0),
        ("solid stain", "", "", 1.0),
    ],
)
def test_wet_wood_shortens_its_first_coat(finish: str, more: str, care: str, share: float) -> None:
    text, dry = plan(finish=finish, more=more, rest=care), plan(finish=finish, rest="care { coating moisture 15% }")
    assert share == pytest.approx(found("wall south", "first coat share", text).value)
    assert share == pytest.approx(years(text) / years(dry))


def test_kiln_dried_logs_under_a_porch_outlast_green_logs_in_the_open() -> None:
    porch = "porch lake { along south; length 40'; depth 8'; roof height 9' }"
    sheltered = years(plan(more="seasoning kiln-dried", rest=porch, site=LAKE))
    assert sheltered > 2 * years(plan(more="seasoning green", eaves='12"', site=LAKE))


@pytest.mark.parametrize(
    ("text", "reason"),
    [
        (plan("framed with stone"), "its outside is stone"),
        (plan(finish="none"), "the handbook table has no life for none"),
        (plan(finish="clear film"), "the handbook table has no life for clear film"),
        (plan(more="coats 0"), "no coat goes on it"),
    ],
)
def test_where_no_finish_wears_there_is_no_life(text: str, reason: str) -> None:
    assert reason == absent("wall south", "likely finish life", text).reason


def test_a_wall_without_a_finish_asks_for_it() -> None:
    text = "wall south { build log round; faces S; height 10'; overhang 2' }"
    missing = absent("wall south", "likely finish life", text).missing
    assert [("wall south", "finish")] == [(one.element, one.setting) for one in missing]


DECK = """
wall south {{ build log round; faces S; length 40'; height 10'; starts 12"; overhang 2' }}
{porch}
deck lake {{ along south; height 3'; depth 8'; {under} finish semitransparent stain; {more} }}
rail lake {{ on deck lake; height 36"; finish solid stain; top {top} }}
post lake {{ under {carries}; size 8x8; height 8'; finish paint; seasoning kiln-dried; species {species} }}
"""
PORCH = "porch lake { along south; length 40'; depth 10'; roof height 9' }"


def deck(porch: bool = False, more: str = "", top: str = "none", species: str = "eastern white pine") -> str:
    return DECK.format(
        porch=PORCH if porch else "",
        under="under porch lake;" if porch else "",
        carries="porch lake" if porch else "deck lake",
        more=more,
        top=top,
        species=species,
    )


def test_a_deck_without_a_roof_keeps_the_life_of_new_decking() -> None:
    names = ("finish life", "likely finish life", "longest finish life")
    assert [2.0, 2.5, 3.0] == pytest.approx([years(deck(), name, "deck lake") for name in names])


@pytest.mark.parametrize("label", ["deck lake", "rail lake", "post lake"])
def test_a_porch_roof_lengthens_the_life_of_what_stands_under_it(label: str) -> None:
    assert years(deck(), label=label) < years(deck(porch=True), label=label)


def test_a_capped_rail_outlasts_a_flat_bare_one() -> None:
    lives = [years(deck(top=top), label="rail lake") for top in ("none", "bevel", "metal")]
    assert [0.5, 0.7, 1.0] == pytest.approx([life / lives[-1] for life in lives])


def test_a_cedar_post_outlasts_one_of_pine() -> None:
    cedar = years(deck(species="western redcedar"), label="post lake")
    assert cedar > years(deck(), label="post lake")


def test_boards_that_are_not_wood_take_no_finish() -> None:
    reason = absent("deck lake", "finish life", deck(more="boards composite")).reason
    assert "composite boards take no finish of this kind" == reason


def test_water_repellent_underfoot_lasts_half_its_upright_range() -> None:
    text = deck().replace("finish semitransparent stain", "finish water repellent")
    assert [0.5, 1.5] == pytest.approx(
        [years(text, name, "deck lake") for name in ("finish life", "longest finish life")]
    )


@pytest.mark.parametrize(
    ("starts", "height", "more", "means"),
    [
        ('0"', "8'", "", "step stool"),
        ('12"', "8'", "", "step ladder"),
        ('12"', "12'", "", "extension ladder"),
        ('12"', "12'", "grade 20%", "scaffold or lift"),
        ('12"', "20'", "", "scaffold or lift"),
    ],
)
def test_the_highest_wood_tells_what_it_takes_to_reach_it(starts: str, height: str, more: str, means: str) -> None:
    text = f"wall a {{ build log round; height {height}; starts {starts}; {more} }} roof main {{ covers a; form hip }}"
    assert means == found("wall a", "access", text).value


def test_a_ladder_and_a_platform_come_with_their_cautions() -> None:
    text = 'wall a { build log round; height %s; starts 12"; grade 2%% } roof main { covers a; form hip }'
    ladder, lift = found("wall a", "access", text % "15'"), found("wall a", "access", text % "25'")
    assert ladder.notes == ("the foot stands out a quarter of the length, on firm level ground, and the top is tied",)
    assert lift.notes == (
        "work for people who are trained for it; no scaffold or lift is approved here",
        "a platform more than 10 ft up needs rails or other protection from falls",
    )
    assert 16 * 0.3048 / 4 == pytest.approx(found("wall a", "ladder foot", text % "15'").value)
    assert "a leaning ladder is not the means for it" == absent("wall a", "ladder foot", text % "25'").reason


def test_wood_over_a_porch_roof_is_no_place_for_a_ladder() -> None:
    text = plan(rest="porch lake { along south; length 40'; depth 8'; roof height 8' }")
    access = found("wall south", "access", text)
    assert ("scaffold or lift", True) == (access.value, any("over a porch roof" in note for note in access.notes))


def test_stone_needs_no_ladder() -> None:
    assert "its outside is stone" == absent("wall south", "access", plan("framed with stone")).reason


def test_every_life_of_the_sheet_is_found_once() -> None:
    facts = sheet(plan(site=LAKE))
    first = facts.quantity(facts["wall south"], "likely finish life")
    assert isinstance(first, Quantity)
    assert first is facts.quantity(facts["wall south"], "likely finish life")


PARTS_OF_A_PORCH = """
porch lake { depth 10' }
post lake { under porch lake; finish tinted clear }
"""


def test_decks_rails_and_posts_may_have_an_interval_of_their_own() -> None:
    walls = sheet(PARTS_OF_A_PORCH + "care { refinish 5 years }")["post lake"]
    own = sheet(PARTS_OF_A_PORCH + "care { refinish 5 years; refinish decks 2 years }")["post lake"]
    assert (walls["coat interval"], own["coat interval"]) == (5 * 365.25, 2 * 365.25)


def test_the_first_coat_allowed_is_that_of_a_film_where_the_plan_has_one() -> None:
    shares = {
        finish: sheet(f"wall south {{ finish {finish} }}\ncare {{ coating moisture 24% }}")["care"]["first coat share"]
        for finish in ("solid stain", "semitransparent stain")
    }
    assert shares["solid stain"] < shares["semitransparent stain"] < 1


def test_the_longest_life_is_that_of_the_best_covered_wall() -> None:
    home = sheet(BOSTON + WALLS.replace('build log round 10"', 'build log round 10"; finish semitransparent stain'))
    lives = [home[f"wall {name}"]["likely finish life"] for name in ("south", "west", "north")]
    assert {home[f"wall {name}"]["longest wall life"] for name in ("south", "west", "north")} == {max(lives)}
