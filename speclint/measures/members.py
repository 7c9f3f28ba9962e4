"""What driving rain does to what stands clear of the walls: log ends, purlins, beams, posts, rails, decks, openings."""

from __future__ import annotations

import math
from collections.abc import Callable

from speclint.citation import Citation
from speclint.exposure.climates import RainClimate
from speclint.exposure.cover import Edge
from speclint.exposure.face import Face
from speclint.exposure.shares import level_share, upright_share
from speclint.measures.exposure import LIMITS
from speclint.measures.faces import face_of
from speclint.measures.facts import Facts, Working
from speclint.measures.frames import with_all_above
from speclint.measures.register import measure
from speclint.science.raindrops import share_falling_past_edge, share_past_edge

UNDER_EDGE = 0.3  # m: a purlin or beam end hangs about this far below the roof edge; ours
LEVEL_WITH = 0.005  # m: a part no farther inside the edge is level with it
HEIGHTS = 5  # places over the height of a post or an opening
ACROSS = 6  # places over the depth of a deck
PLACED = Citation("", "purlin and beam ends one foot below the roof edge", "ours")


def _climate(part: Facts, work: Working) -> RainClimate:
    climate: RainClimate = work.need(part["site"], "rain climate", "site")
    work.note(LIMITS)
    return climate


def _upright(part: Facts, work: Working, wall: Facts, edges: list[Edge]) -> float:
    """Share of the rain driven at an upright face that looks the way of a wall."""
    climate = _climate(part, work)
    work.call(share_past_edge, slant=1.0, rate=1.0)
    wind = float(work.need(wall, "wind factor"))
    return upright_share(climate.rain, float(work.need(wall, "faces")), tuple(edges), wind)


def _level(part: Facts, work: Working, wall: Facts, edges: list[Edge]) -> float:
    """Share of the year's rain that lands on a level face before a wall."""
    climate = _climate(part, work)
    work.call(share_falling_past_edge, slant=1.0, rate=1.0)
    wind = float(work.need(wall, "wind factor"))
    return level_share(climate.rain, float(work.need(wall, "faces")), tuple(edges), wind)


def _edge(inside: float, drop: float) -> list[Edge]:
    """The edge over a part that lies inside it; none where it lies outside."""
    return [Edge(inside, max(0.0, drop))] if inside > LEVEL_WITH else []


def _worse_end(corner: Facts, work: Working, struck: Callable[..., float]) -> float:
    """The greater share at the tips of the lowest log ends, each under the roof edge of a wall of the corner."""
    walls = corner["of"] or ()
    if not walls:
        raise work.missing(corner, "of")
    ends = max(float(work.need(corner, "ends")), float(work.maybe(corner, "lowest ends") or 0.0))
    edges = [
        (wall, _edge(float(work.need(wall, "roof reach")) - ends, float(work.need(wall, "height")))) for wall in walls
    ]
    return max(struck(corner, work, wall, over) for wall, over in edges)


@measure("corner", "rain share", "share", "part of the driving rain that strikes its lowest ends, on the worse side")
def corner_rain(corner: Facts, work: Working) -> float:
    """End grain that looks the way of each wall, under that wall's roof edge."""
    return _worse_end(corner, work, _upright)


@measure("corner", "rain on top", "share", "part of the year's rain that lands on top of its lowest log ends")
def corner_top(corner: Facts, work: Working) -> float:
    """A level face at the tip of the ends, on the worse side."""
    return _worse_end(corner, work, _level)


@measure("purlin", "rain share", "share", "part of the driving rain that strikes its end")
def purlin_rain(purlin: Facts, work: Working) -> float:
    """End grain that looks the way of its wall, a foot below the rake."""
    work.cite(PLACED)
    return _upright(purlin, work, purlin["wall"], _edge(float(work.need(purlin, "inset")), UNDER_EDGE))


@measure("beam", "rain on top", "share", "part of the year's rain that lands on its end")
def beam_rain(beam: Facts, work: Working) -> float:
    """A level face a foot below the roof edge."""
    work.cite(PLACED)
    wall = _wall_of(beam, work)
    return _level(beam, work, wall, _edge(-float(work.need(beam, "past edge")), UNDER_EDGE))


def _wall_of(part: Facts, work: Working) -> Facts:
    """The wall before which a post or beam stands: that of the porch, deck or roof it carries, also by way of beams."""
    loads = {above.element.kind: above for above in reversed(with_all_above(part))}
    for kind, setting in (("porch", "along"), ("deck", "along"), ("roof", "covers")):
        if kind in loads:
            for wall in loads[kind][setting] or ():
                return wall  # type: ignore[no-any-return]
            raise work.missing(loads[kind], setting)
    raise work.absent("the plan does not say before which wall it stands")


@measure("post", "rain share", "share", "part of the driving rain that strikes its outer face, mean of its height")
def post_rain(post: Facts, work: Working) -> float:
    """Its outer face at several heights, its inset behind the drip line."""
    inset, height = float(work.need(post, "inset")), float(work.need(post, "height"))
    if work.need(post, "roofed") == "no":
        return 1.0
    wall = _wall_of(post, work)
    drops = [height * (at + 0.5) / HEIGHTS for at in range(HEIGHTS)]
    return sum(_upright(post, work, wall, _edge(inset, drop)) for drop in drops) / HEIGHTS


@measure("post", "foot rain", "share", "part of the driving rain that strikes its foot")
def post_foot(post: Facts, work: Working) -> float:
    """Its outer face at the foot."""
    if work.need(post, "roofed") == "no":
        return 1.0
    edges = _edge(float(work.need(post, "inset")), float(work.need(post, "height")))
    return _upright(post, work, _wall_of(post, work), edges)


@measure("post", "free driving rain", "depth", "rain that wind drives in a mean year at the wall it stands before")
def post_free_rain(post: Facts, work: Working) -> float:
    """That of its wall, before any roof."""
    return float(work.need(_wall_of(post, work), "free driving rain"))


@measure("post", "mean open wall", "depth", "driving rain on a bare wall of the lot, mean of all bearings")
def post_mean_open_wall(post: Facts, work: Working) -> float:
    """That of the wall it stands before."""
    return float(work.need(_wall_of(post, work), "mean open wall"))


@measure("deck", "rain on top", "share", "part of the year's rain that lands on its boards, mean of its depth")
def deck_rain(deck: Facts, work: Working) -> float:
    """Level places from the wall to its outer edge, under its porch or under the roof edge over the wall."""
    walls = deck["along"] or ()
    if not walls:
        raise work.missing(deck, "along")
    depth = float(work.need(deck, "depth"))
    porch = deck["porch"]
    reach, height = _cover_of(deck, porch, walls[0], work)
    places = [depth * (at + 0.5) / ACROSS for at in range(ACROSS)]
    return sum(_level(deck, work, walls[0], _edge(reach - place, height)) for place in places) / ACROSS


@measure("rail", "rain on top", "share", "part of the year's rain that lands on its top")
def rail_rain(rail: Facts, work: Working) -> float:
    """A level face at the outer edge of its deck, at its height."""
    deck = rail["deck"]
    if deck is None:
        raise work.absent("it guards no deck")
    walls = deck["along"] or ()
    if not walls:
        raise work.missing(deck, "along")
    reach, height = _cover_of(deck, deck["porch"], walls[0], work)
    edges = _edge(reach - float(work.need(deck, "depth")), height - float(work.need(rail, "height")))
    return _level(rail, work, walls[0], edges)


def _cover_of(deck: Facts, porch: Facts | None, wall: Facts, work: Working) -> tuple[float, float]:
    """Reach of the roof over a deck, and its edge above the boards. [m]"""
    below = float(work.maybe(deck, "below wood") or 0.0)
    if porch is None:
        return float(work.need(wall, "roof reach")), float(work.need(wall, "height")) + below
    depth, at_wall = float(work.need(porch, "depth")), float(work.need(porch, "roof height"))
    pitch = float(work.maybe(porch, "roof pitch") or 0.0)
    return depth, max(0.0, at_wall - pitch * depth) + below


@measure("window, door", "rain share", "share", "part of the driving rain at its wall that strikes it")
def opening_rain(opening: Facts, work: Working) -> float:
    """Places over its height; along the wall where the plan says from left, under its porch, or all along."""
    wall = opening["wall"]
    if wall is None:
        raise work.missing(opening, "wall")
    face = face_of(wall, work)
    sill, height = float(work.need(opening, "sill")), float(work.need(opening, "height"))
    if sill >= face.peak:
        raise work.absent("it stands above the wood of its wall as the plan draws it")
    climate = _climate(opening, work)
    wind = float(work.need(wall, "wind factor"))
    work.call(share_past_edge, slant=1.0, rate=1.0)
    share = 0.0
    levels = [sill + height * (at + 0.5) / HEIGHTS for at in range(HEIGHTS)]
    levels = [level for level in levels if level < face.peak] or [sill]
    for level in levels:
        for along, part in _places_of(opening, face, level, work):
            edges = (*face.edges(along, level), *_own_edges(opening, sill + height - level, level, work))
            share += part * upright_share(climate.rain, face.azimuth, edges, wind)
    return share / len(levels)


def _places_of(opening: Facts, face: Face, level: float, work: Working) -> list[tuple[float, float]]:
    """Where along its wall an opening may stand, and with what weight."""
    stated, own = work.maybe(opening, "from left"), opening["under"]
    if stated is not None and face.top(float(stated)) > level:
        return [(float(stated), 1.0)]
    if stated is not None:
        work.note("the wall is no higher than this where the plan puts it: taken all along the wall at this height")
    spans = [
        (lean.left, lean.right)
        for lean, porch in zip(face.leans, opening["wall"]["porches"], strict=True)
        if porch is own
    ]
    if spans:
        low, high = max(0.0, spans[0][0]), min(face.length, spans[0][1])
        return [(low + (high - low) * (at + 0.5) / HEIGHTS, 1 / HEIGHTS) for at in range(HEIGHTS)]
    return face.places(level)


def _own_edges(opening: Facts, below_head: float, level: float, work: Working) -> list[Edge]:
    """The hood of a door, and a porch over an opening that does not run along its wall."""
    edges = []
    hood = work.maybe(opening, "hood") if opening.element.kind == "door" else None
    if hood:
        half = float(work.maybe(opening, "width") or 0.0) / 2 or math.inf
        edges.append(Edge(float(hood), below_head, half, half))
    own = opening["under"]
    if own is not None and own not in opening["wall"]["porches"]:
        reach, over = float(work.need(own, "depth")), float(work.need(own, "roof height"))
        edges.append(Edge(reach, max(0.0, over - level - reach * float(work.maybe(own, "roof pitch") or 0.0))))
    return edges
