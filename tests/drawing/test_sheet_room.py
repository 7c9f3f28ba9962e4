"""A sheet has room for all that is on it, and its style holds for itself alone."""

from __future__ import annotations

import pytest

from speclint.drawing.elevation import View, elevation
from speclint.drawing.layers import NAMES
from speclint.drawing.paper import STYLE
from tests.drawing.expected import sheet_of
from tests.drawing.test_geometry import SVG, root_of


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
