"""Words that designers guess: each is told with help, and every word of that help can be written."""

from __future__ import annotations

import re

import pytest

from speclint.language.atoms import Mistake
from speclint.language.nearest import nearest
from speclint.language.parse import parse
from speclint.model.build import EXAMPLE_NAMES, STRUCTURE, build
from speclint.model.element import settings_of
from speclint.model.guesses import ELEMENTS, SETTINGS, SHARED, VALUES, guessed_element, guessed_setting, guessed_value
from speclint.model.kinds import KINDS
from speclint.outputs.reference import language_reference

QUOTED = re.compile(r"“([^”]+)”(?: of (?:a|an|that|the) (\w+))?")

BY_KIND = [(kind, word, help) for kind, helps in SETTINGS.items() for word, help in helps.items()] + [
    (kind, word, help)
    for kind in KINDS
    for word, (setting, help) in SHARED.items()
    if setting in settings_of(KINDS[kind]) and word not in SETTINGS.get(kind, {})
]
BY_VALUE = [(*at, begins, help) for at, helps in VALUES.items() for begins, help in helps.items()]
NO_SUCH_PART = "that is not in the plan"


def mistakes_of(text: str) -> list[Mistake]:
    tree = parse(text, "a.plan")
    told = [*tree.mistakes, *build([tree], "a.plan")[1]]
    return [mistake for mistake in told if NO_SUCH_PART not in mistake.message]


def plan_of(kind: str, statement: str) -> str:
    return f"{kind} {'' if KINDS[kind].single else 'a'} {{ {statement} }}"


def can_be_written(quoted: str, other: str, kind: str) -> bool:
    """Whether what a help quotes is a setting, a kind of element, or reads as it stands."""
    if other or quoted in KINDS:
        return quoted in KINDS or (other in KINDS and quoted in settings_of(KINDS[other]))
    if "{" in quoted:
        return quoted.split()[0] in KINDS and not mistakes_of(quoted.replace("…", ""))
    return bool(kind) and (quoted in settings_of(KINDS[kind]) or not mistakes_of(plan_of(kind, quoted)))


def unwritable(help: str, kind: str = "") -> list[str]:
    return [quoted for quoted, other in QUOTED.findall(help) if not can_be_written(quoted, other, kind)]


@pytest.mark.parametrize(("kind", "word", "help"), BY_KIND, ids=[f"{kind} {word}" for kind, word, _ in BY_KIND])
def test_a_guessed_setting_is_none_and_is_told_with_help_that_can_be_written(kind: str, word: str, help: str) -> None:
    assert word not in settings_of(KINDS[kind])
    assert QUOTED.search(help)
    assert [] == unwritable(help, kind)


@pytest.mark.parametrize(("kind", "word", "help"), BY_KIND, ids=[f"{kind} {word}" for kind, word, _ in BY_KIND])
def test_a_plan_with_a_guessed_setting_is_told_the_help(kind: str, word: str, help: str) -> None:
    assert [help] == [mistake.help for mistake in mistakes_of(plan_of(kind, f"{word} 3'"))]


@pytest.mark.parametrize("word", ELEMENTS)
def test_a_guessed_element_is_none_and_is_told_with_help_that_can_be_written(word: str) -> None:
    assert word not in (*KINDS, *STRUCTURE)
    assert [] == unwritable(ELEMENTS[word])
    assert [ELEMENTS[word]] == [mistake.help for mistake in mistakes_of(f"{word} a {{ }}")]


@pytest.mark.parametrize(("kind", "setting", "begins", "help"), BY_VALUE, ids=[" ".join(row[:3]) for row in BY_VALUE])
def test_a_guessed_value_is_told_with_help_that_can_be_written(kind: str, setting: str, begins: str, help: str) -> None:
    assert [] == unwritable(help, kind)
    assert [help] == [mistake.help for mistake in mistakes_of(plan_of(kind, f"{setting} {begins}"))]


@pytest.mark.parametrize(
    ("text", "help"),
    [
        ("wall a { finish semitransparent stain, 3 coats }", "write “coats 3”"),
        ("wall a { finish semitransparent stain 3 coats }", "put a comma before it and write “coats 3”"),
        ("wall a { 2 stories }", "write “storeys 2”"),
        ("stair a { 4 steps }", "write “risers 4”"),
    ],
)
def test_a_number_before_its_setting_is_told_the_right_way_round(text: str, help: str) -> None:
    assert [help] == [mistake.help for mistake in mistakes_of(text)]


def test_words_that_nobody_guesses_get_no_help_from_the_tables() -> None:
    settings = settings_of(KINDS["rail"])
    assert ("", "", "") == (
        guessed_setting("rail", "3 coats", settings),
        guessed_value("rail", "top", "frobnicate", settings),
        guessed_element("frobnicate"),
    )


def test_the_longest_guessed_words_win() -> None:
    assert SETTINGS["site"]["snow load"] == guessed_setting("site", "Snow Load 70 psf", ())
    assert SETTINGS["porch"]["attached to"] == guessed_setting("porch", "attached to south", ())


def test_a_help_that_points_to_no_setting_would_be_seen() -> None:
    assert ["frobs", "height tall"] == unwritable("state “frobs” or “height tall” or “height”", "wall")
    assert ["eaves"] == unwritable("state the “eaves” of a wall and the “eaves” of a roof")


def test_no_table_can_be_written_to() -> None:
    for table in (SETTINGS, SHARED, ELEMENTS, VALUES):
        assert not hasattr(table, "__setitem__")


@pytest.mark.parametrize(
    ("got", "expected"), [("house", []), ("wal", ["wall"]), ("porsh", ["porch"]), ("windwo", ["window"])]
)
def test_a_slip_of_the_pen_is_near_and_another_word_is_not(got: str, expected: list[str]) -> None:
    assert expected == nearest(got, [*KINDS, *STRUCTURE])


@pytest.mark.parametrize("kind", [kind for kind in KINDS if not KINDS[kind].single])
def test_an_element_without_a_name_is_told_one_that_can_be_written(kind: str) -> None:
    help = f"write for example: {kind} {EXAMPLE_NAMES.get(kind, 'main')} {{ … }}"
    assert [help] == [mistake.help for mistake in mistakes_of(f"{kind} {{ }}")]
    assert [] == mistakes_of(help.removeprefix("write for example: ").replace("…", ""))


@pytest.mark.parametrize(
    "told",
    ["then `to` moisture", "then a log size", "then `at` joist spacing", "may end with `above grade`"],
)
def test_the_reference_tells_what_may_follow_on_the_line(told: str) -> None:
    assert told in language_reference()
