"""Whatever text goes in, a review comes out: no trace of the program, every place inside the text."""

from __future__ import annotations

from hypothesis import example, given, settings
from hypothesis import strategies as st

from speclint.language.uses import CannotRead
from speclint.model.kinds import KINDS
from speclint.outputs.data import as_json, review_object
from speclint.outputs.letter import Frame, letter, text_of
from speclint.pipeline import PlanText, review
from speclint.ruling import Review
from tests.specs.expected import DAY, SPECS, book

DEMO = (SPECS / "tamarack-point.plan").read_text(encoding="utf-8").replace("lifts out yes", "lifts out no")
PIECES = st.sampled_from(
    [
        *KINDS, "typical ", "alternate ", "variance ", "use ", "like ", "unknown", "assumed ", "height ", "build ",
        "faces ", "covers ", "on ", "{", "}", ";", "\n", ",", '"', "'", "9'", '6"', "9'-6 1/2\"", "8x8", "10:12",
        "S 10 E", "a", "b", " ", "\t", "#", "&", "1/0", "-", "1e9", "9" * 70, "\x1b[31m", "\x00", "😀", "\u202e",
        "log round", "2027-02-30",
    ]
)  # fmt: skip


def nothing(name: str) -> str:
    raise CannotRead("there is no such file")


def reviewed(text: str) -> Review:
    return review(PlanText(text, "a.plan", nothing), book(), DAY)


def misplaced(text: str) -> list[str]:
    """Mistakes that stand at no place of the text."""
    rows = text.removeprefix("\ufeff").replace("\r\n", "\n").replace("\r", "\n").split("\n")
    return [
        f"{mistake.line}:{mistake.column} {mistake.message}"
        for mistake in reviewed(text).mistakes
        if not (1 <= mistake.line <= len(rows) and 1 <= mistake.column <= len(rows[mistake.line - 1]) + 1)
    ]


@given(st.text(max_size=200))
@example("\x0b\x0c\x1c\u2028\x85 x")
@example("wall a { height ²' }")
@example("wall a { height ٣' }")
@example("post a { size " + "9" * 400 + "x2 }")
@example("wall a { starts " + "9" * 5000 + '/3" }')
@example("wall a { height 5" + " " * 100_000 + "mm }")
def test_any_text_is_reviewed_and_every_mistake_has_a_place_in_it(text: str) -> None:
    assert [] == misplaced(text)


@given(st.lists(PIECES, max_size=40).map("".join))
@settings(max_examples=300)
def test_any_heap_of_words_of_the_language_is_reviewed(text: str) -> None:
    assert [] == misplaced(text)


@given(st.integers(0, len(DEMO)))
def test_the_demo_plan_typed_half_way_is_reviewed(end: int) -> None:
    assert [] == misplaced(DEMO[:end])


@given(st.integers(0, len(DEMO)), st.text(max_size=3), st.integers(0, 3))
def test_the_demo_plan_with_a_slip_of_the_hand_is_reviewed(at: int, slip: str, lost: int) -> None:
    assert [] == misplaced(DEMO[:at] + slip + DEMO[at + lost :])


@given(st.lists(PIECES, max_size=30).map("".join))
def test_no_plan_reaches_the_terminal_raw(text: str) -> None:
    told = text_of(letter(reviewed(text), Frame(96, DAY))) + as_json(review_object(reviewed(text), "imperial"))
    assert set() == {"\x1b", "\x00", "\u202e", "\x9b"} & set(told)


@given(st.integers(DEMO.index("wall south"), DEMO.index("corner sw")))
def test_a_slip_in_a_wall_leaves_what_is_said_of_rails_and_stairs(at: int) -> None:
    assert about_rails(DEMO) == about_rails(DEMO[:at] + "&" + DEMO[at:])


def about_rails(text: str) -> list[tuple[str, str, str, int]]:
    return [
        (ruling.rule, ruling.element, ruling.grade, ruling.place.line)
        for ruling in reviewed(text).rulings
        if ruling.element in ("rail lake", "stair lake", "chase power")
    ]


def test_there_is_something_said_of_rails_and_stairs() -> None:
    assert about_rails(DEMO)
