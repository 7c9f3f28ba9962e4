"""Sizes and fall speeds of raindrops, and which of them slanting rain carries past a roof edge.

A drop that falls at V while the wind blows at U towards a wall moves U/V sideways for each metre it falls.
It clears an edge that reaches p past the wall, and strikes d below that edge, if V is no more than U d/p: the slant.
"""

from __future__ import annotations

import math
from bisect import bisect_left, bisect_right
from functools import lru_cache
from itertools import accumulate

from speclint.science.after import after
from speclint.science.inputs import above_zero, not_negative

Drop = tuple[float, float, float]

# diameter [mm], fall speed [m/s]; the first point is ours
FALL = (
    (0.000, 0.00), (0.078, 0.18), (0.100, 0.27), (0.200, 0.72), (0.300, 1.17), (0.400, 1.62),
    (0.500, 2.06), (0.600, 2.47), (0.700, 2.87), (0.800, 3.27), (0.900, 3.67), (1.000, 4.03),
    (1.200, 4.64), (1.400, 5.17), (1.600, 5.65), (1.800, 6.09), (2.000, 6.49), (2.200, 6.90),
    (2.400, 7.27), (2.600, 7.57), (2.800, 7.82), (3.000, 8.06), (3.200, 8.26), (3.400, 8.44),
    (3.600, 8.60), (3.800, 8.72), (4.000, 8.83), (4.200, 8.92), (4.400, 8.98), (4.600, 9.03),
    (4.800, 9.07), (5.000, 9.09), (5.200, 9.12), (5.400, 9.14), (5.600, 9.16), (5.800, 9.17),
)  # fmt: skip
DIAMETERS = tuple(diameter for diameter, _ in FALL)
SPEEDS = tuple(speed for _, speed in FALL)
LARGEST = DIAMETERS[-1]
FASTEST = SPEEDS[-1]
"""Fall speed of the largest drops; no wind that blows this much past an edge leaves any drop behind. [m/s]"""

SCALE = 1.30
SCALE_POWER = 0.232
SPREAD = 2.25
WATER = 67.0
WATER_POWER = 0.846

# abscissas and weights of the three-point rule on the span from 0 to 1
GAUSS = ((0.5 - math.sqrt(0.15), 5 / 18), (0.5, 8 / 18), (0.5 + math.sqrt(0.15), 5 / 18))


@after("gunn-kinzer-1949", "Table 2", "second-hand", diameter=(0.078, 5.8))
def fall_speed(diameter: float) -> float:
    """Speed at which a drop of water falls through still air.

    Between the points of the table the speed is taken on a straight line; above the last it stays.

    Args:
        diameter: Diameter of the drop. [mm]

    Returns:
        Fall speed. [m/s]

    Valid:
        diameter: 0.078 to 5.8.

    Raises:
        ValueError: If the diameter is negative.

    Sources:
        gunn-kinzer-1949, Table 2; second-hand.

    Example:
        >>> fall_speed(2.0)
        6.49
    """
    not_negative(diameter=diameter)
    if diameter >= LARGEST:
        return FASTEST
    return _on_line(diameter, DIAMETERS, SPEEDS, bisect_right(DIAMETERS, diameter))


@after("gunn-kinzer-1949", "Table 2, read from speed to diameter", "second-hand", speed=(0.18, 9.17))
def diameter_falling_at(speed: float) -> float:
    """Diameter of the drop that falls at a speed.

    Args:
        speed: Fall speed. [m/s]

    Returns:
        Diameter of the drop; infinite where every drop falls more slowly or no faster. [mm]

    Valid:
        speed: 0.18 to 9.17.

    Raises:
        ValueError: If the speed is negative.

    Sources:
        gunn-kinzer-1949, Table 2, read from speed to diameter; second-hand.

    Example:
        >>> diameter_falling_at(6.49), diameter_falling_at(12.0)
        (2.0, inf)
    """
    not_negative(speed=speed)
    if speed >= FASTEST:
        return math.inf
    return _on_line(speed, SPEEDS, DIAMETERS, bisect_right(SPEEDS, speed))


@after("best-1950", "scale of the drop sizes", "second-hand")
def size_scale(rate: float) -> float:
    """Diameter below which 63 % of the water in the air is found; not the median.

    Args:
        rate: Rain on level ground. [mm/h]

    Returns:
        Scale of the drop sizes. [mm]

    Valid:
        Steady rain; the sizes differ in showers and in rain lifted by hills.

    Raises:
        ValueError: If the rate is not above zero.

    Sources:
        best-1950, scale of the drop sizes; second-hand.

    Example:
        >>> round(size_scale(10.0), 3)
        2.218
    """
    above_zero(rate=rate)
    return SCALE * math.pow(rate, SCALE_POWER)


@after("best-1950", "scale of the drop sizes, to the power -2.25", "second-hand")
def size_steepness(rate: float) -> float:
    """The factor k with which the share of the water in drops larger than D is exp(-k D^2.25).

    Args:
        rate: Rain on level ground. [mm/h]

    Returns:
        Steepness of the drop sizes. [mm^-2.25]

    Valid:
        Steady rain; the sizes differ in showers and in rain lifted by hills.

    Raises:
        ValueError: If the rate is not above zero.

    Sources:
        best-1950, scale of the drop sizes, to the power -2.25; second-hand.

    Example:
        >>> round(size_steepness(1.0), 4)
        0.5542
    """
    return math.pow(size_scale(rate), -SPREAD)


@after("best-1950", "share of the water in smaller drops", "second-hand")
def water_in_smaller_drops(diameter: float, rate: float) -> float:
    """Share of the water in a volume of rainy air that is in drops smaller than a diameter.

    Args:
        diameter: Diameter of the drop. [mm]
        rate: Rain on level ground. [mm/h]

    Returns:
        Share, from 0 to 1. [-]

    Valid:
        Steady rain; the sizes differ in showers and in rain lifted by hills.

    Raises:
        ValueError: If the diameter is negative or the rate is not above zero.

    Sources:
        best-1950, share of the water in smaller drops; second-hand.

    Example:
        >>> round(water_in_smaller_drops(1.3, 1.0), 3)
        0.632
    """
    not_negative(diameter=diameter)
    return -math.expm1(-((diameter / size_scale(rate)) ** SPREAD))


@after("best-1950", "water in the air", "second-hand")
def water_in_air(rate: float) -> float:
    """Water in a volume of rainy air.

    Args:
        rate: Rain on level ground. [mm/h]

    Returns:
        Volume of drops in a cubic metre of air. [mm3/m3]

    Valid:
        Steady rain; the amount differs in showers and in rain lifted by hills.

    Raises:
        ValueError: If the rate is negative.

    Sources:
        best-1950, water in the air; second-hand.

    Example:
        >>> water_in_air(1.0)
        67.0
    """
    not_negative(rate=rate)
    return WATER * math.pow(rate, WATER_POWER)


@after("best-1950", "diameter at half of the water", "second-hand")
def median_diameter(rate: float) -> float:
    """Diameter that halves the water in the air: as much is in smaller drops as in larger ones.

    Args:
        rate: Rain on level ground. [mm/h]

    Returns:
        Diameter of the median drop. [mm]

    Valid:
        Steady rain; the sizes differ in showers and in rain lifted by hills.

    Raises:
        ValueError: If the rate is not above zero.

    Sources:
        best-1950, diameter at half of the water; second-hand.

    Example:
        >>> round(median_diameter(1.0), 3)
        1.105
    """
    return size_scale(rate) * math.pow(math.log(2), 1 / SPREAD)


@after("", "straight fall past an edge, drop sizes of best-1950, fall speeds of gunn-kinzer-1949", "ours")
def share_past_edge(slant: float, rate: float) -> float:
    """Share of the rain blown at a wall that clears the roof edge above and strikes the wall.

    Drops are weighed by the water they hold in the air, which is what wind carries through an upright plane.

    Args:
        slant: Wind towards the wall, times the depth below the edge, over the reach of the edge. [m/s]
        rate: Rain on level ground. [mm/h]

    Returns:
        Share, from 0 to 1. [-]

    Valid:
        Even wind over the height between edge and point, a long edge; light rain reaches real walls less than this.

    Raises:
        ValueError: If the slant is negative or the rate is not above zero.

    Sources:
        ours: straight fall past an edge, drop sizes of best-1950, fall speeds of gunn-kinzer-1949.

    Example:
        >>> round(share_past_edge(5.0, 2.0), 3)
        0.523
    """
    not_negative(slant=slant)
    return water_in_smaller_drops(diameter_falling_at(slant), rate)


@after("", "straight fall past an edge, the drops weighed by their fall speed", "ours")
def share_falling_past_edge(slant: float, rate: float) -> float:
    """Share of the rain that clears a roof edge and lands on a level surface below and behind it.

    Drops are weighed by water and fall speed, which is what falls through a level plane: large drops count
    for more than on a wall, and large drops are the ones an edge stops.

    Args:
        slant: Wind towards the surface, times its depth below the edge, over its distance behind the edge. [m/s]
        rate: Rain on level ground. [mm/h]

    Returns:
        Share, from 0 to 1. [-]

    Valid:
        Even wind over the height between edge and surface, a long edge.

    Raises:
        ValueError: If the slant is negative or the rate is not above zero.

    Sources:
        ours: straight fall past an edge, the drops weighed by their fall speed.

    Example:
        >>> round(share_falling_past_edge(5.0, 2.0), 3)
        0.377
    """
    not_negative(slant=slant)
    above_zero(rate=rate)
    if slant >= FASTEST:
        return 1.0
    steepness = size_steepness(rate)
    sums = _water_falling(steepness)
    last = max(1, bisect_left(SPEEDS, slant))
    drops = _drops(DIAMETERS[last - 1], _on_line(slant, SPEEDS, DIAMETERS, last), last)
    return min(1.0, (sums[last - 1] + _falling(drops, steepness)) / sums[-1])


@after("", "share past an edge, averaged over winds that follow Rayleigh and blow from all sides alike", "ours")
def rayleigh_share(slant: float, rate: float) -> float:
    """Share of the rain of many hours that clears the roof edge above and strikes the wall.

    For places where only means are known. Hours weigh by the wind towards the wall, which then follows Rayleigh too,
    with the mean of the whole wind; so a drop that needs the slant V to pass does so with exp(-pi/4 (V/slant)^2).

    Args:
        slant: Mean wind, times the depth below the edge, over the reach of the edge. [m/s]
        rate: Rain on level ground in a usual hour of rain. [mm/h]

    Returns:
        Share, from 0 to 1. [-]

    Valid:
        Winds without a prevailing direction; light rain reaches real walls less than this.

    Raises:
        ValueError: If the slant is negative or the rate is not above zero.

    Sources:
        ours: share past an edge, averaged over winds that follow Rayleigh and blow from all sides alike.

    Example:
        >>> round(rayleigh_share(3.0, 1.5), 3)
        0.249
    """
    not_negative(slant=slant)
    steepness = size_steepness(rate)
    if slant == 0:
        return 0.0
    chance = math.pi / 4 / slant**2
    passing = math.exp(-steepness * LARGEST_POWER - chance * FASTEST**2)
    for drops in DROPS:
        for weight, power, speed in drops:
            passing += steepness * weight * math.exp(-steepness * power - chance * speed**2)
    return min(1.0, passing)


def _on_line(at: float, places: tuple[float, ...], values: tuple[float, ...], after_it: int) -> float:
    """The value at a place on the straight line between two points of a table; the second is number `after_it`."""
    left, right = places[after_it - 1], places[after_it]
    low, high = values[after_it - 1], values[after_it]
    return low + (high - low) * (at - left) / (right - left)


def _drops(start: float, end: float, last: int) -> tuple[Drop, Drop, Drop]:
    """Three drops that stand for all from `start` to `end`, inside the segment that ends at point `last`.

    With k = size_steepness the share of the water in drops of diameter D is SPREAD k D^(SPREAD - 1) exp(-k D^SPREAD)
    for each millimetre. A drop holds its weight, which is that without k and the exponential, its D^SPREAD and speed.
    """
    span = end - start
    one, two, three = (
        (
            weight * span * SPREAD * math.pow(start + span * place, SPREAD - 1),
            math.pow(start + span * place, SPREAD),
            _on_line(start + span * place, DIAMETERS, SPEEDS, last),
        )
        for place, weight in GAUSS
    )
    return one, two, three


DROPS = tuple(_drops(DIAMETERS[last - 1], DIAMETERS[last], last) for last in range(1, len(FALL)))
"""Drops that stand for all up to the largest of the table, three for each of its segments."""
LARGEST_POWER = math.pow(LARGEST, SPREAD)


def _falling(drops: tuple[Drop, Drop, Drop], steepness: float) -> float:
    """Water times fall speed of three drops."""
    (one, first, slow), (two, second, middle), (three, third, fast) = drops
    return steepness * (
        one * slow * math.exp(-steepness * first)
        + two * middle * math.exp(-steepness * second)
        + three * fast * math.exp(-steepness * third)
    )


@lru_cache(maxsize=4096)
def _water_falling(steepness: float) -> tuple[float, ...]:
    """Water times fall speed of the drops up to each point of the table, and of all."""
    up_to = (0.0, *accumulate(_falling(drops, steepness) for drops in DROPS))
    return (*up_to, up_to[-1] + FASTEST * math.exp(-steepness * LARGEST_POWER))
