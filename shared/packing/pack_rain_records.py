"""Reduces hourly rain and wind of every station to the joint tables in `shared/climate/rain_records`.

Run from the top of the checkout, naming the folder with the hourly files NAME-YEAR.csv.gz:

    python shared/packing/pack_rain_records.py FOLDER

The same files give the same bytes.
"""

from __future__ import annotations

import csv
import gzip
import sys
from collections import defaultdict
from collections.abc import Iterator
from pathlib import Path

sys.path.insert(0, str(Path(__file__).resolve().parents[2]))
from speclint.tables.rain_record import Account, Cell, Hour, reduced  # the path comes first

TARGET = Path(__file__).resolve().parents[1] / "climate"
MPH, INCH = 0.44704, 25.4
FIELDS = {  # stations that are not in the table of rain roses: name, state, latitude, longitude, elevation, doubt
    "MacLeishTower": ("Whately tower above the trees", "MA", "42.449", "-72.680", "250"),
    "MacLeishOrchard": ("Whately orchard in the woods", "MA", "42.449", "-72.680", "250"),
}
ISD = ("noaa-isd-lite", "hourly rain and wind reduced to a joint table", "second-hand")
MACLEISH = ("whately-2015", "ten-minute rain and wind of 2015 reduced to a joint table", "second-hand")
HEADING = (
    "record", "name", "state", "latitude", "longitude", "elevation", "years", "mean_wind", "normal_over_rain",
    "shares",
    "citation", "place", "standing", "doubt",
)  # fmt: skip


def main(folder: Path) -> None:
    """Reads the hourly files in `folder`; writes one reduced file a place, and the index of them."""
    files = defaultdict(list)
    for path in sorted(folder.glob("*-*.csv.gz")):
        files[path.name.rsplit("-", 1)[0]].append(path)
    with (TARGET / "rain_roses.csv").open(encoding="utf-8", newline="") as opened:
        roses = {row["airport"]: row for row in csv.DictReader(opened)}
    index = []
    for place, paths in sorted(files.items()):
        accounts, cells, mean_wind = reduced(hour for path in paths for hour in hours_of(path))
        record = place if place in FIELDS or place in roses else f"K{place}"
        write(record, accounts, cells)
        years = ";".join(str(account.year) for account in accounts)
        shares = shares_of(cells)
        if place in FIELDS:
            about = [*FIELDS[place], years, f"{mean_wind:.2f}", "", shares, *MACLEISH, "a field station, one year"]
        else:
            rose = roses[record]
            about = [*(rose[column] for column in HEADING[1:6]), years, f"{mean_wind:.2f}", rose["normal_over_rain"]]
            about += [shares]
            about += [*ISD, rose["doubt"]]
        index.append([record, *about])
    with (TARGET / "rain_records.csv").open("w", encoding="utf-8", newline="") as opened:
        csv.writer(opened, lineterminator="\n").writerows([HEADING, *index])


def shares_of(cells: tuple[Cell, ...]) -> str:
    """Shares of the driving rain from each ten degrees, north first, in a thousandth of the whole."""
    driven = [0.0] * 36
    for cell in cells:
        driven[round(cell.direction / 10) % 36] += sum(cell.driven)
    return ";".join(f"{1000 * one / sum(driven):.1f}" for one in driven)


def hours_of(path: Path) -> Iterator[Hour]:
    """The hours of one file, in our units; a calm of direction zero stays a calm."""
    year = int(path.name.rsplit("-", 1)[1][:4])
    with gzip.open(path, "rt", encoding="utf-8", newline="") as opened:
        for row in csv.DictReader(opened):
            fahrenheit = number(row["temp"])
            yield Hour(
                year,
                number(row["wind_dir"]),
                number(row["wind_speed"], MPH),
                number(row["precip"], INCH),
                None if fahrenheit is None else (fahrenheit - 32) / 1.8,
                number(row["humid"]),
            )


def number(cell: str, scale: float = 1.0) -> float | None:
    """A cell in our unit, or None where it is blank."""
    return float(cell) * scale if cell else None


def write(record: str, accounts: tuple[Account, ...], cells: tuple[Cell, ...]) -> None:
    """Writes one reduced record, packed without name or time."""
    lines = []
    for a in accounts:
        amounts = ",".join(f"{amount:.1f}" for amount in (a.rain, a.freezing or 0.0, a.calm, a.no_direction))
        lines.append(f"year,{a.year},{a.hours},{amounts},{a.damp},{a.damp_known}")
    for c in cells:
        driven = ",".join(f"{amount:.4g}" if amount else "" for amount in c.driven)
        lines.append(f"{c.direction:.6g},{c.speed:.2f},{c.rate:.3g},{c.hours:.2f},{c.rain:.4g},{driven}")
    path = TARGET / "rain_records" / f"{record}.csv.gz"
    path.parent.mkdir(exist_ok=True)
    path.write_bytes(gzip.compress(("\n".join(lines) + "\n").encode("utf-8"), compresslevel=9, mtime=0))


if __name__ == "__main__":
    main(Path(sys.argv[1]))
