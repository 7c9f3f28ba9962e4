"""Reviews: variances, questions, the published form of the JSON, cautions."""

from __future__ import annotations

import json

import jsonschema
import pytest

from speclint.commands.files import demo_plan
from speclint.outputs.data import review_object
from speclint.outputs.letter import Frame, letter, text_of
from speclint.paths import shipped
from speclint.pipeline import PlanText, review
from speclint.review.judge import other_way_round
from speclint.rulebook.rule import GRADES
from speclint.ruling import Review
from tests.specs.expected import DAY, book

LOW = 'wall west { build log round 10"; starts 4" }\n'
ACCEPTED = 'variance sill-too-near-grade on wall west { because "a test"; accepted by "A. Tester"; until 2027-01-01 }\n'


def nothing(name: str) -> str:
    raise AssertionError(name)


def reviewed(text: str, day: str = DAY) -> Review:
    return review(PlanText(text, "a.plan", nothing), book(), day)


def graded(result: Review, rule: str) -> list[tuple[str, str]]:
    return [(ruling.grade, ruling.element) for ruling in result.rulings if ruling.rule == rule]


def test_a_finding_is_told_with_its_place() -> None:
    found = next(r for r in reviewed(LOW).rulings if r.rule == "sill-too-near-grade")
    assert ("hold", "a.plan", 1, 34) == (found.grade, found.place.file, found.place.line, found.place.column)


def test_a_variance_in_force_takes_the_finding_out_and_is_listed() -> None:
    result = reviewed(LOW + ACCEPTED)
    assert ([], [("in force", 1)]) == (
        graded(result, "sill-too-near-grade"),
        [(accepted.state, len(accepted.rulings)) for accepted in result.variances],
    )


@pytest.mark.parametrize("part", ['because "a test"', 'accepted by "A. Tester"', "until 2027-01-01"])
def test_a_variance_that_lacks_a_part_takes_nothing_out(part: str) -> None:
    result = reviewed(LOW + ACCEPTED.replace(f"{part}; ", "").replace(part, ""))
    assert graded(result, "sill-too-near-grade") == [("hold", "wall west")]
    assert ["not complete"] == [accepted.state for accepted in result.variances]
    assert result.mistakes


def test_a_variance_lets_the_finding_back_after_its_day() -> None:
    result = reviewed(LOW + ACCEPTED, "2027-01-02")
    assert ([("hold", "wall west")], ["expired"]) == (
        graded(result, "sill-too-near-grade"),
        [accepted.state for accepted in result.variances],
    )


def test_a_variance_holds_on_its_last_day() -> None:
    assert ["in force"] == [accepted.state for accepted in reviewed(LOW + ACCEPTED, "2027-01-01").variances]


def test_a_variance_that_nothing_trips_is_said_to_be_not_needed() -> None:
    result = reviewed(LOW.replace('4"', '40"') + ACCEPTED)
    assert ["not needed"] == [accepted.state for accepted in result.variances]


def test_a_variance_on_another_element_covers_nothing() -> None:
    other = LOW + LOW.replace("west", "east") + ACCEPTED
    assert [("hold", "wall east")] == graded(reviewed(other), "sill-too-near-grade")


@pytest.mark.parametrize(
    ("old", "new", "told"),
    [
        ("sill-too-near-grade", "sill-to-near-grade", "the variance names “sill-to-near-grade”, which is no rule"),
        ("wall west {", "wall wst {", "the variance is on “wall wst”, which is not in the plan"),
    ],
)
def test_a_variance_that_names_nothing_is_a_mistake(old: str, new: str, told: str) -> None:
    assert [told] == [mistake.message for mistake in reviewed(LOW + ACCEPTED.replace(old, new)).mistakes]


def test_a_variance_on_one_rule_does_not_hide_what_that_rule_supersedes() -> None:
    plan = (
        'site { weather "Marquette, MI" }\n'
        'wall west { build log round 10"; starts 6"; height 9\'; ground paving; paving 2%; faces W }\n'
        "roof main { covers west; form gable; eaves 1'; gutters none }\n"
        'variance hard-surface-under-free-eave on wall west { because "x"; accepted by "y"; until 2027-01-01 }\n'
    )
    assert [("hold", "wall west")] == graded(reviewed(plan), "sill-too-near-grade")


def test_a_question_names_each_element_once() -> None:
    result = reviewed('typical wall { build log round 10" }\nwall west { }\nwall east { }\n')
    (question,) = (q for q in result.questions if q.setting == "starts")
    assert ("wall west", "wall east") == question.elements


HUNG = (
    "wall south { faces S; length 30'; height 10'; starts 24\" }\n"
    "deck sun { along south; held by ledger; extra load hot tub }\n"
)


def test_a_question_tells_the_gravest_grade_that_its_answer_can_bring_and_by_which_rule() -> None:
    (question,) = (q for q in reviewed(HUNG).questions if (q.kind, q.setting) == ("deck", "engineered"))
    assert "hold: deck-carries-extra-load, joists-outside-table" == question.stake


def test_questions_that_may_hold_the_release_come_first() -> None:
    grades = [question.grade for question in reviewed(HUNG).questions]
    assert (sorted(grades, key=GRADES.index), True) == (grades, len(set(grades)) > 1)


def test_the_head_count_tells_how_many_questions_may_hold_the_release() -> None:
    result = reviewed(HUNG)
    told = " ".join(text_of(letter(result, Frame(100, DAY))).split())
    count, holding = len(result.questions), result.holding_questions
    assert f"{count} open questions, {holding} of them may hold the release." in told


def test_every_review_carries_the_standing_cautions() -> None:
    assert "durability only" in reviewed(LOW).cautions[0]


def test_the_json_of_a_review_has_its_published_form() -> None:
    schema = json.loads(shipped("shared").joinpath("schemas/review.schema.json").read_text(encoding="utf-8"))
    found = json.loads(json.dumps(review_object(review(demo_plan(), book(), DAY), "imperial")))
    jsonschema.Draft202012Validator.check_schema(schema)
    assert [] == [error.message for error in jsonschema.Draft202012Validator(schema).iter_errors(found)]


def test_the_json_of_a_broken_plan_has_its_published_form() -> None:
    schema = json.loads(shipped("shared").joinpath("schemas/review.schema.json").read_text(encoding="utf-8"))
    found = json.loads(json.dumps(review_object(reviewed("wall a { heigth 9'\n"), "imperial")))
    assert [] == [error.message for error in jsonschema.Draft202012Validator(schema).iter_errors(found)]


def test_an_alternate_is_reviewed_with_its_change() -> None:
    text = LOW + 'alternate "raised" { wall west { starts 3\' } }'
    result = review(PlanText(text, "a.plan", nothing), book(), DAY, alternate="raised")
    assert [] == graded(result, "sill-too-near-grade")


def test_a_rule_that_allows_no_variance_keeps_its_finding_and_says_so() -> None:
    plan = (
        'stair front { riser 9"; tread 9"; width 30" }\n'
        'variance stair-steps-out-of-code on stair front { because "x"; accepted by "y"; until 2027-01-01 }\n'
    )
    result = reviewed(plan)
    assert ([("hold", "stair front")], ["not allowed"]) == (
        graded(result, "stair-steps-out-of-code"),
        [accepted.state for accepted in result.variances],
    )


STONE = (
    "wall south { build framed with stone }\nfoundation main { type crawl space }\n"
    "stone low { at %s; type anchored; flashing none }\n"
    'variance stone-base-unflashed on stone low { because "x"; accepted by "y"; until 2027-01-01 }\n'
)


@pytest.mark.parametrize(
    ("place", "found", "state"),
    [
        ("wall south", [("hold", "stone low")], "not allowed"),
        ("foundation main", [], "in force"),
    ],
)
def test_a_rule_may_allow_a_variance_of_all_but_its_hold(place: str, found: list[object], state: str) -> None:
    result = reviewed(STONE % place)
    assert (found, [state]) == (graded(result, "stone-base-unflashed"), [one.state for one in result.variances])


def test_a_setting_that_could_not_be_read_is_not_asked_for_again() -> None:
    result = reviewed('wall west { build log round 10"; starts 4 psf }')
    assert (1, []) == (len(result.mistakes), [q for q in result.questions if q.setting == "starts"])


def test_the_examples_of_questions_are_in_the_units_of_the_reader() -> None:
    plan = PlanText("wall west { build log round 250 mm }", "a.plan", nothing)
    asked = {question.setting: question.text for question in review(plan, book(), DAY, "metric").questions}
    assert asked["starts"].endswith("for example 508 mm)")


@pytest.mark.parametrize(
    ("written", "told"),
    [
        ('reaches -12" past the edge', 'reaches 12" short of the edge'),
        ("stands -1'-6 1/2\" below the wood", "stands 1'-6 1/2\" above the wood"),
        ("stands -51 mm below the wood", "stands 51 mm above the wood"),
        ("reaches 2'-8\" past the edge", "reaches 2'-8\" past the edge"),
        ("falls -2% below", "falls -2% below"),
    ],
)
def test_a_length_below_zero_is_told_as_the_other_way_round(written: str, told: str) -> None:
    assert told == other_way_round(written)


@pytest.mark.parametrize(
    ("left_out", "wants"),
    [
        (('because "a test"; ',), "it wants a reason)"),
        (('accepted by "A. Tester"; ', "until 2027-01-01 "), "it wants a name and a day)"),
        (('because "a test"; ', 'accepted by "A. Tester"; ', "until 2027-01-01 "), "a reason, a name and a day)"),
    ],
)
def test_a_variance_that_is_not_complete_says_what_it_wants(left_out: tuple[str, ...], wants: str) -> None:
    text = ACCEPTED
    for words in left_out:
        assert words in text
        text = text.replace(words, "")
    assert wants in " ".join(text_of(letter(reviewed(LOW + text), Frame(100, DAY))).split())
