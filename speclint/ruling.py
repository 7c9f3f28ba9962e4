"""What a review says: rulings, questions, variances and the review as a whole. Plain frozen data."""

from __future__ import annotations

from itertools import groupby
from typing import Literal, NamedTuple

from speclint.language.atoms import Mistake
from speclint.model.home import Assumed, Variance
from speclint.quantity import Missing, Quantity
from speclint.rulebook.rule import Grade, Rule
from speclint.span import Span

Outcome = Literal["trips", "not-stated"]
State = Literal["in force", "expired", "not needed", "not allowed", "not complete"]

MOST_DECIDING = 2  # rules that are named beside a question


class Ruling(NamedTuple):
    """What one rule says of one element.

    `stated` and `needed` are as the reader writes them; `stated_number`, `needed_number` and `margin` are in `unit`,
    and nothing where the rule compares no sizes. A margin below zero is what is lacking.
    """

    rule: str
    grade: Grade
    outcome: Outcome
    element: str
    place: Span
    message: str
    because: str
    basis: tuple[str, ...]
    cures: tuple[str, ...] = ()
    stated: str = ""
    needed: str = ""
    stated_number: float | None = None
    needed_number: float | None = None
    margin: float | None = None
    unit: str = ""
    defer: str = ""
    title: str = ""
    evidence: tuple[Quantity, ...] = ()
    missing: tuple[Missing, ...] = ()

    @property
    def mark(self) -> str:
        """What names the finding from one revision of a plan to the next, wherever its lines have gone."""
        return f"{self.rule} on {self.element}"


class Unanswered(NamedTuple):
    """What one rule cannot say of one element, since facts are missing; the grade is that of not meeting it.

    A review has many of them, and most are read for their questions only; `ruling_of` tells one in words.
    """

    page: Rule
    grade: Grade
    element: str
    missing: tuple[Missing, ...]

    @property
    def rule(self) -> str:
        """The name of the rule."""
        return self.page.name


class Question(NamedTuple):
    """A setting that the plan does not state and that rules need.

    `grade` is the gravest that its answer can bring, and `deciding` the rules that would bring it.
    """

    setting: str
    kind: str
    elements: tuple[str, ...]
    rules: tuple[str, ...]
    place: Span
    text: str
    grade: Grade = "note"
    deciding: tuple[str, ...] = ()

    @property
    def stake(self) -> str:
        """What hangs on the answer: the gravest grade it can bring, and by which rules."""
        more = f" and {len(self.deciding) - MOST_DECIDING} more" if len(self.deciding) > MOST_DECIDING else ""
        return f"{self.grade}: {', '.join(self.deciding[:MOST_DECIDING])}{more}"


class Accepted(NamedTuple):
    """A variance of the plan, whether it is in force, and the rulings it covers."""

    variance: Variance
    state: State
    rulings: tuple[Ruling, ...]


class Review(NamedTuple):
    """The review of one plan."""

    plan: str
    alternate: str
    rulings: tuple[Ruling, ...]
    unanswered: tuple[Unanswered, ...]
    questions: tuple[Question, ...]
    variances: tuple[Accepted, ...]
    assumed: tuple[Assumed, ...]
    cautions: tuple[str, ...]
    mistakes: tuple[Mistake, ...]
    facts_line: str = ""
    rules_used: int = 0

    @property
    def holds(self) -> int:
        """How many rulings hold the release."""
        return sum(ruling.grade == "hold" for ruling in self.rulings)

    @property
    def holding_questions(self) -> int:
        """How many open questions have an answer that would hold the release."""
        return sum(question.grade == "hold" for question in self.questions)

    @property
    def open_questions(self) -> str:
        """How many questions are open, and how many of them may hold the release; empty where none is open."""
        count, holding = len(self.questions), self.holding_questions
        told = f"{count} open question{'s' if count != 1 else ''}"
        may = "which" if holding == count == 1 else f"{holding} of them"
        return (f"{told}, {may} may hold the release" if holding else told) if count else ""

    @property
    def accepted_holds(self) -> int:
        """How many rulings would hold the release, were they not accepted by variance."""
        covered = {ruling.mark: ruling for one in self.variances if one.state == "in force" for ruling in one.rulings}
        return sum(ruling.grade == "hold" for ruling in covered.values())


class Comment(NamedTuple):
    """The rulings of one rule in one grade, under the number by which a letter and its drawings call them."""

    number: int
    rulings: tuple[Ruling, ...]


def comments(rulings: tuple[Ruling, ...]) -> list[Comment]:
    """The rulings as numbered comments, in their order."""
    groups = groupby(rulings, key=lambda ruling: (ruling.grade, ruling.rule))
    return [Comment(at, tuple(same)) for at, (_, same) in enumerate(groups, 1)]
