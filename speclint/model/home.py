"""A home as the plan describes it: its elements, what was assumed, its alternates and variances."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field
from typing import NamedTuple

from speclint.model.element import Element
from speclint.span import Span


class Variance(NamedTuple):
    """An accepted deviation: which rule, on which element ("" for all), why, by whom, and until which day."""

    rule: str
    element: str
    because: str
    accepted_by: str
    until: str
    place: Span


class Assumed(NamedTuple):
    """A value that nobody stated for certain: which setting of which element, the value, and the reason."""

    element: str
    setting: str
    value: str
    reason: str
    place: Span


@dataclass(frozen=True, slots=True)
class Home:
    """The typed model of one plan."""

    name: str
    elements: Mapping[str, Element]
    variances: tuple[Variance, ...] = ()
    alternates: tuple[str, ...] = ()
    assumed: tuple[Assumed, ...] = ()
    places: Mapping[str, Span] = field(default_factory=dict)
    _by_kind: Mapping[str, list[Element]] = field(init=False, repr=False, compare=False)

    def __post_init__(self) -> None:
        by_kind: dict[str, list[Element]] = {}
        for element in self.elements.values():
            by_kind.setdefault(element.kind, []).append(element)
        object.__setattr__(self, "_by_kind", by_kind)

    def of_kind(self, *kinds: str) -> Iterator[Element]:
        """The elements of the given kinds, in the order of the plan."""
        if len(kinds) == 1:
            return iter(self._by_kind.get(kinds[0], ()))
        return (element for element in self.elements.values() if element.kind in kinds)
