"""The courses of a wall with everything that is computed for each: rain, sun, splash and the angle rule."""

from __future__ import annotations

from dataclasses import dataclass

from speclint.exposure.courses import Courses
from speclint.measures.facts import Facts, Sheet
from speclint.measures.sun import SunnedCourses
from speclint.quantity import Absent, Quantity
from speclint.science.splash import splash_dose

# column: its unit in SI, as JSON and CSV name it
COLUMNS = {
    "bottom": "m",
    "top": "m",
    "area": "m2",
    "rain share": "-",
    "rain share low": "-",
    "rain share high": "-",
    "rain share worst place": "-",
    "driving rain": "L/m2 a",
    "rain hours": "h/a",
    "sun dose": "kWh/m2 a",
    "ultraviolet dose": "kWh/m2 a",
    "ultraviolet share": "-",
    "splash dose": "-",
    "under the angle rule": "yes, no or in part",
}


@dataclass(frozen=True, slots=True)
class CourseTable:
    """The rows of a wall, lowest course first; a column that cannot be told holds None.

    Attributes:
        wall: The wall as the plan calls it.
        starts: Its lowest wood above grade; None where the plan does not say. [m]
        rows: One dictionary a course, by the names of `COLUMNS`.
        absent: What could not be told, and why.
    """

    wall: str
    starts: float | None
    rows: tuple[dict[str, float | str | None], ...]
    absent: tuple[Absent, ...]


def course_table(sheet: Sheet, wall: Facts) -> CourseTable:
    """Everything that is computed for each course of a wall."""
    struck, sunned, free, angle = (
        sheet.quantity(wall, name) for name in ("courses", "course sun", "free driving rain", "sheltered height")
    )
    absent = tuple(found for found in (struck, sunned, free, angle) if isinstance(found, Absent))
    if not isinstance(struck, Quantity) or not isinstance(struck.value, Courses):
        return CourseTable(wall.label, None, (), absent)
    suns = sunned.value if isinstance(sunned, Quantity) and isinstance(sunned.value, SunnedCourses) else None
    driven = float(free.value) if isinstance(free, Quantity) else None
    starts = wall["starts"]
    rows: list[dict[str, float | str | None]] = []
    for at, course in enumerate(struck.value.rows):
        sun = suns.rows[at] if suns else None
        rows.append(
            {
                "bottom": course.bottom,
                "top": course.top,
                "area": course.area,
                "rain share": course.rain,
                "rain share low": course.rain_low,
                "rain share high": course.rain_high,
                "rain share worst place": course.rain_worst,
                "driving rain": None if driven is None else driven * course.rain,
                "rain hours": course.hours,
                "sun dose": sun.total if sun else None,
                "ultraviolet dose": sun.ultraviolet if sun else None,
                "ultraviolet share": suns.share(sun) if suns and sun else None,
                "splash dose": _splash(wall, course.middle),
                "under the angle rule": _under_angle(wall, angle, course.middle),
            }
        )
    return CourseTable(wall.label, starts, tuple(rows), absent)


def _splash(wall: Facts, height: float) -> float | None:
    """Splash from the ground at a height above the lowest wood, by the ranking model."""
    starts, ground, offset, gutter = wall["starts"], wall["ground"], wall["drip line"], wall["gutter above"]
    if starts is None or ground is None or offset is None or gutter is None:
        return None
    return splash_dose(max(0.0, starts + height), offset, ground, gutter == "yes")


def _under_angle(wall: Facts, angle: Quantity | Absent, height: float) -> str | None:
    """Whether the line at 30 degrees off plumb from the roof edge covers a height of a wall.

    The rake of a gable climbs from the plate to the peak, so that a course may be covered at its ends alone.
    """
    if not isinstance(angle, Quantity):
        return None
    covered, plate, top = float(angle.value), float(wall["height"]), float(wall["wood height"] or wall["height"])
    if wall["gable"] != "yes":
        roof = wall["roof"]
        drop = float(roof["edge drop"] or 0.0) if roof is not None else 0.0
        return "yes" if plate - drop - height <= covered else "no"
    if top - height <= covered:
        return "yes"
    return "in part" if plate - height <= covered else "no"
