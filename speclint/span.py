"""Places in the user's files."""

from __future__ import annotations

from typing import NamedTuple


class Span(NamedTuple):
    """A stretch of one line of a file; lines and columns count from 1, columns in code points."""

    file: str
    line: int
    column: int
    length: int = 1

    def __str__(self) -> str:
        return f"{self.file}:{self.line}:{self.column}"


NOWHERE = Span("", 0, 0, 0)
