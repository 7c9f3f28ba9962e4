"""What driving rain does to each wall and course of it."""

from __future__ import annotations

import math

from speclint.citation import Citation
from speclint.exposure.courses import Courses, courses_in
from speclint.exposure.strike import free_by_year
from speclint.measures.faces import TERRAINS, face_of
from speclint.measures.facts import Facts, Working
from speclint.measures.register import measure
from speclint.science.driving_rain import hill_factor, terrain_roughness
from speclint.science.raindrops import share_past_edge

BAND = 0.3048  # m: height of a band where a wall has no courses; ours
SHELTERED, EXPOSED = 0.25, 0.6  # ours: bounds of the classes, as shares of what an open wall takes
ADMITTANCE = (0.5, 0.5, 0.95)  # rain on a low wall over free driving rain, its own eave apart: taken, least, greatest
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
    """The sum of the hours whose wind blows at it, times the wind factor of the house."""
    climate = work.need(wall["site"], "rain climate", "site")
    factor = float(work.need(wall, "wind factor"))
    by_year = [amount * factor for amount in free_by_year(climate.sectors, float(work.need(wall, "faces")))]
    mean = sum(by_year) / len(by_year) if by_year else 0.0
    low, high = climate.spread
    words = f"spread of {climate.source}"
    if climate.years > 1:
        work.note("by year: " + ", ".join(f"{amount:.0f} mm" for amount in by_year))
        low, high, words = (
            min(by_year) / mean * low if mean else low,
            max(by_year) / mean * high if mean else high,
            (
                f"least and greatest of {climate.years} years"
                + (", times the spread of a record nearby" if low < 1 else "")
            ),
        )
    work.range(mean * low, mean * high, words)
    return mean


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


@measure("wall", "exposed courses", "count", "courses that take more than 0.6 of the free driving rain")
def exposed_courses(wall: Facts, work: Working) -> float:
    """Counted from its courses."""
    return float(sum(row.rain > EXPOSED for row in work.need(wall, "courses").rows))


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
    frees, shares = (work.sheet.quantity(wall, name) for name in ("free driving rain", "rain share"))
    low = (getattr(frees, "low", free) or 0.0) * (getattr(shares, "low", share) or 0.0) * least
    high = (getattr(frees, "high", free) or 0.0) * (getattr(shares, "high", share) or 0.0) * most
    work.range(low, high, "the bounds of its parts, and 0.5 to 0.95 of free driving rain on low walls")
    work.note("the amount is unsure by a factor of two; the share and the ranking of walls are surer")
    return free * share * taken


@measure("wall", "rain exposure", "ratio", "rain on its wood against the mean open wall of the lot")
def rain_exposure(wall: Facts, work: Working) -> float:
    """Free driving rain times the rain share, over the mean of sixteen open walls of the same lot."""
    site = wall["site"]
    free, share = float(work.need(wall, "free driving rain")), float(work.need(wall, "rain share"))
    mean = float(work.need(site, "driving rain", "site")) * open_factor(wall, work)
    found = work.sheet.quantity(wall, "free driving rain")
    shares = work.sheet.quantity(wall, "rain share")
    if mean <= 0:
        return 0.0
    low = (getattr(found, "low", free) or 0.0) * (getattr(shares, "low", share) or 0.0)
    high = (getattr(found, "high", free) or 0.0) * (getattr(shares, "high", share) or 0.0)
    work.range(low / mean, high / mean, "the bounds of free driving rain and of the rain share")
    return free * share / mean


def open_factor(wall: Facts, work: Working) -> float:
    """Wind factor of the lot's terrain and hill alone, at the height of the wall."""
    site = wall["site"]
    eave = float(work.need(wall, "height")) + float(work.maybe(wall, "starts") or 0.0)
    slope = work.maybe(site, "hill slope")
    hill = hill_factor(float(slope)) if slope is not None else 1.0
    return terrain_roughness(TERRAINS[str(work.need(site, "terrain"))], max(0.0, eave)) * hill


@measure("wall", "exposure above porch", "ratio", "rain on its wood above its porch roofs against the mean open wall")
def exposure_above_porch(wall: Facts, work: Working) -> float:
    """The mean of the courses above the highest porch roof, by area, as the rain exposure of a wall is told."""
    tops = [float(work.need(porch, "roof height")) for porch in wall["porches"]]
    if not tops:
        raise work.absent("no porch runs along it")
    above = Courses(tuple(row for row in work.need(wall, "courses").rows if row.middle > max(tops)))
    mean = float(work.need(wall["site"], "driving rain", "site")) * open_factor(wall, work)
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
    """Sheltered to 0.25 of the mean open wall of the lot, exposed above 0.6."""
    work.cite(Citation("", "classes of rain and sun at 0.25 and 0.6", "ours"))
    return class_of(float(work.need(wall, "rain exposure")))


def class_of(share: float) -> str:
    """The class of an exposure."""
    return CLASSES[(share > SHELTERED) + (share > EXPOSED)]


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
