"""The lines of a main roof, the same in every view of a house: its drip edges and its ridge.

Walls that are equally high stand on one level, whatever the ground before each of them does: heights are then counted
from the lowest wood. Where it is the tops above grade that are equal instead, they are counted from grade.
"""

from __future__ import annotations

from dataclasses import dataclass

from speclint.measures.facts import Facts, Sheet
from speclint.quantity import Quantity

STARTS = 0.3  # height of the lowest wood where the plan does not say [m]
REACH = 0.3  # reach of the roof where it is not known [m]
SAME = 0.001  # metres: heights that differ by less are the same
LEVEL = "drip edge level with the top of the wall"


@dataclass(frozen=True, slots=True)
class RoofLines:
    """Drip edges and ridge of a roof.

    Attributes:
        from_wood: Whether heights are above the lowest wood; above grade otherwise.
        edges: Height of the drip edge over each wall with an eave, by its label. [m]
        reaches: How far the roof reaches past the face of each of these walls. [m]
        ridge: Height at which the undersides of its slopes meet; nothing where it is not known. [m]
        pitch: Of its slopes; 0 where it is not known.
        high: Labels of walls at the high side of a shed.
        taken: What was taken because the plan does not say.
    """

    from_wood: bool
    edges: dict[str, float]
    reaches: dict[str, float]
    ridge: float | None
    pitch: float
    high: frozenset[str]
    taken: tuple[str, ...]


def roof_lines(sheet: Sheet, roof: Facts) -> RoofLines:
    """The lines of a roof; found once for a sheet."""
    key = f"lines of {roof.label}"
    if key not in sheet.drawn:
        sheet.drawn[key] = _lines(sheet, roof)
    found: RoofLines = sheet.drawn[key]
    return found


def starts_of(wall: Facts) -> float:
    """Height of the lowest wood above grade, as stated or taken. [m]"""
    return float(STARTS if wall["starts"] is None else wall["starts"])


def reach_of(sheet: Sheet, wall: Facts) -> float | None:
    """Reach of the roof past the face of a wall; nothing where it is not known. [m]"""
    found = sheet.quantity(wall, "roof reach")
    return float(found.value) if isinstance(found, Quantity) else None


def _lines(sheet: Sheet, roof: Facts) -> RoofLines:
    """The edge hangs where the plan says, or else level with the wall as the rain model takes it."""
    walls = [wall for wall in roof["covers"] or () if wall["height"] is not None]
    eaves = [wall for wall in walls if wall["gable"] != "yes"]
    gables = [wall for wall in walls if wall["gable"] == "yes"]
    drop = roof["edge drop"]
    heights = [float(wall["height"]) for wall in walls]
    tops = [starts_of(wall) + height for wall, height in zip(walls, heights, strict=True)]
    from_wood = not walls or max(heights) - min(heights) <= max(tops) - min(tops) + SAME
    hanging = {
        wall.label: (height if from_wood else top) - (drop or 0.0)
        for wall, height, top in zip(walls, heights, tops, strict=True)
    }
    edges = {wall.label: hanging[wall.label] for wall in eaves}
    reaches = {label: _reach(sheet, sheet.facts[label]) for label in edges}
    shed = roof["form"] == "shed"
    low = [wall for wall in eaves if not shed or roof["low side"] is None or wall is roof["low side"]] or eaves
    high = frozenset(wall.label for wall in eaves if wall not in low)
    pitch = roof["pitch"] if roof["pitch"] is not None else _pitch_of(gables) if not shed else None
    run = roof["run"]
    if run is None and not shed:
        run = next((wall["length"] / 2 for wall in gables if wall["length"]), None)
    ridge = None
    if pitch is not None and run is not None:
        found = [edges[wall.label] + pitch * (run + reaches[wall.label]) for wall in low]
        out = float(roof["eaves"] or 0.0)
        found += [hanging[wall.label] + pitch * (run + out) for wall in gables if not low]
        ridge = max(found, default=None)
    taken = () if drop is not None else (LEVEL,)
    return RoofLines(from_wood, edges, reaches, ridge, float(pitch or 0.0), high, taken)


def _reach(sheet: Sheet, wall: Facts) -> float:
    found = reach_of(sheet, wall)
    return REACH if found is None else found


def _pitch_of(gables: list[Facts]) -> float | None:
    """The pitch that the peak of a gable gives."""
    rises = (
        (wall["peak"] - wall["height"]) / (wall["length"] / 2)
        for wall in gables
        if wall["peak"] is not None and wall["length"]
    )
    return next((float(rise) for rise in rises if rise > 0), None)
