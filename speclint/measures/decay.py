"""How strongly each wooden part is exposed to decay, what its wood resists, and which treatment its place asks for.

Relative judgements: which part is nearest to decay, and what would help. Nothing here says that a part is sound,
strong or safe; posts, beams, decks and stairs are for local code and licensed practice to pass.
"""

from __future__ import annotations

from types import MappingProxyType

from speclint.citation import Citation
from speclint.measures.climate import station_of
from speclint.measures.decay_places import (
    DETAIL_OF,
    DETAILED,
    SLACK,
    Table,
    clearance_of,
    deck_on,
    rain_on,
    wet_from_below,
    worst_detail,
)
from speclint.measures.facts import Facts, Working
from speclint.measures.register import measure
from speclint.model.element import settings_of
from speclint.science.decay_design import (
    HELSINKI,
    LOCAL,
    NEAR_GROUND,
    RESISTANCES,
    SHELTERED,
    STANDINGS,
    climate_index,
    consequence_factor,
    detail_factor,
    exposure_index,
    exposure_over_resistance,
    ground_factor,
    local_exposure_factor,
    resistance,
    resistance_between,
    shelter_by_rain,
    shelter_factor,
)
from speclint.science.decay_dose import months_dose
from speclint.tables.rows import UnknownRow
from speclint.tables.species import Species, find_species

PARTS = "wall, corner, post, beam, purlin, deck, stair"
LEAST_HAZARD = 22.0  # of the decay hazard index, at which the factor of a climate is the least of a map of Europe
GUIDE_FLOOR = 0.8  # least factor of shelter that the guide grants
TURNED = 0.6  # ours: a wall with less than this of the rain on the mean open wall is one class milder
NEAR, OVER = 0.8, 1.25  # ours: between them the method cannot tell
LOW = 0.1524  # m: wood closer to the ground than six inches
WETTED = 0.6  # ours: share of the rain above which a coat on a wall no longer keeps its wood from wetting for long
SOAKED = 50.0  # percent: moisture content of wood that decay likes best

TERRAIN: Table = MappingProxyType(
    {"wooded": "light", "suburban": "moderate", "open country": "severe", "open water": "very severe"}
)
CONSEQUENCE: Table = MappingProxyType(
    {"wall": "moderate", "corner": "moderate", "purlin": "moderate"}
    | {"post": "high", "beam": "high", "deck": "high", "stair": "high"}
)
TREATED_TO: Table = MappingProxyType(
    {
        "none": "UC1",
        "borate": "UC2",
        "copper above ground": "UC3B",
        "copper ground contact": "UC4A",
        "copper heavy duty": "UC4B",
    }
)
"""Use category that a treatment reaches; categories sort by their names."""
GROUPS: Table = MappingProxyType(
    {"exceptional": "A", "resistant": "B", "moderately resistant": "C", "slightly resistant": "D"}
)
GROUPED = Citation("", "groups of heartwood and treatments put into the guide's classes of resistance", "ours")
RECALLED = "recalled, not read: the factor of "
SAPWOOD = "heartwood is not stated as such: reckoned as sapwood, which resists little"
IN_GROUND = "wood in the ground decays faster than the guide, which is for wood above it, can tell"
OUTSIDE = "it ranks parts by how the wood keeps; strength and safety are for local code and licensed practice"


@measure(f"{PARTS}, rail", "decay detail", "choice", "how its details trap water: excellent, good, medium, fair, poor")
def decay_detail(part: Facts, work: Working) -> str:
    """The worst of what the plan says of its ends, contacts, tops and feet."""
    work.cite(DETAILED)
    kind = part.element.kind
    if kind == "wall":
        build = work.need(part, "build")
        if build == "framed with stone":
            raise work.absent("its outside is no wood")
        if work.need(part, "stacked") == "no":
            return "good" if build == "framed with siding" else "medium"
    return worst_detail(part, work, DETAIL_OF["log wall" if kind == "wall" else kind])


@measure(f"{PARTS}, rail", "decay exposure", "ratio", "exposure to decay; 1 is bare spruce in the rain of Helsinki")
def decay_exposure(part: Facts, work: Working) -> float:
    """Lay of the land, shelter from rain, ground, detailing and climate, multiplied as the guide does."""
    detail = str(work.need(part, "decay detail"))
    hazard = float(work.need(part["site"], "decay hazard index", "site"))
    clearance = clearance_of(part, work)
    if clearance is not None and clearance <= 0:
        work.note(IN_GROUND)
    local, milder, harsher = local_of(part, work)
    climate = float(work.call(climate_index, decay_hazard_index=hazard_of(hazard, work)))
    (shelter, ground), (least, low_ground), (most, high_ground) = _place(part, clearance, work)
    detailing = float(work.call(detail_factor, detail=detail))
    if STANDINGS[detail] == "memory":
        work.note(f"{RECALLED}{detail} detailing")
    mild, harsh = climate * HELSINKI[1] / HELSINKI[2], climate * HELSINKI[1] / HELSINKI[0]
    low = exposure_index(milder, least, low_ground, detailing, mild)
    high = exposure_index(harsher, most, high_ground, detailing, harsh)
    work.range(low, high, "ours: the lay of the land a class off, the rain that strikes, and the index of Helsinki")
    work.note(OUTSIDE)
    return float(
        work.call(exposure_index, local=local, shelter=shelter, ground=ground, detail=detailing, climate=climate)
    )


def hazard_of(hazard: float, work: Working) -> float:
    """The decay hazard index of a place, no lower than the least of a published map. [-]"""
    if hazard >= LEAST_HAZARD:
        return hazard
    work.note(
        f"decay hazard index {hazard:.0f}: the least that a map of relative decay hazard in Europe knows is about "
        f"{LEAST_HAZARD:.0f}; reckoned as that"
    )
    work.cite(Citation("irg-16-20588", "map of Europe, 0.6 to 2.6 by one pair of models, abstract", "second-hand"))
    return LEAST_HAZARD


Place = tuple[float, float]


def _place(part: Facts, clearance: float | None, work: Working) -> tuple[Place, Place, Place]:
    """Factors of shelter and of the ground: as taken, at the least and at the most; for a wall of its worst course."""
    if part.element.kind == "wall" and part["courses"] is not None:
        rows = course_places(part, clearance, work)
        taken, low, high = (max((row[at] for row in rows), key=lambda pair: pair[0] * pair[1]) for at in range(3))
        return taken, low, high
    shelter, least, most = _shelter(part, clearance, work)
    ground = 1.0 if clearance is None else float(work.call(ground_factor, clearance=clearance))
    return (shelter, ground), (least, ground), (most, ground)


def course_places(wall: Facts, clearance: float | None, work: Working) -> list[tuple[Place, Place, Place]]:
    """The same for each course of a wall, the lowest first: its own rain, and its own height above the ground."""
    splash = work.maybe(wall, "splash height")
    rows = []
    for course in work.need(wall, "courses").rows:
        up = None if clearance is None else clearance + course.bottom
        ground = 1.0 if up is None else float(work.call(ground_factor, clearance=up))
        below = up is not None and (up <= NEAR_GROUND or (splash is not None and up < float(splash) - SLACK))
        taken, low, high = (
            float(work.call(shelter_by_rain, share=min(1.0, share)))
            for share in (course.rain, course.rain_low, course.rain_high)
        )
        if below:
            work.note("where splash or the ground wets it, a roof is granted no more than the guide grants")
            taken, low = max(taken, GUIDE_FLOOR), max(low, GUIDE_FLOOR)
        rows.append(((taken, ground), (low, ground), (max(high, GUIDE_FLOOR), ground)))
    return rows


def local_of(part: Facts, work: Working) -> tuple[float, float, float]:
    """Factor of the lay of the land, and those of the classes on either side."""
    classes = list(LOCAL)
    at = classes.index(TERRAIN[str(work.need(part["site"], "terrain", "site"))])
    if part.element.kind in ("wall", "post"):
        free, mean = work.maybe(part, "free driving rain"), work.maybe(part, "mean open wall")
        if free is not None and mean and float(free) < TURNED * float(mean):
            work.note("turned away from the rain: its exposure is taken a class milder")
            at = max(0, at - 1)
    if STANDINGS[classes[at]] == "memory":
        work.note(f"{RECALLED}{classes[at]} local exposure")
    near = (classes[max(0, at - 1)], classes[min(len(classes) - 1, at + 1)])
    return float(work.call(local_exposure_factor, exposure=classes[at])), LOCAL[near[0]], LOCAL[near[1]]


def _shelter(part: Facts, clearance: float | None, work: Working) -> tuple[float, float, float]:
    """Factor of shelter: as taken, at the least and at the most."""
    below = wet_from_below(part, clearance, work)
    if part.element.kind == "wall" and part["courses"] is None:
        reach, height = float(work.need(part, "roof reach")), float(work.need(part, "height"))
        found = float(work.call(shelter_factor, reach=reach, depth=height))
        return found, GUIDE_FLOOR, 1.0
    taken, low, high = (float(work.call(shelter_by_rain, share=share)) for share in rain_on(part, work))
    if below:
        work.note("splash or the ground wets it: a roof is granted no more than the guide grants")
        taken, low = max(taken, GUIDE_FLOOR), max(low, GUIDE_FLOOR)
    return taken, low, max(high, GUIDE_FLOOR)


@measure(PARTS, "decay resistance", "ratio", "what its wood and treatment resist, on the scale of the decay exposure")
def decay_resistance(part: Facts, work: Working) -> float:
    """The better of the wood and its treatment, in the guide's classes."""
    work.cite(GROUPED)
    found = [_resists(part, holder, work) for holder in _wood_of(part, work)]
    work.range(min(low for _, low, _ in found), min(high for *_, high in found), "how much of it is heartwood")
    return min(taken for taken, *_ in found)


def _wood_of(part: Facts, work: Working) -> tuple[Facts, ...]:
    """The elements that say of what wood a part is: log ends and purlins are of the logs of their walls."""
    kind = part.element.kind
    if kind == "corner":
        if not part["of"]:
            raise work.missing(part, "of")
        return tuple(part["of"])
    if kind == "purlin" and part["wall"] is not None and work.maybe(part["wall"], "stacked") == "yes":
        work.note("taken to be of the wood of its wall")
        return (part["wall"],)
    return (part,)


def _resists(part: Facts, holder: Facts, work: Working) -> tuple[float, float, float]:
    """Resistance: as taken, at the least and at the most."""
    treated = _treated(part, holder, work)
    if treated is not None:
        if STANDINGS[treated] == "memory":
            work.note(f"{RECALLED}resistance class {treated}")
        least = float(work.call(resistance, wood=treated))
        if least == max(RESISTANCES.values()):
            return least, least, least
    else:
        least = 0.0
    taken, low, high = _untreated(holder, work, least < RESISTANCES["B"])
    return max(least, taken), max(least, low), max(least, high)


def _treatment(part: Facts, holder: Facts, work: Working) -> str:
    """Its own treatment, or that of the wall whose logs it is of."""
    return str(work.need(holder if part.element.kind == "corner" else part, "treatment"))


def _treated(part: Facts, holder: Facts, work: Working) -> str | None:
    """The class that its treatment gives, if any. Borate counts only where neither rain nor the ground wets it."""
    treatment = _treatment(part, holder, work)
    if treatment == "none":
        return None
    if treatment != "borate":
        return "B" if treatment == "copper above ground" else "A"
    clearance = clearance_of(part, work)
    if wet_from_below(part, clearance, work) or rain_on(part, work)[0] > SHELTERED:
        work.note("borate washes out where rain or the ground wets the wood: it is not counted")
        return None
    work.note("borate counts as class C, ours, for as long as the cover and the finish are kept")
    return "C"


def _untreated(holder: Facts, work: Working, wanted: bool) -> tuple[float, float, float]:
    """Resistance of wood without treatment: as taken, at the least and at the most; `wanted` where all rests on it."""
    wood = work.maybe(holder, "wood") if "wood" in settings_of(type(holder.element)) else None
    species = _species(holder, work, wanted and wood in ("heartwood", "mixed"))
    spruce = species is not None and "spruce" in species.name
    outer = "D" if spruce else "E"  # the guide's own reference is spruce, whatever of it is sapwood
    heart = outer if species is None else GROUPS[species.second_growth_resistance]
    low, high = float(work.call(resistance, wood=outer)), RESISTANCES[heart]
    letter = heart if wood == "heartwood" else outer
    if wood == "mixed" and not spruce:
        between = ("C", "D") if heart in "ABC" else ("D", "E")
        work.note("as likely sapwood as heartwood: half-way between two classes, as the guide's example takes larch")
        if heart != "C":
            work.note("the example is of class C; for other heartwood half-way is ours")
        if "E" in between:
            work.note(f"{RECALLED}resistance class E")
        return float(work.call(resistance_between, better=between[0], worse=between[1])), low, high
    if wanted and STANDINGS[letter] == "memory":
        work.note(f"{RECALLED}resistance class {letter}")
    if wanted and wood is None:
        work.note(SAPWOOD)
    taken = RESISTANCES[letter]
    return taken, (taken if wood == "heartwood" else low), (taken if wood == "sapwood" else high)


def _species(holder: Facts, work: Working, wanted: bool) -> Species | None:
    """The species where the table holds it; asked for only where heartwood is counted on."""
    setting = {"deck": "joist species", "stair": ""}.get(holder.element.kind, "species")
    name = (work.need(holder, setting) if wanted else work.maybe(holder, setting)) if setting else None
    if name is None:
        return None
    try:
        found = find_species(str(name))
    except UnknownRow:
        if wanted:
            raise work.absent(f"the reference table holds no decay resistance of {name}") from None
        return None
    work.cite(found.decay_citation)
    return found


@measure(PARTS, "decay margin", "ratio", "exposure to decay against what its wood resists; above 1 is too much")
def decay_margin(part: Facts, work: Working) -> float:
    """The guide's check, weighed by what follows from decay of such a part."""
    exposure, resists = float(work.need(part, "decay exposure")), float(work.need(part, "decay resistance"))
    work.cite(DETAILED)
    consequence = float(work.call(consequence_factor, consequence=CONSEQUENCE[part.element.kind]))
    found = [work.sheet.quantity(part, name) for name in ("decay exposure", "decay resistance")]
    (least, most), (weak, strong) = ((float(getattr(q, "low", 0)), float(getattr(q, "high", 0))) for q in found)
    work.range(consequence * least / strong, consequence * most / weak, "the bounds of exposure and of resistance")
    work.note(OUTSIDE)
    return float(work.call(exposure_over_resistance, exposure=exposure, consequence=consequence, resistance=resists))


@measure(PARTS, "decay verdict", "choice", "ample, near or over: its decay margin below 0.8, to 1.25, or above")
def decay_verdict(part: Facts, work: Working) -> str:
    """Near is where the method cannot tell."""
    work.cite(Citation("", "between 0.8 and 1.25 the method is too unsure to tell", "ours"))
    work.note(OUTSIDE)
    margin = float(work.need(part, "decay margin"))
    clearance = clearance_of(part, work)
    if clearance is not None and clearance <= 0 and margin <= OVER:
        raise work.absent(IN_GROUND)
    return "ample" if margin < NEAR else "near" if margin <= OVER else "over"


@measure(PARTS, "treatment class needed", "choice", "use category of treated wood that its place asks for")
def treatment_class_needed(part: Facts, work: Working) -> str:
    """From the ground, the rain that strikes, the coat, and whether it is hard to replace."""
    work.cite(Citation("awpa-u1", "use categories", "memory"))
    work.cite(Citation("awpa-u1", "ground-contact category for parts above ground, 2016", "second-hand"))
    work.cite(Citation("", "use categories read from the plan", "ours"))
    work.note("a treater's label and local code decide the category")
    kind = part.element.kind
    if kind == "wall" and work.need(part, "wooden") == "no":
        raise work.absent("its outside is no wood")
    if kind == "post" and work.maybe(part, "base") in ("in soil", "in concrete"):
        return "UC4B"
    if kind == "deck" or (kind == "beam" and deck_on(part) is not None):
        work.note("deck framing is critical and hard to replace")
        return "UC4A"
    if (kind == "stair" and work.maybe(part, "foot on") == "soil") or (
        kind == "post" and work.maybe(part, "stands on") == "soil"
    ):
        return "UC4A"
    clearance = clearance_of(part, work)
    if clearance is not None and clearance < LOW - SLACK:
        return "UC4A"
    return _above_ground(part, clearance, work)


def _above_ground(part: Facts, clearance: float | None, work: Working) -> str:
    """The category of a part that stands clear of the ground."""
    kind = part.element.kind
    if kind == "stair" or (kind in ("wall", "corner") and wet_from_below(part, clearance, work)):
        return "UC3B"
    rain = rain_on(part, work)[0]
    if kind == "wall" and rain <= SHELTERED:
        return "UC2"
    if rain > (WETTED if kind == "wall" else SHELTERED):
        return "UC3B"
    if kind == "beam":
        return "UC2" if work.need(part, "cap") == "covered" else "UC3B"
    shut = work.need(part, "finish" if kind in ("wall", "post") else "end grain") != "none"
    return "UC3A" if shut else "UC3B"


@measure(PARTS, "treatment enough", "yes or no", "whether its treatment or durable heartwood is of the class needed")
def treatment_enough(part: Facts, work: Working) -> str:
    """Treatment of the class needed or a higher one; above ground, resistant heartwood that is stated as such."""
    needed = str(work.need(part, "treatment class needed"))
    work.note(OUTSIDE)
    if needed == "UC2":
        work.note("under cover sound wood needs no treatment for as long as the cover keeps it dry")
        return "yes"
    if needed.startswith("UC3"):
        work.cite(Citation("", "resistant heartwood stands in for treatment above ground", "common practice"))
    enough = (_enough(part, holder, needed, work) for holder in _wood_of(part, work))
    return "yes" if all(enough) else "no"


def _enough(part: Facts, holder: Facts, needed: str, work: Working) -> bool:
    """Whether the wood of one holder is of the class needed."""
    if TREATED_TO[_treatment(part, holder, work)] >= needed:
        return True
    if needed.startswith("UC4") or "wood" not in settings_of(type(holder.element)):
        return False
    if work.need(holder, "wood") != "heartwood":
        return False
    species = _species(holder, work, True)
    return species is not None and species.second_growth_resistance in ("resistant", "exceptional")


@measure("site", "wet wood dose", "duration", "decay days a year that wood kept wet would gather")
def wet_wood_dose(site: Facts, work: Working) -> float:
    """The dose model at the moisture that decay likes best, each day at the mean of its month."""
    work.note("for comparing climates: wood that dries gathers a small part of it, and its coefficients are recalled")
    work.note("from means of months: frosty nights and hot noons are not seen, so it may be too high or too low")
    temperature = station_of(site, work).mean_temperature
    return float(work.call(months_dose, moisture=(SOAKED,) * 12, temperature=temperature))
