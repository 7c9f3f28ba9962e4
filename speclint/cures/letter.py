"""Cures as lines for a reader and as an object for programs."""

from __future__ import annotations

import textwrap
from collections.abc import Sequence
from dataclasses import dataclass

from speclint.cures.change import YOURS, Change, NoCure
from speclint.cures.desk import Desk, Offer
from speclint.cures.effect import Effect, Effects
from speclint.cures.together import CureSet
from speclint.outputs.json_text import as_json
from speclint.outputs.letter import Line, Part
from speclint.ruling import Ruling, comments

CARE = (
    "A cure is a drawing change that clears a rule, not an approval: sizes, spans, fixings and supports stay with a "
    "licensed engineer and the local building official, and are never changed here."
)
MONEY = "without the cost of building it"
MOST_SHIFTS = 4


@dataclass(frozen=True, slots=True)
class Told:
    """A finding, its offers with their effects, or why there are none."""

    ruling: Ruling
    offers: tuple[tuple[Offer, Effect], ...]
    none: NoCure | None


@dataclass(frozen=True, slots=True)
class Cured:
    """All that is told of the cures of a plan.

    Attributes:
        plan: Its name.
        numbers: Its findings by the number under which a review tells them.
        told: The findings asked for, with their offers.
        whole: The changes that together clear the findings of a grade.
        effect: What these do besides.
        grade: That grade.
        years: Over how many years upkeep is summed.
        demo_rates: Whether its rates are invented for demonstration.
    """

    plan: str
    numbers: dict[int, tuple[Ruling, ...]]
    told: Sequence[Told]
    whole: CureSet
    effect: Effect
    grade: str
    years: int
    demo_rates: bool


MILDER = "still told as"


@dataclass(frozen=True, slots=True)
class Setting:
    """How the letter is set: its width, and over how many years upkeep is summed."""

    years: int
    width: int


def told_of(desk: Desk, effects: Effects, rulings: Sequence[Ruling]) -> list[Told]:
    """Findings with their offers, and what each offer does besides."""
    told = []
    for ruling in rulings:
        offers, none = desk.offers(ruling)
        weighed = tuple((offer, effects.of(desk.trial(offer.cure.changes))) for offer in offers)
        told.append(Told(ruling, weighed, none))
    return told


def numbered(findings: Sequence[Ruling]) -> dict[int, tuple[Ruling, ...]]:
    """The findings of a plan by the number under which a review tells them."""
    return {comment.number: comment.rulings for comment in comments(tuple(findings))}


def cure_lines(cured: Cured, width: int) -> list[Line]:
    """The letter of cures: each finding with its choices, then the set that clears the grave ones together."""
    how = Setting(cured.years, width)
    lines: list[Line] = [(Part("CURES", "title"), Part(f"  {cured.plan}", "title")), ()]
    if not cured.told:
        return [*lines, (Part("No findings: nothing to cure.", "good"),)]
    by_mark = {one.ruling.mark: one for one in cured.told}
    for number, rulings in cured.numbers.items():
        same = [by_mark[ruling.mark] for ruling in rulings if ruling.mark in by_mark]
        lines += _comment(number, same, how) if same else []
    lines += [(), *_together(cured.whole, cured.effect, cured.grade, how)]
    lines += [(), *_text(CARE, how, 2, "quiet")]
    if cured.demo_rates:
        lines += _text("Money is from invented rates for demonstration; give your own with --rates.", how, 2, "quiet")
    return lines


def _comment(number: int, same: list[Told], how: Setting) -> list[Line]:
    """One comment of the review with the cures of each of its elements, and the care they want, once."""
    first = same[0].ruling
    lines: list[Line] = [
        (
            Part(f"{number:>3}. ", "number"),
            Part(f"{first.grade:<7}", first.grade),
            Part(first.title or first.rule, "title"),
            Part(f"  [{first.rule}]", "quiet"),
        )
    ]
    for one in same:
        lines += _finding(one, how)
    cares = dict.fromkeys(offer.cure.care for one in same for offer, _ in one.offers if offer.cure.care)
    for care in cares:
        lines += _text(f"Care: {care}", how, 5, "quiet")
    return lines


def _finding(one: Told, how: Setting) -> list[Line]:
    ruling = one.ruling
    lines: list[Line] = [(Part(f"     {ruling.element}", "element"),)]
    for at, (offer, effect) in enumerate(one.offers, 1):
        lead = f"       choice {at}  " if len(one.offers) > 1 else "       change  "
        for row, (element, notes) in enumerate(_by_element(offer.cure.changes)):
            lines.append((Part(lead if row == 0 else " " * len(lead), "label"), Part(f"{element}: {notes}")))
        lines += _text("; ".join(_consequences(offer, ruling, effect, how)), how, len(lead), "quiet")
    if one.none is not None:
        lines += _text(f"no cure offered: {one.none.why}", how, 7, "quiet")
    return lines


def _by_element(changes: Sequence[Change]) -> list[tuple[str, str]]:
    notes: dict[str, list[str]] = {}
    for change in changes:
        now = f" (now {change.was})" if change.was else " (not stated now)"
        notes.setdefault(change.element, []).append(f"{change.note}{now}")
    return [(element, ", ".join(noted)) for element, noted in notes.items()]


def _consequences(offer: Offer, ruling: Ruling, effect: Effect, how: Setting) -> list[str]:
    """What else comes of an offer, in a few words each."""
    found = []
    more = len([mark for mark in offer.clears if mark != ruling.mark])
    if more:
        found.append(f"clears {more} more")
    found += brought_words(offer.brings)
    found += effect_words(effect, how)
    if offer.cure.unwritten:
        found.append(f"{offer.cure.unwritten}, {YOURS}")
    return found


def brought_words(brings: Sequence[Ruling], word: str = "brings") -> list[str]:
    """What a change brings, or leaves in a milder grade, each rule once."""
    by_rule: dict[tuple[str, str], list[str]] = {}
    for ruling in brings:
        by_rule.setdefault((ruling.grade, ruling.rule), []).append(ruling.element)
    return [f"{word} {grade}: {rule} on {', '.join(elements)}" for (grade, rule), elements in by_rule.items()]


def effect_words(effect: Effect, how: Setting) -> list[str]:
    """What changes do to weather, finish and money."""
    shifts = [f"{one.measure} of {one.element} {one.before} to {one.after}" for one in effect.shifts[:MOST_SHIFTS]]
    if len(effect.shifts) > MOST_SHIFTS:
        shifts.append(f"{len(effect.shifts) - MOST_SHIFTS} more measures change")
    if effect.upkeep is None:
        shifts.append("upkeep cannot be compared: other parts are coated")
    elif abs(effect.upkeep) >= 1:
        word = "saves" if effect.upkeep < 0 else "costs"
        shifts.append(f"upkeep of {how.years} years {word} $ {abs(effect.upkeep):,.0f}, {MONEY}")
    return shifts


def _together(whole: CureSet, effect: Effect, grade: str, how: Setting) -> list[Line]:
    named = "hold" if grade == "hold" else f"{grade} and graver"
    lines: list[Line] = [(Part(f"TOGETHER: changes that clear what can be cleared of grade {named}", "title"),)]
    if not whole.changes:
        lines += _text("no change to make", how, 2, "plain")
    for element, notes in _by_element(whole.changes):
        lines.append((Part("  "), Part(element, "element"), Part(f": {notes}")))
    count = len(whole.clears)
    lines += _text(
        "; ".join([f"clears {count} {'finding' if count == 1 else 'findings'}", *effect_words(effect, how)]),
        how,
        2,
        "good" if count else "plain",
    )
    lines += _text("; ".join(brought_words(whole.milder, MILDER)), how, 2, "plain")
    lines += _text("; ".join(brought_words(whole.brings)), how, 2, "quiet")
    for none in whole.left:
        lines += _text(f"left: {none.rule} on {none.element}: {none.why}", how, 2, "plain")
    return lines


def _text(text: str, how: Setting, indent: int, role: str) -> list[Line]:
    pad = " " * indent
    return [(Part(f"{pad}{row}", role),) for row in textwrap.wrap(text, how.width - indent)]  # type: ignore[arg-type]


def cure_object(cured: Cured) -> str:
    """The cures as an object: numbers of findings as in the letter, changes as a plan writes them."""
    number_of = {ruling.mark: number for number, rulings in cured.numbers.items() for ruling in rulings}
    found = {
        "plan": cured.plan,
        "years": cured.years,
        "demonstration rates": cured.demo_rates,
        "findings": [
            {
                "number": number_of[one.ruling.mark],
                "rule": one.ruling.rule,
                "element": one.ruling.element,
                "grade": one.ruling.grade,
                "choices": [_offer_object(offer, effect) for offer, effect in one.offers],
                "no cure": one.none.why if one.none else "",
            }
            for one in cured.told
        ],
        "together": {
            "grade": cured.grade,
            "changes": [_change_object(change) for change in cured.whole.changes],
            "clears": [ruling.mark for ruling in cured.whole.clears],
            "milder": [{"grade": ruling.grade, "finding": ruling.mark} for ruling in cured.whole.milder],
            "brings": [{"grade": ruling.grade, "finding": ruling.mark} for ruling in cured.whole.brings],
            "left": [{"finding": f"{none.rule} on {none.element}", "why": none.why} for none in cured.whole.left],
            **_effect_object(cured.effect),
        },
    }
    return as_json(found)


def _offer_object(offer: Offer, effect: Effect) -> dict[str, object]:
    return {
        "changes": [_change_object(change) for change in offer.cure.changes],
        "clears": list(offer.clears),
        "brings": [{"grade": ruling.grade, "finding": ruling.mark} for ruling in offer.brings],
        "edits": [edit._asdict() for edit in offer.cure.edits],
        "care": offer.cure.care,
        **_effect_object(effect),
    }


def _change_object(change: Change) -> dict[str, str]:
    return {"element": change.element, "setting": change.setting, "value": change.text, "was": change.was}


def _effect_object(effect: Effect) -> dict[str, object]:
    return {
        "measures": [
            {"element": one.element, "measure": one.measure, "before": one.before, "after": one.after}
            for one in effect.shifts
        ],
        "upkeep": None if effect.upkeep is None else round(effect.upkeep, 2),
    }
