"""The report of a plan as one page: everything that is shown on it, gathered as plain data and set by a template."""

from __future__ import annotations

import datetime
from collections.abc import Sequence
from dataclasses import dataclass
from functools import lru_cache
from typing import Any

from speclint.drawing.compass import compass
from speclint.drawing.layers import NAMES, scales
from speclint.drawing.pins import pins_of
from speclint.drawing.roof_plan import roof_plan
from speclint.drawing.timeline import timeline
from speclint.forecast.whole import NEVER_COUNTED, Forecast
from speclint.measures.facts import Sheet
from speclint.measures.register import measures
from speclint.outputs.letter import text_of
from speclint.outputs.trace import water_lines
from speclint.outputs.unfold import unfold
from speclint.report.advice import NOT_BUILT, Compared, best_of
from speclint.report.story import YARDSTICK, saving, story, wall_rows
from speclint.report.walls import pairs_of, walls_of
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
        title: The name of the house; that of the plan where it is empty.
        about: What the plan says of the house, in a line.
    """

    sheet: Sheet
    review: Review
    forecast: Forecast
    others: tuple[Compared, ...]
    changed: tuple[tuple[str, Sheet], ...]
    today: datetime.date
    system: System
    title: str = ""
    about: str = ""


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
    walls = walls_of(sheet, pins_of(review), system)
    where: dict[int, list[str]] = {}
    for wall in walls:
        for number in wall["numbers"]:
            where.setdefault(number, []).append(wall["label"])
    plan = roof_plan(sheet, system, "roof-plan")
    outlook = material.forecast.outlook
    chart = timeline(sheet.home.name, outlook, material.forecast.rates.currency, material.today.year, "upkeep-chart")
    slim = timeline(
        sheet.home.name, outlook, material.forecast.rates.currency, material.today.year, "upkeep-narrow", True
    )
    return {
        "plan": sheet.home.name,
        "title": material.title or sheet.home.name,
        "about": material.about,
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
        "wall_rows": wall_rows(sheet, system),
        "yardstick": YARDSTICK,
        "compass": Markup(compass(sheet, system, "compass")),
        "roof_plan": Markup(plan) if plan else "",
        "water": text_of(water_lines(sheet, system, None, 118)),
        "comments": [_comment(comment, where, sheet, system) for comment in comments(review.rulings)],
        "questions": review.questions,
        "holding_questions": review.holding_questions,
        "assumed": review.assumed,
        "variances": review.variances,
        "mistakes": review.mistakes,
        "cautions": review.cautions,
        "upkeep": _upkeep(material.forecast, system),
        "timeline": Markup(chart) if outlook.parts else "",
        "timeline_narrow": Markup(slim) if outlook.parts else "",
        "others": [_other(other, material) for other in material.others],
        "not_built": NOT_BUILT,
        "pairs": pairs_of(sheet, material.changed, system),
        "numbers": _numbers(sheet, system),
        "sources": _sources(sheet, review),
    }


def _other(other: Compared, material: Material) -> dict[str, Any]:
    """An alternate as the page shows it."""
    best = best_of(material.others)
    return {
        "name": other.name,
        "changes": other.changes,
        "holds": other.holds,
        "revises": other.revises,
        "notes": other.notes,
        "walls": other.walls,
        "saving": saving(other, material.forecast),
        "cured": other.cured,
        "raised": other.raised,
        "best": best is not None and best.name == other.name,
    }


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
        "messages": [ruling.message for ruling in comment.rulings],
        "lines": sorted({ruling.place.line for ruling in comment.rulings if ruling.place.line}),
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
        "total": forecast.rates.money(outlook.spent.likely),
        "value": forecast.rates.money(outlook.present.likely),
        "rows": rows,
        "spent": outlook.spent,
        "present": outlook.present,
        "demo": forecast.rates.demo,
        "states": forecast.states,
        "samples": f"{outlook.samples:,}",
        "untold": [f"{one.part}: {one.why}" for one in (*forecast.untold, *forecast.uncoated)],
        "uncounted": (*forecast.uncounted, NEVER_COUNTED),
        "of": forecast.of,
    }


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
