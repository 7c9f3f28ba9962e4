"""The plan's steps of work against the order that the parts ask for."""

from __future__ import annotations

from speclint.measures.facts import Facts, Sheet, Working
from speclint.measures.register import measure
from speclint.relations.work import WorkOrder


def work_of(sheet: Sheet) -> WorkOrder:
    """The order of work of the home of a sheet, drawn once."""
    if "work" not in sheet.drawn:
        sheet.drawn["work"] = WorkOrder(sheet.home, sheet.value)
    found = sheet.drawn["work"]
    assert isinstance(found, WorkOrder)
    return found


@measure("step", "order kept", "yes or no", "whether none of the work that it follows must come after it")
def order_kept(step: Facts, work: Working) -> str:
    """Whether no step that it follows, at one remove or at several, must come after it."""
    for conflict in work_of(step.sheet).conflicts:
        if conflict.late == step.label:
            work.cite(conflict.pair.citation)
            return "no"
    return "yes"


@measure("step", "wrong order", "text", "what it follows that must come after it, and why")
def wrong_order(step: Facts, work: Working) -> str:
    """The first such step, the way of steps between them, and the reason."""
    for conflict in work_of(step.sheet).conflicts:
        if conflict.late == step.label:
            work.cite(conflict.pair.citation)
            by_way = f" by way of {', '.join(conflict.way[1:-1])}" if len(conflict.way) > 2 else ""
            return (
                f"“{conflict.first.name}” must come before “{conflict.then.name}”, yet {step.label} follows "
                f"{conflict.early}{by_way}: {conflict.pair.why}"
            )
    return "none"


@measure("step", "step circle", "text", "the circle in which steps follow one another")
def step_circle(step: Facts, work: Working) -> str:
    """The circle, told at the step of it that the plan names first; nothing to tell elsewhere."""
    circle = work_of(step.sheet).circle
    first = next((label for label in step.sheet.home.elements if label in circle), "")
    if first != step.label:
        return "none"
    at = circle.index(first)
    return ", then ".join([*circle[at:-1], *circle[: at + 1]])
