"""Elements from one revision of a plan to the next: which are the same under another name, which are new or gone."""

from __future__ import annotations

import math
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from typing import Any

from speclint.measures.facts import Sheet
from speclint.model.element import Element, settings_of
from speclint.model.settings import Section

MOST_PAIRS = 40_000  # of gone and new elements of a kind; where there are more, nobody renamed them one by one
LIKE_ENOUGH = 0.5  # share of the settings that must agree for an element to be the same one under another name
_TAKEN = "assumed by speclint"


@dataclass(frozen=True, slots=True)
class Elements:
    """The elements of two revisions.

    Attributes:
        added: Those that only the new one has.
        removed: Those that only the old one has.
        renamed: New labels of those that go by another name, by their old ones.
        kept: New labels of all that both have, by their old ones, in the order of the new plan.
    """

    added: tuple[str, ...]
    removed: tuple[str, ...]
    renamed: Mapping[str, str]
    kept: Mapping[str, str]


@dataclass(frozen=True, slots=True)
class _Note:
    """What a setting states, to compare by, and whether a typical states it."""

    value: Any
    typical: bool = False


_Notes = dict[str, _Note]


def match_elements(old: Sheet, new: Sheet) -> Elements:
    """Match the elements of two revisions: by label, then those that are most alike of one kind, best first."""
    gone = [element for label, element in old.home.elements.items() if label not in new.home.elements]
    come = [element for label, element in new.home.elements.items() if label not in old.home.elements]
    both = old.home.elements.keys() & new.home.elements.keys()
    names: dict[str, str] = {}
    for kind in dict.fromkeys(element.kind for element in gone):
        sides = [[element for element in side if element.kind == kind] for side in (gone, come)]
        if 0 < len(sides[0]) * len(sides[1]) <= MOST_PAIRS:
            names |= _alike(_all_notes(old, sides[0], both), _all_notes(new, sides[1], both))
    was = {label: label for label in both} | {new: old for old, new in names.items()}
    return Elements(
        tuple(element.label for element in come if element.label not in was),
        tuple(element.label for element in gone if element.label not in names),
        names,
        {was[label]: label for label in new.home.elements if label in was},
    )


def _alike(before: Mapping[str, _Notes], after: Mapping[str, _Notes]) -> dict[str, str]:
    """The pairs that are most alike, best first; of those equally alike the first in the order of the plans."""
    scores = []
    for at, notes in enumerate(before.values()):
        for to, others in enumerate(after.values()):
            score = _likeness(notes, others)
            if score >= LIKE_ENOUGH:
                scores.append((-score, at, to))
    old, new = list(before), list(after)
    found: dict[str, str] = {}
    taken: set[int] = set()
    for _, at, to in sorted(scores):
        if old[at] not in found and to not in taken:
            found[old[at]] = new[to]
            taken.add(to)
    return {label: found[label] for label in old if label in found}


def _all_notes(sheet: Sheet, elements: list[Element], both: set[str]) -> dict[str, _Notes]:
    """What elements state and by whom they are named; parts that are not in both revisions go by their kind alone."""

    def masked(label: str) -> str:
        return label if label in both else sheet.home.elements[label].kind

    found: dict[str, _Notes] = {}
    for element in elements:
        notes = found[element.label] = {}
        for name, value, how in _stated(element):
            if settings_of(type(element))[name].dimension == "part":
                value = tuple(sorted(masked(label) for label in _labels(value)))
            notes[name] = _Note(value, how == "typical")
    for link in sheet.links.all:
        if link.target in found:
            found[link.target][f"{link.setting} of {masked(link.source)}"] = _Note(True)
    return found


def _stated(element: Element) -> Iterator[tuple[str, Any, str]]:
    """The settings of an element that somebody stated: name, value, and how it came into the model."""
    for name, setting in settings_of(type(element)).items():
        given = element.given.get(name)
        if given is not None and given.how != _TAKEN:
            yield name, getattr(element, setting.attribute), given.how


def _likeness(one: _Notes, other: _Notes) -> float:
    """Share of notes that agree; what typicals state on both sides counts only where there is nothing else."""
    every = one.keys() | other.keys()
    own = {name for name in every if not all(name in side and side[name].typical for side in (one, other))}
    counted = own or every
    if not counted:
        return 0.0
    agreed = sum(name in one and name in other and same(one[name].value, other[name].value) for name in counted)
    return agreed / len(counted)


def same(one: Any, other: Any) -> bool:
    """Whether two values say the same, in whatever unit they were written."""
    if isinstance(one, Section) and isinstance(other, Section):
        one, other = one[:2], other[:2]  # by whatever name they go
    if isinstance(one, float | int) and isinstance(other, float | int):
        return math.isclose(one, other, rel_tol=1e-6, abs_tol=1e-9)
    if isinstance(one, tuple) and isinstance(other, tuple):
        return len(one) == len(other) and all(same(a, b) for a, b in zip(one, other, strict=True))
    return bool(one == other)


def labels_of(element: Element, name: str) -> tuple[str, ...]:
    """The parts that a setting of an element names."""
    return _labels(getattr(element, settings_of(type(element))[name].attribute))


def _labels(value: Any) -> tuple[str, ...]:
    return (value,) if isinstance(value, str) and value else tuple(value or ())
