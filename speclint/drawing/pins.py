"""Where a finding is pinned on an elevation."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from speclint.drawing.wall_frame import WallFrame, left_of
from speclint.measures.facts import Facts
from speclint.ruling import Review, comments

STEP = 21.0  # pixels between pins on one spot
ROW = 8  # pins side by side before a new row is begun


@dataclass(frozen=True, slots=True)
class Pin:
    """A finding about one element, by the number that the review gives it."""

    number: int
    element: str
    title: str
    hold: bool


def pins_of(review: Review) -> tuple[Pin, ...]:
    """A pin for each finding and each element that it is about."""
    found: dict[tuple[int, str], Pin] = {}
    for comment in comments(review.rulings):
        for ruling in comment.rulings:
            pin = Pin(comment.number, ruling.element, ruling.title or ruling.rule, ruling.grade == "hold")
            found.setdefault((pin.number, pin.element), pin)
    return tuple(found.values())


def spots(frame: WallFrame, pins: tuple[Pin, ...]) -> Iterator[tuple[Pin, tuple[float, float], tuple[float, float]]]:
    """Each pin that belongs on an elevation, its point in metres, and its shift in pixels from others on the point."""
    taken: dict[tuple[float, float], int] = {}
    for pin in pins:
        at = _point(frame, pin.element)
        if at is None:
            continue
        place = (round(at[0], 2), round(at[1], 2))
        nth = taken.get(place, 0)
        taken[place] = nth + 1
        yield pin, at, (STEP * (nth % ROW), STEP * (nth // ROW))


def _point(frame: WallFrame, label: str) -> tuple[float, float] | None:
    """Where the elements of a plan are on this elevation; nothing where they are not on it."""
    wall = frame.wall
    part = wall.sheet.facts.get(label)
    if part is None:
        return None
    eave = frame.starts + frame.height
    kind = part.element.kind
    if part is wall:
        return 0.35, frame.starts + 0.62 * frame.height
    if kind in ("window", "door"):
        own = [one for one in frame.openings if one.label == label]
        return (own[0].left + own[0].width / 2, frame.starts + own[0].sill + 0.3) if own else None
    if kind == "corner" and wall in (part["of"] or ()):
        others = [other for other in part["of"] or () if other is not wall]
        x = -0.15 if others and left_of(wall, others[0]) else frame.length + 0.05
        return x, frame.starts + 0.3 * frame.height
    if kind in ("purlin", "chase", "stone", "planting", "obstruction", "junction") and _touches(part, wall):
        places = {
            "purlin": (frame.length / 2, frame.starts + frame.peak - 0.35),
            "chase": (0.8 * frame.length, frame.starts + 0.35 * frame.height),
            "stone": (0.12 * frame.length, max(0.12, frame.starts * 0.5)),
            "planting": (0.62 * frame.length, 0.12),
            "obstruction": (0.9 * frame.length, 0.12),
            "junction": (0.3 * frame.length, frame.starts + 0.86 * frame.height),
        }
        return places[kind]
    if kind in ("roof", "chimney"):
        roof = part if kind == "roof" else part["roof"]
        eaves = [one for one in (roof["covers"] if roof is not None else None) or () if one["gable"] != "yes"]
        if wall not in (eaves or (roof["covers"] if roof is not None else None) or ()):
            return None
        return (0.75 if kind == "roof" else 0.5) * frame.length, max(
            eave, frame.ridge - 0.5
        ) if not frame.gable else eave
    if kind in ("gutter", "downspout"):
        gutter = part if kind == "gutter" else part["gutter"]
        if gutter is None or gutter["over"] is not wall:
            return None
        return (0.55 * frame.length, eave) if kind == "gutter" else (frame.length - 0.15, 0.45)
    return _before(frame, part, eave)


def _touches(part: Facts, wall: Facts) -> bool:
    return any(part[name] is wall or (isinstance(part[name], tuple) and wall in part[name]) for name in _named(part))


def _named(part: Facts) -> list[str]:
    from speclint.model.element import settings_of

    return [name for name, setting in settings_of(type(part.element)).items() if setting.dimension == "part"]


def _before(frame: WallFrame, part: Facts, eave: float) -> tuple[float, float] | None:
    """What stands before the wall: porches, decks, and what carries and guards them."""
    wall, kind = frame.wall, part.element.kind
    porches, decks = wall["porches"], wall["decks"]
    if part in porches:
        return 0.5 * frame.length, frame.starts + (part["roof height"] or 0.85 * frame.height) - 0.25
    if part in decks:
        return 0.4 * frame.length, (part["height"] or 0.3) - 0.14
    places = {
        "post": (0.22 * frame.length, 0.45),
        "beam": (0.66 * frame.length, 0.8 * eave),
        "ledger": (0.5 * frame.length, 0.8 * max(0.3, frame.starts)),
        "rail": (0.72 * frame.length, frame.starts + 0.6),
        "stair": (0.5 * frame.length, 0.12),
    }
    near = [other for name in ("porches", "decks") for other in part[name]]
    if kind == "post":
        near += [other for beam in part["beams"] for other in (beam["under"] or ())]
    return places[kind] if kind in places and any(other in porches or other in decks for other in near) else None
