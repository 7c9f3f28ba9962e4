"""Where a finding is pinned on an elevation: at its fault, beside the drawing where the whole wall is meant."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from functools import lru_cache

from speclint.drawing.before import porch_heights
from speclint.drawing.gutters import IN, edge_of
from speclint.drawing.wall_frame import Opening, WallFrame, at_end, left_of
from speclint.measures.facts import Facts
from speclint.model.element import Element, settings_of
from speclint.ruling import Review, comments

Point = tuple[float, float]
CARRYING = ("post", "beam", "ledger", "rail")  # what carries and guards porches and decks
ONE_END = 0.08  # of the length of a wall: where a fault of a whole edge is pinned
# words of the name of a rule that tell where on a wall its fault is; the first that is found counts
PLACES = (
    ("base", ("sill", "grade", "splash", "banked", "ground", "mulch", "hard-surface", "inspection-strip", "paving")),
    ("eave", ("eave", "overhang")),
    ("rake", ("rake",)),
    ("joint", ("joint", "kerf", "chinking", "trim")),
    ("porch", ("upper-wall-above-porch",)),
)


@dataclass(frozen=True, slots=True)
class Pin:
    """A finding about one element, by the number that the review gives it, and the rule that found it."""

    number: int
    element: str
    title: str
    hold: bool
    rule: str = ""


@dataclass(frozen=True, slots=True)
class Spot:
    """A pin that belongs on an elevation.

    Attributes:
        pin: The pin.
        at: The point of its fault [m]; nothing where it is meant of the whole wall, or its place is not stated.
        drawn: Whether the element is drawn, or is the wall itself.
    """

    pin: Pin
    at: Point | None
    drawn: bool = True


def pins_of(review: Review) -> tuple[Pin, ...]:
    """A pin for each finding and each element that it is about."""
    found: dict[tuple[int, str], Pin] = {}
    for comment in comments(review.rulings):
        for ruling in comment.rulings:
            hold = ruling.grade == "hold"
            pin = Pin(comment.number, ruling.element, ruling.title or ruling.rule, hold, ruling.rule)
            found.setdefault((pin.number, pin.element), pin)
    return tuple(found.values())


def spots(frame: WallFrame, pins: tuple[Pin, ...]) -> Iterator[Spot]:
    """Each pin that belongs on an elevation."""
    for pin in pins:
        part = frame.wall.sheet.facts.get(pin.element)
        if part is None:
            continue
        found = _spot(frame, part, pin)
        if found is not None:
            yield found


def _spot(frame: WallFrame, part: Facts, pin: Pin) -> Spot | None:
    """The spot of a pin about a part; nothing where the part is not of this elevation."""
    wall, kind = frame.wall, part.element.kind
    if part is wall:
        return Spot(pin, _on_wall(frame, pin.rule))
    if kind in ("window", "door"):
        own = [one for one in frame.openings if one.label == part.label]
        return Spot(pin, _on_opening(frame, own[0], pin.rule)) if own else None
    if kind == "corner":
        return _on_corner(frame, part, pin) if wall in (part["of"] or ()) else None
    if kind in ("roof", "chimney"):
        return _over(frame, part, pin)
    if kind in ("gutter", "downspout"):
        gutter = part if kind == "gutter" else part["gutter"]
        if gutter is None or gutter["over"] is not wall:
            return None
        edge = edge_of(frame, gutter)
        if edge is None:
            return Spot(pin, None, False)
        left, right = (0.0, frame.length) if gutter["porch"] is None else edge[:2]
        return Spot(pin, (left + 0.55 * (right - left), edge[2]) if kind == "gutter" else (right - IN, 0.2))
    if kind in ("purlin", "stone", "planting", "chase", "obstruction", "junction"):
        return _beside(frame, part, pin) if touches(part, wall) else None
    return _before(frame, part, pin)


def _on_wall(frame: WallFrame, rule: str) -> Point | None:
    """The fault of a wall: at its base, its eave, its rake or a joint; nothing where the whole of it is meant."""
    place = next((place for place, words in PLACES if any(word in rule for word in words)), "")
    if place == "base":
        return (1 - ONE_END) * frame.length, frame.starts
    if place == "eave" and not frame.gable:
        return ONE_END * frame.length, frame.eave
    if place in ("rake", "eave") and frame.gable:
        up = frame.height + 0.4 * (frame.peak - frame.height)
        left, right = frame.half_width(up)
        return left if left > 0 else right, frame.starts + up
    if place == "joint" and len(frame.courses) > 2:
        return 0.5 * frame.length, frame.starts + frame.courses[1].bottom
    if place == "porch" and frame.wall["porches"]:
        high = max(porch["roof height"] or 0.0 for porch in frame.wall["porches"])
        return 0.3 * frame.length, frame.starts + high + 0.3
    return None


def _on_opening(frame: WallFrame, opening: Opening, rule: str) -> Point:
    """The head, the sill or the foot of an opening, or the roof that is missing over it."""
    middle, sill = opening.left + opening.width / 2, frame.starts + opening.sill
    if any(word in rule for word in ("sill", "pan", "threshold", "step", "snow")):
        return middle, sill
    if any(word in rule for word in ("head", "settling", "uncovered", "rain", "above")):
        return middle, sill + opening.height + 0.09 + opening.headspace / 2
    return middle, sill + opening.height / 2


def _on_corner(frame: WallFrame, corner: Facts, pin: Pin) -> Spot:
    """A corner at its log ends, at the foot where the lowest are meant; not drawn where no end of the wall is there."""
    others = [other for other in corner["of"] or () if other is not frame.wall]
    if others and not at_end(frame.wall, others[0]):
        return Spot(pin, None, False)
    side = 0 if others and left_of(frame.wall, others[0]) else 1
    reach, low = frame.ends[side], frame.low_ends[side]
    lowest = "lower" in pin.rule or (low > reach and "drip-line" in pin.rule)
    far = low if lowest else reach
    first = frame.courses[0].top / 2 if frame.courses else 0.0
    up = first if lowest else 0.55 * frame.height
    return Spot(pin, (-far if side == 0 else frame.length + far, frame.starts + up))


def _over(frame: WallFrame, part: Facts, pin: Pin) -> Spot | None:
    """A roof at its eave or rake; a chimney whose place is not stated beside the drawing."""
    wall = frame.wall
    roof = part if part.element.kind == "roof" else part["roof"]
    covered = (roof["covers"] if roof is not None else None) or ()
    eaves = [one for one in covered if one["gable"] != "yes"]
    if wall not in (eaves or covered):
        return None
    if part.element.kind == "chimney":
        return Spot(pin, None, False)
    return Spot(pin, (0.75 * frame.length, frame.eave))


def touches(part: Facts, wall: Facts) -> bool:
    """Whether a part names a wall."""
    return any(
        part[name] is wall or (isinstance(part[name], tuple) and wall in part[name])
        for name in _names_parts(type(part.element))
    )


@lru_cache(maxsize=64)
def _names_parts(model: type[Element]) -> tuple[str, ...]:
    return tuple(name for name, setting in settings_of(model).items() if setting.dimension == "part")


def _beside(frame: WallFrame, part: Facts, pin: Pin) -> Spot:
    """What is in or along the wall; a chase and an obstruction have no place along it that could be stated."""
    kind = part.element.kind
    if kind == "purlin":
        return Spot(pin, (frame.peak_x, frame.starts + frame.peak - 0.15))
    if kind == "stone":
        return Spot(pin, (0.2 * frame.length, frame.starts * 0.6))
    if kind == "planting":
        return Spot(pin, (0.62 * frame.length, 0.25))
    if kind == "junction":
        return _on_junction(frame, part, pin)
    return Spot(pin, None, False)


def _on_junction(frame: WallFrame, junction: Facts, pin: Pin) -> Spot:
    """Where the roof of a porch meets the wall; another roof that runs into the wall is not drawn before it."""
    porch = junction["porch"]
    if porch is None or porch not in frame.wall["porches"]:
        return Spot(pin, None, False)
    (left, right), (low, high) = frame.span_of(porch), porch_heights(frame, porch)
    dies = "kickout" in pin.rule
    return Spot(pin, (left + 0.3 * (right - left), high) if not dies else (right, low))


def _before(frame: WallFrame, part: Facts, pin: Pin) -> Spot | None:
    """What stands before the wall: porches, decks, and what carries and guards them."""
    wall, kind = frame.wall, part.element.kind
    for porch in wall["porches"]:
        if part is porch:
            left, right = frame.span_of(porch)
            return Spot(pin, (left + 0.6 * (right - left), _porch_edge(frame, porch)))
    if part in wall["decks"]:
        return Spot(pin, (0.45 * frame.length, frame.deck_top(part) - 0.14))
    near = [other for name in ("porches", "decks") for other in part[name]]
    if kind == "post":
        near += [other for beam in part["beams"] for other in (beam["under"] or ())]
    if not any(other in wall["porches"] or other in wall["decks"] for other in near):
        return None
    if kind == "stair":
        return Spot(pin, None, False)
    return (
        Spot(pin, _carrying(frame, part, pin.rule)) if kind in CARRYING else None
    )  # a step of the work stands nowhere


def _porch_edge(frame: WallFrame, porch: Facts) -> float:
    return porch_heights(frame, porch)[0]


def _carrying(frame: WallFrame, part: Facts, rule: str) -> Point:
    """A post at its foot or its top, a beam under its roof, a ledger at the joint with the wall, a rail on its deck."""
    wall, kind = frame.wall, part.element.kind
    above = next((porch for porch in wall["porches"]), None)
    edge = _porch_edge(frame, above) if above is not None else frame.eave
    left, right = frame.span_of(above) if above is not None else (0.0, frame.length)
    deck = next((deck for deck in wall["decks"]), None)
    floor = frame.deck_top(deck) if deck is not None else 0.3
    if kind == "post":
        foot = part["foot above grade"] or 0.0
        high = any(word in rule for word in ("adjuster", "top", "roof", "slender", "beam"))
        second = left + 0.2 + (right - left - 0.4) / max(1, int(part["count"] or 2) - 1)
        return second, (edge - 0.3 if high else foot)
    if kind == "beam":
        share = 1.0 if rule.startswith("beam-end") else 0.7
        return left + share * (right - left), edge - 0.2 if above in (part["under"] or ()) else floor - 0.3
    if kind == "ledger":
        carried = part["carries"]
        return 0.55 * frame.length, (edge if carried is above and above is not None else floor - 0.1)
    return left + 0.82 * (right - left), floor + 0.5 * (part["height"] or 0.9)
