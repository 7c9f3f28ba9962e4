"""Log-home advice of a state forestry agency."""

from __future__ import annotations

import pytest

from speclint.science.overhang import log_wall_eave_advice
from tests.published.convert import INCH
from tests.published.printed import printed
from tests.published.printed_rows import cases


@pytest.mark.published("ga-forestry-log", "roof overhang")
@pytest.mark.parametrize("row", cases("ga-forestry-log_overhang"))
def test_log_walls_are_advised_the_printed_eaves(row: dict[str, str]) -> None:
    least, preferred = log_wall_eave_advice(float(row["storeys"]))
    assert printed(row["printed"]) == (least if row["advice"] == "least" else preferred) / INCH
