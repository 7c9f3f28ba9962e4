"""Drawings checked as geometry: courses, dimensions, positions of pins, heights to scale, and shades that tell."""

from __future__ import annotations

import xml.etree.ElementTree as ElementTree
from itertools import pairwise

import pytest

from speclint.drawing.elevation import View, elevation
from speclint.drawing.layers import NAMES, layers_of, scales
from speclint.drawing.pins import Pin, pins_of, spots
from speclint.drawing.section import section
from speclint.drawing.shades import contrast, luminance, ramp
from speclint.drawing.wall_frame import left_of, wall_frame
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
    assert ("places of openings along the wall",) == south.guessed


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
    placed = {pin.element: at for pin, at, _ in spots(frame, pins_of(told))}
    titles = {pin.number: pin.title for pin in pins_of(told)}
    assert "Log ends reach past the drip line" == titles[1]
    opening = next(one for one in frame.openings if one.label == "window gable")
    x, y = placed["window gable"]
    assert opening.left < x < opening.left + opening.width
    assert opening.sill < y - frame.starts < opening.sill + opening.height
    assert (
        placed["corner sw"][0] > frame.length > 0 > placed["corner nw"][0]
    )  # seen from the west, south is at the right


def test_a_finding_that_is_not_on_a_wall_is_not_pinned_to_it() -> None:
    facts = sheet_of("tamarack-point")
    frame = wall_frame(facts, facts["wall west"])
    assert frame is not None
    assert [] == list(spots(frame, (Pin(1, "post lake", "x", True), Pin(2, "wall east", "x", False))))


def test_pins_of_one_spot_stand_side_by_side() -> None:
    facts = sheet(HOUSE)
    frame = wall_frame(facts, facts["wall south"])
    assert frame is not None
    pins = tuple(Pin(at, "wall south", "x", False) for at in range(12))
    shifts = [shift for _, _, shift in spots(frame, pins)]
    assert 12 == len(set(shifts))


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
