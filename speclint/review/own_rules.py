"""What a review finds in the notes of a plan rather than in its parts, of which the rulebook has pages."""

from __future__ import annotations

from typing import NamedTuple

from speclint.rulebook.rule import Grade

GROUP = "the plan itself"
YEARS = 10  # the longest that a deviation may stand unseen; ours


class OwnRule(NamedTuple):
    """Something that a review finds in the notes of a plan.

    Attributes:
        name: Its name, as findings carry it.
        grade: The grade of its findings.
        title: What it finds, in a few words.
        finds: What it finds.
        because: Why that matters.
        cures: How to cure it.
        basis: What it rests on.
    """

    name: str
    grade: Grade
    title: str
    finds: str
    because: str
    cures: tuple[str, ...]
    basis: str


EXPIRED = OwnRule(
    "variance-expired",
    "revise",
    "A variance whose day is past",
    "The day until which a deviation was accepted is past. What it covered is a finding again.",
    "A deviation is accepted for a time so that somebody looks again. After that day nobody has, and the house may be "
    "living with what was meant for one season.",
    (
        "cure what it covered, and take the variance out",
        "have it accepted anew by whoever answers for it, with a new reason and a new day",
    ),
    "ours: whoever accepts a deviation for a time is asked again after it",
)
NOT_NEEDED = OwnRule(
    "variance-not-needed",
    "note",
    "A variance that nothing needs",
    "The rule that the variance sets aside does not trip on what the variance names.",
    "A variance that covers nothing today covers in silence what is drawn tomorrow.",
    ("take the variance out",),
    "ours: a deviation is accepted for what is drawn, not ahead of it",
)
TOO_BROAD = OwnRule(
    "variance-too-broad",
    "note",
    "A variance that covers too much, or for too long",
    f"The variance names no element and covers more than one, or it stands for more than {YEARS} years.",
    "One reason seldom holds for every part of a house, and who accepted it will not be there for ever. Parts that are "
    "drawn later would be accepted unseen.",
    (
        "write one variance for each element, each with its own reason",
        "state a day on which the deviation is looked at again",
    ),
    f"ours: a deviation is accepted for one part, and for no more than {YEARS} years",
)
CANNOT_BE_READ = OwnRule(
    "plan-cannot-be-read",
    "hold",
    "A place of the plan that cannot be read",
    "A note of the plan has a word, a value or a mark that speclint does not know in its place.",
    "What is not read is not judged: the rest of the plan was reviewed without it.",
    ("write the note as the message says; `speclint explain` with the name of an element lists its settings",),
    "ours: a review says what it could not read",
)
NOT_STATED = OwnRule(
    "plan-does-not-say",
    "note",
    "A fact that the plan does not state",
    "Rules need a fact that the plan does not state, so they neither pass nor trip.",
    "A missing fact is never a pass. It is asked for, with the parts and the rules that wait for it.",
    ("state it, or write `unknown` to show that it was asked for and is open",),
    "ours: what is not stated is asked and not guessed",
)
OWN_RULES = (EXPIRED, NOT_NEEDED, TOO_BROAD, CANNOT_BE_READ, NOT_STATED)


def own_rule(name: str) -> OwnRule | None:
    """The own rule of that name, if there is one."""
    return next((rule for rule in OWN_RULES if rule.name == name), None)
