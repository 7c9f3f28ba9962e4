"""Atoms of a plan's text: their kinds, their words, and their places."""

from __future__ import annotations

import pytest

from speclint.language.atoms import Atom
from speclint.language.items import Items
from speclint.language.parse import parse


def atoms(text: str) -> list[Atom]:
    return [atom for statement in parse(text, "a.plan").statements for atom in statement.atoms]


@pytest.mark.parametrize(
    "text",
    [
        "9'-6\"", "9' 6 1/2\"", "10'", '18"', '3 1/2"', '1/2"', "250 mm", "3.2 m", "1,400 ft", "70 psf", "10:12", "8x8",
        '1/4" per ft', '16" o.c.', "15%", "2 %", "15 deg", "40 F", "-0.5 C", "4 years", "2027-06-30", "200x200 mm", "6",
        "4 in/h", "100 mm/h", "120 ft2", "50 m/s", ".5", "9′-6″",
    ],
)  # fmt: skip
def test_a_quantity_as_the_trade_writes_it_is_one_atom(text: str) -> None:
    assert [Atom("QUANTITY", text, 1, 1)] == atoms(text)


@pytest.mark.parametrize("text", ["S 10 E", "W 10 S", "N 22.5 W", "S 10 deg E", "S10E"])
def test_a_quadrant_bearing_is_one_atom(text: str) -> None:
    assert [Atom("BEARING", text, 1, 1)] == atoms(text)


@pytest.mark.parametrize(
    ("text", "kinds"),
    [
        ("wall south", ["WORDS"]),
        ("faces S 10 E", ["WORDS", "BEARING"]),
        ("build log round 10\"", ["WORDS", "QUANTITY"]),
        ("covers north, south", ["WORDS", "COMMA", "WORDS"]),
        ("covers north,\n   south", ["WORDS", "COMMA", "WORDS"]),
        ("covers north, # note\n   south", ["WORDS", "COMMA", "WORDS"]),
        ('does "bore wires"', ["WORDS", "TEXT"]),
        ('does "bore wires', ["WORDS", "UNCLOSED"]),
        ("height & 9'", ["WORDS", "STRAY", "QUANTITY"]),
        ("# only a note", []),
        ("# a note; with a semicolon at the end of the file", []),
        ("wall a # a note; with a semicolon", ["WORDS"]),
        ('does "a # inside a text"', ["WORDS", "TEXT"]),
        ("hot-dip galvanized", ["WORDS"]),
        ("north-east", ["WORDS"]),
    ],
)  # fmt: skip
def test_a_note_is_cut_into_atoms(text: str, kinds: list[str]) -> None:
    assert kinds == [atom.kind for atom in atoms(text)]


@pytest.mark.parametrize(
    ("text", "places"),
    [
        ("wall a { height 9' }", [(1, 1)]),
        ("\n\n  wall a", [(3, 3)]),
        ("\twall a", [(1, 2)]),
        ("\ufeffwall a", [(1, 1)]),
        ("x\r\ny\rz", [(1, 1), (2, 1), (3, 1)]),
        ('"😀" x', [(1, 1), (1, 5)]),
        ('"𝔸𝔹" x; y', [(1, 1), (1, 6), (1, 9)]),
        ('"e\u0301" x', [(1, 1), (1, 6)]),
        ("a;b;;c", [(1, 1), (1, 3), (1, 6)]),
    ],
)
def test_places_count_from_one_in_code_points(text: str, places: list[tuple[int, int]]) -> None:
    assert places == [(atom.line, atom.column) for atom in atoms(text)]


def test_a_place_after_a_character_outside_the_basic_plane_holds_for_each_word_of_a_run() -> None:
    items = Items(parse('"😀" rain wind SW', "a.plan").statements[0])
    assert [1, 5, 10, 15] == [item.column for item in items.items]


def test_a_statement_has_the_place_of_its_first_atom_or_of_its_brace() -> None:
    statements = parse("wall a {\n  { x }\n}", "a.plan").statements
    assert [(1, 1), (2, 3)] == [(one.line, one.column) for one in (statements[0], (statements[0].body or ())[0])]


@pytest.mark.parametrize("text", ["", " ", "\n\n", ";;;", "# note", "\ufeff", "\t\n\r\n"])
def test_a_text_without_a_note_has_no_statement_and_no_mistake(text: str) -> None:
    tree = parse(text, "a.plan")
    assert ((), ()) == (tree.statements, tree.mistakes)


def test_crlf_and_tabs_read_like_lf_and_blanks() -> None:
    told = parse("wall a {\n height 9' }\n", "a.plan").statements
    assert told == parse("wall a {\r\n\theight 9' }\r\n", "a.plan").statements
