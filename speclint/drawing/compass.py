"""A compass of the lot: where driving rain comes from, where the sun goes, and which way each wall looks."""

from __future__ import annotations

import textwrap
from html import escape
from math import acos, asin, cos, degrees, pi, radians, sin

from speclint.drawing.paper import Paper
from speclint.exposure.climates import RainClimate
from speclint.exposure.sun_climate import SunClimate
from speclint.measures.facts import Facts, Sheet
from speclint.units import System, angle_between, show

ROSE = 1.0  # radius of the greatest petal
TILT = 23.44
SAME = 6.0  # degrees: walls that look ways nearer than this share a mark
ROW, WIDE = 14.0, 18  # pixels between rows of names, and letters in one
SIDE = 62.0  # pixels for names at the sides


def compass(sheet: Sheet, system: System = "imperial", name: str = "") -> str:
    """The compass as SVG; what is not known is said on it."""
    paper = Paper(-1.75, -1.75, 1.75, 1.75, 118.0, (SIDE, 44, SIDE, 32))
    for point, words in ((0, "N"), (90, "E"), (180, "S"), (270, "W")):
        paper.line(_at(point, 0.06), _at(point, 1.0), "hair")
        paper.text(_at(point, 1.08), words, "title clear", "middle", (0, 5))
    for radius in (0.5, 1.0):
        paper.circle((0.0, 0.0), radius * paper.scale, "hair")
    told = [_rain(paper, sheet, system), _sun(paper, sheet), _walls(paper, sheet)]
    return paper.svg("Compass of the lot", "; ".join(words for words in told if words), [sheet.home.name], name)


def _at(bearing: float, radius: float) -> tuple[float, float]:
    return radius * sin(radians(bearing)), radius * cos(radians(bearing))


def _rain(paper: Paper, sheet: Sheet, system: System) -> str:
    climate = sheet["site"]["rain climate"] if "site" in sheet.facts else None
    if not isinstance(climate, RainClimate):
        paper.text((0.0, -0.2), "rain by direction not known", "small", "middle")
        return "rain by direction is not known"
    driven = {sector.azimuth: sum(sector.driven) / max(1, len(sector.driven)) for sector in climate.sectors}
    if not driven:
        paper.text((0.0, -0.2), "no driving rain in the record", "small", "middle")
        return "the record holds no driving rain"
    most = max(driven.values()) or 1.0
    half = 180 / len(driven)
    for azimuth, amount in driven.items():
        radius = ROSE * amount / most
        if radius < 0.02:
            continue
        arc = [_at(azimuth - half * 0.9 + half * 1.8 * step / 4, radius) for step in range(5)]
        paper.path([(0.0, 0.0), *arc], "petal", closed=True)
    direction, steadiness = climate.direction
    words = f"driving rain on the whole from {show(float(round(direction)), 'angle', system)}"
    if steadiness < 0.3:
        words = f"{words}, not steadily"
    for row, line in enumerate((words, "petals: driving rain a year from there")):
        paper.put(f'<text class="small" x="14.0" y="{20 + 14 * row}">{escape(line)}</text>')
    return words


def _sun(paper: Paper, sheet: Sheet) -> str:
    """Arcs from sunrise to sunset at the solstices."""
    climate = sheet["site"]["sun climate"] if "site" in sheet.facts else None
    if not isinstance(climate, SunClimate):
        return ""
    told = []
    for season, tilt, radius in (("June", TILT, 1.44), ("December", -TILT, 1.36)):
        share = sin(radians(tilt)) / cos(radians(climate.latitude))
        if abs(share) >= 1:
            continue
        rise = degrees(acos(share))
        north = climate.latitude < 0
        span = (rise, 360 - rise) if not north else (rise - 360, -rise)
        start, end = span if not north else (-rise, rise)
        points = [_at(start + (end - start) * step / 48, radius) for step in range(49)]
        paper.path(points, "thin")
        height = degrees(asin(min(1.0, cos(radians(climate.latitude - tilt)))))
        side = 1.0 if season == "June" else -1.0
        paper.text(_at(end, radius), season, "small clear", "middle", (0, -6 * side + (6 if side < 0 else 0)))
        told.append(f"sun at noon in {season} {height:.0f} deg high")
    for row, line in enumerate(told):
        y = paper.height - 8 - 14 * (len(told) - 1 - row)
        paper.put(f'<text class="small" x="14.0" y="{y:.1f}">{line}</text>')
    return "; ".join(told)


def _walls(paper: Paper, sheet: Sheet) -> str:
    """A mark at each bearing to which walls look, outside the points of the compass, with the names of these walls."""
    ways: dict[float, list[Facts]] = {}
    for wall in sheet.of_kind("wall"):
        if wall["faces"] is not None:
            way = next((one for one in ways if angle_between(one, wall["faces"]) < SAME), wall["faces"])
            ways.setdefault(way, []).append(wall)
    for faces, walls in ways.items():
        tip, left, right = _at(faces, 1.32), _at(faces - 2.4, 1.17), _at(faces + 2.4, 1.17)
        paper.path([tip, left, right], "edge", closed=True, fill="#ffffff")
        across = sin(radians(faces))
        anchor = "middle" if abs(across) < sin(pi / 8) else "start" if across > 0 else "end"
        rows = _names(walls)
        first = -ROW * (len(rows) - 1) / 2 * (1 - cos(radians(faces)) if anchor != "middle" else 0.0)
        if anchor == "middle" and cos(radians(faces)) > 0:
            first = -ROW * (len(rows) - 1)
        for row, words in enumerate(rows):
            paper.text(_at(faces, 1.5), words, "note clear", anchor, (0, 4 + first + ROW * row))
    return "; ".join(f"{wall.label} faces {wall['faces']:.0f} degrees" for walls in ways.values() for wall in walls)


def _names(walls: list[Facts]) -> list[str]:
    """The names of walls that look one way, in rows."""
    return textwrap.wrap(", ".join(wall.element.name for wall in walls), WIDE)[:3]
