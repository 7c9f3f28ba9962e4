"""How pieces of wood change size and check open as they dry, and how much water they can hold."""

from __future__ import annotations

from math import pi
from types import MappingProxyType

from speclint.science.after import after
from speclint.science.inputs import above_zero, known, not_negative
from speclint.science.wood_moisture import FIBRE_SATURATION, partial_shrinkage

# face: shrinkage from green less a slope times the moisture content
LUMBER = MappingProxyType({"width": (6.031, 0.215), "thickness": (5.062, 0.181)})
LENGTHWISE = (0.1, 0.3)  # percent from green to oven-dry
NARROW = 0.003175  # m: an eighth of an inch
WIDE = 0.00635  # m: a quarter of an inch, from which checks are filled


@after("fpl-rp-489", "shrinkage of lumber with moisture content", "second-hand", moisture=(8, 19))
def lumber_shrinkage(face: str, moisture: float) -> float:
    """Shrinkage of sawn lumber of most species from green, whatever way its rings lie.

    Args:
        face: Side of the piece: width or thickness. [-]
        moisture: Moisture content reached. [%]

    Returns:
        Shrinkage, in percent of the green size; zero from about 28 % upward. [%]

    Valid:
        moisture: 8 to 19.

    Raises:
        ValueError: If the moisture content is negative or the face is neither width nor thickness.

    Sources:
        fpl-rp-489, shrinkage of lumber with moisture content; second-hand.

    Example:
        >>> round(lumber_shrinkage("width", 12.0), 3)
        3.451
    """
    known(LUMBER, face=face)
    not_negative(moisture=moisture)
    green, slope = LUMBER[face]
    return max(0.0, green - slope * moisture)


@after("fpl-1093", "lengthwise shrinkage of normal wood", "published", moisture_before=(0, 30), moisture_after=(0, 30))
def lengthwise_shrinkage(length: float, moisture_before: float, moisture_after: float) -> tuple[float, float]:
    """Least and most that a piece of normal wood shortens as it dries: next to nothing.

    Args:
        length: Length of the piece along the grain. [m]
        moisture_before: Moisture content at the start; counted up to 30. [%]
        moisture_after: Moisture content at the end; counted up to 30. [%]

    Returns:
        Least and most loss of length; zero where it does not dry. [m]

    Valid:
        moisture_before: 0 to 30; moisture_after: 0 to 30.

    Raises:
        ValueError: If the length or a moisture content is negative.

    Sources:
        fpl-1093, lengthwise shrinkage of normal wood; published.

    Example:
        >>> [round(1000 * loss, 1) for loss in lengthwise_shrinkage(2.4384, 30.0, 12.0)]
        [1.5, 4.4]
    """
    not_negative(length=length, moisture_before=moisture_before, moisture_after=moisture_after)
    drop = max(0.0, min(moisture_before, FIBRE_SATURATION) - min(moisture_after, FIBRE_SATURATION))
    least, most = (length * shrinkage / 100 * drop / FIBRE_SATURATION for shrinkage in LENGTHWISE)
    return least, most


@after("fpl-gtr-282", "Eq. 4-3", "second-hand", gravity=(0.2, 1.0))
def most_moisture(gravity: float) -> float:
    """Moisture content of wood whose cells are full of water.

    Args:
        gravity: Oven-dry weight over green volume, to that of water. [-]

    Returns:
        Moisture content. [%]

    Valid:
        gravity: 0.2 to 1.

    Raises:
        ValueError: If the specific gravity is not above zero.

    Sources:
        fpl-gtr-282, Eq. 4-3; second-hand.

    Example:
        >>> round(most_moisture(0.38), 1)
        198.2
    """
    above_zero(gravity=gravity)
    return 100 * max(0.0, 1.54 - gravity) / (1.54 * gravity)


@after("", "what the girth shrinks more than the thickness, all in one check", "ours")
def check_opening(
    size: float, shrinkage_radial: float, shrinkage_tangential: float, moisture_before: float, moisture_after: float
) -> float:
    """Width that one check would have if all of a round or boxed-heart piece's checking were in it.

    The girth of a piece that holds its heart shrinks along the rings, its thickness across them; the wood tears
    by the difference. Many small checks share it, so that each is narrower; this only ranks pieces.

    Args:
        size: Diameter, or the lesser side of a squared piece. [m]
        shrinkage_radial: Radial shrinkage from green to oven-dry. [%]
        shrinkage_tangential: Tangential shrinkage from green to oven-dry. [%]
        moisture_before: Moisture content when it is set. [%]
        moisture_after: Moisture content in service. [%]

    Returns:
        Width; zero where the piece does not dry. [m]

    Valid:
        Pieces that hold their heart, without relief kerf.

    Raises:
        ValueError: If the size or a shrinkage is not above zero, or a moisture content is negative.

    Sources:
        ours: what the girth shrinks more than the thickness, all in one check.

    Example:
        >>> round(check_opening(0.254, 4.3, 6.7, 30.0, 12.0), 4)
        0.0115
    """
    above_zero(size=size)
    lost = [
        partial_shrinkage(shrinkage, moisture_after) - partial_shrinkage(shrinkage, moisture_before)
        for shrinkage in (shrinkage_tangential, shrinkage_radial)
    ]
    return pi * size * max(0.0, lost[0] - lost[1]) / 100


@after("", "low below an eighth of an inch, high from a quarter", "ours")
def check_risk(opening: float) -> str:
    """How much a piece will check open after it is set.

    Args:
        opening: Width of its checking were it all in one check. [m]

    Returns:
        One of low, moderate, high. [-]

    Valid:
        Widths from `check_opening`; a quarter of an inch is from where checks are filled.

    Raises:
        ValueError: If the width is negative.

    Sources:
        ours: low below an eighth of an inch, high from a quarter.

    Example:
        >>> check_risk(0.0115)
        'high'
    """
    not_negative(opening=opening)
    return "low" if opening < NARROW else "moderate" if opening < WIDE else "high"
