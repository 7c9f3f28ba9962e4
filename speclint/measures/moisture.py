"""How damp wood is outdoors and in its place, and what that does to its size and its checks."""

from __future__ import annotations

from types import MappingProxyType
from typing import NamedTuple

from speclint.citation import Citation
from speclint.measures.climate import station_of
from speclint.measures.facts import Facts, Working
from speclint.measures.register import measure
from speclint.model.element import settings_of
from speclint.science.movement import check_opening, check_risk, lengthwise_shrinkage, most_moisture
from speclint.science.settlement import stack_shrinkage
from speclint.science.wood_moisture import FIBRE_SATURATION, equilibrium_moisture, width_change_wide
from speclint.tables.rows import UnknownRow
from speclint.tables.species import Species, find_species
from speclint.tables.stations import TOO_FAR, Station, ground_distance, stations_near

MONTH_NAMES = ("Jan", "Feb", "Mar", "Apr", "May", "Jun", "Jul", "Aug", "Sep", "Oct", "Nov", "Dec")
OUTDOORS = 12.0  # percent: most of the country, on the average of the year
INDOORS = 12.0  # percent
# percent: moisture content of wood of which the plan says only how it was dried; ours, the wet side of what is usual
SEASONED = MappingProxyType({"kiln-dried": 19.0, "air-dried": 24.0, "standing dead": 24.0, "green": 30.0})
DONORS = 8  # stations with humidity, the nearest, among which the most alike is chosen
KM_A_DEGREE = 40.0  # km that one degree of difference in a month counts for; ours, least error at leaving one out
ALIKE = 3.0  # C: greatest difference of monthly means at which humidity is borrowed without a word
LAMINATION = 0.038  # m: a sawn lamination of one and a half inches
UNCERTIFIED = Citation("icc-400-2007", "Section 302.2.2, logs without certified drying", "second-hand")
HEATED = Citation("icc-400-2007", "Section 302.2.2, presumed service moisture", "second-hand")
PRESUMED_OUTDOORS = Citation("fpl-gtr-190", "Table 13-2, wood outdoors", "memory")
OURS = Citation("", "what a plan leaves out is reckoned on the wet side", "ours")


class MoistureByMonth(NamedTuple):
    """Moisture content of wood under cover outdoors, January first. [%]"""

    months: tuple[float, ...]
    title: str

    @property
    def mean(self) -> float:
        """The mean of the twelve. [%]"""
        return sum(self.months) / len(self.months)

    def __str__(self) -> str:
        told = ", ".join(f"{name} {one:.1f}" for name, one in zip(MONTH_NAMES, self.months, strict=True))
        return f"{told} % ({self.title})"


@measure("site", "moisture by month", "record", "moisture content that wood under cover comes to in each month")
def moisture_by_month(site: Facts, work: Working) -> MoistureByMonth:
    """From the monthly means of the station; humidity of the nearest station that observes it where that has none."""
    station = station_of(site, work)
    humid = _humid_station(site, work, station)
    months = []
    for temperature, humidity in zip(station.mean_temperature, humid.humidity or (), strict=True):
        if temperature < 0:
            work.note("months below freezing on the mean are reckoned at freezing")
        months.append(float(work.call(equilibrium_moisture, temperature=max(0.0, temperature), humidity=humidity)))
    work.note("wood that rain and splash do not reach; wet and sunny faces swing farther")
    title = station.title if humid is station else f"{station.title}, humidity of {humid.title}"
    return MoistureByMonth(tuple(months), title)


def _humid_station(site: Facts, work: Working, station: Station) -> Station:
    """The station itself, or the nearest to the lot that observes humidity."""
    found = station
    if station.humidity is None:
        latitude, longitude = work.maybe(site, "latitude"), work.maybe(site, "longitude")
        if latitude is None or longitude is None:
            latitude, longitude = station.latitude, station.longitude
        near = stations_near(float(latitude), float(longitude), DONORS)
        found, away = min(near, key=lambda one: one[1] + KM_A_DEGREE * _apart(station, one[0]))
        if away > TOO_FAR:
            raise work.absent(
                f"no humidity is held for {station.title}, and the nearest station that has it, {found.title}, "
                f"is {away:.0f} km away"
            )
        apart = ground_distance(station.latitude, station.longitude, found.latitude, found.longitude)
        work.note(
            f"no humidity is held for {station.title}: that of {found.title} is taken, {away:.0f} km from the lot"
            + (f" and {apart:.0f} km from that station" if abs(apart - away) >= 1 else "")
        )
        if _apart(station, found) > ALIKE:
            work.note(f"its months differ by up to {_apart(station, found):.0f} C: the moisture may be some points off")
    if found.air_citation is not None:
        work.cite(found.air_citation)
    return found


def _apart(station: Station, other: Station) -> float:
    """The greatest difference of two stations' mean temperatures in a month. [C]"""
    return max(abs(a - b) for a, b in zip(station.mean_temperature, other.mean_temperature, strict=True))


@measure("site", "service moisture", "percent", "moisture content of wood under cover outdoors, mean of the year")
def service_moisture(site: Facts, work: Working) -> float:
    """The mean of the twelve months; its bounds are the driest and the wettest month."""
    year: MoistureByMonth = work.need(site, "moisture by month")
    work.range(min(year.months), max(year.months), "driest and wettest month of a mean year")
    return year.mean


@measure("site", "driest month moisture", "percent", "moisture content of wood under cover in the driest month")
def driest_month(site: Facts, work: Working) -> float:
    """The least of the twelve months."""
    months = work.need(site, "moisture by month").months
    return _told(min(months), months, work)


@measure("site", "wettest month moisture", "percent", "moisture content of wood under cover in the dampest month")
def wettest_month(site: Facts, work: Working) -> float:
    """The most of the twelve months."""
    months = work.need(site, "moisture by month").months
    return _told(max(months), months, work)


def _told(value: float, months: tuple[float, ...], work: Working) -> float:
    work.note(f"in {MONTH_NAMES[months.index(value)]}")
    return value


def species_of(part: Facts, work: Working) -> Species:
    """The species of a part, with its citation and its doubts."""
    name = work.need(part, "species")
    try:
        species = find_species(name)
    except UnknownRow:
        raise work.absent(f"the reference table holds no shrinkage of {name}") from None
    work.cite(species.citation)
    if species.doubt:
        work.note(f"{species.name}: {species.doubt}")
    return species


def moisture_of(part: Facts, species: Species, work: Working) -> float | None:
    """The stated moisture content, with a note where it is more than green wood holds; None where not stated. [%]"""
    stated = work.maybe(part, "moisture") if "moisture" in settings_of(type(part.element)) else None
    if stated is None:
        return None
    most, words = green_moisture(species, work)
    if stated > most:
        work.note(
            f"{stated:g} % is more than green {species.name} holds ({words}): a figure to look at again; "
            "only what is below fibre saturation counts here"
        )
    return float(stated)


def green_moisture(species: Species, work: Working) -> tuple[float, str]:
    """What green wood of a species holds where it is wettest, and in words where that comes from. [%]"""
    held = [one for one in (species.green_moisture_heartwood, species.green_moisture_sapwood) if one is not None]
    if held and species.moisture_citation is not None and species.green_moisture_sapwood is not None:
        work.cite(species.moisture_citation)
        return max(held), f"{max(held):g} % on the mean of its wetter wood"
    full = float(work.call(most_moisture, gravity=species.specific_gravity_green))
    return full, f"{full:.0f} % with every cell full"


@measure("wall, post", "wetter than green", "yes or no", "whether the stated moisture is more than green wood holds")
def wetter_than_green(part: Facts, work: Working) -> str:
    """Against the green moisture of the species, or against cells full of water where none is tabulated."""
    species = species_of(part, work)
    most, words = green_moisture(species, work)
    work.note(f"green {species.name}: {words}")
    return "yes" if float(work.need(part, "moisture")) > most else "no"


class Drying(NamedTuple):
    """What a wall of logs is made of and how far it dries.

    Attributes:
        species: Species of the logs.
        kind: How courses meet: scribed, chinked or milled.
        seasoning: How the logs were dried.
        stacked_at: Moisture content when stacked. [%]
        service: Moisture content in a heated house. [%]
        taken_green: Whether no moisture is stated, and the logs are reckoned as green.
    """

    species: Species
    kind: str
    seasoning: str
    stacked_at: float
    service: float
    taken_green: bool

    @property
    def moistures(self) -> dict[str, float]:
        """As the log standard's formula takes them."""
        return {"moisture_design": self.stacked_at, "moisture_service": self.service}

    @property
    def mean_shrinkage(self) -> float:
        """Halfway between radial and tangential. [%]"""
        return (self.species.radial_shrinkage + self.species.tangential_shrinkage) / 2


def drying_of(wall: Facts, work: Working) -> Drying:
    """How a wall of logs dries, with what the plan does not say reckoned on the safe side."""
    if work.need(wall, "stacked") == "no":
        raise work.absent("it is not of stacked logs")
    species = species_of(wall, work)
    seasoning = str(work.need(wall, "seasoning"))
    moisture = moisture_of(wall, species, work)
    taken_green = moisture is None and seasoning != "kiln-dried"
    if moisture is None:
        dried = seasoning == "kiln-dried"
        moisture = SEASONED[seasoning] if dried else species.fibre_saturation
        reason = f"{seasoning}, no moisture content stated: reckoned as " + ("19 %" if dried else "green, uncertified")
        work.assume("moisture", moisture, "percent", reason, UNCERTIFIED)
    scribed = work.maybe(wall, "scribed") == "yes"
    kind = "scribed" if scribed else "chinked" if work.maybe(wall, "joint") == "chinked" else "milled"
    service = _in_service(wall, work)
    return Drying(species, kind, seasoning, float(moisture), float(service), taken_green)


def _in_service(wall: Facts, work: Working) -> float:
    """What log walls come to: as the standard presumes, or drier where the air of the lot is. [%]"""
    known = wall["site"]["service moisture"] if wall["site"] is not None else None
    if known is not None and float(known) < INDOORS:
        work.note("drier than the standard presumes: the mean of the lot is taken")
        return float(work.need(wall["site"], "service moisture"))
    return float(work.assume("service moisture", INDOORS, "percent", "moisture content in a heated house", HEATED))


class Piece(NamedTuple):
    """A post or beam as it dries: its species, its sides, and its moisture when set and in service. [m, %]"""

    species: Species
    sides: tuple[float, float]
    set_at: float
    service: float


def _piece(part: Facts, work: Working) -> Piece:
    species = species_of(part, work)
    size = work.need(part, "size")
    return Piece(species, (float(size[0]), float(size[1])), _set_at(part, species, work), outdoors(part, work))


def _set_at(part: Facts, species: Species, work: Working) -> float:
    """Moisture content of a post or beam when it is set; what is not stated is reckoned on the wet side. [%]"""
    stated = moisture_of(part, species, work)
    if stated is not None:
        return stated
    if part.element.kind == "beam" and work.maybe(part, "material") == "glulam":
        return float(work.assume("moisture", OUTDOORS, "percent", "laminations are dried before they are glued", OURS))
    seasoned = work.maybe(part, "seasoning") if "seasoning" in settings_of(type(part.element)) else None
    moisture = SEASONED[str(seasoned or "green")]
    reason = f"no moisture content stated: {seasoned or 'green'} wood is reckoned at {moisture:g} %"
    return float(work.assume("moisture", moisture, "percent", reason, OURS))


def outdoors(part: Facts, work: Working) -> float:
    """Moisture content that a part outdoors comes to, of the lot where it is known. [%]"""
    known = work.maybe(part["site"], "service moisture")
    if known is not None:
        return float(known)
    reason = "the lot's own is not known: that of most of the country"
    return float(work.assume("service moisture", OUTDOORS, "percent", reason, PRESUMED_OUTDOORS))


@measure(
    "post, beam", "width change", "length", "change of its greater side as it dries to service; below 0 it shrinks"
)
def part_width_change(part: Facts, work: Working) -> float:
    """Halfway between the change across the rings and along them, which are its bounds; its length stays."""
    piece = _piece(part, work)
    side = max(piece.sides)
    across, along = (
        float(
            work.call(
                width_change_wide,
                width=side,
                shrinkage=shrinkage,
                moisture_before=piece.set_at,
                moisture_after=piece.service,
            )
        )
        for shrinkage in (piece.species.radial_shrinkage, piece.species.tangential_shrinkage)
    )
    work.range(min(across, along), max(across, along), "rings one way or the other")
    least, most = work.call(
        lengthwise_shrinkage, length=1.0, moisture_before=piece.set_at, moisture_after=piece.service
    )
    work.note(
        f"along the grain it changes {100 * least:.2f} to {100 * most:.2f} % at the most, reckoned as nothing: "
        "beside a settling wall the wall moves, not the post"
    )
    return (across + along) / 2


@measure("wall", "log shrinkage", "length", "what one of its logs loses in thickness by drying")
def log_shrinkage(wall: Facts, work: Working) -> float:
    """By the log standard's formula with the mean of radial and tangential shrinkage; its bounds are with either."""
    dries = drying_of(wall, work)
    size = float(work.need(wall, "log size"))
    kinds = (dries.species.radial_shrinkage, dries.mean_shrinkage, dries.species.tangential_shrinkage)
    fibres = dries.species.fibre_saturation
    low, mean, high = (
        float(work.call(stack_shrinkage, height=size, shrinkage=one, fibre_saturation=fibres, **dries.moistures))
        for one in kinds
    )
    work.range(low, high, "rings one way or the other")
    return mean


@measure("wall, post, beam", "check opening", "length", "width of its checking after setting, were it all in one check")
def part_check_opening(part: Facts, work: Working) -> float:
    """What the girth shrinks more than the thickness; an indicator of ours that ranks, not a forecast of one check."""
    if part.element.kind == "wall":
        dries = drying_of(part, work)
        species, size = dries.species, float(work.need(part, "log size"))
        before, service = dries.stacked_at, dries.service
        if dries.taken_green:  # checks open from where all wood begins to shrink
            before = max(before, FIBRE_SATURATION)
        kerf = work.maybe(part, "kerf")
        if kerf not in (None, "none"):
            work.note(f"a relief kerf {kerf} takes up most of it")
    else:
        piece = _piece(part, work)
        species, size, before, service = piece.species, min(piece.sides), piece.set_at, piece.service
        if part.element.kind == "beam" and work.maybe(part, "material") in ("glulam", "built-up"):
            size = min(size, LAMINATION)
            work.note("made of laminations or plies that hold no heart: each is taken for itself")
    return float(
        work.call(
            check_opening,
            size=size,
            shrinkage_radial=species.radial_shrinkage,
            shrinkage_tangential=species.tangential_shrinkage,
            moisture_before=before,
            moisture_after=service,
        )
    )


@measure("wall, post, beam", "check risk", "choice", "how much it will check open after setting: low, moderate or high")
def part_check_risk(part: Facts, work: Working) -> str:
    """Low where all of it in one check stays below an eighth of an inch, high from a quarter; both ours."""
    return str(work.call(check_risk, opening=work.need(part, "check opening")))
