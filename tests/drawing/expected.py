"""Drawings of the example plans, whole: `python -m tests.drawing.expected` draws them anew."""

from __future__ import annotations

import datetime
from pathlib import Path

from speclint.drawing.compass import compass
from speclint.drawing.elevation import View, elevation
from speclint.drawing.pins import pins_of
from speclint.drawing.roof_plan import roof_plan
from speclint.drawing.section import section
from speclint.drawing.timeline import timeline
from speclint.forecast.jobs import jobs_of
from speclint.forecast.outlook import outlook
from speclint.forecast.rates import demo_rates
from speclint.measures.facts import Sheet
from speclint.pipeline import PlanText, read_home, review
from tests.laws.houses import example, read
from tests.specs.expected import DAY, book

HERE = Path(__file__).parent / "sheets"


def plan_of(name: str) -> PlanText:
    return PlanText(example(name), f"{name}.plan", read)


def sheet_of(name: str) -> Sheet:
    return read_home(plan_of(name))[0]


def drawings() -> dict[str, str]:
    """The drawings that are kept, by file name."""
    lake, spit, desert = (sheet_of(name) for name in ("tamarack-point", "cedar-spit", "high-desert-cabin"))
    pins = pins_of(review(plan_of("tamarack-point"), book(), DAY))
    jobs, _ = jobs_of(lake, demo_rates())
    found = {
        "elevation-west-rain.svg": elevation(lake, lake["wall west"], View(pins=pins)),
        "elevation-south-finish.svg": elevation(lake, lake["wall south"], View(shown="finish", pins=pins)),
        "elevation-north-decay.svg": elevation(desert, desert["wall north"], View("metric", "decay")),
        "section-south.svg": section(lake, lake["wall south"]),
        "section-den.svg": section(spit, spit["wall den"]),
        "roof-plan.svg": roof_plan(spit),
        "compass.svg": compass(lake),
        "upkeep.svg": timeline(
            "tamarack-point.plan", outlook(jobs, demo_rates(), 30), "$", datetime.date(2026, 11, 25).year
        ),
    }
    return {name: svg for name, svg in found.items() if svg is not None}


if __name__ == "__main__":
    HERE.mkdir(exist_ok=True)
    for name, svg in drawings().items():
        (HERE / name).write_text(svg, encoding="utf-8")
        print(name)
