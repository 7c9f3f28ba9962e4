"""The face of a wall as rain and sun meet it: its geometry, and the wind that reaches it."""

from __future__ import annotations

import math

from speclint.citation import Citation
from speclint.exposure.face import Face, Lean
from speclint.measures.facts import Facts, Working
from speclint.measures.register import measure
from speclint.science.driving_rain import hill_factor, obstruction_factor, terrain_roughness

TERRAINS = {"open water": "I", "open country": "II", "suburban": "III", "wooded": "III"}
UNSURE = 1.25  # ours: wind at the house may be this much weaker or stronger than taken
IN_WOODS, WOODS_LEAST = 0.6, 0.3  # ours: wind in woods over that of the suburban class, taken and least
BREAKS_WIND = ("evergreens", "building", "bank")
HALF_VIEW = 60.0  # degrees either side that an obstruction without a stated width fills; ours


def face_of(wall: Facts, work: Working, more_reach: float = 0.0) -> Face:
    """The face of a wall; `more_reach` tries a roof edge that reaches farther. [m]"""
    length, height = float(work.need(wall, "length")), float(work.need(wall, "height"))
    gable = work.need(wall, "gable") == "yes"
    roof = wall["roof"]
    peak = height
    if gable:
        stated = work.maybe(wall, "peak")
        if work.maybe(roof, "form") == "shed":
            work.note("the high side of a shed's end is not told: it is taken even on both sides, of the same area")
        if stated is None:
            work.note("no peak stated: the gable is taken to its plate only")
        else:
            peak = max(height, float(stated))
    hangs = work.maybe(roof, "edge drop") if not gable else 0.0
    if hangs is None:
        work.note("drip edge taken level with the top of the wall: a plan can state its edge drop")
    hip = work.maybe(roof, "form") == "hip"
    past_ends = work.maybe(roof, "eaves" if gable or hip else "rakes")
    out = work.maybe(wall, "upper storey")
    return Face(
        azimuth=float(work.need(wall, "faces")),
        length=length,
        height=height,
        peak=peak,
        reach=float(work.need(wall, "roof reach")) + more_reach,
        hangs=float(hangs or 0.0),
        past_ends=float(past_ends or 0.0),
        leans=tuple(_lean(porch, length, work) for porch in wall["porches"]),
        storey_out=float(out or 0.0),
        storey_at=float(work.need(wall, "upper storey height")) if out else 0.0,
    )


def _lean(porch: Facts, length: float, work: Working) -> Lean:
    """A porch roof along the wall; in the middle of it where the plan does not say where."""
    along = min(length, float(work.need(porch, "length")))
    left = work.maybe(porch, "from left")
    if left is None:
        left = (length - along) / 2
        if along < length:
            work.note(f"{porch.label} taken in the middle of the wall: a plan can state from left")
    else:
        along = float(work.need(porch, "length"))
    depth, at_wall = float(work.need(porch, "depth")), float(work.need(porch, "roof height"))
    pitch = work.maybe(porch, "roof pitch")
    return Lean(float(left), float(left) + along, depth, max(0.0, at_wall - depth * float(pitch or 0.0)), at_wall)


@measure("wall", "wind factor", "ratio", "wind at its eave over wind at 10 m on an open field")
def wind_factor(wall: Facts, work: Working) -> float:
    """Terrain, and the crest of a hill."""
    site = wall["site"]
    terrain = work.need(site, "terrain", "site")
    factor = _open_wind(wall, work)
    low, high = 1 / UNSURE, UNSURE
    if terrain == "wooded":
        work.cite(Citation("whately-2015", "driving rain of two masts in woods against an open field", "second-hand"))
        work.note(
            "woods: taken at 0.6 of the suburban class, as for a house in a clearing; two masts among the trees had "
            "0.2 to 0.4 of an open field's rain"
        )
        low, high = WOODS_LEAST / IN_WOODS, 1 / IN_WOODS
    words = "ours: gusts within the hour and the class of terrain, a quarter either way"
    work.range(factor * low, factor * high, words if terrain != "wooded" else "ours: from deep woods to a clearing")
    return factor


def _open_wind(wall: Facts, work: Working) -> float:
    """Wind factor of the lot's terrain and hill at the height of a wall."""
    site = wall["site"]
    terrain = work.need(site, "terrain", "site")
    eave = float(work.need(wall, "height")) + float(work.maybe(wall, "starts") or 0.0)
    factor = float(work.call(terrain_roughness, category=TERRAINS[terrain], height=max(0.0, eave)))
    if terrain == "wooded":
        factor *= IN_WOODS
    slope = work.maybe(site, "hill slope")
    if slope is not None:
        factor *= float(work.call(hill_factor, slope=slope))
    return factor


@measure("wall", "obstruction factor", "ratio", "share of the driving rain that what stands before it leaves")
def obstruction(wall: Facts, work: Working) -> float:
    """The factor by distance, for as much of the view and of the height as it fills; 1 where nothing stands there."""
    eave = float(work.need(wall, "height")) + float(work.maybe(wall, "starts") or 0.0)
    least = 1.0
    for found in wall["obstructions"]:
        if work.need(found, "type") not in BREAKS_WIND:
            work.note(f"{found.label} is bare for half the year: it is not counted against rain")
            continue
        distance, height = float(work.need(found, "distance")), float(work.need(found, "height"))
        width = work.maybe(found, "width")
        half = HALF_VIEW if width is None else math.degrees(math.atan2(float(width) / 2, distance))
        filled = min(1.0, half / HALF_VIEW) * min(1.0, height / eave) if eave > 0 else 0.0
        least = min(least, 1 - (1 - float(work.call(obstruction_factor, distance=distance))) * filled)
    if least < 1:
        work.note("the published factor is for an obstruction of like size; the part for its width and height is ours")
        work.range(least, 1.0, "ours: from the recalled factor to no shelter at all")
    return least
