"""How high wood is reached, and how far out a ladder stands."""

from __future__ import annotations

import math

from speclint.science.after import after
from speclint.science.inputs import not_negative
from speclint.science.trade_units import FOOT

MEANS = ("step stool", "step ladder", "extension ladder", "scaffold or lift")
HIGHEST = (8 * FOOT, 12 * FOOT, 20 * FOOT)  # ours, from no standard: highest wood from a stool, step ladder, ladder
STEEP = 0.15  # ours: ground that falls more is no place for a ladder
LADDER_OUT = 0.25
SCAFFOLD_RAIL = 10 * FOOT


@after("", "highest wood from each means at 8, 12 and 20 ft, not from a standard", "ours", ground_slope=(-0.5, 1))
def access_class(height: float, ground_slope: float = 0.0) -> str:
    """What it takes to work on wood at a height; ground that falls away adds to the height where a ladder stands.

    Args:
        height: Height of the wood above the ground at the wall. [m]
        ground_slope: Fall of the ground away from the wall; negative where it rises. [-]

    Returns:
        A word of MEANS. [-]

    Valid:
        ground_slope: -0.5 to 1.

    Raises:
        ValueError: If the height is negative.

    Sources:
        ours: highest wood from each means at 8, 12 and 20 ft, not from a standard.

    Example:
        >>> access_class(3.0), access_class(3.0, 0.25)
        ('step ladder', 'scaffold or lift')
    """
    not_negative(height=height)
    slope = max(0.0, ground_slope)
    stands = height + slope * ladder_foot(height)
    means = MEANS[sum(stands > highest for highest in HIGHEST)]
    return MEANS[-1] if means != MEANS[0] and slope > STEEP else means


@after("osha-1926", "1926.1053(b)(5)(i)", "second-hand")
def ladder_foot(working_length: float) -> float:
    """How far the foot of a leaning ladder stands out from below its top support.

    Args:
        working_length: Length of the ladder from its foot to its top support. [m]

    Returns:
        Level distance. [m]

    Valid:
        Ladders that lean and are not fixed.

    Raises:
        ValueError: If the length is negative.

    Sources:
        osha-1926, 1926.1053(b)(5)(i); second-hand.

    Example:
        >>> ladder_foot(4.0)
        1.0
    """
    not_negative(working_length=working_length)
    return LADDER_OUT * working_length


@after("osha-1926", "1926.1053(b)(5)(i)", "second-hand")
def ladder_tilt() -> float:
    """Angle of a leaning ladder to the ground when its foot is a quarter of its length out.

    Returns:
        Angle. [deg]

    Valid:
        Ladders that lean and are not fixed.

    Sources:
        osha-1926, 1926.1053(b)(5)(i); second-hand.

    Example:
        >>> round(ladder_tilt(), 1)
        75.5
    """
    return math.degrees(math.acos(LADDER_OUT))


@after("osha-1926", "1926.451(g)(1)", "second-hand")
def scaffold_needs_fall_protection(height: float) -> bool:
    """Whether workers on a scaffold must be kept from falling.

    Args:
        height: Height of its platform above the level below. [m]

    Returns:
        Whether the platform is more than 10 ft up. [-]

    Valid:
        Employers in the United States; other work at height has a lower bound.

    Raises:
        ValueError: If the height is negative.

    Sources:
        osha-1926, 1926.451(g)(1); second-hand.

    Example:
        >>> scaffold_needs_fall_protection(3.0), scaffold_needs_fall_protection(3.1)
        (False, True)
    """
    not_negative(height=height)
    return height > SCAFFOLD_RAIL + 1e-9  # ten feet in metres is not a round number
