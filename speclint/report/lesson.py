"""Lessons for trainees: a principle, this house's drawings and numbers, what goes wrong, an exercise and its key."""

from __future__ import annotations

import datetime
import re
from collections.abc import Callable
from dataclasses import dataclass
from typing import Any

from speclint.drawing.elevation import View, elevation
from speclint.drawing.roof_plan import roof_plan
from speclint.drawing.section import section
from speclint.drawing.timeline import timeline
from speclint.measures.facts import Facts, Sheet
from speclint.measures.work_order import work_of
from speclint.outputs.letter import text_of
from speclint.outputs.sequence import sequence_lines
from speclint.outputs.trace import water_lines
from speclint.outputs.unfold import unfold
from speclint.outputs.upkeep import Forecast
from speclint.paths import shipped
from speclint.pipeline import PlanText, review
from speclint.report.build import templates
from speclint.rulebook.book import Rulebook
from speclint.rulebook.page import read_page
from speclint.ruling import Comment, comments
from speclint.units import System

BASE = "quiet-harbor.plan"
HEAD = "# An exercise: somewhere in this plan {count} {things} hidden. Find what a reviewer would hold against it.\n"


@dataclass(frozen=True, slots=True)
class Lesson:
    """A lesson as its page in shared/lessons states it.

    Attributes:
        name: By which it is asked for.
        title: Its title.
        rules: Names of the rules that it teaches.
        draws: What is drawn: elevation WALL LAYER, section WALL, roof plan, timeline, water or sequence.
        numbers: Measures that are worked: pairs of a measure and an element.
        plants: Faults of the exercise, each one or more pairs: a text of the flawless plan, and what replaces it.
        principle: The principle, in paragraphs.
        check: Questions for the trainee, each with its answer.
    """

    name: str
    title: str
    rules: tuple[str, ...]
    draws: tuple[str, ...]
    numbers: tuple[tuple[str, str], ...]
    plants: tuple[tuple[tuple[str, str], ...], ...]
    principle: tuple[str, ...]
    check: tuple[tuple[str, str], ...]


class UnusableLesson(Exception):
    """A page of a lesson that cannot be used: a fault of ours."""


def lesson_names() -> list[str]:
    """The names of all lessons."""
    found = (page.name for page in shipped("shared").joinpath("lessons").iterdir())
    return sorted(name.removesuffix(".md") for name in found if name.endswith(".md"))


def read_lesson(name: str) -> Lesson:
    """The lesson of a name.

    Raises:
        LookupError: If there is none.
    """
    if name not in lesson_names():
        raise LookupError(name)
    text = shipped("shared").joinpath("lessons", f"{name}.md").read_text(encoding="utf-8")
    title = text.split("\n", 1)[0].removeprefix("# ").strip()
    head = text.split("```lesson\n", 1)[1].split("```", 1)[0]
    told: dict[str, list[str]] = {}
    for line in head.splitlines():
        word, _, rest = line.partition(" ")
        told.setdefault(word, []).append(rest.strip())
    parts = {part.split("\n", 1)[0].strip(): part.split("\n", 1)[1].strip() for part in text.split("\n## ")[1:]}
    return Lesson(
        name,
        title,
        tuple(told["rules"][0].split(", ")),
        tuple(told["draws"][0].split("; ")),
        tuple((one.partition(" of ")[0], one.partition(" of ")[2]) for one in told["numbers"][0].split("; ")),
        tuple(_planted(line, name) for line in told.get("plant", [])),
        tuple(parts["Principle"].split("\n\n")),
        tuple(_asked(line) for line in parts["Self-check"].splitlines() if line.startswith("- ")),
    )


def _planted(line: str, name: str) -> tuple[tuple[str, str], ...]:
    """The pairs of a plant: `FOUND  =>  PLANTED`, several parted by two ampersands, line ends written `\\n`."""
    pairs = [one.replace("\\n", "\n").split("  =>  ") for one in line.split("  &&  ")]
    if any(len(pair) != 2 for pair in pairs):
        raise UnusableLesson(f"wanted FOUND  =>  PLANTED in every plant of {name}; got {line}")
    return tuple((pair[0], pair[1]) for pair in pairs)


def _asked(line: str) -> tuple[str, str]:
    question, _, answer = line.removeprefix("- ").partition(" | ")
    return question, answer


def exercise(lesson: Lesson, only: int | None = None) -> str:
    """The flawless plan with the faults of a lesson planted in it, or with one of them alone.

    Raises:
        UnusableLesson: If a text to be replaced does not stand in the plan just once.
    """
    text = shipped("specs").joinpath(BASE).read_text(encoding="utf-8")
    plants = lesson.plants if only is None else (lesson.plants[only],)
    for found, planted in (pair for plant in plants for pair in plant):
        if text.count(found) != 1:
            raise UnusableLesson(f"wanted “{found}” once in {BASE} for {lesson.name}; got {text.count(found)}")
        text = text.replace(found, planted)
    body = re.sub(r"\A(?:#[^\n]*\n)+", "", text)
    body = re.sub(r"[ \t]*# [^\n]*", "", body)  # comments of the flawless plan would tell on the faults
    count = len(plants)
    return HEAD.format(count=count, things="fault is" if count == 1 else "faults are") + body


def answers(lesson: Lesson, book: Rulebook, day: str, system: System, only: int | None = None) -> list[Comment]:
    """What the review says of the exercise, or of one of its faults alone: the key, made by the engine."""

    def none(name: str) -> str:
        raise LookupError(name)

    return comments(review(PlanText(exercise(lesson, only), "exercise.plan", none), book, day, system).rulings)


def lesson_page(
    lesson: Lesson,
    sheet: Sheet,
    book: Rulebook,
    forecast: Callable[[Sheet], Forecast],
    today: datetime.date,
    system: System,
) -> str:
    """A lesson as one HTML page that asks the network for nothing; it does not hold the key of its exercise."""
    told: dict[str, Any] = {
        "lesson": lesson,
        "plan": sheet.home.name,
        "pictures": [_picture(draw, sheet, forecast, today, system) for draw in lesson.draws],
        "numbers": [text_of(lines).rstrip() for lines in _worked(lesson, sheet, system)],
        "failures": [_failure(name, book) for name in lesson.rules],
        "exercise": exercise(lesson),
    }
    return str(templates().get_template("lesson.html").render(**told))


def _picture(
    draw: str, sheet: Sheet, forecast: Callable[[Sheet], Forecast], today: datetime.date, system: System
) -> dict[str, Any]:
    """A drawing of this house, or a text where it is no drawing."""
    from markupsafe import Markup

    kind, *rest = draw.split()
    svg: str | None = None
    if kind == "elevation":
        wall = _of(sheet, f"wall {rest[0]}")
        svg = elevation(sheet, wall, View(system, rest[1], name=f"elevation-{rest[0]}-{rest[1]}")) if wall else None
    elif kind == "section":
        wall = _of(sheet, f"wall {rest[0]}")
        svg = section(sheet, wall, system, f"section-{rest[0]}") if wall else None
    elif kind == "roof":
        svg = roof_plan(sheet, system, "roof-plan")
    elif kind == "timeline":
        found = forecast(sheet)
        if found.outlook.parts:
            svg = timeline(sheet.home.name, found.outlook, found.rates.currency, today.year, "upkeep")
    elif kind == "water":
        return {"svg": "", "text": text_of(water_lines(sheet, system, None, 100))}
    elif kind == "sequence":
        return {"svg": "", "text": text_of(sequence_lines(work_of(sheet), sheet.home.name, 96))}
    else:
        raise UnusableLesson(f"wanted a drawing; got {draw}")
    return {
        "svg": Markup(svg) if svg else "",
        "text": "" if svg else f"not drawn ({draw}): the plan does not say enough",
    }


def _of(sheet: Sheet, label: str) -> Facts | None:
    """The element of a label, or the first of its kind where this plan has none of that name."""
    kind = label.split()[0]
    return sheet.facts.get(label) or next(iter(sheet.of_kind(kind)), None)


def _worked(lesson: Lesson, sheet: Sheet, system: System) -> list[Any]:
    found = []
    for measure, label in lesson.numbers:
        facts = _of(sheet, label)
        if facts is not None:
            found.append(unfold(sheet.quantity(facts, measure), system, 0, set()))
    return found


def _failure(name: str, book: Rulebook) -> dict[str, Any]:
    """A rule as a trainee reads it."""
    rule = book.named(name)
    if rule is None:
        raise UnusableLesson(f"wanted the name of a rule; got {name}")
    page = read_page(shipped("rules").joinpath(f"{name}.md").read_text(encoding="utf-8"), f"{name}.md")
    parts = {
        heading: page.sections.get(heading, "") for heading in ("What it finds", "Why it matters", "How to cure it")
    }
    return {
        "title": page.title,
        "name": name,
        "parts": parts,
        "defer": rule.defer,
        "limits": page.sections.get("Limits", ""),
    }
