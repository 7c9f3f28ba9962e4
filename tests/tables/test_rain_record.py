"""Reduced records: the sums of the hours, found by name and place, and how well the fall-backs do."""

from __future__ import annotations

import math

import pytest

from speclint.exposure.climates import SPREADS
from speclint.exposure.made_rain import made_cells, mean_direction, shares_by_ten, turned
from speclint.exposure.rain_rays import rain_sectors
from speclint.exposure.strike import free_by_year
from speclint.science.driving_rain import hourly_driving_rain, mean_wall_driving_rain
from speclint.tables.rain import rain_roses
from speclint.tables.rain_record import (
    Hour,
    find_record,
    nearest_directions,
    record_titles,
    reduced,
    sure_directions,
)
from speclint.tables.rows import UnknownRow
from speclint.tables.stations import ground_distance
from tests.tables.hourly_hours import STATIONS, printed_walls, rain_hours


@pytest.mark.parametrize("station", STATIONS)
def test_the_sixteen_sums_are_those_of_the_rain_rose(station: str) -> None:
    _, cells, _ = reduced(rain_hours(station, warm_only=False))
    sectors = rain_sectors(cells)
    found = [free_by_year(sectors, point * 22.5)[0] for point in range(16)]
    assert printed_walls(station) == pytest.approx(found, rel=0.005, abs=0.15)


@pytest.mark.parametrize("station", STATIONS)
def test_the_free_sum_of_the_reduced_table_is_that_of_the_hours(station: str) -> None:
    hours = list(rain_hours(station, warm_only=True))
    _, cells, _ = reduced(hours)
    sectors = rain_sectors(cells)
    for azimuth in (0.0, 77.0, 200.0):
        whole = sum(
            hourly_driving_rain(hour.speed, hour.rain, hour.direction - azimuth)
            for hour in hours
            if hour.rain and hour.speed and hour.direction is not None and not (hour.temperature or 0) < 0
        )
        assert whole == pytest.approx(free_by_year(sectors, azimuth)[0], rel=1e-9)


def test_doubling_the_hours_doubles_the_sums() -> None:
    hours = list(rain_hours("EUG-2017", warm_only=True))
    once, twice = (rain_sectors(reduced(hours * times)[1]) for times in (1, 2))
    assert [2 * free_by_year(once, 30.0)[0]] == pytest.approx([free_by_year(twice, 30.0)[0]])


def test_a_wall_less_its_opposite_is_the_vector_of_the_rose() -> None:
    _, cells, _ = reduced(rain_hours("BOS-2018", warm_only=True))
    sectors = rain_sectors(cells)
    driven = [0.0] * 36
    for sector in sectors:
        driven[round(sector.azimuth / 10) % 36] += sector.driven[0]
    direction, steadiness = mean_direction(driven)
    for azimuth in range(0, 360, 30):
        difference = free_by_year(sectors, azimuth)[0] - free_by_year(sectors, azimuth + 180)[0]
        vector = sum(driven) * steadiness * math.cos(math.radians(direction - azimuth))
        assert difference == pytest.approx(vector, abs=1e-6)


def test_the_mean_of_all_walls_is_the_whole_over_pi() -> None:
    _, cells, _ = reduced(rain_hours("APA-2019", warm_only=True))
    sectors = rain_sectors(cells)
    whole = sum(sector.driven[0] for sector in sectors)
    walls = [free_by_year(sectors, azimuth)[0] for azimuth in range(360)]
    assert sum(walls) / 360 == pytest.approx(whole / math.pi, rel=1e-3)


def test_hours_that_cannot_count_are_accounted_for() -> None:
    hours = [
        Hour(2024, 90.0, 5.0, 1.0, 10.0, 90.0),
        Hour(2024, 90.0, 5.0, 2.0, -1.0, 90.0),
        Hour(2024, 0.0, 0.0, 4.0, 10.0, 50.0),
        Hour(2024, None, 5.0, 8.0, 10.0, None),
        Hour(2024, 90.0, None, 16.0, 10.0, 95.0),
        Hour(2024, 90.0, 5.0, None, 10.0, 95.0),
    ]
    (account,), cells, wind = reduced(hours)
    assert (4, 15.0, 2.0, 4.0, 8.0) == (
        account.hours, account.rain, account.freezing, account.calm, account.no_direction,
    )  # fmt: skip
    assert (3, 5) == (account.damp, account.damp_known)
    assert [1.0] == [cell.rain for cell in cells]
    assert wind == pytest.approx(4.0)


def test_every_record_is_found_by_its_name() -> None:
    assert 64 == len(record_titles())
    for title in record_titles():
        record = find_record(title)
        assert record.title == title
        assert record.cells
        assert len(record.cells[0].driven) == len(record.accounts)


def test_192_station_years_are_held() -> None:
    assert 192 == sum(len(find_record(title).accounts) for title in record_titles())


def test_an_unknown_record_offers_the_nearest_names() -> None:
    with pytest.raises(UnknownRow) as caught:
        find_record("Bostn, MA")
    assert "Boston, MA" in caught.value.nearest


def test_the_nearest_directions_are_those_of_the_nearest_sure_records() -> None:
    (nearest, away), (_, farther) = nearest_directions(42.4, -71.0, 2)
    assert "Boston, MA" == nearest.title
    assert 0 < away < 10 < farther
    beside_a_doubtful_one = nearest_directions(41.3, -122.3, 1)[0][0]
    assert "Mount Shasta, CA" != beside_a_doubtful_one.title


def test_the_records_and_the_roses_tell_of_the_same_rain() -> None:
    roses = {(rose.name, rose.state): rose for rose in rain_roses()}
    for title in record_titles():
        record = find_record(title)
        rose = roses.get((record.name, record.state))
        if rose is None:  # the two field masts stand in no rose
            assert record.name.startswith("Whately")
            continue
        rain = sum(account.rain for account in record.accounts) / len(record.accounts)
        assert rain == pytest.approx(rose.rain, rel=0.06)


def _walls(shares: list[float] | tuple[float, ...]) -> list[float]:
    """Driving rain on sixteen walls over their mean."""
    walls = [
        sum(share * max(0.0, math.cos(math.radians(at * 10 - point * 22.5))) for at, share in enumerate(shares))
        for point in range(16)
    ]
    return [wall / (sum(walls) / 16) for wall in walls]


def _eight_of_ten(ratios: list[float]) -> tuple[float, float]:
    ordered = sorted(ratios)

    def at(share: float) -> float:
        place = share * (len(ordered) - 1)
        low = int(place)
        return ordered[low] + (ordered[min(low + 1, len(ordered) - 1)] - ordered[low]) * (place - low)

    return at(0.1), at(0.9)


def test_the_spreads_are_those_of_leaving_each_record_out() -> None:
    sure = sure_directions()
    assert 59 == len(sure)
    ratios: dict[str, list[float]] = {name: [] for name in ("nearest records", "stated direction", "no direction")}
    for one in sure:
        true = _walls(one.shares)
        others = [
            (other, away) for other, away in nearest_directions(one.latitude, one.longitude, 99) if other is not one
        ]
        three = [sum(other.shares[at] for other, _ in others[:3]) / 3 for at in range(36)]
        ratios["nearest records"] += [a / b for a, b in zip(true, _walls(three), strict=True)]
        direction, _ = mean_direction(one.shares)
        shape = [0.0] * 36
        for other, _ in others:
            its, steadiness = mean_direction(other.shares)
            if steadiness >= 0.3:
                shape = [a + b for a, b in zip(shape, turned(other.shares, direction - its), strict=True)]
        ratios["stated direction"] += [a / b for a, b in zip(true, _walls(shape), strict=True)]
        ratios["no direction"] += true
    for name, found in ratios.items():
        assert SPREADS[name] == pytest.approx(_eight_of_ten(found), abs=0.01), name


def _amounts(title: str) -> list[tuple[float, ...]]:
    """Driving rain on sixteen walls in each year. [L/m2]"""
    sectors = rain_sectors(find_record(title).cells)
    return [free_by_year(sectors, point * 22.5) for point in range(16)]


def test_the_spread_of_a_record_nearby_is_that_of_near_pairs() -> None:
    sure = sure_directions()
    walls = {one.title: [sum(years) / len(years) for years in _amounts(one.title)] for one in sure}
    ratios = [
        a / b
        for one in sure
        for other in sure
        if one is not other and ground_distance(one.latitude, one.longitude, other.latitude, other.longitude) < 150
        for a, b in zip(walls[one.title], walls[other.title], strict=True)
    ]
    assert 36 * 16 == len(ratios)
    assert SPREADS["record nearby"] == pytest.approx(_eight_of_ten(ratios), abs=0.01)


def test_the_spread_of_one_year_is_that_of_the_years_of_each_record() -> None:
    ratios = [
        amount / (sum(years) / len(years))
        for one in sure_directions()
        for years in _amounts(one.title)
        if len(years) >= 3
        for amount in years
    ]
    assert SPREADS["one year"] == pytest.approx(_eight_of_ten(ratios), abs=0.01)


def test_the_spread_of_the_amount_is_that_of_the_roses() -> None:
    ratios = [
        sum(rose.walls) / 16 / mean_wall_driving_rain(rose.rain, rose.mean_wind)
        for rose in rain_roses()
        if not rose.doubt
    ]
    low, high = _eight_of_ten(ratios)
    assert SPREADS["amount from means"] == pytest.approx((low, high), abs=0.01)
    assert 59 == len(ratios)


def test_a_made_table_holds_the_amount_and_the_directions_asked_for() -> None:
    cells = made_cells(shares_by_ten([(225.0, 100.0)]), 1000.0, 4.0)
    sectors = rain_sectors(cells)
    walls = [free_by_year(sectors, azimuth)[0] for azimuth in range(360)]
    assert sum(walls) / 360 == pytest.approx(mean_wall_driving_rain(1000.0, 4.0), rel=1e-3)
    assert 225 == pytest.approx(walls.index(max(walls)), abs=5)
    assert 1000.0 == pytest.approx(sum(cell.rain for cell in cells))


def test_turning_the_shares_turns_their_mean() -> None:
    shares = sure_directions()[0].shares
    direction, steadiness = mean_direction(shares)
    turned_direction, turned_steadiness = mean_direction(turned(shares, 40.0))
    assert turned_direction == pytest.approx((direction + 40) % 360, abs=1e-6)
    assert turned_steadiness == pytest.approx(steadiness)


def test_records_stand_where_their_roses_do() -> None:
    boston = find_record("Boston, MA")
    rose = next(rose for rose in rain_roses() if rose.name == "Boston")
    assert ground_distance(boston.latitude or 0, boston.longitude or 0, rose.latitude, rose.longitude) < 1
