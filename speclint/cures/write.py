"""Changes written into the text of a plan, or set beside it as an alternate."""

from __future__ import annotations

from collections.abc import Iterable, Sequence

from speclint.cures.change import Change
from speclint.language.edit import CannotEdit, Edit, Places
from speclint.language.parse import parse
from speclint.model.element import Element, Given
from speclint.pipeline import PlanText, read_home
from speclint.span import Span


class Writer:
    """Writes changes into one plan; what other files state stays there and is overridden in the plan."""

    def __init__(self, plan: PlanText) -> None:
        self.plan = plan
        self.home = read_home(plan)[0].home
        self.places = Places(plan.text, parse(plan.text, plan.name))

    def edits(self, changes: Iterable[Change]) -> list[Edit]:
        """The edits of the plan's own text that make the changes.

        Raises:
            CannotEdit: If an element stands in another file or cannot be found in the text, or if two that are stated
                in one block are to have different values.
        """
        notes: dict[tuple[int, int], list[str]] = {}
        found: list[Edit] = []
        for change in self._once(changes):
            element = self.home.elements[change.element]
            given = element.given.get(change.setting)
            if self._own(element, given) and given is not None:
                start, end = self.places.written(given.span.line, given.span.column, given.text)
                found.append(Edit(start, end, change.text))
            elif element.place.file == self.plan.name:
                notes.setdefault((element.place.line, element.place.column), []).append(change.note)
            else:
                raise CannotEdit(f"{change.element} stands in {element.place.file}")
        return found + [self.places.add_note(*place, ";  ".join(added)) for place, added in notes.items()]

    def _once(self, changes: Iterable[Change]) -> list[Change]:
        """The changes, those that one block states for several elements only once.

        Raises:
            CannotEdit: If a block would have to state two values of one setting.
        """
        found: dict[tuple[Span, str], Change] = {}
        for change in changes:
            element = self.home.elements.get(change.element)
            if element is None:
                raise CannotEdit(f"there is no {change.element}")
            other = found.setdefault((element.place, change.setting), change)
            if other.text != change.text:
                raise CannotEdit(f"one block cannot state both {other.note} and {change.note}")
        return list(found.values())

    def _own(self, element: Element, given: Given | None) -> bool:
        """Whether a setting is written in the block of the element itself, in the plan's own file."""
        if given is None or given.span.file != self.plan.name or not given.text:
            return False
        return given.how in ("stated", "assumed in the plan", "unknown") and given.span != element.place


def alternate_text(name: str, changes: Sequence[Change], line_end: str = "\n") -> str:
    """An alternate that makes the changes, as a block to be set at the end of a plan."""
    notes: dict[str, list[str]] = {}
    for change in changes:
        notes.setdefault(change.element, []).append(change.note)
    rows = [f"    {element} {{ {';  '.join(noted)} }}" for element, noted in notes.items()]
    return line_end.join([f'alternate "{name}" {{', *rows, "}", ""])
