"""Rain loads on walls."""

from __future__ import annotations

import pytest

from speclint.science.rain_standards import ashrae_deposition, ashrae_exposure, ashrae_rain_load
from tests.published.printed import printed
from tests.published.printed_rows import cases


@pytest.mark.published("ashrae-160", "rain load on walls")
@pytest.mark.parametrize("row", cases("ashrae-160_factors"))
def test_the_load_and_its_factors_are_as_printed(row: dict[str, str]) -> None:
    word = row["word"]
    computed = {
        "coefficient": lambda: ashrae_rain_load(1.0, 1.0, 0.0, 1.0, 1.0),
        "load": lambda: ashrae_rain_load(
            5.0, 2.0, 0.0, ashrae_exposure("medium"), ashrae_deposition("below steep roof")
        ),
        "exposure": lambda: ashrae_exposure(word),
        "deposition": lambda: ashrae_deposition(word),
    }
    assert printed(row["printed"]) == computed[row["asked"]]()


@pytest.mark.published("ashrae-160", "rain load on walls")
@pytest.mark.parametrize("angle", [90.0, 135.0, 180.0, 270.0])
def test_no_rain_reaches_a_wall_that_the_wind_does_not_strike(angle: float) -> None:
    assert 0.0 == ashrae_rain_load(5.0, 2.0, angle, 1.0, 1.0)
