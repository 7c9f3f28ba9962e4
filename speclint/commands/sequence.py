"""`speclint sequence`."""

from __future__ import annotations

import argparse

from speclint.commands.common import put, rendered, width
from speclint.commands.measures import plan_asked, sheet_of
from speclint.commands.results import write_result
from speclint.measures.work_order import work_of


def run(stated: argparse.Namespace) -> int:
    """Put the work of a plan in order."""
    from speclint.outputs.sequence import sequence_lines, sequence_object
    from speclint.outputs.webs import dot_text

    plan, _ = plan_asked(stated)
    sheet, status = sheet_of(plan, stated.alternate)
    work = work_of(sheet)
    if stated.json:
        text = sequence_object(work, plan.name)
    elif stated.dot:
        text = dot_text(work.web, f"order of work {plan.name}")
    else:
        text = rendered(sequence_lines(work, plan.name, width()), stated)
    if stated.into:
        write_result(stated.into, text, stated)
    else:
        put(text)
    return status
