"""What is promised of rain intensities, rain roses and hints for local rules."""

from __future__ import annotations

import pytest

from speclint.tables.local import ZONES, alaska_ground_snow, local_criteria, termite_zone
from speclint.tables.rain import SECTORS, nearest_rain_rose, rain_intensity, rain_roses
from speclint.tables.rows import UnknownRow, read_table
from speclint.units import FOOT, INCH, PSF


@pytest.mark.parametrize(
    ("city", "state", "inches", "standing"),
    [
        ("Fairbanks", "AK", 1.0, "second-hand"),
        ("mobile", "al", 4.6, "second-hand"),
        ("Denver", "CO", 2.4, "memory"),
    ],
)
def test_a_city_has_its_rain_of_an_hour_in_a_hundred_years(city: str, state: str, inches: float, standing: str) -> None:
    rain = rain_intensity(city, state)
    assert (inches, 60, 100, standing) == (
        round(rain.intensity / 25.4, 6),
        rain.duration,
        rain.return_period,
        rain.citation.standing,
    )


def test_rain_of_every_city_is_held() -> None:
    standings = [row.citation.standing for row in read_table("climate/rain_intensity.csv")]
    assert (217, 32) == (len(standings), standings.count("second-hand"))


def test_an_unknown_city_gives_the_nearest_of_its_state() -> None:
    with pytest.raises(UnknownRow) as missing:
        rain_intensity("Birminghan", "AL")
    assert "Birmingham, AL" == missing.value.nearest[0]


def test_the_nearest_rain_rose_comes_with_its_distance() -> None:
    rose, distance = nearest_rain_rose(44.1, -123.2)
    assert ("Eugene", True, 16) == (rose.name, distance < 10, len(rose.walls))


def test_walls_that_face_the_rain_get_most_of_it() -> None:
    eugene = next(rose for rose in rain_roses() if rose.name == "Eugene")
    assert "SSW" == SECTORS[eugene.walls.index(max(eugene.walls))]


def test_the_difference_of_opposite_walls_follows_the_direction_and_the_steadiness() -> None:
    from math import cos, pi, radians

    differences = [
        abs((rose.walls[i] - rose.walls[(i + 8) % 16]) / total - rose.steadiness * along)
        for rose in rain_roses()
        for i in range(16)
        for total in (pi * sum(rose.walls) / 16,)
        for along in (cos(radians(rose.rain_direction - i * 22.5)),)
    ]
    assert (62 * 16, True) == (len(differences), max(differences) < 0.02)


def test_roses_unfit_for_amounts_say_so() -> None:
    assert {"Mount Shasta", "Rapid City Ellsworth", "Northway"} == {rose.name for rose in rain_roses() if rose.doubt}


@pytest.mark.parametrize(
    ("state", "zone", "zones"),
    [
        ("MI", "slight to moderate", ("slight to moderate", "none to slight")),
        ("al", "very heavy", ("very heavy",)),
        ("TX", "moderate to heavy", ("very heavy", "moderate to heavy", "slight to moderate")),
    ],
)
def test_a_state_has_its_termite_zones(state: str, zone: str, zones: tuple[str, ...]) -> None:
    found = termite_zone(state)
    assert (zone, zones) == (found.zone, found.zones)


def test_lists_of_termite_zones_that_disagree_are_both_kept() -> None:
    found = [termite_zone(row.text("state")) for row in read_table("climate/termite_zones.csv")]
    assert ({"CT", "MA", "PA", "RI", "WV"}, 51) == ({one.state for one in found if one.other_list}, len(found))


def test_every_termite_zone_is_a_known_one() -> None:
    used = {row.text(column) for row in read_table("climate/termite_zones.csv") for column in ("zone", "other_list")}
    assert {*ZONES, ""} >= used


def test_an_unknown_state_has_no_termite_zone() -> None:
    with pytest.raises(UnknownRow):
        termite_zone("ZZ")


def test_local_criteria_are_given_as_lowest_and_highest() -> None:
    anchorage = next(one for one in local_criteria("AK") if one.locality == "Anchorage")
    assert ((42, 60), (50, 50), "second-hand") == (
        tuple(round(depth / INCH) for depth in anchorage.frost_depth or ()),
        tuple(round(snow / PSF) for snow in anchorage.ground_snow or ()),
        anchorage.citation.standing,
    )


def test_snow_for_roofs_is_not_taken_for_snow_on_the_ground() -> None:
    walden = next(one for one in local_criteria("CO") if one.locality.endswith("Walden"))
    assert (None, 52) == (walden.ground_snow, round((walden.roof_snow or (0.0,))[0] / PSF))


def test_elevations_of_local_criteria_are_in_meters() -> None:
    jerome = local_criteria("ID")[0]
    assert 4048 == round((jerome.elevation or (0.0,))[0] / FOOT)


def test_a_state_without_local_criteria_is_unknown() -> None:
    with pytest.raises(UnknownRow):
        local_criteria("HI")


def test_snow_on_the_ground_of_alaska_is_held() -> None:
    load, citation = alaska_ground_snow("whittier")
    assert (300, "second-hand") == (round(load / PSF), citation.standing)
