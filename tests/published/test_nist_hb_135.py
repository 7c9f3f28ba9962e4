"""Life-cycle costing: factors of present value."""

from __future__ import annotations

import pytest

from speclint.science.cost import (
    present_value_factor,
    present_value_of_coats,
    real_discount_rate,
    uniform_present_value,
)
from tests.published.printed import printed
from tests.published.printed_rows import cases


@pytest.mark.published("nist-hb-135", "single and uniform present value")
@pytest.mark.parametrize("row", cases("nist-hb-135_present-value"))
def test_money_spent_later_is_worth_the_stated_factor(row: dict[str, str]) -> None:
    rate, years = float(row["rate"]), int(row["years"])
    if row["asked"].startswith("every"):
        computed = present_value_of_coats(1.0, float(row["asked"].split()[1]), rate, years)
    elif row["asked"] == "single":
        computed = present_value_factor(rate, years)
    else:
        computed = uniform_present_value(rate, years)
    assert printed(row["printed"]) == computed


@pytest.mark.published("nist-hb-135", "real discount rate")
@pytest.mark.parametrize("row", cases("nist-hb-135_real-rate"))
def test_inflation_is_taken_out_of_the_discount_rate(row: dict[str, str]) -> None:
    assert printed(row["printed"]) == 100 * real_discount_rate(float(row["nominal"]), float(row["inflation"]))
