"""Every question of an editor at every moment of typing a plan, and at texts that are no plan at all."""

from __future__ import annotations

from random import Random

import pytest
from lsprotocol import types as lsp

from speclint.editor.complete import completions
from speclint.editor.diagnose import diagnostics
from speclint.editor.hover import as_hover, hover
from speclint.editor.outline import folds, symbols
from speclint.editor.places import definitions, references, typical_setting
from speclint.editor.reading import Reading
from speclint.editor.rename import CannotRename, renamable, renamed
from tests.editor.given import PLAN, SPECS, read

ODD = [
    "",
    "\ufeff",
    "\r",
    "\0",
    "{",
    "}" * 50,
    "{" * 2000,
    '"',
    '"' * 99,
    "wall " * 500,
    "typical",
    "typical typical {",
    "alternate { alternate { alternate",
    "variance",
    "variance on on on {",
    "variance x on",
    "use",
    'use "',
    'use "../../x.plan"',
    'use "a\0b.plan"',
    "like like like",
    "wall a { like",
    "wall a { of ,,,, }",
    "wall , { }",
    "site a, b { rain wind }",
    "roof main { covers ,",
    "wall a { height 1e999999' }",
    "wall a { height " + "9" * 5000 + "' }",
    "\ud83d lone { \udc00 }",
    "wall \u2028 { \x85 }",
    "# " + "\N{WOOD}" * 3000,
]


def ask_everything(reading: Reading, offset: int) -> int:
    """Ask all that an editor asks at a place; how many answers there are."""
    place = reading.place(offset)
    found: list[object] = [
        *completions(reading, offset).items,
        *definitions(reading, place),
        *typical_setting(reading, offset),
        *references(reading, place, True),
        *symbols(reading.look, reading.lines),
        *folds(reading.look, reading.lines),
    ]
    shown = hover(reading, offset)
    found += [as_hover(reading, shown, True)] if shown else []
    if renamable(reading, place):
        try:
            found += renamed(reading, place, "another").values()
        except CannotRename as refused:
            found.append(str(refused))
    return len(found)


def test_every_moment_of_typing_a_plan_can_be_asked_about() -> None:
    text = PLAN.replace("46'", "46′").replace("shown", "\N{WOOD}")
    asked = 0
    for end in range(len(text) + 1):
        reading, offset = read(text[:end])
        asked += bool(ask_everything(reading, offset))
    assert asked > len(text) * 0.9


def test_every_place_of_the_demo_plan_can_be_asked_about() -> None:
    reading, _ = read((SPECS / "tamarack-point.plan").read_text(encoding="utf-8"))
    places = range(0, len(reading.document.text), 5)
    found = [hover(reading, at) for at in places]
    assert sum(one is not None for one in found) > len(places) / 3
    assert all(one.start <= at <= one.end for one, at in zip(found, places, strict=True) if one)


@pytest.mark.parametrize("text", ODD, ids=range(len(ODD)))
def test_odd_texts_can_be_asked_about(text: str) -> None:
    reading, _ = read(text)
    told = diagnostics(reading.review, reading.lines_of)
    for at in {0, len(text) // 2, len(text)}:
        ask_everything(reading, at)
    ends = lsp.Position(len(reading.lines.starts), 0)
    assert all(one.range.start <= one.range.end <= ends for here in told.values() for one in here)


@pytest.mark.parametrize("seed", range(20))
def test_torn_plans_can_be_asked_about(seed: int) -> None:
    random = Random(seed)
    text = list((SPECS / "tamarack-point.plan").read_text(encoding="utf-8"))
    for _ in range(60):
        at = random.randrange(len(text))
        text[at : at + random.randrange(3)] = random.choice(
            ['"', "{", "}", ";", ",", "\n", "wall ", " on ", "like ", "\r", ""]
        )
    reading, _ = read("".join(text))
    told = diagnostics(reading.review, reading.lines_of)
    assert told
    for _ in range(10):
        ask_everything(reading, random.randrange(len(reading.document.text)))
