"""The distance of the sun over the year, as a series; its terms are found again from the days of a year."""

from __future__ import annotations

import math

import pytest

from speclint.science.sky import extraterrestrial_normal
from tests.published.printed import printed
from tests.published.printed_rows import cases


@pytest.mark.published("spencer-1971", "series for the distance of the sun")
@pytest.mark.parametrize("row", cases("spencer-1971_series"))
def test_the_series_has_the_printed_terms(row: dict[str, str]) -> None:
    year = [(2 * math.pi * day / 365, extraterrestrial_normal(day + 1, 1.0)) for day in range(365)]
    wave, _, times = row["asked"].partition(" ")
    curve = {"mean": lambda turn: 0.5, "cosine": math.cos, "sine": math.sin}[wave]
    assert printed(row["printed"]) == sum(2 * curve(turn * int(times or 1)) * value for turn, value in year) / 365
