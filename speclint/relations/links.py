"""What stands in relation to what: every part that names another is near it, both ways."""

from __future__ import annotations

from functools import lru_cache
from typing import NamedTuple

from speclint.model.element import Element, settings_of
from speclint.model.home import Home
from speclint.model.settings import Setting


class Link(NamedTuple):
    """One element names another through one of its settings."""

    source: str
    setting: str
    target: str


class Links:
    """The relations of a home, by element."""

    def __init__(self, home: Home) -> None:
        self.all: list[Link] = []
        near: dict[tuple[str, str], dict[str, None]] = {}
        for label, element in home.elements.items():
            for setting in _naming(type(element)):
                named = getattr(element, setting.attribute) or ()
                for target in (named,) if isinstance(named, str) else named:
                    self.all.append(Link(label, setting.name, target))
                    near.setdefault((label, home.elements[target].kind), {})[target] = None
                    near.setdefault((target, element.kind), {})[label] = None
        self._near = {part: list(others) for part, others in near.items()}

    def near(self, label: str, kind: str) -> list[str]:
        """The elements of a kind that an element names or is named by, in the order of the plan."""
        return self._near.get((label, kind), [])


@lru_cache(maxsize=64)
def _naming(model: type[Element]) -> tuple[Setting, ...]:
    """The settings by which a kind of element names others."""
    return tuple(setting for setting in settings_of(model).values() if setting.dimension == "part")
