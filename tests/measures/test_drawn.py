"""Whether what is drawn can stand so: corners, junctions, steps outside doors, windows over porch roofs."""

from __future__ import annotations

import pytest

from tests.measures.sheets import absent, found

FOOT = 0.3048


@pytest.mark.parametrize(
    ("one", "other", "told"),
    [
        ("E 20 S", "E 20 S", "no"),
        ("100 deg", "119 deg", "no"),
        ("100 deg", "120 deg", "yes"),
        ("350 deg", "9 deg", "no"),
    ],
)
def test_walls_of_a_corner_face_ways_twenty_degrees_apart(one: str, other: str, told: str) -> None:
    text = f"wall a {{ faces {one} }}\nwall b {{ faces {other} }}\ncorner c {{ of a, b }}"
    assert told == found("corner c", "turns", text).value


ROOFS = """
wall east { faces E; length 30' }
wall wing { faces %s; length 12' }
wall back { faces S; length 12' }
roof wing { covers wing, back; form %s }
junction wing { roof wing; wall east; type side }
"""


@pytest.mark.parametrize(
    ("faces", "form", "told"),
    [
        ("E", "shed; low side wing", "head"),
        ("E", "shed; low side back", "side"),
        ("N", "shed; low side wing", "side"),
        ("N", "gable", "side"),
        ("N 50 E", "gable; gables back", "head"),
        ("N 40 E", "gable; gables back", "side"),
    ],
)
def test_a_roof_meets_a_wall_by_the_way_it_falls(faces: str, form: str, told: str) -> None:
    assert told == found("junction wing", "lies", ROOFS % (faces, form)).value


def test_how_a_hip_meets_a_wall_is_not_told_and_asks_nothing() -> None:
    told = absent("junction wing", "lies", ROOFS % ("N", "hip"))
    assert (True, ()) == (bool(told.reason), told.missing)


def test_the_low_side_of_a_shed_is_asked_for() -> None:
    told = absent("junction wing", "lies", ROOFS % ("N", "shed"))
    assert ["low side"] == [one.setting for one in told.missing]


@pytest.mark.parametrize(("along", "told"), [("south", "head"), ("west", "side")])
def test_the_roof_of_a_porch_falls_from_the_walls_it_runs_along(along: str, told: str) -> None:
    text = f"""
    wall south {{ faces S }}
    wall west {{ faces W }}
    porch p {{ along {along} }}
    junction p {{ roof porch p; wall south }}
    """
    assert told == found("junction p", "lies", text).value


def test_a_porch_counts_the_junctions_that_name_it() -> None:
    text = "wall south { }\nwall west { }\nporch p { along south, west }\njunction a { roof porch p; wall south }"
    assert 1.0 == found("porch p", "junctions drawn", text).value
    assert 0.0 == found("porch p", "junctions drawn", text.split("junction")[0]).value


def test_the_surface_outside_stands_by_the_wood_the_sill_and_the_step() -> None:
    text = 'wall north { starts 20" above grade }\ndoor d { wall north; sill 1"; step 4" }'
    assert 17 * FOOT / 12 == pytest.approx(found("door d", "height outside", text).value)


WALL = """
wall west { length 30'; height 9'; peak 21' }
window w { wall west; from left 15'; width 4'; height 4'; sill 10' }
"""


@pytest.mark.parametrize(
    ("porch", "feet"),
    [
        ("length 30'; roof height 9'", 1.0),  # along the whole wall
        ("length 30'; roof height 13'", -3.0),  # across the window
        ("length 6'; from left 8'; roof height 9'", 1.0),  # its end is a foot past the side of the window
        ("length 20'; from left 16'; roof height 9'", 1.0),
    ],
)
def test_a_window_stands_over_the_porch_roof_below_it(porch: str, feet: float) -> None:
    text = WALL + f"porch p {{ along west; {porch} }}"
    assert feet * FOOT == pytest.approx(found("window w", "above porch roof", text).value)


@pytest.mark.parametrize(
    "porch",
    [
        "length 30'; roof height 14'",  # above its head
        "length 5'; from left 8'; roof height 9'",  # beside it
        "length 12'; roof height 9'",  # somewhere along the wall
    ],
)
def test_a_porch_roof_elsewhere_asks_nothing_of_a_window(porch: str) -> None:
    assert () == absent("window w", "above porch roof", WALL + f"porch p {{ along west; {porch} }}").missing


ROWS = """
wall south {{ length 40' }}
porch p {{ along south; depth 8' }}
deck d {{ along south; under p; depth 8' }}
post tall {{ under p; size 8x8; inset 10"; spacing 8'; {tall} }}
post low {{ under d; {low} }}
beam b {{ under d; on further }}
post further {{ inset 40"; spacing 8' }}
"""


@pytest.mark.parametrize(
    ("tall", "low", "told"),
    [
        ("", "inset 10\"; spacing 8'", "post low"),
        ("", "inset 17\"; spacing 8'", "post low"),  # an 8x8 counts 8 in
        ("", "inset 18\"; spacing 8'", "none"),
        ("", "inset 2\"; spacing 8'", "none"),
        ("", 'inset 10"; spacing 2.4 m', "post low"),
        ("", "inset 10\"; spacing 6'", "none"),
        ("", "inset 10\"; spacing 8'; temporary yes", "none"),
        ("", 'inset 10"', "none"),
        ("temporary yes", "inset 10\"; spacing 8'", "none"),
        ("stands on deck framing", "inset 10\"; spacing 8'", "none"),
        ('inset 44"', "inset 10\"; spacing 8'", "post further"),
    ],
)
def test_posts_of_a_porch_and_of_its_deck_on_one_spot(tall: str, low: str, told: str) -> None:
    text = ROWS.format(tall=tall, low=low)
    if tall.startswith("inset"):
        text = text.replace("inset 10\"; spacing 8'; inset", "spacing 8'; inset")
    assert told == found("post tall", "row on its spot", text).value


def test_a_post_that_carries_both_stands_on_no_spot_but_its_own() -> None:
    text = ROWS.format(tall="", low="inset 40\"; spacing 8'").replace("under p; size", "under p, d; size")
    assert "none" == found("post tall", "row on its spot", text).value


def test_a_post_whose_place_is_not_stated_asks_nothing() -> None:
    text = ROWS.format(tall="", low="inset 10\"; spacing 8'").replace("inset 10\"; spacing 8';  }", "}", 1)
    text = text.replace("size 8x8; inset 10\"; spacing 8';", "size 8x8;")
    assert () == absent("post tall", "row on its spot", text).missing
