"""Laws of decay by factors and by dose; the climate of Helsinki worked again from rounded monthly means."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from speclint.science.decay_climate import decay_hazard_index
from speclint.science.decay_design import (
    CONSEQUENCES,
    DETAILS,
    HELSINKI,
    LOCAL,
    RESISTANCES,
    STANDINGS,
    climate_index,
    exposure_index,
    exposure_over_resistance,
    ground_factor,
    resistance_between,
    shelter_by_rain,
    shelter_factor,
)
from speclint.science.decay_dose import brown_rot_rating, daily_dose, decay_rating, moisture_dose, months_dose

LENGTHS = st.floats(0, 10)
SHARES = st.floats(0, 1.5)
LOWEST = (-6, -7, -4, 1, 6, 11, 14, 13, 9, 4, -1, -4)  # deg C, means of the days' lowest and highest, Helsinki
HIGHEST = (-1, -2, 2, 8, 14, 18, 22, 20, 15, 9, 4, 0)
RAINS = (  # days with rain by month: fewest, middle and most that a page gives for each season
    (9, 9, 9, 9, 9, 11, 11, 11, 11, 11, 11, 9),
    (10, 10, 9.5, 9.5, 9.5, 12, 12, 12, 11.5, 11.5, 11.5, 10),
    (11, 11, 10, 10, 10, 13, 13, 13, 12, 12, 12, 11),
)


def test_the_climate_of_helsinki_comes_to_the_taken_index() -> None:
    means = [(low + high) / 2 for low, high in zip(LOWEST, HIGHEST, strict=True)]
    found = [decay_hazard_index(means, rains) for rains in RAINS]
    assert HELSINKI == pytest.approx(found, abs=1.0)


@given(LENGTHS, LENGTHS, LENGTHS)
def test_more_reach_never_shelters_less(reach: float, more: float, depth: float) -> None:
    assert shelter_factor(reach + more, depth) <= shelter_factor(reach, depth)


@given(LENGTHS, LENGTHS, LENGTHS)
def test_wood_farther_below_an_edge_is_never_sheltered_more(reach: float, depth: float, more: float) -> None:
    assert shelter_factor(reach, depth) <= shelter_factor(reach, depth + more)


@given(SHARES, SHARES)
def test_more_rain_never_lowers_the_factor(share: float, more: float) -> None:
    assert 0.2 <= shelter_by_rain(share) <= shelter_by_rain(share + more) <= 1


def test_the_shelter_by_rain_has_no_step_where_it_turns() -> None:
    assert shelter_by_rain(0.25) == pytest.approx(shelter_by_rain(0.2499999), abs=1e-5)


@given(st.floats(-1, 2), LENGTHS)
def test_more_clearance_never_raises_the_factor(clearance: float, more: float) -> None:
    assert ground_factor(clearance + more) <= ground_factor(clearance)


@pytest.mark.parametrize("table", [LOCAL, DETAILS, CONSEQUENCES])
def test_factors_rise_in_the_order_in_which_they_are_listed(table: dict[str, float]) -> None:
    values = list(table.values())
    assert sorted(set(values)) == values


def test_resistance_falls_from_a_to_e_and_between_two_classes_lies_between_them() -> None:
    values = list(RESISTANCES.values())
    assert sorted(set(values), reverse=True) == values
    assert RESISTANCES["D"] < resistance_between("C", "D") < RESISTANCES["C"]


def test_every_recalled_word_is_told_apart_from_every_read_one() -> None:
    assert set(STANDINGS) == {*LOCAL, *DETAILS, *RESISTANCES}


@given(st.floats(0.1, 3), st.floats(0.1, 3), st.floats(0.1, 3), st.floats(0.1, 3), st.floats(0, 4))
def test_the_order_of_factors_makes_no_difference(a: float, b: float, c: float, d: float, e: float) -> None:
    assert exposure_index(a, b, c, d, e) == pytest.approx(exposure_index(d, c, b, a, e))


@given(st.floats(0, 10), st.floats(0.5, 9), st.floats(0, 5))
def test_more_resistance_never_raises_the_ratio(exposure: float, resists: float, more: float) -> None:
    assert exposure_over_resistance(exposure, 1.0, resists + more) <= exposure_over_resistance(exposure, 1.0, resists)


def test_a_place_twice_as_hazardous_is_twice_as_exposed() -> None:
    assert 2 * climate_index(30.0) == climate_index(60.0)


@given(st.floats(0, 400), st.floats(-30, 50), st.floats(0, 10))
def test_a_day_adds_from_nothing_to_one(moisture: float, warm: float, swing: float) -> None:
    assert 0 <= daily_dose(moisture, warm, warm - swing, warm + swing) <= 1


@given(st.floats(0, 24.99), st.floats(-30, 50))
def test_dry_wood_never_gathers_a_dose(moisture: float, warm: float) -> None:
    assert 0 == daily_dose(moisture, warm, warm, warm)


@given(st.floats(25, 50), st.floats(0, 25))
def test_wood_up_to_half_its_weight_in_water_gathers_more_the_wetter_it_is(moisture: float, more: float) -> None:
    assert moisture_dose(moisture) <= moisture_dose(min(50.0, moisture + more)) + 1e-9


@given(st.floats(0, 3000), st.floats(0, 500))
def test_a_greater_dose_never_has_a_lower_rating(dose: float, more: float) -> None:
    assert decay_rating(dose) <= decay_rating(dose + more) <= 4
    assert brown_rot_rating(dose) <= brown_rot_rating(dose + more) <= 4


def test_a_year_of_equal_months_is_its_days_times_one_day() -> None:
    assert 365 * daily_dose(30.0, 20.0, 20.0, 20.0) == pytest.approx(months_dose([30.0] * 12, [20.0] * 12))


def test_a_year_of_eleven_months_is_refused() -> None:
    with pytest.raises(ValueError, match=r"^months: wanted 12 and 12; got 11 and 12$"):
        months_dose([30.0] * 11, [20.0] * 12)
