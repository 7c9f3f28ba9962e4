"""Lines that follow one another, set in columns: values of notes, blocks of one line, comments."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass
from itertools import groupby

WIDEST = 110  # columns of a line that holds more than one note, its comment not counted
_GAP = "  "  # between notes, and before a comment
_UNEVEN = 40  # columns by which lines may differ and still share a column of comments


@dataclass(slots=True)
class Line:
    """One line of the layout.

    Attributes:
        indent: What stands before it.
        code: What it says.
        comment: The comment behind it, or alone in it.
        name: Where it begins a note that stands alone: the name of the setting, which begins `code`.
        cells: Where it is a whole block: its head and its notes.
        names: The name of the setting of each of those notes.
    """

    indent: str
    code: str
    comment: str = ""
    name: str = ""
    cells: Sequence[str] = ()
    names: Sequence[str] = ()


def one_line(cells: Sequence[str], widths: Sequence[int] = ()) -> str:
    """A block in one line.

    Args:
        cells: Its head and its notes.
        widths: The columns that each of the first cells takes at least.
    """
    filled = [cell.ljust(width) for cell, width in zip(cells, widths, strict=False)]
    filled += cells[len(filled) :]
    head = f"{filled[0]} {{" if filled[0] else "{"
    return f"{head} {_GAP.join([*filled[1:-1], *cells[1:][-1:]])} }}" if len(cells) > 1 else f"{head} }}"


def ended(notes: Sequence[str]) -> list[str]:
    """Notes of one line, each but the last with its semicolon."""
    return [note if note.endswith(";") or at == len(notes) else f"{note};" for at, note in enumerate(notes, 1)]


def filled(notes: Sequence[str], room: int) -> Iterator[tuple[str, int]]:
    """Notes that the writer put on one line, on as few lines as hold them: each line, and how many notes it holds."""
    here: list[str] = []
    for note in notes:
        if here and len(_GAP.join(ended([*here, note]))) > room:
            yield _GAP.join(ended(here)), len(here)
            here = []
        here.append(note)
    if here:
        yield _GAP.join(ended(here)), len(here)


def align_values(lines: Sequence[Line]) -> None:
    """Begin the values of a run of notes in one column."""
    column = max(len(line.name) for line in lines)
    for line in lines:
        if line.name:
            line.code = line.name.ljust(column) + line.code[len(line.name) :]


def align_blocks(lines: Sequence[Line]) -> None:
    """Set a run of blocks of one line in columns: the braces, and the notes as far as all state the same settings.

    Where the lines would be too long for that, only the braces, or nothing, stands in a column.
    """
    shared = 0
    for names in zip(*(line.names for line in lines), strict=False):
        if len(set(names)) > 1:
            break
        shared += 1
    for columns in (shared, 1):
        widths = [max(len(line.cells[at]) for line in lines) for at in range(columns)]
        rows = [one_line(line.cells, widths) for line in lines]
        if all(len(line.indent + row) <= WIDEST for line, row in zip(lines, rows, strict=True)):
            for line, row in zip(lines, rows, strict=True):
                line.code = row
            return


def with_comments(lines: Iterable[Line]) -> Iterator[str]:
    """The lines as text; comments stand in one column as far as no blank line and no comment alone comes between."""
    for says, run in groupby(lines, key=lambda line: bool(line.code)):
        together = list(run)
        columns = _columns([line for line in together if line.comment]) if says else iter(())
        for line in together:
            before = line.indent + line.code
            yield before.ljust(next(columns)) + _GAP + line.comment if says and line.comment else before + line.comment


def _columns(lines: Sequence[Line]) -> Iterator[int]:
    """For each line the column at which the widest ends of those that share a column with it."""
    group: list[int] = []
    low = high = 0
    for line in lines:
        width = len(line.indent + line.code)
        low, high = (min(low, width), max(high, width)) if group else (width, width)
        if high - low > _UNEVEN:
            yield from [max(group)] * len(group)
            group, low, high = [], width, width
        group.append(width)
    yield from [max(group, default=0)] * len(group)
