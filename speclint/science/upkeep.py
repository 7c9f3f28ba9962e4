"""Surface to coat, and money spread over years."""

from __future__ import annotations

import math

from speclint.science.after import after
from speclint.science.inputs import above_zero, between, not_negative


@after("", "arc over chord of a round log between its neighbours", "ours")
def log_surface_factor(diameter: float, course: float) -> float:
    """Surface of a wall of round logs over its flat area.

    Args:
        diameter: Diameter of the logs. [m]
        course: Height that each course of logs adds. [m]

    Returns:
        Surface factor. [-]

    Valid:
        Round logs of one diameter.

    Raises:
        ValueError: If the course is not above zero or exceeds the diameter.

    Sources:
        ours: arc over chord of a round log between its neighbours.

    Example:
        >>> round(log_surface_factor(0.25, 0.20), 3)
        1.159
    """
    above_zero(diameter=diameter, course=course)
    between(0, diameter, course=course)
    return diameter / course * math.asin(course / diameter)


@after("nist-hb-135", "single present value", "second-hand", rate=(0, 0.15), year=(0, 40))
def present_value_factor(rate: float, year: float) -> float:
    """Worth today of one unit of money spent in a later year.

    Args:
        rate: Real discount rate, as a share. [-]
        year: Years from today. [years]

    Returns:
        Present value factor. [-]

    Valid:
        rate: 0 to 0.15; year: 0 to 40.

    Raises:
        ValueError: If the year is negative or the rate is not above -1.

    Sources:
        nist-hb-135, single present value; second-hand.

    Example:
        >>> round(present_value_factor(0.03, 20), 4)
        0.5537
    """
    not_negative(year=year)
    above_zero(rate_and_one=1 + rate)
    return float((1 + rate) ** -year)


@after("nist-hb-135", "uniform present value", "second-hand", rate=(0, 0.15), years=(0, 40))
def uniform_present_value(rate: float, years: float) -> float:
    """Worth today of one unit of money spent at the end of each of a number of years.

    Args:
        rate: Real discount rate, as a share. [-]
        years: Number of years. [years]

    Returns:
        Uniform present value factor. [-]

    Valid:
        rate: 0 to 0.15; years: 0 to 40.

    Raises:
        ValueError: If the number of years is negative or the rate is not above -1.

    Sources:
        nist-hb-135, uniform present value; second-hand.

    Example:
        >>> round(uniform_present_value(0.03, 30), 3)
        19.6
    """
    not_negative(years=years)
    above_zero(rate_and_one=1 + rate)
    return years if rate == 0 else (1 - present_value_factor(rate, years)) / rate
