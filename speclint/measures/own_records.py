"""Hourly records of the user's own that a plan names: read beside the plan, reduced once, and kept."""

from __future__ import annotations

import hashlib
from pathlib import Path

from speclint import __version__
from speclint.citation import Citation
from speclint.kept import keep, kept, plain, state_of
from speclint.language.atoms import Mistake
from speclint.language.uses import CannotRead, Reader
from speclint.model.home import Home
from speclint.model.site import Site
from speclint.span import NOWHERE
from speclint.tables.rain_record import Account, Cell, RainRecord


def own_records(home: Home, read: Reader) -> tuple[dict[str, RainRecord], list[Mistake]]:
    """The records that a plan names as files, by name, and what is wrong with them.

    Args:
        home: The plan.
        read: Reads a file named relative to the folder of the plan; raises `CannotRead`.
    """
    for element in home.of_kind("site"):
        if not isinstance(element, Site) or not (element.rain_record or "").lower().endswith(".csv"):
            continue
        name = element.rain_record or ""
        given = element.given.get("rain record")
        place = given.span if given else NOWHERE
        try:
            text = read(name)
        except CannotRead as trouble:
            message = f"the rain record {name} cannot be read: {trouble}"
            return {}, [Mistake(place.file, place.line, place.column, place.length, message)]
        return _read(text, name)
    return {}, []


def _read(text: str, name: str) -> tuple[dict[str, RainRecord], list[Mistake]]:
    tables = Path(__file__).parent.parent / "tables"
    makers = state_of([tables / "hourly.py", tables / "rain_record.py", tables.parent / "science" / "driving_rain.py"])
    key = hashlib.blake2b(f"{__version__} {makers} {name}\n{text}".encode(), digest_size=16).hexdigest()
    place = f"rain-record-{hashlib.blake2b(name.encode(), digest_size=6).hexdigest()}.bin"
    found = kept(place, key)
    if found is not None:
        return {name: _record(name, *found)}, []
    from speclint.tables.hourly import read_hourly

    reading = read_hourly(text, name)
    if reading.record is None:
        return {}, [Mistake(name, fault.line, fault.column, 1, fault.message, fault.help) for fault in reading.faults]
    record = reading.record
    accounts, cells = (plain(record.accounts), plain(record.cells))
    keep(place, key, (record.mean_wind, accounts, cells, record.doubt))
    return {name: record}, []


def _record(
    name: str, wind: float, accounts: tuple[tuple[int, ...], ...], cells: tuple[tuple[float, ...], ...], doubt: str
) -> RainRecord:
    citation = Citation("", f"hourly record {name} of the user's own", "ours")
    whole = tuple(Account(*account) for account in accounts)
    return RainRecord(name, "", None, None, None, wind, whole, tuple(Cell(*cell) for cell in cells), citation, doubt)  # type: ignore[arg-type]
