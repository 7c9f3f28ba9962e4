"""The figures of a roof plan add up on the sheet, each gutter at its own eave, each outlet told."""

from __future__ import annotations

import re

import pytest

from speclint.drawing.elevation import View, elevation
from speclint.drawing.roof_plan import roof_plan
from tests.drawing.expected import sheet_of
from tests.drawing.test_geometry import SVG, points, root_of, words
from tests.measures.sheets import sheet


def area(line: str) -> float:
    found = re.search(r"([\d,]+) ft2", line)
    assert found is not None
    return float(found[1].replace(",", ""))


def test_slope_valley_and_downspouts_add_up() -> None:
    found = words(root_of(roof_plan(sheet_of("quiet-harbor"))))
    slopes = [area(line) for line in found if re.match(r"[\d,]+ ft2, ", line)]
    valleys = [area(line) for line in found if "of it by valley porch to gutter south" in line]
    outlets = {line.split()[1]: area(line) for line in found if line.startswith("downspout ")}
    assert ([900, 900], [40, 40]) == (slopes, valleys)
    assert {"north": 900 - 40, "south": 900 - 40 + 80, "lake": 396} == outlets  # the porch has its own outlet


def test_a_slope_names_only_gutters_of_its_own_roof() -> None:
    found = words(root_of(roof_plan(sheet_of("quiet-harbor"))))
    assert "as gutter south states; as drawn 1008 ft2" in found
    assert not [line for line in found if "gutter lake" in line and "states" in line]


def test_each_gutter_is_drawn_at_its_own_eave_with_its_downspouts() -> None:
    root = root_of(roof_plan(sheet_of("quiet-harbor")))
    gutters = {float(box.get("y", "")) for box in root.iter(f"{SVG}rect") if box.get("class") == "cut"}
    assert 3 == len(gutters)
    dots = [float(dot.get("cy", "")) for dot in root.iter(f"{SVG}circle") if dot.get("r") == "5.0"]
    assert [3, 3, 3] == [sum(abs(dot - gutter) < 8 for dot in dots) for gutter in sorted(gutters)]


@pytest.mark.parametrize(
    "name", ["cedar-spit", "tamarack-point", "quiet-harbor", "teaching-house", "high-desert-cabin"]
)
def test_no_arrow_of_water_crosses_what_is_written(name: str) -> None:
    root = root_of(roof_plan(sheet_of(name)))
    arrows = [
        line for line in root.iter(f"{SVG}line") if line.get("class") == "water" and line.get("x1") == line.get("x2")
    ]
    assert arrows
    for arrow in arrows:
        x, ends = float(arrow.get("x1", "")), sorted(float(arrow.get(one, "")) for one in ("y1", "y2"))
        for text in root.iter(f"{SVG}text"):
            if text.get("text-anchor") == "middle" and abs(float(text.get("x", "")) - x) < 40:
                y = float(text.get("y", ""))
                assert not ends[0] < y - 3 < ends[1], text.text


@pytest.mark.parametrize("name", ["cedar-spit", "tamarack-point", "quiet-harbor", "teaching-house"])
def test_what_is_written_on_a_porch_stays_in_its_box(name: str) -> None:
    root = root_of(roof_plan(sheet_of(name)))
    for shape in root.iter(f"{SVG}polygon"):
        if shape.get("class") == "edge glass":
            xs, ys = zip(*points(shape), strict=True)
            inside = [
                text
                for text in root.iter(f"{SVG}text")
                if min(ys) < float(text.get("y", "")) < max(ys) and min(xs) < float(text.get("x", "")) < max(xs)
            ]
            assert inside
            assert all(len(text.text or "") * 5.9 < max(xs) - min(xs) for text in inside)


def test_what_drips_on_the_ground_is_what_comes_from_that_eave() -> None:
    found = " ".join(words(root_of(roof_plan(sheet_of("teaching-house")))))
    assert "drips on the ground along wall south: 18 ft2" in found  # not what the valley of the main roof lets go there


HIP = """
site { weather "Marquette, MI"; rain wind SW; terrain wooded }
wall south { faces S; length 12 m; height 3 m; starts 600 mm }
wall north { faces N; length 12 m; height 3 m; starts 600 mm }
wall east { faces E; length 8 m; height 3 m; starts 600 mm }
wall west { faces W; length 8 m; height 3 m; starts 600 mm }
roof main { covers south, east, west, north; form hip; pitch 6:12; run 4 m; eaves 900 mm; edge drop 300 mm }
"""


def test_a_hipped_roof_has_four_slopes_with_north_up_and_the_area_that_is_drawn() -> None:
    found = root_of(roof_plan(sheet(HIP)))
    told = words(found)
    assert 4 == len([one for one in found.iter(f"{SVG}polygon") if one.get("class") == "edge roof"])
    assert not [line for line in told if line.startswith("as drawn")]
    places = {text.text: float(text.get("y", "")) for text in found.iter(f"{SVG}text")}
    assert places["over wall north"] < places["over wall south"]
    across = {(text.text or "").split()[-1]: float(text.get("x", "")) for text in found.iter(f"{SVG}text")}
    assert across["west"] < across["north"] < across["east"]


def test_a_roof_whose_edge_hangs_low_stands_before_the_top_of_its_wall() -> None:
    facts = sheet(HIP)
    looks = [one.get("class") for one in root_of(elevation(facts, facts["wall south"], View(legend=False))).iter()]
    assert looks.index("edge roof") > max(at for at, look in enumerate(looks) if look == "course")
