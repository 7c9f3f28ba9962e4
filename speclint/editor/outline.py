"""The outline of a plan, and what of it can be folded."""

from __future__ import annotations

from lsprotocol import types as lsp

from speclint.editor.notes import kind_of
from speclint.editor.pieces import Look, Note, Piece, every_note
from speclint.editor.positions import Lines
from speclint.model.build import STRUCTURE
from speclint.model.kinds import KINDS

DEEPEST = 20
_SYMBOLS = {
    "typical": lsp.SymbolKind.Interface,
    "alternate": lsp.SymbolKind.Namespace,
    "variance": lsp.SymbolKind.Event,
    "use": lsp.SymbolKind.File,
}


def symbols(look: Look, lines: Lines) -> list[lsp.DocumentSymbol]:
    """The elements, typicals, alternates, variances and used files of a plan, in their order."""
    return [found for note in look.root.notes if (found := _symbol(note, lines, 0))]


def _symbol(note: Note, lines: Lines, depth: int) -> lsp.DocumentSymbol | None:
    head = note.words[0] if note.pieces else ""
    if head not in KINDS and head not in STRUCTURE:
        return None
    first, last = note.pieces[0], note.pieces[-1]
    end = max(last.end, note.block.end if note.block else 0)
    inside = note.block.notes if note.block and depth < DEEPEST else []
    children = [found for inner in inside if (found := _symbol(inner, lines, depth + 1))] if _holds(note) else []
    return lsp.DocumentSymbol(
        " ".join(note.words).replace(" ,", ","),
        _SYMBOLS.get(head, lsp.SymbolKind.Object),
        lines.range(first.start, end),
        lines.range(first.start, last.end),
        children=children,
    )


def _holds(note: Note) -> bool:
    """Whether elements may stand in the block of a note: in an alternate, or where a brace before them is missing."""
    return note.words[0] == "alternate" or bool(kind_of(note)[0])


def folds(look: Look, lines: Lines) -> list[lsp.FoldingRange]:
    """Blocks and runs of comments that take more than one line."""
    found: list[lsp.FoldingRange] = []
    for note in every_note(look.root):
        if note.block is not None:
            first, last = lines.position(note.block.start).line, lines.position(note.block.end).line
            if last > first:
                found.append(lsp.FoldingRange(first, last))
    for first, last in _runs(look.comments, lines):
        found.append(lsp.FoldingRange(first, last, kind=lsp.FoldingRangeKind.Comment))
    return found


def _runs(comments: list[Piece], lines: Lines) -> list[tuple[int, int]]:
    """First and last line of each run of comments that stand alone on their lines."""
    runs: list[tuple[int, int]] = []
    for comment in comments:
        line = lines.position(comment.start).line
        if lines.text[lines.starts[line] : comment.start].strip(" \t\ufeff"):
            continue
        if runs and runs[-1][1] == line - 1:
            runs[-1] = (runs[-1][0], line)
        else:
            runs.append((line, line))
    return [(first, last) for first, last in runs if last > first]
