"""A comparison of revisions in Markdown, as a comment under a proposed change: short tables, the rest folded away.

Names and reasons come from plans, which anybody may have written. They are shown as they are and never obeyed: mark-up,
links, names of people and numbers of issues are all taken apart.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Sequence

from speclint.outputs.compare import (
    Compared,
    alternate_words,
    asked_words,
    cautions,
    grouped_notes,
    mistake_words,
    renamed_words,
    standing,
    summary,
    turn_label,
    turn_words,
    variance_words,
)
from speclint.outputs.compare_object import Told
from speclint.outputs.letter import visible
from speclint.review.revisions import AlternateTurn, Comparison
from speclint.review.turns import Turn

MOST_ROWS = 50
_NOTHING = "&#8203;"  # a character of no width, which takes apart what a forge would make a link of
_MARKS = re.compile(r"([\\`*_{}\[\]#!|~$^])")
_LINKS = re.compile(r"(?i)(@|#|://|www\.|mailto:|\bgh-(?=\d))")
HEADINGS = {"worse": "Worse", "better": "Better", "": "Otherwise"}


def escaped(text: str) -> str:
    """A text as Markdown that shows it and nothing else, on one line."""
    plain = visible(" ".join(text.split()))
    return "".join(
        f"{_marked(piece[0])}{_NOTHING}{_marked(piece[1:])}" if _LINKS.fullmatch(piece) else _marked(piece)
        for piece in _LINKS.split(plain)
    )


def _marked(text: str) -> str:
    text = text.replace("&", "&amp;").replace("<", "&lt;").replace(">", "&gt;")
    return _MARKS.sub(r"\\\1", text)


def comparison_markdown(told: Told) -> str:
    """The comparison of all plans; those in which nothing changed, and that were not moved, are only counted."""
    lines = ["### Plan comparison", "", f"From {escaped(told.old)} to {escaped(told.new)}, {told.day}"]
    changed = [one for one in told.plans if one.comparison is None or one.moved or not one.comparison.nothing]
    for one in changed[:MOST_ROWS]:
        lines += ["", *_plan(one)]
    if len(changed) > MOST_ROWS:
        lines += ["", f"And {len(changed) - MOST_ROWS} more plans with changes."]
    for _, message in told.troubles[:MOST_ROWS]:
        lines += ["", f"**Cannot be read:** {escaped(message)}"]
    total = "".join(part.text for part in summary(told.plans, len(told.troubles)))
    return "\n".join([*lines, "", f"**{escaped(total)}**", ""])


def _plan(compared: Compared) -> list[str]:
    name, found = compared.name, compared.comparison
    if found is None:
        return [f"#### {escaped(name)}", "", "The plan was removed."]
    aside = (
        " (new)" if compared.state == "added" else f" (moved from {escaped(compared.moved)})" if compared.moved else ""
    )
    lines = [f"#### {escaped(name)}{aside}", "", escaped(standing(found))]
    for way, heading in HEADINGS.items():
        lines += _turns(heading, [turn for turn in found.turns if turn.way == way])
    if found.mistakes:
        lines += ["", "**Cannot be read, and could before**", ""]
        lines += _bullets(mistake_words(one, found.review.plan) for one in found.mistakes)
    if found.variances:
        lines += ["", "**Variances**", "", *_bullets(variance_words(one) for one in found.variances)]
    for one in found.alternates:
        lines += _alternate(one)
    return [*lines, *_folded(found)]


def _alternate(one: AlternateTurn) -> list[str]:
    """What changed in one alternate, beyond what changed in the plan as drawn."""
    state = {"both": "changed", "added": "new", "removed": "removed"}[one.state]
    lines = _turns(f"Alternate {escaped(one.name)}: {state}", one.turns)
    if not lines:
        lines = ["", f"**Alternate {escaped(one.name)}: {state}**"]
    told = alternate_words(one)
    return [*lines, "", *_bullets(told)] if told else lines


def _turns(heading: str, turns: Sequence[Turn]) -> list[str]:
    if not turns:
        return []
    rows = [(turn_label(turn), turn.told.element, turn_words(turn), turn.told.rule) for turn in turns]
    return ["", f"**{heading}**", "", *_table(("change", "element", "finding", "rule"), rows)]


def _folded(found: Comparison) -> list[str]:
    """Questions, measures and notes, folded away until the reader asks for them."""
    lines: list[str] = []
    asked = [("opened", asked_words(one, True)) for one in found.opened]
    asked += [("answered", asked_words(one, False)) for one in found.answered]
    lines += _details(f"Questions: {len(found.opened)} opened, {len(found.answered)} answered", ("", "question"), asked)
    shifts = [
        (one.element, one.measure, one.before, one.after, "better" if one.better else "worse") for one in found.shifts
    ]
    title = f"Weather and time: {sum(one.better for one in found.shifts)} better, "
    title += f"{sum(not one.better for one in found.shifts)} worse"
    lines += _details(title, ("element", "measure", "before", "after", ""), shifts, cautions(found))
    notes = [(names, note.setting, note.before, note.after) for names, note in grouped_notes(found.notes)]
    elements = [(name, "added", "", "") for name in found.elements.added]
    elements += [(name, "removed", "", "") for name in found.elements.removed]
    elements += [(words, "renamed", "", "") for words in renamed_words(found.elements)]
    changes = len(elements) + len(notes)
    title = f"In the plan: {changes} {'change' if changes == 1 else 'changes'}"
    return [*lines, *_details(title, ("element", "setting", "before", "after"), [*elements, *notes])]


def _details(title: str, heads: Sequence[str], rows: Sequence[Sequence[str]], after: Sequence[str] = ()) -> list[str]:
    if not rows:
        return []
    told = [line for text in after for line in ("", escaped(text))]
    return ["", f"<details><summary>{title}</summary>", "", *_table(heads, rows), *told, "", "</details>"]


def _table(heads: Sequence[str], rows: Sequence[Sequence[str]]) -> list[str]:
    lines = [f"| {' | '.join(heads)} |", f"|{'---|' * len(heads)}"]
    lines += [f"| {' | '.join(escaped(cell) for cell in row)} |" for row in rows[:MOST_ROWS]]
    return [*lines, "", f"And {len(rows) - MOST_ROWS} more."] if len(rows) > MOST_ROWS else lines


def _bullets(texts: Iterable[str]) -> list[str]:
    every = list(texts)
    lines = [f"- {escaped(text)}" for text in every[:MOST_ROWS]]
    return [*lines, f"- and {len(every) - MOST_ROWS} more"] if len(every) > MOST_ROWS else lines
