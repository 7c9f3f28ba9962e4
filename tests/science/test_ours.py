"""Values that no publication holds: ours, or common practice. They are written out here once more on purpose.

Nobody can check them against a page. What these tests hold is that none of them changes by accident.
"""

from __future__ import annotations

import math

import pytest

from speclint.science.access import access_class, scaffold_needs_fall_protection
from speclint.science.finish_factors import (
    coats_factor,
    first_coat_factor,
    sheen_factor,
    surface_factor,
    top_factor,
    ultraviolet_by_bearing,
    weather_wear,
)
from speclint.science.movement import check_risk
from speclint.science.overhang import log_end_inset_need, post_inset_need
from speclint.science.settlement import compaction_allowance, practice_allowance, settlement, stack_shrinkage
from speclint.science.settling_time import adjuster_turns, settled_share
from speclint.science.splash import splash_dose, splash_height
from speclint.science.sun_on_walls import ground_albedo, ultraviolet_albedo
from speclint.science.upkeep import face_surface_factor, log_end_area, log_surface_factor, stain_coverage

INCH, FOOT = 0.0254, 0.3048
GALLON = 231 * INCH**3


@pytest.mark.parametrize(
    ("surface", "age", "least", "most"),
    [
        ("planed", "new", 200, 225),
        ("planed", "old", 150, 175),
        ("sawn", "new", 125, 150),
        ("sawn", "old", 100, 125),
        ("hand-hewn", "new", 100, 150),
        ("hand-hewn", "old", 100, 125),
        ("peeled", "new", 150, 200),
        ("peeled", "old", 125, 175),
    ],
)
def test_square_feet_that_a_gallon_coats(surface: str, age: str, least: float, most: float) -> None:
    assert (least, most) == tuple(pytest.approx(one * GALLON / FOOT**2) for one in stain_coverage(surface, age))


@pytest.mark.parametrize(
    ("kind", "seasoning", "percent"),
    [
        ("scribed", "green", 6.0),
        ("scribed", "air-dried", 4.0),
        ("scribed", "standing dead", 4.0),
        ("scribed", "kiln-dried", 3.0),
        ("chinked", "green", 3.1),
        ("chinked", "air-dried", 3.0),
        ("chinked", "standing dead", 3.0),
        ("chinked", "kiln-dried", 1.0),
        ("milled", "green", 3.1),
        ("milled", "air-dried", 3.0),
        ("milled", "standing dead", 3.0),
        ("milled", "kiln-dried", 2.0),
    ],
)
def test_what_builders_allow_for_settling(kind: str, seasoning: str, percent: float) -> None:
    assert percent / 100 == pytest.approx(practice_allowance(kind, seasoning))
    # logs that are dry already come down by no more than that, with the bedding of coped ones the most it can be
    beds = 1.0 if kind == "scribed" else 0.0
    assert max(percent, beds) / 100 * 2.5 == pytest.approx(settlement(2.5, 10, 12, 4, 8, 30, kind, seasoning))


@pytest.mark.parametrize(("kind", "beds"), [("scribed", 0.01), ("milled", 0.0)])
def test_shrinkage_and_bedding_count_where_they_are_more_than_builders_allow(kind: str, beds: float) -> None:
    assert beds == compaction_allowance(kind == "scribed")
    shrinks = stack_shrinkage(2.5, 60, 8, (5 + 9) / 2, 30)
    assert shrinks + beds * 2.5 == pytest.approx(settlement(2.5, 60, 8, 5, 9, 30, kind, "kiln-dried"))


@pytest.mark.parametrize(
    ("seasoning", "shares"),
    [
        ("green", (0, 15, 30, 50, 75, 90, 100)),
        ("air-dried", (0, 25, 45, 65, 85, 95, 100)),
        ("standing dead", (0, 25, 45, 65, 85, 95, 100)),
        ("kiln-dried", (0, 40, 60, 80, 95, 100, 100)),
    ],
)
def test_percent_of_the_settlement_that_is_over_by_month(seasoning: str, shares: tuple[float, ...]) -> None:
    months = (0, 3, 6, 12, 24, 36, 60)
    assert [share / 100 for share in shares] == [pytest.approx(settled_share(month, seasoning)) for month in months]
    for at in range(6):
        middle = (months[at] + months[at + 1]) / 2
        assert (shares[at] + shares[at + 1]) / 200 == pytest.approx(settled_share(middle, seasoning))
    assert 1.0 == settled_share(90, seasoning)


def test_an_adjuster_is_lowered_at_visits_by_what_has_settled_since() -> None:
    """Green, 40 mm: 15, 30, 50, 62.5, 75, 82.5, 90 % at 3, 6, 12, 18, 24, 30, 36 months, then 2.5 % every half year."""
    turns = adjuster_turns(0.04, "green")
    assert [(3, 6), (6, 6), (12, 8), (18, 5), (24, 5), (30, 3), (36, 3), (54, 3), (60, 1)] == [
        (month, pytest.approx(1000 * lower)) for month, lower in turns
    ]
    assert 0.04 == pytest.approx(sum(lower for _, lower in turns))
    assert () == adjuster_turns(0.0, "green")


@pytest.mark.parametrize(
    ("height", "slope", "means"),
    [
        (8, 0.0, "step stool"),
        (8.01, 0.0, "step ladder"),
        (12, 0.0, "step ladder"),
        (12.01, 0.0, "extension ladder"),
        (20, 0.0, "extension ladder"),
        (20.01, 0.0, "scaffold or lift"),
        (7, 0.5, "step stool"),
        (9, 0.15, "step ladder"),
        (9, 0.16, "scaffold or lift"),
        (8, 0.1, "step ladder"),
        (9, -0.5, "step ladder"),
        (0, 0.0, "step stool"),
    ],
)
def test_what_wood_is_reached_with(height: float, slope: float, means: str) -> None:
    assert means == access_class(height * FOOT, slope)


@pytest.mark.parametrize(("feet", "needs"), [(9.99, False), (10, False), (10.01, True)])
def test_scaffolds_over_ten_feet_need_protection_from_falls(feet: float, needs: bool) -> None:
    assert needs is scaffold_needs_fall_protection(feet * FOOT)


@pytest.mark.parametrize(("colour", "heat"), [("light", 0.95), ("medium", 1.0), ("dark", 1.4)])
def test_wear_is_45_of_sun_20_of_rain_and_35_in_any_case(colour: str, heat: float) -> None:
    assert 0.35 == pytest.approx(weather_wear(0, 0, colour))
    assert 0.35 + 0.45 * heat * 0.5 + 0.20 * 2 == pytest.approx(weather_wear(0.5, 2.0, colour))


def test_light_by_bearing_where_the_sun_is_not_known() -> None:
    points = [0.40, 0.50, 0.71, 0.92, 1.00, 0.92, 0.71, 0.50, 0.40]
    assert points == [pytest.approx(ultraviolet_by_bearing(45.0 * at, 0.0)) for at in range(9)]
    assert 0.45 == pytest.approx(ultraviolet_by_bearing(22.5, 0.0))
    assert 0.45 / (1 + 0.8 * 0.5) == pytest.approx(ultraviolet_by_bearing(382.5, 0.5))


@pytest.mark.parametrize(("surface", "factor"), [("planed", 1.0), ("sawn", 1.0), ("hand-hewn", 0.95), ("peeled", 0.85)])
def test_coats_on_a_surface_and_on_a_round_face(surface: str, factor: float) -> None:
    assert (factor, 0.9 * factor) == (surface_factor(surface, False), pytest.approx(surface_factor(surface, True)))


def test_coats_on_level_tops_of_one_coat_and_by_sheen() -> None:
    tops = {top: top_factor(top) for top in ("metal", "board", "membrane", "bevel", "none")}
    assert {"metal": 1.0, "board": 1.0, "membrane": 1.0, "bevel": 0.7, "none": 0.5} == tops
    assert [0.75, 0.75, 1.0, 1.0] == [coats_factor(coats) for coats in (1, 1.9, 2, 3)]
    assert [0.9, 1.0, 1.1, 1.0] == [sheen_factor(True, sheen) for sheen in ("flat", "satin", "gloss")] + [
        sheen_factor(False, "gloss")
    ]


@pytest.mark.parametrize(
    ("film", "moisture", "factor"),
    [
        (True, 5, 1.0),
        (True, 15, 1.0),
        (True, 17, 0.95),
        (True, 19, 0.9),
        (True, 22, 0.6),
        (True, 25, 0.3),
        (True, 40, 0.3),
        (False, 10, 1.0),
        (False, 19, 1.0),
        (False, 24.5, 0.8),
        (False, 30, 0.6),
        (False, 60, 0.6),
    ],
)
def test_a_first_coat_on_wet_wood_lasts_less(film: bool, moisture: float, factor: float) -> None:
    assert factor == pytest.approx(first_coat_factor(film, moisture))


@pytest.mark.parametrize(
    ("inches", "risk"), [(0.12, "low"), (0.125, "moderate"), (0.24, "moderate"), (0.25, "high"), (0.3, "high")]
)
def test_checks_are_graded_at_an_eighth_and_a_quarter_inch(inches: float, risk: str) -> None:
    assert risk == check_risk(inches * INCH)


@pytest.mark.parametrize(("feet", "inches"), [(0.5, 6), (1, 0.58 * 12), (3, 0.58 * 36), (4, 24), (10, 24)])
def test_log_ends_stop_short_by_58_of_100_of_their_depth_within_6_and_24_inches(feet: float, inches: float) -> None:
    assert inches * INCH == pytest.approx(log_end_inset_need(feet * FOOT))


def test_a_post_stands_six_inches_in_and_three_tenths_of_half_its_height() -> None:
    assert (6 + 0.15 * 96) * INCH == pytest.approx(post_inset_need(8 * FOOT))


SURFACES = {
    "bare soil": 1.0,
    "lawn": 0.8,
    "mulch": 0.9,
    "washed stone": 0.5,
    "gravel": 0.7,
    "paving": 1.5,
    "decking": 1.5,
}


@pytest.mark.parametrize(("surface", "factor"), SURFACES.items())
def test_splash_by_surface_fall_gutter_and_drip_line(surface: str, factor: float) -> None:
    whole = 12 * INCH * factor
    assert max(4 * INCH, whole) == pytest.approx(splash_height(surface, 12 * FOOT, False, 0.0))
    assert max(4 * INCH, whole * 1.3) == pytest.approx(splash_height(surface, 12.1 * FOOT, False, 0.0))
    assert max(4 * INCH, whole * 1.3 * 0.3) == pytest.approx(splash_height(surface, 20 * FOOT, True, 0.0))
    assert max(4 * INCH, whole / 2) == pytest.approx(splash_height(surface, 0.0, False, 24 * INCH))
    assert 4 * INCH == splash_height(surface, 0.0, False, 60 * INCH)
    assert factor / 1.5 == pytest.approx(splash_dose(0.0, 0.0, surface, False))
    fades = math.exp(-0.2 / 0.3 - 0.3 / 0.15)
    assert factor / 1.5 * 0.2 * fades == pytest.approx(splash_dose(0.3, 0.2, surface, True))


def test_light_that_the_ground_throws_back() -> None:
    shares = (0.17, 0.20, 0.15, 0.30, 0.25, 0.20, 0.25)
    assert shares == tuple(ground_albedo(surface) for surface in SURFACES)
    assert (0.04, 0.7) == (ultraviolet_albedo(False), ultraviolet_albedo(True))


def test_surfaces_of_logs_are_those_of_their_arcs() -> None:
    assert math.pi / 2 == pytest.approx(log_surface_factor(0.3, 0.3))
    assert 2 * math.asin(0.5) == pytest.approx(log_surface_factor(0.3, 0.15))
    assert log_surface_factor(0.5, 0.2) == pytest.approx(face_surface_factor(0.25, 0.2))
    assert math.pi / 4 * 0.09 == pytest.approx(log_end_area(0.3))
    with pytest.raises(ValueError, match=r"^radius: "):
        face_surface_factor(-1.0, 0.2)
