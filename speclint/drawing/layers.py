"""What an elevation can be shaded by: driving rain, sun, the life of the finish, exposure to decay."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from functools import lru_cache

from speclint.drawing.shades import Scale, scale
from speclint.drawing.zones import Zone, told_apart, zones_of
from speclint.measures.course_table import course_table
from speclint.measures.facts import Facts, Sheet
from speclint.quantity import Quantity
from speclint.science.finish_factors import MIDDLE_SUN, weather_wear

YEAR = 365.25
Row = tuple[float | None, ...]


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
        zones: The parts of the wall that are shaded apart; none where the whole course has one amount.
        parts: For each course, an amount for each zone; empty where its zones do not differ.
    """

    name: str
    title: str
    scale: Scale
    values: Row
    told: Callable[[float], str]
    whole: str
    missing: str = ""
    zones: tuple[Zone, ...] = ()
    parts: tuple[Row, ...] = ()


NAMES = ("rain", "sun", "finish", "decay")
WHOLE = {
    "rain": "mean of the wall",
    "sun": "mean of the wall",
    "finish": "mean of the wall",
    "decay": "worst course of the wall",
}


def percent(value: float) -> str:
    """A share in percent."""
    return f"{100 * value:.0f}%"


def years(value: float) -> str:
    """A life in years."""
    return f"{value:.1f}"


def plain(value: float) -> str:
    """A number with two digits behind the point."""
    return f"{value:.2f}"


@lru_cache(maxsize=1)
def scales() -> dict[str, Scale]:
    """The scale of each layer, the same for every wall; the bounds are ours."""
    return {
        "rain": scale(
            "driving rain that strikes, against a bare wall here",
            (0.25, 0.50, 0.75, 1.00, 1.25, 1.50),
            plain,
        ),
        "sun": scale(
            "ultraviolet light, against an open wall to the noon sun",
            (0.15, 0.30, 0.45, 0.60, 0.75, 0.90),
            percent,
        ),
        "finish": scale(
            "years until the coat is worn, likely", (2, 3, 4, 5, 6, 8), lambda value: f"{value:.0f}",
            worse_high=False, digits=1,
        ),
        "decay": scale(
            "exposure to decay; 1 is bare spruce standing open in the rain of Helsinki",
            (0.50, 1.00, 1.50, 2.00, 2.50, 3.00),
            plain,
        ),
    }  # fmt: skip


def layers_of(sheet: Sheet, wall: Facts) -> tuple[Layer, ...]:
    """Every layer of a wall; found once for a sheet."""
    key = f"layers of {wall.label}"
    if key not in sheet.drawn:
        sheet.drawn[key] = _layers(sheet, wall)
    found: tuple[Layer, ...] = sheet.drawn[key]
    return found


def _layers(sheet: Sheet, wall: Facts) -> tuple[Layer, ...]:
    rows = course_table(sheet, wall).rows
    against = _against(wall)
    known: dict[str, Sequence[object]] = {
        "rain": [_times(row["rain share"], against) for row in rows],
        "sun": [row["ultraviolet share"] for row in rows],
        "finish": [value / YEAR for value in _values(sheet, wall, "finish by course")],
        "decay": _values(sheet, wall, "decay by course"),
    }
    whole = {
        "rain": _whole(sheet, wall, "rain exposure", plain),
        "sun": _whole(sheet, wall, "ultraviolet share", percent),
        "finish": _whole(sheet, wall, "likely finish life", lambda value: f"{years(value / YEAR)} years"),
        "decay": _whole(sheet, wall, "decay exposure", plain),
    }
    told = {"rain": plain, "sun": percent, "finish": years, "decay": plain}
    needs = {"rain": "rain exposure", "sun": "course sun", "finish": "finish by course", "decay": "decay by course"}
    zones = zones_of(sheet, wall)
    middles = [(float(row["bottom"] or 0) + float(row["top"] or 0)) / 2 for row in rows]
    found = []
    for name in NAMES:
        values = tuple(float(value) if isinstance(value, float | int) else None for value in known[name])
        missing = "" if any(value is not None for value in values) else _missing(sheet, wall, needs[name])
        parts = _parts(wall, name, values, zones, middles)
        apart = zones if any(parts) else ()
        title = scales()[name].title
        found.append(Layer(name, title, scales()[name], values, told[name], whole[name], missing, apart, parts))
    return tuple(found)


def _against(wall: Facts) -> float | None:
    """Rain driven at the wall against the mean open wall of the lot."""
    free, mean = wall["free driving rain"], wall["mean open wall"]
    return float(free) / float(mean) if free is not None and mean else None


def _times(share: object, factor: float | None) -> float | None:
    return share * factor if isinstance(share, float | int) and factor is not None else None


def _parts(wall: Facts, name: str, values: Row, zones: tuple[Zone, ...], middles: list[float]) -> tuple[Row, ...]:
    """The amounts of a layer for each course and zone; decay is told for whole courses only."""
    against = _against(wall)
    if name == "decay" or not zones or against is None or len(values) != len(middles):
        return ()
    found: list[Row] = []
    for at, middle in enumerate(middles):
        apart = told_apart(zones, middle) and all(at < len(zone.rain) for zone in zones)
        found.append(tuple(_of_zone(wall, name, zone, at, values, zones, against) for zone in zones) if apart else ())
    return tuple(found)


def _of_zone(
    wall: Facts, name: str, zone: Zone, at: int, values: Row, zones: tuple[Zone, ...], against: float
) -> float | None:
    if name == "rain":
        return zone.rain[at] * against
    light = zone.light[at] if at < len(zone.light) else None
    if name == "sun" or light is None:
        return light
    life, wear = values[at], [_wear(wall, one, at, against) for one in zones]
    wide = [one.right - one.left for one in zones]
    mean = sum(one * width for one, width in zip(wear, wide, strict=True)) / sum(wide)
    return None if life is None else life * mean / wear[zone.number - 1]


def _wear(wall: Facts, zone: Zone, at: int, against: float) -> float:
    """Wear of a coat on a course of a zone, as for the courses of a wall."""
    return weather_wear(zone.light[at] / MIDDLE_SUN, zone.rain[at] * against, str(wall["colour"] or "medium"))


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
