"""What several commands share: the rulebook asked for, the reader's units, and printing."""

from __future__ import annotations

import argparse
import textwrap
from collections.abc import Iterable
from pathlib import Path

from speclint.commands.files import Refused, read_text
from speclint.commands.screen import coloured as coloured
from speclint.commands.screen import put as put
from speclint.commands.screen import tell as tell
from speclint.commands.screen import width as width
from speclint.language.atoms import Mistake
from speclint.outputs.letter import Line, Part, text_of
from speclint.plan_text import CannotRead
from speclint.rulebook.book import Rulebook, load_rulebook
from speclint.span import path_beside
from speclint.units import System


def rulebook_of(stated: argparse.Namespace) -> Rulebook:
    """The rulebook that the command line asks for.

    Raises:
        BrokenRulebook: If a page or the file of limits cannot be used.
        Refused: If a page or the file of limits cannot be read.
    """
    try:
        book = load_rulebook(Path(stated.house_rules) if stated.house_rules else None)
    except OSError as trouble:
        raise Refused(f"{trouble.filename or stated.house_rules}: cannot be read: {trouble.strerror}", 3) from None
    if stated.house_limits:
        from speclint.rulebook.house_limits import with_house_limits

        try:
            text = read_text(Path(stated.house_limits))
        except CannotRead as trouble:
            raise Refused(f"{stated.house_limits}: cannot be read: {trouble}", 3) from None
        book = with_house_limits(book, text, stated.house_limits)
    return book


def units_of(stated: argparse.Namespace, text: str) -> System:
    """The units asked for, or those in which most of the plan is written."""
    if stated.units:
        return "metric" if stated.units == "metric" else "imperial"
    import re

    metric = len(re.findall(r"\d ?(?:mm|m|cm|kPa)\b", text))
    imperial = len(re.findall(r"\d['\"]|\d ?(?:in|ft|psf)\b", text))
    return "metric" if metric > imperial else "imperial"


def tell_mistakes(plan: str, mistakes: Iterable[Mistake]) -> None:
    """Tell on standard error what of a plan cannot be read."""
    for mistake in mistakes:
        tell(mistake_words(plan, mistake))


def mistake_words(plan: str, mistake: Mistake) -> str:
    """What of a plan cannot be read, and where, by the path that leads there from here."""
    help = f" ({mistake.help})" if mistake.help else ""
    return f"{path_beside(plan, mistake.file)}:{mistake.line}:{mistake.column}: {mistake.message}{help}"


def rendered(lines: list[Line], stated: argparse.Namespace) -> str:
    """The lines as text, in colour where that is wanted."""
    if not coloured(stated):
        return text_of(lines)
    from speclint.outputs.terminal import styled

    return styled(lines, width())


def wrapped(lines: list[Line]) -> list[Line]:
    """Lines of one long part, or of a head and a long text, wrapped to the screen; tables are left as they are."""
    found: list[Line] = []
    for line in lines:
        if sum(len(part.text) for part in line) <= width():
            found.append(line)
            continue
        if len(line) == 2 and len(line[0].text) <= width() // 2:
            (head, role), (text, tone) = line
            for at, row in enumerate(textwrap.wrap(text, width() - len(head))):
                found.append((Part(" " * len(head) if at else head, role), Part(row, tone)))
            continue
        if len(line) != 1:
            found.append(line)
            continue
        text, role = line[0]
        indent = " " * (len(text) - len(text.lstrip()))
        rows = textwrap.wrap(text.strip(), width() - len(indent) - 2)
        found += [(Part(f"{indent}{'  ' if at else ''}{row}", role),) for at, row in enumerate(rows)]
    return found
