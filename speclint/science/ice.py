"""How far up the roof an ice barrier must reach."""

from __future__ import annotations

import math

from speclint.science.after import after
from speclint.science.inputs import not_negative
from speclint.science.trade_units import INCH

INSIDE_WALL = 24 * INCH
STEEP = 8 / 12
STEEP_LENGTH = 36 * INCH


@after("irc-2021", "R905.1.2", "second-hand", pitch=(0, 2))
def ice_barrier_length(overhang: float, wall_thickness: float, pitch: float) -> float:
    """Length of ice barrier up the slope, from the roof edge to 24 in inside the warm side of the wall.

    At 8:12 and steeper it is at least 36 in along the slope (editions 2015 to 2021; dropped in 2024).

    Args:
        overhang: Level reach of the roof edge past the outside face of the wall. [m]
        wall_thickness: Thickness of the wall. [m]
        pitch: Rise over run of the roof. [-]

    Returns:
        Length along the slope. [m]

    Valid:
        pitch: 0 to 2.

    Raises:
        ValueError: If an input is negative.

    Sources:
        irc-2021, R905.1.2; second-hand.

    Example:
        >>> round(ice_barrier_length(0.6096, 0.2032, 8 / 12), 3)
        1.71
    """
    not_negative(overhang=overhang, wall_thickness=wall_thickness, pitch=pitch)
    along = (overhang + wall_thickness + INSIDE_WALL) * math.hypot(1, pitch)
    return max(along, STEEP_LENGTH) if pitch >= STEEP else along
