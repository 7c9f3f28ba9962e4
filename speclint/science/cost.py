"""Money spread over years, in money of today."""

from __future__ import annotations

import math

from speclint.science.after import after
from speclint.science.inputs import above_zero, not_negative

SAME = 1e-9  # rates closer than this are taken as equal


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
    return years if rate == 0 else -math.expm1(-years * math.log1p(rate)) / rate


@after("gsa-p100", "modified uniform present value", "second-hand", rate=(0, 0.15), rise=(-0.05, 0.15), years=(0, 40))
def modified_uniform_present_value(rate: float, rise: float, years: float) -> float:
    """Worth today of money spent at the end of each year when its price rises faster than others.

    Args:
        rate: Real discount rate, as a share. [-]
        rise: Real rise of the price in a year, as a share. [-]
        years: Number of years. [years]

    Returns:
        Present value factor, for the price of today. [-]

    Valid:
        rate: 0 to 0.15; rise: -0.05 to 0.15; years: 0 to 40.

    Raises:
        ValueError: If the number of years is negative, or the rate or the rise is not above -1.

    Sources:
        gsa-p100, modified uniform present value; second-hand.

    Example:
        >>> round(modified_uniform_present_value(0.03, 0.01, 30), 3)
        22.458
    """
    not_negative(years=years)
    above_zero(rate_and_one=1 + rate, rise_and_one=1 + rise)
    if abs(rate - rise) < SAME:
        return years
    kept = math.expm1(years * (math.log1p(rise) - math.log1p(rate)))  # less 1: keeps its digits where rates are close
    return (1 + rise) / (rise - rate) * kept


@after("nist-hb-135", "real discount rate", "memory", nominal=(0, 0.25), inflation=(-0.02, 0.2))
def real_discount_rate(nominal: float, inflation: float) -> float:
    """Discount rate in money of constant worth.

    Args:
        nominal: Discount rate that includes inflation, as a share. [-]
        inflation: Rise of prices in a year, as a share. [-]

    Returns:
        Real rate, as a share. [-]

    Valid:
        nominal: 0 to 0.25; inflation: -0.02 to 0.2.

    Raises:
        ValueError: If a rate is not above -1.

    Sources:
        nist-hb-135, real discount rate; memory.

    Example:
        >>> round(real_discount_rate(0.055, 0.024), 4)
        0.0303
    """
    above_zero(nominal_and_one=1 + nominal, inflation_and_one=1 + inflation)
    return (1 + nominal) / (1 + inflation) - 1


@after("nist-hb-135", "present value of repeated spending", "second-hand", rate=(0, 0.15), years=(0, 40))
def present_value_of_coats(cost: float, interval: float, rate: float, years: float) -> float:
    """Worth today of the coats that fall due within a number of years, the first one after an interval.

    Args:
        cost: Cost of one coat in money of today. [money]
        interval: Years from coat to coat. [years]
        rate: Real discount rate, as a share. [-]
        years: Number of years; a coat due at their very end is not counted. [years]

    Returns:
        Present value. [money]

    Valid:
        rate: 0 to 0.15; years: 0 to 40.

    Raises:
        ValueError: If the cost or the number of years is negative, the interval is not above zero, or the rate is not
            above -1.

    Sources:
        nist-hb-135, present value of repeated spending; second-hand.

    Example:
        >>> round(present_value_of_coats(1.0, 7.0, 0.03, 30.0), 3)
        2.449
    """
    not_negative(cost=cost, years=years)
    above_zero(interval=interval)
    coats = max(0, math.ceil(years / interval - SAME) - 1)
    return cost * sum(present_value_factor(rate, interval * at) for at in range(1, coats + 1))
