"""Measures of the site: its station, decay hazard and design rain."""

from __future__ import annotations

from typing import Any

from speclint.citation import Citation
from speclint.measures.facts import Facts, Working
from speclint.measures.register import measure
from speclint.science.decay_climate import decay_hazard_class, decay_hazard_index
from speclint.science.snow import ground_snow_depth
from speclint.tables.rows import UnknownRow
from speclint.tables.stations import TOO_FAR, Station, find_station, ground_distance, nearest_station

FAR = 80.0  # km
HIGH = 300.0  # m


def station_of(site: Facts, work: Working) -> Station:
    """The station a site names, or the nearest to its coordinates, with notes on how far and how much higher."""
    named = work.maybe(site, "weather")
    latitude, longitude = work.maybe(site, "latitude"), work.maybe(site, "longitude")
    if named is not None:
        try:
            station = find_station(named)
        except UnknownRow as unknown:
            nearest = " or ".join(unknown.nearest) or "none near"
            raise work.absent(f"there is no station “{named}”; nearest names: {nearest}") from None
        if latitude is not None and longitude is not None:
            away = ground_distance(latitude, longitude, station.latitude, station.longitude)
            _note_distance(work, station, away)
    elif latitude is not None and longitude is not None:
        station, away, _ = nearest_station(latitude, longitude)
        if away > TOO_FAR:
            work.note(f"the nearest station, {station.title}, is {away:.0f} km away")
            raise work.missing(site, "weather")
        work.note(f"nearest station: {station.title}, {away:.0f} km away")
        _note_distance(work, station, away)
    else:
        raise work.missing(site, "weather")
    elevation = work.maybe(site, "elevation")
    if elevation is not None and abs(station.elevation - elevation) > HIGH:
        higher = "above" if station.elevation > elevation else "below"
        apart = abs(station.elevation - elevation)
        work.note(f"the station stands {apart:.0f} m {higher} the lot: take the index with care")
    work.cite(station.citation)
    return station


def _note_distance(work: Working, station: Station, away: float) -> None:
    if away > FAR:
        work.note(f"{station.title} is {away:.0f} km from the lot: far for one climate")


@measure("site", "station", "text", "the weather station that stands for the lot")
def station(site: Facts, work: Working) -> str:
    """Name and state of the station."""
    return station_of(site, work).title


@measure("site", "decay hazard index", "index", "how well the climate suits decay above ground")
def hazard_index(site: Facts, work: Working) -> float:
    """The index, from the station's monthly normals."""
    found = station_of(site, work)
    work.note(f"monthly means and wet days of {found.title}, {found.period}")
    return float(work.call(decay_hazard_index, mean_temperature=found.mean_temperature, wet_days=found.wet_days))


@measure("site", "decay hazard", "choice", "class of the decay hazard index: low, moderate or high")
def hazard(site: Facts, work: Working) -> Any:
    """The class."""
    return work.call(decay_hazard_class, index=work.need(site, "decay hazard index"))


@measure("site", "yearly rain", "depth", "rain and melted snow in a mean year")
def yearly_rain(site: Facts, work: Working) -> float:
    """The sum of the monthly normals, in mm."""
    return sum(station_of(site, work).precipitation)


@measure(
    "site",
    "design rain",
    "rain rate",
    "rain as stated for gutters, or the worst hour of the city in a hundred years",
)
def design_rain(site: Facts, work: Working) -> float:
    """The stated intensity, or a table value for the city the site names."""
    from speclint.tables.rain import rain_intensity

    stated = work.maybe(site, "rain intensity")
    if stated is not None:
        return float(stated)
    named = work.maybe(site, "weather")
    if named is None or "," not in named:
        raise work.missing(site, "rain intensity")
    city, _, state = named.rpartition(",")
    try:
        found = rain_intensity(city.strip(), state.strip())
    except UnknownRow:
        raise work.missing(site, "rain intensity") from None
    work.cite(found.citation)
    work.note("the hour of rain that comes once in 100 years; a storm of five minutes rains harder")
    return found.intensity


@measure("site", "snow depth", "length", "depth of the design snow on the ground")
def snow_depth(site: Facts, work: Working) -> float:
    """Design ground snow over its density."""
    return float(work.call(ground_snow_depth, ground_load=work.need(site, "ground snow")))


@measure("site", "near salt", "yes or no", "whether salt water is within 3,000 ft")
def near_salt(site: Facts, work: Working) -> str:
    """Within the distance at which salt in the air matters to metal."""
    work.cite(Citation("fema-tb-8", "distance classes", "memory"))
    return "yes" if work.need(site, "salt water") <= 3000 * 0.3048 else "no"
