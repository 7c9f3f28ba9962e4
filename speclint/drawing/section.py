"""A section through a wall: roof edge, wood, foundation and ground, with the angles of rain and sun, to scale."""

from __future__ import annotations

from math import atan, cos, degrees, radians, tan

from speclint.drawing.layers import Layer, layers_of
from speclint.drawing.paper import Paper
from speclint.drawing.wall_frame import WallFrame, wall_frame
from speclint.exposure.sun_climate import SunClimate
from speclint.measures.facts import Facts, Sheet
from speclint.units import System, show

INSIDE, OUTSIDE, BELOW = 1.5, 2.6, 0.9  # metres drawn
FRAMED = 0.17  # thickness of a framed wall as drawn [m]
RAIN_ANGLE = 30.0  # degrees off plumb
TILT = 23.44  # of the earth's axis [deg]
WIDE = 620.0  # pixels


def section(sheet: Sheet, wall: Facts, system: System = "imperial", name: str = "") -> str | None:
    """The section as SVG; nothing where the wall's length or height is not stated."""
    frame = wall_frame(sheet, wall)
    if frame is None:
        return None
    porch = next((one for one in wall["porches"] if one["depth"] is not None), None)
    out = max(frame.reach + 1.2, (porch["depth"] + 1.2) if porch is not None else 0.0, OUTSIDE)
    top = frame.starts + frame.peak + 0.6 + (INSIDE * frame.pitch if not frame.gable else 0.0)
    scale = min(72.0, WIDE / (out + INSIDE), 560.0 / (top + BELOW))
    paper = Paper(-INSIDE, -BELOW, out, top, scale, (56, 26, 176, 44))
    thick = float(wall["log size"] or FRAMED)
    _ground(paper, frame, out, thick, system)
    _wall(paper, frame, thick, next(layer for layer in layers_of(sheet, wall) if layer.name == "rain"))
    edge = _roof(paper, frame, thick)
    if porch is not None:
        edge = _porch(paper, frame, porch, system)
    _deck(paper, frame, out)
    _rain(paper, frame, edge)
    suns = _sun(paper, sheet, frame, edge)
    _dimensions(paper, frame, edge, system, porch is not None)
    facing = show(wall["faces"], "angle", system) if wall["faces"] is not None else "not stated"
    reach, starts = show(edge[0], "length", system), show(frame.starts, "length", system)
    about = f"roof edge {reach} out; wood starts {starts} up; {suns}"
    return paper.svg(f"Section, {wall.label}", about, [sheet.home.name, f"outside to the right, faces {facing}"], name)


def _ground(paper: Paper, frame: WallFrame, out: float, thick: float, system: System) -> None:
    grade = frame.wall["paving" if frame.wall["ground"] == "paving" else "grade"]
    house = next(iter(frame.wall.sheet.of_kind("foundation")), None)
    face = (house["face"] if house is not None else None) or 0.0
    paper.box(-thick + 0.02, -BELOW, face, frame.starts, "edge masonry")
    falls = grade or 0.0
    paper.path([(face, 0.0), (out, -falls * out)], "cut")
    for at in range(int((out - face) / 0.2)):
        x = face + 0.2 * at + 0.1
        paper.line((x, -falls * x), (x - 0.09, -falls * x - 0.12), "hair")
    paper.path([(-INSIDE, frame.starts + 0.02), (-thick, frame.starts + 0.02)], "thin")
    words = f"ground falls {show(grade, 'slope', system)}" if grade is not None else "fall of the ground not stated"
    ground = frame.wall["ground"]
    paper.text((-INSIDE, -BELOW), f"{ground}; {words}" if ground else words, "small", "start", (-40, 28))


def _wall(paper: Paper, frame: WallFrame, thick: float, layer: Layer) -> None:
    """The courses, cut through, each shaded by the driving rain that strikes it."""
    log = frame.wall["build"] == "log round"
    for at, course in enumerate(frame.courses):
        value = layer.values[at] if at < len(layer.values) else None
        fill = "#ffffff" if value is None else layer.scale.shades[layer.scale.at(value)]
        low, high = frame.starts + course.bottom, frame.starts + course.top
        if log:
            radius = (high - low) / 2
            x, y = paper.x(-thick / 2), paper.y((low + high) / 2)
            paper.put(f'<ellipse class="edge" cx="{x:.1f}" cy="{y:.1f}" rx="{thick / 2 * paper.scale:.1f}" '
                      f'ry="{radius * paper.scale:.1f}" style="fill: {fill}"/>')  # fmt: skip
        else:
            paper.box(-thick, low, 0.0, high, "edge", fill)


def _roof(paper: Paper, frame: WallFrame, thick: float) -> tuple[float, float]:
    """The roof over the wall; the point where it drips. [m]"""
    depth = 0.22
    if frame.gable:
        y = frame.starts + frame.peak
        paper.box(-INSIDE, y, frame.reach, y + depth, "edge roof")
        return frame.reach, y
    roof = frame.wall["roof"]
    drop = (roof["edge drop"] if roof is not None else None) or frame.reach * frame.pitch
    edge = (frame.reach, frame.starts + frame.height - drop)
    inner = edge[1] + (frame.reach + INSIDE) * frame.pitch
    up = depth * (1 + frame.pitch**2) ** 0.5
    paper.path([edge, (-INSIDE, inner), (-INSIDE, inner + up), (edge[0], edge[1] + up)], "edge roof", closed=True)
    if frame.wall["gutters"]:
        paper.path([(edge[0], edge[1] + 0.1), (edge[0], edge[1] - 0.02), (edge[0] + 0.13, edge[1] - 0.02),
                    (edge[0] + 0.13, edge[1] + 0.1)], "edge")  # fmt: skip
    return edge


def _porch(paper: Paper, frame: WallFrame, porch: Facts, system: System) -> tuple[float, float]:
    """The porch roof, its post and its drip; the point where it drips. [m]"""
    depth, pitch = porch["depth"], porch["roof pitch"] or 0.2
    high = frame.starts + (porch["roof height"] or min(2.6, frame.height * 0.9))
    edge = (depth, high - depth * pitch)
    paper.path([edge, (0.0, high), (0.0, high + 0.2), (edge[0], edge[1] + 0.2)], "edge roof", closed=True)
    for post in porch.sheet.of_kind("post"):
        if porch not in (post["under"] or ()) and not any(porch in (b["under"] or ()) for b in post["beams"]):
            continue
        side = (post["size"][0] if post["size"] else 0.15) / 2
        x = depth - (post["inset"] or 0.3) - side
        foot = post["foot above grade"] if post["foot above grade"] is not None else 0.15
        frost = post["footing"]
        paper.box(x - side, foot, x + side, high - x * pitch, "edge wood")
        paper.box(x - 1.6 * side, -min(BELOW, frost or BELOW), x + 1.6 * side, max(0.05, foot - 0.02), "edge masonry")
        if frost:
            words = f"footing {show(frost, 'length', system)} deep"
            paper.text((x, -BELOW), words, "small", "middle", (0, 12))
        break
    return edge


def _deck(paper: Paper, frame: WallFrame, out: float) -> None:
    for deck in frame.wall["decks"][:1]:
        depth = min(out - 0.2, deck["depth"] or 2.0)
        below = deck["below wood"]
        top = frame.starts - below if below is not None else (deck["height"] or frame.starts)
        gap = (deck["gap"] or 0.0) if deck["held by"] == "posts" else 0.0
        paper.box(gap, top - 0.03, depth, top, "edge wood")
        paper.box(gap, top - 0.27, depth, top - 0.03, "thin wood")


def _rain(paper: Paper, frame: WallFrame, edge: tuple[float, float]) -> None:
    """The line of rain 30 degrees off plumb past the roof edge, and where it strikes the wood."""
    fall = edge[0] / tan(radians(RAIN_ANGLE))
    strikes = edge[1] - fall
    foot = max(strikes, 0.0)
    end = (edge[0] - (edge[1] - foot) * tan(radians(RAIN_ANGLE)), foot)
    start = (edge[0] + 0.35 * tan(radians(RAIN_ANGLE)), edge[1] + 0.35)
    paper.path([start, edge, end], "water")
    paper.text(start, "rain at 30 deg", "small", "start", (6, 4))
    if strikes > frame.starts:
        paper.line((0.0, strikes), (0.35, strikes), "sheltered")
        paper.text((0.0, strikes), "sheltered above", "small", "start", (26, -4))


def _sun(paper: Paper, sheet: Sheet, frame: WallFrame, edge: tuple[float, float]) -> str:
    """Noon sun at the solstices past the roof edge, where the wall looks to it."""
    climate = sheet["site"]["sun climate"] if "site" in sheet.facts else None
    faces = frame.wall["faces"]
    if not isinstance(climate, SunClimate) or faces is None:
        return "sun not known: the site has no latitude"
    noon = 180.0 if climate.latitude >= 0 else 0.0
    turned = abs((faces - noon + 180) % 360 - 180)
    if turned > 80:
        return "the noon sun does not reach this wall"
    told = []
    for season, tilt, reach in (("21 June", TILT, 1.3), ("21 December", -TILT, 1.5)):
        height = 90 - abs(climate.latitude) + (tilt if climate.latitude >= 0 else -tilt)
        if height <= 1:
            continue
        profile = atan(tan(radians(height)) / cos(radians(turned)))
        hits = edge[1] - edge[0] * tan(profile)
        end = (0.0, hits) if hits > frame.starts else (edge[0] - (edge[1] - frame.starts) / tan(profile), frame.starts)
        start = (edge[0] + reach * cos(profile), edge[1] + reach * tan(profile) * cos(profile))
        paper.path([start, edge, end], "hidden")
        words = f"noon sun, {season}: {degrees(profile):.0f} deg"
        paper.text(start, words, "small", "start", (4, -2))
        told.append(words)
    return "; ".join(told) or "the noon sun does not rise"


def _dimensions(paper: Paper, frame: WallFrame, edge: tuple[float, float], system: System, porch: bool) -> None:
    paper.across(0.0, edge[0], edge[1], show(edge[0], "length", system), 18 if not porch else 14)
    paper.upward(-INSIDE, 0.0, frame.starts, show(frame.starts, "length", system), -14)
    top = frame.starts + (frame.peak if frame.gable else frame.height)
    paper.upward(-INSIDE, frame.starts, top, show(top - frame.starts, "length", system), -14)
