"""The order of work as tables: tasks by kind of part, and which must come before which, with the reason."""

from __future__ import annotations

from functools import lru_cache
from typing import NamedTuple

from speclint.citation import Citation
from speclint.tables.rows import read_table

STAGES = (
    "ground",
    "foundation",
    "shop",
    "raising",
    "roof",
    "openings",
    "coats",
    "stone",
    "porches and decks",
    "water and grade",
    "handover",
    "first years",
)
TASK = ("task", "stage", "about", "when", "does", "shows")


class Task(NamedTuple):
    """A sort of work.

    Attributes:
        name: The name by which pairs call it.
        stage: One of `STAGES`.
        about: Kind of the part it is done to; `home` for work on the whole house.
        when: What the part must state for the task to be needed; empty for always.
        does: What is done, with `{element}` for the part.
        words: Beginnings of words by which a step of a plan is known as this task: groups parted by `&`, of each group
            one word.
        hold: Whether work stops until somebody has looked.
        shows: What is to be seen at a hold.
        citation: Where the need for it stands.
    """

    name: str
    stage: str
    about: str
    when: str
    does: str
    words: tuple[tuple[str, ...], ...]
    hold: bool
    shows: str
    citation: Citation


class Pair(NamedTuple):
    """One task that must come before another.

    Attributes:
        first: Name of the task that comes first.
        then: Name of the task that comes after it.
        scope: `same` for the same part, `near` for parts that touch, `named` where one names the
            other, `all` for the whole house.
        why: The reason, as half a sentence.
        citation: Where it stands.
    """

    first: str
    then: str
    scope: str
    why: str
    citation: Citation


@lru_cache(maxsize=1)
def tasks() -> tuple[Task, ...]:
    """Every task, in the order of the table."""
    found = []
    for row in read_table("order/tasks.csv"):
        groups = tuple(tuple(group.strip().split("|")) for group in row.text("words").split("&"))
        name, stage, about, when, does, shows = (row.text(column) for column in TASK)
        found.append(Task(name, stage, about, when, does, groups, row.text("hold") == "hold", shows, row.citation))
    return tuple(found)


@lru_cache(maxsize=1)
def pairs() -> tuple[Pair, ...]:
    """Every pair, in the order of the table."""
    return tuple(
        Pair(row.text("first"), row.text("then"), row.text("scope"), row.text("why"), row.citation)
        for row in read_table("order/pairs.csv")
    )
