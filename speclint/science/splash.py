"""How high roof water splashes back onto the wood of a wall.

No published formula was found. The model ranks cases; its size is set by the practice heights that several texts
agree on: about 12 in over open ground, about 6 in over rounded stone, up to about 20 in over hard paving.
"""

from __future__ import annotations

import math
from types import MappingProxyType

from speclint.science.after import after
from speclint.science.inputs import known, not_negative
from speclint.science.raindrops import fall_speed
from speclint.science.trade_units import FOOT, INCH

BASE = 12 * INCH
FLOOR = 4 * INCH
HIGH_FALL = 12 * FOOT
REACH = 48 * INCH
"""Distance of the drip line from the wall at which splash from it no longer counts. [m]"""
SURFACE_FACTORS = MappingProxyType(
    {
        "bare soil":    1.0,
        "lawn":         0.8,
        "mulch":        0.9,
        "washed stone": 0.5,
        "gravel":       0.7,
        "paving":       1.5,
        "decking":      1.5,
    }
)  # fmt: skip
HIGH_FALL_FACTOR = 1.3
GUTTER_FACTOR = 0.3
DRIP = 5.0
"""Diameter of the drops that fall from a roof edge. [mm]"""
GRAVITY = 9.81
DOSE_REACH = 0.3
DOSE_HEIGHT = 0.15
DOSE_GUTTER_FACTOR = 0.2


@after("", "ranking model of splash height", "ours", fall_height=(0, 9))
def splash_height(surface: str, fall_height: float, gutter: bool, offset: float) -> float:
    """Height above the ground up to which splashed water wets a wall.

    Args:
        surface: The ground under the drip line: a key of SURFACE_FACTORS. [-]
        fall_height: Fall from the roof edge to the ground. [m]
        gutter: Whether a working gutter catches the roof water. [-]
        offset: Level distance of the drip line from the wall face. [m]

    Returns:
        Splash height. [m]

    Valid:
        fall_height: 0 to 9.

    Raises:
        ValueError: If the surface is not in the table or a distance is negative.

    Sources:
        ours: ranking model of splash height.

    Example:
        >>> round(splash_height("paving", 3.0, False, 0.3048), 3)
        0.343
    """
    known(SURFACE_FACTORS, surface=surface)
    not_negative(fall_height=fall_height, offset=offset)
    height = BASE * SURFACE_FACTORS[surface]
    if fall_height > HIGH_FALL:
        height *= HIGH_FALL_FACTOR
    if gutter:
        height *= GUTTER_FACTOR
    height *= max(0.0, 1 - offset / REACH)
    return max(FLOOR, height)


@after("", "a 5 mm drop from rest, slowed by the square of its speed, fall speed of gunn-kinzer-1949", "ours")
def drip_speed(height: float) -> float:
    """Speed at which a drip from a roof edge hits what lies below.

    Args:
        height: Fall from the roof edge. [m]

    Returns:
        Speed. [m/s]

    Valid:
        Still air.

    Raises:
        ValueError: If the height is negative.

    Sources:
        ours: a 5 mm drop from rest, slowed by the square of its speed, fall speed of gunn-kinzer-1949.

    Example:
        >>> round(drip_speed(3.0), 2)
        6.49
    """
    not_negative(height=height)
    limit = fall_speed(DRIP)
    return limit * math.sqrt(-math.expm1(-2 * GRAVITY * height / limit**2))


@after("", "ranking model of the amount of splash, no constant published", "ours", height=(0, 1.5), offset=(0, 2))
def splash_dose(height: float, offset: float, surface: str, gutter: bool) -> float:
    """Splash that reaches a wall at a height, for ranking one case against another.

    Surfaces rank as in `splash_height`. How much rounded stone helps is disputed.

    Args:
        height: Height above the ground. [m]
        offset: Level distance of the drip line from the wall face. [m]
        surface: The ground under the drip line: a key of SURFACE_FACTORS. [-]
        gutter: Whether a working gutter catches the roof water. [-]

    Returns:
        Splash, where 1 is the foot of a wall on the drip line over paving, without a gutter. [-]

    Valid:
        height: 0 to 1.5; offset: 0 to 2.

    Raises:
        ValueError: If the surface is not in the table or a distance is negative.

    Sources:
        ours: ranking model of the amount of splash, no constant published.

    Example:
        >>> round(splash_dose(0.15, 0.3, "paving", False), 3)
        0.135
    """
    known(SURFACE_FACTORS, surface=surface)
    not_negative(height=height, offset=offset)
    dose = SURFACE_FACTORS[surface] / max(SURFACE_FACTORS.values())
    if gutter:
        dose *= DOSE_GUTTER_FACTOR
    return dose * math.exp(-offset / DOSE_REACH - height / DOSE_HEIGHT)
