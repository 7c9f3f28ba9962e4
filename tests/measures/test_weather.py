"""Rain of a lot: which record or means stand for it, what is said of them, and what they add up to."""

from __future__ import annotations

from types import SimpleNamespace
from typing import Any

import pytest

from speclint.exposure.climates import BORROWED_WIND, SPREADS, RainClimate, widened
from speclint.exposure.made_rain import mean_direction
from speclint.language.parse import parse
from speclint.measures.facts import Sheet
from speclint.measures.weather import _rain_of
from speclint.model.build import build
from speclint.quantity import Absent, Quantity
from speclint.tables.hourly import read_hourly
from speclint.tables.rain_record import find_record, nearest_directions
from speclint.tables.stations import find_station, ground_distance, nearest_station
from tests.measures.knowing import absent_knowing, found_knowing
from tests.measures.sheets import found
from tests.tables.test_hourly import a_year

BOSTON = 'site { weather "Boston, MA"; terrain suburban }'
MARQUETTE = 'site { weather "Marquette, MI"; terrain suburban }'


def climate(text: str) -> tuple[RainClimate, tuple[str, ...]]:
    told = found("site", "rain climate", text)
    assert isinstance(told.value, RainClimate)
    return told.value, told.notes


def own(site: str, text: str | None) -> Quantity | Absent:
    """The climate of a lot whose plan names the file `lot.csv`, read or not."""
    home, _ = build([parse(f'site {{ {site}; rain record "lot.csv" }}', "a.plan")], "a.plan")
    record = None if text is None else read_hourly(text, "lot.csv").record
    facts = Sheet(home, {} if record is None else {"lot.csv": record})
    return facts.quantity(facts["site"], "rain climate")


def test_a_record_of_the_owners_is_of_the_lot_and_of_one_year() -> None:
    told = own('weather "Boston, MA"', a_year())
    assert isinstance(told, Quantity)
    assert ("own record", 1, SPREADS["one year"]) == (told.value.source, told.value.years, told.value.spread)
    assert 225.0 == pytest.approx(told.value.direction[0], abs=5.01)  # by ten degrees
    assert not any("away" in note or "normals" in note or "units" in note for note in told.notes)
    assert "one year of record: the worst wall's rain differs by about 29 % from year to year" in told.notes
    assert not any("another year may bring it from another side" in note for note in told.notes)


def test_damp_hours_are_those_of_a_mean_year_of_8766_hours() -> None:
    told = own('weather "Boston, MA"', a_year())  # all hours are damp
    assert isinstance(told, Quantity)
    assert 8766.0 == pytest.approx(told.value.damp)


def test_damp_hours_of_a_record_are_the_mean_of_its_years() -> None:
    told, _ = climate(BOSTON)
    years = [account.damp * 8766 / account.damp_known for account in find_record("Boston, MA").accounts]
    assert 3 == len(years)
    assert sum(years) / 3 == pytest.approx(told.damp)


def test_a_file_that_could_not_be_used_gives_no_rain() -> None:
    told = own('weather "Boston, MA"', None)
    assert isinstance(told, Absent)
    assert "the file lot.csv could not be used" == told.reason


def test_a_record_far_from_the_normals_is_doubted() -> None:
    """876 mm a year: Boston has 1112 mm. A tenth of the hours as wet in thrice, 2628 mm, is 2.4 of it; 4 is not."""
    told = {
        rain: own('weather "Boston, MA"', a_year(row="{time},225,5.0,{rain},10,85").replace(",1.0,", f",{rain},"))
        for rain in ("0.5", "0.52", "3.1", "3.2")
    }
    doubted = {
        rain: any(note.startswith("check its units") for note in one.notes)
        for rain, one in told.items()
        if isinstance(one, Quantity)
    }
    # 0.4 of 1111.8 mm is 444.7 mm, 2.5 of it 2779.4 mm; 876 hours of 0.5, 0.52, 3.1 and 3.2 mm
    assert {"0.5": True, "0.52": False, "3.1": False, "3.2": True} == doubted


def test_a_named_record_far_away_is_less_sure_and_says_how_far_it_is() -> None:
    told, notes = climate('site { weather "Marquette, MI"; terrain suburban; rain record "Boston, MA" }')
    lot, record = find_station("Marquette, MI"), find_record("Boston, MA")
    assert record.latitude is not None
    assert record.longitude is not None
    away = ground_distance(lot.latitude, lot.longitude, record.latitude, record.longitude)
    assert ("record", SPREADS["record nearby"]) == (told.source, told.spread)
    assert f"Boston, MA is {away:.0f} km away" in notes
    assert told.title.endswith(f"2017-2019, {away:.0f} km away")


def test_the_record_of_the_lot_itself_is_as_sure_as_can_be() -> None:
    told, notes = climate('site { terrain suburban; rain record "Boston, MA" }')
    assert ("record", (1.0, 1.0), "hourly record of Boston, MA, 2017-2019") == (told.source, told.spread, told.title)
    assert "these years brought 1.02 times the rain of the 1981-2010 normals" in notes  # 1 / 0.981


@pytest.mark.parametrize(
    ("place", "told"), [('weather "Boston, MA"', "38 km away"), ("latitude 42.1; longitude -71.3", "38 km away")]
)
def test_coordinates_say_how_far_the_record_is(place: str, told: str) -> None:
    _, notes = climate(f"site {{ {place}; terrain suburban }}")
    away = ground_distance(42.1, -71.3, 42.361, -71.01)
    assert 37.5 < away < 38.5
    assert ("latitude" in place) == any(told in note for note in notes)


def test_a_record_more_than_20_km_off_is_widened_and_one_nearer_is_not() -> None:
    assert [(1.0, 1.0), SPREADS["record nearby"]] == [
        climate(f"site {{ latitude {north}; longitude -71.01; terrain suburban }}")[0].spread
        for north in (42.53, 42.55)  # 18.8 and 21.0 km
    ]


def test_a_record_more_than_300_m_lower_does_not_stand_for_a_lot() -> None:
    text = 'site {{ weather "Boston, MA"; terrain suburban; elevation {} m }}'
    assert ["record nearby", "nearest records"] == [climate(text.format(high))[0].source for high in (300, 310)]


@pytest.mark.parametrize(
    ("wind", "source"),
    [(23, "record nearby"), (111, "record nearby"), (20, "stated direction"), (114, "stated direction")],
)
def test_a_stated_wind_within_45_degrees_of_the_record_agrees_with_it(wind: int, source: str) -> None:
    near = nearest_directions(42.3606, -71.0106, 1)[0][0]
    assert 67.0 == pytest.approx(mean_direction(near.shares)[0], abs=0.5)
    assert source == climate(BOSTON.replace("suburban", f"suburban; rain wind {wind} deg"))[0].source


def test_what_a_record_leaves_unused_of_the_plan_is_told() -> None:
    text = 'site { weather "Marquette, MI"; terrain suburban; rain record "Boston, MA"; rain wind SW }'
    _, notes = climate(text)
    assert "rain wind of the plan is not used: the rain record tells the directions" in notes
    assert not any(note.startswith("rain shares") for note in notes)


def test_the_nearest_three_records_are_weighed_alike_and_none_beyond_500_km() -> None:
    told, _ = climate(MARQUETTE)
    lot = find_station("Marquette, MI")
    near = nearest_directions(lot.latitude, lot.longitude, 3)
    assert all(away <= 500 for _, away in near)
    mean = [sum(one.shares[at] for one, _ in near) / 3 for at in range(36)]
    direction, steadiness = mean_direction(tuple(mean))
    assert direction == pytest.approx(told.direction[0], abs=0.5)
    assert steadiness == pytest.approx(told.direction[1], abs=0.02)
    assert widened(SPREADS["amount from means"], SPREADS["nearest records"], BORROWED_WIND) == told.spread


def test_rain_without_snow_is_the_amount_by_ten_to_one_or_by_cold_months() -> None:
    def amount(title: str) -> str:
        _, notes = climate(f'site {{ weather "{title}"; terrain suburban; rain wind SW; mean wind 4 m/s }}')
        return next(note for note in notes if "amount from" in note)

    snowy = find_station("Duluth, MN")
    assert snowy.snowfall is not None
    rain = sum(max(0.0, whole - snow / 10) for whole, snow in zip(snowy.precipitation, snowy.snowfall, strict=True))
    assert f"amount from {rain:.0f} mm of rain (the snow of each month" in amount("Duluth, MN")
    dry = find_station(
        "Lander, WY"
    )  # 10 mm in January and 193 mm of snow: what is lighter than ten to one melts to less
    assert dry.snowfall is not None
    assert sum(dry.precipitation) - sum(dry.snowfall) / 10 < 100
    assert "amount from 144 mm of rain" in amount("Lander, WY")
    cold = find_station("Marquette, MI")
    warm = sum(rain for rain, mean in zip(cold.precipitation, cold.mean_temperature, strict=True) if mean >= 0)
    assert f"amount from {warm:.0f} mm of rain (months" in amount("Marquette, MI")


def test_the_wind_is_stated_or_of_the_station_or_borrowed() -> None:
    def wind(text: str) -> tuple[str, tuple[float, float]]:
        told, notes = climate(text)
        return next(note.split(" and ")[-1] for note in notes if "amount from" in note), told.spread

    sure = widened(SPREADS["amount from means"], SPREADS["stated direction"])
    stated = wind('site { weather "Marquette, MI"; terrain suburban; rain wind SW; mean wind 4 m/s }')
    assert ("the mean wind that the plan states", sure) == stated
    duluth = find_station("Duluth, MN")
    assert duluth.wind is not None
    mean = sum(duluth.wind) / 12
    assert (f"a mean wind of {mean:.1f} m/s", sure) == wind(
        'site { weather "Duluth, MN"; terrain suburban; rain wind SW }'
    )
    lot = find_station("Marquette, MI")
    other, away, _ = nearest_station(lot.latitude, lot.longitude, complete=True)
    assert other.wind is not None
    text = 'site { weather "Marquette, MI"; terrain suburban; rain wind SW }'
    assert (f"a mean wind of {sum(other.wind) / 12:.1f} m/s", _close(widened(sure, BORROWED_WIND))) == wind(text)
    assert f"no wind is held for Marquette, MI: wind of {other.title}, {away:.0f} km away" in climate(text)[1]


def _close(bounds: tuple[float, float]) -> Any:
    return pytest.approx(bounds, rel=1e-9)


def test_more_wind_drives_more_rain() -> None:
    text = 'site {{ weather "Marquette, MI"; terrain suburban; rain wind SW; mean wind {} m/s }}'
    calm, windy = (found("site", "driving rain", text.format(speed)).value for speed in (2, 4))
    assert 2**0.669 == pytest.approx(windy / calm)  # the power of the wind in the fit to 59 airports


def test_driving_rain_is_the_mean_of_sixteen_walls_and_of_one_year_less_sure() -> None:
    told, _ = climate(BOSTON)
    mean = sum(told.walls) / 16
    sure = found("site", "driving rain", BOSTON)
    assert (mean, mean, mean) == (pytest.approx(sure.value), pytest.approx(sure.low), pytest.approx(sure.high))
    known: dict[tuple[str, str], Any] = {("site", "rain climate"): told._replace(years=1)}
    year = found_knowing("site", "driving rain", BOSTON, known)
    low, high = widened(SPREADS["one year"])
    assert (mean * low, mean * high) == (pytest.approx(year.low), pytest.approx(year.high))


@pytest.mark.parametrize(
    ("name", "told"), [("rain direction", 0.0), ("rain steadiness", 0.4), ("worst bearing", 67.5), ("rain source", "x")]
)
def test_what_is_told_of_a_climate(name: str, told: float | str) -> None:
    walls = [1.0] * 16
    walls[3] = 2.0
    stub = SimpleNamespace(direction=(359.7, 0.4), walls=tuple(walls), source="x", damp=None)
    assert told == found_knowing("site", name, BOSTON, {("site", "rain climate"): stub}).value
    missing = absent_knowing("site", "damp hours", BOSTON, {("site", "rain climate"): stub})
    assert "no hourly record with temperature and humidity stands for the lot" == missing.reason


def test_distances_and_directions_of_the_nearest_record_and_station() -> None:
    text = "site { latitude 42.1; longitude -71.3; terrain suburban; rain wind 350 deg }"
    near, away = nearest_directions(42.1, -71.3, 1)[0]
    direction, steadiness = mean_direction(near.shares)
    assert near.title == found("site", "nearest record", text).value
    assert 1000 * away == pytest.approx(found("site", "record distance", text).value)
    assert float(round(direction)) == found("site", "record direction", text).value
    assert steadiness == pytest.approx(found("site", "record steadiness", text).value)
    assert round(direction) + 10 == found("site", "rain wind off record", text).value  # the lesser way round
    station, far, _ = nearest_station(42.1, -71.3)
    assert 1000 * far == pytest.approx(found("site", "station distance", text).value)
    assert station.title == found("site", "station", text).value


def test_a_wind_is_not_held_against_a_record_far_below() -> None:
    text = 'site {{ weather "Boston, MA"; terrain suburban; rain wind SW; elevation {} m }}'
    assert 225 - 67 == found("site", "rain wind off record", text.format(300)).value
    told = absent_knowing("site", "rain wind off record", text.format(310), {})
    assert "Boston, MA stands more than 300 m higher or lower than the lot" == told.reason


def test_where_no_snow_is_held_rain_is_what_falls_in_months_that_do_not_freeze() -> None:
    at = find_station("Sault Ste. Marie, MI")._replace(
        snowfall=None, mean_temperature=(-0.1, 0.0, 0.5, *[10.0] * 9), precipitation=tuple(float(n) for n in range(12))
    )
    rain, words = _rain_of(at)
    assert (float(sum(range(1, 12))), "months below freezing on the mean left out") == (rain, words)
