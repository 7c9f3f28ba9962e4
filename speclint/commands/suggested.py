"""Changes that a review suggests: the cure of each finding for which there is one and no other to choose from."""

from __future__ import annotations

from speclint.cures.desk import Desk
from speclint.outputs.sarif import Change
from speclint.pipeline import PlanText
from speclint.rulebook.book import Rulebook
from speclint.units import System


def suggested(plan: PlanText, book: Rulebook, today: str, system: System) -> dict[str, Change]:
    """The change by the mark of the finding that it clears; a choice is left to people.

    Args:
        plan: The plan.
        book: The rulebook.
        today: The day of the review.
        system: The units in which the plan is written.
    """
    desk = Desk(plan, book, today, system)
    found: dict[str, Change] = {}
    for ruling in desk.findings.values():
        written = [offer.cure for offer in desk.offers(ruling)[0] if offer.cure.edits]
        if len(written) == 1:
            (cure,) = written
            found[ruling.mark] = Change(cure.title, tuple((edit.start, edit.end, edit.text) for edit in cure.edits))
    return found
