"""Fall speeds of drops of water."""

from __future__ import annotations

import pytest

from speclint.science.raindrops import diameter_falling_at, fall_speed
from tests.published.printed import printed
from tests.published.printed_rows import cases

Row = dict[str, str]


@pytest.mark.published("gunn-kinzer-1949", "Table 2")
@pytest.mark.parametrize("row", cases("gunn-kinzer-1949_table-2"))
def test_a_drop_falls_as_fast_as_printed(row: Row) -> None:
    assert printed(row["printed"]) == fall_speed(float(row["diameter_mm"]))


@pytest.mark.published("gunn-kinzer-1949", "Table 2, read from speed to diameter")
@pytest.mark.parametrize("row", cases("gunn-kinzer-1949_table-2")[:-1])
def test_a_printed_speed_leads_back_to_its_drop(row: Row) -> None:
    assert printed(row["diameter_mm"]) == diameter_falling_at(float(row["printed"]))
