"""Text in lines: nothing is lost, and a fraction of an inch stays with its inches."""

from __future__ import annotations

import re
import textwrap
from itertools import pairwise

import pytest
from hypothesis import given
from hypothesis import strategies as st

from speclint.outputs.wrapped import wrapped

WORDS = st.lists(st.sampled_from(["a", "wall", '4 1/2"', "3'-2 3/4\"", "reaches", "1/2", "10", "no-break"]), min_size=1)


@given(WORDS, st.integers(20, 60))
def test_lines_hold_all_words_and_keep_fractions(words: list[str], room: int) -> None:
    text = " ".join(words)
    lines = wrapped(text, room)
    assert text == " ".join(lines)
    assert all(len(line) <= room for line in lines)
    assert not any(line[-1].isdigit() and re.match(r"\d+/\d", other) for line, other in pairwise(lines))


@pytest.mark.parametrize(
    "text", ["two  blanks and more words than a line can hold", "a\ttab in a text of more than it"]
)
def test_other_white_space_is_wrapped_as_usual(text: str) -> None:
    assert textwrap.wrap(text, 20, break_long_words=False, break_on_hyphens=False) == wrapped(text, 20)


def test_an_empty_text_is_one_line() -> None:
    assert [""] == wrapped("", 40)
