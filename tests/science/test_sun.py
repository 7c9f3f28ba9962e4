"""Sun on walls through a clear year; the expected figures were computed with pvlib, see tests/oracle."""

from __future__ import annotations

import math
from collections.abc import Callable

import pytest
from hypothesis import given
from hypothesis import strategies as st

from speclint.model.words import SURFACES
from speclint.science.sky import air_mass, clear_sky, clear_sky_exponents, extraterrestrial_normal, ultraviolet
from speclint.science.sun import SunSample, days_since_2000, refraction, sun_position, year_of_sun
from speclint.science.sun_on_walls import (
    ALBEDOS,
    ground_albedo,
    incidence_cosine,
    shadow_depth,
    sky_left,
    ultraviolet_albedo,
)

NORTH = 46.0
SOUTH, EAST, WEST, SOUTH_WEST, POLE_SIDE = 180.0, 90.0, 270.0, 225.0, 0.0
PROJECTION = 0.9
MIDSUMMER, MIDWINTER = 172, 355
Light = Callable[[float, float], tuple[float, float]]


def _beam(sample: SunSample, faces: float, light: Light = clear_sky) -> float:
    """Beam on an upright wall that a sample stands for. [kWh/m2]"""
    share = max(0.0, incidence_cosine(sample.altitude, sample.azimuth, faces))
    return light(sample.altitude, sample.day)[0] * share * sample.hours / 1000


def _level(sample: SunSample, light: Light = clear_sky) -> float:
    beam, diffuse = light(sample.altitude, sample.day)
    return (beam * math.sin(math.radians(sample.altitude)) + diffuse) * sample.hours / 1000


def _diffuse(sample: SunSample, light: Light) -> float:
    return light(sample.altitude, sample.day)[1] * sample.hours / 1000


def _at(day: float, hour: float) -> tuple[float, float]:
    """Apparent altitude and azimuth on the meridian of Greenwich in 2023, in the air of the reference runs."""
    altitude, azimuth = sun_position(days_since_2000(2023, day, hour), NORTH)
    return altitude + refraction(altitude, 97773, 12), azimuth


@pytest.mark.parametrize(
    ("day", "hour", "altitude", "azimuth", "outside", "mass", "beam", "diffuse"),
    [
        (172, 12, 67.4414, 178.9388, 1321.62, 1.0823, 912.62, 126.75),
        (172, 16, 37.5473, 265.7921, 1321.62, 1.6381, 803.64, 99.00),
        (355, 12, 20.6020, 180.5060, 1412.71, 2.8231, 678.68, 73.49),
    ],
)
def test_three_moments_of_a_clear_year(
    day: int, hour: int, altitude: float, azimuth: float, outside: float, mass: float, beam: float, diffuse: float
) -> None:
    height, direction = _at(day, hour)
    assert (altitude, azimuth) == pytest.approx((height, direction), abs=0.01)
    assert outside == pytest.approx(extraterrestrial_normal(day), abs=0.006)
    assert mass == pytest.approx(air_mass(height), abs=0.001)
    assert (beam, diffuse) == pytest.approx(clear_sky(height, day), abs=0.1)


def test_the_exponents_of_the_depths_in_use_are_as_worked() -> None:
    assert (0.712405, 0.241800) == pytest.approx(clear_sky_exponents(0.35, 2.30), abs=1e-6)


@pytest.mark.parametrize(("faces", "beam"), [(SOUTH, 1267.9), (EAST, 778.5), (WEST, 778.5), (POLE_SIDE, 58.9)])
def test_a_clear_year_of_beam_on_four_walls(faces: float, beam: float) -> None:
    assert beam == pytest.approx(sum(_beam(sample, faces) for sample in year_of_sun(NORTH)), rel=0.01)


def test_a_clear_year_on_the_level() -> None:
    assert 1874.3 == pytest.approx(sum(map(_level, year_of_sun(NORTH))), rel=0.005)


def test_the_daylight_of_a_year() -> None:
    assert 4400.0 == pytest.approx(sum(sample.hours for sample in year_of_sun(NORTH)), rel=0.002)


@pytest.mark.parametrize(
    ("depth", "hours", "energy"),
    [
        (0.50, 0.6795, 0.6508),
        (1.00, 0.4682, 0.3595),
        (1.50, 0.3398, 0.2156),
        (2.00, 0.2364, 0.1204),
        (2.50, 0.1378, 0.0425),
        (3.00, 0.1000, 0.0223),
    ],
)
def test_the_share_of_a_year_that_a_south_wall_lies_in_the_shadow_of_its_eave(
    depth: float, hours: float, energy: float
) -> None:
    samples = [sample for sample in year_of_sun(NORTH, 72, 10) if _beam(sample, SOUTH) > 0]
    shaded = [sample for sample in samples if shadow_depth(PROJECTION, sample.altitude, sample.azimuth, SOUTH) > depth]
    shares = [
        sum(map(weight, shaded)) / sum(map(weight, samples))
        for weight in (lambda sample: sample.hours, lambda sample: _beam(sample, SOUTH))
    ]
    assert (hours, energy) == pytest.approx(shares, abs=0.01)


@pytest.mark.parametrize(
    ("faces", "bands"),
    [
        (SOUTH, (0.8981, 0.4851, 0.2808, 0.1661, 0.0737, 0.0308)),
        (EAST, (0.8157, 0.3696, 0.1730, 0.0958, 0.0601, 0.0410)),
        (SOUTH_WEST, (0.8775, 0.4382, 0.1812, 0.0871, 0.0495, 0.0315)),
    ],
)
def test_the_share_of_beam_that_an_eave_takes_from_each_half_metre_of_wall(
    faces: float, bands: tuple[float, ...]
) -> None:
    samples = year_of_sun(NORTH, 72, 10)
    whole = sum(_beam(sample, faces) for sample in samples)
    shares = [
        sum(
            _beam(sample, faces)
            * min(1.0, max(0.0, shadow_depth(PROJECTION, sample.altitude, sample.azimuth, faces) / 0.5 - band))
            for sample in samples
        )
        / whole
        for band in range(len(bands))
    ]
    assert bands == pytest.approx(shares, abs=0.015)


@pytest.mark.parametrize(("faces", "whole"), [(SOUTH, 73.81), (SOUTH_WEST, 68.10), (EAST, 52.68), (POLE_SIDE, 29.47)])
def test_a_clear_year_of_ultraviolet_on_upright_walls(faces: float, whole: float) -> None:
    samples = year_of_sun(NORTH)
    level = sum(_level(sample, ultraviolet) for sample in samples)
    sky = sum(_diffuse(sample, ultraviolet) for sample in samples)
    beam = sum(_beam(sample, faces, ultraviolet) for sample in samples)
    assert (whole, 100.25) == pytest.approx((beam + sky / 2 + 0.2 * level / 2, level), rel=0.005)


def test_over_dark_ground_less_ultraviolet_returns_from_the_sky() -> None:
    def dark(altitude: float, day: float) -> tuple[float, float]:
        return ultraviolet(altitude, day, 0.04)

    samples = year_of_sun(NORTH)
    level = sum(_level(sample, dark) for sample in samples)
    north = sum(_beam(sample, POLE_SIDE, dark) + _diffuse(sample, dark) / 2 for sample in samples) + 0.04 * level / 2
    assert (95.5, 19.7) == pytest.approx((level, north), rel=0.005)


@pytest.mark.parametrize(("day", "depth"), [(172, 2.166), (79, 0.864), (355, 0.338)])
def test_the_shadow_of_a_deep_eave_at_noon(day: int, depth: float) -> None:
    altitude, azimuth = _at(day, 12.0)
    assert depth == pytest.approx(shadow_depth(PROJECTION, altitude, azimuth, SOUTH), abs=0.005)


@pytest.mark.parametrize(("depth", "share"), [(0.9, 0.7071), (2.0, 0.9119), (0.0, 0.0)])
def test_the_sky_left_below_a_deep_eave(depth: float, share: float) -> None:
    assert share == pytest.approx(sky_left(depth, PROJECTION), abs=1e-4)


def test_without_a_roof_edge_all_the_sky_is_left_and_nothing_is_shaded() -> None:
    assert (1.0, 0.0) == (sky_left(0.0, 0.0), shadow_depth(0.0, 45.0, 180.0, SOUTH))


@pytest.mark.parametrize(("altitude", "azimuth"), [(30.0, 0.0), (30.0, 270.0), (-1.0, 180.0)])
def test_a_wall_with_no_sun_before_it_is_all_in_shadow(altitude: float, azimuth: float) -> None:
    assert math.inf == shadow_depth(PROJECTION, altitude, azimuth, SOUTH if altitude < 0 else 135.0)


@given(st.floats(0, 66), st.sampled_from([0.0, 45.0, 90.0, 135.0, 180.0]))
def test_the_other_hemisphere_sees_the_same_sun_from_its_own_north(latitude: float, faces: float) -> None:
    here = sum(_beam(sample, faces) for sample in year_of_sun(latitude))
    there = sum(_beam(sample, 180 - faces) for sample in year_of_sun(-latitude))
    assert here == pytest.approx(there, rel=0.03, abs=25)


@given(st.floats(-90, 90), st.floats(0, 359))
def test_mornings_mirror_afternoons(latitude: float, faces: float) -> None:
    samples = year_of_sun(latitude, 12, 60)
    sums = [sum(_beam(sample, wall) for sample in samples) for wall in (faces, 360 - faces)]
    assert sums[0] == pytest.approx(sums[1])


@pytest.mark.parametrize("latitude", [-90.0, -67.0, -46.0, 0.0, 46.0, 67.0, 90.0])
def test_a_sampled_year_has_the_sun_up_half_the_time_and_in_its_right_month(latitude: float) -> None:
    samples = year_of_sun(latitude)
    assert 4380 == pytest.approx(sum(sample.hours for sample in samples), abs=80)
    assert all(0 < sample.altitude <= 90 and 0 <= sample.azimuth < 360 for sample in samples)
    assert all(12 * (sample.day - 1) / 365 == pytest.approx(sample.month - 0.5, abs=0.6) for sample in samples)


def test_at_the_poles_the_sun_is_up_for_half_a_year_without_a_break() -> None:
    months = [{sample.month for sample in year_of_sun(latitude)} for latitude in (90.0, -90.0)]
    assert ({3, 4, 5, 6, 7, 8, 9}, {1, 2, 3, 9, 10, 11, 12}) == tuple(months)


def test_at_noon_the_sun_stands_south_in_the_north_and_north_in_the_south() -> None:
    azimuths = [sun_position(days_since_2000(2023, 172, 12.03), latitude)[1] for latitude in (46.0, -46.0)]
    assert math.cos(math.radians(azimuths[0])) < -0.999 < 0.999 < math.cos(math.radians(azimuths[1]))


@given(st.floats(-90, 90), st.floats(-18262, 18627), st.floats(-360, 360))
def test_a_turn_of_the_earth_changes_neither_sun_nor_place(latitude: float, days: float, longitude: float) -> None:
    other = longitude - 360 if longitude > 0 else longitude + 360
    (altitude, azimuth), (again, turned) = (sun_position(days, latitude, east) for east in (longitude, other))
    assert altitude == pytest.approx(again, abs=1e-5)
    assert math.cos(math.radians(altitude)) * math.sin(math.radians(azimuth - turned)) == pytest.approx(0, abs=1e-6)


@pytest.mark.parametrize("latitude", [-90.5, 91.0, math.nan])
def test_a_latitude_off_the_earth_is_refused(latitude: float) -> None:
    for place in (year_of_sun, lambda north: sun_position(0.0, north)):
        with pytest.raises(ValueError, match="latitude: wanted -90 to 90; got"):
            place(latitude)


def test_days_that_do_not_fill_the_months_alike_are_refused() -> None:
    with pytest.raises(ValueError, match=r"^days: wanted a multiple of 12; got 10$"):
        year_of_sun(46.0, days=10)


@pytest.mark.parametrize(
    ("year", "day", "days"),
    [(2000, 1, -0.5), (2001, 1, 365.5), (2023, 1, 8400.5), (2024, 366, 9130.5), (1999, 1, -365.5)],
)
def test_days_are_counted_over_leap_years(year: int, day: int, days: float) -> None:
    assert days == days_since_2000(year, day)


@given(st.floats(1, 365))
def test_while_the_sun_is_down_there_is_no_light(day: float) -> None:
    assert ((0.0, 0.0), (0.0, 0.0)) == (clear_sky(-0.1, day), ultraviolet(0.0, day))


@given(st.floats(1, 89), st.floats(0.1, 1), st.sampled_from([clear_sky, ultraviolet]))
def test_a_higher_sun_is_a_stronger_sun(altitude: float, more: float, light: Light) -> None:
    low, high = light(altitude, MIDSUMMER), light(altitude + more, MIDSUMMER)
    assert (low[0] < high[0], low[1] < high[1]) == (True, True)


def test_refraction_lifts_a_low_sun_most_and_a_sunken_one_not_at_all() -> None:
    lifts = [refraction(altitude) for altitude in (0.0, 5.0, 45.0, 90.0, -2.0)]
    assert lifts == [*sorted(lifts[:-1], reverse=True), 0.0]
    assert 0.48 == pytest.approx(lifts[0], abs=0.005)


def test_every_kind_of_ground_has_an_albedo_and_snow_is_brightest() -> None:
    assert set(SURFACES) == set(ALBEDOS)
    assert max(map(ground_albedo, SURFACES)) < ground_albedo("lawn", snow=True) < 1
    assert 0 < ultraviolet_albedo(False) < min(map(ground_albedo, SURFACES)) < ultraviolet_albedo(True)


def test_an_unknown_kind_of_ground_is_refused() -> None:
    with pytest.raises(ValueError, match=r"^surface: wanted one of bare soil, .*decking; got 'moss'$"):
        ground_albedo("moss")
