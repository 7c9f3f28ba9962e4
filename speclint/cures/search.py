"""The least changes of the settings that a rule names, found by trying them."""

from __future__ import annotations

from collections.abc import Callable
from functools import lru_cache
from typing import Any

from speclint.cures.change import Change
from speclint.cures.trial import cleared, with_values
from speclint.cures.values import MOST_DOUBLINGS, choices, practical, read, same, steps
from speclint.measures.facts import Facts, Sheet
from speclint.model.element import settings_of
from speclint.rulebook.rule import Grade, Rule
from speclint.units import System

MOST_CHOICES = 2  # of one setting
Way = Callable[[int], str]


class Search:
    """Seeks what clears one finding.

    Args:
        sheet: The facts of the home as drawn.
        rules: The rule that trips, and those of the same cause that it stands before.
        about: The element on which it trips.
        down_to: The mildest grade of the rule that is to be cleared.
        system: The units in which the plan is written.
    """

    def __init__(self, sheet: Sheet, rules: list[Rule], about: str, down_to: Grade, system: System) -> None:
        self.sheet, self.rules, self.about, self.down_to, self.system = sheet, rules, about, down_to, system

    def alone(self, target: Facts, name: str) -> list[tuple[Change, ...]]:
        """The least changes of one setting that clear the rule: a number up or down, or up to two phrases."""
        trying = _Trying(self, [(target, name)])
        found = [text for way in trying.ways(0) if (text := _first(way, trying.clears))]
        if not found:
            found = [text for text in choices(settings_of(type(target.element))[name]) if trying.clears(text)]
        return [trying.changes(text) for text in found[:MOST_CHOICES]]

    def together(self, targets: list[tuple[Facts, str]]) -> list[tuple[Change, ...]]:
        """The least change that clears the rule where settings of one element and one value move together."""
        groups: dict[tuple[str, Any], list[tuple[Facts, str]]] = {}
        for target, name in targets:
            value = target[name]
            if isinstance(value, float | int):
                groups.setdefault((target.label, value), []).append((target, name))
        for group in groups.values():
            if len(group) < 2:
                continue
            trying = _Trying(self, group)
            for way in trying.ways(0):
                if text := _first(way, trying.clears):
                    return [trying.changes(text)]
        return []


class _Trying:
    """Settings that take the same text at once."""

    def __init__(self, search: Search, targets: list[tuple[Facts, str]]) -> None:
        self.search, self.targets = search, targets
        self.clears = lru_cache(maxsize=256)(self._clears)

    def ways(self, at: int) -> list[Way]:
        """The ways up and down of one of the settings."""
        target, name = self.targets[at]
        present = target[name]
        return steps(settings_of(type(target.element))[name], present, self._written(target, name), self.search.system)

    def _written(self, target: Facts, name: str) -> str:
        given = target.element.given.get(name)
        return given.text if given is not None and target[name] is not None else ""

    def _clears(self, text: str) -> bool:
        values = []
        for target, name in self.targets:
            setting = settings_of(type(target.element))[name]
            value, present = read(setting, text), target[name]
            if value is None or same(value, present) or not practical(setting, value, present):
                return False
            values.append((target.label, name, value, text))
        search = self.search
        facts = with_values(search.sheet, values)[search.about]
        return all(cleared(rule, facts, search.down_to) for rule in search.rules)

    def changes(self, text: str) -> tuple[Change, ...]:
        """The changes that give the settings a text."""
        found = []
        for target, name in self.targets:
            given = target.element.given.get(name)
            stated = given is not None and given.how != "assumed by speclint"
            found.append(Change(target.label, name, text, self._written(target, name) if stated else ""))
        return tuple(found)


def _first(way: Way, clears: Callable[[str], bool]) -> str:
    """The least number of increments that clears, sought by doubling and then by halves; empty where none does."""
    missed = 0
    for doubling in range(MOST_DOUBLINGS):
        by = 2**doubling
        if clears(way(by)):
            while by - missed > 1:
                middle = (by + missed) // 2
                if clears(way(middle)):
                    by = middle
                else:
                    missed = middle
            return way(by)
        missed = by
    return ""
