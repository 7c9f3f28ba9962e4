"""When coats fall due: the season in which they go on, and days moved into it."""

from __future__ import annotations

from datetime import date

import pytest
from hypothesis import given
from hypothesis import strategies as st

from speclint.forecast.due import COATS_FROM, Season, due_day, due_years, in_season, season_of
from speclint.forecast.outlook import outlook
from speclint.forecast.rates import demo_rates
from speclint.forecast.whole import forecast_of
from tests.forecast.test_outlook import HOUSE, a_job, sheet

SUMMER = Season((5, 6, 7, 8, 9), COATS_FROM, False, "Duluth, MN")
START = date(2026, 11, 25)


def days(due: tuple[float, ...], season: Season = SUMMER, start: date = START, years: int = 30) -> list[str]:
    return [due_day(start, at).isoformat() for at in in_season(due, start, years, season)]


def years_to(day: str, start: date = START) -> float:
    return (date.fromisoformat(day) - start).days / 365.25


@pytest.mark.parametrize(
    ("due", "moved"),
    [
        ("2029-07-04", "2029-07-04"),
        ("2029-11-01", "2029-09-30"),
        ("2030-03-01", "2030-05-01"),
        ("2030-01-10", "2029-09-30"),
        ("2030-01-20", "2030-05-01"),
        ("2026-12-01", "2027-05-01"),
    ],
)
def test_a_coat_that_falls_due_in_winter_is_moved_to_the_nearest_day_of_the_season(due: str, moved: str) -> None:
    assert [moved] == days((years_to(due),))


def test_a_coat_is_not_moved_past_the_end_of_the_forecast() -> None:
    assert ["2027-09-30"] == days((years_to("2028-03-15"),), years=1.4)  # type: ignore[arg-type]


def test_two_coats_that_are_moved_to_one_day_are_one() -> None:
    assert ["2027-09-30"] == days((years_to("2027-10-20"), years_to("2027-12-20")))


def test_a_season_across_the_turn_of_the_year_is_kept() -> None:
    south = Season((1, 2, 3, 11, 12), COATS_FROM, False, "there")
    assert ["2027-11-01", "2028-01-15", "2028-03-31"] == days(
        (years_to("2027-10-20"), years_to("2028-01-15"), years_to("2028-04-09")), south
    )
    assert south.words("metric").startswith("Nov to Mar")


@given(st.floats(0.2, 12.0), st.sets(st.integers(1, 12), min_size=1), st.dates(date(1990, 1, 1), date(2100, 1, 1)))
def test_every_day_lies_in_the_season_and_in_the_forecast_and_none_is_far_off(
    life: float, months: set[int], start: date
) -> None:
    due = due_years(life * 365.25, 10)
    moved = in_season(due, start, 10, Season(tuple(sorted(months)), COATS_FROM, False, "x"))
    assert len(moved) <= len(due)
    assert list(moved) == sorted(set(moved))
    for at in moved:
        assert 0 <= at < 10
        assert due_day(start, at).month in months
        assert min(abs(at - one) for one in due) < 1


def test_the_season_is_that_of_the_station_and_of_the_stated_temperature() -> None:
    assert (5, 6, 7, 8, 9) == season_of(sheet(HOUSE)).months
    warm = season_of(sheet(HOUSE + "care { coating temperature 60 F }"))
    assert ((6, 7, 8), True) == (warm.months, warm.stated)
    assert "Jun to Aug, the months at Duluth, MN with a mean of 60 F or more (as the plan states)" in warm.words(
        "imperial"
    )


def test_where_no_month_is_warm_enough_nothing_is_moved_and_it_is_told() -> None:
    found = season_of(sheet(HOUSE + "care { coating temperature 90 F }"))
    assert found.none
    assert "no month at Duluth, MN has a mean of 90 F" in found.words("imperial")
    assert (0.1, 0.5) == in_season((0.1, 0.5), START, 30, found)


@pytest.mark.parametrize("site", ["", "site { terrain suburban }"])
def test_without_a_station_nothing_is_moved_and_the_weather_is_asked_for(site: str) -> None:
    found = season_of(sheet(site))
    assert "not known without the weather of the site" in found.words("imperial")
    assert (0.1, 0.5) == in_season((0.1, 0.5), START, 30, found)
    assert any("weather of site" in ask for ask in forecast_of(sheet(site), demo_rates(), 30, START).asks)


def test_the_forecast_coats_in_the_season_and_counts_the_money_as_before() -> None:
    found = forecast_of(sheet(HOUSE), demo_rates(), 30, START).outlook
    months = {due_day(START, at).month for part in found.parts for at in part.due}
    assert months
    assert months <= {5, 6, 7, 8, 9}
    still = outlook([part.job for part in found.parts], demo_rates(), 30)
    assert still.spent == found.spent
    assert still.present == found.present


def test_a_year_has_the_money_of_the_coats_that_are_moved_into_it() -> None:
    found = outlook([a_job(5.0, 100.0)], demo_rates(), 12, samples=5, moved=lambda due: tuple(at - 0.5 for at in due))
    assert [4, 9] == [year for year, money in enumerate(found.by_year) if money]
