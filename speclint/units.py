"""Numbers with units: read as the trade writes them, kept in SI, shown in the reader's units."""

from __future__ import annotations

import math
import re
from collections.abc import Callable
from fractions import Fraction
from functools import lru_cache
from typing import Literal, NamedTuple

Dimension = Literal[
    "length",
    "area",
    "pressure",
    "rain rate",
    "speed",
    "temperature",
    "slope",
    "angle",
    "percent",
    "duration",
    "count",
    "ratio",
    "index",
    "section",
    "date",
    "share",
    "tilt",
    "drain",
    "flow",
    "line load",
    "depth",
    "sun dose",
    "hours",
    "shares",
    "skyline",
    "record",
]
System = Literal["imperial", "metric"]

INCH = 0.0254
FOOT = 0.3048
MILE = 1609.344
PSF = 47.88025898
PSI = 6894.757293168
GALLON_A_MINUTE = 231 * INCH**3 / 60

# unit as written -> (dimension, SI per unit). Degrees stay degrees, percent stays percent, as publications print them.
UNITS: dict[str, tuple[Dimension, float]] = {
    '"':      ("length", INCH),
    "in":     ("length", INCH),
    "inch":   ("length", INCH),
    "inches": ("length", INCH),
    "'":      ("length", FOOT),
    "ft":     ("length", FOOT),
    "foot":   ("length", FOOT),
    "feet":   ("length", FOOT),
    "mi":     ("length", MILE),
    "mm":     ("length", 0.001),
    "cm":     ("length", 0.01),
    "m":      ("length", 1.0),
    "km":     ("length", 1000.0),
    "ft2":    ("area", FOOT * FOOT),
    "m2":     ("area", 1.0),
    "psf":    ("pressure", PSF),
    "psi":    ("pressure", PSI),
    "kPa":    ("pressure", 1000.0),
    "Pa":     ("pressure", 1.0),
    "in/h":   ("rain rate", 25.4),
    "mm/h":   ("rain rate", 1.0),
    "mph":    ("speed", 0.44704),
    "km/h":   ("speed", 1 / 3.6),
    "m/s":    ("speed", 1.0),
    "%":      ("percent", 1.0),
    "deg":    ("angle", 1.0),
    "°":      ("angle", 1.0),
    "C":      ("temperature", 1.0),
    "years":  ("duration", 365.25),
    "year":   ("duration", 365.25),
    "days":   ("duration", 1.0),
    "day":    ("duration", 1.0),
}  # fmt: skip

# The SI unit in which a value of a dimension is kept, for programs that read it.
SI: dict[str, str] = {
    "length": "m", "area": "m2", "pressure": "Pa", "rain rate": "mm/h", "speed": "m/s", "temperature": "C",
    "slope": "m/m", "angle": "deg", "percent": "%", "duration": "d", "share": "-", "ratio": "-", "index": "-",
    "count": "-", "tilt": "deg", "drain": "m2 mm/h", "flow": "m3/s", "line load": "N/m",
    "depth": "mm", "sun dose": "kWh/m2 a", "hours": "h/a",
}  # fmt: skip

NEEDED_AS: dict[str, str] = {
    "length": 'a length such as 18" or 2\'-6" or 450 mm',
    "area": "an area such as 120 ft2 or 11 m2",
    "pressure": "a load such as 70 psf or 3.4 kPa",
    "rain rate": "a rain intensity such as 4 in/h or 100 mm/h",
    "speed": "a speed such as 115 mph or 50 m/s",
    "temperature": "a temperature such as 40 F or 5 C",
    "slope": 'a slope such as 10:12, 1/4" per ft or 2%',
    "angle": "a bearing such as S 10 E, NW or 135 deg",
    "percent": "a percentage such as 15%",
    "duration": "a time such as 4 years or 14 days",
    "count": "a whole number such as 6",
    "ratio": "a plain number such as 0.5",
    "index": "a plain number such as 45",
    "section": 'a size such as 8x8, 2x12, 2-2x10 or 10"',
    "date": "a date such as 2027-06-30",
    "shares": "shares by bearing such as S 30%, SW 45%, W 25%",
    "skyline": "height angles by bearing such as S 12 deg, W 25 deg",
}


class Value(NamedTuple):
    """A number read from text: SI value, its dimension, and for a section the second side.

    `dimension` is `count` where no unit was written.
    """

    number: float
    dimension: Dimension
    second: float = 0.0
    text: str = ""


LONGEST = 60  # characters of a quantity
MONTHS_FROM = 60  # days from which a computed time is told in months: no forecast knows the day


class NotAQuantity(ValueError):
    """A text that looks like a quantity and is none."""


_NUMBER = r"[-+]?(?:\d{1,3}(?:,\d{3})+|\d+)?(?:\.\d+)?"
_FRACTION = re.compile(r"^([-+]?\d+)?[ -]?(\d+)/(\d+)$")
_FEET = re.compile(rf"^({_NUMBER})'(?:\s?-?\s?([\d.]+(?:[ -]\d+/\d+)?|\d+/\d+)\"?)?$")
_SECTION = re.compile(r"^(?:(\d)-)?(\d+(?:\.\d+)?)x(\d+(?:\.\d+)?)\s*(\"|in|mm|cm)?$")
_RISE = re.compile(r"^(\d+(?:\.\d+)?):(\d+(?:\.\d+)?)$")
_PLAIN = re.compile(rf"^([-+]?\d+/\d+|{_NUMBER}(?:[ -]\d+/\d+)?)\s*([^\d\s].*)?$")
_DATE = re.compile(r"^\d{4}-\d{1,2}-\d{1,2}$")
_QUADRANT = re.compile(r"^([NSEW])\s*(\d+(?:\.\d+)?)\s*(?:°|deg)?\s*([NSEW])$")
_TOWARDS = {"N": 0.0, "E": 90.0, "S": 180.0, "W": 270.0}

_COMPASS = ("N", "NNE", "NE", "ENE", "E", "ESE", "SE", "SSE", "S", "SSW", "SW", "WSW", "W", "WNW", "NW", "NNW")
_SPELLED = {
    "north": "N", "northeast": "NE", "north-east": "NE", "east": "E", "southeast": "SE", "south-east": "SE",
    "south": "S", "southwest": "SW", "south-west": "SW", "west": "W", "northwest": "NW", "north-west": "NW",
}  # fmt: skip


@lru_cache(maxsize=4096)
def read_quantity(text: str) -> Value:
    """The value of a quantity as the trade writes it.

    Raises:
        NotAQuantity: If the text is no quantity, with the reason in words.
    """
    if len(text) > LONGEST:
        raise NotAQuantity(f"“{text[:24]}…” is too long to be a quantity")
    plain = text.replace("′", "'").replace("’", "'").replace("″", '"').replace("”", '"').strip()
    plain = re.sub(r"\s*o\.c\.$", "", plain)
    per_foot = re.sub(r"\s*per (?:ft|foot)$", "", plain)
    if per_foot != plain:
        rise = read_quantity(per_foot)
        if rise.dimension != "length":
            raise NotAQuantity(f"“{text}” needs a length before “per ft”")
        return Value(rise.number / FOOT, "slope", text=text)
    if _DATE.match(plain):
        import datetime

        try:
            return Value(float(datetime.date(*map(int, plain.split("-"))).toordinal()), "date", text=text)
        except ValueError:
            raise NotAQuantity(f"“{text}” is not a day of the calendar") from None
    if found := _SECTION.match(plain):
        return _section(found, text)
    if found := _RISE.match(plain):
        if float(found[2]) == 0:
            raise NotAQuantity(f"the run of the slope “{text}” is zero")
        return Value(float(found[1]) / float(found[2]), "slope", text=text)
    if found := _FEET.match(plain):
        feet = _number(found[1], text)
        inches = _number(found[2], text) if found[2] else 0.0
        sign = -1 if found[1].startswith("-") else 1
        return Value(feet * FOOT + sign * inches * INCH, "length", text=text)
    if (found := _PLAIN.match(plain)) and found[1]:
        return _plain(found[1], found[2], text)
    raise NotAQuantity(f"“{text}” is not a quantity")


def _section(found: re.Match[str], text: str) -> Value:
    """Nominal lumber and timber sizes are in inches where no unit is written; `2-2x10` is two plies side by side."""
    scale = UNITS[found[4] or '"'][1]
    breadth, depth = float(found[1] or 1) * float(found[2]), float(found[3])
    if breadth == 0 or depth == 0:
        raise NotAQuantity(f"“{text}” has a side of zero")
    return Value(breadth * scale, "section", depth * scale, text)


def _plain(number: str, unit: str | None, text: str) -> Value:
    value = _number(number, text)
    if unit is None:
        return Value(value, "count", text=text)
    if unit == "F":
        return Value((value - 32) / 1.8, "temperature", text=text)
    if unit not in UNITS:
        raise NotAQuantity(f"the unit “{unit}” in “{text}” is not known")
    dimension, scale = UNITS[unit]
    return Value(value * scale, dimension, text=text)


def _number(text: str, whole: str) -> float:
    if "/" in text:
        found = _FRACTION.match(text.strip())
        if not found or int(found[3]) == 0:
            raise NotAQuantity(f"“{whole}” has a fraction that is no number")
        sign = -1 if text.lstrip().startswith("-") else 1
        return sign * (abs(int(found[1] or 0)) + float(Fraction(int(found[2]), int(found[3]))))
    try:
        value = float(text.replace(",", ""))
    except ValueError:
        raise NotAQuantity(f"“{whole}” has a number that cannot be read") from None
    if abs(value) > 1e9:
        raise NotAQuantity(f"“{whole[:24]}” is too large to be meant")
    return value


@lru_cache(maxsize=512)
def read_bearing(text: str) -> float | None:
    """The azimuth of a bearing in degrees clockwise from north, or nothing where the text is no bearing."""
    plain = text.strip()
    if found := _QUADRANT.match(plain):
        base, towards, angle = _TOWARDS[found[1]], _TOWARDS[found[3]], float(found[2])
        turn = (towards - base) % 360
        if turn not in (90, 270) or angle > 90:
            return None
        return (base + (angle if turn == 90 else -angle)) % 360
    point = _SPELLED.get(plain.lower(), plain)
    if point in _COMPASS:
        return _COMPASS.index(point) * 22.5
    return None


def angle_between(one: float, other: float) -> float:
    """The lesser angle between two bearings, 0 to 180. [deg]"""
    return abs((one - other + 180) % 360 - 180)


def compass_point(azimuth: float) -> str:
    """The nearest of the sixteen compass points."""
    return _COMPASS[round(azimuth / 22.5) % 16]


def show(number: float, dimension: str, system: System = "imperial", text: str = "") -> str:
    """A value in the reader's units, with no more digits than the trade would write."""
    shown = _SHOWN.get(dimension)
    return shown(number, system, text) if shown else f"{number:.3g}"


def _length(metres: float, system: System, text: str) -> str:
    if system == "metric":
        if abs(metres) >= 500:
            return f"{metres / 1000:.0f} km" if abs(metres) >= 10_000 else f"{metres / 1000:.1f} km"
        return f"{metres:.2f} m" if abs(metres) >= 2 else f"{metres * 1000:.0f} mm"
    if abs(metres) >= 0.5 * MILE:
        return f"{metres / MILE:.0f} mi" if abs(metres) >= 10 * MILE else f"{metres / MILE:.1f} mi"
    return feet_and_inches(metres / INCH)


@lru_cache(maxsize=4096)
def feet_and_inches(inches: float) -> str:
    """A length as a drawing writes it, to the nearest sixteenth below a foot, quarter below ten feet, else inch."""
    sign, inches = ("-" if inches < 0 else ""), abs(inches)
    step = _steps_an_inch(inches)
    parts = Fraction(round(inches * step), step)
    if parts == 0:
        return '0"'
    feet, rest = divmod(parts, 12) if parts >= 24 else (0, parts)
    whole, fraction = divmod(rest, 1)
    written = f"{whole} {fraction}" if fraction and (whole or feet) else str(fraction or whole)
    return f"{sign}{feet}'-{written}\"" if feet else f'{sign}{written}"'


def _steps_an_inch(inches: float) -> int:
    return 16 if inches < 6 else 8 if inches < 24 else 4 if inches < 120 else 1


def length_within(metres: float, system: System, at_least: bool) -> float:
    """The length in metres, moved to the next step that `show` can tell: up where at least that much is wanted.

    So that a bound, built as it is told, is kept.
    """
    if system == "metric":
        step = 0.001 if abs(metres) < 2 else 0.01
    else:
        step = INCH / _steps_an_inch(abs(metres) / INCH)
    steps = metres / step
    whole = round(steps)
    if abs(steps - whole) > 1e-6:
        whole = math.ceil(steps) if at_least else math.floor(steps)
    return whole * step


def _slope(ratio: float, system: System, text: str) -> str:
    if abs(ratio) < 0.08:
        return f"{ratio * 100:.2g}%"
    return f"{ratio * 12:.3g}:12" if system == "imperial" else f"{_degrees(ratio):.0f} deg"


def _degrees(ratio: float) -> float:
    return math.degrees(math.atan(ratio))


def _bearing(azimuth: float, system: System, text: str) -> str:
    azimuth %= 360
    if azimuth % 22.5 == 0:
        return _COMPASS[int(azimuth / 22.5)]
    if system == "metric":
        return f"{azimuth:.0f} deg"
    ns, off = ("N", min(azimuth, 360 - azimuth)) if azimuth < 90 or azimuth > 270 else ("S", abs(180 - azimuth))
    return f"{ns} {off:.0f} {'E' if azimuth < 180 else 'W'}"


def _date(ordinal: float, system: System, text: str) -> str:
    import datetime

    return datetime.date.fromordinal(int(ordinal)).isoformat()


def _duration(days: float, system: System, text: str) -> str:
    if days >= 365:
        years = days / 365.25
        shown = f"{years:.0f}" if years >= 10 else f"{years:.1f}".removesuffix(".0")
        return f"{shown} year" if shown == "1" else f"{shown} years"
    if days >= MONTHS_FROM:
        months = round(days / (365.25 / 12))
        return "1 year" if months == 12 else f"{months} months"
    return f"{days:.0f} day" if f"{days:.0f}" == "1" else f"{days:.0f} days"


# For the plain dimensions: (imperial format, divisor), (metric format, divisor).
_PLAIN_SHOWN: dict[str, tuple[tuple[str, float], tuple[str, float]]] = {
    "area":      (("{:.0f} ft2", FOOT * FOOT), ("{:.1f} m2", 1.0)),
    "pressure":  (("{:.0f} psf", PSF),         ("{:.1f} kPa", 1000.0)),
    "rain rate": (("{:.1f} in/h", 25.4),       ("{:.0f} mm/h", 1.0)),
    "speed":     (("{:.0f} mph", 0.44704),     ("{:.0f} m/s", 1.0)),
    "percent":   (("{:.3g}%", 1.0),            ("{:.3g}%", 1.0)),
    "tilt":      (("{:.0f} deg off plumb", 1.0), ("{:.0f} deg off plumb", 1.0)),
    "count":     (("{:g}", 1.0),               ("{:g}", 1.0)),
    "ratio":     (("{:.2f}", 1.0),             ("{:.2f}", 1.0)),
    "index":     (("{:.0f}", 1.0),             ("{:.0f}", 1.0)),
    "depth":     (("{:.1f} in", 25.4),         ("{:.0f} mm", 1.0)),
    "sun dose":  (("{:,.0f} kWh/m2", 1.0),     ("{:,.0f} kWh/m2", 1.0)),
    "hours":     (("{:,.0f} h", 1.0),          ("{:,.0f} h", 1.0)),
    "drain":     (("{:,.0f} ft2 at 1 in/h", FOOT * FOOT * 25.4), ("{:,.0f} m2 at 1 mm/h", 1.0)),
    "flow":      (("{:.1f} gpm", GALLON_A_MINUTE), ("{:.2f} l/s", 0.001)),
    "line load": (("{:.0f} lb/ft", PSF * FOOT), ("{:.2f} kN/m", 1000.0)),
}  # fmt: skip


def _plain_shown(dimension: str) -> Callable[[float, System, str], str]:
    def shown(number: float, system: System, text: str) -> str:
        form, scale = _PLAIN_SHOWN[dimension][0 if system == "imperial" else 1]
        return form.format(number / scale)

    return shown


def _section_shown(number: float, system: System, text: str) -> str:
    return text or _length(number, system, text)


def _temperature(celsius: float, system: System, text: str) -> str:
    return f"{celsius * 1.8 + 32:.0f} F" if system == "imperial" else f"{celsius:.0f} C"


def _share(share: float, system: System, text: str) -> str:
    percent = share * 100
    return f"{percent:.2g}%" if 0 < abs(percent) < 9.95 else f"{percent:.0f}%"


_SHOWN: dict[str, Callable[[float, System, str], str]] = {
    "length": _length,
    "share": _share,
    "slope": _slope,
    "angle": _bearing,
    "date": _date,
    "duration": _duration,
    "section": _section_shown,
    "temperature": _temperature,
    **{name: _plain_shown(name) for name in _PLAIN_SHOWN},
}
