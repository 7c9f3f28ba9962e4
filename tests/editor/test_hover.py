"""What is told of the thing under the pointer."""

from __future__ import annotations

import pytest

from speclint.editor.hover import as_hover, hover
from tests.editor.given import PLAN, marked, read


def told(text: str, **used: str) -> str:
    reading, offset = read(text, **used)
    shown = hover(reading, offset)
    return shown.text if shown else ""


def test_the_kind_of_an_element_tells_what_it_is_and_what_is_found() -> None:
    found = told(marked(PLAN, "de", "ck lake"))
    assert found.startswith("**deck lake**\n\nA deck")
    assert "- note: " in found or "- revise: " in found
    assert "- not stated: " in found


def test_the_name_of_an_element_tells_its_measures_in_this_plan() -> None:
    found = told(marked(PLAN, "wall sou", "th"))
    assert "- roof reach: **2'-0\"**" in found
    assert "- free driving rain: **" in found
    assert " to " in found.split("free driving rain")[1].split("\n")[0]  # its bounds


def test_a_part_that_is_named_tells_the_measures_of_that_part() -> None:
    assert told(marked(PLAN, "wall sou", "th")) == told(marked(PLAN, "along sou", "th"))


def test_a_setting_tells_meaning_range_example_and_value() -> None:
    found = told(marked(PLAN, "length 46';  hei", "ght"))
    assert [
        "**height**: from the lowest wood to the eave; on a gable wall to the plate",
        "",
        'a length such as 18" or 2\'-6" or 450 mm; from 11 3/4" to 328\'-1"',
        "",
        "for example: height 9'-6\"",
        "",
        "wall south: **10'-0\"** (stated)",
    ] == found.replace("**10'**", "**10'-0\"**").split("\n")


def test_a_choice_tells_what_it_means() -> None:
    assert "lawn: grass" in told(marked(PLAN, "ground la", "wn"))


def test_a_setting_with_choices_tells_what_each_of_them_means_and_holds_none_up() -> None:
    found = told(marked(PLAN, "gro", "und lawn"))
    assert ("- lawn: grass" in found, "- washed stone: " in found, "for example" in found) == (True, True, False)


def test_a_setting_of_several_elements_tells_the_value_of_each() -> None:
    found = told(marked(PLAN, "faces E;  len", "gth"))
    assert ("wall east: **30'**" in found, "wall west: **30'**" in found) == (True, True)


def test_a_rule_in_a_variance_tells_its_title_and_why() -> None:
    found = told(marked(PLAN, "log-end-past", "-drip-line"))
    assert "log-end-past-drip-line: hold" in found
    assert "End grain drinks rain" in found


def test_a_typical_and_a_used_file_say_what_they_are() -> None:
    assert told(marked(PLAN, "typical wall ba", "re")).startswith("**typical wall bare**")
    assert told('use "sha‸red.plan"', shared="").startswith("**shared.plan**")


def test_an_element_of_an_alternate_alone_says_that_it_is_not_reviewed() -> None:
    assert "not reviewed here" in told('alternate "a" { po‸rch lake { depth 8\' } }')


@pytest.mark.parametrize(
    "text", ["", "‸", "# com‸ment", "wall south { ‸ }", "nonsense ‸here", "wall south { faces S; ‸; }"]
)
def test_where_there_is_nothing_to_tell_nothing_is_told(text: str) -> None:
    assert "" == told(text)


def test_words_of_the_user_cannot_break_the_markup() -> None:
    reading, offset = read("wall a_‸b { height 9' }")
    shown = hover(reading, offset)
    assert shown is not None
    assert "**wall a\\_b**" in shown.text
    assert "**" not in as_hover(reading, shown, markdown=False).contents.value  # type: ignore[union-attr]
