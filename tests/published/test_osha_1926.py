"""Rules for ladders and scaffolds on building sites, as quoted."""

from __future__ import annotations

import pytest

from speclint.science.access import ladder_foot, ladder_tilt, scaffold_needs_fall_protection
from tests.published.convert import FOOT
from tests.published.printed import printed
from tests.published.printed_rows import cases


@pytest.mark.published("osha-1926", "1926.1053(b)(5)(i)")
@pytest.mark.parametrize("row", cases("osha-1926_ladder"))
def test_a_ladder_leans_one_in_four(row: dict[str, str]) -> None:
    foot = ladder_foot(float(row["length_ft"]) * FOOT) / FOOT
    assert printed(row["printed"]) == (foot if row["asked"] == "foot" else ladder_tilt())


@pytest.mark.published("osha-1926", "1926.451(g)(1)")
@pytest.mark.parametrize("row", cases("osha-1926_scaffold"))
def test_a_scaffold_above_ten_feet_needs_protection_from_falls(row: dict[str, str]) -> None:
    needed = scaffold_needs_fall_protection(float(row["height_ft"]) * FOOT)
    assert row["printed"] == ("needed" if needed else "not needed")
