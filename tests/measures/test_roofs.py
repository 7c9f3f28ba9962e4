"""Roofs, gutters and snow: the edges between answers, worked by hand."""

from __future__ import annotations

import math

import pytest

from speclint.science.roof_water import round_leader_capacity
from speclint.science.snow import slope_factor
from tests.measures.knowing import found_knowing
from tests.measures.sheets import absent, found

FOOT, INCH = 0.3048, 0.0254
HOUSE = """
site { weather "Boston, MA"; ground snow 60 psf; rain intensity 3 in/h }
wall south { faces S; length 40'; height 9'; starts 18"; build framed with siding }
wall north { faces N; length 40'; height 9'; starts 18"; build framed with siding; overhang 30" }
wall west { faces W; length 30'; height 9'; peak 20'; starts 18"; build log round 16" }
roof main {
    covers south, north, west; gables west; form gable; pitch 6:12; run 15'; eaves 2'; rakes 3'
    covering asphalt shingle; gutters none
}
chimney big { roof main; at slope; width 36" }
gutter south { on roof main; over south; profile ogee 5"; length 40'; fall 1/16" per ft }
downspout a { gutter south; count 2; size 3x4 }
downspout b { gutter south; size 2x3 }
"""


@pytest.mark.parametrize(
    ("covering", "twelfths"),
    [
        ("asphalt shingle", 2),
        ("wood shingle", 3),
        ("wood shake", 4),
        ("slate", 4),
        ("tile", 2.5),
        ("standing seam", 0.25),
        ("lapped metal", 3),
        ("membrane", 0.25),
    ],
)
def test_the_least_slope_of_a_covering_is_the_codes(covering: str, twelfths: float) -> None:
    told = found("roof main", "least slope", HOUSE.replace("asphalt shingle", covering))
    assert twelfths / 12 == pytest.approx(told.value)
    expected = "memory" if covering in ("lapped metal", "membrane") else "second-hand"
    assert [expected] == [citation.standing for citation in told.citations]


def test_the_ice_barrier_is_by_the_farthest_eave_and_a_framed_wall_of_six_and_a_half_inches() -> None:
    expected = (30 + 6.5 + 24) * INCH * math.hypot(1, 0.5)
    told = found("roof main", "ice barrier need", HOUSE)
    assert expected == pytest.approx(told.value)


def test_the_thickest_wall_below_an_eave_counts() -> None:
    text = HOUSE.replace(
        'starts 18"; build framed with siding }\nwall north', 'starts 18"; build log round 12" }\nwall north'
    )
    assert (30 + 12 + 24) * INCH * math.hypot(1, 0.5) == pytest.approx(
        found("roof main", "ice barrier need", text).value
    )


@pytest.mark.parametrize(
    ("covering", "pitch", "guards", "told"),
    [
        ("standing seam", "3:12", "no", "yes"),
        ("standing seam", "2.9:12", "no", "no"),
        ("lapped metal", "6:12", "no", "yes"),
        ("slate", "6:12", "no", "yes"),
        ("membrane", "6:12", "no", "yes"),
        ("tile", "12:12", "no", "no"),
        ("slate", "6:12", "yes", "no"),
    ],
)
def test_a_roof_is_slippery_if_smooth_steep_and_free(covering: str, pitch: str, guards: str, told: str) -> None:
    text = (
        HOUSE.replace("asphalt shingle", covering)
        .replace("6:12", pitch)
        .replace("gutters none", f"gutters none; snow guards {guards}")
    )
    assert told == found("roof main", "slippery", text).value


@pytest.mark.parametrize(
    ("covering", "pitch", "told"),
    [
        ("standing seam", 0.25 / 12, "no"),
        ("standing seam", 0.26 / 12, "yes"),
        ("tile", 2 / 12, "no"),
        ("tile", 0.17, "yes"),
    ],
)
def test_snow_slides_from_a_quarter_inch_to_the_foot_or_from_two_in_twelve(
    covering: str, pitch: float, told: str
) -> None:
    text = HOUSE.replace("asphalt shingle", covering)
    assert told == found_knowing("roof main", "snow slides", text, {("roof main", "pitch"): pitch}).value


@pytest.mark.parametrize(("guards", "slippery"), [("no", True), ("yes", False)])
def test_snow_on_a_smooth_roof_is_less_unless_guards_hold_it(guards: str, slippery: bool) -> None:
    text = HOUSE.replace("asphalt shingle", f"standing seam; snow guards {guards}")
    share = slope_factor(pitch=0.5, thermal_factor=1.1, slippery=slippery)
    flat = found("roof main", "flat snow", text).value
    assert flat * share == pytest.approx(found("roof main", "snow load", text).value)


def test_the_deepest_overhang_is_the_greatest_of_all() -> None:
    assert 3 * FOOT == pytest.approx(found("roof main", "deepest overhang", HOUSE).value)
    assert 30 * INCH == pytest.approx(
        found("roof main", "deepest overhang", HOUSE.replace("rakes 3'", "rakes 1'")).value
    )


@pytest.mark.parametrize(
    ("at", "width", "inches"), [("slope", 36, 9.0), ("slope", 30, 0.0), ("slope", 31, 7.75), ("ridge", 36, 0.0)]
)
def test_a_cricket_is_half_the_width_by_the_slope_and_none_where_narrow(at: str, width: float, inches: float) -> None:
    text = HOUSE.replace('at slope; width 36"', f'at {at}; width {width}"')
    assert inches * INCH == pytest.approx(found("chimney big", "cricket need", text).value)


def test_every_outlet_of_a_gutter_takes_its_share() -> None:
    """Two downspouts counted and one not: three outlets, 40 / 3 ft apart."""
    assert 40 / 3 * FOOT == pytest.approx(found("gutter south", "run to outlet", HOUSE).value)
    demand = found("gutter south", "demand", HOUSE).value
    assert (demand / 3, demand / 3) == tuple(
        pytest.approx(found(label, "demand", HOUSE).value) for label in ("downspout a", "downspout b")
    )
    bare = "\n".join(line for line in HOUSE.splitlines() if not line.startswith("downspout"))
    assert 40 * FOOT == pytest.approx(found("gutter south", "run to outlet", bare).value)
    assert ("yes", "no") == tuple(found("gutter south", "drained", text).value for text in (HOUSE, bare))
    assert (1.0, 0.0) == tuple(
        found(label, "gutters drawn", HOUSE + "porch p { along north }").value for label in ("roof main", "porch p")
    )


@pytest.mark.parametrize("drains", [600, 1000])
def test_a_stated_area_counts_before_the_roof(drains: int) -> None:
    told = found("gutter south", "roof area", HOUSE.replace("profile ogee", f"drains {drains} ft2; profile ogee"))
    assert drains * FOOT**2 == pytest.approx(told.value)
    assert [] == [note for note in told.notes if "more than is stated" in note]


def test_a_box_gutter_is_reckoned_as_an_ogee() -> None:
    box = HOUSE.replace('profile ogee 5"', 'profile rectangular 5"')
    told = found("gutter south", "capacity", box)
    assert found("gutter south", "capacity", HOUSE).value == told.value
    assert any("box gutter" in note for note in told.notes)


def test_a_gutter_asks_for_its_roof() -> None:
    text = HOUSE.replace("on roof main; over south; ", "")
    assert ["on"] == [one.setting for one in absent("gutter south", "demand", text).missing]


@pytest.mark.parametrize(
    ("covering", "guards", "porch", "more"),
    [
        ("standing seam", "no", "", True),
        ("asphalt shingle", "no", "", False),
        ("standing seam", "yes", "", False),
        ("standing seam", "no", "porch p { along south; length 40'; depth 8' }", False),
    ],
)
def test_snow_banks_deeper_below_a_slippery_eave(covering: str, guards: str, porch: str, more: bool) -> None:
    text = HOUSE.replace("asphalt shingle", f"{covering}; snow guards {guards}") + porch
    ground = found("site", "snow depth", text).value
    assert more is (found("wall south", "snow bank", text).value > ground + 0.01)
    assert ground == pytest.approx(found("wall west", "snow bank", text).value)


@pytest.mark.parametrize(
    ("gutter", "label", "told"),
    [("", "wall south", "yes"), ("", "wall north", "no"), ("", "wall west", "yes"), ("all", "wall north", "yes")],
)
def test_roof_water_is_kept_from_a_wall_by_a_gutter_or_a_gable(gutter: str, label: str, told: str) -> None:
    text = HOUSE.replace("gutters none", "gutters all eaves") if gutter else HOUSE
    assert told == found(label, "gutter above", text).value


@pytest.mark.parametrize(
    ("more", "line"),
    [
        ("", 2.0),
        ("porch p { along south; length 40'; depth 8' }", 8.0),
        ("porch p { along south; length 40'; depth 1' }", 2.0),
    ],
)
def test_water_lands_below_the_farther_of_roof_and_porch(more: str, line: float) -> None:
    assert line * FOOT == pytest.approx(found("wall south", "drip line", HOUSE + more).value)


CITY = HOUSE.replace("; rain intensity 3 in/h", "").replace("Boston, MA", "Chicago, IL")


def test_the_chart_of_ogee_gutters_asks_for_the_rain_of_five_minutes() -> None:
    assert ["rain intensity"] == [one.setting for one in absent("gutter south", "demand", CITY).missing]


def test_the_code_table_of_half_round_gutters_takes_the_hour_of_the_city() -> None:
    assert found("gutter south", "demand", CITY.replace("ogee", "half-round")).value > 0


def test_a_round_downspout_is_reckoned_by_its_diameter() -> None:
    spout = "downspout c { gutter south; size %s }\n"
    told = found("downspout c", "capacity", HOUSE + spout % '4"')
    assert round_leader_capacity(0.1016) == pytest.approx(told.value)
    assert ['4" is taken as round'] == list(told.notes)
    square = found("downspout c", "capacity", HOUSE + spout % "4x4")
    assert square.value > told.value
    assert found("downspout c", "capacity", HOUSE + spout % "2x3").notes == (
        "the guide prints its rule for leaders of 7 square inches and more",
    )


def test_an_ogee_gutter_besides_the_two_of_the_guides_is_told() -> None:
    assert () == found("gutter south", "capacity", HOUSE).notes
    assert any(
        "outside the range" in note for note in found("gutter south", "capacity", HOUSE.replace('5"', '8"')).notes
    )
