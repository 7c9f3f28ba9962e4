"""Brown rot by dose, after recalled coefficients."""

from __future__ import annotations

import pytest

from speclint.science.decay_dose import brown_rot_rating, decay_rating
from tests.published.printed import printed
from tests.published.printed_rows import cases


@pytest.mark.published("brischke-meyer-veltrup-2016", "rating by dose, brown rot")
@pytest.mark.parametrize("row", cases("brischke-meyer-veltrup-2016_rating"))
def test_a_dose_of_brown_rot_has_the_worked_rating(row: dict[str, str]) -> None:
    assert printed(row["printed"]) == brown_rot_rating(float(row["dose"]))


@pytest.mark.parametrize("dose", [400.0, 600.0, 900.0])
def test_brown_rot_is_past_the_general_rating_from_the_onset_on(dose: float) -> None:
    assert decay_rating(dose) < brown_rot_rating(dose)
