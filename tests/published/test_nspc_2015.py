"""National plumbing code, 2015: rain in gallons a minute."""

from __future__ import annotations

import pytest

from speclint.science.roof_water import runoff
from tests.published.convert import GALLON_A_MINUTE, INCH_AN_HOUR, SQUARE_FOOT
from tests.published.printed import printed
from tests.published.printed_rows import cases


@pytest.mark.published("nspc-2015", "Appendix A.1")
@pytest.mark.parametrize("row", cases("nspc-2015_appendix-a"))
def test_a_roof_sheds_the_printed_gallons(row: dict[str, str]) -> None:
    flow = runoff(float(row["area_ft2"]) * SQUARE_FOOT, float(row["intensity_in_h"]) * INCH_AN_HOUR)
    assert printed(row["printed"]) == flow / GALLON_A_MINUTE
