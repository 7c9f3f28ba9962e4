"""What the review took where the plan says nothing, and that no default of a setting tells."""

from __future__ import annotations

from speclint.measures.facts import Facts, Sheet
from speclint.model.home import Assumed
from speclint.quantity import Quantity


def taken(sheet: Sheet) -> tuple[Assumed, ...]:
    """Settling and surface of walls that the rules asked for and that the plan does not state."""
    walls = sheet.of_kind("wall")
    return (*(one for wall in walls for one in _settling(wall)), *(one for wall in walls for one in _surface(wall)))


def _settling(wall: Facts) -> list[Assumed]:
    found = wall.told.get("settlement")
    if wall.element.given.get("settling") is not None or not isinstance(found, Quantity) or not found.value:
        return []
    height = wall["height"]
    if not height:
        return []
    why = "what builders allow or the log standard reckons, whichever is more; the shop's own figure replaces it"
    return [Assumed(wall.label, "settling", f"{found.value / height * 100:.2g}%", why, wall.element.place)]


def _surface(wall: Facts) -> list[Assumed]:
    found = wall.told.get("wood surface")
    if wall.element.given.get("surface") is not None or not isinstance(found, Quantity):
        return []
    why = "round logs are taken as peeled, other wood as planed, where the plan does not say"
    return [Assumed(wall.label, "surface", str(found.value), why, wall.element.place)]
