"""One drip edge and one ridge in every view of a house, and the line of shelter from that same edge."""

from __future__ import annotations

import pytest

from speclint.drawing.elevation import View, elevation
from speclint.drawing.marks import shelter_height
from speclint.drawing.section import section
from speclint.drawing.wall_frame import WallFrame, wall_frame
from speclint.measures.facts import Sheet
from tests.drawing.expected import sheet_of
from tests.drawing.test_geometry import HOUSE, SVG, points, root_of, words
from tests.measures.sheets import sheet

DROPPED = HOUSE.replace("eaves 600 mm", "eaves 600 mm; edge drop 250 mm")


def frame_of(facts: Sheet, wall: str) -> WallFrame:
    found = wall_frame(facts, facts[wall])
    assert found is not None
    return found


def heights(facts: Sheet, wall: str) -> list[float]:
    """The heights above grade of the corners of the main roof on an elevation, to scale. [m]"""
    root = root_of(elevation(facts, facts[wall], View(legend=False)))
    shape = next(points(one) for one in root.iter(f"{SVG}polygon") if one.get("class") == "edge roof")
    frame = frame_of(facts, wall)
    grade = next(line for line in root.iter(f"{SVG}line") if line.get("class") == "cut")
    wide = float(grade.get("x2", "")) - float(grade.get("x1", ""))
    scale = wide / (frame.length + 2 * max(frame.side, *frame.ends, 0.4))
    return [(float(grade.get("y1", "")) - y) / scale for _, y in shape]


@pytest.mark.parametrize(("text", "edge"), [(HOUSE, 2.9), (DROPPED, 2.65)])
def test_eave_gable_and_section_have_one_drip_edge_and_one_ridge(text: str, edge: float) -> None:
    facts = sheet(text)
    ridge = edge + 8 / 12 * (4 + 0.6)
    for wall in ("wall south", "wall west"):
        assert (edge, ridge) == pytest.approx((frame_of(facts, wall).eave, frame_of(facts, wall).ridge))
    south, west = heights(facts, "wall south"), heights(facts, "wall west")
    assert [edge, ridge] == pytest.approx([min(south), max(south)], abs=0.02)
    assert [edge, ridge + 0.22] == pytest.approx([min(west), max(west)], abs=0.02)  # with the thickness of its edge


@pytest.mark.parametrize("name", ["cedar-spit", "tamarack-point", "quiet-harbor", "teaching-house"])
def test_every_view_of_a_main_roof_agrees(name: str) -> None:
    facts = sheet_of(name)
    frames = [frame_of(facts, wall.label) for wall in facts["roof main"]["covers"]]
    assert 1 == len({round(frame.ridge - frame.starts, 6) for frame in frames})  # the lowest wood is level
    assert 1 == len({round(frame.eave - frame.starts, 6) for frame in frames})
    for gable in (frame for frame in frames if frame.gable):
        assert [gable.eave, gable.eave] == pytest.approx([height for _, height in gable.tips])


def test_walls_on_a_stepped_foundation_have_one_edge_above_grade() -> None:
    stepped = HOUSE.replace(
        "faces S; length 10 m; height 2.4 m; starts 500 mm", "faces S; length 10 m; height 2 m; starts 900 mm"
    )
    facts = sheet(stepped)
    frames = [frame_of(facts, wall) for wall in ("wall south", "wall west")]
    assert [(2.9, 2.9 + 8 / 12 * 4.6)] * 2 == [pytest.approx((frame.eave, frame.ridge)) for frame in frames]


def test_the_section_tells_the_heights_and_how_far_the_roof_is_raised() -> None:
    facts = sheet(HOUSE)
    found = " ".join(words(root_of(section(facts, facts["wall south"], "metric"))))
    assert (
        "drip edge 2.40 m and ridge 5.47 m above the lowest wood; taken: drip edge level with the top of the wall"
        in found
    )
    assert "roof raised 400 mm" in found  # 600 mm out at 8 in 12
    stated = sheet(DROPPED)
    found = " ".join(words(root_of(section(stated, stated["wall south"], "metric"))))
    assert "drip edge 2.15 m and ridge 5.22 m above the lowest wood" in found
    assert "taken: drip edge" not in found
    assert "roof raised 150 mm" in found


def test_the_line_of_shelter_hangs_from_the_drip_edge() -> None:
    for text, edge in ((HOUSE, 2.9), (DROPPED, 2.65)):
        facts = sheet(text)
        assert edge - 0.6 * 3**0.5 == pytest.approx(shelter_height(frame_of(facts, "wall south")), abs=0.01)


def test_what_is_taken_of_the_edge_is_said_once() -> None:
    for wall in ("wall south", "wall west"):
        facts = sheet(HOUSE)
        told = " ".join(words(root_of(elevation(facts, facts[wall], View("metric")))))
        assert 1 == told.count("drip edge level with the top of the wall")


def test_a_peak_that_is_stated_above_its_roof_is_told() -> None:
    facts = sheet_of("teaching-house")
    told = " ".join(words(root_of(elevation(facts, facts["wall west"], View()))))
    assert 'its peak is stated 20" above the ridge that run and pitch give' in told


def test_a_strip_of_many_words_is_told_in_rows_that_fit() -> None:
    root = root_of(section(sheet_of("cedar-spit"), sheet_of("cedar-spit")["wall west"]))
    rows = [text.text or "" for text in root.iter(f"{SVG}text") if text.get("class") == "note"]
    assert len(rows) > 1
    assert all(len(row) * 6.4 < float(root.get("width", "")) - 20 for row in rows)


SHED = """
wall south { faces S; length 6 m; height 4 m; starts 500 mm }
wall north { faces N; length 6 m; height 2.4 m; starts 500 mm }
wall east { faces E; length 6 m; height 2.4 m; peak 4 m; starts 500 mm }
wall west { faces W; length 6 m; height 2.4 m; peak 4 m; starts 500 mm }
roof main {
    covers south, north, east, west; gables east, west; form shed; low side north; pitch 3:12; run 6 m; eaves 600 mm
}
"""


def test_a_shed_has_one_slope_in_every_view() -> None:
    facts = sheet(SHED)
    south, north, east, west = (frame_of(facts, f"wall {name}") for name in ("south", "north", "east", "west"))
    assert (True, False) == (south.high, north.high)
    assert (-1, 1) == (east.lean, west.lean)  # south is at the left of a wall that looks east
    plane = 2.9 + 0.25 * 6.6  # where the roof passes the face of the high wall
    assert [plane] * 4 == pytest.approx([frame.ridge for frame in (south, north, east, west)])
    assert plane == pytest.approx(east.under_roof(0.0)) == pytest.approx(west.under_roof(6.0))
    assert 2.9 == pytest.approx(east.under_roof(6.6)) == pytest.approx(west.under_roof(-0.6))
    assert (4.5, 2.9) == pytest.approx((east.wood_top(0.0), east.wood_top(6.0)))
    assert (0.0, 3.0) == pytest.approx(east.half_width(3.2))


def test_the_end_of_a_shed_is_as_wide_at_every_height_as_it_is_reckoned() -> None:
    facts = sheet(SHED)
    frame, face = frame_of(facts, "wall east"), 6.0
    for up in (2.5, 3.0, 3.5, 3.9):
        left, right = frame.half_width(up)
        assert face * (1 - (up - 2.4) / 1.6) == pytest.approx(right - left)
