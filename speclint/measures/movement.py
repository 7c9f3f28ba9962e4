"""How stacked logs come down, and the room that needs."""

from __future__ import annotations

from speclint.citation import Citation
from speclint.measures.facts import Facts, Working
from speclint.measures.register import measure
from speclint.science.settlement import (
    compaction_allowance,
    headspace_need,
    jack_travel_need,
    practice_allowance,
    settlement,
    stack_shrinkage,
)
from speclint.tables.species import find_species
from speclint.units import INCH

SERVICE = 12.0  # percent
MARGIN = 0.25 * INCH
JACK_MARGIN = 1.0 * INCH
PRESUMED = Citation("icc-400-2007", "Section 302.2.2, presumed service moisture", "second-hand")
COMMON = Citation("", "margin left when the wall is at rest", "common practice")


@measure("wall", "settlement", "length", "how far the wall comes down until it is at rest")
def wall_settlement(wall: Facts, work: Working) -> float:
    """Zero where nothing is stacked; else the shop's stated allowance or the log standard's formula with practice."""
    if work.need(wall, "stacked") == "no":
        return 0.0
    height = float(work.need(wall, "height"))
    stated = work.maybe(wall, "settling")
    if stated is not None:
        return height * float(stated) / 100
    return height * _computed_rate(wall, work)


@measure("wall", "settling rate", "share", "settlement as a share of the height")
def settling_rate(wall: Facts, work: Working) -> float:
    """Settlement over height."""
    return float(work.need(wall, "settlement")) / float(work.need(wall, "height"))


def _computed_rate(wall: Facts, work: Working) -> float:
    species = find_species(work.need(wall, "species"))
    work.cite(species.citation)
    if species.doubt:
        work.note(f"{species.name}: {species.doubt}")
    seasoning = work.need(wall, "seasoning")
    moisture = work.maybe(wall, "moisture")
    if moisture is None:
        moisture = 19.0 if seasoning == "kiln-dried" else species.fibre_saturation
        reason = "no moisture content stated: reckoned as " + ("19 %" if seasoning == "kiln-dried" else "green")
        basis = Citation("icc-400-2007", "Section 302.2.2, logs without certified drying", "second-hand")
        work.assume("moisture", moisture, "percent", reason, basis)
    scribed = work.maybe(wall, "scribed") == "yes"
    kind = "scribed" if scribed else "chinked" if work.maybe(wall, "joint") == "chinked" else "milled"
    service = work.assume("service moisture", SERVICE, "percent", "moisture content in a heated house", PRESUMED)
    mean = (species.radial_shrinkage + species.tangential_shrinkage) / 2
    dries = {"moisture_design": float(moisture), "moisture_service": float(service)}
    fibres = species.fibre_saturation
    shrinks = work.call(stack_shrinkage, height=1.0, shrinkage=mean, fibre_saturation=fibres, **dries)
    beds = work.call(compaction_allowance, scribed=kind == "scribed")
    builders = work.call(practice_allowance, log_kind=kind, seasoning=seasoning)
    work.note(
        f"the larger of {builders * 100:.2g} % that builders allow for {seasoning} {kind} logs, and "
        f"{shrinks * 100:.2g} % of shrinkage with {beds * 100:.2g} % of bedding down"
    )
    return float(
        work.call(
            settlement,
            height=1.0,
            shrinkage_radial=species.radial_shrinkage,
            shrinkage_tangential=species.tangential_shrinkage,
            fibre_saturation=fibres,
            log_kind=kind,
            seasoning=seasoning,
            **dries,
        )
    )


@measure("window, door", "stacked", "yes or no", "whether it is in a wall of stacked logs")
def opening_stacked(opening: Facts, work: Working) -> str:
    """By its wall."""
    return str(work.need(opening["wall"], "stacked", "wall"))


@measure("window, door", "headspace need", "length", "settling gap needed over the frame")
def opening_headspace(opening: Facts, work: Working) -> float:
    """The wall's settling over the height of the opening, with a quarter inch to spare."""
    margin = work.assume("margin", MARGIN, "length", "a quarter inch to spare", COMMON)
    rate = float(work.need(opening["wall"], "settling rate", "wall"))
    return float(work.call(headspace_need, opening_height=work.need(opening, "height"), rate=rate, margin=margin))


@measure("post", "settling past", "length", "how far the wall that shares its load comes down beside it")
def settling_past(post: Facts, work: Working) -> float:
    """How far the walls along the porches it carries come down where the porch roof hangs on them."""
    carried = [*post["porches"], *(porch for beam in post["beams"] for porch in beam["porches"])]
    hung = [porch for porch in dict.fromkeys(carried) if work.maybe(porch, "hung on") != "posts"]
    for porch in hung:
        if not porch["along"]:
            raise work.missing(porch, "along")
    return max((settling_at(wall, porch, work) for porch in hung for wall in porch["along"]), default=0.0)


def settling_at(wall: Facts, porch: Facts, work: Working) -> float:
    """How far a wall comes down at the height at which a porch roof meets it; at its top where that is not stated."""
    whole = float(work.need(wall, "settlement"))
    meets, height = work.maybe(porch, "roof height"), float(work.need(wall, "height"))
    return whole if meets is None else whole * min(1.0, float(meets) / height)


@measure("post", "travel need", "length", "travel its adjuster needs")
def travel_need(post: Facts, work: Working) -> float:
    """The settlement beside it with an inch in hand; 0 where nothing settles past it."""
    past = float(work.need(post, "settling past"))
    if past == 0:
        return 0.0
    margin = work.assume("margin", JACK_MARGIN, "length", "an inch of travel in hand", COMMON)
    return float(work.call(jack_travel_need, height=past, rate=1.0, margin=margin))


@measure("junction, chimney, stone, ledger", "settling past", "length", "how far the wall it meets comes down past it")
def part_settling_past(part: Facts, work: Working) -> float:
    """The settlement of its wall where they meet; for a chimney, of the tallest wall under its roof."""
    kind = part.element.kind
    porch = part.sheet.facts.get(getattr(part.element, "roof", None) or "")  # a junction's “roof” can be a porch's
    if kind == "chimney":
        roof = part["roof"]
        walls = (roof["covers"] or ()) if roof is not None else ()
    elif kind == "ledger" and work.maybe(part, "on") in ("foundation", "veneer"):
        return 0.0
    elif kind == "junction" and porch is not None and porch.element.kind == "porch" and part["wall"] is not None:
        return settling_at(part["wall"], porch, work)
    elif kind == "ledger":
        carried = part["carries"]
        walls = (carried["along"] or ()) if carried is not None else ()
    else:
        walls = (part["wall"],) if part["wall"] is not None else ()
    if not walls:
        raise work.missing(part, "roof" if kind == "chimney" else "wall")
    return max(float(work.need(wall, "settlement")) for wall in walls)


@measure("junction, chimney", "slip need", "length", "lap by which its flashing must be able to slide")
def slip_need(part: Facts, work: Working) -> float:
    """The settlement past it and, where there is some, an inch of lap left (two inches at a chimney)."""
    past = float(work.need(part, "settling past"))
    left = (2.0 if part.element.kind == "chimney" else 1.0) * INCH
    work.cite(COMMON)
    return past + left if past > 0.25 * INCH else 0.0
