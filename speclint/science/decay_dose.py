"""Decay by dose: each day's moisture and warmth of the wood adds up until decay sets in.

All coefficients are recalled, not read; they agree with each other, which is tested, and that is all that is known.
The simplified model of the same authors is not here: it lets wood decay that is too dry to.
"""

from __future__ import annotations

import math
from collections.abc import Sequence

from speclint.science.after import after
from speclint.science.inputs import above_zero, between, not_negative

DRY = 25.0
"""Moisture content below which a day adds nothing. [%]"""
FREEZES, TOO_HOT = -1.0, 40.0
"""Lowest and highest temperature of a day outside which it adds nothing. [deg C]"""
MOISTURE = (-4.98, 0.34, -7.22e-3, 7.18e-5, -3.50e-7, 6.75e-10)
WARMTH = (0.0, 4.17e-2, -1.55e-3, 9.57e-5, -1.8e-6)
WARMTH_WEIGHT = 3.2
CRITICAL = 325.0
DAYS = (31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31)


@after("brischke-rapp-2008", "dose of moisture", "memory", moisture=(25, 100))
def moisture_dose(moisture: float) -> float:
    """What the moisture of a day adds: most at about half the dry weight, less in sodden wood; above 100 % as at 100 %.

    Args:
        moisture: Mean moisture content of the day. [%]

    Returns:
        Dose, from 0 to 1. [-]

    Valid:
        moisture: 25 to 100.

    Raises:
        ValueError: If the moisture content is negative or above 400 %.

    Sources:
        brischke-rapp-2008, dose of moisture; memory.

    Example:
        >>> round(moisture_dose(30.0), 4), moisture_dose(24.0)
        (0.3935, 0.0)
    """
    between(0, 400, moisture=moisture)
    if moisture < DRY:
        return 0.0
    return min(1.0, max(0.0, _sum(MOISTURE, min(moisture, 100.0))))


@after("brischke-rapp-2008", "dose of warmth", "memory", temperature_mean=(-1, 40))
def temperature_dose(temperature_mean: float, temperature_low: float, temperature_high: float) -> float:
    """What the warmth of a day adds, if the wood is moist.

    Args:
        temperature_mean: Mean temperature of the wood over the day. [deg C]
        temperature_low: Its lowest temperature. [deg C]
        temperature_high: Its highest temperature. [deg C]

    Returns:
        Dose, from 0 to 1. [-]

    Valid:
        temperature_mean: -1 to 40.

    Raises:
        ValueError: If the mean lies outside the lowest and the highest.

    Sources:
        brischke-rapp-2008, dose of warmth; memory.

    Example:
        >>> round(temperature_dose(20.0, 15.0, 25.0), 4), temperature_dose(2.0, -3.0, 6.0)
        (0.6916, 0.0)
    """
    between(temperature_low, temperature_high, temperature_mean=temperature_mean)
    if temperature_low <= FREEZES or temperature_high >= TOO_HOT:
        return 0.0
    return min(1.0, max(0.0, _sum(WARMTH, temperature_mean)))


@after("brischke-rapp-2008", "dose of a day", "memory", moisture=(0, 100), temperature_mean=(-1, 40))
def daily_dose(moisture: float, temperature_mean: float, temperature_low: float, temperature_high: float) -> float:
    """What a day adds: moisture and warmth weighed together, nothing where either is wanting.

    Args:
        moisture: Mean moisture content of the wood over the day. [%]
        temperature_mean: Mean temperature of the wood over the day. [deg C]
        temperature_low: Its lowest temperature. [deg C]
        temperature_high: Its highest temperature. [deg C]

    Returns:
        Dose, from 0 to 1; a sum over days is told in days. [-]

    Valid:
        moisture: 0 to 100; temperature_mean: -1 to 40.

    Raises:
        ValueError: If the moisture content is impossible or the mean lies outside the lowest and the highest.

    Sources:
        brischke-rapp-2008, dose of a day; memory.

    Example:
        >>> round(daily_dose(30.0, 20.0, 15.0, 25.0), 4)
        0.6206
    """
    wet = moisture_dose(moisture)
    warm = temperature_dose(temperature_mean, temperature_low, temperature_high)
    return (WARMTH_WEIGHT * warm + wet) / (WARMTH_WEIGHT + 1) if wet > 0 and warm > 0 else 0.0


@after("", "doses of brischke-rapp-2008 with every day at the mean of its month", "ours")
def months_dose(moisture: Sequence[float], temperature: Sequence[float]) -> float:
    """Dose of a year from monthly means: no bound, for wet spells vanish, and frosty nights and hot noons are not seen.

    Args:
        moisture: Mean moisture content of the wood in each month. [%]
        temperature: Mean temperature of the wood in each month. [deg C]

    Returns:
        Dose of the year. [d]

    Valid:
        For comparing exposures, not for telling years.

    Raises:
        ValueError: If there are not twelve months of each, or a moisture content is impossible.

    Sources:
        ours: doses of brischke-rapp-2008 with every day at the mean of its month.

    Example:
        >>> round(months_dose([20.0] * 6 + [30.0] * 6, [20.0] * 12), 1)
        114.2
    """
    if len(moisture) != 12 or len(temperature) != 12:
        raise ValueError(f"months: wanted 12 and 12; got {len(moisture)} and {len(temperature)}")
    months = zip(DAYS, moisture, temperature, strict=True)
    return sum(days * daily_dose(wet, warm, warm, warm) for days, wet, warm in months)


@after("brischke-rapp-2008", "rating by dose, pine sapwood and Douglas-fir heartwood", "memory")
def decay_rating(dose: float) -> float:
    """Mean rating of many pieces after a dose: 0 sound, 1 slight, 4 failed.

    Args:
        dose: Sum of the daily doses. [d]

    Returns:
        Mean rating, from 0 to 4. [-]

    Valid:
        Pieces stacked in two layers above ground, up to seven years, in Europe.

    Raises:
        ValueError: If the dose is negative.

    Sources:
        brischke-rapp-2008, rating by dose, pine sapwood and Douglas-fir heartwood; memory.

    Example:
        >>> round(decay_rating(325.0), 2)
        0.5
    """
    not_negative(dose=dose)
    return _rating(dose, 1.7716, 0.0032)


@after("brischke-meyer-veltrup-2016", "rating by dose, brown rot", "memory")
def brown_rot_rating(dose: float) -> float:
    """Mean rating of many pieces that brown rot attacks, after a dose: 0 sound, 1 slight, 4 failed.

    Args:
        dose: Sum of the daily doses. [d]

    Returns:
        Mean rating, from 0 to 4. [-]

    Valid:
        Pieces above ground in Europe.

    Raises:
        ValueError: If the dose is negative.

    Sources:
        brischke-meyer-veltrup-2016, rating by dose, brown rot; memory.

    Example:
        >>> round(brown_rot_rating(629.0), 1)
        2.0
    """
    not_negative(dose=dose)
    return _rating(dose, 1.9612, 0.0037)


@after("brischke-rapp-2008", "rating by dose, solved for the dose", "memory")
def dose_to_rating(rating: float) -> float:
    """Dose after which many pieces have a mean rating.

    Args:
        rating: Mean rating. [-]

    Returns:
        Dose. [d]

    Valid:
        Ratings that the model reaches after some dose: from 0.012.

    Raises:
        ValueError: If the rating is not above 0 and below 4.

    Sources:
        brischke-rapp-2008, rating by dose, solved for the dose; memory.

    Example:
        >>> round(dose_to_rating(1.0), 1)
        451.6
    """
    if not 0 < rating < 4:
        raise ValueError(f"rating: wanted a number above 0 and below 4; got {rating:g}")
    return max(0.0, (1.7716 - math.log(-math.log(rating / 4))) / 0.0032)


@after("meyer-veltrup-2017", "dose at the onset of decay, by wetting and inhibition", "memory")
def critical_dose(wetting: float, inhibition: float) -> float:
    """Dose at which decay sets in: that of the reference wood, times how slowly a wood wets and how it inhibits decay.

    Args:
        wetting: Factor of wetting; 1 for the reference. [-]
        inhibition: Factor of inhibition; 1 for the reference. [-]

    Returns:
        Dose. [d]

    Valid:
        No factors of species are held: they were not found.

    Raises:
        ValueError: If a factor is not above zero.

    Sources:
        meyer-veltrup-2017, dose at the onset of decay, by wetting and inhibition; memory.

    Example:
        >>> critical_dose(1.0, 1.0)
        325.0
    """
    above_zero(wetting=wetting, inhibition=inhibition)
    return CRITICAL * wetting * inhibition


def _sum(coefficients: Sequence[float], value: float) -> float:
    return sum(coefficient * value**power for power, coefficient in enumerate(coefficients))


def _rating(dose: float, start: float, rate: float) -> float:
    return 4 * math.exp(-math.exp(start - rate * dose))
