"""`speclint draw`."""

from __future__ import annotations

import argparse
import re
from pathlib import Path

from speclint.commands.common import put, rulebook_of, units_of
from speclint.commands.files import Refused, write_file
from speclint.commands.measures import plan_asked, sheet_of
from speclint.commands.upkeep import day_of, forecast_of, rates_of
from speclint.measures.facts import Sheet
from speclint.pipeline import PlanText, read_home, review
from speclint.units import System

YEARS = 30


def run(stated: argparse.Namespace) -> int:
    """Draw a plan into a folder of SVG files."""
    plan, _ = plan_asked(stated)
    system = units_of(stated, plan.text)
    sheet, status = sheet_of(plan, stated.alternate)
    folder = Path(stated.into)
    if folder.exists() and not folder.is_dir():
        raise Refused(f"{folder} is a file: name a folder to draw into", 3)
    drawings = _drawings(plan, sheet, stated, system)
    if not drawings:
        raise Refused(f"{plan.name}: there is nothing to draw yet: state the length and height of a wall", status or 3)
    folder.mkdir(parents=True, exist_ok=True)
    for name, svg in drawings.items():
        write_file(folder / name, svg)
    put("".join(f"{folder / name}\n" for name in drawings))
    return status


def _drawings(plan: PlanText, sheet: Sheet, stated: argparse.Namespace, system: System) -> dict[str, str]:
    """Every drawing of the plan, by the name of its file."""
    from speclint.drawing.compass import compass
    from speclint.drawing.elevation import View, elevation
    from speclint.drawing.layers import NAMES
    from speclint.drawing.pins import pins_of
    from speclint.drawing.roof_plan import roof_plan
    from speclint.drawing.section import section
    from speclint.drawing.timeline import timeline

    today = day_of(stated.today)
    pins = pins_of(review(plan, rulebook_of(stated), today.isoformat(), system, stated.alternate))
    shades = NAMES if stated.shade == "all" else (stated.shade,)
    drawn: dict[str, str | None] = {}
    for wall in sheet.of_kind("wall"):
        name = _file(wall.element.name)
        for shade in shades:
            drawn[f"elevation-{name}-{shade}.svg"] = elevation(sheet, wall, View(system, shade, pins=pins))
        drawn[f"section-{name}.svg"] = section(sheet, wall, system)
    drawn["roof-plan.svg"] = roof_plan(sheet, system)
    if sheet.of_kind("wall"):
        drawn["compass.svg"] = compass(sheet, system)
    rates = rates_of(stated.rates)
    outlook = forecast_of(sheet, rates, YEARS, today).outlook
    if outlook.parts:
        drawn["upkeep.svg"] = timeline(sheet.home.name, outlook, rates.currency, today.year)
    for alternate in sheet.home.alternates if not stated.alternate else ():
        other, _ = read_home(plan, alternate)
        for wall in other.of_kind("wall"):
            was = sheet.value(wall.label, "rain share")
            if was is not None and wall["rain share"] is not None and abs(was - wall["rain share"]) >= 0.01:
                name = f"alternate-{_file(alternate)}-elevation-{_file(wall.element.name)}-rain.svg"
                drawn[name] = elevation(other, wall, View(system))
    return {name: svg for name, svg in drawn.items() if svg}


def _file(name: str) -> str:
    """A name as a part of the name of a file, wherever the file may go."""
    return re.sub(r"[^a-z0-9]+", "-", name.casefold()).strip("-") or "unnamed"
