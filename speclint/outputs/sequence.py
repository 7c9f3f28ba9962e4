"""The order of work as a list by stage, with the reason of each place and the holds."""

from __future__ import annotations

from dataclasses import dataclass
from itertools import groupby
from typing import Any

from speclint.outputs.data import as_json
from speclint.outputs.letter import Line, Part
from speclint.outputs.wrapped import wrapped
from speclint.relations.web import Tie
from speclint.relations.work import Job, WorkOrder, in_order, reasons

KEY = "[ ] is for a tick; HOLD is for a look before work goes on; “after” gives what must be done first, and why"
OWN = "steps of the plan"
MOST = 3  # reasons told of a row


@dataclass(frozen=True, slots=True)
class Row:
    """Jobs of one task that follow one another, told as one.

    Attributes:
        number: Its place in the list, from 1.
        stage: The stage it is in.
        words: What is done.
        jobs: The jobs.
        hold: Whether work stops for somebody to look.
        shows: What is to be seen at a hold.
        before: What must come before, with the number of its row and the reason.
        basis: Where the need for it stands.
    """

    number: int
    stage: str
    words: str
    jobs: tuple[Job, ...]
    hold: bool
    shows: str
    before: tuple[tuple[int, str], ...]
    basis: str


def rows_of(work: WorkOrder) -> list[Row]:
    """The order of work in rows: like jobs on several parts that follow one another are one row."""
    ordered = in_order(work)
    groups = [
        list(group)
        for _, group in groupby(ordered, key=lambda job: (job.stage, job.task.name if job.task else job.name))
    ]
    number = {job.name: at for at, group in enumerate(groups, 1) for job in group}
    rows = []
    for at, group in enumerate(groups, 1):
        task = group[0].task
        before: dict[int, str] = {}
        for tie in (tie for job in group for tie in reasons(work, job)):
            if number[tie.source] != at:
                before.setdefault(number[tie.source], tie.words)
        rows.append(
            Row(
                at,
                group[0].stage or OWN,
                _together(group),
                tuple(group),
                bool(task and task.hold),
                task.shows if task else "",
                tuple(sorted(before.items(), reverse=True)),
                str(task.citation) if task and task.citation.key else "common practice" if task else "the plan",
            )
        )
    return rows


def _together(jobs: list[Job]) -> str:
    """What is done to all of them, their names told once each: `wall south, north`."""
    task = jobs[0].task
    if task is None or not jobs[0].element:
        return jobs[0].name
    named: dict[str, list[str]] = {}
    for job in jobs:
        kind, _, name = job.element.partition(" ")
        named.setdefault(kind, []).append(name)
    parts = "; ".join(f"{kind} {', '.join(names)}".strip() for kind, names in named.items())
    return task.does.replace("{element}", parts)


def sequence_lines(work: WorkOrder, plan: str, wide: int) -> list[Line]:
    """The list that hangs on the wall: stages, numbered rows, holds, and why each comes where it does."""
    lines: list[Line] = [(Part("ORDER OF WORK", "title"), Part(f"  {plan}"))]
    lines += [(Part(text, "quiet"),) for text in wrapped(KEY, wide)]
    lines += _troubles(work, wide)
    for stage, group in groupby(rows_of(work), key=lambda row: row.stage):
        lines += [(), (Part(stage.upper(), "label"),)]
        for row in group:
            mark = "HOLD" if row.hold else "[ ] "
            head = f" {row.number:>3} {mark}"
            texts = wrapped(row.words, wide - len(head) - 2)
            lines.append((Part(head, "hold" if row.hold else "number"), Part(f"  {texts[0]}")))
            lines += [(Part(" " * (len(head) + 2)), Part(text)) for text in texts[1:]]
            told = [text for text in (f"look for: {row.shows}" if row.shows else "", _after(row), _steps(row)) if text]
            for text in told:
                pieces = wrapped(text, wide - len(head) - 4)
                lines += [
                    (Part(" " * (len(head) + (4 if at else 2))), Part(piece, "quiet"))
                    for at, piece in enumerate(pieces)
                ]
    holds = sum(row.hold for row in rows_of(work))
    lines += [
        (),
        (Part(f"{holds} holds. Who may lift one is for the builder, the engineer and the local official.", "quiet"),),
    ]
    return lines


def _after(row: Row) -> str:
    told = [f"{number} ({why})" for number, why in row.before[:MOST]]
    more = len(row.before) - MOST
    return f"after {'; '.join(told)}{f'; and {more} more' if more > 0 else ''}" if told else ""


def _steps(row: Row) -> str:
    steps = list(dict.fromkeys(step for job in row.jobs for step in job.steps))
    return f"the plan's {', '.join(steps)}" if steps else ""


def _troubles(work: WorkOrder, wide: int) -> list[Line]:
    lines: list[Line] = []
    if work.circle:
        lines += [(), (Part("STEPS THAT FOLLOW ONE ANOTHER IN A CIRCLE", "hold"),)]
        rows = wrapped(", then ".join(work.circle), wide - 2)
        lines += [(Part(f"  {row}"),) for row in rows]
    if work.conflicts:
        lines += [(), (Part("CANNOT BE DONE AS THE PLAN ORDERS IT", "hold"),)]
        for one in work.conflicts:
            by_way = f" by way of {', '.join(one.way[1:-1])}" if len(one.way) > 2 else ""
            text = f"{one.late} follows {one.early}{by_way}, yet “{one.first.name}” comes before “{one.then.name}”"
            rows = wrapped(f"{text}: {one.pair.why}", wide - 4)
            lines += [(Part(f"{'    ' if at else '  '}{row}"),) for at, row in enumerate(rows)]
    return lines


def sequence_object(work: WorkOrder, plan: str) -> str:
    """The order of work as JSON."""

    def tie_of(tie: Tie) -> dict[str, Any]:
        return {"before": tie.source, "why": tie.words, "by": "the plan" if tie.kind == "stated" else "speclint"}

    jobs: list[dict[str, Any]] = []
    for job in in_order(work):
        jobs.append(
            {
                "job": job.name,
                "stage": job.stage or OWN,
                "element": job.element or None,
                "hold": bool(job.task and job.task.hold),
                "shows": (job.task.shows if job.task else "") or None,
                "steps": list(job.steps),
                "after": [tie_of(tie) for tie in reasons(work, job)],
                "basis": str(job.task.citation) if job.task else "the plan",
            }
        )
    conflicts = [
        {
            "step": one.late,
            "follows": one.early,
            "way": list(one.way),
            "first": one.first.name,
            "then": one.then.name,
            "why": one.pair.why,
            "basis": str(one.pair.citation),
        }
        for one in work.conflicts
    ]
    return as_json({"plan": plan, "jobs": jobs, "conflicts": conflicts, "circle": list(work.circle)})
