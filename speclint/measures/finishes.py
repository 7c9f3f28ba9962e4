"""How long a finish lasts on walls, decks, rails and posts."""

from __future__ import annotations

from speclint.citation import Citation
from speclint.measures.facts import Facts, Working
from speclint.measures.moisture import SEASONED
from speclint.measures.register import measure
from speclint.quantity import Absent
from speclint.science.finish import (
    CEDAR,
    COLUMNS,
    FILMS,
    LIVES,
    SMOOTH,
    SOFTWOOD,
    finish_life,
    finish_life_in_place,
    finish_life_on_decking,
    finish_life_on_wood,
)
from speclint.science.finish_factors import (
    MIDDLE_SUN,
    SMOOTH_WOOD,
    SURFACES,
    coats_factor,
    first_coat_factor,
    rain_by_cover,
    sheen_factor,
    surface_factor,
    top_factor,
    ultraviolet_by_bearing,
    weather_wear,
)
from speclint.tables.rows import UnknownRow
from speclint.tables.species import find_species

YEAR = 365.25
ROUND = ("log round", "log D")
DRY_ENOUGH = 19.0
UNDER_ROOF = (0.6, 0.15)  # ultraviolet light and rain of the open that reach a deck, rail or post under a roof; ours
LEVEL_SHARE = 0.5  # life of a water repellent on boards that are walked on over that on upright wood; ours
ROOFED = Citation("", "0.6 of the light and 0.15 of the rain of the open under a porch roof", "ours")


@measure("wall", "wood surface", "choice", "how the surface that takes the finish was made, as stated or taken")
def wood_surface(wall: Facts, work: Working) -> str:
    """As stated; round logs are taken as peeled, all other wood as planed, on which coats last least."""
    stated = work.maybe(wall, "surface")
    if stated is not None:
        return str(stated)
    found = "peeled" if work.maybe(wall, "build") == "log round" else "planed"
    work.note(f"surface not stated: taken as {found}")
    return found


@measure("wall, deck, rail, post", "finish life", "duration", "time until its finish needs the next coat, at the least")
def shortest_life(part: Facts, work: Working) -> float:
    """The low end of the range of its likely life."""
    return _bounds(part, work)[0]


@measure("wall, deck, rail, post", "longest finish life", "duration", "time until its finish needs a coat, at best")
def longest_life(part: Facts, work: Working) -> float:
    """The high end of the range of its likely life."""
    return _bounds(part, work)[1]


@measure("wall, deck, rail, post", "likely finish life", "duration", "time until its finish needs a coat, most likely")
def likely_life(part: Facts, work: Working) -> float:
    """The middle of the handbook's range, over the wear by weather, times our factors."""
    low, high = _life(part, work)
    work.range(low, high, "the range of the handbook's table")
    return (low + high) / 2


@measure("wall, deck, rail, post", "first coat share", "ratio", "life of its first coat over that of coats on dry wood")
def first_coat_share(part: Facts, work: Working) -> float:
    """By the moisture of the wood when the coat goes on; 1 where nothing tells that it is wet."""
    moisture, words = _moisture(part, work)
    if moisture is None:
        work.note(words)
        return 1.0
    film = _finish(part, work) in FILMS
    found = float(work.call(first_coat_factor, film=film, moisture=moisture))
    work.note(f"coated at {moisture:g} % moisture ({words})")
    if moisture > DRY_ENOUGH:
        work.note(f"above {DRY_ENOUGH:g} % a film blisters and peels, and a stain does not soak in")
    return found


@measure("wall", "longest wall life", "duration", "likely finish life of the wall whose finish lasts longest")
def longest_wall_life(wall: Facts, work: Working) -> float:
    """The longest of all walls whose finish life can be told; its own where it is the only one."""
    own = float(work.need(wall, "likely finish life"))
    others = [other for other in work.sheet.of_kind("wall") if other["likely finish life"] is not None]
    longest = max(others, key=lambda other: float(other["likely finish life"]))
    return own if longest["likely finish life"] <= own else float(work.need(longest, "likely finish life"))


@measure("deck, rail, post", "coat interval", "duration", "interval that the plan states between coats on it")
def coat_interval(part: Facts, work: Working) -> float:
    """The interval of decks, rails and posts, or that of the walls where they have none of their own."""
    own = work.maybe(part["care"], "refinish decks")
    if own is not None:
        return float(own)
    work.note("no interval of decks, rails and posts is stated: that of the walls is taken")
    return float(work.need(part["care"], "refinish", "care"))


@measure("care", "first coat share", "ratio", "life of a first coat at the moisture allowed, over that on dry wood")
def allowed_first_coat_share(care: Facts, work: Working) -> float:
    """As for a film where the plan puts one on any part, else as for a finish that soaks in."""
    moisture = float(work.need(care, "coating moisture"))
    finishes = [work.maybe(part, "finish") for kind in _BASES for part in work.sheet.of_kind(kind)]
    film = any(finish in (*FILMS, "clear film") for finish in finishes)
    return float(work.call(first_coat_factor, film=film, moisture=moisture))


def _bounds(part: Facts, work: Working) -> tuple[float, float]:
    """Shortest and longest life. [d]"""
    likely = float(work.need(part, "likely finish life"))
    found = work.sheet.quantity(part, "likely finish life")
    if isinstance(found, Absent) or found.low is None or found.high is None:
        return likely, likely
    return found.low, found.high


def _life(part: Facts, work: Working) -> tuple[float, float]:
    """Shortest and longest life. [d]"""
    finish = _finish(part, work)
    low, high = _BASES[part.element.kind](part, work, finish)
    wear = _wear(part, work)
    factors = _factors(part, work, finish)
    low, high = work.call(finish_life_in_place, low=low, high=high, wear=wear, factors=factors)
    return low * YEAR, high * YEAR


def _finish(part: Facts, work: Working) -> str:
    if part.element.kind == "wall" and work.maybe(part, "build") == "framed with stone":
        raise work.absent("its outside is stone")
    if part.element.kind == "deck" and (boards := work.maybe(part, "boards")) in ("composite", "solid"):
        raise work.absent(f"{boards} boards take no finish of this kind")
    finish = str(work.need(part, "finish"))
    if finish not in LIVES:
        raise work.absent(f"the handbook table has no life for {finish}")
    return finish


def _upright_base(part: Facts, work: Working, finish: str) -> tuple[float, float]:
    """Years on upright wood: by finish, wood and texture where the table tells, else by finish alone."""
    surface = str(work.need(part, "wood surface")) if part.element.kind == "wall" else "planed"
    texture = SURFACES[surface][0]
    least, most = work.call(finish_life, family=finish)
    work.note(f"handbook range for {finish} on upright wood: {least:g} to {most:g} years")
    if finish not in COLUMNS:
        share = SMOOTH_WOOD if texture == SMOOTH else 1.0
        if share < 1:
            work.note(f"times {share:g} for smooth wood, which takes up less of it (ours)")
        return least * share, most * share
    species = _called(str((work.maybe(part, "species") if part.element.kind in ("wall", "post") else None) or ""))
    wood = CEDAR if "cedar" in species or "redwood" in species else SOFTWOOD
    low, high = work.call(finish_life_on_wood, family=finish, wood=wood, texture=texture)
    work.note(f"recalled, not read again: {low:g} to {high:g} years on {texture} siding of {wood}")
    return float(low), float(high)


def _called(species: str) -> str:
    """A species by the name of the table; as the plan writes it where the table has none."""
    try:
        return find_species(species).name if species else ""
    except UnknownRow:
        return species


def _deck_base(deck: Facts, work: Working, finish: str) -> tuple[float, float]:
    """Years on new boards that are walked on."""
    if finish not in COLUMNS:
        low, high = work.call(finish_life, family=finish)
        work.note(f"handbook range on upright wood: {low:g} to {high:g} years, times {LEVEL_SHARE:g} underfoot (ours)")
        return low * LEVEL_SHARE, high * LEVEL_SHARE
    low, high = work.call(finish_life_on_decking, family=finish, texture=SMOOTH)
    work.note(f"recalled, not read again: {low:g} to {high:g} years for {finish} on new smooth decking")
    return float(low), float(high)


_BASES = {"wall": _upright_base, "post": _upright_base, "rail": _upright_base, "deck": _deck_base}


def _wear(part: Facts, work: Working) -> float:
    """Wear by weather against what the handbook's range stands for."""
    sun, rain = wall_weather(part, work) if part.element.kind == "wall" else _weather(part, work)
    colour = str((work.maybe(part, "colour") if part.element.kind == "wall" else None) or "medium")
    found = float(work.call(weather_wear, sun=sun, rain=rain, colour=colour))
    beside = "an open wall of middling sun" if part.element.kind == "wall" else "the open"
    work.note(
        f"divided by {found:.2f} for weather: {sun:.2f} of the ultraviolet light of {beside}, {rain:.2f} of its rain, "
        f"a {colour} colour"
    )
    return found


def wall_weather(wall: Facts, work: Working) -> tuple[float, float]:
    """Ultraviolet light against an open wall of middling sun, and rain against the mean open wall."""
    light, rain = work.maybe(wall, "ultraviolet share"), work.maybe(wall, "rain exposure")
    if light is None:
        orientation, cover = work.need(wall, "faces"), float(work.need(wall, "cover ratio"))
        light = work.call(ultraviolet_by_bearing, orientation=orientation, cover=cover)
        work.note("sun at the place not known: told from its bearing and its cover")
    if rain is None:
        rain = work.call(rain_by_cover, cover=float(work.need(wall, "cover ratio")))
        work.note("driving rain at the place not known: told from its cover")
    return float(light) / MIDDLE_SUN, float(rain)


def _weather(part: Facts, work: Working) -> tuple[float, float]:
    """Light and rain on a deck, rail or post against the open: by the roof over it, and by the rain that is told."""
    work.cite(ROOFED)
    roofed = _is_roofed(part, work)
    light, rain = UNDER_ROOF if roofed else (1.0, 1.0)
    told = work.maybe(part, "rain share" if part.element.kind == "post" else "rain on top")
    work.note(f"taken as {'under a roof' if roofed else 'in the open'}: no sun is reckoned on a {part.element.kind}")
    return light, rain if told is None else float(told)


def _is_roofed(part: Facts, work: Working) -> bool:
    """Whether a roof stands over a deck, a rail or a post."""
    if part.element.kind != "rail":
        return bool(work.maybe(part, "roofed") == "yes")
    return part["porch"] is not None or (part["deck"] is not None and work.maybe(part["deck"], "roofed") == "yes")


def _factors(part: Facts, work: Working, finish: str) -> tuple[float, ...]:
    """Our factors for what the coat is on and how it was put on, each with its note."""
    film, kind = finish in FILMS, part.element.kind
    found = [("moisture when it is first coated", float(work.need(part, "first coat share")))]
    if kind == "wall":
        surface, face = str(work.need(part, "wood surface")), work.maybe(part, "build") in ROUND
        shape = f"a {surface} surface" + (", round outside" if face else "")
        found.append((shape, float(work.call(surface_factor, surface=surface, round_face=face))))
        coats, sheen = work.maybe(part, "coats"), work.maybe(part, "sheen")
        if coats is not None:
            if coats < 1:
                raise work.absent("no coat goes on it")
            found.append((f"coats: {coats:g}", float(work.call(coats_factor, coats=float(coats)))))
        if sheen is not None:
            found.append((f"a {sheen} sheen", float(work.call(sheen_factor, film=film, sheen=sheen))))
    if kind == "rail":
        top = str(work.maybe(part, "top") or "none")
        found.append((f"its top ({top})", float(work.call(top_factor, top=top))))
    for words, factor in found:
        if factor != 1:
            work.note(f"times {factor:.2f} for {words}")
    return tuple(factor for _, factor in found)


def _moisture(part: Facts, work: Working) -> tuple[float | None, str]:
    """Moisture content of the wood when its first coat goes on [%], and where it is from."""
    stated = work.maybe(part["care"], "coating moisture")
    if stated is not None:
        return float(stated), "the most that the plan allows"
    if part.element.kind in ("deck", "rail"):
        return None, "moisture at coating not known: taken as dry enough"
    moisture, seasoning = work.maybe(part, "moisture"), work.maybe(part, "seasoning")
    if moisture is not None:
        return float(moisture), "as the wood is when it is set"
    if seasoning is not None:
        return SEASONED[str(seasoning)], f"taken for {seasoning} wood"
    return None, "moisture at coating not known: taken as dry enough"
