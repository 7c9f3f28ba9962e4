"""Snow on roofs and banked at walls: hand-computed values, and what asks for what."""

from __future__ import annotations

import pytest

from tests.measures.sheets import absent, found

HOUSE = """
site { ground snow 60 psf }
wall south { length 40'; height 9'; starts 20" }
wall north { length 40'; height 9'; starts 20" }
wall east { length 30'; height 9' }
roof main {
    covers south, north, east; gables east; form gable; pitch 6:12; run 16'; eaves 2'
    covering standing seam; snow guards no; gutters none
}
porch lake { along south; depth 10'; length 40'; roof pitch 3:12; hung on posts }
deck sun { along north; depth 10' }
"""


@pytest.mark.parametrize(
    ("label", "name", "worked"),
    [
        ("roof main", "flat snow", "46 psf"),  # 0.7 x 1.1 x 60 = 46.2
        ("roof main", "snow load", "33 psf"),  # x (70 - 26.57) / 60
        ("roof main", "sliding snow", "333 lb/ft"),  # 0.4 x 46.2 x 18
        ("porch lake", "sliding snow", "22 psf"),  # 333 / 15
        ("porch lake", "snow load", "50 psf"),  # 0.7 x 1.2 x 60 = 50.4, none shed at 3:12
        ("porch lake", "snow with slides", "73 psf"),
        ("deck sun", "sliding snow", "22 psf"),
        ("wall north", "snow bank", "5'-9 3/4\""),  # 33 in on the ground, and 333 / 5 / 21.8 ft more
        ("wall south", "snow bank", "2'-9\""),  # the porch takes the slide
        ("wall east", "snow bank", "2'-9\""),  # a gable sheds nothing
    ],
)
def test_snow_is_as_worked_by_hand(label: str, name: str, worked: str) -> None:
    assert worked == found(label, name, HOUSE).shown()


def test_guards_hold_the_snow() -> None:
    text = HOUSE.replace("snow guards no", "snow guards yes")
    shown = {name: found(label, name, text).shown() for label, name in (("roof main", "snow slides"),)}
    assert {"snow slides": "no"} == shown
    assert 0.0 == found("porch lake", "sliding snow", text).value
    assert found("roof main", "snow load", text).value > found("roof main", "snow load", HOUSE).value


def test_shingles_slide_only_where_they_are_steep() -> None:
    shingles = HOUSE.replace("standing seam", "asphalt shingle")
    assert "yes" == found("roof main", "snow slides", shingles).value
    assert "no" == found("roof main", "snow slides", shingles.replace("6:12", "2:12")).value


def test_a_deck_under_a_porch_gets_no_slide() -> None:
    text = HOUSE + "deck lake { along south; under lake }\n"
    assert 0.0 == found("deck lake", "sliding snow", text).value


SHED = """
site { ground snow 60 psf }
wall south { length 40'; height 12'; starts 20" }
wall north { length 40'; height 9'; starts 20" }
roof main {
    covers south, north; form shed; pitch 6:12; run 20'; eaves 2'
    covering standing seam; snow guards no; gutters none
}
deck sun { along south; depth 10' }
deck shade { along north; depth 10' }
"""


def test_a_shed_roof_sheds_over_its_low_side_alone() -> None:
    text = SHED.replace("form shed;", "form shed; low side north;")
    told = {
        (label, name): found(label, name, text).value
        for label in ("wall south", "wall north")
        for name in ("eave above", "gutter above")
    }
    assert {
        ("wall south", "eave above"): "no",
        ("wall south", "gutter above"): "yes",
        ("wall north", "eave above"): "yes",
        ("wall north", "gutter above"): "no",
    } == told
    assert 0.0 == found("deck sun", "sliding snow", text).value
    assert found("deck shade", "sliding snow", text).value > 0
    banks = [found(wall, "snow bank", text).value for wall in ("wall south", "wall north")]
    assert banks[0] == pytest.approx(found("site", "snow depth", text).value)
    assert banks[1] > banks[0]


@pytest.mark.parametrize(("label", "name"), [("wall south", "eave above"), ("deck sun", "sliding snow")])
def test_the_low_side_of_a_shed_is_asked_for(label: str, name: str) -> None:
    assert [("roof main", "low side")] == [(one.element, one.setting) for one in absent(label, name, SHED).missing]


def test_a_shed_over_one_wall_sheds_over_that() -> None:
    text = SHED.replace("covers south, north;", "covers north;")
    assert "yes" == found("wall north", "eave above", text).value


def test_a_short_porch_takes_no_slide_from_the_rest_of_the_wall() -> None:
    short = HOUSE + "porch entry { along north; depth 5'; length 6'; roof pitch 3:12 }\n"
    for label, name in (("deck sun", "sliding snow"), ("wall north", "snow bank")):
        told = found(label, name, short)
        assert found(label, name, HOUSE).value == pytest.approx(told.value)
        assert any("covers a part of wall north only" in note for note in told.notes)
    long = short.replace("length 6'", "length 32'")
    assert 0.0 == found("deck sun", "sliding snow", long).value


@pytest.mark.parametrize(
    ("ground", "pitch", "worked"),
    [
        (15, "2:12", 15.0),  # 0.7 x 1.2 x 15 = 12.6
        (20, "1:12", 20.0),  # 16.8
        (23, "2:12", 20.0),  # 19.3
        (60, "2:12", 50.4),
        (20, "4:12", 16.8),  # 18.4 degrees: the minimum is for slopes below 15
    ],
)
def test_a_low_slope_carries_no_less_than_the_minimum(ground: int, pitch: str, worked: float) -> None:
    text = HOUSE.replace("60 psf", f"{ground} psf").replace("roof pitch 3:12", f"roof pitch {pitch}")
    assert worked * 47.88 == pytest.approx(found("porch lake", "snow load", text).value, abs=2)


def test_a_slide_is_added_to_the_snow_that_lies_and_not_to_the_minimum() -> None:
    text = HOUSE.replace("60 psf", "15 psf").replace("roof pitch 3:12", "roof pitch 2:12")
    slide = found("porch lake", "sliding snow", text).value
    assert 12.6 * 47.88 + slide == pytest.approx(found("porch lake", "snow with slides", text).value, abs=2)


def test_no_snow_is_guessed() -> None:
    missing = absent("porch lake", "sliding snow", HOUSE.replace("ground snow 60 psf", 'weather "Duluth, MN"')).missing
    assert [("site", "ground snow")] == [(one.element, one.setting) for one in missing]


def test_the_edition_of_the_loads_is_told() -> None:
    notes = " ".join(found("roof main", "flat snow", HOUSE).notes)
    assert "2016" in notes
    assert "2022" in notes
