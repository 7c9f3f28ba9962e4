"""Edits of a plan's own text: where a setting is written, where a block ends, and pieces put in their place.

An edit leaves every other character of the file as it is: comments, layout, line ends and marks of byte order.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator
from typing import NamedTuple

from speclint.language.atoms import Statement, Tree
from speclint.language.items import Item, Items

_LINE_END = re.compile(r"\r\n|\r|\n")
_PIECE = re.compile(r'"[^"\n]*"|#[^\n]*|[{}]')
_BLANK_BEFORE = re.compile(r"[ \t;]*\Z")
_MOST_WORDS = 8  # of a setting's name and what joins it to its value


class Edit(NamedTuple):
    """A stretch of the text, from `start` up to and without `end` in code points, and what takes its place."""

    start: int
    end: int
    text: str


class CannotEdit(Exception):
    """A place that the text does not hold; its argument says which, in the user's words."""


def with_edits(text: str, edits: Iterable[Edit]) -> str:
    """The text with all edits made.

    Raises:
        ValueError: If two of them overlap.
    """
    pieces: list[str] = []
    at = 0
    for edit in sorted(edits):
        if edit.start < at:
            raise ValueError(f"two edits overlap at {edit.start}")
        pieces += [text[at : edit.start], edit.text]
        at = edit.end
    return "".join([*pieces, text[at:]])


class Places:
    """The places of one file's text: offsets of lines and columns as spans count them."""

    def __init__(self, text: str, tree: Tree) -> None:
        self.text, self.tree = text, tree
        mark = int(text.startswith("\ufeff"))
        self.starts = [mark, *(found.end() for found in _LINE_END.finditer(text))]
        self.line_end = found[0] if (found := _LINE_END.search(text)) else "\n"

    def offset(self, line: int, column: int) -> int:
        """The offset of a line and column, which count from 1."""
        return self.starts[line - 1] + column - 1

    def statement(self, line: int, column: int) -> Statement:
        """The statement that holds an item which begins at a place.

        Raises:
            CannotEdit: If there is none.
        """
        for statement in _all(self.tree.statements):
            if any(item.line == line and item.column == column for item in Items(statement).items):
                return statement
        raise CannotEdit(f"nothing is written at line {line}, column {column}")

    def written(self, line: int, column: int, value: str) -> tuple[int, int]:
        """Where a value is written that belongs to the setting at a place: its start and end.

        Args:
            line: Of the first word of the setting.
            column: Of the same.
            value: The words of the value, one blank between.

        Raises:
            CannotEdit: If the value is not found there.
        """
        items = Items(self.statement(line, column)).items
        first = next(at for at, item in enumerate(items) if (item.line, item.column) == (line, column))
        for at in range(first, min(first + _MOST_WORDS, len(items))):
            words: list[str] = []
            for item in items[at:]:
                words.append(item.text)
                if " ".join(words) == value:
                    return self._start(items[at]), self._start(item) + len(item.text)
        raise CannotEdit(f"“{value}” is not written at line {line}, column {column}")

    def _start(self, item: Item) -> int:
        return self.offset(item.line, item.column)

    def add_note(self, line: int, column: int, note: str) -> Edit:
        """A further note in the block of the element whose statement begins at a place, in the manner of that block.

        Raises:
            CannotEdit: If no element begins there.
        """
        statement = self.statement(line, column)
        last = Items(statement).items[-1]
        after = self._start(last) + len(last.text)
        if statement.body is None:
            return Edit(after, after, f" {{ {note} }}")
        start, end = self._block(after)
        inside = self.text[start:end]
        kept = len(_BLANK_BEFORE.sub("", inside))
        if not _LINE_END.search(inside):
            joint = " " if not kept else ";  "
            return Edit(start + kept, end, f"{joint}{note} ")
        row = statement.body[-1].line if statement.body else 0
        before = next((note for note in statement.body if note.line == row), None)
        indent = " " * (before.column - 1) if before else "    "
        at = start + len(inside.rstrip(" \t"))
        lead = "" if inside.rstrip(" \t").endswith(("\n", "\r")) else self.line_end
        return Edit(at, at, f"{lead}{indent}{note}{self.line_end}")

    def _block(self, after: int) -> tuple[int, int]:
        """What the braces of the next block enclose: the offsets behind the opening one and of the closing one."""
        depth, start = 0, after
        for piece in _PIECE.finditer(self.text, after):
            if piece[0] == "{":
                depth += 1
                start = piece.end() if depth == 1 else start
            elif piece[0] == "}":
                depth -= 1
                if depth == 0:
                    return start, piece.start()
        raise CannotEdit("the block is not closed")


def _all(statements: Iterable[Statement]) -> Iterator[Statement]:
    """Every statement and, behind it, those of its block."""
    waiting = list(statements)[::-1]
    while waiting:
        statement = waiting.pop()
        yield statement
        waiting += (statement.body or ())[::-1]
