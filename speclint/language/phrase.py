"""The words of one note, with one blank between them, and the name of the setting that they begin with."""

from __future__ import annotations

from collections.abc import Collection, Sequence
from typing import NamedTuple

from speclint.language.parse import parse
from speclint.language.sense import sense
from speclint.language.written import Note, Piece

_MOST_WORDS = 8  # of the name of a setting


class Phrase(NamedTuple):
    """What a note says, line by line.

    Attributes:
        rows: Its lines; one without text holds a comment only.
        name: The name of the setting that begins it, where a value follows; else nothing.
    """

    rows: tuple[str, ...]
    name: str


def phrase(note: Note, names: Collection[str]) -> Phrase:
    """What a note, or the head of a block, says.

    Args:
        note: The note.
        names: The names of the settings of its element.
    """
    rows = [_spaced(row.pieces) for row in note.rows]
    as_written = ["".join(piece.text for piece in row.pieces) for row in note.rows]
    even = rows == as_written or _says(rows) == [
        sense(piece.kind, piece.text) for row in note.rows for piece in row.pieces if piece.kind != "blank"
    ]
    if not even:  # one blank less would make one number of two, such as of 9'  6"
        rows = as_written
    first = note.rows[0].pieces
    name = _name(rows[0], names) if even and note.block is None and first[0].kind == "WORDS" else ""
    if note.block is None and note.rows[-1].pieces[-1].kind == "COMMA":
        rows[-1] += ";"  # else the list would go on in the next line
    return Phrase(tuple(rows), name)


def _spaced(pieces: Sequence[Piece]) -> str:
    """The pieces in a line, one blank for many, none before a comma; blanks of other kinds stay."""
    text = ""
    for at, (kind, words) in enumerate(pieces):
        if kind == "blank":
            beside = {piece.kind for piece in (pieces[at - 1], pieces[at + 1])}
            text += "" if "COMMA" in beside else words if words.strip(" \t") else " "
        elif kind == "COMMA":
            text += ", " if at + 1 < len(pieces) else ","
        else:
            text += " ".join(words.split()) if kind == "WORDS" else words
    return text


def _says(rows: Sequence[str]) -> list[tuple[str, str]]:
    """The atoms of a note, or nothing where the rows are not one note."""
    statements = parse("\n".join(filter(None, rows)), "").statements
    return [sense(atom.kind, atom.text) for atom in statements[0].atoms] if len(statements) == 1 else []


def _name(text: str, names: Collection[str]) -> str:
    words = text.split(" ", _MOST_WORDS)
    known = (name for size in range(_MOST_WORDS, 0, -1) if (name := " ".join(words[:size])) in names)
    name = next(known, words[0])
    value = text[len(name) :]
    return name if len(value) > 1 and value[0] == " " and not value[1].isspace() else ""
