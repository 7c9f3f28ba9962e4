"""Design values listed for No. 2 joists by species, and the span of the weakest species of a group."""

from __future__ import annotations

from speclint.science.deck import joist_span_limit
from tests.published.convert import INCH, PSF, PSI

DEPTHS = {"2x6": 5.5, "2x8": 7.25, "2x10": 9.25, "2x12": 11.25}
# bending strength [psi], factor for the size, modulus [psi]: supplement of the timber code, as copied by others
SOUTHERN_PINE = {"2x6": 1000, "2x8": 925, "2x10": 800, "2x12": 750}
SIZE_FACTORS = {"2x6": 1.3, "2x8": 1.2, "2x10": 1.1, "2x12": 1.0}
WESTERN = ((900, 1.6e6), (850, 1.3e6), (875, 1.4e6))


def joist_span(row: dict[str, str], load_psf: float) -> float:
    """Span of the joist of a printed row, in inches."""
    size = row["size"]
    if row["group"] == "southern pine":
        listed = [(SOUTHERN_PINE[size], 1.0, 1.4e6, False)]
    else:
        listed = [(strength, SIZE_FACTORS[size], modulus, True) for strength, modulus in WESTERN]
    return min(
        joist_span_limit(
            strength * PSI,
            modulus * PSI,
            factor,
            DEPTHS[size] * INCH,
            1.5 * INCH,
            float(row["spacing_in"]) * INCH,
            incised,
            load_psf * PSF,
            1.0 if load_psf == 40 else 1.15,
        )
        / INCH
        for strength, factor, modulus, incised in listed
    )
