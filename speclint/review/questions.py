"""What the plan does not say: one question for each setting, with the elements and rules that need it."""

from __future__ import annotations

from functools import lru_cache

from speclint.model.element import settings_of
from speclint.model.home import Home
from speclint.model.kinds import KINDS
from speclint.model.settings import Setting
from speclint.quantity import Missing
from speclint.rulebook.rule import GRADES, Grade
from speclint.ruling import Question, Unanswered
from speclint.units import System, read_quantity, show

MOST_CHOICES = 7
_RANKS = {grade: rank for rank, grade in enumerate(GRADES)}


def questions(unanswered: list[Unanswered], home: Home, system: System) -> list[Question]:
    """The open questions of a review, those that may hold the release first.

    What was stated and could not be read is told as a mistake and not asked.

    Args:
        unanswered: What lacks a fact.
        home: The home, for the kinds of its elements and for what was stated.
        system: The units of the reader, for the examples.
    """
    asked: dict[tuple[str, str], tuple[dict[str, Missing], dict[str, Grade]]] = {}  # of elements, and by rules
    for ruling in unanswered:
        for missing in ruling.missing:
            element = home.elements[missing.element]
            given = element.given.get(missing.setting)
            if given is not None and given.how == "unreadable":
                continue
            key = (element.kind, missing.setting)
            if key not in asked:
                asked[key] = {}, {}
            elements, rules = asked[key]
            elements.setdefault(missing.element, missing)
            before = rules.get(ruling.rule)
            if before is None or _RANKS[ruling.grade] < _RANKS[before]:
                rules[ruling.rule] = ruling.grade
    found = [_question(*key, elements, rules, system) for key, (elements, rules) in asked.items()]
    order = {kind: number for number, kind in enumerate(KINDS)}
    return sorted(found, key=lambda question: (_RANKS[question.grade], order[question.kind]))


def _question(
    kind: str, setting: str, elements: dict[str, Missing], rules: dict[str, Grade], system: System
) -> Question:
    grade = min(rules.values(), key=_RANKS.__getitem__)
    return Question(
        setting,
        kind,
        tuple(elements),
        tuple(rules),
        next(iter(elements.values())).place,
        _text(kind, setting, tuple(elements), system),
        grade,
        tuple([rule for rule, graded in rules.items() if graded == grade]),
    )


@lru_cache(maxsize=4096)
def _text(kind: str, setting: str, elements: tuple[str, ...], system: System) -> str:
    names = [element.removeprefix(f"{kind} ") for element in elements]
    called = kind if names == [kind] else f"{kind} {_list(names)}"
    found = settings_of(KINDS[kind]).get(setting)
    if found is not None:
        few = found.choices is not None and len(found.choices) <= MOST_CHOICES
        shown = f"one of: {', '.join(found.choices or ())}" if few else f"for example {_example(found, system)}"
        return f"{called}: {setting} ({found.meaning}; {shown})"
    if setting in KINDS and KINDS[setting].single:
        about = " ".join((KINDS[setting].__doc__ or "").split())
        return f"the plan has no “{setting}” ({about[0].lower()}{about[1:]})"
    return f"{called}: which {setting} it goes with" if setting in KINDS else f"{called}: {setting}"


def _example(setting: Setting, system: System) -> str:
    """The example of a setting in the reader's units."""
    if system == "imperial" or setting.dimension not in ("length", "pressure", "area", "rain rate", "speed"):
        return setting.example
    value = read_quantity(setting.example)
    return show(value.number, value.dimension, system)


def _list(names: list[str]) -> str:
    shown = names[:8]
    more = f" and {len(names) - 8} more" if len(names) > 8 else ""
    return ", ".join(shown) + more
