"""What is promised of weather stations."""

from __future__ import annotations

from pathlib import Path

import pytest

from speclint.tables.rows import UnknownRow
from speclint.tables.station_names import place_key, station_key
from speclint.tables.stations import find_station, ground_distance, nearest_station, station_titles

# Decay index and the monthly means that it is worked out from, entered from the tables the stations were made from.
EXAMPLES = [
    line.split(",")
    for line in (Path(__file__).parent / "decay_examples.csv").read_text(encoding="utf-8").splitlines()[1:]
]


def test_all_stations_load_with_twelve_months_each() -> None:
    lengths = {
        (len(station.mean_temperature), len(station.precipitation), len(station.wet_days))
        for station in map(find_station, station_titles())
    }
    assert {(12, 12, 12)} == lengths


def test_no_station_was_lost_in_packing() -> None:
    assert 268 + 5344 == len(station_titles())


def test_every_station_has_a_name_of_its_own() -> None:
    assert len(station_titles()) == len({title.casefold() for title in station_titles()})


def test_every_station_is_found_by_its_own_title() -> None:
    assert [] == [title for title in station_titles() if title != find_station(title).title]


def test_every_station_has_credible_values() -> None:
    wrong = [
        station.title
        for station in map(find_station, station_titles())
        if not all(-40 < value < 45 for value in station.mean_temperature)
        or not all(0 <= value < 1500 for value in station.precipitation)
        or not all(0 <= value <= 31 for value in station.wet_days)
        or not all(0 < value <= 100 for value in station.humidity or (50.0,))
        or not all(0 < value < 25 for value in station.wind or (1.0,))
        or not all(value >= 0 for value in station.snowfall or (0.0,))
    ]
    assert [] == wrong


def test_larger_airports_have_humidity_and_wind() -> None:
    complete = [find_station(title) for title in station_titles()[:300]]
    assert 258 == sum(1 for station in complete if station.humidity and station.wind)


def test_there_are_examples_of_the_decay_index() -> None:
    assert 15 == len(EXAMPLES)


@pytest.mark.parametrize("example", EXAMPLES, ids=lambda example: example[0])
def test_the_inputs_of_the_decay_index_are_the_printed_ones(example: list[str]) -> None:
    station = find_station(f"{example[0]}, {example[1]}")
    printed = [float(cell) for cell in example[2:26]]
    fahrenheit = [round(value * 1.8 + 32, 1) for value in station.mean_temperature]
    assert printed == [*fahrenheit, *station.wet_days]


@pytest.mark.parametrize("example", EXAMPLES, ids=lambda example: example[0])
def test_the_decay_index_of_a_station_is_reproduced(example: list[str]) -> None:
    station = find_station(f"{example[0]}, {example[1]}")
    index = sum(
        max(0.0, value * 1.8 + 32 - 35) * max(0.0, days - 3) / 30
        for value, days in zip(station.mean_temperature, station.wet_days, strict=True)
    )
    assert float(example[26]) == pytest.approx(index, abs=0.0051)


def test_marquette_is_found() -> None:
    station = find_station("Marquette, MI")
    assert ("Marquette", "MI", "US", 46.5458, -87.3794, 202.7, "1981-2010") == (
        station.name,
        station.state,
        station.country,
        station.latitude,
        station.longitude,
        station.elevation,
        station.period,
    )


def test_values_are_kept_in_metric_units() -> None:
    station = find_station("Anchorage, AK")  # printed for January: 17.1 °F, 0.73 in, 6.3 mph, 11.3 in of snow, 74.5 %
    assert (-8.28, 18.5, 2.82, 287.0, 74.5) == (
        round(station.mean_temperature[0], 2),
        round(station.precipitation[0], 1),
        round((station.wind or (0.0,))[0], 2),
        round((station.snowfall or (0.0,))[0], 1),
        (station.humidity or (0.0,))[0],
    )


@pytest.mark.parametrize(
    ("asked", "found"),
    [
        ("marquette, mi", "Marquette, MI"),
        ("Marquette Airport, MI", "Marquette, MI"),
        ("Ft. Wayne, IN", "Fort Wayne, IN"),
        ("Fort Wayne", "Fort Wayne, IN"),
        ("Minneapolis, MN", "Minneapolis-St. Paul, MN"),
        ("Saint Paul, MN", "St Paul, MN"),
        ("Seattle Tacoma Intl AP, WA", "Seattle, WA"),
        ("New York, NY", "New York Central Park, NY"),
        ("Montreal, QC", "Montreal Trudeau Intl A, QC"),
        ("St. John's, NL", "St. John's Intl A, NL"),
        ("Hayward, WI", "Hayward RS, WI"),
        ("Key West", "Key West, FL"),
        ("Coeur d'Alene, ID", "Coeur D'Alene, ID"),
    ],
)
def test_a_station_is_found_as_people_write_it(asked: str, found: str) -> None:
    assert found == find_station(asked).title


def test_a_misspelled_name_gives_the_nearest_ones_of_its_state() -> None:
    with pytest.raises(UnknownRow) as missing:
        find_station("Marquete, MI")
    assert "Marquette, MI" == missing.value.nearest[0]


def test_a_name_that_begins_other_names_gives_those_and_takes_none_of_them() -> None:
    with pytest.raises(UnknownRow) as missing:
        find_station("Houghton, MI")
    assert ("Houghton Lake, MI", "Houghton Lake 6 WSW, MI") == missing.value.nearest


def test_a_name_that_several_states_have_is_not_guessed() -> None:
    with pytest.raises(UnknownRow) as missing:
        find_station("Portland")
    assert {"Portland, ME", "Portland, OR"} < set(missing.value.nearest)


@pytest.mark.parametrize("asked", ["", ",", ", MI", "Nowhere at all, ZZ"])
def test_an_empty_or_strange_name_is_unknown(asked: str) -> None:
    with pytest.raises(UnknownRow):
        find_station(asked)


def test_the_higher_of_two_stations_of_one_name_carries_its_elevation() -> None:
    assert 430.1 == find_station("Marquette at 430 m, MI").elevation


def test_a_degree_along_the_equator_is_a_360th_of_the_earth_round() -> None:
    assert 111.195 == round(ground_distance(0, 10, 0, 11), 3)  # 6371.0088 km x pi / 180


def test_the_way_over_the_pole_is_the_shortest() -> None:
    assert 6671.7 == round(ground_distance(60, 0, 60, 180), 1)  # 60 degrees: 60 x 111.195 km


def test_the_nearest_station_comes_with_its_distance_and_how_much_higher_it_stands() -> None:
    station, distance, higher = nearest_station(46.5458 + 0.1, -87.3794, 250.0)
    assert ("Marquette, MI", 11.12, -47.3) == (station.title, round(distance, 2), round(higher or 0.0, 1))


def test_without_the_elevation_of_the_site_no_difference_is_given() -> None:
    assert None is nearest_station(46.5, -87.4)[2]


def test_the_nearest_complete_station_has_humidity_and_wind() -> None:
    station, _, _ = nearest_station(46.5458, -87.3794, complete=True)
    assert (True, True) == (station.humidity is not None, station.wind is not None)


@pytest.mark.parametrize(("latitude", "longitude"), [(91, 0), (0, 181), (float("nan"), 0)])
def test_a_place_off_the_map_is_refused(latitude: float, longitude: float) -> None:
    with pytest.raises(ValueError, match="wanted a latitude within 90"):
        nearest_station(latitude, longitude)


@pytest.mark.parametrize(
    ("title", "key", "standing"),
    [
        ("Boston, MA", "noaa-normals-1981-2010", "published"),
        ("Calgary, AB", "eccc-climate", "second-hand"),
        ("Marquette, MI", "noaa-normals-1981-2010", "published"),
    ],
)
def test_a_station_says_where_it_comes_from(title: str, key: str, standing: str) -> None:
    citation = find_station(title).citation
    assert (key, standing) == (citation.key, citation.standing)


def test_humidity_and_wind_say_where_they_come_from() -> None:
    stated = [find_station(title).air_citation for title in ("Boston, MA", "Calgary, AB", "Marquette, MI")]
    assert ["noaa-ccd-2018", "eccc-climate", None] == [citation and citation.key for citation in stated]


@pytest.mark.parametrize(
    ("name", "key", "place"),
    [
        ("St. Cloud Rgnl AP", "saint cloud regional airport", "saint cloud"),
        ("Bozeman 6 W Exp Farm", "bozeman 6 w exp farm", "bozeman"),
        ("Key West", "key west", "key west"),
        ("Mc Henry 3W", "mchenry 3w", "mchenry"),
        ("Chatsworth #2", "chatsworth 2", "chatsworth"),
    ],
)
def test_names_are_compared_without_marks_and_towns_without_distances(name: str, key: str, place: str) -> None:
    assert (key, place) == (station_key(name), place_key(station_key(name)))


def test_a_state_reads_its_own_file_alone() -> None:
    from speclint.tables import stations

    for kept in (stations.find_station, stations._station, stations._state_rows):
        kept.cache_clear()
    find_station("Marquette, MI")
    assert 1 == stations._state_rows.cache_info().currsize


@pytest.mark.parametrize("title", ["Boston, MA", "Calgary, AB"])
def test_what_a_station_cites_is_registered(title: str) -> None:
    station = find_station(title)
    assert [True, True] == [
        "(" in str(citation) for citation in (station.citation, station.air_citation) if citation is not None
    ]
