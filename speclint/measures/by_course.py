"""Finish life and exposure to decay of each course of a wall, from the rain and sun on it."""

from __future__ import annotations

from speclint.exposure.courses import Courses
from speclint.measures.decay import OUTSIDE, course_places, hazard_of, local_of
from speclint.measures.decay_places import clearance_of
from speclint.measures.facts import Facts, Working
from speclint.measures.finishes import wall_weather
from speclint.measures.register import measure
from speclint.measures.sun import SunnedCourses
from speclint.science.decay_design import climate_index, detail_factor, exposure_index
from speclint.science.finish_factors import MIDDLE_SUN, weather_wear


class ByCourse(tuple[float, ...]):
    """A number for each course, the lowest first."""

    __slots__ = ()

    def __str__(self) -> str:
        return ", ".join(f"{value:.3g}" for value in self)


def _courses(wall: Facts, work: Working) -> Courses:
    found = work.need(wall, "courses")
    if not isinstance(found, Courses):
        raise work.absent("its courses are not known")
    return found


@measure("wall", "finish by course", "record", "days until its finish needs a coat, most likely, on each course")
def finish_by_course(wall: Facts, work: Working) -> ByCourse:
    """The likely life of the wall times the wear of the wall over the wear of the course."""
    life = float(work.need(wall, "likely finish life"))
    suns = work.need(wall, "course sun")
    free, mean = float(work.need(wall, "free driving rain")), float(work.need(wall, "mean open wall"))
    driven = free / mean if mean > 0 else 0.0  # a record may hold no driving rain at all
    colour = str(work.maybe(wall, "colour") or "medium")
    light, rain = wall_weather(wall, work)
    whole = float(work.call(weather_wear, sun=light, rain=rain, colour=colour))
    found = []
    for course, sunned in zip(_courses(wall, work).rows, suns.rows, strict=True):
        assert isinstance(suns, SunnedCourses)
        wear = weather_wear(suns.share(sunned) / MIDDLE_SUN, course.rain * driven, colour)
        found.append(life * whole / wear)
    return ByCourse(found)


@measure(
    "wall", "decay by course", "record", "exposure to decay of each course; 1 is bare spruce in the rain of Helsinki"
)
def decay_by_course(wall: Facts, work: Working) -> ByCourse:
    """As for the wall, with the rain on the course and its height above the ground."""
    detail = str(work.need(wall, "decay detail"))
    hazard = float(work.need(wall["site"], "decay hazard index", "site"))
    local, _, _ = local_of(wall, work)
    climate = float(work.call(climate_index, decay_hazard_index=hazard_of(hazard, work)))
    detailing = float(work.call(detail_factor, detail=detail))
    work.note(OUTSIDE)
    places = course_places(wall, clearance_of(wall, work), work)
    return ByCourse(
        float(exposure_index(local=local, shelter=shelter, ground=ground, climate=climate, detail=detailing))
        for (shelter, ground), _, _ in places
    )
