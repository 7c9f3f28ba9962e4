"""Where the sun stands: at one moment, and over a year sampled for sums."""

from __future__ import annotations

import math
from typing import NamedTuple

from speclint.science.after import after
from speclint.science.inputs import above_zero, between

MONTH_LENGTHS = (31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31)
FIRST_NOON = 8401
"""Noon of 1 January 2023, a year near the middle of the cycle of leap years. [days since noon of 1 January 2000]"""
STANDARD_PRESSURE = 101325.0
LOWEST_BENT = -0.8333
"""Altitude below which no refraction is counted: half the sun's width and the bending at the horizon. [deg]"""


class SunSample(NamedTuple):
    """The sun at one moment of a sampled year, and the time that the moment stands for.

    Attributes:
        day: Day of the year; 1.5 is noon of 1 January. [d]
        month: 1 to 12. [-]
        altitude: Apparent height above the horizon. [deg]
        azimuth: Clockwise from north. [deg]
        hours: Time of the year that the sample stands for. [h]
    """

    day: float
    month: int
    altitude: float
    azimuth: float
    hours: float


@after("", "days of the calendar counted from noon of 1 January 2000", "ours")
def days_since_2000(year: int, day: float, hour: float = 0.0) -> float:
    """Days since noon of 1 January 2000, from a day of the year and an hour in universal time.

    Args:
        year: Year of the calendar. [-]
        day: Day of the year, 1 for 1 January. [d]
        hour: Hour in universal time; may run past a day. [h]

    Returns:
        Days, with their fraction. [d]

    Valid:
        The calendar in use since 1582.

    Raises:
        ValueError: If the day is not between 1 and 367.

    Sources:
        ours: days of the calendar counted from noon of 1 January 2000.

    Example:
        >>> days_since_2000(2003, 290, 19.5)
        1385.3125
    """
    between(1, 367, day=day)
    past = year - 1
    leap_days = past // 4 - past // 100 + past // 400 - 484
    return 365.0 * (year - 2000) + leap_days + day - 1.5 + hour / 24


@after("michalsky-1988", "low-precision place of the sun", "second-hand", days=(-18262, 18627))
def sun_position(days: float, latitude: float, longitude: float = 0.0) -> tuple[float, float]:
    """Geometric altitude and azimuth of the centre of the sun, without refraction.

    Within 0.02 degrees of a full ephemeris; at a pole the azimuth is that seen along the meridian of `longitude`.

    Args:
        days: Days since noon of 1 January 2000, universal time. [d]
        latitude: North of the equator; south is negative. [deg]
        longitude: East of Greenwich; west is negative. [deg]

    Returns:
        Altitude above the horizon, and azimuth clockwise from north. [deg]

    Valid:
        days: -18262 to 18627.

    Raises:
        ValueError: If the latitude is not between -90 and 90 or the longitude not between -360 and 360 degrees.

    Sources:
        michalsky-1988, low-precision place of the sun; second-hand.

    Example:
        >>> altitude, azimuth = sun_position(days_since_2000(2023, 172, 12.0), 46.0)
        >>> round(altitude, 1), round(azimuth, 1)
        (67.4, 178.9)
    """
    between(-90, 90, latitude=latitude)
    between(-360, 360, longitude=longitude)
    sine, ascension = _place(days)
    # Greenwich mean sidereal time, whole turns dropped
    sidereal = 100.460625 + 0.985647363 * days + 360 * ((days + 0.5) % 1.0)
    hour_angle = math.radians(sidereal + longitude) - ascension
    return _seen(sine, math.sqrt(1 - sine * sine), hour_angle, math.radians(latitude))


def _place(days: float) -> tuple[float, float]:
    """Sine of the declination, and right ascension in radians."""
    mean = 280.460 + 0.9856474 * days
    anomaly = math.radians(357.528 + 0.9856003 * days)
    longitude = math.radians(mean + 1.915 * math.sin(anomaly) + 0.020 * math.sin(2 * anomaly))
    obliquity = math.radians(23.439 - 0.0000004 * days)
    sine = math.sin(longitude)
    return math.sin(obliquity) * sine, math.atan2(math.cos(obliquity) * sine, math.cos(longitude))


def _seen(sine: float, cosine: float, hour_angle: float, latitude: float) -> tuple[float, float]:
    """Altitude and azimuth, in degrees, from the declination's sine and cosine and angles in radians."""
    north, up = math.cos(latitude), math.sin(latitude)
    towards_noon = cosine * math.cos(hour_angle)
    height = sine * up + towards_noon * north
    turn = math.atan2(cosine * math.sin(hour_angle), towards_noon * up - sine * north)
    return math.degrees(math.asin(max(-1.0, min(1.0, height)))), (180 + math.degrees(turn)) % 360


@after("reda-andreas-2004", "atmospheric refraction", "second-hand")
def refraction(altitude: float, pressure: float = STANDARD_PRESSURE, temperature: float = 10.0) -> float:
    """How much higher the sun appears than it stands; add it to the geometric altitude.

    Args:
        altitude: Geometric altitude. [deg]
        pressure: Pressure of the air. [Pa]
        temperature: Temperature of the air. [degC]

    Returns:
        Refraction; nothing once the whole sun is below the horizon. [deg]

    Valid:
        Air near the standard one; low suns vary by a tenth of a degree and more.

    Raises:
        ValueError: If the altitude is not between -90 and 90 degrees, the pressure is not above zero,
            or the temperature is not between -90 and 60 degrees.

    Sources:
        reda-andreas-2004, atmospheric refraction; second-hand.

    Example:
        >>> round(refraction(10.0), 3), round(refraction(0.0), 2)
        (0.09, 0.48)
    """
    between(-90, 90, altitude=altitude)
    above_zero(pressure=pressure)
    between(-90, 60, temperature=temperature)
    if altitude < LOWEST_BENT:
        return 0.0
    bent = 1.02 / (60 * math.tan(math.radians(altitude + 10.3 / (altitude + 5.11))))
    return max(0.0, bent * pressure / 101000 * 283 / (273 + temperature))


@after("", "equal parts of each month, in the middle of equal steps of local solar time", "ours")
def year_of_sun(latitude: float, days: int = 36, step_minutes: float = 20.0) -> tuple[SunSample, ...]:
    """Samples of a mean year, sun up only, whose hours add up to the daylight of the year.

    Local solar time: noon is when the sun stands on the meridian, so that mornings mirror afternoons and no longitude
    or clock enters. The sun's declination is held from morning to evening.

    Args:
        latitude: North of the equator; south is negative. [deg]
        days: Days sampled, the same number in each month. [d]
        step_minutes: Time between samples, rounded to a whole part of half a day. [min]

    Returns:
        Samples: day [d], month [-], apparent altitude and azimuth [deg], and the time of the year each stands for. [h]

    Valid:
        Sums over a month or a year; a clock that runs on mean time sees the same sums.

    Raises:
        ValueError: If the latitude is not between -90 and 90 degrees, the days are no multiple of 12,
            or the step is not above zero.

    Sources:
        ours: equal parts of each month, in the middle of equal steps of local solar time.

    Example:
        >>> samples = year_of_sun(46.0)
        >>> round(sum(sample.hours for sample in samples), -1)
        4400.0
    """
    between(-90, 90, latitude=latitude)
    above_zero(days=days, step_minutes=step_minutes)
    if days % 12:
        raise ValueError(f"days: wanted a multiple of 12; got {days}")
    parts, steps = days // 12, max(1, round(720 / step_minutes))
    tilt = math.radians(latitude)
    # from midnight to noon
    angles = [math.pi * ((step + 0.5) / steps - 1) for step in range(steps)]
    samples: list[SunSample] = []
    start = 1.0
    for month, length in enumerate(MONTH_LENGTHS, 1):
        hours = 12 / steps * length / parts
        for part in range(parts):
            day = start + (part + 0.5) * length / parts
            samples += _day(day, month, tilt, angles, hours)
        start += length
    return tuple(samples)


def _day(day: float, month: int, latitude: float, angles: list[float], hours: float) -> list[SunSample]:
    sine, _ = _place(FIRST_NOON + day - 1.5)
    cosine = math.sqrt(1 - sine * sine)
    morning: list[SunSample] = []
    for angle in angles:
        altitude, azimuth = _seen(sine, cosine, angle, latitude)
        if altitude > 0:
            morning.append(SunSample(day, month, min(90.0, altitude + refraction(altitude)), azimuth, hours))
    return morning + [sample._replace(azimuth=(360 - sample.azimuth) % 360) for sample in reversed(morning)]
