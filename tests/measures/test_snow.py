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


def test_no_snow_is_guessed() -> None:
    missing = absent("porch lake", "sliding snow", HOUSE.replace("ground snow 60 psf", 'weather "Duluth, MN"')).missing
    assert [("site", "ground snow")] == [(one.element, one.setting) for one in missing]


def test_the_edition_of_the_loads_is_told() -> None:
    notes = " ".join(found("roof main", "flat snow", HOUSE).notes)
    assert "2016" in notes
    assert "2022" in notes
