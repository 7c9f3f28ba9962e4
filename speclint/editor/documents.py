"""The texts that are open in the editor, and the files that a plan uses: from open texts first, then from disk."""

from __future__ import annotations

import os
from collections.abc import Callable, Sequence
from dataclasses import dataclass, replace
from pathlib import Path

from lsprotocol import types as lsp
from pygls.uris import from_fs_path, to_fs_path

from speclint.editor.positions import Lines
from speclint.language.uses import CannotRead
from speclint.pipeline import PlanText

ReadFile = Callable[[Path], str]
NO_FOLDER = "a plan that is not saved can use no other file"


@dataclass(frozen=True, slots=True)
class Document:
    """A text that is open in the editor; a new one takes its place at each change."""

    uri: str
    text: str
    version: int | None = None

    @property
    def path(self) -> Path | None:
        """Its file; nothing where it is none of this machine."""
        return path_of(self.uri)

    @property
    def name(self) -> str:
        """The name by which messages call it."""
        path = self.path
        return (path.name if path else self.uri.rsplit("/", 1)[-1].rsplit(":", 1)[-1]) or "the plan"


class Documents:
    """The open texts by their address. `turn` counts changes, so that what was found can be known as stale."""

    def __init__(self, read: ReadFile) -> None:
        self.read_file = read
        self.encoding = "utf-16"
        self.open: dict[str, Document] = {}
        self.turn = 0

    def put(self, document: Document) -> None:
        """Open a text, or put another in its place."""
        self.open[document.uri] = document
        self.turn += 1

    def change(
        self, uri: str, version: int | None, changes: Sequence[lsp.TextDocumentContentChangeEvent]
    ) -> Document | None:
        """The text after changes, one after the other; nothing where it is not open."""
        document = self.open.get(uri)
        if document is None:
            return None
        text = document.text
        for change in changes:
            text = self._changed(text, change)
        self.put(replace(document, text=text, version=version))
        return self.open[uri]

    def close(self, uri: str) -> bool:
        """Forget a text; whether it was open."""
        self.turn += 1
        return self.open.pop(uri, None) is not None

    def _changed(self, text: str, change: lsp.TextDocumentContentChangeEvent) -> str:
        if not isinstance(change, lsp.TextDocumentContentChangePartial):
            return change.text
        lines = Lines(text, self.encoding)
        start, end = sorted((lines.offset(change.range.start), lines.offset(change.range.end)))
        return text[:start] + change.text + text[end:]


class Shelf:
    """The files one plan uses, as they stand when it is read: each is read once, and kept with its address."""

    def __init__(self, document: Document, documents: Documents) -> None:
        self.document = document
        self.texts: dict[str, str] = {document.name: document.text}
        self.addresses: dict[str, str] = {document.name: document.uri}
        self.refused: dict[str, str] = {}
        self.opened = dict(documents.open)
        self.read_file = documents.read_file

    @property
    def plan(self) -> PlanText:
        """The plan, ready for review."""
        return PlanText(self.document.text, self.document.name, self.read)

    def read(self, used: str) -> str:
        """The text of a file that the plan uses.

        Raises:
            CannotRead: If it cannot be read, or lies outside the folder of the plan.
        """
        if used in self.refused:
            raise CannotRead(self.refused[used])
        if used not in self.texts:
            try:
                self.texts[used] = self._text(used)
            except CannotRead as trouble:
                self.refused[used] = str(trouble)
                raise
        return self.texts[used]

    def is_stale(self, documents: Documents) -> bool:
        """Whether an open text that was read here has been changed, opened or closed since."""
        return any(documents.open.get(address) is not self.opened.get(address) for address in self.addresses.values())

    def _text(self, used: str) -> str:
        target = self.file(used)
        for other in self.opened.values():
            path = other.path
            if path is not None and Path(os.path.realpath(path)) == target:
                self.addresses[used] = other.uri
                return other.text
        text = self.read_file(target)
        self.addresses[used] = from_fs_path(str(target)) or ""
        return text

    def file(self, used: str) -> Path:
        """The file of a name that the plan uses.

        Raises:
            CannotRead: If it lies outside the folder of the plan.
        """
        own = self.document.path
        if own is None:
            raise CannotRead(NO_FOLDER)
        inside = Path(os.path.realpath(own.parent))
        target = Path(os.path.realpath(inside / used))
        if not target.is_relative_to(inside):
            raise CannotRead("it lies outside the folder of the plan")
        return target


def path_of(uri: str) -> Path | None:
    """The file of an address; nothing where it is no file of this machine."""
    try:
        path = to_fs_path(uri)
    except ValueError:
        return None
    return Path(path) if path and "\0" not in path else None
