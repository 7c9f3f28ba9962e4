"""Whether the heights that a plan states fit together: porch roofs, posts, decks, doors and walls."""

from __future__ import annotations

from speclint.citation import Citation
from speclint.measures.facts import Facts, Working
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
    if work.maybe(porch, "hung on") == "main roof":
        raise work.absent("the main roof carries on over it, at a slope that its own does not tell")
    at_wall = float(work.need(porch, "roof height")) + float(work.need(porch, "floor below wood"))
    falls = float(work.need(porch, "depth")) * float(work.need(porch, "roof pitch"))
    return at_wall - falls - _beam_depth(porch, work)


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
    if not porches or work.maybe(porches[0], "hung on") == "main roof":
        raise work.absent("it carries no porch roof of its own slope")
    porch = porches[0]
    walls = porch["along"] or ()
    if not walls:
        raise work.missing(porch, "along")
    inset = float(work.need(post, "inset"))
    out = float(work.need(porch, "depth")) - inset
    roof = float(work.need(walls[0], "starts")) + float(work.need(porch, "roof height"))
    roof -= out * float(work.need(porch, "roof pitch"))
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
