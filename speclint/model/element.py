"""What every element of a home has: a kind, a name, a place in the plan, and where each value came from."""

from __future__ import annotations

from abc import ABC
from collections.abc import Mapping
from dataclasses import Field, FrozenInstanceError, dataclass, field, fields
from functools import lru_cache
from typing import Any, ClassVar, Literal, NamedTuple, TypeVar

from speclint.model.settings import Setting
from speclint.span import NOWHERE, Span

T = TypeVar("T")
How = Literal["stated", "typical", "assumed in the plan", "assumed by speclint", "unknown", "unreadable", "alternate"]


class Given(NamedTuple):
    """How a value came into the model: its place, the words that gave it, and who said so."""

    span: Span
    text: str
    how: How
    reason: str = ""


def element(kind: type[T]) -> type[T]:
    """A kind of element: a frozen type whose fields are stated by name.

    The library's fields with methods of `Element` for all kinds, since those it would write for each kind take longer
    to make at every start than a review may.
    """
    return dataclass(init=False, repr=False, eq=False, kw_only=True)(kind)


@element
class Element(ABC):
    """A part of a home. Fields hold SI values; a field that is `None` was not stated."""

    kind: ClassVar[str] = ""
    single: ClassVar[bool] = False

    name: str = ""
    place: Span = NOWHERE
    given: Mapping[str, Given] = field(default_factory=dict)
    __dataclass_fields__: ClassVar[dict[str, Field[Any]]]

    def __init__(self, **stated: Any) -> None:
        unknown = stated.keys() - type(self).__dataclass_fields__.keys()
        if unknown:
            raise TypeError(f"a {self.kind} has no {', '.join(sorted(unknown))}")
        self.__dict__.update({"given": {}} | stated)

    def __setattr__(self, name: str, value: object) -> None:
        raise FrozenInstanceError(f"cannot change {name} of {self.label}")

    def __eq__(self, other: object) -> bool:
        if type(self) is not type(other):
            return NotImplemented
        return all(getattr(self, one.name) == getattr(other, one.name) for one in fields(self))

    def __hash__(self) -> int:
        return hash((type(self), self.name))

    @property
    def label(self) -> str:
        """The element by its own name, as the plan calls it."""
        return f"{self.kind} {self.name}" if self.name else self.kind


@lru_cache(maxsize=64)
def settings_of(model: type[Element]) -> dict[str, Setting]:
    """The settings of a kind of element, by the name the plan uses."""
    found = {}
    for one in fields(model):
        about = one.metadata
        if about:
            name = one.name.replace("_", " ")
            more = {key: value for key, value in about.items() if key not in ("refers", "then")}
            refers = tuple(about.get("refers", ()))
            then = tuple((word, setting) for word, setting in about.get("then", ()))
            found[name] = Setting(name=name, refers=refers, then=then, **more)
    return found
