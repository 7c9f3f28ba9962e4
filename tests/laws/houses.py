"""Small houses for the laws: one number is left open, and what the review says of a family of rules is taken out."""

from __future__ import annotations

from collections.abc import Iterable

from speclint.language.atoms import Atom, Statement
from speclint.language.parse import parse
from speclint.language.uses import CannotRead
from speclint.pipeline import PlanText, review
from speclint.rulebook.rule import GRADES
from speclint.units import NotAQuantity, read_quantity
from tests.specs.expected import DAY, SPECS, book

STATIONS = ("Marquette, MI", "Astoria, OR", "Boise, ID", "Mobile, AL")
PLANS = sorted(path.stem for path in SPECS.glob("*.plan"))


def read(used: str) -> str:
    """A file that an example plan uses."""
    try:
        return (SPECS / used).read_text(encoding="utf-8")
    except OSError:
        raise CannotRead("there is no such file") from None


def example(name: str) -> str:
    return (SPECS / f"{name}.plan").read_text(encoding="utf-8")


def said(text: str) -> set[tuple[str, str, str, str]]:
    """Every ruling of a plan, without its words and numbers."""
    result = review(PlanText(text, "a.plan", read), book(), DAY)
    trips = {(ruling.rule, ruling.element, ruling.grade, "trips") for ruling in result.rulings}
    return trips | {(one.rule, one.element, one.grade, "not-stated") for one in result.unanswered}


def gravest(text: str, family: Iterable[str]) -> dict[str, int]:
    """How grave the gravest finding of a family is for each element: 3 hold, 2 revise, 1 note."""
    wanted = set(family)
    assert wanted <= {rule.name for rule in book().rules}
    found: dict[str, int] = {}
    for rule, element, grade, outcome in said(text):
        if rule in wanted and outcome == "trips":
            found[element] = max(found.get(element, 0), len(GRADES) - GRADES.index(grade))
    return found


def worse(before: dict[str, int], after: dict[str, int]) -> dict[str, int]:
    """The elements of which something graver is said than before."""
    return {element: grave for element, grave in after.items() if grave > before.get(element, 0)}


def metric(text: str) -> str:
    """The same plan with every length in millimetres, or in metres where it is far."""
    rows = text.split("\n")
    for atom in sorted(_lengths(parse(text, "a.plan").statements), key=lambda a: (a.line, a.column), reverse=True):
        row, start = rows[atom.line - 1], atom.column - 1
        metres = read_quantity(atom.text).number
        written = f"{metres * 1000:.6f} mm" if metres < 1000 else f"{metres:.6f} m"
        rows[atom.line - 1] = row[:start] + written + row[start + len(atom.text) :]
    return "\n".join(rows)


def _lengths(statements: tuple[Statement, ...]) -> list[Atom]:
    found = [atom for one in statements for atom in one.atoms if atom.kind == "QUANTITY" and _is_length(atom.text)]
    return found + [atom for one in statements for atom in _lengths(one.body or ())]


def _is_length(text: str) -> bool:
    try:
        return read_quantity(text).dimension == "length"
    except NotAQuantity:
        return False
