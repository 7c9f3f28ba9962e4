"""Hints for what local rules ask: termite zone by state, and snow and frost where a page could be read.

The building department of the site decides; these rows only help to notice a value that was forgotten or mistyped.
"""

from __future__ import annotations

from dataclasses import dataclass

from speclint.citation import Citation
from speclint.tables.rows import BadCell, Row, UnknownRow, read_table, unknown
from speclint.units import FOOT, INCH, PSF

TERMITES = "climate/termite_zones.csv"
CRITERIA = "climate/local_criteria.csv"
ALASKA = "climate/alaska_ground_snow.csv"
ZONES = ("none to slight", "slight to moderate", "moderate to heavy", "very heavy")  # least first

Range = tuple[float, float]


@dataclass(frozen=True, slots=True)
class TermiteZone:
    """Where subterranean termites are to be expected, by state.

    Attributes:
        state: Two-letter code of the state.
        zone: The zone of most of the state, one of `ZONES`.
        zones: Every zone in the state.
        other_list: The zone that a second list gives where the two disagree; empty where they do not.
        citation: Where the row comes from.
    """

    state: str
    zone: str
    zones: tuple[str, ...]
    other_list: str
    citation: Citation


@dataclass(frozen=True, slots=True)
class LocalCriteria:
    """What one town, county or state asks designers to use; None or empty where its page states nothing.

    Attributes:
        state: Two-letter code of the state.
        locality: Town, county or part of the state.
        elevation: For which the values hold. [m]
        ground_snow: Snow load on the ground. [Pa]
        roof_snow: Snow load on the roof. [Pa]
        frost_depth: Below which footings stand. [m]
        termites: Termite zone as the page words it.
        decay: Decay zone as the page words it.
        citation: Where the row comes from.
        doubt: What is doubtful about the row; empty where nothing is.
    """

    state: str
    locality: str
    elevation: Range | None
    ground_snow: Range | None
    roof_snow: Range | None
    frost_depth: Range | None
    termites: str
    decay: str
    citation: Citation
    doubt: str


def termite_zone(state: str) -> TermiteZone:
    """The termite zone of a state.

    Raises:
        UnknownRow: If the state is not in the table.
    """
    for row in read_table(TERMITES):
        if row.text("state") == state.strip().upper():
            zones = tuple(row.text("zones_in_state").split(";"))
            return TermiteZone(row.text("state"), row.text("zone"), zones, row.text("other_list"), row.citation)
    raise unknown("termite zones", state, (row.text("state") for row in read_table(TERMITES)))


def local_criteria(state: str) -> tuple[LocalCriteria, ...]:
    """What could be read of local design criteria in a state.

    Raises:
        UnknownRow: If nothing could be read for the state.
    """
    found = tuple(_criteria(row) for row in read_table(CRITERIA) if row.text("state") == state.strip().upper())
    if not found:
        states = dict.fromkeys(row.text("state") for row in read_table(CRITERIA))
        raise UnknownRow("local design criteria", state, tuple(states))
    return found


def alaska_ground_snow(locality: str) -> tuple[float, Citation]:
    """Snow load on the ground at a place in Alaska, to be met once in 50 years.

    Returns:
        The load [Pa]; where it comes from.

    Raises:
        UnknownRow: If the place is not in the table.
    """
    for row in read_table(ALASKA):
        if row.text("locality").casefold() == locality.strip().casefold():
            return row.number("ground_snow") * PSF, row.citation
    raise unknown("ground snow of Alaska", locality, (row.text("locality") for row in read_table(ALASKA)))


def _criteria(row: Row) -> LocalCriteria:
    return LocalCriteria(
        state=row.text("state"),
        locality=row.text("locality"),
        elevation=_range(row, "elevation", FOOT),
        ground_snow=_range(row, "ground_snow", PSF),
        roof_snow=_range(row, "roof_snow", PSF),
        frost_depth=_range(row, "frost_depth", INCH),
        termites=row.text("termites"),
        decay=row.text("decay"),
        citation=row.citation,
        doubt=row.text("doubt"),
    )


def _range(row: Row, column: str, unit: float) -> Range | None:
    """A cell such as `42-60`, or a single number, as lowest and highest value in SI."""
    cell = row.text(column)
    if not cell:
        return None
    low, _, high = cell.partition("-")
    try:
        return float(low) * unit, float(high or low) * unit
    except ValueError:
        raise BadCell(row.table, row.line, column, cell) from None
