"""The layout of a plan: what it looks like, and that it says the same and stays as it is when it is laid out again."""

from __future__ import annotations

import json

import pytest
from hypothesis import example, given, settings
from hypothesis import strategies as st

from speclint.language.layout import is_whole, tidied
from speclint.language.parse import parse
from speclint.language.sense import atoms_of, sense_of
from speclint.language.written import plain_lines
from speclint.model.kinds import KINDS
from speclint.outputs.colouring import VARIANCE, language_words
from speclint.paths import shipped
from speclint.rulebook.page import read_page
from tests.language.meaning import meaning
from tests.specs.expected import SPECS

PLANS = sorted(str(path.relative_to(SPECS)) for path in SPECS.rglob("*.plan"))
PAGES = sorted(
    entry.name for entry in shipped("rules").iterdir() if entry.name.endswith(".md") and entry.name != "README.md"
)
# Pieces that could run together, part, or be taken for something else when blanks and new lines between them change.
PIECES = st.sampled_from(
    [
        *KINDS, "typical ", "alternate ", "variance ", "use ", "like ", "unknown", "height ", "rain intensity",
        "covers ", "rain  wind", "{", "}", "{ ", " }", ";", "\n", "\n\n\n", ",", ",\n", ", # a\n\n # b\n", "'", "9'",
        '6"', "9'  6\"", "3  1/2\"", "8 mm", "8  mm", "10  per  ft", "16\" o.c.", "-", " -  6", "8x8", "10:12",
        "S 10 E", "S  10", "W", "N ", "a", "b", " ", "  ", "\t", "\xa0", "\x0c", "\u2028", "# c\n", "#",
        "# c # d  \n", '"q # r"', '"two  x"', "&", "😀", "\r\n", "\r", "word " * 30, "a;" * 40,
    ]
)  # fmt: skip
HEAPS = st.lists(PIECES, max_size=40).map("".join)
NAMES = ("faces", "length", "rain intensity", "finish", "no such name", "peak")
VALUES = (
    "S 10 E", "9'  6\"", "3 1/2\"", "crawl  space", "a, b,\n  c", "", '"x; y"', "unknown", "8 , 9", ",",
)  # fmt: skip
NOTES = st.tuples(
    st.sampled_from(NAMES),
    st.sampled_from(VALUES),
    st.sampled_from([";", "; ", "\n", "  # why\n", ";;\n\n\n# lone\n", "\n\t# lone\n"]),
).map(lambda parts: f"{parts[0]} {parts[1]}{parts[2]}")
BODIES = st.recursive(
    st.lists(NOTES, max_size=12).map("".join),
    lambda inside: st.lists(
        st.tuples(
            st.sampled_from(
                ["wall a", "typical wall", "roof main", "variance x on wall a", "wall a,\n b", "", "thing"]
            ),
            st.sampled_from([" {", "{", "{\n", " {  # open\n"]),
            inside,
            st.sampled_from(["}", " }\n", "\n\n}  # closed\n", "};", "\n # end\n}\n\n\n"]),
        ).map("".join),
        max_size=4,
    ).map("".join),
    max_leaves=12,
)


def says(text: str) -> object:
    return meaning(parse(text, "a.plan").statements)


def comments(text: str) -> list[str]:
    """The comments of a text in their order: what follows a # that stands in no atom but a comma's."""
    rows = [list(row) for row in plain_lines(text).split("\n")]
    for atom in atoms_of(parse(text, "a.plan")):
        if atom.kind != "COMMA":
            rows[atom.line - 1][atom.column - 1 : atom.column - 1 + len(atom.text)] = "_" * len(atom.text)
    return [f"#{row.split('#', 1)[1]}".rstrip() for row in map("".join, rows) if "#" in row]


def is_clean(text: str) -> bool:
    """Whether no line ends with a blank, no two lines are empty, and the text ends with one new line or is empty."""
    plain = plain_lines(text)
    rows = plain.split("\n")
    return plain == "" or (
        rows[-1] == ""
        and rows[-2] != ""
        and rows[0] != ""
        and "\n\n\n" not in plain
        and all(r == r.rstrip() for r in rows)
    )


def whole(text: str) -> bool:
    return is_whole(parse(text, "a.plan")) and "\ufeff" not in text[1:]


@pytest.mark.parametrize(
    ("before", "after"),
    [
        ("", ""),
        ("\n \n", ""),
        ("wall a{height 9';length 3 m}", "wall a { height 9';  length 3 m }\n"),
        ("wall a {\n}", "wall a { }\n"),
        ("\n\nwall a\n\n\n\nwall b", "wall a\n\nwall b\n"),
        ("wall a { faces S } wall bcd { faces N }", "wall a   { faces S }\nwall bcd { faces N }\n"),
        ("wall a {\nfaces S\n\nlength 9' }", "wall a {\n    faces S\n\n    length 9'\n}\n"),
        ("wall a {\nfaces S\ncolour   dark\n}", "wall a {\n    faces  S\n    colour dark\n}\n"),
        (
            "site {\nrain intensity 4 in/h\nwind  115 mph\n}",
            "site {\n    rain intensity 4 in/h\n    wind           115 mph\n}\n",
        ),
        ("roof r { covers a ,\n  b , c }", "roof r {\n    covers a,\n        b, c\n}\n"),
        ("wall a { x # one\n}# two", "wall a {\n    x  # one\n}      # two\n"),
        ("wall a {\n# next\nx\n# last\n}", "wall a {\n    # next\n    x\n    # last\n}\n"),
        ("a 1 # x\nabc 2#y", "a   1  # x\nabc 2  #y\n"),
        (
            "wall a { faces S;  length 5' }\nwall b { faces SW;  length 10' }",
            "wall a { faces S;   length 5' }\nwall b { faces SW;  length 10' }\n",
        ),
        (
            "wall a { faces S;  height 5';  peak 9' }\nwall b { faces SW;  length 10' }",
            "wall a { faces S;  height 5';  peak 9' }\nwall b { faces SW;  length 10' }\n",
        ),
        ("wall a { x 9'  6\" }", "wall a { x 9'  6\" }\n"),
        ("wall a { x,;y, }", "wall a { x,;  y,; }\n"),
        ("wall a\n{ x }", "wall a\n{ x }\n"),
        ("alternate \"x\" {wall a{storeys 2}}", 'alternate "x" { wall a { storeys 2 } }\n'),
        ("roof r { covers a, # one\n # two\n b }", "roof r {\n    covers a,  # one\n        # two\n        b\n}\n"),
        ("wall a {\nx 1;y 2\n}", "wall a {\n    x 1;  y 2\n}\n"),
    ],
)  # fmt: skip
def test_a_plan_is_laid_out(before: str, after: str) -> None:
    assert after == tidied(before)


def test_a_block_too_long_for_its_line_is_opened_and_its_comment_stands_at_its_head() -> None:
    notes = [f"word{at} {'x' * 20}" for at in range(5)]
    first, second = ";  ".join(notes[:3]), ";  ".join(notes[3:])
    assert f"wall a {{  # why\n    {first}\n    {second}\n}}\n" == tidied(f"wall a {{ {'; '.join(notes)} }} # why")


def test_a_block_that_fits_to_the_last_column_stays_on_its_line() -> None:
    fits = f"wall a {{ finish {'x' * 92} }}\n"
    opened = f"wall a {{\n    finish {'x' * 93}\n}}\n"
    assert (111, fits, opened) == (len(fits), tidied(fits), tidied(fits.replace("x }", "xx }")))


def test_columns_are_left_where_they_would_make_a_line_too_long() -> None:
    text = f"wall a {{ finish {'x' * 90} }}\nwall longer {{ finish y }}\n"
    assert text == tidied(text)


def test_comments_of_lines_of_very_different_length_have_columns_of_their_own() -> None:
    assert f"a 1  # one\nb {'x' * 60}  # two\nc 3  # three\n" == tidied(f"a 1 # one\nb {'x' * 60} # two\nc 3 # three")


def test_line_ends_and_the_mark_of_byte_order_are_kept() -> None:
    assert "\ufeffwall a {\r\n    faces S\r\n}\r\n" == tidied("\ufeffwall a {\r\nfaces S   \r\n\r\n}")


@pytest.mark.parametrize(
    "text", [" \ufeff  x", "wall a {\n x  1\n", "x  1 }\n", 'wall a { x  "open }\n', "x" * 2_000_001]
)
def test_a_text_that_cannot_be_laid_out_is_left_as_it_is(text: str) -> None:
    assert text == tidied(text)


def test_blocks_in_blocks_without_end_are_laid_out() -> None:
    text = "{\nx" * 3000 + "}" * 3000
    assert sense_of(parse(text, "a.plan")) == sense_of(parse(tidied(text), "a.plan"))


@pytest.mark.parametrize(
    "other", ["wall b { x }", "wall a { x; x }", "wall a { x } { }", "wall a\n{ x }", "wall a; { x }"]
)
def test_what_says_something_else_is_told_apart(other: str) -> None:
    assert sense_of(parse("wall a { x }", "a.plan")) != sense_of(parse(other, "a.plan"))


@pytest.mark.parametrize("name", PLANS)
def test_an_example_plan_says_the_same_laid_out_and_stays_as_it_is(name: str) -> None:
    text = (SPECS / name).read_text(encoding="utf-8")
    assert holds(text) == (says(text), comments(text), tidied(text), True)


def test_snippets_are_found_on_every_page() -> None:
    assert len(PAGES) > 50
    assert [] == [name for name in PAGES if not snippets(name)]


@pytest.mark.parametrize("name", PAGES)
def test_a_snippet_of_a_rule_page_says_the_same_laid_out_and_stays_as_it_is(name: str) -> None:
    for text in snippets(name):
        assert holds(text) == (says(text), comments(text), tidied(text), True)


def snippets(name: str) -> list[str]:
    page = read_page(shipped("rules").joinpath(name).read_text(encoding="utf-8"), name)
    return [snippet.text for snippet in (*page.trips, *page.cured)]


def holds(text: str) -> tuple[object, list[str], str, bool]:
    """What the text says laid out, its comments then, its layout when it is laid out again, and whether it is clean."""
    after = tidied(text)
    return says(after), comments(after), tidied(after), is_clean(after)


@given(HEAPS.filter(whole))
@settings(max_examples=600, deadline=None)
@example("9'  -  6\"")
@example("x\xa0 5\nlonger 5")
@example("a {b,\n}")
@example("a, # c\n ; b")
@example("a\n\x0c\nb")
@example("wall a,\n # c\n {x}")
def test_any_heap_of_words_says_the_same_laid_out_and_stays_as_it_is(text: str) -> None:
    assert holds(text) == (says(text), comments(text), tidied(text), True)


@given(BODIES.filter(whole))
@settings(max_examples=600, deadline=None)
def test_any_plan_says_the_same_laid_out_and_stays_as_it_is(text: str) -> None:
    assert holds(text) == (says(text), comments(text), tidied(text), True)


@given(st.text(max_size=60).filter(whole))
@settings(max_examples=300, deadline=None)
def test_any_text_says_the_same_laid_out_and_stays_as_it_is(text: str) -> None:
    assert holds(text) == (says(text), comments(text), tidied(text), True)


@given(HEAPS.filter(whole), st.sampled_from(["\r\n", "\n", "\r"]))
@settings(max_examples=200, deadline=None)
def test_a_text_has_one_kind_of_line_end_after(text: str, line_end: str) -> None:
    given_text = f"first {line_end}{plain_lines(text).replace(chr(10), line_end)}"
    assert tidied(given_text) == tidied(given_text.replace(line_end, "\n")).replace("\n", line_end)


def test_every_kind_of_element_has_its_settings_in_the_list_of_words() -> None:
    words = json.loads(language_words())
    assert ({*KINDS, "variance"}, list(VARIANCE)) == (set(words["settings"]), words["settings"]["variance"])


def test_the_settings_of_a_variance_are_those_that_the_model_reads() -> None:
    from speclint.model.variances import _SETTINGS

    assert set(_SETTINGS) == set(VARIANCE)
