"""What holds for moving wood whatever its size: laws of shrinking, settling and checking."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from speclint.science.movement import (
    check_opening,
    check_risk,
    lengthwise_shrinkage,
    lumber_shrinkage,
    most_moisture,
)
from speclint.science.settlement import LOG_KINDS, SEASONINGS, stack_shrinkage
from speclint.science.settling_time import MONTHS, adjuster_turns, roof_tilt, settled_share, settlement_at
from speclint.science.wood_moisture import equilibrium_moisture, width_change_wide
from speclint.tables.species import all_species

MOISTURE = st.floats(0, 200)
SHRINKAGE = st.floats(1.5, 10)
SPECIES = st.sampled_from(all_species())
SEASONED = st.sampled_from(SEASONINGS)


@given(SPECIES, MOISTURE, MOISTURE)
def test_drier_logs_lose_less_height(species, one, other):  # type: ignore[no-untyped-def]
    drier, wetter = (
        stack_shrinkage(3.0, moisture, 12.0, species.tangential_shrinkage, species.fibre_saturation)
        for moisture in sorted((one, other))
    )
    assert 0 <= drier <= wetter + 1e-12


@given(st.floats(0, 10), st.floats(0, 10), st.floats(0, 0.15))
def test_settling_rises_with_height(one: float, other: float, rate: float) -> None:
    low, high = sorted((one, other))
    assert settlement_at(low, rate) <= settlement_at(high, rate)


@given(st.floats(0.1, 20), MOISTURE, MOISTURE, SPECIES)
def test_a_post_keeps_its_length_beside_what_a_wall_of_its_height_loses(length, before, then, species):  # type: ignore[no-untyped-def]
    _, most = lengthwise_shrinkage(length, before, then)
    wall = stack_shrinkage(length, before, then, species.tangential_shrinkage, 30.0)
    assert 0 <= most <= 0.003 * length
    assert most <= wall / 10 or wall == 0


@given(SEASONED, st.floats(0, 100), st.floats(0, 100))
def test_settling_never_turns_back(seasoning: str, one: float, other: float) -> None:
    early, late = sorted((one, other))
    assert 0 <= settled_share(early, seasoning) <= settled_share(late, seasoning) <= 1


def test_drier_logs_are_sooner_at_rest() -> None:
    for month in MONTHS:
        shares = [settled_share(month, seasoning) for seasoning in ("green", "air-dried", "kiln-dried")]
        assert sorted(shares) == shares
    assert {1.0} == {settled_share(60, seasoning) for seasoning in SEASONINGS}


@given(st.floats(0, 0.5), SEASONED)
def test_the_turns_of_an_adjuster_add_to_the_whole_settlement(settles: float, seasoning: str) -> None:
    turns = adjuster_turns(settles, seasoning)
    assert settles == pytest.approx(sum(lower for _, lower in turns), abs=1e-8)
    assert sorted({month for month, _ in turns}) == [month for month, _ in turns]


def test_an_owner_who_lowers_jacks_twice_a_year_turns_as_much_as_one_tells_of() -> None:
    late = [lower / 0.0254 for month, lower in adjuster_turns(6.5 * 0.0254, "green") if month > 12]
    assert all(0.1 < inches < 1 for inches in late)
    assert 0.25 < sum(late) / len(late) < 0.5


def test_a_roof_tilts_by_what_its_posts_do_not_follow() -> None:
    assert (0.05, 0.0, -0.01) == tuple(round(roof_tilt(0.15, followed, 3.0), 9) for followed in (0.0, 0.15, 0.18))


@given(SPECIES, st.floats(0.05, 0.6), st.floats(0.05, 0.6), MOISTURE, MOISTURE)
def test_bigger_and_wetter_pieces_check_more(species, one, other, first, second):  # type: ignore[no-untyped-def]
    shrinks = species.radial_shrinkage, species.tangential_shrinkage
    thin, thick = sorted((one, other))
    drier, wetter = sorted((first, second))
    assert check_opening(thin, *shrinks, wetter, 12.0) <= check_opening(thick, *shrinks, wetter, 12.0) + 1e-12
    assert check_opening(thick, *shrinks, drier, 12.0) <= check_opening(thick, *shrinks, wetter, 12.0) + 1e-12


def test_wood_that_shrinks_alike_both_ways_does_not_check() -> None:
    assert 0 == check_opening(0.3, 5.0, 5.0, 30.0, 12.0)


@pytest.mark.parametrize(("inches", "risk"), [(0.1, "low"), (0.125, "moderate"), (0.2, "moderate"), (0.25, "high")])
def test_the_risk_of_checks_follows_their_width(inches: float, risk: str) -> None:
    assert risk == check_risk(inches * 0.0254)


@given(st.floats(-60, 0), st.floats(0, 100))
def test_wood_in_frost_is_reckoned_as_at_freezing(temperature: float, humidity: float) -> None:
    assert equilibrium_moisture(0.0, humidity) == equilibrium_moisture(temperature, humidity)


@given(st.floats(0.01, 1), SHRINKAGE, st.floats(0, 30), st.floats(0, 30))
def test_wood_that_dries_and_is_wetted_again_has_its_first_width(
    width: float, shrinkage: float, one: float, other: float
) -> None:
    dried = width + width_change_wide(width, shrinkage, one, other)
    assert width == pytest.approx(dried + width_change_wide(dried, shrinkage, other, one), rel=1e-9)


def test_no_green_wood_holds_more_than_full_cells() -> None:
    above = [
        species.name
        for species in all_species()
        for held in (species.green_moisture_heartwood, species.green_moisture_sapwood)
        if held is not None and held > 1.1 * most_moisture(species.specific_gravity_green)
    ]
    assert [] == above


@pytest.mark.parametrize(
    ("refuse", "message"),
    [
        (lambda: check_opening(0.2, 4.0, 7.0, -1.0, 12.0), "moisture: wanted 0 or more; got -1"),
        (lambda: stack_shrinkage(3.0, -5.0, 12.0, 5.0, 30.0), "moisture design: wanted 0 or more; got -5"),
        (lambda: lengthwise_shrinkage(2.0, -1.0, 12.0), "moisture before: wanted 0 or more; got -1"),
        (lambda: lumber_shrinkage("length", 12.0), "face: wanted one of width, thickness; got 'length'"),
        (lambda: settled_share(-1.0, "green"), "months: wanted 0 or more; got -1"),
        (lambda: settlement_at(2.0, 1.5), "rate: wanted 0 to 1; got 1.5"),
        (lambda: most_moisture(0.0), "gravity: wanted a number above 0; got 0"),
    ],
)
def test_an_impossible_input_is_refused(refuse, message):  # type: ignore[no-untyped-def]
    with pytest.raises(ValueError, match=f"^{message}$"):
        refuse()


def test_every_kind_of_log_and_seasoning_is_looked_at() -> None:
    assert (3, 4) == (len(LOG_KINDS), len(SEASONINGS))
