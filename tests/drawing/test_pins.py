"""A pin stands at its fault; what is not drawn has its pins beside its name below the drawing."""

from __future__ import annotations

import pytest

from speclint.drawing.before import porch_heights
from speclint.drawing.elevation import View, elevation
from speclint.drawing.gutters import spouts as spouts_of
from speclint.drawing.pin_marks import CROWD, marks_of, ranges
from speclint.drawing.pins import Pin, Spot, pins_of, spots
from speclint.drawing.wall_frame import WallFrame, wall_frame
from speclint.measures.facts import Sheet
from speclint.pipeline import review
from tests.drawing.expected import plan_of, sheet_of
from tests.drawing.test_geometry import HOUSE, SVG, pin_boxes, root_of, words
from tests.measures.sheets import sheet
from tests.specs.expected import DAY, book


def frame_of(facts: Sheet, wall: str) -> WallFrame:
    found = wall_frame(facts, facts[wall])
    assert found is not None
    return found


def spot_of(facts: Sheet, wall: str, element: str, rule: str) -> Spot:
    (found,) = spots(frame_of(facts, wall), (Pin(1, element, rule, False, rule),))
    return found


def at_of(facts: Sheet, wall: str, element: str, rule: str) -> tuple[float, float]:
    found = spot_of(facts, wall, element, rule).at
    assert found is not None
    return found


def test_a_junction_is_pinned_where_the_lower_roof_meets_the_wall() -> None:
    facts = sheet_of("quiet-harbor")
    frame, porch = frame_of(facts, "wall south"), facts["porch lake"]
    _, y = at_of(facts, "wall south", "junction lake", "junction-flashing-cannot-slide")
    assert y == pytest.approx(porch_heights(frame, porch)[1])
    assert y < frame.eave - 0.3


@pytest.mark.parametrize("element", ["junction den", "corner den"])
def test_what_is_of_a_part_that_is_not_drawn_is_told_below(element: str) -> None:
    facts = sheet_of("cedar-spit")
    found = spot_of(facts, "wall east", element, "log-end-near-drip-line")
    assert (None, False) == (found.at, found.drawn)
    root = root_of(elevation(facts, facts["wall east"], View(pins=(found.pin,))))
    assert any(line.startswith(f"{element}, not drawn") for line in words(root))


def test_lowest_log_ends_are_drawn_to_their_own_length_and_pinned_at_the_foot() -> None:
    facts = sheet(HOUSE.replace("ends 400 mm", "ends 400 mm; lowest ends 700 mm"))
    frame = frame_of(facts, "wall south")
    assert pytest.approx((0.4, 0.0, 0.7, 0.0)) == (*frame.ends, *frame.low_ends)
    x, y = at_of(facts, "wall south", "corner sw", "lower-log-ends-step-out")
    assert (-0.7, 0.65) == pytest.approx((x, y))
    assert at_of(facts, "wall south", "corner sw", "log-end-past-drip-line") == pytest.approx((-0.7, 0.65))
    assert at_of(facts, "wall south", "corner sw", "log-end-bare")[1] > 1.5
    root = root_of(elevation(facts, facts["wall south"], View(legend=False)))
    ends = [box for box in root.iter(f"{SVG}rect") if box.get("class") == "thin wood"]
    wide = {float(box.get("y", "")): float(box.get("width", "")) for box in ends}
    low = wide.pop(max(wide))
    assert [low / 0.7] * len(wide) == pytest.approx([one / 0.4 for one in wide.values()], rel=0.01)


def test_lowest_ends_are_as_long_as_the_others_where_they_are_not_stated() -> None:
    facts = sheet(HOUSE)
    assert (0.4, 0.0) == frame_of(facts, "wall south").low_ends
    assert at_of(facts, "wall south", "corner sw", "log-end-past-drip-line")[1] > 1.5


def test_the_end_of_a_beam_is_pinned_at_its_end() -> None:
    facts = sheet_of("cedar-spit")
    frame, porch = frame_of(facts, "wall south"), facts["porch surf"]
    x, y = at_of(facts, "wall south", "beam surf", "beam-end-past-roof-edge")
    assert x == pytest.approx(frame.span_of(porch)[1])
    assert y == pytest.approx(porch_heights(frame, porch)[0] - 0.2)


def test_a_corner_of_walls_that_look_the_same_way_is_drawn_where_the_logs_are() -> None:
    facts = sheet_of("cedar-spit")
    assert at_of(facts, "wall den", "corner den", "lower-log-ends-step-out")[0] > frame_of(facts, "wall den").length
    assert "the end at which corner den is" in frame_of(facts, "wall den").guessed
    assert (0.0, 0.0) == frame_of(facts, "wall east").ends


@pytest.mark.parametrize("narrow", [False, True])
@pytest.mark.parametrize(
    ("plan", "wall"), [("teaching-house", "south"), ("teaching-house", "west"), ("cedar-spit", "den")]
)
def test_pins_cover_neither_one_another_nor_the_scale_bar(plan: str, wall: str, narrow: bool) -> None:
    facts = sheet_of(plan)
    pins = pins_of(review(plan_of(plan), book(), DAY))
    root = root_of(elevation(facts, facts[f"wall {wall}"], View(pins=pins, narrow=narrow)))
    boxes = pin_boxes(root)
    for at, one in enumerate(boxes):
        for other in boxes[at + 1 :]:
            assert one[2] <= other[0] or other[2] <= one[0] or one[3] <= other[1] or other[3] <= one[1]
    bar = next(box for box in root.iter(f"{SVG}rect") if box.get("class") == "solid")
    top, low = float(bar.get("y", "")) - 2, float(bar.get("y", "")) + 8
    assert not [box for box in boxes if box[1] < low and top < box[3]]
    assert max(box[2] for box in boxes) < float(root.get("width", ""))


def test_a_mark_is_as_wide_as_its_numbers() -> None:
    facts = sheet_of("teaching-house")
    root = root_of(elevation(facts, facts["wall west"], View(pins=(Pin(101, "wall west", "x", True, "eave-x"),))))
    (box,) = pin_boxes(root)
    assert box[2] - box[0] > 3 * 8 + 4


def test_in_a_crowd_the_pins_of_a_part_share_a_mark_and_none_is_lost() -> None:
    facts = sheet_of("teaching-house")
    pins = pins_of(review(plan_of("teaching-house"), book(), DAY))
    found = [spot for spot in spots(frame_of(facts, "wall south"), pins) if spot.at is not None]
    marks = marks_of(found)
    assert len(found) > CROWD > 0.9 * len(marks)
    told = sorted((pin.number, pin.element) for mark in marks for pin in mark.pins)
    assert told == sorted((spot.pin.number, spot.pin.element) for spot in found)
    few = found[:CROWD]
    assert [spot.pin for spot in few] == [mark.pins[0] for mark in marks_of(few)]


def test_numbers_that_follow_one_another_are_told_as_a_range() -> None:
    assert "12-19, 23" == ranges([23, *range(12, 20)])
    assert ("7", "7, 8", "1, 3") == (ranges([7]), ranges([8, 7, 7]), ranges([3, 1]))


def test_the_gutter_of_a_porch_is_drawn_and_pinned_at_the_edge_of_the_porch() -> None:
    facts = sheet_of("quiet-harbor")
    frame = frame_of(facts, "wall south")
    edge = porch_heights(frame, facts["porch lake"])[0]
    assert [frame.eave] * 3 + [edge] * 3 == pytest.approx(sorted((top for _, top in spouts_of(frame)), reverse=True))
    assert at_of(facts, "wall south", "gutter lake", "gutter-too-small")[1] == pytest.approx(edge)
    assert at_of(facts, "wall south", "gutter south", "gutter-too-small")[1] == pytest.approx(frame.eave)


def test_a_step_of_the_work_on_a_porch_has_no_pin_before_the_wall() -> None:
    facts = sheet(
        HOUSE + "porch step { along south; depth 8'; roof height 8' }\nstep raise { does \"raise\"; on porch step }"
    )
    assert [] == list(spots(frame_of(facts, "wall south"), (Pin(1, "step raise", "x", False, "work-in-wrong-order"),)))
