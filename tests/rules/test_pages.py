"""Every rule page's snippets, run: what should trip trips, what is cured is clean."""

from __future__ import annotations

from functools import lru_cache

import pytest

from speclint.language.parse import parse
from speclint.measures.facts import Sheet
from speclint.model.build import build
from speclint.paths import shipped
from speclint.review.judge import judge
from speclint.rulebook.book import Rulebook, load_rulebook
from speclint.rulebook.page import Page, Snippet, read_page
from speclint.ruling import Ruling
from tests.rules.expected import NUMBERS, numbers

PAGES = sorted(
    entry.name for entry in shipped("rules").iterdir() if entry.name.endswith(".md") and entry.name != "README.md"
)


@lru_cache(maxsize=1)
def book() -> Rulebook:
    return load_rulebook()


def page(name: str) -> Page:
    return read_page(shipped("rules").joinpath(name).read_text(encoding="utf-8"), name)


def rulings(name: str, snippet: Snippet) -> tuple[list[Ruling], list[Ruling]]:
    tree = parse(snippet.text, name)
    home, mistakes = build([tree], name)
    assert [] == [f"{m.line + snippet.line - 1}: {m.message} ({m.help})" for m in [*tree.mistakes, *mistakes]]
    trips, unanswered = judge(Sheet(home), book(), "imperial")
    rule = name.removesuffix(".md")
    return [r for r in trips if r.rule == rule], [r for r in unanswered if r.rule == rule]


def test_there_are_pages() -> None:
    assert 50 <= len(PAGES)


def test_the_numbers_by_which_pages_judge_their_plans_are_as_expected() -> None:
    assert NUMBERS.read_text(encoding="utf-8") == numbers()


@pytest.mark.parametrize("name", PAGES)
def test_every_snippet_that_should_trip_trips(name: str) -> None:
    for snippet in page(name).trips:
        trips, _ = rulings(name, snippet)
        assert trips, f"line {snippet.line}: nothing trips"


@pytest.mark.parametrize("name", PAGES)
def test_every_cured_snippet_is_clean_and_leaves_no_question(name: str) -> None:
    for snippet in page(name).cured:
        trips, unanswered = rulings(name, snippet)
        assert [] == [f"line {snippet.line}: {r.element}: {r.message}" for r in trips]
        assert [] == [f"line {snippet.line}: {r.element} lacks {r.missing}" for r in unanswered]


@pytest.mark.parametrize("name", PAGES)
def test_every_message_is_whole_sentences_without_holes(name: str) -> None:
    for snippet in page(name).trips:
        for ruling in rulings(name, snippet)[0]:
            text = " ".join((ruling.message, ruling.because, *ruling.cures))
            assert "{" not in text
            assert "not stated" not in ruling.message


@pytest.mark.parametrize("name", PAGES)
def test_every_page_explains_itself_in_words(name: str) -> None:
    told = page(name).sections
    short = [heading for heading in ("What it finds", "Why it matters", "How to cure it") if len(told[heading]) < 60]
    assert [] == short
