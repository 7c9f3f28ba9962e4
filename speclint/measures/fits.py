"""Whether the heights that a plan states fit together: porch roofs, posts, decks, doors and walls."""

from __future__ import annotations

from itertools import islice

from speclint.citation import Citation
from speclint.measures.facts import Facts, Sheet, Working
from speclint.measures.register import measure

ARITHMETIC = Citation("", "arithmetic of the plan", "ours")


def _beam_depth(porch: Facts, work: Working) -> float:
    """Depth of the deepest beam under a porch roof; none where no beam is drawn. [m]"""
    sizes = [work.maybe(beam, "size") for beam in porch["beams"] if porch in (beam["under"] or ())]
    return max((float(max(size[0], size[1])) for size in sizes if size is not None), default=0.0)


@measure("porch", "headroom", "length", "from its floor up to the lowest timber at its outer edge")
def headroom(porch: Facts, work: Working) -> float:
    """Its roof at the wall, less its fall over the depth, less the beam; counted from the floor."""
    work.cite(ARITHMETIC)
    at_wall = float(work.need(porch, "roof height")) + float(work.need(porch, "floor below wood"))
    return at_wall - float(work.need(porch, "depth")) * _pitch(porch, work) - _beam_depth(porch, work)


def _pitch(porch: Facts, work: Working) -> float:
    """The slope of its roof; that of the main roof where this carries on over it and the plan says no other. [-]"""
    over = None if work.maybe(porch, "hung on") != "main roof" else _main_roof(porch)
    if over is None or work.maybe(porch, "roof pitch") is not None:
        return float(work.need(porch, "roof pitch"))
    return float(work.need(over, "pitch"))


def _main_roof(porch: Facts) -> Facts | None:
    """The roof of the first wall that it runs along, where the plan has one."""
    roofs = (wall["roof"] for wall in porch["along"] or ())
    return next((roof for roof in roofs if roof is not None), None)


@measure(
    "porch", "break in slope", "slope", "how far its slope and that of the main roof that carries on over it differ"
)
def break_in_slope(porch: Facts, work: Working) -> float:
    """Its stated slope against the main roof's; 0 where the plan states none, or it is hung on something else."""
    work.cite(ARITHMETIC)
    if work.maybe(porch, "hung on") != "main roof" or work.maybe(porch, "roof pitch") is None:
        return 0.0
    main = float(work.need(_main_roof(porch), "pitch", "along"))
    return abs(main - float(work.need(porch, "roof pitch")))


@measure("porch", "room under eave", "length", "from the underside of its roof at the wall up to the main eave's drip")
def room_under_eave(porch: Facts, work: Working) -> float:
    """The least over its walls that are no gables; the drip as stated, or by the reach and the pitch."""
    work.cite(ARITHMETIC)
    if work.maybe(porch, "hung on") == "main roof":
        raise work.absent("the main roof carries on over it")
    walls = [wall for wall in porch["along"] or () if work.maybe(wall, "gable") == "no"]
    if not walls:
        raise work.absent("it runs along no eave wall")
    found = []
    for wall in walls:
        drop = work.maybe(wall["roof"], "edge drop")
        if drop is None:
            drop = float(work.need(wall, "roof reach")) * float(work.need(wall["roof"], "pitch"))
        found.append(float(work.need(wall, "height")) - float(drop) - float(work.need(porch, "roof height")))
    return min(found)


@measure("porch", "above eave", "length", "how far its roof at the wall runs above the main eave's drip; 0 below it")
def above_eave(porch: Facts, work: Working) -> float:
    """What the room under the eave lacks of nothing."""
    work.cite(ARITHMETIC)
    return max(0.0, -float(work.need(porch, "room under eave")))


@measure(
    "post", "top misfit", "length", "how far its top stands above what the porch roof leaves for it; negative below"
)
def top_misfit(post: Facts, work: Working) -> float:
    """Foot and height against the underside of the porch roof at the post, less the beam between."""
    work.cite(ARITHMETIC)
    beams = [beam for beam in post["beams"] if post in (beam["on"] or ())]
    porches = [part for part in post["under"] or () if part.element.kind == "porch"]
    porches += [part for beam in beams for part in beam["under"] or () if part.element.kind == "porch"]
    if not porches:
        raise work.absent("it carries no porch roof")
    porch = porches[0]
    walls = porch["along"] or ()
    if not walls:
        raise work.missing(porch, "along")
    inset = float(work.need(post, "inset"))
    out = float(work.need(porch, "depth")) - inset
    roof = float(work.need(walls[0], "starts")) + float(work.need(porch, "roof height"))
    roof -= out * _pitch(porch, work)
    top = float(work.need(post, "foot above grade")) + float(work.need(post, "height"))
    return top - (roof - _beam_depth(porch, work))


@measure(
    "deck", "height misfit", "length", "how far its height and the wall's start disagree, past the fall of the ground"
)
def height_misfit(deck: Facts, work: Working) -> float:
    """Its height with its step below the wood, against the start of the wall; the ground may fall over its depth."""
    work.cite(ARITHMETIC)
    walls = deck["along"] or ()
    if not walls:
        raise work.missing(deck, "along")
    wood = float(work.need(deck, "height")) + float(work.need(deck, "below wood"))
    falls = max(0.0, float(work.maybe(walls[0], "grade") or 0.0)) * float(work.need(deck, "depth"))
    return min(max(0.0, abs(wood - float(work.need(wall, "starts"))) - falls) for wall in walls)


@measure("door", "step misfit", "length", "how far its step and the deck outside disagree")
def step_misfit(door: Facts, work: Working) -> float:
    """Its stated step against the deck's step below the wood and its own sill."""
    work.cite(ARITHMETIC)
    wall = door["wall"]
    decks = list(wall["decks"]) if wall is not None else []
    if work.maybe(door, "outside") != "decking" or len(decks) != 1:
        raise work.absent("no one deck is outside it")
    below = float(work.need(decks[0], "below wood")) + float(work.maybe(door, "sill") or 0.0)
    return abs(float(work.need(door, "step")) - below)


@measure("ledger", "below logs", "length", "how far the surface of the deck it carries lies below the lowest wood")
def below_logs(ledger: Facts, work: Working) -> float:
    """As the deck states it; the ledger lies lower yet, under the boards."""
    work.cite(ARITHMETIC)
    carried = ledger["carries"]
    if carried is not None and carried.element.kind == "porch":
        raise work.absent("it carries the roof of a porch")
    return float(work.need(carried, "below wood", "carries"))


def _least_top(sheet: Sheet) -> Facts | None:
    """The foundation whose top stands least above the ground, of those that state it; else the first; found once."""
    if "least top" not in sheet.drawn:
        drawn = sheet.of_kind("foundation")
        told = [foundation for foundation in drawn if foundation["top"] is not None]
        sheet.drawn["least top"] = min(told, key=lambda one: float(one["top"]), default=next(iter(drawn), None))
    found = sheet.drawn["least top"]
    assert found is None or isinstance(found, Facts)
    return found


@measure(
    "wall", "below foundation", "length", "how far its lowest wood starts below the foundation's top; negative above"
)
def below_foundation(wall: Facts, work: Working) -> float:
    """The foundation's top where it stands least above the ground, against the start of the wall."""
    work.cite(ARITHMETIC)
    foundation = _least_top(wall.sheet)
    if foundation is None:
        raise work.absent("the plan draws no foundation")
    return float(work.need(foundation, "top")) - float(work.need(wall, "starts"))


@measure(
    "foundation", "height to wood", "length", "from its top up to the lowest wood of the walls, with no stone between"
)
def height_to_wood(foundation: Facts, work: Working) -> float:
    """The least start of a wall against its top where it stands least above the ground: both at one place."""
    work.cite(ARITHMETIC)
    alone = len(list(islice(foundation.sheet.home.of_kind("foundation"), 2))) == 1
    walls = foundation.sheet.of_kind("wall") if alone else []
    if not walls:
        raise work.absent("which walls stand on it is not told")
    if any(wall["starts"] is None for wall in walls):
        raise work.absent("not every wall says where its wood starts")
    lowest = min(walls, key=lambda wall: float(wall["starts"]))
    if foundation["stones"] or lowest["stones"]:
        raise work.absent("stone is drawn between")
    return max(0.0, float(work.need(lowest, "starts")) - float(work.need(foundation, "top")))
