"""Wood Handbook, 2021: shrinkage part of the way, and the most water that wood can hold."""

from __future__ import annotations

import pytest

from speclint.science.movement import most_moisture
from speclint.science.wood_moisture import partial_shrinkage
from tests.published.printed import printed
from tests.published.printed_rows import cases


@pytest.mark.published("fpl-gtr-282", "Eq. 4-9")
@pytest.mark.parametrize("row", cases("fpl-gtr-282_table-4-3"))
def test_partial_shrinkage_around_ten_percent_gives_the_change_coefficient(row: dict[str, str]) -> None:
    shrinkage, start = float(row["shrinkage"]), float(row["start"])
    lost = partial_shrinkage(shrinkage, 9, start) - partial_shrinkage(shrinkage, 11, start)
    assert printed(row["printed"]) == lost / 2 / (100 - partial_shrinkage(shrinkage, 10, start))


@pytest.mark.published("fpl-gtr-282", "Eq. 4-9")
@pytest.mark.parametrize("row", cases("fpl-gtr-282_eq-4-9"))
def test_wood_has_shrunk_part_of_the_way(row: dict[str, str]) -> None:
    assert printed(row["printed"]) == partial_shrinkage(float(row["shrinkage"]), float(row["moisture"]))


@pytest.mark.published("fpl-gtr-282", "Eq. 4-3")
@pytest.mark.parametrize("row", cases("fpl-gtr-282_eq-4-3"))
def test_full_cells_hold_the_water_worked_by_hand(row: dict[str, str]) -> None:
    assert printed(row["printed"]) == most_moisture(float(row["gravity"]))
