"""`speclint cure`."""

from __future__ import annotations

import argparse
import os
import shlex
from collections.abc import Sequence

from speclint.commands.common import put, rendered, rulebook_of, tell, tell_mistakes, units_of, width
from speclint.commands.files import PlanFile, Refused, demo_plan, open_plan, open_to_rewrite, refuse_two
from speclint.commands.upkeep import day_of, rates_of
from speclint.cures.change import YOURS, Changes
from speclint.cures.desk import Desk, Offer
from speclint.cures.effect import Effects
from speclint.cures.gather import Gathered
from speclint.cures.letter import MILDER, Cured, brought_words, cure_lines, cure_object, numbered, told_of
from speclint.cures.together import CureSet, cure_set
from speclint.cures.write import alternate_text
from speclint.language.edit import CannotEdit, with_edits
from speclint.language.nearest import did_you_mean
from speclint.pipeline import PlanText
from speclint.ruling import Ruling

YEARS = 30


def run(stated: argparse.Namespace) -> int:
    """Offer cures for the findings of a plan, and write them where that is asked for."""
    _refuse_misplaced(stated)
    writes = stated.write or stated.as_alternate is not None
    file = _file(stated) if writes else None
    plan = _plan(stated, file)
    desk = Desk(plan, rulebook_of(stated), day_of(stated.today).isoformat(), units_of(stated, plan.text))
    tell_mistakes(plan.name, desk.mistakes)
    if desk.mistakes and writes:
        raise Refused(f"{plan.name}: nothing is written while the plan cannot be read whole", 2)
    asked = _asked(desk, stated.words)
    if file is not None:
        return _write(file, desk, stated, asked)
    rates = rates_of(stated.rates)
    effects = Effects(desk.sheet, rates, YEARS, desk.system)
    told = told_of(desk, effects, asked)
    whole = cure_set(desk, stated.down_to)
    effect = effects.of(desk.trial(whole.changes))
    numbers = numbered(desk.rulings)
    cured = Cured(plan.name, numbers, told, whole, effect, stated.down_to, YEARS, not stated.rates)
    put(cure_object(cured) if stated.json else rendered(cure_lines(cured, width()), stated))
    return 2 if desk.mistakes else 0


def _refuse_misplaced(stated: argparse.Namespace) -> None:
    """Say it plainly where a rule stands before the plan or is left out, or where a plan stands for an alternate."""
    plan, words = stated.plan, stated.words
    if stated.choice != 1 and not words and not (stated.demo and plan):
        raise Refused("--choice goes with a rule: name the rule, and the element if it trips on several", 3)
    if plan and words and os.path.isfile(words[0]) and rulebook_of(stated).named(plan) is not None:
        meant = shlex.join(["speclint", "cure", words[0], plan, *words[1:]])
        raise Refused(f"the plan comes first, then the rule: {meant}", 3)
    if plan is None and not stated.demo and stated.as_alternate and os.path.isfile(stated.as_alternate):
        raise Refused(f"--as-alternate wants a name before the plan: --as-alternate NAME {stated.as_alternate}", 3)


def _file(stated: argparse.Namespace) -> PlanFile:
    if stated.demo or stated.plan in (None, "-"):
        raise Refused("cures are written into a plan file; name one", 3)
    return open_to_rewrite(stated.plan)


def _plan(stated: argparse.Namespace, file: PlanFile | None) -> PlanText:
    if stated.demo:
        refuse_two(stated.plan, alone=False)
        if stated.plan is not None:
            stated.words = [stated.plan, *stated.words]
        return demo_plan()
    if stated.plan is None:
        raise Refused("name a plan, or ask for --demo", 3)
    plan = open_plan(stated.plan)
    if file is not None and plan.text != file.text:
        raise Refused(f"{stated.plan}: was changed while it was read; try again", 3)
    return plan


def _asked(desk: Desk, words: Sequence[str]) -> list[Ruling]:
    """The findings asked for: all, those of a rule, or the one of a rule on an element.

    Raises:
        Refused: If the plan has no such finding.
    """
    found = [ruling for ruling in desk.rulings if ruling.mark in desk.findings]
    if not words:
        return found
    rule, element = words[0], " ".join(words[1:])
    if desk.book.named(rule) is None:
        near = did_you_mean(rule, [one.rule for one in found]) or "`speclint rulebook` lists the rules"
        raise Refused(f"there is no rule “{rule}” ({near})", 3)
    same = [one for one in found if one.rule == rule]
    chosen = [one for one in same if element in ("", one.element)]
    if not chosen:
        on = f" on {element}" if element else ""
        trips = f"; it trips on {', '.join(one.element for one in same)}" if same else ""
        accepted = [one.mark for one in desk.accepted if one.rule == rule and element in ("", one.element)]
        if accepted:
            raise Refused(f"{desk.plan.name}: {' and '.join(accepted)}: accepted by variance, so nothing is changed", 3)
        raise Refused(f"{desk.plan.name}: {rule} does not trip{on}{trips}", 3)
    return chosen


def _write(file: PlanFile, desk: Desk, stated: argparse.Namespace, asked: list[Ruling]) -> int:
    """Write the cures of the findings asked for, or the set that clears the grave ones."""
    chosen, left = _chosen(desk, stated, asked)
    changes = desk.widened(chosen)
    if not changes:
        tell(f"{desk.plan.name}: there is nothing to write{left}")
        return 0
    file.write(_text(desk, stated.as_alternate, changes), "cured")
    for change in changes:
        put(f"{change}\n")
    after = desk.found_with(changes)
    for words in (*brought_words(desk.milder(after), MILDER), *brought_words(desk.brought(after))):
        tell(f"{desk.plan.name}: {words}")
    if left:
        tell(f"{desk.plan.name}: not all is cured{left}")
    cares = {offer.cure.care for ruling in asked for offer in desk.offers(ruling)[0] if offer.cure.care}
    if stated.words:
        for care in sorted(cares):
            tell(f"Care: {care}")
    return 0


def _chosen(desk: Desk, stated: argparse.Namespace, asked: list[Ruling]) -> tuple[Changes, str]:
    """The changes to write, and what is left, in words."""
    beside = stated.as_alternate is not None
    if not stated.words:
        whole: CureSet = cure_set(desk, stated.down_to, beside)
        return whole.changes, "".join(f"\n  {none.rule} on {none.element}: {none.why}" for none in whole.left)
    gathered = Gathered(desk)
    left = ""
    for ruling in asked:
        offers, none = desk.offers(ruling)
        if none is None:
            why = gathered.take(ruling.mark, _choice(offers, stated.choice, ruling, beside).cure.changes)
        else:
            why = none.why
        left += f"\n  {ruling.mark}: {why}" if why else ""
    return gathered.changes, left


def _choice(offers: list[Offer], number: int, ruling: Ruling, beside: bool) -> Offer:
    if not 1 <= number <= len(offers):
        raise Refused(f"--choice {number}: {ruling.mark} has {len(offers)} to choose from", 3)
    offer = offers[number - 1]
    if offer.cure.unwritten and not beside:
        raise Refused(f"{offer.cure.title}: {offer.cure.unwritten}, {YOURS}", 3)
    return offer


def _text(desk: Desk, alternate: str | None, changes: Changes) -> str:
    """The text of the plan with the changes in it, or beside it as an alternate.

    Raises:
        Refused: If they cannot be written.
    """
    if alternate is not None:
        return _with_alternate(desk, alternate, changes)
    try:
        return with_edits(desk.plan.text, desk.writer.edits(changes))
    except CannotEdit as trouble:
        raise Refused(f"{desk.plan.name}: {trouble}; nothing is written", 3) from trouble


def _with_alternate(desk: Desk, name: str, changes: Changes) -> str:
    """The text of the plan with the changes as an alternate at its end.

    Raises:
        Refused: If the name cannot be that of a new alternate.
    """
    if not name.strip() or not name.isprintable() or set(name) & set('"{};#'):
        raise Refused(f"“{name}” cannot be the name of an alternate: use plain words", 3)
    if name in desk.sheet.home.alternates:
        raise Refused(f"{desk.plan.name}: the alternate “{name}” is already there", 3)
    ends = desk.writer.places.line_end
    text = desk.plan.text
    gap = "" if text.endswith(("\n", "\r")) or not text else ends
    return f"{text}{gap}{ends}{alternate_text(name, changes, ends)}"
