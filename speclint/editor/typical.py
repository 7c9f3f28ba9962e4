"""A cure made where a typical states the setting, so that every element which takes it from there has it."""

from __future__ import annotations

from collections.abc import Callable
from typing import NamedTuple

from speclint.cures.change import Change
from speclint.cures.desk import Desk
from speclint.editor.names import Names
from speclint.language.edit import CannotEdit, Edit, with_edits
from speclint.ruling import Ruling


class AtTypical(NamedTuple):
    """A change of a typical.

    Attributes:
        target: The typical, such as `typical wall`.
        edit: What it alters in the plan's own text.
        clears: The findings that are gone with it, by mark.
        brings: The findings that come with it or grow graver.
    """

    target: str
    edit: Edit
    clears: tuple[str, ...]
    brings: tuple[Ruling, ...]


def at_typical(
    desk: Desk, names: Names, change: Change, ruling: Ruling, desk_of: Callable[[str], Desk]
) -> AtTypical | None:
    """A change made in the typical that states the setting, where that clears the finding and raises no hold.

    Nothing where the element states the setting itself, where the typical stands in another file, or where a finding
    that is accepted by variance rests on the setting in any element that takes it from there.

    Args:
        desk: The plan.
        names: What names what in it.
        change: The change of one element that clears the finding.
        ruling: The finding.
        desk_of: The desk of the plan with another text.
    """
    elements = desk.sheet.home.elements
    given = elements[change.element].given.get(change.setting)
    if given is None or given.how != "typical" or given.span.file != desk.plan.name:
        return None
    shared = [
        label
        for label, other in elements.items()
        if (stated := other.given.get(change.setting)) and stated.span == given.span
    ]
    written = ((one.target, one.given.get(change.setting)) for one in names.owners)
    target = next((target for target, stated in written if stated and stated.span == given.span), "")
    if not target or any((label, change.setting) in desk.apart for label in shared):
        return None
    try:
        start, end = desk.writer.places.written(given.span.line, given.span.column, given.text)
    except CannotEdit:
        return None
    edit = Edit(start, end, change.text)
    after = desk_of(with_edits(desk.plan.text, [edit]))
    brings = desk.brought(after.findings)
    worse = len(after.mistakes) > len(desk.mistakes) or any(one.grade == "hold" for one in brings)
    if worse or ruling.mark in after.findings:
        return None
    return AtTypical(target, edit, tuple(mark for mark in desk.findings if mark not in after.findings), brings)
