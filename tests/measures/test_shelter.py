"""What the roof keeps off, worked by hand: reach, cover, insets, and which porch or hood counts."""

from __future__ import annotations

import pytest

from tests.measures.knowing import found_knowing
from tests.measures.sheets import found

HOUSE = """
site { weather "Marquette, MI"; rain wind SW; terrain suburban }
wall south { faces S; length 40'; height 9'; build log round 10"; starts 18" }
wall west { faces W; length 30'; height 8'; peak 20'; build framed with stone; starts 18"; overhang 30" }
wall north { faces N; length 40'; height 9'; build framed with siding; starts 18" }
roof main { covers south, west, north; gables west; form gable; pitch 6:12; eaves 2'; rakes 1' }
corner sw { of south, west; ends 10"; lowest ends 16" }
"""
PORCH = "porch {name} {{ along south; length {length}; depth {depth}; roof height {height}; roof pitch 2:12 }}\n"


def porch(name: str = "p", length: str = "40'", depth: str = "8'", height: str = "7'") -> str:
    return PORCH.format(name=name, length=length, depth=depth, height=height)


@pytest.mark.parametrize(
    ("label", "name", "shown"),
    [
        ("wall south", "stacked", "yes"),
        ("wall west", "stacked", "no"),
        ("wall south", "wooden", "yes"),
        ("wall west", "wooden", "no"),
        ("wall west", "roof reach", "2'-6\""),  # its own
        ("wall south", "cover ratio", "0.22"),  # 2 / 9
        ("corner sw", "inset", '8"'),  # 24 in, the lesser of its walls, less 16 in
        ("corner sw", "past edge", '0"'),
        ("corner sw", "step out", '6"'),
    ],
)
def test_shelter_is_as_worked_by_hand(label: str, name: str, shown: str) -> None:
    assert shown == found(label, name, HOUSE).shown()


def test_the_longest_ends_count_wherever_they_are() -> None:
    upper = HOUSE.replace('ends 10"; lowest', 'ends 28"; lowest')
    assert ('4"', '-4"') == (
        found("corner sw", "past edge", upper).shown(),
        found("corner sw", "inset", upper).shown(),
    )


def test_log_ends_stop_by_the_lower_of_the_walls() -> None:
    lower = HOUSE.replace("height 9'; build log", "height 8'; build log")
    both = [found("corner sw", "inset need", text).value for text in (HOUSE, lower)]
    assert both[0] == pytest.approx(both[1])


@pytest.mark.parametrize(("length", "counts"), [("31'", False), ("32'", True), ("40'", True)])
def test_a_porch_along_four_fifths_of_a_wall_shelters_it(length: str, counts: bool) -> None:
    quantity = found("wall south", "porch cover", HOUSE + porch(length=length))
    assert (8 * 0.3048 if counts else 0.0) == pytest.approx(quantity.value)
    assert counts is not any("covers a part of" in note for note in quantity.notes)


def test_the_deepest_of_two_porches_covers() -> None:
    text = HOUSE + porch("a", depth="6'") + porch("b", depth="9'", height="8'")
    assert 9 * 0.3048 == pytest.approx(found("wall south", "porch cover", text).value)
    assert 2 / 9 < found("wall south", "cover ratio", text).value
    assert 9 / 8 == pytest.approx(found("wall south", "cover ratio", text).value)  # one foot above it: 2 / 1


@pytest.mark.parametrize(
    ("height", "ratio"),
    [("4'", 2 / 5), ("8'", 8 / 8), ("8'-11\"", 8 / (8 + 11 / 12))],  # the last leaves 1 in, which is no course
)
def test_the_lesser_of_the_parts_below_and_above_a_porch_counts(height: str, ratio: float) -> None:
    assert ratio == pytest.approx(found("wall south", "cover ratio", HOUSE + porch(height=height)).value)


def test_one_course_above_a_porch_is_no_part_of_its_own() -> None:
    known = {("wall south", "roof reach"): 0.1, ("wall south", "wood height"): 7 * 0.3048 + 0.3}
    assert 8 / 7 == pytest.approx(found_knowing("wall south", "cover ratio", HOUSE + porch(), known).value)
    known["wall south", "wood height"] += 0.01
    assert 0.1 / 0.31 == pytest.approx(found_knowing("wall south", "cover ratio", HOUSE + porch(), known).value)


@pytest.mark.parametrize(
    ("porches", "height"),
    [
        ("", 9 - 2 * 3**0.5),
        (porch(height="4'"), 5 - 2 * 3**0.5),
        (porch("a", height="3'") + porch("b", height="4'"), 5 - 2 * 3**0.5),
        (porch(height="8'"), 0.0),
        (porch(length="20'", height="4'"), 9 - 2 * 3**0.5),
    ],
)
def test_wood_below_the_slant_of_rain_is_exposed_but_for_a_porch(porches: str, height: float) -> None:
    """Rain 30 degrees off plumb misses 2 ft / tan 30 below the edge."""
    assert height * 0.3048 == pytest.approx(found("wall south", "exposed height", HOUSE + porches).value)


@pytest.mark.parametrize(("drop", "height"), [('12"', 8 - 2 * 3**0.5), ('-12"', 10 - 2 * 3**0.5)])
def test_the_slant_begins_at_the_edge_however_far_that_hangs(drop: str, height: float) -> None:
    text = HOUSE.replace("roof main {", f"roof main {{ edge drop {drop};", 1)
    assert height * 0.3048 == pytest.approx(found("wall south", "exposed height", text).value)


@pytest.mark.parametrize(
    ("faces", "told"), [("165 deg", "yes"), ("164 deg", "no"), ("285 deg", "yes"), ("286 deg", "no"), ("45 deg", "no")]
)
def test_a_wall_within_60_degrees_of_the_rain_wind_faces_it(faces: str, told: str) -> None:
    assert told == found("wall south", "faces rain", HOUSE.replace("faces S", f"faces {faces}")).value


def test_the_rain_wind_is_reckoned_round_north() -> None:
    text = HOUSE.replace("rain wind SW", "rain wind 350 deg").replace("faces S", "faces 50 deg")
    assert "yes" == found("wall south", "faces rain", text).value
    assert "no" == found("wall south", "faces rain", text.replace("faces 50", "faces 51")).value


@pytest.mark.parametrize(
    ("faces", "latitude", "told"),
    [
        (134, "45", "no"),
        (135, "45", "yes"),
        (292, "45", "yes"),
        (293, "45", "no"),
        (45, "-45", "yes"),
        (46, "-45", "no"),
        (248, "-45", "yes"),
        (247, "-45", "no"),
        (180, "-45", "no"),
        (0, "45", "no"),
        (0, "-45", "yes"),
    ],
)
def test_the_sunny_side_runs_with_the_noon_sun(faces: int, latitude: str, told: str) -> None:
    known = {("site", "latitude"): float(latitude)}
    text = HOUSE.replace("faces S", f"faces {faces} deg")
    assert told == found_knowing("wall south", "sunny", text, known).value


def test_a_wall_by_the_equator_has_the_sun_of_the_north() -> None:
    assert "yes" == found_knowing("wall south", "sunny", HOUSE, {("site", "latitude"): 0.0}).value


DOOR = "door front {{ wall south; sill {sill}; height 7'{more} }}\n"


@pytest.mark.parametrize(
    ("text", "cover", "ratio"),
    [
        (DOOR.format(sill='0"', more=""), 2.0, 2 / 9),
        (DOOR.format(sill="4'", more=""), 2.0, 2 / 5),
        (DOOR.format(sill='0"', more="; hood 3'"), 3.0, 3 / 7),
        (DOOR.format(sill='0"', more="; hood 1'"), 2.0, 2 / 9),
        (DOOR.format(sill='0"', more="") + porch(), 8.0, 8 / 7),
        (DOOR.format(sill="7'", more="") + porch(), 2.0, 2 / 2),  # the porch roof ends at its sill
        (DOOR.format(sill='0"', more="") + porch(length="12'"), 2.0, 2 / 9),
        (DOOR.format(sill='0"', more="; under p") + porch(length="12'"), 8.0, 8 / 7),
        (DOOR.format(sill="7'", more="; under p") + porch(length="12'"), 2.0, 2 / 2),
        (DOOR.format(sill="8'-11\"", more=""), 2.0, 2 / (0.3 / 0.3048)),  # no less than 0.3 m below
    ],
)
def test_an_opening_is_covered_by_the_best_of_roof_porch_and_hood(text: str, cover: float, ratio: float) -> None:
    assert (cover, ratio) == (
        pytest.approx(found("door front", "cover", HOUSE + text).value / 0.3048),
        pytest.approx(found("door front", "cover ratio", HOUSE + text).value),
    )


def test_a_window_has_no_hood() -> None:
    text = "window w { wall south; sill 3'; height 4' }\n"
    assert 2 * 0.3048 == pytest.approx(found("window w", "cover", HOUSE + text).value)


def test_a_purlin_end_is_as_far_inside_the_rake_as_it_stops_short() -> None:
    text = HOUSE + 'purlin ridge { wall west; count 3; reach 20" }\n'
    assert ('10"', "2'-6\"") == (
        found("purlin ridge", "inset", text).shown(),
        found("purlin ridge", "rake over it", text).shown(),
    )
