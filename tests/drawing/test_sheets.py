"""Every kept drawing, whole file against whole file, and each of them sound XML that asks nothing of the network."""

from __future__ import annotations

import re
import xml.etree.ElementTree as ElementTree

import pytest

from tests.drawing.expected import HERE, drawings


@pytest.fixture(scope="module")
def drawn() -> dict[str, str]:
    return drawings()


@pytest.mark.parametrize("name", sorted(path.name for path in HERE.glob("*.svg")))
def test_a_drawing_is_as_it_was(name: str, drawn: dict[str, str]) -> None:
    assert (HERE / name).read_text(encoding="utf-8") == drawn[name]


def test_every_drawing_is_kept(drawn: dict[str, str]) -> None:
    assert {path.name for path in HERE.glob("*.svg")} == set(drawn)


def test_every_drawing_is_sound_and_names_no_place_outside(drawn: dict[str, str]) -> None:
    for svg in drawn.values():
        ElementTree.fromstring(svg)
        assert {"http://www.w3.org/2000/svg"} == set(re.findall(r"https?://[^\"'<\s]+", svg))


def test_every_drawing_tells_itself_in_words(drawn: dict[str, str]) -> None:
    for svg in drawn.values():
        root = ElementTree.fromstring(svg)
        assert root.get("aria-label")
        assert root.find("{http://www.w3.org/2000/svg}desc").text  # type: ignore[union-attr]
