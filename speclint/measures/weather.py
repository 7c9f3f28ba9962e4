"""Rain and wind of the lot: from an hourly record, from what the plan states, or from the nearest records."""

from __future__ import annotations

from collections.abc import Sequence
from functools import lru_cache

from speclint.citation import Citation
from speclint.exposure.climates import BORROWED_WIND, POINTS, SPREADS, RainClimate, widened
from speclint.exposure.made_rain import made_rain, mean_direction, shares_by_ten, turned
from speclint.exposure.rain_rays import JointRain
from speclint.measures.climate import HIGH, station_of
from speclint.measures.facts import Facts, NotStated, Working
from speclint.measures.register import measure
from speclint.science.driving_rain import hourly_driving_rain, mean_wall_driving_rain
from speclint.tables.rain_record import (
    HOURS_OF_YEAR,
    Directions,
    RainRecord,
    find_record,
    nearest_directions,
    sure_directions,
)
from speclint.tables.stations import Station, ground_distance, nearest_station
from speclint.units import angle_between

NEXT = 20.0  # km: within it a record is the lot's own but for its trees and hills
NEAR = 80.0  # km: a record no farther stands for the lot
REGION = 500.0  # km: beyond it the nearest records say nothing of the lot
STEADY = 0.3  # steadiness from which a direction repeats from year to year
AGREES = 45.0  # degrees between a stated direction and a record's
NEAREST = 3
LIKELY = (0.4, 2.5)  # a year of rain over the normals outside of which units are doubted; ours
SNOW_TO_WATER = 0.1
OURS = Citation("", "fit and spreads found by leaving out each of 59 airports in turn", "ours")


@measure("site", "rain climate", "record", "driving rain by direction, wind speed and rate: where it comes from")
def rain_climate(site: Facts, work: Working) -> RainClimate:
    """A record of the lot or near it; else directions as stated or of the nearest records, amounts from means."""
    named = work.maybe(site, "rain record")
    if named is not None:
        record = _named_record(site, work, str(named))
        for other in ("rain wind", "rain shares"):
            if work.maybe(site, other) is not None:
                work.note(f"{other} of the plan is not used: the rain record tells the directions")
        return _of_record(work, record, "own record" if _is_file(named) else "record", _away(site, work, record))
    station = station_of(site, work)
    place = _place(site, work, station)
    (near, away), *_ = nearest_directions(*place, 1)
    level = abs(_elevation(site, work, station) - near.elevation) <= HIGH
    shares, wind = work.maybe(site, "rain shares"), work.maybe(site, "rain wind")
    if shares is None and away <= NEAR and level and (wind is None or _agrees(near, float(wind))):
        if wind is not None:
            work.note("the rain wind of the plan agrees with the record nearby, which tells the directions more fully")
        return _of_record(work, find_record(near.title), "record nearby", away)
    if shares is not None:
        return _made(work, station, place, shares_by_ten(shares), "stated shares", "directions as the plan states them")
    if wind is not None:
        words = "rain wind as the plan states it, spread as rain is at the records with a steady direction"
        return _made(work, station, place, _steady_shape(float(wind)), "stated direction", words)
    found = [(one, far) for one, far in nearest_directions(*place, NEAREST) if far <= REGION]
    if found:
        told = ", ".join(f"{one.title} ({far:.0f} km)" for one, far in found)
        mean = [sum(one.shares[at] for one, _ in found) / len(found) for at in range(len(found[0][0].shares))]
        work.note("rain can come from another side in a gorge, on a ridge or behind a range: a stated rain wind wins")
        return _made(work, station, place, mean, "nearest records", f"directions of the nearest records: {told}")
    return _made(work, station, place, [1.0] * 36, "no direction", "direction of driving rain not known: all alike")


def _is_file(named: object) -> bool:
    return str(named).lower().endswith(".csv")


def _named_record(site: Facts, work: Working, named: str) -> RainRecord:
    if _is_file(named):
        record = work.sheet.records.get(named)
        if record is None:
            raise work.absent(f"the file {named} could not be used")
        return record
    return find_record(named)


def _place(site: Facts, work: Working, station: Station) -> tuple[float, float]:
    latitude, longitude = work.maybe(site, "latitude"), work.maybe(site, "longitude")
    if latitude is not None and longitude is not None:
        return float(latitude), float(longitude)
    return station.latitude, station.longitude


def _elevation(site: Facts, work: Working, station: Station) -> float:
    stated = work.maybe(site, "elevation")
    return station.elevation if stated is None else float(stated)


def _away(site: Facts, work: Working, record: RainRecord) -> float:
    """How far a record that the plan names is from the lot; 0 where one of the two places is not known. [km]"""
    if record.latitude is None or record.longitude is None:
        return 0.0
    try:
        place = _place(site, work, station_of(site, work))
    except NotStated:
        return 0.0
    return ground_distance(*place, record.latitude, record.longitude)


def _agrees(record: Directions, wind: float) -> bool:
    direction, _ = mean_direction(record.shares)
    return angle_between(direction, wind) <= AGREES


def _of_record(work: Working, record: RainRecord, source: str, away: float) -> RainClimate:
    work.cite(record.citation)
    work.cite(Citation("iso-15927-3", "hourly index", "second-hand"))
    one = len(record.accounts) == 1
    spreads = [SPREADS["one year"]] if one else []
    if away > NEXT:
        spreads.append(SPREADS["record nearby"])
    if away >= 1:
        work.note(f"{record.title} is {away:.0f} km away")
    for account in record.accounts:
        lost = account.calm + account.no_direction
        froze = "snow counted as rain, for want of temperatures"
        if account.freezing is not None:
            froze = f"not counted: {account.freezing:.0f} mm below freezing"
        work.note(
            f"{account.year}: {account.hours} hours, {account.rain:.0f} mm; {froze}; "
            f"{lost:.0f} mm in calm air or without direction drive nothing"
        )
    if source == "own record":
        _check_amount(work, record)
    if record.normal_over_rain is not None:
        work.note(f"these years brought {1 / record.normal_over_rain:.2f} times the rain of the 1981-2010 normals")
    if record.state:
        work.note("amounts of single hours are about 8 % low at these airports, against their own six-hour totals")
    if record.doubt:
        work.note(f"doubtful: {record.doubt}")
    if one:
        work.note("one year of record: the worst wall's rain differs by about 29 % from year to year")
    damp = [
        account.damp * HOURS_OF_YEAR / account.damp_known
        for account in record.accounts
        if account.damp_known > 0.9 * HOURS_OF_YEAR
    ]
    title = f"hourly record of {record.title}, {record.years}"
    climate = RainClimate(
        title + (f", {away:.0f} km away" if away >= 1 else ""),
        source,
        _rain_of_record(record),
        widened(*spreads),
        len(record.accounts),
        sum(damp) / len(damp) if damp else None,
    )
    _note_direction(work, climate)
    return climate


def _check_amount(work: Working, record: RainRecord) -> None:
    """Note where the rain of a record of the user's own is far from the normals of the lot's station."""
    try:
        normal = sum(station_of(work.facts, work).precipitation)
    except NotStated:
        return
    rain = sum(account.rain for account in record.accounts) / len(record.accounts)
    if not LIKELY[0] * normal <= rain <= LIKELY[1] * normal:
        work.note(
            f"check its units: {rain:.0f} mm of rain a year, where the normals of the station give {normal:.0f} mm"
        )


@lru_cache(maxsize=16)
def _rain_of_record(record: RainRecord) -> JointRain:
    calm = sum(account.calm for account in record.accounts) / len(record.accounts)
    return JointRain(record.cells, calm)


def _note_direction(work: Working, climate: RainClimate) -> None:
    direction, steadiness = climate.direction
    work.note(f"driving rain comes from {direction:.0f} degrees on the whole, steadiness {steadiness:.2f}")
    if steadiness < STEADY:
        work.note("steadiness below 0.3: another year may bring it from another side")


def _made(
    work: Working, station: Station, place: tuple[float, float], shares: Sequence[float], source: str, words: str
) -> RainClimate:
    wind, words_of_wind, borrowed = _mean_wind(work, station, place)
    rain, left_out = _rain_of(station)
    work.note(f"{words}; amount from {rain:.0f} mm of rain ({left_out}) and {words_of_wind}")
    work.note("no hourly record: wind speeds after Rayleigh at 1.22 of the mean, 1.5 mm/h of rain")
    work.cite(OURS)
    work.cite(station.citation)
    work.call(mean_wall_driving_rain, rain=rain, wind=wind)
    spreads = [SPREADS["amount from means"]]
    spreads.append(SPREADS.get(source, SPREADS["stated direction"]))  # shares are stated no better than a direction
    if borrowed:
        spreads.append(BORROWED_WIND)
    return RainClimate(words, source, made_rain(tuple(shares), rain, wind), widened(*spreads), 0, None)


def _rain_of(station: Station) -> tuple[float, str]:
    """Yearly rain without snow [mm], and how the snow was left out."""
    if station.snowfall is not None:
        months_of_snow = zip(station.precipitation, station.snowfall, strict=True)
        rain = sum(max(0.0, whole - SNOW_TO_WATER * snow) for whole, snow in months_of_snow)
        return rain, "the snow of each month left out, ten to one"
    months = zip(station.precipitation, station.mean_temperature, strict=True)
    return sum(amount for amount, mean in months if mean >= 0), "months below freezing on the mean left out"


def _mean_wind(work: Working, station: Station, place: tuple[float, float]) -> tuple[float, str, bool]:
    """Mean wind as stated, of the station, or of the nearest that observes wind [m/s]; and whether it is borrowed."""
    stated = work.maybe(work.facts, "mean wind")
    if stated is not None:
        return float(stated), "the mean wind that the plan states", False
    if station.wind is not None:
        if station.air_citation is not None:
            work.cite(station.air_citation)
        return sum(station.wind) / 12, f"a mean wind of {sum(station.wind) / 12:.1f} m/s", False
    other, away, _ = nearest_station(*place, complete=True)
    if other.wind is None:
        raise work.absent(f"no wind is held for {station.title} nor for {other.title}")
    if other.air_citation is not None:
        work.cite(other.air_citation)
    mean = sum(other.wind) / 12
    work.note(f"no wind is held for {station.title}: wind of {other.title}, {away:.0f} km away")
    return mean, f"a mean wind of {mean:.1f} m/s", True


@lru_cache(maxsize=64)
def _steady_shape(wind: float) -> tuple[float, ...]:
    """The mean of the records whose rain has a steady direction, each turned to a direction. [deg]"""
    sums = [0.0] * 36
    for one in sure_directions():
        direction, steadiness = mean_direction(one.shares)
        if steadiness >= STEADY:
            for at, share in enumerate(turned(one.shares, wind - direction)):
                sums[at] += share
    return tuple(sums)


@measure("site", "rain source", "choice", "how the direction of driving rain is known")
def rain_source(site: Facts, work: Working) -> str:
    """One of: own record, record, record nearby, stated shares, stated direction, nearest records, no direction."""
    return str(work.need(site, "rain climate").source)


@measure(
    "site", "driving rain", "depth", "rain that wind drives in a mean year onto an open wall, mean of all bearings"
)
def driving_rain(site: Facts, work: Working) -> float:
    """The mean of sixteen walls on an open field."""
    climate = work.need(site, "rain climate")
    work.call(hourly_driving_rain, speed=1.0, rate=1.0, angle=0.0)
    mean = sum(climate.walls) / POINTS
    low, high = widened(climate.spread, SPREADS["one year"] if climate.years == 1 else (1.0, 1.0))
    work.range(mean * low, mean * high, f"how far eight walls of ten were from an estimate by: {climate.source}")
    return float(mean)


@measure("site", "rain direction", "angle", "the direction that driving rain comes from on the whole")
def rain_direction(site: Facts, work: Working) -> float:
    """The vector mean, weighted by driving rain."""
    return float(round(work.need(site, "rain climate").direction[0]) % 360)


@measure(
    "site", "rain steadiness", "ratio", "1 where all driving rain comes from one direction, 0 where from all alike"
)
def rain_steadiness(site: Facts, work: Working) -> float:
    """Length of the vector mean over the sum."""
    return float(work.need(site, "rain climate").direction[1])


@measure("site", "worst bearing", "angle", "bearing of the open wall that driving rain strikes most")
def worst_bearing(site: Facts, work: Working) -> float:
    """Of the sixteen points."""
    walls = work.need(site, "rain climate").walls
    return float(walls.index(max(walls)) * 360 / POINTS)


@measure("site", "damp hours", "hours", "hours of damp air above freezing in a mean year")
def damp_hours(site: Facts, work: Working) -> float:
    """Relative humidity of 80 % or more above freezing, from the hourly record."""
    climate = work.need(site, "rain climate")
    if climate.damp is None:
        raise work.absent("no hourly record with temperature and humidity stands for the lot")
    work.cite(Citation("iso-9223", "hours of wetness", "memory"))
    return float(climate.damp)


@measure("site", "station distance", "length", "how far the weather station is from the lot")
def station_distance(site: Facts, work: Working) -> float:
    """Along the ground, from the coordinates of the lot."""
    latitude, longitude = float(work.need(site, "latitude")), float(work.need(site, "longitude"))
    station = station_of(site, work)
    return 1000 * ground_distance(latitude, longitude, station.latitude, station.longitude)


def _nearest(site: Facts, work: Working) -> tuple[Directions, float]:
    found, away = nearest_directions(*_place(site, work, station_of(site, work)), 1)[0]
    work.cite(found.citation)
    return found, away


@measure("site", "nearest record", "text", "the hourly record of rain and wind that is nearest to the lot")
def nearest_record_title(site: Facts, work: Working) -> str:
    """Of the shipped records that are without doubt."""
    return _nearest(site, work)[0].title


@measure("site", "record distance", "length", "how far the nearest hourly record of rain and wind is from the lot")
def record_distance(site: Facts, work: Working) -> float:
    """From the coordinates of the lot, or of its weather station."""
    return 1000 * _nearest(site, work)[1]


@measure("site", "record direction", "angle", "the direction that driving rain of the nearest hourly record comes from")
def record_direction(site: Facts, work: Working) -> float:
    """The vector mean, weighted by driving rain."""
    return float(round(mean_direction(_nearest(site, work)[0].shares)[0]) % 360)


@measure("site", "record steadiness", "ratio", "how steadily rain of the nearest hourly record keeps a direction")
def record_steadiness(site: Facts, work: Working) -> float:
    """1 where all comes from one direction, 0 where from all alike."""
    return mean_direction(_nearest(site, work)[0].shares)[1]


@measure("site", "rain wind off record", "count", "degrees from the stated rain wind to the nearest record's rain")
def rain_wind_off_record(site: Facts, work: Working) -> float:
    """The lesser way round; not told where the record stands much higher or lower than the lot."""
    wind, direction = float(work.need(site, "rain wind")), float(work.need(site, "record direction"))
    station = station_of(site, work)
    record, _ = _nearest(site, work)
    if abs(_elevation(site, work, station) - record.elevation) > HIGH:
        raise work.absent(f"{record.title} stands more than {HIGH:.0f} m higher or lower than the lot")
    return round(angle_between(direction, wind))
