"""Quick fixes: the cures of findings, and the words that may be meant where one is mistaken."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass, replace
from typing import TYPE_CHECKING

from lsprotocol import types as lsp

from speclint.editor.diagnose import MISTAKE, finding
from speclint.editor.mend import is_sure, mends, place_of
from speclint.editor.reading import Reading
from speclint.editor.underline import Underlines
from speclint.language.atoms import Mistake
from speclint.language.edit import Edit
from speclint.pipeline import PlanText, read_home
from speclint.ruling import Ruling

if TYPE_CHECKING:
    from speclint.cures.desk import Desk

MOST_FINDINGS = 8
CONFIRM = "to be confirmed by those whom the finding names"


@dataclass(frozen=True, slots=True)
class Fix:
    """A quick fix, or why there is none.

    Attributes:
        does: What it does.
        edits: What it alters in the plan's own text.
        settles: What it clears.
        notes: What stands there now, and what else comes of it.
        deferred: Whether others decide on it, as the finding says; it is then never the one to prefer.
        sure: Whether it may be the one to prefer.
        refused: Why nothing is offered; empty where something is.
    """

    does: str
    edits: tuple[Edit, ...]
    settles: tuple[lsp.Diagnostic, ...]
    notes: tuple[str, ...] = ()
    deferred: bool = False
    sure: bool = True
    refused: str = ""

    @property
    def title(self) -> str:
        """What it does and what comes of it, in one line."""
        notes = [*self.notes, *([CONFIRM] if self.deferred else [])]
        return f"{self.does} ({'; '.join(notes)})" if notes else self.does

    @property
    def preferable(self) -> bool:
        """Whether an editor may take it unasked, where it is the first."""
        return self.sure and not self.deferred and not self.refused


def fixes(reading: Reading, told: Iterable[lsp.Diagnostic]) -> list[Fix]:
    """The quick fixes of what is told at a place, the best of each first; each change once, whatever it settles.

    Args:
        reading: The plan.
        told: Diagnostics as the editor holds them; those that no longer stand are passed over.
    """
    found: list[Fix] = []
    asked: list[tuple[Ruling, lsp.Diagnostic]] = []
    for diagnostic in told:
        if diagnostic.code == MISTAKE:
            mistake = _mistake_of(reading, diagnostic)
            found += _known_words(reading, mistake, diagnostic) if mistake else []
        elif len(asked) < MOST_FINDINGS and (ruling := _ruling_of(reading, diagnostic)):
            asked.append((ruling, diagnostic))
    if asked:
        desk = _desk(reading, reading.document.text)
        for ruling, diagnostic in asked:
            found += _cures(reading, desk, ruling, diagnostic)
    return _merged(found)


def _desk(reading: Reading, text: str) -> Desk:
    from speclint.cures.desk import Desk

    plan = PlanText(text, reading.document.name, reading.shelf.read)
    return Desk(plan, reading.settled.book, reading.today, reading.system)


def _cures(reading: Reading, desk: Desk, ruling: Ruling, diagnostic: lsp.Diagnostic) -> list[Fix]:
    """The cures of a finding; the reason where there is none."""
    from speclint.editor.typical import at_typical

    offers, none = desk.offers(ruling)
    found = []
    for offer in offers:
        cure = offer.cure
        now = [f"now {change.was}" if change.was else "not stated now" for change in cure.changes]
        notes = _notes(now if len(now) == 1 else [], ruling, offer.clears, offer.brings)
        if cure.edits:
            found.append(Fix(cure.title, tuple(cure.edits), (diagnostic,), notes, bool(cure.care)))
    first = next((offer for offer in offers if len(offer.cure.changes) == 1), None)
    if first is not None:
        (change,) = first.cure.changes
        wide = at_typical(desk, reading.names, change, ruling, lambda text: _desk(reading, text))
        if wide is not None:
            notes = _notes([f"now {change.was}"], ruling, wide.clears, wide.brings)
            does = f"state {change.note} in {wide.target}"
            fix = Fix(does, (wide.edit,), (diagnostic,), notes, bool(first.cure.care), sure=False)
            # the smallest change stands first, unless it cures less than the one at the root
            found.insert(0 if len(wide.clears) > len(first.clears) else 1, fix)
    if not found:
        why = none.why if none else f"{offers[0].cure.unwritten}, so it is yours to write"
        found.append(Fix(f"no quick fix for {ruling.mark}", (), (diagnostic,), refused=why))
    return found


def _notes(now: list[str], ruling: Ruling, clears: Sequence[str], brings: Sequence[Ruling]) -> tuple[str, ...]:
    """What stands there now, and what a change clears and brings besides."""
    more = sum(mark != ruling.mark for mark in clears)
    new = "finding" if len(brings) == 1 else "findings"
    return (*now, *([f"clears {more} more"] if more else []), *([f"brings {len(brings)} {new}"] if brings else []))


def _merged(found: Iterable[Fix]) -> list[Fix]:
    """The fixes, those that alter the text alike as one; reasons for none behind them all."""
    merged: dict[tuple[tuple[Edit, ...], str], Fix] = {}
    for fix in found:
        key = (fix.edits, "" if fix.edits else fix.does)
        same = merged.get(key)
        if same is None:
            merged[key] = fix
        else:
            both = (*same.settles, *(one for one in fix.settles if one not in same.settles))
            merged[key] = replace(same, settles=both, deferred=same.deferred or fix.deferred)
    return sorted(merged.values(), key=lambda fix: bool(fix.refused))


def _ruling_of(reading: Reading, diagnostic: lsp.Diagnostic) -> Ruling | None:
    for ruling in reading.review.rulings:
        same = diagnostic.code == ruling.rule and diagnostic.message == finding(ruling)
        if same and Underlines(reading.lines_of(ruling.place.file)).of(ruling.place) == diagnostic.range:
            return ruling
    return None


def _mistake_of(reading: Reading, diagnostic: lsp.Diagnostic) -> Mistake | None:
    for mistake in reading.review.mistakes:
        own = mistake.file == reading.document.name and diagnostic.message.startswith(mistake.message)
        if own and reading.lines.of_span(place_of(mistake)) == diagnostic.range:
            return mistake
    return None


def _known_words(reading: Reading, mistake: Mistake, diagnostic: lsp.Diagnostic) -> list[Fix]:
    """The words that may be meant, each where writing it leaves fewer mistakes."""

    def count(text: str) -> int:
        return len(read_home(PlanText(text, reading.document.name, reading.shelf.read))[1])

    found = mends(reading.lines, mistake, count, len(reading.review.mistakes))
    sure = is_sure(mistake)
    return [Fix(f"write “{word}”", (edit,), (diagnostic,), sure=sure) for word, edit in found]
