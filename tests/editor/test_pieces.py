"""The forgiving look at half-typed text."""

from __future__ import annotations

import pytest

from speclint.editor.pieces import every_note, look, notes_above


@pytest.mark.parametrize(
    ("text", "expected"),
    [
        ('height 10\'-6 1/2";  sill 2"', ["height", "10'-6", '1/2"', "sill", '2"']),
        ('weather "Duluth, MN" # a "comment" }', ["weather", '"Duluth, MN"']),
        ('because "half typed; until 2027', ["because", '"half typed', "until", "2027"]),
        ("salt water 1,000 mi, soil sand", ["salt", "water", "1,000", "mi", ",", "soil", "sand"]),
        ("height 10′;  run 3″", ["height", "10′", "run", "3″"]),
    ],
)
def test_pieces_are_those_of_the_language(text: str, expected: list[str]) -> None:
    assert expected == [piece.text for note in look(text).root.notes for piece in note.pieces]


def test_a_comma_carries_a_list_on_to_the_next_line() -> None:
    (head,) = look("roof main { covers a,  # one\n  # two\n  b\n pitch 8:12 }").root.notes
    assert head.block is not None
    assert [["covers", "a", ",", "b"], ["pitch", "8:12"]] == [note.words for note in head.block.notes]


def test_a_semicolon_ends_a_note_behind_a_comma_too() -> None:
    assert [["covers", "a", ","], ["pitch"]] == [note.words for note in look("covers a,; pitch").root.notes]


def test_blocks_know_where_they_begin_and_end() -> None:
    text = "wall a { height 9' }\nroof main {"
    closed, open_ = (note.block for note in look(text).root.notes)
    assert closed is not None
    assert open_ is not None
    assert ("{ height 9' }", True, "{", False) == (
        text[closed.start : closed.end],
        closed.closed,
        text[open_.start : open_.end],
        open_.closed,
    )


def test_a_brace_too_many_closes_nothing() -> None:
    assert [["wall", "a"], ["roof", "main"]] == [
        note.words for note in look("wall a { } } }\nroof main { }").root.notes
    ]


def test_the_notes_above_a_place_lead_to_it() -> None:
    text = 'alternate "a" { roof main { eaves 3\' } }'
    found = notes_above(look(text).root, text.index("eaves"))
    assert [["alternate", '"a"'], ["roof", "main"], ["eaves", "3'"]] == [note.words for note in found]


def test_a_million_open_blocks_are_looked_at() -> None:
    root = look("{" * 100_000).root
    assert 100_000 == sum(1 for _ in every_note(root))
