"""Wood Handbook, 2021: shrinkage part of the way."""

from __future__ import annotations

import pytest

from speclint.science.wood_moisture import partial_shrinkage
from tests.published.printed import printed
from tests.published.printed_rows import cases


@pytest.mark.published("fpl-gtr-282", "Eq. 4-9")
@pytest.mark.parametrize("row", cases("fpl-gtr-282_table-4-3"))
def test_partial_shrinkage_around_ten_percent_gives_the_change_coefficient(row: dict[str, str]) -> None:
    shrinkage, start = float(row["shrinkage"]), float(row["start"])
    lost = partial_shrinkage(shrinkage, 9, start) - partial_shrinkage(shrinkage, 11, start)
    assert printed(row["printed"]) == lost / 2 / (100 - partial_shrinkage(shrinkage, 10, start))
