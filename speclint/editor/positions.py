"""Positions: the one place where an editor's lines and units become offsets of a text, and spans become ranges.

Spans count lines and columns from 1, columns in code points. An editor counts both from 0, columns in the units agreed
with it: UTF-16 unless it asks for others.
"""

from __future__ import annotations

import re
from bisect import bisect_right

from lsprotocol import types as lsp

from speclint.span import Span

_LINE_END = re.compile(r"\r\n|\r|\n")
MARK = "\ufeff"


class Lines:
    """The lines of one text, with its positions in the units of an editor."""

    __slots__ = ("encoding", "ends", "starts", "text")

    def __init__(self, text: str, encoding: str = "utf-16") -> None:
        self.text, self.encoding = text, encoding
        found = list(_LINE_END.finditer(text))
        self.starts = [0, *(end.end() for end in found)]
        self.ends = [*(end.start() for end in found), len(text)]

    def offset(self, position: lsp.Position) -> int:
        """The offset of an editor's position; what lies past the end of a line or of the text is brought back to it."""
        if position.line >= len(self.starts):
            return len(self.text)
        line = max(0, position.line)
        start, end = self.starts[line], self.ends[line]
        if self.encoding == "utf-32" or self.text[start:end].isascii():
            return min(end, start + max(0, position.character))
        units = 0
        for at in range(start, end):
            units += self._units(self.text[at])
            if units > position.character:
                return at
        return end

    def position(self, offset: int) -> lsp.Position:
        """The editor's position of an offset."""
        offset = min(max(0, offset), len(self.text))
        line = bisect_right(self.starts, offset) - 1
        before = self.text[self.starts[line] : min(offset, self.ends[line])]
        plain = self.encoding == "utf-32" or before.isascii()
        return lsp.Position(line, len(before) if plain else sum(map(self._units, before)))

    def range(self, start: int, end: int) -> lsp.Range:
        """The editor's range of two offsets."""
        return lsp.Range(self.position(start), self.position(end))

    def offsets(self, span: Span) -> tuple[int, int]:
        """Where a span begins and ends; a place that the text does not hold is brought back into it."""
        line = min(max(0, span.line - 1), len(self.starts) - 1)
        mark = int(line == 0 and self.text.startswith(MARK))
        start = min(self.starts[line] + mark + max(0, span.column - 1), self.ends[line])
        return start, min(start + max(0, span.length), self.ends[line])

    def of_span(self, span: Span) -> lsp.Range:
        """The editor's range of a span."""
        return self.range(*self.offsets(span))

    def _units(self, character: str) -> int:
        code = ord(character)
        if self.encoding == "utf-8":
            return 1 + (code > 0x7F) + (code > 0x7FF) + (code > 0xFFFF)
        return 1 + (code > 0xFFFF)
