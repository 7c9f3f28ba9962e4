"""The clear sky of the handbook: exponents of the air mass."""

from __future__ import annotations

import pytest

from speclint.science.sky import clear_sky_exponents
from tests.published.printed import printed
from tests.published.printed_rows import cases


@pytest.mark.published("ashrae-fundamentals-2013", "air mass exponents of the clear sky")
@pytest.mark.parametrize("row", cases("ashrae-fundamentals-2013_exponents"))
def test_the_exponents_have_the_printed_coefficients(row: dict[str, str]) -> None:
    which, term = row["asked"].split()
    none, first, second, both = (
        clear_sky_exponents(*depths)[["beam", "diffuse"].index(which)] for depths in ((0, 0), (1, 0), (0, 1), (1, 1))
    )
    computed = {
        "constant": none,
        "first": first - none,
        "second": second - none,
        "product": both - first - second + none,
    }
    assert printed(row["printed"]) == computed[term]
