"""Dwelling code, 2021: joists and ledgers with snow, posts, chimney crickets, ice barriers."""

from __future__ import annotations

import pytest

from speclint.science.deck import ledger_spacing_capacity, post_height_limit
from speclint.science.flashing import chimney_cricket_height, chimney_cricket_required
from speclint.science.ice import ice_barrier_length
from tests.published.convert import FOOT, INCH, POUND, PSF, PSI
from tests.published.joists import joist_span
from tests.published.printed import printed
from tests.published.printed_rows import cases

Row = dict[str, str]


@pytest.mark.published("irc-2021", "Table R507.6")
@pytest.mark.parametrize("row", cases("irc-2021_table-r507.6"))
def test_a_joist_spans_what_the_code_prints(row: Row) -> None:
    assert printed(row["printed"]) == joist_span(row, float(row["load_psf"]))


@pytest.mark.published("irc-2021", "Table R507.9.1.3(1)")
@pytest.mark.parametrize("row", cases("irc-2021_table-r507.9.1.3-1"))
def test_ledger_fasteners_stand_as_far_apart_as_printed(row: Row) -> None:
    load = float(row["load_psf"])
    spacing = ledger_spacing_capacity(
        row["fastener"], float(row["joist_span_ft"]) * FOOT, load * PSF, 1.0 if load == 40 else 1.15
    )
    assert printed(row["printed"]) == spacing / INCH


@pytest.mark.published("irc-2021", "Table R507.4")
@pytest.mark.parametrize("row", cases("irc-2021_table-r507.4"))
def test_a_post_stands_as_tall_as_printed(row: Row) -> None:
    load = float(row["area_ft2"]) * 50 * POUND
    height = post_height_limit(load, 3.5 * INCH, 3.5 * INCH, 1450 * PSI, 510e3 * PSI)
    assert printed(row["printed"]) == height / INCH


@pytest.mark.published("irc-2021", "Table R1003.20")
@pytest.mark.parametrize("row", cases("irc-2021_r1003.20"))
def test_a_chimney_is_as_wide_as_so_many_heights_of_its_cricket(row: Row) -> None:
    assert printed(row["printed"]) == 1.2 / chimney_cricket_height(1.2, float(row["pitch_in_12"]) / 12)


@pytest.mark.published("irc-2021", "R1003.20")
def test_a_chimney_wider_than_thirty_inches_needs_a_cricket() -> None:
    assert [chimney_cricket_required(30 * INCH), chimney_cricket_required(30.1 * INCH)] == [False, True]


@pytest.mark.published("irc-2021", "R905.1.2")
@pytest.mark.parametrize("row", cases("irc-2021_r905.1.2"))
def test_an_ice_barrier_reaches_as_far_up_as_stated(row: Row) -> None:
    length = ice_barrier_length(
        float(row["overhang_in"]) * INCH, float(row["wall_in"]) * INCH, float(row["pitch_in_12"]) / 12
    )
    assert printed(row["printed"]) == length / INCH
