"""What driving rain does to each wall and course of it."""

from __future__ import annotations

import math

from speclint.citation import Citation
from speclint.exposure.climates import widened
from speclint.exposure.courses import Courses, courses_in
from speclint.exposure.shares import free_years
from speclint.measures.faces import face_of
from speclint.measures.facts import Facts, Working
from speclint.measures.register import measure
from speclint.quantity import Quantity
from speclint.science.raindrops import share_past_edge

BAND = 0.3048  # m: height of a band where a wall has no courses; ours
SHELTERED, EXPOSED = 0.25, 0.75  # ours: bounds of the classes, as shares of what the mean open wall takes
ADMITTANCE = (0.5, 0.3, 0.95)  # rain on a low wall over free driving rain, its own eave apart: taken, least, greatest
LOW_PITCH = math.tan(math.radians(20))
CLASSES = ("sheltered", "partly", "exposed")
LIMITS = (
    "straight paths in even wind: air that slows before a wall keeps fine drops off it, and speeds up at its edges; "
    "hourly means, endless roof edges, no water running from course to course, no snow; not for cliffs or gorges"
)


@measure("wall", "courses", "record", "what rain and sun do to each course of logs, or each band of a foot")
def wall_courses(wall: Facts, work: Working) -> Courses:
    """Straight paths of drops by size past every roof edge, for each hour's wind and rain."""
    face = face_of(wall, work)
    climate = work.need(wall["site"], "rain climate", "site")
    middle = float(work.need(wall, "wind factor"))
    found = work.sheet.quantity(wall, "wind factor")
    winds = (middle, getattr(found, "low", middle), getattr(found, "high", middle))
    work.call(share_past_edge, slant=1.0, rate=1.0)
    work.note(LIMITS)
    return Courses(courses_in(face, course_height(wall, work), climate.rain, winds))


def course_height(wall: Facts, work: Working) -> float:
    """Height of a course of stacked logs; a foot where the wall has none or the plan does not say. [m]"""
    course = work.maybe(wall, "course") if work.maybe(wall, "stacked") == "yes" else None
    return float(course or BAND)


@measure("wall", "free driving rain", "depth", "rain that wind drives in a mean year at the open wall, before any roof")
def free_driving_rain(wall: Facts, work: Working) -> float:
    """The hours whose wind blows at it, times its wind factor and its obstruction factor."""
    factor = float(work.need(wall, "wind factor")) * float(work.need(wall, "obstruction factor"))
    mean = _mean_of_years(wall, work) * factor
    spread, words = _spread_of_rain(wall, work)
    low, high = widened(spread, _bounds(wall, work, "wind factor"), _bounds(wall, work, "obstruction factor"))
    work.range(mean * low, mean * high, f"{words}, and the bounds of wind and obstruction, taken together")
    return mean


def _mean_of_years(wall: Facts, work: Working) -> float:
    """Driving rain on the open wall on an open field, in a mean year. [L/m2]"""
    climate = work.need(wall["site"], "rain climate", "site")
    by_year = free_years(climate.rain, float(work.need(wall, "faces")))
    return sum(by_year) / len(by_year) if by_year else 0.0


def _spread_of_rain(wall: Facts, work: Working) -> tuple[tuple[float, float], str]:
    """Least and greatest factor on the driving rain of a wall, from the source and the years; and where from."""
    climate = work.need(wall["site"], "rain climate", "site")
    by_year = free_years(climate.rain, float(work.need(wall, "faces")))
    mean = sum(by_year) / len(by_year) if by_year else 0.0
    words = f"how far eight walls of ten were from an estimate by: {climate.source}" if climate.spread[0] < 1 else ""
    if climate.years < 2 or mean <= 0:
        return climate.spread, words or "one year"
    work.note("on an open field by year: " + ", ".join(f"{amount:.0f} mm" for amount in by_year))
    years = (max(0.05, min(by_year) / mean), max(by_year) / mean)
    told = f"least and greatest of {climate.years} years"
    return widened(climate.spread, years), f"{told}, and {words}" if words else told


def _bounds(wall: Facts, work: Working, name: str) -> tuple[float, float]:
    """Least and greatest factor on a measure of the wall; ones where it has no bounds."""
    found = work.sheet.quantity(wall, name)
    if isinstance(found, Quantity) and found.low is not None and found.high is not None and found.value > 0:
        return max(0.01, found.low / found.value), max(1.0, found.high / found.value)
    return 1.0, 1.0


@measure(
    "wall", "mean open wall", "depth", "driving rain on a bare wall of the lot at its height, mean of all bearings"
)
def mean_open_wall(wall: Facts, work: Working) -> float:
    """Driving rain of the site times the wind factor; the yardstick of the rain exposure."""
    return float(work.need(wall["site"], "driving rain", "site")) * float(work.need(wall, "wind factor"))


@measure("wall", "rain share", "share", "part of the free driving rain that passes its roofs and strikes its wood")
def rain_share(wall: Facts, work: Working) -> float:
    """The mean of its courses, by area."""
    found = work.need(wall, "courses")
    work.range(found.mean("rain_low"), found.mean("rain_high"), "wind at the house a quarter weaker or stronger")
    return float(found.mean("rain"))


@measure("wall", "rain kept off", "share", "part of the free driving rain that its roofs keep off its wood")
def rain_kept_off(wall: Facts, work: Working) -> float:
    """One less the rain share."""
    return 1.0 - float(work.need(wall, "rain share"))


@measure("wall", "lowest course rain", "share", "part of the free driving rain that strikes its lowest course")
def lowest_course_rain(wall: Facts, work: Working) -> float:
    """The first of its courses."""
    row = work.need(wall, "courses").rows[0]
    work.range(row.rain_low, row.rain_high, "wind at the house a quarter weaker or stronger")
    return float(row.rain)


@measure("wall", "exposed courses", "count", "courses that take more than 0.75 of the rain of the mean open wall")
def exposed_courses(wall: Facts, work: Working) -> float:
    """Counted from its courses, each by its share of what is driven at the wall."""
    driven = float(work.need(wall, "free driving rain"))
    mean = float(work.need(wall, "mean open wall"))
    return (
        float(sum(row.rain * driven > EXPOSED * mean for row in work.need(wall, "courses").rows)) if mean > 0 else 0.0
    )


@measure("wall", "rain hours", "hours", "hours of driving rain on its lowest course in a mean year")
def rain_hours(wall: Facts, work: Working) -> float:
    """Hours of rain with wind at the wall, weighted by the share that passes the roofs."""
    return float(work.need(wall, "courses").rows[0].hours)


@measure("wall", "rain on wall", "depth", "driving rain that strikes its wood in a mean year")
def rain_on_wall(wall: Facts, work: Working) -> float:
    """Free driving rain, times the share that passes, times half: what a low wall takes of free driving rain."""
    free, share = float(work.need(wall, "free driving rain")), float(work.need(wall, "rain share"))
    work.cite(Citation("bsd-148", "rain deposition of walls without overhang 0.5 to 0.95", "second-hand"))
    taken, least, most = ADMITTANCE
    own = (least / taken, most / taken)
    low, high = widened(_bounds(wall, work, "free driving rain"), _bounds(wall, work, "rain share"), own)
    found = free * share * taken
    work.range(
        found * low, found * high, "its parts, and 0.3 (ours) to 0.95 of free driving rain on a low wall, together"
    )
    work.note("amounts on walls are unsure by a factor of two to three; shares and the ranking of walls are surer")
    return found


@measure("wall", "rain exposure", "ratio", "rain on its wood against the mean open wall of the lot")
def rain_exposure(wall: Facts, work: Working) -> float:
    """Free driving rain times the rain share, over the mean open wall: terrain and amount cancel."""
    free, share = float(work.need(wall, "free driving rain")), float(work.need(wall, "rain share"))
    mean = float(work.need(wall, "mean open wall"))
    if mean <= 0:
        return 0.0
    spread, words = _spread_of_rain(wall, work)
    bounds = widened(spread, _bounds(wall, work, "obstruction factor"), _bounds(wall, work, "rain share"))
    found = free * share / mean
    work.range(found * bounds[0], found * bounds[1], f"{words}, and the bounds of obstruction and rain share, together")
    return found


@measure("wall", "exposure above porch", "ratio", "rain on its wood above its porch roofs against the mean open wall")
def exposure_above_porch(wall: Facts, work: Working) -> float:
    """The mean of the courses above the highest porch roof, by area, as the rain exposure of a wall is told."""
    tops = [float(work.need(porch, "roof height")) for porch in wall["porches"]]
    if not tops:
        raise work.absent("no porch runs along it")
    above = Courses(tuple(row for row in work.need(wall, "courses").rows if row.middle > max(tops)))
    mean = float(work.need(wall, "mean open wall"))
    free = float(work.need(wall, "free driving rain"))
    return free * above.mean("rain") / mean if mean > 0 else 0.0


@measure("wall", "rain rank", "count", "its place among the walls by rain exposure; 1 takes most")
def rain_rank(wall: Facts, work: Working) -> float:
    """Counted over the walls whose exposure can be told."""
    own = float(work.need(wall, "rain exposure"))
    others = [work.maybe(other, "rain exposure") for other in work.sheet.of_kind("wall") if other is not wall]
    return 1.0 + sum(float(other) > own for other in others if other is not None)


@measure("wall", "rain class", "choice", "sheltered, partly or exposed to driving rain, against the mean open wall")
def rain_class(wall: Facts, work: Working) -> str:
    """Sheltered to 0.25 of the mean open wall of the lot, exposed above 0.75."""
    work.cite(Citation("", "classes of rain at 0.25 and 0.75 of the mean open wall", "ours"))
    return class_of(float(work.need(wall, "rain exposure")))


def class_of(share: float, exposed: float = EXPOSED) -> str:
    """The class of an exposure."""
    return CLASSES[(share > SHELTERED) + (share > exposed)]


@measure("wall", "kept by a foot more", "share", "further part that a roof edge reaching a foot more keeps off")
def rain_kept_by_a_foot(wall: Facts, work: Working) -> float:
    """The rain share of the wall as drawn, less that with a foot more of reach."""
    return float(work.need(wall, "rain share")) - share_with_reach(wall, work, 0.3048)


def share_with_reach(wall: Facts, work: Working, more: float) -> float:
    """The rain share of a wall whose roof edge reaches farther. [-]"""
    face = face_of(wall, work, more)
    climate = work.need(wall["site"], "rain climate", "site")
    factor = float(work.need(wall, "wind factor"))
    rows = courses_in(face, course_height(wall, work), climate.rain, (factor, factor, factor))
    return float(Courses(rows).mean("rain"))


@measure("wall", "standard rain load", "depth", "rain on the wall in a mean year by a standard's coarse wall factors")
def standard_rain_load(wall: Facts, work: Working) -> float:
    """Free driving rain times the standard's factor for a wall under such a roof; it knows no courses and no reach."""
    from speclint.science.rain_standards import wall_factor

    free = float(work.need(wall, "free driving rain"))
    high = float(work.need(wall, "storeys")) > 2
    if work.need(wall, "gable") == "yes":
        kind = "three-storey gable" if high else "two-storey gable"
    elif float(work.need(wall["roof"], "pitch", "roof")) < LOW_PITCH:
        kind = "two-storey under low roof"
    else:
        kind = "three-storey eave wall" if high else "two-storey eave wall"
    work.note(f"taken as {kind}; it counts the roof already and is never multiplied with the rain share")
    return free * float(work.call(wall_factor, wall=kind))
