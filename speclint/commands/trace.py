"""`speclint trace`."""

from __future__ import annotations

import argparse

from speclint.commands.common import put, rendered, units_of, width, wrapped
from speclint.commands.measures import element_of, plan_asked, sheet_of
from speclint.commands.results import write_result


def run(stated: argparse.Namespace) -> int:
    """Follow the water of a plan, or its loads, to where they end."""
    from speclint.outputs.trace import bearing_lines, drawn_web, water_lines
    from speclint.outputs.webs import bearing_object, dot_text, water_object

    plan, named = plan_asked(stated, stated.element)
    system = units_of(stated, plan.text)
    sheet, status = sheet_of(plan, stated.alternate)
    only = element_of(sheet, named) if named else None
    if stated.json:
        text = bearing_object(sheet, drawn_web(sheet, True)) if stated.bearing else water_object(sheet)
    elif stated.dot:
        text = dot_text(drawn_web(sheet, stated.bearing), f"{'bearing' if stated.bearing else 'water'} {plan.name}")
    else:
        lines = bearing_lines if stated.bearing else water_lines
        text = rendered(wrapped(lines(sheet, system, only, width())), stated)
    if stated.into:
        write_result(stated.into, text, stated)
    else:
        put(text)
    return status
