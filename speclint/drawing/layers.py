"""What an elevation can be shaded by: driving rain, sun, the life of the finish, exposure to decay."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from functools import lru_cache

from speclint.drawing.shades import Scale, scale
from speclint.measures.course_table import course_table
from speclint.measures.facts import Facts, Sheet
from speclint.quantity import Quantity

YEAR = 365.25


@dataclass(frozen=True, slots=True)
class Layer:
    """An amount for each course of a wall.

    Attributes:
        name: The word by which it is asked for.
        title: What it shows, as the legend says.
        scale: Its classes.
        values: One for each course, lowest first; nothing where it is not known.
        told: A value in words, short enough to stand on a course.
        whole: The same for the wall as a whole, in words; empty where it is not known.
        missing: Why there is nothing to show; empty where there is.
    """

    name: str
    title: str
    scale: Scale
    values: tuple[float | None, ...]
    told: Callable[[float], str]
    whole: str
    missing: str = ""


NAMES = ("rain", "sun", "finish", "decay")


def percent(value: float) -> str:
    """A share in percent."""
    return f"{100 * value:.0f}%"


def years(value: float) -> str:
    """A life in years."""
    return f"{value:.1f} yr" if value < 9.95 else f"{value:.0f} yr"


def plain(value: float) -> str:
    """A number with two digits."""
    return f"{value:.2g}"


@lru_cache(maxsize=1)
def scales() -> dict[str, Scale]:
    """The scale of each layer; the bounds are ours, those of rain and sun the ones that name its classes."""
    return {
        "rain": scale("share of the driving rain that strikes", (0.10, 0.25, 0.50, 0.75), percent),
        "sun": scale("ultraviolet light, of a wall open to the noon sun", (0.15, 0.30, 0.45, 0.60), percent),
        "finish": scale("years until the finish needs a coat, likely", (2, 3, 5, 8), years, worse_high=False),
        "decay": scale("exposure to decay; 1 is bare spruce in Helsinki's rain", (0.5, 1.0, 1.5, 2.0), plain),
    }


def layers_of(sheet: Sheet, wall: Facts) -> tuple[Layer, ...]:
    """Every layer of a wall."""
    rows = course_table(sheet, wall).rows
    known: dict[str, Sequence[object]] = {
        "rain": [row["rain share"] for row in rows],
        "sun": [row["ultraviolet share"] for row in rows],
        "finish": [value / YEAR for value in _values(sheet, wall, "finish by course")],
        "decay": _values(sheet, wall, "decay by course"),
    }
    whole = {
        "rain": _whole(sheet, wall, "rain share", percent),
        "sun": _whole(sheet, wall, "ultraviolet share", percent),
        "finish": _whole(sheet, wall, "likely finish life", lambda value: years(value / YEAR)),
        "decay": _whole(sheet, wall, "decay exposure", plain),
    }
    told = {"rain": percent, "sun": percent, "finish": years, "decay": plain}
    needs = {"rain": "courses", "sun": "course sun", "finish": "finish by course", "decay": "decay by course"}
    found = []
    for name in NAMES:
        values = tuple(float(value) if isinstance(value, float | int) else None for value in known[name])
        missing = "" if any(value is not None for value in values) else _missing(sheet, wall, needs[name])
        found.append(Layer(name, scales()[name].title, scales()[name], values, told[name], whole[name], missing))
    return tuple(found)


def _values(sheet: Sheet, wall: Facts, name: str) -> list[float]:
    found = sheet.quantity(wall, name)
    return [float(value) for value in found.value] if isinstance(found, Quantity) else []


def _whole(sheet: Sheet, wall: Facts, name: str, told: Callable[[float], str]) -> str:
    found = sheet.quantity(wall, name)
    return told(float(found.value)) if isinstance(found, Quantity) else ""


def _missing(sheet: Sheet, wall: Facts, name: str) -> str:
    found = sheet.quantity(wall, name)
    if isinstance(found, Quantity):
        return "not known for its courses"
    wants = ", ".join(f"{one.setting} of {one.element}" for one in found.missing)
    return f"needs {wants}" if wants else found.reason or "does not apply"
