"""Whether what is drawn can stand so: corners, roof junctions, steps at doors, windows over roofs, rows of posts."""

from __future__ import annotations

from bisect import bisect_left

from speclint.citation import Citation
from speclint.measures.facts import Facts, Sheet, Working
from speclint.measures.movement import porches_on
from speclint.measures.register import measure
from speclint.measures.shelter import eave_over
from speclint.units import angle_between

DRAWN = Citation("", "what the plan draws", "ours")
GEOMETRY = Citation("", "geometry of the plan", "ours")
ONE_WAY = 20.0  # degrees between two walls that face the same way; ours
ALIKE = 0.05  # m: rows of posts are sorted by their spacing in such steps, and neighbours count as one spacing; ours
TOUCH = 1e-6  # m: posts that stand side by side are not on one spot
WIDTH = 0.14  # m: of a post whose size is not stated, a nominal 6 in; ours
ALONG = 45.0  # degrees between the fall of a roof and the face of a wall, up to which the slope falls from it; ours


@measure("porch", "junctions drawn", "count", "how many junctions the plan draws where its roof meets a wall")
def junctions_drawn(porch: Facts, work: Working) -> float:
    """The junctions that name it."""
    work.cite(DRAWN)
    return float(len(porch.sheet.links.near(porch.label, "junction")))


@measure("corner", "turns", "yes or no", "whether the two walls that meet in it face different ways")
def corner_turns(corner: Facts, work: Working) -> str:
    """By the bearings of its two walls, twenty degrees apart or more."""
    work.cite(GEOMETRY)
    walls = corner["of"] or ()
    if len(walls) != 2:
        raise work.absent("it does not name two walls")
    one, other = (float(work.need(wall, "faces")) for wall in walls)
    return "yes" if angle_between(one, other) >= ONE_WAY else "no"


@measure("junction", "lies", "choice", "how the roof meets the wall by the way it falls: side or head")
def junction_lies(junction: Facts, work: Working) -> str:
    """Head where the slope falls away from the wall, side where it falls along it."""
    work.cite(GEOMETRY)
    wall, roof = junction["wall"], junction.sheet.facts.get(getattr(junction.element, "roof", None) or "")
    if wall is None or roof is None:
        raise work.missing(junction, "roof" if roof is None else "wall")
    faces = float(work.need(wall, "faces"))
    turns = [angle_between(faces, fall) for fall in _falls(roof, wall, work)]
    return "head" if min(turns) <= ALONG else "side"


def _falls(roof: Facts, wall: Facts, work: Working) -> list[float]:
    """The bearings toward which a roof or the roof of a porch falls. [deg]"""
    if roof.element.kind == "porch":
        return [float(work.need(other, "faces")) for other in roof["along"] or (wall,)]
    if work.need(roof, "form") not in ("gable", "shed"):
        raise work.absent("its roof falls to every side, or to none")
    walls = [other for other in roof["covers"] or () if other is not wall and eave_over(roof, other, work)]
    if not walls:
        raise work.absent("no eave of its roof is known besides")
    return [float(work.need(other, "faces")) for other in walls]


@measure("door", "height outside", "length", "how high the surface outside it stands above the ground")
def height_outside(door: Facts, work: Working) -> float:
    """The start of its wall and its sill, less the step down; where the ground is lower it stands higher yet."""
    work.cite(GEOMETRY)
    wood = float(work.need(door["wall"], "starts", "wall"))
    return wood + float(work.need(door, "sill")) - float(work.need(door, "step"))


@measure(
    "window", "above porch roof", "length", "from the underside of a porch roof at the wall up to its sill; below 0 cut"
)
def above_porch_roof(window: Facts, work: Working) -> float:
    """The least over the porches whose roofs meet the wall where it stands, below its head."""
    work.cite(GEOMETRY)
    wall = window["wall"]
    sill = float(work.need(window, "sill"))
    head = sill + float(work.need(window, "height"))
    porches = [porch for porch in wall["porches"] if _passes(porch, window, work)] if wall is not None else []
    heights = [float(work.need(porch, "roof height")) for porch in porches]
    below = [height for height in heights if height < head]
    if not below:
        raise work.absent("no porch roof is known to meet the wall below its head")
    return sill - max(below)


def _passes(porch: Facts, window: Facts, work: Working) -> bool:
    """Whether a porch is known to run along the wall where a window stands."""
    middle, width = work.maybe(window, "from left"), work.maybe(window, "width")
    long, whole = work.maybe(porch, "length"), work.maybe(window["wall"], "length")
    if long is not None and whole is not None and long >= whole:
        return True
    left = work.maybe(porch, "from left")
    if middle is None or left is None or long is None:
        return False
    half = float(width or 0.0) / 2
    return bool(left < middle + half and middle - half < left + long)


Rows = dict[int, list[tuple[float, str]]]


@measure("post", "row on its spot", "text", "the row of posts of a deck that is drawn where it stands itself")
def row_on_its_spot(post: Facts, work: Working) -> str:
    """A row under the deck of its porch, with its spacing and its distance inside the drip line."""
    work.cite(GEOMETRY)
    if work.maybe(post, "temporary") == "yes" or work.maybe(post, "stands on") in ("deck framing", "deck boards"):
        return "none"
    rows = [found for porch in porches_on(post) if (found := _deck_rows(post.sheet).get(porch.label))]
    if not rows:
        return "none"
    inset, spacing, size = (work.maybe(post, name) for name in ("inset", "spacing", "size"))
    if inset is None or spacing is None:
        raise work.absent("where it stands is not stated")
    width = float(max(size[0], size[1])) if size else WIDTH
    other = next((label for found in rows if (label := _at(found, float(inset), float(spacing), width))), None)
    if other is None:
        return "none"
    work.need(post.sheet[other], "inset")
    work.need(post.sheet[other], "spacing")
    return other


def _deck_rows(sheet: Sheet) -> dict[str, Rows]:
    """The rows of posts that carry the deck under each porch and not the porch: distances by spacing, drawn once."""
    if "deck rows" not in sheet.drawn:
        rows: dict[str, Rows] = {}
        for deck in sheet.of_kind("deck"):
            porch = deck["under"]
            posts = [*deck["posts"], *(post for beam in deck["beams"] for post in beam["posts"])]
            for post in dict.fromkeys(posts) if porch is not None else ():
                placed = post["inset"] is not None and post["spacing"] is not None and post["temporary"] != "yes"
                if placed and porch not in porches_on(post):
                    key = round(float(post["spacing"]) / ALIKE)
                    rows.setdefault(porch.label, {}).setdefault(key, []).append((float(post["inset"]), post.label))
        for row in rows.values():
            for found in row.values():
                found.sort()
        sheet.drawn["deck rows"] = rows
    drawn: dict[str, Rows] = sheet.drawn["deck rows"]
    return drawn


def _at(rows: Rows, inset: float, spacing: float, width: float) -> str | None:
    """The first row nearer than a width to a distance, of those of a spacing or of one beside it."""
    for key in range(round(spacing / ALIKE) - 1, round(spacing / ALIKE) + 2):
        found = rows.get(key, [])
        at = bisect_left(found, (inset - width + TOUCH, ""))
        if at < len(found) and found[at][0] < inset + width - TOUCH:
            return found[at][1]
    return None
