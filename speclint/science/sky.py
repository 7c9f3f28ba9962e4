"""Sun through a clear sky, and what clouds leave of it."""

from __future__ import annotations

import math

from speclint.science.after import after
from speclint.science.inputs import between, not_negative

SOLAR_CONSTANT = 1366.1
# ultraviolet of 300 to 400 nm: W/m2 outside the air, depth of the air, exponent of the air mass
ULTRAVIOLET_BEAM = (97.0, 0.827, 0.878)
ULTRAVIOLET_DIFFUSE = (61.9, 1.214, 0.418)
# the same curve for the share of the sky's ultraviolet that glows close around the sun
ULTRAVIOLET_GLOW = (0.979, 0.734, 0.908)
SKY_ALBEDO = 0.294
"""Share of ultraviolet from the ground that a clear sky throws back."""


@after("kasten-young-1989", "approximation formula", "second-hand", altitude=(0, 90))
def air_mass(altitude: float) -> float:
    """Length of the sun's way through the air, as a multiple of the way straight up.

    Args:
        altitude: Apparent altitude of the sun. [deg]

    Returns:
        Relative optical air mass at sea level. [-]

    Valid:
        altitude: 0 to 90.

    Raises:
        ValueError: If the altitude is not between 0 and 90 degrees.

    Sources:
        kasten-young-1989, approximation formula; second-hand.

    Example:
        >>> round(air_mass(30.0), 3)
        1.994
    """
    between(0, 90, altitude=altitude)
    return 1 / (math.sin(math.radians(altitude)) + 0.50572 * math.pow(altitude + 6.07995, -1.6364))


@after("spencer-1971", "series for the distance of the sun", "second-hand", day=(1, 366))
def extraterrestrial_normal(day: float, solar_constant: float = SOLAR_CONSTANT) -> float:
    """Sun outside the air, square to the beam.

    Args:
        day: Day of the year. [d]
        solar_constant: The same at the mean distance of the sun. [W/m2]

    Returns:
        Irradiance. [W/m2]

    Valid:
        day: 1 to 366.

    Raises:
        ValueError: If the day is not between 1 and 367 or the constant is negative.

    Sources:
        spencer-1971, series for the distance of the sun; second-hand.

    Example:
        >>> round(extraterrestrial_normal(172), 2)
        1321.62
    """
    between(1, 367, day=day)
    not_negative(solar_constant=solar_constant)
    turn = 2 * math.pi * (day - 1) / 365
    return solar_constant * (
        1.000110
        + 0.034221 * math.cos(turn)
        + 0.001280 * math.sin(turn)
        + 0.000719 * math.cos(2 * turn)
        + 0.000077 * math.sin(2 * turn)
    )


@after("ashrae-fundamentals-2013", "air mass exponents of the clear sky", "second-hand")
def clear_sky_exponents(beam_depth: float, diffuse_depth: float) -> tuple[float, float]:
    """Exponents of the air mass for beam and for diffuse light.

    Args:
        beam_depth: Optical depth of the place and month for the beam. [-]
        diffuse_depth: The same for diffuse light. [-]

    Returns:
        Exponents for beam and for diffuse light. [-]

    Valid:
        Depths of the tables since 2013; those of 2009 have exponents of their own.

    Raises:
        ValueError: If a depth is negative.

    Sources:
        ashrae-fundamentals-2013, air mass exponents of the clear sky; second-hand.

    Example:
        >>> beam, diffuse = clear_sky_exponents(0.35, 2.30)
        >>> round(beam, 6), round(diffuse, 6)
        (0.712405, 0.2418)
    """
    not_negative(beam_depth=beam_depth, diffuse_depth=diffuse_depth)
    both = beam_depth * diffuse_depth
    beam = 1.454 - 0.406 * beam_depth - 0.268 * diffuse_depth + 0.021 * both
    diffuse = 0.507 + 0.205 * beam_depth - 0.080 * diffuse_depth - 0.190 * both
    return beam, diffuse


@after("ashrae-fundamentals-2013", "clear-sky irradiance", "second-hand")
def clear_sky(
    altitude: float, day: float, beam_depth: float = 0.35, diffuse_depth: float = 2.30
) -> tuple[float, float]:
    """Sun under a clear sky: beam square to the sun, and light of the sky onto the level.

    The depths given are ours, for a place without its own; places and months run from about 0.25 to 0.7 and from
    1.5 to 2.8.

    Args:
        altitude: Apparent altitude of the sun. [deg]
        day: Day of the year. [d]
        beam_depth: Optical depth of the place and month for the beam. [-]
        diffuse_depth: The same for diffuse light. [-]

    Returns:
        Beam on a plane square to it, and diffuse light onto the level; nothing while the sun is down. [W/m2]

    Valid:
        Depths of the tables since 2013.

    Raises:
        ValueError: If the altitude is not between -90 and 90 degrees, the day not between 1 and 367,
            or a depth is negative.

    Sources:
        ashrae-fundamentals-2013, clear-sky irradiance; second-hand.

    Example:
        >>> beam, diffuse = clear_sky(30.0, 80)
        >>> round(beam), round(diffuse)
        (777, 91)
    """
    between(-90, 90, altitude=altitude)
    outside = extraterrestrial_normal(day)
    for_beam, for_diffuse = clear_sky_exponents(beam_depth, diffuse_depth)
    if altitude <= 0:
        return 0.0, 0.0
    mass = air_mass(altitude)
    return (
        outside * math.exp(-beam_depth * mass**for_beam),
        outside * math.exp(-diffuse_depth * mass**for_diffuse),
    )


@after("", "fit to a public spectral model of clear air, 300 to 400 nm", "ours", altitude=(1, 90))
def ultraviolet(altitude: float, day: float, albedo: float = 0.2) -> tuple[float, float]:
    """Ultraviolet under a clear sky: beam square to the sun, and light of the sky onto the level.

    The glow close around the sun comes from the same side as the beam and is counted with it, so that the rest of the
    sky may be taken as evenly bright. Fitted to 0.31 atm-cm of ozone, 1.4 cm of water, haze of depth 0.1 at 500 nm and
    a pressure of 97.8 kPa: above 1 degree within 0.15 W/m2 each over ground that throws back up to 0.7; a clear year
    on the level and on upright walls at 46 degrees within 1 %. Dustier, moister or thinner air is not counted.

    Args:
        altitude: Apparent altitude of the sun. [deg]
        day: Day of the year. [d]
        albedo: Share of ultraviolet that the ground throws back; the sky returns part of it. [-]

    Returns:
        Beam and glow on a plane square to the sun, and other light of the sky onto the level, of 300 to 400 nm. [W/m2]

    Valid:
        altitude: 1 to 90.

    Raises:
        ValueError: If the altitude is not between -90 and 90 degrees, the day not between 1 and 367,
            or the albedo not between 0 and 1.

    Sources:
        ours: fit to a public spectral model of clear air, 300 to 400 nm.

    Example:
        >>> beam, diffuse = ultraviolet(30.0, 80)
        >>> round(beam, 1), round(diffuse, 1)
        (28.3, 10.4)
    """
    between(-90, 90, altitude=altitude)
    between(0, 1, albedo=albedo)
    distance = extraterrestrial_normal(day, 1.0)
    if altitude <= 0:
        return 0.0, 0.0
    mass = air_mass(altitude)
    up = math.sin(math.radians(altitude))
    beam, scattered, glow = (
        outside * math.exp(-depth * mass**exponent)
        for outside, depth, exponent in (ULTRAVIOLET_BEAM, ULTRAVIOLET_DIFFUSE, ULTRAVIOLET_GLOW)
    )
    sky = (beam * up + scattered) / (1 - SKY_ALBEDO * albedo) - beam * up
    return distance * (beam + glow * sky / up), distance * (1 - glow) * sky


@after("fao-56", "Eq. 35", "second-hand", sunshine=(0, 1))
def sunshine_share_to_global(sunshine: float) -> float:
    """Share of the sun outside the air that reaches level ground, from the share of daylight with bright sunshine.

    Under a sky that is clear all day it is 0.75; divide by that for the share of a clear day.

    Args:
        sunshine: Hours of bright sunshine over hours of daylight. [-]

    Returns:
        Global radiation over extraterrestrial radiation, both onto the level. [-]

    Valid:
        sunshine: 0 to 1.

    Raises:
        ValueError: If the share is not between 0 and 1.

    Sources:
        fao-56, Eq. 35; second-hand.

    Example:
        >>> sunshine_share_to_global(0.5)
        0.5
    """
    between(0, 1, sunshine=sunshine)
    return 0.25 + 0.50 * sunshine
