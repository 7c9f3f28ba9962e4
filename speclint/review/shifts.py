"""What else changed from one revision of a plan to the next: what its notes state, and what weather and time do."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from speclint.measures.facts import Sheet
from speclint.measures.register import measures
from speclint.model.element import Element, settings_of
from speclint.quantity import Quantity
from speclint.review.renames import labels_of, same
from speclint.units import System

NOT_STATED = "not stated"
# By how much a number must change to be told: a share of the greater value, and of 1 where it has no unit.
LEAST_SHIFT, LEAST_POINT = 0.02, 0.01
_STANDING = {"assumed in the plan": "assumed ", "assumed by speclint": "taken as "}
_VERDICTS = ("ample", "near", "over")
_WOOD = ("wall", "corner", "purlin", "post", "beam", "deck", "stair")
Watched = tuple[tuple[tuple[str, ...], str, bool], ...]
"""Of which kinds, which measure, and whether less of it is better."""
WATCHED: Watched = (
    (("wall",), "rain on wall", True),
    (("wall",), "rain share", True),
    (("wall",), "ultraviolet share", True),
    (("wall",), "splash dose", True),
    (("wall", "post", "deck", "rail"), "likely finish life", False),
    (("wall",), "decay margin", True),
    (_WOOD, "decay verdict", True),
)


@dataclass(frozen=True, slots=True)
class NoteChange:
    """A setting that states something else: before and after as the reader writes it."""

    element: str
    setting: str
    before: str
    after: str


@dataclass(frozen=True, slots=True)
class Shift:
    """A measure before and after, as the reader writes it, and whether it got better."""

    element: str
    measure: str
    before: str
    after: str
    better: bool


def note_changes(old: Sheet, new: Sheet, kept: Mapping[str, str], system: System) -> tuple[NoteChange, ...]:
    """The settings that changed of the elements that both revisions have.

    Args:
        old: The old revision.
        new: The new revision.
        kept: New labels by old ones.
        system: The units of the reader.
    """
    found = []
    for before_label, after_label in kept.items():
        before, after = old.home.elements[before_label], new.home.elements[after_label]
        for name in settings_of(type(after)):
            if name not in before.given and name not in after.given:
                continue
            if not _same_note(before, after, name, kept):
                told = (setting_words(old, before_label, name, system), setting_words(new, after_label, name, system))
                if told[0] != told[1]:
                    found.append(NoteChange(after_label, name, *told))
    return tuple(found)


def _same_note(before: Element, after: Element, name: str, kept: Mapping[str, str]) -> bool:
    setting = settings_of(type(after))[name]
    standing = [_STANDING.get(one.given[name].how, "") if name in one.given else None for one in (before, after)]
    if standing[0] != standing[1]:
        return False
    if setting.dimension == "part":
        named = sorted(kept.get(label, f"{label} of before") for label in labels_of(before, name))
        return named == sorted(labels_of(after, name))
    return same(getattr(before, setting.attribute), getattr(after, setting.attribute))


def setting_words(sheet: Sheet, label: str, name: str, system: System) -> str:
    """What an element states for a setting, as the reader writes it."""
    element = sheet.home.elements[label]
    given = element.given.get(name)
    if given is None:
        return NOT_STATED
    standing = _STANDING.get(given.how, "")
    if settings_of(type(element))[name].dimension == "part":
        return standing + (", ".join(labels_of(element, name)) or NOT_STATED)
    found = sheet.quantity(sheet[label], name)
    if isinstance(found, Quantity):
        shown = found.shown(system)
        return shown if shown.startswith(standing) else standing + shown
    return given.how if given.how == "unknown" else "not readable"


def shifts(
    old: Sheet, new: Sheet, kept: Mapping[str, str], system: System, watched: Watched = WATCHED
) -> tuple[Shift, ...]:
    """The watched measures that got better or worse by as much as shows, element by element.

    Args:
        old: The old revision.
        new: The new revision.
        kept: New labels by old ones.
        system: The units of the reader.
        watched: The measures to look at.
    """
    known = measures()
    found = []
    for before_label, after_label in kept.items():
        kind = new.home.elements[after_label].kind
        for kinds, measure, less in watched:
            if kind not in kinds or measure not in known.get(kind, {}):
                continue
            before = old.quantity(old[before_label], measure)
            after = new.quantity(new[after_label], measure)
            if isinstance(before, Quantity) and isinstance(after, Quantity):
                change = _change(before, after)
                told = (before.shown(system), after.shown(system))
                if change and told[0] != told[1]:
                    found.append(Shift(after_label, measure, *told, (change < 0) == less))
    return tuple(found)


def _change(before: Quantity, after: Quantity) -> float:
    """By how much a measure grew; 0 where that is too little to tell."""
    one, other = (_VERDICTS.index(q.value) if q.value in _VERDICTS else q.value for q in (before, after))
    if isinstance(one, str) or isinstance(other, str):
        return 0.0
    change = float(other) - float(one)
    least = LEAST_SHIFT * max(abs(one), abs(other))
    if before.dimension in ("ratio", "share"):
        least = max(least, LEAST_POINT)
    return change if abs(change) > least else 0.0
