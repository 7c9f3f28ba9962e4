"""How far a wall of stacked logs comes down as it dries, and the room that needs."""

from __future__ import annotations

from collections.abc import Mapping
from types import MappingProxyType

from speclint.science.after import Standing, after
from speclint.science.inputs import above_zero, between, known, not_negative

LOG_KINDS = ("scribed", "chinked", "milled")
SEASONINGS = ("green", "air-dried", "kiln-dried", "standing dead")
# (kind, seasoning): share of the height; the upper side of each range, with how far it was read
PRACTICE: Mapping[tuple[str, str], tuple[float, Standing]] = MappingProxyType(
    {
        ("scribed", "green"):         (0.060, "second-hand"),
        ("scribed", "air-dried"):     (0.040, "memory"),
        ("scribed", "standing dead"): (0.040, "ours"),
        ("scribed", "kiln-dried"):    (0.030, "memory"),
        ("chinked", "green"):         (0.031, "second-hand"),
        ("chinked", "air-dried"):     (0.030, "memory"),
        ("chinked", "standing dead"): (0.030, "ours"),
        ("chinked", "kiln-dried"):    (0.010, "ours"),
        ("milled", "green"):          (0.031, "second-hand"),
        ("milled", "air-dried"):      (0.030, "memory"),
        ("milled", "standing dead"):  (0.030, "ours"),
        ("milled", "kiln-dried"):     (0.020, "memory"),
    }
)  # fmt: skip
COMPACTION = 0.01


@after("icc-400-2007", "Section 304, shrinkage of stacked logs", "second-hand", shrinkage=(1, 12))
def stack_shrinkage(
    height: float, moisture_design: float, moisture_service: float, shrinkage: float, fibre_saturation: float
) -> float:
    """Loss of height of a stack of logs by shrinkage alone.

    Water above fibre saturation leaves without shrinking the wood, so the design moisture counts only up to there.

    Args:
        height: Height of logs that shrink. [m]
        moisture_design: Moisture content when stacked. [%]
        moisture_service: Moisture content in service. [%]
        shrinkage: Shrinkage across the grain from green to oven-dry. [%]
        fibre_saturation: Moisture content at fibre saturation. [%]

    Returns:
        Loss of height; zero where the logs do not dry further. [m]

    Valid:
        shrinkage: 1 to 12.

    Raises:
        ValueError: If the height or a moisture content is negative, or a property of the wood is not above zero.

    Sources:
        icc-400-2007, Section 304, shrinkage of stacked logs; second-hand.

    Example:
        >>> round(stack_shrinkage(2.7432, 19, 12, 5.5, 30), 4)
        0.0359
    """
    not_negative(height=height, moisture_design=moisture_design, moisture_service=moisture_service)
    above_zero(shrinkage=shrinkage, fibre_saturation=fibre_saturation)
    start = min(moisture_design, fibre_saturation)
    drop = max(0.0, start - moisture_service)
    return height * drop / (fibre_saturation * 100 / shrinkage - fibre_saturation + start)


@after("", "allowances of designers and builders, upper side of each range", "memory")
def practice_allowance(log_kind: str, seasoning: str) -> float:
    """Settling that builders allow for, as a share of the height of the logs.

    Each row of PRACTICE says how far it was read; the standing of the whole is that of its weakest row in use.

    Args:
        log_kind: How courses meet: scribed, chinked or milled. [-]
        seasoning: How the logs were dried: green, air-dried, standing dead or kiln-dried. [-]

    Returns:
        Share of the height. [-]

    Valid:
        Walls of one and two storeys in a heated house.

    Raises:
        ValueError: If either word is not in the table.

    Sources:
        memory: allowances of designers and builders, upper side of each range.

    Example:
        >>> practice_allowance("scribed", "green")
        0.06
    """
    known(LOG_KINDS, log_kind=log_kind)
    known(SEASONINGS, seasoning=seasoning)
    return PRACTICE[log_kind, seasoning][0]


@after("icc-400-2007", "compaction of coped logs", "second-hand")
def compaction_allowance(scribed: bool) -> float:
    """Further settling as coped logs bed down on one another, as a share of the height.

    Args:
        scribed: Whether each log is coped over the one below. [-]

    Returns:
        Share of the height; zero for flat bearing. [-]

    Valid:
        Round logs coped by hand or machine.

    Raises:
        ValueError: Never; both answers are possible.

    Sources:
        icc-400-2007, compaction of coped logs; second-hand.

    Example:
        >>> compaction_allowance(True)
        0.01
    """
    return COMPACTION if scribed else 0.0


@after("", "the larger of computed shrinkage with compaction and the allowance of builders", "ours")
def settlement(
    height: float,
    moisture_design: float,
    moisture_service: float,
    shrinkage_radial: float,
    shrinkage_tangential: float,
    fibre_saturation: float,
    log_kind: str,
    seasoning: str,
) -> float:
    """How far a wall of logs comes down until it is at rest.

    Args:
        height: Height of logs that shrink. [m]
        moisture_design: Moisture content when stacked. [%]
        moisture_service: Moisture content in service. [%]
        shrinkage_radial: Radial shrinkage from green to oven-dry. [%]
        shrinkage_tangential: Tangential shrinkage from green to oven-dry. [%]
        fibre_saturation: Moisture content at fibre saturation. [%]
        log_kind: How courses meet: scribed, chinked or milled. [-]
        seasoning: How the logs were dried: green, air-dried, standing dead or kiln-dried. [-]

    Returns:
        Settlement. [m]

    Valid:
        Walls without steel rods or other means that hold them up.

    Raises:
        ValueError: If a size, moisture content or property is impossible, or a word is not in the table.

    Sources:
        ours: the larger of computed shrinkage with compaction and the allowance of builders.

    Example:
        >>> round(settlement(2.7432, 30, 12, 4.3, 6.7, 30, "scribed", "green"), 4)
        0.1646
    """
    practice = practice_allowance(log_kind, seasoning) * height
    mean = (shrinkage_radial + shrinkage_tangential) / 2
    computed = stack_shrinkage(height, moisture_design, moisture_service, mean, fibre_saturation)
    return max(practice, computed + compaction_allowance(log_kind == "scribed") * height)


@after("", "settling rate over the height of the opening, with a margin", "common practice")
def headspace_need(opening_height: float, rate: float, margin: float) -> float:
    """Gap to leave over a door or window in a wall of logs.

    Args:
        opening_height: Height of log wall beside the opening, sill to head. [m]
        rate: Settlement as a share of the height. [-]
        margin: Space that must remain when the wall is at rest. [m]

    Returns:
        Headspace. [m]

    Valid:
        Openings in stacked logs.

    Raises:
        ValueError: If a height or the margin is negative, or the rate is not between 0 and 1.

    Sources:
        common practice: settling rate over the height of the opening, with a margin.

    Example:
        >>> round(headspace_need(2.0828, 0.06, 0.00635), 4)
        0.1313
    """
    not_negative(opening_height=opening_height, margin=margin)
    between(0, 1, rate=rate)
    return opening_height * rate + margin


@after("", "settling rate over the height of the wall beside the post, with a margin", "common practice")
def jack_travel_need(height: float, rate: float, margin: float) -> float:
    """Travel that an adjuster needs in a post beside a wall of logs.

    Args:
        height: Height of log wall that settles past the post. [m]
        rate: Settlement as a share of the height. [-]
        margin: Travel to keep in hand. [m]

    Returns:
        Travel. [m]

    Valid:
        Posts that carry a load shared with stacked logs.

    Raises:
        ValueError: If the height or the margin is negative, or the rate is not between 0 and 1.

    Sources:
        common practice: settling rate over the height of the wall beside the post, with a margin.

    Example:
        >>> round(jack_travel_need(2.4384, 0.06, 0.0), 4)
        0.1463
    """
    not_negative(height=height, margin=margin)
    between(0, 1, rate=rate)
    return height * rate + margin
