"""The climate index of decay above ground."""

from __future__ import annotations

import pytest

from speclint.science.decay_climate import decay_hazard_class, decay_hazard_index
from tests.published.convert import celsius
from tests.published.printed import printed
from tests.published.printed_rows import cases

Row = dict[str, str]


@pytest.mark.published("scheffer-1971", "hazard classes")
@pytest.mark.parametrize("row", cases("scheffer-1971_classes"))
def test_an_index_falls_in_the_printed_class(row: Row) -> None:
    assert row["printed"] == decay_hazard_class(float(row["index"]))


@pytest.mark.published("scheffer-1971", "index formula")
@pytest.mark.parametrize("row", cases("scheffer-1971_index"))
def test_a_climate_has_the_stated_index(row: Row) -> None:
    temperatures = [celsius(float(value)) for value in row["temperatures_f"].split()]
    wet_days = [float(value) for value in row["wet_days"].split()]
    assert printed(row["printed"]) == decay_hazard_index(temperatures, wet_days)


def test_a_month_both_cold_and_dry_adds_nothing() -> None:
    assert decay_hazard_index([-20.0] * 12, [0.0] * 12) == 0
