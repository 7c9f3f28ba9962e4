"""Lines of the letter are broken as Python's own `textwrap` breaks them."""

from __future__ import annotations

import textwrap

from hypothesis import given
from hypothesis import strategies as st

from speclint.outputs.letter import _pieces

TEXTS = st.text("ab -–\t\n\x00é中", max_size=60) | st.lists(st.text("abc-", max_size=30), max_size=30).map(" ".join)


@given(TEXTS, st.integers(20, 60))
def test_any_text_is_broken_as_textwrap_breaks_it(text: str, room: int) -> None:
    expected = textwrap.wrap(text, room, break_long_words=False, break_on_hyphens=False) or [""]
    assert expected == _pieces(text, room)
