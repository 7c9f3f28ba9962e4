"""Two revisions of a plan compared: what changed in its findings, questions, variances, measures and notes."""

from __future__ import annotations

import re
from collections import Counter
from collections.abc import Collection, Iterable, Mapping
from dataclasses import dataclass, field, replace
from typing import Literal, TypeVar

from speclint.language.atoms import Mistake
from speclint.measures.facts import Sheet
from speclint.model.element import settings_of
from speclint.review.renames import Elements, match_elements
from speclint.review.shifts import NOT_STATED, NoteChange, Shift, note_changes, setting_words, shifts
from speclint.review.turns import Standings, Turn, Way, turns
from speclint.rulebook.book import Rulebook
from speclint.rulebook.rule import GRADES, Grade
from speclint.ruling import Accepted, Review, Ruling
from speclint.units import System

_T = TypeVar("_T")


@dataclass(frozen=True, slots=True)
class Revision:
    """A plan at one time: its facts, its review, and all findings before variances and superseding rules.

    Its alternates, by name, are revisions too.
    """

    sheet: Sheet
    review: Review
    trips: tuple[Ruling, ...]
    alternates: Mapping[str, Revision] = field(default_factory=dict)


@dataclass(frozen=True, slots=True)
class Asked:
    """An open question about one element, and what the revision that does not ask states; empty where nothing."""

    element: str
    setting: str
    answer: str


@dataclass(frozen=True, slots=True)
class VarianceTurn:
    """A variance that is new, taken out, or says something else; its element as the new plan calls it."""

    rule: str
    element: str
    before: Accepted | None
    after: Accepted | None


@dataclass(frozen=True, slots=True)
class AlternateTurn:
    """An alternate that is new, taken out, or changed otherwise than the plan as drawn.

    Attributes:
        name: Its name.
        state: Whether both revisions have it, or which of them.
        turns: What became of its findings, where the plan as drawn does not tell the same.
        added: The elements that are new in it alone.
        removed: The elements that are gone from it alone.
        notes: Settings that it alone changed.
    """

    name: str
    state: Literal["both", "added", "removed"]
    turns: tuple[Turn, ...] = ()
    added: tuple[str, ...] = ()
    removed: tuple[str, ...] = ()
    notes: tuple[NoteChange, ...] = ()


@dataclass(frozen=True, slots=True)
class Comparison:
    """All that changed from the old revision of a plan to the new, and the review of the new one."""

    review: Review
    elements: Elements
    turns: tuple[Turn, ...]
    opened: tuple[Asked, ...] = ()
    answered: tuple[Asked, ...] = ()
    variances: tuple[VarianceTurn, ...] = ()
    shifts: tuple[Shift, ...] = ()
    notes: tuple[NoteChange, ...] = ()
    mistakes: tuple[Mistake, ...] = ()
    mended: tuple[Mistake, ...] = ()
    alternates: tuple[AlternateTurn, ...] = ()

    @property
    def nothing(self) -> bool:
        """Whether nothing changed."""
        of = self.elements
        told = (self.turns, self.opened, self.answered, self.variances, self.shifts, self.mistakes, self.mended)
        return not any((*told, self.notes, self.alternates, of.added, of.removed, of.renamed))

    def got(self, way: Way, grades: Iterable[Grade] = GRADES) -> list[Turn]:
        """The findings of these grades that got worse, or better; what a variance covers is not counted."""
        wanted = tuple(grades)
        return [turn for turn in self.turns if turn.way == way and turn.told.grade in wanted and not turn.covered]


def compare(old: Revision, new: Revision, book: Rulebook, system: System) -> Comparison:
    """What changed from one revision of a plan to the next.

    Args:
        old: The old revision.
        new: The new revision.
        book: The rulebook by which both were reviewed.
        system: The units of the reader, in which both were reviewed.
    """
    drawn = _as_drawn(old, new, book, system)
    return replace(drawn, alternates=tuple(_alternate_turns(old, new, drawn, book, system)))


def _as_drawn(old: Revision, new: Revision, book: Rulebook, system: System) -> Comparison:
    """What changed, without the alternates."""
    elements = match_elements(old.sheet, new.sheet)
    names = elements.kept
    asked_before, asked_now = _asked(old.review, names), _asked(new.review, {})
    return Comparison(
        new.review,
        elements,
        tuple(
            turns(
                Standings(old.review, old.trips, book, names),
                Standings(new.review, new.trips, book, {}),
                elements,
                new.review,
            )
        ),
        _only_asked(asked_now, asked_before, old.sheet, {now: then for then, now in names.items()}, system),
        _only_asked(asked_before, asked_now, new.sheet, {}, system),
        tuple(_variance_turns(old.review, new.review, names)),
        shifts(old.sheet, new.sheet, names, system),
        note_changes(old.sheet, new.sheet, names, system),
        _only_in(new.review.mistakes, old.review.mistakes),
        _only_in(old.review.mistakes, new.review.mistakes),
    )


def _alternate_turns(
    old: Revision, new: Revision, drawn: Comparison, book: Rulebook, system: System
) -> Iterable[AlternateTurn]:
    """The alternates that changed, without what changed in the plan as drawn too."""
    told = {_gist_of(turn) for turn in drawn.turns}
    for name in dict.fromkeys([*new.alternates, *old.alternates]):
        if name not in old.alternates or name not in new.alternates:
            yield AlternateTurn(name, "added" if name in new.alternates else "removed")
            continue
        found = _as_drawn(old.alternates[name], new.alternates[name], book, system)
        turn = AlternateTurn(
            name,
            "both",
            tuple(one for one in found.turns if _gist_of(one) not in told),
            _without(found.elements.added, drawn.elements.added),
            _without(found.elements.removed, drawn.elements.removed),
            _without(found.notes, drawn.notes),
        )
        if turn != AlternateTurn(name, "both"):
            yield turn


def _gist_of(turn: Turn) -> tuple[object, ...]:
    """What a turn says, wherever it stands."""
    sides = (one and (one.mark, one.grade, one.stated, one.needed) for one in (turn.before, turn.after))
    return turn.word, *sides


def _without(these: Iterable[_T], others: Collection[_T]) -> tuple[_T, ...]:
    return tuple(one for one in these if one not in others)


def unchanged(review: Review) -> Comparison:
    """The comparison of a plan whose text is the same on both sides."""
    return Comparison(review, Elements((), (), {}, {}), ())


def all_new(review: Review) -> Comparison:
    """The comparison of a plan that was not there before: every finding is new."""
    found = tuple(Turn("new", None, ruling, "the plan is new") for ruling in review.rulings)
    return Comparison(review, Elements((), (), {}, {}), found, mistakes=review.mistakes)


def _asked(review: Review, names: Mapping[str, str]) -> dict[tuple[str, str], None]:
    """The open questions as element and setting, in their order."""
    every = ((element, question.setting) for question in review.questions for element in question.elements)
    return {(names.get(element, element), setting): None for element, setting in every}


def _only_asked(
    asked: Iterable[tuple[str, str]],
    others: Mapping[tuple[str, str], None],
    other: Sheet,
    names: Mapping[str, str],
    system: System,
) -> tuple[Asked, ...]:
    """The questions that one revision asks and the other does not, with what the other states."""
    found = []
    for label, setting in asked:
        if (label, setting) not in others:
            there = other.home.elements.get(names.get(label, label))
            known = there is not None and setting in settings_of(type(there))
            told = setting_words(other, there.label, setting, system) if there is not None and known else NOT_STATED
            found.append(Asked(label, setting, "" if told == NOT_STATED else told))
    return tuple(found)


def _variance_turns(old: Review, new: Review, names: Mapping[str, str]) -> Iterable[VarianceTurn]:
    before = {(one.variance.rule, names.get(one.variance.element, one.variance.element)): one for one in old.variances}
    after = {(one.variance.rule, one.variance.element): one for one in new.variances}
    for rule, element in dict.fromkeys([*after, *before]):
        was, now = before.get((rule, element)), after.get((rule, element))
        if was is None or now is None or _says(was) != _says(now):
            yield VarianceTurn(rule, element, was, now)


def _says(accepted: Accepted) -> tuple[str, ...]:
    variance = accepted.variance
    return accepted.state, variance.because, variance.accepted_by, variance.until


def _only_in(these: Iterable[Mistake], others: Iterable[Mistake]) -> tuple[Mistake, ...]:
    """The mistakes of one revision that the other has not, wherever their lines have gone."""
    left = Counter(_gist(mistake) for mistake in others)
    found = []
    for mistake in these:
        if left[_gist(mistake)]:
            left[_gist(mistake)] -= 1
        else:
            found.append(mistake)
    return tuple(found)


def _gist(mistake: Mistake) -> str:
    return re.sub(r"\bline \d+", "line", mistake.message)
