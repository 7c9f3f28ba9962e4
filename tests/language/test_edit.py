"""Edits of a plan's text: values replaced, notes added, everything else untouched."""

from __future__ import annotations

import pytest

from speclint.language.edit import CannotEdit, Edit, Places, with_edits
from speclint.language.parse import parse

PLAN = """# a plan
wall south { faces S 10 E;  length 46'; height 9'-6" }   # one line
wall bare
wall empty { }
roof main {
    eaves   1'-6"     # short
    covers  south
}
post lake { base standoff 1" on pier; seasoning kiln-dried to 15% }
"""


def places(text: str) -> Places:
    return Places(text, parse(text, "p"))


def replaced(text: str, line: int, column: int, value: str, by: str) -> str:
    start, end = places(text).written(line, column, value)
    return with_edits(text, [Edit(start, end, by)])


def test_a_value_is_replaced_and_nothing_else() -> None:
    assert replaced(PLAN, 6, 5, "1'-6\"", "2'") == PLAN.replace("eaves   1'-6\" ", "eaves   2' ")


def test_a_value_behind_a_joining_word_is_found() -> None:
    column = PLAN.splitlines()[8].index("to 15%") + 1
    assert replaced(PLAN, 9, column, "15%", "19%") == PLAN.replace("to 15%", "to 19%")


def test_a_value_of_several_atoms_is_found() -> None:
    assert replaced(PLAN, 2, 14, "S 10 E", "W") == PLAN.replace("S 10 E", "W")


@pytest.mark.parametrize(
    ("line", "note", "was", "becomes"),
    [
        (2, "sheltered by lake", "9'-6\" }", "9'-6\";  sheltered by lake }"),
        (3, "length 30'", "wall bare\n", "wall bare { length 30' }\n"),
        (4, "length 30'", "wall empty { }", "wall empty { length 30' }"),
        (5, "rakes 2'", "    covers  south\n", "    covers  south\n    rakes 2'\n"),
    ],
)
def test_a_note_is_added_in_the_manner_of_the_block(line: int, note: str, was: str, becomes: str) -> None:
    assert with_edits(PLAN, [places(PLAN).add_note(line, 1, note)]) == PLAN.replace(was, becomes)


@pytest.mark.parametrize("mark", ["", "\ufeff"])
@pytest.mark.parametrize("ends", ["\n", "\r\n"])
def test_line_ends_and_the_mark_of_byte_order_stay(ends: str, mark: str) -> None:
    text = mark + PLAN.replace("\n", ends)
    assert replaced(text, 6, 5, "1'-6\"", "2'") == text.replace("1'-6\"", "2'")
    added = with_edits(text, [places(text).add_note(5, 1, "rakes 2'")])
    assert added == text.replace(f"south{ends}}}", f"south{ends}    rakes 2'{ends}}}")


def test_a_note_is_indented_as_the_line_before_it() -> None:
    text = "care {\n    wash 1 year;  gutters 180 days\n}\n"
    assert with_edits(text, [places(text).add_note(1, 1, "refinish 4 years")]) == (
        "care {\n    wash 1 year;  gutters 180 days\n    refinish 4 years\n}\n"
    )


def test_braces_in_texts_and_comments_close_nothing() -> None:
    text = 'wall a {\n    finish paint  # a } here\n    like "}"\n}\n'
    assert with_edits(text, [places(text).add_note(1, 1, "length 9'")]).endswith('    like "}"\n    length 9\'\n}\n')


def test_what_is_not_there_is_told() -> None:
    with pytest.raises(CannotEdit, match="line 6"):
        places(PLAN).written(6, 5, "9'")
    with pytest.raises(CannotEdit, match="line 1"):
        places(PLAN).add_note(1, 1, "length 9'")


def test_edits_that_overlap_are_refused() -> None:
    with pytest.raises(ValueError, match="overlap"):
        with_edits("abcdef", [Edit(0, 3, "x"), Edit(2, 4, "y")])
