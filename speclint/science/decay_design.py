"""Decay by factors: how strongly a detail is exposed, against what its wood resists.

The method of one guide in its web edition; the tables of its other editions use other scales and are never mixed in.
Its limit is the onset of decay within thirty years. Most of its numbers were recalled, not read: `STANDINGS` tells.
"""

from __future__ import annotations

from types import MappingProxyType

from speclint.science.after import Standing, after
from speclint.science.inputs import above_zero, known, not_negative

LOCAL = MappingProxyType({"light": 0.8, "moderate": 1.0, "severe": 1.2, "very severe": 1.4})
DETAILS = MappingProxyType({"excellent": 0.9, "good": 1.0, "medium": 1.2, "fair": 1.4, "poor": 1.6})
CONSEQUENCES = MappingProxyType({"small": 0.8, "moderate": 0.9, "high": 1.0})
RESISTANCES = MappingProxyType({"A": 10.0, "B": 5.0, "C": 2.0, "D": 1.0, "E": 0.7})
EDITION = 1.0
"""Calibration of the web edition."""

NEAR_GROUND, CLOSE_TO_GROUND = 0.3, 0.1  # m
HELSINKI = (32.0, 36.0, 40.0)
"""Decay hazard index of Helsinki, where the exposure of the climate is 1: least, taken, greatest; ours.

No published index was found. By the index formula, monthly means of 4 to 18 deg C from April to October and 9 to 13
days with rain a month, as travel pages give them, come to 36; the pages do not say what they count as a day with rain.
"""
SHELTERED = 0.25
"""Share of the rain below which we let the exposure fall with the rain; ours."""
DAMP = 0.2
"""What is left of the exposure where no rain comes: damp air and dew; ours."""

STANDINGS: MappingProxyType[str, Standing] = MappingProxyType(
    {
        "light": "memory", "moderate": "published", "severe": "memory", "very severe": "memory",
        "excellent": "published", "good": "published", "medium": "memory", "fair": "published", "poor": "published",
        "A": "memory", "B": "memory", "C": "published", "D": "published", "E": "memory",
    }
)  # fmt: skip
"""How far each number was read, by the word that stands for it."""


@after("swedish-wood-guide", "factor of local exposure", "memory")
def local_exposure_factor(exposure: str) -> float:
    """Factor of the lie of the land, for wood that faces the prevailing wind. Only that of moderate was read.

    Args:
        exposure: Light, moderate, severe or very severe. [-]

    Returns:
        Factor. [-]

    Valid:
        The web edition; it is less where the wood faces away from the wind.

    Raises:
        ValueError: If the word is none of the four.

    Sources:
        swedish-wood-guide, factor of local exposure; memory.

    Example:
        >>> local_exposure_factor("moderate")
        1.0
    """
    known(LOCAL, exposure=exposure)
    return LOCAL[exposure]


@after("swedish-wood-guide", "factor of shelter by an eave", "memory")
def shelter_factor(reach: float, depth: float) -> float:
    """Factor of the shelter of a roof edge; 1 without one was read, the rest is recalled.

    Args:
        reach: How far the edge reaches past the wood. [m]
        depth: How far the wood lies below the edge. [m]

    Returns:
        Factor, from 0.8 to 1. [-]

    Valid:
        The web edition.

    Raises:
        ValueError: If the reach or the depth is negative.

    Sources:
        swedish-wood-guide, factor of shelter by an eave; memory.

    Example:
        >>> shelter_factor(0.6, 1.2), shelter_factor(1.0, 0.5)
        (0.9, 0.8)
    """
    not_negative(reach=reach, depth=depth)
    return 0.8 if reach > depth else 1.0 - 0.2 * (reach / depth if depth else 0.0)


@after("", "shelter read from the rain that strikes, between the ends of swedish-wood-guide and below them", "ours")
def shelter_by_rain(share: float) -> float:
    """Factor of shelter from the computed share of the rain that strikes the wood.

    All of the rain gives 1 and a quarter of it 0.8, the two ends of the guide; below a quarter, where the guide
    stays at 0.8, it falls in proportion to the rain until only damp air is left.

    Args:
        share: Share of the rain in the open that strikes the wood; above 1 is taken as 1. [-]

    Returns:
        Factor, from 0.2 to 1. [-]

    Valid:
        Wood that splash and the ground do not wet.

    Raises:
        ValueError: If the share is negative.

    Sources:
        ours: shelter read from the rain that strikes, between the ends of swedish-wood-guide and below them.

    Example:
        >>> shelter_by_rain(1.0), shelter_by_rain(0.25), shelter_by_rain(0.0)
        (1.0, 0.8, 0.2)
    """
    not_negative(share=share)
    if share >= SHELTERED:
        return 0.8 + 0.2 * (min(share, 1.0) - SHELTERED) / (1 - SHELTERED)
    return DAMP + (0.8 - DAMP) * share / SHELTERED


@after("swedish-wood-guide", "factor of the distance to the ground", "memory")
def ground_factor(clearance: float) -> float:
    """Factor of the height of wood above the ground; the greatest value is recalled, the others were read.

    Args:
        clearance: Wood above the ground; in the ground it is negative. [m]

    Returns:
        Factor: 1 above 0.3 m, 1.5 above 0.1 m, 2 closer to the ground. [-]

    Valid:
        Wood that does not touch the ground.

    Raises:
        ValueError: Never.

    Sources:
        swedish-wood-guide, factor of the distance to the ground; memory.

    Example:
        >>> ground_factor(0.5), ground_factor(0.2), ground_factor(0.05)
        (1.0, 1.5, 2.0)
    """
    if clearance > NEAR_GROUND:
        return 1.0
    return 1.5 if clearance >= CLOSE_TO_GROUND else 2.0


@after("swedish-wood-guide", "classes of detailing", "memory")
def detail_factor(detail: str) -> float:
    """Factor of how a detail traps and lets go of water; that of medium is recalled, the others were read.

    Args:
        detail: Excellent, good, medium, fair or poor. [-]

    Returns:
        Factor. [-]

    Valid:
        The web edition.

    Raises:
        ValueError: If the word is none of the five.

    Sources:
        swedish-wood-guide, classes of detailing; memory.

    Example:
        >>> detail_factor("poor")
        1.6
    """
    known(DETAILS, detail=detail)
    return DETAILS[detail]


@after("swedish-wood-guide", "classes of consequence", "published")
def consequence_factor(consequence: str) -> float:
    """Factor of what follows from decay: small where a part is easily replaced, high where lives are at risk.

    Args:
        consequence: Small, moderate or high. [-]

    Returns:
        Factor on the exposure. [-]

    Valid:
        The web edition.

    Raises:
        ValueError: If the word is none of the three.

    Sources:
        swedish-wood-guide, classes of consequence; published.

    Example:
        >>> consequence_factor("high")
        1.0
    """
    known(CONSEQUENCES, consequence=consequence)
    return CONSEQUENCES[consequence]


@after(
    "", "decay hazard index of scheffer-1971 over that of Helsinki, taken as 36", "ours", decay_hazard_index=(22, 94)
)
def climate_index(decay_hazard_index: float) -> float:
    """Exposure of a climate against that of Helsinki, for places that the guide does not list.

    The range is that of a map of Europe by one pair of models, 0.6 to 2.6 (irg-16-20588, abstract); another pair
    gives 0.8 to 1.8.

    Args:
        decay_hazard_index: Decay hazard index of the place. [-]

    Returns:
        Exposure of a level spruce member in the rain; 1 at Helsinki. [-]

    Valid:
        decay_hazard_index: 22 to 94.

    Raises:
        ValueError: If the index is negative.

    Sources:
        ours: decay hazard index of scheffer-1971 over that of Helsinki, taken as 36.

    Example:
        >>> climate_index(36.0)
        1.0
    """
    not_negative(decay_hazard_index=decay_hazard_index)
    return decay_hazard_index / HELSINKI[1]


@after("swedish-wood-guide", "characteristic exposure", "published")
def exposure_index(local: float, shelter: float, ground: float, detail: float, climate: float) -> float:
    """Exposure of a detail to decay, before what follows from it is weighed.

    Args:
        local: Factor of local exposure. [-]
        shelter: Factor of shelter from rain. [-]
        ground: Factor of the distance to the ground. [-]
        detail: Factor of detailing. [-]
        climate: Exposure of the climate; 1 at Helsinki. [-]

    Returns:
        Exposure. [-]

    Valid:
        Wood above ground; the calibration of the web edition is 1.

    Raises:
        ValueError: If a factor is not above zero or the exposure of the climate is negative.

    Sources:
        swedish-wood-guide, characteristic exposure; published.

    Example:
        >>> round(exposure_index(1.0, 1.0, 1.5, 0.9, 1.26), 3)
        1.701
    """
    above_zero(local=local, shelter=shelter, ground=ground, detail=detail)
    not_negative(climate=climate)
    return local * shelter * ground * detail * climate * EDITION


@after("swedish-wood-guide", "classes of resistance", "memory")
def resistance(wood: str) -> float:
    """What a wood resists, by class; those of C and D were read, the others are recalled.

    Args:
        wood: Class from A, the most durable or treated for the ground, to E, sapwood. [-]

    Returns:
        Resistance, on the scale of the exposure. [-]

    Valid:
        Wood above ground.

    Raises:
        ValueError: If the word is none of the five.

    Sources:
        swedish-wood-guide, classes of resistance; memory.

    Example:
        >>> resistance("C"), resistance("D")
        (2.0, 1.0)
    """
    known(RESISTANCES, wood=wood)
    return RESISTANCES[wood]


@after("swedish-wood-guide", "example of a deck, larch that may hold sapwood", "published")
def resistance_between(better: str, worse: str) -> float:
    """What wood resists whose pieces may fall in either of two classes: half-way, as the guide's example takes larch.

    Args:
        better: The better class. [-]
        worse: The worse class. [-]

    Returns:
        Resistance. [-]

    Valid:
        Read for classes C and D.

    Raises:
        ValueError: If one of the words is no class.

    Sources:
        swedish-wood-guide, example of a deck, larch that may hold sapwood; published.

    Example:
        >>> resistance_between("C", "D")
        1.5
    """
    return (resistance(better) + resistance(worse)) / 2


@after("swedish-wood-guide", "check of exposure against resistance", "published")
def exposure_over_resistance(exposure: float, consequence: float, resistance: float) -> float:
    """Exposure, weighed by what follows from decay, against what the wood resists; above 1 it is too much.

    Args:
        exposure: Exposure of the detail. [-]
        consequence: Factor of consequence. [-]
        resistance: Resistance of the wood. [-]

    Returns:
        Ratio. [-]

    Valid:
        Onset of decay within thirty years; no statement about strength.

    Raises:
        ValueError: If the exposure is negative or another input is not above zero.

    Sources:
        swedish-wood-guide, check of exposure against resistance; published.

    Example:
        >>> round(exposure_over_resistance(1.701, 0.9, 2.0), 3)
        0.765
    """
    not_negative(exposure=exposure)
    above_zero(consequence=consequence, resistance=resistance)
    return consequence * exposure / resistance
