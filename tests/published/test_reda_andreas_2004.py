"""The worked example of the solar position algorithm: 17 October 2003, 12:30:30, seven hours behind universal time."""

from __future__ import annotations

import math

import pytest

from speclint.science.sun import days_since_2000, refraction, sun_position
from speclint.science.sun_on_walls import incidence_cosine
from tests.published.printed_rows import cases

CLOSE = 0.02
"""Ours is the short form of an almanac; the printed digits are those of a full ephemeris. [deg]"""


@pytest.mark.published("reda-andreas-2004", "Table A5.1")
@pytest.mark.parametrize("row", cases("reda-andreas-2004_table-a5.1"))
def test_the_sun_stands_where_the_example_puts_it(row: dict[str, str]) -> None:
    days = days_since_2000(2003, 290, 19 + 30.5 / 60)
    geometric, azimuth = sun_position(days, 39.742476, -105.1786)
    altitude = geometric + refraction(geometric, 82000, 11)
    upright = incidence_cosine(altitude, azimuth, 180 - 10)
    tilted = math.sin(math.radians(altitude)) * math.cos(math.radians(30)) + upright * math.sin(math.radians(30))
    computed = {"zenith": 90 - altitude, "azimuth": azimuth, "incidence": math.degrees(math.acos(tilted))}
    assert float(row["printed"]) == pytest.approx(computed[row["asked"]], abs=CLOSE)
