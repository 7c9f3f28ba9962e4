"""Rain that reaches walls, by the chains of factors of standards and a digest.

Their factors for walls already count roofs and overhangs, in coarse classes and the whole wall at a time. They must
never be multiplied with `share_past_edge` or `rayleigh_share`, which tell high from low on one wall.
"""

from __future__ import annotations

import math
from types import MappingProxyType

from speclint.science.after import after
from speclint.science.inputs import known, not_negative

WALL_FACTORS = MappingProxyType(
    {
        "two-storey gable":          0.4,
        "three-storey gable":        0.3,
        "two-storey eave wall":      0.3,
        "three-storey eave wall":    0.4,
        "two-storey under low roof": 0.4,
    }
)  # fmt: skip

ASHRAE_COEFFICIENT = 0.2
# buildings up to 10 m high
EXPOSURE_FACTORS = MappingProxyType({"severe": 1.3, "medium": 1.0, "sheltered": 0.7})
DEPOSITION_FACTORS = MappingProxyType({"below steep roof": 0.35, "below low roof": 0.5, "under runoff": 1.0})


@after("iso-15927-3", "wall factors of low buildings, mean of the wall", "memory")
def wall_factor(wall: str) -> float:
    """Share of free driving rain that a wall of a low building takes, on the average over its face.

    It counts the roof and so must never be multiplied with `share_past_edge`. Good to about a factor of two.

    Args:
        wall: Kind of wall: a key of WALL_FACTORS. [-]

    Returns:
        Factor on free driving rain. [-]

    Valid:
        The few shapes that the standard draws; the drawings were not seen.

    Raises:
        ValueError: If the wall is not in the table.

    Sources:
        iso-15927-3, wall factors of low buildings, mean of the wall; memory.

    Example:
        >>> wall_factor("two-storey eave wall")
        0.3
    """
    known(WALL_FACTORS, wall=wall)
    return WALL_FACTORS[wall]


@after("ashrae-160", "rain load on walls", "second-hand")
def ashrae_rain_load(
    speed: float, rate: float, angle: float, exposure_factor: float, deposition_factor: float
) -> float:
    """Rain that reaches a wall in one hour, by a standard for moisture in buildings.

    The deposition factor counts the roof and its overhang, so it must never be multiplied with `share_past_edge`.

    Args:
        speed: Mean wind of the hour, 10 m above the ground. [m/s]
        rate: Rain of the hour on level ground. [mm/h]
        angle: Angle between the direction the wind comes from and the one the wall faces. [deg]
        exposure_factor: Factor for the terrain; see `ashrae_exposure`. [-]
        deposition_factor: Factor for the roof above the wall; see `ashrae_deposition`. [-]

    Returns:
        Rain on the wall. [kg/(m2 h)]

    Valid:
        Rain, not snow.

    Raises:
        ValueError: If the wind, the rain or a factor is negative.

    Sources:
        ashrae-160, rain load on walls; second-hand.

    Example:
        >>> round(ashrae_rain_load(5.0, 2.0, 0.0, 1.0, 0.35), 6)
        0.7
    """
    not_negative(speed=speed, rate=rate, exposure_factor=exposure_factor, deposition_factor=deposition_factor)
    towards = math.cos(math.radians(angle))
    factors = exposure_factor * deposition_factor * ASHRAE_COEFFICIENT
    return factors * speed * rate * towards if towards > 1e-12 else 0.0


@after("ashrae-160", "exposure factors of buildings up to 10 m", "memory")
def ashrae_exposure(terrain: str) -> float:
    """Factor for the terrain about a low building.

    Args:
        terrain: severe on hilltops, coasts and where wind is funnelled; sheltered by trees, houses or valley. [-]

    Returns:
        Exposure factor. [-]

    Valid:
        Buildings up to 10 m high.

    Raises:
        ValueError: If the terrain is not in the table.

    Sources:
        ashrae-160, exposure factors of buildings up to 10 m; memory.

    Example:
        >>> ashrae_exposure("sheltered")
        0.7
    """
    known(EXPOSURE_FACTORS, terrain=terrain)
    return EXPOSURE_FACTORS[terrain]


@after("ashrae-160", "deposition factors", "memory")
def ashrae_deposition(roof: str) -> float:
    """Factor for the roof above a wall.

    Args:
        roof: What the wall stands under: a key of DEPOSITION_FACTORS. [-]

    Returns:
        Deposition factor. [-]

    Valid:
        Whole walls; it tells nothing of high and low on one wall.

    Raises:
        ValueError: If the roof is not in the table.

    Sources:
        ashrae-160, deposition factors; memory.

    Example:
        >>> ashrae_deposition("below steep roof")
        0.35
    """
    known(DEPOSITION_FACTORS, roof=roof)
    return DEPOSITION_FACTORS[roof]


@after("bsd-148", "Eq. 13 and worked examples", "published")
def straube_design_load(free: float, height_factor: float, obstruction: float, deposition: float) -> float:
    """Driving rain that reaches a part of a wall, from the free driving rain of the place.

    The deposition factor counts the roof and its overhang, so it must never be multiplied with `share_past_edge`.

    Args:
        free: Free driving rain on the wall's bearing, 10 m above the ground. [L/m2]
        height_factor: Wind at the height of the part over the wind at 10 m. [-]
        obstruction: 0.5 where things of like height stand within two heights, else 1. [-]
        deposition: Factor for the roof and the place on the wall: 0.5 below a peaked roof, 1 at upper corners. [-]

    Returns:
        Driving rain on the part. [L/m2]

    Valid:
        Outside hurricane regions.

    Raises:
        ValueError: If an input is negative.

    Sources:
        bsd-148, Eq. 13 and worked examples; published.

    Example:
        >>> round(straube_design_load(170.0, 0.7, 0.5, 0.5), 2)
        29.75
    """
    not_negative(free=free, height_factor=height_factor, obstruction=obstruction, deposition=deposition)
    return free * height_factor * obstruction * deposition
