"""How far stacked logs have come down by a height and a month, and what that does to posts and porch roofs."""

from __future__ import annotations

from types import MappingProxyType

from speclint.science.after import after
from speclint.science.inputs import above_zero, between, known, not_negative
from speclint.science.settlement import SEASONINGS

# months after stacking: part of the settlement that is over by then
SHARES = MappingProxyType(
    {
        #                 0     3     6    12    24    36   60
        "green":         (0.0, 0.15, 0.30, 0.50, 0.75, 0.90, 1.0),
        "air-dried":     (0.0, 0.25, 0.45, 0.65, 0.85, 0.95, 1.0),
        "standing dead": (0.0, 0.25, 0.45, 0.65, 0.85, 0.95, 1.0),
        "kiln-dried":    (0.0, 0.40, 0.60, 0.80, 0.95, 1.0, 1.0),
    }
)  # fmt: skip
MONTHS = (0, 3, 6, 12, 24, 36, 60)
VISITS = (3, 6, 12, 18, 24, 30, 36, 42, 48, 54, 60)  # months; twice a year once the first winter is over
LEAST_TURN = 0.003  # m: less is left to the next visit


@after("", "settling in proportion to the height of logs below", "common practice")
def settlement_at(height: float, rate: float) -> float:
    """How far a place on a wall of logs comes down until the wall is at rest.

    Args:
        height: Height of the place above the lowest log. [m]
        rate: Settlement as a share of the height. [-]

    Returns:
        Settlement at that height. [m]

    Valid:
        Walls of like logs, which all settle alike.

    Raises:
        ValueError: If the height is negative, or the rate is not between 0 and 1.

    Sources:
        common practice: settling in proportion to the height of logs below.

    Example:
        >>> round(settlement_at(2.4384, 0.06), 4)
        0.1463
    """
    not_negative(height=height)
    between(0, 1, rate=rate)
    return height * rate


@after("", "course of settling over five years", "ours")
def settled_share(months: float, seasoning: str) -> float:
    """Part of the settlement that is over some time after stacking.

    Builders tell of about five years until jacks can be left alone, with most of it in the first two; the steps in
    between are ours, and a heated house is quicker than one that stands cold.

    Args:
        months: Time after stacking. [month]
        seasoning: How the logs were dried: green, air-dried, standing dead or kiln-dried. [-]

    Returns:
        Share of the whole settlement. [-]

    Valid:
        Roofed and heated houses; straight lines between the months of the table.

    Raises:
        ValueError: If the time is negative or the word is not in the table.

    Sources:
        ours: course of settling over five years.

    Example:
        >>> round(settled_share(18, "green"), 3)
        0.625
    """
    not_negative(months=months)
    known(SEASONINGS, seasoning=seasoning)
    shares = SHARES[seasoning]
    for at in range(1, len(MONTHS)):
        before, then = MONTHS[at - 1], MONTHS[at]
        if months <= then:
            return shares[at - 1] + (shares[at] - shares[at - 1]) * (months - before) / (then - before)
    return shares[-1]


@after("", "course of settling over five years, adjusted about twice a year", "ours")
def adjuster_turns(settles: float, seasoning: str) -> tuple[tuple[int, float], ...]:
    """When to lower the adjuster of a post beside a settling wall, and how far each time.

    Args:
        settles: How far the wall comes down beside the post until it is at rest. [m]
        seasoning: How the logs of the wall were dried. [-]

    Returns:
        Pairs of months after stacking and how far to lower; the parts add to the whole. [month, m]

    Valid:
        Walls that settle as `settled_share` tells; what is measured at the house goes before it.

    Raises:
        ValueError: If the settlement is negative or the word is not in the table.

    Sources:
        ours: course of settling over five years, adjusted about twice a year.

    Example:
        >>> [(month, round(lower, 3)) for month, lower in adjuster_turns(0.02, "kiln-dried")]
        [(3, 0.008), (6, 0.004), (12, 0.004), (24, 0.003), (36, 0.001)]
    """
    not_negative(settles=settles)
    turns: list[tuple[int, float]] = []
    done, last = 0.0, 1.0
    for month in VISITS:
        share = settled_share(month, seasoning)
        lower = settles * share - done
        if lower >= LEAST_TURN - 1e-9 or (share >= last and lower > 1e-9):
            turns.append((month, lower))
            done += lower
    return tuple(turns)


@after("", "fall lost between a settling wall and posts that stand", "common practice")
def roof_tilt(settles: float, followed: float, span: float) -> float:
    """Slope that a porch roof loses where the wall comes down and the posts do not follow.

    Args:
        settles: How far the wall comes down where the roof hangs on it. [m]
        followed: How far the posts are lowered. [m]
        span: Level distance from the wall to the posts. [m]

    Returns:
        Slope lost; negative where the posts go farther down than the wall. [m/m]

    Valid:
        Roofs that a wall carries on one side and posts on the other.

    Raises:
        ValueError: If a movement is negative, or the distance is not above zero.

    Sources:
        common practice: fall lost between a settling wall and posts that stand.

    Example:
        >>> round(roof_tilt(0.0254, 0.0, 3.6576) * 12, 4)
        0.0833
    """
    not_negative(settles=settles, followed=followed)
    above_zero(span=span)
    return (settles - followed) / span
