"""Dwelling code, 2024: footings."""

from __future__ import annotations

import pytest

from speclint.science.deck import footing_area
from tests.published.convert import POUND, PSF, SQUARE_INCH
from tests.published.printed import printed
from tests.published.printed_rows import cases


@pytest.mark.published("irc-2024", "R403.1.1")
@pytest.mark.parametrize("row", cases("irc-2024_r403.1.1"))
def test_a_footing_has_the_printed_area(row: dict[str, str]) -> None:
    area = footing_area(float(row["load_lb"]) * POUND, float(row["soil_psf"]) * PSF)
    assert printed(row["printed"]) == area / SQUARE_INCH
