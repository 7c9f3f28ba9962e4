"""Weather stations: monthly normals, found by name or by place on the map."""

from __future__ import annotations

from functools import lru_cache
from typing import NamedTuple

from speclint.citation import Citation
from speclint.tables.rows import UnknownRow, read_shared, unknown
from speclint.tables.station_names import station_key, without_airport

INDEX = "climate/station_index.csv.gz"
EARTH_RADIUS = 6371.0088  # km, mean radius
MONTHS = 12
TOO_FAR = 500.0  # km; ours: beyond it no station stands for a lot

# The groups of twelve columns that follow the name in a row of a state's file, in order.
TEMPERATURE, PRECIPITATION, WET_DAYS, HUMIDITY, WIND, SNOWFALL, SUNSHINE = range(7)

Months = tuple[float, ...]


class Station(NamedTuple):
    """A weather station and its twelve monthly normals, January first.

    Attributes:
        name: Name of the station.
        state: Two-letter code of the state, territory or province.
        country: Two-letter code of the country.
        latitude: North is positive. [deg]
        longitude: East is positive. [deg]
        elevation: Height above the sea. [m]
        mean_temperature: Monthly mean of the air temperature. [deg C]
        precipitation: Monthly sum of rain and melted snow. [mm]
        wet_days: Mean number of days in the month with at least 0.01 in (in Canada 0.2 mm). [d]
        humidity: Monthly mean relative humidity; None where not observed. [%]
        wind: Monthly mean wind speed at 10 m; None where not observed. [m/s]
        snowfall: Monthly sum of fresh snow; None where not observed. [mm]
        sunshine: Share of the possible sunshine; None where not observed. [%]
        period: Years of the temperature, precipitation and wet days.
        citation: Where temperature, precipitation, wet days and snowfall come from.
        air_citation: Where humidity, wind and sunshine come from; None where none is held.
    """

    name: str
    state: str
    country: str
    latitude: float
    longitude: float
    elevation: float
    mean_temperature: Months
    precipitation: Months
    wet_days: Months
    humidity: Months | None
    wind: Months | None
    snowfall: Months | None
    sunshine: Months | None
    period: str
    citation: Citation
    air_citation: Citation | None

    @property
    def title(self) -> str:
        """The name as plans write it: `Marquette, MI`."""
        return f"{self.name}, {self.state}"


@lru_cache(maxsize=256)
def find_station(title: str) -> Station:
    """The station with a name such as `Marquette, MI`; the state may be left out where one state alone has the name.

    Letter case, full stops, airport words and `Ft` for `Fort` make no difference.

    Raises:
        UnknownRow: If no station has the name, or stations in several states have it.
    """
    name, _, state = (part.strip() for part in title.rpartition(",")) if "," in title else (title.strip(), "", "")
    key = station_key(name)
    for sought in (key, without_airport(key)):
        found = [line for line in _lines_named(sought) if not state or line.state == state.upper()]
        states = {line.state for line in found}
        if len(states) == 1:
            return _station(found[0])
        if len(states) > 1:
            raise UnknownRow("weather stations", title, tuple(sorted(line.title for line in _first_of_each(found))))
    raise _unknown_station(title, key, state.upper())


def nearest_station(
    latitude: float, longitude: float, elevation: float | None = None, *, complete: bool = False
) -> tuple[Station, float, float | None]:
    """The station nearest to a place on the map, how far it is, and how much higher it stands.

    Args:
        latitude: Of the site; north is positive. [deg]
        longitude: Of the site; east is positive. [deg]
        elevation: Of the site, if known; it does not change which station is chosen. [m]
        complete: Consider only stations with humidity and wind.

    Returns:
        The station; the distance along the ground [km]; station less site elevation, None if the site's is unknown. [m]

    Raises:
        ValueError: If the place is not on the map.
    """
    if not (-90 <= latitude <= 90 and -180 <= longitude <= 180):
        raise ValueError(f"wanted a latitude within 90 and a longitude within 180; got {latitude:g}, {longitude:g}")
    line, distance = _nearest_line(latitude, longitude, complete)
    return _station(line), distance, None if elevation is None else line.elevation - elevation


@lru_cache(maxsize=256)
def _nearest_line(latitude: float, longitude: float, complete: bool) -> tuple[_Line, float]:
    """The nearest index line: the one whose direction from the middle of the earth is most alike."""
    x, y, z = _direction(latitude, longitude)
    line = _line(max(_directions(complete), key=lambda row: row[0] * x + row[1] * y + row[2] * z)[3])
    return line, ground_distance(latitude, longitude, line.latitude, line.longitude)


def stations_near(latitude: float, longitude: float, count: int) -> list[tuple[Station, float]]:
    """The stations with humidity and wind that are nearest to a place, each with its distance [km], nearest first.

    Args:
        latitude: Of the place; north is positive. [deg]
        longitude: Of the place; east is positive. [deg]
        count: How many.
    """
    from heapq import nlargest

    x, y, z = _direction(latitude, longitude)
    rows = nlargest(count, _directions(True), key=lambda row: row[0] * x + row[1] * y + row[2] * z)
    lines = [_line(row[3]) for row in rows]
    return [(_station(line), ground_distance(latitude, longitude, line.latitude, line.longitude)) for line in lines]


def _direction(latitude: float, longitude: float) -> tuple[float, float, float]:
    from math import cos, radians, sin

    north, east = radians(latitude), radians(longitude)
    return cos(north) * cos(east), cos(north) * sin(east), sin(north)


@lru_cache(maxsize=2)
def _directions(complete: bool) -> tuple[tuple[float, float, float, str], ...]:
    """The direction of every station and its line, of which no more than the place is read."""
    found = []
    for text in _index_text().splitlines()[1:]:
        if not complete or text.endswith(",yes"):
            *_, latitude, longitude, _elevation, _row, _complete = text.split(",")
            found.append((*_direction(float(latitude), float(longitude)), text))
    return tuple(found)


def ground_distance(latitude: float, longitude: float, other_latitude: float, other_longitude: float) -> float:
    """Great-circle distance between two places on a round earth, by the haversine formula.

    Args:
        latitude: Of the first place. [deg]
        longitude: Of the first place. [deg]
        other_latitude: Of the second place. [deg]
        other_longitude: Of the second place. [deg]

    Returns:
        Distance along the ground. [km]
    """
    from math import asin, cos, radians, sin, sqrt

    half_north = radians(other_latitude - latitude) / 2
    half_east = radians(other_longitude - longitude) / 2
    across = cos(radians(latitude)) * cos(radians(other_latitude)) * sin(half_east) ** 2
    return 2 * EARTH_RADIUS * asin(min(1.0, sqrt(sin(half_north) ** 2 + across)))


def station_titles() -> tuple[str, ...]:
    """Every station as plans write it, the fullest records first."""
    return tuple(line.title for line in _index_lines())


class _Line(NamedTuple):
    """A line of the index: where a station is and which row of its state's file holds it."""

    name: str
    state: str
    country: str
    latitude: float
    longitude: float
    elevation: float
    row: int
    complete: bool

    @property
    def title(self) -> str:
        return f"{self.name}, {self.state}"


@lru_cache(maxsize=1)
def _index_text() -> str:
    return read_shared(INDEX).decode("utf-8")


@lru_cache(maxsize=1)
def _index_lines() -> tuple[_Line, ...]:
    return tuple(_line(text) for text in _index_text().splitlines()[1:])


def _line(text: str) -> _Line:
    _, name, state, country, latitude, longitude, elevation, row, complete = text.split(",")
    place = float(latitude), float(longitude), float(elevation)
    return _Line(name, state, country, *place, int(row), complete == "yes")


def _lines_named(key: str) -> list[_Line]:
    """The index lines that hold a key, best first; found by searching the text, which is faster than reading it all."""
    text = _index_text()
    found = []
    start = text.find(f"|{key}|") if key else -1
    while start >= 0:
        end = text.index("\n", start)
        found.append(_line(text[text.rindex("\n", 0, start) + 1 : end]))
        start = text.find(f"|{key}|", end)
    return sorted(found, key=lambda line: station_key(line.name) != key)  # a station of just this name goes first


def _first_of_each(lines: list[_Line]) -> list[_Line]:
    """The best line of each state."""
    best: dict[str, _Line] = {}
    for line in lines:
        best.setdefault(line.state, line)
    return list(best.values())


def _unknown_station(title: str, key: str, state: str) -> UnknownRow:
    within = [line for line in _index_lines() if line.state == state] or list(_index_lines())
    longer = [line.title for line in within if station_key(line.name).startswith(key + " ")] if key else []
    if longer:
        return UnknownRow("weather stations", title, tuple(longer[:3]))
    return unknown("weather stations", title, (line.title for line in within))


@lru_cache(maxsize=8)
def _state_rows(state: str) -> tuple[str, ...]:
    return tuple(read_shared(f"climate/stations/{state}.csv.gz").decode("utf-8").splitlines()[1:])


@lru_cache(maxsize=256)
def _station(line: _Line) -> Station:
    _, period, *cells = _state_rows(line.state)[line.row].split(",")
    humidity, wind, sunshine = (_months(cells, group) for group in (HUMIDITY, WIND, SUNSHINE))
    snowfall = _months(cells, SNOWFALL)
    return Station(
        name=line.name,
        state=line.state,
        country=line.country,
        latitude=line.latitude,
        longitude=line.longitude,
        elevation=line.elevation,
        mean_temperature=tuple((value - 32) / 1.8 for value in _all_months(cells, TEMPERATURE)),
        precipitation=tuple(value * 25.4 for value in _all_months(cells, PRECIPITATION)),
        wet_days=_all_months(cells, WET_DAYS),
        humidity=humidity,
        wind=None if wind is None else tuple(value * 0.44704 for value in wind),
        snowfall=None if snowfall is None else tuple(value * 25.4 for value in snowfall),
        sunshine=sunshine,
        period=period,
        citation=_normals_citation(line.country),
        air_citation=_air_citation(line.country) if humidity or wind or sunshine else None,
    )


def _all_months(cells: list[str], group: int) -> Months:
    return tuple(float(cell) for cell in cells[group * MONTHS : (group + 1) * MONTHS])


def _months(cells: list[str], group: int) -> Months | None:
    return _all_months(cells, group) if cells[group * MONTHS] else None


def _normals_citation(country: str) -> Citation:
    if country == "CA":
        return Citation("eccc-climate", "monthly means worked out from daily values 1981-2010", "second-hand")
    return Citation("noaa-normals-1981-2010", "monthly normals by station", "published")


def _air_citation(country: str) -> Citation:
    if country == "CA":
        return Citation("eccc-climate", "humidity and wind of a typical year", "second-hand")
    return Citation("noaa-ccd-2018", "monthly humidity, wind and sunshine by station", "published")
