"""Lengthwise shrinkage of wood, 1960: posts and other pieces along the grain keep their length."""

from __future__ import annotations

import pytest

from speclint.science.movement import lengthwise_shrinkage
from tests.published.printed import printed
from tests.published.printed_rows import cases


@pytest.mark.published("fpl-1093", "lengthwise shrinkage of normal wood")
@pytest.mark.parametrize("row", cases("fpl-1093_lengthwise"))
def test_wood_shortens_by_the_printed_percent(row: dict[str, str]) -> None:
    least, most = lengthwise_shrinkage(100.0, 30.0, float(row["after"]))
    assert printed(row["printed"]) == (least if row["end"] == "least" else most)
