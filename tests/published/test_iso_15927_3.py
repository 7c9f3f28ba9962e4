"""Driving rain of an hour, and the factors of terrain, hills, obstructions and walls."""

from __future__ import annotations

import math

import pytest

from speclint.science.driving_rain import hill_factor, hourly_driving_rain, obstruction_factor, terrain_roughness
from speclint.science.rain_standards import wall_factor
from tests.published.printed import printed
from tests.published.printed_rows import cases

Row = dict[str, str]


@pytest.mark.published("iso-15927-3", "hourly index")
@pytest.mark.parametrize("row", cases("iso-15927-3_hour"))
def test_an_hour_drives_the_rain_that_the_equation_gives(row: Row) -> None:
    rain = hourly_driving_rain(float(row["speed"]), float(row["rate"]), float(row["angle"]))
    assert printed(row["printed"]) == rain


@pytest.mark.published("iso-15927-3", "terrain roughness")
@pytest.mark.parametrize("row", cases("iso-15927-3_terrain"))
def test_the_terrain_has_the_printed_constants(row: Row) -> None:
    low, high = (terrain_roughness(row["category"], height) for height in (20.0, 60.0))
    factor = (high - low) / math.log(3)
    least = terrain_roughness(row["category"], 0.0)
    length = 20.0 / math.exp(low / factor)
    computed = {"factor": factor, "length": length, "least": length * math.exp(least / factor)}
    assert printed(row["printed"]) == computed[row["asked"]]


@pytest.mark.published("iso-15927-3", "obstructions")
@pytest.mark.parametrize("row", cases("iso-15927-3_obstructions"))
def test_an_obstruction_leaves_the_recalled_share(row: Row) -> None:
    assert printed(row["printed"]) == obstruction_factor(float(row["distance_m"]))


@pytest.mark.published("iso-15927-3", "topography at a crest")
@pytest.mark.parametrize("row", cases("iso-15927-3_hills"))
def test_a_crest_takes_the_recalled_wind(row: Row) -> None:
    assert printed(row["printed"]) == hill_factor(float(row["slope"]))


@pytest.mark.published("iso-15927-3", "wall factors of low buildings, mean of the wall")
@pytest.mark.parametrize("row", cases("iso-15927-3_walls"))
def test_a_wall_takes_the_recalled_share(row: Row) -> None:
    assert printed(row["printed"]) == wall_factor(row["wall"])
