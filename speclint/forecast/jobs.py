"""The upkeep that the coats of a home ask for: one job a face or part, with how it is reached and what it takes."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field

from speclint.forecast.rates import Rates
from speclint.forecast.surfaces import SURFACES, Piece
from speclint.measures.facts import Facts, NotStated, Sheet, Working
from speclint.quantity import Absent, Quantity
from speclint.science.access import MEANS
from speclint.science.finish_factors import TOPS
from speclint.science.upkeep import stain_coverage, stain_volume

COATS = 2.0  # ours: coats on a wall where the plan does not say
LITRES = 1000.0  # in a cubic metre
BARE = "finish none: its wood is left bare"
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
        bill: The cost by what it pays for: work, finish, cleaner, and each means that is hired.
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
    bill: Mapping[str, float] = field(default_factory=dict)

    @property
    def means(self) -> str:
        """The greatest means that it takes."""
        return max(self.reached, key=MEANS.index)


@dataclass(frozen=True, slots=True)
class NotForecast:
    """A part whose upkeep cannot be told, or that takes no coat, and why.

    Attributes:
        part: As the plan calls it.
        why: In words.
        signs: What the life of a coat on it would hang on: whether another home changes it is told by these.
    """

    part: str
    why: str
    signs: tuple[object, ...] = ()

    def __str__(self) -> str:
        return f"{self.part}: {self.why}"


def jobs_of(sheet: Sheet, rates: Rates) -> tuple[list[Job], list[NotForecast]]:
    """The coating jobs of a home in the order of the plan, and what cannot be told."""
    jobs: list[Job] = []
    untold: list[NotForecast] = []
    for facts in sheet.facts.values():
        if facts.element.kind not in SURFACES or _without_coat(facts):
            continue
        work = Working(sheet, facts, "upkeep", "record")
        try:
            jobs.append(_job(facts, work, rates))
        except NotStated as trouble:
            untold.append(NotForecast(facts.label, _why(trouble.absent), _signs(facts)))
    return jobs, untold


def uncoated_of(sheet: Sheet) -> list[NotForecast]:
    """The parts of the kinds that are coated which take no coat, and why."""
    parts = (facts for facts in sheet.facts.values() if facts.element.kind in SURFACES)
    return [NotForecast(facts.label, why) for facts in parts if (why := _without_coat(facts))]


def _without_coat(facts: Facts) -> str:
    """Why a part takes no coat; empty where it takes one, or where nothing says that it does not."""
    if facts.element.kind == "wall" and facts["wooden"] == "no":
        return "its outside is stone"
    if facts["finish"] != "none":
        return ""
    boards = facts["boards"] if facts.element.kind == "deck" else None
    return f"{boards} boards, finish none" if boards in ("composite", "solid") else BARE


def _signs(facts: Facts) -> tuple[object, ...]:
    weather = ("rain exposure", "ultraviolet share") if facts.element.kind == "wall" else ()
    return (facts.element, *(facts[name] for name in weather))


def _why(absent: Absent) -> str:
    wants = ", ".join(f"{missing.setting} of {missing.element}" for missing in absent.missing)
    return absent.reason or f"the plan does not say: {wants}"


def _job(facts: Facts, work: Working, rates: Rates) -> Job:
    finish, lives, first = _lives(facts, work)
    pieces, surface = SURFACES[facts.element.kind](facts, work)
    reached = _reached(pieces)
    area = sum(reached.values())
    coats = _coats(facts, work)
    volumes = sorted(LITRES * stain_volume(area, coats, cover) for cover in stain_coverage(surface))
    volume = (volumes[0], sum(volumes) / 2, volumes[1])
    hours = hours_of(reached, coats, rates)
    if facts.element.kind == "rail":
        hours *= _slower_rail(facts, work, rates)
    bill = _bill(reached, coats, hours, volume[1], rates)
    evidence, notes = tuple(work.inputs), tuple(work.notes)
    cost = sum(bill.values())
    return Job(facts.label, finish, area, reached, lives, first, coats, volume, hours, cost, evidence, notes, bill)


def _lives(facts: Facts, work: Working) -> tuple[str, tuple[float, float, float], float]:
    """The finish; the least, likely and greatest life of its later coats [d]; the share of it that the first has."""
    finish = str(work.need(facts, "finish"))
    names = ("finish life", "likely finish life", "longest finish life")
    first = float(work.need(facts, "first coat share"))
    low, likely, high = (float(work.need(facts, name)) / first for name in names)
    if facts.element.kind == "rail":
        top = work.maybe(facts, "top")
        share = TOPS[str(top or "none")]
        if top is None:
            work.note(f"its top is not stated: taken as flat and bare, with {share:g} of the life of its sides")
        elif share < 1:
            work.note(f"its coat is taken to fail first on its top ({top}), after {share:g} of the life of its sides")
    if first < 1:
        work.note(f"its first coat goes on damp wood and lasts {first:.2f} of later ones")
    return finish, (low, max(low, likely), max(high, likely)), first


def _reached(pieces: list[Piece]) -> dict[str, float]:
    """Areas by the means it takes. [m2]"""
    reached: dict[str, float] = {}
    for piece in pieces:
        reached[piece.means] = reached.get(piece.means, 0.0) + piece.area
    return reached


def _coats(facts: Facts, work: Working) -> float:
    if facts.element.kind != "wall":
        return 1.0
    stated = work.maybe(facts, "coats")
    if not stated:
        work.note(f"coats not stated: {COATS:g} are taken")
    return float(stated or COATS)


def _slower_rail(rail: Facts, work: Working, rates: Rates) -> float:
    how = work.maybe(rail, "lifts out")
    if how == "yes":
        return 1.0
    stated = "its panels do not lift out" if how else "whether its panels lift out is not stated: taken as not"
    work.note(f"{stated}; they are coated in place")
    return rates["slower on a fixed rail"]


def _bill(reached: dict[str, float], coats: float, hours: float, litres: float, rates: Rates) -> dict[str, float]:
    """Money for each thing that a job takes, by name."""
    bill = {
        "work": hours * rates["labour"],
        "finish": litres * rates["stain gallon"],
        "cleaner": sum(reached.values()) / rates["cleaner feet"] * rates["cleaner gallon"],
    }
    for means, area in reached.items():
        at = MEANS.index(means)
        if at:
            days = max(1.0, hours_of({means: area}, coats, rates) / rates["day"])
            bill[means] = days * rates[DAY_RATES[at]]
    return bill


def hours_of(reached: Mapping[str, float], coats: float, rates: Rates) -> float:
    """Hours to wash, prepare and coat areas [m2] by the means they take. [h]"""
    hours = 0.0
    for means, area in reached.items():
        slower = SLOWER[MEANS.index(means)]
        each = 1 / rates["wash feet"] + 1 / rates["prepare feet"] + coats / rates["coat feet"]
        hours += area * each * (rates[slower] if slower else 1.0)
    return hours


def cautions_of(jobs: list[Job]) -> Iterator[str]:
    """What to mind where the jobs leave the ground."""
    for means, words in CAUTIONS.items():
        if any(means in job.reached for job in jobs):
            yield words
