"""Moisture content of wood in air, and the change of size that follows it."""

from __future__ import annotations

from types import MappingProxyType

from speclint.science.after import after
from speclint.science.inputs import above_zero, between, not_negative

HUMIDITY_MOST = 0.98
COLDEST = 0.0
HOTTEST = 132.0
FIBRE_SATURATION = 30.0
FIBRE_SATURATION_BY_SPECIES = MappingProxyType(
    {
        "yellow-poplar":     31.0,
        "engelmann spruce":  30.0,
        "red oak":           30.0,
        "alaska cedar":      28.0,
        "douglas fir-larch": 28.0,
        "western hemlock":   28.0,
        "sitka spruce":      28.0,
        "southern pine":     26.0,
        "western redcedar":  18.0,
    }
)  # fmt: skip
# species of a commercial group that the list names only as the group
GROUPS = MappingProxyType(
    {
        "alaska yellow-cedar": "alaska cedar",
        "yellow-cedar":        "alaska cedar",
        "douglas-fir":         "douglas fir-larch",
        "western larch":       "douglas fir-larch",
        "northern red oak":    "red oak",
        "loblolly pine":       "southern pine",
        "longleaf pine":       "southern pine",
        "shortleaf pine":      "southern pine",
        "slash pine":          "southern pine",
    }
)  # fmt: skip


@after("fpl-gtr-190", "Eq. 4-5", "second-hand", temperature=(-1.1, 132), humidity=(5, 95))
def equilibrium_moisture(temperature: float, humidity: float) -> float:
    """Moisture content at which wood neither gains nor loses water in air.

    Air below freezing is taken at freezing and above 98 % humidity at 98 %, where the fit would run away.

    Args:
        temperature: Temperature of the air. [deg C]
        humidity: Relative humidity of the air. [%]

    Returns:
        Equilibrium moisture content. [%]

    Valid:
        temperature: -1.1 to 132; humidity: 5 to 95.

    Raises:
        ValueError: If the humidity is not between 0 and 100 or the temperature is below absolute zero.

    Sources:
        fpl-gtr-190, Eq. 4-5; second-hand.

    Example:
        >>> round(equilibrium_moisture(20.0, 65.0), 2)
        12.0
    """
    between(-273.15, 1000, temperature=temperature)
    between(0, 100, humidity=humidity)
    t = min(max(temperature, COLDEST), HOTTEST)
    h = min(humidity / 100, HUMIDITY_MOST)
    # W: molar weight of the polymer unit; K, K1, K2: equilibrium constants of the sorption sites
    w = 349 + 1.29 * t + 0.0135 * t**2
    k = 0.805 + 0.000736 * t - 0.00000273 * t**2
    k1 = 6.27 - 0.00938 * t - 0.000303 * t**2
    k2 = 1.91 + 0.0407 * t - 0.000293 * t**2
    kh = k * h
    bound = (k1 * kh + 2 * k1 * k2 * kh**2) / (1 + k1 * kh + k1 * k2 * kh**2)
    return 1800 / w * (kh / (1 - kh) + bound)


@after("icc-400-2007", "Section 304, fibre saturation by species", "second-hand")
def fibre_saturation(species: str) -> float:
    """Moisture content below which a species shrinks, as the log standard lists it for settling.

    Args:
        species: Common name; a growth or region after a comma is ignored. [-]

    Returns:
        Moisture content at fibre saturation. [%]

    Valid:
        Log walls; species that the list does not name have its figure for all others.

    Raises:
        ValueError: If no species is named.

    Sources:
        icc-400-2007, Section 304, fibre saturation by species; second-hand.

    Example:
        >>> fibre_saturation("Douglas-fir, coast")
        28.0
    """
    name = species.split(",")[0].strip().lower()
    if not name:
        raise ValueError("species: wanted a name; got an empty text")
    return FIBRE_SATURATION_BY_SPECIES.get(GROUPS.get(name, name), FIBRE_SATURATION)


@after("fpl-gtr-190", "Eq. 13-2", "second-hand", moisture_before=(6, 14), moisture_after=(6, 14))
def width_change(width: float, coefficient: float, moisture_before: float, moisture_after: float) -> float:
    """Change in width of a board as its moisture content changes.

    Args:
        width: Width at the start. [m]
        coefficient: Change coefficient; tangential for a flat-sawn face, radial for a quarter-sawn one. [1/%]
        moisture_before: Moisture content at the start. [%]
        moisture_after: Moisture content at the end. [%]

    Returns:
        Change in width; negative is shrinkage. [m]

    Valid:
        moisture_before: 6 to 14; moisture_after: 6 to 14.

    Raises:
        ValueError: If the width or the coefficient is not above zero, or a moisture content is negative.

    Sources:
        fpl-gtr-190, Eq. 13-2; second-hand.

    Example:
        >>> round(width_change(0.2, 0.0025, 12.0, 8.0), 6)
        -0.002
    """
    above_zero(width=width, coefficient=coefficient)
    not_negative(moisture_before=moisture_before, moisture_after=moisture_after)
    return width * coefficient * (moisture_after - moisture_before)


@after("fpl-gtr-190", "Eq. 13-3", "memory", moisture_before=(0, 30), moisture_after=(0, 30))
def width_change_wide(width: float, shrinkage: float, moisture_before: float, moisture_after: float) -> float:
    """Change in width of a board over a wide span of moisture contents, up to fibre saturation.

    Args:
        width: Width at the start. [m]
        shrinkage: Shrinkage across the face from green to oven-dry. [%]
        moisture_before: Moisture content at the start; counted up to 30. [%]
        moisture_after: Moisture content at the end; counted up to 30. [%]

    Returns:
        Change in width; negative is shrinkage. [m]

    Valid:
        moisture_before: 0 to 30; moisture_after: 0 to 30.

    Raises:
        ValueError: If the width or the shrinkage is not above zero, or a moisture content is negative.

    Sources:
        fpl-gtr-190, Eq. 13-3; memory.

    Example:
        >>> round(width_change_wide(0.3048, 7.6, 28.0, 12.0), 4)
        -0.0124
    """
    above_zero(width=width, shrinkage=shrinkage)
    not_negative(moisture_before=moisture_before, moisture_after=moisture_after)
    before = min(moisture_before, FIBRE_SATURATION)
    after_ = min(moisture_after, FIBRE_SATURATION)
    return width * (after_ - before) / (FIBRE_SATURATION * 100 / shrinkage - FIBRE_SATURATION + before)


@after("fpl-gtr-282", "Eq. 4-9", "second-hand", moisture=(0, 30))
def partial_shrinkage(shrinkage: float, moisture: float, fibre_saturation: float = FIBRE_SATURATION) -> float:
    """Shrinkage from green down to a moisture content above oven-dry.

    Args:
        shrinkage: Shrinkage from green to oven-dry. [%]
        moisture: Moisture content reached. [%]
        fibre_saturation: Moisture content at which shrinkage begins. [%]

    Returns:
        Shrinkage, in percent of the green size. [%]

    Valid:
        moisture: 0 to 30.

    Raises:
        ValueError: If the shrinkage or fibre saturation is not above zero, or the moisture content is negative.

    Sources:
        fpl-gtr-282, Eq. 4-9; second-hand.

    Example:
        >>> round(partial_shrinkage(7.6, 12.0), 2)
        4.56
    """
    above_zero(shrinkage=shrinkage, fibre_saturation=fibre_saturation)
    not_negative(moisture=moisture)
    return shrinkage * max(0.0, 1 - moisture / fibre_saturation)


@after("fpl-gtr-190", "Table 13-5", "memory", start=(22, 30))
def change_coefficient(shrinkage: float, start: float) -> float:
    """Change coefficient of a wood, by the straight line behind the table of coefficients.

    The table's footnote, recalled, bases it on the size at 10 % moisture and on shrinkage that begins at 30 %,
    or at 22 % for western redcedar, northern white-cedar and redwood.

    Args:
        shrinkage: Shrinkage from green to oven-dry. [%]
        start: Moisture content at which shrinkage begins. [%]

    Returns:
        Change in size for one percent of moisture, as a share of the size at 10 %. [1/%]

    Valid:
        start: 22 to 30.

    Raises:
        ValueError: If the shrinkage is not above zero and below 100, or shrinkage begins at 10 % or lower.

    Sources:
        fpl-gtr-190, Table 13-5; memory.

    Example:
        >>> round(change_coefficient(7.6, 30), 5)
        0.00267
    """
    above_zero(shrinkage=shrinkage)
    between(0, 100, shrinkage=shrinkage)
    between(10, 100, start=start)
    share = shrinkage / 100
    return (share / start) / (1 - share * (start - 10) / start)
