"""The upkeep forecast for programs: as an object, and as rows for a spreadsheet."""

from __future__ import annotations

import csv
import io
from typing import Any

from speclint.forecast.due import due_day
from speclint.forecast.inspections import Inspection, first_day
from speclint.forecast.jobs import NotForecast, cautions_of
from speclint.forecast.outlook import PartOutlook, Spread
from speclint.forecast.whole import NEVER_COUNTED, Forecast
from speclint.outputs.data import as_json, unfolded
from speclint.outputs.measured import spreadsheet_text
from speclint.units import System

HEADS = (
    "plan",
    "year",
    "month",
    "part",
    "task",
    "area [m2]",
    "reached from",
    "finish [L]",
    "work [h]",
    "cost [currency]",
    "currency",
)


def upkeep_object(forecast: Forecast, system: System) -> str:
    """The forecast as one object for programs, in SI units and the currency of the rates."""
    found = forecast.outlook
    return as_json(
        {
            "plan": forecast.plan,
            "years": found.years,
            "start": forecast.start.isoformat(),
            "currency": forecast.rates.currency,
            "demonstration rates": list(forecast.rates.demo),
            "rates": forecast.rates.values,
            "parts told": len(found.parts),
            "parts that take a coat": forecast.of,
            "parts": [_part_object(part, system) for part in found.parts],
            "spent": _spread_object(found.spent),
            "present value": _spread_object(found.present),
            "hours": found.hours,
            "by year": list(found.by_year),
            "samples": found.samples,
            "season": {
                "months": list(forecast.season.months),
                "coldest": forecast.season.coldest,
                "station": forecast.season.station,
            },
            "not told": _listed(forecast.untold),
            "no coat": _listed(forecast.uncoated),
            "not counted": [*forecast.uncounted, NEVER_COUNTED],
            "reach": forecast.access.reach,
            "lift access": forecast.access.lift,
            "to be told": list(forecast.asks),
            "inspections": [_inspection_object(one) for one in forecast.inspections],
            "cautions": list(cautions_of([part.job for part in found.parts])),
        }
    )


def _listed(parts: tuple[NotForecast, ...]) -> list[dict[str, str]]:
    return [{"part": one.part, "why": one.why} for one in parts]


def _inspection_object(one: Inspection) -> dict[str, Any]:
    return {
        "parts": list(one.parts),
        "what": one.what,
        "why": one.why,
        "months": list(one.months),
        "every": one.every,
        "years": one.years,
        "stated": one.stated,
        "standing": one.standing,
    }


def _spread_object(spread: Spread) -> dict[str, float]:
    return {"low": spread.low, "likely": spread.likely, "high": spread.high}


def _part_object(part: PartOutlook, system: System) -> dict[str, Any]:
    job = part.job
    low, likely, high = job.lives
    return {
        "part": job.part,
        "coat": job.what,
        "area": job.area,
        "reached from": job.reached,
        "days between coats": {"low": low, "likely": likely, "high": high},
        "first coat share": job.first,
        "litres": {"low": job.volume[0], "likely": job.volume[1], "high": job.volume[2]},
        "hours": job.hours,
        "cost": job.cost,
        "cost by what it pays": dict(job.bill),
        "due": list(part.due),
        "coats": _spread_object(part.coats),
        "spent": _spread_object(part.spent),
        "present value": _spread_object(part.present),
        "notes": list(job.notes),
        "evidence": [unfolded(quantity, system) for quantity in job.evidence],
    }


def upkeep_rows(forecast: Forecast) -> str:
    """The schedule as rows: a coat falling due, or an inspection, a row each; in SI units."""
    text = io.StringIO()
    rows = csv.writer(text, lineterminator="\n")
    rows.writerow(HEADS)
    name, currency = spreadsheet_text(forecast.plan), forecast.rates.currency
    for part in forecast.outlook.parts:
        job = part.job
        label, task = spreadsheet_text(job.part), f"coat: {job.what}"
        amounts = (f"{job.area:.1f}", job.means, f"{job.volume[1]:.1f}", f"{job.hours:.1f}", f"{job.cost:.0f}")
        for at in part.due:
            day = due_day(forecast.start, at)
            rows.writerow((name, day.year, day.month, label, task, *amounts, currency))
    for one in forecast.inspections:
        parts = spreadsheet_text(", ".join(one.parts))
        for month in one.months:
            first = first_day(forecast.start, month).year
            for year in range(first, first + (one.years or forecast.outlook.years), one.every):
                rows.writerow((name, year, month, parts, one.what, "", "", "", "", "", ""))
    return text.getvalue()
