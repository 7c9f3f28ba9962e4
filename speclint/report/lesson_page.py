"""The page of a lesson: principle, a case drawn and reckoned, rules, an exercise without its key, questions."""

from __future__ import annotations

import datetime
import re
from collections.abc import Callable
from dataclasses import dataclass
from typing import Any

from speclint.drawing.pins import pins_of
from speclint.measures.facts import Facts, Sheet
from speclint.measures.register import measures
from speclint.model.element import settings_of
from speclint.model.kinds import KINDS
from speclint.outputs.letter import text_of
from speclint.outputs.unfold import unfold
from speclint.outputs.upkeep import Forecast
from speclint.pipeline import PlanText, read_home, review
from speclint.quantity import Quantity
from speclint.report.build import templates
from speclint.report.lesson import BASE, Lesson, UnusableLesson, answers, changed, exercise, flawless, no_file
from speclint.report.lesson_pictures import Picture, Scene, apart, picture, reading_of
from speclint.report.taught import GRADES, linked, taught
from speclint.rulebook.book import Rulebook
from speclint.rulebook.rule import Rule
from speclint.ruling import Comment, Review, comments
from speclint.units import System

_LINE = re.compile(r"\b(stated|typical), line \d+")
_HOLE = re.compile(r"\{(sound|faulty) ([a-z ]+?) of ([^{}]+)\}")


@dataclass(frozen=True, slots=True)
class _House:
    """A house of a lesson: its facts, its review, and what the review has on the rules of the lesson."""

    sheet: Sheet
    told: Review
    held: list[Comment]


def lesson_page(
    lesson: Lesson,
    book: Rulebook,
    forecast: Callable[[Sheet], Forecast],
    today: datetime.date,
    system: System,
    own: PlanText | None = None,
) -> str:
    """A lesson as one HTML page that asks the network for nothing; it does not hold the key of its exercise.

    Args:
        lesson: The lesson.
        book: The rulebook.
        forecast: The upkeep of a home.
        today: The day of the lesson.
        system: The units of the reader.
        own: A plan of the trainee's, which is drawn and reckoned too.
    """

    def house(plan: PlanText) -> _House:
        told = review(plan, book, today.isoformat(), system)
        kept = tuple(ruling for ruling in told.rulings if ruling.rule in lesson.rules)
        return _House(read_home(plan)[0], told, comments(kept))

    sound = house(PlanText(flawless(), BASE, no_file))
    faulty = house(PlanText(changed(lesson, lesson.shows), BASE, no_file))
    scene = Scene(forecast, today, system)
    others = [one for one in comments(faulty.told.rulings) if one.rulings[0].rule not in lesson.rules]
    key = answers(lesson, book, today.isoformat(), system)
    told: dict[str, Any] = {
        "lesson": lesson,
        "principle": [linked(text, book, lesson.rules) for text in lesson.principle],
        "reading": [linked(_filled(text, sound, faulty, system), book, lesson.rules) for text in lesson.reading],
        "check": [tuple(_filled(text, sound, faulty, system) for text in pair) for pair in lesson.check],
        "legend": reading_of(lesson.draws),
        "change": _change(flawless(), changed(lesson, lesson.shows)),
        "pictures": _pairs(lesson, sound, faulty, scene),
        "held": _findings(faulty),
        "others": [_title(one) for one in others],
        "table": [_row(sound.sheet, faulty.sheet, measure, label, system) for measure, label in lesson.numbers],
        "numbers": [_LINE.sub(r"\1", text) for text in _worked(lesson, faulty.sheet, system)],
        "own": _own(lesson, house(own), own, scene) if own is not None else None,
        "rules": [taught(_named(name, book), book, lesson.rules, system) for name in lesson.rules],
        "grades": GRADES,
        "exercise": exercise(lesson),
        "key": {"comments": len(key), "places": len({r.element for one in key for r in one.rulings})},
    }
    return str(templates().get_template("lesson.html").render(**told))


def _named(name: str, book: Rulebook) -> Rule:
    rule = book.named(name)
    if rule is None:
        raise UnusableLesson(f"wanted the name of a rule; got {name}")
    return rule


def _filled(text: str, sound: _House, faulty: _House, system: System) -> str:
    """A text of a lesson with its holes, `{sound MEASURE of ELEMENT}`, filled in the reader's units.

    Raises:
        UnusableLesson: If a house does not have the number.
    """

    def number(hole: re.Match[str]) -> str:
        sheet = (sound if hole[1] == "sound" else faulty).sheet
        facts = sheet.facts.get(hole[3])
        found = sheet.quantity(facts, hole[2]) if facts is not None else None
        if not isinstance(found, Quantity):
            raise UnusableLesson(f"wanted a number of the house; got {hole[0]}")
        return found.shown(system)

    return _HOLE.sub(number, text)


def _title(comment: Comment) -> str:
    first = comment.rulings[0]
    return first.title or first.rule


def _findings(house: _House) -> list[dict[str, Any]]:
    """What the review has against a house, as far as the lesson teaches it."""
    return [
        {
            "number": comment.number,
            "title": _title(comment),
            "rule": comment.rulings[0].rule,
            "grade": GRADES[comment.rulings[0].grade],
            "hold": comment.rulings[0].grade == "hold",
            "messages": [ruling.message for ruling in comment.rulings],
            "cures": list(dict.fromkeys(cure for ruling in comment.rulings for cure in ruling.cures)),
        }
        for comment in house.held
    ]


def _change(sound: str, faulty: str) -> tuple[str, str]:
    """The lines of two plans that differ, as the one and as the other has them, in the blocks that they are of."""
    from difflib import SequenceMatcher

    before, after = sound.splitlines(), faulty.splitlines()
    codes = SequenceMatcher(None, before, after, autojunk=False).get_opcodes()
    had = [at for word, start, end, _, _ in codes if word != "equal" for at in range(start, end)]
    has = [at for word, _, _, start, end in codes if word != "equal" for at in range(start, end)]
    return _in_their_blocks(before, had), _in_their_blocks(after, has) or "(left out)"


def _in_their_blocks(rows: list[str], wanted: list[int]) -> str:
    """Lines of a plan in the usual layout, each with the line that opens its block and the brace that closes it."""
    told: list[str] = []
    opened: list[int] = []  # the blocks of the line before

    def close(still: list[int]) -> None:
        while opened and opened[-1] not in still:
            told.append(" " * _indent(rows[opened.pop()]) + "}")

    for at in wanted:
        if rows[at].strip() == "}":  # told as its block is closed
            continue
        heads = _heads(rows, at)
        close(heads)
        for head in heads:
            if head not in opened:
                opened.append(head)
                if head not in wanted:
                    told.append(rows[head])
        told.append(rows[at].rstrip())
    close([])
    return "\n".join(told)


def _heads(rows: list[str], at: int) -> list[int]:
    """The lines that open the blocks that a line is in, the outermost first."""
    heads: list[int] = []
    deep = _indent(rows[at])
    for before in range(at - 1, -1, -1):
        if rows[before].strip() and _indent(rows[before]) < deep:
            heads.insert(0, before)
            deep = _indent(rows[before])
    return heads


def _indent(row: str) -> int:
    return len(row) - len(row.lstrip())


def _pairs(lesson: Lesson, sound: _House, faulty: _House, scene: Scene) -> list[tuple[bool, Picture, Picture | None]]:
    """Whether two fit side by side, the drawing of the faulty house, and of the sound one where it is another."""
    pins = pins_of(faulty.told._replace(rulings=_rulings(faulty.held)))
    found = []
    for draw in lesson.draws:
        without = picture(draw, sound.sheet, scene, "sound")
        bare = picture(draw, faulty.sheet, scene, "sound")
        with_pins = picture(draw, faulty.sheet, scene, "faulty", pins)
        same = str(bare.svg or bare.text) == str(without.svg or without.text)
        if without.text and not same:
            without, with_pins = (Picture("", text) for text in apart(without.text, with_pins.text))
        found.append((draw.split()[0] in ("section", "roof"), with_pins, None if same else without))
    return found


def _rulings(held: list[Comment]) -> tuple[Any, ...]:
    return tuple(ruling for comment in held for ruling in comment.rulings)


def _of(sheet: Sheet, label: str) -> Facts | None:
    """The element of a label, or the first of its kind where this plan has none of that name."""
    kind = label.split()[0]
    return sheet.facts.get(label) or next(iter(sheet.of_kind(kind)), None)


def _row(sound: Sheet, faulty: Sheet, measure: str, label: str, system: System) -> dict[str, str]:
    """A number of the sound house beside the same of the faulty one."""

    def told(sheet: Sheet) -> str:
        facts = sheet.facts.get(label)
        found = sheet.quantity(facts, measure) if facts is not None else None
        if isinstance(found, Quantity):
            return found.shown(system)
        return "does not apply" if facts is None or found is None or not found.missing else "not known"

    kind = label.split()[0]
    known = measures().get(kind, {}).get(measure) or settings_of(KINDS[kind]).get(measure)
    return {
        "name": f"{measure} of {label}",
        "meaning": known.meaning if known is not None else "",
        "sound": told(sound),
        "faulty": told(faulty),
    }


def _worked(lesson: Lesson, sheet: Sheet, system: System) -> list[str]:
    """Every number of a lesson with what it came from; what was unfolded once is not unfolded again."""
    found, seen = [], set[str]()
    for measure, label in lesson.numbers:
        facts = _of(sheet, label)
        if facts is not None:
            found.append(text_of(unfold(sheet.quantity(facts, measure), system, 0, seen)).rstrip())
    return [text for text in found if not text.endswith("(unfolded above)") or "\n" in text]


def _own(lesson: Lesson, house: _House, plan: PlanText, scene: Scene) -> dict[str, Any]:
    """The drawings and numbers of the trainee's own plan."""
    pins = pins_of(house.told._replace(rulings=_rulings(house.held)))
    return {
        "name": plan.name,
        "pictures": [picture(draw, house.sheet, scene, "own", pins) for draw in lesson.draws],
        "held": _findings(house),
        "numbers": _worked(lesson, house.sheet, scene.system),
    }
