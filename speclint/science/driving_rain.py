"""Rain that wind drives through upright planes: what flies free, and what terrain, hills and obstructions leave of it.

`rain_standards` takes it from there to a wall by coarse classes of roof, `raindrops` by the height below a roof edge.
"""

from __future__ import annotations

import math
from bisect import bisect_right
from types import MappingProxyType

from speclint.science.after import after
from speclint.science.inputs import above_zero, known, not_negative

ISO_COEFFICIENT = 2 / 9
ISO_POWER = 8 / 9

# roughness factor [-], roughness length [m], least height [m]
TERRAINS = MappingProxyType(
    {
        "I":   (0.17, 0.01,  2.0),
        "II":  (0.19, 0.05,  4.0),
        "III": (0.22, 0.30,  8.0),
        "IV":  (0.24, 1.00, 16.0),
    }
)  # fmt: skip

GENTLE_SLOPE = 0.05
STEEP_SLOPE = 0.3

# least distance [m], factor [-]
OBSTRUCTIONS = (
    (0.0,   0.2),
    (8.0,   0.3),
    (15.0,  0.4),
    (25.0,  0.5),
    (40.0,  0.6),
    (60.0,  0.7),
    (80.0,  0.8),
    (100.0, 0.9),
    (120.0, 1.0),
)  # fmt: skip
OBSTRUCTION_DISTANCES = tuple(distance for distance, _ in OBSTRUCTIONS)

AIRFIELD_HEIGHT = 10.0
"""Height at which airfields measure wind. [m]"""

ALL_SIDES = 1 / math.pi
"""Mean of the cosine of the angle to a wall, 0 behind it, of winds that blow from all sides alike. [-]"""


@after("iso-15927-3", "hourly index", "second-hand")
def hourly_driving_rain(speed: float, rate: float, angle: float) -> float:
    """Rain that passes through an upright plane on an airfield in one hour.

    Args:
        speed: Mean wind of the hour, 10 m above an airfield. [m/s]
        rate: Rain of the hour on level ground. [mm/h]
        angle: Angle between the direction the wind comes from and the one the wall faces. [deg]

    Returns:
        Free driving rain of the hour. [L/m2]

    Valid:
        Rain, not snow; not among cliffs and gorges, nor where showers of great violence bring over a quarter of it.

    Raises:
        ValueError: If the wind or the rain is negative.

    Sources:
        iso-15927-3, hourly index; second-hand.

    Example:
        >>> round(hourly_driving_rain(8.0, 2.5, 20.0), 4)
        3.7721
    """
    not_negative(speed=speed, rate=rate)
    towards = math.cos(math.radians(angle))
    # a right angle leaves a crumb of cosine
    return ISO_COEFFICIENT * speed * math.pow(rate, ISO_POWER) * towards if towards > 1e-12 else 0.0


@after("iso-15927-3", "terrain roughness", "second-hand")
def terrain_roughness(category: str, height: float) -> float:
    """Share of the airfield's wind left at a height above rougher or smoother ground.

    Args:
        category: I open water or bare flat land, II farmland, III suburbs or forest, IV town. [-]
        height: Height above the ground. [m]

    Returns:
        Factor on wind and on driving rain. [-]

    Valid:
        Ground of one kind some kilometres upwind.

    Raises:
        ValueError: If the category is not in the table or the height is negative.

    Sources:
        iso-15927-3, terrain roughness; second-hand.

    Example:
        >>> round(terrain_roughness("III", 5.0), 4)
        0.7224
    """
    known(TERRAINS, category=category)
    not_negative(height=height)
    factor, length, least = TERRAINS[category]
    return factor * math.log(max(height, least) / length)


@after("iso-15927-3", "topography at a crest", "memory")
def hill_factor(slope: float) -> float:
    """How much more wind the crest of a hill takes than flat land.

    Args:
        slope: Height of the hill over the level length of its windward slope. [-]

    Returns:
        Factor on wind and on driving rain. [-]

    Valid:
        At the crest, where the factor is greatest; not for cliffs and gorges.

    Raises:
        ValueError: If the slope is negative.

    Sources:
        iso-15927-3, topography at a crest; memory.

    Example:
        >>> hill_factor(0.2)
        1.4
    """
    not_negative(slope=slope)
    return 1 + 2 * min(slope, STEEP_SLOPE) if slope > GENTLE_SLOPE else 1.0


@after("iso-15927-3", "obstructions", "memory", distance=(4, math.inf))
def obstruction_factor(distance: float) -> float:
    """Share of driving rain left behind the nearest thing of like size in the line of the wind.

    Args:
        distance: Distance from the wall to the obstruction; infinite where there is none. [m]

    Returns:
        Factor on driving rain. [-]

    Valid:
        distance: 4 to inf.

    Raises:
        ValueError: If the distance is negative.

    Sources:
        iso-15927-3, obstructions; memory.

    Example:
        >>> obstruction_factor(30.0), obstruction_factor(math.inf)
        (0.5, 1.0)
    """
    not_negative(distance=distance)
    return OBSTRUCTIONS[bisect_right(OBSTRUCTION_DISTANCES, distance) - 1][1]


@after("lacy-1965", "driving rain from wind and rain", "second-hand")
def lacy_driving_rain(speed: float, rate: float) -> float:
    """Rain that passes through an upright plane that faces the wind, by the older formula.

    Args:
        speed: Wind. [m/s]
        rate: Rain on level ground. [mm/h]

    Returns:
        Free driving rain. [L/(m2 h)]

    Valid:
        Steady rain.

    Raises:
        ValueError: If the wind or the rain is negative.

    Sources:
        lacy-1965, driving rain from wind and rain; second-hand.

    Example:
        >>> lacy_driving_rain(1.0, 1.0)
        0.22
    """
    not_negative(speed=speed, rate=rate)
    return 0.22 * speed * math.pow(rate, 0.88)


@after("bsd-148", "Eq. 8", "published")
def power_law_wind(speed: float, height: float, exponent: float) -> float:
    """Wind at a height, from the wind that an airfield measures.

    Args:
        speed: Wind 10 m above the ground. [m/s]
        height: Height above the ground. [m]
        exponent: Exponent of the terrain; recalled as 0.14 open, 0.25 suburban, 0.36 urban. [-]

    Returns:
        Wind at the height. [m/s]

    Valid:
        Even terrain.

    Raises:
        ValueError: If the wind is negative or the height is not above zero.

    Sources:
        bsd-148, Eq. 8; published.

    Example:
        >>> round(power_law_wind(1.0, 2.7, 0.25), 3)
        0.721
    """
    not_negative(speed=speed)
    above_zero(height=height)
    return speed * math.pow(height / AIRFIELD_HEIGHT, exponent)


@after(
    "",
    "power law fitted to 59 United States airports, s.d. 13 %, not tried on others",
    "ours",
    rain=(49, 1565),
    wind=(2.1, 5.9),
)
def mean_wall_driving_rain(rain: float, wind: float) -> float:
    """Free driving rain of a year on an airfield, on the mean of walls that face all ways.

    Args:
        rain: Rain of a year. [mm]
        wind: Mean wind of the year, 10 m above an airfield. [m/s]

    Returns:
        Free driving rain of the year. [L/m2]

    Valid:
        rain: 49 to 1565; wind: 2.1 to 5.9.

    Raises:
        ValueError: If the rain or the wind is negative.

    Sources:
        ours: power law fitted to 59 United States airports, s.d. 13 %, not tried on others.

    Example:
        >>> round(mean_wall_driving_rain(1000.0, 4.0))
        289
    """
    not_negative(rain=rain, wind=wind)
    return 0.137 * math.pow(rain, 0.974) * math.pow(wind, 0.669)


@after("lacy-1965", "linear form, 0.206 L for each metre of wind and millimetre of rain", "memory")
def linear_driving_rain(rain: float, wind: float, share: float = ALL_SIDES) -> float:
    """Free driving rain of a month or a year from its rain and mean wind.

    Args:
        rain: Rain of the time. [mm]
        wind: Mean wind of the time at the site. [m/s]
        share: Mean of the cosine of the angle to the wall, 0 where rain comes from behind. [-]

    Returns:
        Free driving rain of the time. [L/m2]

    Valid:
        Rain of about 2 mm/h; rain comes with more than the mean wind in most places.

    Raises:
        ValueError: If an input is negative.

    Sources:
        lacy-1965, linear form, 0.206 L for each metre of wind and millimetre of rain; memory.

    Example:
        >>> round(linear_driving_rain(80.0, 4.0 * 0.7224), 2)
        15.16
    """
    not_negative(rain=rain, wind=wind, share=share)
    return 0.206 * wind * rain * share
