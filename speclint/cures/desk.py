"""A plan on the desk: its facts, its findings, and what a change does to them."""

from __future__ import annotations

from collections.abc import Sequence
from copy import copy
from dataclasses import dataclass, replace

from speclint.cures.change import Change, Changes, Cure, NoCure
from speclint.cures.left import refusal
from speclint.cures.search import Search
from speclint.cures.trial import targets, with_values
from speclint.cures.values import read
from speclint.cures.write import Writer
from speclint.language.edit import CannotEdit, Edit
from speclint.measures.facts import Facts, Sheet
from speclint.model.element import settings_of
from speclint.pipeline import PlanText, read_home
from speclint.review.judge import judge, listed, without_superseded
from speclint.review.variance_rulings import with_variances
from speclint.review.variances import apply_variances
from speclint.rulebook.book import Rulebook
from speclint.rulebook.rule import GRADES, Grade, Rule
from speclint.rulebook.weigh import Weigher
from speclint.ruling import Accepted, Ruling
from speclint.span import Span
from speclint.units import System

MOST_OFFERS = 4
Findings = dict[str, Ruling]


@dataclass(frozen=True, slots=True)
class Offer:
    """A cure and what else comes of it.

    Attributes:
        cure: The cure.
        clears: Every finding that is gone with it, by mark.
        brings: Every finding that comes with it or grows graver.
    """

    cure: Cure
    clears: tuple[str, ...]
    brings: tuple[Ruling, ...]


class Desk:
    """A plan on the desk.

    Args:
        plan: The plan.
        book: The rulebook.
        today: The day of the review.
        system: The units in which the plan is written.
    """

    def __init__(self, plan: PlanText, book: Rulebook, today: str, system: System) -> None:
        self.plan, self.book, self.today, self.system = plan, book, today, system
        self.sheet, self.mistakes = read_home(plan)
        self.writer = Writer(plan)
        self.findings, accepted = self._findings(self.sheet)
        self.rulings = with_variances(self.findings.values(), accepted, today)
        self.accepted = [ruling for one in accepted if one.state == "in force" for ruling in one.rulings]
        self.apart = frozenset(
            (quantity.element, quantity.name) for ruling in self.accepted for quantity in ruling.evidence
        )  # the settings on which accepted findings rest

    def trial(self, changes: Sequence[Change]) -> Sheet:
        """The facts of the home with changes made."""
        values = []
        for change in self.widened(changes):
            setting = settings_of(type(self.sheet.home.elements[change.element]))[change.setting]
            values.append((change.element, change.setting, read(setting, change.text), change.text))
        return with_values(self.sheet, values)

    def widened(self, changes: Sequence[Change]) -> Changes:
        """The changes, each told also of the elements that the plan states in the same block, which it changes too."""
        elements = self.sheet.home.elements
        return tuple(
            replace(change, element=label)
            for change in changes
            for label, element in elements.items()
            if element.place == elements[change.element].place
        )

    def written_at(self, change: Change) -> tuple[Span, str]:
        """What of the plan a change writes: a block, by the place of its elements, and a setting in it."""
        return self.sheet.home.elements[change.element].place, change.setting

    def after(self, changes: Sequence[Change]) -> Desk:
        """The desk with changes made to the home, though not to the text, in which edits are still counted."""
        desk = copy(self)
        desk.sheet = self.trial(changes)
        desk.findings, _ = self._findings(desk.sheet)
        return desk

    def found_with(self, changes: Sequence[Change]) -> Findings:
        """The findings of the home with changes made, by mark."""
        return self._findings(self.trial(changes))[0]

    def _findings(self, sheet: Sheet) -> tuple[Findings, list[Accepted]]:
        trips, _ = judge(sheet, self.book, self.system)
        remaining, accepted, _ = apply_variances(trips, sheet.home, self.book, self.today)
        return {ruling.mark: ruling for ruling in without_superseded(remaining, self.book)}, accepted

    def brought(self, after: Findings) -> tuple[Ruling, ...]:
        """The findings that were not there before, or have grown graver."""
        return tuple(
            ruling
            for mark, ruling in after.items()
            if mark not in self.findings or GRADES.index(ruling.grade) < GRADES.index(self.findings[mark].grade)
        )

    def milder(self, after: Findings) -> tuple[Ruling, ...]:
        """The findings that are still there, in a milder grade."""
        return tuple(
            ruling
            for mark, ruling in after.items()
            if mark in self.findings and GRADES.index(ruling.grade) > GRADES.index(self.findings[mark].grade)
        )

    def offers(
        self, ruling: Ruling, down_to: Grade = "note", completed: bool = True
    ) -> tuple[list[Offer], NoCure | None]:
        """The cures of a finding that raise no hold, the best first; where there are none, the reason.

        Args:
            ruling: The finding.
            down_to: The mildest grade of its rule that is to be cleared.
            completed: Whether a change that raises a hold is offered together with a change that clears that.
        """
        rule, facts = self.book.named(ruling.rule), self.sheet.facts.get(ruling.element)
        if rule is None or facts is None:
            return [], NoCure(ruling.rule, ruling.element, "it is settled in the notes of the plan themselves")
        free, refused = self._free(rule, facts)
        tried = self._tried([rule, *self._same_cause(rule, facts)], ruling.element, free, down_to)
        tried = tried or self._tried([rule], ruling.element, free, down_to)
        found: list[Offer] = []
        whys = [f"{_called(_wanted(names, ruling))}: {why}" for why, names in refused.items()]
        for changes in tried:
            offer = self._weighed(rule, ruling, changes)
            grave = [other for other in offer.brings if other.grade == "hold"]
            if grave and completed and (whole := self._completed(changes, grave)):
                found.append(self._weighed(rule, ruling, whole))
            elif grave:
                whys.append(f"“{changes[0].note}” of {changes[0].element}: would raise {grave[0].mark}")
            else:
                found.append(offer)
        found.sort(key=lambda offer: (not offer.cure.edits, len(offer.brings)))
        if found:
            return found[:MOST_OFFERS], None
        why = "; ".join(dict.fromkeys(whys)) or "no small change of a setting that the rule names clears it"
        return [], NoCure(rule.name, ruling.element, why)

    def _completed(self, changes: Changes, raised: list[Ruling]) -> Changes:
        """Changes with those that clear the holds that they raise; nothing where that cannot be had."""
        whole = changes
        for hold in raised:
            now = self.after(whole)
            if hold.mark not in now.findings:
                continue
            further, _ = now.offers(now.findings[hold.mark], "hold", completed=False)
            if not further:
                return ()
            whole += further[0].cure.changes
        settings = {self.written_at(change) for change in whole}
        raises = any(one.grade == "hold" for one in self.brought(self.found_with(whole)))
        return () if raises or len(settings) < len(whole) else whole

    def _tried(self, rules: list[Rule], about: str, free: list[tuple[Facts, str]], down_to: Grade) -> list[Changes]:
        search = Search(self.sheet, rules, about, down_to, self.system)
        alone = [changes for target, name in free for changes in search.alone(target, name)]
        return alone or search.together(free)

    def _same_cause(self, rule: Rule, facts: Facts) -> list[Rule]:
        """The rules about the element that a rule stands before: to clear it and raise them would be no cure."""
        others = [self.book.named(name) for name in rule.supersedes]
        return [other for other in others if other is not None and facts.element.kind in other.kinds and other.tiers]

    def _free(self, rule: Rule, facts: Facts) -> tuple[list[tuple[Facts, str]], dict[str, list[tuple[str, str]]]]:
        """The settings that may be changed for a rule, and why others may not, by element and name."""
        free: list[tuple[Facts, str]] = []
        refused: dict[str, list[tuple[str, str]]] = {}
        for target, setting in targets(rule, facts, self._part(rule, facts)):
            why = refusal(target.element.kind, setting)
            if not why and (target.label, setting) in self.apart:
                why = "a finding on it is accepted by variance"
            if why:
                refused.setdefault(why, []).append((target.label, setting))
            else:
                free.append((target, setting))
        return free, refused

    def _part(self, rule: Rule, facts: Facts) -> Facts | None:
        """The part of an element that decided, where the rule looks at several."""
        weigher = Weigher({limit.name: limit for limit in rule.limits})
        answers = (weigher.condition(tier.condition, facts) for tier in rule.tiers)
        return next((answer.part for answer in answers if answer.holds is False), None)

    def _weighed(self, rule: Rule, ruling: Ruling, changes: Changes) -> Offer:
        after = self.found_with(changes)
        gone = tuple(mark for mark in self.findings if mark not in after)
        edits, unwritten = self._edits(changes)
        cure = Cure(rule.name, ruling.element, changes, edits, rule.defer, unwritten)
        return Offer(cure, gone, self.brought(after))

    def _edits(self, changes: Sequence[Change]) -> tuple[tuple[Edit, ...], str]:
        """The edits that make changes in the text of the plan, or why they cannot be made there."""
        try:
            return tuple(self.writer.edits(changes)), ""
        except CannotEdit as trouble:
            return (), str(trouble)


def _wanted(names: list[tuple[str, str]], ruling: Ruling) -> list[tuple[str, str]]:
    """Of settings those that the plan leaves out, where the finding is that it does."""
    left_out = {(one.element, one.setting) for one in ruling.missing}
    return [name for name in names if name in left_out] or names


def _called(names: list[tuple[str, str]]) -> str:
    """Settings by name, and the elements they are of."""
    of_elements = dict.fromkeys(element for element, _ in names)
    return listed([f"{listed([f'“{name}”' for of, name in names if of == one])} of {one}" for one in of_elements])
