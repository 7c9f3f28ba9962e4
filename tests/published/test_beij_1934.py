"""Level gutters."""

from __future__ import annotations

import pytest

from speclint.science.roof_water import level_half_round_width, level_rectangular_width
from tests.published.convert import FOOT, INCH, INCH_AN_HOUR, SQUARE_FOOT
from tests.published.printed import printed
from tests.published.printed_rows import cases


@pytest.mark.published("beij-1934", "level semicircular and rectangular gutters")
@pytest.mark.parametrize("row", cases("beij-1934_level"))
def test_a_level_gutter_has_the_printed_width(row: dict[str, str]) -> None:
    computed = {
        "half-round": level_half_round_width(SQUARE_FOOT, INCH_AN_HOUR) / FOOT,
        "box": level_rectangular_width(SQUARE_FOOT, INCH_AN_HOUR, FOOT, 1.0) / FOOT,
        "example": level_half_round_width(5000 * SQUARE_FOOT, INCH_AN_HOUR) / INCH,
    }
    assert printed(row["printed"]) == computed[row["asked"]]
