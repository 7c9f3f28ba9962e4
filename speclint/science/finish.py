"""How long a coat on a wall lasts."""

from __future__ import annotations

from itertools import pairwise
from types import MappingProxyType

from speclint.science.after import after
from speclint.science.inputs import above_zero, known, not_negative

LIVES = MappingProxyType(
    {
        "water repellent":       (1.0, 3.0),
        "tinted clear":          (2.0, 3.0),
        "semitransparent stain": (4.0, 8.0),
        "solid stain":           (6.0, 15.0),
        "paint":                 (10.0, 20.0),
    }
)  # fmt: skip
# azimuth [deg] and factor for the sun on a wall that looks that way
SUN = ((0.0, 1.3), (90.0, 1.0), (180.0, 0.7), (270.0, 0.65), (360.0, 1.3))
WELL_COVERED = 0.5
BARELY_COVERED = 0.1
WELL_COVERED_FACTOR = 1.5
BARELY_COVERED_FACTOR = 0.8
DARK_FACTOR = 0.8


@after("fpl-gtr-190", "Table 16-5", "published")
def finish_life(family: str) -> tuple[float, float]:
    """Years until a finish on upright wood outdoors needs its next coat.

    Args:
        family: Kind of finish: a key of LIVES. [-]

    Returns:
        Shortest and longest life. [years]

    Valid:
        Upright exposure; stain on saw-textured or weathered wood; the long lives need a primer and two coats.

    Raises:
        ValueError: If the table does not hold the finish.

    Sources:
        fpl-gtr-190, Table 16-5; published.

    Example:
        >>> finish_life("semitransparent stain")
        (4.0, 8.0)
    """
    known(LIVES, family=family)
    return LIVES[family]


@after("", "factors for sun, cover and colour", "ours", cover=(0, 2))
def finish_life_adjusted(low: float, high: float, orientation: float, cover: float, dark: bool) -> tuple[float, float]:
    """Life of a finish on one wall, by the way it looks, the roof over it and its colour.

    Args:
        low: Shortest life by the table. [years]
        high: Longest life by the table. [years]
        orientation: Azimuth that the outside face looks to, clockwise from north. [deg]
        cover: Overhang as a share of the height below it. [-]
        dark: Whether the colour is dark. [-]

    Returns:
        Shortest and longest life. [years]

    Valid:
        cover: 0 to 2.

    Raises:
        ValueError: If a life is not above zero, the longest is shorter than the shortest, or the cover is negative.

    Sources:
        ours: factors for sun, cover and colour.

    Example:
        >>> low, high = finish_life_adjusted(4.0, 8.0, 180.0, 0.25, False)
        >>> round(low, 2), round(high, 2)
        (2.8, 5.6)
    """
    above_zero(low=low, high=high)
    not_negative(cover=cover)
    if high < low:
        raise ValueError(f"high: wanted {low:g} or more; got {high:g}")
    factor = _sun_factor(orientation) * (DARK_FACTOR if dark else 1.0)
    if cover >= WELL_COVERED:
        factor *= WELL_COVERED_FACTOR
    elif cover < BARELY_COVERED:
        factor *= BARELY_COVERED_FACTOR
    return low * factor, high * factor


def _sun_factor(orientation: float) -> float:
    """The factor of a wall between two points of the compass, on a straight line."""
    azimuth = orientation % 360
    pairs = pairwise(SUN)
    (start, first), (end, second) = next(pair for pair in pairs if pair[0][0] <= azimuth < pair[1][0])
    return first + (second - first) * (azimuth - start) / (end - start)
