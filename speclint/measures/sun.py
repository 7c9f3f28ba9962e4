"""Sun and ultraviolet light on each wall and course of it, and how fast it dries."""

from __future__ import annotations

import math

from speclint.citation import Citation
from speclint.exposure.face import bands
from speclint.exposure.strike import Sunned
from speclint.exposure.sun_climate import NO_SNOW, SunClimate, sun_climate
from speclint.exposure.sun_rays import SunYear
from speclint.exposure.sunned import Ground, Rise, sunned_courses
from speclint.measures.climate import station_of
from speclint.measures.exposure import EXPOSED, SHELTERED, class_of, course_height
from speclint.measures.faces import HALF_VIEW, face_of
from speclint.measures.facts import Facts, Sheet, Working
from speclint.measures.moisture import MONTH_NAMES
from speclint.measures.register import measure
from speclint.science.sky import clear_sky, sunshine_share_to_global, ultraviolet
from speclint.science.sun_on_walls import ground_albedo, ultraviolet_albedo
from speclint.tables.stations import Station
from speclint.tables.sunshine import nearest_sunshine

FAR_SUNSHINE = 500.0  # km: beyond it no station's sunshine stands for the lot
NAMED_VIEW = 22.5  # degrees either side of a bearing for which a stated skyline holds
LEAFY = 0.5  # share of their height for which trees that drop their leaves count over the year; ours
WET = 0.35  # rain exposure from which a wall that cannot dry is wet; ours
SUNNY = 0.6  # ultraviolet against an open wall to the noon sun from which a wall counts as exposed; ours
DIM = 0.45  # sun against an open wall to the noon sun, below which a wall dries slowly; ours
CLEAR = (0.5, 1.0)  # where no sunshine is held; ours
TURBID = (0.85, 1.1)  # what clear air of other haze makes of the yearly sun; ours
CLOUDY = (0.9, 1.1)  # what one station's sunshine is unsure by; ours
SNOW_LIES = Citation("", "snow on the ground in months below freezing on the mean", "ours")
LIMITS = (
    "soffits throw no light back, roof edges are endless for the light of the sky, and the horizon is level but for "
    "what the plan states"
)


@measure("site", "sun climate", "record", "sun of a mean year: where the clear hours come from")
def site_sun(site: Facts, work: Working) -> SunClimate:
    """Clear sky by latitude, with the sunshine of the nearest station that observes it, and snow while it freezes."""
    latitude, longitude = work.maybe(site, "latitude"), work.maybe(site, "longitude")
    snow: tuple[bool, ...] = NO_SNOW
    if latitude is None or longitude is None:
        station = station_of(site, work)
        latitude, longitude = station.latitude, station.longitude
        snow = _snow_lies(station, work)
    elif work.maybe(site, "station") is not None:
        snow = _snow_lies(station_of(site, work), work)
    work.call(clear_sky, altitude=45.0, day=172.0)
    sunshine, away = nearest_sunshine(float(latitude), float(longitude))
    if away > FAR_SUNSHINE:
        work.note(f"no sunshine is held within {FAR_SUNSHINE:.0f} km: a year of clear sky, the most there can be")
        return sun_climate("clear sky all year", round(float(latitude), 1), (1.0,) * 12, snow)
    work.cite(sunshine.citation)
    work.call(sunshine_share_to_global, sunshine=0.5)
    title = f"sunshine of {sunshine.title}, {away:.0f} km away"
    return sun_climate(title, round(float(latitude), 1), sunshine.months, snow)


def _snow_lies(station: Station, work: Working) -> tuple[bool, ...]:
    """Whether snow lies on the ground in each month."""
    snow = tuple([temperature < 0 for temperature in station.mean_temperature])
    if any(snow):
        months = ", ".join(name for name, lies in zip(MONTH_NAMES, snow, strict=True) if lies)
        work.note(f"snow is taken to lie on the ground in {months}, the months below freezing on the mean")
        work.cite(SNOW_LIES)
    return snow


@measure("site", "yearly sun", "sun dose", "sun on level ground in a mean year")
def yearly_sun(site: Facts, work: Working) -> float:
    """Beam and light of the sky."""
    climate = work.need(site, "sun climate")
    level = float(climate.year.level)
    low, high, words = _sun_bounds(climate)
    work.range(level * low, level * high, words)
    return level


def _sun_bounds(climate: SunClimate) -> tuple[float, float, str]:
    """Least and greatest factor on a dose of sun, and where from."""
    if min(climate.sunshine) >= 1:
        return CLEAR[0], CLEAR[1], "ours: clear sky all year is the most there can be; clouds may halve it"
    return CLOUDY[0] * TURBID[0], CLOUDY[1] * TURBID[1], "ours: haze, and the sunshine of one station, a tenth each"


def rises_before(wall: Facts, work: Working) -> tuple[Rise, ...]:
    """What stands on the horizon before a wall: hills and woods of the site, and obstructions."""
    stated = work.maybe(wall["site"], "skyline") or ()
    found = [Rise(bearing, NAMED_VIEW, height) for bearing, height in stated]
    middle = float(work.maybe(wall, "starts") or 0.0) + float(work.need(wall, "height")) / 2
    for obstruction in wall["obstructions"]:
        distance = float(work.need(obstruction, "distance"))
        height = float(work.need(obstruction, "height"))
        if work.need(obstruction, "type") == "leafy trees":
            height *= LEAFY
        width = work.maybe(obstruction, "width")
        half = HALF_VIEW if width is None else math.degrees(math.atan2(float(width) / 2, distance))
        up = math.degrees(math.atan2(max(0.0, height - middle), distance))
        found.append(Rise(float(work.need(wall, "faces")), half, up))
    return tuple(found)


def sun_on_courses(wall: Facts, work: Working, sun: SunYear) -> tuple[Sunned, ...]:
    """Sun on each course of a wall, lowest first."""
    floor = max((float(work.maybe(porch, "floor below wood") or 0.0) for porch in wall["porches"]), default=0.0)
    surface = str(work.maybe(wall, "ground") or "lawn")
    ground = Ground(ground_albedo(surface), ultraviolet_albedo(False), floor)
    return sunned_courses(face_of(wall, work), course_height(wall, work), sun, ground, rises_before(wall, work))


@measure("wall", "course sun", "record", "sun and ultraviolet light on each course in a mean year")
def course_sun(wall: Facts, work: Working) -> SunnedCourses:
    """Beam past every roof edge and the skyline, light of the sky left in sight, light from the ground."""
    climate = work.need(wall["site"], "sun climate", "site")
    work.call(ultraviolet, altitude=45.0, day=172.0)
    work.note(LIMITS)
    return SunnedCourses(sun_on_courses(wall, work, climate.year), climate)


class SunnedCourses:
    """Sun on the courses of a wall."""

    def __init__(self, rows: tuple[Sunned, ...], climate: SunClimate) -> None:
        self.rows, self.climate = rows, climate

    def __str__(self) -> str:
        return f"{len(self.rows)} courses"

    def share(self, row: Sunned) -> float:
        """Ultraviolet light on a course against an open wall to the noon sun. [-]"""
        return row.ultraviolet / self.climate.open_wall.ultraviolet


def _mean(wall: Facts, work: Working, attribute: str) -> float:
    """The mean over the wall, by area, of sun on its courses."""
    sunned, struck = work.need(wall, "course sun"), work.need(wall, "course areas")
    areas = struck.areas
    whole = sum(areas)
    rows = zip(sunned.rows, areas, strict=True)
    return float(sum(float(getattr(row, attribute)) * area for row, area in rows) / whole)


class Areas:
    """Areas of the courses of a wall. [m2]"""

    def __init__(self, areas: tuple[float, ...]) -> None:
        self.areas = areas

    def __str__(self) -> str:
        return f"{len(self.areas)} courses"


@measure("wall", "course areas", "record", "area of each course")
def course_areas(wall: Facts, work: Working) -> Areas:
    """Its length at mid-height times its height."""
    face = face_of(wall, work)
    rows = bands(face.peak, course_height(wall, work))
    return Areas(tuple(face.width((bottom + top) / 2) * (top - bottom) for bottom, top in rows))


def sun_by_month(sheet: Sheet, wall: Facts) -> list[float]:
    """Sun on the wood of a wall in each month, the mean of its courses by area. [kWh/m2]"""
    work = Working(sheet, wall, "sun dose", "sun dose")
    climate, areas = work.need(wall["site"], "sun climate"), work.need(wall, "course areas").areas
    found = []
    for month in range(1, 13):
        rows = sun_on_courses(wall, work, climate.month(month))
        found.append(sum(row.total * area for row, area in zip(rows, areas, strict=True)) / sum(areas))
    return found


@measure("wall", "sun dose", "sun dose", "sun on its wood in a mean year: beam, sky and ground")
def sun_dose(wall: Facts, work: Working) -> float:
    """The mean of its courses, by area."""
    found = _mean(wall, work, "total")
    low, high, words = _sun_bounds(work.need(wall["site"], "sun climate"))
    work.range(found * low, found * high, words)
    return found


@measure("wall", "ultraviolet dose", "sun dose", "ultraviolet light of 300 to 400 nm on its wood in a mean year")
def ultraviolet_dose(wall: Facts, work: Working) -> float:
    """The mean of its courses, by area."""
    found = _mean(wall, work, "ultraviolet")
    low, high, words = _sun_bounds(work.need(wall["site"], "sun climate"))
    work.range(found * low, found * high, words)
    return found


@measure("wall", "sun share", "share", "sun on its wood against an open wall that faces the noon sun")
def sun_share(wall: Facts, work: Working) -> float:
    """Its sun dose over that of the open wall at the same place."""
    return float(work.need(wall, "sun dose")) / float(work.need(wall["site"], "sun climate").open_wall.total)


@measure("wall", "ultraviolet share", "share", "ultraviolet light on its wood against an open wall to the noon sun")
def ultraviolet_share(wall: Facts, work: Working) -> float:
    """Its ultraviolet dose over that of the open wall at the same place; haze and clouds cancel."""
    open_wall = work.need(wall["site"], "sun climate").open_wall
    found = float(work.need(wall, "ultraviolet dose")) / float(open_wall.ultraviolet)
    work.range(found * 0.92, found * 1.08, "ours: the spread of the light over the sky")
    return found


@measure("wall", "worst course sun", "share", "ultraviolet light on its sunniest course against an open noon wall")
def worst_course_sun(wall: Facts, work: Working) -> float:
    """The greatest of its courses."""
    sunned = work.need(wall, "course sun")
    return float(max(sunned.share(row) for row in sunned.rows))


@measure("wall", "sun class", "choice", "sheltered, partly or exposed to ultraviolet light, against an open noon wall")
def sun_class(wall: Facts, work: Working) -> str:
    """Sheltered to 0.25 of an open wall to the noon sun, exposed above 0.6."""
    work.cite(Citation("", "classes of ultraviolet at 0.25 and 0.6 of an open wall to the noon sun", "ours"))
    return class_of(float(work.need(wall, "ultraviolet share")), SUNNY)


@measure("wall", "dries slowly", "yes or no", "whether rain reaches it and sun does not")
def dries_slowly(wall: Facts, work: Working) -> str:
    """Rain exposure above 0.35, and less than 0.45 of the sun of an open wall to the noon sun."""
    work.cite(Citation("", "slow drying at a rain exposure above 0.35 and a sun share below 0.45", "ours"))
    wet = float(work.need(wall, "rain exposure")) > WET
    if work.maybe(wall["site"], "terrain") == "wooded" or wall["obstructions"]:
        work.note("wind is kept off as well")
    return "yes" if wet and float(work.need(wall, "sun share")) < DIM else "no"


@measure("wall", "wet hours", "hours", "hours a year that driving rain keeps its lowest course wet: for ranking")
def wet_hours(wall: Facts, work: Working) -> float:
    """Hours of driving rain on it, and after each as long again in full sun, up to four times as long in shade."""
    work.cite(Citation("", "drying as long as the rain in full sun, four times as long in shade", "ours"))
    shade = 1 - min(1.0, float(work.need(wall, "sun share")))
    return float(work.need(wall, "rain hours")) * (2 + 3 * shade)


@measure("wall", "use class", "choice", "class of moisture in service, from ground, splash, rain and drying")
def use_class(wall: Facts, work: Working) -> str:
    """2 under cover, 3.1 wetted and drying, 3.2 wetted for long, 4 in the ground."""
    work.cite(Citation("en-335", "use classes", "memory"))
    work.cite(Citation("", "classes read from rain exposure, splash and drying", "ours"))
    starts = float(work.need(wall, "starts"))
    if starts <= 0:
        return "4"
    splashed = work.maybe(wall, "splash height")
    slow = work.need(wall, "dries slowly") == "yes"
    exposure = float(work.need(wall, "rain exposure"))
    if splashed is not None and starts < float(splashed):
        return "3.2"
    if exposure <= SHELTERED:
        return "2"
    return "3.2" if exposure > 2 * EXPOSED or (slow and exposure > EXPOSED) else "3.1"
