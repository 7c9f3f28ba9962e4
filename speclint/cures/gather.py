"""The cures that are chosen for several findings, gathered into one set of changes."""

from __future__ import annotations

from speclint.cures.change import Change, Changes
from speclint.cures.desk import Desk


class Gathered:
    """Changes that together clear the findings whose cures were taken."""

    def __init__(self, desk: Desk) -> None:
        self.desk = desk
        self.changes: Changes = ()
        self.cleared: tuple[str, ...] = ()

    def take(self, mark: str, changes: Changes) -> str:
        """Take the cure of a further finding; where a setting is to have two values, that which clears all is taken.

        Args:
            mark: The finding.
            changes: Its cure.

        Returns:
            Why it is not taken; empty where it is.
        """
        wanted = (*self.cleared, mark)
        kept, taken = self._joined(self.changes, changes, self.changes), self._joined(self.changes, changes)
        for trial in dict.fromkeys((kept, taken)):
            if self._clears(trial, wanted):
                self.changes, self.cleared = trial, wanted
                return ""
        return self._clash(changes)

    def _joined(self, *parts: Changes) -> Changes:
        """Changes together; where several write one setting, the last wins."""
        return tuple({self.desk.written_at(change): change for part in parts for change in part}.values())

    def _clears(self, changes: Changes, wanted: tuple[str, ...]) -> bool:
        """Whether changes clear all findings wanted and raise no hold."""
        after = self.desk.found_with(changes)
        raised = any(ruling.grade == "hold" for ruling in self.desk.brought(after))
        return not raised and not any(mark in after for mark in wanted)

    def _clash(self, changes: Changes) -> str:
        there = {self.desk.written_at(change): change for change in self.changes}
        for change in changes:
            other = there.get(self.desk.written_at(change))
            if other is not None and other.text != change.text:
                return _told(change, other)
        return "its cure does not stand together with those of the others; cure them in turn"


def _told(change: Change, other: Change) -> str:
    """What two changes of one setting want, and what to do about it."""
    if change.element == other.element:
        return f"wants {change.note}, and another finding {other.note}; cure them in turn"
    both = f"{change.element} wants {change.note} and {other.element} {other.note}, and no one value clears both"
    return f"{both}; give each a block of its own"
