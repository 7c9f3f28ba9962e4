"""Sizes of raindrops and water in the air."""

from __future__ import annotations

import math

import pytest

from speclint.science.raindrops import (
    median_diameter,
    size_scale,
    size_steepness,
    water_in_air,
    water_in_smaller_drops,
)
from tests.published.printed import printed
from tests.published.printed_rows import cases


def spread(rate: float) -> float:
    """The power of the diameter, from how the water in larger drops falls away."""
    one, two = (-math.log1p(-water_in_smaller_drops(diameter, rate)) for diameter in (1.0, 2.0))
    return math.log2(two / one)


@pytest.mark.published("best-1950", "abstract")
@pytest.mark.parametrize("row", cases("best-1950_sizes"))
def test_the_drops_have_the_printed_sizes(row: dict[str, str]) -> None:
    rate = float(row["rate"])
    computed = {
        "scale": size_scale(rate),
        "scale power": math.log10(size_scale(10 * rate) / size_scale(rate)),
        "water": water_in_air(rate),
        "water power": math.log10(water_in_air(10 * rate) / water_in_air(rate)),
        "spread": spread(rate),
        "share": water_in_smaller_drops(size_scale(rate), rate),
        "median": median_diameter(rate),
    }
    assert printed(row["printed"]) == computed[row["asked"]]


@pytest.mark.published("best-1950", "scale of the drop sizes, to the power -2.25")
@pytest.mark.parametrize("rate", [0.1, 1.0, 30.0])
def test_the_steepness_gives_the_share_of_the_water_in_larger_drops(rate: float) -> None:
    larger = math.exp(-size_steepness(rate) * 1.7**2.25)
    assert larger == pytest.approx(1 - water_in_smaller_drops(1.7, rate), rel=1e-12)


@pytest.mark.published("best-1950", "diameter at half of the water")
@pytest.mark.parametrize("rate", [0.1, 1.0, 30.0])
def test_half_of_the_water_is_in_drops_below_the_median(rate: float) -> None:
    assert 0.5 == pytest.approx(water_in_smaller_drops(median_diameter(rate), rate), rel=1e-12)
