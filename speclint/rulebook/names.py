"""What the names in a rule mean for a kind of element: a setting, a measure or a relation."""

from __future__ import annotations

from collections.abc import Mapping
from functools import lru_cache

from speclint.measures.register import measures
from speclint.model.element import settings_of
from speclint.model.kinds import KINDS


@lru_cache(maxsize=64)
def dimensions_of(kind: str) -> Mapping[str, str]:
    """The dimension of every setting and measure of a kind of element."""
    found = {
        name: setting.dimension for name, setting in settings_of(KINDS[kind]).items() if setting.dimension != "part"
    }
    found.update((name, entry.dimension) for name, entry in measures().get(kind, {}).items())
    return found


def choices_of(kind: str, name: str) -> tuple[str, ...] | None:
    """The phrases that a setting of choices can be, or nothing where any word may stand."""
    setting = settings_of(KINDS[kind]).get(name)
    if setting is None or setting.choices is None:
        return None
    return tuple(setting.choices)


def relation(kind: str, name: str) -> tuple[tuple[str, ...], bool] | None:
    """The kinds of element that a relation leads to and whether to many, or nothing where the name is none."""
    if name in KINDS:
        return (name,), False
    plural = "porch" if name == "porches" else name.removesuffix("s")
    if plural in KINDS and plural != name:
        return (plural,), True
    setting = settings_of(KINDS[kind]).get(name)
    if setting is not None and setting.dimension == "part":
        return setting.refers, setting.many
    return None


def known_names(kind: str) -> list[str]:
    """Every name that a rule about a kind of element can use."""
    return sorted(dimensions_of(kind))
