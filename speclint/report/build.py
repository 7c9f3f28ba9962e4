"""The report of a plan as one page: everything that is shown on it, gathered as plain data and set by a template."""

from __future__ import annotations

import datetime
from collections.abc import Sequence
from dataclasses import dataclass
from functools import lru_cache
from typing import Any

from speclint.drawing.compass import compass
from speclint.drawing.elevation import View, elevation
from speclint.drawing.layers import NAMES, scales
from speclint.drawing.pins import Pin, pins_of, spots
from speclint.drawing.roof_plan import roof_plan
from speclint.drawing.section import section
from speclint.drawing.timeline import timeline
from speclint.drawing.wall_frame import wall_frame
from speclint.measures.facts import Sheet
from speclint.measures.register import measures
from speclint.outputs.letter import text_of
from speclint.outputs.trace import water_lines
from speclint.outputs.unfold import unfold
from speclint.outputs.upkeep import Forecast
from speclint.report.story import Compared, ranked, story
from speclint.ruling import Comment, Review, comments
from speclint.units import System, show

GRADES = {"hold": "Settle before release", "revise": "Should be improved", "note": "Worth knowing"}
LAYERS = {"rain": "Driving rain", "sun": "Sun", "finish": "Life of the finish", "decay": "Exposure to decay"}
YEAR = 365.25


@dataclass(frozen=True, slots=True)
class Material:
    """All that a report is made of.

    Attributes:
        sheet: The facts of the plan.
        review: Its review.
        forecast: Its upkeep.
        others: Its alternates, compared.
        changed: For each alternate: its name, and its facts.
        today: The day of the report.
        system: The units of the reader.
    """

    sheet: Sheet
    review: Review
    forecast: Forecast
    others: tuple[Compared, ...]
    changed: tuple[tuple[str, Sheet], ...]
    today: datetime.date
    system: System


def report_page(material: Material, live: str = "") -> str:
    """The report as one HTML page that asks the network for nothing.

    Args:
        material: What it is made of.
        live: Script that keeps the page up to date while a plan is watched; empty in a file.
    """
    page = templates().get_template("page.html")
    return str(page.render(**_told(material), live=live))


@lru_cache(maxsize=1)
def templates() -> Any:
    """The templates of this package; every text is escaped unless it is a drawing of ours."""
    from jinja2 import Environment, PackageLoader, StrictUndefined

    return Environment(
        loader=PackageLoader("speclint.report", "pages"),
        autoescape=True,
        undefined=StrictUndefined,
        trim_blocks=True,
        lstrip_blocks=True,
    )


def _told(material: Material) -> dict[str, Any]:
    from markupsafe import Markup

    sheet, review, system = material.sheet, material.review, material.system
    pins = pins_of(review)
    worst_first = list(dict.fromkeys([*ranked(sheet), *sheet.of_kind("wall")]))
    walls = [_wall(sheet, wall.label, pins, system) for wall in worst_first]
    where: dict[int, list[str]] = {}
    for wall in walls:
        for number in wall["numbers"]:
            where.setdefault(number, []).append(wall["label"])
    plan = roof_plan(sheet, system, "roof-plan")
    outlook = material.forecast.outlook
    chart = timeline(sheet.home.name, outlook, material.forecast.rates.currency, material.today.year, "upkeep-chart")
    return {
        "plan": sheet.home.name,
        "alternate": review.alternate,
        "today": material.today.isoformat(),
        "site": review.facts_line,
        "rules": review.rules_used,
        "counts": {grade: len({r.rule for r in review.rulings if r.grade == grade}) for grade in GRADES},
        "grades": GRADES,
        "layers": LAYERS,
        "scales": scales(),
        "layer_names": NAMES,
        "story": story(sheet, review, material.forecast, material.others, system),
        "walls": walls,
        "compass": Markup(compass(sheet, system, "compass")),
        "roof_plan": Markup(plan) if plan else "",
        "water": text_of(water_lines(sheet, system, None, 118)),
        "comments": [_comment(comment, where, sheet, system) for comment in comments(review.rulings)],
        "questions": review.questions,
        "assumed": review.assumed,
        "variances": review.variances,
        "mistakes": review.mistakes,
        "cautions": review.cautions,
        "upkeep": _upkeep(material.forecast, system),
        "timeline": Markup(chart) if outlook.parts else "",
        "others": material.others,
        "pairs": _pairs(material),
        "numbers": _numbers(sheet, system),
        "sources": _sources(sheet, review),
    }


def _wall(sheet: Sheet, label: str, pins: tuple[Pin, ...], system: System) -> dict[str, Any]:
    """The drawings and the line of numbers of a wall."""
    from markupsafe import Markup

    wall = sheet[label]
    name = label.replace(" ", "-")
    frame = wall_frame(sheet, wall)
    on_it = [pin for pin, _, _ in spots(frame, pins)] if frame is not None else []
    drawn = elevation(sheet, wall, View(system, "rain", False, pins, "#finding-{number}", f"elevation-{name}"))
    cut = section(sheet, wall, system, f"section-{name}")
    told = [
        (title, sheet.quantity(wall, measure))
        for title, measure in (
            ("driving rain that strikes it", "rain share"),
            ("rain class", "rain class"),
            ("ultraviolet light", "ultraviolet share"),
            ("coat lasts, likely", "likely finish life"),
            ("exposure to decay", "decay exposure"),
            ("decay verdict", "decay verdict"),
            ("comes down as it dries", "settlement"),
            ("access", "access"),
        )
    ]
    return {
        "label": label,
        "name": name,
        "elevation": Markup(drawn) if drawn else "",
        "section": Markup(cut) if cut else "",
        "numbers": sorted({pin.number for pin in on_it}),
        "told": [(title, _shown(found, system)) for title, found in told],
    }


def _shown(found: Any, system: System) -> str:
    if not hasattr(found, "shown"):
        return "not known"
    bounds = found.shown_range(system)
    return f"{found.shown(system)} ({bounds})" if bounds else str(found.shown(system))


def _comment(comment: Comment, where: dict[int, list[str]], sheet: Sheet, system: System) -> dict[str, Any]:
    """A finding as the page shows it."""
    first = comment.rulings[0]
    numbers: list[str] = []
    seen: set[str] = set()
    for ruling in comment.rulings:
        for quantity in ruling.evidence:
            key = f"{quantity.name} of {quantity.element}"
            if key not in seen:
                seen.add(key)
                numbers.append(text_of(unfold(quantity, system, 0, set())).rstrip())
    return {
        "number": comment.number,
        "grade": first.grade,
        "title": first.title or first.rule,
        "rule": first.rule,
        "messages": [(ruling.message, ruling.place.line) for ruling in comment.rulings],
        "because": first.because,
        "cures": list(dict.fromkeys(cure for ruling in comment.rulings for cure in ruling.cures))[:6],
        "basis": list(dict.fromkeys(line for ruling in comment.rulings for line in ruling.basis)),
        "defer": list(dict.fromkeys(ruling.defer for ruling in comment.rulings if ruling.defer)),
        "walls": where.get(comment.number, []),
        "numbers": numbers,
    }


def _upkeep(forecast: Forecast, system: System) -> dict[str, Any]:
    """The table of upkeep."""
    outlook, money = forecast.outlook, forecast.rates.currency
    rows = []
    for part in outlook.parts:
        job = part.job
        rows.append(
            {
                "part": job.part,
                "what": job.what,
                "area": show(job.area, "area", system),
                "life": " to ".join(f"{life / YEAR:.1f}" for life in (job.lives[0], job.lives[2])),
                "likely": f"{job.lives[1] / YEAR:.1f}",
                "reached": ", ".join(f"{means} {show(area, 'area', system)}" for means, area in job.reached.items()),
                "hours": f"{job.hours:.0f}",
                "each": f"{job.cost:,.0f}",
                "times": f"{part.coats.likely:.0f}",
                "spent": f"{part.spent.likely:,.0f}",
            }
        )
    return {
        "years": outlook.years,
        "money": money,
        "rows": rows,
        "spent": outlook.spent,
        "present": outlook.present,
        "demo": forecast.rates.demo,
        "untold": forecast.untold,
        "inspections": forecast.inspections,
    }


def _pairs(material: Material) -> list[dict[str, Any]]:
    """For each alternate, the wall that it changes most, before and after."""
    from markupsafe import Markup

    found = []
    for name, sheet in material.changed:
        best = max(sheet.of_kind("wall"), key=lambda wall: _change(material.sheet, sheet, wall.label), default=None)
        if best is None or _change(material.sheet, sheet, best.label) < 0.01 or best.label not in material.sheet.facts:
            continue
        key = f"{name} {best.label}".replace(" ", "-")
        before = elevation(material.sheet, material.sheet[best.label], View(material.system, name=f"before-{key}"))
        after = elevation(sheet, best, View(material.system, name=f"after-{key}"))
        if before and after:
            found.append({"name": name, "wall": best.label, "before": Markup(before), "after": Markup(after)})
    return found


def _change(base: Sheet, other: Sheet, label: str) -> float:
    was, now = base.value(label, "rain share"), other.value(label, "rain share")
    return 0.0 if was is None or now is None else abs(float(was) - float(now))


def _numbers(sheet: Sheet, system: System) -> list[tuple[str, str]]:
    """Every measure of every element, unfolded, as text."""
    found = []
    for facts in sheet.facts.values():
        names = measures().get(facts.element.kind, {})
        seen: set[str] = set()
        lines = [line for name in names for line in (*unfold(sheet.quantity(facts, name), system, 0, seen), ())]
        if lines:
            found.append((facts.label, text_of(lines).rstrip()))
    return found


def _sources(sheet: Sheet, review: Review) -> Sequence[str]:
    """Every publication and judgement that a finding of the review rests on, once."""
    return sorted({line for ruling in review.rulings for line in ruling.basis})
