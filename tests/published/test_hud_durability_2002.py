"""Durability by Design: overhangs by climate."""

from __future__ import annotations

import pytest

from speclint.science.overhang import cover_ratio, overhang_need
from tests.published.convert import FOOT, INCH
from tests.published.printed import printed
from tests.published.printed_rows import cases

Row = dict[str, str]


@pytest.mark.published("hud-durability-2002", "Table 4.1")
@pytest.mark.parametrize("row", cases("hud-durability-2002_table-4.1"))
def test_a_climate_asks_for_the_printed_overhang(row: Row) -> None:
    eave, rake = overhang_need(float(row["index"]))
    assert printed(row["printed"]) == (eave if row["edge"] == "eave" else rake) / INCH


@pytest.mark.published("hud-durability-2002", "overhang ratio")
@pytest.mark.parametrize("row", cases("hud-durability-2002_overhang-ratio"))
def test_an_overhang_has_the_printed_ratio(row: Row) -> None:
    assert printed(row["printed"]) == cover_ratio(float(row["projection_ft"]) * FOOT, float(row["height_ft"]) * FOOT)
