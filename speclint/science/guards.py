"""Guard and stair sizes of the dwelling code, to flag what a plan leaves short; the building official decides."""

from __future__ import annotations

from speclint.science.after import after
from speclint.science.inputs import not_negative
from speclint.science.trade_units import INCH, POUND

DROP = 30 * INCH
DROP_WITHIN = 36 * INCH


@after("irc-2018", "R312.1.1", "second-hand")
def guard_required(drop: float) -> bool:
    """Whether a walking surface needs a guard.

    Args:
        drop: Fall to the ground or floor below, at the worst point within 36 in of the edge. [m]

    Returns:
        Whether a guard is needed. [-]

    Valid:
        Dwellings.

    Raises:
        ValueError: If the drop is negative.

    Sources:
        irc-2018, R312.1.1; second-hand.

    Example:
        >>> guard_required(0.8)
        True
    """
    not_negative(drop=drop)
    return drop > DROP + 1e-9


@after("irc-2018", "R312.1.2", "second-hand")
def guard_height_need() -> float:
    """Least height of a guard along a walking surface.

    Returns:
        Height. [m]

    Valid:
        Dwellings.

    Sources:
        irc-2018, R312.1.2; second-hand.

    Example:
        >>> guard_height_need()
        0.9144
    """
    return 36 * INCH


@after("irc-2018", "R312.1.2", "second-hand")
def stair_guard_height_need() -> float:
    """Least height of a guard on the open side of a stair, above the line of the nosings.

    Returns:
        Height. [m]

    Valid:
        Dwellings.

    Sources:
        irc-2018, R312.1.2; second-hand.

    Example:
        >>> round(stair_guard_height_need(), 4)
        0.8636
    """
    return 34 * INCH


@after("irc-2018", "R312.1.3", "second-hand")
def guard_opening_limit() -> float:
    """Ball that must not pass a guard along a walking surface.

    Returns:
        Diameter. [m]

    Valid:
        Dwellings.

    Sources:
        irc-2018, R312.1.3; second-hand.

    Example:
        >>> guard_opening_limit()
        0.1016
    """
    return 4 * INCH


@after("irc-2018", "R312.1.3", "second-hand")
def stair_guard_opening_limit() -> float:
    """Ball that must not pass a guard on the open side of a stair.

    Returns:
        Diameter. [m]

    Valid:
        Dwellings.

    Sources:
        irc-2018, R312.1.3; second-hand.

    Example:
        >>> round(stair_guard_opening_limit(), 4)
        0.1111
    """
    return 4.375 * INCH


@after("irc-2018", "R312.1.3", "second-hand")
def stair_triangle_opening_limit() -> float:
    """Ball that must not pass the triangle of tread, riser and bottom rail.

    Returns:
        Diameter. [m]

    Valid:
        Dwellings.

    Sources:
        irc-2018, R312.1.3; second-hand.

    Example:
        >>> round(stair_triangle_opening_limit(), 4)
        0.1524
    """
    return 6 * INCH


@after("irc-2018", "Table R301.5", "second-hand")
def guard_load_need() -> float:
    """Load that the top of a guard must stand in any direction; how it does so is for an engineer.

    Returns:
        Load. [N]

    Valid:
        Dwellings.

    Sources:
        irc-2018, Table R301.5; second-hand.

    Example:
        >>> round(guard_load_need())
        890
    """
    return 200 * POUND


@after("irc-2018", "R311.7.5.1", "second-hand")
def stair_riser_limit() -> float:
    """Greatest height of a stair riser.

    Returns:
        Height. [m]

    Valid:
        Dwellings.

    Sources:
        irc-2018, R311.7.5.1; second-hand.

    Example:
        >>> round(stair_riser_limit(), 5)
        0.19685
    """
    return 7.75 * INCH


@after("irc-2018", "R311.7.5.2", "second-hand")
def stair_tread_need() -> float:
    """Least depth of a stair tread.

    Returns:
        Depth. [m]

    Valid:
        Dwellings.

    Sources:
        irc-2018, R311.7.5.2; second-hand.

    Example:
        >>> stair_tread_need()
        0.254
    """
    return 10 * INCH
