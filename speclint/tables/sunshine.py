"""Share of the possible sunshine by month, at the few stations that observe it."""

from __future__ import annotations

from functools import lru_cache
from typing import NamedTuple

from speclint.citation import Citation
from speclint.tables.rows import Row, read_table
from speclint.tables.stations import ground_distance

SUNSHINE = "climate/sunshine.csv"
MONTHS = ("jan", "feb", "mar", "apr", "may", "jun", "jul", "aug", "sep", "oct", "nov", "dec")


class Sunshine(NamedTuple):
    """Sunshine of a station.

    Attributes:
        title: The station, as plans write it.
        months: Share of the possible sunshine, January first. [-]
        citation: Where the row comes from.
    """

    title: str
    months: tuple[float, ...]
    citation: Citation


@lru_cache(maxsize=64)
def nearest_sunshine(latitude: float, longitude: float) -> tuple[Sunshine, float]:
    """The sunshine of the nearest station that observes it, and how far that is.

    Args:
        latitude: Of the site; north is positive. [deg]
        longitude: Of the site; east is positive. [deg]

    Returns:
        The sunshine; the distance along the ground. [km]
    """

    def away(row: Row) -> float:
        return ground_distance(latitude, longitude, row.number("latitude"), row.number("longitude"))

    row = min(read_table(SUNSHINE), key=away)
    months = tuple(row.number(month) / 100 for month in MONTHS)
    return Sunshine(f"{row.text('name')}, {row.text('state')}", months, row.citation), away(row)
