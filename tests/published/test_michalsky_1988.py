"""The short form of the almanac keeps to its stated error."""

from __future__ import annotations

import math

import pytest

from speclint.science.sun import days_since_2000, refraction, sun_position
from tests.published.printed_rows import cases, rows


@pytest.mark.published("michalsky-1988", "stated error")
@pytest.mark.parametrize("row", cases("michalsky-1988_error"))
def test_the_worked_example_of_a_full_ephemeris_is_met_within_the_stated_error(row: dict[str, str]) -> None:
    full = {example["asked"]: float(example["printed"]) for example in rows("reda-andreas-2004_table-a5.1")}
    geometric, azimuth = sun_position(days_since_2000(2003, 290, 19 + 30.5 / 60), 39.742476, -105.1786)
    zenith = 90 - geometric - refraction(geometric, 82000, 11)
    across = (azimuth - full["azimuth"]) * math.sin(math.radians(zenith))
    assert float(row["printed"]) >= math.hypot(zenith - full["zenith"], across)
