"""The pictures of a lesson, and how each kind of picture is to be read."""

from __future__ import annotations

import datetime
import re
from collections.abc import Callable
from dataclasses import dataclass
from typing import Any

from speclint.drawing.elevation import View, elevation
from speclint.drawing.pins import Pin
from speclint.drawing.roof_plan import roof_plan
from speclint.drawing.section import section
from speclint.drawing.timeline import timeline
from speclint.measures.facts import Facts, Sheet
from speclint.measures.work_order import work_of
from speclint.outputs.letter import text_of
from speclint.outputs.sequence import sequence_lines
from speclint.outputs.trace import water_lines
from speclint.outputs.upkeep import Forecast
from speclint.report.lesson import UnusableLesson
from speclint.units import System

_NUMBERS = re.compile(r"\d+")
READINGS = {
    "elevation": "An elevation shows a wall from outside, to scale. A number in a ring stands where a finding is, or "
    "below the wall where it is about all of it; it is the number of the finding in the list below the drawings. "
    "Numbers in squares part the wall into zones where another roof edge shelters it, such as that of a porch.",
    "rain": "Colour: the darker a course, the more driving rain strikes its wood in a mean year. The number sets it "
    "against the mean of bare walls on this lot: 1 is as much as such a wall takes, 0.25 a quarter of it.",
    "sun": "Colour: the darker a course, the more ultraviolet light falls on it in a year. 100% is a wall with nothing "
    "before it that faces the noon sun.",
    "finish": "Colour: the darker a course, the sooner its finish wears out; the number on a course is the likely life "
    "of a coat there, in years.",
    "decay": "Colour: the darker a course, the more its place favours decay. The number counts in a yardstick: 1 is "
    "bare spruce that stands open to the rain of Helsinki, the place from which the guide behind the number counts. "
    "At 2 a place is twice as hard on wood. How much is too much depends on the wood: durable heartwood bears more.",
    "section": "A section cuts the house through one wall; outside is to the right. The line marked “rain at 30 deg” "
    "falls past the roof edge at that angle off plumb: wood above it stays dry in such rain. The dashed lines are the "
    "noon sun of midsummer and midwinter. The shade of the wall is driving rain, darker for more.",
    "roof": "A roof plan looks down on the roofs. Arrows run down the slopes; the figures are the level area whose "
    "rain arrives there, and the flow in the design rain; dots are downspouts.",
    "timeline": "Each mark on the chart is a coat that falls due; the bars below are what the years cost.",
    "water": "The list follows rain from each roof, step by step, to where it leaves the house.",
    "sequence": "The list puts the steps of work in an order in which nothing is hidden before it is done.",
}


@dataclass(frozen=True, slots=True)
class Scene:
    """What every picture of a lesson shares: the upkeep of a home, the day, the reader's units."""

    forecast: Callable[[Sheet], Forecast]
    today: datetime.date
    system: System


@dataclass(frozen=True, slots=True)
class Picture:
    """A drawing, or a text where it is none."""

    svg: Any
    text: str


def reading_of(draws: tuple[str, ...]) -> list[str]:
    """How the pictures of a lesson are to be read, each kind once."""
    kinds = [kind for draw in draws for kind in (draw.split()[0], *draw.split()[2:])]
    return [READINGS[kind] for kind in dict.fromkeys(kinds) if kind in READINGS]


def picture(draw: str, sheet: Sheet, scene: Scene, house: str, pins: tuple[Pin, ...] = ()) -> Picture:
    """What a lesson asks to be drawn.

    Args:
        draw: Kind of picture, and the wall and the layer that it is of.
        sheet: The facts of the home.
        scene: What every picture shares.
        house: Tells the homes of a page apart.
        pins: Findings that an elevation shows.

    Raises:
        UnusableLesson: If no such picture can be drawn.
    """
    from markupsafe import Markup

    kind, *rest = draw.split()
    name = f"{house}-{draw.replace(' ', '-')}"
    wall = _wall(sheet, rest[0]) if kind in ("elevation", "section") else None
    svg: str | None = None
    if kind == "elevation":
        view = View(scene.system, rest[1] if rest[1:] else "", True, pins, f"#{house}-finding-{{number}}", name)
        svg = elevation(sheet, wall, view) if wall else None
    elif kind == "section":
        svg = section(sheet, wall, scene.system, name) if wall else None
    elif kind == "roof":
        svg = roof_plan(sheet, scene.system, name)
    elif kind == "timeline":
        found = scene.forecast(sheet)
        if found.outlook.parts:
            svg = timeline(sheet.home.name, found.outlook, found.rates.currency, scene.today.year, name)
    elif kind == "water":
        return Picture("", text_of(water_lines(sheet, scene.system, None, 100)))
    elif kind == "sequence":
        return Picture("", text_of(sequence_lines(work_of(sheet), sheet.home.name, 96)))
    else:
        raise UnusableLesson(f"wanted a drawing; got {draw}")
    return Picture(Markup(svg) if svg else "", "" if svg else f"not drawn ({draw}): the plan does not say enough")


def apart(sound: str, faulty: str) -> tuple[str, str]:
    """Two lists of which the first is cut to the lines that differ, and the second marks them; numbers apart."""
    from difflib import SequenceMatcher

    had, has = sound.rstrip().splitlines(), faulty.rstrip().splitlines()
    bare = [[_NUMBERS.sub("#", line).strip() for line in lines] for lines in (had, has)]
    cut = ["only the lines that differ; the rest is as in the other list, but for the numbers of its rows", ""]
    marked = [f"  {line}" for line in has]
    for kind, start, end, from_row, to_row in SequenceMatcher(None, bare[0], bare[1], autojunk=False).get_opcodes():
        if kind != "equal":
            cut += [f"> {line}" for line in had[start:end] if line.strip()] + ([""] if end > start else [])
            marked[from_row:to_row] = [f"> {line}" if line.strip() else line for line in has[from_row:to_row]]
    return "\n".join(cut).rstrip() + "\n", "\n".join(["> marks what differs", "", *marked]) + "\n"


def _wall(sheet: Sheet, name: str) -> Facts | None:
    """The wall of a name, or the first wall where this plan has none of that name."""
    return sheet.facts.get(f"wall {name}") or next(iter(sheet.of_kind("wall")), None)
