"""Topics that `speclint explain` teaches with the numbers of a plan: rain, sun, splash, upkeep."""

from __future__ import annotations

import math
from collections.abc import Callable

from speclint.exposure.climates import RainClimate
from speclint.exposure.strike import free_by_year
from speclint.measures.course_table import course_table
from speclint.measures.exposure import LIMITS
from speclint.measures.facts import Facts, Sheet
from speclint.outputs.exposure import options_words
from speclint.outputs.letter import Line, Part
from speclint.outputs.upkeep_topics import COST, INTERVAL, upkeep_in_plan, upkeep_topic
from speclint.quantity import Absent, Quantity, shown
from speclint.science.driving_rain import hourly_driving_rain
from speclint.science.raindrops import diameter_falling_at, median_diameter, share_past_edge
from speclint.units import System

GENERAL = {
    "rain": (
        "Wind drives rain against walls: for each hour 2/9 of the wind speed, times the rate of rain to the power 8/9, "
        "times the cosine of the angle between the wind and the way the wall faces. What flies free at the open wall "
        "is then cut down by terrain, by what stands before the wall, and by every roof edge above it.",
        "A roof edge stops the drops that fall too fast. A drop that falls at V drifts U/V for each foot it falls, so "
        "it clears an edge of reach p, and strikes d below it, only if V is no more than U d/p. Big drops fall fast, "
        "fine drops slowly; heavy rain has more big drops, so an eave keeps off more of it.",
        "Deep below an eave nothing is kept off: reach helps the courses near it, and distance from the ground must "
        "help the rest.",
    ),
    "sun": (
        "Ultraviolet light breaks down the surface of wood and every coat on it. Half of it comes from the sky and "
        "not from the sun, so north walls weather too.",
        "A roof edge shades a course while the tangent of the sun's height is more than the depth of the course below "
        "the edge over its reach, and it hides a part of the sky all day. A high summer sun is shaded well on a south "
        "wall; a low evening sun on a west wall slips under every eave.",
    ),
    "splash": (
        "Water that drips from a free eave throws drops and dirt back at the wall. No published formula was found; "
        "the ranking here is ours, and published clearances decide.",
        "It falls with height above the surface and with the distance of the drip line from the wall; hard ground and "
        "boards throw more than open stone, and a gutter takes most of the water away.",
    ),
    INTERVAL: upkeep_topic(INTERVAL),
    COST: upkeep_topic(COST),
}


def topic(name: str) -> list[Line]:
    """What a topic teaches in general; nothing where there is no such topic."""
    if name not in GENERAL:
        return []
    return [(Part(name, "title"),), *((Part(f"  {text}"),) for text in GENERAL[name])]


def topic_in_plan(name: str, sheet: Sheet, only: Facts | None, system: System) -> list[Line]:
    """A topic with the numbers of each wall of a plan, or of one wall; of the upkeep, of each part that is coated."""
    if name in (INTERVAL, COST):
        return upkeep_in_plan(name, sheet, only, system)
    walls = [only] if only and only.element.kind == "wall" else [] if only else sheet.of_kind("wall")
    teach: dict[str, Callable[[Sheet, Facts, System], list[Line]]] = {"rain": _rain, "sun": _sun, "splash": _splash}
    lines: list[Line] = []
    for wall in walls:
        lines += [(Part(wall.label, "title"),), *teach[name](sheet, wall, system), ()]
    return lines or [(Part("  only walls are taught about: name a wall", "quiet"),)]


def _told(sheet: Sheet, wall: Facts, name: str, system: System) -> tuple[str, Quantity | None]:
    """A measure in words with its bounds, and itself where it is known."""
    found = sheet.quantity(wall, name)
    if isinstance(found, Absent):
        wants = ", ".join(f"{missing.setting} of {missing.element}" for missing in found.missing)
        return f"not known ({found.reason or f'the plan does not say: {wants}'})", None
    bounds = found.shown_range(system)
    return f"{found.shown(system)} ({bounds})" if bounds else found.shown(system), found


def _step(number: int, title: str, *rows: str) -> list[Line]:
    return [(Part(f"  {number}. {title}", "label"),), *((Part(f"     {row}"),) for row in rows)]


def _rain(sheet: Sheet, wall: Facts, system: System) -> list[Line]:
    site = sheet["site"] if "site" in sheet.facts else wall
    climate = sheet.quantity(site, "rain climate") if site is not wall else None
    free, known = _told(sheet, wall, "free driving rain", system)
    if known is None or not isinstance(climate, Quantity) or not isinstance(climate.value, RainClimate):
        return [(Part(f"  driving rain: {free}", "revise"),)]
    if not sum(climate.value.walls) > 0:
        return [(Part("  no rain is driven at any wall of this lot: the record holds none with wind", "quiet"),)]
    share, found = _told(sheet, wall, "rain share", system)
    if found is None:
        return [(Part(f"  rain share: {share}", "revise"),)]
    factor, faces = float(wall["wind factor"]), float(wall["faces"])
    lines = _step(1, "What the wind drives at the open field", *_free_rows(climate.value, faces, system))
    told, _ = _told(sheet, wall, "wind factor", system)
    lines += _step(
        2, "What reaches the open wall", f"wind at the eave over the open field: {told}", f"in a year: {free}"
    )
    lines += _step(3, "What the roof edge lets through", *_edge_rows(sheet, wall, climate.value, factor, system))
    lines += _step(4, "What strikes the wood in a year", f"share of it: {share}", *_strike_rows(sheet, wall, system))
    lines += _step(5, "Other ways to reckon it", *_cross_rows(sheet, wall, system))
    more, _ = _told(sheet, wall, "kept by a foot more", system)
    options = sheet.quantity(wall, "cover options")
    shares = options_words(options.value, system) if isinstance(options, Quantity) else "-"
    lines += _step(
        6, "What more cover would do", f"a foot more of roof keeps off a further {more}", f"shares: {shares}"
    )
    return [*lines, *_step(7, "Limits", LIMITS, *climate.notes)]


def _free_rows(climate: RainClimate, faces: float, system: System) -> list[str]:
    walls = climate.walls
    driven = free_by_year(climate.sectors, faces)
    mean = sum(driven) / max(1, len(driven))
    heavy = max(
        climate.rain.cells,
        key=lambda cell: sum(cell.driven) * max(0.0, math.cos(math.radians(cell.direction - faces))),
    )
    one = hourly_driving_rain(heavy.speed, heavy.rate, heavy.direction - faces)
    hour = (
        f"the weather that counts most: wind {shown(heavy.speed, 'speed', system)} from {heavy.direction} degrees with "
        f"{heavy.rate:.1f} mm/h of rain; an hour of it is"
    )
    sum_of_it = (
        f"2/9 x {heavy.speed:.1f} x {heavy.rate:.1f}^(8/9) x cos({heavy.direction - faces:.0f}) = {one:.2f} L/m2; "
        f"there are {heavy.hours:.1f} such hours in a year"
    )
    year = (
        f"all hours of a year together: {shown(mean, 'depth', system)}; a wall that faces the mean of all bearings "
        f"takes {shown(sum(walls) / len(walls), 'depth', system)}"
    )
    return [f"from: {climate.title}", hour, sum_of_it, year]


def _edge_rows(sheet: Sheet, wall: Facts, climate: RainClimate, factor: float, system: System) -> list[str]:
    """The lowest, the middle and the highest course under the weather of a plain hour."""
    rows = course_table(sheet, wall).rows
    reach, height = float(wall["roof reach"] or 0.0), float(wall["height"])
    speeds = sum(cell.speed * sum(cell.driven) for cell in climate.rain.cells) / sum(
        sum(c.driven) for c in climate.rain.cells
    )
    rates = sum(cell.rate * sum(cell.driven) for cell in climate.rain.cells) / sum(
        sum(c.driven) for c in climate.rain.cells
    )
    wind = speeds * factor
    found = [
        f"reach {shown(reach, 'length', system)}; say wind {shown(wind, 'speed', system)} straight at the wall and "
        f"{rates:.1f} mm/h of rain, the means by driving rain",
        f"half of that water is in drops over {median_diameter(rates):.1f} mm",
    ]
    for at in dict.fromkeys((0, len(rows) // 2, len(rows) - 1)):
        middle = (float(rows[at]["bottom"] or 0.0) + float(rows[at]["top"] or 0.0)) / 2
        drop = max(0.0, height - middle)
        if reach <= 0 or middle > height:
            continue
        slant = wind * drop / reach
        biggest = diameter_falling_at(slant)
        passed = f"drops up to {biggest:.1f} mm clear the edge" if biggest < math.inf else "every drop clears the edge"
        water = f"{share_past_edge(slant, rates) * 100:.0f}% of the water"
        found.append(f"course {at + 1}, {shown(drop, 'length', system)} below the edge: {passed}, {water}")
    if wall["gable"] == "yes":
        found.append("on the gable the rake rises to the middle: each place is taken under its own edge")
    if wall["porches"]:
        found.append("porch roofs are counted in the sum: their open fronts and ends let slanting rain through")
    return found


def _strike_rows(sheet: Sheet, wall: Facts, system: System) -> list[str]:
    table = course_table(sheet, wall)
    digits = "".join(str(min(9, int(float(row["rain share"] or 0.0) * 10))) for row in table.rows)
    on_wall, _ = _told(sheet, wall, "rain on wall", system)
    exposure, _ = _told(sheet, wall, "rain exposure", system)
    class_, _ = _told(sheet, wall, "rain class", system)
    return [
        f"by course in tenths, the lowest left: {digits}",
        f"on the wood: {on_wall}",
        f"against the mean open wall of this lot: {exposure}: {class_}",
    ]


def _cross_rows(sheet: Sheet, wall: Facts, system: System) -> list[str]:
    angle, found = _told(sheet, wall, "sheltered height", system)
    standard, _ = _told(sheet, wall, "standard rain load", system)
    rows = [f"the line at 60 degrees from the roof edge covers the top {angle}"]
    if found is not None:
        top = float(wall["wood height"] or wall["height"])
        table = course_table(sheet, wall)
        under = [row for row in table.rows if top - float(row["top"] or 0.0) <= float(found.value)]
        if under:
            worst = max(float(row["rain share"] or 0.0) for row in under)
            rows.append(f"there the computed share is at most {worst * 100:.0f}%: more wind makes the dry part shorter")
    rows.append(
        f"a standard's coarse factor gives {standard} a year for the whole wall; it is never mixed with the above"
    )
    return rows


def _sun(sheet: Sheet, wall: Facts, system: System) -> list[Line]:
    dose, known = _told(sheet, wall, "sun dose", system)
    if known is None:
        return [(Part(f"  sun: {dose}", "revise"),)]
    rows = {
        name: _told(sheet, wall, name, system)[0] for name in ("ultraviolet dose", "ultraviolet share", "sun class")
    }
    climate = sheet.quantity(sheet["site"], "sun climate")
    table = course_table(sheet, wall)
    digits = "".join(str(min(9, int(float(row["ultraviolet share"] or 0.0) * 10))) for row in table.rows)
    title = str(climate.value) if isinstance(climate, Quantity) else ""
    lines = _step(1, "The sun of the lot", f"clear sky by the latitude, dimmed by the {title}")
    lines += _step(
        2,
        "What reaches the wood in a year",
        f"beam, sky and ground: {dose}",
        f"ultraviolet: {rows['ultraviolet dose']}, {rows['ultraviolet share']} of a bare wall to the noon sun: "
        f"{rows['sun class']}",
        f"ultraviolet by course in tenths, the lowest left: {digits}",
    )
    lines += _step(3, "By month", *_month_rows(sheet, wall))
    dries, _ = _told(sheet, wall, "dries slowly", system)
    return [*lines, *_step(4, "Drying", f"dries slowly: {dries}"), *_step(5, "Limits", *known.inputs[0].notes)]


def _month_rows(sheet: Sheet, wall: Facts) -> list[str]:
    from speclint.measures.sun import sun_by_month

    found = sun_by_month(sheet, wall)
    names = ("Jan", "Feb", "Mar", "Apr", "May", "Jun", "Jul", "Aug", "Sep", "Oct", "Nov", "Dec")
    return [
        "  ".join(f"{name} {amount:.0f}" for name, amount in zip(names[at : at + 6], found[at : at + 6], strict=True))
        + " kWh/m2"
        for at in (0, 6)
    ]


def _splash(sheet: Sheet, wall: Facts, system: System) -> list[Line]:
    dose, known = _told(sheet, wall, "splash dose", system)
    height, _ = _told(sheet, wall, "splash height", system)
    starts, _ = _told(sheet, wall, "starts", system)
    drip, _ = _told(sheet, wall, "drip line", system)
    if known is None:
        return [(Part(f"  splash: {dose}", "revise"),)]
    return [
        *_step(
            1,
            "The wood and the water",
            f"lowest wood {starts} above grade; drip line {drip} from the wall",
            f"ground: {wall['ground']}; roof water kept away: {wall['gutter above']}",
        ),
        *_step(2, "What it gives", f"splash height {height}; dose at the lowest wood {dose}"),
        *_step(3, "Limits", "the model is ours and ranks walls; clearances of codes and practice decide"),
    ]
