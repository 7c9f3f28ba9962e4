"""Lessons for trainees: what a page in shared/lessons states, the exercise that it makes, and the key of that."""

from __future__ import annotations

import re
from dataclasses import dataclass

from speclint.language.layout import tidied
from speclint.paths import shipped
from speclint.pipeline import PlanText, review
from speclint.plan_text import CannotRead
from speclint.rulebook.book import Rulebook
from speclint.ruling import Comment, comments
from speclint.units import System

BASE = "quiet-harbor.plan"
HEAD = "# An exercise: somewhere in this plan {count} {things} hidden. Find what a reviewer would hold against it.\n"

Pairs = tuple[tuple[str, str], ...]
"""Changes of the flawless plan: each a text of it, and what replaces it."""


@dataclass(frozen=True, slots=True)
class Lesson:
    """A lesson as its page in shared/lessons states it.

    Attributes:
        name: By which it is asked for.
        title: Its title.
        rules: Names of the rules that it teaches.
        case: What is wrong in the worked case, in words.
        shows: The worked case: the changes that make the flawless plan faulty.
        draws: What is drawn: elevation WALL, elevation WALL LAYER, section WALL, roof plan, timeline, water, sequence.
        numbers: Measures that are worked: pairs of a measure and an element.
        plants: Faults of the exercise, each one or more changes.
        principle: The principle, in paragraphs.
        reading: How the worked numbers are to be read, in paragraphs.
        check: Questions for the trainee, each with its answer.
    """

    name: str
    title: str
    rules: tuple[str, ...]
    case: str
    shows: Pairs
    draws: tuple[str, ...]
    numbers: tuple[tuple[str, str], ...]
    plants: tuple[Pairs, ...]
    principle: tuple[str, ...]
    reading: tuple[str, ...]
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
        told["case"][0],
        _changes(told["shows"][0], name),
        tuple(told["draws"][0].split("; ")),
        tuple((one.partition(" of ")[0], one.partition(" of ")[2]) for one in told["numbers"][0].split("; ")),
        tuple(_changes(line, name) for line in told["plant"]),
        tuple(parts["Principle"].split("\n\n")),
        tuple(parts["Reading the numbers"].split("\n\n")),
        tuple(_asked(line) for line in parts["Self-check"].splitlines() if line.startswith("- ")),
    )


def _changes(line: str, name: str) -> Pairs:
    """The changes of a line: `FOUND  =>  CHANGED`, several parted by two ampersands, line ends written `\\n`."""
    pairs = [one.replace("\\n", "\n").split("  =>  ") for one in line.split("  &&  ")]
    if any(len(pair) != 2 for pair in pairs):
        raise UnusableLesson(f"wanted FOUND  =>  CHANGED in every change of {name}; got {line}")
    return tuple((pair[0], pair[1]) for pair in pairs)


def _asked(line: str) -> tuple[str, str]:
    question, _, answer = line.removeprefix("- ").partition(" | ")
    return question, answer


def flawless() -> str:
    """The plan in which nothing is left to settle."""
    return shipped("specs").joinpath(BASE).read_text(encoding="utf-8")


def changed(lesson: Lesson, pairs: Pairs) -> str:
    """The flawless plan with changes made in it.

    Raises:
        UnusableLesson: If a text to be replaced does not stand in the plan just once.
    """
    text = flawless()
    for found, put in pairs:
        places = list(_in_any_layout(found).finditer(text))
        if len(places) != 1:
            raise UnusableLesson(f"wanted “{found}” once in {BASE} for {lesson.name}; got {len(places)}")
        text = f"{text[: places[0].start()]}{put}{text[places[0].end() :]}"
    return tidied(text)


def _in_any_layout(notes: str) -> re.Pattern[str]:
    """Notes of a plan however they are spaced, parted or broken into lines."""
    return re.compile(r"[\s;]+".join(re.escape(word) for word in re.split(r"[\s;]+", notes)))


def exercise(lesson: Lesson, only: int | None = None) -> str:
    """The flawless plan with the faults of a lesson planted in it, or with one of them alone.

    Raises:
        UnusableLesson: If a text to be replaced does not stand in the plan just once.
    """
    plants = lesson.plants if only is None else (lesson.plants[only],)
    text = changed(lesson, tuple(pair for plant in plants for pair in plant))
    body = re.sub(r"\A(?:#[^\n]*\n)+", "", text)
    body = re.sub(r"[ \t]*# [^\n]*", "", body)  # comments of the flawless plan would tell on the faults
    count = len(plants)
    return HEAD.format(count=count, things="fault is" if count == 1 else "faults are") + body


def answers(lesson: Lesson, book: Rulebook, day: str, system: System, only: int | None = None) -> list[Comment]:
    """What the review says of the exercise, or of one of its faults alone: the key, made by the engine."""
    return comments(review(PlanText(exercise(lesson, only), "exercise.plan", no_file), book, day, system).rulings)


def no_file(used: str) -> str:
    """A file that a plan of a lesson uses: there is none.

    Raises:
        CannotRead: Always.
    """
    raise CannotRead(f"a lesson's plan stands alone, without {used}")
