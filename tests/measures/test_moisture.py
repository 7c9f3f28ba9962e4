"""Moisture of the lot, movement of its parts, settling split in its parts, and what seasoning changes."""

from __future__ import annotations

import pytest

from speclint.language.parse import parse
from speclint.measures.moisture import MoistureByMonth
from speclint.measures.movement import JackCalendar
from speclint.model.build import build
from speclint.outputs.letter import text_of
from speclint.outputs.seasonings import first_coat, seasoned, seasonings_lines
from speclint.science.wood_moisture import equilibrium_moisture
from speclint.tables.stations import find_station, nearest_station
from tests.measures.sheets import absent, found, sheet

INCH = 0.0254
HOUSE = """
site { weather "Sault Ste. Marie, MI" }
wall south {
    faces S; length 40'; height 9'; build log round 10"; scribed yes; species lodgepole pine; seasoning green
    moisture 30%
}
roof main { covers south; form gable; eaves 2' }
porch lake { along south; length 40'; depth 9'; roof height 9'; roof pitch 4:12; hung on wall }
post lake {
    under porch lake; size 8x8; height 8'; species lodgepole pine; seasoning green; moisture 30%; inset 12"
    adjuster jack 4"
}
beam lake { under porch lake; size 8x12; species Douglas-fir; material sawn timber }
window west { wall south; sill 2'; height 82" }
"""


def months(text: str) -> MoistureByMonth:
    year = found("site", "moisture by month", text).value
    assert isinstance(year, MoistureByMonth)
    return year


def calendar(text: str) -> tuple[tuple[int, float], ...]:
    turns = found("post lake", "jack calendar", text).value
    assert isinstance(turns, JackCalendar)
    return turns.turns


def test_the_moisture_of_each_month_follows_from_the_normals_of_the_station() -> None:
    station = find_station("Sault Ste. Marie, MI")
    assert station.humidity is not None
    wanted = [
        equilibrium_moisture(max(0.0, warm), damp)
        for warm, damp in zip(station.mean_temperature, station.humidity, strict=True)
    ]
    year = months(HOUSE)
    assert (tuple(wanted), 12) == (year.months, len(year.months))
    assert any("at freezing" in note for note in found("site", "moisture by month", HOUSE).notes)
    assert ("Jan ", True) == (str(year)[:4], str(year).endswith("% (Sault Ste. Marie, MI)"))


def test_a_station_without_humidity_takes_that_of_the_nearest_and_says_how_far_it_is() -> None:
    text = 'site { weather "Marquette, MI" }'
    lot = find_station("Marquette, MI")
    other, away, _ = nearest_station(lot.latitude, lot.longitude, complete=True)
    note = f"no humidity is held for Marquette, MI: that of {other.title} is taken, {away:.0f} km from the lot"
    assert (None, True) == (lot.humidity, note in found("site", "moisture by month", text).notes)
    assert f"Marquette, MI, humidity of {other.title}" == months(text).title


def test_humidity_from_too_far_away_is_not_taken(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr("speclint.measures.moisture.TOO_FAR", 50.0)
    result = absent("site", "moisture by month", 'site { weather "Marquette, MI" }')
    assert ((), True) == (result.missing, result.reason.startswith("no humidity is held for Marquette, MI, and"))


def test_a_lot_without_a_station_has_no_moisture() -> None:
    missing = absent("site", "service moisture", "site { frost depth 4' }").missing
    assert [("site", "weather")] == [(one.element, one.setting) for one in missing]


def test_the_year_lies_between_its_driest_and_its_wettest_month() -> None:
    names = ("service moisture", "driest month moisture", "wettest month moisture")
    mean, driest, wettest = (found("site", name, HOUSE) for name in names)
    assert driest.value < mean.value < wettest.value
    assert (driest.value, wettest.value) == (mean.low, mean.high)


def test_a_desert_is_drier_than_a_rainy_coast() -> None:
    desert, coast = (found("site", "service moisture", f'site {{ weather "{name}" }}').value for name in DRY_AND_WET)
    assert desert + 5 < coast


DRY_AND_WET = ("Phoenix, AZ", "Astoria, OR")


@pytest.mark.parametrize(
    ("name", "inches"),
    [
        ("shrinkage part", 3.56),  # 108 in of lodgepole, green, mean: worked by hand
        ("bedding part", 1.08),
        ("builders allowance", 6.48),
        ("settlement", 6.48),
        ("log shrinkage", 0.330),
    ],
)
def test_the_parts_of_settling_are_kept_apart(name: str, inches: float) -> None:
    assert inches == pytest.approx(found("wall south", name, HOUSE).value / INCH, abs=0.006)


def test_shrinkage_is_bounded_by_the_two_ways_that_rings_can_lie() -> None:
    part = found("wall south", "shrinkage part", HOUSE)
    assert part.low is not None
    assert part.high is not None
    assert (2.79, 4.34) == (round(part.low / INCH, 2), round(part.high / INCH, 2))


def test_each_part_of_settling_carries_its_own_standing() -> None:
    standings = {
        name: {one.standing for one in found("wall south", name, HOUSE).citations if one.place != "Table 4-3"}
        for name in ("shrinkage part", "bedding part", "builders allowance")
    }
    assert {"second-hand"} == standings["shrinkage part"]
    assert {"memory", "second-hand"} == standings["builders allowance"]
    keys = {one.key for one in found("wall south", "shrinkage part", HOUSE).citations}
    assert "icc-400-2007" in keys


def test_flat_bearing_does_not_bed_down_and_a_framed_wall_has_no_parts() -> None:
    assert 0 == found("wall south", "bedding part", HOUSE.replace("scribed yes", "scribed no")).value
    framed = HOUSE.replace('log round 10"', "timber frame")
    assert "it is not of stacked logs" == absent("wall south", "shrinkage part", framed).reason


def test_a_species_without_known_shrinkage_asks_nothing_and_gives_the_reason() -> None:
    text = HOUSE.replace("species lodgepole pine; seasoning green\n", "species hem-fir; seasoning green\n")
    assert "the reference table holds no shrinkage of hem-fir" == absent("wall south", "settlement", text).reason


def test_a_post_shrinks_across_and_stays_as_long_as_it_was() -> None:
    width = found("post lake", "width change", HOUSE)
    assert width.low is not None
    assert width.high is not None
    assert width.low < width.value < width.high < 0
    assert any("along the grain" in note and "reckoned as nothing" in note for note in width.notes)


def test_what_a_post_is_made_of_does_not_change_what_settles_past_it() -> None:
    dry = HOUSE.replace("species lodgepole pine; seasoning green; moisture 30%; inset", "inset")
    assert found("post lake", "settling past", HOUSE).value == found("post lake", "settling past", dry).value > 0


def test_a_post_set_dry_in_damp_air_swells() -> None:
    wet = HOUSE.replace("moisture 30%; inset", "moisture 8%; inset")
    assert found("post lake", "width change", wet).value > 0


def test_a_beam_of_unstated_moisture_is_reckoned_green_and_a_glued_one_dry() -> None:
    sawn, glued = (
        found("beam lake", "check opening", text)
        for text in (HOUSE, HOUSE.replace("material sawn timber", "material glulam"))
    )
    assert ("high", "low") == tuple(
        found("beam lake", "check risk", text).value for text in (HOUSE, HOUSE.replace("sawn timber", "glulam"))
    )
    assert sawn.value > glued.value
    assert ["assumed by speclint"] == [one.how for one in sawn.inputs if one.name == "moisture"]


def test_a_jack_is_lowered_by_the_whole_settlement_in_five_years() -> None:
    turns = calendar(HOUSE)
    assert found("post lake", "settling past", HOUSE).value == pytest.approx(sum(lower for _, lower in turns))
    assert (3, 60) == (turns[0][0], turns[-1][0])
    assert "month 3: " in str(found("post lake", "jack calendar", HOUSE).value)


def test_the_calendar_follows_the_seasoning_of_the_wall() -> None:
    green, air, kiln = (
        calendar(HOUSE.replace("lodgepole pine; seasoning green\n    moisture 30%", f"lodgepole pine; seasoning {one}"))
        for one in ("green", "air-dried", "kiln-dried")
    )
    totals = [sum(lower for _, lower in turns) for turns in (kiln, air, green)]
    assert (sorted(totals), 3) == (totals, len(set(totals)))
    assert kiln[-1][0] < green[-1][0]


def test_nothing_is_lowered_where_nothing_settles() -> None:
    framed = HOUSE.replace('log round 10"', "timber frame")
    assert "never: nothing settles past it" == str(found("post lake", "jack calendar", framed).value)


def test_a_porch_roof_tilts_by_the_settlement_over_the_distance_to_its_posts() -> None:
    tilt = found("porch lake", "roof tilt", HOUSE)
    assert 6.48 / 96 == pytest.approx(tilt.value)  # 108 in of depth less 12 in of inset
    assert ((6.48 - 4) / 96, 6.48 / 96) == pytest.approx((tilt.low, tilt.high))
    assert (6.48 - 4) / 96 == pytest.approx(found("porch lake", "tilt left", HOUSE).value)
    pitch = found("porch lake", "pitch left", HOUSE)
    assert (4 / 12 - 6.48 / 96, 4 / 12 - 2.48 / 96) == pytest.approx((pitch.value, pitch.high))


def test_a_jack_of_enough_travel_leaves_no_tilt_and_none_leaves_all() -> None:
    assert 0 == found("porch lake", "tilt left", HOUSE.replace('jack 4"', 'jack 7"')).value
    bare = HOUSE.replace('adjuster jack 4"', "adjuster none")
    assert found("porch lake", "roof tilt", bare).value == found("porch lake", "tilt left", bare).value > 0


def test_an_adjuster_of_unknown_travel_is_asked_for_and_the_worst_is_still_told() -> None:
    text = HOUSE.replace('adjuster jack 4"', "adjuster jack")
    missing = absent("porch lake", "tilt left", text).missing
    assert [("post lake", "travel")] == [(one.element, one.setting) for one in missing]
    tilt = found("porch lake", "roof tilt", text)
    assert (6.48 / 96, None) == (pytest.approx(tilt.value), tilt.low)


def test_a_porch_on_posts_of_its_own_does_not_tilt() -> None:
    assert 0 == found("porch lake", "roof tilt", HOUSE.replace("hung on wall", "hung on posts")).value


def test_a_porch_without_posts_says_so() -> None:
    text = HOUSE.split("post lake {")[0]
    assert "the plan names no lasting post that carries it" == absent("porch lake", "roof tilt", text).reason


def test_wetter_than_green_is_said() -> None:
    wet = HOUSE.replace("green\n    moisture 30%", "green\n    moisture 190%")
    assert ("no", "yes") == tuple(found("wall south", "wetter than green", text).value for text in (HOUSE, wet))
    assert any("more than green lodgepole pine holds" in note for note in found("wall south", "settlement", wet).notes)
    assert found("wall south", "settlement", HOUSE).value == found("wall south", "settlement", wet).value


@pytest.mark.parametrize("said", ["-5%", "0%", "201%"])
def test_a_moisture_that_cannot_be_is_refused_with_the_span_that_can(said: str) -> None:
    _, mistakes = build([parse(f"wall a {{ moisture {said} }}", "a.plan")], "a.plan")
    told = [(mistake.message, mistake.help) for mistake in mistakes]
    assert [(f"“{said}” is out of range for “moisture”", "speclint reads 3% to 200% here")] == told


def test_the_three_seasonings_differ_in_the_wall_alone_and_leave_the_plan_as_it_was() -> None:
    whole = sheet(HOUSE)
    plans = seasoned(whole, whole["wall south"])
    assert [("kiln-dried", False), ("air-dried", False), ("green", True)] == [
        (plan.seasoning, plan.as_drawn) for plan in plans
    ]
    changed = {
        label
        for plan in plans
        for label, element in plan.sheet.home.elements.items()
        if element is not whole.home.elements[label]
    }
    assert ({"wall south"}, "green") == (changed, whole["wall south"]["seasoning"])


@pytest.mark.parametrize(
    ("label", "name"),
    [
        ("wall south", "settlement"),
        ("wall south", "shrinkage part"),
        ("wall south", "check opening"),
        ("window west", "headspace need"),
        ("post lake", "travel need"),
    ],
)
def test_drier_logs_ask_for_less(label: str, name: str) -> None:
    whole = sheet(HOUSE)
    values = [plan.sheet[label][name] for plan in seasoned(whole, whole["wall south"])]
    assert (sorted(values), 3) == (values, len(set(values)))


def test_the_seasonings_are_told_side_by_side() -> None:
    whole = sheet(HOUSE)
    told = text_of(seasonings_lines(whole, whole["wall south"], "imperial"))
    rows = {line[:34].strip(): line[34:].split("  ") for line in told.splitlines()}
    assert {"headspace, window west", "jack travel, post lake", "check risk", "settlement reckoned with"} <= set(rows)
    assert ["19%", "24%", "30%"] == [cell.strip() for cell in rows["moisture when stacked"] if cell.strip()]
    assert ["moderate", "high", "high"] == [cell.strip() for cell in rows["check risk"] if cell.strip()]
    assert all(len(line) <= 120 for line in told.splitlines())


def test_a_shops_own_allowance_is_left_out_of_the_comparison_and_that_is_said() -> None:
    whole = sheet(HOUSE.replace("moisture 30%\n}", "moisture 30%; settling 2%\n}"))
    told = text_of(seasonings_lines(whole, whole["wall south"], "metric"))
    assert "the 2% that the shop states is left out here" in told
    greens = [plan for plan in seasoned(whole, whole["wall south"]) if plan.seasoning == "green"]
    assert greens[0].sheet["wall south"]["settlement"] > whole["wall south"]["settlement"]


def test_a_wall_that_lacks_a_species_asks_for_it_and_a_framed_one_has_nothing_to_compare() -> None:
    bare = sheet(HOUSE.replace("species lodgepole pine; seasoning green\n", "seasoning green\n"))
    assert "the plan does not say: species of wall south" in text_of(
        seasonings_lines(bare, bare["wall south"], "imperial")
    )
    framed = sheet(HOUSE.replace('log round 10"', "timber frame"))
    assert "nothing to compare" in text_of(seasonings_lines(framed, framed["wall south"], "imperial"))


def test_wetter_logs_wait_longer_for_their_first_coat() -> None:
    assert (3, True) == (len({first_coat(one) for one in (15.0, 24.0, 30.0)}), "no film" in first_coat(24.0))


@pytest.mark.parametrize("stated", ["17.9%", "18%", "18.1%"])
def test_a_stated_moisture_at_fibre_saturation_opens_checks_as_any_other(stated: str) -> None:
    wall = "lodgepole pine; seasoning green\n    moisture 30%"
    assert wall in HOUSE
    text = HOUSE.replace(wall, f"western redcedar; seasoning green\n    moisture {stated}", 1)
    assert 0.163 == pytest.approx(found("wall south", "check opening", text).value / INCH, abs=0.005)


def test_kiln_dried_logs_of_no_stated_moisture_are_reckoned_at_19_percent_and_others_as_green() -> None:
    dry, stated, green = (
        found("wall south", "log shrinkage", HOUSE.replace("seasoning green\n    moisture 30%", words))
        for words in ("seasoning kiln-dried", "seasoning kiln-dried; moisture 19%", "seasoning green")
    )
    assert stated.value == pytest.approx(dry.value)
    assert 19.0 in [one.value for one in dry.inputs if one.name == "moisture"]
    assert dry.value < green.value
