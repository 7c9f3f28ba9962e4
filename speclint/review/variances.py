"""Accepted deviations applied to rulings; what has expired stays a finding."""

from __future__ import annotations

from speclint.language.atoms import Mistake
from speclint.language.nearest import did_you_mean
from speclint.model.home import Home
from speclint.rulebook.book import Rulebook
from speclint.ruling import Accepted, Ruling


def apply_variances(
    rulings: list[Ruling], home: Home, book: Rulebook, today: str
) -> tuple[list[Ruling], list[Accepted], list[Mistake]]:
    """The rulings that remain, each variance with its state, and mistakes in variances.

    Args:
        rulings: The rulings that trip.
        home: The home, with its variances.
        book: The rulebook, for the names of rules.
        today: The day of the review, as an ISO date.
    """
    accepted: list[Accepted] = []
    mistakes: list[Mistake] = []
    remaining = list(rulings)
    for variance in home.variances:
        place = variance.place
        if book.named(variance.rule) is None:
            help = did_you_mean(variance.rule, [rule.name for rule in book.rules]) or "`speclint rulebook` lists them"
            says = f"the variance names “{variance.rule}”, which is no rule"
            mistakes.append(Mistake(place.file, place.line, place.column, place.length, says, help))
            continue
        if variance.element and variance.element not in home.elements:
            help = did_you_mean(variance.element, home.elements) or "write its kind and its name"
            says = f"the variance is on “{variance.element}”, which is not in the plan"
            mistakes.append(Mistake(place.file, place.line, place.column, place.length, says, help))
            continue
        covered = [
            ruling for ruling in remaining if ruling.rule == variance.rule and variance.element in ("", ruling.element)
        ]
        rule = book.named(variance.rule)
        if rule is not None and (
            not rule.variance or (not rule.hold_variance and any(ruling.grade == "hold" for ruling in covered))
        ):
            accepted.append(Accepted(variance, "not allowed", tuple(covered)))
            continue
        if not (variance.because and variance.accepted_by and variance.until):
            accepted.append(Accepted(variance, "not complete", tuple(covered)))  # what is missing is told as a mistake
            continue
        if variance.until < today:
            accepted.append(Accepted(variance, "expired", tuple(covered)))
            continue
        accepted.append(Accepted(variance, "in force" if covered else "not needed", tuple(covered)))
        remaining = [ruling for ruling in remaining if ruling not in covered]
    return remaining, accepted, mistakes
