"""Positions of editors and offsets of texts."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st
from lsprotocol import types as lsp

from speclint.editor.positions import Lines
from speclint.span import Span

LOG = "\N{WOOD}"  # outside the basic plane: two units of UTF-16, four bytes of UTF-8
TEXT = f"# {LOG} note\r\nwall a {{ height 10′ }}\rlast"
TEXTS = st.lists(
    st.sampled_from(["a", '"', "′", "é", LOG, "\n", "\r", "\r\n", "\u2028", "\x0b", "\ufeff", "\ud83d"])
).map("".join)
ENCODINGS = st.sampled_from(["utf-8", "utf-16", "utf-32"])


@pytest.mark.parametrize(
    ("encoding", "behind_the_log", "behind_the_prime"), [("utf-16", 4, 19), ("utf-32", 3, 19), ("utf-8", 6, 21)]
)
def test_columns_count_the_units_that_were_agreed(encoding: str, behind_the_log: int, behind_the_prime: int) -> None:
    lines = Lines(TEXT, encoding)
    log, prime = TEXT.index(LOG) + 1, TEXT.index("′") + 1
    assert (lsp.Position(0, behind_the_log), lsp.Position(1, behind_the_prime)) == (
        lines.position(log),
        lines.position(prime),
    )


def test_a_span_is_found_behind_an_emoji_and_a_prime() -> None:
    text = f"wall {LOG} {{ height 10′;  length 30' }}"
    span = Span("a.plan", 1, text.index("length") + 1, len("length"))
    assert (lsp.Range(lsp.Position(0, 23), lsp.Position(0, 29)), "length") == (
        Lines(text).of_span(span),
        text[slice(*Lines(text).offsets(span))],
    )


def test_only_ends_of_lines_end_lines() -> None:
    assert lsp.Position(1, 0) == Lines("a\u2028b\x0bc\x85d\ne").position(8)


def test_a_mark_of_byte_order_is_no_column_of_a_span() -> None:
    lines = Lines("\ufeffwall a { }")
    assert (1, 5) == lines.offsets(Span("a.plan", 1, 1, 4))


@pytest.mark.parametrize(
    "span", [Span("", 0, 0, 0), Span("a.plan", 9, 1, 4), Span("a.plan", 1, 99, 4), Span("a.plan", 1, 1, 999)]
)
def test_a_span_outside_the_text_is_brought_into_it(span: Span) -> None:
    start, end = Lines("wall a { }\n").offsets(span)
    assert 0 <= start <= end <= 11


@pytest.mark.parametrize(
    ("line", "character", "offset"), [(0, 99, 6), (99, 0, 16), (0, 3, 2), (1, 0, 8)]
)  # past the line, past the text, inside the pair of the emoji, behind both characters of an end of line
def test_positions_outside_the_text_are_brought_into_it(line: int, character: int, offset: int) -> None:
    assert offset == Lines(f"# {LOG} no\r\nwall a {{").offset(lsp.Position(line, character))


@given(TEXTS, ENCODINGS, st.data())
def test_an_offset_comes_back_from_its_position(text: str, encoding: str, data: st.DataObject) -> None:
    lines = Lines(text, encoding)
    offset = data.draw(st.integers(0, len(text)))
    inside_an_end = text[offset - 1 : offset + 1] == "\r\n" and offset > 0
    assert offset - inside_an_end == lines.offset(lines.position(offset))


@given(TEXTS, ENCODINGS, st.integers(0, 9), st.integers(0, 99))
def test_no_position_leaves_the_text(text: str, encoding: str, line: int, character: int) -> None:
    assert 0 <= Lines(text, encoding).offset(lsp.Position(line, character)) <= len(text)
