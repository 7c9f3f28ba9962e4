"""How strongly the climate favours decay of wood above ground."""

from __future__ import annotations

from collections.abc import Sequence

from speclint.science.after import after
from speclint.science.inputs import between

COLD = 35.0
"""Monthly mean below which decay stands still. [deg F]"""
DRY = 3.0
"""Wet days in a month up to which wood dries out between rains. [days]"""
LOW_BELOW = 35.0
HIGH_ABOVE = 65.0


@after("scheffer-1971", "index formula", "memory")
def decay_hazard_index(mean_temperature: Sequence[float], wet_days: Sequence[float]) -> float:
    """Decay hazard index of a climate, from a year of monthly means.

    The original form in degrees Fahrenheit is used; the metric form in circulation gives up to five points less.
    Each factor is cut off at zero on its own, so that a month both cold and dry adds nothing.

    Args:
        mean_temperature: Mean temperature of each month. [deg C]
        wet_days: Mean number of days with 0.25 mm of rain or more, of each month. [days]

    Returns:
        Decay hazard index. [-]

    Valid:
        Wood above ground; fitted to three places in the United States.

    Raises:
        ValueError: If there are not twelve months of each, a mean temperature is not between -100 and 70, or a month
            has less than 0 or more than 31 wet days.

    Sources:
        scheffer-1971, index formula; memory.

    Example:
        >>> round(decay_hazard_index([20.0] * 12, [10] * 12), 1)
        92.4
    """
    if len(mean_temperature) != 12 or len(wet_days) != 12:
        raise ValueError(f"months: wanted 12 and 12; got {len(mean_temperature)} and {len(wet_days)}")
    total = 0.0
    for celsius, days in zip(mean_temperature, wet_days, strict=True):
        between(-100, 70, mean_temperature=celsius)
        between(0, 31, wet_days=days)
        fahrenheit = 32 + 1.8 * celsius
        total += max(0.0, fahrenheit - COLD) * max(0.0, days - DRY) / 30
    return total


@after("scheffer-1971", "hazard classes", "second-hand")
def decay_hazard_class(index: float) -> str:
    """The hazard class of a decay hazard index: low, moderate or high.

    A government building guide prints the upper limit as 65; a paper that quotes the author prints 70.
    The lower of the two is used.

    Args:
        index: Decay hazard index. [-]

    Returns:
        The class, a word. [-]

    Valid:
        North American climates.

    Raises:
        ValueError: If the index is negative.

    Sources:
        scheffer-1971, hazard classes; second-hand.

    Example:
        >>> decay_hazard_class(42)
        'moderate'
    """
    between(0, 1000, index=index)
    if index < LOW_BELOW:
        return "low"
    return "moderate" if index <= HIGH_ABOVE else "high"
