"""Present value of money whose price rises faster than others."""

from __future__ import annotations

import pytest

from speclint.science.cost import modified_uniform_present_value
from tests.published.printed import printed
from tests.published.printed_rows import cases


@pytest.mark.published("gsa-p100", "modified uniform present value")
@pytest.mark.parametrize("row", cases("gsa-p100_modified"))
def test_a_rising_price_is_worth_the_stated_factor(row: dict[str, str]) -> None:
    computed = modified_uniform_present_value(float(row["rate"]), float(row["rise"]), float(row["years"]))
    assert printed(row["printed"]) == computed
