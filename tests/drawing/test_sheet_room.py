"""A sheet has room for all that is on it, and its style holds for itself alone."""

from __future__ import annotations

import pytest

from speclint.drawing.compass import compass
from speclint.drawing.elevation import View, elevation
from speclint.drawing.layers import NAMES
from speclint.drawing.paper import STYLE
from speclint.drawing.pins import pins_of
from speclint.drawing.roof_plan import roof_plan
from speclint.drawing.section import section
from speclint.drawing.timeline import timeline
from speclint.forecast.jobs import jobs_of
from speclint.forecast.outlook import outlook
from speclint.forecast.rates import demo_rates
from speclint.pipeline import review
from tests.drawing.expected import plan_of, sheet_of
from tests.drawing.test_geometry import SVG, points, root_of
from tests.measures.sheets import sheet
from tests.specs.expected import DAY, book


@pytest.mark.parametrize("name", ["cedar-spit", "tamarack-point", "high-desert-cabin"])
def test_the_legend_ends_above_the_title_strip(name: str) -> None:
    facts = sheet_of(name)
    for wall in facts.of_kind("wall"):
        for shown in NAMES:
            root = root_of(elevation(facts, wall, View(shown=shown)))
            texts = list(root.iter(f"{SVG}text"))
            strip = next(float(text.get("y", "")) for text in texts if text.get("class") == "title") - 18
            assert max(float(text.get("y", "")) for text in texts if text.get("class") == "small") < strip
            assert max(float(text.get("y", "")) for text in texts) < float(root.get("height", ""))


def test_every_rule_of_a_style_is_of_drawings_only() -> None:
    assert [] == [line for line in STYLE.splitlines() if not line.startswith(".drawing ")]
    assert "," not in "".join(line.partition("{")[0] for line in STYLE.splitlines())


WIDE = {"small": 5.9, "note": 6.3, "title": 9.8, "number": 5.9}  # pixels to a letter where the face is a wide one


def past_the_edge(svg: str | None) -> list[str]:
    """The words that would leave the sheet in a wide face."""
    root = root_of(svg)
    found = []
    for text in root.iter(f"{SVG}text"):
        look = (text.get("class") or "").split()
        long = len(text.text or "") * max((WIDE.get(one, 0.0) for one in look), default=0.0)
        share = {"end": 1.0, "middle": 0.5}.get(text.get("text-anchor", ""), 0.0)
        left = float(text.get("x", "")) - share * long
        if left < 0 or left + long > float(root.get("width", "")):
            found.append(text.text or "")
    return found


@pytest.mark.parametrize(
    "name", ["cedar-spit", "tamarack-point", "quiet-harbor", "teaching-house", "high-desert-cabin", "starter"]
)
def test_words_stay_on_the_sheet_in_a_wide_face(name: str) -> None:
    facts = sheet_of(name)
    jobs, _ = jobs_of(facts, demo_rates())
    pins = pins_of(review(plan_of(name), book(), DAY))
    for wall in facts.of_kind("wall"):
        assert [] == past_the_edge(elevation(facts, wall, View(pins=pins)))
        assert [] == past_the_edge(elevation(facts, wall, View(legend=False, narrow=True, pins=pins)))
        assert [] == past_the_edge(section(facts, wall))
    assert [] == past_the_edge(compass(facts))
    assert [] == past_the_edge(roof_plan(facts))
    assert [] == past_the_edge(timeline(f"{name}.plan", outlook(jobs, demo_rates(), 30), "$", 2026))


def test_a_long_part_is_told_as_far_as_there_is_room() -> None:
    facts = sheet(f"""
    site {{ weather "Marquette, MI"; rain wind SW; terrain wooded }}
    wall {"a" * 60} {{ faces S; length 8 m; height 3 m; starts 500 mm; build framed with siding; finish clear film }}
    """)
    jobs, _ = jobs_of(facts, demo_rates())
    assert [] == past_the_edge(timeline("x", outlook(jobs, demo_rates(), 30), "$", 2026))


def test_walls_that_face_one_way_are_named_at_one_mark_clear_of_the_points() -> None:
    root = root_of(compass(sheet_of("teaching-house")))
    texts = {text.text: text for text in root.iter(f"{SVG}text")}
    assert "south, annex" in texts
    marks = [points(one) for one in root.iter(f"{SVG}polygon") if one.get("class") == "edge"]
    assert 4 == len(marks)
    for mark in marks:
        across = [max(axis) - min(axis) for axis in zip(*mark, strict=True)]
        assert max(across) > 1.4 * min(across)  # it points
        for point in "NESW":
            x, y = float(texts[point].get("x", "")), float(texts[point].get("y", "")) - 5
            assert not [1 for a, b in mark if abs(a - x) < 8 and abs(b - y) < 7]
