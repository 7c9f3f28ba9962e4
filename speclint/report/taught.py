"""A rule as a trainee reads it: its prose, its limits, the words of a plan that it judges, and a small case."""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass
from typing import Any

from speclint.measures.register import measures
from speclint.model.element import settings_of
from speclint.model.kinds import KINDS
from speclint.paths import shipped
from speclint.review.judge import basis_line
from speclint.rulebook.book import Rulebook
from speclint.rulebook.names import relation
from speclint.rulebook.page import Page, read_page
from speclint.rulebook.rule import Expression, Limit, Rule
from speclint.units import System, show

GRADES = {"hold": "settle before release", "revise": "should be improved", "note": "worth knowing"}
PROSE = ("What it finds", "Why it matters", "How to cure it", "When to accept it")
_MARKED = re.compile(r"`([^`]+)`")


@dataclass(frozen=True, slots=True)
class Word:
    """A setting that a rule judges or that a cure changes.

    Attributes:
        name: As the plan writes it.
        of: The kind of element that has it.
        meaning: What it states.
        example: How it is written.
        choices: Its phrases with their meanings, where it is a choice.
    """

    name: str
    of: str
    meaning: str
    example: str
    choices: tuple[tuple[str, str], ...]


@dataclass(frozen=True, slots=True)
class Taught:
    """A rule as a lesson tells it.

    Attributes:
        name: Of the rule.
        title: Of its page.
        prose: Headings with their texts.
        limits: Rows: name, value in the reader's units, what becomes of not meeting it, and what it rests on.
        words: Settings that it judges or that a cure changes.
        computed: Measures that it judges: name, kind of element and meaning.
        broken: A small plan that breaks it.
        cured: The same plan cured.
        care: What it leaves to others; empty where there is nothing.
        reach: What the rule does not see.
    """

    name: str
    title: str
    prose: tuple[tuple[str, Any], ...]
    limits: tuple[tuple[str, str, str, str], ...]
    words: tuple[Word, ...]
    computed: tuple[tuple[str, str, str], ...]
    broken: str
    cured: str
    care: str
    reach: Any


def taught(rule: Rule, book: Rulebook, here: tuple[str, ...], system: System) -> Taught:
    """A rule as a lesson tells it.

    Args:
        rule: The rule.
        book: The rulebook.
        here: The rules of the lesson, which its page links to.
        system: The units of the reader.
    """
    page = _page(rule)
    words, computed = _names(rule)
    return Taught(
        rule.name,
        page.title,
        tuple((heading, linked(page.sections[heading], book, here)) for heading in PROSE if heading in page.sections),
        tuple(_limit(limit, rule, system) for limit in rule.limits),
        words,
        computed,
        page.trips[0].text.strip(),
        page.cured[0].text.strip(),
        rule.defer,
        linked(page.sections.get("Limits", ""), book, here),
    )


def _page(rule: Rule) -> Page:
    stem = rule.page.rsplit("/", 1)[-1]
    return read_page(shipped("rules").joinpath(stem).read_text(encoding="utf-8"), stem)


def linked(text: str, book: Rulebook, here: tuple[str, ...]) -> Any:
    """A text of a rule page with its marked words: a rule is linked if it is on the page, else told with its title."""
    from markupsafe import Markup, escape

    def one(found: re.Match[str]) -> str:
        word = found[1]
        rule = book.named(word)
        if rule is None:
            return f"<code>{escape(word)}</code>"
        if word in here:
            return f'<a href="#rule-{word}">{escape(rule.title or word)}</a>'
        return f"“{escape(rule.title or word)}” (<code>{word}</code>)"

    parts = _MARKED.split(text)
    pieces = [str(escape(part)) if at % 2 == 0 else part for at, part in enumerate(parts)]
    joined = "".join(piece if at % 2 == 0 else f"`{piece}`" for at, piece in enumerate(pieces))
    return Markup(_MARKED.sub(one, joined))


def _limit(limit: Limit, rule: Rule, system: System) -> tuple[str, str, str, str]:
    """A row of the table of limits."""
    grades = [tier.grade for tier in rule.tiers if limit.name in _limits(tier.condition)]
    told = " or ".join(GRADES[grade] for grade in dict.fromkeys(grades))
    value = limit.text if system == "imperial" else show(limit.value, limit.dimension, system)
    return limit.name, value, told or "decides where the rule speaks", basis_line(limit.basis)


def _limits(expression: Expression) -> set[str]:
    """Names of the limits in an expression."""
    if expression and expression[0] == "limit":
        return {str(expression[1])}
    return {name for part in expression if isinstance(part, tuple) for name in _limits(part)}


def _names(rule: Rule) -> tuple[tuple[Word, ...], tuple[tuple[str, str, str], ...]]:
    """The settings and the measures that a rule reads or that its cures change, each once."""
    words: dict[tuple[str, str], Word] = {}
    computed: dict[tuple[str, str], tuple[str, str, str]] = {}
    for path, name in _read(rule):
        for kind in _kinds(rule.kinds, path):
            setting = settings_of(KINDS[kind]).get(name)
            measure = measures().get(kind, {}).get(name)
            if setting is not None:
                choices = tuple(setting.choices.items()) if setting.choices and setting.dimension == "choice" else ()
                words.setdefault((kind, name), Word(name, kind, setting.meaning, f"{name} {setting.example}", choices))
            elif measure is not None:
                computed.setdefault((kind, name), (name, kind, measure.meaning))
            if setting is not None or measure is not None:
                break
    return tuple(words.values()), tuple(computed.values())


def _read(rule: Rule) -> Iterator[tuple[tuple[str, ...], str]]:
    """Every name that a rule reads or changes, with the way from its element to the one that has it."""
    for tier in rule.tiers:
        yield from _fields(tier.condition)
    for change in rule.adjust:
        name, *way = change.split(" of ")
        yield tuple(reversed(way)), name
    for expression in (rule.stated, rule.needed, rule.where):
        yield from _fields(expression or ())


def _fields(expression: Expression, way: tuple[str, ...] = ()) -> Iterator[tuple[tuple[str, ...], str]]:
    head = expression[0] if expression else ""
    if head in ("field", "largest", "smallest") and isinstance(expression[1], tuple) and isinstance(expression[2], str):
        yield (*way, *expression[1]), expression[2]
    elif head in ("every", "some"):
        yield from _fields(expression[2], (*way, *expression[1]))
    else:
        for part in expression:
            if isinstance(part, tuple):
                yield from _fields(part, way)


def _kinds(kinds: tuple[str, ...], path: tuple[str, ...]) -> tuple[str, ...]:
    """The kinds of element to which a way of relations leads."""
    for step in path:
        kinds = tuple(
            dict.fromkeys(end for kind in kinds if (found := relation(kind, step)) is not None for end in found[0])
        )
    return kinds
