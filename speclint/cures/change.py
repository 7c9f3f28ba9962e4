"""A change to a plan and the cure it makes. Plain frozen data."""

from __future__ import annotations

from dataclasses import dataclass

from speclint.language.edit import Edit

YOURS = "so it is yours to write there; --as-alternate states it beside the plan"


@dataclass(frozen=True, slots=True)
class Change:
    """A setting of an element and the value it is to have, as a plan writes it; `was` is empty where none is stated."""

    element: str
    setting: str
    text: str
    was: str = ""

    @property
    def note(self) -> str:
        """The note that states it in a plan."""
        return f"{self.setting} {self.text}"

    def __str__(self) -> str:
        now = f" in place of {self.was}" if self.was else ""
        return f"{self.element}: {self.note}{now}"


Changes = tuple[Change, ...]


@dataclass(frozen=True, slots=True)
class Cure:
    """Changes that clear a finding.

    Attributes:
        rule: The rule of the finding.
        element: The element of the finding.
        changes: The changes: one, or several settings of one element that go together.
        edits: What it alters in the plan's own text; nothing where it cannot be written there.
        care: Who else has to be asked, as the rule defers to them.
        unwritten: Why it cannot be written there; empty where it can.
    """

    rule: str
    element: str
    changes: Changes
    edits: tuple[Edit, ...] = ()
    care: str = ""
    unwritten: str = ""

    @property
    def title(self) -> str:
        """The cure in one line."""
        notes: dict[str, list[str]] = {}
        for change in self.changes:
            notes.setdefault(change.element, []).append(change.note)
        return "state " + " and ".join(f"{', '.join(noted)} for {element}" for element, noted in notes.items())


@dataclass(frozen=True, slots=True)
class NoCure:
    """A finding for which no change of one setting is offered, and why."""

    rule: str
    element: str
    why: str
