"""Drawings checked as geometry: courses, dimensions, positions of pins, heights to scale, and shades that tell."""

from __future__ import annotations

import xml.etree.ElementTree as ElementTree
from itertools import pairwise
from math import hypot

import pytest

from speclint.drawing.elevation import View, elevation
from speclint.drawing.layers import NAMES, layers_of, scales
from speclint.drawing.pins import Pin, pins_of, spots
from speclint.drawing.roof_plan import roof_plan
from speclint.drawing.section import section
from speclint.drawing.shades import contrast, luminance, ramp
from speclint.drawing.timeline import timeline
from speclint.drawing.wall_frame import left_of, wall_frame
from speclint.forecast.jobs import jobs_of
from speclint.forecast.outlook import outlook
from speclint.forecast.rates import demo_rates
from speclint.pipeline import review
from tests.drawing.expected import plan_of, sheet_of
from tests.measures.sheets import sheet
from tests.specs.expected import DAY, book

SVG = "{http://www.w3.org/2000/svg}"
HOUSE = """
site { weather "Marquette, MI"; rain wind SW; terrain wooded }
wall south { faces S; length 10 m; height 2.4 m; starts 500 mm; build log round 300 mm; course 300 mm; ground lawn }
wall west { faces W; length 8 m; height 2.4 m; peak 5 m; starts 500 mm; build framed with siding; ground lawn }
roof main { covers south, west; gables west; form gable; pitch 8:12; run 4 m; eaves 600 mm; rakes 400 mm; gutters none }
window low { wall south; count 2; width 1 m; height 1 m; sill 900 mm }
window placed { wall west; width 1 m; height 1 m; sill 900 mm; from left 2 m }
corner sw { of south, west; ends 400 mm }
"""


def root_of(svg: str | None) -> ElementTree.Element:
    assert svg is not None
    return ElementTree.fromstring(svg)


def drawn(wall: str, shown: str = "rain", pins: tuple[Pin, ...] = ()) -> ElementTree.Element:
    facts = sheet(HOUSE)
    return root_of(elevation(facts, facts[wall], View("metric", shown, pins=pins)))


def courses(root: ElementTree.Element) -> list[ElementTree.Element]:
    return [group for group in root.iter(f"{SVG}g") if group.get("class") == "course"]


def points(shape: ElementTree.Element) -> list[tuple[float, float]]:
    return [(float(x), float(y)) for x, y in (pair.split(",") for pair in (shape.get("points") or "").split())]


def words(root: ElementTree.Element) -> list[str]:
    return [text.text or "" for text in root.iter(f"{SVG}text")]


def test_every_course_is_drawn_once() -> None:
    assert 8 == len(courses(drawn("wall south")))  # 2.4 m of courses of 300 mm


def test_courses_stand_on_one_another_without_gap_or_overlap() -> None:
    shapes = [points(group.find(f"{SVG}polygon")) for group in courses(drawn("wall south"))]  # type: ignore[arg-type]
    for lower, upper in pairwise(shapes):
        assert min(y for _, y in lower) == pytest.approx(max(y for _, y in upper), abs=0.11)


def test_the_wall_is_drawn_to_scale() -> None:
    shapes = [points(group.find(f"{SVG}polygon")) for group in courses(drawn("wall south"))]  # type: ignore[arg-type]
    wide = max(x for x, _ in shapes[0]) - min(x for x, _ in shapes[0])
    tall = max(y for _, y in shapes[0]) - min(y for _, y in shapes[-1])
    assert 10 / 2.4 == pytest.approx(wide / tall, rel=0.002)


def test_a_gable_narrows_to_its_peak() -> None:
    shapes = [points(group.find(f"{SVG}polygon")) for group in courses(drawn("wall west"))]  # type: ignore[arg-type]
    widths = [max(x for x, _ in shape) - min(x for x, _ in shape) for shape in shapes]
    assert widths[0] == max(widths)
    assert widths[-1] < 0.2 * widths[0]
    assert widths == sorted(widths, reverse=True)


def test_the_dimensions_are_those_of_the_plan() -> None:
    found = words(drawn("wall south"))
    assert [] == [told for told in ("10.00 m", "500 mm", "2.40 m") if told not in found]


@pytest.mark.parametrize("shown", NAMES)
def test_every_layer_has_a_legend_with_a_count_for_every_class(shown: str) -> None:
    facts = sheet_of("tamarack-point")
    root = root_of(elevation(facts, facts["wall west"], View(shown=shown)))
    layer = next(one for one in layers_of(facts, facts["wall west"]) if one.name == shown)
    counted = [told for told in words(root) if any(told.startswith(f"{name}: ") for name in layer.scale.names)]
    assert len(layer.values) == sum(int(told.rsplit(": ", 1)[1].split(" of ")[0]) for told in counted)


def test_a_layer_that_is_not_known_says_what_it_needs() -> None:
    assert any(
        "needs finish of wall south" in told or "finish" in told for told in words(drawn("wall south", "finish"))
    )


def test_openings_without_a_place_stand_evenly_and_others_where_the_plan_says() -> None:
    facts = sheet(HOUSE)
    south, west = wall_frame(facts, facts["wall south"]), wall_frame(facts, facts["wall west"])
    assert south is not None
    assert west is not None
    assert [8 / 3, 1 + 2 * 8 / 3] == pytest.approx([one.left for one in south.openings])
    assert [1.5] == pytest.approx([one.left for one in west.openings])
    assert ("drip edge level with the top of the wall", "places of openings along the wall") == south.guessed


def test_the_west_wall_is_at_the_left_of_a_south_wall() -> None:
    facts = sheet(HOUSE)
    south, west = facts["wall south"], facts["wall west"]
    assert (True, False) == (left_of(south, west), left_of(west, south))
    frame = wall_frame(facts, south)
    assert frame is not None
    assert (0.4, 0.0) == frame.ends


def test_pins_have_the_numbers_of_the_review_and_stand_on_their_parts() -> None:
    facts, told = sheet_of("tamarack-point"), review(plan_of("tamarack-point"), book(), DAY)
    frame = wall_frame(facts, facts["wall west"])
    assert frame is not None
    placed = {spot.pin.element: spot.at for spot in spots(frame, pins_of(told)) if spot.at is not None}
    titles = {pin.number: pin.title for pin in pins_of(told)}
    assert "Log ends reach past the drip line" == titles[2]
    opening = next(one for one in frame.openings if one.label == "window gable")
    x, y = placed["window gable"]
    assert opening.left < x < opening.left + opening.width
    head = opening.sill + opening.height
    assert head < y - frame.starts < head + 0.2  # the finding is about the gap over its frame
    assert (
        placed["corner sw"][0] > frame.length > 0 > placed["corner nw"][0]
    )  # seen from the west, south is at the right


def test_a_finding_that_is_not_on_a_wall_is_not_pinned_to_it() -> None:
    facts = sheet_of("tamarack-point")
    frame = wall_frame(facts, facts["wall west"])
    assert frame is not None
    assert [] == list(spots(frame, (Pin(1, "post lake", "x", True), Pin(2, "wall east", "x", False))))


def pins_drawn(root: ElementTree.Element) -> list[tuple[float, float]]:
    """The middles of the pins of a drawing, in pixels."""
    return [((left + right) / 2, (top + low) / 2) for left, top, right, low in pin_boxes(root)]


def pin_boxes(root: ElementTree.Element) -> list[tuple[float, float, float, float]]:
    """Left, top, right and bottom of the pins of a drawing, in pixels."""
    found = []
    for mark in root.iter():
        if mark.get("class") in ("pin", "pin-hold"):
            at = {name: float(mark.get(name, "0")) for name in ("cx", "cy", "r", "x", "y", "width", "height")}
            if mark.tag == f"{SVG}circle":
                found.append((at["cx"] - at["r"], at["cy"] - at["r"], at["cx"] + at["r"], at["cy"] + at["r"]))
            else:
                found.append((at["x"], at["y"], at["x"] + at["width"], at["y"] + at["height"]))
    return found


@pytest.mark.parametrize("narrow", [False, True])
def test_no_pin_covers_another(narrow: bool) -> None:
    facts, told = sheet_of("cedar-spit"), review(plan_of("cedar-spit"), book(), DAY)
    view = View(pins=pins_of(told), narrow=narrow)
    found = pins_drawn(root_of(elevation(facts, facts["wall south"], view)))
    assert len(found) > 15
    away = [hypot(x - a, y - b) for at, (x, y) in enumerate(found) for a, b in found[at + 1 :]]
    assert min(away) >= 24


@pytest.mark.parametrize(
    ("rule", "place"),
    [("sill-too-near-grade", "base"), ("snow-banked-against-wood", "base"), ("eave-too-short", "eave")],
)
def test_a_finding_about_an_edge_of_a_wall_is_pinned_to_that_edge(rule: str, place: str) -> None:
    facts = sheet(HOUSE)
    frame = wall_frame(facts, facts["wall south"])
    assert frame is not None
    spot = next(spots(frame, (Pin(1, "wall south", "x", False, rule),)))
    assert spot.at is not None
    assert {"base": frame.starts, "eave": frame.starts + frame.height}[place] == spot.at[1]


def test_a_finding_about_a_whole_wall_stands_beside_the_drawing() -> None:
    facts = sheet(HOUSE)
    frame = wall_frame(facts, facts["wall south"])
    assert frame is not None
    pin = Pin(7, "wall south", "x", False, "finish-shorter-than-upkeep-cycle")
    assert next(spots(frame, (pin,))).at is None
    assert "the wall as a whole:" in words(drawn("wall south", pins=(pin,)))


def test_a_part_without_a_place_is_named_with_its_pin_and_not_drawn() -> None:
    facts, told = sheet_of("tamarack-point"), review(plan_of("tamarack-point"), book(), DAY)
    for wall in ("wall south", "wall north"):
        found = words(root_of(elevation(facts, facts[wall], View(pins=pins_of(told)))))
        assert any(line.startswith("chimney hearth, not drawn: place not stated") for line in found)


def test_the_description_counts_each_finding_once() -> None:
    facts, told = sheet_of("tamarack-point"), review(plan_of("tamarack-point"), book(), DAY)
    frame = wall_frame(facts, facts["wall west"])
    assert frame is not None
    numbers = {spot.pin.number for spot in spots(frame, pins_of(told))}
    root = root_of(elevation(facts, facts["wall west"], View(pins=pins_of(told))))
    assert f"{len(numbers)} findings pinned" in str(root.get("aria-label"))


def test_shading_breaks_at_the_ends_of_a_porch_and_is_worst_beyond_them() -> None:
    facts = sheet_of("tamarack-point")
    root = root_of(elevation(facts, facts["wall south"], View()))
    first = [group for group in courses(root) if (group.find(f"{SVG}title").text or "").startswith("course 1,")]  # type: ignore[union-attr]
    wide = [points(group.find(f"{SVG}polygon")) for group in first]  # type: ignore[arg-type]
    lengths = [max(x for x, _ in shape) - min(x for x, _ in shape) for shape in wide]
    assert 40 / 46 == pytest.approx(lengths[1] / sum(lengths), rel=0.01)  # the porch is 40 of 46 feet
    layer = layers_of(facts, facts["wall south"])[0]
    left, under, right = (float(value or 0) for value in layer.parts[0])
    assert min(left, right) > 2 * under


def test_the_zones_of_a_course_make_up_its_mean() -> None:
    facts = sheet_of("tamarack-point")
    for layer in layers_of(facts, facts["wall south"])[:2]:
        spans = [zone.right - zone.left for zone in layer.zones]
        for mean, row in zip(layer.values, layer.parts, strict=True):
            if row:
                parts = sum(float(value or 0) * span for value, span in zip(row, spans, strict=True)) / sum(spans)
                assert float(mean or 0) == pytest.approx(parts, abs=0.002)


def test_rain_is_shaded_against_the_mean_open_wall_on_one_scale_for_all_walls() -> None:
    facts = sheet_of("tamarack-point")
    told = {wall.label: layers_of(facts, wall)[0] for wall in facts.of_kind("wall")}
    assert {"wall west": "1.46", "wall north": "0.45"} == {
        label: told[label].whole for label in ("wall west", "wall north")
    }
    assert 1 == len({layer.scale for layer in told.values()})
    assert told["wall west"].scale.at(1.46) > told["wall north"].scale.at(0.45) + 2


@pytest.mark.parametrize("name", NAMES)
def test_a_number_and_its_class_agree_as_they_are_read(name: str) -> None:
    told = scales()[name]
    for bound in told.bounds:
        least = bound - 0.49 * 10**-told.digits
        assert told.at(bound) == told.at(least)  # it is written as the bound, and counted with it
        assert told.at(bound) == told.at(bound - 1.1 * 10**-told.digits) + 1


def test_the_line_of_shelter_is_left_out_under_a_porch() -> None:
    facts = sheet_of("tamarack-point")
    root = root_of(elevation(facts, facts["wall south"], View(legend=False)))
    found = [line for line in root.iter(f"{SVG}line") if line.get("class") == "sheltered"]
    assert 2 == len(found)
    assert all(float(line.get("x2", "")) - float(line.get("x1", "")) < 60 for line in found)


def test_a_rail_leaves_doors_and_posts_free() -> None:
    facts = sheet_of("tamarack-point")
    root = root_of(elevation(facts, facts["wall south"], View(legend=False)))
    rail = next(group for group in root.iter(f"{SVG}g") if group.get("class") == "rail")
    bays = [(float(box.get("x", "")), float(box.get("width", ""))) for box in rail.iter(f"{SVG}rect")]
    assert len(bays) > 3
    door = next(group for group in root.iter(f"{SVG}g") if group.findtext(f"{SVG}title") == "door lake")
    box = next(door.iter(f"{SVG}rect"))
    left, right = float(box.get("x", "")), float(box.get("x", "")) + float(box.get("width", ""))
    assert not [bay for bay in bays if bay[0] < right - 1 and bay[0] + bay[1] > left + 1]


def test_numbers_stand_clear_of_pins_and_openings() -> None:
    facts, told = sheet_of("tamarack-point"), review(plan_of("tamarack-point"), book(), DAY)
    root = root_of(elevation(facts, facts["wall west"], View(pins=pins_of(told))))
    numbers = [text for text in root.iter(f"{SVG}text") if text.get("class") == "number"]
    assert len(numbers) > 8
    for text in numbers:
        x, y = float(text.get("x", "")), float(text.get("y", "")) - 4
        assert not [at for at in pins_drawn(root) if hypot(at[0] - x, at[1] - y) < 12]


def test_a_sheet_for_a_telephone_fits_its_width() -> None:
    for name in ("tamarack-point", "cedar-spit"):
        facts = sheet_of(name)
        for wall in facts.of_kind("wall"):
            root = root_of(elevation(facts, wall, View(legend=False, narrow=True)))
            assert float(root.get("width", "")) <= 340


def test_rays_of_a_section_end_on_what_they_meet() -> None:
    facts = sheet_of("tamarack-point")
    about = root_of(section(facts, facts["wall south"])).get("aria-label") or ""
    assert "21 June: 67 deg as seen in this cut, to the deck" in about
    assert "21 December: 20 deg as seen in this cut, to the wall" in about
    assert "no line of the noon sun" in str(root_of(section(facts, facts["wall north"])).get("aria-label"))
    assert "depth not stated" in words(root_of(section(facts, facts["wall north"])))


def test_the_roof_plan_tells_own_water_from_that_of_the_roof_above() -> None:
    found = words(root_of(roof_plan(sheet_of("tamarack-point"))))
    assert "320 ft2 of its own and 689 ft2 from the roof above" in found
    assert "as gutter north states; as drawn 792 ft2" in found
    assert any(line.startswith("downspout north lets go 6'-0\" from the wall onto a splash block") for line in found)
    assert "N" in found


def test_the_section_shows_the_rain_angle_and_the_sun() -> None:
    facts = sheet_of("tamarack-point")
    found = words(root_of(section(facts, facts["wall south"])))
    assert "rain at 30 deg" in found
    assert any(told.startswith("noon sun, 21 June") for told in found)
    assert any(told.startswith("noon sun, 21 December") for told in found)
    assert not any(told.startswith("noon sun") for told in words(root_of(section(facts, facts["wall north"]))))


def test_a_wall_without_length_is_not_drawn() -> None:
    facts = sheet("wall a { height 3 m }")
    assert (None, None) == (elevation(facts, facts["wall a"], View()), section(facts, facts["wall a"]))


@pytest.mark.parametrize("count", [3, 5, 6, 8])
def test_shades_go_from_pale_to_deep_in_even_steps_of_lightness(count: int) -> None:
    lightness = [116 * luminance(shade) ** (1 / 3) - 16 for shade in ramp(count)]  # as the eye sees it, dark end apart
    steps = [one - other for one, other in pairwise(lightness)]
    assert min(steps) > 0.75 * max(steps)


@pytest.mark.parametrize("name", NAMES)
def test_numbers_can_be_read_on_every_shade(name: str) -> None:
    told = scales()[name]
    assert min(contrast(shade, ink) for shade, ink in zip(told.shades, told.ink, strict=True)) >= 4.5


def test_neighbouring_shades_are_told_apart_in_grey() -> None:
    shades = scales()["rain"].shades
    assert min(contrast(one, other) for one, other in pairwise(shades)) > 1.4


def test_hostile_names_are_escaped_in_every_drawing() -> None:
    text = HOUSE.replace("window low", "window l")
    facts = sheet(text)
    svg = elevation(
        facts,
        facts["wall south"],
        View(pins=(Pin(1, "wall south", "<script>alert(1)</script>", True),), link="#x{number}"),
    )
    assert svg is not None
    assert "<script" not in svg
    root_of(svg)


def test_the_upkeep_of_a_telephone_fits_its_width() -> None:
    jobs, _ = jobs_of(sheet_of("tamarack-point"), demo_rates())
    root = root_of(timeline("a.plan", outlook(jobs, demo_rates(), 30), "$", 2026, "", True))
    assert float(root.get("width", "")) <= 360
    assert len(words(root)) > len(jobs)
