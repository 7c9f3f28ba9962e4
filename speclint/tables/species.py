"""Wood species: shrinkage, fibre saturation, decay resistance and density, each with its own citation."""

from __future__ import annotations

from functools import lru_cache
from typing import Literal, NamedTuple, get_args

from speclint.citation import Citation
from speclint.tables.rows import BadCell, Row, read_table, unknown

TABLE = "wood/species.csv"

Resistance = Literal["slightly resistant", "moderately resistant", "resistant", "exceptional"]
RESISTANCES: tuple[Resistance, ...] = get_args(Resistance)  # least first


class Species(NamedTuple):
    """A wood species.

    Attributes:
        name: Name in the trade.
        aliases: Other names under which it is found.
        scientific_name: Botanical name.
        radial_shrinkage: Across the rings, green to oven-dry, of the green size. [%]
        tangential_shrinkage: Along the rings, green to oven-dry, of the green size. [%]
        volumetric_shrinkage: Of the volume, green to oven-dry; None where none is trusted. [%]
        radial_coefficient: Dimensional change coefficient across the rings. [1/%]
        tangential_coefficient: Dimensional change coefficient along the rings. [1/%]
        fibre_saturation: Moisture content below which log walls are reckoned to shrink. [%]
        green_moisture_heartwood: Moisture content of green heartwood; None where not tabulated. [%]
        green_moisture_sapwood: Moisture content of green sapwood; None where not tabulated. [%]
        decay_resistance: Group of the heartwood. Sapwood of every species is not resistant.
        second_growth_resistance: Group to reckon with for present stock.
        specific_gravity_green: Oven-dry weight over green volume, to that of water. [-]
        specific_gravity_dry: Oven-dry weight over volume at 12 % moisture content, to that of water. [-]
        citation: Where the shrinkage comes from.
        coefficient_citation: Where the coefficients come from.
        fibre_saturation_citation: Where the fibre saturation comes from.
        moisture_citation: Where the green moisture comes from; None where none is held.
        decay_citation: Where the decay resistance comes from.
        gravity_citation: Where the specific gravity comes from.
        doubt: What is doubtful about the row; empty where nothing is.
    """

    name: str
    aliases: tuple[str, ...]
    scientific_name: str
    radial_shrinkage: float
    tangential_shrinkage: float
    volumetric_shrinkage: float | None
    radial_coefficient: float
    tangential_coefficient: float
    fibre_saturation: float
    green_moisture_heartwood: float | None
    green_moisture_sapwood: float | None
    decay_resistance: Resistance
    second_growth_resistance: Resistance
    specific_gravity_green: float
    specific_gravity_dry: float
    citation: Citation
    coefficient_citation: Citation
    fibre_saturation_citation: Citation
    moisture_citation: Citation | None
    decay_citation: Citation
    gravity_citation: Citation
    doubt: str


def find_species(name: str) -> Species:
    """The species with a name or alias; letter case, hyphens and commas make no difference.

    Raises:
        UnknownRow: If no species has the name.
    """
    species = _species_by_key().get(species_key(name))
    if species is None:
        raise unknown("wood species", name, (one for kind in all_species() for one in (kind.name, *kind.aliases)))
    return species


@lru_cache(maxsize=1)
def all_species() -> tuple[Species, ...]:
    """Every species held, in the order of the table."""
    return tuple(_species(row) for row in read_table(TABLE))


def species_key(name: str) -> str:
    """A species' name in the form in which names are compared."""
    return " ".join(name.casefold().replace("-", " ").replace(",", " ").split())


@lru_cache(maxsize=1)
def _species_by_key() -> dict[str, Species]:
    found: dict[str, Species] = {}
    for species in all_species():
        for name in (species.name, *species.aliases):
            found.setdefault(species_key(name), species)
    return found


def _species(row: Row) -> Species:
    heart, sap = row.number_if_stated("green_moisture_heartwood"), row.number_if_stated("green_moisture_sapwood")
    return Species(
        name=row.text("species"),
        aliases=tuple(alias for alias in row.text("aliases").split(";") if alias),
        scientific_name=row.text("scientific_name"),
        radial_shrinkage=row.number("radial_shrinkage"),
        tangential_shrinkage=row.number("tangential_shrinkage"),
        volumetric_shrinkage=row.number_if_stated("volumetric_shrinkage"),
        radial_coefficient=row.number("radial_coefficient"),
        tangential_coefficient=row.number("tangential_coefficient"),
        fibre_saturation=row.number("fibre_saturation"),
        green_moisture_heartwood=heart,
        green_moisture_sapwood=sap,
        decay_resistance=_resistance(row, "decay_resistance"),
        second_growth_resistance=_resistance(row, "second_growth_resistance"),
        specific_gravity_green=row.number("specific_gravity_green"),
        specific_gravity_dry=row.number("specific_gravity_dry"),
        citation=row.citation,
        coefficient_citation=row.cited("coefficient"),
        fibre_saturation_citation=row.cited("fibre_saturation"),
        moisture_citation=None if heart is None and sap is None else row.cited("moisture"),
        decay_citation=row.cited("decay"),
        gravity_citation=row.cited("gravity"),
        doubt=row.text("doubt"),
    )


def _resistance(row: Row, column: str) -> Resistance:
    for resistance in RESISTANCES:
        if row.text(column) == resistance:
            return resistance
    raise BadCell(row.table, row.line, column, row.text(column))
