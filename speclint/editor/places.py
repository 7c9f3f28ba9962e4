"""Where a thing is described, and every place that names it."""

from __future__ import annotations

from posixpath import normpath

from lsprotocol import types as lsp

from speclint.editor.hover import setting_at
from speclint.editor.names import Name
from speclint.editor.notes import kind_of, targets_of
from speclint.editor.reading import Reading
from speclint.span import Span


def definitions(reading: Reading, place: Span) -> list[lsp.Location]:
    """Where the thing that is named at a place is described.

    A part, or the element of a variance: the element. A typical after `like`: that typical. A used file: the file. The
    first word of an element: its typicals.
    """
    name = reading.names.at(place.file, place.line, place.column)
    if name is not None and name.role == "use":
        return _file(reading, name)
    head = reading.names.head_at(place.file, place.line, place.column)
    if head is not None and head.role == "element" and (name is None or not name.name):
        targets = [f"typical {head.kind} {reading.names.like(head.target)}", f"typical {head.kind}"]
        return [located(reading, found.place) for target in targets for found in reading.names.declared(target)]
    name = name or head
    return [located(reading, found.place) for found in reading.names.declared(name.target)] if name else []


def typical_setting(reading: Reading, offset: int) -> list[lsp.Location]:
    """For a setting that an element states, or takes from a typical: the line of the typical that states it."""
    found = setting_at(reading, offset)
    if found is None:
        return []
    stated, head = found
    kind, typical = kind_of(head)
    like = "" if typical else next((reading.names.like(target) for target in targets_of(head)), "")
    given = None if typical else reading.names.typical(kind, like, stated.setting.name)
    return [located(reading, given.span)] if given else []


def references(reading: Reading, place: Span, declared: bool) -> list[lsp.Location]:
    """Every place that names the element or typical at a place; where it is described too if that is asked for."""
    name = target_at(reading, place)
    found = reading.names.of(name.target) if name else []
    return [located(reading, one.place) for one in found if declared or one.role not in ("element", "typical")]


def target_at(reading: Reading, place: Span) -> Name | None:
    """The element or typical that is named, or begins, at a place."""
    name = reading.names.at(place.file, place.line, place.column)
    name = name or reading.names.head_at(place.file, place.line, place.column)
    return name if name is not None and name.role not in ("rule", "use") and name.target else None


def located(reading: Reading, place: Span) -> lsp.Location:
    """A place of a plan or of a file it uses, as an editor takes it."""
    return lsp.Location(reading.address(place.file), reading.lines_of(place.file).of_span(place))


def _file(reading: Reading, name: Name) -> list[lsp.Location]:
    path = normpath(name.target.replace("\\", "/"))  # by which the shelf knows a file that the plan itself uses
    address = reading.shelf.addresses.get(path)
    return [lsp.Location(address, lsp.Range(lsp.Position(0, 0), lsp.Position(0, 0)))] if address else []
