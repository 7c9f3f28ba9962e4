"""Edits of a plan's own text: where a setting is written, where a block ends, and pieces put in their place.

An edit leaves every other character of the file as it is: comments, layout, line ends and marks of byte order.
"""

from __future__ import annotations

import re
from bisect import bisect_right
from collections.abc import Iterable, Iterator
from typing import NamedTuple

from speclint.language.atoms import Place, Statement, Tree
from speclint.language.items import Item, Items

_LINE_END = re.compile(r"\r\n|\r|\n")
_BLANK_BEFORE = re.compile(r"[ \t;]*\Z")
_WRITTEN = re.compile(r"\S")
_MOST_WORDS = 8  # of a setting's name and what joins it to its value
_INDENT = "    "


class Edit(NamedTuple):
    """A stretch of the text, from `start` up to and without `end` in code points, and what takes its place."""

    start: int
    end: int
    text: str


class CannotEdit(Exception):
    """An edit that cannot be made, as the text does not hold its place; its argument says why, in the user's words."""


def with_edits(text: str, edits: Iterable[Edit]) -> str:
    """The text with all edits made.

    Raises:
        CannotEdit: If two of them overlap.
    """
    pieces: list[str] = []
    at = 0
    for edit in sorted(edits):
        if edit.start < at:
            line, column = Rows(text).place(edit.start)
            raise CannotEdit(f"two changes want the same place, line {line}, column {column}")
        pieces += [text[at : edit.start], edit.text]
        at = edit.end
    return "".join([*pieces, text[at:]])


class Rows:
    """The lines of a text as the tree counts them, whatever ends them, without the mark of byte order."""

    def __init__(self, text: str) -> None:
        mark = int(text.startswith("\ufeff"))
        self.starts = [mark, *(found.end() for found in _LINE_END.finditer(text))]

    def offset(self, line: int, column: int) -> int:
        """The offset of a line and column, which count from 1.

        Raises:
            CannotEdit: If the text has no such line.
        """
        if line > len(self.starts):
            raise CannotEdit(f"there is no line {line}")
        return self.starts[line - 1] + column - 1

    def place(self, offset: int) -> Place:
        """The line and column of an offset."""
        line = max(1, bisect_right(self.starts, offset))
        return Place(line, max(0, offset - self.starts[line - 1]) + 1)


class Places:
    """The places of one file's text: offsets of what its tree holds."""

    def __init__(self, text: str, tree: Tree) -> None:
        self.text, self.tree, self.rows = text, tree, Rows(text)
        self.line_end = found[0] if (found := _LINE_END.search(text)) else "\n"

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
        return self.rows.offset(item.line, item.column)

    def add_note(self, line: int, column: int, note: str) -> Edit:
        """A further note in the block of the element whose statement begins at a place, in the manner of that block.

        Raises:
            CannotEdit: If no element begins there.
        """
        statement = self.statement(line, column)
        if statement.braces is None:
            last = Items(statement).items[-1]
            after = self._start(last) + len("," if last.kind == "COMMA" else last.text)
            return Edit(after, after, f" {{ {note} }}")
        opened, closed = statement.braces
        start, end = self.rows.offset(*opened) + 1, self.rows.offset(*closed)
        if not _LINE_END.search(self.text, start, end):
            kept = start + len(_BLANK_BEFORE.sub("", self.text[start:end]))
            joint = " " if kept == start else ";  "
            return Edit(kept, end, f"{joint}{note} ")
        inside = self.text[start:end].rstrip(" \t")
        at = start + len(inside)
        lead = "" if inside.endswith(("\n", "\r")) else self.line_end
        return Edit(at, at, f"{lead}{self._indent(statement)}{_break(statement)}{note}{self.line_end}")

    def _indent(self, statement: Statement) -> str:
        """What stands before the last line of notes of a block, or what a first one is to have before it."""
        row = statement.body[-1].line if statement.body else statement.line
        start = self.rows.offset(row, 1)
        indent = self.text[start : next(_WRITTEN.finditer(self.text, start)).start()]
        return indent if row > statement.line else f"{indent}{_INDENT}"


def _break(statement: Statement) -> str:
    """What ends the list with which a block ends, which would else go on in the note that follows."""
    last = statement.body[-1] if statement.body else None
    return ";  " if last and last.atoms and last.body is None and last.atoms[-1].kind == "COMMA" else ""


def _all(statements: Iterable[Statement]) -> Iterator[Statement]:
    """Every statement and, behind it, those of its block."""
    waiting = list(statements)[::-1]
    while waiting:
        statement = waiting.pop()
        yield statement
        waiting += (statement.body or ())[::-1]
