"""How far a roof edge should reach past the wood below it, and how much it then covers."""

from __future__ import annotations

import math

from speclint.science.after import after
from speclint.science.inputs import above_zero, between, not_negative
from speclint.science.trade_units import INCH

# decay index up to and including, eave [m], rake [m]
OVERHANGS = (
    (20.0,      0 * INCH,  0 * INCH),
    (40.0,     12 * INCH, 12 * INCH),
    (70.0,     18 * INCH, 12 * INCH),
    (math.inf, 24 * INCH, 12 * INCH),
)  # fmt: skip
LOG_END_LEAST = 6 * INCH
LOG_END_MOST = 24 * INCH
LOG_END_SHARE = 0.58
POST_LEAST = 6 * INCH
POST_SHARE = 0.3


@after("hud-durability-2002", "Table 4.1", "memory")
def overhang_need(index: float) -> tuple[float, float]:
    """Least eave and rake overhang for a decay hazard index.

    Only the last row could be read in a copy of the table; the others are recalled.

    Args:
        index: Decay hazard index of the climate. [-]

    Returns:
        Least overhang at the eaves and at the rakes. [m]

    Valid:
        Frame walls of one and two storeys with a weather barrier, gutters and normal upkeep.

    Raises:
        ValueError: If the index is negative.

    Sources:
        hud-durability-2002, Table 4.1; memory.

    Example:
        >>> eave, rake = overhang_need(45)
        >>> round(eave, 4), round(rake, 4)
        (0.4572, 0.3048)
    """
    not_negative(index=index)
    return next((eave, rake) for limit, eave, rake in OVERHANGS if index <= limit)


@after("ga-forestry-log", "roof overhang", "second-hand", storeys=(1, 2))
def log_wall_eave_advice(storeys: float) -> tuple[float, float]:
    """Eave overhang advised for log walls: the least, and the preferred.

    Args:
        storeys: Storeys under the eave. [-]

    Returns:
        Least and preferred eave overhang. [m]

    Valid:
        storeys: 1 to 2.

    Raises:
        ValueError: If there is no storey.

    Sources:
        ga-forestry-log, roof overhang; second-hand.

    Example:
        >>> least, preferred = log_wall_eave_advice(1)
        >>> round(least, 4), round(preferred, 4)
        (0.4572, 0.6096)
    """
    above_zero(storeys=storeys)
    return (18 * INCH, 24 * INCH) if storeys <= 1 else (24 * INCH, 36 * INCH)


@after("", "one foot of eave to eight of wall, as taught to inspectors of log homes", "common practice")
def eave_for_wall_height(height: float) -> float:
    """Eave overhang in proportion to the wall below it.

    Args:
        height: Height of the wall below the eave. [m]

    Returns:
        Overhang. [m]

    Valid:
        Log walls of one and two storeys.

    Raises:
        ValueError: If the height is negative.

    Sources:
        common practice: one foot of eave to eight of wall, as taught to inspectors of log homes.

    Example:
        >>> eave_for_wall_height(4.0)
        0.5
    """
    not_negative(height=height)
    return height / 8


@after("hud-durability-2002", "overhang ratio", "second-hand")
def cover_ratio(projection: float, height_below: float) -> float:
    """Overhang as a share of the height of wall below it.

    Args:
        projection: Level reach of the roof edge past the wall face. [m]
        height_below: Height from the part judged up to the roof edge. [m]

    Returns:
        Cover ratio. [-]

    Valid:
        Any wall.

    Raises:
        ValueError: If the projection is negative or the height is not above zero.

    Sources:
        hud-durability-2002, overhang ratio; second-hand.

    Example:
        >>> cover_ratio(0.6, 2.4)
        0.25
    """
    not_negative(projection=projection)
    above_zero(height_below=height_below)
    return projection / height_below


@after("din-68800-2", "line at 60 degrees from the roof edge", "memory", angle=(20, 60))
def sheltered_height(projection: float, angle: float) -> float:
    """Height of wall below a roof edge that slanting rain does not reach.

    At 30 degrees from the vertical this is the rule of the line drawn at 60 degrees from the level.

    Args:
        projection: Level reach of the roof edge past the wall face. [m]
        angle: Angle of the falling rain from the vertical. [deg]

    Returns:
        Sheltered height, measured down from the roof edge. [m]

    Valid:
        angle: 20 to 60.

    Raises:
        ValueError: If the projection is negative or the angle is not between 0 and 90 degrees.

    Sources:
        din-68800-2, line at 60 degrees from the roof edge; memory.

    Example:
        >>> round(sheltered_height(0.6, 30), 3)
        1.039
    """
    not_negative(projection=projection)
    above_zero(angle=angle)
    between(0, 90, angle=angle)
    return projection / math.tan(math.radians(angle)) if angle < 90 else 0.0


@after("", "log ends under rain at 30 degrees from the vertical, at least 6 and at most 24 inches", "ours")
def log_end_inset_need(height_below_roof_edge: float) -> float:
    """How far inside the drip line a log end should stop.

    Args:
        height_below_roof_edge: Height from the log end up to the roof edge above it. [m]

    Returns:
        Inset from the drip line. [m]

    Valid:
        Walls of one and two storeys; to be tuned by experience.

    Raises:
        ValueError: If the height is negative.

    Sources:
        ours: log ends under rain at 30 degrees from the vertical, at least 6 and at most 24 inches.

    Example:
        >>> round(log_end_inset_need(0.8), 3)
        0.464
    """
    not_negative(height_below_roof_edge=height_below_roof_edge)
    return min(LOG_END_MOST, max(LOG_END_LEAST, LOG_END_SHARE * height_below_roof_edge))


@after("", "post faces dry above knee height: 6 inches and 0.3 of half the height", "ours")
def post_inset_need(height: float) -> float:
    """How far inside the drip line the face of a porch post should stand.

    Args:
        height: Height of the post. [m]

    Returns:
        Inset from the drip line. [m]

    Valid:
        Posts of one storey; to be tuned by experience.

    Raises:
        ValueError: If the height is negative.

    Sources:
        ours: post faces dry above knee height: 6 inches and 0.3 of half the height.

    Example:
        >>> round(post_inset_need(2.4), 4)
        0.5124
    """
    not_negative(height=height)
    return POST_LEAST + POST_SHARE * height / 2
