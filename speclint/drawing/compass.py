"""A compass of the lot: where driving rain comes from, where the sun goes, and which way each wall looks."""

from __future__ import annotations

from math import acos, asin, cos, degrees, pi, radians, sin

from speclint.drawing.paper import Paper
from speclint.exposure.climates import RainClimate
from speclint.exposure.sun_climate import SunClimate
from speclint.measures.facts import Sheet
from speclint.units import System, show

ROSE = 1.0  # radius of the greatest petal
TILT = 23.44


def compass(sheet: Sheet, system: System = "imperial", name: str = "") -> str:
    """The compass as SVG; what is not known is said on it."""
    paper = Paper(-1.75, -1.75, 1.75, 1.75, 118.0, (10, 10, 10, 10))
    for point, words in ((0, "N"), (90, "E"), (180, "S"), (270, "W")):
        paper.line(_at(point, 0.06), _at(point, 1.06), "hair")
        paper.text(_at(point, 1.13), words, "title clear", "middle", (0, 5))
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
    paper.text((-1.72, 1.68), words, "small")
    paper.text((-1.72, 1.68), "petals: driving rain a year from there", "small", "start", (0, 13))
    return words


def _sun(paper: Paper, sheet: Sheet) -> str:
    """Arcs from sunrise to sunset at the solstices."""
    climate = sheet["site"]["sun climate"] if "site" in sheet.facts else None
    if not isinstance(climate, SunClimate):
        return ""
    told = []
    for season, tilt, radius in (("June", TILT, 1.42), ("December", -TILT, 1.30)):
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
    if told:
        paper.text((-1.72, -1.70), "; ".join(told), "small")
    return "; ".join(told)


def _walls(paper: Paper, sheet: Sheet) -> str:
    """A mark at the bearing to which each wall looks."""
    told = []
    for wall in sheet.of_kind("wall"):
        faces = wall["faces"]
        if faces is None:
            continue
        tip, left, right = _at(faces, 1.26), _at(faces - 4, 1.17), _at(faces + 4, 1.17)
        paper.path([tip, left, right], "edge", closed=True, fill="#ffffff")
        anchor = "middle" if abs(sin(radians(faces))) < pi / 8 else "start" if sin(radians(faces)) > 0 else "end"
        paper.text(_at(faces, 1.5), wall.element.name, "note clear", anchor, (0, 4))
        told.append(f"{wall.label} faces {faces:.0f} degrees")
    return "; ".join(told)
