"""Timber code: stability of posts, by a worked example of the federal design guide."""

from __future__ import annotations

import pytest

from speclint.science.deck import column_stability_factor, post_height_limit
from tests.published.convert import FOOT, INCH, POUND, PSI
from tests.published.printed import printed
from tests.published.printed_rows import cases

# spruce-pine-fir No. 2, 4x4, dry: strength along the grain times the factor for the size; modulus for stability
STRENGTH = 1150 * 1.15 * PSI
STABILITY = 510e3 * PSI
SIDE = 3.5 * INCH


@pytest.mark.published("awc-nds-2018", "3.7.1")
@pytest.mark.parametrize("row", cases("awc-nds-2018_3.7.1"))
def test_the_worked_post_comes_out_as_printed(row: dict[str, str]) -> None:
    factor = column_stability_factor(7.3 * FOOT, SIDE, STRENGTH, STABILITY)
    stress = 4800 * POUND / SIDE**2
    computed = {
        "factor": factor,
        "strength": factor * STRENGTH / PSI,
        "ratio": stress / (factor * STRENGTH),
    }
    assert printed(row["printed"]) == computed[row["asked"]]


@pytest.mark.published("awc-nds-2018", "3.7.1 solved for the length")
def test_the_tallest_post_is_used_to_the_full_by_its_load() -> None:
    load = 5000 * POUND
    height = post_height_limit(load, SIDE, SIDE, STRENGTH, STABILITY)
    factor = column_stability_factor(height, SIDE, 0.8 * STRENGTH, 0.9 * STABILITY)
    assert load == pytest.approx(factor * 0.8 * STRENGTH * SIDE**2)
