"""Sun on a face: the running sums against hour-by-hour sums, the shading of the reference, and laws."""

from __future__ import annotations

import math

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from speclint.exposure.cover import Edge, slant_passed
from speclint.exposure.strike import Skyline, Sunned, sun_at, sun_before
from speclint.exposure.sun_climate import sun_climate
from speclint.exposure.sun_rays import SunHour, SunYear, sun_year
from speclint.science.sky import clear_sky
from speclint.science.sun import year_of_sun

CLEAR = (1.0,) * 12


def hours(latitude: float) -> list[SunHour]:
    found = []
    for sample in year_of_sun(latitude, 36, 10.0):
        beam, diffuse = clear_sky(sample.altitude, sample.day)
        found.append(SunHour(sample.altitude, sample.azimuth, sample.hours, beam, diffuse, 0.0, 0.0))
    return found


def sunned(year: SunYear, azimuth: float, edges: list[Edge], skyline: Skyline | None = None) -> Sunned:
    """Sun on a place over grass."""
    return sun_at(sun_before(year, azimuth, skyline), edges, 0.2, 0.04)


HOURS = hours(46.0)
YEAR = sun_year(HOURS)


def hour_by_hour(azimuth: float, edges: list[Edge]) -> float:
    """Beam on the place, summed over the hours themselves. [kWh/m2]"""
    beam = 0.0
    for hour in HOURS:
        turn = math.radians(hour.azimuth - azimuth)
        height = math.radians(hour.altitude)
        lit = math.tan(height) <= slant_passed(edges, math.cos(turn), math.sin(turn)) if math.cos(turn) > 0 else False
        beam += hour.beam * math.cos(height) * math.cos(turn) * hour.hours / 1000 if lit else 0.0
    return beam


@pytest.mark.parametrize("azimuth", [0.0, 90.0, 135.0, 180.0, 250.0])
@pytest.mark.parametrize("edge", [None, Edge(0.9, 0.5), Edge(0.9, 1.0), Edge(0.9, 2.5), Edge(3.0, 2.0, 1.0, 4.0)])
def test_the_running_sums_are_those_of_the_hours(azimuth: float, edge: Edge | None) -> None:
    edges = [edge] if edge else []
    whole = hour_by_hour(azimuth, [])
    assert abs(hour_by_hour(azimuth, edges) - sunned(YEAR, azimuth, edges).beam) < 0.015 * whole + 3.0


# reach 0.9 m, latitude 46: share of the beam of a year that is shaded at a depth below the edge, on the south wall
SHADED = [(0.5, 0.6508), (1.0, 0.3595), (1.5, 0.2156), (2.0, 0.1204), (2.5, 0.0425), (3.0, 0.0223)]


@pytest.mark.parametrize(("drop", "shaded"), SHADED)
def test_the_eave_shades_the_share_of_the_reference(drop: float, shaded: float) -> None:
    """The reference computed it with another program and another model of the clear sky."""
    bare = sunned(YEAR, 180.0, []).beam
    assert shaded == pytest.approx(1 - sunned(YEAR, 180.0, [Edge(0.9, drop)]).beam / bare, abs=0.02)


@settings(max_examples=40)
@given(st.floats(0, 359), st.floats(0.1, 4.0), st.floats(0.1, 3.0), st.floats(0.1, 8.0))
def test_a_wider_edge_lets_less_sun_in(azimuth: float, reach: float, more: float, drop: float) -> None:
    narrow, wide = (sunned(YEAR, azimuth, [Edge(r, drop)]) for r in (reach, reach + more))
    assert wide.total <= narrow.total + 1e-9
    assert wide.beam <= narrow.beam + 1e-9


@settings(max_examples=40)
@given(st.floats(1, 179), st.floats(0.2, 3.0), st.floats(0.2, 5.0), st.floats(0.5, 9.0), st.floats(0.5, 9.0))
def test_east_and_west_mirror(turn: float, reach: float, drop: float, left: float, right: float) -> None:
    east = sunned(YEAR, turn, [Edge(reach, drop, left, right)])
    west = sunned(YEAR, 360 - turn, [Edge(reach, drop, right, left)])
    assert east.total == pytest.approx(west.total, rel=1e-3, abs=1.0)


def test_the_months_make_the_year() -> None:
    climate = sun_climate("clear", 46.0, CLEAR)
    months = [sunned(climate.month(number), 170.0, [Edge(0.6, 1.0)]).total for number in range(1, 13)]
    assert sum(months) == pytest.approx(sunned(climate.year, 170.0, [Edge(0.6, 1.0)]).total, rel=0.01)
    assert max(months) > 1.5 * min(months)


def test_clouds_dim_the_sun_and_leave_more_of_it_to_the_sky() -> None:
    clear, cloudy = (sun_climate("x", 46.0, (share,) * 12) for share in (1.0, 0.4))
    ratio = {
        azimuth: sunned(cloudy.year, azimuth, []).total / sunned(clear.year, azimuth, []).total
        for azimuth in (0.0, 180.0)
    }
    assert ratio[180.0] < ratio[0.0]
    assert cloudy.year.level < clear.year.level


def test_south_of_the_equator_the_noon_sun_is_in_the_north() -> None:
    south = sun_climate("x", -46.0, CLEAR)
    assert 0.0 == south.noon
    assert sunned(south.year, 0.0, []).total > 2 * sunned(south.year, 180.0, []).total


def test_a_skyline_hides_the_low_sun() -> None:
    bare = sunned(YEAR, 90.0, [])
    hidden = sunned(YEAR, 90.0, [], lambda azimuth: 20.0)
    wall = sunned(YEAR, 90.0, [], lambda azimuth: 89.0)
    assert 0.2 * bare.beam < hidden.beam < 0.95 * bare.beam
    assert wall.beam == pytest.approx(0.0, abs=0.5)
