"""The log in SARIF: it has the form that OASIS published, and says what the review says."""

from __future__ import annotations

import json
from pathlib import Path
from typing import Any

import jsonschema
import pytest

from speclint.commands.suggested import suggested
from speclint.language.edit import Edit, with_edits
from speclint.outputs.sarif import Change, log, plain, results
from speclint.outputs.sarif_rules import own_descriptor
from speclint.outputs.uris import uri_beside, uri_of
from speclint.pipeline import PlanText, review
from speclint.plan_text import CannotRead
from speclint.review.own_rules import OWN_RULES
from speclint.ruling import Review
from tests.commands.conftest import Run
from tests.specs.expected import DAY, SPECS, book, names

SCHEMA = Path(__file__).resolve().parents[1] / "schemas" / "sarif-schema-2.1.0.json"
LOW = 'wall west { build log round 10"; starts 4" }\n'
ACCEPTED = (
    'variance sill-too-near-grade on wall west { because "dry lot"; accepted by "A. Tester"; until 2027-01-01 }\n'
)


def nothing(used: str) -> str:
    raise CannotRead("there is no such file")


def reviewed(text: str) -> Review:
    return review(PlanText(text, "a.plan", nothing), book(), DAY)


def told(text: str, uri: str = "a.plan") -> list[dict[str, Any]]:
    return results(reviewed(text), uri, text, {})


def about(found: list[dict[str, Any]], rule: str) -> dict[str, Any]:
    (one,) = (result for result in found if result["ruleId"] == rule)
    return one


def faults(text: str) -> list[str]:
    schema = json.loads(SCHEMA.read_text(encoding="utf-8"))
    return [error.message for error in jsonschema.Draft4Validator(schema).iter_errors(json.loads(text))]


def test_the_published_schema_is_there_whole() -> None:
    schema = json.loads(SCHEMA.read_text(encoding="utf-8"))
    jsonschema.Draft4Validator.check_schema(schema)
    assert (112_768, 52) == (SCHEMA.stat().st_size, len(schema["definitions"]))


def test_the_schema_finds_a_planted_fault() -> None:
    assert [] != faults('{"version": "2.1.0", "runs": [{"results": []}]}')


def test_the_log_of_every_example_plan_has_the_published_form(run: Run) -> None:
    plans = [str(SPECS / f"{name}.plan") for name in names()]
    out = run("review", *plans, "--sarif", "--today", DAY).out
    assert (len(plans), []) == (len(json.loads(out)["runs"][0]["artifacts"]), faults(out))


def test_the_log_with_suggested_changes_has_the_published_form(run: Run) -> None:
    out = run("review", "--demo", "--sarif", "--with-cures", "--today", DAY).out
    assert (True, []) == ('"fixes"' in out, faults(out))


BROKEN = 'wall a { heigth 9\'\nvariance nothing { because "{0} [a](b)"; accepted by "\u009b"; until 2020-01-01 }\n'


@pytest.mark.parametrize("text", ["", BROKEN, LOW + ACCEPTED, LOW + ACCEPTED.replace("2027", "2020"), "\U0001f332"])
def test_the_log_of_any_plan_has_the_published_form(run: Run, text: str) -> None:
    out = run("review", "a.plan", "--sarif", "--today", DAY, a=text).out
    assert [] == faults(out)


def test_a_plan_that_cannot_be_opened_is_a_notice_of_the_run(run: Run) -> None:
    found = run("review", "gone.plan", "--sarif")
    (invocation,) = json.loads(found.out)["runs"][0]["invocations"]
    assert (2, [], False, ["gone.plan: cannot be read: there is no such file"]) == (
        found.status,
        faults(found.out),
        invocation["executionSuccessful"],
        [notice["message"]["text"] for notice in invocation["toolExecutionNotifications"]],
    )


def test_all_plans_of_a_run_are_in_one_log(run: Run) -> None:
    (only,) = json.loads(run("review", "a.plan", "b.plan", "--sarif", a=LOW, b=LOW).out)["runs"]
    uris = [
        place["locations"][0]["physicalLocation"]["artifactLocation"]["uri"]
        for place in only["results"]
        if place["ruleId"] == "sill-too-near-grade"
    ]
    assert (["a.plan", "b.plan"], "speclint") == (uris, only["tool"]["driver"]["name"])


def test_every_result_names_its_rule_by_the_index_that_the_rule_has(run: Run) -> None:
    only = json.loads(run("review", "a.plan", "b.plan", "--sarif", a=LOW + ACCEPTED, b=BROKEN).out)["runs"][0]
    rules = [rule["id"] for rule in only["tool"]["driver"]["rules"]]
    found = [(result["ruleId"], rules[result["ruleIndex"]]) for result in only["results"]]
    assert (True, [], sorted(set(rules))) == (
        len(found) > 20,
        [pair for pair in found if pair[0] != pair[1]],
        sorted({one for one, _ in found}),
    )


def test_a_rule_is_described_by_its_page(run: Run) -> None:
    only = json.loads(run("review", "a.plan", "--sarif", a=LOW).out)["runs"][0]
    rule = next(one for one in only["tool"]["driver"]["rules"] if one["id"] == "sill-too-near-grade")
    assert (
        "Wood starts too near the ground",
        "error",
        {"group": "foundation, sill and crawl space", "grade": "hold"},
        True,
        True,
    ) == (
        rule["shortDescription"]["text"],
        rule["defaultConfiguration"]["level"],
        rule["properties"],
        rule["help"]["markdown"].startswith("## What it finds\n\n"),
        rule["help"]["text"].startswith("What it finds\n"),
    )


@pytest.mark.parametrize(
    ("text", "rule", "level"),
    [
        (LOW, "sill-too-near-grade", "error"),
        (LOW + ACCEPTED.replace("2027", "2020"), "variance-expired", "warning"),
        (LOW.replace('4"', '40"') + ACCEPTED, "variance-not-needed", "note"),
        ("wall a { heigth 9' }", "plan-cannot-be-read", "error"),
    ],
)
def test_the_grade_of_a_finding_is_its_level(text: str, rule: str, level: str) -> None:
    found = about(told(text), rule)
    assert ("fail", level) == (found["kind"], found["level"])


def test_a_question_is_open_and_of_no_level() -> None:
    asked = [one for one in told(LOW) if one["ruleId"] == "plan-does-not-say"]
    assert (True, {("open", "none")}) == (len(asked) > 5, {(one["kind"], one["level"]) for one in asked})


def test_a_finding_is_told_with_its_cure_and_its_element() -> None:
    found = about(told(LOW), "sill-too-near-grade")
    assert (True, [{"fullyQualifiedName": "wall west", "name": "west", "kind": "wall"}]) == (
        "\nCure: " in found["message"]["text"],
        found["locations"][0]["logicalLocations"],
    )


def test_places_are_counted_in_code_points_from_one_and_end_behind_the_last() -> None:
    text = '# \U0001f332\nwall \U00010400 { build log round 10" } wall west { build log round 10"; starts 4" }\n'
    region = about(told(text), "sill-too-near-grade")["locations"][0]["physicalLocation"]["region"]
    line = text.splitlines()[1]
    at = line.index("starts 4") + 1
    assert (2, at, True) == (region["startLine"], region["startColumn"], line[at - 1 :].startswith("starts"))
    assert line[at - 1 : region["endColumn"] - 1] in ("starts", 'starts 4"')


def test_the_log_says_in_what_columns_are_counted(run: Run) -> None:
    assert "unicodeCodePoints" == json.loads(run("review", "--demo", "--sarif").out)["runs"][0]["columnKind"]


def test_the_log_says_what_ends_a_line(run: Run) -> None:
    assert ["\r\n", "\n", "\r"] == json.loads(run("review", "--demo", "--sarif").out)["runs"][0]["newlineSequences"]


def test_a_finding_keeps_its_mark_when_lines_move_and_no_two_have_the_same() -> None:
    def marks(text: str) -> list[str]:
        return [one["partialFingerprints"]["ruleOnElement/v1"] for one in told(text)]

    text = LOW + LOW.replace("west", "east") + ACCEPTED + BROKEN
    before = marks(text)
    assert (before, len(before)) == (marks(f"# moved\n\n  {text}"), len(set(before)))


def test_the_same_finding_in_another_plan_has_another_mark() -> None:
    def mark(uri: str) -> str:
        found = about(told(LOW, uri), "sill-too-near-grade")["partialFingerprints"]
        return str(found["ruleOnElement/v1"])

    assert mark("a.plan") != mark("b.plan")


def test_what_a_variance_accepts_is_there_and_says_who_accepted_it_and_why() -> None:
    found = about(told(LOW + ACCEPTED), "sill-too-near-grade")
    (suppression,) = found["suppressions"]
    justified = "dry lot (accepted by A. Tester, until 2027-01-01)"
    assert ("error", {"kind": "external", "status": "accepted", "justification": justified}, 2) == (
        found["level"],
        suppression,
        found["relatedLocations"][0]["physicalLocation"]["region"]["startLine"],
    )


def test_a_variance_whose_day_is_past_suppresses_nothing() -> None:
    assert "suppressions" not in about(told(LOW + ACCEPTED.replace("2027", "2020")), "sill-too-near-grade")


def test_a_mistake_in_a_used_file_is_placed_in_that_file() -> None:
    plan = PlanText('use "shared/a b.plan"\n', "house.plan", lambda used: "wall a { heigth 9' }\n")
    found = about(results(review(plan, book(), DAY), "sub/house.plan", plan.text, {}), "plan-cannot-be-read")
    place = found["locations"][0]["physicalLocation"]
    assert ("sub/shared/a%20b.plan", 1) == (place["artifactLocation"]["uri"], place["region"]["startLine"])


@pytest.mark.parametrize(
    ("path", "uri"),
    [
        ("a b/ç%.plan", "a%20b/%C3%A7%25.plan"),
        ("./x/../a.plan", "a.plan"),
        ("a:b.plan", "a%3Ab.plan"),
        ("#a?.plan", "%23a%3F.plan"),
    ],
)
def test_a_place_is_relative_and_percent_encoded(path: str, uri: str) -> None:
    assert uri == uri_of(path)


def test_a_place_named_whole_is_relative_below_the_folder_of_the_run(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.chdir(tmp_path)
    outside = tmp_path.parent / "b.plan"
    assert ("sub/a.plan", outside.as_uri()) == (uri_of(str(tmp_path / "sub" / "a.plan")), uri_of(str(outside)))


def test_a_file_beside_a_plan_in_no_folder_is_in_none() -> None:
    assert ("b.plan", "x/b.plan") == (uri_beside("a.plan", "b.plan"), uri_beside("x/a.plan", "b.plan"))


def test_braces_and_links_of_a_plan_are_no_marks_of_the_format() -> None:
    assert r"{{0}} \[a](b) [c]" == plain("{0} [a](b) [c]")


@pytest.mark.parametrize(("ends", "mark"), [("\n", ""), ("\r\n", ""), ("\r", ""), ("\n", "\ufeff")])
def test_a_suggested_change_makes_the_text_that_the_cure_makes(ends: str, mark: str) -> None:
    text = mark + (SPECS / "tamarack-point.plan").read_text(encoding="utf-8").replace("\n", ends)
    plan = PlanText(text, "a.plan", nothing)
    changes = suggested(plan, book(), DAY, "imperial")
    found = results(review(plan, book(), DAY), "a.plan", text, changes)
    lines = text.splitlines(keepends=True)
    starts = [sum(map(len, lines[:at])) + len(mark) * (at == 0) for at in range(len(lines) + 1)]

    def applied(fix: dict[str, Any]) -> str:
        edits = [
            Edit(
                starts[place["startLine"] - 1] + place["startColumn"] - 1,
                starts[place["endLine"] - 1] + place["endColumn"] - 1,
                one["insertedContent"]["text"],
            )
            for one in fix["artifactChanges"][0]["replacements"]
            for place in [one["deletedRegion"]]
        ]
        return with_edits(text, edits)

    regions = [
        one["deletedRegion"]
        for result in found
        for fix in result.get("fixes", ())
        for one in fix["artifactChanges"][0]["replacements"]
    ]
    assert [] == [one for one in regions if one["endColumn"] > len(lines[one["endLine"] - 1])]
    made = {one["message"]["text"]: applied(one["fixes"][0]) for one in found if "fixes" in one}
    wanted = [with_edits(text, [Edit(*edit) for edit in change.edits]) for change in changes.values()]
    assert (True, sorted(wanted)) == (len(changes) > 5, sorted(made.values()))


def test_a_finding_with_several_cures_is_left_to_people(run: Run) -> None:
    only = json.loads(run("review", "--demo", "--sarif", "--with-cures").out)["runs"][0]["results"]
    fixed = [len(one["fixes"]) for one in only if "fixes" in one]
    assert ({1}, True) == (set(fixed), len(fixed) < len(only))


@pytest.mark.parametrize("more", [("--with-cures",), ("--with-cures", "--sarif", "--alternate", "x")])
def test_suggested_changes_need_a_log_of_the_plan_as_drawn(run: Run, more: tuple[str, ...]) -> None:
    result = run("review", "--demo", *more)
    assert (3, "", True) == (result.status, result.out, result.err.startswith("speclint: --with-cures "))


def test_a_log_of_nothing_has_the_published_form() -> None:
    assert [] == faults(log([], {}, "0.1.0", []))


def test_what_a_review_finds_in_notes_is_described_too() -> None:
    described = {rule.name: own_descriptor(rule) for rule in OWN_RULES}
    found = [{"ruleId": name, "message": {"text": "x"}} for name in described]
    assert [] == faults(log([("a.plan", found)], described, "0.1.0", []))


def test_a_change_is_an_insertion_where_nothing_is_taken_out() -> None:
    changes = {"sill-too-near-grade on wall west": Change("state x", ((len(LOW) - 2, len(LOW) - 2, "; x"),))}
    (fix,) = about(results(reviewed(LOW), "a.plan", LOW, changes), "sill-too-near-grade")["fixes"]
    place = {"startLine": 1, "startColumn": len(LOW) - 1, "endLine": 1, "endColumn": len(LOW) - 1}
    assert place == fix["artifactChanges"][0]["replacements"][0]["deletedRegion"]
