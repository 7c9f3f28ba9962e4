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
    assert [True, True, False] == [fix.title.endswith(f"{CONFIRM})") for fix in found]
    assert [False, False, True] == [fix.preferable for fix in found]


LOW = """site { weather "Marquette, MI" }
typical wall { build log round 10";  starts 3";  species eastern white pine }
wall south { faces S;  length 46';  height 9' }
wall west { faces W;  length 30';  height 9' }
"""


def test_a_cure_tells_what_stands_there_now_and_what_else_it_clears() -> None:
    found = offered(LOW + 'roof main { covers south, west;  form hip;  pitch 8:12;  eaves 6" }', "eave-too-short")
    assert ['state eaves 18" for roof main (now 6"; clears 1 more)'] == list(found)


def test_where_a_typical_states_the_setting_it_can_be_changed_there_for_all() -> None:
    reading, _ = read(LOW)
    told = diagnostics(reading.review, reading.lines_of)["house.plan"]
    one = next(one for one in told if one.code == "sill-too-near-grade")
    wide, own = fixes(reading, [one])
    assert 'state starts 20" in typical wall (now 3"; clears 1 more)' == wide.title
    assert LOW.replace('starts 3"', 'starts 20"') == with_edits(LOW, wide.edits)
    assert 'state starts 20" for wall south (now 3")' == own.title
    assert (False, True) == (wide.preferable, own.preferable)


def test_a_typical_in_another_file_and_one_on_which_a_variance_rests_are_left() -> None:
    site, typical, *walls = LOW.splitlines(keepends=True)
    elsewhere, _ = read("".join([site, 'use "shared.plan"\n', *walls]), shared=typical)
    accepted = 'variance sill-too-near-grade on wall west { because "a";  accepted by "b";  until 2027-06-30 }\n'
    kept, _ = read(LOW + accepted)
    for reading in (elsewhere, kept):
        told = [one for here in diagnostics(reading.review, reading.lines_of).values() for one in here]
        found = fixes(reading, [one for one in told if one.code == "sill-too-near-grade"])
        assert found
        assert [] == [fix.title for fix in found if " in typical " in fix.title]


def test_a_change_that_settles_two_findings_is_offered_once() -> None:
    text = LOW + 'roof main { covers south, west;  form hip;  pitch 8:12;  eaves 6" }\n'
    reading, _ = read(text)
    told = diagnostics(reading.review, reading.lines_of)["house.plan"]
    short = [one for one in told if one.code == "eave-too-short"]
    eaves = [fix for fix in fixes(reading, short) if "eaves" in fix.does]
    assert (2, 1, 2) == (len(short), len(eaves), len(eaves[0].settles))


def test_where_a_professional_decides_nothing_is_changed_and_the_reason_is_given() -> None:
    text = (SPECS / "teaching-house.plan").read_text(encoding="utf-8")
    reading, _ = read(text)
    told = diagnostics(reading.review, reading.lines_of)["house.plan"]
    (fix,) = fixes(reading, [one for one in told if one.code == "guard-too-low"])
    assert ("no quick fix for guard-too-low on rail lake", (), False) == (fix.title, fix.edits, fix.preferable)
    assert "“height” of rail lake: for a licensed engineer or the local building official to decide" == fix.refused


def test_a_value_that_is_none_of_a_list_can_be_chosen_from_it_the_nearest_first() -> None:
    text = "wall a { finish stain;  faces S }"
    found = offered(text, "mistake")
    assert ["write “solid stain”", "write “semitransparent stain”"] == list(found)[:2]
    assert "wall a { finish solid stain;  faces S }" == found["write “solid stain”"]
    reading, _ = read(text)
    told = [one for one in diagnostics(reading.review, reading.lines_of)["house.plan"] if one.code == "mistake"]
    assert {False} == {fix.preferable for fix in fixes(reading, told)}


def test_a_value_of_several_words_is_replaced_whole() -> None:
    found = offered("downspout a { ends at grade;  count 2 }", "mistake")
    assert "downspout a { ends daylight;  count 2 }" == found["write “daylight”"]


def test_a_station_is_mended_in_its_quotation_marks() -> None:
    found = offered('site { weather "Marquete, MI" }', "mistake")
    assert 'site { weather "Marquette, MI" }' == found["write “Marquette, MI”"]


def test_of_several_words_that_may_be_meant_none_is_preferred() -> None:
    for text, expected in (("wall a { species eastern pine }", {False}), ("wall a { hieght 9' }", {True})):
        reading, _ = read(text)
        told = [one for one in diagnostics(reading.review, reading.lines_of)["house.plan"] if one.code == "mistake"]
        assert expected == {fix.preferable for fix in fixes(reading, told)}


def test_a_word_cut_short_is_carried_on_to_the_settings_that_begin_with_it() -> None:
    assert {"write “length”": "wall a { length 40' }"} == offered("wall a { len 40' }", "mistake")


def test_a_word_that_is_nearly_known_is_mended() -> None:
    found = offered("wall a { hieght 9';  faces S }", "mistake")
    assert {"write “height”": "wall a { height 9';  faces S }"} == found


def test_several_words_are_mended_as_one() -> None:
    found = offered("wall a { finish semitransparant stain, coats 2 }", "mistake")
    assert {"write “semitransparent stain”": "wall a { finish semitransparent stain, coats 2 }"} == found


def test_a_finding_that_no_longer_stands_has_no_fix() -> None:
    before, _ = read("wall a { hieght 9' }")
    after, _ = read("wall a { height 9' }")
    told = [one for one in diagnostics(before.review, before.lines_of)["house.plan"] if one.code == "mistake"]
    assert ([], True) == (fixes(after, told), bool(told))


@pytest.mark.parametrize(("written", "preferred"), [("kiln-driedd", [True]), ("base concrete", [False])])
def test_a_word_that_is_added_is_not_preferred_and_a_slip_is(written: str, preferred: list[bool]) -> None:
    text = f"wall a {{ seasoning {written} }}" if "base" not in written else f"post a {{ {written} }}"
    reading, _ = read(text + "\n")
    told = diagnostics(reading.review, reading.lines_of)["house.plan"]
    assert preferred == [fix.preferable for fix in fixes(reading, told) if fix.title.startswith("write “")]
