"""Facts and rules to rulings."""

from __future__ import annotations

import re
from functools import lru_cache
from typing import Any

from speclint.citation import Citation
from speclint.measures.facts import Facts, Sheet
from speclint.quantity import Missing, Quantity, shown
from speclint.rulebook.book import Rulebook
from speclint.rulebook.rule import GRADES, Basis, Rule
from speclint.rulebook.weigh import Answer, Side, Weigher
from speclint.ruling import Ruling, Unanswered
from speclint.span import Span
from speclint.units import System, length_within, show

_HOLE = re.compile(r"\{([^{}]*)\}")
_OTHER_WAY = {"below": "above", "above": "below", "past": "short of", "inside": "outside"}
_BELOW_ZERO = re.compile(rf"(?<!\S)-(\d[\d.,'\"/-]*(?: \d+/\d+\")?(?: (?:mm|cm|m))?) ({'|'.join(_OTHER_WAY)})\b")
# The unit in which numbers are told, and SI per unit: (imperial, metric).
TOLD: dict[str, tuple[tuple[str, float], tuple[str, float]]] = {
    "length":    (("in", 0.0254),       ("mm", 0.001)),
    "area":      (("ft2", 0.09290304),  ("m2", 1.0)),
    "pressure":  (("psf", 47.88025898), ("kPa", 1000.0)),
    "rain rate": (("in/h", 25.4),       ("mm/h", 1.0)),
    "speed":     (("mph", 0.44704),     ("m/s", 1.0)),
    "duration":  (("years", 365.25),    ("years", 365.25)),
    "drain":     (("ft2 at 1 in/h", 2.359737216), ("m2 at 1 mm/h", 1.0)),
    "flow":      (("gpm", 231 * 0.0254**3 / 60), ("l/s", 0.001)),
    "line load": (("lb/ft", 47.88025898 * 0.3048), ("kN/m", 1000.0)),
    "angle":     (("deg", 1.0),         ("deg", 1.0)),
    "percent":   (("%", 1.0),           ("%", 1.0)),
    "slope":     (("rise per run", 1.0), ("rise per run", 1.0)),
}  # fmt: skip


def judge(sheet: Sheet, book: Rulebook, system: System) -> tuple[list[Ruling], list[Unanswered]]:
    """The rulings that trip, and what lacks a fact, in the order of grade, rulebook and plan."""
    judge_of = book.judges
    trips: list[tuple[int, Ruling]] = []
    unanswered: list[tuple[int, Unanswered]] = []
    for element in sheet.home.elements.values():
        judge_element = judge_of.get(element.kind)
        if judge_element is None:
            continue
        facts = sheet[element.label]
        for index, tier, answer, where in judge_element(facts):
            rule = book.rules[index]
            if not rule.tiers:  # set aside by house limits
                continue
            if answer is False and where is True:
                trips.append((index, _Writer(rule, facts, system).finding(tier)))
                continue
            missing = book.lacking(index).missing(facts, tier)
            if missing:  # else the rule cannot apply to the element
                unanswered.append((index, Unanswered(rule, rule.tiers[tier].grade, facts.label, missing)))
    order = {grade: number for number, grade in enumerate(GRADES)}
    trips.sort(key=lambda row: (order[row[1].grade], row[0]))
    unanswered.sort(key=lambda row: row[0])
    return [ruling for _, ruling in trips], [ruling for _, ruling in unanswered]


def without_superseded(rulings: list[Ruling], book: Rulebook) -> list[Ruling]:
    """One cause gives one finding: what a tripping rule supersedes on the same element falls away.

    A milder finding never hides a graver one, and what a variance accepts is to be taken out before, so that it hides
    nothing.
    """
    order = {grade: number for number, grade in enumerate(GRADES)}
    hiding: dict[tuple[str, str], int] = {}
    for ruling in rulings:
        rule = book.named(ruling.rule)
        for other in rule.supersedes if rule is not None else ():
            key = (other, ruling.element)
            hiding[key] = min(hiding.get(key, len(GRADES)), order[ruling.grade])
    return [
        ruling for ruling in rulings if order[ruling.grade] < hiding.get((ruling.rule, ruling.element), len(GRADES))
    ]


def ruling_of(one: Unanswered) -> Ruling:
    """What lacks a fact, told in words."""
    rule = one.page
    return Ruling(
        rule=rule.name,
        grade=one.grade,
        outcome="not-stated",
        element=one.element,
        place=one.missing[0].place,
        message=_unanswered(one.missing),
        because="" if "{" in rule.because else rule.because,  # its numbers are not known yet
        basis=tuple([basis_line(basis) for basis in rule.basis]),
        defer=rule.defer,
        title=rule.title,
        missing=one.missing,
    )


class _Writer:
    """Writes the ruling of one rule on one element."""

    def __init__(self, rule: Rule, facts: Facts, system: System) -> None:
        self.rule, self.facts, self.system = rule, facts, system
        self.weigher = Weigher({limit.name: limit for limit in rule.limits})

    def finding(self, tier: int) -> Ruling:
        """The ruling that the rule trips."""
        answer = self.weigher.condition(self.rule.tiers[tier].condition, self.facts)
        stated, needed = self._sides(answer)
        unit, scale = self._unit(stated, needed)
        numbers = [side.value / scale if side and unit else None for side in (stated, needed)]
        margin = None
        if numbers[0] is not None and numbers[1] is not None:
            margin = numbers[0] - numbers[1] if answer.sign in (">=", ">") else numbers[1] - numbers[0]
        wanted = self._shown_bound(needed, answer.sign)
        not_stated = self._not_stated(tier) if "{missing}" in self.rule.says else []
        words = {
            "element": self.facts.label,
            "part": answer.part.label if answer.part else self.facts.label,
            "stated": self._shown_beside(stated, wanted if needed is not None else "", answer.sign),
            "needed": wanted,
            "missing": listed([name for name, _ in not_stated]),
            "margin": show(abs(margin) * scale, stated.dimension, self.system) if margin is not None and stated else "",
        }
        return Ruling(
            rule=self.rule.name,
            grade=self.rule.tiers[tier].grade,
            outcome="trips",
            element=self.facts.label,
            place=self._place(stated, answer),
            stated=words["stated"],
            needed=words["needed"],
            stated_number=_rounded(numbers[0]),
            needed_number=_rounded(numbers[1]),
            margin=_rounded(margin),
            unit=unit,
            message=self._message(words, answer),
            because=self.filled(self.rule.because, words),
            cures=tuple(self.filled(cure, words) for cure in self.rule.cures[:2]),
            basis=tuple([basis_line(basis) for basis in self._basis(needed)]),
            defer=self.rule.defer,
            title=self.rule.title,
            evidence=tuple(side.quantity for side in (stated, needed) if side and side.quantity),
            missing=tuple(dict.fromkeys([*answer.missing, *(one for _, lost in not_stated for one in lost)])),
        )

    def _not_stated(self, tier: int) -> list[tuple[str, tuple[Missing, ...]]]:
        """The facts that the rule wants stated and that are not, by name."""
        return self.weigher.not_stated(self.rule.tiers[tier].condition, self.facts)

    def _message(self, words: dict[str, str], answer: Answer) -> str:
        """What the rule says, and every further comparison that fails with it."""
        further = [
            f"{side.quantity.name} {self._shown(side)}, where {self._bound(other, side)} is wanted"
            for other in answer.also
            if (side := other.stated) is not None and side.quantity is not None
        ]
        return other_way_round("; ".join([self.filled(self.rule.says, words), *further]))

    def _sides(self, answer: Answer) -> tuple[Side | None, Side | None]:
        stated, needed = answer.stated, answer.needed
        if self.rule.stated is not None:
            stated = self.weigher.value(self.rule.stated, self.facts)[0] or stated
        if self.rule.needed is not None:
            needed = self.weigher.value(self.rule.needed, self.facts)[0] or needed
        return stated, needed

    def _unit(self, stated: Side | None, needed: Side | None) -> tuple[str, float]:
        if stated is None or needed is None:
            return "", 1.0
        if not all(isinstance(side.value, float | int) for side in (stated, needed)):
            return "", 1.0
        told = TOLD.get(stated.dimension)
        return told[0 if self.system == "imperial" else 1] if told else (stated.dimension, 1.0)

    def _shown(self, side: Side | None) -> str:
        if side is None or side.value is None:
            return "not stated"
        return shown(side.value, side.dimension, self.system, side.text)

    def _shown_beside(self, side: Side | None, wanted: str, sign: str) -> str:
        """What is stated; where what is wanted reads the same, on which side of it that is."""
        told = self._shown(side)
        if told == wanted and sign and side is not None and isinstance(side.value, float):
            return f"just {'under' if sign in ('>=', '>') else 'over'} {told}"
        return told

    def _shown_bound(self, side: Side | None, sign: str) -> str:
        """What is wanted, told so that keeping to what is told keeps the rule."""
        if side is not None and side.dimension == "length" and isinstance(side.value, float):
            side = side._replace(value=length_within(side.value, self.system, at_least=sign in (">=", ">")))
        return self._shown(side)

    def _bound(self, answer: Answer, stated: Side) -> str:
        """A bound in words, in the unit of what it bounds: a bare number against a share is told in percent."""
        needed = answer.needed
        told = self._shown_bound(needed, answer.sign)
        if needed is not None and stated.dimension == "share":
            told = shown(needed.value, "share", self.system, "")
        return f"at most {told}" if answer.sign in ("<=", "<") else f"{told} or more"

    def _place(self, stated: Side | None, answer: Answer) -> Span:
        if stated is not None and stated.quantity is not None and stated.quantity.place.line:
            return stated.quantity.place
        return answer.part.element.place if answer.part else self.facts.element.place

    def filled(self, template: str, words: dict[str, str]) -> str:
        """A text of the rule with its holes filled."""

        def word(hole: re.Match[str]) -> str:
            name = hole[1]
            if name in words:
                return words[name]
            limit = next((limit for limit in self.rule.limits if limit.name == name), None)
            if limit is not None:
                return shown(limit.value, limit.dimension, self.system, limit.text)
            found = self.facts.sheet.quantity(self.facts, name)
            return found.shown(self.system) if isinstance(found, Quantity) else "not stated"

        return _HOLE.sub(word, template) if "{" in template else template

    def _basis(self, needed: Side | None) -> tuple[Basis, ...]:
        """The basis of the limit that decided first, then those of the rule."""
        deciding = [limit.basis for limit in self.rule.limits if needed and limit.text and limit.text == needed.text]
        return tuple(dict.fromkeys([*deciding, *self.rule.basis]))


def other_way_round(message: str) -> str:
    """A message whose lengths below zero are told as the other way round: 2" above, and not -2" below."""
    return _BELOW_ZERO.sub(lambda found: f"{found[1]} {_OTHER_WAY[found[2]]}", message)


@lru_cache(maxsize=2048)
def basis_line(basis: Basis) -> str:
    """A basis as the reader is shown it: the publication, the place in it, and how far it was read."""
    return str(Citation(basis.key, basis.place, basis.standing))  # type: ignore[arg-type]


def listed(names: list[str]) -> str:
    """Names as a list in words: `a, b and c`."""
    return " and ".join([", ".join(names[:-1]), names[-1]] if len(names) > 1 else names)


def _unanswered(missing: tuple[Missing, ...]) -> str:
    wants = listed([f"{one.setting} of {one.element}" for one in missing])
    return f"cannot be judged: the plan does not state {wants}"


def _rounded(number: Any) -> float | None:
    return None if number is None else float(f"{number:.4g}")
