"""The program in one page: text to trees, trees to a home, a home to facts, facts and rules to a review."""

from __future__ import annotations

from speclint.language.atoms import Mistake
from speclint.language.uses import trees_of
from speclint.measures.facts import Sheet
from speclint.measures.own_records import own_records
from speclint.model.build import build
from speclint.plan_text import PlanText as PlanText
from speclint.quantity import Quantity
from speclint.review.cautions import cautions
from speclint.review.judge import judge, without_superseded
from speclint.review.questions import questions
from speclint.review.taken import taken
from speclint.review.variance_rulings import with_variances
from speclint.review.variances import apply_variances
from speclint.rulebook.book import Rulebook
from speclint.ruling import Review
from speclint.units import System


def read_home(plan: PlanText, alternate: str = "") -> tuple[Sheet, tuple[Mistake, ...]]:
    """The facts of the home that a plan describes, and every mistake in the plan.

    Raises:
        LookupError: If the plan has no such alternate.
    """
    trees, mistakes = trees_of(plan.text, plan.name, plan.read)
    home, more = build(trees, plan.name, alternate)
    records, faults = own_records(home, plan.read)
    return Sheet(home, records), _in_order([*mistakes, *more, *faults])


def review(plan: PlanText, book: Rulebook, today: str, system: System = "imperial", alternate: str = "") -> Review:
    """The review of a plan.

    Args:
        plan: The plan.
        book: The rulebook.
        today: The day of the review, as an ISO date; variances expire by it.
        system: The units of the reader.
        alternate: Name of the alternate to review; the base plan where it is empty.

    Raises:
        LookupError: If the plan has no such alternate.
    """
    sheet, mistakes = read_home(plan, alternate)
    home = sheet.home
    trips, unanswered = judge(sheet, book, system)
    remaining, accepted, more = apply_variances(trips, home, book, today)
    remaining = with_variances(without_superseded(remaining, book), accepted, today)
    result = Review(
        plan.name,
        alternate,
        tuple(remaining),
        tuple(unanswered),
        tuple(questions(unanswered, home, system)),
        tuple(accepted),
        (*home.assumed, *taken(sheet)),
        cautions(remaining, book),
        _in_order([*mistakes, *more]),
        _site_line(sheet, system),
        len(book.rules),
    )
    sheet.let_go()
    return result


def _site_line(sheet: Sheet, system: System) -> str:
    """What the review knows of the lot, in one line."""
    site = sheet["site"]
    named = ("station", "decay hazard index", "decay hazard", "ground snow", "frost depth", "design rain")
    found = [(name, quantity) for name in named if isinstance(quantity := sheet.quantity(site, name), Quantity)]
    told = [f"{name} {quantity.shown(system)}" for name, quantity in found]
    warned = [
        note for name, quantity in found if name == "decay hazard index" for note in quantity.notes if "km" in note
    ]
    return "; ".join([*told, *warned])


def _in_order(mistakes: list[Mistake]) -> tuple[Mistake, ...]:
    return tuple(sorted(dict.fromkeys(mistakes), key=lambda m: (m.file, m.line, m.column)))
