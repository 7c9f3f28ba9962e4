"""The summary that a client understands: which wall is in trouble, why, what to change, and what that saves."""

from __future__ import annotations

from dataclasses import dataclass

from speclint.measures.cover_options import Option, Options
from speclint.measures.facts import Facts, Sheet
from speclint.outputs.upkeep import Forecast
from speclint.quantity import Quantity
from speclint.ruling import Review
from speclint.units import System, show

YEAR = 365.25
WORTH = 0.03  # ours: the least saving, of all that is spent, that is told


@dataclass(frozen=True, slots=True)
class Compared:
    """An alternate beside the plan as drawn.

    Attributes:
        name: Of the alternate.
        holds: Rules that hold the release with it in place.
        revises: Rules that ask for improvement.
        cured: Titles of findings of the plan as drawn that it cures.
        raised: Titles of findings that are new with it.
        walls: For each wall that changes: its label, and its rain share before and after.
        spent: Money of today over the years, likely; nothing where no forecast could be made.
        saved: What is saved against the plan as drawn; below zero it costs more.
        saved_share: The same of all that the plan as drawn spends.
    """

    name: str
    holds: int
    revises: int
    cured: tuple[str, ...]
    raised: tuple[str, ...]
    walls: tuple[tuple[str, str, str], ...]
    spent: float | None
    saved: float | None
    saved_share: float


def compared(
    name: str, base: tuple[Sheet, Review, Forecast], other: tuple[Sheet, Review, Forecast], system: System
) -> Compared:
    """An alternate against the plan as drawn."""
    before = {(ruling.rule, ruling.element): ruling.title for ruling in base[1].rulings}
    after = {(ruling.rule, ruling.element): ruling.title for ruling in other[1].rulings}
    walls = []
    for wall in other[0].of_kind("wall"):
        was, now = _share(base[0], wall.label), _share(other[0], wall.label)
        if was is not None and now is not None and abs(was - now) >= 0.01:
            walls.append((wall.label, show(was, "share", system), show(now, "share", system)))
    was_spent, spent = base[2].outlook.spent.likely, other[2].outlook.spent.likely
    saved = was_spent - spent if base[2].outlook.parts and other[2].outlook.parts else None
    return Compared(
        name,
        _count(other[1], "hold"),
        _count(other[1], "revise"),
        tuple(
            dict.fromkeys(
                f"{title} ({element})" for (rule, element), title in before.items() if (rule, element) not in after
            )
        ),
        tuple(
            dict.fromkeys(
                f"{title} ({element})" for (rule, element), title in after.items() if (rule, element) not in before
            )
        ),
        tuple(walls),
        spent if other[2].outlook.parts else None,
        saved,
        saved / was_spent if saved is not None and was_spent else 0.0,
    )


def _count(review: Review, grade: str) -> int:
    return len({ruling.rule for ruling in review.rulings if ruling.grade == grade})


def _share(sheet: Sheet, label: str) -> float | None:
    facts = sheet.facts.get(label)
    found = sheet.quantity(facts, "rain share") if facts is not None else None
    return float(found.value) if isinstance(found, Quantity) else None


@dataclass(frozen=True, slots=True)
class Story:
    """The summary in sentences: a verdict, then the walls in trouble with why and what helps, then what is saved."""

    verdict: str
    trouble: tuple[str, ...]
    help: tuple[str, ...]
    saves: tuple[str, ...]


def story(sheet: Sheet, review: Review, forecast: Forecast, others: tuple[Compared, ...], system: System) -> Story:
    """The summary of a plan."""
    return Story(
        _verdict(review),
        tuple(_trouble(sheet, system)),
        tuple(_help(sheet, system)),
        tuple(_saves(forecast, others)),
    )


def _verdict(review: Review) -> str:
    holds, revises = _count(review, "hold"), _count(review, "revise")
    if not holds and not revises:
        return "Nothing holds the release, and nothing asks to be improved."
    told = [f"{holds} {'matter is' if holds == 1 else 'matters are'} to be settled before release"] if holds else []
    told += [f"{revises} should be improved"] if revises else []
    sentence = ", and ".join(told)
    return f"{sentence[0].upper()}{sentence[1:]}."


def ranked(sheet: Sheet) -> list[Facts]:
    """The walls of wood, the worst in the rain first."""
    known = [wall for wall in sheet.of_kind("wall") if wall["wooden"] == "yes" and wall["rain exposure"] is not None]
    return sorted(known, key=lambda wall: -float(wall["rain exposure"]))


def _trouble(sheet: Sheet, system: System) -> list[str]:
    walls = ranked(sheet)
    if not walls:
        return ["Which wall stands worst cannot be told: the plan does not say enough of walls, roof and weather."]
    told = []
    for wall in walls[:2]:
        if wall["rain class"] == "sheltered":
            continue
        struck = show(float(wall["rain share"]), "share", system)
        parts = [f"{struck} of the driving rain that comes to it strikes its wood"]
        sun = wall["ultraviolet share"]
        if sun is not None and sun > 0.6:
            parts.append(f"it takes {show(float(sun), 'share', system)} of the ultraviolet light of an open wall")
        life = wall["likely finish life"]
        if life is not None:
            parts.append(f"its coat will likely need renewing every {show(float(life), 'duration', system)}")
        margin = wall["decay verdict"]
        if margin == "over":
            parts.append("by the decay guide it stands beyond what its wood resists")
        joined = f"{', '.join(parts[:-1])}, and {parts[-1]}" if len(parts) > 1 else parts[0]
        told.append(f"{wall.label.capitalize()}: {joined}.")
    return told or ["Every wall is sheltered from most of the driving rain."]


def _help(sheet: Sheet, system: System) -> list[str]:
    told = []
    for wall in ranked(sheet)[:2]:
        options = wall["cover options"]
        if not isinstance(options, Options) or wall["rain class"] == "sheltered":
            continue
        enough = options.enough
        now = show(options.ways[0].share, "share", system)
        if enough is not None:
            then = show(enough.share, "share", system)
            told.append(f"{wall.label.capitalize()}: {_way(enough, system)} would bring {now} down to {then}.")
        elif options.ways[0].exposure > 0.75:
            best = min(options.ways, key=lambda way: way.share)
            told.append(
                f"{wall.label.capitalize()}: {_way(best, system)} would bring {now} down to "
                f"{show(best.share, 'share', system)}, which is still exposed; choose wood and finish to match."
            )
    return told


def _way(option: Option, system: System) -> str:
    more = show(option.more, "length", system)
    if option.kind == "wider":
        return f"a roof edge {more} wider"
    if option.kind == "porch":
        return f"a porch {more} deep along it"
    return f"a wider roof edge together with a porch {more} deep"


def _saves(forecast: Forecast, others: tuple[Compared, ...]) -> list[str]:
    outlook, money = forecast.outlook, forecast.rates.currency
    if not outlook.parts:
        return []
    told = [
        f"As drawn, coats over {outlook.years} years come to about {money} {outlook.spent.likely:,.0f} of today "
        f"({outlook.spent.low:,.0f} to {outlook.spent.high:,.0f})."
    ]
    for other in sorted(others, key=lambda one: -(one.saved or 0.0)):
        if other.saved is not None and other.saved_share >= WORTH:
            told.append(f"The alternate “{other.name}” saves about {money} {other.saved:,.0f} of that.")
    return told
