"""Loads, 2016: weight and depth of snow, flat roofs, sliding snow."""

from __future__ import annotations

import math

import pytest

from speclint.science.snow import (
    flat_roof_snow,
    ground_snow_depth,
    low_slope_minimum,
    sliding_snow,
    sliding_snow_pressure,
    slope_factor,
    snow_density,
)
from tests.published.convert import FOOT, INCH, PCF, POUND, PSF
from tests.published.printed import printed
from tests.published.printed_rows import cases

Row = dict[str, str]


@pytest.mark.published("asce-7-16", "Eq. 7.7-1")
@pytest.mark.parametrize("row", cases("asce-7-16_7.7"))
def test_snow_is_as_heavy_and_as_deep_as_stated(row: Row) -> None:
    load = float(row["ground_psf"]) * PSF
    computed = snow_density(load) / PCF if row["asked"] == "density" else ground_snow_depth(load) / INCH
    assert printed(row["printed"]) == computed


@pytest.mark.published("asce-7-16", "Eq. 7.3-1")
@pytest.mark.parametrize("row", cases("asce-7-16_7.3"))
def test_a_flat_roof_carries_the_printed_snow(row: Row) -> None:
    assert printed(row["printed"]) == flat_roof_snow(float(row["ground_psf"]) * PSF) / PSF


@pytest.mark.published("asce-7-16", "Figure 7.4-1")
@pytest.mark.parametrize("row", cases("asce-7-16_figure-7.4-1"))
def test_a_sloped_roof_carries_the_printed_share_of_snow(row: Row) -> None:
    pitch = math.tan(math.radians(float(row["slope_deg"])))
    computed = slope_factor(pitch, float(row["thermal_factor"]), row["slippery"] == "yes")
    assert printed(row["printed"]) == computed


@pytest.mark.published("asce-7-16", "7.9")
@pytest.mark.parametrize("row", cases("asce-7-16_7.9"))
def test_snow_slides_as_worked_by_hand(row: Row) -> None:
    load, run = float(row["roof_psf"]) * PSF, float(row["run_ft"]) * FOOT
    line = sliding_snow(load, run) / (POUND / FOOT)
    assert printed(row["printed"]) == (line if row["asked"] == "line" else sliding_snow_pressure(load, run) / PSF)


@pytest.mark.published("asce-7-16", "7.3.4")
@pytest.mark.parametrize("row", cases("asce-7-16_7.3.4"))
def test_a_low_slope_carries_the_least_load(row: Row) -> None:
    pitch = math.tan(math.radians(float(row["slope_deg"])))
    assert printed(row["printed"]) == low_slope_minimum(float(row["ground_psf"]) * PSF, pitch) / PSF
