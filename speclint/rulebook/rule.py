"""A rule as the rulebook holds it."""

from __future__ import annotations

from typing import Any, Literal, NamedTuple

Grade = Literal["hold", "revise", "note"]
GRADES: tuple[Grade, ...] = ("hold", "revise", "note")

# A checked expression: a tuple whose first member says what it is. See `check` for the forms.
Expression = tuple[Any, ...]


class Basis(NamedTuple):
    """What a rule or a limit rests on."""

    key: str
    place: str
    standing: str


class Limit(NamedTuple):
    """A named threshold of a rule: SI value, dimension, the words that gave it, its basis, and whether it is kept to
    the letter, as in rules that allow no variance."""

    name: str
    value: float
    dimension: str
    text: str
    basis: Basis
    exact: bool = False


class Tier(NamedTuple):
    """One requirement of a rule and the grade of not meeting it."""

    condition: Expression
    grade: Grade


class Rule(NamedTuple):
    """One rule: what it is about, what it requires, and what it tells."""

    name: str
    group: str
    kinds: tuple[str, ...]
    where: Expression | None
    tiers: tuple[Tier, ...]
    says: str
    because: str
    cures: tuple[str, ...]
    basis: tuple[Basis, ...]
    page: str
    title: str = ""
    limits: tuple[Limit, ...] = ()
    stated: Expression | None = None
    needed: Expression | None = None
    adjust: tuple[str, ...] = ()
    defer: str = ""
    variance: bool = True
    hold_variance: bool = True
    supersedes: tuple[str, ...] = ()
    dimensions: tuple[tuple[str, str], ...] = ()


class PageTrouble(NamedTuple):
    """Something wrong in a rule page or a file of limits, with its place."""

    file: str
    line: int
    column: int
    message: str
    help: str = ""

    def __str__(self) -> str:
        return f"{self.file}:{self.line}:{self.column}: {self.message}" + (f" ({self.help})" if self.help else "")


class BrokenRulebook(Exception):
    """Rule pages that cannot be used; carries every trouble found."""

    def __init__(self, troubles: list[PageTrouble]) -> None:
        super().__init__("\n".join(str(trouble) for trouble in troubles))
        self.troubles = troubles
