"""What the ground does: splash, and clearances at the worst point."""

from __future__ import annotations

from speclint.measures.facts import Facts, Working
from speclint.measures.register import measure
from speclint.science.splash import splash_dose, splash_height


@measure(
    "wall", "gutter above", "yes or no", "whether roof water is kept from it, by a gutter or because no eave is above"
)
def gutter_above(wall: Facts, work: Working) -> str:
    """Whether the plan has a gutter over it, or its roof has gutters on every eave."""
    if wall["gutters"]:
        return "yes"
    if work.maybe(wall, "eave above") == "no":
        return "yes"
    return "yes" if work.need(wall["roof"], "gutters", "roof") == "all eaves" else "no"


@measure("wall", "drip line", "length", "level distance from the wall face to where roof water lands")
def drip_line(wall: Facts, work: Working) -> float:
    """The reach of the roof, or of a porch roof below it."""
    return max(float(work.need(wall, "roof reach")), float(work.need(wall, "porch cover")))


@measure("wall", "splash height", "length", "height above the ground up to which splash from roof water wets the wall")
def wall_splash_height(wall: Facts, work: Working) -> float:
    """Our ranking model, from the surface, the fall, gutters and the drip line."""
    starts = float(work.need(wall, "starts"))
    fall = max(0.0, float(work.need(wall, "height")) + starts)
    return float(
        work.call(
            splash_height,
            surface=work.need(wall, "ground"),
            fall_height=fall,
            gutter=work.need(wall, "gutter above") == "yes",
            offset=float(work.need(wall, "drip line")),
        )
    )


@measure("wall", "splash dose", "ratio", "splash at its lowest wood; 1 is a wall foot in the drip on paving")
def wall_splash_dose(wall: Facts, work: Working) -> float:
    """Our ranking model: the greater of splash from the ground and from an open deck along the wall."""
    starts = max(0.0, float(work.need(wall, "starts")))
    gutter = work.need(wall, "gutter above") == "yes"
    offset = float(work.need(wall, "drip line"))
    ground = work.need(wall, "ground")
    found = [float(work.call(splash_dose, height=starts, offset=offset, surface=ground, gutter=gutter))]
    for deck in wall["decks"]:
        below = max(0.0, float(work.need(deck, "below wood")))
        if deck["porch"] is None and float(work.need(deck, "depth")) > offset:
            found.append(float(work.call(splash_dose, height=below, offset=offset, surface="decking", gutter=gutter)))
    work.note("it ranks walls; published clearances decide")
    return max(found)


@measure("wall", "reach", "length", "height above the ground of the highest wood to be kept up")
def reach(wall: Facts, work: Working) -> float:
    """Top of the wood above grade."""
    return float(work.need(wall, "starts")) + float(work.need(wall, "wood height"))


@measure("deck", "drop", "length", "from its walking surface down to grade")
def deck_drop(deck: Facts, work: Working) -> float:
    """Its height."""
    return float(work.need(deck, "height"))


@measure("deck", "railed", "yes or no", "whether a rail guards it")
def deck_railed(deck: Facts, work: Working) -> str:
    """Whether the plan has a rail on it or on the porch that roofs it."""
    porch = deck["porch"]
    return "yes" if deck["rails"] or (porch is not None and porch["rails"]) else "no"


@measure("deck", "roofed", "yes or no", "whether a porch roof covers it")
def deck_roofed(deck: Facts, work: Working) -> str:
    """Whether it names the porch over it."""
    return "yes" if deck["under"] is not None else "no"
