"""The dose at which decay sets in, by wetting and inhibition."""

from __future__ import annotations

import pytest

from speclint.science.decay_dose import critical_dose
from tests.published.printed import printed
from tests.published.printed_rows import cases


@pytest.mark.published("meyer-veltrup-2017", "dose at the onset of decay")
@pytest.mark.parametrize("row", cases("meyer-veltrup-2017_critical"))
def test_the_reference_wood_has_the_stated_critical_dose(row: dict[str, str]) -> None:
    assert printed(row["printed"]) == critical_dose(float(row["wetting"]), float(row["inhibition"]))


def test_wood_that_wets_slowly_bears_more_of_a_dose() -> None:
    assert critical_dose(1.0, 2.0) < critical_dose(1.5, 2.0)
