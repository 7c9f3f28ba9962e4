"""What is computed for a plan, as one object for programs or as rows for a spreadsheet."""

from __future__ import annotations

import csv
import io
from typing import Any

from speclint.measures.course_table import COLUMNS, course_table
from speclint.measures.facts import Facts, Sheet
from speclint.measures.register import measures
from speclint.outputs.data import as_json, unfolded
from speclint.quantity import Quantity
from speclint.units import SI, System

HEADING = ("plan", "element", "course", "measure", "value", "unit", "low", "high", "how")


def as_object(chosen: list[Facts], sheet: Sheet, system: System) -> str:
    """Every measure of the elements unfolded, and the courses of the walls, as JSON.

    A quantity is unfolded once; where it comes up again it is marked as told above.
    """
    found: dict[str, Any] = {}
    told: set[tuple[str, str]] = set()
    for facts in chosen:
        names = measures().get(facts.element.kind, {})
        found[facts.label] = [unfolded(sheet.quantity(facts, name), system, told) for name in names]
    courses = {
        facts.label: [{"course": at, **row} for at, row in enumerate(course_table(sheet, facts).rows, 1)]
        for facts in chosen
        if facts.element.kind == "wall"
    }
    return as_json({"plan": sheet.home.name, "elements": found, "courses": courses, "course units": COLUMNS})


def as_csv(chosen: list[Facts], sheet: Sheet, courses_only: bool) -> str:
    """Every measure of the elements and every course of the walls, a row each, in SI units."""
    text = io.StringIO()
    rows = csv.writer(text, lineterminator="\n")
    rows.writerow(HEADING)
    for facts in chosen:
        if not courses_only:
            for name, measure in measures().get(facts.element.kind, {}).items():
                quantity = sheet.quantity(facts, name)
                if isinstance(quantity, Quantity) and isinstance(quantity.value, str | float | int):
                    bounds = (_number(quantity.low), _number(quantity.high))
                    unit = SI.get(measure.dimension, measure.dimension)
                    told = _number(quantity.value)
                    rows.writerow(
                        [
                            spreadsheet_text(sheet.home.name),
                            spreadsheet_text(facts.label),
                            "",
                            name,
                            told,
                            unit,
                            *bounds,
                            quantity.how,
                        ]
                    )
        if facts.element.kind == "wall":
            for at, row in enumerate(course_table(sheet, facts).rows, 1):
                for name, value in row.items():
                    if value is not None and name not in ("rain share low", "rain share high"):
                        low = row["rain share low"] if name == "rain share" else None
                        high = row["rain share high"] if name == "rain share" else None
                        cells = (_number(value), COLUMNS[name], _number(low), _number(high), "computed")
                        rows.writerow(
                            [spreadsheet_text(sheet.home.name), spreadsheet_text(facts.label), at, name, *cells]
                        )
    return text.getvalue()


def spreadsheet_text(text: str) -> str:
    """A text that a spreadsheet would take for a formula, marked as text."""
    return f"'{text}" if text[:1] in ("=", "+", "-", "@") else text


def _number(value: Any) -> str:
    return "" if value is None else f"{value:.6g}" if isinstance(value, float) else str(value)
