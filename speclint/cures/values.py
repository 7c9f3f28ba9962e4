"""The values that a setting may be changed to, in the increments of the trade and in the writer's own units."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

from speclint.language.items import Items
from speclint.language.parse import parse
from speclint.model.settings import Section, Setting
from speclint.model.values import BadValue, read_value
from speclint.units import INCH, System, feet_and_inches

MOST_DOUBLINGS = 9
# Increments in which a designer draws, in inches and in millimetres; ours.
INCREMENTS: dict[str, tuple[float, float]] = {
    "eaves": (2, 50), "rakes": (2, 50), "overhang": (2, 50), "depth": (6, 150), "hood": (2, 50),
    "starts": (4, 100), "top": (4, 100), "above soil": (1, 25), "headspace": (0.25, 5), "slip": (0.25, 5),
    "distance": (6, 150), "ends": (1, 25), "lowest ends": (1, 25), "reach": (1, 25), "cricket": (2, 50),
    "ice barrier": (6, 150), "peak": (12, 300), "cavity": (0.25, 5), "gap": (0.125, 3), "board gap": (0.125, 1),
    "joint": (0.125, 3), "foot above grade": (1, 25), "height": (6, 150), "sill": (2, 50), "below wood": (0.25, 5),
}  # fmt: skip
# How far from what is drawn a change still counts as a practical one, in metres; ours.
FARTHEST: dict[str, float] = {
    "eaves": 1.22, "rakes": 1.22, "overhang": 1.22, "hood": 1.22, "starts": 0.92, "top": 0.92, "depth": 1.83,
    "inset": 0.61, "distance": 3.05,
}  # fmt: skip
PLAIN_FARTHEST = 1.53
# Phrases that take a protection away, which is no cure.
TAKES_AWAY = {"finish": ("none", "clear film"), "treatment": ("none",), "head": ("none",), "pan": ("none",)}
PLAIN: dict[str, tuple[float, float]] = {"length": (1, 25)}
SECTIONS = ("4x4", "6x6", "8x8", "10x10", "12x12")


def read(setting: Setting, text: str) -> Any:
    """The value that a text states, or nothing where the setting cannot have it."""
    try:
        statement = parse(text, "").statements[0]
        items = Items(statement)
        value = read_value(setting, items)
    except (BadValue, IndexError):
        return None
    return value if items.peek() is None else None


def steps(setting: Setting, present: Any, written: str, system: System) -> list[Callable[[int], str]]:
    """Ways of going from a number, up and down: each gives the text that stands some increments away.

    Args:
        setting: The setting.
        present: Its value in SI; nothing where none is stated.
        written: The words of that value.
        system: The units in which the plan is written.

    Returns:
        Two functions of the number of increments, from 1 on; none where the setting takes no such number.
    """
    form = _form(setting, written or setting.example, system)
    if form is None:
        return []
    each, text_of = form
    start = float(present) / each if isinstance(present, float | int) else 0.0

    def way(sign: int) -> Callable[[int], str]:
        return lambda by: text_of((_floor(start) + by if sign > 0 else _ceiling(start) - by) * each)

    return [way(1), way(-1)]


def practical(setting: Setting, value: Any, present: Any) -> bool:
    """Whether a change of a setting is small enough to be one, and does not turn its sense about."""
    if not isinstance(value, float | int):
        return value not in TAKES_AWAY.get(setting.name, ())
    start = float(present) if isinstance(present, float | int) else 0.0
    if value < 0 <= start or (setting.dimension == "duration" and value <= 0):
        return False
    return setting.dimension != "length" or abs(value - start) <= FARTHEST.get(setting.name, PLAIN_FARTHEST)


def choices(setting: Setting) -> tuple[str, ...]:
    """The phrases or sections that a setting may have, in the order of the language."""
    if setting.dimension in ("choice", "yes or no"):
        return tuple(setting.choices or ())
    return SECTIONS if setting.dimension == "section" else ()


def same(one: Any, other: Any) -> bool:
    """Whether two values of a setting are one."""
    if isinstance(one, Section) and isinstance(other, Section):
        return one[:2] == other[:2]
    if isinstance(one, float | int) and isinstance(other, float | int):
        return abs(one - other) < 1e-9
    return bool(one == other)


def _floor(number: float) -> int:
    return int((number + 1e-6) // 1)


def _ceiling(number: float) -> int:
    return -_floor(-number)


def _form(setting: Setting, written: str, system: System) -> tuple[float, Callable[[float], str]] | None:
    """The increment of a setting in SI, and how a value is written."""
    match setting.dimension:
        case "length":
            inches, millimetres = INCREMENTS.get(setting.name, PLAIN["length"])
            if _metric(written, system):
                return millimetres / 1000, lambda value: f"{value * 1000:.0f} mm"
            if written.endswith('"') and "'" not in written:
                return inches * INCH, lambda value: _inches(value / INCH)
            return inches * INCH, lambda value: feet_and_inches(value / INCH)
        case "slope" if ":" in written or "pitch" in setting.name:
            return 1 / 12, lambda value: f"{value * 12:.0f}:12"
        case "slope" if "deg" not in written:
            return 0.005, lambda value: f"{value * 100:.1f}%".replace(".0%", "%")
        case "percent":
            return 1.0, lambda value: f"{value:.0f}%"
        case "count":
            return 1.0, lambda value: f"{value:.0f}"
        case "duration" if "year" in written:
            return 365.25, _years
        case "duration":
            return 1.0, lambda value: f"{value:.0f} days"
        case "pressure" if "psi" in written:
            return 100 * 6894.757293168, lambda value: f"{value / 6894.757293168:.0f} psi"
    return None


def _metric(written: str, system: System) -> bool:
    if written.rstrip().endswith(("mm", "cm", "m")):
        return True
    return system == "metric" and not written.endswith(('"', "'"))


def _inches(inches: float) -> str:
    """A length in inches alone, as the plan wrote it before."""
    sixteenths = round(inches * 16)
    whole, part = divmod(abs(sixteenths), 16)
    sign = "-" if sixteenths < 0 else ""
    if not part:
        return f'{sign}{whole}"'
    divisor = 16
    while part % 2 == 0:
        part, divisor = part // 2, divisor // 2
    return f'{sign}{whole} {part}/{divisor}"' if whole else f'{sign}{part}/{divisor}"'


def _years(days: float) -> str:
    years = round(days / 365.25)
    return f"{years} year" if years == 1 else f"{years} years"
