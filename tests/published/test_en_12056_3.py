"""European roof drainage: runoff and rain driven onto slopes."""

from __future__ import annotations

import math

import pytest

from speclint.science.roof_water import runoff, wind_driven_factor
from tests.published.printed import printed
from tests.published.printed_rows import cases

Row = dict[str, str]


@pytest.mark.published("en-12056-3", "4.1 Eq. (1)")
@pytest.mark.parametrize("row", cases("en-12056-3_4.1"))
def test_a_roof_sheds_the_printed_litres(row: Row) -> None:
    litres = 1000 * runoff(float(row["area_m2"]), float(row["intensity_mm_h"]))
    assert printed(row["printed"]) == litres * float(row["factor"])


@pytest.mark.published("en-12056-3", "Table 3")
@pytest.mark.parametrize("row", cases("en-12056-3_table-3"))
def test_a_slope_catches_the_printed_share_more(row: Row) -> None:
    pitch = math.tan(math.radians(float(row["slope_deg"])))
    assert printed(row["printed"]) == wind_driven_factor(pitch)
