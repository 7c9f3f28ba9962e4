"""Dwelling code, 2018: guards and stairs."""

from __future__ import annotations

from collections.abc import Callable

import pytest

from speclint.science import guards
from tests.published.convert import INCH, POUND
from tests.published.printed import printed
from tests.published.printed_rows import cases

NEEDS: dict[str, Callable[[], float]] = {
    "guard height": guards.guard_height_need,
    "stair guard height": guards.stair_guard_height_need,
    "opening": guards.guard_opening_limit,
    "stair opening": guards.stair_guard_opening_limit,
    "triangle": guards.stair_triangle_opening_limit,
    "load": guards.guard_load_need,
    "riser": guards.stair_riser_limit,
    "tread": guards.stair_tread_need,
}


@pytest.mark.published("irc-2018", "R311.7, R312, Table R301.5")
@pytest.mark.parametrize(
    "row", [case for case in cases("irc-2018_r312") if case.id != "guard over a drop above, inches"]
)
def test_guards_and_stairs_have_the_printed_sizes(row: dict[str, str]) -> None:
    unit = POUND if row["asked"] == "load" else INCH
    assert printed(row["printed"]) == NEEDS[row["asked"]]() / unit


@pytest.mark.published("irc-2018", "R312.1.1")
def test_a_guard_is_needed_just_above_the_printed_drop() -> None:
    (drop,) = [case.values[0]["printed"] for case in cases("irc-2018_r312") if case.values[0]["asked"] == "drop"]
    limit = float(drop) * INCH
    assert [guards.guard_required(limit), guards.guard_required(limit + 0.001)] == [False, True]
