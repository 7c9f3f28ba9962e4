"""The alternates of a plan beside the plan as drawn, and the one that is worth looking at first."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from typing import NamedTuple

from speclint.forecast.whole import Forecast
from speclint.measures.facts import Facts, Sheet
from speclint.model.element import Element
from speclint.outputs.upkeep_compare import obstacles
from speclint.quantity import Quantity
from speclint.ruling import Review

WORDS = {"hold": "to settle", "revise": "to improve", "note": "worth knowing"}
LEAST = 0.005  # ours: a change of rain exposure that is told
NO_WOOD = "no wood left outside"
NOT_BUILT = "cost of building not included"
RULE = (
    "chosen is the alternate that clears most findings over those it raises, and between equals the one that saves "
    "most upkeep; the rule is ours"
)


class WallRain(NamedTuple):
    """Rain on the wood of a wall against a bare wall there, as drawn and with an alternate; no wood left is nothing."""

    label: str
    was: float
    now: float | None

    @property
    def words(self) -> str:
        """What becomes of it."""
        return f"{self.was:.2f} to {NO_WOOD if self.now is None else f'{self.now:.2f}'}"


@dataclass(frozen=True, slots=True)
class Compared:
    """An alternate beside the plan as drawn.

    Attributes:
        name: Of the alternate.
        changes: What it changes, in the words of the plan.
        holds: Rules that hold the release with it in place.
        revises: Rules that ask for improvement.
        notes: Rules that tell what is worth knowing.
        cured: Findings of the plan as drawn that it lacks: counted as in the list of findings, a rule in a grade each.
        raised: Findings that are new with it, or of another grade.
        walls: The walls whose rain changes.
        spent: Money of today over the years, likely; nothing where no forecast could be made.
        saved: What is saved against the plan as drawn; below zero it costs more.
        cannot: Why the money cannot be compared; empty where it can.
    """

    name: str
    changes: tuple[str, ...]
    holds: int
    revises: int
    notes: int
    cured: tuple[str, ...]
    raised: tuple[str, ...]
    walls: tuple[WallRain, ...]
    spent: float | None
    saved: float | None
    cannot: tuple[str, ...] = ()

    @property
    def clears(self) -> int:
        """Findings that it cures over those that it raises."""
        return len(self.cured) - len(self.raised)


def compared(name: str, base: tuple[Sheet, Review, Forecast], other: tuple[Sheet, Review, Forecast]) -> Compared:
    """An alternate against the plan as drawn."""
    before, after = _findings(base[1]), _findings(other[1])
    was, now = base[2].outlook, other[2].outlook
    cannot = tuple(obstacles(base[2], other[2])) if was.parts and now.parts else ()
    told = was.parts and now.parts and not cannot
    return Compared(
        name,
        tuple(changes_of(base[0], other[0])),
        count(other[1], "hold"),
        count(other[1], "revise"),
        count(other[1], "note"),
        _titles(before, after),
        _titles(after, before),
        tuple(_walls(base[0], other[0])),
        now.spent.likely if now.parts else None,
        was.spent.likely - now.spent.likely if told else None,
        cannot,
    )


def count(review: Review, grade: str) -> int:
    """Rules that a review trips in a grade."""
    return len({ruling.rule for ruling in review.rulings if ruling.grade == grade})


def _findings(review: Review) -> dict[tuple[str, str], str]:
    """The findings of a review in words, by rule and grade, each with the elements it is about."""
    found: dict[tuple[str, str], list[str]] = {}
    titles = {}
    for ruling in review.rulings:
        if ruling.grade in WORDS:
            found.setdefault((ruling.rule, ruling.grade), []).append(ruling.element)
            titles[ruling.rule] = ruling.title or ruling.rule
    return {
        (rule, grade): f"{titles[rule]} ({', '.join(dict.fromkeys(elements))}; {WORDS[grade]})"
        for (rule, grade), elements in found.items()
    }


def _titles(some: dict[tuple[str, str], str], others: dict[tuple[str, str], str]) -> tuple[str, ...]:
    """Findings of one review that the other lacks."""
    return tuple(words for key, words in some.items() if key not in others)


def changes_of(base: Sheet, other: Sheet) -> Iterator[str]:
    """What an alternate states, element by element, in the words of the plan."""
    for label, element in other.home.elements.items():
        was = base.home.elements.get(label)
        words = [_words(element, name) for name in element.given if _differs(was, element, name)]
        if words:
            yield f"{label}{'' if was is not None else ' (new)'}: {', '.join(words)}"
    for label in base.home.elements:
        if label not in other.home.elements:
            yield f"{label}: left out"


def _differs(was: Element | None, now: Element, name: str) -> bool:
    return now.given[name].how in ("stated", "alternate") and (
        was is None or name not in was.given or was.given[name].text != now.given[name].text
    )


def _words(element: Element, name: str) -> str:
    return f"{name} {element.given[name].text}"


def _walls(base: Sheet, other: Sheet) -> Iterator[WallRain]:
    """Walls whose wood takes other rain with the alternate."""
    for wall in other.of_kind("wall"):
        was = base.facts.get(wall.label)
        before, after = (_rain(one) if one is not None else None for one in (was, wall))
        if was is not None and was["wooden"] == "yes" and wall["wooden"] == "no" and before is not None:
            yield WallRain(wall.label, before, None)
        elif before is not None and after is not None and abs(before - after) >= LEAST:
            yield WallRain(wall.label, before, after)


def _rain(wall: Facts) -> float | None:
    found = wall.sheet.quantity(wall, "rain exposure")
    return float(found.value) if isinstance(found, Quantity) else None


def best_of(others: tuple[Compared, ...]) -> Compared | None:
    """The alternate to look at first; none where none clears more than it raises."""
    good = [other for other in others if other.clears > 0]
    return max(good, key=lambda other: (other.clears, other.saved or 0.0), default=None)
