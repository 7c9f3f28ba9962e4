"""How well wood resists the exposure it is given."""

from __future__ import annotations

from speclint.citation import Citation
from speclint.measures.facts import Facts, Working
from speclint.measures.register import measure
from speclint.tables.rows import UnknownRow
from speclint.tables.species import find_species

OURS = Citation("", "exposure classed from the geometry of the plan", "ours")


@measure("wall", "exposure", "choice", "how much weather it gets: sheltered, partly exposed or exposed")
def wall_exposure(wall: Facts, work: Working) -> str:
    """Its class of driving rain; where that cannot be told, its cover ratio: from 0.5 sheltered, below 0.2 exposed."""
    rained = work.maybe(wall, "rain class")
    if rained is not None:
        return "partly exposed" if rained == "partly" else str(rained)
    work.cite(OURS)
    ratio = float(work.need(wall, "cover ratio"))
    return "sheltered" if ratio >= 0.5 else "partly exposed" if ratio >= 0.2 else "exposed"


@measure("wall, post", "heartwood durability", "choice", "decay resistance that heartwood of its species has")
def heartwood_durability(part: Facts, work: Working) -> str:
    """The group of the heartwood of present stock, whatever share of the part is heartwood."""
    name = work.need(part, "species")
    try:
        species = find_species(name)
    except UnknownRow:
        raise work.absent(f"the reference table holds no decay resistance of {name}") from None
    work.cite(species.decay_citation)
    return "resistant" if species.second_growth_resistance == "exceptional" else species.second_growth_resistance


@measure("wall, post", "durability", "choice", "decay resistance of its wood as stated")
def durability(part: Facts, work: Working) -> str:
    """The group of the heartwood of present stock; sapwood of every species is only slightly resistant."""
    heartwood = str(work.need(part, "heartwood durability"))
    if work.maybe(part, "wood") != "heartwood":
        work.note("heartwood is not stated as such: reckoned as sapwood, which resists little")
        return "slightly resistant"
    return heartwood


@measure("wall, post", "protected", "yes or no", "whether its wood is durable heartwood or treated for weather")
def protected(part: Facts, work: Working) -> str:
    """Resistant heartwood, or a copper treatment; borate counts only where rain does not reach."""
    if str(work.maybe(part, "treatment") or "none").startswith("copper"):
        return "yes"
    return "yes" if work.need(part, "durability") == "resistant" else "no"
