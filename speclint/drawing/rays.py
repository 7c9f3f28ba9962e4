"""Rain and noon sun past the roof edges of a section, each to what it meets, with their names."""

from __future__ import annotations

from collections.abc import Iterator
from math import atan, cos, degrees, radians, sin, tan

from speclint.drawing.cut import Cut, Point
from speclint.drawing.paper import Paper
from speclint.exposure.sun_climate import SunClimate
from speclint.measures.facts import Sheet
from speclint.units import angle_between

RAIN_ANGLE = 30.0  # degrees off plumb
TILT = 23.44  # of the earth's axis [deg]
GRAZING = 80.0  # degrees off the noon sun beyond which a wall does not see it
LINE = 14.0  # pixels between labels

Label = tuple[Point, tuple[str, ...]]  # where a line begins, and what it is, in rows


def rays(paper: Paper, sheet: Sheet, cut: Cut) -> str:
    """The lines of rain and sun with their names; the sun in words."""
    labels: list[Label] = []
    suns = _sun(paper, sheet, cut, labels)
    _rain(paper, cut, labels)
    _label(paper, labels)
    return suns


def _label(paper: Paper, labels: list[Label]) -> None:
    """The lines of rain and sun by name, one below the other at the right of where they begin."""
    x = max((paper.x(start[0]) for start, _ in labels), default=0.0) + 14
    free = 0.0
    for start, rows in sorted(labels, key=lambda label: -label[0][1]):
        y = max(paper.y(start[1]), free)
        at_x, at_y = paper.x(start[0]) + 2, paper.y(start[1])
        paper.put(f'<line class="hair" x1="{at_x:.1f}" y1="{at_y:.1f}" x2="{x - 3:.1f}" y2="{y:.1f}"/>')
        for row, words in enumerate(rows):
            paper.put(f'<text class="small clear" x="{x:.1f}" y="{y + 3.5 + LINE * row:.1f}">{words}</text>')
        free = y + LINE * len(rows) + 2


def _rain(paper: Paper, cut: Cut, labels: list[Label]) -> None:
    """Lines of rain 30 degrees off plumb past the roof edges, each to what it meets."""
    slope = 1 / tan(radians(RAIN_ANGLE))
    edges = [cut.edge] if cut.porch is None else [cut.eave, cut.edge]
    for at, edge in enumerate(edges):
        end, what = cut.stop(edge, slope)
        start = (edge[0] + 0.35 / slope, edge[1] + 0.35)
        paper.path([start, edge, end], "water")
        if at == len(edges) - 1:
            labels.append((start, ("rain at 30 deg",)))
        if what == "wall" and end[1] > cut.frame.starts:
            paper.line((-cut.thick, end[1]), (0.35, end[1]), "sheltered")
            words = "sheltered above, at the peak" if cut.frame.gable else "sheltered above"
            paper.text((0.0, end[1]), words, "small clear", "start", (28, 4))


def _suns(sheet: Sheet, cut: Cut) -> Iterator[tuple[str, float, float | None]]:
    """Height of the noon sun at the solstices [deg], and in the plane of the cut [rad]; nothing if it does not rise."""
    climate = sheet["site"]["sun climate"]
    noon = 180.0 if climate.latitude >= 0 else 0.0
    turned = angle_between(cut.frame.wall["faces"], noon)
    for season, tilt in (("21 June", TILT), ("21 December", -TILT)):
        height = 90 - abs(climate.latitude) + (tilt if climate.latitude >= 0 else -tilt)
        yield season, height, atan(tan(radians(height)) / cos(radians(turned))) if height > 1 else None


def _sun(paper: Paper, sheet: Sheet, cut: Cut, labels: list[Label]) -> str:
    """Noon sun at the solstices past the governing edge; why there is none where there is none."""
    climate = sheet["site"]["sun climate"] if "site" in sheet.facts else None
    faces = cut.frame.wall["faces"]
    if not isinstance(climate, SunClimate) or faces is None:
        return "no line of the sun: the site has no latitude, or the wall no bearing"
    noon = 180.0 if climate.latitude >= 0 else 0.0
    if angle_between(faces, noon) > GRAZING:
        return "no line of the noon sun: it does not reach a wall that looks this way"
    told = []
    for season, height, profile in _suns(sheet, cut):
        if profile is None:
            told.append(f"no line for {season}: the sun does not rise at noon")
            continue
        edge = cut.edge
        far = min((cut.out - edge[0]) / cos(profile), (cut.top - 0.1 - edge[1]) / sin(profile), 1.4)
        start = (edge[0] + far * cos(profile), edge[1] + far * sin(profile))
        end, what = cut.stop(edge, tan(profile))
        paper.path([start, edge, end], "sun")
        seen = f"{degrees(profile):.0f} deg as seen in this cut"
        labels.append((start, (f"noon sun, {season}: {height:.0f} deg high,", seen)))
        told.append(f"noon sun, {season}: {seen}, to the {what}")
    return "; ".join(told)
