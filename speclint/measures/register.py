"""The register of measures: by kind of element and name."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from functools import lru_cache
from importlib import import_module
from typing import TYPE_CHECKING, Any, NamedTuple

if TYPE_CHECKING:
    from speclint.measures.facts import Facts, Working

Compute = Callable[["Facts", "Working"], Any]


class Measure(NamedTuple):
    """A quantity that is derived for a part of the home."""

    kind: str
    name: str
    dimension: str
    meaning: str
    function: Compute


class UnknownMeasure(Exception):
    """A name that is neither a setting, a relation nor a measure of a kind of element."""

    def __init__(self, kind: str, name: str) -> None:
        super().__init__(f"wanted a measure of a {kind}; got {name!r}")


MODULES = (
    "climate",
    "weather",
    "shelter",
    "faces",
    "exposure",
    "sun",
    "cover_options",
    "members",
    "ground",
    "moisture",
    "movement",
    "roofs",
    "water",
    "water_path",
    "bearing",
    "work_order",
    "frames",
    "footings",
    "drawn",
    "fits",
    "snow",
    "wood",
    "finishes",
    "access",
    "decay",
    "by_course",
)


def measure(kinds: str, name: str, dimension: str, meaning: str) -> Callable[[Compute], Compute]:
    """Mark a function as the measure `name` of each of the kinds; the register finds it by its mark.

    Args:
        kinds: Kinds of element, parted by commas.
        name: The name by which rules and reports call it.
        dimension: Its dimension, a word of `units`, or "yes or no", "choice", "text".
        meaning: What it is, in one line.
    """

    def mark(function: Compute) -> Compute:
        marked = [Measure(kind, name, dimension, meaning, function) for kind in kinds.split(", ")]
        function.__dict__["measures"] = marked
        return function

    return mark


@lru_cache(maxsize=1)
def measures() -> Mapping[str, Mapping[str, Measure]]:
    """Every measure, by kind of element and name."""
    found: dict[str, dict[str, Measure]] = {}
    for name in MODULES:
        module = import_module(f"speclint.measures.{name}")
        for function in vars(module).values():
            for entry in getattr(function, "__dict__", {}).get("measures", ()):
                found.setdefault(entry.kind, {})[entry.name] = entry
    return found


def find_measure(kind: str, name: str) -> Measure:
    """The measure of a kind of element.

    Raises:
        UnknownMeasure: If there is none of that name.
    """
    found = measures().get(kind, {}).get(name)
    if found is None:
        raise UnknownMeasure(kind, name)
    return found
