"""A plan as it stands in the editor, and what is found in it: each thing is found once, when it is asked for."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from functools import cached_property

from speclint.editor.documents import Document, Documents, Shelf
from speclint.editor.names import Names, names_of
from speclint.editor.pieces import Look, look
from speclint.editor.positions import Lines
from speclint.language.uses import trees_of
from speclint.measures.facts import Sheet
from speclint.model.element import Given
from speclint.pipeline import read_home, review
from speclint.rulebook.book import Rulebook
from speclint.ruling import Review
from speclint.span import Span
from speclint.units import System


@dataclass(frozen=True, slots=True)
class Settled:
    """What holds for a whole session: the rulebook, how units are chosen for a text, and what day it is."""

    book: Rulebook
    units: Callable[[str], System]
    today: Callable[[], str]


class Reading:
    """One text of one plan. It is never changed: after a change in the editor another reading takes its place."""

    def __init__(self, document: Document, documents: Documents, settled: Settled) -> None:
        self.document, self.settled, self.turn = document, settled, documents.turn
        self.encoding = documents.encoding
        self.shelf = Shelf(document, documents)
        self.today = settled.today()

    @cached_property
    def system(self) -> System:
        """The units in which numbers are told."""
        return self.settled.units(self.document.text)

    @cached_property
    def review(self) -> Review:
        """The review of the plan."""
        return review(self.shelf.plan, self.settled.book, self.today, self.system)

    @cached_property
    def sheet(self) -> Sheet:
        """The facts of the home."""
        return read_home(self.shelf.plan)[0]

    @cached_property
    def names(self) -> Names:
        """What names what, in the plan and the files it uses."""
        return names_of(trees_of(self.document.text, self.document.name, self.shelf.read)[0])

    @cached_property
    def look(self) -> Look:
        """Pieces, notes and blocks of the text."""
        return look(self.document.text)

    @cached_property
    def lines(self) -> Lines:
        """The lines of the text."""
        return self.lines_of(self.document.name)

    def lines_of(self, file: str) -> Lines:
        """The lines of a file that the plan uses, or of the plan; of nothing where it was not read."""
        return Lines(self.shelf.texts.get(file, ""), self.encoding)

    def address(self, file: str) -> str:
        """The address of a file that the plan uses; that of the plan where it has none of its own."""
        return self.shelf.addresses.get(file, self.document.uri)

    def file_of(self, address: str) -> str | None:
        """The name by which spans call the file of an address; nothing where the plan does not use it."""
        return next((file for file, known in self.shelf.addresses.items() if known == address), None)

    def named(self, place: Span, file: str) -> Span:
        """A place of another reading as this one calls its file."""
        return Span(file, place.line, place.column, place.length)

    def place(self, offset: int) -> Span:
        """The span of one character at an offset of the plan's text."""
        starts = self.lines.starts
        line = next(at for at in range(len(starts) - 1, -1, -1) if starts[at] <= offset)
        mark = int(line == 0 and self.document.text.startswith("\ufeff"))
        return Span(self.document.name, line + 1, max(1, offset - starts[line] - mark + 1))

    def given(self, label: str, setting: str) -> Given | None:
        """How a setting of an element came into the home; nothing where it did not."""
        element = self.sheet.home.elements.get(label)
        return element.given.get(setting) if element else None
