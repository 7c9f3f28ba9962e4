"""Hours with rain of twelve airports, as observed: month, day, hour, F, degrees, mph, inches."""

from __future__ import annotations

import csv
import gzip
from collections.abc import Iterator
from pathlib import Path

from speclint.tables.rain_record import Hour

FOLDER = Path(__file__).parent / "hourly"
STATIONS = tuple(sorted(path.name.removesuffix(".csv.gz") for path in FOLDER.glob("*.csv.gz")))
POINTS = ("N", "NNE", "NE", "ENE", "E", "ESE", "SE", "SSE", "S", "SSW", "SW", "WSW", "W", "WNW", "NW", "NNW")


def rain_hours(station: str, warm_only: bool) -> Iterator[Hour]:
    """The hours of a station's file; without temperatures where hours below freezing are to count too."""
    with gzip.open(FOLDER / f"{station}.csv.gz", "rt", encoding="utf-8", newline="") as opened:
        for row in csv.DictReader(opened):
            temperature = (float(row["temp"]) - 32) / 1.8 if row["temp"] and warm_only else None
            direction = float(row["wind_dir"]) if row["wind_dir"] else None
            speed = float(row["wind_speed"]) * 0.44704 if row["wind_speed"] else None
            yield Hour(int(station[-4:]), direction, speed, float(row["precip"]) * 25.4, temperature, None)


def printed_walls(station: str) -> list[float]:
    """The sixteen sums of the published rain rose of a station, north first. [L/m2]"""
    with (FOLDER / "roses.csv").open(encoding="utf-8", newline="") as opened:
        rows = {row["station_year"]: row for row in csv.DictReader(opened)}
    return [float(rows[station][point]) for point in POINTS]
