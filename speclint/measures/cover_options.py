"""What more cover would do for a wall: the rain share with a wider roof edge, or with a porch along it."""

from __future__ import annotations

from typing import NamedTuple

from speclint.exposure.courses import Courses, courses_in
from speclint.exposure.face import Face, Lean
from speclint.measures.exposure import EXPOSED, course_height
from speclint.measures.faces import face_of
from speclint.measures.facts import Facts, Working
from speclint.measures.register import measure

WIDER = (0.1524, 0.3048, 0.6096)  # m: 6, 12 and 24 in, ours
PORCH = 2.4384  # m: 8 ft, ours
PORCH_AT_WALL, PORCH_EDGE = 2.7432, 2.1336  # m above the lowest wood: 9 ft and 7 ft, ours


class Option(NamedTuple):
    """A way to cover a wall better.

    Attributes:
        kind: "as drawn", "wider", "porch", or "both": the widest roof edge and the porch.
        more: Further reach of the roof edge, or depth of the porch. [m]
        share: Rain share of the wall then. [-]
        exposure: Its rain exposure then. [-]
    """

    kind: str
    more: float
    share: float
    exposure: float


class Options(NamedTuple):
    """The ways to cover a wall better, the cheapest first; the first is the wall as drawn."""

    ways: tuple[Option, ...]

    def __str__(self) -> str:
        return ", ".join(f"{way.kind} {way.share:.2f}" for way in self.ways)

    @property
    def enough(self) -> Option | None:
        """The cheapest way by which the wall is no longer exposed; none where nothing does, or nothing is needed."""
        if self.ways[0].exposure <= EXPOSED:
            return None
        return next((way for way in self.ways[1:] if way.exposure <= EXPOSED), None)


@measure("wall", "cover options", "record", "rain share with a roof edge 6, 12 or 24 in wider, or with a porch")
def cover_options(wall: Facts, work: Working) -> Options:
    """The same sums with another roof edge; a porch 8 ft deep along the whole wall, and both."""
    face = face_of(wall, work)
    climate = work.need(wall["site"], "rain climate", "site")
    factor = float(work.need(wall, "wind factor"))
    free = float(work.need(wall, "free driving rain"))
    mean = float(work.need(wall, "mean open wall"))

    def option(kind: str, more: float, tried: Face) -> Option:
        rows = courses_in(tried, course_height(wall, work), climate.rain, (factor, factor, factor))
        share = Courses(rows).mean("rain")
        return Option(kind, more, share, free * share / mean if mean > 0 else 0.0)

    ways = [option("as drawn", 0.0, face)]
    ways += [option("wider", more, face._replace(reach=face.reach + more)) for more in WIDER]
    if not any(lean.left <= 0 and lean.right >= face.length for lean in face.leans):
        at_wall = min(PORCH_AT_WALL, face.height)
        porch = (Lean(0.0, face.length, PORCH, min(PORCH_EDGE, 0.8 * at_wall), at_wall), *face.leans)
        ways.append(option("porch", PORCH, face._replace(leans=porch)))
        ways.append(option("both", PORCH, face._replace(leans=porch, reach=face.reach + WIDER[-1])))
    return Options(tuple(ways))


def _wettest_bare(porch: Facts, work: Working) -> Facts | None:
    """The wooden wall, exposed to driving rain and along no porch, whose wood takes most."""
    taken = [
        (float(rain), wall)
        for wall in work.sheet.of_kind("wall")
        if not wall["porches"] and work.maybe(wall, "wooden") == "yes" and work.maybe(wall, "rain class") == "exposed"
        if (rain := work.maybe(wall, "rain on wall")) is not None
    ]
    return max(taken, key=lambda pair: pair[0])[1] if taken else None


@measure("porch", "wettest bare wall", "text", "the exposed wall along no porch whose wood takes most driving rain")
def wettest_bare_wall(porch: Facts, work: Working) -> str:
    """As the plan calls it."""
    bare = _wettest_bare(porch, work)
    if bare is None:
        raise work.absent("no exposed wall is without a porch")
    return bare.label


@measure("porch", "rain it misses", "ratio", "rain on the wettest bare wall against all that is driven at its own wall")
def rain_it_misses(porch: Facts, work: Working) -> float:
    """What passes the roof over there, over what would strike here without any roof; 0 where no such wall is."""
    walls = porch["along"] or ()
    if not walls:
        raise work.missing(porch, "along")
    here = max(float(work.need(wall, "free driving rain")) for wall in walls)
    bare = _wettest_bare(porch, work)
    if bare is None or here <= 0:
        return 0.0
    return float(work.need(bare, "free driving rain")) * float(work.need(bare, "rain share")) / here
