"""The published form of the JSON of a review."""

from __future__ import annotations

import json

import jsonschema
import pytest

from speclint.commands.files import read_text
from speclint.outputs.data import review_object
from speclint.paths import shipped
from speclint.pipeline import PlanText, review
from speclint.rulebook.rule import GRADES
from tests.commands.conftest import Run
from tests.specs.expected import DAY, SPECS, UNITS, book, names

LOW = 'wall west { build log round 10"; starts 4" }\n'
ACCEPTED = 'variance sill-too-near-grade on wall west { because "a"; accepted by "b"; until 2027-01-01 }\n'


def test_the_schema_is_printed_as_it_ships(run: Run) -> None:
    told = run("review", "--json-schema")
    shown = shipped("shared").joinpath("schemas/review.schema.json").read_text(encoding="utf-8")
    assert (0, shown) == (told.status, told.out)


@pytest.mark.parametrize("name", names())
def test_the_review_of_every_example_plan_has_the_form(run: Run, name: str) -> None:
    schema = json.loads(run("review", "--json-schema").out)
    found = json.loads(run("review", str(SPECS / f"{name}.plan"), "--json", "--today", DAY).out)
    assert [] == [error.message for error in jsonschema.Draft202012Validator(schema).iter_errors(found)]


@pytest.mark.parametrize("name", names())
def test_the_counts_are_those_of_the_findings(name: str) -> None:
    plan = PlanText(read_text(SPECS / f"{name}.plan"), f"{name}.plan", lambda used: read_text(SPECS / used))
    found = review_object(review(plan, book(), DAY, UNITS.get(name, "imperial")), "imperial")
    trips = [one["grade"] for one in found["rulings"] if one["outcome"] == "trips"]
    assert {grade: trips.count(grade) for grade in GRADES} == {grade: found["counts"][grade] for grade in GRADES}


def test_a_hold_that_a_variance_accepts_is_counted_and_listed(run: Run) -> None:
    found = json.loads(run("review", "a.plan", "--json", "--today", DAY, a=LOW + ACCEPTED).out)
    (variance,) = found["variances"]
    assert (1, [("wall west", "hold")]) == (
        found["counts"]["holds accepted by variance"],
        [(one["element"], one["grade"]) for one in variance["covers"]],
    )


def test_a_plan_that_cannot_be_read_at_all_has_the_form_too(run: Run) -> None:
    schema = json.loads(run("review", "--json-schema").out)
    told = run("review", "nope.plan", "--json")
    found = json.loads(told.out)
    assert [] == [error.message for error in jsonschema.Draft202012Validator(schema).iter_errors(found)]
    says = "nope.plan: cannot be read: there is no such file"
    assert (2, "nope.plan", says) == (told.status, found["plan"], found["mistakes"][0]["message"])


def test_a_list_holds_the_plans_that_cannot_be_read(run: Run) -> None:
    told = run("review", "nope.plan", "a.plan", "--json", a=LOW)
    assert [("a.plan", 0), ("nope.plan", 1)] == [(one["plan"], len(one["mistakes"])) for one in json.loads(told.out)]


def test_the_schema_refuses_what_it_does_not_know(run: Run) -> None:
    schema = json.loads(run("review", "--json-schema").out)
    found = json.loads(run("review", "--demo", "--json").out) | {"more": 1}
    assert 1 == len(list(jsonschema.Draft202012Validator(schema).iter_errors(found)))
