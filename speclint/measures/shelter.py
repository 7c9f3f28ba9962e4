"""What the roof keeps off: reach, cover and the inset of ends, posts and beams."""

from __future__ import annotations

from speclint.citation import Citation
from speclint.measures.facts import Facts, Working
from speclint.measures.frames import with_all_above
from speclint.measures.register import measure
from speclint.model.roof import Roof
from speclint.relations.roof_plan import low_wall
from speclint.science.overhang import (
    cover_ratio,
    eave_for_wall_height,
    log_end_inset_need,
    log_wall_eave_advice,
    overhang_need,
    post_inset_need,
    sheltered_height,
)
from speclint.units import angle_between

RAIN_ANGLE = 30.0
MOST_OF_WALL = 0.8  # ours: a porch along four fifths of a wall is taken to shelter it
ONE_COURSE = 0.3  # ours: wood above a porch roof that counts for itself [m]
STACKED = ("log round", "log square", "log D")
OURS = Citation("", "geometry of the plan", "ours")


@measure("wall", "stacked", "yes or no", "whether the wall is of stacked logs, which settle")
def stacked(wall: Facts, work: Working) -> str:
    """By its build."""
    return "yes" if work.need(wall, "build") in STACKED else "no"


@measure("wall", "wooden", "yes or no", "whether its outside is wood")
def wooden(wall: Facts, work: Working) -> str:
    """By its build."""
    return "no" if work.need(wall, "build") == "framed with stone" else "yes"


@measure("wall", "gable", "yes or no", "whether it is a gable end of its roof")
def gable(wall: Facts, work: Working) -> str:
    """Whether its roof names it among its gables."""
    roof = wall["roof"]
    work.need(roof, "form", "roof")
    return "yes" if wall in (roof["gables"] or ()) else "no"


def eave_over(roof: Facts, wall: Facts, work: Working) -> bool:
    """Whether a roof sheds over a wall that it covers: not over its gables, nor over the high side of a shed."""
    if wall in (roof["gables"] or ()):
        return False
    if work.maybe(roof, "form") != "shed":
        return True
    low = low_wall(roof.element) if isinstance(roof.element, Roof) else None
    if low is None:
        raise work.missing(roof, "low side")
    return low == wall.label


@measure(
    "wall", "eave above", "yes or no", "whether its roof sheds over it: no under a rake or the high side of a shed"
)
def eave_above(wall: Facts, work: Working) -> str:
    """By the form of its roof, its gables and its low side."""
    work.need(wall["roof"], "form", "roof")
    work.cite(OURS)
    return "yes" if eave_over(wall["roof"], wall, work) else "no"


@measure("wall", "roof reach", "length", "how far the roof edge above reaches past the wall face")
def roof_reach(wall: Facts, work: Working) -> float:
    """The wall's own overhang, or the rakes or eaves of the roof that covers it."""
    own = work.maybe(wall, "overhang")
    if own is not None:
        return float(own)
    roof = wall["roof"]
    if len(wall["roofs"]) > 1:
        work.note(f"several roofs cover {wall.label}: {roof.label} is taken; state its overhang where another is meant")
    side = "rakes" if work.need(wall, "gable") == "yes" else "eaves"
    return float(work.need(roof, side, "roof"))


@measure("wall", "wood height", "length", "height of its wood from bottom to eave, or to the peak of a gable")
def wood_height(wall: Facts, work: Working) -> float:
    """Height to the eave; to the peak on a gable wall."""
    height = float(work.need(wall, "height"))
    if work.maybe(wall, "gable") == "yes":
        peak = work.maybe(wall, "peak")
        if peak is None:
            work.note("no peak stated: the gable is measured to its plate only")
            return height
        return float(peak)
    return height


def porches_over(wall: Facts, work: Working) -> list[Facts]:
    """The porches that roof over most of a wall; a short porch shelters its own piece and no more."""
    found = []
    for porch in wall["porches"]:
        if float(work.need(porch, "length")) >= MOST_OF_WALL * float(work.need(wall, "length")):
            found.append(porch)
        else:
            work.note(f"{porch.label} covers a part of {wall.label} only: the wall is judged where it stands free")
    return found


@measure("wall", "porch cover", "length", "depth of the deepest porch roof along most of it; 0 where there is none")
def porch_cover(wall: Facts, work: Working) -> float:
    """The depth of porches that run along at least four fifths of it."""
    return max((float(work.need(porch, "depth")) for porch in porches_over(wall, work)), default=0.0)


@measure("wall", "cover ratio", "ratio", "reach of the roof as a share of the wood below it, where it is least covered")
def wall_cover_ratio(wall: Facts, work: Working) -> float:
    """Reach of the roof over the height; with a porch along the wall, the lesser of the parts below and above it."""
    reach, height = float(work.need(wall, "roof reach")), float(work.need(wall, "height"))
    parts = [(reach, height)]
    if work.maybe(wall, "gable") == "yes":
        work.note(
            "a gable is reckoned from its plate: the wood higher up stands nearer the rake, the foot of it farther"
        )
    porches = porches_over(wall, work)
    if porches:
        deepest = max(porches, key=lambda porch: float(work.need(porch, "depth")))
        under = float(work.maybe(deepest, "roof height") or height)
        above = float(work.need(wall, "wood height")) - under
        parts = [(float(work.need(deepest, "depth")), under)]
        parts += [(reach, above)] if above > ONE_COURSE else []
    return min(float(work.call(cover_ratio, projection=reach, height_below=below)) for reach, below in parts)


@measure("wall", "sheltered height", "length", "height below the roof edge that rain 30 degrees off plumb misses")
def wall_sheltered_height(wall: Facts, work: Working) -> float:
    """Straight-line shelter of the roof edge."""
    angle = work.assume("rain angle", RAIN_ANGLE, "tilt", "rain taken 30 degrees off plumb", OURS)
    return float(work.call(sheltered_height, projection=work.need(wall, "roof reach"), angle=angle))


def edge_drop(wall: Facts, work: Working) -> float:
    """How far the edge of the roof hangs below the top of a wall; 0 under a rake, and where it is not stated. [m]"""
    return 0.0 if work.maybe(wall, "gable") == "yes" else float(work.maybe(wall["roof"], "edge drop") or 0.0)


@measure("wall", "exposed height", "length", "height of wood that rain 30 degrees off plumb reaches, porches counted")
def exposed_height(wall: Facts, work: Working) -> float:
    """What is left of the wood below the sheltered height, and above a porch roof where there is one."""
    wood = float(work.need(wall, "wood height")) - edge_drop(wall, work)
    exposed = max(0.0, wood - float(work.need(wall, "sheltered height")))
    roofs = [float(work.maybe(porch, "roof height") or 0.0) for porch in porches_over(wall, work)]
    under_porch = max(roofs, default=0.0)
    return max(0.0, exposed - under_porch)


@measure("wall", "overhang need", "length", "least overhang of the published table for the site's decay hazard index")
def wall_overhang_need(wall: Facts, work: Working) -> float:
    """The eave or the rake column, by what the wall is."""
    eave, rake = work.call(overhang_need, index=work.need(wall["site"], "decay hazard index", "site"))
    return float(rake if work.need(wall, "gable") == "yes" else eave)


@measure("wall", "overhang advice", "length", "least overhang that guidance on log homes advises for its storeys")
def overhang_advice(wall: Facts, work: Working) -> float:
    """The lesser of its two figures; the other is what it prefers."""
    least, _ = work.call(log_wall_eave_advice, storeys=work.need(wall, "storeys"))
    return float(least)


@measure("wall", "overhang for height", "length", "one foot of overhang to eight of wall")
def overhang_for_height(wall: Facts, work: Working) -> float:
    """In proportion to the height of its wood."""
    return float(work.call(eave_for_wall_height, height=work.need(wall, "height")))


@measure("wall", "faces rain", "yes or no", "whether it looks within 60 degrees of the rain-bearing wind")
def faces_rain(wall: Facts, work: Working) -> str:
    """By its bearing and the site's rain wind."""
    wind = work.need(wall["site"], "rain wind", "site")
    return "yes" if angle_between(work.need(wall, "faces"), wind) <= 60 else "no"


@measure("wall", "sunny", "yes or no", "whether it looks between south-east and west-north-west")
def sunny(wall: Facts, work: Working) -> str:
    """By its bearing; for the northern half of the world, and turned about south of the equator."""
    latitude = work.maybe(wall["site"], "latitude") if wall["site"] else None
    noon = 0.0 if latitude is not None and latitude < 0 else 180.0
    turn = (work.need(wall, "faces") - noon + 180) % 360 - 180
    low, high = (-45, 112.5) if noon else (-112.5, 45)
    return "yes" if low <= turn <= high else "no"


@measure("corner", "inset", "length", "its longest log end inside the roof edge above; negative outside")
def corner_inset(corner: Facts, work: Working) -> float:
    """The lesser reach of the roof over its two walls, less the reach of the ends."""
    walls = corner["of"] or ()
    if not walls:
        raise work.missing(corner, "of")
    reach = min(float(work.need(wall, "roof reach")) for wall in walls)
    ends = max(float(work.need(corner, "ends")), float(work.maybe(corner, "lowest ends") or 0.0))
    return reach - ends


@measure("corner", "past edge", "length", "how far its longest log end reaches past the roof edge above; 0 inside it")
def corner_past_edge(corner: Facts, work: Working) -> float:
    """Its inset where that is negative, told as a reach."""
    return max(0.0, -float(work.need(corner, "inset")))


@measure("corner", "edge over ends", "text", "the roof edge over its longest log end that reaches out the least")
def edge_over_ends(corner: Facts, work: Working) -> str:
    """The rake or the eave of one of its walls."""
    wall = _shorter_edge(corner, work)
    return f"the {'rake' if work.maybe(wall, 'gable') == 'yes' else 'eave'} over {wall.label}"


@measure("corner", "edge reach", "length", "how far the lesser roof edge over its walls reaches past the wall face")
def edge_reach(corner: Facts, work: Working) -> float:
    """The lesser of the two."""
    return float(work.need(_shorter_edge(corner, work), "roof reach"))


def _shorter_edge(corner: Facts, work: Working) -> Facts:
    walls = corner["of"] or ()
    if not walls:
        raise work.missing(corner, "of")
    reaches = {wall: float(work.need(wall, "roof reach")) for wall in walls}
    found: Facts = min(walls, key=reaches.__getitem__)
    return found


@measure("corner", "inset need", "length", "how far inside the roof edge the log ends should stop")
def corner_inset_need(corner: Facts, work: Working) -> float:
    """For the lowest log end, under rain 30 degrees off plumb, between 6 and 24 in."""
    walls = corner["of"] or ()
    if not walls:
        raise work.missing(corner, "of")
    height = min(float(work.need(wall, "height")) for wall in walls)
    return float(work.call(log_end_inset_need, height_below_roof_edge=height))


@measure("corner", "step out", "length", "how far the lowest log ends reach past the others")
def step_out(corner: Facts, work: Working) -> float:
    """Lowest less longest of the upper ends."""
    return float(work.need(corner, "lowest ends")) - float(work.need(corner, "ends"))


@measure("purlin", "rake over it", "length", "how far the rake above it reaches past its wall")
def purlin_rake(purlin: Facts, work: Working) -> float:
    """The reach of the roof over its wall."""
    return float(work.need(purlin["wall"], "roof reach", "wall"))


@measure("purlin", "inset", "length", "its end inside the rake edge; negative outside")
def purlin_inset(purlin: Facts, work: Working) -> float:
    """The reach of the rake over its wall, less its own."""
    return float(work.need(purlin["wall"], "roof reach", "wall")) - float(work.need(purlin, "reach"))


@measure("post", "inset need", "length", "how far inside the drip line its face should stand")
def post_need(post: Facts, work: Working) -> float:
    """By its height."""
    return float(work.call(post_inset_need, height=work.need(post, "height")))


@measure("post", "roofed", "yes or no", "whether a porch roof or the main roof stands over it")
def post_roofed(post: Facts, work: Working) -> str:
    """Whether it carries a porch or a roof, or a deck under a porch, straight or by way of beams."""
    above = with_all_above(post)
    covered = any(part.element.kind in ("porch", "roof") for part in above)
    return "yes" if covered or any(part.element.kind == "deck" and part["under"] for part in above) else "no"


@measure("window, door", "cover", "length", "reach of the roof, porch or hood over it")
def opening_cover(opening: Facts, work: Working) -> float:
    """The deepest of the roof over its wall, the porch it is under or that runs along the wall, and its own hood."""
    wall = opening["wall"]
    porch, sill = opening["under"], work.maybe(opening, "sill")
    found = float(work.need(wall, "roof reach", "wall"))
    for over in porches_over(wall, work):
        roof = work.maybe(over, "roof height")
        if roof is None or sill is None or float(roof) > float(sill):
            found = max(found, float(work.need(over, "depth")))
    if porch is not None:
        roof = work.maybe(porch, "roof height")
        if roof is None or sill is None or float(roof) > float(sill):
            found = max(found, float(work.need(porch, "depth")))
    hood = work.maybe(opening, "hood") if opening.element.kind == "door" else None
    return max(found, float(hood or 0.0))


@measure("window, door", "cover ratio", "ratio", "its cover as a share of the height from its sill to the roof above")
def opening_cover_ratio(opening: Facts, work: Working) -> float:
    """The best of the main roof, a porch and a hood, each over its own height above the sill."""
    wall = opening["wall"]
    sill = float(work.need(opening, "sill"))
    pairs = [(float(work.need(wall, "roof reach", "wall")), float(work.need(wall, "wood height")) - sill)]
    own = opening["under"]
    for porch in [own] if own is not None else porches_over(wall, work):
        height = work.maybe(porch, "roof height")
        if height is not None and height > sill:
            pairs.append((float(work.need(porch, "depth")), float(height) - sill))
    if opening.element.kind == "door" and (hood := work.maybe(opening, "hood")) is not None:
        pairs.append((float(hood), float(work.need(opening, "height"))))
    return max(float(work.call(cover_ratio, projection=reach, height_below=max(0.3, below))) for reach, below in pairs)
