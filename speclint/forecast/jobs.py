"""The upkeep that the coats of a home ask for: one job a face or part, with how it is reached and what it takes."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from speclint.exposure.face import bands
from speclint.forecast.rates import Rates
from speclint.measures.exposure import course_height
from speclint.measures.faces import face_of
from speclint.measures.facts import Facts, NotStated, Sheet, Working
from speclint.quantity import Absent, Quantity
from speclint.science.access import MEANS, access_class
from speclint.science.upkeep import face_surface_factor, log_surface_factor, stain_coverage, stain_volume

YEAR = 365.25
COATS = 2.0  # ours: coats on a wall where the plan does not say
LITRES = 1000.0  # in a cubic metre
NO_LADDER = 100.0  # m: a height that only a lift reaches, for wood over a roof
BOTH_SIDES = 2.0  # ours: surface of a rail over its length times its height: two sides, and the balusters' edges
SLOWER = ("", "slower on a step ladder", "slower on a long ladder", "slower on a lift")
DAY_RATES = ("", "step ladder", "extension ladder", "lift")
CAUTIONS = {
    "extension ladder": "Ladders: foot a quarter of the length out, level, tied or held; better hired out.",
    "scaffold or lift": "Lifts and scaffold are for trained people with fall protection: hire this work out.",
}


@dataclass(frozen=True, slots=True)
class Job:
    """Coating one face or part.

    Attributes:
        part: As the plan calls it.
        what: The coat.
        area: Surface to be coated. [m2]
        reached: Area by the means it takes: names of `MEANS`. [m2]
        lives: Least, likely and greatest time between coats on dry wood. [d]
        first: Life of the first coat over that of later ones. [-]
        coats: Number of coats each time. [-]
        volume: Least, likely and greatest finish each time. [L]
        hours: Of work each time. [h]
        cost: Money each time, at the rates.
        evidence: The quantities that it rests on.
        notes: What is taken for granted.
    """

    part: str
    what: str
    area: float
    reached: dict[str, float]
    lives: tuple[float, float, float]
    first: float
    coats: float
    volume: tuple[float, float, float]
    hours: float
    cost: float
    evidence: tuple[Quantity, ...]
    notes: tuple[str, ...]

    @property
    def means(self) -> str:
        """The greatest means that it takes."""
        return max(self.reached, key=MEANS.index)


@dataclass(frozen=True, slots=True)
class NotForecast:
    """A part whose upkeep cannot be told, and why."""

    part: str
    why: str


def jobs_of(sheet: Sheet, rates: Rates) -> tuple[list[Job], list[NotForecast]]:
    """The coating jobs of a home in the order of the plan, and what cannot be told."""
    jobs: list[Job] = []
    untold: list[NotForecast] = []
    for facts in sheet.facts.values():
        if facts.element.kind not in _AREAS or facts["finish"] == "none":
            continue
        if facts.element.kind == "wall" and facts["wooden"] == "no":
            continue
        work = Working(sheet, facts, "upkeep", "record")
        try:
            jobs.append(_job(facts, work, rates))
        except NotStated as trouble:
            untold.append(NotForecast(facts.label, _why(trouble.absent)))
    return jobs, untold


def _why(absent: Absent) -> str:
    wants = ", ".join(f"{missing.setting} of {missing.element}" for missing in absent.missing)
    return absent.reason or f"the plan does not say: {wants}"


def _job(facts: Facts, work: Working, rates: Rates) -> Job:
    finish = str(work.need(facts, "finish"))
    names = ("finish life", "likely finish life", "longest finish life")
    first = float(work.need(facts, "first coat share"))
    low, likely, high = (float(work.need(facts, name)) / first for name in names)
    pieces, surface = _AREAS[facts.element.kind](facts, work)
    area = sum(piece for piece, _, _ in pieces)
    reached: dict[str, float] = {}
    for piece, height, slope in pieces:
        means = access_class(max(0.0, height), slope)
        reached[means] = reached.get(means, 0.0) + piece
    coats = float(work.maybe(facts, "coats") or COATS) if facts.element.kind == "wall" else 1.0
    least_cover, most_cover = stain_coverage(surface)
    volumes = sorted(LITRES * stain_volume(area, coats, cover) for cover in (least_cover, most_cover))
    volume = (volumes[0], sum(volumes) / 2, volumes[1])
    hours = _hours(reached, coats, rates)
    if facts.element.kind == "rail" and work.maybe(facts, "lifts out") != "yes":
        hours *= rates["slower on a fixed rail"]
        work.note("its panels do not lift out: they are coated in place")
    cleaner = area / rates["cleaner feet"]
    cost = hours * rates["labour"] + volume[1] * rates["stain gallon"] + cleaner * rates["cleaner gallon"]
    for means, piece in reached.items():
        at = MEANS.index(means)
        if at:
            days = max(1.0, _hours({means: piece}, coats, rates) / rates["day"])
            cost += days * rates[DAY_RATES[at]]
    return Job(
        facts.label,
        finish,
        area,
        reached,
        (low, max(low, likely), max(high, likely)),
        first,
        coats,
        volume,
        hours,
        cost,
        tuple(work.inputs),
        tuple(work.notes),
    )


def _hours(reached: dict[str, float], coats: float, rates: Rates) -> float:
    """Hours to wash, prepare and coat areas by the means they take."""
    hours = 0.0
    for means, area in reached.items():
        slower = SLOWER[MEANS.index(means)]
        each = 1 / rates["wash feet"] + 1 / rates["prepare feet"] + coats / rates["coat feet"]
        hours += area * each * (rates[slower] if slower else 1.0)
    return hours


Piece = tuple[float, float, float]
"""Area [m2], height of its top above the ground beside it [m], fall of the ground [-]."""


def _wall(wall: Facts, work: Working) -> tuple[list[Piece], str]:
    """The courses of a wall, less its openings, times the roundness of its logs."""
    face = face_of(wall, work)
    starts = float(work.need(wall, "starts"))
    slope = abs(float(work.maybe(wall, "grade") or 0.0))
    build, size, course = str(work.need(wall, "build")), work.maybe(wall, "log size"), work.maybe(wall, "course")
    factor = 1.0
    if build == "log round" and size:
        factor = log_surface_factor(float(size), min(float(size), float(course or size)))
    elif build == "log D" and size:
        factor = face_surface_factor(float(size) / 2, min(float(size), float(course or size)))
    if factor > 1:
        work.note(f"logs are round: {factor:.2f} times the flat area")
    roofs = [lean.at_wall for lean in face.leans]
    if roofs and face.peak > max(roofs):
        work.note("wood over a porch roof is reached from a lift: no ladder has a foot there")
    rows = []
    for low, high in bands(face.peak, course_height(wall, work)):
        over_roof = bool(roofs) and low >= max(roofs)
        rows.append((face.width((low + high) / 2) * (high - low), NO_LADDER if over_roof else starts + high))
    gross = sum(area for area, _ in rows)
    openings = sum(
        float(work.maybe(one, "count") or 1.0)
        * float(work.maybe(one, "width") or 0.0)
        * float(work.maybe(one, "height") or 0.0)
        for one in (*wall["windows"], *wall["doors"])
    )
    left = max(0.0, 1 - openings / gross) if gross > 0 else 0.0
    surface = str(work.need(wall, "wood surface"))
    return [(area * left * factor, top, slope) for area, top in rows], surface


def _rail(rail: Facts, work: Working) -> tuple[list[Piece], str]:
    """Both sides of a rail along the open edges of its deck."""
    deck = rail["deck"]
    if deck is None:
        raise work.absent("it guards no deck whose size is told")
    length = _along(deck, work) + 2 * float(work.need(deck, "depth"))
    work.note("a rail along the outer edge and both ends of its deck is taken")
    side = BOTH_SIDES / 2 * length * float(work.need(rail, "height"))
    if work.maybe(rail, "lifts out") == "yes":
        return [(2 * side, 0.0, 0.0)], "planed"
    work.note("its outer side is coated from the ground outside, for its panels do not lift out")
    top = float(work.maybe(deck, "height") or 0.0) + float(work.need(rail, "height"))
    return [(side, 0.0, 0.0), (side, top, 0.0)], "planed"


def _deck(deck: Facts, work: Working) -> tuple[list[Piece], str]:
    """The boards of a deck."""
    return [(_along(deck, work) * float(work.need(deck, "depth")), 0.0, 0.0)], "planed"


def _along(deck: Facts, work: Working) -> float:
    """The length of a deck: that of its porch, or of the walls it lies along. [m]"""
    porch = deck["porch"]
    if porch is not None:
        return float(work.need(porch, "length"))
    walls = deck["along"] or ()
    if not walls:
        raise work.missing(deck, "along")
    work.note("a deck as long as the walls it lies along is taken")
    return sum(float(work.need(wall, "length")) for wall in walls)


def _post(post: Facts, work: Working) -> tuple[list[Piece], str]:
    """The four faces of the posts of a row."""
    size, height = work.need(post, "size"), float(work.need(post, "height"))
    return [(2 * (size[0] + size[1]) * height * float(work.maybe(post, "count") or 1.0), height, 0.0)], "planed"


_AREAS = {"wall": _wall, "post": _post, "deck": _deck, "rail": _rail}


def cautions_of(jobs: list[Job]) -> Iterator[str]:
    """What to mind where the jobs leave the ground."""
    for means, words in CAUTIONS.items():
        if any(means in job.reached for job in jobs):
            yield words
