"""A home with some settings changed, and whether a rule still trips there."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import replace
from typing import Any

from speclint.measures.facts import Facts, Sheet
from speclint.model.element import Given, settings_of
from speclint.rulebook.rule import GRADES, Grade, Rule
from speclint.rulebook.weigh import Weigher


def with_values(sheet: Sheet, values: Iterable[tuple[str, str, Any, str]]) -> Sheet:
    """The facts of a home in which some settings have other values.

    Args:
        sheet: The facts of the home as drawn.
        values: For each, the element, the setting, its value in SI, and the words that state it.
    """
    elements = dict(sheet.home.elements)
    for label, setting, value, text in values:
        element = elements[label]
        before = element.given.get(setting)
        given = {**element.given, setting: Given(before.span if before else element.place, text, "stated")}
        attribute = settings_of(type(element))[setting].attribute
        elements[label] = replace(element, **{attribute: value}, given=given)
    return Sheet(replace(sheet.home, elements=elements), sheet.records)


def cleared(rule: Rule, facts: Facts, down_to: Grade) -> bool:
    """Whether no requirement of a rule as grave as a grade or graver fails; what is not known is not cleared.

    A rule that is no longer about the element is cleared.
    """
    weigher = Weigher({limit.name: limit for limit in rule.limits})
    if rule.where is not None and weigher.condition(rule.where, facts).holds is False:
        return True
    least = GRADES.index(down_to)
    grave = (tier for tier in rule.tiers if GRADES.index(tier.grade) <= least)
    return all(weigher.condition(tier.condition, facts).holds is True for tier in grave)


def targets(rule: Rule, facts: Facts, part: Facts | None) -> Iterable[tuple[Facts, str]]:
    """The settings that a rule names as adjustable, each with the element that has it here.

    Args:
        rule: The rule.
        facts: The element of the finding.
        part: The part of it that decided, where the rule looks at every part.
    """
    for path in rule.adjust:
        setting, *ways = path.split(" of ")
        for start in (part, facts):
            found = _follow(start, ways)
            if found is not None and setting in settings_of(type(found.element)):
                yield found, setting
                break


def _follow(start: Facts | None, ways: list[str]) -> Facts | None:
    """The element at the end of “of roof of wall”, read from its end."""
    found: Any = start
    for way in reversed(ways):
        if not isinstance(found, Facts):
            return None
        found = found[way]
        if isinstance(found, tuple):
            found = found[0] if found else None
    return found if isinstance(found, Facts) else None
