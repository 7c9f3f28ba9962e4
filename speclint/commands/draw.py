"""`speclint draw`."""

from __future__ import annotations

import argparse
import os
import re
import sys
import unicodedata
from itertools import count
from pathlib import Path

from speclint.commands.common import put, rulebook_of, units_of
from speclint.commands.files import Refused
from speclint.commands.measures import plan_asked, sheet_of
from speclint.commands.results import write_result
from speclint.commands.upkeep import day_of, forecast_of, rates_of
from speclint.measures.facts import Sheet
from speclint.pipeline import PlanText, read_home, review
from speclint.units import System

YEARS = 30
LONGEST = 80  # bytes of a name in that of a file; two of them and what stands beside them must fit in 255


def run(stated: argparse.Namespace) -> int:
    """Draw a plan into a folder of SVG files."""
    plan, _ = plan_asked(stated)
    system = units_of(stated, plan.text)
    sheet, status = sheet_of(plan, stated.alternate)
    folder = Path(stated.into)
    if os.path.exists(folder) and not os.path.isdir(folder):
        raise Refused(f"{folder} is a file: name a folder to draw into", 3)
    drawings = _drawings(plan, sheet, stated, system)
    if not drawings:
        raise Refused(f"{plan.name}: there is nothing to draw yet: state the length and height of a wall", status or 3)
    _make(folder)
    for name, svg in drawings.items():
        write_result(str(folder / name), svg, stated)
    put("".join(f"{folder / name}\n" for name in drawings))
    return status


def _make(folder: Path) -> None:
    """Make a folder where there is none.

    Raises:
        Refused: If it cannot be made.
    """
    try:
        folder.mkdir(parents=True, exist_ok=True)
    except (OSError, ValueError) as trouble:
        says = getattr(trouble, "strerror", None) or trouble
        raise Refused(f"{folder}: the folder cannot be made: {says}", 3) from None


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
    names = _Names()
    drawn: dict[str, str | None] = {}
    for wall in sheet.of_kind("wall"):
        name = names.of("wall", wall.element.name)
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
                both = names.of("alternate", alternate), names.of("wall", wall.element.name)
                stem = _free(
                    "alternate-{}-elevation-{}".format(*both), {one.removesuffix("-rain.svg") for one in drawn}
                )
                drawn[f"{stem}-rain.svg"] = elevation(other, wall, View(system))
    return {name: svg for name, svg in drawn.items() if svg}


class _Names:
    """Names as parts of the names of files: no two names of a kind get the same, in whatever case they are written."""

    def __init__(self) -> None:
        self.known: dict[tuple[str, str], str] = {}

    def of(self, kind: str, name: str) -> str:
        """The part that stands for a name; numbered where another name took it."""
        if (kind, name) not in self.known:
            taken = {part for (other, _), part in self.known.items() if other == kind}
            self.known[kind, name] = _free(_plain(name), taken)
        return self.known[kind, name]


def _free(name: str, taken: set[str]) -> str:
    """The name, with a number where it is taken."""
    numbered = (f"{name}-{number}" for number in count(2))
    return name if name not in taken else next(one for one in numbered if one not in taken)


def _plain(name: str) -> str:
    """A name in small letters and figures of any script, wherever the file may go and however long it is."""
    folded = unicodedata.normalize("NFKC", unicodedata.normalize("NFKC", name).casefold())
    safe = "".join(one if _is_safe(one) else "-" for one in folded)
    whole = re.sub("-+", "-", safe).strip("-")
    return os.fsencode(whole)[:LONGEST].decode(sys.getfilesystemencoding(), "ignore").strip("-") or "unnamed"


def _is_safe(one: str) -> bool:
    """Whether a character can stand in the name of a file here: a letter, a mark on one, or a figure."""
    if not (one.isalnum() or unicodedata.category(one) in ("Mn", "Mc")):
        return False
    try:
        return bool(one.encode(sys.getfilesystemencoding()))
    except UnicodeEncodeError:
        return False
