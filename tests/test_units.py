"""Numbers with units: read as the trade writes them, shown as the reader wants them."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from speclint.units import (
    NotAQuantity,
    System,
    compass_point,
    feet_and_inches,
    length_within,
    read_bearing,
    read_quantity,
    show,
)


@pytest.mark.parametrize(
    ("text", "dimension", "expected"),
    [
        ("10'", "length", 3.048),
        ("9'-6\"", "length", 2.8956),
        ("9' 6\"", "length", 2.8956),
        ("9'6\"", "length", 2.8956),
        ("9'-6 1/2\"", "length", 2.9083),
        ("9′-6″", "length", 2.8956),
        ("9’-6”", "length", 2.8956),
        ("-1/2\"", "length", -0.0127),
        ("-2'-6\"", "length", -0.762),
        ('3 1/2"', "length", 0.0889),
        ('3-1/2"', "length", 0.0889),
        ('18"', "length", 0.4572),
        ('16" o.c.', "length", 0.4064),
        ("250 mm", "length", 0.25),
        ("250mm", "length", 0.25),
        ("3.2 m", "length", 3.2),
        ("1,400 ft", "length", 426.72),
        ("2 mi", "length", 3218.688),
        (".5 m", "length", 0.5),
        ("70 psf", "pressure", 3351.618),
        ("3.4 kPa", "pressure", 3400.0),
        ("500 psi", "pressure", 3447378.6),
        ("4 in/h", "rain rate", 101.6),
        ("115 mph", "speed", 51.4096),
        ("36 km/h", "speed", 10.0),
        ("120 ft2", "area", 11.148365),
        ("10:12", "slope", 10 / 12),
        ('1/4" per ft', "slope", 0.25 / 12),
        ('1/16" per foot', "slope", 0.0625 / 12),
        ("15%", "percent", 15.0),
        ("15 deg", "angle", 15.0),
        ("32 F", "temperature", 0.0),
        ("-40 F", "temperature", -40.0),
        ("5 C", "temperature", 5.0),
        ("4 years", "duration", 1461.0),
        ("14 days", "duration", 14.0),
        ("1 day", "duration", 1.0),
        ("1 year", "duration", 365.25),
        ("6", "count", 6.0),
        ("3/4", "count", 0.75),
        ("1970-01-01", "date", 719163.0),
        ("8x12", "section", 0.2032),
        ("200x150 mm", "section", 0.2),
    ],
)  # fmt: skip
def test_a_quantity_is_read(text: str, dimension: str, expected: float) -> None:
    value = read_quantity(text)
    assert (dimension, pytest.approx(expected, rel=1e-7, abs=1e-12)) == (value.dimension, value.number)


@pytest.mark.parametrize(
    ("text", "told"),
    [
        ("9 furlongs", "the unit “furlongs” in “9 furlongs” is not known"),
        ('1/0"', "“1/0\"” has a fraction that is no number"),
        ("6x0", "“6x0” has a side of zero"),
        ("0x6", "“0x6” has a side of zero"),
        ("0.0x150 mm", "“0.0x150 mm” has a side of zero"),
        ("10:0", "the run of the slope “10:0” is zero"),
        ("2027-02-30", "“2027-02-30” is not a day of the calendar"),
        ("70 psf per ft", "“70 psf per ft” needs a length before “per ft”"),
        ("", "“” is not a quantity"),
        ("ft", "“ft” is not a quantity"),
        ("99999999999 m", "“99999999999 m” is too large to be meant"),
        ("9" * 61, "“" + "9" * 24 + "…” is too long to be a quantity"),
    ],
)  # fmt: skip
def test_what_is_no_quantity_is_told_in_words(text: str, told: str) -> None:
    with pytest.raises(NotAQuantity) as caught:
        read_quantity(text)
    assert told == str(caught.value)


@given(st.text("0123456789.,/-x:'\" mfintps%°²", max_size=30))
def test_whatever_looks_like_a_quantity_is_read_or_refused_in_words(text: str) -> None:
    try:
        read = read_quantity(text).text
    except NotAQuantity as trouble:
        read = str(trouble)
    assert text in read


@pytest.mark.parametrize(
    ("text", "expected"),
    [
        ("N", 0.0), ("SSW", 202.5), ("south", 180.0), ("North-East", 45.0), ("S 10 E", 170.0), ("W 10 S", 260.0),
        ("E 10 N", 80.0), ("N 10 W", 350.0), ("S10E", 170.0), ("S 10 deg E", 170.0), ("S 95 E", None), ("S 10 N", None),
        ("S 10 S", None), ("up", None), ("", None),
    ],
)  # fmt: skip
def test_a_bearing_is_an_azimuth(text: str, expected: float | None) -> None:
    assert expected == read_bearing(text)


@pytest.mark.parametrize(
    ("azimuth", "expected"), [(0, "N"), (11, "N"), (12, "NNE"), (349, "N"), (180, "S"), (360, "N")]
)
def test_a_compass_point_is_the_nearest_of_sixteen(azimuth: float, expected: str) -> None:
    assert expected == compass_point(azimuth)


@pytest.mark.parametrize(
    ("inches", "expected"),
    [
        (0, '0"'), (0.01, '0"'), (0.0625, '1/16"'), (3.5, '3 1/2"'), (18, '18"'), (23.9, '23 7/8"'), (24, "2'-0\""),
        (114, "9'-6\""), (119.9, "10'-0\""), (500.4, "41'-8\""), (72.25, "6'-0 1/4\""), (-9, '-9"'), (-30, "-2'-6\""),
    ],
)  # fmt: skip
def test_a_length_is_shown_as_a_drawing_writes_it(inches: float, expected: str) -> None:
    assert expected == feet_and_inches(inches)


@pytest.mark.parametrize(
    ("number", "dimension", "system", "expected"),
    [
        (0.4572, "length", "imperial", '18"'),
        (0.4572, "length", "metric", "457 mm"),
        (2.4, "length", "metric", "2.40 m"),
        (3218.688, "length", "imperial", "2.0 mi"),
        (32186.88, "length", "imperial", "20 mi"),
        (1500, "length", "metric", "1.5 km"),
        (15000, "length", "metric", "15 km"),
        (10 / 12, "slope", "imperial", "10:12"),
        (1.0, "slope", "metric", "45 deg"),
        (0.05, "slope", "imperial", "5%"),
        (170.0, "angle", "imperial", "S 10 E"),
        (350.0, "angle", "imperial", "N 10 W"),
        (170.0, "angle", "metric", "170 deg"),
        (225.0, "angle", "metric", "SW"),
        (3351.618, "pressure", "imperial", "70 psf"),
        (3351.618, "pressure", "metric", "3.4 kPa"),
        (101.6, "rain rate", "imperial", "4.0 in/h"),
        (101.6, "rain rate", "metric", "102 mm/h"),
        (0.0, "temperature", "imperial", "32 F"),
        (0.0, "temperature", "metric", "0 C"),
        (1, "duration", "metric", "1 day"),
        (14, "duration", "metric", "14 days"),
        (285, "duration", "metric", "9 months"),
        (362, "duration", "metric", "1 year"),
        (3.98 * 365.25, "duration", "metric", "4 years"),
        (365.25, "duration", "metric", "1 year"),
        (1461, "duration", "metric", "4 years"),
        (547.875, "duration", "imperial", "1.5 years"),
        (719163, "date", "metric", "1970-01-01"),
        (15.0, "percent", "metric", "15%"),
        (6, "count", "imperial", "6"),
        (0.5, "ratio", "imperial", "0.50"),
        (0.0321, "no such dimension", "imperial", "0.0321"),
    ],
)
def test_a_value_is_shown_in_the_units_of_the_reader(
    number: float, dimension: str, system: System, expected: str
) -> None:
    assert expected == show(number, dimension, system)


@given(st.integers(-200 * 16, 200 * 16))
def test_a_length_to_the_sixteenth_below_a_foot_and_a_half_reads_back_as_it_is_shown(sixteenths: int) -> None:
    metres = sixteenths / 16 * 0.0254
    step = 16 if abs(sixteenths) < 96 else 8 if abs(sixteenths) < 384 else 4 if abs(sixteenths) < 1920 else 1
    assert pytest.approx(metres, abs=0.0254 / step / 2 + 1e-9) == read_quantity(show(metres, "length")).number


@pytest.mark.parametrize(
    ("inches", "system", "at_least", "expected"),
    [
        (72.05, "imperial", True, "6'-0 1/4\""),
        (72.05, "imperial", False, "6'-0\""),
        (72, "imperial", True, "6'-0\""),
        (5.01, "imperial", True, '5 1/16"'),
        (5.01, "imperial", False, '5"'),
        (5.01, "metric", True, "128 mm"),
        (5.01, "metric", False, "127 mm"),
        (100, "metric", True, "2.54 m"),
        (100.1, "metric", True, "2.55 m"),
    ],
)
def test_a_bound_is_told_so_that_keeping_to_it_keeps_the_rule(
    inches: float, system: System, at_least: bool, expected: str
) -> None:
    assert expected == show(length_within(inches * 0.0254, system, at_least), "length", system)


@given(st.floats(0.001, 20), st.sampled_from(["imperial", "metric"]))
def test_a_bound_as_told_is_within_a_step_on_the_safe_side(metres: float, system: System) -> None:
    for at_least in (True, False):
        told = read_quantity(show(length_within(metres, system, at_least), "length", system)).number
        beyond = told - metres if at_least else metres - told
        step = 0.0254 if system == "imperial" else 0.01
        assert -1e-6 <= beyond <= step


@given(st.integers(1, 20_000))
def test_inches_and_millimetres_of_one_length_are_the_same_number(eighths: int) -> None:
    inches = read_quantity(f'{eighths / 8}"').number
    assert pytest.approx(inches, rel=1e-12) == read_quantity(f"{eighths * 3.175:.4f} mm").number
