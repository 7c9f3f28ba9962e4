"""Hourly rain and wind, reduced to a joint table of direction, speed and rate; the reduced records that ship.

Of each hour with rain above freezing and a wind with a direction, the driving rain of the open field is kept: hours
are summed in cells of ten degrees, one metre a second and one doubling of the rate, and each cell keeps its own mean
direction, speed and rate, weighted by driving rain. Where directions are observed in tens of degrees, as at airports,
the sums on every wall are those of the hours themselves.
"""

from __future__ import annotations

import math
from collections.abc import Iterable
from dataclasses import dataclass
from functools import lru_cache
from typing import NamedTuple

from speclint.citation import Citation
from speclint.science.driving_rain import hourly_driving_rain
from speclint.tables.rows import Row, read_shared, read_table, unknown
from speclint.tables.station_names import station_key, without_airport
from speclint.tables.stations import ground_distance

INDEX = "climate/rain_records.csv"
SECTOR = 10  # degrees to a cell
SPEED_STEP = 1.0  # m/s to a cell
LEAST_DRIVEN = 1e-9  # L/m2 in an hour: less is nothing
LEAST_RATE = 0.25  # mm/h; the first doubling of the rate starts here
DAMP = 80.0  # % relative humidity from which ISO 9223 counts an hour above freezing as wet
HOURS_OF_YEAR = 8766


class Hour(NamedTuple):
    """One hour of a weather record; None where nothing was observed.

    Attributes:
        year: Calendar year, local standard time.
        direction: From which the wind blows, clockwise from north. [deg]
        speed: Mean wind speed at 10 m. [m/s]
        rain: Rain in the hour. [mm]
        temperature: Of the air. [deg C]
        humidity: Relative. [%]
    """

    year: int
    direction: float | None
    speed: float | None
    rain: float | None
    temperature: float | None
    humidity: float | None


class Cell(NamedTuple):
    """Hours of like direction, speed and rate.

    Attributes:
        direction: From which the wind blows, weighted by driving rain; within five degrees of a multiple of ten. [deg]
        speed: Mean wind speed, weighted by driving rain. [m/s]
        rate: Mean rain rate, weighted by driving rain. [mm/h]
        hours: In a mean year. [h]
        rain: In a mean year. [mm]
        driven: Rain driven in each year of the record onto an open wall that faces the wind. [L/m2]
    """

    direction: float
    speed: float
    rate: float
    hours: float
    rain: float
    driven: tuple[float, ...]


class Account(NamedTuple):
    """What became of the hours of one year.

    Attributes:
        year: Calendar year.
        hours: Hours with wind and rain both observed. [h]
        rain: All rain and melted snow of those hours. [mm]
        freezing: Part of it that fell below freezing: not counted as driving rain; None where no temperature is known,
            so that snow counts as rain. [mm]
        calm: Part that fell above freezing in calm air. [mm]
        no_direction: Part that fell above freezing with a wind of no known direction: not counted. [mm]
        damp: Hours above freezing with a relative humidity of 80 % or more, as ISO 9223 counts wetness. [h]
        damp_known: Hours with temperature and humidity both observed. [h]
    """

    year: int
    hours: int
    rain: float
    freezing: float | None
    calm: float
    no_direction: float
    damp: int
    damp_known: int


@dataclass(frozen=True, slots=True, eq=False)
class RainRecord:
    """A reduced record of hourly rain and wind.

    Attributes:
        name: Town or field of the station.
        state: Two-letter code of the state; empty for a record of the user's own.
        latitude: North is positive; None for a record of the user's own. [deg]
        longitude: East is positive; None for a record of the user's own. [deg]
        elevation: Height above the sea; None for a record of the user's own. [m]
        mean_wind: Mean wind speed of all hours. [m/s]
        accounts: One for each year.
        cells: The joint table.
        citation: Where the hours come from.
        doubt: What is doubtful about the record; empty where nothing is.
        normal_over_rain: Rain of the 1981-2010 normals over the observed; None where no normal is near. [-]
    """

    name: str
    state: str
    latitude: float | None
    longitude: float | None
    elevation: float | None
    mean_wind: float
    accounts: tuple[Account, ...]
    cells: tuple[Cell, ...]
    citation: Citation
    doubt: str = ""
    normal_over_rain: float | None = None

    @property
    def title(self) -> str:
        """The name as plans write it: `Boston, MA`."""
        return f"{self.name}, {self.state}" if self.state else self.name

    @property
    def years(self) -> str:
        """The years observed, as words."""
        found = [account.year for account in self.accounts]
        return f"{found[0]}" if len(found) == 1 else f"{found[0]}-{found[-1]}"


def reduced(hours: Iterable[Hour]) -> tuple[tuple[Account, ...], tuple[Cell, ...], float]:
    """The accounts of each year, the joint table and the mean wind [m/s] of a record of hours.

    An hour without rain, wind or direction drives no rain; what that leaves out is in the accounts.
    """
    tallies: dict[int, list[float]] = {}
    sums: dict[tuple[int, int, int], list[float]] = {}
    driven: dict[tuple[int, int, int], dict[int, float]] = {}
    winds = wind_hours = 0.0
    for hour in hours:
        tally = tallies.setdefault(hour.year, [0, 0.0, 0.0, 0.0, 0.0, 0, 0, 0])
        tally[7] += hour.temperature is not None
        cold = hour.temperature is not None and hour.temperature < 0
        if hour.temperature is not None and hour.humidity is not None:
            tally[6] += 1
            tally[5] += not cold and hour.humidity >= DAMP
        if hour.speed is None:
            continue
        winds += hour.speed
        wind_hours += 1
        if hour.rain is None:
            continue
        tally[0] += 1
        tally[1] += hour.rain
        if hour.rain <= 0:
            continue
        if cold:
            tally[2] += hour.rain
        elif hour.speed <= 0:
            tally[3] += hour.rain
        elif hour.direction is None:
            tally[4] += hour.rain
        else:
            sector = round(hour.direction / SECTOR) % (360 // SECTOR)
            octave = math.floor(math.log2(hour.rain / LEAST_RATE)) if hour.rain > LEAST_RATE else 0
            key = (sector, int(hour.speed / SPEED_STEP), octave)
            weight = hourly_driving_rain(hour.speed, hour.rain, 0.0)
            if weight < LEAST_DRIVEN:
                continue
            aside = (hour.direction - sector * SECTOR + 180) % 360 - 180
            found = sums.setdefault(key, [0.0] * 6)
            amounts = (weight, weight * hour.speed, weight * hour.rain, 1.0, hour.rain, weight * aside)
            for at, amount in enumerate(amounts):
                found[at] += amount
            years = driven.setdefault(key, {})
            years[hour.year] = years.get(hour.year, 0.0) + weight
    accounts = tuple(
        Account(year, int(t[0]), t[1], t[2] if t[7] else None, t[3], t[4], int(t[5]), int(t[6]))
        for year, t in sorted(tallies.items())
    )
    count = max(1, len(accounts))
    cells = tuple(
        Cell(
            round(key[0] * SECTOR + total[5] / total[0], 6) % 360,
            total[1] / total[0],
            total[2] / total[0],
            total[3] / count,
            total[4] / count,
            tuple(driven[key].get(account.year, 0.0) for account in accounts),
        )
        for key, total in sorted(sums.items())
    )
    return accounts, cells, winds / wind_hours if wind_hours else 0.0


def find_record(title: str) -> RainRecord:
    """The record with a name such as `Boston, MA`; the state may be left out where one state alone has the name.

    Raises:
        UnknownRow: If no record has the name, or records in several states have it.
    """
    name, _, state = (part.strip() for part in title.rpartition(",")) if "," in title else (title.strip(), "", "")
    key = without_airport(station_key(name))
    named = [row for row in read_table(INDEX) if without_airport(station_key(row.text("name"))) == key]
    found = [row for row in named if not state or row.text("state") == state.upper()]
    if len({row.text("state") for row in found}) == 1:
        return _record(found[0].text("record"))
    raise unknown("rain records", title, (_title(row) for row in found or read_table(INDEX)))


class Directions(NamedTuple):
    """Where a record's driving rain comes from.

    Attributes:
        title: The record, as plans write it.
        latitude: North is positive. [deg]
        longitude: East is positive. [deg]
        elevation: Height above the sea. [m]
        shares: Of the driving rain from each ten degrees, north first. [-]
        citation: Where the hours come from.
    """

    title: str
    latitude: float
    longitude: float
    elevation: float
    shares: tuple[float, ...]
    citation: Citation


@lru_cache(maxsize=1)
def sure_directions() -> tuple[Directions, ...]:
    """The directions of every shipped record that is without doubt."""
    return tuple(
        Directions(
            _title(row),
            row.number("latitude"),
            row.number("longitude"),
            row.number("elevation"),
            tuple(float(share) / 1000 for share in row.text("shares").split(";")),
            row.citation,
        )
        for row in read_table(INDEX)
        if not row.text("doubt")
    )


@lru_cache(maxsize=64)
def nearest_directions(latitude: float, longitude: float, count: int) -> tuple[tuple[Directions, float], ...]:
    """The directions of the nearest records, and how far each is. [km]"""
    found = [(one, ground_distance(latitude, longitude, one.latitude, one.longitude)) for one in sure_directions()]
    return tuple(sorted(found, key=lambda pair: pair[1])[:count])


def record_titles() -> tuple[str, ...]:
    """Every record that ships, as plans write it."""
    return tuple(_title(row) for row in read_table(INDEX))


def _title(row: Row) -> str:
    return f"{row.text('name')}, {row.text('state')}"


@lru_cache(maxsize=64)
def _record(record: str) -> RainRecord:
    row = next(row for row in read_table(INDEX) if row.text("record") == record)
    lines = read_shared(f"climate/rain_records/{record}.csv.gz").decode("utf-8").splitlines()
    return RainRecord(
        name=row.text("name"),
        state=row.text("state"),
        latitude=row.number("latitude"),
        longitude=row.number("longitude"),
        elevation=row.number("elevation"),
        mean_wind=row.number("mean_wind"),
        accounts=tuple(_account(line) for line in lines if line.startswith("year,")),
        cells=tuple(_cell(line) for line in lines if not line.startswith("year,")),
        citation=row.citation,
        doubt=row.text("doubt"),
        normal_over_rain=row.number_if_stated("normal_over_rain"),
    )


def _account(line: str) -> Account:
    _, year, hours, rain, freezing, calm, no_direction, damp, damp_known = line.split(",")
    amounts = float(rain), float(freezing), float(calm), float(no_direction)
    return Account(int(year), int(hours), *amounts, int(damp), int(damp_known))


def _cell(line: str) -> Cell:
    direction, speed, rate, hours, rain, *driven = line.split(",")
    return Cell(
        float(direction), float(speed), float(rate), float(hours), float(rain), tuple(float(one or 0) for one in driven)
    )
