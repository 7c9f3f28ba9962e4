"""`speclint exposure`."""

from __future__ import annotations

import argparse

from speclint.commands.common import put, rendered, units_of, wrapped
from speclint.commands.files import Refused, demo_plan, open_plan
from speclint.commands.measures import element_of, sheet_of


def run(stated: argparse.Namespace) -> int:
    """Show rain and sun on the walls of a plan."""
    if stated.demo and stated.plan is not None:
        stated.wall = [stated.plan, *stated.wall]
    elif stated.plan is None and not stated.demo:
        raise Refused("name a plan, or ask for --demo", 3)
    plan = demo_plan() if stated.demo else open_plan(stated.plan)
    system = units_of(stated, plan.text)
    sheet, status = sheet_of(plan, stated.alternate)
    only = element_of(sheet, " ".join(stated.wall)) if stated.wall else None
    if only is not None and only.element.kind != "wall":
        raise Refused(f"{only.label} is no wall: `speclint measures` shows what is computed for it", 3)
    if stated.alternates:
        from speclint.outputs.alternates import alternates_lines

        others = {name: sheet_of(plan, name)[0] for name in sheet.home.alternates}
        lines = alternates_lines(sheet, others, system, only)
    else:
        from speclint.outputs.exposure import exposure_lines

        lines = exposure_lines(sheet, system, only)
    put(rendered(wrapped(lines), stated))
    return status
