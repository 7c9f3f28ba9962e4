"""The XML of test results: a suite a plan, a case a finding."""

from __future__ import annotations

from pathlib import Path
from xml.etree import ElementTree

import pytest

from speclint.outputs.junit import Suite, suite, unread_suite, whole
from speclint.pipeline import PlanText, review
from speclint.plan_text import CannotRead
from tests.commands.conftest import Run
from tests.specs.expected import DAY, SPECS, book, names

LOW = 'wall west { build log round 10"; starts 4" }\n'
ACCEPTED = 'variance sill-too-near-grade on wall west { because "dry <lot>"; accepted by "A. T."; until 2027-01-01 }\n'
SILL = "sill-too-near-grade on wall west"


def nothing(used: str) -> str:
    raise CannotRead("there is no such file")


def suite_of(text: str, *grave: str) -> Suite:
    return suite(review(PlanText(text, "a.plan", nothing), book(), DAY), grave or ("hold",))


def case(found: Suite, name: str) -> ElementTree.Element:
    (one,) = (case for case in ElementTree.fromstring(found.text) if case.get("name") == name)
    return one


def test_a_finding_of_a_grade_that_holds_fails_with_its_cure() -> None:
    (failure,) = case(suite_of(LOW), SILL)
    assert ("failure", "hold", True) == (failure.tag, failure.get("type"), "\nCure: " in (failure.text or ""))


def test_a_milder_finding_passes_and_is_told() -> None:
    text = LOW + ACCEPTED.replace("2027", "2020")
    name = "variance-expired on variance sill-too-near-grade on wall west"
    (told,) = case(suite_of(text), name)
    (failure,) = case(suite_of(text, "hold", "revise"), name)
    assert ("system-out", True, "failure") == (told.tag, (told.text or "").startswith("revise: "), failure.tag)


def test_what_a_variance_accepts_is_skipped_and_says_why() -> None:
    (skipped,) = case(suite_of(LOW + ACCEPTED), SILL)
    told = skipped.get("message") or ""
    assert ("skipped", True) == (skipped.tag, told.endswith("accepted by A. T., until 2027-01-01: dry <lot>"))


def test_a_place_that_cannot_be_read_is_an_error() -> None:
    (error,) = case(suite_of("wall a { heigth 9' }"), "plan-cannot-be-read at a.plan:1:10")
    assert "error" == error.tag


USED = {
    "p/shared/std.plan": 'typical wall { starts 4" }\n'
    'wall east { starts 3"; heigth 9\' }\nwall south { starts 3"; build log round 10" }\n'
    + ACCEPTED.replace("west", "south"),
    "p/house.plan": 'use "shared/std.plan"\nwall west { build log round 10" }\n',
}


@pytest.fixture
def used(tmp_path: Path) -> None:
    for name, text in USED.items():
        path = tmp_path / name
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_text(text, encoding="utf-8")


@pytest.mark.usefixtures("used")
def test_findings_in_a_used_file_name_it_by_the_path_from_where_the_command_runs(run: Run) -> None:
    out = run("review", "p/house.plan", "--junit", "--today", DAY).out
    cases = [(one.get("name"), one.get("file")) for one in ElementTree.fromstring(out).iter("testcase")]
    assert ("plan-cannot-be-read at p/shared/std.plan:2:24", "p/shared/std.plan") in cases
    assert (SILL, "p/shared/std.plan") in cases
    assert (SILL.replace("west", "south"), "p/shared/std.plan") in cases
    assert ("site-facts-missing on site", "p/house.plan") in cases


@pytest.mark.usefixtures("used")
@pytest.mark.parametrize(
    ("words", "told"),
    [
        (("review", "p/house.plan"), "p/shared/std.plan:2:24 “heigth” is not a setting of a wall"),
        (("review", "p/house.plan"), '4" above the ground; 8" is wanted (line 1 of p/shared/std.plan)'),
        (("cure", "p/house.plan"), "p/shared/std.plan:2:24: “heigth” is not a setting of a wall"),
        (("trace", "p/house.plan"), "p/shared/std.plan:2:24: “heigth” is not a setting of a wall"),
    ],
)
def test_places_in_a_used_file_are_told_by_the_path_from_where_the_command_runs(
    run: Run, words: tuple[str, ...], told: str
) -> None:
    result = run(*words)
    assert told in " ".join((result.out + result.err).split())


@pytest.mark.usefixtures("used")
def test_a_comparison_names_a_used_file_by_the_path_from_where_the_command_runs(run: Run) -> None:
    old = 'wall west { build log round 10" }\nwall south { build log round 10" }\n'
    out = run("compare", "a.plan", "p/house.plan", "--today", DAY, a=old).out
    assert "p/shared/std.plan:2:24  “heigth” is not a setting of a wall" in out
    assert "(line 1 of p/shared/std.plan)" in out


def test_a_plan_without_a_comment_is_one_case_that_passes(run: Run) -> None:
    out = run("review", str(SPECS / "quiet-harbor.plan"), "--junit", "--today", DAY).out
    (only,) = ElementTree.fromstring(out)
    (one,) = only
    assert ("1", "0", "no comments", 0) == (only.get("tests"), only.get("failures"), one.get("name"), len(one))


def test_a_case_names_its_plan_its_file_and_its_line() -> None:
    found = case(suite_of(f"\n{LOW}"), SILL)
    assert ("a.plan", "a.plan", "2") == (found.get("classname"), found.get("file"), found.get("line"))


@pytest.mark.parametrize("name", names())
def test_the_counts_of_a_suite_are_those_of_its_cases(name: str) -> None:
    text = (SPECS / f"{name}.plan").read_text(encoding="utf-8")
    plan = PlanText(text, f"{name}.plan", lambda used: (SPECS / used).read_text(encoding="utf-8"))
    found = suite(review(plan, book(), DAY), ("hold",))
    root = ElementTree.fromstring(found.text)
    tags = [one.tag for one in root.iter()]
    assert (found.tests, found.failures, found.errors, found.skipped) == tuple(
        tags.count(tag) for tag in ("testcase", "failure", "error", "skipped")
    )


def test_the_sums_of_a_run_are_those_of_its_suites() -> None:
    root = ElementTree.fromstring(whole([suite_of(LOW), suite_of(LOW + ACCEPTED), unread_suite("b", "gone")]))
    for name in ("tests", "failures", "errors", "skipped"):
        assert int(root.get(name, "")) == sum(int(one.get(name, "")) for one in root)
    assert 1 == int(root.get("errors", ""))


HOSTILE = 'wall a\x00\x1b\ufffe { }\nvariance x { because "]]>&<\x0b\u202e"; accepted by \'"\'; until 2027-01-01 }\n'


def test_what_xml_cannot_hold_is_written_out() -> None:
    found = suite_of(HOSTILE).text
    assert (True, set()) == (
        len(ElementTree.fromstring(found)) > 1,
        set(found) & set("\x00\x1b\x0b\ufffe\u202e"),
    )


def test_a_plan_that_cannot_be_opened_is_a_suite_with_an_error(run: Run) -> None:
    result = run("review", "a.plan", "gone.plan", "--junit", a=LOW)
    told = {one.get("name"): one.get("errors") for one in ElementTree.fromstring(result.out)}
    assert (2, {"a.plan": "0", "gone.plan": "1"}) == (result.status, told)


def test_the_grade_that_holds_decides_what_fails_and_the_exit_status_alike(run: Run) -> None:
    text = LOW.replace('4"', '40"') + ACCEPTED
    told = [run("review", "a.plan", "--junit", "--hold-at", at, "--today", DAY, a=text) for at in ("hold", "note")]
    failures = [ElementTree.fromstring(one.out).get("failures") for one in told]
    assert ((1, 1), True) == (tuple(one.status for one in told), failures[0] != failures[1])
