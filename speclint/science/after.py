"""The decorator that ties a function to the publication it follows."""

from __future__ import annotations

from collections.abc import Callable
from typing import Literal, NamedTuple, TypeVar

Function = TypeVar("Function", bound=Callable[..., object])
Standing = Literal["published", "second-hand", "memory", "common practice", "ours"]
Bounds = tuple[float, float]


class Source(NamedTuple):
    """Which publication a function follows, where in it, how far that was read, and for which inputs it is valid."""

    key: str
    place: str
    standing: Standing
    valid: dict[str, Bounds]


def after(key: str, place: str, standing: Standing = "published", **valid: Bounds) -> Callable[[Function], Function]:
    """Mark a function as following `place` of the publication `key`.

    Args:
        key: Key in `shared/citations.csv`; empty where the standing is `ours` or `common practice`.
        place: Equation, table or section.
        standing: How far the publication was read.
        valid: Range of each argument, in the argument's unit, within which the publication holds.
    """

    def mark(function: Function) -> Function:
        function.__dict__["source"] = Source(key, place, standing, valid)
        return function

    return mark


def source_of(function: Callable[..., object]) -> Source:
    """The source that `after` gave to a function.

    Raises:
        LookupError: If the function carries none.
    """
    source = function.__dict__.get("source")
    if not isinstance(source, Source):
        raise LookupError(f"{function.__name__} names no publication")
    return source


def range_notes(function: Callable[..., object], **inputs: float) -> tuple[str, ...]:
    """A note for each input outside the range in which the function's publication holds."""
    notes = []
    for name, (low, high) in source_of(function).valid.items():
        value = inputs.get(name)
        if value is not None and not low <= value <= high:
            words = name.replace("_", " ")
            notes.append(f"{words} {value:g} is outside the range {low:g} to {high:g} of {source_of(function).place}")
    return tuple(notes)
