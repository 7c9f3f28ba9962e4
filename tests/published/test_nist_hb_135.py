"""Life-cycle costing: factors of present value."""

from __future__ import annotations

import pytest

from speclint.science.upkeep import present_value_factor, uniform_present_value
from tests.published.printed import printed
from tests.published.printed_rows import cases


@pytest.mark.published("nist-hb-135", "single and uniform present value")
@pytest.mark.parametrize("row", cases("nist-hb-135_present-value"))
def test_money_spent_later_is_worth_the_stated_factor(row: dict[str, str]) -> None:
    rate, years = float(row["rate"]), int(row["years"])
    if row["asked"].startswith("every"):
        interval = int(row["asked"].split()[1])
        computed = sum(present_value_factor(rate, year) for year in range(interval, years, interval))
    elif row["asked"] == "single":
        computed = present_value_factor(rate, years)
    else:
        computed = uniform_present_value(rate, years)
    assert printed(row["printed"]) == computed
