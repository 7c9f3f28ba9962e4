"""Driving rain on a face: the reduced table against hour-by-hour sums, worked examples, and laws."""

from __future__ import annotations

import math

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from speclint.exposure.courses import Courses, courses
from speclint.exposure.cover import Edge, slant_passed
from speclint.exposure.face import Face, Lean
from speclint.exposure.rain_rays import LevelRain, RainSector, level_sectors, rain_sectors
from speclint.exposure.strike import falling_at, free_by_year, front, rain_at
from speclint.science.driving_rain import hourly_driving_rain, terrain_roughness
from speclint.science.raindrops import share_past_edge
from speclint.tables.rain_record import Cell, Hour, reduced
from tests.tables.hourly_hours import rain_hours

REDUCTION_ERROR = 0.008
"""Greatest difference found between the share from the reduced table of one year and that of its hours. [-]"""
OPEN_FIELD = (1.0, 1.0, 1.0)
CALM = 1.0


def hour_by_hour(hours: list[Hour], azimuth: float, edges: list[Edge], wind: float) -> float:
    """Share that passes the edges, summed over the hours themselves."""
    driven = struck = 0.0
    for hour in hours:
        if not hour.rain or not hour.speed or hour.direction is None or (hour.temperature or 0) < 0:
            continue
        free = hourly_driving_rain(hour.speed, hour.rain, hour.direction - azimuth)
        if free <= 0:
            continue
        turn = math.radians(hour.direction - azimuth)
        slant = slant_passed(edges, math.cos(turn), math.sin(turn))
        driven += free
        struck += free * (share_past_edge(hour.speed * wind * slant, hour.rain) if slant < math.inf else 1.0)
    return struck / driven


@pytest.mark.parametrize("station", ["BOS-2018", "EUG-2017", "APA-2019", "ABQ-2018", "SDF-2018"])
def test_the_reduced_table_gives_the_share_of_the_hours(station: str) -> None:
    hours = list(rain_hours(station, warm_only=True))
    sectors = rain_sectors(reduced(hours)[1])
    worst = 0.0
    for azimuth in (0.0, 70.0, 160.0, 250.0):
        before = front(sectors, azimuth)
        for reach in (0.3, 0.9, 3.0):
            for drop in (0.2, 0.6, 1.5, 4.0):
                for end in (math.inf, 3.0):
                    edges = [Edge(reach, drop, end, end)]
                    found = rain_at(before, edges, 0.8).share
                    worst = max(worst, abs(found - hour_by_hour(hours, azimuth, edges, 0.8)))
    assert 0 < worst < REDUCTION_ERROR


SEVEN = [
    (5, 180, 1.0), (8, 200, 2.5), (3, 150, 0.4), (10, 225, 6.0), (6, 270, 3.0), (4, 90, 2.0), (7, 180, 0.0),
]  # fmt: skip


def test_the_seven_hours_of_the_worked_example() -> None:
    """Worked by hand in the reference: wall to the south, suburb, eave at 5 m, reach 0.75 m. [computed]"""
    roughness = round(terrain_roughness("III", 5.0), 4)
    hours = [Hour(2024, float(d), float(v), r, 10.0, None) for v, d, r in SEVEN]
    cells = []  # one an hour, so that nothing is averaged: 225 degrees stays between two tens
    for hour in hours:
        speed, rain = hour.speed or 0.0, hour.rain or 0.0
        if rain > 0:
            driven = (hourly_driving_rain(speed, rain, 0.0),)
            cells.append(Cell(int(hour.direction or 0), speed, rain, 1.0, rain, driven))
    sectors = rain_sectors(cells)
    assert 12.8651 == pytest.approx(free_by_year(sectors, 180.0)[0], abs=1e-4)
    assert 9.2937 == pytest.approx(free_by_year(sectors, 180.0)[0] * roughness, abs=1e-4)
    before = front(sectors, 180.0)
    for low, expected in ((0.0, 9.2937), (1.0, 9.2937), (2.0, 9.2851), (3.0, 8.9185), (4.0, 2.2554)):
        shares = [rain_at(before, [Edge(0.75, 5.0 - low - (at + 0.5) / 200)], roughness).share for at in range(200)]
        assert expected == pytest.approx(9.2937 * sum(shares) / 200, abs=0.02)


def some_sectors() -> tuple[RainSector, ...]:
    return rain_sectors(reduced(rain_hours("BOS-2018", warm_only=True))[1])


SECTORS = some_sectors()
AZIMUTHS = st.floats(0.0, 359.0)
LENGTHS = st.floats(0.1, 8.0)


@given(AZIMUTHS, LENGTHS, LENGTHS, LENGTHS)
def test_the_share_falls_as_the_eave_deepens(azimuth: float, reach: float, more: float, drop: float) -> None:
    before = front(SECTORS, azimuth)
    narrow = rain_at(before, [Edge(reach, drop)], CALM).share
    assert rain_at(before, [Edge(reach + more, drop)], CALM).share <= narrow + 1e-12


@given(AZIMUTHS, LENGTHS, LENGTHS, LENGTHS)
def test_the_share_rises_down_the_wall(azimuth: float, reach: float, drop: float, more: float) -> None:
    before = front(SECTORS, azimuth)
    high = rain_at(before, [Edge(reach, drop)], CALM).share
    assert high <= rain_at(before, [Edge(reach, drop + more)], CALM).share + 1e-12


@given(AZIMUTHS, LENGTHS, LENGTHS, st.floats(0.4, 1.0))
def test_less_wind_brings_less_in_under_the_eave(azimuth: float, reach: float, drop: float, wind: float) -> None:
    before, edges = front(SECTORS, azimuth), [Edge(reach, drop)]
    low, middle, high = (rain_at(before, edges, by).share for by in (wind, 1.0, 1 / wind))
    assert low <= middle + 1e-12 <= high + 2e-12


def test_without_an_overhang_all_of_it_strikes() -> None:
    face = Face(40.0, 10.0, 3.0, 3.0, 0.0)
    assert all(1.0 == pytest.approx(row.rain) for row in courses(face, 0.3, SECTORS, OPEN_FIELD))


def test_heavier_rain_is_kept_off_better() -> None:
    def share(rate: float) -> float:
        cell = Cell(180, 5.0, rate, 1.0, rate, (1.0,))
        return rain_at(front(rain_sectors([cell]), 180.0), [Edge(0.9, 1.0)], CALM).share

    found = [share(rate) for rate in (0.5, 1.0, 2.0, 5.0, 10.0)]
    assert sorted(found, reverse=True) == found
    assert found[0] > found[-1] + 0.1


@settings(max_examples=25)
@given(st.integers(0, 35), st.integers(0, 35))
def test_turning_house_and_weather_together_changes_nothing(turn: int, azimuth: int) -> None:
    cells = reduced(rain_hours("EUG-2017", warm_only=True))[1]
    turned = [Cell((c.direction + 10 * turn) % 360, c.speed, c.rate, c.hours, c.rain, c.driven) for c in cells]
    edges = [Edge(0.6, 1.2, 2.0, 4.0)]
    one = rain_at(front(rain_sectors(cells), 10.0 * azimuth), edges, CALM)
    two = rain_at(front(rain_sectors(turned), 10.0 * (azimuth + turn)), edges, CALM)
    assert one.share == pytest.approx(two.share, abs=1e-9)


def test_a_mirrored_wall_in_mirrored_weather_is_struck_the_same() -> None:
    cells = reduced(rain_hours("APA-2019", warm_only=True))[1]
    mirrored = [Cell((-c.direction) % 360, c.speed, c.rate, c.hours, c.rain, c.driven) for c in cells]
    lean = Lean(1.0, 5.0, 2.4, 2.1, 2.6)
    face = Face(60.0, 12.0, 3.0, 3.0, 0.5, leans=(lean,))
    other = Face(-60.0, 12.0, 3.0, 3.0, 0.5, leans=(Lean(7.0, 11.0, 2.4, 2.1, 2.6),))
    ones, others = (
        courses(face, 0.3, rain_sectors(cells), OPEN_FIELD),
        courses(other, 0.3, rain_sectors(mirrored), OPEN_FIELD),
    )
    assert [row.rain for row in ones] == pytest.approx([row.rain for row in others], abs=1e-9)


def test_a_porch_shelters_what_it_covers_and_not_the_rest() -> None:
    open_face = Face(60.0, 12.0, 3.0, 3.0, 0.3)
    porch = Face(60.0, 12.0, 3.0, 3.0, 0.3, leans=(Lean(0.0, 6.0, 3.0, 2.1, 2.6),))
    before = front(SECTORS, 60.0)
    for along, covered in ((3.0, True), (9.0, False)):
        bare = rain_at(before, open_face.edges(along, 0.5), CALM).share
        under = rain_at(before, porch.edges(along, 0.5), CALM).share
        assert (under < bare - 0.2) is covered


def test_the_middle_of_a_gable_is_farther_below_its_rake() -> None:
    face = Face(60.0, 9.0, 2.7, 6.3, 0.3)
    before = front(SECTORS, 60.0)
    side, middle = (rain_at(before, face.edges(along, 2.4), CALM).share for along in (0.2, 4.5))
    assert side < middle


def test_an_upper_storey_shelters_the_wall_below_it_and_comes_out_from_under_the_eave() -> None:
    plain, stepped = Face(60.0, 9.0, 5.4, 5.4, 0.6), Face(60.0, 9.0, 5.4, 5.4, 0.6, storey_out=0.5, storey_at=2.7)
    before = front(SECTORS, 60.0)
    for height, better in ((2.4, True), (5.0, False)):
        one = rain_at(before, plain.edges(4.5, height), CALM).share
        two = rain_at(before, stepped.edges(4.5, height), CALM).share
        assert (two < one) is better


def test_the_mean_of_a_wall_is_by_area() -> None:
    rows = courses(Face(60.0, 9.0, 2.7, 6.3, 0.3), 0.3, SECTORS, OPEN_FIELD)
    area = sum(row.area for row in rows)
    assert 9.0 * 2.7 + 9.0 * 3.6 / 2 == pytest.approx(area, rel=1e-3)
    assert Courses(rows).mean("rain") == pytest.approx(sum(row.rain * row.area for row in rows) / area)


def test_level_faces_under_an_edge_take_a_part_and_open_ones_all() -> None:
    cells = reduced(rain_hours("BOS-2018", warm_only=True))[1]
    rain = LevelRain(level_sectors(cells), 0.0)
    assert 1.0 == falling_at(rain, 60.0, [], 1.0)
    calmer = LevelRain(rain.sectors, 100.0)
    under = [Edge(0.5, 3.0)]
    assert falling_at(calmer, 60.0, under, 1.0) < falling_at(rain, 60.0, under, 1.0)
    found = [falling_at(rain, 60.0, [Edge(inside, 3.0)], 1.0) for inside in (0.1, 0.5, 1.5, 4.0)]
    assert sorted(found, reverse=True) == found
    assert 0 < found[-1] < found[0] < 1
