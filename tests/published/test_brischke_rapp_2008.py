"""Decay by dose: the recalled coefficients agree with each other and with the critical dose of the literature."""

from __future__ import annotations

import pytest

from speclint.science.decay_dose import (
    CRITICAL,
    daily_dose,
    decay_rating,
    dose_to_rating,
    moisture_dose,
    temperature_dose,
)
from tests.published.printed import printed
from tests.published.printed_rows import cases

Row = dict[str, str]


@pytest.mark.published("brischke-rapp-2008", "dose of moisture")
@pytest.mark.parametrize("row", cases("brischke-rapp-2008_moisture"))
def test_a_moisture_content_adds_the_worked_dose(row: Row) -> None:
    assert printed(row["printed"]) == moisture_dose(float(row["moisture"]))


@pytest.mark.published("brischke-rapp-2008", "dose of warmth")
@pytest.mark.parametrize("row", cases("brischke-rapp-2008_warmth"))
def test_a_temperature_adds_the_worked_dose(row: Row) -> None:
    warm = float(row["temperature"])
    assert printed(row["printed"]) == temperature_dose(warm, warm, warm)


@pytest.mark.published("brischke-rapp-2008", "dose of a day")
@pytest.mark.parametrize("row", cases("brischke-rapp-2008_day"))
def test_a_day_adds_the_worked_dose(row: Row) -> None:
    warm = float(row["temperature"])
    assert printed(row["printed"]) == daily_dose(float(row["moisture"]), warm, warm, warm)


@pytest.mark.published("brischke-rapp-2008", "rating by dose")
@pytest.mark.parametrize("row", cases("brischke-rapp-2008_rating"))
def test_a_dose_has_the_worked_rating(row: Row) -> None:
    assert printed(row["printed"]) == decay_rating(float(row["dose"]))


@pytest.mark.published("brischke-rapp-2008", "rating by dose, solved for the dose")
@pytest.mark.parametrize("rating", [0.5, 1.0, 2.0, 3.0, 3.9])
def test_the_dose_to_a_rating_has_that_rating(rating: float) -> None:
    assert rating == pytest.approx(decay_rating(dose_to_rating(rating)))


def test_the_critical_dose_is_the_dose_to_half_a_rating() -> None:
    assert CRITICAL == pytest.approx(dose_to_rating(0.5), abs=0.5)


def test_the_dose_of_moisture_begins_at_nothing_where_it_is_cut_off() -> None:
    assert 0 <= moisture_dose(25.0) < 0.001 < moisture_dose(25.1)


def test_a_rating_that_is_never_reached_is_refused() -> None:
    with pytest.raises(ValueError, match=r"^rating: wanted a number above 0 and below 4; got 4$"):
        dose_to_rating(4.0)
