"""What a setting of an element is: its dimension, meaning, range, choices, and what may follow it on a line."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from typing import Any, NamedTuple

ByBearing = tuple[tuple[float, float], ...]
"""Numbers by azimuth [deg]."""


class Section(NamedTuple):
    """The section of a timber: two sides [m] and the name it goes by."""

    breadth: float
    depth: float
    name: str


@dataclass(frozen=True, slots=True, eq=False)
class Setting:
    """A setting as the language reference, the builder and the rule language know it.

    `low` and `high` are in SI. `choices` maps each phrase to its meaning. `refers` names the kinds of element that a
    part may be. `then` lists what may follow on the same line without a comma: (connecting word or "", setting name).
    """

    name: str
    dimension: str
    meaning: str
    example: str
    low: float | None = None
    high: float | None = None
    choices: Mapping[str, str] | None = None
    refers: tuple[str, ...] = ()
    many: bool = False
    then: tuple[tuple[str, str], ...] = ()
    default: str = ""
    reason: str = ""
    attribute: str = field(init=False)  # the name of the model field that holds it

    def __post_init__(self) -> None:
        object.__setattr__(self, "attribute", self.name.replace(" ", "_"))


def _setting(dimension: str, meaning: str, example: str, **more: Any) -> Any:
    """A field that carries what the setting is; see `Setting` for the words."""
    return field(default=None, metadata={"dimension": dimension, "meaning": meaning, "example": example, **more})


def length(meaning: str, example: str, low: float = 0.0, high: float = 100.0, **more: Any) -> Any:
    """A length [m]."""
    return _setting("length", meaning, example, low=low, high=high, **more)


def slope(meaning: str, example: str, low: float = -0.5, high: float = 4.0, **more: Any) -> Any:
    """A slope as rise over run."""
    return _setting("slope", meaning, example, low=low, high=high, **more)


def bearing(meaning: str, example: str, **more: Any) -> Any:
    """An azimuth, in degrees clockwise from north."""
    return _setting("angle", meaning, example, low=0.0, high=360.0, **more)


def number(dimension: str, meaning: str, example: str, low: float, high: float, **more: Any) -> Any:
    """A number of any other dimension, in SI."""
    return _setting(dimension, meaning, example, low=low, high=high, **more)


def count(meaning: str, example: str, low: float = 0.0, high: float = 500.0, **more: Any) -> Any:
    """A whole number."""
    return _setting("count", meaning, example, low=low, high=high, **more)


def section(meaning: str, example: str, low: float = 0.0127, high: float = 1.524, **more: Any) -> Any:
    """The section of a timber; each of its sides is from half an inch to five feet."""
    return _setting("section", meaning, example, low=low, high=high, **more)


def choice(meaning: str, choices: Mapping[str, str], **more: Any) -> Any:
    """One of the phrases in `choices`."""
    example = more.pop("example", next(iter(choices)))
    return _setting("choice", meaning, example, choices=dict(choices), **more)


def yes_no(meaning: str, **more: Any) -> Any:
    """Yes or no."""
    return _setting("yes or no", meaning, "yes", choices={"yes": "it is so", "no": "it is not so"}, **more)


def shares(meaning: str, example: str, **more: Any) -> Any:
    """Percentages by bearing: ((azimuth [deg], share [%]), ...)."""
    return _setting("shares", meaning, example, low=0.0, high=100.0, **more)


def skyline(meaning: str, example: str, **more: Any) -> Any:
    """Height angles by bearing: ((azimuth [deg], height [deg]), ...)."""
    return _setting("skyline", meaning, example, low=0.0, high=89.0, **more)


def text(meaning: str, example: str, **more: Any) -> Any:
    """A text in quotes."""
    return _setting("text", meaning, example, **more)


def station(meaning: str, example: str, **more: Any) -> Any:
    """A weather station of the reference table, in quotes."""
    return _setting("station", meaning, example, **more)


def record(meaning: str, example: str, **more: Any) -> Any:
    """An hourly record of rain and wind, in quotes: one that ships, or a CSV file beside the plan."""
    return _setting("record", meaning, example, **more)


def species(meaning: str, **more: Any) -> Any:
    """A wood species of the reference table."""
    return _setting("species", meaning, "eastern white pine", **more)


def part(meaning: str, refers: tuple[str, ...], example: str, **more: Any) -> Any:
    """Another element of the plan."""
    return _setting("part", meaning, example, refers=list(refers), **more)


def parts(meaning: str, refers: tuple[str, ...], example: str, **more: Any) -> Any:
    """Other elements of the plan."""
    return _setting("part", meaning, example, refers=list(refers), many=True, **more)
