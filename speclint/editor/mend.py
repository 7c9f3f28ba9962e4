"""The words that may have been meant where one is mistaken: those its help names, and settings that begin with it."""

from __future__ import annotations

import re
from collections.abc import Callable
from difflib import SequenceMatcher

from speclint.editor.positions import Lines
from speclint.language.atoms import Mistake
from speclint.language.edit import Edit, with_edits
from speclint.model.element import settings_of
from speclint.model.kinds import KINDS
from speclint.span import Span

MOST_WORDS = 9
_QUOTED = re.compile(r"“([^”]+)”")
_NEAR, _LIST = "did you mean “", "one of: "
_NO_SETTING = re.compile(r"” is not a setting of an? (.+)\Z")


def mends(lines: Lines, mistake: Mistake, count: Callable[[str], int], before: int) -> list[tuple[str, Edit]]:
    """The words that may be meant, the nearest first, each with the edit that writes it.

    Args:
        lines: The text.
        mistake: What is wrong in it.
        count: How many mistakes a text has.
        before: How many this one has; an edit that does not leave fewer is passed over.
    """
    got = next(iter(_QUOTED.findall(mistake.message)), "")
    start, end = lines.offsets(place_of(mistake))
    whole = start + len(got) if lines.text.startswith(got, start) else end
    quote = '"' if lines.text.startswith('"', start) else ""
    found = []
    for word in _meant(mistake, got)[:MOST_WORDS]:
        for stop in dict.fromkeys((end, whole)):
            edit = Edit(start, stop, f"{quote}{word}{quote}")
            if count(with_edits(lines.text, [edit])) < before:
                found.append((word, edit))
                break
    return found


def is_sure(mistake: Mistake) -> bool:
    """Whether the help takes the words for a slip of the pen, leaves nothing to choose, and adds no word of its own."""
    got, meant = next(iter(_QUOTED.findall(mistake.message)), ""), _QUOTED.findall(mistake.help)
    return mistake.help.startswith(_NEAR) and len(meant) == 1 and len(meant[0].split()) == len(got.split())


def place_of(mistake: Mistake) -> Span:
    """The stretch that a mistake marks."""
    return Span(mistake.file, mistake.line, mistake.column, mistake.length)


def _meant(mistake: Mistake, got: str) -> list[str]:
    if mistake.help.startswith(_NEAR):
        return _QUOTED.findall(mistake.help)
    if mistake.help.startswith(_LIST):
        return sorted(mistake.help.removeprefix(_LIST).split(", "), key=lambda word: -_alike(got, word))
    kind = _NO_SETTING.search(mistake.message)
    if kind and kind[1] in KINDS:
        first = got.split(" ")[0].lower()
        return [name for name in settings_of(KINDS[kind[1]]) if name.startswith(first)]
    return []


def _alike(got: str, word: str) -> float:
    """How near a listed word is to what is written: words in common count for more than letters."""
    common = set(got.lower().split()) & set(word.lower().split())
    return len(common) + SequenceMatcher(None, got.lower(), word.lower()).ratio()
