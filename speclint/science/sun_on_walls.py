"""Sun on an upright wall: its slant to the wall, the shadow of a roof edge, the sky and the ground that it sees."""

from __future__ import annotations

import math

from speclint.science.after import after
from speclint.science.inputs import between, known, not_negative

ALBEDOS = {
    "bare soil":    0.17,
    "lawn":         0.20,
    "mulch":        0.15,
    "washed stone": 0.30,
    "gravel":       0.25,
    "paving":       0.20,
    "decking":      0.25,
}  # fmt: skip
SNOW_ALBEDO = 0.65
ULTRAVIOLET_ALBEDO = 0.04
ULTRAVIOLET_SNOW_ALBEDO = 0.7
GRAZING = 1e-9


@after("", "angle between two directions, elementary geometry", "ours")
def incidence_cosine(altitude: float, azimuth: float, faces: float) -> float:
    """Share of the beam that an upright wall takes, against a plane square to the sun.

    Args:
        altitude: Apparent altitude of the sun. [deg]
        azimuth: Azimuth of the sun, clockwise from north. [deg]
        faces: Azimuth that the wall faces, clockwise from north. [deg]

    Returns:
        Cosine of the angle between the sun and the outward normal; zero or less while the sun is behind. [-]

    Valid:
        Upright walls.

    Raises:
        ValueError: If the altitude is not between -90 and 90 degrees.

    Sources:
        ours: angle between two directions, elementary geometry.

    Example:
        >>> round(incidence_cosine(60.0, 180.0, 180.0), 6)
        0.5
    """
    between(-90, 90, altitude=altitude)
    return math.cos(math.radians(altitude)) * math.cos(math.radians(azimuth - faces))


@after("", "projection times the tangent of the profile angle, elementary geometry", "ours")
def shadow_depth(projection: float, altitude: float, azimuth: float, faces: float) -> float:
    """How far below a level roof edge its shadow reaches on the wall.

    Args:
        projection: Level reach of the roof edge past the wall face. [m]
        altitude: Apparent altitude of the sun. [deg]
        azimuth: Azimuth of the sun, clockwise from north. [deg]
        faces: Azimuth that the wall faces, clockwise from north. [deg]

    Returns:
        Depth below the roof edge; without end while no sun is before the wall. [m]

    Valid:
        Walls longer than about three times the projection; ends of the roof edge are not counted.

    Raises:
        ValueError: If the projection is negative or the altitude is not between -90 and 90 degrees.

    Sources:
        ours: projection times the tangent of the profile angle, elementary geometry.

    Example:
        >>> round(shadow_depth(0.9, 45.0, 180.0, 180.0), 6)
        0.9
    """
    not_negative(projection=projection)
    between(-90, 90, altitude=altitude)
    before = math.cos(math.radians(azimuth - faces))
    if altitude <= 0 or before <= GRAZING:
        return math.inf
    return projection * math.tan(math.radians(altitude)) / before


@after("", "view of an evenly bright sky past an endless roof edge", "ours")
def sky_left(depth: float, projection: float) -> float:
    """Share of the sky's light that a roof edge leaves to a point of the wall below it.

    Args:
        depth: Depth of the point below the roof edge. [m]
        projection: Level reach of the roof edge past the wall face. [m]

    Returns:
        Share of what the open wall takes from the sky. [-]

    Valid:
        Long walls under an evenly bright sky; light thrown back by the soffit is not counted.

    Raises:
        ValueError: If the depth or the projection is negative.

    Sources:
        ours: view of an evenly bright sky past an endless roof edge.

    Example:
        >>> round(sky_left(0.9, 0.9), 4)
        0.7071
    """
    not_negative(depth=depth, projection=projection)
    if projection == 0:
        return 1.0
    return depth / math.hypot(depth, projection)


@after("", "values in common use for soil, grass and snow; stone, mulch, paving and boards set by us", "ours")
def ground_albedo(surface: str, snow: bool = False) -> float:
    """Share of sun and sky light that the ground throws back.

    Paving stands between asphalt at 0.12 and concrete at 0.30; wet ground is darker, fresh snow brighter.

    Args:
        surface: Kind of ground. [-]
        snow: Whether snow lies on it. [-]

    Returns:
        Albedo. [-]

    Valid:
        Dry ground and settled snow.

    Raises:
        ValueError: If the kind of ground is unknown.

    Sources:
        ours: values in common use for soil, grass and snow; stone, mulch, paving and boards set by us.

    Example:
        >>> ground_albedo("lawn"), ground_albedo("lawn", snow=True)
        (0.2, 0.65)
    """
    known(ALBEDOS, surface=surface)
    return SNOW_ALBEDO if snow else ALBEDOS[surface]


@after("", "round values recalled for ultraviolet: nearly nothing from any ground but snow", "ours")
def ultraviolet_albedo(snow: bool) -> float:
    """Share of ultraviolet that the ground throws back.

    Args:
        snow: Whether snow lies on the ground. [-]

    Returns:
        Albedo of 300 to 400 nm. [-]

    Valid:
        Soil, grass, stone and boards; white sand and white paint throw back more.

    Raises:
        Nothing.

    Sources:
        ours: round values recalled for ultraviolet: nearly nothing from any ground but snow.

    Example:
        >>> ultraviolet_albedo(False), ultraviolet_albedo(True)
        (0.04, 0.7)
    """
    return ULTRAVIOLET_SNOW_ALBEDO if snow else ULTRAVIOLET_ALBEDO
