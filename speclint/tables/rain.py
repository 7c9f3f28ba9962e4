"""Rain: storm intensities by city, and how much rain is driven onto walls by the direction that they face."""

from __future__ import annotations

from functools import lru_cache
from typing import NamedTuple

from speclint.citation import Citation
from speclint.tables.rows import Row, read_table, unknown
from speclint.tables.station_names import station_key
from speclint.tables.stations import ground_distance

INTENSITIES = "climate/rain_intensity.csv"
ROSES = "climate/rain_roses.csv"
SECTORS = ("N", "NNE", "NE", "ENE", "E", "ESE", "SE", "SSE", "S", "SSW", "SW", "WSW", "W", "WNW", "NW", "NNW")


class RainIntensity(NamedTuple):
    """The rate of rain in a city's design storm.

    Attributes:
        city: Name of the city.
        state: Two-letter code of the state.
        intensity: Mean rate over the duration. [mm/h]
        duration: Of the storm. [min]
        return_period: Mean time between such storms. [a]
        citation: Where the row comes from.
    """

    city: str
    state: str
    intensity: float
    duration: float
    return_period: float
    citation: Citation


class RainRose(NamedTuple):
    """Rain driven onto upright walls in the open at an airport, by the direction they face.

    Attributes:
        name: Town of the airport.
        state: Two-letter code of the state.
        latitude: North is positive. [deg]
        longitude: East is positive. [deg]
        elevation: Height above the sea. [m]
        years: Years observed.
        rain: Mean rain in a year of those observed. [mm]
        normal_over_rain: Rain of the 1981-2010 normals over the observed; None where no normal is near. [-]
        mean_wind: Mean wind speed of all hours. [m/s]
        rain_wind: Mean wind speed weighted by rain. [m/s]
        rain_direction: Mean direction from which rain is driven, clockwise from north. [deg]
        steadiness: 1 where all rain comes from one direction, 0 where from all alike. [-]
        walls: Rain driven in a year onto walls that face each of `SECTORS`, in that order. [L/m2]
        citation: Where the row comes from.
        doubt: What is doubtful about the row; empty where nothing is.
    """

    name: str
    state: str
    latitude: float
    longitude: float
    elevation: float
    years: str
    rain: float
    normal_over_rain: float | None
    mean_wind: float
    rain_wind: float
    rain_direction: float
    steadiness: float
    walls: tuple[float, ...]
    citation: Citation
    doubt: str


def rain_intensity(city: str, state: str) -> RainIntensity:
    """The rate of the worst hour of rain in a hundred years.

    Args:
        city: Name of the city; letter case and `St.` for `Saint` make no difference.
        state: Two-letter code of the state.

    Returns:
        The design storm.

    Raises:
        UnknownRow: If the city is not in the table.
    """
    row = _intensity_rows().get((station_key(city), state.upper()))
    if row is None:
        titles = [f"{row.text('city')}, {row.text('state')}" for row in _intensity_rows().values()]
        within = [title for title in titles if title.endswith(f", {state.upper()}")]
        raise unknown("rain intensities", f"{city}, {state}", within or titles)
    return RainIntensity(
        city=row.text("city"),
        state=row.text("state"),
        intensity=row.number("intensity") * 25.4,
        duration=row.number("duration"),
        return_period=row.number("return_period"),
        citation=row.citation,
    )


def nearest_rain_rose(latitude: float, longitude: float) -> tuple[RainRose, float]:
    """The rain rose nearest to a place on the map, and how far it is.

    Args:
        latitude: Of the site; north is positive. [deg]
        longitude: Of the site; east is positive. [deg]

    Returns:
        The rain rose; the distance along the ground. [km]
    """
    found = ((ground_distance(latitude, longitude, rose.latitude, rose.longitude), rose) for rose in rain_roses())
    distance, rose = min(found, key=lambda pair: pair[0])
    return rose, distance


@lru_cache(maxsize=1)
def rain_roses() -> tuple[RainRose, ...]:
    """Every rain rose held."""
    return tuple(_rose(row) for row in read_table(ROSES))


@lru_cache(maxsize=1)
def _intensity_rows() -> dict[tuple[str, str], Row]:
    return {(station_key(row.text("city")), row.text("state")): row for row in read_table(INTENSITIES)}


def _rose(row: Row) -> RainRose:
    return RainRose(
        name=row.text("name"),
        state=row.text("state"),
        latitude=row.number("latitude"),
        longitude=row.number("longitude"),
        elevation=row.number("elevation"),
        years=row.text("years"),
        rain=row.number("rain"),
        normal_over_rain=row.number_if_stated("normal_over_rain"),
        mean_wind=row.number("mean_wind"),
        rain_wind=row.number("rain_wind"),
        rain_direction=row.number("rain_direction"),
        steadiness=row.number("steadiness"),
        walls=tuple(row.number(f"wall_{sector}") for sector in SECTORS),
        citation=row.citation,
        doubt=row.text("doubt"),
    )
