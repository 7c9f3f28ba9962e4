"""Whether stated heights fit together, how wood is reached, and heights of water's stops: worked by hand."""

from __future__ import annotations

from typing import Any

import pytest

from tests.measures.knowing import absent_knowing, found_knowing
from tests.measures.sheets import absent, found

FOOT = 0.3048
HOUSE = """
site { weather "Boston, MA"; terrain suburban }
wall south { faces S; length 40'; height 10'; starts 18"; build log round 10" }
wall west { faces W; length 30'; height 9'; peak 20'; starts 18"; build log round 10" }
roof main { covers south, west; gables west; form gable; pitch 6:12; eaves 2'; rakes 1'; gutters none }
porch p { along south; length 40'; depth 8'; roof height 8'; floor below wood 6"; roof pitch 3:12; hung on posts }
beam b { under p; on a; size 6x10 }
post a { under p; height 7'; foot above grade 12"; inset 12" }
deck d { along south; height 12"; below wood 6"; depth 8' }
door front { wall south; outside decking; sill 0"; height 7'; step 6" }
"""


@pytest.mark.parametrize(
    ("label", "name", "feet"),
    [
        ("porch p", "headroom", 8 + 0.5 - 8 * 0.25 - 10 / 12),
        ("porch p", "room under eave", 10 - 2 * 0.5 - 8),
        ("post a", "top misfit", (1 + 7) - (1.5 + 8 - 7 * 0.25 - 10 / 12)),
        ("deck d", "height misfit", 0.0),
        ("door front", "step misfit", 0.0),
    ],
)
def test_heights_fit_as_worked_by_hand(label: str, name: str, feet: float) -> None:
    """A 6x10 counts by its deeper side, 10 in."""
    told = found(label, name, HOUSE).value / FOOT
    assert feet == pytest.approx(told, abs=0.03)


def test_the_deepest_beam_under_the_porch_counts_whichever_way_its_size_is_written() -> None:
    depth = found("porch p", "headroom", HOUSE).value
    more = HOUSE + "beam c { under p; on a; size 10x6 }\nbeam e { under p; on a; size 4x4 }\n"
    assert depth == pytest.approx(found("porch p", "headroom", more).value)
    bare = "\n".join(line for line in HOUSE.splitlines() if not line.startswith("beam"))
    assert 6.5 * FOOT == pytest.approx(found("porch p", "headroom", bare).value)


@pytest.mark.parametrize(
    ("height", "below", "grade", "feet"),
    [
        (1.0, 0.5, 0.0, 0.0),
        (2.0, 0.5, 0.0, 1.0),
        (0.5, 0.25, 0.0, 0.75),
        (2.0, 0.5, 0.05, 0.6),  # the ground falls 0.4 ft over 8 ft
        (2.0, 0.5, -0.05, 1.0),
        (2.0, 0.5, 0.2, 0.0),
    ],
)
def test_a_deck_may_differ_from_the_wall_by_the_fall_of_the_ground(
    height: float, below: float, grade: float, feet: float
) -> None:
    known = {
        ("deck d", "height"): height * FOOT,
        ("deck d", "below wood"): below * FOOT,
        ("wall south", "grade"): grade,
    }
    assert feet * FOOT == pytest.approx(found_knowing("deck d", "height misfit", HOUSE, known).value, abs=1e-9)


@pytest.mark.parametrize(
    ("step", "sill", "inches"), [('6"', '0"', 0), ('8"', '0"', 2), ('4"', '0"', 2), ('6"', '2"', 2)]
)
def test_a_step_is_the_decks_and_the_sills(step: str, sill: str, inches: float) -> None:
    text = HOUSE.replace('sill 0"; height 7\'; step 6"', f"sill {sill}; height 7'; step {step}")
    assert inches / 12 * FOOT == pytest.approx(found("door front", "step misfit", text).value)


@pytest.mark.parametrize(
    ("label", "name", "text", "reason"),
    [
        ("porch p", "room under eave", HOUSE.replace("on posts", "on main roof"), "the main roof carries on over it"),
        (
            "porch p",
            "room under eave",
            HOUSE.replace("porch p { along south", "porch p { along west"),
            "it runs along no eave",
        ),
        ("post a", "top misfit", HOUSE.replace("under p;", "under d;"), "it carries no porch roof"),
        ("door front", "step misfit", HOUSE.replace("outside decking; ", ""), "no one deck is outside it"),
        ("door front", "step misfit", HOUSE + 'deck e { along south; height 12"; below wood 6" }\n', "no one deck"),
    ],
)
def test_why_a_fit_is_not_told(label: str, name: str, text: str, reason: str) -> None:
    assert absent(label, name, text).reason.startswith(reason)


def test_the_drip_edge_as_stated_counts_before_reach_and_pitch() -> None:
    text = HOUSE.replace("eaves 2'", "eaves 2'; edge drop 3\"")
    assert (10 - 0.25 - 8) * FOOT == pytest.approx(found("porch p", "room under eave", text).value)


def test_the_lowest_of_its_eave_walls_is_over_a_porch() -> None:
    north = HOUSE + "wall north { faces N; length 40'; height 9.5'; starts 18\"; build log round 10\" }\n"
    text = north.replace("covers south, west", "covers south, west, north").replace(
        "along south; length", "along south, north; length"
    )
    assert (9.5 - 1 - 8) * FOOT == pytest.approx(found("porch p", "room under eave", text).value)


@pytest.mark.parametrize(
    ("reach", "wood", "slope", "roofs", "told"),
    [
        (2.0, 2.0, 0.0, False, "step stool"),
        (2.5, 2.5, 0.0, False, "step ladder"),
        (6.0, 5.0, 0.0, False, "extension ladder"),
        (6.0, 2.7384, 0.0, True, "extension ladder"),  # a foot over the porch roof
        (6.0, 2.7385, 0.0, True, "scaffold or lift"),
    ],
)
def test_wood_over_a_porch_roof_is_reached_from_a_scaffold(
    reach: float, wood: float, slope: float, roofs: bool, told: str
) -> None:
    text = (
        HOUSE
        if roofs
        else "\n".join(line for line in HOUSE.splitlines() if not line.startswith(("porch", "post", "beam")))
    )
    known: dict[tuple[str, str], Any] = {
        ("wall south", "reach"): reach,
        ("wall south", "wood height"): wood,
        ("wall south", "grade"): slope,
    }
    quantity = found_knowing("wall south", "access", text, known)
    assert told == quantity.value
    assert ("its highest wood stands over a porch roof, where no ladder has a foot" in quantity.notes) is (
        roofs and wood > 2.7384
    )


@pytest.mark.parametrize(("reach", "rails"), [(3.0, False), (3.1, True)])
def test_a_platform_over_ten_feet_needs_rails(reach: float, rails: bool) -> None:
    known: dict[tuple[str, str], Any] = {("wall south", "reach"): reach, ("wall south", "wood height"): 5.0}
    quantity = found_knowing("wall south", "access", HOUSE, known)
    assert "scaffold or lift" == quantity.value
    assert rails is any(note.startswith("a platform more than 10 ft up") for note in quantity.notes)


@pytest.mark.parametrize("means", ["step stool", "step ladder", "scaffold or lift"])
def test_the_foot_of_a_ladder_is_told_for_a_leaning_ladder_only(means: str) -> None:
    known: dict[tuple[str, str], Any] = {("wall south", "access"): means, ("wall south", "reach"): 4.0}
    assert (
        "a leaning ladder is not the means for it" == absent_knowing("wall south", "ladder foot", HOUSE, known).reason
    )
    known["wall south", "access"] = "extension ladder"
    assert 1.0 == found_knowing("wall south", "ladder foot", HOUSE, known).value


def test_two_porch_roofs_stand_in_the_way_by_the_higher() -> None:
    text = HOUSE + "porch q { along south; length 10'; depth 6'; roof height 5'; roof pitch 2:12; hung on posts }\n"
    known: dict[tuple[str, str], Any] = {("wall south", "reach"): 6.0, ("wall south", "wood height"): 8 * FOOT + 0.2}
    assert "extension ladder" == found_knowing("wall south", "access", text, known).value


@pytest.mark.parametrize(("below", "inches"), [('4"', 4.0), ('0"', 0.0), ('-2"', -2.0)])
def test_a_ledger_lies_below_the_logs_as_its_deck_does(below: str, inches: float) -> None:
    text = f"wall south {{ }}\ndeck d {{ along south; below wood {below} }}\nledger l {{ carries deck d }}"
    assert inches * FOOT / 12 == pytest.approx(found("ledger l", "below logs", text).value)


def test_the_ledger_of_a_porch_roof_lies_below_no_logs_and_asks_nothing() -> None:
    told = absent("ledger l", "below logs", "porch p { }\nledger l { carries porch p }")
    assert ("it carries the roof of a porch", ()) == (told.reason, told.missing)


def test_a_ledger_asks_what_it_carries() -> None:
    assert ["carries"] == [one.setting for one in absent("ledger l", "below logs", "ledger l { }").missing]


HUNG = HOUSE.replace("on posts", "on main roof")
NO_PITCH = HUNG.replace("roof pitch 3:12; ", "")


@pytest.mark.parametrize(("text", "falls"), [(HUNG, 0.25), (NO_PITCH, 0.5)])
def test_a_porch_under_the_main_roof_falls_by_its_own_pitch_or_failing_that_the_roofs(text: str, falls: float) -> None:
    room = 8 + 0.5 - 8 * falls - 10 / 12
    misfit = (1 + 7) - (1.5 + 8 - 7 * falls - 10 / 12)
    assert room == pytest.approx(found("porch p", "headroom", text).value / FOOT, abs=0.03)
    assert misfit == pytest.approx(found("post a", "top misfit", text).value / FOOT, abs=0.03)


@pytest.mark.parametrize(("text", "told"), [(HUNG, 0.25), (NO_PITCH, 0.0), (HOUSE, 0.0)])
def test_a_slope_breaks_where_the_main_roof_carries_on_at_another(text: str, told: float) -> None:
    assert told == pytest.approx(found("porch p", "break in slope", text).value)


def test_a_porch_under_a_roof_that_is_not_drawn_asks_for_its_own_pitch() -> None:
    text = "\n".join(line for line in NO_PITCH.splitlines() if not line.startswith("roof"))
    assert ["roof pitch"] == [one.setting for one in absent("porch p", "headroom", text).missing]


GROUND = """
foundation a { top 20" }
foundation b { top 12" }
wall high { starts 20" }
wall low { starts 9" }
"""


@pytest.mark.parametrize(("wall", "inches"), [("high", -8.0), ("low", 3.0)])
def test_a_wall_starts_below_the_lowest_foundation_there_is(wall: str, inches: float) -> None:
    assert inches * FOOT / 12 == pytest.approx(found(f"wall {wall}", "below foundation", GROUND).value)


def test_no_wall_starts_below_a_foundation_that_is_not_drawn_or_has_no_height() -> None:
    assert "the plan draws no foundation" == absent("wall low", "below foundation", 'wall low { starts 9" }').reason
    text = 'foundation a { }\nwall low { starts 9" }'
    assert ["top"] == [one.setting for one in absent("wall low", "below foundation", text).missing]


def test_the_lowest_wood_of_all_walls_is_over_the_foundation() -> None:
    text = 'foundation a { top 4" }\nwall high { starts 20" }\nwall low { starts 9" }'
    assert 5 * FOOT / 12 == pytest.approx(found("foundation a", "height to wood", text).value)
    assert 0.0 == found("foundation a", "height to wood", text.replace('top 4"', 'top 10"')).value
    stone = text + "\nstone s { at wall high; type anchored }"
    assert 5 * FOOT / 12 == pytest.approx(found("foundation a", "height to wood", stone).value)


@pytest.mark.parametrize(
    ("text", "reason"),
    [
        (GROUND, "which walls stand on it is not told"),
        ('foundation a { top 4" }', "which walls stand on it is not told"),
        (
            'foundation a { top 4" }\nwall low { starts 9" }\nwall south { }',
            "not every wall says where its wood starts",
        ),
        ('foundation a { top 4" }\nwall low { starts 9" }\nstone s { at wall low; type anchored }', "stone is drawn"),
        ('foundation a { top 4" }\nwall low { starts 9" }\nstone s { at foundation a; type anchored }', "stone is"),
    ],
)
def test_why_nothing_is_told_of_the_height_over_a_foundation(text: str, reason: str) -> None:
    assert absent("foundation a", "height to wood", text).reason.startswith(reason)
