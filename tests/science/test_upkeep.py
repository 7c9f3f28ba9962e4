"""Laws of upkeep: reach, finish for an area, money over years."""

from __future__ import annotations

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from speclint.science.access import MEANS, access_class
from speclint.science.cost import (
    modified_uniform_present_value,
    present_value_factor,
    present_value_of_coats,
    real_discount_rate,
    uniform_present_value,
)
from speclint.science.upkeep import (
    COVERAGE,
    face_surface_factor,
    log_end_area,
    log_surface_factor,
    stain_coverage,
    stain_volume,
)

FOOT = 0.3048
RATES = st.floats(0, 0.15)
YEARS = st.integers(0, 40)
INTERVALS = st.floats(0.5, 45)


@pytest.mark.parametrize(
    ("feet", "means"),
    [
        (0, "step stool"), (8, "step stool"), (8.1, "step ladder"), (12, "step ladder"), (12.1, "extension ladder"),
        (20, "extension ladder"), (20.1, "scaffold or lift"),
    ],
)  # fmt: skip
def test_each_means_of_access_ends_where_it_should(feet: float, means: str) -> None:
    assert means == access_class(feet * FOOT)


@given(st.floats(0, 15), st.floats(0, 5), st.floats(-0.5, 1), st.floats(0, 1))
def test_higher_wood_and_steeper_ground_never_need_less(height: float, more: float, slope: float, fall: float) -> None:
    least = MEANS.index(access_class(height, slope))
    assert least <= MEANS.index(access_class(height + more, slope + fall))


def test_no_ladder_stands_on_steep_ground() -> None:
    assert ("scaffold or lift", "step stool") == (access_class(3.0, 0.16), access_class(2.0, 0.16))


@given(st.floats(0.1, 0.6), st.floats(0.05, 1.0))
def test_a_round_log_has_the_surface_of_its_radius(diameter: float, share: float) -> None:
    assert face_surface_factor(diameter / 2, diameter * share) == log_surface_factor(diameter, diameter * share)


@given(st.floats(0.05, 0.3), st.floats(1.0, 20.0))
def test_a_flatter_face_comes_near_its_flat_area(course: float, times: float) -> None:
    radius = course / 2 * times
    assert 1.0 < face_surface_factor(radius, course) <= math.pi / 2
    assert face_surface_factor(2 * radius, course) < face_surface_factor(radius, course)


@given(st.floats(0.1, 1.0))
def test_twice_the_diameter_has_four_times_the_end_grain(diameter: float) -> None:
    assert 4 * log_end_area(diameter) == pytest.approx(log_end_area(2 * diameter))


@pytest.mark.parametrize("surface", sorted({surface for surface, _ in COVERAGE}))
def test_old_wood_takes_more_finish_than_new(surface: str) -> None:
    old, new = stain_coverage(surface, "old"), stain_coverage(surface, "new")
    assert (True, True, True) == (old[0] <= new[0], old[1] <= new[1], old[0] < old[1])


@given(st.floats(0, 1000), st.integers(0, 4), st.floats(1000, 9000))
def test_finish_goes_with_area_and_coats(area: float, coats: int, coverage: float) -> None:
    assert stain_volume(area, coats, coverage) == pytest.approx(coats * stain_volume(area, 1, coverage))


@given(st.integers(1, 40), st.floats(0, 1000), st.integers(1, 45))
def test_discounting_zero_gives_plain_sums(years: int, cost: float, interval: int) -> None:
    coats = sum(at * interval < years for at in range(1, 41))
    assert (float(years), 1.0) == (uniform_present_value(0.0, years), present_value_factor(0.0, years))
    assert coats * cost == pytest.approx(present_value_of_coats(cost, interval, 0.0, years))


@given(RATES, YEARS, INTERVALS, st.floats(0, 20))
def test_a_longer_interval_never_costs_more(rate: float, years: int, interval: float, more: float) -> None:
    longer = present_value_of_coats(1.0, interval + more, rate, years)
    assert longer <= present_value_of_coats(1.0, interval, rate, years) + 1e-9


@given(RATES, st.floats(0, 0.1), YEARS, INTERVALS)
def test_a_higher_rate_never_makes_later_coats_dearer(rate: float, more: float, years: int, interval: float) -> None:
    dearer = present_value_of_coats(1.0, interval, rate + more, years)
    assert dearer <= present_value_of_coats(1.0, interval, rate, years) + 1e-9


@pytest.mark.parametrize(("interval", "coats"), [(5.0, 5), (30.0, 0), (0.1, 299), (29.9, 1), (4.0, 7)])
def test_a_coat_due_at_the_very_end_is_not_counted(interval: float, coats: int) -> None:
    assert coats == present_value_of_coats(1.0, interval, 0.0, 30.0)


@given(RATES, st.integers(0, 40))
def test_without_a_rise_the_modified_factor_is_the_plain_one(rate: float, years: int) -> None:
    plain = uniform_present_value(rate, years)
    assert modified_uniform_present_value(rate, 0.0, years) == pytest.approx(plain, rel=1e-6)


@given(RATES, st.floats(-0.05, 0.15), st.integers(1, 40))
def test_the_modified_factor_is_the_sum_of_its_years(rate: float, rise: float, years: int) -> None:
    total = sum(((1 + rise) / (1 + rate)) ** year for year in range(1, years + 1))
    assert modified_uniform_present_value(rate, rise, years) == pytest.approx(total, rel=1e-6)


@given(st.floats(0, 0.25), st.floats(-0.02, 0.2))
def test_real_rate_and_inflation_make_the_nominal_rate(nominal: float, inflation: float) -> None:
    assert (1 + nominal) == pytest.approx((1 + real_discount_rate(nominal, inflation)) * (1 + inflation))


@pytest.mark.parametrize(
    ("refused", "message"),
    [
        (lambda: access_class(-1.0), "height: wanted 0 or more; got -1"),
        (lambda: stain_volume(10.0, 1, 0.0), "coverage: wanted a number above 0; got 0"),
        (lambda: stain_coverage("rough"), "surface: wanted one of planed, sawn, hand-hewn, peeled; got 'rough'"),
        (lambda: stain_coverage("sawn", "aged"), "age: wanted one of new, old; got 'aged'"),
        (lambda: log_end_area(0.0), "diameter: wanted a number above 0; got 0"),
        (lambda: present_value_of_coats(1.0, 0.0, 0.03, 30), "interval: wanted a number above 0; got 0"),
        (lambda: real_discount_rate(-1.0, 0.0), "nominal and one: wanted a number above 0; got 0"),
        (lambda: modified_uniform_present_value(0.03, -1.0, 5), "rise and one: wanted a number above 0; got 0"),
    ],
)
def test_what_cannot_be_is_refused(refused: object, message: str) -> None:
    assert callable(refused)
    with pytest.raises(ValueError, match=f"^{message}$"):
        refused()
