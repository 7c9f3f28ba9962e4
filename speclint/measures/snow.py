"""Snow on roofs, sliding from them, and banked at walls, by the loads of 2016 and by no other edition."""

from __future__ import annotations

from speclint.citation import Citation
from speclint.measures.facts import Facts, Working
from speclint.measures.register import measure
from speclint.measures.shelter import eave_over, porches_over
from speclint.science.snow import (
    flat_roof_snow,
    ground_snow_depth,
    low_slope_minimum,
    shed_snow_depth,
    sliding_snow,
    sliding_snow_pressure,
    slope_factor,
    snow_density,
)
from speclint.units import FOOT

COLD_ROOF, OPEN_ROOF = 1.1, 1.2
SLIDES_SLIPPERY, SLIDES_OTHER = 0.25 / 12, 2 / 12
STRIP_BEYOND = 3 * FOOT
SMOOTH = ("standing seam", "lapped metal", "slate", "membrane")
EDITION = "the ground snow must be that of the maps of 2016; loads of the 2022 maps are another system"
SCREEN = "a screen: loads on roofs, drifts and guards are a licensed engineer's"
HEAT = Citation("asce-7-16", "Table 7.3-2", "second-hand")
OURS = Citation("", "strip on which shed snow comes to lie: the reach of the roof and 3 ft", "ours")


def _flat(site: Facts, thermal: float, work: Working) -> float:
    ground = float(work.need(site, "ground snow"))
    work.assume("thermal factor", thermal, "ratio", "1.1 for a cold, ventilated roof; 1.2 for an open one", HEAT)
    work.note("wind at the roof is taken as ordinary (factor 1), and the house as a dwelling (factor 1)")
    work.note(EDITION)
    return float(work.call(flat_roof_snow, ground_load=ground, thermal_factor=thermal))


@measure("roof", "flat snow", "pressure", "snow load of a flat roof in its place, before its slope is reckoned")
def flat_snow(roof: Facts, work: Working) -> float:
    """By the ground snow, as a cold, ventilated roof."""
    work.note(SCREEN)
    return _flat(roof["site"], COLD_ROOF, work)


@measure("roof", "snow load", "pressure", "snow that lies on it, on the level")
def snow_load(roof: Facts, work: Working) -> float:
    """Flat-roof snow by the slope, slippery or not; on a low slope no less than the standard's minimum."""
    smooth = work.need(roof, "covering") in SMOOTH and work.maybe(roof, "snow guards") != "yes"
    pitch = float(work.need(roof, "pitch"))
    share = work.call(slope_factor, pitch=pitch, thermal_factor=COLD_ROOF, slippery=smooth)
    return max(float(work.need(roof, "flat snow")) * float(share), _least(roof["site"], pitch, work))


def _least(site: Facts, pitch: float, work: Working) -> float:
    """The least load of a roof of low slope. [Pa]"""
    return float(work.call(low_slope_minimum, ground_load=float(work.need(site, "ground snow")), pitch=pitch))


@measure("roof", "snow slides", "yes or no", "whether its snow comes down in slides by the rule of the load standard")
def snow_slides(roof: Facts, work: Working) -> str:
    """Smooth coverings from a quarter inch to the foot, others from 2:12, unless guards hold the snow."""
    work.cite(Citation("asce-7-16", "7.9", "second-hand"))
    if work.maybe(roof, "snow guards") == "yes":
        return "no"
    smooth = work.need(roof, "covering") in SMOOTH
    return "yes" if float(work.need(roof, "pitch")) > (SLIDES_SLIPPERY if smooth else SLIDES_OTHER) else "no"


@measure("roof", "sliding snow", "line load", "snow that slides off it, by length of eave; 0 where it holds")
def roof_sliding_snow(roof: Facts, work: Working) -> float:
    """Four tenths of the flat-roof snow over the level run from eave to ridge."""
    if work.need(roof, "snow slides") == "no":
        return 0.0
    run = float(work.need(roof, "run")) + float(work.maybe(roof, "eaves") or 0.0)
    return float(work.call(sliding_snow, flat_load=work.need(roof, "flat snow"), run=run))


def _roofs_above(part: Facts, work: Working) -> list[Facts]:
    """The roofs whose eaves are over a porch or deck, by the walls it lies along."""
    pairs = [(roof, wall) for wall in part["along"] or () for roof in wall["roofs"]]
    return list(dict.fromkeys(roof for roof, wall in pairs if eave_over(roof, wall, work)))


@measure("porch, deck", "sliding snow", "pressure", "snow that slides onto it from the roof above; 0 where none does")
def porch_sliding_snow(part: Facts, work: Working) -> float:
    """Of the roof above with the most, spread over the 15 ft next to its eave; none where a porch roof catches it."""
    if part.element.kind == "deck" and (part["under"] is not None or _porched(part, work)):
        return 0.0
    found = [0.0]
    for roof in _roofs_above(part, work):
        if work.need(roof, "snow slides") == "yes":
            run = float(work.need(roof, "run")) + float(work.maybe(roof, "eaves") or 0.0)
            found.append(float(work.call(sliding_snow_pressure, flat_load=work.need(roof, "flat snow"), run=run)))
    work.note(SCREEN)
    return max(found)


def _porched(deck: Facts, work: Working) -> bool:
    return any(porches_over(wall, work) for wall in deck["along"] or ())


@measure("porch", "snow load", "pressure", "snow that lies on its roof without slides or drifts, on the level")
def porch_snow_load(porch: Facts, work: Working) -> float:
    """Flat-roof snow of an open, unheated roof by its slope; its covering is taken as one that holds snow."""
    return max(_balanced(porch, work), _least(porch["site"], _steepness(porch, work), work))


def _steepness(porch: Facts, work: Working) -> float:
    return abs(float(work.need(porch, "roof pitch")))  # one that falls back to the wall holds as much


def _balanced(porch: Facts, work: Working) -> float:
    share = work.call(slope_factor, pitch=_steepness(porch, work), thermal_factor=OPEN_ROOF, slippery=False)
    return _flat(porch["site"], OPEN_ROOF, work) * float(share)


@measure(
    "porch", "snow with slides", "pressure", "snow that lies on its roof and what slides onto it; drifts not counted"
)
def porch_snow_with_slides(porch: Facts, work: Working) -> float:
    """The sum of the two; the least load of a low slope is a case of its own, to which no slide is added."""
    work.note("drifts against the wall above are not counted")
    slides = _balanced(porch, work) + float(work.need(porch, "sliding snow"))
    return max(slides, float(work.need(porch, "snow load")))


@measure("wall", "snow bank", "length", "depth of the design snow banked against it, with what its roof sheds")
def snow_bank(wall: Facts, work: Working) -> float:
    """Snow on the ground, and the slide of its eave heaped on a strip as wide as the reach and three feet more."""
    site = wall["site"]
    ground = float(work.need(site, "ground snow"))
    depth = float(work.call(ground_snow_depth, ground_load=ground))
    roof = wall["roof"]
    if roof is None or not eave_over(roof, wall, work) or porches_over(wall, work):
        return depth
    line = work.maybe(roof, "sliding snow")
    if not line or work.maybe(roof, "slippery") != "yes":
        return depth  # shingles let snow go in small lots that pack and melt between
    work.cite(OURS)
    strip = float(work.need(wall, "roof reach")) + STRIP_BEYOND
    density = float(work.call(snow_density, ground_load=ground))
    return depth + float(work.call(shed_snow_depth, line_load=line, strip=strip, density=density))
