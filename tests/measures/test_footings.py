"""Deck beams and footings against their tables, and what those tables do not cover."""

from __future__ import annotations

import pytest

from tests.measures.sheets import absent, found

DECK = """
site { ground snow 30 psf }
deck lake { joist span 10'; boards five-quarter }
post lake { stands on pier; footing 48"; size 6x6; height 4' }
beam lake { on post lake; under deck lake; size 2-2x10; species southern pine; span 8' }
"""


def test_a_beam_is_read_in_the_column_of_its_effective_joist_span() -> None:
    # joists of 10 ft without overhang enter at 6.6 ft: the column of 8 ft
    limit = found("beam lake", "span limit", DECK)
    assert ("9'-0\"", "looked up") == (limit.shown(), limit.how)


def test_a_timber_beam_is_in_no_table() -> None:
    text = DECK.replace("2-2x10", "8x8")
    assert "no" == found("beam lake", "in beam table", text).value
    assert "does not go so far" in absent("beam lake", "span limit", text).reason


def test_a_beam_that_carries_a_roof_as_well_is_in_no_table() -> None:
    text = DECK.replace("under deck lake;", "under deck lake, porch lake;") + "porch lake { depth 8' }\n"
    assert "one deck and nothing else" in absent("beam lake", "span limit", text).reason


def test_a_footing_is_read_at_the_next_printed_spans() -> None:
    need = found("post lake", "footing width need", DECK)
    assert ('20"', True) == (need.shown(), "beam 8 ft, joists 10 ft" in " ".join(need.notes))


@pytest.mark.parametrize(
    ("change", "words"),
    [
        (("ground snow 30 psf", "ground snow 60 psf"), "table is for 40 psf"),
        (("span 8'", "span 19'"), "does not go so far"),
        (("under deck lake;", "under porch lake;"), "one deck and nothing else"),
        (("height 4'", "height 4'; under porch lake"), "carries a roof"),
    ],
)
def test_a_footing_outside_the_table_goes_to_an_engineer(change: tuple[str, str], words: str) -> None:
    text = DECK.replace(*change) + "porch lake { depth 8' }\n"
    assert "no" == found("post lake", "in footing table", text).value
    assert words in absent("post lake", "footing width need", text).reason


def test_a_footing_asks_for_the_span_of_its_beam() -> None:
    missing = absent("post lake", "in footing table", DECK.replace("; span 8'", "")).missing
    assert [("beam lake", "span")] == [(one.element, one.setting) for one in missing]
