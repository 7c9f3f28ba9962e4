"""A forgiving look at a text while it is typed: pieces, notes and blocks with their offsets, whatever is still missing.

The parser of `language` gives meaning; this gives places, also in front of the cursor of a half-typed note.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass, field
from typing import NamedTuple

_PIECES = re.compile(
    r"""(?P<comment>\#[^\r\n]*)
    |(?P<text>"[^"\r\n]*")
    |(?P<open>"[^"\r\n;}]*)
    |(?P<number>[-+]?(?:\d|\.\d)(?:[^\s;{}\#",]|,(?=\d))*"?)
    |(?P<word>[^\s;{}\#",]+)
    |(?P<comma>,)
    |(?P<brace>[{}])
    |(?P<end>;|\r\n|\r|\n)""",
    re.VERBOSE,
)


class Piece(NamedTuple):
    """A word, number, text, comma or comment, and where it begins and ends."""

    kind: str
    text: str
    start: int
    end: int


@dataclass(slots=True)
class Note:
    """One note of a plan: its pieces, and its block if it has one."""

    pieces: list[Piece] = field(default_factory=list)
    block: Block | None = None

    @property
    def words(self) -> list[str]:
        """The texts of its pieces."""
        return [piece.text for piece in self.pieces]


@dataclass(slots=True)
class Block:
    """What braces enclose: the offsets of the opening one and behind the closing one; 0 and the end for a whole text.

    `closed` says whether the closing brace is there.
    """

    start: int
    end: int
    notes: list[Note] = field(default_factory=list)
    closed: bool = False


@dataclass(slots=True)
class Look:
    """A text looked at: its outermost block, its comments, and what is still open at its end."""

    root: Block
    comments: list[Piece] = field(default_factory=list)
    heads: list[Note] = field(default_factory=list)
    note: Note = field(default_factory=Note)
    last: Piece | None = None


def look(text: str) -> Look:
    """The pieces, notes and blocks of a text."""
    found = Look(Block(0, len(text)))
    blocks = [found.root]
    after_comma = False
    for match in _PIECES.finditer(text):
        kind = match.lastgroup or ""
        piece = found.last = Piece(kind, match[0], match.start(), match.end())
        if kind == "comment":
            found.comments.append(piece)
        elif kind == "end":
            if piece.text == ";" or not after_comma:
                _end_note(found, blocks[-1])
        elif piece.text == "{":
            found.note.block = Block(piece.start, len(text))
            found.heads.append(found.note)
            blocks[-1].notes.append(found.note)
            blocks.append(found.note.block)
            found.note = Note()
        elif piece.text == "}":
            _end_note(found, blocks[-1])
            if found.heads:
                found.heads.pop()
                closed = blocks.pop()
                closed.end, closed.closed = piece.end, True
        else:
            found.note.pieces.append(piece)
        after_comma = kind == "comma" or (after_comma and (kind == "comment" or (kind == "end" and piece.text != ";")))
    if found.note.pieces:
        blocks[-1].notes.append(found.note)
    return found


def _end_note(found: Look, block: Block) -> None:
    if found.note.pieces:
        block.notes.append(found.note)
    found.note = Note()


def notes_above(root: Block, offset: int) -> list[Note]:
    """The notes that hold an offset, outermost first: those whose blocks enclose it, and the note that is there."""
    found: list[Note] = []
    block: Block | None = root
    while block is not None:
        inside = next((note for note in block.notes if _holds(note, offset)), None)
        block = None
        if inside is not None:
            found.append(inside)
            if inside.block is not None and inside.block.start < offset:
                block = inside.block
    return found


def _holds(note: Note, offset: int) -> bool:
    start = note.pieces[0].start if note.pieces else (note.block.start if note.block else 0)
    if note.block is None:
        return start <= offset <= note.pieces[-1].end
    return start <= offset and (offset < note.block.end or not note.block.closed)


def every_note(block: Block) -> Iterator[Note]:
    """Every note of a block, each before those of its own block."""
    waiting = block.notes[::-1]
    while waiting:
        note = waiting.pop()
        yield note
        if note.block is not None:
            waiting += note.block.notes[::-1]
