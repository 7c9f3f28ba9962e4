"""National plumbing code, 2006: round leaders 7/24 full."""

from __future__ import annotations

import pytest

from speclint.science.roof_water import round_leader_capacity
from tests.published.convert import GALLON_A_MINUTE, INCH, SQUARE_FOOT_INCH_AN_HOUR
from tests.published.printed import printed
from tests.published.printed_rows import cases


@pytest.mark.published("nspc-2006", "Table 13.6.1")
@pytest.mark.parametrize("row", cases("nspc-2006_table-13.6.1"))
def test_a_leader_carries_what_the_code_prints(row: dict[str, str]) -> None:
    capacity = round_leader_capacity(float(row["diameter_in"]) * INCH)
    in_gallons = capacity / 1000 / 3600 / GALLON_A_MINUTE
    computed = in_gallons if row["asked"] == "gallons" else capacity / SQUARE_FOOT_INCH_AN_HOUR
    assert printed(row["printed"]) == computed
