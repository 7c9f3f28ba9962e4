"""Snow on the ground, on roofs, and sliding from one roof to a lower one.

The 2016 loads and the 2022 loads are different systems; a ground load of one must not enter a formula of the other.
"""

from __future__ import annotations

import math

from speclint.science.after import after
from speclint.science.inputs import above_zero, not_negative
from speclint.science.trade_units import FOOT, PCF, PSF

DENSEST = 30 * PCF
SLIDES_ONTO = 15 * FOOT


@after("asce-7-16", "Eq. 7.7-1", "second-hand", ground_load=(0, 14364))
def snow_density(ground_load: float) -> float:
    """Weight of packed snow by volume.

    Args:
        ground_load: Ground snow load of the place. [Pa]

    Returns:
        Weight by volume, at most 30 lb/ft3. [N/m3]

    Valid:
        ground_load: 0 to 14364.

    Raises:
        ValueError: If the load is negative.

    Sources:
        asce-7-16, Eq. 7.7-1; second-hand.

    Example:
        >>> round(snow_density(1197.0))
        2710
    """
    not_negative(ground_load=ground_load)
    return min((0.13 * ground_load / PSF + 14) * PCF, DENSEST)


@after("", "ground snow load over its weight by volume", "ours")
def ground_snow_depth(ground_load: float) -> float:
    """Depth of snow on the ground in the design winter; an average winter has less.

    Args:
        ground_load: Ground snow load of the place. [Pa]

    Returns:
        Depth. [m]

    Valid:
        Level ground without drifts.

    Raises:
        ValueError: If the load is negative.

    Sources:
        ours: ground snow load over its weight by volume.

    Example:
        >>> round(ground_snow_depth(2394.0), 2)
        0.74
    """
    return ground_load / snow_density(ground_load)


@after("asce-7-16", "Eq. 7.3-1", "second-hand")
def flat_roof_snow(
    ground_load: float, exposure_factor: float = 1.0, thermal_factor: float = 1.0, importance: float = 1.0
) -> float:
    """Snow load of a flat roof.

    Args:
        ground_load: Ground snow load of the place. [Pa]
        exposure_factor: Factor for wind at the roof: 0.7 swept to 1.2 sheltered. [-]
        thermal_factor: Factor for heat: 1.0 heated, 1.1 cold ventilated, 1.2 open or unheated. [-]
        importance: Factor for the use of the building; 1 for dwellings. [-]

    Returns:
        Load on the level area. [Pa]

    Valid:
        Ground loads of the 2016 maps; a screen only.

    Raises:
        ValueError: If the load is negative or a factor is not above zero.

    Sources:
        asce-7-16, Eq. 7.3-1; second-hand.

    Example:
        >>> round(flat_roof_snow(1000.0), 6)
        700.0
    """
    not_negative(ground_load=ground_load)
    above_zero(exposure_factor=exposure_factor, thermal_factor=thermal_factor, importance=importance)
    return 0.7 * exposure_factor * thermal_factor * importance * ground_load


LEAST_LOAD = 957.6  # Pa: 20 psf
LOW_SLOPE = 15.0  # degrees


@after("asce-7-16", "7.3.4", "second-hand", pitch=(0, 4))
def low_slope_minimum(ground_load: float, pitch: float, importance: float = 1.0) -> float:
    """Least snow load of a roof of low slope, a case of its own that is not added to slides or drifts.

    Args:
        ground_load: Ground snow load of the place. [Pa]
        pitch: Rise over run of the roof. [-]
        importance: Factor for the use of the building; 1 for dwellings. [-]

    Returns:
        Load on the level area; 0 from 15 degrees. [Pa]

    Valid:
        pitch: 0 to 4.

    Raises:
        ValueError: If the load or the pitch is negative, or the factor is not above zero.

    Sources:
        asce-7-16, 7.3.4; second-hand.

    Example:
        >>> low_slope_minimum(718.2, 2 / 12), low_slope_minimum(718.2, 4 / 12)
        (718.2, 0.0)
    """
    not_negative(ground_load=ground_load, pitch=pitch)
    above_zero(importance=importance)
    low = math.degrees(math.atan(pitch)) < LOW_SLOPE
    return importance * min(ground_load, LEAST_LOAD) if low else 0.0


# thermal factor up to: (degrees where a slippery roof starts to shed, degrees where any other does)
SHEDS_FROM = ((1.0, 5.0, 30.0), (1.1, 10.0, 37.5), (math.inf, 15.0, 45.0))
BARE = 70.0  # degrees at which no snow lies


@after("asce-7-16", "Figure 7.4-1", "second-hand", pitch=(0, 4), thermal_factor=(0.85, 1.3))
def slope_factor(pitch: float, thermal_factor: float, slippery: bool) -> float:
    """Share of the flat-roof snow that a sloped roof carries.

    Args:
        pitch: Rise over run of the roof. [-]
        thermal_factor: Factor for heat: 1.0 heated, 1.1 cold ventilated, 1.2 open or unheated. [-]
        slippery: Whether nothing holds the snow: a smooth covering without guards, free to shed. [-]

    Returns:
        Factor on the flat-roof load, 1 to 0. [-]

    Valid:
        pitch: 0 to 4; thermal_factor: 0.85 to 1.3.

    Raises:
        ValueError: If the pitch is negative or the factor is not above zero.

    Sources:
        asce-7-16, Figure 7.4-1; second-hand.

    Example:
        >>> round(slope_factor(0.5, 1.0, True), 4)
        0.6682
    """
    not_negative(pitch=pitch)
    above_zero(thermal_factor=thermal_factor)
    degrees = math.degrees(math.atan(pitch))
    smooth, rough = next((low, high) for most, low, high in SHEDS_FROM if thermal_factor <= most)
    starts = smooth if slippery else rough
    return min(1.0, max(0.0, (BARE - degrees) / (BARE - starts)))


@after("", "snow of the roof heaped on a strip of ground along the wall", "ours")
def shed_snow_depth(line_load: float, strip: float, density: float) -> float:
    """Depth that snow shed from a roof adds to the bank along a wall, when it has slid down in one go.

    Args:
        line_load: Snow that slides, by length of eave. [N/m]
        strip: Width of the strip of ground on which it comes to lie. [m]
        density: Weight of packed snow by volume. [N/m3]

    Returns:
        Depth added. [m]

    Valid:
        One slide of the design load; several small ones pack tighter and melt between.

    Raises:
        ValueError: If the load is negative, or the strip or the density is not above zero.

    Sources:
        ours: snow of the roof heaped on a strip of ground along the wall.

    Example:
        >>> round(shed_snow_depth(3260.0, 1.83, 3220.0), 2)
        0.55
    """
    not_negative(line_load=line_load)
    above_zero(strip=strip, density=density)
    return line_load / strip / density


@after("asce-7-16", "7.9", "second-hand")
def sliding_snow(flat_load: float, run: float) -> float:
    """Snow that slides from an upper roof, for each length of its eave.

    Args:
        flat_load: Flat-roof snow load of the upper roof. [Pa]
        run: Level run of the upper roof, eave to ridge. [m]

    Returns:
        Load along the eave. [N/m]

    Valid:
        Slippery roofs steeper than 1/4:12 and others steeper than 2:12, without snow guards.

    Raises:
        ValueError: If the load or the run is negative.

    Sources:
        asce-7-16, 7.9; second-hand.

    Example:
        >>> sliding_snow(1500.0, 5.0)
        3000.0
    """
    not_negative(flat_load=flat_load, run=run)
    return 0.4 * flat_load * run


@after("asce-7-16", "7.9", "second-hand")
def sliding_snow_pressure(flat_load: float, run: float) -> float:
    """Sliding snow spread over the 15 ft of lower roof or deck next to the upper eave.

    Args:
        flat_load: Flat-roof snow load of the upper roof. [Pa]
        run: Level run of the upper roof, eave to ridge. [m]

    Returns:
        Load, on top of the snow already there. [Pa]

    Valid:
        Lower roofs and decks close under the upper eave.

    Raises:
        ValueError: If the load or the run is negative.

    Sources:
        asce-7-16, 7.9; second-hand.

    Example:
        >>> round(sliding_snow_pressure(1524.0, 6.0), 6)
        800.0
    """
    return sliding_snow(flat_load, run) / SLIDES_ONTO
