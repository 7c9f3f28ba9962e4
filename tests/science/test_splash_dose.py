"""Drips from roof edges, and the ranking of splash; the worked speeds were computed once by hand."""

from __future__ import annotations

import itertools
import math

import pytest

from speclint.model.words import SURFACES
from speclint.science.raindrops import fall_speed
from speclint.science.splash import SURFACE_FACTORS, drip_speed, splash_dose, splash_height


@pytest.mark.parametrize(("height", "speed"), [(0, 0.0), (1, 4.18), (2, 5.59), (3, 6.49), (4, 7.12), (6, 7.92)])
def test_a_drip_hits_as_fast_as_worked(height: float, speed: float) -> None:
    assert speed == pytest.approx(drip_speed(height), abs=0.006)


def test_a_short_drip_falls_freely_and_a_long_one_no_faster_than_a_raindrop() -> None:
    free = math.sqrt(2 * 9.81 * 0.01)
    assert (drip_speed(0.01), drip_speed(1000.0)) == pytest.approx((free, fall_speed(5.0)), rel=0.002)


def test_a_drip_from_a_storey_up_hits_much_harder_than_a_raindrop() -> None:
    energies = [diameter**3 * speed**2 for diameter, speed in ((5.0, drip_speed(3.0)), (2.0, fall_speed(2.0)))]
    assert 15.6 == pytest.approx(energies[0] / energies[1], abs=0.1)


def test_twice_the_clearance_cuts_the_splash_by_e() -> None:
    doses = [splash_dose(height, 0.4, "lawn", False) for height in (0.15, 0.30)]
    assert math.e == pytest.approx(doses[0] / doses[1])


def test_the_foot_of_a_wall_on_the_drip_line_over_paving_takes_one() -> None:
    assert 1.0 == splash_dose(0.0, 0.0, "paving", False)


@pytest.mark.parametrize(("softer", "harder"), list(itertools.permutations(SURFACE_FACTORS, 2)))
def test_the_dose_ranks_surfaces_as_the_height_does(softer: str, harder: str) -> None:
    heights = [splash_height(surface, 3.0, False, 0.3) for surface in (softer, harder)]
    doses = [splash_dose(0.1, 0.3, surface, False) for surface in (softer, harder)]
    assert (heights[0] < heights[1]) == (doses[0] < doses[1])


@pytest.mark.parametrize("surface", SURFACES)
def test_height_distance_and_gutter_each_lower_the_dose(surface: str) -> None:
    dose = splash_dose(0.2, 0.4, surface, False)
    lower = (
        splash_dose(0.3, 0.4, surface, False),
        splash_dose(0.2, 0.6, surface, False),
        splash_dose(0.2, 0.4, surface, True),
    )
    assert 0 < max(lower) < dose < 1


def test_an_unknown_surface_is_refused() -> None:
    with pytest.raises(ValueError, match=r"surface: wanted one of bare soil, lawn, .*; got 'ice'"):
        splash_dose(0.2, 0.4, "ice", False)
