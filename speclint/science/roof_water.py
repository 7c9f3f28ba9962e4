"""How much water comes off a roof, and what gutters and leaders carry.

Capacities are roof area times rain rate, so that a plan's own rain rate can be divided out; the storm behind that
rate (100-year hour, or five minutes) must be the one that the table was written for.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from itertools import pairwise

from speclint.science.after import after
from speclint.science.inputs import above_zero, not_negative
from speclint.science.trade_units import FOOT, GALLON_A_MINUTE, INCH, SQUARE_FOOT_INCH

PITCH_STEPS = ((3 / 12, 1.00), (5 / 12, 1.05), (8 / 12, 1.10), (11 / 12, 1.20), (math.inf, 1.30))
FALLS = (1 / 16 / 12, 1 / 8 / 12, 1 / 4 / 12, 1 / 2 / 12)
# diameter [in], then roof area at 1 in/h [ft2] for falls of 1/16, 1/8, 1/4 and 1/2 in per ft
HALF_ROUND = (
    (3,    680,   960,  1360,  1920),
    (4,   1440,  2040,  2880,  4080),
    (5,   2500,  3520,  5000,  7080),
    (6,   3840,  5440,  7680, 11080),
    (7,   5520,  7800, 11040, 15600),
    (8,   7960, 11200, 15920, 22400),
    (10, 14400, 20400, 28800, 40000),
)  # fmt: skip
OGEE = ((5, 5520), (6, 7960))
ROUND_LEADERS_2012 = ((2, 2880), (2.5, 5200), (3, 8800), (4, 18400), (5, 34600), (6, 54000), (8, 116000))
LEADER_FILL = 7 / 24
CUBIC_FOOT = FOOT**3


@after("en-12056-3", "4.1 Eq. (1)", "second-hand")
def runoff(area: float, intensity: float) -> float:
    """Flow of water off a roof, none of it held back.

    Args:
        area: Level area that drains. [m2]
        intensity: Rain rate. [mm/h]

    Returns:
        Flow. [m3/s]

    Valid:
        Roofs without gravel or planting.

    Raises:
        ValueError: If the area or the rain rate is negative.

    Sources:
        en-12056-3, 4.1 Eq. (1); second-hand.

    Example:
        >>> round(1000 * runoff(108.0, 108.0), 2)
        3.24
    """
    not_negative(area=area, intensity=intensity)
    return area * intensity / 1000 / 3600


@after("cda-copper", "Table 4.4.1", "second-hand", pitch=(0, 2))
def pitch_factor(pitch: float) -> float:
    """Factor on the level area of a roof for the wind-driven rain that a steep slope catches.

    A pitch between two steps takes the steeper one.

    Args:
        pitch: Rise over run of the roof. [-]

    Returns:
        Factor on the level area. [-]

    Valid:
        pitch: 0 to 2.

    Raises:
        ValueError: If the pitch is negative.

    Sources:
        cda-copper, Table 4.4.1; second-hand.

    Example:
        >>> pitch_factor(6 / 12)
        1.1
    """
    not_negative(pitch=pitch)
    return next(factor for steepest, factor in PITCH_STEPS if pitch <= steepest + 1e-9)


@after("en-12056-3", "Table 3", "second-hand", pitch=(0, 2))
def wind_driven_factor(pitch: float) -> float:
    """Factor on the level area of a roof for rain that falls one across to two down.

    Args:
        pitch: Rise over run of the roof. [-]

    Returns:
        Factor on the level area. [-]

    Valid:
        pitch: 0 to 2.

    Raises:
        ValueError: If the pitch is negative.

    Sources:
        en-12056-3, Table 3; second-hand.

    Example:
        >>> wind_driven_factor(1.0)
        1.5
    """
    not_negative(pitch=pitch)
    return 1 + pitch / 2


@after("", "level area times the factor for the pitch times the rain rate", "common practice")
def gutter_demand(area: float, pitch: float, intensity: float) -> float:
    """What a gutter has to carry, as roof area times rain rate.

    Args:
        area: Level roof area that drains to the gutter. [m2]
        pitch: Rise over run of the roof. [-]
        intensity: Rain rate of the storm for which the capacity is tabled. [mm/h]

    Returns:
        Demand. [m2 mm/h]

    Valid:
        Roofs that drain to an eave gutter.

    Raises:
        ValueError: If an input is negative.

    Sources:
        common practice: level area times the factor for the pitch times the rain rate.

    Example:
        >>> round(gutter_demand(100.0, 0.5, 100.0), 3)
        11000.0
    """
    not_negative(area=area, intensity=intensity)
    return area * pitch_factor(pitch) * intensity


@after("ipc-2012", "Table 1106.6", "memory", size=(0.0762, 0.254), fall=(0, 0.0417))
def half_round_capacity(size: float, fall: float) -> float:
    """What a half-round gutter carries, as roof area times rain rate.

    The code table was recalled, and its first column was also seen in a trade chart. A fall between two columns takes
    the gentler one. Level gutters take the first column: the formula of level_half_round_width agrees with it within
    six percent. Sizes between two rows are read off a straight line between logarithms.

    Args:
        size: Width across the top. [m]
        fall: Fall along the gutter, rise over run. [-]

    Returns:
        Capacity. [m2 mm/h]

    Valid:
        size: 0.0762 to 0.254; fall: 0 to 0.0417.

    Raises:
        ValueError: If the size is not above zero or the fall is negative.

    Sources:
        ipc-2012, Table 1106.6; memory.

    Example:
        >>> round(half_round_capacity(0.127, 1 / 192))
        5899
    """
    above_zero(size=size)
    not_negative(fall=fall)
    column = max((n for n, tabled in enumerate(FALLS) if tabled <= fall + 1e-9), default=0)
    return _between_sizes(tuple((row[0], row[1 + column]) for row in HALF_ROUND), size / INCH) * SQUARE_FOOT_INCH


@after("", "two sizes of ogee gutter in several guides", "common practice", size=(0.127, 0.1524))
def ogee_capacity(size: float) -> float:
    """What an ogee gutter carries at any fall, as roof area times the rain rate of the worst five minutes.

    Sizes besides the two are read off a straight line between logarithms.

    Args:
        size: Width across the top. [m]

    Returns:
        Capacity. [m2 mm/h]

    Valid:
        size: 0.127 to 0.1524.

    Raises:
        ValueError: If the size is not above zero.

    Sources:
        common practice: two sizes of ogee gutter in several guides.

    Example:
        >>> round(ogee_capacity(0.127))
        13026
    """
    above_zero(size=size)
    return _between_sizes(OGEE, size / INCH) * SQUARE_FOOT_INCH


def _between_sizes(rows: Sequence[tuple[float, float]], size: float) -> float:
    """Capacity at a size, by a straight line between logarithms; the end lines run on past the table."""
    pairs = pairwise(rows)
    (low, small), (high, large) = next((pair for pair in pairs if size <= pair[1][0]), (rows[-2], rows[-1]))
    power = math.log(large / small) / math.log(high / low)
    return float(small * (size / low) ** power)


@after("cda-copper", "leader area for roof area", "second-hand")
def leader_capacity(width: float, depth: float) -> float:
    """What a rectangular leader carries, as roof area times rain rate: 1200 ft2 at 1 in/h for each square inch.

    Args:
        width: Inside width of the leader. [m]
        depth: Inside depth of the leader. [m]

    Returns:
        Capacity. [m2 mm/h]

    Valid:
        Leaders of constant section, 7 in2 and up.

    Raises:
        ValueError: If a side is not above zero.

    Sources:
        cda-copper, leader area for roof area; second-hand.

    Example:
        >>> round(leader_capacity(0.0508, 0.0762))
        16990
    """
    above_zero(width=width, depth=depth)
    return width * depth / INCH**2 * 1200 * SQUARE_FOOT_INCH


@after("nspc-2006", "Table 13.6.1", "second-hand", diameter=(0.0508, 0.2032))
def round_leader_capacity(diameter: float) -> float:
    """What a round leader carries when water fills 7/24 of it, as roof area times rain rate.

    Args:
        diameter: Inside diameter of the leader. [m]

    Returns:
        Capacity. [m2 mm/h]

    Valid:
        diameter: 0.0508 to 0.2032.

    Raises:
        ValueError: If the diameter is not above zero.

    Sources:
        nspc-2006, Table 13.6.1; second-hand.

    Example:
        >>> round(round_leader_capacity(0.1016))
        32655
    """
    above_zero(diameter=diameter)
    flow = 27.8 * float(LEADER_FILL ** (5 / 3)) * float((diameter / INCH) ** (8 / 3)) * GALLON_A_MINUTE
    return flow * 1000 * 3600


@after("ipc-2012", "Table 1106.2", "memory", diameter=(0.0508, 0.2032))
def round_leader_capacity_ipc2012(diameter: float) -> float:
    """What a round leader carries by the older code table, as roof area times rain rate.

    It is about a third more than round_leader_capacity gives.

    Args:
        diameter: Inside diameter of the leader. [m]

    Returns:
        Capacity. [m2 mm/h]

    Valid:
        diameter: 0.0508 to 0.2032.

    Raises:
        ValueError: If the diameter is not above zero.

    Sources:
        ipc-2012, Table 1106.2; memory.

    Example:
        >>> round(round_leader_capacity_ipc2012(0.1016))
        43419
    """
    above_zero(diameter=diameter)
    return _between_sizes(ROUND_LEADERS_2012, diameter / INCH) * SQUARE_FOOT_INCH


@after("beij-1934", "level semicircular gutter", "second-hand")
def level_half_round_width(area: float, intensity: float) -> float:
    """Width of a level half-round gutter that carries a roof, from flow = 0.52 width^2.5 in feet and seconds.

    Args:
        area: Roof area that drains to one outlet. [m2]
        intensity: Rain rate. [mm/h]

    Returns:
        Width across the top. [m]

    Valid:
        Level gutters with free outlets; length does not enter.

    Raises:
        ValueError: If the area or the rain rate is negative.

    Sources:
        beij-1934, level semicircular gutter; second-hand.

    Example:
        >>> round(level_half_round_width(46.4515, 254.0), 4)
        0.1671
    """
    flow = runoff(area, intensity) / CUBIC_FOOT
    return float((flow / 0.52) ** (2 / 5) * FOOT)


@after("beij-1934", "level rectangular gutter", "second-hand", ratio=(0.3, 1.0))
def level_rectangular_width(area: float, intensity: float, length: float, ratio: float) -> float:
    """Width of a level box gutter, from flow = 7.75 (depth/width)^1.6 (width/length)^0.3 width^2.5 in feet and seconds.

    Args:
        area: Roof area that drains to one outlet. [m2]
        intensity: Rain rate. [mm/h]
        length: Length of gutter that drains to the outlet. [m]
        ratio: Depth over width of the gutter. [-]

    Returns:
        Width. [m]

    Valid:
        ratio: 0.3 to 1.

    Raises:
        ValueError: If the area or the rain rate is negative, or the length or the ratio is not above zero.

    Sources:
        beij-1934, level rectangular gutter; second-hand.

    Example:
        >>> round(level_rectangular_width(148.6449, 236.22, 12.192, 0.75), 4)
        0.1754
    """
    above_zero(length=length, ratio=ratio)
    flow = runoff(area, intensity) / CUBIC_FOOT
    return float((flow * (length / FOOT) ** 0.3 / (7.75 * ratio**1.6)) ** (1 / 2.8) * FOOT)


@after("", "plan geometry of a valley at a square inside corner", "ours")
def valley_area(run: float) -> float:
    """Level roof area that a valley brings to one point, at a square inside corner of two equal roofs.

    Args:
        run: Level run of either roof, eave to ridge. [m]

    Returns:
        Area. [m2]

    Valid:
        Roofs of equal pitch and run that meet at a right angle.

    Raises:
        ValueError: If the run is negative.

    Sources:
        ours: plan geometry of a valley at a square inside corner.

    Example:
        >>> valley_area(5.0)
        25.0
    """
    not_negative(run=run)
    return run**2
