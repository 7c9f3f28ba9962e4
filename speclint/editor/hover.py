"""What is told of the thing under the pointer, in Markdown."""

from __future__ import annotations

from dataclasses import dataclass

from lsprotocol import types as lsp

from speclint.editor.names import Name
from speclint.editor.notes import Stated, kind_of, stated_in, targets_of
from speclint.editor.pieces import Note, notes_above
from speclint.editor.reading import Reading
from speclint.editor.words import about, example_of, plain, range_of
from speclint.measures.register import measures
from speclint.model.element import settings_of
from speclint.model.kinds import KINDS
from speclint.quantity import Quantity

MOST_LINES = 80
_UNSHOWN = ("record", "text")  # tables, and ways told in whole sentences: `speclint explain` shows them


@dataclass(frozen=True, slots=True)
class Shown:
    """What is told, and the stretch of the text that it is about."""

    text: str
    start: int
    end: int


def hover(reading: Reading, offset: int) -> Shown | None:
    """What is told at an offset of a plan; nothing where there is nothing to tell."""
    place = reading.place(offset)
    name = reading.names.at(place.file, place.line, place.column)
    if name is not None and (told := _named(reading, name)):
        return Shown("\n".join(told), *reading.lines.offsets(name.place))
    head = reading.names.head_at(place.file, place.line, place.column)
    if head is not None and head.head is not None:
        told = _element(reading, head) if head.role == "element" else _typical(head)
        return Shown("\n".join(told), *reading.lines.offsets(head.head))
    found = setting_at(reading, offset)
    if found is None:
        return None
    stated, note = found
    last = (stated.value or stated.name)[-1]
    return Shown("\n".join(_setting(reading, stated, note, offset)), stated.name[0].start, last.end)


def setting_at(reading: Reading, offset: int) -> tuple[Stated, Note] | None:
    """The setting that is stated at an offset, and the head of the block that states it; nothing where none is."""
    above = notes_above(reading.look.root, offset)
    if len(above) < 2 or above[-1].block is not None:
        return None
    kind = kind_of(above[-2])[0]
    for stated in stated_in(above[-1].pieces, kind) if kind else ():
        if stated.name[0].start <= offset <= (stated.value or stated.name)[-1].end:
            return stated, above[-2]
    return None


def _named(reading: Reading, name: Name) -> list[str]:
    if name.role == "rule":
        return _rule(reading, name.target)
    if name.role == "use":
        return [f"**{plain(name.target)}**", "", "a file that this plan uses, in its folder"]
    if name.role in ("typical", "like"):
        return _typical(name)
    if name.role == "element" and not name.name:
        return _element(reading, name)
    return _measured(reading, name)


def _rule(reading: Reading, named: str) -> list[str]:
    rule = reading.settled.book.named(named)
    if rule is None:
        return []
    grades = ", ".join(dict.fromkeys(tier.grade for tier in rule.tiers))
    barred = "No variance can set it aside." if not rule.variance else "No variance can set its hold aside."
    allowed = "" if rule.hold_variance else f"\n\n{barred}"
    return [f"**{plain(rule.title)}** ({plain(rule.name)}: {grades})", "", plain(rule.because) + allowed]


def _typical(name: Name) -> list[str]:
    told = "what is typical for every" if name.target == f"typical {name.kind}" else "what is typical for a like"
    return [f"**{plain(name.target)}**", "", f"{told} {name.kind} that does not state it", "", about(name.kind)]


def _element(reading: Reading, name: Name) -> list[str]:
    """What an element is, what is found about it, and what the plan does not say of it."""
    lines = [f"**{plain(name.target)}**", "", about(name.kind)]
    review = reading.review
    found = [f"- {ruling.grade}: {plain(ruling.message)}" for ruling in review.rulings if ruling.element == name.target]
    asked = [question for question in review.questions if name.target in question.elements]
    found += [f"- not stated: {plain(question.setting)}" for question in asked]
    known = name.target in reading.sheet.home.elements
    nothing = ["no finding, no question"] if known else ["it stands in an alternate, which is not reviewed here"]
    return [*lines, "", *_cut(found or nothing)]


def _measured(reading: Reading, name: Name) -> list[str]:
    """An element and what is computed for it in this plan."""
    facts = reading.sheet.facts.get(name.target)
    if facts is None:
        return [f"**{plain(name.target)}**", "", about(name.kind)] if name.target else []
    rows = []
    for measure in measures().get(name.kind, {}).values():
        if measure.dimension in _UNSHOWN:
            continue
        found = reading.sheet.quantity(facts, measure.name)
        if isinstance(found, Quantity):
            bounds = found.shown_range(reading.system)
            told = f"**{plain(found.shown(reading.system))}**" + (f" ({plain(bounds)})" if bounds else "")
            rows.append(f"- {measure.name}: {told}")
    return [f"**{plain(name.target)}**", "", about(name.kind), "", *_cut(rows)]


def _setting(reading: Reading, stated: Stated, head: Note, offset: int) -> list[str]:
    setting = stated.setting
    lines = [f"**{setting.name}**: {plain(setting.meaning)}", ""]
    phrase = " ".join(piece.text for piece in stated.value)
    chosen = (setting.choices or {}).get(phrase)
    if chosen and any(piece.start <= offset <= piece.end for piece in stated.value):
        lines += [f"{phrase}: {plain(chosen)}", ""]
    if setting.choices:
        # the first of a list may be a fault, so none is held up as an example
        lines += ["one of:", "", *(f"- {choice}: {plain(means)}" for choice, means in setting.choices.items())]
    else:
        lines += [
            plain(range_of(setting, reading.system)),
            "",
            f"for example: {plain(example_of(setting, reading.system))}",
        ]
    return [*lines, *_values(reading, stated, head)]


def _values(reading: Reading, stated: Stated, head: Note) -> list[str]:
    """The value of a setting in each element that the block is about, and what speclint reads it as."""
    lines: list[str] = []
    kind, typical = kind_of(head)
    for target in () if typical else targets_of(head)[:6]:
        facts = reading.sheet.facts.get(target)
        if facts is None or stated.setting.name not in settings_of(KINDS[kind]):
            continue
        found = reading.sheet.quantity(facts, stated.setting.name)
        if isinstance(found, Quantity):
            how = found.how + (f", {found.words}" if found.words else "")
            lines += ["", f"{plain(target)}: **{plain(found.shown(reading.system))}** ({plain(how)})"]
    return lines


def _cut(lines: list[str]) -> list[str]:
    if len(lines) <= MOST_LINES:
        return lines
    return [*lines[:MOST_LINES], f"- and {len(lines) - MOST_LINES} more"]


def as_hover(reading: Reading, shown: Shown, markdown: bool) -> lsp.Hover:
    """What is told, as the editor takes it."""
    kind = lsp.MarkupKind.Markdown if markdown else lsp.MarkupKind.PlainText
    text = shown.text if markdown else shown.text.replace("**", "").replace("\\", "")
    return lsp.Hover(lsp.MarkupContent(kind, text), reading.lines.range(shown.start, shown.end))
