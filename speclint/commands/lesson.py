"""`speclint lesson`."""

from __future__ import annotations

import argparse
import os
from pathlib import Path

from speclint.commands.common import put, rendered, rulebook_of, units_of, width, wrapped
from speclint.commands.files import Refused, open_plan, write_file
from speclint.commands.measures import sheet_of
from speclint.commands.results import refuse_one_file, write_result
from speclint.commands.upkeep import day_of, forecast_of, rates_of
from speclint.language.nearest import did_you_mean
from speclint.outputs.letter import Frame, Line, Part, comment_lines
from speclint.units import System

YEARS = 30


def run(stated: argparse.Namespace) -> int:
    """List the lessons, or write one, its exercise, or the key of that."""
    from speclint.report.lesson import answers, exercise, flawless, lesson_names, read_lesson
    from speclint.report.lesson_page import lesson_page

    if stated.topic is None:
        put(rendered(_list(), stated))
        return 0
    try:
        lesson = read_lesson(stated.topic)
    except LookupError:
        names = lesson_names()
        help = did_you_mean(stated.topic, names) or f"the topics are: {', '.join(names)}"
        raise Refused(f"there is no lesson on “{stated.topic}”: {help}", 3) from None
    today = day_of(stated.today)
    if not (stated.to or stated.exercise or stated.answers):
        raise Refused("say what to write: --to FILE.html, --exercise FILE.plan, or --answers", 3)
    if stated.exercise:
        _refuse_written(stated)
        write_file(Path(stated.exercise), exercise(lesson))
        put(f"{stated.exercise}\n")
    status = 0
    if stated.to:
        plan = open_plan(stated.plan) if stated.plan else None
        if plan is not None:
            status = sheet_of(plan)[1]
        page = lesson_page(
            lesson,
            rulebook_of(stated),
            lambda home: forecast_of(home, rates_of(None), YEARS, today),
            today,
            units_of(stated, plan.text if plan is not None else flawless()),
            plan,
        )
        write_result(stated.to, page, stated)
        put(f"{stated.to}\n")
    if stated.answers:
        system: System = "metric" if stated.units == "metric" else "imperial"
        found = answers(lesson, rulebook_of(stated), today.isoformat(), system)
        lines: list[Line] = [(Part(f"KEY  {lesson.title}", "title"),)]
        for comment in found:
            lines += [(), *comment_lines(comment, Frame(width(), today.isoformat()))]
        put(rendered(lines, stated))
    return status


def _refuse_written(stated: argparse.Namespace) -> None:
    """Refuse to write an exercise over a file that is there: it may be worked on already.

    Raises:
        Refused: If one is there, or the lesson would go to the same file.
    """
    if os.path.isfile(stated.exercise):
        raise Refused(f"{stated.exercise} is already there; it was left as it is", 3)
    if stated.to:
        refuse_one_file(stated.exercise, stated.to)


def _list() -> list[Line]:
    from speclint.report.lesson import lesson_names, read_lesson

    lines: list[Line] = [(Part("LESSONS", "title"),)]
    for name in lesson_names():
        lines.append((Part(f"  {name:<24}", "element"), Part(read_lesson(name).title)))
    return wrapped([*lines, (), (Part("`speclint lesson TOPIC --to FILE.html` writes one", "quiet"),)])
