"""Driving rain on walls: worked examples, wind at heights, and the ratio of driving rain to rain."""

from __future__ import annotations

import pytest

from speclint.science.driving_rain import power_law_wind
from speclint.science.rain_standards import straube_design_load
from speclint.science.raindrops import fall_speed, median_diameter
from tests.published.convert import INCH
from tests.published.printed import printed
from tests.published.printed_rows import cases

Row = dict[str, str]
UNITS = {"in": 1000 * INCH, "mm": 1.0}


def ratio(rate: float) -> float:
    """Driving rain for each metre a second of wind, over rain: one over the fall speed of the median drop. [s/m]"""
    return 1 / fall_speed(median_diameter(rate))


@pytest.mark.published("bsd-148", "worked examples")
@pytest.mark.parametrize("row", cases("bsd-148_loads"))
def test_a_part_of_a_wall_takes_the_printed_rain(row: Row) -> None:
    free = float(row["free"]) * UNITS[row["unit"]]
    load = straube_design_load(free, float(row["height"]), float(row["obstruction"]), float(row["deposition"]))
    assert printed(row["printed"]) == load / UNITS[row["printed_unit"]]


@pytest.mark.published("bsd-148", "Eq. 8")
@pytest.mark.parametrize("row", cases("bsd-148_height"))
def test_the_wind_at_a_height_is_as_printed(row: Row) -> None:
    assert printed(row["printed"]) == power_law_wind(1.0, float(row["height_m"]), float(row["exponent"]))


@pytest.mark.published("bsd-148", "driving rain factor, 0.20 to 0.25 s/m in usual rain")
@pytest.mark.parametrize("rate", [1.0, 1.5, 2.0])
def test_the_median_drop_of_usual_rain_gives_the_printed_ratio(rate: float) -> None:
    assert 0.20 <= ratio(rate) <= 0.25


@pytest.mark.published("bsd-148", "driving rain factor, down to 0.15 s/m in cloudbursts")
def test_the_median_drop_of_a_cloudburst_gives_the_printed_ratio() -> None:
    assert 0.15 == pytest.approx(ratio(20.0), abs=0.01)


@pytest.mark.published("bsd-148", "driving rain factor, more than 0.5 s/m in drizzle")
def test_the_median_drop_of_the_finest_drizzle_gives_the_printed_ratio() -> None:
    assert 0.5 < ratio(0.02)
