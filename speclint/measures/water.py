"""Gutters and downspouts against the roof that drains to them."""

from __future__ import annotations

from speclint.citation import Citation
from speclint.measures.facts import Facts, Working
from speclint.measures.register import measure
from speclint.measures.water_path import flow_of
from speclint.science.roof_water import (
    gutter_demand,
    half_round_capacity,
    leader_capacity,
    ogee_capacity,
    pitch_factor,
    round_leader_capacity,
)
from speclint.units import INCH, show

MORE = 1.02  # what rounding of a stated area may hide
LEAST_SECTION = 7 * INCH**2  # m2: from which on the guide prints what a square inch of leader carries


@measure("gutter", "roof area", "area", "level roof area that drains to it, by way of other roofs too")
def roof_area(gutter: Facts, work: Working) -> float:
    """The larger of what is stated and what the plan leads to it; failing both, its length by the run of its roof."""
    stated = work.maybe(gutter, "drains")
    if gutter["on"] is None and stated is None:
        raise work.missing(gutter, "on")
    led = flow_of(gutter.sheet).at[gutter.label]
    if stated is not None:
        if led.amount > float(stated) * MORE:
            work.note(f"the plan leads {show(led.amount, 'area')} to it, which is more than is stated")
        return max(float(stated), led.amount)
    if not led.unknown and led.amount > 0:
        return float(work.need(gutter, "roof water"))
    return _by_length(gutter, work)


def _by_length(gutter: Facts, work: Working) -> float:
    """Its length by the run of the roof, or by the depth of the porch. [m2]"""
    served = gutter["on"]
    if served.element.kind == "porch":
        return float(work.need(served, "depth")) * float(work.need(gutter, "length"))
    run = float(work.need(served, "run"))
    wall = gutter["over"]
    reach = float(work.need(wall, "roof reach")) if wall is not None else float(work.need(served, "eaves"))
    return (run + reach) * float(work.need(gutter, "length"))


@measure("gutter", "demand", "drain", "what it has to carry: roof area times rain, with the factor for the pitch")
def demand(gutter: Facts, work: Working) -> float:
    """Roof area by pitch factor by rain; a roof that falls back to the wall counts by its steepness."""
    served = gutter["on"]
    if served is None:
        raise work.missing(gutter, "on")
    pitch = abs(float(work.need(served, "roof pitch" if served.element.kind == "porch" else "pitch")))
    work.call(pitch_factor, pitch=pitch)
    rain = _storm(gutter, gutter["profile"] == "half-round", work)
    return float(work.call(gutter_demand, area=work.need(gutter, "roof area"), pitch=pitch, intensity=rain))


def _storm(part: Facts, by_the_hour: bool, work: Working) -> float:
    """The rain that a capacity is set against. [mm/h]

    The charts of the trade are for the worst five minutes, which no table here holds; those of the plumbing code may be
    entered with the worst hour as well.
    """
    return float(work.need(part["site"], "design rain" if by_the_hour else "rain intensity", "site"))


@measure("gutter", "capacity", "drain", "what it can carry")
def capacity(gutter: Facts, work: Working) -> float:
    """By profile, size and fall; box gutters are reckoned as the ogee of the same width."""
    profile, size = work.need(gutter, "profile"), float(work.need(gutter, "size"))
    fall = max(0.0, float(work.need(gutter, "fall")))
    if profile == "half-round":
        return float(work.call(half_round_capacity, size=size, fall=fall))
    if profile == "rectangular":
        work.note("a box gutter is reckoned as an ogee gutter of the same width")
    return float(work.call(ogee_capacity, size=size))


@measure("gutter", "run to outlet", "length", "longest run of gutter to an outlet")
def run_to_outlet(gutter: Facts, work: Working) -> float:
    """Its length over its outlets."""
    outlets = sum(float(work.maybe(downspout, "count") or 1.0) for downspout in gutter["downspouts"])
    return float(work.need(gutter, "length")) / max(1.0, outlets)


@measure("downspout", "demand", "drain", "its share of what the gutter has to carry")
def downspout_demand(downspout: Facts, work: Working) -> float:
    """The gutter's demand over all its downspouts."""
    gutter = downspout["gutter"]
    if not _round(downspout):
        _storm(downspout, False, work)
    total = float(work.need(gutter, "demand", "gutter"))
    outlets = sum(float(work.maybe(other, "count") or 1.0) for other in gutter["downspouts"])
    return total / max(1.0, outlets)


@measure("downspout", "capacity", "drain", "what one of it can carry")
def downspout_capacity(downspout: Facts, work: Working) -> float:
    """By its inside section: 1200 square feet at an inch an hour for each square inch; a round one by its diameter."""
    width, depth, name = work.need(downspout, "size")
    if _round(downspout):
        work.note(f"{name} is taken as round")
        return float(work.call(round_leader_capacity, diameter=width))
    if width * depth < LEAST_SECTION:
        work.note("the guide prints its rule for leaders of 7 square inches and more")
    return float(work.call(leader_capacity, width=width, depth=depth))


def _round(downspout: Facts) -> bool:
    """Whether its section is told by one measure, as that of a round pipe is."""
    size = downspout["size"]
    return size is not None and "x" not in size[2]


@measure("gutter", "drained", "yes or no", "whether a downspout empties it")
def drained(gutter: Facts, work: Working) -> str:
    """Whether the plan has a downspout from it."""
    work.cite(Citation("", "every gutter needs an outlet", "common practice"))
    return "yes" if gutter["downspouts"] else "no"


@measure("roof, porch", "gutters drawn", "count", "how many gutters the plan draws on it")
def gutters_drawn(part: Facts, work: Working) -> float:
    """The gutters that name it."""
    work.cite(Citation("", "what the plan draws", "ours"))
    return float(len(part.sheet.links.near(part.label, "gutter")))
