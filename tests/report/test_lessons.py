"""Lessons: every planted fault is found, the key is the engine's, and the page keeps the key to itself."""

from __future__ import annotations

import datetime

import pytest

from speclint.commands.upkeep import forecast_of
from speclint.forecast.rates import demo_rates
from speclint.pipeline import PlanText, read_home, review
from speclint.report.lesson import Lesson, UnusableLesson, answers, exercise, lesson_names, lesson_page, read_lesson
from tests.laws.houses import example, read
from tests.report.test_report import Outline
from tests.specs.expected import DAY, book

TODAY = datetime.date(2026, 11, 25)
LESSONS = lesson_names()
PLANTS = [(name, at) for name in LESSONS for at in range(len(read_lesson(name).plants))]


def page_of(name: str, plan: str = "tamarack-point") -> str:
    sheet, _ = read_home(PlanText(example(plan), f"{plan}.plan", read))
    return lesson_page(
        read_lesson(name), sheet, book(), lambda home: forecast_of(home, demo_rates(), 30, TODAY), TODAY, "imperial"
    )


def test_there_are_lessons_on_at_least_ten_topics() -> None:
    assert len(LESSONS) >= 10


@pytest.mark.parametrize(("name", "at"), PLANTS)
def test_every_planted_fault_is_found_by_the_review(name: str, at: int) -> None:
    assert [] != answers(read_lesson(name), book(), DAY, "imperial", at)


@pytest.mark.parametrize("name", LESSONS)
def test_an_exercise_has_no_mistake_and_its_faults_are_of_the_rules_that_are_taught(name: str) -> None:
    lesson = read_lesson(name)
    result = review(PlanText(exercise(lesson), "exercise.plan", read), book(), DAY)
    assert () == result.mistakes
    assert {ruling.rule for ruling in result.rulings} & set(lesson.rules)


@pytest.mark.parametrize("name", LESSONS)
def test_the_key_names_nothing_that_is_not_planted(name: str) -> None:
    lesson = read_lesson(name)
    whole = {comment.rulings[0].rule for comment in answers(lesson, book(), DAY, "imperial")}
    single = {
        comment.rulings[0].rule
        for at in range(len(lesson.plants))
        for comment in answers(lesson, book(), DAY, "imperial", at)
    }
    assert whole <= single


@pytest.mark.parametrize("name", LESSONS)
def test_a_lesson_has_all_its_parts_and_not_the_key(name: str) -> None:
    page, lesson = page_of(name), read_lesson(name)
    outline = Outline(page)
    assert [] == outline.open
    assert {"principle", "picture", "worked", "failures", "exercise", "check"} <= set(outline.ids)
    assert len(lesson.check) >= 3
    assert "script" not in outline.tags
    key = [ruling.message for comment in answers(lesson, book(), DAY, "imperial") for ruling in comment.rulings]
    assert [] == [message for message in key if message in page]


@pytest.mark.parametrize("plan", ["cedar-spit", "starter", "high-desert-cabin"])
def test_a_lesson_can_be_given_on_another_house(plan: str) -> None:
    assert f"{plan}.plan" in page_of("water-from-above", plan)


def test_the_exercise_tells_nothing_by_its_comments() -> None:
    lines = exercise(read_lesson("water-from-above")).splitlines()
    assert [0] == [at for at, line in enumerate(lines) if "#" in line]


def test_a_plant_that_does_not_fit_the_plan_is_refused() -> None:
    lesson = Lesson("x", "X", (), (), (), ((("no such text", "y"),),), (), ())
    with pytest.raises(UnusableLesson, match="no such text"):
        exercise(lesson)


def test_an_unknown_lesson_is_an_error_of_lookup() -> None:
    with pytest.raises(LookupError):
        read_lesson("../secrets")
