"""Figures of builders, designers and the trade that no publication stands behind."""

from __future__ import annotations

from collections.abc import Callable

import pytest

from speclint.science.overhang import eave_for_wall_height
from speclint.science.roof_water import gutter_demand, ogee_capacity
from speclint.science.settlement import headspace_need, jack_travel_need, practice_allowance
from speclint.science.settling_time import roof_tilt, settled_share
from speclint.science.upkeep import GALLON, face_surface_factor, log_surface_factor, stain_coverage, stain_volume
from tests.published.convert import FOOT, INCH, INCH_AN_HOUR, SQUARE_FOOT, SQUARE_FOOT_INCH_AN_HOUR
from tests.published.printed import printed
from tests.published.printed_rows import cases

Row = dict[str, str]


@pytest.mark.parametrize("row", cases("practice_settling"))
def test_builders_allow_for_the_settling_they_tell_of(row: Row) -> None:
    assert printed(row["printed"]) == practice_allowance(row["kind"], row["seasoning"]) * float(row["height_in"])


@pytest.mark.parametrize("row", cases("practice_headspace"))
@pytest.mark.parametrize("need", [headspace_need, jack_travel_need])
def test_headspace_and_jack_travel_follow_the_settling_rate(
    row: Row, need: Callable[[float, float, float], float]
) -> None:
    room = need(float(row["height_in"]) * INCH, float(row["rate"]), float(row["margin_in"]) * INCH)
    assert printed(row["printed"]) == room / INCH


@pytest.mark.parametrize("row", cases("practice_settling-time"))
def test_walls_are_at_rest_when_builders_tell_that_they_are(row: Row) -> None:
    assert printed(row["printed"]) == 100 * settled_share(float(row["months"]), row["seasoning"])


@pytest.mark.parametrize("row", cases("practice_roof-tilt"))
def test_a_porch_roof_loses_the_fall_worked_by_hand(row: Row) -> None:
    lost = roof_tilt(float(row["settles_in"]) * INCH, 0.0, float(row["span_ft"]) * FOOT)
    assert printed(row["printed"]) == lost * 12


@pytest.mark.parametrize("row", cases("practice_log-surface"))
def test_round_logs_have_the_surface_worked_by_hand(row: Row) -> None:
    assert printed(row["printed"]) == log_surface_factor(0.3, 0.3 * float(row["course_over_diameter"]))


@pytest.mark.parametrize("row", cases("practice_log-surface"))
def test_a_face_of_the_radius_of_a_round_log_has_its_surface(row: Row) -> None:
    assert printed(row["printed"]) == face_surface_factor(0.15, 0.3 * float(row["course_over_diameter"]))


@pytest.mark.parametrize("row", cases("practice_coverage"))
def test_a_gallon_covers_what_the_trade_tells(row: Row) -> None:
    least, greatest = stain_coverage(row["surface"], row["age"])
    covered = least if row["end"] == "least" else greatest
    assert printed(row["printed"]) == covered * GALLON / SQUARE_FOOT


@pytest.mark.parametrize("row", cases("practice_stain"))
def test_a_wall_takes_the_stain_worked_by_hand(row: Row) -> None:
    coverage = float(row["coverage_ft2_gal"]) * SQUARE_FOOT / GALLON
    volume = stain_volume(float(row["area_ft2"]) * SQUARE_FOOT, float(row["coats"]), coverage)
    assert printed(row["printed"]) == volume / GALLON


@pytest.mark.parametrize("row", cases("practice_eave"))
def test_eaves_follow_wall_height_one_to_eight(row: Row) -> None:
    assert printed(row["printed"]) == eave_for_wall_height(float(row["wall_ft"]) * FOOT) / FOOT


@pytest.mark.parametrize("row", cases("practice_ogee"))
def test_ogee_gutters_carry_what_the_trade_chart_prints(row: Row) -> None:
    capacity = ogee_capacity(float(row["size_in"]) * INCH)
    assert printed(row["printed"]) == capacity / SQUARE_FOOT_INCH_AN_HOUR


@pytest.mark.parametrize("row", cases("practice_gutter-demand"))
def test_demand_follows_area_pitch_and_rain_rate(row: Row) -> None:
    demand = gutter_demand(
        float(row["area_ft2"]) * SQUARE_FOOT,
        float(row["pitch_in_12"]) / 12,
        float(row["intensity_in_h"]) * INCH_AN_HOUR,
    )
    assert printed(row["printed"]) == demand / SQUARE_FOOT_INCH_AN_HOUR
