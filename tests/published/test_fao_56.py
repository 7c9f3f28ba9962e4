"""Sun on the level from hours of sunshine."""

from __future__ import annotations

import math

import pytest

from speclint.science.sky import sunshine_share_to_global
from tests.published.printed import printed
from tests.published.printed_rows import cases

OUTSIDE = 25.111
"""Sun outside the air on 15 May at 22.9 degrees south, as the same manual prints it. [MJ/m2 a day]"""


@pytest.mark.published("fao-56", "Eq. 35")
@pytest.mark.parametrize("row", cases("fao-56_eq-35"))
def test_the_share_of_sun_is_as_printed(row: dict[str, str]) -> None:
    declination = 0.409 * math.sin(2 * math.pi * 135 / 365 - 1.39)
    daylight = 24 / math.pi * math.acos(-math.tan(math.radians(-22.9)) * math.tan(declination))
    computed = {
        "overcast": sunshine_share_to_global(0.0),
        "added": sunshine_share_to_global(1.0) - sunshine_share_to_global(0.0),
        "example": OUTSIDE * sunshine_share_to_global(220 / 31 / daylight),
    }
    assert printed(row["printed"]) == computed[row["asked"]]
