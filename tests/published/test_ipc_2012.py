"""Plumbing code, 2012 and before: half-round gutters and round leaders."""

from __future__ import annotations

import pytest

from speclint.science.roof_water import half_round_capacity, level_half_round_width, round_leader_capacity_ipc2012
from tests.published.convert import FOOT, INCH, INCH_AN_HOUR, SQUARE_FOOT, SQUARE_FOOT_INCH_AN_HOUR
from tests.published.printed import printed
from tests.published.printed_rows import cases, rows

Row = dict[str, str]


@pytest.mark.published("ipc-2012", "Table 1106.6")
@pytest.mark.parametrize("row", cases("ipc-2012_table-1106.6"))
def test_a_half_round_gutter_carries_the_printed_area(row: Row) -> None:
    capacity = half_round_capacity(float(row["diameter_in"]) * INCH, float(row["fall_in_ft"]) / 12)
    assert printed(row["printed"]) == capacity / SQUARE_FOOT_INCH_AN_HOUR


@pytest.mark.published("ipc-2012", "Table 1106.6")
def test_the_gentlest_column_agrees_with_the_formula_for_level_gutters() -> None:
    gentlest = [row for row in rows("ipc-2012_table-1106.6") if row["fall_in_ft"] == "0.0625"]
    widths = [level_half_round_width(float(row["printed"]) * SQUARE_FOOT, INCH_AN_HOUR) / INCH for row in gentlest]
    assert gentlest
    assert [float(row["diameter_in"]) for row in gentlest] == pytest.approx(widths, rel=0.03)


@pytest.mark.published("ipc-2012", "Table 1106.2")
@pytest.mark.parametrize("row", cases("ipc-2012_table-1106.2"))
def test_a_round_leader_carries_the_printed_area(row: Row) -> None:
    capacity = round_leader_capacity_ipc2012(float(row["diameter_in"]) / 12 * FOOT)
    assert printed(row["printed"]) == capacity / SQUARE_FOOT_INCH_AN_HOUR
