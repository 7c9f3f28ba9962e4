"""What every element of a home has: a kind, a name, a place in the plan, and where each value came from."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from functools import lru_cache
from typing import Any, ClassVar, Literal

from pydantic import BaseModel, ConfigDict

from speclint.model.settings import Setting
from speclint.span import NOWHERE, Span

How = Literal["stated", "typical", "assumed in the plan", "assumed by speclint", "unknown", "unreadable", "alternate"]


@dataclass(frozen=True, slots=True)
class Given:
    """How a value came into the model: its place, the words that gave it, and who said so."""

    span: Span
    text: str
    how: How
    reason: str = ""


class Element(BaseModel):
    """A part of a home. Fields hold SI values; a field that is `None` was not stated."""

    model_config = ConfigDict(frozen=True, defer_build=True, extra="forbid", arbitrary_types_allowed=True)

    kind: ClassVar[str] = ""
    single: ClassVar[bool] = False

    name: str = ""
    place: Span = NOWHERE
    given: Mapping[str, Given] = {}

    @property
    def label(self) -> str:
        """The element by its own name, as the plan calls it."""
        return f"{self.kind} {self.name}" if self.name else self.kind


@lru_cache(maxsize=64)
def settings_of(model: type[Element]) -> dict[str, Setting]:
    """The settings of a kind of element, by the name the plan uses."""
    found = {}
    for attribute, field in model.model_fields.items():
        about: Any = field.json_schema_extra
        if isinstance(about, dict):
            name = attribute.replace("_", " ")
            more = {key: value for key, value in about.items() if key not in ("refers", "then")}
            refers = tuple(about.get("refers", ()))
            then = tuple((word, setting) for word, setting in about.get("then", ()))
            found[name] = Setting(name=name, refers=refers, then=then, **more)
    return found
