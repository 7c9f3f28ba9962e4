"""City plumbing code: round leaders at four inches of rain an hour."""

from __future__ import annotations

import pytest

from speclint.science.roof_water import round_leader_capacity_ipc2012
from tests.published.convert import INCH, SQUARE_FOOT_INCH_AN_HOUR
from tests.published.printed import printed
from tests.published.printed_rows import cases


@pytest.mark.published("chicago-18-29", "18-29-1106.2")
@pytest.mark.parametrize("row", cases("chicago-18-29_1106.2"))
def test_a_round_leader_carries_what_the_city_prints(row: dict[str, str]) -> None:
    capacity = round_leader_capacity_ipc2012(float(row["diameter_in"]) * INCH)
    assert printed(row["printed"]) == capacity / SQUARE_FOOT_INCH_AN_HOUR / 4
