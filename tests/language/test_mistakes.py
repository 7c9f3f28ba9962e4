"""Every kind of mistake: a broken plan with a mark at the place, and the whole message that stands there."""

from __future__ import annotations

import pytest

from speclint.language.atoms import Mistake
from speclint.language.uses import CannotRead, trees_of
from speclint.model.build import build

MARK = "▸"
NAME = "a name is one word; put several names apart with commas, and settings inside { }"

# A broken plan, the place marked; how many characters the mistake spans; the message; the help.
MISTAKES = [
    (
        "wall a ▸{ height 9'",
        1,
        "the block of “wall a” opened here is not closed",
        "add a closing } where the block ends",
    ),
    (
        "wall a { height 9' }▸}",
        1,
        "“}” closes a block that was not opened",
        "take it out, or open the block it belongs to",
    ),
    (
        'wall a { species ▸"red pine }',
        10,
        "the quotation mark opened here is not closed",
        'close it with " on the same line',
    ),
    ('▸"wall a', 7, "the quotation mark opened here is not closed", 'close it with " on the same line'),
    ("▸& wall a { }", 1, "“&” means nothing here", "take it out"),
    ("wall a { height ▸& }", 1, "“&” means nothing here", "write for example: height 9'-6\""),
    ("wall a { ▸& }", 1, "“&” is not a setting of a wall", "`speclint explain wall` lists the settings"),
    ("▸wal a { }", 3, "“wal a” is not an element that speclint knows", "did you mean “wall”?"),
    ("▸window", 6, "this window has no name", "write for example: window south { … }"),
    ("▸chimney { }", 7, "this chimney has no name", "write for example: chimney hearth { … }"),
    (
        "▸house { }",
        5,
        "“house” is not an element that speclint knows",
        "a plan needs no house around its elements; start with “site { … }”, then its walls and roofs",
    ),
    (
        "roof a { ▸overhang 2' }",
        8,
        "“overhang” is not a setting of a roof",
        "a roof states “eaves” and “rakes”; where one wall differs, state the “overhang” of that wall",
    ),
    (
        "wall a { finish paint, ▸3 coats }",
        1,
        "“3” is not a setting of a wall",
        "write “coats 3”",
    ),
    (
        "▸height 9'",
        6,
        "“height” stands outside any element",
        "settings belong inside the { } of an element, such as wall south { height 9' }",
    ),
    ("▸chimny", 6, "“chimny” stands outside any element", "did you mean “chimney”?"),
    ("wall a { ▸heigth 9' }", 6, "“heigth” is not a setting of a wall", "did you mean “height”?"),
    (
        "wall a { ▸frobnicate 9' }",
        10,
        "“frobnicate” is not a setting of a wall",
        "`speclint explain wall` lists the settings",
    ),
    ("wall a { build ▸log squar }", 3, "“log squar” is not a value for “build”", "did you mean “log square”?"),
    ("wall a { scribed ▸maybe }", 5, "“maybe” is not a value for “scribed”", "one of: yes, no"),
    (
        "wall a { species ▸red pyne }",
        3,
        "“red pyne” is not a species of the reference table",
        "did you mean “red pine”?",
    ),
    (
        "wall a { species ▸unobtainium }",
        11,
        "“unobtainium” is not a species of the reference table",
        "`speclint explain species` lists the table",
    ),
    (
        "wall a { height ▸9 furlongs }",
        1,
        "“9 furlongs” does not fit “height”",
        'needs a length such as 18" or 2\'-6" or 450 mm',
    ),
    ("wall a { height ▸9 }", 1, "“9” does not fit “height”", 'needs a length such as 18" or 2\'-6" or 450 mm'),
    (
        "wall a { height ▸70 psf }",
        6,
        "“70 psf” does not fit “height”",
        'needs a length such as 18" or 2\'-6" or 450 mm',
    ),
    (
        "wall a { height ▸tall }",
        4,
        "“tall” is not a value for “height”",
        'needs a length such as 18" or 2\'-6" or 450 mm',
    ),
    ('roof a { pitch ▸12" }', 3, '“12"” does not fit “pitch”', 'needs a slope such as 10:12, 1/4" per ft or 2%'),
    ("wall a { faces ▸S 95 E }", 6, "“S 95 E” is not a bearing", "needs a bearing such as S 10 E, NW or 135 deg"),
    ("wall a { faces ▸up }", 2, "“up” is not a bearing", "needs a bearing such as S 10 E, NW or 135 deg"),
    ("wall a { storeys ▸1.5 }", 3, "“1.5” does not fit “storeys”", "needs a whole number such as 6"),
    ("wall a { storeys ▸9 }", 1, "“9” is out of range for “storeys”", "speclint reads 1 to 4 here"),
    ("wall a { height ▸-3' }", 3, "“-3'” is out of range for “height”", 'speclint reads 11 3/4" to 328\'-1" here'),
    ("wall a { height ▸400' }", 4, "“400'” is out of range for “height”", 'speclint reads 11 3/4" to 328\'-1" here'),
    ("wall a { height ▸99999999999 m }", 13, "“99999999999 m” is too large to be meant", ""),
    ("post a { size ▸6x0 }", 3, "“6x0” has a side of zero", ""),
    ("post a { size ▸6x999 }", 5, "“6x999” is out of range for “size”", 'speclint reads 1/2" to 5\'-0" here'),
    ("post a { size ▸999x6 }", 5, "“999x6” is out of range for “size”", 'speclint reads 1/2" to 5\'-0" here'),
    ('post a { size ▸0" }', 2, '“0"” is out of range for “size”', 'speclint reads 1/2" to 5\'-0" here'),
    ("post a { size ▸150x2 mm }", 8, "“150x2 mm” is out of range for “size”", "speclint reads 13 mm to 1524 mm here"),
    ("wall a { height ▸9'-1/0\" }", 7, "“9'-1/0\"” has a fraction that is no number", ""),
    ("wall a { height ▸1.2.3' }", 6, "the unit “.3'” in “1.2.3'” is not known", ""),
    (
        "site { ground snow ▸-70 psf }",
        7,
        "“-70 psf” is out of range for “ground snow”",
        "speclint reads 0 psf to 600 psf here",
    ),
    (
        "wall a { height 9'; ▸height 8' }",
        6,
        "“height” is stated twice for wall a",
        "keep one of the two; the first is used",
    ),
    ("wall a { }\n▸wall a { }", 4, "wall a is already there, in line 1", "give one of them another name"),
    ("wall a { ▸wall b { } }", 1, "a block cannot stand inside wall a", "is a closing } missing before it?"),
    ("wall a { height 9'\n▸{ } }", 1, "a block cannot stand inside wall a", "is a closing } missing before it?"),
    ("▸{ height 9' }", 1, "this block has no name before its {", "write for example: wall south { … }"),
    ("▸wall { height 9' }", 4, "this wall has no name", "write for example: wall south { … }"),
    (
        'wall ▸"south" { }',
        7,
        '“"south"” is not expected in the name of a wall',
        "a name is one word; put several names apart with commas, and settings inside { }",
    ),
    (
        "wall south ▸fast { }",
        4,
        "“fast” is not expected in the name of a wall",
        "a name is one word; put several names apart with commas, and settings inside { }",
    ),
    (
        "wall a { sheltered by ▸lake }",
        4,
        "“sheltered by” names a porch “lake” that is not in the plan",
        "the plan has no porch yet",
    ),
    (
        "porch lake { }\nwall a { sheltered by ▸lak }",
        3,
        "“sheltered by” names a porch “lak” that is not in the plan",
        "did you mean “lake”?",
    ),
    (
        "deck x { }\nporch x { }\nrail a { on ▸x }",
        1,
        "“x” could be deck x or porch x",
        "write its kind before its name",
    ),
    ("wall a { like ▸sunny }", 5, "there is no typical wall “sunny”", "write: typical wall sunny { … }"),
    ("wall a { ▸like }", 4, "“like” names no typical", "write the name of a typical wall after it"),
    (
        "▸typical { height 9' }",
        7,
        "a typical needs a kind of element and a block",
        "write for example: typical wall { species eastern white pine }",
    ),
    (
        "▸typical wall",
        7,
        "a typical needs a kind of element and a block",
        "write for example: typical wall { species eastern white pine }",
    ),
    (
        "▸alternate { wall a { } }",
        9,
        "an alternate needs a name and a block",
        'write for example: alternate "wide eaves" { roof main { eaves 3\' } }',
    ),
    (
        '▸alternate "x"',
        9,
        "an alternate needs a name and a block",
        'write for example: alternate "wide eaves" { roof main { eaves 3\' } }',
    ),
    ('alternate "x" { }\n▸alternate "x" { }', 9, "the alternate “x” is stated twice", "rename one"),
    ('alternate "x" { ▸use "y.plan" }', 3, "“use” cannot stand inside an alternate", "move it out"),
    ('alternate "x" { ▸variance y on wall a { } }', 8, "“variance” cannot stand inside an alternate", "move it out"),
    (
        "▸variance",
        8,
        "a variance needs the name of a rule",
        'write: variance RULE on wall east { because "…"; accepted by "…"; until 2027-06-30 }',
    ),
    (
        'variance ▸x on wall a { accepted by "z"; until 2027-01-01 }',
        1,
        "the variance on x does not state “because”",
        'add: because "…"',
    ),
    (
        'variance x on wall a { because "y"; accepted by "z"; until ▸soon }',
        4,
        "“soon” is not a date",
        "write a date such as 2027-06-30",
    ),
    (
        'variance x on wall a { because "y"; accepted by "z"; until ▸2027-13-01 }',
        10,
        "“2027-13-01” is not a date",
        "write a date such as 2027-06-30",
    ),
    (
        'variance x on wall a { because ▸y; accepted by "z"; until 2027-01-01 }',
        1,
        "“because” needs a text in quotes",
        'write: because "…"',
    ),
    (
        'variance x on wall a { because "y"; accepted by "z"; until 2027-01-01; ▸untill 2027-01-01 }',
        6,
        "“untill” is not a setting of a variance",
        "did you mean “until”?",
    ),
    (
        'variance x ▸at wall a { because "y"; accepted by "z"; until 2027-01-01 }',
        2,
        "a variance names one rule, then “on” and the element",
        "write for example: variance RULE on wall east { … }",
    ),
    ("wall a { ▸height }", 6, "“height” has no value", "write for example: height 9'-6\""),
    (
        "wall a { height 9' ▸length 8' }",
        6,
        "“length 8'” is not expected after “height”",
        "end the note with ; or a new line, or put a comma before the next setting",
    ),
    (
        "wall a { height 9'▸' }",
        1,
        "“'” is not expected after “height”",
        "end the note with ; or a new line, or put a comma before the next setting",
    ),
    ("site { weather ▸Duluth }", 6, "“weather” needs a text in quotes", 'write for example: weather "Marquette, MI"'),
    ('step ▸😀 { does "x" }', 1, "“😀” is not expected in the name of a step", NAME),
    ('step a { does "😀 one", ▸affter b }', 6, "“affter b” is not a setting of a step", "did you mean “after”?"),
    (
        'site { weather ▸"Duluht, MN" }',
        12,
        "there is no weather station “Duluht, MN” in the reference table",
        "did you mean “Duluth, MN” or “Cloquet, MN” or “Faribault, MN”?",
    ),
    (
        "gutter a { on ▸5' }",
        2,
        "“on” names a roof or porch “5'” that is not in the plan",
        "the plan has no roof or porch yet",
    ),
    ("wall a { faces S, ▸9' }", 2, "“9'” is not a setting of a wall", "`speclint explain wall` lists the settings"),
    ("post a { seasoning green to ▸dry }", 3, "“dry” is not a value for “moisture”", "needs a percentage such as 15%"),
    ("step a { does ▸bore }", 4, "“does” needs a text in quotes", 'write for example: does "bore wire chases"'),
    ("use ▸house", 5, "“use” needs the name of a file in quotes", 'write for example: use "house-standards.plan"'),
    (
        "▸variance on wall a { }",
        8,
        "a variance needs the name of a rule",
        'write: variance RULE on wall east { because "…"; accepted by "…"; until 2027-06-30 }',
    ),
    ("typical wall { like ▸shady }", 5, "a typical wall cannot be like another", "state its settings here"),
    ("typical wall shady ▸sunny { }", 5, "“sunny” is not expected in the name of a typical wall", "a name is one word"),
    ('use "b.plan" ▸twice', 5, '“twice” is not expected after "b.plan"', "one “use” names one file"),
    ('▸use "b.plan" { }', 3, "“use” takes no block", "end it after the name of the file"),
    (
        'use ▸"../b.plan"',
        11,
        '"../b.plan" lies outside the folder of the plan',
        "keep shared files beside the plan or below it",
    ),
    ('use ▸"gone.plan"', 11, '"gone.plan" cannot be read: there is no such file', ""),
    (
        'wall a { height 9\' ▸"tall" }',
        6,
        '“"tall"” is not expected after “height”',
        "end the note with ; or a new line, or put a comma before the next setting",
    ),
    (
        "wall a { species red pine, ▸9 }",
        1,
        "“9” is not a setting of a wall",
        "`speclint explain wall` lists the settings",
    ),
]


def read(used: str) -> str:
    if used == "b.plan":
        return ""
    raise CannotRead("there is no such file")


def mistakes_of(text: str) -> list[Mistake]:
    trees, mistakes = trees_of(text, "a.plan", read)
    return [*mistakes, *build(trees, "a.plan")[1]]


def place_of(marked: str) -> tuple[int, int]:
    """The line and column of the mark."""
    before = marked.split(MARK)[0]
    return before.count("\n") + 1, len(before.rpartition("\n")[2]) + 1


@pytest.mark.parametrize(("marked", "length", "message", "help"), MISTAKES, ids=[row[0] for row in MISTAKES])
def test_a_mistake_is_told_once_at_its_place(marked: str, length: int, message: str, help: str) -> None:
    expected = [Mistake("a.plan", *place_of(marked), length, message, help)]
    assert expected == mistakes_of(marked.replace(MARK, ""))


@pytest.mark.parametrize("row", MISTAKES, ids=[row[0] for row in MISTAKES])
def test_a_mistake_is_told_the_same_after_a_sound_element(row: tuple[str, int, str, str]) -> None:
    told = mistakes_of("wall sound { height 8' }\n" + row[0].replace(MARK, ""))
    assert [row[2].replace("in line 1", "in line 2")] == [mistake.message for mistake in told]


def test_all_mistakes_of_a_plan_are_told_in_one_run_each_at_its_place() -> None:
    text = "wal a { }\nwall b { heigth 9', length 8 psf, build lgo round }\nroof c { covers a, zz\n"
    places = sorted((mistake.line, mistake.column) for mistake in mistakes_of(text))
    assert [(1, 1), (2, 10), (2, 28), (2, 41), (3, 8), (3, 17), (3, 20)] == places


def test_what_can_be_read_beside_a_mistake_is_kept() -> None:
    trees, _ = trees_of("wall b { heigth 9', length 8', build lgo; storeys 2 }", "a.plan", read)
    wall = build(trees, "a.plan")[0].elements["wall b"]
    assert (2.4384, None, 2) == (wall.length, wall.build, wall.storeys)  # type: ignore[attr-defined]


def test_the_mistakes_of_an_alternate_that_is_not_asked_for_are_told() -> None:
    text = 'wall a { }\nalternate "x" { wall a { heigth 9\'; sheltered by lake } }'
    assert [(2, 26), (2, 50)] == [(mistake.line, mistake.column) for mistake in mistakes_of(text)]


def test_a_very_long_word_is_cut_in_the_message() -> None:
    (mistake,) = mistakes_of("a" * 50_000)
    assert 300 > len(mistake.message)


def test_a_plan_that_is_too_long_is_refused_in_words() -> None:
    (mistake,) = mistakes_of("#" * 2_000_001)
    assert "the plan is 2,000,001 characters long; the most that is read is 2,000,000" == mistake.message


@pytest.mark.parametrize("text", ["{" * 10_000, "wall a {" * 10_000, "{" * 10_000 + "}" * 10_000, "}" * 10_000])
def test_blocks_in_blocks_without_end_are_mistakes_and_no_more(text: str) -> None:
    assert mistakes_of(text)


def test_more_elements_than_are_read_is_told_once() -> None:
    text = "".join(f"wall w{number} {{ }}\n" for number in range(2_003))
    assert [(2_001, "more than 2,000 elements")] == [(m.line, m.message) for m in mistakes_of(text)]
