"""The cautions that every output carries, and those that a finding calls for."""

from __future__ import annotations

from speclint.rulebook.book import Rulebook
from speclint.ruling import Ruling

ALWAYS = (
    "This review is about durability only. It is not a permit review, a structural calculation or a fire review, and "
    "it approves nothing: the local code and licensed practice decide.",
    "A rule that is silent proves no dryness. What the plan does not state is listed under the questions; what was "
    "assumed is listed under the assumptions.",
    "A basis tells how far its source was read. Figures marked ours, memory or common practice are judgement, and can "
    "be changed with a file of house limits.",
)


def cautions(rulings: list[Ruling], book: Rulebook) -> tuple[str, ...]:
    """The standing cautions, then one for each kind of licensed practice that findings call for."""
    called = dict.fromkeys(ruling.defer for ruling in rulings if ruling.defer)
    aside = [f"Set aside by house limits: {rule.name} ({rule.says})." for rule in book.rules if not rule.tiers]
    return (*ALWAYS, *aside, *called)
