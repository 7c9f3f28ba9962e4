"""Every example plan against its expected review, whole text."""

from __future__ import annotations

from pathlib import Path

import pytest

from speclint.commands.files import demo_plan, read_text
from speclint.language.layout import tidied
from speclint.pipeline import review
from tests.specs.expected import DAY, MEASURES, SPECS, book, letter_of, measured, measures_of, names


@pytest.mark.parametrize("name", names())
def test_the_review_of_an_example_plan_is_as_expected(name: str) -> None:
    assert read_text(SPECS / f"{name}.review.txt") == letter_of(name)


@pytest.mark.parametrize("path", measured(), ids=lambda path: path.stem)
def test_the_measures_of_a_plan_are_as_expected(path: Path) -> None:
    assert read_text(MEASURES / f"{path.stem}.txt") == measures_of(path)


def test_the_five_example_plans_and_the_starter_are_there() -> None:
    wanted = {"tamarack-point", "cedar-spit", "high-desert-cabin", "quiet-harbor", "teaching-house", "starter"}
    assert wanted <= set(names())


def test_the_flawless_plan_gives_no_comment_and_no_question() -> None:
    told = letter_of("quiet-harbor")
    assert "No comments: every rule that applies is met." in told
    assert "OPEN QUESTIONS" not in told


def test_the_demo_plan_is_calm_enough_to_act_on() -> None:
    result = review(demo_plan(), book(), DAY)
    assert 8 <= len({ruling.rule for ruling in result.rulings}) <= 40


def test_the_teaching_plan_trips_at_least_two_thirds_of_the_rulebook() -> None:
    plan_text = read_text(SPECS / "teaching-house.plan")
    from speclint.pipeline import PlanText

    result = review(PlanText(plan_text, "teaching-house.plan", lambda used: read_text(SPECS / used)), book(), DAY)
    assert 2 * len(book().rules) <= 3 * len({ruling.rule for ruling in result.rulings})


@pytest.mark.parametrize("name", names())
def test_an_example_plan_is_laid_out_as_tidy_lays_it_out(name: str) -> None:
    text = read_text(SPECS / f"{name}.plan")
    assert tidied(text) == text
