"""The face of a wall, the wind at it and what stands before it: worked by hand."""

from __future__ import annotations

import math
from typing import Any

import pytest

from speclint.exposure.climates import widened
from speclint.exposure.courses import Courses
from speclint.exposure.face import Lean
from speclint.measures.exposure import course_height
from speclint.measures.faces import face_of
from speclint.measures.facts import Working
from speclint.science.driving_rain import hill_factor, obstruction_factor, terrain_roughness
from speclint.science.rain_standards import wall_factor
from tests.measures.knowing import found_knowing
from tests.measures.sheets import found, sheet

FOOT = 0.3048
HOUSE = """
site { weather "Boston, MA"; terrain suburban }
wall south { faces S; length 40'; height 9'; starts 18"; build log round 10"; course 9" }
wall west { faces W; length 30'; height 9'; peak 20'; starts 18"; build log round 10" }
roof main {
    covers south, west; gables west; form gable; pitch 8:12; eaves 2'; rakes 1'; edge drop 10"; gutters none
}
"""
WALL = "wall south"


def face(text: str, label: str = WALL, more: float = 0.0) -> tuple[Any, list[str]]:
    facts = sheet(text)
    work = Working(facts, facts[label], "x", "ratio")
    return face_of(facts[label], work, more), work.notes


def test_an_eave_wall_has_its_drip_below_its_top_and_the_rakes_past_its_ends() -> None:
    told, notes = face(HOUSE, more=0.5)
    expected = (180.0, 40 * FOOT, 9 * FOOT, 9 * FOOT, 2 * FOOT + 0.5, 10 / 12 * FOOT, FOOT, (), 0.0, 0.0)
    assert expected == (*(pytest.approx(value) for value in told[:7]), *told[7:10])
    assert [] == notes


def test_a_gable_has_its_drip_at_its_edge_and_the_eaves_past_its_ends() -> None:
    told, _ = face(HOUSE, "wall west")
    assert (20 * FOOT, FOOT, 0.0, 2 * FOOT) == (
        pytest.approx(told.peak),
        pytest.approx(told.reach),
        told.hangs,
        pytest.approx(told.past_ends),
    )


def test_a_peak_below_the_plate_counts_for_nothing() -> None:
    known = {("wall west", "peak"): 2.0}
    facts = sheet(HOUSE)
    facts["wall west"].told["peak"] = found_knowing("wall west", "peak", HOUSE, known)
    told = face_of(facts["wall west"], Working(facts, facts["wall west"], "x", "ratio"))
    assert 9 * FOOT == pytest.approx(told.peak)


def test_a_hip_has_its_eaves_past_every_end() -> None:
    told, _ = face(HOUSE.replace("form gable", "form hip").replace("gables west; ", ""))
    assert 2 * FOOT == pytest.approx(told.past_ends)


@pytest.mark.parametrize(
    ("text", "label", "words"),
    [
        (HOUSE.replace('edge drop 10"; ', ""), WALL, "drip edge taken level"),
        (HOUSE.replace("peak 20'; ", ""), "wall west", "no peak stated"),
        (HOUSE.replace("form gable", "form shed"), "wall west", "the high side of a shed's end is not told"),
    ],
)
def test_what_is_taken_of_a_face_is_told(text: str, label: str, words: str) -> None:
    assert any(note.startswith(words) for note in face(text, label)[1])
    assert not any(note.startswith(words) for note in face(HOUSE, label)[1])


def test_an_upper_storey_stands_out_at_its_height() -> None:
    told, _ = face(HOUSE.replace('course 9"', 'course 9"; upper storey 6"; upper storey height 5\''))
    assert (0.5 * FOOT, 5 * FOOT) == (pytest.approx(told.storey_out), pytest.approx(told.storey_at))


@pytest.mark.parametrize(
    ("length", "from_left", "left", "right", "noted"),
    [
        ("20'", "", 10.0, 30.0, True),
        ("40'", "", 0.0, 40.0, False),
        ("50'", "", 0.0, 40.0, False),
        ("20'", "from left 4'; ", 4.0, 24.0, False),
        ("50'", "from left 4'; ", 4.0, 54.0, False),
    ],
)
def test_a_porch_is_where_the_plan_puts_it_or_in_the_middle(
    length: str, from_left: str, left: float, right: float, noted: bool
) -> None:
    porch = f"porch p {{ along south; {from_left}length {length}; depth 8'; roof height 7'; roof pitch 3:12 }}"
    told, notes = face(HOUSE + porch)
    assert [Lean(left * FOOT, right * FOOT, 8 * FOOT, 5 * FOOT, 7 * FOOT)] == [pytest.approx(one) for one in told.leans]
    assert noted is any("taken in the middle" in note for note in notes)


def test_a_steep_porch_roof_ends_no_lower_than_the_wood() -> None:
    porch = "porch p { along south; length 40'; depth 8'; roof height 7'; roof pitch 12:12 }"
    assert 0.0 == face(HOUSE + porch)[0].leans[0].edge


@pytest.mark.parametrize(
    ("terrain", "category", "woods"),
    [("open water", "I", 1.0), ("open country", "II", 1.0), ("suburban", "III", 1.0), ("wooded", "III", 0.6)],
)
def test_the_wind_at_a_wall_is_that_of_its_terrain_at_its_eave(terrain: str, category: str, woods: float) -> None:
    expected = terrain_roughness(category, 10.5 * FOOT) * woods
    told = found(WALL, "wind factor", HOUSE.replace("suburban", terrain))
    bounds = (0.5, 1 / 0.6) if woods < 1 else (0.8, 1.25)
    assert (expected, expected * bounds[0], expected * bounds[1]) == (
        pytest.approx(told.value),
        pytest.approx(told.low),
        pytest.approx(told.high),
    )
    assert (woods < 1) is any(note.startswith("woods:") for note in told.notes)


def test_a_hill_speeds_the_wind() -> None:
    known = {("site", "hill slope"): 0.2}
    flat = found(WALL, "wind factor", HOUSE).value
    assert flat * hill_factor(0.2) == pytest.approx(found_knowing(WALL, "wind factor", HOUSE, known).value)


BARN = "obstruction barn {{ before south; type {type}; distance 60'; height {height}'{more} }}\n"


@pytest.mark.parametrize(
    ("type", "height", "more", "filled"),
    [
        ("building", 10.5, "", 1.0),  # as high as the eave
        ("bank", 30, "", 1.0),
        ("evergreens", 5.25, "", 0.5),
        ("leafy trees", 30, "", 0.0),
        ("building", 30, "; width 60'", math.degrees(math.atan(0.5)) / 60),
        ("building", 5.25, "; width 60'", math.degrees(math.atan(0.5)) / 120),
        ("building", 30, "; width 900'", 1.0),
    ],
)
def test_an_obstruction_counts_for_what_it_fills(type: str, height: float, more: str, filled: float) -> None:
    told = found(WALL, "obstruction factor", HOUSE + BARN.format(type=type, height=height, more=more))
    assert 1 - (1 - obstruction_factor(60 * FOOT)) * filled == pytest.approx(told.value)
    assert (filled > 0) is (told.low is not None)
    assert told.low is None or (told.value, 1.0) == (told.low, told.high)


def test_the_best_of_two_obstructions_counts() -> None:
    low, high = (
        BARN.format(type="building", height=3, more=""),
        BARN.replace("barn", "wood").format(type="bank", height=9, more=""),
    )
    both = {found(WALL, "obstruction factor", HOUSE + text).value for text in (low + high, high + low, high)}
    assert 1 == len(both)


def test_courses_are_those_of_the_logs_or_a_foot() -> None:
    def height(text: str) -> float:
        facts = sheet(text)
        return course_height(facts[WALL], Working(facts, facts[WALL], "x", "ratio"))

    assert (9 / 12 * FOOT, FOOT) == (pytest.approx(height(HOUSE)), height(HOUSE.replace('; course 9"', "")))
    assert FOOT == height(HOUSE.replace('build log round 10"; course', "build framed with siding; course"))


def test_rain_on_the_wood_is_half_of_what_passes_and_unsure_from_three_tenths_to_all_but_a_twentieth() -> None:
    known = {(WALL, "free driving rain"): 100.0, (WALL, "rain share"): 0.4}
    told = found_knowing(WALL, "rain on wall", HOUSE, known)
    low, high = widened((1.0, 1.0), (1.0, 1.0), (0.6, 1.9))
    assert (20.0, 20 * low, 20 * high) == (
        pytest.approx(told.value),
        pytest.approx(told.low),
        pytest.approx(told.high),
    )


def test_exposure_is_the_rain_that_passes_over_that_of_the_mean_open_wall() -> None:
    known = {(WALL, "free driving rain"): 100.0, (WALL, "rain share"): 0.4, (WALL, "mean open wall"): 80.0}
    assert 0.5 == pytest.approx(found_knowing(WALL, "rain exposure", HOUSE, known).value)
    assert 0.6 == pytest.approx(found_knowing(WALL, "rain kept off", HOUSE, known).value)
    known[WALL, "mean open wall"] = 0.0
    assert 0.0 == found_knowing(WALL, "rain exposure", HOUSE, known).value
    assert 0.0 == found_knowing(WALL, "exposed courses", HOUSE, known).value


def test_the_mean_open_wall_is_the_rain_of_the_lot_at_the_wind_of_the_wall() -> None:
    known = {("site", "driving rain"): 200.0, (WALL, "wind factor"): 0.7}
    assert 140.0 == pytest.approx(found_knowing(WALL, "mean open wall", HOUSE, known).value)


def test_the_years_of_a_record_widen_its_bounds() -> None:
    told = found(WALL, "free driving rain", HOUSE)
    assert any(note.startswith("on an open field by year: ") for note in told.notes)
    assert told.spread.startswith("least and greatest of 3 years, and the bounds of wind")
    known = {("site", "rain climate"): found("site", "rain climate", HOUSE).value._replace(years=1)}
    year = found_knowing(WALL, "free driving rain", HOUSE, known)
    low, high = widened((0.8, 1.25))
    assert (year.value * low, year.value * high) == (pytest.approx(year.low), pytest.approx(year.high))
    assert (told.low or 0) < (year.low or 0) < (year.high or 0) < (told.high or 0)


@pytest.mark.parametrize(
    ("exposure", "told"), [(0.25, "sheltered"), (0.26, "partly"), (0.75, "partly"), (0.76, "exposed")]
)
def test_classes_of_rain_end_at_a_quarter_and_three_quarters(exposure: float, told: str) -> None:
    assert told == found_knowing(WALL, "rain class", HOUSE, {(WALL, "rain exposure"): exposure}).value


def _rows(*shares: float) -> Courses:
    real = sheet(HOUSE)[WALL]["courses"].rows
    return Courses(
        tuple(
            row._replace(rain=share, rain_low=share / 2, rain_high=share * 2, hours=7 + share)
            for row, share in zip(real, shares, strict=False)
        )
    )


def test_courses_that_take_more_than_three_quarters_are_counted() -> None:
    """A share of 0.6 of 100 is 60, three quarters of 80; of 0.61 it is more."""
    known: dict[tuple[str, str], Any] = {
        (WALL, "free driving rain"): 100.0,
        (WALL, "mean open wall"): 80.0,
        (WALL, "courses"): _rows(0.6, 0.61, 0.9, 0.1),
    }
    assert 2.0 == found_knowing(WALL, "exposed courses", HOUSE, known).value
    lowest = found_knowing(WALL, "lowest course rain", HOUSE, known)
    assert (0.6, 0.3, 1.2) == (lowest.value, lowest.low, lowest.high)
    assert 7.6 == found_knowing(WALL, "rain hours", HOUSE, known).value


def test_rain_above_a_porch_is_that_of_the_courses_above_the_highest_roof() -> None:
    porches = "".join(
        f"porch p{at} {{ along south; length 10'; depth 6'; roof height {high}'; roof pitch 2:12 }}\n"
        for at, high in enumerate((1.2, 2, 1.5))
    )
    courses = _rows(0.9, 0.9, 0.9, 0.2, 0.2)  # of 9 in: 2 ft is in the third
    known: dict[tuple[str, str], Any] = {
        (WALL, "free driving rain"): 100.0,
        (WALL, "mean open wall"): 80.0,
        (WALL, "courses"): courses,
    }
    told = found_knowing(WALL, "exposure above porch", HOUSE + porches, known).value
    assert 0.25 == pytest.approx(told)
    known[WALL, "mean open wall"] = 0.0
    assert 0.0 == found_knowing(WALL, "exposure above porch", HOUSE + porches, known).value


def test_a_wall_ranks_behind_those_that_take_more() -> None:
    known = {(WALL, "rain exposure"): 0.5, ("wall west", "rain exposure"): 0.5}
    assert 1.0 == found_knowing(WALL, "rain rank", HOUSE, known).value
    known["wall west", "rain exposure"] = 0.6
    assert (2.0, 1.0) == tuple(found_knowing(label, "rain rank", HOUSE, known).value for label in (WALL, "wall west"))


@pytest.mark.parametrize(
    ("label", "storeys", "pitch", "kind"),
    [
        (WALL, 2.0, 0.37, "two-storey eave wall"),  # tan 20 degrees is 0.364
        (WALL, 2.0, 0.36, "two-storey under low roof"),
        (WALL, 3.0, 0.36, "two-storey under low roof"),
        (WALL, 3.0, 0.7, "three-storey eave wall"),
        ("wall west", 2.0, 0.7, "two-storey gable"),
        ("wall west", 3.0, 0.7, "three-storey gable"),
    ],
)
def test_the_wall_factor_of_the_standard_is_by_storeys_and_roof(
    label: str, storeys: float, pitch: float, kind: str
) -> None:
    known = {(label, "free driving rain"): 100.0, (label, "storeys"): storeys, ("roof main", "pitch"): pitch}
    told = found_knowing(label, "standard rain load", HOUSE, known)
    assert 100 * wall_factor(kind) == pytest.approx(told.value)
    assert f"taken as {kind};" in " ".join(told.notes)
