"""Where a settling part meets one that stands still: how it is held there, and whether that leaves room enough."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

from speclint.measures.facts import Facts, Sheet
from speclint.quantity import Quantity

How = Literal["fixed", "slides", "adjusts", "not stated"]
HELD: dict[str, How] = {"fixed": "fixed", "slip": "slides", "keyed": "fixed", "slip gap": "slides", "socket": "fixed"}
SLACK = 0.001  # a millimetre


@dataclass(frozen=True, slots=True)
class Moving:
    """A part beside one that settles.

    Attributes:
        part: Label of the part.
        past: Label of what it meets.
        how: How it is held there.
        down: How far the one comes down past the other, with what is to be left in hand. [m]
        room: How far it can: a gap, a slip lap or the travel of an adjuster; nothing where it is not known. [m]
        enough: Whether there is room enough; nothing where it is not known.
    """

    part: str
    past: str
    how: How
    down: float
    room: float | None
    enough: bool | None


def moving_of(sheet: Sheet) -> list[Moving]:
    """Every part of a home that something settles past, in the order of the plan."""
    found = [moving for facts in sheet.facts.values() if (moving := _moving(facts)) is not None]
    return [moving for moving in found if moving.down > SLACK]


def _moving(part: Facts) -> Moving | None:
    kind = part.element.kind
    if kind in ("window", "door"):
        wall = part["wall"]
        if wall is None or wall["stacked"] != "yes":
            return None
        held = HELD.get(part["frame"], "not stated")
        return _weighed(part, wall.label, held, _number(part, "headspace need"), part["headspace"])
    if kind in ("junction", "chimney"):
        past = part["wall"] if kind == "junction" else part["roof"]
        slip = part["slip"]
        how: How = "not stated" if slip is None else "slides" if slip > 0 else "fixed"
        return _weighed(part, past.label if past else "the house", how, _number(part, "slip need"), slip)
    if kind == "post":
        adjuster = part["adjuster"]
        how = "not stated" if adjuster is None else "fixed" if adjuster == "none" else "adjusts"
        beside = " and ".join(porch.label for porch in part["porches"]) or "what it carries"
        return _weighed(part, beside, how, _number(part, "travel need"), part["travel"] if how == "adjusts" else 0.0)
    if kind in ("roof", "beam", "corner"):
        uneven = _number(part, "uneven settling")
        if kind == "corner" and part["slides"] == "yes":
            return None if uneven is None else Moving(part.label, "the walls it joins", "slides", uneven, None, True)
        return _weighed(part, "the walls it joins" if kind == "corner" else "its own supports", "fixed", uneven, 0.0)
    return _beside_wall(part)


def _beside_wall(part: Facts) -> Moving | None:
    """A ledger, stone, stair or rail at a settling wall: it slides or it does not, and no size says how far."""
    kind = part.element.kind
    if kind == "ledger":
        how: How = {"yes": "slides", "no": "fixed"}.get(part["slots"], "not stated")  # type: ignore[assignment]
        down = _number(part, "settling past") if part["on"] in ("stacked logs", "timber frame") else None
        past = "the wall behind it"
    elif kind == "stone":
        how, down, past = HELD.get(part["joined to logs"], "not stated"), _number(part, "settling past"), "the logs"
        if part["joined to logs"] == "apart":
            return None
    elif kind == "stair" and part["top fixed to"] == "settling wall":
        deck = part["deck"]
        walls = (deck["along"] if deck is not None else None) or ()
        settles = [value for wall in walls if (value := _number(wall, "settlement")) is not None]
        how, down, past = "fixed", max(settles, default=None), "the wall at its top"
    elif kind == "rail" and part["into wall"] == "socket":
        deck = part["deck"]
        walls = (deck["along"] if deck is not None else None) or ()
        settles = [value for wall in walls if (value := _number(wall, "settlement")) is not None]
        how, down, past = "fixed", max(settles, default=None), "the wall at its end"
    else:
        return None
    if down is None:
        return None
    return Moving(part.label, past, how, down, None, {"slides": True, "fixed": False}.get(how))


def _weighed(part: Facts, past: str, how: How, down: float | None, room: float | None) -> Moving | None:
    if down is None:
        return None
    enough = None if room is None or how == "not stated" else room + SLACK >= down and how != "fixed"
    return Moving(part.label, past, how, down, room, enough)


def _number(part: Facts, name: str) -> float | None:
    found = part.sheet.quantity(part, name)
    return float(found.value) if isinstance(found, Quantity) else None
