"""Driving rain from wind and rain."""

from __future__ import annotations

import math

import pytest

from speclint.science.driving_rain import lacy_driving_rain, linear_driving_rain
from tests.published.printed import printed
from tests.published.printed_rows import cases


@pytest.mark.published("lacy-1965", "driving rain from wind and rain")
@pytest.mark.parametrize("row", cases("lacy-1965_formula"))
def test_the_formula_has_the_printed_constants(row: dict[str, str]) -> None:
    computed = {
        "constant": lacy_driving_rain(1.0, 1.0),
        "power": math.log10(lacy_driving_rain(1.0, 10.0) / lacy_driving_rain(1.0, 1.0)),
        "linear": linear_driving_rain(1.0, 1.0, 1.0),
    }
    assert printed(row["printed"]) == computed[row["asked"]]
