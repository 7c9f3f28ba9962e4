"""The syntax tree of a plan: atoms, statements and blocks, each with its place."""

from __future__ import annotations

from typing import Literal, NamedTuple

AtomKind = Literal["WORDS", "QUANTITY", "BEARING", "TEXT", "UNCLOSED", "COMMA", "STRAY"]


class Atom(NamedTuple):
    """A run of words, a quantity, a bearing, a text in quotes, a comma, or something that has no meaning here."""

    kind: AtomKind
    text: str
    line: int
    column: int


class Place(NamedTuple):
    """A line and a column of a file's text; both count from 1."""

    line: int
    column: int


class Statement(NamedTuple):
    """One note of a plan: a run of atoms, and the statements of its block if it has one.

    `line` and `column` are those of its first atom, or of its brace where it has none; `braces` are the places of the
    braces of its block.
    """

    atoms: tuple[Atom, ...]
    body: tuple[Statement, ...] | None
    line: int
    column: int
    braces: tuple[Place, Place] | None = None


class Mistake(NamedTuple):
    """Something wrong in the user's file: what, where, and the nearest thing that would be right."""

    file: str
    line: int
    column: int
    length: int
    message: str
    help: str = ""


class Tree(NamedTuple):
    """What could be read of one file, and the mistakes met."""

    file: str
    statements: tuple[Statement, ...]
    mistakes: tuple[Mistake, ...]
