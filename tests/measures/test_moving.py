"""Parts beside a settling wall: how they are held, how far it comes down past them, and the tilt of porch roofs."""

from __future__ import annotations

import pytest

from speclint.measures.moving import Moving, moving_of
from tests.measures.sheets import absent, found, sheet

INCH = 0.0254
HOUSE = """
wall south { faces S; length 40'; height 100"; starts 18"; build log round 10"; settling 5% }
wall north { faces N; length 40'; height 100"; starts 18"; build framed with siding }
wall west { faces W; length 30'; height 100"; peak 200"; starts 18"; build log round 10"; settling 2% }
roof main { covers south, north, west; gables west; form gable; pitch 6:12; eaves 2' }
porch p { along south; depth 100"; length 40'; roof height 80"; roof pitch 3:12; hung on wall }
post a { under p; height 7'; inset 20" }
deck d { along south }
"""


def moving(text: str, label: str) -> Moving | None:
    return next((one for one in moving_of(sheet(HOUSE + text)) if one.part == label), None)


@pytest.mark.parametrize(
    ("text", "label", "past", "how", "inches", "room", "enough"),
    [
        ('junction j { roof main; wall south; slip 7" }', "junction j", "wall south", "slides", 5 + 1, 7, True),
        ('junction j { roof porch p; wall south; slip 5" }', "junction j", "wall south", "slides", 4 + 1, 5, True),
        ('junction j { roof porch p; wall south; slip 4.9" }', "junction j", "wall south", "slides", 4 + 1, 4.9, False),
        ('junction j { roof porch p; wall south; slip 0" }', "junction j", "wall south", "fixed", 4 + 1, 0, False),
        ("junction j { roof porch p; wall south }", "junction j", "wall south", "not stated", 4 + 1, None, None),
        ('chimney c { roof main; at ridge; slip 8" }', "chimney c", "roof main", "slides", 5 + 2, 8, True),
        (
            'window w { wall south; height 60"; frame slip; headspace 3.25" }',
            "window w",
            "wall south",
            "slides",
            3.25,
            3.25,
            True,
        ),
        (
            'window w { wall south; height 60"; frame slip; headspace 3.2" }',
            "window w",
            "wall south",
            "slides",
            3.25,
            3.2,
            False,
        ),
        (
            "ledger l { carries porch p; on stacked logs; slots yes }",
            "ledger l",
            "the wall behind it",
            "slides",
            5,
            None,
            True,
        ),
        (
            "ledger l { carries porch p; on stacked logs; slots no }",
            "ledger l",
            "the wall behind it",
            "fixed",
            5,
            None,
            False,
        ),
        (
            "ledger l { carries porch p; on stacked logs }",
            "ledger l",
            "the wall behind it",
            "not stated",
            5,
            None,
            None,
        ),
        ("stone s { at wall south; joined to logs slip gap }", "stone s", "the logs", "slides", 5, None, True),
        ("stone s { at wall south; joined to logs keyed }", "stone s", "the logs", "fixed", 5, None, False),
        (
            "stair s { to deck d; top fixed to settling wall }",
            "stair s",
            "the wall at its top",
            "fixed",
            5,
            None,
            False,
        ),
        ("rail r { on deck d; into wall socket }", "rail r", "the wall at its end", "fixed", 5, None, False),
        ("corner k { of south, north }", "corner k", "the walls it joins", "fixed", 5, 0, False),
        ("corner k { of south, north; slides yes }", "corner k", "the walls it joins", "slides", 5, None, True),
        ("corner k { of south, west }", "corner k", "the walls it joins", "fixed", 3, 0, False),
    ],
)
def test_what_a_wall_comes_down_past(
    text: str, label: str, past: str, how: str, inches: float, room: float | None, enough: bool | None
) -> None:
    one = moving(text, label)
    assert one is not None
    assert (past, how, enough) == (one.past, one.how, one.enough)
    assert inches * INCH == pytest.approx(one.down)
    assert (None if room is None else pytest.approx(room * INCH, abs=1e-9)) == one.room


@pytest.mark.parametrize(
    ("text", "label"),
    [
        ('window w { wall north; height 60"; frame fixed }', "window w"),
        ("ledger l { carries porch p; on foundation; slots no }", "ledger l"),
        ("ledger l { carries porch p; on band joist; slots no }", "ledger l"),
        ("stone s { at wall south; joined to logs apart }", "stone s"),
        ("stair s { to deck d; top fixed to deck }", "stair s"),
        ("rail r { on deck d; into wall clear }", "rail r"),
        ("corner k { of north, north }", "corner k"),
        ("deck e { along south }", "deck e"),
    ],
)
def test_what_nothing_comes_down_past(text: str, label: str) -> None:
    assert None is moving(text, label)


@pytest.mark.parametrize(
    ("adjuster", "how", "room", "enough"),
    [
        ('adjuster jack; travel 5"', "adjusts", 5, True),  # 5 % of 80 in, and an inch in hand
        ('adjuster jack; travel 4.9"', "adjusts", 4.9, False),
        ("adjuster jack", "adjusts", None, None),
        ("adjuster none", "fixed", 0, False),
        ("height 7'", "not stated", 0, None),
    ],
)
def test_a_post_follows_by_the_travel_of_its_adjuster(
    adjuster: str, how: str, room: float | None, enough: bool | None
) -> None:
    text = HOUSE.replace("height 7'", f"height 7'; {adjuster}" if "height" not in adjuster else adjuster)
    one = next(one for one in moving_of(sheet(text)) if one.part == "post a")
    assert (how, enough) == (one.how, one.enough)
    assert 5 * INCH == pytest.approx(one.down)
    assert (None if room is None else pytest.approx(room * INCH, abs=1e-9)) == one.room


@pytest.mark.parametrize(
    ("travel", "never", "left"),
    [
        ("adjuster none", 4 / 80, 4 / 80),
        ('adjuster jack; travel 3"', 4 / 80, 1 / 80),
        ('adjuster jack; travel 9"', 4 / 80, 0.0),
    ],
)
def test_a_porch_roof_tilts_by_what_its_posts_do_not_follow(travel: str, never: float, left: float) -> None:
    """The wall comes down 4 in where the roof meets it; its post stands 80 in out."""
    text = HOUSE.replace("height 7'", f"height 7'; {travel}")
    tilt, pitch = found("porch p", "roof tilt", text), found("porch p", "pitch left", text)
    assert (never, left, never) == (pytest.approx(tilt.value), pytest.approx(tilt.low), pytest.approx(tilt.high))
    assert left == pytest.approx(found("porch p", "tilt left", text).value)
    assert (0.25 - never, 0.25 - never, 0.25 - left) == (
        pytest.approx(pitch.value),
        pytest.approx(pitch.low),
        pytest.approx(pitch.high),
    )


def test_the_post_that_stands_nearest_and_the_least_travel_decide() -> None:
    more = HOUSE.replace("height 7'", "height 7'; adjuster jack; travel 3\"")
    more += 'post b { under p; height 7\'; inset 60"; adjuster jack; travel 2" }\n'
    assert (4 / 40, 2 / 40) == (
        pytest.approx(found("porch p", "roof tilt", more).value),
        pytest.approx(found("porch p", "tilt left", more).value),
    )
    shoring = more.replace('inset 60"', 'inset 60"; temporary yes')
    assert 4 / 80 == pytest.approx(found("porch p", "roof tilt", shoring).value)


def test_why_a_tilt_is_not_told() -> None:
    unknown = HOUSE.replace("height 7'", "height 7'; adjuster jack")
    assert ["travel"] == [one.setting for one in absent("porch p", "tilt left", unknown).missing]
    assert None is found("porch p", "roof tilt", unknown).low
    inside = HOUSE.replace('inset 20"', 'inset 100"')
    assert (
        "post a stands no farther from the wall than the wall itself" == absent("porch p", "roof tilt", inside).reason
    )
    bare = "\n".join(line for line in HOUSE.splitlines() if not line.startswith("post"))
    assert "the plan names no lasting post that carries it" == absent("porch p", "roof tilt", bare).reason
    on_posts = HOUSE.replace("hung on wall", "hung on posts")
    assert (0.0, 0.0) == tuple(found("porch p", name, on_posts).value for name in ("roof tilt", "tilt left"))


@pytest.mark.parametrize(("meets", "inches"), [("80", 4.0), ("99", 4.95), ("100", 5.0), ("150", 5.0)])
def test_a_wall_comes_down_in_proportion_to_where_the_porch_meets_it(meets: str, inches: float) -> None:
    text = HOUSE.replace('roof height 80"', f'roof height {meets}"')
    assert inches * INCH == pytest.approx(found("post a", "settling past", text).value)
    assert (inches + 1) * INCH == pytest.approx(found("post a", "travel need", text).value)


@pytest.mark.parametrize(
    ("text", "label", "inches"),
    [
        ("chimney c { roof main; at ridge }", "chimney c", 5.0),  # the gable of 200 in at 2 % is 4 in
        ("chimney c { roof main; at slope }", "chimney c", 5.0),
        ("junction j { roof main; wall south }", "junction j", 5.0),  # the framed wall under the roof stands still
    ],
)
def test_a_part_is_passed_by_the_wall_that_comes_down_farthest(text: str, label: str, inches: float) -> None:
    assert inches * INCH == pytest.approx(found(label, "settling past", HOUSE + text).value)


@pytest.mark.parametrize(("at", "inches"), [("ridge", 200 * 0.04), ("slope", 150 * 0.04)])
def test_a_log_gable_lowers_the_roof_at_a_chimney_by_its_height_there(at: str, inches: float) -> None:
    text = HOUSE.replace("settling 2%", "settling 4%") + f"chimney c {{ roof main; at {at} }}"
    assert inches * INCH == pytest.approx(found("chimney c", "settling past", text).value)
    assert (inches + 2) * INCH == pytest.approx(found("chimney c", "slip need", text).value)


@pytest.mark.parametrize(("percent", "inches"), [("0.25", 0.0), ("0.26", 1.26)])
def test_flashing_needs_no_slip_where_a_quarter_inch_or_less_is_lost(percent: str, inches: float) -> None:
    text = HOUSE.replace("settling 5%", f"settling {percent}%").replace('roof height 80"', 'roof height 100"')
    text += "junction j { roof porch p; wall south }"
    assert inches * INCH == pytest.approx(found("junction j", "slip need", text).value)


GABLES = """
wall south { build log round 10"; height 9'; settling 3% }
wall west { build log round 10"; height 9'; peak 21'; settling 3% }
wall east { build log round 10"; height 9'; peak 19'; settling 3%; gable build logs }
roof main { covers south, west, east; gables west, east; form gable }
chimney hearth { roof main; at ridge }
"""


def test_a_ridge_comes_down_by_the_logs_between_plate_and_peak_of_the_higher_gable() -> None:
    told = found("roof main", "ridge settling", GABLES)
    assert 0.03 * 12 * 0.3048 == pytest.approx(told.value)
    assert ["wall west"] == [note.split(" is taken")[0] for note in told.notes if "is taken to be of logs" in note]


@pytest.mark.parametrize(("built", "feet"), [("gable build framed", 10.0), ("gable build logs", 12.0)])
def test_a_framed_gable_lowers_no_ridge(built: str, feet: float) -> None:
    text = GABLES.replace("peak 21';", f"peak 21'; {built};")
    assert 0.03 * feet * 0.3048 == pytest.approx(found("roof main", "ridge settling", text).value)


def test_a_chimney_is_passed_by_log_gables_alone() -> None:
    framed = GABLES.replace("peak 21';", "peak 21'; gable build framed;").replace(
        "gable build logs", "gable build framed"
    )
    assert 0.03 * 21 * 0.3048 == pytest.approx(found("chimney hearth", "settling past", GABLES).value)
    assert 0.03 * 9 * 0.3048 == pytest.approx(found("chimney hearth", "settling past", framed).value)
