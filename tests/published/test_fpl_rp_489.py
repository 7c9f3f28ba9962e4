"""Shrinkage of lumber with moisture content, 1989: one line for each face of a sawn piece."""

from __future__ import annotations

import pytest

from speclint.science.movement import lumber_shrinkage
from tests.published.printed import printed
from tests.published.printed_rows import cases

Row = dict[str, str]


@pytest.mark.published("fpl-rp-489", "shrinkage of lumber with moisture content")
@pytest.mark.parametrize("row", cases("fpl-rp-489_lumber"))
def test_a_face_of_lumber_has_shrunk_by_the_printed_percent(row: Row) -> None:
    assert printed(row["printed"]) == lumber_shrinkage(row["face"], float(row["moisture"]))


@pytest.mark.published("fpl-rp-489", "shrinkage of lumber with moisture content")
@pytest.mark.parametrize("row", cases("fpl-rp-489_joist"))
def test_a_joist_dries_to_the_printed_depth(row: Row) -> None:
    left = [1 - lumber_shrinkage("width", float(row[when])) / 100 for when in ("before", "after")]
    assert printed(row["printed"]) == float(row["depth_in"]) * left[1] / left[0]


@pytest.mark.published("fpl-rp-489", "shrinkage of lumber with moisture content")
def test_four_percent_of_moisture_is_about_one_percent_of_width() -> None:
    assert printed("1") == lumber_shrinkage("width", 10) - lumber_shrinkage("width", 14)
