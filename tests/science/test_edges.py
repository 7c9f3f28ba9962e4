"""Places where one row of a published table or one case of a formula gives way to the next."""

from __future__ import annotations

import math

import pytest

from speclint.science import deck, snow
from speclint.science.cost import (
    modified_uniform_present_value,
    present_value_factor,
    present_value_of_coats,
    uniform_present_value,
)
from speclint.science.decay_climate import decay_hazard_class, decay_hazard_index
from speclint.science.decay_design import ground_factor, shelter_by_rain, shelter_factor
from speclint.science.driving_rain import obstruction_factor
from speclint.science.flashing import chimney_cricket_required
from speclint.science.guards import guard_required
from speclint.science.ice import ice_barrier_length
from speclint.science.movement import lumber_shrinkage
from speclint.science.overhang import log_wall_eave_advice, overhang_need, sheltered_height
from speclint.science.roof_water import half_round_capacity, pitch_factor
from speclint.science.sun import LOWEST_BENT, refraction
from speclint.science.wood_moisture import equilibrium_moisture, partial_shrinkage

INCH, FOOT, PSI = 0.0254, 0.3048, 4.4482216152605 / 0.0254**2


@pytest.mark.parametrize(
    ("twelfths", "factor"),
    [
        (0, 1.0),
        (3, 1.0),
        (3.01, 1.05),
        (5, 1.05),
        (5.01, 1.1),
        (8, 1.1),
        (8.01, 1.2),
        (11, 1.2),
        (11.01, 1.3),
        (24, 1.3),
    ],
)
def test_the_factor_of_the_pitch_steps_at_3_5_8_and_11_in_12(twelfths: float, factor: float) -> None:
    assert factor == pitch_factor(twelfths / 12)


def test_a_gutter_between_two_falls_carries_what_the_lesser_does_or_more() -> None:
    areas = [half_round_capacity(6 * INCH, fall / 12) for fall in (1 / 16, 1 / 8, 1 / 4, 1 / 2)]
    ratio = [area / areas[0] for area in areas]
    assert [1, 5440 / 3840, 7680 / 3840, 11080 / 3840] == [pytest.approx(one) for one in ratio]
    between = half_round_capacity(6 * INCH, 3 / 32 / 12)
    assert areas[0] <= between <= areas[1]


@pytest.mark.parametrize(
    ("thermal", "slippery", "starts"),
    [(1.0, True, 5), (1.0, False, 30), (1.1, True, 10), (1.1, False, 37.5), (1.2, True, 15), (1.2, False, 45)],
)
def test_a_roof_sheds_from_its_angle_to_70_degrees(thermal: float, slippery: bool, starts: float) -> None:
    def share(degrees: float) -> float:
        return snow.slope_factor(math.tan(math.radians(degrees)), thermal, slippery)

    middle = (starts + 70) / 2
    assert (1.0, 1.0, 0.5) == (share(0), pytest.approx(share(starts)), pytest.approx(share(middle)))
    assert share(starts + 1) < 1
    assert (0.0, 0.0) == (pytest.approx(share(70), abs=1e-9), share(75))


def test_snow_grows_denser_up_to_thirty_pounds_a_cubic_foot() -> None:
    psf, pcf = 47.880259, 157.087464
    assert (0.13 * 50 + 14) * pcf == pytest.approx(snow.snow_density(50 * psf))
    assert 30 * pcf == pytest.approx(snow.snow_density(200 * psf))


def _post(side: float, load: float = 9000.0) -> float:
    return deck.post_height_limit(load, side * INCH, side * INCH, 600 * PSI, 400e3 * PSI)


def test_a_post_of_timber_is_reckoned_with_factors_of_its_own() -> None:
    """Wet service: 0.91 on crushing and none on stability from 5 by 5 in; 0.8 and 0.9 below."""
    for side, load, wet, stiff in ((3.5, 9e3, 0.8, 0.9), (4.5, 4e4, 0.91, 1.0), (5.5, 6e4, 0.91, 1.0)):
        height = _post(side, load)
        assert height < min(14 * FOOT, 50 * side * INCH)
        crushing = 600 * PSI * wet
        factor = deck.column_stability_factor(height, side * INCH, crushing, 400e3 * PSI * stiff)
        assert load == pytest.approx(factor * crushing * (side * INCH) ** 2, rel=1e-6)


def test_a_post_carries_no_more_than_its_wood_bears_and_is_no_slenderer_than_fifty() -> None:
    bears = 600 * PSI * 0.8 * (3.5 * INCH) ** 2
    assert (0.0, 0.0) == (_post(3.5, bears), _post(3.5, bears * 1.1))
    assert 0.0 < _post(3.5, bears * 0.99)
    assert 1.5 * 50 * INCH == pytest.approx(_post(1.5, 10.0))
    assert 14 * FOOT == pytest.approx(_post(7.5, 10.0))
    assert 1.0 == deck.column_stability_factor(0.0, 0.1, 1e6, 1e9)


def test_lumber_does_not_shrink_where_it_is_wetter_than_the_line_goes() -> None:
    assert (0.0, 0.0) == (lumber_shrinkage("width", 28.1), lumber_shrinkage("thickness", 40))
    assert 6.031 - 0.215 * 28 == pytest.approx(lumber_shrinkage("width", 28))


def test_wood_does_not_shrink_above_fibre_saturation() -> None:
    assert (0.0, 0.0, 3.8) == tuple(pytest.approx(partial_shrinkage(7.6, moisture)) for moisture in (30, 35, 15))


@pytest.mark.parametrize(("inches", "guard"), [(29.9, False), (30, False), (30.01, True)])
def test_a_guard_is_needed_over_thirty_inches(inches: float, guard: bool) -> None:
    assert guard is guard_required(inches * INCH)
    assert guard is chimney_cricket_required(inches * INCH)


@pytest.mark.parametrize(("pitch", "least"), [(8 / 12, True), (7.9 / 12, False)])
def test_an_ice_barrier_is_36_inches_long_on_roofs_of_8_in_12_and_more(pitch: float, least: bool) -> None:
    along = 24 * INCH * math.hypot(1, pitch)
    assert (36 * INCH if least else along) == pytest.approx(ice_barrier_length(0.0, 0.0, pitch))


@pytest.mark.parametrize(
    ("index", "inches"),
    [(20, (0, 0)), (20.1, (12, 12)), (40, (12, 12)), (40.1, (18, 12)), (70, (18, 12)), (70.1, (24, 12))],
)
def test_overhangs_step_with_the_decay_hazard(index: float, inches: tuple[float, float]) -> None:
    assert inches == tuple(pytest.approx(reach / INCH) for reach in overhang_need(index))


@pytest.mark.parametrize(("storeys", "inches"), [(1, (18, 24)), (1.5, (24, 36)), (2, (24, 36))])
def test_a_second_storey_of_logs_wants_more_eave(storeys: float, inches: tuple[float, float]) -> None:
    assert inches == tuple(pytest.approx(reach / INCH) for reach in log_wall_eave_advice(storeys))


def test_rain_on_the_level_leaves_nothing_sheltered() -> None:
    assert (0.0, 0.6) == (sheltered_height(0.6, 90), pytest.approx(sheltered_height(0.6, 45)))


@pytest.mark.parametrize(("index", "told"), [(34.9, "low"), (35, "moderate"), (65, "moderate"), (65.1, "high")])
def test_decay_hazard_is_graded_at_35_and_65(index: float, told: str) -> None:
    assert told == decay_hazard_class(index)


def test_months_below_35_fahrenheit_or_with_three_wet_days_add_nothing() -> None:
    """(t - 35)(d - 3) / 30: 50 F and 9 days are 3 a month."""
    celsius = (50 - 32) / 1.8
    assert 36.0 == pytest.approx(decay_hazard_index([celsius] * 12, [9] * 12))
    assert 0.0 == decay_hazard_index([celsius] * 12, [3] * 12) == decay_hazard_index([-5] * 12, [1] * 12)
    assert 18.0 == pytest.approx(decay_hazard_index([celsius] * 6 + [0] * 6, [9] * 12))


def test_shelter_falls_with_the_rain_below_a_quarter() -> None:
    told = [shelter_by_rain(share) for share in (0, 0.125, 0.25, 0.625, 1.0, 1.5)]
    assert [0.2, 0.5, 0.8, 0.9, 1.0, 1.0] == [pytest.approx(one) for one in told]
    assert [0.8, 0.8, 0.9, 1.0] == [
        pytest.approx(shelter_factor(*pair)) for pair in ((1.1, 1.0), (1.0, 1.0), (0.5, 1.0), (0.0, 0.0))
    ]


def test_ground_is_near_below_its_distances() -> None:
    from speclint.science.decay_design import CLOSE_TO_GROUND, NEAR_GROUND

    heights = (0.0, CLOSE_TO_GROUND - 0.001, CLOSE_TO_GROUND, NEAR_GROUND, NEAR_GROUND + 0.001)
    assert [2.0, 2.0, 1.5, 1.5, 1.0] == [ground_factor(height) for height in heights]


@pytest.mark.parametrize(("metres", "factor"), [(0, 0.2), (7.9, 0.2), (8, 0.3), (119, 0.9), (120, 1.0), (500, 1.0)])
def test_an_obstruction_counts_by_its_distance(metres: float, factor: float) -> None:
    assert factor == obstruction_factor(metres)


def test_the_sun_is_bent_until_its_rim_is_down() -> None:
    assert -0.8333 == LOWEST_BENT
    assert 0.0 == refraction(-0.84)
    assert 0.6 < refraction(-0.83) < 0.7


@pytest.mark.parametrize("rate", [-0.5, 0.03, 1.5])
def test_a_rate_may_be_anything_above_minus_one(rate: float) -> None:
    years = [(1 + rate) ** -year for year in range(1, 21)]
    assert sum(years) == pytest.approx(uniform_present_value(rate, 20))
    assert years[-1] == pytest.approx(present_value_factor(rate, 20))
    for function in (uniform_present_value, present_value_factor):
        with pytest.raises(ValueError, match="wanted a number above 0; got 0"):
            function(-1.0, 20)


def test_rates_that_are_alike_are_no_fault_of_division() -> None:
    assert 20 == modified_uniform_present_value(0.03, 0.03, 20)
    assert 20 == pytest.approx(modified_uniform_present_value(0.03, 0.03001, 20), rel=1e-3)


@pytest.mark.parametrize(("years", "coats"), [(10, 1), (10.1, 2), (5, 0), (4, 0), (0, 0)])
def test_the_coat_at_the_end_of_the_years_is_not_counted(years: float, coats: int) -> None:
    assert 100.0 * coats == pytest.approx(present_value_of_coats(100.0, 5.0, 0.0, years))


def test_wood_in_frost_and_in_heat_is_reckoned_at_the_ends_of_the_formula() -> None:
    assert equilibrium_moisture(0.0, 60) == equilibrium_moisture(-20.0, 60)
    assert equilibrium_moisture(132.0, 60) == equilibrium_moisture(200.0, 60)
    assert equilibrium_moisture(20.0, 98) == equilibrium_moisture(20.0, 100) > equilibrium_moisture(20.0, 97)
