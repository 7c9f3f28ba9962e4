"""`speclint exposure`."""

from __future__ import annotations

import argparse

from speclint.commands.common import put, rendered, units_of, width, wrapped
from speclint.commands.files import Refused
from speclint.commands.measures import element_of, plan_asked, sheet_of
from speclint.pipeline import read_home


def run(stated: argparse.Namespace) -> int:
    """Show rain and sun on the walls of a plan."""
    plan, named = plan_asked(stated, stated.wall)
    system = units_of(stated, plan.text)
    sheet, status = sheet_of(plan, stated.alternate)
    only = element_of(sheet, named) if named else None
    if only is not None and only.element.kind != "wall":
        raise Refused(f"{only.label} is no wall: `speclint measures` shows what is computed for it", 3)
    if stated.alternates:
        from speclint.outputs.alternates import alternates_lines

        others = {name: read_home(plan, name)[0] for name in sheet.home.alternates}
        lines = alternates_lines(sheet, others, system, only)
    else:
        from speclint.outputs.exposure import exposure_lines

        lines = exposure_lines(sheet, system, only, width())
    put(rendered(wrapped(lines), stated))
    return status
