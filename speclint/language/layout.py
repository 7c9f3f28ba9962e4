"""The layout of a plan: its lines set in order, with every comment and every word as the writer put it."""

from __future__ import annotations

import json
from collections.abc import Iterator, Mapping, Sequence
from functools import lru_cache
from itertools import groupby
from typing import NamedTuple

from speclint.language.atoms import Tree
from speclint.language.columns import (
    WIDEST,
    Line,
    align_blocks,
    align_values,
    ended,
    filled,
    one_line,
    with_comments,
)
from speclint.language.parse import parse
from speclint.language.phrase import Phrase, phrase
from speclint.language.sense import atoms_of
from speclint.language.written import MARK, Block, Note, Remark, as_before, plain_lines, written
from speclint.paths import shipped

INDENT = "    "
DEEPEST = 20  # levels that are indented; a plan has three


def tidied(text: str) -> str:
    """The plan in its layout; a text that cannot be read whole is returned as it is.

    Every word, unit and comment stays, in its order; only blanks, new lines and semicolons change.
    """
    plain = plain_lines(text)
    tree = parse(plain, "")
    if not is_whole(tree):
        return text
    lines = _Layout(_settings()).lines(written(plain, tree))
    laid_out = "".join(f"{line}\n" for line in with_comments(lines))
    if laid_out.startswith(MARK) and not text.startswith(MARK):  # a stray one, that would become the first of the file
        return text
    return as_before(laid_out, text)


def is_whole(tree: Tree) -> bool:
    """Whether every block and every quotation mark of a text is closed."""
    return not tree.mistakes and all(atom.kind != "UNCLOSED" for atom in atoms_of(tree))


@lru_cache(maxsize=1)
def _settings() -> Mapping[str, frozenset[str]]:
    """The names of the settings of each kind of element."""
    words = json.loads(shipped("grammar").joinpath("words.json").read_text(encoding="utf-8"))
    return {kind: frozenset(names) for kind, names in words["settings"].items()}


class _Unit(NamedTuple):
    """What is set as a whole: notes of one line, a block of one line, the head of an open block, a remark.

    Units that follow one another and are `alike` share their columns.
    """

    alike: str
    lines: list[Line]
    opened: Note | None = None


class _Layout:
    """Sets notes in lines."""

    def __init__(self, settings: Mapping[str, frozenset[str]]) -> None:
        self.settings = settings
        self.phrases: dict[int, Phrase] = {}

    def lines(self, whole: Block) -> list[Line]:
        """The lines of a file, in columns but for the comments."""
        found: list[Line] = []
        bodies = [self._body(whole, "", 0)]
        while bodies:
            step = next(bodies[-1], None)
            if step is None:
                bodies.pop()
            elif isinstance(step, Line):
                found.append(step)
            else:
                bodies.append(self._body(*step))
        return found

    def _body(self, block: Block, kind: str, depth: int) -> Iterator[Line | tuple[Block, str, int]]:
        """The lines of a block; where a block in it stands open, that block, its kind and depth come between."""
        indent = INDENT * min(depth, DEEPEST)
        for alike, run in groupby(self._units(block, kind, indent), key=lambda unit: unit.alike):
            units = list(run)
            if alike:
                align = align_values if alike == "note" else align_blocks
                align([unit.lines[0] for unit in units])
            for unit in units:
                yield from unit.lines
                if unit.opened is not None and unit.opened.block is not None:
                    inside = unit.opened.block
                    yield inside, self._kind(unit.opened), depth + 1
                    yield Line(indent, "}", unit.opened.comment if inside.spread else "")

    def _units(self, block: Block, kind: str, indent: str) -> Iterator[_Unit]:
        together: list[Note] = []
        for item in block.items:
            if isinstance(item, Note) and item.block is None and len(item.rows) == 1:
                if not item.joined:
                    yield from self._notes(together, kind, indent)
                    together = []
                together.append(item)
                continue
            yield from self._notes(together, kind, indent)
            together = []
            if isinstance(item, Remark):
                yield _Unit("", [Line(indent if item.text else "", "", item.text)])
            elif item.block is None:
                yield _Unit("note", self._rows(item, kind, indent))
            else:
                yield self._block(item, item.block, kind, indent)
        yield from self._notes(together, kind, indent)

    def _notes(self, notes: Sequence[Note], kind: str, indent: str) -> Iterator[_Unit]:
        """Notes that the writer put on one line: on one still, or on as few as hold them."""
        at = 0
        for text, count in filled([self._phrase(note, kind).rows[0] for note in notes], WIDEST - len(indent)):
            at += count
            last = notes[at - 1]
            if count > 1:
                yield _Unit("", [Line(indent, text, last.comment)])
            else:
                yield _Unit("note", self._rows(last, kind, indent))

    def _rows(self, note: Note, kind: str, indent: str) -> list[Line]:
        """The lines of one note, or of the head of one."""
        found = self._phrase(note, kind)
        lines = [Line(indent + INDENT, text, row.comment) for text, row in zip(found.rows, note.rows, strict=True)]
        lines[0].indent, lines[0].name = indent, found.name
        lines[-1].comment = note.comment
        return lines

    def _block(self, note: Note, block: Block, kind: str, indent: str) -> _Unit:
        """A block in one line where the writer put it in one and it fits; else its head, for it stands open."""
        cells = self._cells(note, block, WIDEST - len(indent))
        if cells:
            inside = self._kind(note)
            names = [self._phrase(inner, inside).name for inner in block.items if isinstance(inner, Note)]
            line = Line(indent, one_line(cells), note.comment, cells=cells, names=names)
            return _Unit(f"block {cells[0].split(' ')[0]}", [line])
        lines = self._rows(note, kind, indent)
        lines[-1].code += " {" if lines[-1].code else "{"
        lines[-1].comment = block.comment if block.spread else note.comment
        return _Unit("", lines, note)

    def _cells(self, note: Note, block: Block, room: int) -> list[str]:
        """The head and the notes of a block that can stand in one line; nothing where it cannot."""
        if len(note.rows) > 1 or block.comment or (block.spread and block.items):
            return []
        kind = self._kind(note)
        notes: list[str] = []
        for inner in block.items:
            text = self._flat(inner, kind, room - len(notes)) if isinstance(inner, Note) else ""
            if not text or len(notes) > room:
                return []
            notes.append(text)
        cells = [self._phrase(note, kind).rows[0], *ended(notes)]
        return cells if len(one_line(cells)) <= room else []

    def _flat(self, note: Note, kind: str, room: int) -> str:
        """A note in one line; nothing where it cannot stand in one."""
        if note.block is None:
            return self._phrase(note, kind).rows[0]
        cells = self._cells(note, note.block, room - len("{  }"))
        return one_line(cells) if cells else ""

    def _kind(self, note: Note) -> str:
        """The kind of element whose block a note has; nothing where it is none."""
        first = next((piece for row in note.rows for piece in row.pieces), None)
        words = first.text.split() if first is not None else []
        words = words[1:] if words[:1] == ["typical"] else words
        sizes = range(len(words), 0, -1)
        return next((kind for size in sizes if (kind := " ".join(words[:size])) in self.settings), "")

    def _phrase(self, note: Note, kind: str) -> Phrase:
        found = self.phrases.get(id(note))
        if found is None:
            found = self.phrases[id(note)] = phrase(note, self.settings.get(kind, frozenset()))
        return found
