"""Driving rain summed over the hours by arrays, drop sizes integrated by brute force, against the reduced tables."""

from __future__ import annotations

import numpy as np
import pytest

from speclint.exposure.cover import Edge
from speclint.exposure.rain_rays import rain_sectors
from speclint.exposure.strike import free_by_year, front, rain_at
from speclint.science.raindrops import DIAMETERS, SPEEDS
from speclint.tables.rain_record import reduced
from tests.tables.hourly_hours import STATIONS, rain_hours

DROPS = np.linspace(0.0, 12.0, 4001)
FALL = np.interp(DROPS, DIAMETERS, SPEEDS)


def share_past(slant: np.ndarray, rate: np.ndarray) -> np.ndarray:
    """Water in the drops that clear an edge over all water, by adding up the density of drop sizes."""
    scale = 1.30 * rate**0.232
    density = 2.25 * DROPS**1.25 / scale[:, None] ** 2.25 * np.exp(-((DROPS / scale[:, None]) ** 2.25))
    return (density * (FALL[None, :] <= slant[:, None])).sum(axis=1) / density.sum(axis=1)


@pytest.mark.parametrize("station", STATIONS)
def test_reduced_tables_against_arrays_of_hours(station: str) -> None:
    hours = [h for h in rain_hours(station, warm_only=True) if h.speed and h.direction is not None and h.rain]
    hours = [hour for hour in hours if not (hour.temperature or 0) < 0]
    speed, rain, direction = (np.array([getattr(h, n) for h in hours], float) for n in ("speed", "rain", "direction"))
    sectors = rain_sectors(reduced(rain_hours(station, warm_only=True))[1])
    for azimuth in (10.0, 100.0, 190.0, 280.0):
        across = np.cos(np.radians(direction - azimuth))
        free = 2 / 9 * speed * rain ** (8 / 9) * np.clip(across, 0, None)
        assert free.sum() == pytest.approx(free_by_year(sectors, azimuth)[0], rel=1e-6)
        before = across > 1e-9
        for reach, drop in ((0.3, 0.4), (0.6, 1.2), (1.2, 2.4)):
            slant = 0.75 * speed * across * drop / reach
            share = (free[before] * share_past(slant[before], rain[before])).sum() / free.sum()
            found = rain_at(front(sectors, azimuth), [Edge(reach, drop)], 0.75).share
            assert share == pytest.approx(found, abs=0.02)
