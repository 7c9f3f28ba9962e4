"""What an owner looks at, and in which month: the calendar of inspections that a plan asks for."""

from __future__ import annotations

from dataclasses import dataclass, replace
from datetime import date

from speclint.measures.facts import Facts, Sheet

SPRING, SUMMER, FALL = 4, 7, 10  # months north of the equator; turned by half a year south of it
YEAR = 365.25
MONTHS = 12


@dataclass(frozen=True, slots=True)
class Inspection:
    """Something to look at every year, or twice.

    Attributes:
        parts: The parts it is about, as the plan calls them; empty for the whole house.
        what: What to do, in one line.
        why: What it prevents.
        months: In which months, 1 to 12.
        years: For how many years from the start; 0 for good.
        standing: How far the interval is known.
        every: Years from one round to the next.
        stated: The interval as the plan states it; empty where it does not.
    """

    parts: tuple[str, ...]
    what: str
    why: str
    months: tuple[int, ...]
    years: int = 0
    standing: str = "common practice"
    every: int = 1
    stated: str = ""


def first_day(start: date, month: int) -> date:
    """The first day of a month that does not lie before the start."""
    day = date(start.year, month, 1)
    return day if day >= start else date(start.year + 1, month, 1)


def inspections_of(sheet: Sheet) -> list[Inspection]:
    """The inspections that the parts of a home ask for."""
    south = "site" in sheet.facts and (sheet["site"]["latitude"] or 1.0) < 0
    found = [
        *_gutters(sheet),
        *_adjusters(sheet),
        *_logs(sheet),
        *_walls(sheet),
        *_decks(sheet),
        *_stone_and_plants(sheet),
        *_insects(sheet),
    ]
    return [_turned(one) for one in found] if south else found


def _turned(one: Inspection) -> Inspection:
    months = tuple((month + 5) % 12 + 1 for month in one.months)
    return replace(one, months=months)


def _as_stated(one: Inspection, sheet: Sheet, setting: str) -> Inspection:
    """An inspection at the interval that the plan states for it, rounds spread evenly from its first month on."""
    care = next(iter(sheet.of_kind("care")), None)
    interval = care[setting] if care else None
    if care is None or interval is None:
        return one
    stated = care.element.given[setting].text
    if interval >= 1.5 * YEAR:
        return replace(one, months=one.months[-1:], every=round(interval / YEAR), stated=stated)
    rounds = min(MONTHS, max(1, round(YEAR / interval)))
    if rounds == 1:
        return replace(one, months=one.months[-1:], stated=stated)
    first = one.months[0]
    months = sorted({(first - 1 + round(MONTHS * at / rounds)) % MONTHS + 1 for at in range(rounds)})
    return replace(one, months=tuple(months), stated=stated)


def _labels(sheet: Sheet, kind: str) -> list[Facts]:
    return sheet.of_kind(kind)


def _names(parts: list[Facts]) -> tuple[str, ...]:
    return tuple(part.label for part in parts)


def _gutters(sheet: Sheet) -> list[Inspection]:
    parts = [*_labels(sheet, "gutter"), *_labels(sheet, "downspout")]
    if not parts:
        return []
    what = "clear gutters and downspouts; run a hose and see where the water goes"
    one = Inspection(_names(parts), what, "a full gutter pours over the wood below it", (SPRING, FALL))
    return [_as_stated(one, sheet, "gutters")]


def _adjusters(sheet: Sheet) -> list[Inspection]:
    posts = [post for post in _labels(sheet, "post") if post["adjuster"] in ("jack", "shims")]
    settling = [post for post in posts if (post["settling past"] or 0.0) > 0]
    if not settling:
        return []
    what = "check that porch and deck posts still carry evenly; let the adjusters be turned by whoever set them"
    why = "logs come down for some years and posts do not"
    return [_as_stated(Inspection(_names(settling), what, why, (SPRING, FALL), 5), sheet, "jacks")]


def _logs(sheet: Sheet) -> list[Inspection]:
    walls = [wall for wall in _labels(sheet, "wall") if wall["stacked"] == "yes"]
    if not walls:
        return []
    checks = "look for checks that open upward from a quarter inch; fill them with backer and flexible sealant"
    seals = "look along chinking, sealant and the heads of windows and doors for gaps and for trim that binds"
    return [
        Inspection(_names(walls), checks, "an upward check is a cup in the wall", (SUMMER,)),
        Inspection(_names(walls), seals, "settling opens joints and closes headspace", (FALL,)),
    ]


def _walls(sheet: Sheet) -> list[Inspection]:
    walls = [wall for wall in _labels(sheet, "wall") if wall["wooden"] == "yes"]
    if not walls:
        return []
    worst = [wall for wall in walls if wall["rain class"] == "exposed" or wall["sun class"] == "exposed"] or walls
    wash = "wash from the bottom up, rinse from the top down with a wide fan until no suds show"
    bead = "sprinkle water on the wood: where it soaks in and does not bead, a coat is due"
    low = "look at the lowest course and log ends for dark, soft or wet wood, and for splashed dirt"
    return [
        _as_stated(Inspection(_names(walls), wash, "dirt holds water and feeds mildew", (SPRING,)), sheet, "wash"),
        Inspection(_names(worst), bead, "the exposed walls tell first", (SUMMER,)),
        Inspection(_names(walls), low, "decay starts where water stands", (SPRING,)),
    ]


def _decks(sheet: Sheet) -> list[Inspection]:
    found = []
    decks = [*_labels(sheet, "deck"), *_labels(sheet, "ledger"), *_labels(sheet, "stair")]
    if decks:
        what = "look at ledgers, hangers, fasteners and stairs for rust, gaps and movement; call a professional for any"
        found.append(Inspection(_names(decks), what, "a deck fails at its fastenings", (SPRING,)))
    return [*found, *_rails(_labels(sheet, "rail"))]


def _rails(rails: list[Facts]) -> list[Inspection]:
    """Rails by whether their panels lift out."""
    loose = [rail for rail in rails if rail["lifts out"] == "yes"]
    fixed = [rail for rail in rails if rail["lifts out"] != "yes"]
    shake, why = "shake the rails; clear weep holes and sockets", "a bottom rail that holds water rots from inside"
    ways = (
        (loose, "lift out panels that are due for a coat"),
        (fixed, "their panels stay in place: look at the wood between them and behind their posts"),
    )
    return [Inspection(_names(some), f"{shake}; {how}", why, (SPRING,)) for some, how in ways if some]


def _stone_and_plants(sheet: Sheet) -> list[Inspection]:
    found = []
    stone = [*_labels(sheet, "stone"), *_labels(sheet, "chimney")]
    if stone:
        what = "see that weeps are open, caps shed water and flashings still lap"
        found.append(Inspection(_names(stone), what, "water behind stone goes into the wood", (FALL,)))
    plants = _labels(sheet, "planting")
    if plants:
        what = "trim plants and pull mulch back from the wood"
        found.append(Inspection(_names(plants), what, "leaves keep walls wet and hide insects", (SUMMER,)))
    return found


def _insects(sheet: Sheet) -> list[Inspection]:
    bees = "look for round holes of half an inch in eaves, rails and bare wood; fill them in fall"
    found = [Inspection((), bees, "carpenter bees come back to old holes", (SPRING,), 0, "second-hand")]
    if "site" in sheet.facts and sheet["site"]["termites"] not in (None, "slight"):
        tubes = "look for mud tubes on the foundation, piers and chases; have a professional look once a year"
        found.append(Inspection((), tubes, "termites work out of sight", (SPRING,), 0, "second-hand"))
    return found
