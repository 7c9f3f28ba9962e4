"""A plan as its writer set it down: notes, blocks, comments and blank lines, and what stood together on a line."""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass, field
from typing import NamedTuple

from speclint.language.atoms import Tree
from speclint.language.sense import atoms_of

_BETWEEN = re.compile(r"#[^\n]*|[\n;{}]|[^\S\n]+")
_LINE_END = re.compile(r"\r\n|\r|\n")
MARK = "\ufeff"  # of byte order, with which some editors begin a file


class Piece(NamedTuple):
    """The smallest thing written: an atom, or what stands between atoms.

    `kind` is that of an atom, or one of: blank, comment, line (its end), `;`, `{`, `}`.
    """

    kind: str
    text: str


@dataclass(slots=True)
class Row:
    """One line of a note: its pieces, and the comment behind them; without pieces it is a comment inside a list."""

    pieces: list[Piece] = field(default_factory=list)
    comment: str = ""


@dataclass(slots=True)
class Remark:
    """A comment on a line of its own, or a blank line where the text is empty."""

    text: str


@dataclass(slots=True)
class Note:
    """A note, and its block if it has one.

    Attributes:
        rows: Its lines; more than one where a list goes on in the next.
        block: Its block.
        comment: The comment behind its end.
        joined: Whether it begins on the line on which the note before it ends.
    """

    rows: list[Row]
    block: Block | None = None
    comment: str = ""
    joined: bool = False


@dataclass(slots=True)
class Block:
    """What stands between two braces, or in the whole file.

    Attributes:
        items: Notes, comments that stand alone, and blank lines, in their order.
        comment: The comment behind the opening brace.
        spread: Whether the writer began a new line anywhere in it.
    """

    items: list[Note | Remark] = field(default_factory=list)
    comment: str = ""
    spread: bool = False


def plain_lines(text: str) -> str:
    """The text as a tree counts it: without the mark of byte order, each line ended by one character."""
    return _LINE_END.sub("\n", text.removeprefix(MARK))


def as_before(text: str, before: str) -> str:
    """A text of plain lines with the mark of byte order and the line ends of the text that it came from."""
    found = _LINE_END.search(before)
    mark = MARK if before.startswith(MARK) else ""
    return mark + (text.replace("\n", found[0]) if found else text)


def written(text: str, tree: Tree) -> Block:
    """What the writer of a text set down.

    Args:
        text: The plan, with plain lines.
        tree: Its syntax tree, without a mistake.
    """
    reader = _Reader()
    for piece in _pieces(text, tree):
        reader.take(piece)
    reader.end_note()
    return reader.open[0]


def _pieces(text: str, tree: Tree) -> Iterator[Piece]:
    starts = [0, *(found.end() for found in re.finditer("\n", text))]
    at = 0
    for atom in atoms_of(tree):
        start = starts[atom.line - 1] + atom.column - 1
        yield from _between(text[at:start])
        yield Piece(atom.kind, atom.text)
        at = start + len(atom.text)
    yield from _between(text[at:])


def _between(text: str) -> Iterator[Piece]:
    for found in _BETWEEN.finditer(text):
        piece = found[0]
        kind = {"\n": "line", ";": ";", "{": "{", "}": "}", "#": "comment"}.get(piece[0], "blank")
        yield Piece(kind, piece.rstrip() if kind == "comment" else piece)


class _Reader:
    """Puts pieces together to notes and blocks."""

    def __init__(self) -> None:
        self.open = [Block()]  # the blocks that hold the place reached, the file first
        self.heads: list[Note] = []  # the notes whose blocks they are
        self.note: Note | None = None  # the one being read
        self.blank: Piece | None = None
        self.tail: list[str] = []  # of the comma just read: what stands behind it and in the lines below, up to here
        self.last: Note | Block | None = None  # what a comment on this line belongs to
        self.lines = 0  # begun since the last thing that was written

    def take(self, piece: Piece) -> None:
        """Take the next piece."""
        if piece.kind == "blank":
            self.blank = piece
        elif piece.kind == "comment":
            self._comment(piece.text)
        elif piece.kind == "line":
            self.end_note()
            self._new_line()
        elif piece.kind == "{":
            self._open_block()
        elif piece.kind == "}":
            self._close_block()
        elif piece.kind == ";":
            self.end_note()
        else:
            self._atom(piece)

    def end_note(self) -> None:
        """End the note being read, if one is."""
        note, self.note = self.note, None
        if note is not None:
            self._end_list(note)

    def _atom(self, piece: Piece) -> None:
        if self.note is None:
            self.note = Note([Row()], joined=self.lines == 0 and bool(self.open[-1].items))
            self._add(self.note)
            self.blank = None
        rows = self.note.rows
        if len(self.tail) > 1:
            rows[-1].comment, *below = self.tail[:-1]
            rows += [*(Row(comment=text) for text in below if text), Row()]
        elif self.blank is not None:
            rows[-1].pieces.append(self.blank)
        self.blank, self.tail = None, []
        if piece.kind == "COMMA":
            self.tail = [text.strip() for text in piece.text[1:].split("\n")]
            self.open[-1].spread |= len(self.tail) > 1
            piece = Piece("COMMA", ",")
        rows[-1].pieces.append(piece)
        self.last = self.note

    def _end_list(self, owner: Note | Block) -> None:
        """Where a comma is the last of a note, what stands behind it and below it stands behind the note instead."""
        tail, self.tail, self.blank = self.tail, [], None
        if len(tail) > 1:
            owner.comment = tail[0]
            self._new_line()
            for text in filter(None, tail[1:]):
                self._add(Remark(text))
                self._new_line()

    def _comment(self, text: str) -> None:
        self.end_note()
        if self.last is None:
            self._add(Remark(text))
        else:
            self.last.comment = text

    def _new_line(self) -> None:
        self.open[-1].spread = True
        self.last = None
        self.lines += 1

    def _open_block(self) -> None:
        note, self.note = self.note, None
        if note is None:
            note = Note([Row()], joined=self.lines == 0 and bool(self.open[-1].items))
            self._add(note)
        note.block = self.last = Block()
        self.open.append(note.block)
        self.heads.append(note)
        self._end_list(note.block)

    def _close_block(self) -> None:
        self.end_note()
        closed = self.open.pop()
        self.open[-1].spread |= closed.spread
        self.last, self.lines, self.blank = self.heads.pop(), 0, None

    def _add(self, item: Note | Remark) -> None:
        body = self.open[-1].items
        if self.lines > 1 and body:
            body.append(Remark(""))
        body.append(item)
        self.lines = 0
