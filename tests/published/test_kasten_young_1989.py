"""The sun's way through the air."""

from __future__ import annotations

import pytest

from speclint.science.sky import air_mass
from tests.published.printed import printed
from tests.published.printed_rows import cases


@pytest.mark.published("kasten-young-1989", "approximation formula")
@pytest.mark.parametrize("row", cases("kasten-young-1989_formula"))
def test_the_air_mass_is_as_printed(row: dict[str, str]) -> None:
    assert printed(row["printed"]) == air_mass(float(row["asked"]))
