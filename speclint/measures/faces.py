"""The face of a wall as rain and sun meet it: its geometry, and the wind that reaches it."""

from __future__ import annotations

from speclint.exposure.face import Face, Lean
from speclint.measures.facts import Facts, Working
from speclint.measures.register import measure
from speclint.science.driving_rain import hill_factor, obstruction_factor, terrain_roughness

TERRAINS = {"open water": "I", "open country": "II", "suburban": "III", "wooded": "III"}
UNSURE = 1.25  # ours: wind at the house may be this much weaker or stronger than taken
IN_WOODS = 0.55  # least over taken: a field station in woods had 0.2 to 0.4 of the open field's driving rain
BREAKS_WIND = ("evergreens", "building", "bank")
AS_HIGH = 0.5  # an obstruction at least half as high as the eave shelters the wall


def face_of(wall: Facts, work: Working, more_reach: float = 0.0) -> Face:
    """The face of a wall; `more_reach` tries a roof edge that reaches farther. [m]"""
    length, height = float(work.need(wall, "length")), float(work.need(wall, "height"))
    gable = work.need(wall, "gable") == "yes"
    roof = wall["roof"]
    peak = height
    if gable:
        stated = work.maybe(wall, "peak")
        if stated is None:
            work.note("no peak stated: the gable is taken to its plate only")
        else:
            peak = max(height, float(stated))
    hangs = work.maybe(roof, "edge drop")
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
    """Terrain, times the crest of a hill, times what stands before it."""
    site = wall["site"]
    terrain = work.need(site, "terrain", "site")
    eave = float(work.need(wall, "height")) + float(work.maybe(wall, "starts") or 0.0)
    factor = float(work.call(terrain_roughness, category=TERRAINS[terrain], height=max(0.0, eave)))
    slope = work.maybe(site, "hill slope")
    if slope is not None:
        factor *= float(work.call(hill_factor, slope=slope))
    sheltered = [1.0]
    for obstruction in wall["obstructions"]:
        height, type_ = float(work.need(obstruction, "height")), work.need(obstruction, "type")
        if type_ in BREAKS_WIND and height >= AS_HIGH * eave:
            distance = work.need(obstruction, "distance")
            sheltered.append(float(work.call(obstruction_factor, distance=distance)))
        elif type_ not in BREAKS_WIND:
            work.note(f"{obstruction.label} is bare for half the year: it is not counted against wind")
    factor *= min(sheltered)
    least = IN_WOODS if terrain == "wooded" else 1 / UNSURE
    work.range(
        factor * least,
        factor * UNSURE,
        "ours: the class of terrain, gusts in the hour, and in woods what a field station measured",
    )
    return factor
