"""Sun on walls: where the light comes from, what stands before it, and the bounds between classes."""

from __future__ import annotations

import math

import pytest

from speclint.exposure.strike import sun_at, sun_before
from speclint.exposure.sun_climate import SunClimate
from speclint.measures.facts import Sheet, Working
from speclint.measures.sun import rises_before, sun_by_month
from tests.measures.knowing import found_knowing, taking
from tests.measures.sheets import found, sheet
from tests.measures.test_exposure import BOSTON, WALLS

FOOT = 0.3048
WALL = "wall south"
HOUSE = BOSTON + WALLS


def test_sun_is_unsure_by_haze_and_by_the_sunshine_of_one_station() -> None:
    level = found("site", "yearly sun", HOUSE)
    assert (0.9 * 0.85, 1.1 * 1.1) == (
        pytest.approx((level.low or 0) / level.value),
        pytest.approx((level.high or 0) / level.value),
    )


def test_where_no_sunshine_is_held_clouds_may_halve_a_clear_year() -> None:
    text = "site { latitude 21.3; longitude -157.9; terrain suburban }" + WALLS
    known = {("site", "latitude"): 0.0, ("site", "longitude"): -150.0}  # no station within 500 km
    level = found_knowing("site", "yearly sun", text, known)
    assert (0.5, 1.0) == (
        pytest.approx((level.low or 0) / level.value),
        pytest.approx((level.high or 0) / level.value),
    )


@pytest.mark.parametrize("name", ["sun dose", "ultraviolet dose"])
def test_a_dose_on_a_wall_is_as_unsure_as_the_sun_of_its_lot(name: str) -> None:
    dose = found(WALL, name, HOUSE)
    assert (0.9 * 0.85, 1.1 * 1.1) == (
        pytest.approx((dose.low or 0) / dose.value),
        pytest.approx((dose.high or 0) / dose.value),
    )


def test_an_ultraviolet_share_is_told_to_eight_parts_of_a_hundred() -> None:
    low = found_knowing(WALL, "ultraviolet share", HOUSE, {(WALL, "ultraviolet dose"): 20.0})
    assert (0.92, 1.08) == (
        pytest.approx((low.low or 0) / low.value),
        pytest.approx((low.high or 0) / low.value),
    )
    open_wall = sheet(HOUSE)["site"]["sun climate"].open_wall.ultraviolet
    tropics = found_knowing(WALL, "ultraviolet share", HOUSE, {(WALL, "ultraviolet dose"): 1.4 * open_wall})
    assert tropics.low is not None
    assert tropics.high is not None
    assert tropics.low < tropics.value < tropics.high


def test_snow_lies_in_months_below_freezing_and_throws_light_on_the_wall() -> None:
    site = found("site", "sun climate", HOUSE)
    assert ["snow is taken to lie on the ground in Jan, Feb, the months below freezing on the mean"] == [
        note for note in site.notes if "snow" in note
    ]
    snowy, bare = site.value, site.value._replace(snow=(False,) * 12)
    assert sunned_in(snowy, 1) > 1.1 * sunned_in(bare, 1)
    assert sunned_in(snowy, 7) == sunned_in(bare, 7)


def sunned_in(climate: SunClimate, month: int) -> float:
    """Ultraviolet light on an open north wall in a month. [kWh/m2]"""
    return sun_at(sun_before(climate.month(month), 0.0), (), 0.2, 0.04).ultraviolet


def _rises(text: str) -> list[tuple[float, float, float]]:
    facts = sheet(HOUSE + text)
    return [tuple(rise) for rise in rises_before(facts[WALL], Working(facts, facts[WALL], "x", "ratio"))]  # type: ignore[misc]


def test_a_barn_rises_as_its_top_stands_over_the_middle_of_the_wall() -> None:
    """18 in and half of 9 ft are 6 ft: 14 ft more at 60 ft; 30 ft either side of its middle at 60 ft."""
    rises = _rises("obstruction barn { before south; type building; distance 60'; height 20'; width 60' }")
    expected = (180.0, math.degrees(math.atan(30 / 60)), math.degrees(math.atan(14 / 60)))
    assert [expected] == [pytest.approx(rise) for rise in rises]


def test_leafy_trees_count_for_half_their_height_and_what_is_low_for_nothing() -> None:
    rises = _rises(
        "obstruction trees { before south; type leafy trees; distance 60'; height 40' }"
        "obstruction hedge { before south; type building; distance 60'; height 5' }"
    )
    assert [math.degrees(math.atan(14 / 60)), 0.0] == [pytest.approx(rise[2]) for rise in rises]


def test_a_stated_skyline_holds_for_the_eighth_of_the_round_about_its_bearing() -> None:
    text = BOSTON.replace("suburban", "suburban; skyline S 12 deg, W 5 deg") + WALLS
    facts = sheet(text)
    rises = rises_before(facts[WALL], Working(facts, facts[WALL], "x", "ratio"))
    assert [(180.0, 22.5, 12.0), (270.0, 22.5, 5.0)] == [pytest.approx(tuple(rise)) for rise in rises]


def test_the_courses_of_a_wall_have_its_area_together() -> None:
    facts = sheet(HOUSE)
    assert 40 * 9 * FOOT**2 == pytest.approx(sum(facts[WALL]["course areas"].areas))
    assert (30 * 9 + 30 * 11 / 2) * FOOT**2 == pytest.approx(sum(facts["wall west"]["course areas"].areas), rel=0.01)


def test_the_months_make_the_year() -> None:
    facts = sheet(HOUSE)
    months = sun_by_month(facts, facts[WALL])
    assert 12 == len(months)
    assert facts[WALL]["sun dose"] == pytest.approx(sum(months), rel=2e-3)


def test_a_wall_is_the_mean_of_its_courses_by_area() -> None:
    facts = sheet(HOUSE)
    wall = facts["wall west"]
    areas = wall["course areas"].areas
    rows = wall["course sun"].rows
    for name, attribute in (("sun dose", "total"), ("ultraviolet dose", "ultraviolet")):
        weighed = sum(getattr(row, attribute) * area for row, area in zip(rows, areas, strict=True))
        assert wall[name] == pytest.approx(weighed / sum(areas))
    open_wall = facts["site"]["sun climate"].open_wall
    assert wall["sun share"] == pytest.approx(wall["sun dose"] / open_wall.total)
    assert wall["worst course sun"] == pytest.approx(max(row.ultraviolet for row in rows) / open_wall.ultraviolet)


def test_the_porch_with_the_deepest_floor_takes_light_from_the_ground() -> None:
    def light(*floors: str) -> float:
        porches = "".join(
            f"porch p{at} {{ along south; length 10'; depth 6'; roof height 8'; floor below wood {floor}; "
            "roof pitch 2:12 }\n"
            for at, floor in enumerate(floors)
        )
        return float(sheet(HOUSE + porches)[WALL]["sun dose"])

    assert light('2"', "4'") == pytest.approx(light("4'", '2"'))
    assert light("4'", "4'") == pytest.approx(light('2"', "4'"))
    assert light('2"', '2"') != pytest.approx(light("4'", "4'"))


@pytest.mark.parametrize(
    ("share", "told"), [(0.25, "sheltered"), (0.251, "partly"), (0.6, "partly"), (0.601, "exposed")]
)
def test_classes_of_sun_end_at_a_quarter_and_at_six_tenths(share: float, told: str) -> None:
    assert told == found_knowing(WALL, "sun class", HOUSE, {(WALL, "ultraviolet share"): share}).value


@pytest.mark.parametrize(
    ("rain", "sun", "told"), [(0.35, 0.2, "no"), (0.36, 0.44, "yes"), (0.36, 0.45, "no"), (0.9, 0.449, "yes")]
)
def test_a_wall_dries_slowly_where_rain_passes_its_bound_and_sun_does_not(rain: float, sun: float, told: str) -> None:
    known = {(WALL, "rain exposure"): rain, (WALL, "sun share"): sun}
    assert told == found_knowing(WALL, "dries slowly", HOUSE, known).value


@pytest.mark.parametrize(
    ("site", "extra", "told"),
    [
        ("suburban", "", False),
        ("wooded", "", True),
        ("suburban", "obstruction o { before south; type building; distance 60'; height 9' }", True),
    ],
)
def test_calm_air_is_told_where_woods_or_a_building_keep_the_wind_off(site: str, extra: str, told: bool) -> None:
    known = {(WALL, "rain exposure"): 0.5, (WALL, "sun share"): 0.2}
    text = HOUSE.replace("suburban", site) + extra
    assert told == ("wind is kept off as well" in found_knowing(WALL, "dries slowly", text, known).notes)


@pytest.mark.parametrize(("sun", "hours"), [(1.1, 200.0), (1.0, 200.0), (0.5, 350.0), (0.0, 500.0)])
def test_a_wet_wall_dries_as_long_again_in_sun_and_four_times_as_long_in_shade(sun: float, hours: float) -> None:
    known = {(WALL, "rain hours"): 100.0, (WALL, "sun share"): sun}
    assert hours == pytest.approx(found_knowing(WALL, "wet hours", HOUSE, known).value)


@pytest.mark.parametrize(
    ("starts", "splash", "slow", "rain", "told"),
    [
        (0.0, 0.3, "no", 0.1, "4"),
        (0.29, 0.3, "no", 0.1, "3.2"),
        (0.3, 0.3, "no", 0.1, "2"),
        (0.3, 0.3, "no", 0.25, "2"),
        (0.3, 0.3, "no", 0.26, "3.1"),
        (0.3, 0.3, "yes", 0.75, "3.1"),
        (0.3, 0.3, "yes", 0.76, "3.2"),
        (0.3, 0.3, "no", 1.5, "3.1"),
        (0.3, 0.3, "no", 1.51, "3.2"),
    ],
)
def test_use_classes_follow_ground_splash_rain_and_drying(
    starts: float, splash: float, slow: str, rain: float, told: str
) -> None:
    known = {
        (WALL, "starts"): starts,
        (WALL, "splash height"): splash,
        (WALL, "dries slowly"): slow,
        (WALL, "rain exposure"): rain,
    }
    assert told == found_knowing(WALL, "use class", HOUSE, known).value


def test_what_is_known_is_taken_from_the_sheet() -> None:
    facts: Sheet = taking(HOUSE, {(WALL, "sun share"): 0.5})
    assert 0.5 == facts[WALL]["sun share"]
