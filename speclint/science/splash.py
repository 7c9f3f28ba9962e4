"""How high roof water splashes back onto the wood of a wall.

No published formula was found. The model ranks cases; its size is set by the practice heights that several texts
agree on: about 12 in over open ground, about 6 in over rounded stone, up to about 20 in over hard paving.
"""

from __future__ import annotations

from types import MappingProxyType

from speclint.science.after import after
from speclint.science.inputs import known, not_negative
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
