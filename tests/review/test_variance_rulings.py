"""Findings on variances: whose day is past, that nothing needs, that cover too much."""

from __future__ import annotations

import pytest

from speclint.outputs.letter import Frame, letter, text_of
from speclint.pipeline import PlanText, review
from speclint.review.own_rules import OWN_RULES
from speclint.review.variance_rulings import in_order
from speclint.ruling import Review, Ruling
from tests.commands.conftest import Run
from tests.specs.expected import DAY, book

LOW = 'wall west { build log round 10"; starts 4" }\n'
BOTH = LOW + LOW.replace("west", "east")
NAMES = ("variance-expired", "variance-not-needed", "variance-too-broad")


def variance(on: str = " on wall west", until: str = "2027-01-01", rule: str = "sill-too-near-grade") -> str:
    return f'variance {rule}{on} {{ because "dry"; accepted by "A. Tester"; until {until} }}\n'


def reviewed(text: str, day: str = DAY) -> Review:
    def nothing(name: str) -> str:
        raise AssertionError(name)

    return review(PlanText(text, "a.plan", nothing), book(), day)


def found(text: str, day: str = DAY) -> list[tuple[str, str, int]]:
    return [(one.rule, one.grade, one.place.line) for one in reviewed(text, day).rulings if one.rule in NAMES]


@pytest.mark.parametrize(
    ("text", "expected"),
    [
        (LOW + variance(), []),
        (LOW + variance(until=DAY), []),
        (LOW + variance(until="2026-11-24"), [("variance-expired", "revise", 2)]),
        (LOW.replace('4"', '40"') + variance(), [("variance-not-needed", "note", 2)]),
        (LOW + variance(on=""), []),
        (BOTH + variance(on=""), [("variance-too-broad", "note", 3)]),
        (LOW + variance(until="2036-11-25"), []),
        (LOW + variance(until="2036-11-26"), [("variance-too-broad", "note", 2)]),
        (BOTH + variance(on="", until="2050-01-01"), [("variance-too-broad", "note", 3)]),
        (BOTH + variance(on="", until="2020-01-01"), [("variance-expired", "revise", 3)]),
    ],
)
def test_a_variance_is_a_finding_where_it_should_not_stand_so(text: str, expected: list[tuple[str, str, int]]) -> None:
    assert expected == found(text)


def test_both_reasons_for_too_broad_are_told_at_once() -> None:
    (told,) = (one for one in reviewed(BOTH + variance(on="", until="2050-01-01")).rulings if one.rule == NAMES[2])
    assert (
        "the variance sill-too-near-grade names no element and covers 2: wall west, wall east; it stands until "
        "2050-01-01, more than 10 years from now"
    ) == told.message


def test_a_variance_that_its_rule_does_not_allow_is_told_with_its_state_only() -> None:
    plan = 'stair front { riser 9"; tread 9"; width 30" }\n' + variance(
        " on stair front", "2050-01-01", "stair-steps-out-of-code"
    )
    assert [] == found(plan)


def test_two_variances_on_one_element_have_marks_of_their_own() -> None:
    text = LOW + variance(until="2020-01-01") + variance(until="2020-01-01", rule="planting-against-wall")
    marks = [one.mark for one in reviewed(text).rulings if one.rule == "variance-expired"]
    assert (2, 2) == (len(marks), len(set(marks)))


def test_findings_on_variances_are_numbered_with_the_others_of_their_grade() -> None:
    rulings = reviewed(BOTH + variance(until="2020-01-01") + variance(" on wall east")).rulings
    assert list(rulings) == in_order(rulings)
    letters = text_of(letter(reviewed(LOW + variance(until="2020-01-01")), Frame(96, DAY)))
    assert "A variance whose day is past  [variance-expired]" in letters.split("REVISE: ")[1]


def test_findings_of_one_rule_stand_together_in_their_grade() -> None:
    text = (
        variance(until="2020-01-01") * 2 + LOW + variance(rule="planting-against-wall") + variance(until="2050-01-01")
    )
    rulings = reviewed(text + variance(rule="planting-against-wall")).rulings
    groups = [(one.grade, one.rule) for one in rulings]
    turns = [pair for at, pair in enumerate(groups) if at == 0 or groups[at - 1] != pair]
    assert len(turns) == len(set(turns))


def test_a_hold_accepted_by_a_variance_is_counted_in_the_first_line_of_the_letter() -> None:
    one = text_of(letter(reviewed(LOW + variance()), Frame(200, DAY)))
    two = text_of(letter(reviewed(BOTH + variance(on="")), Frame(200, DAY)))
    assert (True, True) == ("1 hold accepted by variance." in one, "2 holds accepted by variance." in two)


def test_a_hold_that_two_variances_cover_is_counted_once() -> None:
    assert 1 == reviewed(LOW + variance() + variance()).accepted_holds


def test_an_accepted_note_is_not_counted_as_a_hold() -> None:
    text = 'wall west { build log round 10" }\nplanting yews { along west; distance 6" }\n'
    result = reviewed(text + variance(" on planting yews", rule="planting-against-wall"))
    (accepted,) = result.variances
    assert (["in force"], 0) == ([accepted.state], sum(one.grade == "hold" for one in accepted.rulings))
    assert 0 == result.accepted_holds


@pytest.mark.parametrize("name", [rule.name for rule in OWN_RULES])
def test_every_own_rule_can_be_explained(run: Run, name: str) -> None:
    told = run("explain", name)
    assert (0, True, True) == (told.status, f"[{name}]" in told.out, "\nHow to cure it\n" in told.out)


def test_no_own_rule_has_the_name_of_a_page() -> None:
    assert set() == {rule.name for rule in OWN_RULES} & {rule.name for rule in book().rules}


@pytest.mark.parametrize(
    "words", [("cure", "a.plan"), ("report", "a.plan", "--to", "a.html"), ("draw", "a.plan", "--into", "d")]
)
def test_a_finding_on_a_variance_is_no_trouble_elsewhere(run: Run, words: tuple[str, ...]) -> None:
    text = BOTH + variance(until="2020-01-01") + variance(" on wall east", "2050-01-01")
    assert (0, "") == (run(*words, a=text).status, run(*words, a=text).err)


def test_rulings_are_plain_rulings() -> None:
    assert {Ruling} == {type(one) for one in reviewed(BOTH + variance(on="")).rulings}
