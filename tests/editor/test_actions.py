"""Quick fixes."""

from __future__ import annotations

import pytest

from speclint.editor.actions import CONFIRM, fixes
from speclint.editor.diagnose import diagnostics
from speclint.language.edit import with_edits
from tests.editor.given import SPECS, read


def offered(text: str, code: str) -> dict[str, str]:
    """The quick fixes of every diagnostic of a code, with the text after each."""
    reading, _ = read(text)
    told = [one for one in diagnostics(reading.review, reading.lines_of)["house.plan"] if one.code == code]
    assert told
    return {fix.title: with_edits(text, fix.edits) for fix in fixes(reading, told)}


@pytest.mark.parametrize("end", ["\n", "\r\n"])
def test_a_cure_clears_its_finding(end: str) -> None:
    text = (SPECS / "tamarack-point.plan").read_text(encoding="utf-8").replace("\n", end)
    found = offered(text, "headspace-too-small")
    assert found
    for after in found.values():
        reading, _ = read(after)
        assert "headspace-too-small" not in {ruling.rule for ruling in reading.review.rulings}


def test_a_cure_that_others_decide_on_says_so_and_is_not_the_one_to_prefer() -> None:
    reading, _ = read((SPECS / "tamarack-point.plan").read_text(encoding="utf-8"))
    told = diagnostics(reading.review, reading.lines_of)["house.plan"]
    codes = ("purlin-end-exposed", "chimney-without-cricket")
    found = [fix for code in codes for fix in fixes(reading, [one for one in told if one.code == code])]
    assert [("purlin", True)] * 2 + [("chimney", False)] == [
        (fix.title.split(" for ")[1].split()[0], fix.deferred) for fix in found
    ]
    assert [True, True, False] == [fix.title.endswith(f"({CONFIRM})") for fix in found]


def test_a_word_that_is_nearly_known_is_mended() -> None:
    found = offered("wall a { hieght 9';  faces S }", "mistake")
    assert {"write “height”": "wall a { height 9';  faces S }"} == found


def test_several_words_are_mended_as_one() -> None:
    found = offered("wall a { finish semitransparant stain, coats 2 }", "mistake")
    assert {"write “semitransparent stain”": "wall a { finish semitransparent stain, coats 2 }"} == found


def test_a_finding_that_no_longer_stands_has_no_fix() -> None:
    before, _ = read("wall a { hieght 9' }")
    after, _ = read("wall a { height 9' }")
    told = diagnostics(before.review, before.lines_of)["house.plan"]
    assert ([], True) == (fixes(after, told), bool(told))
