"""A review as an editor shows it."""

from __future__ import annotations

import pytest
from lsprotocol import types as lsp

from speclint.editor.diagnose import diagnostics
from speclint.editor.positions import Lines
from tests.editor.given import PLAN, SPECS, read

Severity = lsp.DiagnosticSeverity


def told(text: str, **used: str) -> dict[str, list[lsp.Diagnostic]]:
    reading, _ = read(text, **used)
    return diagnostics(reading.review, reading.lines_of)


def of_code(text: str, code: str, **used: str) -> list[lsp.Diagnostic]:
    return [one for here in told(text, **used).values() for one in here if one.code == code]


def covered(text: str, one: lsp.Diagnostic) -> str:
    """The text that is underlined."""
    lines = Lines(text)
    return text[lines.offset(one.range.start) : lines.offset(one.range.end)]


def test_everything_that_a_review_finds_is_told_by_its_grade() -> None:
    text = (SPECS / "tamarack-point.plan").read_text(encoding="utf-8")
    reading, _ = read(text)
    found = [(one.code, one.severity) for one in told(text)["house.plan"]]
    grades = {"hold": Severity.Error, "revise": Severity.Warning, "note": Severity.Information}
    assert len(reading.review.rulings) > 20
    assert [(ruling.rule, grades[ruling.grade]) for ruling in reading.review.rulings] == found


def test_a_finding_stands_where_its_setting_is_stated_and_tells_why_and_what_cures_it() -> None:
    text = PLAN.replace("height 10';  ground lawn", "height 10';  starts 2\";  ground lawn")
    (one,) = [one for one in of_code(text, "sill-too-near-grade") if "wall south" in one.message]
    rows = one.message.split("\n")
    assert ("hold: wall south starts 2", 1) == (rows[0][:25], sum(row.startswith("cure: ") for row in rows[2:3]))
    start, end = (text.split("\n")[3].index(word) for word in ("starts", ";  ground"))
    assert ((3, start), (3, end)) == tuple((at.line, at.character) for at in (one.range.start, one.range.end))


def test_a_mistake_is_an_error_with_its_help() -> None:
    (one,) = of_code("wall south { hieght 9' }", "mistake")
    assert (Severity.Error, "“hieght” is not a setting of a wall\ndid you mean “height”?") == (
        one.severity,
        one.message,
    )


def test_a_question_is_a_hint() -> None:
    (one,) = [one for one in of_code(PLAN, "not stated") if "salt water" in one.message]
    assert (Severity.Hint, True) == (one.severity, one.message.startswith("the plan does not say: site: salt water"))


def test_a_block_that_is_missing_altogether_is_told_once_and_plainly() -> None:
    (one,) = [one for one in of_code(PLAN, "not stated") if "“care”" in one.message]
    assert one.message.startswith("the plan has no “care” (")


def test_an_element_that_is_asked_about_is_underlined_with_its_names() -> None:
    found = {covered(PLAN, one) for one in of_code(PLAN, "not stated")}
    assert {"site", "wall east, west", "deck lake"} <= found


def test_what_stands_nowhere_is_told_at_a_point_and_not_of_the_element_that_is_there() -> None:
    text = "wall south { faces S }"
    assert {"w"} == {covered(text, one) for one in of_code(text, "site-facts-missing")}


@pytest.mark.parametrize(
    ("text", "code", "expected"),
    [
        (
            "roof a { covers s;  drip edge none;  form gable }\nwall s { faces S }",
            "drip-edge-missing",
            "drip edge none",
        ),
        (
            'wall s { build log round 10", starts 3" above grade, faces S }',
            "sill-too-near-grade",
            'starts 3" above grade',
        ),
        ('\ufeffwall s { build log round 10";  starts 3" }', "sill-too-near-grade", 'starts 3"'),
        ('wall 🪵 {\r\n  build log round 10"\r\n  starts 3"\r\n}', "sill-too-near-grade", 'starts 3"'),
    ],
)
def test_a_setting_is_underlined_with_its_value(text: str, code: str, expected: str) -> None:
    assert {expected} == {covered(text, one) for one in of_code(text, code)}


@pytest.mark.parametrize(
    ("change", "told"),
    [
        (
            ("2027-06-30", "2026-06-30"),
            "the variance was accepted until 2026-06-30; after that day the finding is back",
        ),
        (('ends 14"', 'ends 1"'), "nothing here needs this variance"),
    ],
)
def test_a_variance_that_is_not_in_force_says_so(change: tuple[str, str], told: str) -> None:
    assert told in [one.message for one in of_code(PLAN.replace(*change), "log-end-past-drip-line")]


def test_what_is_wrong_in_a_used_file_is_told_there() -> None:
    found = told('use "shared.plan"\nwall south { like bare }', shared="typical wall bare { hieght 9' }")
    assert ["“hieght” is not a setting of a wall\ndid you mean “height”?"] == [
        one.message for one in found["shared.plan"]
    ]


def test_columns_are_in_the_units_of_the_editor() -> None:
    text = "wall \N{WOOD} { height 10′;  hieght 9' }"
    found = [one.range.start.character for one in of_code(text, "mistake") if "hieght" in one.message]
    assert [23] == found


def test_crlf_and_a_mark_of_byte_order_do_not_move_findings() -> None:
    plain = told(PLAN)["house.plan"]
    assert plain == told(PLAN.replace("\n", "\r\n"))["house.plan"]
    marked_text = told("\ufeff" + PLAN)["house.plan"]
    assert [one.range for one in plain if one.range.start.line] == [
        one.range for one in marked_text if one.range.start.line
    ]
    assert {one.range.start.character - 1 for one in marked_text if not one.range.start.line} == {0}
