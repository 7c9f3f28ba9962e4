"""Quick fixes: the cures of findings, and the nearest known word where a word is mistaken."""

from __future__ import annotations

import re
from collections.abc import Iterable
from dataclasses import dataclass

from lsprotocol import types as lsp

from speclint.editor.diagnose import MISTAKE, finding
from speclint.editor.reading import Reading
from speclint.language.atoms import Mistake
from speclint.language.edit import Edit, with_edits
from speclint.pipeline import PlanText, read_home
from speclint.ruling import Ruling
from speclint.span import Span

MOST_FINDINGS = 8
CONFIRM = "for those to confirm whom the finding names"
_WORDS = re.compile(r"“([^”]+)”")


@dataclass(frozen=True, slots=True)
class Fix:
    """A quick fix.

    Attributes:
        title: What it does.
        edits: What it alters in the plan's own text.
        settles: What it clears.
        deferred: Whether others decide on it, as the finding says; it is then never the one to prefer.
    """

    title: str
    edits: tuple[Edit, ...]
    settles: lsp.Diagnostic
    deferred: bool = False


def fixes(reading: Reading, told: Iterable[lsp.Diagnostic]) -> list[Fix]:
    """The quick fixes of what is told at a place, the best of each first.

    Args:
        reading: The plan.
        told: Diagnostics as the editor holds them; those that no longer stand are passed over.
    """
    found: list[Fix] = []
    asked = 0
    for diagnostic in told:
        if diagnostic.code == MISTAKE:
            mistake = _mistake_of(reading, diagnostic)
            found += _known_words(reading, mistake, diagnostic) if mistake else []
            continue
        ruling = _ruling_of(reading, diagnostic)
        if ruling is not None and asked < MOST_FINDINGS:
            asked += 1
            found += _cures(reading, ruling, diagnostic)
    return found


def _cures(reading: Reading, ruling: Ruling, diagnostic: lsp.Diagnostic) -> list[Fix]:
    from speclint.cures.offer import offers

    plan = reading.shelf.plan
    offered = offers(plan, reading.settled.book, reading.today, reading.system, ruling)
    found = []
    for cure in offered:
        title = f"{cure.title} ({CONFIRM})" if cure.care else cure.title
        found.append(Fix(title, tuple(cure.edits), diagnostic, bool(cure.care)))
    return found


def _ruling_of(reading: Reading, diagnostic: lsp.Diagnostic) -> Ruling | None:
    for ruling in reading.review.rulings:
        same = diagnostic.code == ruling.rule and diagnostic.message == finding(ruling)
        if same and reading.lines_of(ruling.place.file).of_span(ruling.place) == diagnostic.range:
            return ruling
    return None


def _mistake_of(reading: Reading, diagnostic: lsp.Diagnostic) -> Mistake | None:
    for mistake in reading.review.mistakes:
        own = mistake.file == reading.document.name and diagnostic.message.startswith(mistake.message)
        if own and reading.lines.of_span(_span(mistake)) == diagnostic.range:
            return mistake
    return None


def _known_words(reading: Reading, mistake: Mistake, diagnostic: lsp.Diagnostic) -> list[Fix]:
    """The words that the help of a mistake names, each where writing it leaves fewer mistakes."""
    if not mistake.help.startswith("did you mean “"):
        return []
    text = reading.document.text
    start, end = reading.lines.offsets(_span(mistake))
    got = next(iter(_WORDS.findall(mistake.message)), "")
    whole = start + len(got) if text.startswith(got, start) else end
    found = []
    for word in _WORDS.findall(mistake.help):
        for stop in dict.fromkeys((end, whole)):
            edit = Edit(start, stop, word)
            plan = PlanText(with_edits(text, [edit]), reading.document.name, reading.shelf.read)
            if len(read_home(plan)[1]) < len(reading.review.mistakes):
                found.append(Fix(f"write “{word}”", (edit,), diagnostic))
                break
    return found


def _span(mistake: Mistake) -> Span:
    return Span(mistake.file, mistake.line, mistake.column, mistake.length)
