"""Measures of roofs: ice barrier, slope limits of coverings, crickets."""

from __future__ import annotations

from collections.abc import Callable

from speclint.citation import Citation
from speclint.measures.facts import Facts, Working
from speclint.measures.register import measure
from speclint.measures.shelter import eave_over
from speclint.science.flashing import chimney_cricket_height, chimney_cricket_required
from speclint.science.ice import ice_barrier_length
from speclint.units import INCH

# covering: (least slope, section of the code)
LEAST_SLOPE = (
    ("asphalt shingle", 2 / 12,    "R905.2.2"),
    ("wood shingle",    3 / 12,    "R905.7.2"),
    ("wood shake",      4 / 12,    "R905.8.2"),
    ("slate",           4 / 12,    "R905.6.2"),
    ("tile",            2.5 / 12,  "R905.3.2"),
    ("standing seam",   0.25 / 12, "R905.10.2"),
    ("lapped metal",    3 / 12,    "R905.10.2"),
    ("membrane",        0.25 / 12, "R905.9"),
)  # fmt: skip
FRAMED = 6.5 * INCH
FRAMED_BASIS = Citation("", "2x6 studs and sheathing", "common practice")


@measure("roof", "least slope", "slope", "least slope for its covering")
def least_slope(roof: Facts, work: Working) -> float:
    """By the covering, after the code."""
    covering = work.need(roof, "covering")
    slope, place = next((slope, place) for name, slope, place in LEAST_SLOPE if name == covering)
    standing = "memory" if covering in ("lapped metal", "membrane") else "second-hand"
    work.cite(Citation("irc-2021", place, standing))  # type: ignore[arg-type]
    return slope


@measure("roof", "ice barrier need", "length", "ice barrier needed up the slope from the edge")
def ice_barrier_need(roof: Facts, work: Working) -> float:
    """From the eaves, the thickest wall below and the slope; 24 in inside the wall."""
    return _ice_barrier(roof, work, lambda walls: max(_thickness(wall, work) for wall in walls))


@measure("roof", "ice barrier least", "length", "ice barrier needed where 24 in are counted from the wall's outer face")
def ice_barrier_least(roof: Facts, work: Working) -> float:
    """The same with a wall of no thickness."""
    return _ice_barrier(roof, work, lambda walls: 0.0)


def _ice_barrier(roof: Facts, work: Working, thickness_of: Callable[[list[Facts]], float]) -> float:
    walls = [wall for wall in roof["covers"] or () if eave_over(roof, wall, work)]
    if not walls:
        raise work.missing(roof, "covers")
    thickness = thickness_of(walls)
    reach = max(float(work.need(wall, "roof reach")) for wall in walls)
    return float(
        work.call(ice_barrier_length, overhang=reach, wall_thickness=thickness, pitch=work.need(roof, "pitch"))
    )


def _thickness(wall: Facts, work: Working) -> float:
    """The log size; a wall of no logs is taken as a framed one."""
    if work.maybe(wall, "log size") is None and work.need(wall, "stacked") == "no":
        return float(work.assume("log size", FRAMED, "length", "thickness of a framed wall", FRAMED_BASIS))
    return float(work.need(wall, "log size"))


@measure("roof", "slippery", "yes or no", "whether snow slides off it")
def slippery(roof: Facts, work: Working) -> str:
    """Metal, slate and membrane without snow guards, steep enough to let go."""
    smooth = work.need(roof, "covering") in ("standing seam", "lapped metal", "slate", "membrane")
    steep = work.need(roof, "pitch") >= 0.25
    return "yes" if smooth and steep and work.maybe(roof, "snow guards") != "yes" else "no"


@measure("roof", "deepest overhang", "length", "its deepest eave or rake")
def deepest_overhang(roof: Facts, work: Working) -> float:
    """The greatest reach over any wall it covers."""
    reaches = [float(reach) for wall in roof["covers"] or () if (reach := work.maybe(wall, "roof reach")) is not None]
    reaches += [float(value) for name in ("eaves", "rakes") if (value := work.maybe(roof, name)) is not None]
    if not reaches:
        raise work.missing(roof, "eaves")
    return max(reaches)


@measure("chimney", "cricket need", "length", "height of cricket needed behind it; 0 where none is")
def cricket_need(chimney: Facts, work: Working) -> float:
    """None at the ridge or where it is narrow; else by its width and the roof's slope."""
    if work.need(chimney, "at") == "ridge":
        return 0.0
    width = float(work.need(chimney, "width"))
    if not work.call(chimney_cricket_required, width=width):
        return 0.0
    return float(work.call(chimney_cricket_height, width=width, pitch=work.need(chimney["roof"], "pitch", "roof")))
