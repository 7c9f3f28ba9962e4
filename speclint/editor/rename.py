"""Another name for an element or a typical, in the plan and in the open files that it uses."""

from __future__ import annotations

import re

from speclint.editor.documents import Document, Documents
from speclint.editor.names import Name
from speclint.editor.places import target_at
from speclint.editor.reading import Reading
from speclint.language.edit import Edit, with_edits
from speclint.model.build import STRUCTURE
from speclint.model.element import settings_of
from speclint.model.kinds import KINDS
from speclint.pipeline import read_home
from speclint.span import Span

WORD = re.compile(r"[^\W\d_][\w./]*(?:-[\w./]+)*")
Changes = dict[str, list[Edit]]


class CannotRename(Exception):
    """A name that cannot be given; its argument says why, in the user's words."""


def renamable(reading: Reading, place: Span) -> tuple[int, int] | None:
    """Where the name at a place begins and ends, if it can have another; nothing where it cannot."""
    name = target_at(reading, place)
    if name is None or not name.name or name != reading.names.at(place.file, place.line, place.column):
        return None
    return reading.lines_of(place.file).offsets(name.place)


def renamed(reading: Reading, place: Span, new: str) -> Changes:
    """The edits that give the element or typical at a place another name, by file.

    Raises:
        CannotRename: If there is no such name, the new one is no word or is taken, or something else would change.
    """
    name = target_at(reading, place)
    if name is None or not name.name:
        raise CannotRename("nothing here has a name of its own")
    _check_word(new)
    taken = f"{name.target.removesuffix(name.name)}{new}"
    if reading.names.declared(taken):
        raise CannotRename(f"{taken} is already there; give it another name")
    changes: Changes = {}
    for one in _named(reading, name):
        lines = reading.lines_of(one.place.file)
        start, end = lines.offsets(one.place)
        quoted = lines.text[start:end].startswith('"')
        edit = Edit(start + quoted, end - quoted, new)
        if edit not in changes.setdefault(one.place.file, []):
            changes[one.place.file].append(edit)
    _check_open(reading, changes)
    _check_meaning(reading, changes, name, taken)
    return changes


def _named(reading: Reading, name: Name) -> list[Name]:
    """The places to edit: those that write the name out."""
    return [one for one in reading.names.of(name.target) if one.name == name.name]


def _check_word(new: str) -> None:
    if not WORD.fullmatch(new):
        raise CannotRename(f"“{new}” is not one word; a name is one word, hyphens allowed")
    if new in KINDS or new in STRUCTURE or new in ("like", "on", "unknown", "assumed"):
        raise CannotRename(f"“{new}” is a word of the plan language; take another name")
    if any(new in settings_of(model) for model in KINDS.values()):
        raise CannotRename(f"“{new}” is the name of a setting; take another name")


def _check_open(reading: Reading, changes: Changes) -> None:
    for file in changes:
        if reading.address(file) not in reading.shelf.opened:
            raise CannotRename(f"{file} names it too; open that file first, so that it is changed with the plan")


def _check_meaning(reading: Reading, changes: Changes, name: Name, taken: str) -> None:
    """Read the plan with the new name: it must describe the same home but for the name, with the same mistakes."""
    documents = Documents(reading.shelf.read_file)
    documents.encoding = reading.encoding
    for file, text in reading.shelf.texts.items():
        documents.put(Document(reading.address(file), with_edits(text, changes.get(file, []))))
    after = Reading(documents.open[reading.document.uri], documents, reading.settled)
    sheet, mistakes = read_home(after.shelf.plan)
    before, mistakes_before = read_home(reading.shelf.plan)
    if len(mistakes) > len(mistakes_before):
        raise CannotRename(f"another name would be read wrongly: {mistakes[-1].message}")
    own = {name.target: taken}
    parts = {own.get(label, label): _parts(element, own) for label, element in before.home.elements.items()}
    if parts != {label: _parts(element, {}) for label, element in sheet.home.elements.items()}:
        raise CannotRename(f"“{taken.split()[-1]}” would be read as something else in this plan; take another name")


def _parts(element: object, own: dict[str, str]) -> dict[str, object]:
    """The parts that an element names, by setting, under their new names."""
    found: dict[str, object] = {}
    for setting in settings_of(type(element)).values():  # type: ignore[arg-type]
        value = getattr(element, setting.attribute)
        if setting.dimension == "part" and value is not None:
            found[setting.name] = tuple(own.get(one, one) for one in value) if setting.many else own.get(value, value)
    return found
