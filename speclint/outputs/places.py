"""One wall of a plan in the open, as drawn, and under a porch: what cover alone does to it."""

from __future__ import annotations

from dataclasses import replace
from typing import Any

from speclint.measures.facts import Facts, Sheet
from speclint.model.element import Given
from speclint.model.porch import Porch
from speclint.model.wall import Wall
from speclint.outputs.letter import Line, Part
from speclint.quantity import Quantity
from speclint.units import System

DEPTH, EDGE = 3.048, 0.9  # m, and the height of its roof over that of the wall: a porch of ten feet; ours
WIDE, COLUMN = 34, 24
TOLD = (
    ("rain on wall", "driving rain on the wood a year"),
    ("rain exposure", "against a bare wall of the lot"),
    ("ultraviolet share", "light against a bare noon wall"),
    ("likely finish life", "first coat lasts"),
    ("decay exposure", "exposure to decay, worst course"),
    ("decay margin", "against what the wood resists"),
)


def placed(sheet: Sheet, wall: Facts) -> dict[str, Sheet]:
    """The plan with a wall in the open, as drawn, and under a porch along all of it.

    Raises:
        TypeError: If the element is no wall.
    """
    element = wall.element
    if not isinstance(element, Wall):
        raise TypeError(f"wanted a wall; got {wall.label}")
    return {
        "in the open": _with(sheet, element, 0.0, None),
        "as drawn": sheet,
        "under a porch": _with(sheet, element, None, _porch(element)),
    }


def _porch(wall: Wall) -> Porch | None:
    if wall.length is None or wall.height is None:
        return None
    values = {"along": (wall.label,), "depth": DEPTH, "length": wall.length, "roof height": EDGE * wall.height}
    values |= {"roof pitch": 0.1, "hung on": "posts", "from left": 0.0}
    given = {name: Given(wall.place, "", "assumed by speclint", "to compare") for name in values}
    fields: dict[str, Any] = {name.replace(" ", "_"): value for name, value in values.items()}
    return Porch(name="to-compare", place=wall.place, given=given, **fields)


def _with(sheet: Sheet, wall: Wall, overhang: float | None, porch: Porch | None) -> Sheet:
    """The plan with another roof edge over one wall and no porch along it but the given one."""
    elements = dict(sheet.home.elements)
    changes: dict[str, Any] = {"sheltered_by": None}
    if overhang is not None:
        told = Given(wall.place, "", "assumed by speclint", "to compare")
        changes |= {"overhang": overhang, "given": {**wall.given, "overhang": told}}
    elements[wall.label] = replace(wall, **changes)
    for label, other in sheet.home.elements.items():
        if isinstance(other, Porch) and wall.label in (other.along or ()):
            left = tuple(one for one in other.along or () if one != wall.label)
            elements[label] = replace(other, along=left)
    if porch is not None:
        elements[porch.label] = porch
    return Sheet(replace(sheet.home, elements=elements), sheet.records)


def places_lines(sheet: Sheet, wall: Facts, system: System) -> list[Line]:
    """What cover alone does to a wall, in columns."""
    plans = placed(sheet, wall)
    lines: list[Line] = [
        (Part(f"{wall.label}: in the open, as drawn, and under a porch of 10 ft along all of it", "title"),)
    ]
    lines.append((Part(" " * WIDE), *(Part(f"{name:<{COLUMN}}", "label") for name in plans)))
    for name, words in TOLD:
        cells = []
        for plan in plans.values():
            found = plan.quantity(plan[wall.label], name)
            shown = found.shown(system) if isinstance(found, Quantity) else "not known"
            cells.append(Part(f"{shown:<{COLUMN}}"))
        lines.append((Part(f"  {words:<{WIDE - 2}}", "element"), *cells))
    lines.append((Part("  exposure to decay is a relative figure: 1 is bare spruce in the rain of Helsinki", "quiet"),))
    return lines
