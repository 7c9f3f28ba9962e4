"""Jobs and thirty years of them: hand-computed areas, laws of money, and sampling that repeats and settles."""

from __future__ import annotations

import random
from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st

from speclint.forecast.due import YEAR, due_years
from speclint.forecast.jobs import Job, jobs_of, uncoated_of
from speclint.forecast.outlook import outlook
from speclint.forecast.rates import Rates, demo_rates, read_rates
from speclint.language.parse import parse
from speclint.measures.facts import Sheet
from speclint.model.build import build
from speclint.science.cost import present_value_of_coats
from speclint.science.upkeep import log_surface_factor

HOUSE = """
site { weather "Duluth, MN"; terrain suburban; rain wind NE }
typical wall {
    build framed with siding; species western redcedar; seasoning kiln-dried
    finish semitransparent stain; coats 2; starts 18"; ground lawn
}
wall south { faces S; length 40'; height 8' }
wall west { faces W; length 30'; height 8'; peak 20' }
roof main { covers south, west; gables west; form gable; pitch 8:12; eaves 2'; rakes 1'; gutters none }
window big { wall south; count 2; width 4'; height 5'; sill 2' }
"""
SQUARE_FOOT = 0.09290304


def sheet(text: str = HOUSE) -> Sheet:
    home, mistakes = build([parse(text, "a.plan")], "a.plan")
    assert () == mistakes
    return Sheet(home)


def jobs(text: str = HOUSE, rates: Rates | None = None) -> dict[str, Job]:
    found, untold = jobs_of(sheet(text), rates or demo_rates())
    assert [] == untold
    return {job.part: job for job in found}


def test_areas_are_those_of_the_drawing_less_the_openings() -> None:
    found = jobs()
    assert 40 * 8 - 2 * 4 * 5 == pytest.approx(found["wall south"].area / SQUARE_FOOT, rel=1e-6)
    assert 30 * 8 + 30 * 12 / 2 == pytest.approx(found["wall west"].area / SQUARE_FOOT, rel=1e-3)


def test_round_logs_have_more_face_than_their_height() -> None:
    logs = HOUSE.replace("build framed with siding", 'build log round 10"; course 9"; scribed yes')
    factor = log_surface_factor(10 * 0.0254, 9 * 0.0254)
    assert jobs(logs)["wall south"].area == pytest.approx(jobs()["wall south"].area * factor, rel=0.01)


def test_high_wood_takes_more_than_a_step_stool() -> None:
    found = jobs()
    assert {"step stool", "step ladder"} == set(found["wall south"].reached)
    assert "scaffold or lift" == found["wall west"].means
    assert sum(found["wall west"].reached.values()) == pytest.approx(found["wall west"].area)


def test_wood_over_a_porch_roof_is_reached_from_a_lift() -> None:
    porch = HOUSE + "porch p { along south; depth 6'; length 40'; roof height 6'-6\"; roof pitch 1:12 }"
    assert "scaffold or lift" == jobs(porch)["wall south"].means


def test_a_rail_that_lifts_out_takes_fewer_hours() -> None:
    deck = HOUSE + (
        "deck d { along south; depth 10'; below wood 4\"; finish semitransparent stain }"
        'rail r { on deck d; height 36"; top bevel; lifts out HOW; finish semitransparent stain }'
    )
    fixed, loose = (jobs(deck.replace("HOW", how))["rail r"] for how in ("no", "yes"))
    assert loose.hours < fixed.hours
    assert loose.cost < fixed.cost


@pytest.mark.parametrize(("how", "means"), [("no", "extension ladder"), ("yes", "step stool")])
def test_the_outer_side_of_a_fixed_rail_is_reached_from_the_ground(how: str, means: str) -> None:
    high = HOUSE + (
        "deck d { along south; depth 10'; height 11'; finish semitransparent stain }"
        f'rail r {{ on deck d; height 36"; top bevel; lifts out {how}; finish semitransparent stain }}'
    )
    assert means == jobs(high)["rail r"].means


PORCH = "porch p { along south; depth 8'; length 20'; roof height 7'-6\"; roof pitch 2:12; from left 0' }"
DECK = "deck d { along south; under p; depth 8'; height 3'; below wood 4\" }"


def test_wood_over_a_deck_is_reached_from_the_deck() -> None:
    high = HOUSE.replace(
        "wall south { faces S; length 40'; height 8' }", "wall south { faces S; length 40'; height 8'; starts 40\" }"
    )
    from_ground = jobs(high)["wall south"].reached
    deck = "deck d { along south; depth 10'; below wood 4\"; finish none }"
    from_deck = jobs(high + deck)["wall south"].reached
    assert "step ladder" in from_ground
    assert from_deck["step stool"] > 1.3 * from_ground["step stool"]
    told = jobs(high + deck)["wall south"].notes
    assert "reached from the floor of deck d" in told


def test_a_deck_under_half_the_wall_is_stood_on_along_that_half_only() -> None:
    wall = "wall south { faces S; length 40'; height 16'; starts 40\" }"
    text = HOUSE.replace("wall south { faces S; length 40'; height 8' }", wall) + PORCH
    bare, floored = (jobs(text + more)["wall south"].reached for more in ("", DECK.replace("}", "; finish none }")))
    assert bare["scaffold or lift"] == pytest.approx(floored["scaffold or lift"])
    assert bare["step stool"] < floored["step stool"]
    assert bare["extension ladder"] == pytest.approx(floored["extension ladder"])
    assert 0.45 < bare["scaffold or lift"] / sum(bare.values()) * 16 / (16 - 7.5) < 0.55


def test_a_long_ladder_finds_no_foot_on_a_narrow_deck() -> None:
    text = HOUSE.replace("height 8' }", "height 18' }")
    deck = 'deck d { along south; depth DEPTH; below wood 0"; finish none }'
    wide, narrow = (jobs(text + deck.replace("DEPTH", size))["wall south"].means for size in ("6'", "3'"))
    assert ("extension ladder", "scaffold or lift") == (wide, narrow)


def test_the_floor_of_a_porch_without_a_deck_is_stood_on_where_it_is_firm() -> None:
    text = HOUSE.replace("height 8' }", "height 8'; starts 40\" }") + PORCH.replace("length 20'", "length 40'")
    slab, earth = (
        jobs(text.replace("from left 0'", f"from left 0'; floor {kind}; floor below wood 4\""))["wall south"].reached
        for kind in ("slab", "ground")
    )
    assert slab["step stool"] > earth["step stool"]


def test_the_top_of_a_porch_post_is_reached_from_the_deck() -> None:
    post = "post p { under porch p; count 2; size 8x8; height 9'; foot above grade 6\"; finish semitransparent stain }"
    decked = HOUSE + PORCH + DECK.replace("}", "; finish none }") + post
    low, high = jobs(decked)["post p"], jobs(HOUSE + PORCH + post)["post p"]
    assert ("step stool", "step ladder") == (low.means, high.means)
    assert low.area == pytest.approx(high.area)


RAIL = HOUSE + (
    "deck d { along south; depth 10'; below wood 4\"; finish semitransparent stain }"
    'rail r { on deck d; height 36"; TOP lifts out yes; finish semitransparent stain }'
)


@pytest.mark.parametrize(
    ("top", "told"),
    [
        ("", "its top is not stated: taken as flat and bare, with 0.5 of the life of its sides"),
        ("top bevel;", "its coat is taken to fail first on its top (bevel), after 0.7 of the life of its sides"),
    ],
)
def test_what_shortens_the_life_of_a_rail_is_told(top: str, told: str) -> None:
    assert told in jobs(RAIL.replace("TOP", top))["rail r"].notes


def test_a_rail_with_a_cap_has_nothing_to_tell_of_its_top() -> None:
    assert not any("its top" in note for note in jobs(RAIL.replace("TOP", "top metal;"))["rail r"].notes)


def test_the_bill_adds_up_to_the_cost() -> None:
    for job in jobs(RAIL.replace("TOP", "top metal;")).values():
        assert job.cost == pytest.approx(sum(job.bill.values()))
        assert {"work", "finish", "cleaner"} <= set(job.bill)


def test_parts_without_a_coat_are_told_with_the_reason() -> None:
    stone = HOUSE.replace("wall west {", "wall west { build framed with stone;")
    assert ["wall west: its outside is stone"] == [str(one) for one in uncoated_of(sheet(stone))]
    bare = HOUSE.replace("wall west {", "wall west { finish none;") + "deck d { boards composite; finish none }"
    assert [
        "wall west: finish none: its wood is left bare",
        "deck d: composite boards, finish none",
    ] == [str(one) for one in uncoated_of(sheet(bare))]
    assert [] == uncoated_of(sheet())


def test_stone_that_covers_a_part_of_a_wall_is_told() -> None:
    found = jobs(HOUSE + "stone belt { at wall south }")["wall south"]
    assert any("stone belt covers a part of it" in note for note in found.notes)
    assert found.area == pytest.approx(jobs()["wall south"].area)


def test_stone_and_bare_wood_ask_for_no_coat() -> None:
    assert "wall west" not in jobs(HOUSE.replace("wall west {", "wall west { build framed with stone;"))
    assert {} == jobs(HOUSE.replace("finish semitransparent stain", "finish none"))


def test_what_is_not_stated_is_named() -> None:
    found, untold = jobs_of(sheet(HOUSE.replace("faces S; ", "")), demo_rates())
    assert ["wall west"] == [job.part for job in found]
    assert [("wall south", "the plan does not say: faces of wall south")] == [(one.part, one.why) for one in untold]


def test_costs_are_hours_finish_cleaner_and_hire() -> None:
    text = "rates { labour 100; stain gallon 0; cleaner gallon 0; step ladder 0; extension ladder 0; lift 0 }"
    rates, _ = read_rates(text, "x")
    job = jobs(rates=rates)["wall south"]
    assert job.cost == pytest.approx(100 * job.hours)
    free, _ = read_rates("rates { labour 0; cleaner gallon 0; stain litre 10; step ladder 0 }", "x")
    job = jobs(rates=free)["wall south"]
    assert job.cost == pytest.approx(10 * job.volume[1])


def a_job(life: float = 5.0, cost: float = 100.0, part: str = "wall a", spread: float = 0.0) -> Job:
    lives = tuple(life * YEAR * factor for factor in (1 - spread, 1.0, 1 + spread))
    return Job(part, "stain", 10.0, {"step stool": 10.0}, lives, 1.0, 1.0, (1.0, 1.0, 1.0), 5.0, cost, (), ())  # type: ignore[arg-type]


def rates_of(discount: float, unsure: float = 0.0) -> Rates:
    rates = demo_rates()
    return replace(rates, values={**rates.values, "discount": discount, "unsure": unsure})


@pytest.mark.parametrize(("life", "expected"), [(4.0, 4.485), (7.0, 2.449)])
def test_a_stream_of_coats_is_worth_what_the_published_method_gives(life: float, expected: float) -> None:
    found = outlook([a_job(life, 1.0)], rates_of(0.03), 30, samples=50)
    assert expected == pytest.approx(found.present.likely, abs=5e-3)
    assert present_value_of_coats(1.0, life, 0.03, 30.0) == pytest.approx(found.present.likely, abs=5e-3)


def test_without_discount_values_are_plain_sums() -> None:
    found = outlook([a_job(5.0, 100.0)], rates_of(0.0), 30, samples=20)
    assert 500.0 == pytest.approx(found.present.likely) == pytest.approx(found.spent.likely)
    assert 500.0 == pytest.approx(sum(found.by_year))


@given(st.floats(1.0, 40.0), st.floats(0.1, 20.0))
def test_a_longer_life_never_costs_more(life: float, more: float) -> None:
    one, two = (outlook([a_job(years)], rates_of(0.03), 30, samples=3).present.likely for years in (life, life + more))
    assert two <= one + 1e-9


def test_the_same_seed_draws_the_same_cases_and_another_seed_others() -> None:
    found = [outlook([a_job(spread=0.4)], rates_of(0.03, 0.25), 30, samples=200, seed=seed) for seed in (1, 1, 2)]
    assert found[0] == found[1]
    assert found[0].present != found[2].present


def test_parts_in_one_finish_share_their_luck() -> None:
    alike = [a_job(5.0, 100.0, name, 0.4) for name in ("wall a", "wall b")]
    apart = [alike[0], replace(alike[1], what="solid stain")]
    wide, narrow = (outlook(some, rates_of(0.03), 30, 1000).present for some in (alike, apart))
    assert wide.high - wide.low > 1.2 * (narrow.high - narrow.low)


def test_more_cases_settle() -> None:
    few, many, more = (outlook([a_job(spread=0.4)], rates_of(0.03, 0.25), 30, n).present for n in (200, 4000, 8000))
    assert abs(more.likely / many.likely - 1) < 0.03
    assert few.low < few.likely < few.high


def test_the_order_of_the_parts_makes_no_difference() -> None:
    some = [a_job(3.0, 80.0, "wall a", 0.3), a_job(6.0, 50.0, "wall b", 0.2), a_job(9.0, 20.0, "deck c", 0.1)]
    turned = some[:]
    random.Random(3).shuffle(turned)
    one, two = (outlook(jobs, rates_of(0.03, 0.2), 30, 300) for jobs in (some, turned))
    assert (one.spent.likely, one.present.low, one.present.high) == pytest.approx(
        (two.spent.likely, two.present.low, two.present.high)
    )


def test_a_first_coat_on_wet_wood_falls_due_sooner() -> None:
    assert (6.0, 16.0, 26.0) == pytest.approx(due_years(10 * YEAR, 30, 0.6))
    dry, wet = (
        HOUSE.replace("seasoning kiln-dried", f"seasoning {how}")
        for how in ("kiln-dried to 12%", "air-dried; moisture 28%")
    )
    assert jobs(wet)["wall south"].first < jobs(dry)["wall south"].first <= 1.0


def test_coats_fall_due_before_the_end_and_not_on_it() -> None:
    assert (10.0, 20.0) == pytest.approx(due_years(10 * YEAR, 30))
    assert () == due_years(30 * YEAR, 30)


def test_more_cover_never_costs_more() -> None:
    found = []
    for reach in ("1'", "3'", "5'"):
        text = HOUSE.replace("eaves 2'; rakes 1'", f"eaves {reach}; rakes {reach}")
        some, _ = jobs_of(sheet(text), demo_rates())
        found.append(outlook(some, rates_of(0.03), 30, samples=300).present.likely)
    assert sorted(found, reverse=True) == found
