"""What is underlined: a setting with its value, or an element with its names, where a span marks the first word."""

from __future__ import annotations

from bisect import bisect_right

from lsprotocol import types as lsp

from speclint.editor.notes import kind_of, stated_in
from speclint.editor.pieces import Note, Piece, every_note, look
from speclint.editor.positions import MARK, Lines
from speclint.span import Span


class Underlines:
    """The stretches of one file that its findings are shown under."""

    def __init__(self, lines: Lines) -> None:
        self.lines = lines
        text = lines.text
        # the mark would be a part of the first word
        plain = " " + text[1:] if text.startswith(MARK) else text
        self.notes: list[tuple[int, Note, str]] = []  # where it begins, and the kind of element that its block is of
        kinds: dict[int, str] = {}
        for note in every_note(look(plain).root):
            if note.block is not None:
                kinds |= {id(inner): kind_of(note)[0] for inner in note.block.notes}
            if note.pieces:
                self.notes.append((note.pieces[0].start, note, kinds.get(id(note), "")))
        self.starts = [start for start, _, _ in self.notes]

    def of(self, span: Span) -> lsp.Range:
        """The range of a span, carried on to the end of what its word begins; a span of no whole word is kept."""
        start, end = self.lines.offsets(span)
        at = bisect_right(self.starts, start) - 1
        return self.lines.range(start, max(end, self._end(at, start, end)))

    def _end(self, at: int, start: int, end: int) -> int:
        if at < 0:
            return start
        _, note, kind = self.notes[at]
        word = next((piece for piece in note.pieces if piece.start == start and piece.end == end), None)
        if word is None:
            return start
        if word is note.pieces[0] and kind_of(note)[0] and not (kind and note.block is None):
            return _last(note.pieces)
        stated = (one for one in (stated_in(note.pieces, kind) if kind else ()) if one.name[0].start == start)
        return max((_last([*one.name, *one.value]) for one in stated), default=start)


def _last(pieces: list[Piece]) -> int:
    """The end of the last piece that is no comma."""
    return max((piece.end for piece in pieces if piece.kind != "comma"), default=0)
