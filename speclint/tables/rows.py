"""Tables of the shared folder: CSV with provenance, read into rows that each carry a citation."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from functools import lru_cache
from typing import NamedTuple

from speclint.citation import STANDINGS, Citation
from speclint.science.after import Standing

UNKEYED: tuple[Standing, ...] = ("common practice", "ours")


class UncitedRow(Exception):
    """A table row that does not say where it comes from, or how far that was read."""

    def __init__(self, table: str, line: int, wanted: str, got: str) -> None:
        super().__init__(f"wanted {wanted} in line {line} of {table}; got {got!r}")
        self.table = table
        self.line = line


class BadCell(Exception):
    """A table cell that is missing or is not of the wanted kind."""

    def __init__(self, table: str, line: int, column: str, got: str) -> None:
        super().__init__(f"wanted a value in column {column} in line {line} of {table}; got {got!r}")


class UnknownRow(Exception):
    """A key that a table does not hold.

    `nearest` names the known keys most like it, best first.
    """

    def __init__(self, table: str, key: str, nearest: tuple[str, ...] = ()) -> None:
        hint = f"; nearest: {'; '.join(nearest)}" if nearest else ""
        super().__init__(f"wanted a row of {table}; got {key!r}{hint}")
        self.table = table
        self.key = key
        self.nearest = nearest


class Row(NamedTuple):
    """One row of a table: its cells by column name, and where they come from."""

    table: str
    line: int
    cells: Mapping[str, str]
    citation: Citation

    def text(self, column: str) -> str:
        """The cell as text; empty where nothing is entered.

        Raises:
            BadCell: If the table has no such column.
        """
        try:
            return self.cells[column]
        except KeyError:
            raise BadCell(self.table, self.line, column, "no such column") from None

    def number(self, column: str) -> float:
        """The cell as a number.

        Raises:
            BadCell: If the cell is empty or is not a number.
        """
        cell = self.text(column)
        try:
            return float(cell)
        except ValueError:
            raise BadCell(self.table, self.line, column, cell) from None

    def number_if_stated(self, column: str) -> float | None:
        """The cell as a number, or None where nothing is entered.

        Raises:
            BadCell: If the cell holds something other than a number.
        """
        return self.number(column) if self.text(column) else None

    def cited(self, group: str) -> Citation:
        """The citation of a group of columns that has one of its own, such as `decay_citation`.

        Raises:
            UncitedRow: If the group has no complete citation.
        """
        return _citation(self.table, self.line, self.cells, f"{group}_")


def parse_table(table: str, text: str) -> tuple[Row, ...]:
    """The rows of a table given as CSV text.

    Raises:
        UncitedRow: If a row lacks its citation.
        BadCell: If a row has more or fewer cells than the heading.
    """
    import csv

    reader = csv.reader(text.splitlines())
    heading = next(reader, [])
    rows = []
    for line in reader:
        if len(line) != len(heading):
            raise BadCell(table, reader.line_num, "of the heading", f"{len(line)} cells")
        cells = dict(zip(heading, line, strict=True))
        rows.append(Row(table, reader.line_num, cells, _citation(table, reader.line_num, cells, "")))
    return tuple(rows)


@lru_cache(maxsize=32)
def read_table(table: str) -> tuple[Row, ...]:
    """The rows of the table at a place in the shared folder, such as `wood/species.csv`.

    Raises:
        UncitedRow: If a row lacks its citation.
    """
    return parse_table(table, read_shared(table).decode("utf-8"))


def read_shared(place: str) -> bytes:
    """The bytes of a file in the shared folder, unpacked where its name ends in `.gz`."""
    from speclint.paths import shipped

    found = shipped("shared")
    for step in place.split("/"):
        found = found.joinpath(step)
    content = found.read_bytes()
    if place.endswith(".gz"):
        import zlib

        return zlib.decompress(content, wbits=31)  # 31: a gzip heading, the largest window
    return content


def unknown(table: str, key: str, known: Iterable[str], count: int = 3) -> UnknownRow:
    """The exception for a key that a table lacks, with the known keys that contain it, then those spelled like it."""
    import difflib

    sought = key.casefold().strip()
    folded = {name.casefold(): name for name in known}
    longer = sorted((name for name in folded if sought and sought in name), key=len)
    close = difflib.get_close_matches(sought, folded, n=count, cutoff=0.5)
    return UnknownRow(table, key, tuple(folded[name] for name in dict.fromkeys([*longer, *close]))[:count])


def _citation(table: str, line: int, cells: Mapping[str, str], prefix: str) -> Citation:
    stated = cells.get(f"{prefix}standing", "")
    for standing in STANDINGS:
        if standing == stated:
            break
    else:
        raise UncitedRow(table, line, f"one of {', '.join(STANDINGS)} as {prefix}standing", stated)
    key = cells.get(f"{prefix}citation", "")
    if not key and standing not in UNKEYED:
        raise UncitedRow(table, line, f"a key of shared/citations.csv as {prefix}citation", key)
    return Citation(key, cells.get(f"{prefix}place", ""), standing)
