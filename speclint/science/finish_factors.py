"""What shortens or lengthens the life of a coat: weather, surface, moisture, coats, sheen. All of it is ours."""

from __future__ import annotations

import math
from itertools import pairwise
from types import MappingProxyType

from speclint.science.after import after
from speclint.science.inputs import known, not_negative

# wear of a coat on an open wall of middling sun, by what does it; the three make 1
IN_ANY_CASE = 0.35  # damp, warmth, growth, dirt and washing, under any roof
BY_SUN = 0.45
BY_RAIN = 0.20
MIDDLE_SUN = 0.7
"""Ultraviolet light on an open wall to the east or west, against one to the noon sun."""
COLOUR_HEAT = MappingProxyType({"light": 0.95, "medium": 1.0, "dark": 1.4})
# azimuth [deg] and ultraviolet light on the open wall against one to the noon sun, clear year at 46 degrees north
LIGHT = (
    (0.0, 0.40), (45.0, 0.50), (90.0, 0.71), (135.0, 0.92), (180.0, 1.00),
    (225.0, 0.92), (270.0, 0.71), (315.0, 0.50), (360.0, 0.40),
)  # fmt: skip
SHADE = 0.8
RAIN_TILT = 30.0
# surface: the texture of the table's row, and a factor on the life of that row
SURFACES = MappingProxyType(
    {
        "planed":     ("smooth", 1.0),
        "sawn":       ("saw-textured", 1.0),
        "hand-hewn":  ("saw-textured", 0.95),
        "peeled":     ("saw-textured", 0.85),
    }
)  # fmt: skip
ROUND_FACE = 0.9
SMOOTH_WOOD = 0.5
# kind of top: factor on the life of an upright face
TOPS = MappingProxyType({"metal": 1.0, "board": 1.0, "membrane": 1.0, "bevel": 0.7, "none": 0.5})
# moisture [%] and factor on the life of the first coat; films, and finishes that soak in
WET_FILM = ((15.0, 1.0), (19.0, 0.9), (25.0, 0.3))
WET_STAIN = ((19.0, 1.0), (30.0, 0.6))
THIN_COAT = 0.75
SHEENS = MappingProxyType({"flat": 0.9, "satin": 1.0, "gloss": 1.1})


@after("", "wear by sun, by rain and in any case, as 45, 20 and 35 of 100", "ours", sun=(0, 2), rain=(0, 4))
def weather_wear(sun: float, rain: float, colour: str = "medium") -> float:
    """Wear of a coat against that on an open wall of middling sun.

    Args:
        sun: Ultraviolet light against that on the open wall of middling sun. [-]
        rain: Rain that strikes it against that on the mean open wall. [-]
        colour: Depth of colour, a key of COLOUR_HEAT; dark takes more of the sun's heat. [-]

    Returns:
        Wear; the life is shorter in the same ratio. [-]

    Valid:
        sun: 0 to 2; rain: 0 to 4.

    Raises:
        ValueError: If the sun or the rain is negative, or the colour is not known.

    Sources:
        ours: wear by sun, by rain and in any case, as 45, 20 and 35 of 100.

    Example:
        >>> round(weather_wear(1.0, 1.0), 6)
        1.0
    """
    not_negative(sun=sun, rain=rain)
    known(COLOUR_HEAT, colour=colour)
    return IN_ANY_CASE + BY_SUN * COLOUR_HEAT[colour] * sun + BY_RAIN * rain


@after("", "light by bearing at 46 degrees north, less what a roof shades", "ours", cover=(0, 2))
def ultraviolet_by_bearing(orientation: float, cover: float) -> float:
    """Ultraviolet light on a wall from its bearing and its cover, where the sun at the place is not known.

    Args:
        orientation: Azimuth that the outside face looks to, clockwise from north. [deg]
        cover: Overhang as a share of the height below it. [-]

    Returns:
        Light against an open wall to the noon sun. [-]

    Valid:
        cover: 0 to 2.

    Raises:
        ValueError: If the cover is negative.

    Sources:
        ours: light by bearing at 46 degrees north, less what a roof shades.

    Example:
        >>> round(ultraviolet_by_bearing(180.0, 0.25), 3)
        0.833
    """
    not_negative(cover=cover)
    return _between(LIGHT, orientation % 360) / (1 + SHADE * cover)


@after("", "rain 30 degrees off plumb past the roof edge", "ours", cover=(0, 2))
def rain_by_cover(cover: float) -> float:
    """Rain on a wall from its cover, where the driving rain at the place is not known.

    Args:
        cover: Overhang as a share of the height below it. [-]

    Returns:
        Rain on its wood against an open wall. [-]

    Valid:
        cover: 0 to 2.

    Raises:
        ValueError: If the cover is negative.

    Sources:
        ours: rain 30 degrees off plumb past the roof edge.

    Example:
        >>> round(rain_by_cover(0.25), 3)
        0.567
    """
    not_negative(cover=cover)
    return max(0.0, 1 - cover / math.tan(math.radians(RAIN_TILT)))


@after("", "factors for the surface of the wood", "ours")
def surface_factor(surface: str, round_face: bool) -> float:
    """Life on a surface of logs or siding over the life on the table's siding of the nearest texture.

    Args:
        surface: How the surface was made: a key of SURFACES. [-]
        round_face: Whether the face is round, so that its upper half looks at the sky. [-]

    Returns:
        Factor on the life. [-]

    Valid:
        Upright walls; no published lives on logs are known.

    Raises:
        ValueError: If the surface is not known.

    Sources:
        ours: factors for the surface of the wood.

    Example:
        >>> round(surface_factor("peeled", True), 3)
        0.765
    """
    known(SURFACES, surface=surface)
    return SURFACES[surface][1] * (ROUND_FACE if round_face else 1.0)


@after("", "factors for level tops", "ours")
def top_factor(top: str) -> float:
    """Life on a rail over the life on an upright face, by its top.

    Args:
        top: What its top is: a key of TOPS; none is a flat bare top. [-]

    Returns:
        Factor on the life. [-]

    Valid:
        Tops without a roof.

    Raises:
        ValueError: If the top is not known.

    Sources:
        ours: factors for level tops.

    Example:
        >>> top_factor("none")
        0.5
    """
    known(TOPS, top=top)
    return TOPS[top]


@after("", "factors for moisture when the coat goes on", "ours", moisture=(5, 100))
def first_coat_factor(film: bool, moisture: float) -> float:
    """Life of the first coat over that of coats on dry wood.

    Args:
        film: Whether the finish lies on the wood as a film. [-]
        moisture: Moisture content of the wood when the coat goes on. [%]

    Returns:
        Factor on the life of the first coat. [-]

    Valid:
        moisture: 5 to 100.

    Raises:
        ValueError: If the moisture is negative.

    Sources:
        ours: factors for moisture when the coat goes on.

    Example:
        >>> first_coat_factor(True, 30.0), first_coat_factor(False, 15.0)
        (0.3, 1.0)
    """
    not_negative(moisture=moisture)
    return _between(WET_FILM if film else WET_STAIN, moisture)


@after("", "factor for a single coat", "ours")
def coats_factor(coats: float) -> float:
    """Life of a thin coat over that of two coats.

    Args:
        coats: Number of coats. [-]

    Returns:
        Factor on the life. [-]

    Valid:
        One coat and more.

    Raises:
        ValueError: If there is less than one coat.

    Sources:
        ours: factor for a single coat.

    Example:
        >>> coats_factor(1), coats_factor(2)
        (0.75, 1.0)
    """
    if not coats >= 1:
        raise ValueError(f"coats: wanted 1 or more; got {coats:g}")
    return THIN_COAT if coats < 2 else 1.0


@after("", "factors for the sheen of a film", "ours")
def sheen_factor(film: bool, sheen: str) -> float:
    """Life by sheen: a glossy film holds more binder; on finishes that soak in it tells nothing.

    Args:
        film: Whether the finish lies on the wood as a film. [-]
        sheen: A key of SHEENS. [-]

    Returns:
        Factor on the life. [-]

    Valid:
        Paint and solid stain.

    Raises:
        ValueError: If the sheen is not known.

    Sources:
        ours: factors for the sheen of a film.

    Example:
        >>> sheen_factor(True, "flat"), sheen_factor(False, "flat")
        (0.9, 1.0)
    """
    known(SHEENS, sheen=sheen)
    return SHEENS[sheen] if film else 1.0


def _between(points: tuple[tuple[float, float], ...], at: float) -> float:
    """The value at a place between points, on a straight line; that of the end point beyond it."""
    if at <= points[0][0]:
        return points[0][1]
    for (start, first), (end, second) in pairwise(points):
        if at <= end:
            return first + (second - first) * (at - start) / (end - start)
    return points[-1][1]
