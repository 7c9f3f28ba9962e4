"""What stands before a wall on its elevation: porch roofs, posts, decks, rails, stone and plantings."""

from __future__ import annotations

from collections.abc import Iterator

from speclint.drawing.over import BOARD
from speclint.drawing.paper import Paper
from speclint.drawing.room import Room
from speclint.drawing.wall_frame import WallFrame
from speclint.measures.facts import Facts

END = 0.2  # from the end of a porch to the middle of its last post, as drawn [m]
EVERY = 2.4  # metres between posts that a plan does not state
JOIST = 0.28  # depth of a deck's edge, as drawn [m]
LEAST = 4.0  # pixels between balusters
SHRUB = 0.55  # height of a planting, which no plan states [m]


def stone(paper: Paper, frame: WallFrame) -> None:
    """Stone on the foundation, from its lower edge up to the wood, in coursed blocks."""
    for part in frame.wall["stones"]:
        low, high = float(part["above soil"] or 0.0), frame.starts
        if high - low < 0.05:
            continue
        paper.open("stone", part.label)
        paper.box(0.0, low, frame.length, high, "edge masonry")
        rows = max(1, int((high - low) / 0.2))
        for row in range(rows):
            y, tall = low + (high - low) * row / rows, (high - low) / rows
            if row:
                paper.line((0.0, y), (frame.length, y), "thin")
            x = 0.3 if row % 2 else 0.55
            while x < frame.length:
                paper.line((x, y), (x, y + tall), "thin")
                x += 0.55
        paper.close()


def plantings(paper: Paper, frame: WallFrame) -> None:
    """A row of shrubs along the wall, seen through: how tall they are no plan states."""
    for part in frame.wall["plantings"]:
        paper.open("planting", part.label)
        count = max(2, int(frame.length / 0.9))
        step = frame.length / count
        for at in range(count):
            if _before_door(frame, at * step, (at + 1) * step):
                continue
            low, middle = paper.y(0.0), paper.x((at + 0.5) * step)
            half, up = step * paper.scale / 2, SHRUB * paper.scale * (1.0 if at % 2 else 0.85)
            paper.put(f'<path class="thin leaf" d="M {middle - half:.1f} {low:.1f} C {middle - half:.1f} '
                      f'{low - 1.3 * up:.1f} {middle + half:.1f} {low - 1.3 * up:.1f} {middle + half:.1f} '
                      f'{low:.1f}"/>')  # fmt: skip
        paper.close()


def _before_door(frame: WallFrame, left: float, right: float) -> bool:
    doors = [one for one in frame.openings if one.kind == "door"]
    return any(left < one.left + one.width + 0.3 and one.left - 0.3 < right for one in doors)


def decks(paper: Paper, frame: WallFrame) -> None:
    """The walking surface of decks before the wall, and the posts under it."""
    for deck in frame.wall["decks"]:
        left, right = _deck_span(frame, deck)
        top = frame.deck_top(deck)
        paper.open("deck", deck.label)
        for post in carriers(frame, deck):
            for x in stands(post, left, right):
                _post(paper, post, x, top - JOIST)
        paper.box(left, top - JOIST, right, top, "edge wood")
        paper.line((left, top - 0.04), (right, top - 0.04), "thin")
        paper.close()


def _deck_span(frame: WallFrame, deck: Facts) -> tuple[float, float]:
    porch = deck["porch"]
    return frame.span_of(porch) if porch is not None else (0.0, frame.length)


def porch(paper: Paper, frame: WallFrame, part: Facts) -> None:
    """A porch roof before the wall, what is behind it dashed, and the posts that carry it."""
    eave, high = porch_heights(frame, part)
    left, right = frame.span_of(part)
    paper.open("porch", part.label)
    paper.path([(left, eave), (right, eave), (right, high), (left, high)], "edge roof", closed=True)
    for row in range(1, 4):
        y = eave + (high - eave) * row / 4
        paper.line((left, y), (right, y), "hair")
    for one in frame.openings:
        low, top = max(eave, frame.starts + one.sill), min(high, frame.starts + one.sill + one.height)
        if top > low and one.left < right and one.left + one.width > left:
            paper.path([(one.left, low), (one.left, top), (one.left + one.width, top), (one.left + one.width, low)],
                       "hidden")  # fmt: skip
    paper.box(left, eave - BOARD, right, eave, "edge roof")
    told = carriers(frame, part)
    for post in told[:1]:
        for x in stands(post, left, right):
            _post(paper, post, x, eave - BOARD)
    if not told and part["hung on"] != "main roof":
        for x in _evenly(left + END, right - END, max(2, round((right - left) / EVERY) + 1)):
            paper.path([(x - 0.08, 0.0), (x - 0.08, eave - BOARD)], "untold")
            paper.path([(x + 0.08, 0.0), (x + 0.08, eave - BOARD)], "untold")
    paper.close()


def porch_heights(frame: WallFrame, part: Facts) -> tuple[float, float]:
    """The outer edge of a porch roof, and where it meets the wall, above grade. [m]"""
    high = frame.starts + float(part["roof height"] or min(2.6, frame.height * 0.9))
    return high - float(part["depth"] or 0.0) * float(part["roof pitch"] or 0.0), high


def _post(paper: Paper, post: Facts, x: float, top: float) -> None:
    side = (post["size"][0] if post["size"] else 0.15) / 2
    foot = post["foot above grade"] if post["foot above grade"] is not None else 0.15
    paper.box(x - side * 1.5, -0.02, x + side * 1.5, foot, "edge masonry")
    if top > foot:
        paper.box(x - side, foot, x + side, top, "edge wood")


def carriers(frame: WallFrame, part: Facts) -> list[Facts]:
    """The posts that carry a porch or deck, themselves or through a beam."""
    return [post for post in frame.wall.sheet.of_kind("post") if _carries(post, part) and post["temporary"] != "yes"]


def _carries(post: Facts, part: Facts) -> bool:
    through = [other for beam in post["beams"] if post in (beam["on"] or ()) for other in (beam["under"] or ())]
    return part in (*(post["under"] or ()), *through)


def stands(post: Facts, left: float, right: float) -> list[float]:
    """The middles of a row of posts, from end to end. [m]"""
    return _evenly(left + END, right - END, int(post["count"] or 2))


def _evenly(left: float, right: float, count: int) -> list[float]:
    if count == 1:
        return [(left + right) / 2]
    return [left + (right - left) * at / (count - 1) for at in range(count)]


def rails(paper: Paper, frame: WallFrame) -> None:
    """Rails with their infill between posts, left out before doors so that these are seen."""
    for deck in frame.wall["decks"]:
        above = deck["porch"]
        left, right = _deck_span(frame, deck)
        top = frame.deck_top(deck)
        for rail in (*deck["rails"], *(above["rails"] if above is not None else ())):
            up = float(rail["height"] or 0.9)
            paper.open("rail", rail.label)
            for start, end in _bays(frame, above, left, right):
                paper.box(start, top + up - 0.05, end, top + up, "thin wood")
                paper.line((start, top + 0.1), (end, top + 0.1), "thin")
                step = max(float(rail["opening"] or 0.1) + 0.038, LEAST / paper.scale)
                for at in range(1, int((end - start) / step) + 1):
                    x = start + at * step
                    if x < end - 0.02:
                        paper.line((x, top + 0.1), (x, top + up - 0.05), "hair")
            paper.close()


def _bays(frame: WallFrame, above: Facts | None, left: float, right: float) -> Iterator[tuple[float, float]]:
    """The stretches of a rail between posts and doors. [m]"""
    blocks = [(one.left - 0.15, one.left + one.width + 0.15) for one in frame.openings if one.kind == "door"]
    if above is not None:
        for post in carriers(frame, above)[:1]:
            half = (post["size"][0] if post["size"] else 0.15) / 2
            blocks += [(x - half, x + half) for x in stands(post, left, right)]
    at = left
    for low, high in sorted(blocks):
        if low - at > 0.15:
            yield at, min(low, right)
        at = max(at, high)
    if right - at > 0.15:
        yield at, right


def take_room(paper: Paper, frame: WallFrame, room: Room) -> None:
    """Keep numbers off porch roofs, posts, the tops of rails, and decks; over balusters their halo keeps them clear."""
    for part in frame.wall["porches"]:
        eave, high = porch_heights(frame, part)
        left, right = frame.span_of(part)
        room.keep(paper, left, eave - BOARD, right, high)
        for post in carriers(frame, part)[:1]:
            for x in stands(post, left, right):
                room.keep(paper, x - 0.14, 0.0, x + 0.14, eave)
    for deck in frame.wall["decks"]:
        left, right = _deck_span(frame, deck)
        top = frame.deck_top(deck)
        room.keep(paper, left, 0.0, right, top)
        for rail in (*deck["rails"], *(deck["porch"]["rails"] if deck["porch"] is not None else ())):
            up = top + float(rail["height"] or 0.9)
            for start, end in _bays(frame, deck["porch"], left, right):
                room.keep(paper, start, up - 0.07, end, up + 0.02)
    if frame.wall["plantings"]:
        room.keep(paper, 0.0, 0.0, frame.length, SHRUB)


def not_drawn(frame: WallFrame) -> list[Facts]:
    """Parts of a wall whose place no plan states, or this one does not."""
    wall = frame.wall
    found = [*wall["chases"], *wall["obstructions"]]
    for part in (*wall["decks"], *wall["porches"]):
        found += [stair for stair in part["stairs"] if stair not in found]
    roof = wall["roof"]
    if roof is not None and not frame.gable:
        found += [chimney for chimney in roof["chimneys"] if chimney not in found]
    return found


def carries_any(porch: Facts) -> bool:
    """Whether the plan states posts under a porch."""
    return any(_carries(post, porch) for post in porch.sheet.of_kind("post") if post["temporary"] != "yes")
