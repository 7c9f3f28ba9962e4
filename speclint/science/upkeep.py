"""Surface to coat, and how much finish it takes."""

from __future__ import annotations

import math
from types import MappingProxyType

from speclint.science.after import after
from speclint.science.inputs import above_zero, between, known, not_negative
from speclint.science.trade_units import FOOT, INCH

GALLON = 231 * INCH**3
"""One US gallon. [m3]"""
A_GALLON = FOOT**2 / GALLON
"""One square foot to the US gallon. [m2/m3]"""
# surface and age: least and most area that a gallon coats once [ft2/gal]
COVERAGE = MappingProxyType(
    {
        ("planed", "new"):    (200.0, 225.0),
        ("planed", "old"):    (150.0, 175.0),
        ("sawn", "new"):      (125.0, 150.0),
        ("sawn", "old"):      (100.0, 125.0),
        ("hand-hewn", "new"): (100.0, 150.0),
        ("hand-hewn", "old"): (100.0, 125.0),
        ("peeled", "new"):    (150.0, 200.0),
        ("peeled", "old"):    (125.0, 175.0),
    }
)  # fmt: skip


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


@after("", "arc over chord of the face of a log between its neighbours", "ours")
def face_surface_factor(radius: float, course: float) -> float:
    """Surface of a wall of logs that are round outside and flat inside, over its flat area.

    Args:
        radius: Radius of the outer face. [m]
        course: Height that each course of logs adds. [m]

    Returns:
        Surface factor. [-]

    Valid:
        Faces whose arc runs from joint to joint.

    Raises:
        ValueError: If the course is not above zero or exceeds twice the radius.

    Sources:
        ours: arc over chord of the face of a log between its neighbours.

    Example:
        >>> round(face_surface_factor(0.20, 0.20), 3)
        1.047
    """
    above_zero(radius=radius, course=course)
    return log_surface_factor(2 * radius, course)


@after("", "circle of a log end", "ours")
def log_end_area(diameter: float) -> float:
    """End grain of one round log end.

    Args:
        diameter: Diameter of the log. [m]

    Returns:
        Area. [m2]

    Valid:
        Ends cut square.

    Raises:
        ValueError: If the diameter is not above zero.

    Sources:
        ours: circle of a log end.

    Example:
        >>> round(log_end_area(0.30), 4)
        0.0707
    """
    above_zero(diameter=diameter)
    return math.pi / 4 * diameter**2


@after("", "coverage of one coat as trade pages tell it; peeled and hewn wood are ours", "common practice")
def stain_coverage(surface: str, age: str = "old") -> tuple[float, float]:
    """Area that one coat covers for each volume of finish.

    Args:
        surface: Planed, sawn, hand-hewn or peeled. [-]
        age: New for bare wood, old for wood that was coated before or has weathered. [-]

    Returns:
        Least and greatest coverage. [m2/m3]

    Valid:
        Penetrating stains; the label of the product decides.

    Raises:
        ValueError: If the surface or the age is not known.

    Sources:
        common practice: coverage of one coat as trade pages tell it; peeled and hewn wood are ours.

    Example:
        >>> [round(coverage) for coverage in stain_coverage("planed", "new")]
        [4908, 5522]
    """
    known(dict.fromkeys(surface for surface, _ in COVERAGE), surface=surface)
    known(("new", "old"), age=age)
    least, most = COVERAGE[surface, age]
    return least * A_GALLON, most * A_GALLON


@after("", "area times coats over coverage", "ours")
def stain_volume(area: float, coats: float, coverage: float) -> float:
    """Finish for an area.

    Args:
        area: Surface to coat, curves and ends counted. [m2]
        coats: Number of coats. [-]
        coverage: Area that one coat covers for each volume; see `stain_coverage`. [m2/m3]

    Returns:
        Volume. [m3]

    Valid:
        Waste and overspray not counted.

    Raises:
        ValueError: If the area or the number of coats is negative, or the coverage is not above zero.

    Sources:
        ours: area times coats over coverage.

    Example:
        >>> round(stain_volume(50.0, 2, 5000.0), 4)
        0.02
    """
    not_negative(area=area, coats=coats)
    above_zero(coverage=coverage)
    return area * coats / coverage
