"""Rain and sun bound to a plan: which weather is taken, what is asked, what each wall and member gets."""

from __future__ import annotations

import pytest

from speclint.exposure.climates import RainClimate
from speclint.quantity import Absent, Quantity
from speclint.science.driving_rain import hill_factor, obstruction_factor, terrain_roughness
from tests.measures.sheets import sheet

WALLS = """
wall south { faces S; length 40'; height 9'; starts 18"; ground lawn; build log round 10"; course 9" }
wall west { faces W; length 30'; height 9'; peak 20'; starts 18"; ground lawn; build log round 10"; course 9" }
wall north { faces N; length 40'; height 9'; starts 18"; ground lawn; build log round 10"; course 9" }
roof main { covers south, west, north; gables west; form gable; pitch 8:12; eaves 2'; rakes 1'; gutters none }
"""
BOSTON = 'site { weather "Boston, MA"; terrain suburban }'
INLAND = 'site { weather "Marquette, MI"; terrain suburban }'


def quantity(text: str, label: str, name: str) -> Quantity:
    facts = sheet(text)
    found = facts.quantity(facts[label], name)
    assert isinstance(found, Quantity), found
    return found


def absent(text: str, label: str, name: str) -> Absent:
    facts = sheet(text)
    found = facts.quantity(facts[label], name)
    assert isinstance(found, Absent), found
    return found


def climate(site: str) -> RainClimate:
    found = quantity(site + WALLS, "site", "rain climate").value
    assert isinstance(found, RainClimate)
    return found


@pytest.mark.parametrize(
    ("site", "source"),
    [
        (BOSTON, "record nearby"),
        ('site { weather "Marquette, MI"; terrain suburban; rain record "Boston, MA" }', "record"),
        (INLAND, "nearest records"),
        ('site { weather "Marquette, MI"; terrain suburban; rain wind SW }', "stated direction"),
        ('site { weather "Marquette, MI"; terrain suburban; rain shares S 40%, W 60% }', "stated shares"),
        ("site { latitude 21.3; longitude -157.9; terrain suburban }", "no direction"),
        ('site { weather "Boston, MA"; terrain suburban; rain wind NE }', "record nearby"),
        ('site { weather "Boston, MA"; terrain suburban; rain wind SW }', "stated direction"),
        ('site { weather "Boston, MA"; terrain suburban; rain wind SW; rain shares S 40%, W 60% }', "stated shares"),
    ],
)
def test_what_the_plan_states_wins_over_records_and_records_over_guesses(site: str, source: str) -> None:
    assert source == climate(site).source


@pytest.mark.parametrize(
    ("site", "from_", "within"),
    [
        ('site { weather "Marquette, MI"; terrain suburban; rain wind SW }', 225.0, 3.0),
        ('site { weather "Marquette, MI"; terrain suburban; rain shares W 100% }', 270.0, 3.0),
        (BOSTON, 63.0, 8.0),
        ('site { weather "Marquette, MI"; terrain suburban; rain record "Eugene, OR" }', 194.0, 8.0),
    ],
)
def test_rain_comes_from_where_it_is_said_to(site: str, from_: float, within: float) -> None:
    direction, _ = climate(site).direction
    assert abs((direction - from_ + 180) % 360 - 180) <= within


def test_each_fall_back_widens_the_range() -> None:
    def width(site: str) -> float:
        found = quantity(site + WALLS, "wall south", "free driving rain")
        assert found.low is not None
        assert found.high is not None
        return found.high / found.low

    record = width(BOSTON)
    stated = width('site { weather "Boston, MA"; terrain suburban; rain wind SW }')
    nearest = width(INLAND)
    unknown = width("site { latitude 21.3; longitude -157.9; terrain suburban }")
    assert record < stated < nearest < unknown


def test_without_any_direction_all_walls_are_driven_at_alike() -> None:
    site = "site { latitude 21.3; longitude -157.9; terrain suburban }"
    found = [quantity(site + WALLS, label, "free driving rain").value for label in ("wall south", "wall north")]
    assert found[0] == pytest.approx(found[1], rel=1e-6)


@pytest.mark.parametrize(
    ("text", "label", "name", "missing"),
    [
        ("site { terrain suburban }" + WALLS, "wall south", "rain share", "weather"),
        ('site { weather "Boston, MA" }' + WALLS, "wall south", "rain share", "terrain"),
        (BOSTON + WALLS.replace("faces S; ", ""), "wall south", "rain share", "faces"),
        (BOSTON + WALLS.replace("faces S; ", ""), "wall south", "sun dose", "faces"),
        (BOSTON + WALLS.replace("eaves 2'; ", ""), "wall south", "rain share", "eaves"),
    ],
)
def test_what_is_not_stated_is_asked_for(text: str, label: str, name: str, missing: str) -> None:
    assert missing in {one.setting for one in absent(text, label, name).missing}


def test_the_wind_factor_is_terrain_and_hill() -> None:
    text = BOSTON.replace("suburban", "suburban; hill slope 20%") + WALLS
    expected = terrain_roughness("III", 3.2) * hill_factor(0.2)
    assert expected == pytest.approx(quantity(text, "wall north", "wind factor").value)


def test_woods_are_calmer_than_suburbs() -> None:
    suburb = quantity(BOSTON + WALLS, "wall north", "wind factor")
    woods = quantity(BOSTON.replace("suburban", "wooded") + WALLS, "wall north", "wind factor")
    assert woods.value < suburb.value
    assert woods.high is not None
    assert woods.high == pytest.approx(suburb.value)


BARN = "obstruction barn { before south; type building; distance 60'; height 20'"


def test_an_obstruction_takes_from_the_rain_and_leaves_its_slant() -> None:
    text = BOSTON + WALLS + BARN + " }"
    factor = obstruction_factor(60 * 0.3048)
    assert factor == pytest.approx(quantity(text, "wall south", "obstruction factor").value)
    bare, behind = (quantity(plan, "wall south", "free driving rain") for plan in (BOSTON + WALLS, text))
    assert behind.value == pytest.approx(bare.value * factor)
    assert behind.high is not None
    assert behind.high >= bare.value
    assert quantity(text, "wall south", "rain share").value == pytest.approx(
        quantity(BOSTON + WALLS, "wall south", "rain share").value
    )


def test_a_post_shelters_less_than_a_barn() -> None:
    found = [
        quantity(BOSTON + WALLS + BARN + f"; width {width}' }}", "wall south", "obstruction factor").value
        for width in (1, 20, 60, 300)
    ]
    assert sorted(found, reverse=True) == found
    assert found[0] > 0.95


@pytest.mark.parametrize(
    ("obstruction", "least"), [("type leafy trees;  height 40'", 1.0), ("type building;  height 1'", 0.93)]
)
def test_bare_trees_and_low_things_keep_little_off(obstruction: str, least: float) -> None:
    text = BOSTON + WALLS + f"obstruction it {{ before south; distance 60'; {obstruction} }}"
    assert quantity(text, "wall south", "obstruction factor").value >= least


def test_the_year_by_year_sums_bound_the_free_driving_rain() -> None:
    found = quantity(BOSTON + WALLS, "wall south", "free driving rain")
    assert found.low is not None
    assert found.high is not None
    assert found.low < found.value < found.high
    assert "3 years" in found.spread


def test_the_parts_of_a_wall_add_up() -> None:
    facts = sheet(BOSTON + WALLS)
    wall = facts["wall west"]
    share, kept = wall["rain share"], wall["rain kept off"]
    assert 1.0 == pytest.approx(share + kept)
    assert wall["rain on wall"] == pytest.approx(wall["free driving rain"] * share / 2)
    assert wall["lowest course rain"] > share
    assert 1 == min(facts[label]["rain rank"] for label in ("wall south", "wall west", "wall north"))


def test_classes_follow_their_bounds() -> None:
    facts = sheet(BOSTON + WALLS)
    for label in ("wall south", "wall west", "wall north"):
        for measure, name in (("rain exposure", "rain class"), ("ultraviolet share", "sun class")):
            value = facts[label][measure]
            bound = 0.75 if name == "rain class" else 0.6
            expected = "sheltered" if value <= 0.25 else "partly" if value <= bound else "exposed"
            assert expected == facts[label][name]


def test_the_same_house_in_millimetres_gets_the_same() -> None:
    metric = (
        BOSTON
        + """
wall south {
    faces S; length 12192 mm; height 2743.2 mm; starts 457.2 mm; ground lawn; build log round 254 mm; course 228.6 mm
}
roof main { covers south; form gable; pitch 8:12; eaves 609.6 mm; rakes 304.8 mm; gutters none }
"""
    )
    for name in ("rain share", "free driving rain", "sun dose", "splash dose"):
        one = quantity(BOSTON + WALLS, "wall south", name).value
        assert one == pytest.approx(quantity(metric, "wall south", name).value, rel=1e-6)


def test_a_north_wall_that_rain_reaches_dries_slowly_and_a_south_wall_does_not() -> None:
    facts = sheet(BOSTON + WALLS)
    assert "yes" == facts["wall north"]["dries slowly"]
    assert "no" == facts["wall south"]["dries slowly"]


def test_a_wood_before_a_wall_takes_its_sun() -> None:
    text = BOSTON + WALLS + "obstruction pines { before south; type evergreens; distance 20'; height 60' }"
    bare, shaded = (quantity(plan, "wall south", "sun share").value for plan in (BOSTON + WALLS, text))
    assert shaded < 0.6 * bare


def test_a_skyline_of_the_lot_takes_low_sun() -> None:
    hill = BOSTON.replace("suburban", "suburban; skyline W 30 deg, SW 30 deg, NW 30 deg")
    bare, shaded = (quantity(plan + WALLS, "wall west", "sun dose").value for plan in (BOSTON, hill))
    assert shaded < 0.8 * bare


MEMBERS = """
corner sw { of south, west; ends 6"; lowest ends 6" }
corner far { of south, west; ends 30"; lowest ends 30" }
purlin ridge { wall west; reach 6" }
purlin long { wall west; reach 18" }
porch front { along south; depth 8'; length 40'; roof height 8'; roof pitch 2:12; floor boards; floor below wood 4" }
post in { under porch front; height 7'; inset 18" }
post out { under porch front; height 7'; inset 0" }
deck front { along south; under porch front; depth 7'; below wood 4" }
deck bare { along north; depth 12'; below wood 4" }
rail front { on deck front; height 36" }
rail bare { on deck bare; height 36" }
window high { wall west; sill 5'; height 3'; width 3' }
door front { wall south; under front; sill 0"; height 7'; width 3' }
"""


@pytest.mark.parametrize(
    ("better", "worse", "name"),
    [
        ("corner sw", "corner far", "rain share"),
        ("corner sw", "corner far", "rain on top"),
        ("purlin ridge", "purlin long", "rain share"),
        ("post in", "post out", "rain share"),
        ("post in", "post out", "foot rain"),
        ("deck front", "deck bare", "rain on top"),
        ("rail front", "rail bare", "rain on top"),
        ("door front", "window high", "rain share"),
    ],
)
def test_members_under_cover_get_less_than_those_outside(better: str, worse: str, name: str) -> None:
    facts = sheet(BOSTON + WALLS + MEMBERS)
    one, two = facts[better][name], facts[worse][name]
    assert 0 <= one < two <= 1


@pytest.mark.parametrize("label", ["corner far", "purlin long", "post out", "rail bare"])
def test_what_stands_outside_every_edge_takes_all(label: str) -> None:
    facts = sheet(BOSTON + WALLS + MEMBERS)
    name = "rain on top" if label.startswith("rail") else "rain share"
    assert 1.0 == pytest.approx(facts[label][name])


def test_a_window_under_the_eave_gets_less_than_one_at_the_foot() -> None:
    two = "window up { wall south; sill 6'; height 2' }  window low { wall south; sill 1'; height 2' }"
    facts = sheet(BOSTON + WALLS + two)
    assert facts["window up"]["rain share"] < facts["window low"]["rain share"]


def test_every_exposure_result_tells_its_limits() -> None:
    found = quantity(BOSTON + WALLS, "wall south", "courses")
    assert any("hourly means" in note and "no snow" in note for note in found.notes)
    sun = quantity(BOSTON + WALLS, "wall south", "course sun")
    assert any("horizon is level" in note for note in sun.notes)


def test_one_mode_is_never_mixed_with_the_other() -> None:
    """The standard's load knows no reach: a wider eave leaves it as it is, and lowers the geometric share."""
    wide = WALLS.replace("eaves 2'", "eaves 4'")
    standard = [quantity(BOSTON + walls, "wall south", "standard rain load").value for walls in (WALLS, wide)]
    geometric = [quantity(BOSTON + walls, "wall south", "rain share").value for walls in (WALLS, wide)]
    assert standard[0] == standard[1]
    assert geometric[1] < geometric[0]


def test_what_cover_would_do_is_what_the_wider_plan_gets() -> None:
    wide = quantity(BOSTON + WALLS.replace("eaves 2'", "eaves 3'"), "wall south", "rain share").value
    options = quantity(BOSTON + WALLS, "wall south", "cover options").value
    foot = next(way for way in options.ways if way.kind == "wider" and abs(way.more - 0.3048) < 1e-6)
    assert foot.share == pytest.approx(wide, abs=0.02)
    gained = quantity(BOSTON + WALLS, "wall south", "kept by a foot more").value
    now = quantity(BOSTON + WALLS, "wall south", "rain share").value
    assert now - gained == pytest.approx(wide, abs=0.02)


@pytest.mark.parametrize(
    "measure", ["free driving rain", "rain share", "rain on wall", "rain exposure", "sun dose", "ultraviolet share"]
)
@pytest.mark.parametrize("site", [BOSTON, INLAND, BOSTON.replace("suburban", "wooded")])
def test_every_value_lies_within_its_bounds(measure: str, site: str) -> None:
    for label in ("wall south", "wall west", "wall north"):
        found = quantity(site + WALLS, label, measure)
        assert found.low is not None
        assert found.high is not None
        assert found.low <= found.value <= found.high
        assert found.spread


def test_the_edge_drop_of_the_eaves_leaves_the_gables_alone() -> None:
    hung = WALLS.replace("eaves 2'", "eaves 2'; edge drop 16\"")
    south, west = (
        [quantity(BOSTON + walls, label, "rain share").value for walls in (WALLS, hung)]
        for label in ("wall south", "wall west")
    )
    assert south[1] < south[0]
    assert west[1] == pytest.approx(west[0])


def test_an_opening_above_the_wood_of_its_wall_gets_no_number() -> None:
    walls = WALLS.replace("peak 20'; ", "")
    assert (
        "above the wood"
        in absent(BOSTON + walls + "window up { wall west; sill 11'; height 3' }", "window up", "rain share").reason
    )


def test_a_narrow_hood_lets_rain_in_at_its_ends() -> None:
    door = "door a { wall north; sill 0\"; height 7'; width WIDE; hood 2' }"
    plans = (BOSTON + WALLS + door.replace("WIDE", wide) for wide in ("3'", "20'"))
    found = [quantity(plan, "door a", "rain share").value for plan in plans]
    assert found[0] > found[1]


def test_a_door_near_the_end_of_its_porch_gets_more_than_one_in_the_middle() -> None:
    porch = "porch p { along south; depth 8'; length 20'; from left 10'; roof height 8'; roof pitch 2:12 }"
    door = "door a { wall south; under p; sill 0\"; height 7'; width 3'; from left AT }"
    plans = (BOSTON + WALLS + porch + door.replace("AT", at) for at in ("20'", "29'"))
    middle, end = (quantity(plan, "door a", "rain share").value for plan in plans)
    assert end > middle


def test_a_far_record_that_the_plan_names_is_told_and_widens_the_bounds() -> None:
    far = 'site { weather "Portland, OR"; terrain suburban; rain record "Boston, MA" }'
    found = quantity(far + WALLS, "site", "rain climate")
    assert any("km away" in note for note in found.notes)
    near, away = (quantity(site + WALLS, "wall south", "free driving rain") for site in (BOSTON, far))
    assert near.high is not None
    assert away.high is not None
    assert away.high / away.value > near.high / near.value


def test_settings_that_a_record_overrides_are_told() -> None:
    text = 'site { weather "Boston, MA"; terrain suburban; rain record "Boston, MA"; rain wind SW }' + WALLS
    assert any("rain wind of the plan is not used" in note for note in quantity(text, "site", "rain climate").notes)


def test_two_roofs_over_one_wall_are_told() -> None:
    text = BOSTON + WALLS + "roof other { covers south; form gable; eaves 5'; rakes 1'; pitch 4:12 }"
    assert any("several roofs" in note for note in quantity(text, "wall south", "roof reach").notes)


def test_a_wall_that_cannot_be_told_takes_no_rank_from_the_others() -> None:
    facts = sheet(BOSTON + WALLS.replace("wall north { faces N; ", "wall north { "))
    assert facts["wall north"]["rain exposure"] is None
    assert {1.0, 2.0} == {facts[label]["rain rank"] for label in ("wall south", "wall west")}


def test_a_porch_before_a_door_keeps_the_more_rain_off_the_lower_its_roof_comes_down() -> None:
    side = """
porch side {{ along south; depth 6'; length 10'; from left 0'; roof height 9'; roof pitch {pitch}; hung on posts }}
door back {{ wall north; width 3'; height 7'; sill 0'; under porch side }}
"""
    flat, low = (sheet(BOSTON + WALLS + side.format(pitch=pitch)) for pitch in ("0:12", "4:12"))
    lowered = sheet(BOSTON + WALLS + side.format(pitch="0:12").replace("roof height 9'", "roof height 7'"))
    assert low["door back"]["rain share"] < flat["door back"]["rain share"]
    assert low["door back"]["rain share"] == pytest.approx(lowered["door back"]["rain share"])  # 6' at 4:12 is 2'
