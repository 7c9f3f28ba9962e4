"""Edits of a plan's text: values replaced, notes added, everything else untouched."""

from __future__ import annotations

import pytest

from speclint.language.edit import CannotEdit, Edit, Places, Rows, with_edits
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


TWO_ON_A_LINE = "wall a { height 9'-6%s }  wall b { height 9'-6%s }  # was 10'-0%s { } \nwall c { }\n"


@pytest.mark.parametrize("mark", ['"', "″", "”"])
@pytest.mark.parametrize("ends", ["\n", "\r\n", "\r"])
def test_a_mark_of_inches_opens_no_text(ends: str, mark: str) -> None:
    text = TWO_ON_A_LINE.replace("%s", mark).replace("\n", ends)
    added = with_edits(text, [places(text).add_note(1, 1, 'starts 20"')])
    assert text.replace(f"6{mark} }}  wall b", f'6{mark};  starts 20" }}  wall b') == added


@pytest.mark.parametrize("indent", ["\t", "\t\t", " \t", "\u00a0", "  "])
def test_a_note_is_indented_by_the_blanks_of_the_line_before_it(indent: str) -> None:
    text = f"wall a {{\n{indent}length 9';  starts 8\"\n}}\n"
    assert text.replace("\n}", f"\n{indent}height 9'\n}}") == with_edits(
        text, [places(text).add_note(1, 1, "height 9'")]
    )


def test_a_note_in_a_block_that_begins_on_its_first_line_stands_deeper_than_that_line() -> None:
    text = "\twall a { length 9'  # long\n\t}\n"
    assert "\twall a { length 9'  # long\n\t    height 9'\n\t}\n" == with_edits(
        text, [places(text).add_note(1, 2, "height 9'")]
    )


@pytest.mark.parametrize("ends", ["\n", "\r\n"])
@pytest.mark.parametrize("text", ["wall a,\n", "roof a { covers b, }\n", "roof a {\n  covers b,  # and { c\n}\n"])
def test_a_list_that_ends_with_a_comma_does_not_go_on_in_the_note(text: str, ends: str) -> None:
    text = text.replace("\n", ends)
    written = with_edits(text, [places(text).add_note(1, 1, "length 9'")])
    (statement,) = parse(written, "p").statements
    assert ["length", "9'"] == [atom.text for atom in (statement.body or ())[-1].atoms]
    assert text.count(ends) + ("# and" in text) == written.count(ends)


def test_a_block_that_is_not_closed_takes_no_note() -> None:
    for text in ("wall a { length 9'", "wall a {\n  length 9'\n"):
        with pytest.raises(CannotEdit, match="there is no line"):
            places(text).add_note(1, 1, "height 9'")


def test_an_offset_and_its_place_are_one() -> None:
    text = "\ufeffa\rb\r\n\nc\U0001f332d"
    rows = Rows(text)
    assert [(1, 1), (2, 1), (3, 1), (4, 1), (4, 3)] == [rows.place(text.index(one)) for one in "ab"] + [
        rows.place(6),
        rows.place(text.index("c")),
        rows.place(text.index("d")),
    ]
    assert all(rows.offset(*rows.place(at)) == at for at in range(1, len(text)))


def test_what_is_not_there_is_told() -> None:
    with pytest.raises(CannotEdit, match="line 6"):
        places(PLAN).written(6, 5, "9'")
    with pytest.raises(CannotEdit, match="line 1"):
        places(PLAN).add_note(1, 1, "length 9'")


def test_edits_that_overlap_are_refused() -> None:
    with pytest.raises(CannotEdit, match="two changes want the same place, line 2, column 1"):
        with_edits("a\ncdef", [Edit(0, 3, "x"), Edit(2, 4, "y")])
