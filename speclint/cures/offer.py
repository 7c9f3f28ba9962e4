"""Offers: for a finding, the smallest changes that clear it."""

from __future__ import annotations

from speclint.cures.change import Change, Cure
from speclint.cures.desk import Desk
from speclint.pipeline import PlanText
from speclint.rulebook.book import Rulebook
from speclint.ruling import Ruling
from speclint.units import System


def offers(plan: PlanText, book: Rulebook, today: str, system: System, ruling: Ruling) -> list[Cure]:
    """The cures of one finding that can be written into the plan and raise no hold, the best first.

    Args:
        plan: The plan.
        book: The rulebook.
        today: The day of the review.
        system: The units in which the plan is written.
        ruling: The finding.
    """
    found, _ = Desk(plan, book, today, system).offers(ruling)
    return [offer.cure for offer in found if offer.cure.edits]


__all__ = ["Change", "Cure", "offers"]
