"""Deck frames, ledgers and posts: tables are read at the load that the deck carries, and never past their ends."""

from __future__ import annotations

import pytest

from speclint.language.parse import parse
from speclint.measures.facts import Sheet
from speclint.model.build import build
from speclint.pipeline import PlanText, review
from speclint.quantity import Absent, Quantity
from speclint.rulebook.book import load_rulebook

DECK = "deck d { joists 2x8 at 16\"; joist span 9'; joist species southern pine }\n"
POST = "post p { under deck d; size 6x6; height 8' }\n"
LEDGER = 'ledger l { carries deck d; on band joist; fastener lag screw at 8"; engineered no }\n'


def quantity(label: str, name: str, text: str) -> Quantity | Absent:
    home, mistakes = build([parse(text, "a.plan")], "a.plan")
    assert () == mistakes
    facts = Sheet(home)
    return facts.quantity(facts[label], name)


def snow(load: str, text: str) -> str:
    return f"site {{ ground snow {load} }}\n{text}"


def shown(label: str, name: str, text: str) -> str:
    found = quantity(label, name, text)
    assert isinstance(found, Quantity)
    return found.shown()


def missing(label: str, name: str, text: str) -> list[tuple[str, str]]:
    found = quantity(label, name, text)
    assert isinstance(found, Absent)
    return [(one.element, one.setting) for one in found.missing]


def reason(label: str, name: str, text: str) -> str:
    found = quantity(label, name, text)
    assert isinstance(found, Absent)
    return found.reason


@pytest.mark.parametrize(
    ("label", "name"),
    [
        ("deck d", "joist span limit"),
        ("deck d", "in joist table"),
        ("ledger l", "spacing limit"),
        ("ledger l", "in ledger table"),
        ("post p", "height limit"),
        ("post p", "in post table"),
    ],
)
def test_an_open_deck_without_a_stated_ground_snow_is_a_question(label: str, name: str) -> None:
    text = DECK + LEDGER + POST
    asked = [missing(label, name, f"{site}\n{text}") for site in ("site { frost depth 4' }", "")]
    assert [[("site", "ground snow")]] * 2 == asked


@pytest.mark.parametrize(
    ("label", "name"), [("deck d", "joist span limit"), ("ledger l", "spacing limit"), ("post p", "height limit")]
)
def test_a_roofed_deck_needs_no_ground_snow(label: str, name: str) -> None:
    text = "porch r { depth 10' }\n" + DECK.replace("{", "{ under r;") + LEDGER + POST
    assert isinstance(quantity(label, name, text), Quantity)


def test_what_the_table_has_at_no_load_is_told_without_a_question() -> None:
    assert "no" == shown("deck d", "in joist table", DECK.replace("2x8", "3x8"))


def test_the_open_questions_of_a_review_ask_for_the_ground_snow_and_nothing_is_told_of_the_tables() -> None:
    plan = PlanText("site { frost depth 4' }\n" + DECK + LEDGER + POST, "a.plan", lambda used: used)
    result = review(plan, load_rulebook(), "2026-11-25")
    asked = {rule for question in result.questions if question.setting == "ground snow" for rule in question.rules}
    tables = {
        "joist-overspanned", "joists-outside-table", "ledger-fasteners-too-far-apart", "ledger-outside-table",
        "post-too-slender", "post-outside-table",
    }  # fmt: skip
    assert (tables, set()) == (asked & tables, tables & {ruling.rule for ruling in result.rulings})


@pytest.mark.parametrize(
    ("load", "covered"), [("0 psf", "yes"), ("30 psf", "yes"), ("40 psf", "yes"), ("41 psf", "no"), ("70 psf", "no")]
)
def test_the_post_table_covers_a_deck_up_to_its_one_load(load: str, covered: str) -> None:
    assert covered == shown("post p", "in post table", snow(load, DECK + POST))


def test_a_post_under_more_snow_than_the_table_has_gets_no_height_from_a_lower_load() -> None:
    text = snow("70 psf", DECK + POST)
    wanted = "the post table ends at 40 psf and the deck is to carry 70 psf: a licensed engineer sizes the post"
    assert ([], wanted) == (missing("post p", "height limit", text), reason("post p", "height limit", text))


@pytest.mark.parametrize(
    "frame",
    [
        "post p { size 6x6 }\nbeam b { on post p; under deck d }\n",
        "post p { size 6x6; under beam b }\nbeam b { under deck d }\n",
        "post p { size 6x6 }\nbeam b { on post p }\nbeam c { on beam b; under deck d }\n",
        "porch r { depth 8' }\npost p { size 6x6; under porch r, deck d }\n",
    ],
)
def test_the_deck_on_a_post_is_found_by_way_of_its_beams(frame: str) -> None:
    assert "no" == shown("post p", "in post table", snow("70 psf", DECK + frame))


@pytest.mark.parametrize(
    ("frame", "asked"),
    [
        ("post p { size 6x6 }\n", ("post p", "under")),
        ("post p { size 6x6 }\nbeam b { on post p }\n", ("beam b", "under")),
    ],
)
def test_a_post_that_carries_nothing_named_is_a_question(frame: str, asked: tuple[str, str]) -> None:
    assert [asked] == missing("post p", "height limit", snow("30 psf", DECK + frame))


@pytest.mark.parametrize(
    ("size", "height", "row"),
    [
        ("4x4", "6'-9\"", ""),
        ("4x6", "8'-0\"", ""),
        ("6x4", "8'-0\"", ""),
        ("6x6", "14'-0\"", ""),
        ("5x5", "6'-9\"", "4x4"),
        ("5x8", "8'-0\"", "4x6"),
        ("4x12", "8'-0\"", "4x6"),
        ("6x10", "14'-0\"", "6x6"),
        ("7x7", "14'-0\"", "6x6"),
        ("10x10", "14'-0\"", "8x8"),
        ("150x150 mm", "14'-0\"", "6x6"),
        ("100x140 mm", "6'-9\"", "4x4"),
        ('6"', "6'-9\"", "4x4"),
        ('8"', "14'-0\"", "6x6"),
    ],
)
def test_a_section_that_the_post_table_lacks_is_read_as_the_next_smaller(size: str, height: str, row: str) -> None:
    found = quantity("post p", "height limit", snow("30 psf", DECK + POST.replace("6x6", size)))
    assert isinstance(found, Quantity)
    told = [note for note in found.notes if "next smaller" in note]
    wanted = [f"the post table has no {size}; it is read as {row}, the next smaller size that is there"] if row else []
    assert (height, wanted) == (found.shown(), told)


@pytest.mark.parametrize("size", ["3x3", "2x12", '4"', "90x90 mm"])
def test_a_post_below_the_smallest_size_of_the_table_gets_no_answer_and_the_reason(size: str) -> None:
    text = snow("30 psf", DECK + POST.replace("6x6", size))
    wanted = f"the post table begins at 4x4 and has nothing for {size}: a licensed engineer sizes the post"
    assert ([], wanted) == (missing("post p", "height limit", text), reason("post p", "height limit", text))
    assert "no" == shown("post p", "in post table", text)


def test_a_post_under_a_roof_alone_is_screened_without_its_load_and_that_is_said() -> None:
    found = quantity("post p", "height limit", "porch r { depth 8' }\npost p { under porch r; size 6x6 }\n")
    assert isinstance(found, Quantity)
    assert "it carries a roof, and the table counts none: the height is a screen and no more" in found.notes


@pytest.mark.parametrize(
    ("decks", "answer"),
    [
        ("deck a { engineered yes }\ndeck b { engineered yes }\n", "yes"),
        ("deck a { engineered yes }\ndeck b { engineered no }\n", "no"),
        ("deck a { }\ndeck b { engineered no }\n", "no"),
    ],
)
def test_the_frame_over_a_post_is_engineered_where_that_of_every_deck_on_it_is(decks: str, answer: str) -> None:
    assert answer == shown("post p", "frame engineered", decks + "post p { under deck a, deck b; size 6x6 }\n")


def test_a_deck_that_does_not_say_who_designs_its_frame_is_a_question() -> None:
    text = "deck a { engineered yes }\ndeck b { }\npost p { under deck a, deck b; size 6x6 }\n"
    assert [("deck b", "engineered")] == missing("post p", "frame engineered", text)
