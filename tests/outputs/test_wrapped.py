"""Text in lines: broken as Python's own `textwrap` breaks it, but a fraction of an inch stays with its inches."""

from __future__ import annotations

import re
import textwrap
from itertools import pairwise

from hypothesis import given
from hypothesis import strategies as st

from speclint.outputs.wrapped import wrapped

TEXTS = st.text("ab -–\t\n\x00é中/", max_size=60) | st.lists(st.text("abc-", max_size=30), max_size=30).map(" ".join)
WORDS = st.lists(st.sampled_from(["a", "wall", '4 1/2"', "3'-2 3/4\"", "reaches", "1/2", "10", "no-break"]), min_size=1)


@given(TEXTS, st.integers(20, 60))
def test_any_text_is_broken_as_textwrap_breaks_it(text: str, room: int) -> None:
    expected = textwrap.wrap(text, room, break_long_words=False, break_on_hyphens=False) or [""]
    assert expected == list(wrapped(text, room))


@given(WORDS, st.integers(20, 60))
def test_lines_hold_all_words_and_keep_fractions(words: list[str], room: int) -> None:
    text = " ".join(words)
    lines = wrapped(text, room)
    assert text == " ".join(lines)
    assert all(len(line) <= room for line in lines)
    assert not any(line[-1].isdigit() and re.match(r"\d+/\d", other) for line, other in pairwise(lines))
