"""A section is to scale: decks, posts and footings as deep as stated, from the ground where they stand."""

from __future__ import annotations

import xml.etree.ElementTree as ElementTree
from math import hypot

import pytest

from speclint.drawing.compass import compass
from speclint.drawing.section import section
from tests.drawing.expected import sheet_of
from tests.drawing.test_geometry import SVG, points, root_of, words
from tests.measures.sheets import sheet

PORCH = """
site { weather "Marquette, MI"; rain wind SW; terrain wooded }
wall south {
    faces S; length 10 m; height 3 m; starts 600 mm; build log round 300 mm; course 300 mm; ground lawn; grade 6%
}
roof main { covers south; form gable; pitch 8:12; run 4 m; eaves 600 mm; rakes 400 mm; gutters none }
porch p { along south; depth 2.4 m; length 8 m; roof height 2.6 m; roof pitch 3:12; hung on posts; floor boards }
post p { under porch p; count 3; size 8x8; height 2 m; inset 300 mm; foot above grade 200 mm; footing 600 mm }
deck d { along south; under p; height 600 mm; depth 4 m; below wood 50 mm; held by ledger }
"""


def drawn(text: str) -> ElementTree.Element:
    facts = sheet(text)
    return root_of(section(facts, facts["wall south"], "metric"))


def boxes(root: ElementTree.Element, look: str) -> list[tuple[float, float, float, float]]:
    """Left, top, width and height of the boxes of a look. [px]"""
    return [
        (float(box.get("x", "")), float(box.get("y", "")), float(box.get("width", "")), float(box.get("height", "")))
        for box in root.iter(f"{SVG}rect")
        if box.get("class") == look
    ]


def scale_of(root: ElementTree.Element) -> float:
    """Pixels to the metre: the courses are 300 mm."""
    course = next(one for one in root.iter(f"{SVG}ellipse"))
    return 2 * float(course.get("ry", "")) / 0.3


def test_a_deck_is_drawn_to_its_stated_depth() -> None:
    root = drawn(PORCH)
    ((_, _, wide, _),) = [box for box in boxes(root, "edge wood") if box[2] > box[3]]
    assert 4.0 == pytest.approx(wide / scale_of(root), rel=0.01)


def test_a_deck_that_goes_on_ends_at_a_break_that_says_how_far() -> None:
    assert any(line.endswith("goes on to 12.00 m") for line in words(drawn(PORCH.replace("depth 4 m", "depth 12 m"))))
    assert "its depth not stated" in words(drawn(PORCH.replace("height 600 mm; depth 4 m;", "height 600 mm;")))


def test_a_footing_is_as_deep_as_stated_below_the_ground_where_it_stands() -> None:
    root = drawn(PORCH)
    scale = scale_of(root)
    grade = next(line for line in root.iter(f"{SVG}polyline") if line.get("class") == "cut")
    (left, level), (right, lower) = (
        [float(n) for n in pair.split(",")] for pair in (grade.get("points") or "").split()
    )
    _, footing = sorted(boxes(root, "edge masonry"))
    middle, bottom = footing[0] + footing[2] / 2, footing[1] + footing[3]
    ground = level + (lower - level) * (middle - left) / (right - left)
    assert ground > level + 0.1 * scale  # six in a hundred over two metres
    assert 0.6 == pytest.approx((bottom - ground) / scale, abs=0.01)
    assert "footing 600 mm deep" in words(root)


@pytest.mark.parametrize(
    ("post", "told"), [("footing 100 mm", "footing 100 mm deep"), ("top none", "depth of footing not")]
)
def test_a_footing_that_is_told_is_drawn_before_the_deck(post: str, told: str) -> None:
    root = drawn(PORCH.replace("footing 600 mm", post).replace("foot above grade 200 mm", "foot above grade 0 mm"))
    assert any(line.startswith(told) for line in words(root))
    order = [one.get("class") for one in root.iter(f"{SVG}rect")]
    assert max(at for at, look in enumerate(order) if look == "edge masonry") > max(
        at for at, look in enumerate(order) if look == "thin wood"
    )
    assert 2 == len(boxes(root, "edge masonry"))


def test_ground_that_falls_toward_the_house_says_so() -> None:
    assert any("ground falls 2% toward the house" in line for line in words(drawn(PORCH.replace("6%", "-2%"))))


def test_the_true_height_of_the_noon_sun_stands_beside_that_of_the_cut() -> None:
    facts = sheet_of("cedar-spit")
    told = " ".join(words(root_of(section(facts, facts["wall den"]))))
    high = " ".join(words(root_of(compass(facts))))
    assert "sun at noon in June 69 deg high" in high
    assert "noon sun, 21 June: 69 deg high, 82 deg as seen in this cut" in told
    assert "noon sun, 21 December: 22 deg high, 50 deg as seen in this cut" in told


ICE = PORCH.replace("gutters none", "gutters none; ice barrier 900 mm")


def test_an_ice_barrier_is_drawn_as_wide_as_stated_with_the_line_it_is_to_reach() -> None:
    root = drawn(ICE)
    (barrier,) = [points(line) for line in root.iter(f"{SVG}polyline") if line.get("class") == "barrier"]
    (x1, y1), (x2, y2) = barrier
    assert 0.9 == pytest.approx(hypot(x1 - x2, y1 - y2) / scale_of(root), rel=0.01)
    assert {"ice barrier 900 mm", "610 mm inside the wall"} <= set(words(root))
    edge = max(x for x, _ in barrier)
    (line,) = [
        points(one) for one in root.iter(f"{SVG}polyline") if one.get("class") == "untold" and len(points(one)) == 2
    ]
    assert 0.6 + 0.3 + 0.6096 == pytest.approx((edge - line[0][0]) / scale_of(root), abs=0.01)  # reach, wall, inside


def test_no_ice_barrier_is_drawn_where_none_is_stated() -> None:
    root = drawn(PORCH)
    assert not [line for line in root.iter(f"{SVG}polyline") if line.get("class") == "barrier"]
    assert not [line for line in words(root) if "ice" in line]
    none = drawn(ICE.replace("ice barrier 900 mm", "ice barrier 0 mm"))
    assert "ice barrier 0 mm" in words(none)
    assert not [line for line in none.iter(f"{SVG}polyline") if line.get("class") == "barrier"]
