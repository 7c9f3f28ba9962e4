"""What became of each finding from one revision of a plan to the next.

A finding is known by its rule and its element, wherever its lines have gone. One cause is counted once: a finding that
another rule told before, because it superseded it, is neither new nor cured when that rule stands back.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from typing import Literal

from speclint.model.home import Variance
from speclint.review.judge import ruling_of
from speclint.review.renames import Elements
from speclint.review.variance_rulings import renamed_label
from speclint.rulebook.book import Rulebook
from speclint.rulebook.rule import GRADES
from speclint.ruling import Review, Ruling

TurnWord = Literal[
    "new", "graver", "more lacking", "back", "not judged", "told anew", "otherwise",
    "cured", "milder", "less lacking", "accepted",
]  # fmt: skip
Way = Literal["worse", "better", ""]
_WAYS: dict[str, Way] = {
    "new": "worse", "graver": "worse", "more lacking": "worse", "back": "worse", "not judged": "worse",
    "cured": "better", "milder": "better", "less lacking": "better",
}  # fmt: skip
_ROUNDING = 1e-3  # of the greatest side: numbers of rulings carry four digits


@dataclass(frozen=True, slots=True)
class Turn:
    """What became of one finding from the old revision to the new.

    Attributes:
        word: new, graver, more lacking, back (a variance no longer covers it), not judged (a fact it needs is no longer
            stated), told anew (the same cause, by another rule), otherwise (in other words, neither better nor worse),
            cured, milder, less lacking, or accepted (by a variance).
        before: The finding in the old revision, its element as the new plan calls it.
        after: The finding in the new revision.
        why: What brought it about, where that is known.
        variance: The variance that covers it now, or that covered it before.
        covered: Whether the variance covers it still, or did until it was gone; such a finding is not counted.
        cause: Of what is told anew, which way its cause went.
    """

    word: TurnWord
    before: Ruling | None
    after: Ruling | None
    why: str = ""
    variance: Variance | None = None
    covered: bool = False
    cause: Way = ""

    @property
    def told(self) -> Ruling:
        """The finding as it stands, or as it was where it stands no more."""
        found = self.after or self.before
        assert found is not None
        return found

    @property
    def way(self) -> Way:
        """Whether the finding got worse or better, or neither."""
        return self.cause if self.word == "told anew" else _WAYS.get(self.word, "")


@dataclass(frozen=True, slots=True)
class _Standing:
    """How a finding stands in one revision, and what tells or accepts it in its place."""

    how: Literal["told", "accepted", "behind", "not judged", "absent"]
    ruling: Ruling | None = None
    by: Ruling | None = None
    variance: Variance | None = None


_ABSENT = _Standing("absent")


class Standings:
    """How every finding of a revision stands, by its mark.

    Args:
        review: The review.
        trips: All findings before variances and superseding rules.
        book: The rulebook.
        names: What to call elements, by their labels; others keep theirs.
    """

    def __init__(self, review: Review, trips: Iterable[Ruling], book: Rulebook, names: Mapping[str, str]) -> None:
        def named(rulings: Iterable[Ruling]) -> dict[str, Ruling]:
            moved = (one._replace(element=renamed_label(one.element, names)) for one in rulings)
            return {one.mark: one for one in moved}

        self.book = book
        self.told = named(review.rulings)
        self.trips = named(trips)
        self.unanswered = named(ruling_of(one) for one in review.unanswered)
        self.by_element: dict[str, list[Ruling]] = {}
        for one in self.trips.values():
            self.by_element.setdefault(one.element, []).append(one)
        self.accepted = {
            mark: (ruling, one.variance)
            for one in review.variances
            if one.state == "in force"
            for mark, ruling in named(one.rulings).items()
        }

    def of(self, mark: str) -> _Standing:
        """How a finding stands."""
        if mark in self.told:
            return _Standing("told", self.told[mark])
        if mark in self.accepted:
            ruling, variance = self.accepted[mark]
            return _Standing("accepted", ruling, None, variance)
        if mark in self.trips:
            return _Standing("behind", self.trips[mark], self._before(self.trips[mark], {mark}))
        if mark in self.unanswered:
            return _Standing("not judged", self.unanswered[mark])
        return _ABSENT

    def _before(self, ruling: Ruling, seen: set[str]) -> Ruling | None:
        """The finding that is told in place of one that its rule supersedes, or that of a rule above it."""
        for one in self.by_element[ruling.element]:
            rule = self.book.named(one.rule)
            if one.mark in seen or not rule or ruling.rule not in rule.supersedes:
                continue
            found = self.told.get(one.mark) or self._before(one, seen | {one.mark})
            if found is not None:
                return found
        return None


def turns(old: Standings, new: Standings, elements: Elements, today: Review) -> list[Turn]:
    """Every finding that changed, the gravest first.

    Args:
        old: The old revision, its elements as the new plan calls them.
        new: The new revision.
        elements: The elements of both.
        today: The new review, for its variances.
    """
    marks = list(dict.fromkeys([*new.told, *new.accepted, *old.told, *old.accepted]))
    stands = {mark: (old.of(mark), new.of(mark)) for mark in marks}
    anew = [turn for was, now in stands.values() if (turn := _told_anew(was, now, new)) is not None]
    spoken = {turn.told.mark for turn in anew} | {turn.before.mark for turn in anew if turn.before}
    found = list(anew)
    for mark, (was, now) in stands.items():
        turn = _turn(was, now, elements, today)
        if turn is not None and not (mark in spoken and turn.word in ("new", "cured")):
            found.append(turn)
    return sorted(found, key=lambda turn: GRADES.index(turn.told.grade))


def _told_anew(was: _Standing, now: _Standing, new: Standings) -> Turn | None:
    """A finding that goes behind another rule, or comes out from behind one: one cause, told by another rule.

    It got worse where the rule that tells it now is graver, or where the finding itself lacks more; that a variance or
    a missing fact took the other rule out makes nothing better.
    """
    before, after = was.ruling, now.ruling
    if before is None or after is None:
        return None
    word = turn_word(before, after)
    own = _WAYS.get(word, "") if word else ""
    if was.how == "told" and now.how == "behind" and now.by is not None:
        return Turn("told anew", before, now.by, cause=_worse_first(graver_or_milder(before, now.by), own))
    if was.how == "behind" and now.how == "told" and was.by is not None:
        gone = new.of(was.by.mark).how not in ("accepted", "not judged")
        other = graver_or_milder(was.by, after) if gone else ""
        return Turn("told anew", was.by, after, cause=_worse_first(other, own))
    return None


def _worse_first(*ways: Way) -> Way:
    return "worse" if "worse" in ways else "better" if "better" in ways else ""


def _turn(was: _Standing, now: _Standing, elements: Elements, today: Review) -> Turn | None:
    before, after = was.ruling, now.ruling
    match was.how, now.how:
        case ("told", "told") | ("accepted", "accepted"):
            assert before is not None
            assert after is not None
            word = turn_word(before, after)
            return Turn(word, before, after, "", now.variance, now.variance is not None) if word else None
        case "told", "accepted":
            return Turn("accepted", before, after, "", now.variance, True)
        case _, "accepted":
            return Turn("accepted", None, after, "", now.variance, True)
        case "accepted", "told":
            return Turn("back", before, after, _lapse(was.variance, after, today), was.variance)
        case "absent" | "not judged", "told":
            return Turn("new", None, after, _why_new(was, after, elements))
        case "told" | "accepted", "not judged":
            why = after.message if after else ""
            return Turn("not judged", before, None, why, was.variance, was.variance is not None)
        case "told" | "accepted", "absent":
            gone = before is not None and before.element in elements.removed
            why = f"{before.element} is gone" if before and gone else ""
            return Turn("cured", before, None, why, was.variance, was.variance is not None)
    return None


def _why_new(was: _Standing, after: Ruling | None, elements: Elements) -> str:
    if was.how == "not judged":
        return "could not be judged before"
    return f"{after.element} is new" if after and after.element in elements.added else ""


def _lapse(variance: Variance | None, after: Ruling | None, today: Review) -> str:
    """Why a variance no longer covers a finding."""
    for one in today.variances:
        if variance and after and one.variance.rule == variance.rule and one.variance.element in ("", after.element):
            return f"the variance expired on {one.variance.until}" if one.state == "expired" else one.state
    return "the variance was taken out"


def turn_word(before: Ruling, after: Ruling) -> TurnWord | None:
    """What became of a finding that both revisions have; nothing where it is the same."""
    way = graver_or_milder(before, after)
    if way:
        return "graver" if way == "worse" else "milder"
    if (before.stated, before.needed) == (after.stated, after.needed):
        return None
    more = more_lacking(before, after)
    return "otherwise" if more is None else "more lacking" if more > 0 else "less lacking" if more < 0 else None


def graver_or_milder(before: Ruling, after: Ruling) -> Way:
    """Whether the grade was raised (worse) or lowered (better)."""
    change = GRADES.index(after.grade) - GRADES.index(before.grade)
    return "worse" if change < 0 else "better" if change > 0 else ""


def more_lacking(before: Ruling, after: Ruling) -> float | None:
    """By how much more is lacking now, 0 within rounding; nothing where the two compare different things.

    A rule that forbids, rather than requires, turns the sign of its margin, so that what is lacking is its size.
    """
    compared = [tuple(quantity.name for quantity in one.evidence) for one in (before, after)]
    if before.margin is None or after.margin is None or before.unit != after.unit or compared[0] != compared[1]:
        return None
    if before.margin * after.margin < 0:
        return None
    change = abs(after.margin) - abs(before.margin)
    sides = (before.stated_number, before.needed_number, after.stated_number, after.needed_number)
    greatest = max((abs(side) for side in sides if side is not None), default=0.0)
    return change if abs(change) > _ROUNDING * greatest else 0.0
