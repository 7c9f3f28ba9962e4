"""How high above the ground the stops of water lie."""

from __future__ import annotations

from speclint.measures.facts import Sheet
from speclint.relations.web import Node


def height_of(sheet: Sheet, node: Node) -> float | None:
    """Height of an eave, a gutter, a deck or the ground above the grade at the wall. [m]

    Nothing where the plan does not tell it, or where a part has no one height.
    """
    if node.kind in ("ground", "away", "stays"):
        return 0.0
    facts = sheet.facts.get(node.element)
    if facts is None:
        return None
    if node.kind == "deck" or node.name == f"rim of {facts.label}":
        return _float(facts["height"])
    if node.kind == "gutter":
        served = facts["on"]
        wall = facts["over"]
        return None if served is None else _edge(sheet, served.label, wall.label if wall else "")
    if node.kind == "eave":
        _, _, wall = node.name.partition(" over ")
        return _edge(sheet, node.element, wall)
    return None


def _edge(sheet: Sheet, label: str, wall: str) -> float | None:
    """The drip edge of a roof over a wall, or of a porch roof."""
    facts = sheet[label]
    if facts.element.kind == "porch":
        walls = facts["along"] or ()
        parts = [walls[0]["starts"] if walls else None, facts["roof height"], facts["depth"], facts["roof pitch"]]
        if None in parts:
            return None
        starts, height, depth, pitch = parts
        return float(starts + height - depth * pitch)
    if wall not in sheet.facts:
        return None
    starts, height = sheet[wall]["starts"], sheet[wall]["height"]
    return None if starts is None or height is None else float(starts + height - (facts["edge drop"] or 0.0))


def _float(value: object) -> float | None:
    return float(value) if isinstance(value, float | int) else None
