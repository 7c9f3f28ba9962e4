"""Gutters and downspouts against the roof that drains to them."""

from __future__ import annotations

from speclint.citation import Citation
from speclint.measures.facts import Facts, Working
from speclint.measures.register import measure
from speclint.measures.water_path import flow_of
from speclint.science.roof_water import gutter_capacity, gutter_demand, leader_capacity, pitch_factor
from speclint.units import show

MORE = 1.02  # what rounding of a stated area may hide


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
    """Roof area by pitch factor by the design rain; a roof that falls back to the wall counts by its steepness."""
    served = gutter["on"]
    if served is None:
        raise work.missing(gutter, "on")
    pitch = abs(float(work.need(served, "roof pitch" if served.element.kind == "porch" else "pitch")))
    work.call(pitch_factor, pitch=pitch)
    rain = float(work.need(gutter["site"], "design rain", "site"))
    return float(work.call(gutter_demand, area=work.need(gutter, "roof area"), pitch=pitch, intensity=rain))


@measure("gutter", "capacity", "drain", "what it can carry")
def capacity(gutter: Facts, work: Working) -> float:
    """By profile, size and fall; box gutters are reckoned as the ogee of the same width."""
    profile = work.need(gutter, "profile")
    if profile == "rectangular":
        work.note("a box gutter is reckoned as an ogee gutter of the same width")
        profile = "ogee"
    return float(
        work.call(
            gutter_capacity, profile=profile, size=work.need(gutter, "size"), fall=max(0.0, work.need(gutter, "fall"))
        )
    )


@measure("gutter", "run to outlet", "length", "longest run of gutter to an outlet")
def run_to_outlet(gutter: Facts, work: Working) -> float:
    """Its length over its outlets."""
    outlets = sum(float(work.maybe(downspout, "count") or 1.0) for downspout in gutter["downspouts"])
    return float(work.need(gutter, "length")) / max(1.0, outlets)


@measure("downspout", "demand", "drain", "its share of what the gutter has to carry")
def downspout_demand(downspout: Facts, work: Working) -> float:
    """The gutter's demand over all its downspouts."""
    gutter = downspout["gutter"]
    total = float(work.need(gutter, "demand", "gutter"))
    outlets = sum(float(work.maybe(other, "count") or 1.0) for other in gutter["downspouts"])
    return total / max(1.0, outlets)


@measure("downspout", "capacity", "drain", "what one of it can carry")
def downspout_capacity(downspout: Facts, work: Working) -> float:
    """By its inside section: 1200 square feet at an inch an hour for each square inch."""
    size = work.need(downspout, "size")
    return float(work.call(leader_capacity, width=size[0], depth=size[1]))


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
