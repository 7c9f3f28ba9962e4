"""Copper handbook: factors for pitch, and a worked gutter."""

from __future__ import annotations

import pytest

from speclint.science.roof_water import leader_capacity, level_rectangular_width, pitch_factor
from tests.published.convert import FOOT, INCH, INCH_AN_HOUR, SQUARE_FOOT, SQUARE_FOOT_INCH_AN_HOUR
from tests.published.printed import printed
from tests.published.printed_rows import cases

Row = dict[str, str]


@pytest.mark.published("cda-copper", "Table 4.4.1")
@pytest.mark.parametrize("row", cases("cda-copper_table-4.4.1"))
def test_a_pitch_has_the_printed_factor(row: Row) -> None:
    assert printed(row["printed"]) == pitch_factor(float(row["pitch_in_12"]) / 12)


@pytest.mark.published("cda-copper", "Table 4.4.5")
@pytest.mark.parametrize("row", cases("cda-copper_table-4.4.5"))
def test_the_worked_gutter_comes_out_as_printed(row: Row) -> None:
    area = 1600 * pitch_factor(5 / 12)
    one_inch = leader_capacity(INCH, INCH) / SQUARE_FOOT_INCH_AN_HOUR / 9.3
    width = level_rectangular_width(1600 * SQUARE_FOOT, 9.3 * INCH_AN_HOUR, 40 * FOOT, 0.75)
    computed = {"area": area, "leader": area / one_inch, "leader rule": one_inch, "width": width / INCH}
    assert printed(row["printed"]) == computed[row["asked"]]
