"""Deck guide, 2012: joist spans."""

from __future__ import annotations

import pytest

from tests.published.joists import joist_span
from tests.published.printed import printed_feet
from tests.published.printed_rows import cases


@pytest.mark.published("awc-dca6-2012", "Table 2")
@pytest.mark.parametrize("row", cases("awc-dca6-2012_table-2"))
def test_a_joist_spans_what_the_guide_prints(row: dict[str, str]) -> None:
    assert printed_feet(row["printed"]) == joist_span(row, 40)
