"""Text in lines of a width; a number and its fraction of an inch stay together."""

from __future__ import annotations

import re
import textwrap
from functools import lru_cache

_FRACTION = re.compile(r"(?<=\d) (?=\d+/\d)")
_KEPT = "\u00a0"
LEAST = 20


@lru_cache(maxsize=4096)
def wrapped(text: str, room: int) -> tuple[str, ...]:
    """The lines of a text, at least one.

    Args:
        text: The text.
        room: Most characters in a line; a longer word has a line of its own.
    """
    if room < LEAST:
        room = LEAST
    if "/" not in text:
        return _lines(text, room)
    kept = _FRACTION.sub(_KEPT, text)
    if kept == text:
        return _lines(text, room)
    return tuple([line.replace(_KEPT, " ") for line in _lines(kept, room)])


def _lines(text: str, room: int) -> tuple[str, ...]:
    words = text.split(" ")
    if "" in words or not (text.isprintable() or text.replace(_KEPT, "").isprintable()):
        return tuple(textwrap.wrap(text, room, break_long_words=False, break_on_hyphens=False)) or ("",)
    if len(text) <= room:
        return (text,)
    lines = []  # the same, many times faster
    start, at = 0, len(words[0])
    for word in words[1:]:
        end = at + 1 + len(word)
        if end - start > room:
            lines.append(text[start:at])
            start = at + 1
        at = end
    lines.append(text[start:])
    return tuple(lines)
