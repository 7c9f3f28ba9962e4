"""The surfaces of a home that take a coat: how much of each, and how far up from where one stands to coat it."""

from __future__ import annotations

from collections.abc import Callable
from itertools import pairwise
from types import MappingProxyType
from typing import NamedTuple

from speclint.exposure.face import Face, bands
from speclint.measures.exposure import course_height
from speclint.measures.faces import face_of
from speclint.measures.facts import Facts, Working
from speclint.science.access import LADDER_OUT, access_class
from speclint.science.upkeep import face_surface_factor, log_surface_factor

NO_LADDER = 100.0  # m: a height that only a lift reaches, for wood over a roof
BOTH_SIDES = 2.0  # ours: surface of a rail over its length times its height: two sides, and the balusters' edges
FIRM = ("slab", "boards")  # floors of porches that one stands on


class Piece(NamedTuple):
    """A surface that is reached in one way.

    Attributes:
        area: Of it. [m2]
        height: Of its top above the ground or the floor beside it. [m]
        slope: Fall of the ground there. [-]
    """

    area: float
    height: float
    slope: float

    @property
    def means(self) -> str:
        """What it takes to reach it."""
        return access_class(max(0.0, self.height), self.slope)


class Floor(NamedTuple):
    """A deck or porch floor along a wall: its ends from the left end of the wall, how far out, and how far below.

    Attributes:
        label: As the plan calls it.
        left: Its left end from the left end of the wall. [m]
        right: Its right end. [m]
        depth: From the wall to its outer edge. [m]
        below: The lowest wood of the wall above it. [m]
    """

    label: str
    left: float
    right: float
    depth: float
    below: float


def wall_surface(wall: Facts, work: Working) -> tuple[list[Piece], str]:
    """The courses of a wall, less its openings, times the roundness of its logs."""
    face = face_of(wall, work)
    starts, slope = float(work.need(wall, "starts")), abs(float(work.maybe(wall, "grade") or 0.0))
    factor = _roundness(wall, work)
    floors = _floors(wall, face, starts, work)
    pieces = [
        piece
        for low, high in bands(face.peak, course_height(wall, work))
        for piece in _course(face, low, high, floors, starts, slope)
    ]
    _tell_reach(wall, face, floors, work)
    gross = sum(piece.area for piece in pieces)
    openings = sum(
        float(work.maybe(one, "count") or 1.0)
        * float(work.maybe(one, "width") or 0.0)
        * float(work.maybe(one, "height") or 0.0)
        for one in (*wall["windows"], *wall["doors"])
    )
    left = max(0.0, 1 - openings / gross) if gross > 0 else 0.0
    for stone in wall["stones"]:
        work.note(f"{stone.label} covers a part of it that no plan can state: nothing is taken off for it")
    surface = str(work.need(wall, "wood surface"))
    return [piece._replace(area=piece.area * left * factor) for piece in pieces], surface


def _roundness(wall: Facts, work: Working) -> float:
    """Surface of round logs over their flat area; 1 for flat ones."""
    build, size, course = str(work.need(wall, "build")), work.maybe(wall, "log size"), work.maybe(wall, "course")
    if build not in ("log round", "log D") or not size:
        return 1.0
    if course is None:
        work.note("course of its logs not stated: taken as high as the log, which makes the most of its roundness")
    course = min(float(size), float(course or size))
    factor = log_surface_factor(float(size), course)
    if build == "log D":
        factor = face_surface_factor(float(size) / 2, course)
    work.note(f"logs are round: {factor:.2f} times the flat area")
    return factor


def _floors(wall: Facts, face: Face, starts: float, work: Working) -> list[Floor]:
    """The decks and porch floors along a wall from which it is reached, where their height is told."""
    ends = {porch.label: (lean.left, lean.right) for porch, lean in zip(wall["porches"], face.leans, strict=True)}
    found = []
    for deck in wall["decks"]:
        below, height, depth = (work.maybe(deck, name) for name in ("below wood", "height", "depth"))
        if below is None and height is not None:
            below = starts - float(height)
        if below is None or depth is None:
            work.note(f"{deck.label}: how far it lies below the wood or how deep it is is not told: not stood on")
            continue
        porch = deck["porch"]
        left, right = ends.get(porch.label if porch is not None else "", (0.0, face.length))
        found.append(Floor(deck.label, left, right, float(depth), float(below)))
    for porch in wall["porches"]:
        below = work.maybe(porch, "floor below wood")
        if porch["decks"] or below is None or work.maybe(porch, "floor") not in FIRM:
            continue
        found.append(Floor(porch.label, *ends[porch.label], float(work.need(porch, "depth")), float(below)))
    return found


def _course(face: Face, low: float, high: float, floors: list[Floor], starts: float, slope: float) -> list[Piece]:
    """The pieces of a course, parted where a floor or a porch roof begins or ends."""
    width = face.width((low + high) / 2)
    start, end = (face.length - width) / 2, (face.length + width) / 2
    bounds = [at for one in floors for at in (one.left, one.right)]
    bounds += [at for lean in face.leans for at in (lean.left, lean.right)]
    cuts = sorted({start, end, *(at for at in bounds if start < at < end)})
    pieces = []
    for left, right in pairwise(cuts):
        middle, area = (left + right) / 2, (right - left) * (high - low)
        floor = next((one for one in floors if one.left <= middle <= one.right), None)
        if any(lean.left <= middle <= lean.right and low >= lean.at_wall for lean in face.leans):
            pieces.append(Piece(area, NO_LADDER, 0.0))
        elif floor is None:
            pieces.append(Piece(area, starts + high, slope))
        else:
            pieces.append(_from_floor(area, high + floor.below, floor))
    return pieces


def _from_floor(area: float, height: float, floor: Floor) -> Piece:
    """A piece that is reached from a floor; where a long ladder finds no foot on it, from a lift."""
    piece = Piece(area, height, 0.0)
    crowded = piece.means == "extension ladder" and LADDER_OUT * height > floor.depth
    return piece._replace(height=NO_LADDER) if crowded else piece


def _tell_reach(wall: Facts, face: Face, floors: list[Floor], work: Working) -> None:
    for floor in floors:
        part = "" if floor.left <= 0 and floor.right >= face.length else ", along the part where that lies"
        work.note(f"reached from the floor of {floor.label}{part}")
    if any(face.peak > lean.at_wall for lean in face.leans):
        work.note("wood over a porch roof is reached from a lift: no ladder has a foot there")


def rail_surface(rail: Facts, work: Working) -> tuple[list[Piece], str]:
    """Both sides of a rail along the open edges of its deck."""
    deck = rail["deck"]
    if deck is None:
        raise work.absent("it guards no deck whose size is told")
    length = _along(deck, work) + 2 * float(work.need(deck, "depth"))
    work.note("a rail along the outer edge and both ends of its deck is taken")
    side = BOTH_SIDES / 2 * length * float(work.need(rail, "height"))
    if work.maybe(rail, "lifts out") == "yes":
        return [Piece(2 * side, 0.0, 0.0)], "planed"
    work.note("its outer side is coated from the ground outside, for its panels do not lift out")
    top = float(work.maybe(deck, "height") or 0.0) + float(work.need(rail, "height"))
    return [Piece(side, 0.0, 0.0), Piece(side, top, 0.0)], "planed"


def deck_surface(deck: Facts, work: Working) -> tuple[list[Piece], str]:
    """The boards of a deck."""
    return [Piece(_along(deck, work) * float(work.need(deck, "depth")), 0.0, 0.0)], "planed"


def _along(deck: Facts, work: Working) -> float:
    """The length of a deck: that of its porch, or of the walls it lies along. [m]"""
    porch = deck["porch"]
    if porch is not None:
        return float(work.need(porch, "length"))
    walls = deck["along"] or ()
    if not walls:
        raise work.missing(deck, "along")
    work.note("a deck as long as the walls it lies along is taken")
    return sum(float(work.need(wall, "length")) for wall in walls)


def post_surface(post: Facts, work: Working) -> tuple[list[Piece], str]:
    """The four faces of the posts of a row."""
    size, height = work.need(post, "size"), float(work.need(post, "height"))
    area = 2 * (size[0] + size[1]) * height * float(work.maybe(post, "count") or 1.0)
    return [Piece(area, height - _floor_up(post, height, work), 0.0)], "planed"


def _floor_up(post: Facts, height: float, work: Working) -> float:
    """How far above the foot of a post the deck lies from which it is reached; 0 where none does. [m]"""
    porch = post["porch"]
    foot = work.maybe(post, "foot above grade")
    if porch is None or foot is None or not porch["decks"] or work.maybe(post, "stands on") == "deck boards":
        return 0.0
    deck = porch["decks"][0]
    up = float(work.maybe(deck, "height") or 0.0) - float(foot)
    if not 0 < up < height:
        return 0.0
    work.note(f"its top is reached from the floor of {deck.label}")
    return up


SURFACES: MappingProxyType[str, Callable[[Facts, Working], tuple[list[Piece], str]]] = MappingProxyType(
    {"wall": wall_surface, "post": post_surface, "deck": deck_surface, "rail": rail_surface}
)
"""By kind of part: the surfaces of a part, and how its wood was made."""
