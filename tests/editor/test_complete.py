"""What can stand at the cursor."""

from __future__ import annotations

import pytest
from lsprotocol import types as lsp

from speclint.editor.complete import MOST, completions
from speclint.language.edit import Edit, with_edits
from speclint.model.element import settings_of
from speclint.model.kinds import KINDS
from speclint.pipeline import read_home
from tests.editor.given import CURSOR, PLAN, read

SETTINGS_OF_STONE = set(settings_of(KINDS["stone"])) | {"like"}


def offered(text: str, **used: str) -> list[str]:
    reading, offset = read(text, **used)
    return [item.label for item in completions(reading, offset).items]


def taken(text: str, label: str) -> str:
    """The text after the completion of a label is taken."""
    reading, offset = read(text)
    item = next(item for item in completions(reading, offset).items if item.label == label)
    assert isinstance(item.text_edit, lsp.TextEdit)
    start, end = (reading.lines.offset(at) for at in (item.text_edit.range.start, item.text_edit.range.end))
    return with_edits(reading.document.text, [Edit(start, end, item.text_edit.new_text)])


@pytest.mark.parametrize(
    ("text", "expected"),
    [
        ("wa‸", ["wall"]),
        ("ty‸", ["typical"]),
        ("typical wi‸", ["window"]),
        ('alternate "a" { ty‸', []),
        ('alternate "a" { por‸', ["porch"]),
        (PLAN + 'alternate "a" { wall we‸', ["west"]),
        (PLAN + 'alternate "a" { wall west, so‸', ["south"]),
        (PLAN + 'alternate "a" { wall west so‸', []),
        (PLAN + "sit‸", []),
        (PLAN + 'alternate "a" { sit‸', ["site"]),
        ("wall south { build log round 1‸", ['10"']),
        ("wall south { heig‸", ["height"]),
        ("site { rain w‸", ["rain wind"]),
        ("wall south { finish semi‸", ["semitransparent stain"]),
        ("wall south { finish semitransparent s‸", ["semitransparent stain"]),
        ("wall south { seasoning kiln-dried t‸", ["to"]),
        ('wall south { starts 20" above‸', ["above grade"]),
        ("site { termites very‸", ["very heavy"]),
        ("wall south { species eastern white p‸", ["eastern white pine"]),
        ("wall south { species ass‸", ["assumed"]),
        ("site { termites unk‸", ["unknown"]),
        ("site { termites assumed sl‸", ["slight"]),
        (PLAN + "corner sw { of so‸", ["south"]),
        (PLAN + "corner sw { of south, we‸", ["west"]),
        (PLAN + "corner sw { of wall we‸", ["wall west"]),
        (PLAN + "wall north { like ba‸", ["bare"]),
        (PLAN + "variance sill-too-n‸", ["sill-too-near-grade"]),
        (PLAN + "variance sill-too-near-grade o‸", ["on"]),
        (PLAN + "variance sill-too-near-grade on wall w‸", ["wall west"]),
        (PLAN + "variance sill-too-near-grade on wall west { bec‸", ["because"]),
        ("# wa‸", []),
        ('wall south { because "wa‸', []),
    ],
)
def test_what_can_stand_there_is_offered(text: str, expected: list[str]) -> None:
    assert expected == offered(text)


def test_every_kind_of_element_is_offered_at_the_top() -> None:
    assert {*KINDS, "typical", "alternate", "variance", "use"} == set(offered("‸"))


def test_a_setting_that_the_block_states_is_not_offered_again() -> None:
    text = "wall south { ‸\n height 9';  length 46' }\nwall north { faces N }"
    assert ({"height", "length"} & set(offered(text)), "faces" in offered(text)) == (set(), True)


def test_behind_a_comma_a_list_goes_on_or_another_setting_begins() -> None:
    found = offered(PLAN + "corner sw { of south, ‸")
    assert ({"east", "west", "south"} <= set(found), "ends" in found) == (True, True)


def test_a_name_that_two_kinds_share_is_offered_with_its_kind() -> None:
    found = offered("wall lake, south { }\nstone a { at ‸ }\nchimney lake { }")
    assert {"wall lake", "chimney lake", "south"} == set(found) - {"unknown", "assumed"} - SETTINGS_OF_STONE


def test_names_come_from_used_files_too() -> None:
    assert "garage" in offered('use "shared.plan"\ncorner a { of ‸', shared="wall garage { faces S }")


@pytest.mark.parametrize(
    ("text", "label", "after"),
    [
        ('site { weather "Marq‸', "Marquette, MI", 'site { weather "Marquette, MI"'),
        ('site { weather "Marq‸" }', "Marquette, MI", 'site { weather "Marquette, MI" }'),
        ("site { weather marq‸ }", "Marquette, MI", 'site { weather "Marquette, MI" }'),
        ("site { rain record ‸ }", "Boston, MA", 'site { rain record "Boston, MA" }'),
        ('site { rain record "Bos‸" }', "Boston, MA", 'site { rain record "Boston, MA" }'),
        ("site { rain w‸ }", "rain wind", "site { rain wind }"),
        ("wall \N{WOOD} { height 10′;  len‸ }", "length", "wall \N{WOOD} { height 10′;  length }"),
        ("wall a {\r\n  finish solid s‸\r\n}", "solid stain", "wall a {\r\n  finish solid stain\r\n}"),
    ],
)
def test_what_is_taken_takes_the_place_of_what_is_typed(text: str, label: str, after: str) -> None:
    assert after == taken(text, label)


def test_a_spelling_of_the_trade_finds_its_station() -> None:
    assert offered('site { weather "Saint P‸') == offered('site { weather "St. P‸') != []


def test_many_stations_are_cut_and_asked_for_again() -> None:
    reading, offset = read('site { weather "‸')
    found = completions(reading, offset)
    assert (True, MOST) == (found.is_incomplete, len(found.items))


def test_an_example_is_offered_for_a_number() -> None:
    assert "9'-6\"" in offered("wall south { height ‸")


@pytest.mark.parametrize("label", ["south", "west"])
def test_a_name_that_is_taken_is_read_without_a_mistake(label: str) -> None:
    after = taken(PLAN + f"corner sw {{ of east, {CURSOR} }}", label)
    reading, _ = read(after)
    assert () == read_home(reading.shelf.plan)[1]


def test_an_element_is_not_offered_as_its_own_part() -> None:
    labels = offered(PLAN + "beam one { }\nbeam two { on ‸ }")
    assert ("one" in labels, "two" in labels) == (True, False)


def test_a_list_of_titles_is_asked_for_again_at_each_letter() -> None:
    reading, offset = read('site { weather "Marq‸" }')
    found = completions(reading, offset)
    assert "Marquette, MI" in [item.label for item in found.items]
    assert found.is_incomplete
