"""What a review finds in variances: those whose day is past, that nothing needs, or that cover too much."""

from __future__ import annotations

from collections.abc import Iterable, Mapping

from speclint.review.own_rules import EXPIRED, NOT_NEEDED, TOO_BROAD, YEARS, OwnRule
from speclint.rulebook.rule import GRADES
from speclint.ruling import Accepted, Ruling

KIND, ON = "variance ", " on "  # of the label of a variance: the rule between them, the element behind


def variance_rulings(variances: Iterable[Accepted], today: str) -> list[Ruling]:
    """The findings on variances, in the order of the plan.

    Args:
        variances: The variances with their states.
        today: The day of the review, as an ISO date.
    """
    found: list[Ruling] = []
    for accepted in variances:
        until = accepted.variance.until
        if accepted.state == "expired":
            found.append(_ruling(EXPIRED, accepted, f"{_named(accepted)} was accepted until {until}", until, today))
        elif accepted.state == "not needed":
            says = f"nothing here needs the {_named(accepted)}"
            found.append(_ruling(NOT_NEEDED, accepted, says, "no finding", "a finding that it covers"))
        elif accepted.state == "in force":
            found += _too_broad(accepted, today)
    return found


def with_variances(rulings: Iterable[Ruling], variances: Iterable[Accepted], today: str) -> list[Ruling]:
    """Findings and those on variances together, in the order in which a review numbers them.

    Args:
        rulings: The findings that no variance accepts.
        variances: The variances with their states.
        today: The day of the review, as an ISO date.
    """
    return in_order([*rulings, *variance_rulings(variances, today)])


def _too_broad(accepted: Accepted, today: str) -> list[Ruling]:
    """The findings on a variance in force: at most one."""
    variance = accepted.variance
    latest = f"{int(today[:4]) + YEARS:04d}{today[4:]}"
    covered = list(dict.fromkeys(ruling.element for ruling in accepted.rulings))
    says: list[str] = []
    if not variance.element and len(covered) > 1:
        says.append(f"names no element and covers {len(covered)}: {', '.join(covered)}")
    if variance.until > latest:
        says.append(f"stands until {variance.until}, more than {YEARS} years from now")
    if not says:
        return []
    told = f"the {_named(accepted)} {'; it '.join(says)}"
    return [_ruling(TOO_BROAD, accepted, told, variance.until, f"one element, and no later than {latest}")]


def _named(accepted: Accepted) -> str:
    variance = accepted.variance
    return f"{KIND}{variance.rule}{ON}{variance.element}" if variance.element else f"{KIND}{variance.rule}"


def renamed_label(label: str, names: Mapping[str, str]) -> str:
    """What a finding is on, called anew: an element, or a variance on one.

    Args:
        label: What it is on.
        names: What to call elements, by their labels; others keep theirs.
    """
    variance, on, element = label.partition(ON)
    if label.startswith(KIND) and on:
        return f"{variance}{on}{names.get(element, element)}"
    return names.get(label, label)


def _ruling(rule: OwnRule, accepted: Accepted, says: str, stated: str, needed: str) -> Ruling:
    return Ruling(
        rule=rule.name,
        grade=rule.grade,
        outcome="trips",
        element=_named(accepted),
        place=accepted.variance.place,
        stated=stated,
        needed=needed,
        stated_number=None,
        needed_number=None,
        margin=None,
        unit="",
        message=says,
        because=rule.because,
        cures=rule.cures,
        basis=(rule.basis,),
        title=rule.title,
    )


def in_order(rulings: Iterable[Ruling]) -> list[Ruling]:
    """Rulings by grade, each grade in the order given, so that findings of one rule stand together."""
    found = sorted(rulings, key=lambda ruling: GRADES.index(ruling.grade))
    firsts = {key: at for at, key in reversed(list(enumerate((one.grade, one.rule) for one in found)))}
    return sorted(found, key=lambda ruling: firsts[ruling.grade, ruling.rule])
