"""What stands in relation to what: every part that names another is near it, both ways."""

from __future__ import annotations

from typing import NamedTuple

from speclint.model.element import settings_of
from speclint.model.home import Home


class Link(NamedTuple):
    """One element names another through one of its settings."""

    source: str
    setting: str
    target: str


class Links:
    """The relations of a home, by element."""

    def __init__(self, home: Home) -> None:
        self.all: list[Link] = []
        self._near: dict[tuple[str, str], list[str]] = {}
        for label, element in home.elements.items():
            for setting in settings_of(type(element)).values():
                if setting.dimension != "part":
                    continue
                named = getattr(element, setting.attribute) or ()
                for target in (named,) if isinstance(named, str) else named:
                    self.all.append(Link(label, setting.name, target))
                    self._keep(label, home.elements[target].kind, target)
                    self._keep(target, element.kind, label)

    def _keep(self, label: str, kind: str, other: str) -> None:
        known = self._near.setdefault((label, kind), [])
        if other not in known:
            known.append(other)

    def near(self, label: str, kind: str) -> list[str]:
        """The elements of a kind that an element names or is named by, in the order of the plan."""
        return self._near.get((label, kind), [])
