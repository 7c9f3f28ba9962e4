"""Screens for the frame of a deck: joists, ledger fasteners, posts and footings.

A screen never approves a frame. Roofed porches, log-wall ledgers and anything outside the stated loads go to an
engineer or the building official.
"""

from __future__ import annotations

import math
from types import MappingProxyType

from speclint.science.after import after
from speclint.science.inputs import above_zero, known, not_negative
from speclint.science.trade_units import FOOT, INCH, POUND, PSF, PSI

DEAD_LOAD = 10 * PSF
LIVE_LOAD = 40 * PSF
REPETITIVE = 1.15
WET_BENDING = 0.85
WET_BENDING_FREE_UP_TO = 1150 * PSI
WET_STIFFNESS = 0.9
INCISED_BENDING = 0.80
INCISED_STIFFNESS = 0.95
JOIST_LONGEST = 18 * FOOT
LEDGER_WIDEST = 36 * INCH
FASTENER_LOADS = MappingProxyType(
    {"lag screw": 375 * POUND, "bolt": 710 * POUND, "bolt with spacers": 600 * POUND}
)  # fmt: skip
POST_TALLEST = 14 * FOOT
TIMBER_FROM = 4.5 * INCH
SLENDEREST = 50
SAWN = 0.8


@after("awc-dca6-2012", "Table 2", "second-hand", spacing=(0.3, 0.61), live_load=(1915, 3352))
def joist_span_limit(
    strength: float,
    modulus: float,
    size_factor: float,
    depth: float,
    breadth: float,
    spacing: float,
    incised: bool,
    live_load: float = LIVE_LOAD,
    duration: float = 1.0,
) -> float:
    """Longest clear span of a deck joist in wet service, by bending and by deflection of 1/360 under live load.

    The table of the deck guide is for 40 psf; that of irc-2021, R507.6, has the cells for 50 to 70 psf of snow.
    The span tables print no formula; this one reproduces their cells and its steps are those of the timber code.

    Args:
        strength: Bending strength listed for the grade. [Pa]
        modulus: Modulus of elasticity listed for the grade. [Pa]
        size_factor: Factor on strength for the size; 1 where the list is by size. [-]
        depth: Dressed depth. [m]
        breadth: Dressed thickness. [m]
        spacing: Joists centre to centre. [m]
        incised: Whether the wood was incised for treatment. [-]
        live_load: Live or snow load on the deck; 10 psf of dead load is added for bending. [Pa]
        duration: Factor on strength for the length of the load: 1 for live, 1.15 for snow. [-]

    Returns:
        Clear span, at most 18 ft. [m]

    Valid:
        spacing: 0.3 to 0.61; live_load: 1915 to 3352.

    Raises:
        ValueError: If a number is not above zero.

    Sources:
        awc-dca6-2012, Table 2; second-hand.

    Example:
        >>> psi, inch = 6894.757, 0.0254
        >>> span = joist_span_limit(925 * psi, 1.4e6 * psi, 1.0, 7.25 * inch, 1.5 * inch, 16 * inch, False)
        >>> round(span / inch)
        142
    """
    above_zero(strength=strength, modulus=modulus, size_factor=size_factor)
    above_zero(depth=depth, breadth=breadth, spacing=spacing, live_load=live_load, duration=duration)
    wet = 1.0 if strength * size_factor <= WET_BENDING_FREE_UP_TO else WET_BENDING
    bending = strength * size_factor * wet * REPETITIVE * duration * (INCISED_BENDING if incised else 1.0)
    stiffness = modulus * WET_STIFFNESS * (INCISED_STIFFNESS if incised else 1.0)
    section = breadth * depth**2 / 6
    inertia = breadth * depth**3 / 12
    by_bending = math.sqrt(8 * bending * section / ((live_load + DEAD_LOAD) * spacing))
    by_deflection = float((384 * stiffness * inertia / (5 * 360 * live_load * spacing)) ** (1 / 3))
    return min(by_bending, by_deflection, JOIST_LONGEST)


@after("irc-2021", "Table R507.9.1.3(1)", "second-hand")
def ledger_fastener_load(fastener: str) -> float:
    """Load on one half-inch ledger fastener that reproduces the table of spacings.

    Args:
        fastener: A lag screw, a bolt, or a bolt with spacers. [-]

    Returns:
        Load. [N]

    Valid:
        A ledger on a band joist of a framed house; never a log wall, veneer or an overhang.

    Raises:
        ValueError: If the fastener is none of these.

    Sources:
        irc-2021, Table R507.9.1.3(1); second-hand.

    Example:
        >>> round(ledger_fastener_load("lag screw"))
        1668
    """
    known(FASTENER_LOADS, fastener=fastener)
    return FASTENER_LOADS[fastener]


@after("irc-2021", "Table R507.9.1.3(1)", "second-hand", joist_span=(1.8, 5.5), area_load=(1915, 3352))
def ledger_spacing_capacity(
    fastener: str, joist_span: float, area_load: float = LIVE_LOAD, duration: float = 1.0
) -> float:
    """Widest spacing of ledger fasteners, from the load on one and the half of the joists that it carries.

    It comes within 0.6 in of every cell of the code table; where the table has a cell, the cell governs.

    Args:
        fastener: A lag screw, a bolt, or a bolt with spacers. [-]
        joist_span: Span of the joists that the ledger carries. [m]
        area_load: Live or snow load on the deck; 10 psf of dead load is added. [Pa]
        duration: Factor for the length of the load: 1 for live, 1.15 for snow. [-]

    Returns:
        Spacing, at most 36 in. [m]

    Valid:
        joist_span: 1.8 to 5.5; area_load: 1915 to 3352.

    Raises:
        ValueError: If the fastener is none of these or a number is not above zero.

    Sources:
        irc-2021, Table R507.9.1.3(1); second-hand.

    Example:
        >>> round(ledger_spacing_capacity("lag screw", 3.6576) / 0.0254)
        15
    """
    above_zero(joist_span=joist_span, area_load=area_load, duration=duration)
    line_load = (area_load + DEAD_LOAD) * joist_span / 2
    return min(ledger_fastener_load(fastener) * duration / line_load, LEDGER_WIDEST)


@after("awc-nds-2018", "3.7.1", "second-hand")
def column_stability_factor(length: float, least_side: float, strength: float, modulus_minimum: float) -> float:
    """Share of its strength along the grain that a post keeps against buckling.

    Args:
        length: Height of post between its supports. [m]
        least_side: Smaller side of the section. [m]
        strength: Strength along the grain after every other factor. [Pa]
        modulus_minimum: Modulus for stability after every other factor. [Pa]

    Returns:
        Column stability factor. [-]

    Valid:
        Sawn posts with a length of up to 50 times the least side, held against sidesway.

    Raises:
        ValueError: If the length is negative or another number is not above zero.

    Sources:
        awc-nds-2018, 3.7.1; second-hand.

    Example:
        >>> round(column_stability_factor(2.225, 0.0889, 9.118e6, 3.516e9), 3)
        0.438
    """
    not_negative(length=length)
    above_zero(least_side=least_side, strength=strength, modulus_minimum=modulus_minimum)
    if length == 0:
        return 1.0
    buckling = 0.822 * modulus_minimum / (length / least_side) ** 2
    ratio = buckling / strength
    middle = (1 + ratio) / (2 * SAWN)
    return middle - math.sqrt(middle**2 - ratio / SAWN)


@after("awc-nds-2018", "3.7.1 solved for the length", "second-hand")
def post_height_limit(
    load: float, least_side: float, other_side: float, strength: float, modulus_minimum: float
) -> float:
    """Tallest square or oblong post in wet service that carries a load along its axis, at most 14 ft.

    The post table of the 2021 dwelling code is one to two percent lower; where it has a row, the row governs.

    Args:
        load: Load on the post. [N]
        least_side: Smaller side of the section. [m]
        other_side: Larger side of the section. [m]
        strength: Strength along the grain listed for the grade and size. [Pa]
        modulus_minimum: Modulus for stability listed for the grade. [Pa]

    Returns:
        Height; zero where the load crushes the post at any height. [m]

    Valid:
        Sawn posts loaded at their centre and held at both ends; no roof load.

    Raises:
        ValueError: If a number is not above zero.

    Sources:
        awc-nds-2018, 3.7.1 solved for the length; second-hand.

    Example:
        >>> psi, inch = 6894.757, 0.0254
        >>> height = post_height_limit(22241.0, 3.5 * inch, 3.5 * inch, 1450 * psi, 510e3 * psi)
        >>> round(height / inch)
        101
    """
    above_zero(load=load, least_side=least_side, other_side=other_side)
    above_zero(strength=strength, modulus_minimum=modulus_minimum)
    timber = least_side >= TIMBER_FROM
    crushing = strength * (0.91 if timber else 0.8)
    stability = modulus_minimum * (1.0 if timber else WET_STIFFNESS)
    share = load / (least_side * other_side) / crushing
    if share >= 1:
        return 0.0
    # the stability formula is a quadratic in the share; here it is solved for the buckling stress instead
    buckling = crushing * share * (1 - SAWN * share) / (1 - share)
    slenderness = math.sqrt(0.822 * stability / buckling)
    return min(min(slenderness, SLENDEREST) * least_side, POST_TALLEST)


@after("irc-2024", "R403.1.1", "second-hand")
def footing_area(load: float, bearing: float) -> float:
    """Area of a footing that spreads a load to what the soil bears.

    Args:
        load: Load on the footing. [N]
        bearing: Pressure that the soil bears. [Pa]

    Returns:
        Area. [m2]

    Valid:
        Loads on the middle of a footing on undisturbed soil; a screen only.

    Raises:
        ValueError: If the load is negative or the bearing pressure is not above zero.

    Sources:
        irc-2024, R403.1.1; second-hand.

    Example:
        >>> footing_area(11000.0, 110000.0)
        0.1
    """
    not_negative(load=load)
    above_zero(bearing=bearing)
    return load / bearing
