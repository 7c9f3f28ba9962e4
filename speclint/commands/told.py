"""What a run does with each plan, and what it gets; plain data that goes from one process to another, and is kept."""

from __future__ import annotations

from typing import Any, NamedTuple

SHELF = "reviews"  # of the user's cache


class Task(NamedTuple):
    """A plan that is to be reviewed.

    Attributes:
        path: The plan as it was named.
        raw: Its bytes; nothing where they could not be read.
        uri: Its place as logs name it.
        key: The key under which what is told of it is kept; empty where nothing is kept.
        state: The state of the program when the key was made.
    """

    path: str
    raw: bytes | None
    uri: str
    key: str
    state: str


class Piece(NamedTuple):
    """What is told of a plan.

    Attributes:
        body: The text, or plain data, in the form asked for.
        grades: The grades of its findings.
        mistakes: Whether any of it could not be read.
    """

    body: Any
    grades: tuple[str, ...]
    mistakes: bool


class Unread(NamedTuple):
    """Why nothing is told of a plan, and the exit status of that."""

    message: str
    status: int
