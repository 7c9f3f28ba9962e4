"""The line at 60 degrees from the roof edge."""

from __future__ import annotations

import pytest

from speclint.science.overhang import sheltered_height
from tests.published.printed import printed
from tests.published.printed_rows import cases


@pytest.mark.published("din-68800-2", "line at 60 degrees from the roof edge")
@pytest.mark.parametrize("row", cases("din-68800-2_line"))
def test_the_line_shelters_the_printed_share(row: dict[str, str]) -> None:
    depth = sheltered_height(1.0, 30.0)
    assert printed(row["printed"]) == (depth if row["asked"] == "depth" else 1 / depth)
