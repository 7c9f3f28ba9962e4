"""Sun and sky against pvlib, an independent program that only these tests need."""

from __future__ import annotations

import math
from collections.abc import Callable
from typing import Any

import numpy as np
import pandas as pd
import pvlib
import pytest

from speclint.science.sky import air_mass, clear_sky, clear_sky_exponents, extraterrestrial_normal, ultraviolet
from speclint.science.sun import days_since_2000, refraction, sun_position, year_of_sun
from speclint.science.sun_on_walls import incidence_cosine

YEAR = 2023
PRESSURE, WARMTH = 97773.0, 12.0
LATITUDES = (46.0, 65.0, -38.0)
WALLS = (0.0, 90.0, 180.0, 270.0)
Light = Callable[[float, float], tuple[float, float]]


def _times(minutes: int) -> pd.DatetimeIndex:
    start = pd.Timestamp(YEAR, 1, 1, 0, minutes // 2, tz="UTC")
    return pd.date_range(start, periods=365 * 24 * 60 // minutes, freq=f"{minutes}min")


def _positions(latitude: float, longitude: float, minutes: int) -> pd.DataFrame:
    return pvlib.solarposition.spa_python(
        _times(minutes), latitude, longitude, 300, PRESSURE, WARMTH, delta_t=67, how="numpy"
    )


def _ours(latitude: float, longitude: float, times: pd.DatetimeIndex) -> np.ndarray[Any, Any]:
    days = [days_since_2000(YEAR, int(time.day_of_year), time.hour + time.minute / 60) for time in times]
    return np.array([sun_position(day, latitude, longitude) for day in days])


@pytest.mark.parametrize(("latitude", "longitude"), [(46.0, 0.0), (65.0, -150.0), (-38.0, 145.0), (0.5, -78.0)])
def test_the_sun_stands_within_a_fiftieth_of_a_degree_all_year(latitude: float, longitude: float) -> None:
    theirs = _positions(latitude, longitude, 60)
    ours = _ours(latitude, longitude, theirs.index)
    up = theirs["elevation"].to_numpy() > -2
    height = ours[up, 0] - theirs["elevation"].to_numpy()[up]
    turn = (ours[up, 1] - theirs["azimuth"].to_numpy()[up] + 180) % 360 - 180
    across = turn * np.cos(np.radians(ours[up, 0]))
    assert up.sum() > 4000
    assert max(np.abs(height).max(), np.abs(across).max()) < 0.02


@pytest.mark.parametrize("latitude", LATITUDES)
def test_refraction_lifts_the_sun_alike(latitude: float) -> None:
    theirs = _positions(latitude, 0.0, 60)
    up = theirs[theirs["elevation"] > 0]
    lifts = [refraction(altitude, PRESSURE, WARMTH) for altitude in up["elevation"]]
    assert len(lifts) > 4000
    assert np.abs(lifts - (up["apparent_elevation"] - up["elevation"]).to_numpy()).max() < 0.001


def test_air_mass_and_the_sun_outside_the_air_are_the_same() -> None:
    altitudes, days = np.arange(0.0, 90.5, 0.5), np.arange(1, 366)
    masses = pvlib.atmosphere.get_relative_airmass(90 - altitudes, "kastenyoung1989")
    outside = pvlib.irradiance.get_extra_radiation(days, method="spencer")
    assert [air_mass(altitude) for altitude in altitudes] == pytest.approx(masses, rel=1e-9)
    assert [extraterrestrial_normal(day) for day in days] == pytest.approx(outside, rel=1e-9)


def _year_of_ours(latitude: float, light: Light) -> tuple[list[float], float, float]:
    """Beam on four walls, light of the sky and all light on the level. [kWh/m2]"""
    walls, sky, level = [0.0] * len(WALLS), 0.0, 0.0
    for sample in year_of_sun(latitude):
        beam, diffuse = light(sample.altitude, sample.day)
        for number, faces in enumerate(WALLS):
            share = incidence_cosine(sample.altitude, sample.azimuth, faces)
            walls[number] += beam * max(0.0, share) * sample.hours / 1000
        sky += diffuse * sample.hours / 1000
        level += (beam * math.sin(math.radians(sample.altitude)) + diffuse) * sample.hours / 1000
    return walls, sky, level


@pytest.mark.parametrize("latitude", LATITUDES)
def test_a_clear_year_on_four_walls(latitude: float) -> None:
    sun = _positions(latitude, 0.0, 10)
    sun = sun[sun["elevation"] > 0]
    for_beam, for_diffuse = clear_sky_exponents(0.35, 2.30)
    mass = pvlib.atmosphere.get_relative_airmass(sun["apparent_zenith"], "kastenyoung1989")
    outside = pvlib.irradiance.get_extra_radiation(sun.index.day_of_year.to_numpy(), method="spencer")
    beam, diffuse = outside * np.exp(-0.35 * mass**for_beam), outside * np.exp(-2.30 * mass**for_diffuse)
    level = beam * np.cos(np.radians(sun["apparent_zenith"])) + diffuse
    walls = [
        pvlib.irradiance.beam_component(90, faces, sun["apparent_zenith"], sun["azimuth"], beam).sum() / 6000
        for faces in WALLS
    ]
    ours, sky, whole = _year_of_ours(latitude, clear_sky)
    assert walls == pytest.approx(ours, rel=0.01)
    assert (diffuse.sum() / 6000, level.sum() / 6000) == pytest.approx((sky, whole), rel=0.005)


def _spectral_year(sun: pd.DataFrame, faces: float, albedo: float) -> tuple[float, float]:
    """Ultraviolet on a wall and on the level. [kWh/m2]"""
    zenith = sun["apparent_zenith"].to_numpy()
    spectra = pvlib.spectrum.spectrl2(
        apparent_zenith=zenith,
        aoi=pvlib.irradiance.aoi(90, faces, zenith, sun["azimuth"].to_numpy()),
        surface_tilt=90,
        ground_albedo=albedo,
        surface_pressure=PRESSURE,
        relative_airmass=pvlib.atmosphere.get_relative_airmass(zenith, "kastenyoung1989"),
        precipitable_water=1.4,
        ozone=0.31,
        aerosol_turbidity_500nm=0.1,
        dayofyear=sun.index.day_of_year.to_numpy(),
    )
    length = spectra["wavelength"]
    band = (length >= 300) & (length <= 400)
    level = spectra["dhi"] + spectra["dni"] * np.cos(np.radians(zenith))
    return tuple(
        float(np.trapezoid(light[band], length[band], axis=0).sum()) / 2000 for light in (spectra["poa_global"], level)
    )  # type: ignore[return-value]


@pytest.mark.parametrize("latitude", LATITUDES)
@pytest.mark.parametrize("albedo", [0.04, 0.2, 0.7])
def test_a_clear_year_of_ultraviolet_on_four_walls(latitude: float, albedo: float) -> None:
    sun = _positions(latitude, 0.0, 30)
    sun = sun[sun["apparent_elevation"] > 0.5]
    beams, sky, level = _year_of_ours(latitude, lambda altitude, day: ultraviolet(altitude, day, albedo))
    ours = [beam + sky / 2 + albedo * level / 2 for beam in beams]
    theirs = [_spectral_year(sun, faces, albedo) for faces in WALLS]
    assert [wall for wall, _ in theirs] == pytest.approx(ours, rel=0.015)
    assert [whole for _, whole in theirs] == pytest.approx([level] * len(WALLS), rel=0.01)
