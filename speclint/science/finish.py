"""How long a coat lasts outdoors: the handbook's tables, and what a place makes of them."""

from __future__ import annotations

import math
from types import MappingProxyType

from speclint.science.after import after
from speclint.science.inputs import above_zero, known

LIVES = MappingProxyType(
    {
        "water repellent":       (1.0, 3.0),
        "tinted clear":          (2.0, 3.0),
        "semitransparent stain": (4.0, 8.0),
        "solid stain":           (6.0, 15.0),
        "paint":                 (10.0, 20.0),
    }
)  # fmt: skip
FILMS = ("solid stain", "paint")
CEDAR, SOFTWOOD = "cedar or redwood", "pine, fir or spruce"
SMOOTH, TEXTURED = "smooth", "saw-textured"
COLUMNS = ("tinted clear", "semitransparent stain", "paint", "solid stain")
# Table 16-4 as recalled: years by (wood, texture), one pair for each of COLUMNS; siding is flat-grained
BY_WOOD = MappingProxyType(
    {
        (CEDAR, SMOOTH):      ((1.0, 2.0), (2.0, 4.0), ( 8.0, 12.0), ( 6.0, 10.0)),
        (CEDAR, TEXTURED):    ((2.0, 3.0), (4.0, 8.0), (15.0, 20.0), (10.0, 15.0)),
        (SOFTWOOD, SMOOTH):   ((1.0, 2.0), (2.0, 3.0), ( 6.0, 10.0), ( 6.0,  8.0)),
        (SOFTWOOD, TEXTURED): ((2.0, 3.0), (4.0, 7.0), ( 8.0, 12.0), ( 8.0, 10.0)),
    }
)  # fmt: skip
DECKING = MappingProxyType(
    {
        SMOOTH:   ((1.0, 2.0), (2.0, 3.0), (2.0, 3.0), (1.0, 2.0)),
        TEXTURED: ((2.0, 3.0), (3.0, 6.0), (2.0, 3.0), (1.0, 2.0)),
    }
)  # fmt: skip


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


@after("fpl-gtr-190", "Table 16-4", "memory")
def finish_life_on_wood(family: str, wood: str, texture: str) -> tuple[float, float]:
    """Years until a finish on upright siding of a wood and texture needs its next coat.

    Args:
        family: Kind of finish: a word of COLUMNS. [-]
        wood: CEDAR or SOFTWOOD. [-]
        texture: SMOOTH or TEXTURED. [-]

    Returns:
        Shortest and longest life. [years]

    Valid:
        Flat-grained siding; no table for logs is known.

    Raises:
        ValueError: If the table does not hold the finish, the wood or the texture.

    Sources:
        fpl-gtr-190, Table 16-4; memory.

    Example:
        >>> finish_life_on_wood("semitransparent stain", "pine, fir or spruce", "saw-textured")
        (4.0, 7.0)
    """
    known((CEDAR, SOFTWOOD), wood=wood)
    known((SMOOTH, TEXTURED), texture=texture)
    known(COLUMNS, family=family)
    return BY_WOOD[wood, texture][COLUMNS.index(family)]


@after("fpl-gtr-190", "Table 16-4", "memory")
def finish_life_on_decking(family: str, texture: str) -> tuple[float, float]:
    """Years until a finish on boards that are walked on needs its next coat.

    Args:
        family: Kind of finish: a word of COLUMNS. [-]
        texture: SMOOTH for new planed boards, TEXTURED for weathered or sawn ones. [-]

    Returns:
        Shortest and longest life. [years]

    Valid:
        Boards without a roof.

    Raises:
        ValueError: If the table does not hold the finish or the texture.

    Sources:
        fpl-gtr-190, Table 16-4; memory.

    Example:
        >>> finish_life_on_decking("semitransparent stain", "smooth")
        (2.0, 3.0)
    """
    known(DECKING, texture=texture)
    known(COLUMNS, family=family)
    return DECKING[texture][COLUMNS.index(family)]


@after("", "life by the table, over the wear of the place, times the factors of wood and coat", "ours")
def finish_life_in_place(low: float, high: float, wear: float, factors: tuple[float, ...] = ()) -> tuple[float, float]:
    """Life of a finish where it is: by the weather on it, and by what it is on and how it was put on.

    Args:
        low: Shortest life by the table. [years]
        high: Longest life by the table. [years]
        wear: Wear by weather against what the table stands for; see `weather_wear`. [-]
        factors: Factors of surface, top, moisture, coats and sheen. [-]

    Returns:
        Shortest and longest life. [years]

    Valid:
        Any wear.

    Raises:
        ValueError: If a life, the wear or a factor is not above zero, or the longest is shorter than the shortest.

    Sources:
        ours: life by the table, over the wear of the place, times the factors of wood and coat.

    Example:
        >>> finish_life_in_place(4.0, 8.0, 0.8, (0.5,))
        (2.5, 5.0)
    """
    above_zero(low=low, high=high, wear=wear, least_factor=min(factors, default=1.0))
    if high < low:
        raise ValueError(f"high: wanted {low:g} or more; got {high:g}")
    factor = math.prod(factors) / wear
    return low * factor, high * factor
