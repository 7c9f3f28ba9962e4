"""The smallest set of changes that clears every finding of a grade, without raising new ones of it."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass, replace

from speclint.cures.change import YOURS, Changes, NoCure
from speclint.cures.desk import Desk, Findings
from speclint.rulebook.rule import GRADES, Grade
from speclint.ruling import Ruling

MOST_ROUNDS = 3


@dataclass(frozen=True, slots=True)
class CureSet:
    """Changes made together.

    Attributes:
        changes: The changes; none of them can be left out without a finding coming back.
        clears: The findings of the grade, or graver, that are gone with them.
        milder: The findings that are still told, in the milder grade that they come to.
        left: Those that remain, each with the reason.
        brings: What comes with them that was not there before.
    """

    changes: Changes
    clears: tuple[Ruling, ...]
    left: tuple[NoCure, ...]
    brings: tuple[Ruling, ...]
    milder: tuple[Ruling, ...]


def cure_set(desk: Desk, down_to: Grade, beside: bool = False) -> CureSet:
    """A set of changes that clears the findings of a grade and graver, built up one by one and then thinned.

    Offers are taken in the order of how many findings each leaves, the gravest counted first; none is taken that
    raises a hold. What they bring is cured in the next round. Then each change is left out for trial. So no change of
    the set is needless; a smaller set of other changes is not excluded.

    Args:
        desk: The plan on the desk.
        down_to: The mildest grade to clear.
        beside: Whether the changes are to stand beside the plan, where they can be stated of elements of other files.
    """
    chosen: list[Changes] = []
    now, left = desk, dict[str, NoCure]()
    for _ in range(MOST_ROUNDS):
        offered, why = _offered(now, down_to, beside)
        left |= why
        further = _built(desk, chosen, offered, down_to)
        if further == chosen:
            break
        chosen = further
        now = desk.after(_flat(chosen))
    chosen = _thinned(desk, chosen, down_to)
    after = desk.found_with(_flat(chosen))
    before, grave = _grave(desk.findings, down_to), _grave(after, down_to)
    gone = tuple(ruling for mark, ruling in before.items() if mark not in grave)
    remain = tuple(
        left.get(mark) or NoCure(ruling.rule, ruling.element, "its cures cannot stand together with the others")
        for mark, ruling in grave.items()
    )
    return CureSet(_flat(chosen), gone, remain, desk.brought(after), desk.milder(after))


def _offered(desk: Desk, down_to: Grade, beside: bool) -> tuple[list[Changes], dict[str, NoCure]]:
    """The changes that are offered for the grave findings, and why there are none for some."""
    offered: dict[Changes, None] = {}
    left: dict[str, NoCure] = {}
    for mark, ruling in _grave(desk.findings, down_to).items():
        offers, none = desk.offers(ruling, down_to)
        offered |= dict.fromkeys(offer.cure.changes for offer in offers if beside or not offer.cure.unwritten)
        if none is not None:
            left[mark] = none
        elif not beside and all(offer.cure.unwritten for offer in offers):
            left[mark] = NoCure(ruling.rule, ruling.element, f"{offers[0].cure.unwritten}, {YOURS}")
    return list(offered), left


def _built(desk: Desk, chosen: list[Changes], offered: list[Changes], down_to: Grade) -> list[Changes]:
    """The chosen changes and, of those offered, each that still leaves fewer findings; what clears most comes first."""
    standing = desk.found_with(_flat(chosen))
    alone = {changes: _weight(desk.found_with(_flat(_joined(desk, chosen, changes))), down_to) for changes in offered}
    for changes in sorted(offered, key=lambda changes: alone[changes]):
        trial = _joined(desk, chosen, changes)
        if trial == chosen:
            continue
        after = desk.found_with(_flat(trial))
        if set(_grave(after, "hold")) - set(_grave(standing, "hold")):
            continue
        if _weight(after, down_to) < _weight(standing, down_to):
            chosen, standing = trial, after
    return chosen


def _weight(findings: Findings, down_to: Grade) -> tuple[int, ...]:
    """How many findings there are of each grade down to one, the gravest first."""
    grades = GRADES[: GRADES.index(down_to) + 1]
    return tuple(sum(ruling.grade == grade for ruling in findings.values()) for grade in grades)


def _joined(desk: Desk, chosen: list[Changes], changes: Changes) -> list[Changes]:
    """The changes with further ones, which win where both write one setting."""
    first = {desk.written_at(change): change for change in _flat(chosen)}
    fresh = tuple(
        replace(change, was=first[key].was) if (key := desk.written_at(change)) in first else change
        for change in changes
    )
    texts = {desk.written_at(change): change.text for change in fresh}
    if all(key in first and first[key].text == text for key, text in texts.items()):
        return chosen
    kept = [tuple(one for one in other if desk.written_at(one) not in texts) for other in chosen]
    return [*(other for other in kept if other), fresh]


def _thinned(desk: Desk, chosen: list[Changes], down_to: Grade) -> list[Changes]:
    """The changes without any that the others make needless."""
    full = _weight(desk.found_with(_flat(chosen)), down_to)
    for changes in list(chosen):
        without = [other for other in chosen if other is not changes]
        if _weight(desk.found_with(_flat(without)), down_to) <= full:
            chosen = without
    return chosen


def _grave(findings: Findings, down_to: Grade) -> Findings:
    least = GRADES.index(down_to)
    return {mark: ruling for mark, ruling in findings.items() if GRADES.index(ruling.grade) <= least}


def _flat(chosen: Iterable[Changes]) -> Changes:
    return tuple(change for changes in chosen for change in changes)
