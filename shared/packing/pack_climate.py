"""Packs the monthly normals of all weather stations into `shared/climate`.

Run from the top of the checkout, naming the folder with the unpacked tables `stations.csv` and `normals_all_TPD.csv`:

    python shared/packing/pack_climate.py FOLDER

The same tables give the same bytes.
"""

from __future__ import annotations

import csv
import gzip
import sys
from collections import defaultdict
from pathlib import Path

sys.path.insert(0, str(Path(__file__).resolve().parents[2]))
from speclint.tables.station_names import miles_from_place, place_key, station_key  # the path comes first

TARGET = Path(__file__).resolve().parents[1] / "climate"
MONTHS = ["jan", "feb", "mar", "apr", "may", "jun", "jul", "aug", "sep", "oct", "nov", "dec"]
GROUPS = {  # our column: column of the tables read
    "mean_temperature": "tavg_f",
    "precipitation": "prcp_in",
    "wet_days": "wetdays",
    "humidity": "rh_mean",
    "wind": "wind_mph",
    "snowfall": "snow_in",
    "sunshine": "sun_pct",
}
OWN_COUNTRY = frozenset(["FM", "MH", "PW"])  # states that are countries in free association
# fmt: off
UPPER = frozenset((
    "AP", "WSO", "WFO", "WSFO", "NWSFO", "NAS", "NAF", "AFB", "AAF", "WWTP", "WTP", "NM", "NP", "SP", "RS",
    "HQ", "USA", "USDA", "II", "III", "ATDD", "BLM", "LBJ", "JFK", "L&D", "PH", "DOT", "FAA", "CRN", "MCAS", "LH",
    "NWS", "UCLA", "ASU", "USC", "N", "S", "E", "W", "NE", "NW", "SE", "SW", "NNE", "ENE", "ESE", "SSE", "SSW", "WSW",
    "WNW", "NNW",
))
# fmt: on
RENAMED = {  # a name cut short in the tables: what it stands for
    "Bristol-Jhnsn Cty-Kngsprt": "Bristol-Johnson City-Kingsport",
    "Greensboro-Wnstn-Salm-Hghpt": "Greensboro-Winston-Salem-High Point",
    "Washington Nat'L": "Washington National",
    "New York Jfk Ap": "New York JFK AP",
    "New York Laguardia Ap": "New York Laguardia AP",
    "Mcgrath": "McGrath",
    "Minneapolis-St.Paul": "Minneapolis-St. Paul",
}
ALSO_CALLED = {  # towns that a station also stands for
    "Greensboro-Winston-Salem-High Point": ("Greensboro", "Winston-Salem", "High Point"),
    "Avoca": ("Scranton", "Wilkes-Barre"),
    "New York Central Park": ("New York", "Manhattan"),
    "Barrow": ("Utqiagvik",),
}


def main(folder: Path) -> None:
    """Reads the two tables in `folder` and writes the index and one file a state."""
    stations = full_stations(folder / "stations.csv")
    known = {station["ghcn_id"] for station in stations if station["ghcn_id"]}
    stations += [one for one in plain_stations(folder / "normals_all_TPD.csv") if one["ghcn_id"] not in known]
    tell_twins_apart(stations)
    by_state = defaultdict(list)
    for station in sorted(stations, key=lambda one: (one["state"], one["name"])):
        station["row"] = str(len(by_state[station["state"]]))
        by_state[station["state"]].append(station)
    for state, members in by_state.items():
        heading = ["name", "period", *(f"{group}_{month}" for group in GROUPS for month in MONTHS)]
        rows = [[one["name"], one["period"], *one["values"].split(",")] for one in members]
        write(TARGET / "stations" / f"{state}.csv.gz", heading, rows)
    heading = ["keys", "name", "state", "country", "latitude", "longitude", "elevation", "row", "complete"]
    rows = [[keys(one), *(one[column] for column in heading[1:])] for one in sorted(stations, key=preference)]
    write(TARGET / "station_index.csv.gz", heading, rows)
    write_sunshine([one for one in sorted(stations, key=lambda one: (one["state"], one["name"])) if one["sunshine"]])


def write_sunshine(stations: list[dict[str, str]]) -> None:
    """Writes the share of possible sunshine of the few stations that observe it, as one open table."""
    heading = ["name", "state", "latitude", "longitude", *MONTHS, "citation", "place", "standing"]
    source = ["noaa-ccd-2018", "monthly humidity wind and sunshine by station", "published"]
    rows = [[*(one[column] for column in heading[:4]), *one["sunshine"].split(","), *source] for one in stations]
    text = "".join(",".join(cells) + "\n" for cells in [heading, *rows])
    (TARGET / "sunshine.csv").write_text(text, encoding="utf-8")


def full_stations(table: Path) -> list[dict[str, str]]:
    """The stations that have more than temperature, precipitation and wet days."""
    stations = []
    for row in rows_of(table):
        name = RENAMED.get(row["name"], row["name"])
        complete = bool(row["rh_mean_jan"] and row["wind_mph_jan"])
        stations.append(station(row, name, row["country"], row["noaa_name"], row["period"].split()[0], complete))
    return stations


def plain_stations(table: Path) -> list[dict[str, str]]:
    """The stations that have temperature, precipitation and wet days alone."""
    stations = []
    for row in rows_of(table):
        country = row["state"] if row["state"] in OWN_COUNTRY else "US"
        stations.append(station(row, written(row["name"]), country, "", "1981-2010", False))
    return stations


def rows_of(table: Path) -> list[dict[str, str]]:
    with table.open(encoding="utf-8", newline="") as opened:
        return list(csv.DictReader(opened))


def station(
    row: dict[str, str], name: str, country: str, other_name: str, period: str, complete: bool
) -> dict[str, str]:
    """One station, with its printed values joined in the order of `GROUPS`."""
    values = [row.get(f"{column}_{month}", "") for column in GROUPS.values() for month in MONTHS]
    if not all(values[:36]):
        raise SystemExit(f"{name}: a month has no temperature, precipitation or wet days")
    sunshine = [row.get(f"sun_pct_{month}", "") for month in MONTHS]
    return {
        "sunshine": ",".join(shortest(value) for value in sunshine) if all(sunshine) else "",
        "ghcn_id": row["ghcn_id"],
        "name": name.replace(",", ""),
        "other_name": other_name,
        "state": row["state"],
        "country": country,
        "latitude": row["lat"],
        "longitude": row["lon"],
        "elevation": row["elev_m"],
        "period": period,
        "complete": "yes" if complete else "no",
        "values": ",".join(shortest(value) for value in values),
    }


def shortest(value: str) -> str:
    """A printed number without an empty decimal."""
    return value[:-2] if value.endswith(".0") else value


def written(name: str) -> str:
    """A station's name, printed in capitals in the tables, in ordinary letters."""
    words = [word if word in UPPER or not word[:1].isalpha() else capitalised(word) for word in name.split()]
    return " ".join(words).replace("Mc ", "Mc")


def capitalised(word: str) -> str:
    for mark in "-/":
        if mark in word:
            return mark.join(capitalised(part) for part in word.split(mark))
    if word[1:2] == "'":  # D'Alene, but not Devil's
        return word[:2] + word[2:].capitalize()
    if word.startswith("MC") and len(word) > 4:
        return "Mc" + word[2:].capitalize()
    return word.capitalize()


def tell_twins_apart(stations: list[dict[str, str]]) -> None:
    """Adds its elevation to the name of the higher of two stations of one name in one state."""
    taken = set()
    for one in sorted(stations, key=lambda one: (one["complete"] == "no", float(one["elevation"]))):
        if (station_key(one["name"]), one["state"]) in taken:
            one["town"] = one["name"]
            one["name"] += f" at {float(one['elevation']):.0f} m"
        taken.add((station_key(one["name"]), one["state"]))


def keys(one: dict[str, str]) -> str:
    """The names under which a station is found, between bars."""
    names = [one["name"], one["other_name"], one.get("town", ""), *ALSO_CALLED.get(one["name"], ())]
    if one["other_name"] and one["name"] not in ALSO_CALLED:
        names += one["name"].replace("/", "-").split("-")
    found = dict.fromkeys(station_key(name) for name in names if name)
    found.update(dict.fromkeys(place_key(key) for key in list(found)))
    return f"|{'|'.join(found)}|"


def preference(one: dict[str, str]) -> tuple[object, ...]:
    """Sorts stations that share a town: the fullest record first, then the one nearest to it, then the lowest."""
    key = station_key(one["name"])
    own = place_key(key) != key or "town" in one
    return (not one["other_name"], one["complete"] == "no", own, miles_from_place(key), float(one["elevation"]), key)


def write(path: Path, heading: list[str], rows: list[list[str]]) -> None:
    """Writes rows as packed CSV, without name or time in the packing."""
    text = "".join(",".join(cells) + "\n" for cells in [heading, *rows])
    if any(len(cells) != len(heading) for cells in rows) or '"' in text:
        raise SystemExit(f"{path.name}: a cell holds a comma or a quotation mark")
    path.parent.mkdir(exist_ok=True)
    path.write_bytes(gzip.compress(text.encode("utf-8"), compresslevel=9, mtime=0))


if __name__ == "__main__":
    main(Path(sys.argv[1]))
