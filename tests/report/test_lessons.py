"""Lessons: faults on the lesson's own subject, the engine's key, and a page that explains without telling it."""

from __future__ import annotations

import datetime
import re
from functools import lru_cache

import pytest

from speclint.commands.upkeep import forecast_of
from speclint.forecast.rates import demo_rates
from speclint.paths import shipped
from speclint.pipeline import PlanText, review
from speclint.plan_text import CannotRead
from speclint.report.lesson import (
    BASE,
    Lesson,
    UnusableLesson,
    answers,
    changed,
    exercise,
    flawless,
    lesson_names,
    no_file,
    read_lesson,
)
from speclint.report.lesson_page import lesson_page
from speclint.report.lesson_pictures import apart
from speclint.report.taught import linked, taught
from speclint.rulebook.page import read_page
from speclint.ruling import Review
from speclint.units import System
from tests.laws.houses import example, read
from tests.report.test_report import Outline
from tests.specs.expected import DAY, book

TODAY = datetime.date(2026, 11, 25)
LESSONS = lesson_names()
SYSTEMS: tuple[System, System] = ("imperial", "metric")
PLANTS = [(name, at) for name in LESSONS for at in range(len(read_lesson(name).plants))]
POINTS_AWAY = re.compile(r"\b(?:its|their) own rule|rules? of (?:its|their) own|another rule|the rule on ")


@lru_cache(maxsize=64)
def page_of(name: str, plan: str = "", system: System = "imperial") -> str:
    own = PlanText(example(plan), f"{plan}.plan", read) if plan else None
    return lesson_page(
        read_lesson(name), book(), lambda home: forecast_of(home, demo_rates(), 30, TODAY), TODAY, system, own
    )


def case_of(lesson: Lesson) -> Review:
    return review(PlanText(changed(lesson, lesson.shows), BASE, no_file), book(), DAY)


def key_rules(name: str, only: int | None = None) -> set[str]:
    return {comment.rulings[0].rule for comment in answers(read_lesson(name), book(), DAY, "imperial", only)}


def part(page: str, start: str, end: str) -> str:
    """The text of a part of a page, without its marks and with its quotation marks as they are read."""
    from html import unescape

    inside = page.split(f'<section id="{start}"', 1)[1].split(f'<section id="{end}"', 1)[0]
    return " ".join(unescape(re.sub(r"<[^>]*>", " ", inside)).split())


def test_there_are_lessons_on_at_least_ten_topics() -> None:
    assert len(LESSONS) >= 10


def test_the_plan_that_exercises_start_from_is_without_a_finding() -> None:
    assert () == review(PlanText(flawless(), BASE, no_file), book(), DAY).rulings


@pytest.mark.parametrize(("name", "at"), PLANTS)
def test_every_planted_fault_alone_is_found_and_is_on_the_subject_of_its_lesson(name: str, at: int) -> None:
    assert (True, set()) == (bool(key_rules(name, at)), key_rules(name, at) - set(read_lesson(name).rules))


@pytest.mark.parametrize("name", LESSONS)
def test_the_key_names_the_planted_faults_and_nothing_else(name: str) -> None:
    single = set[str]().union(*(key_rules(name, at) for at in range(len(read_lesson(name).plants))))
    assert single == key_rules(name)


@pytest.mark.parametrize("name", LESSONS)
def test_an_exercise_and_a_case_have_no_mistake_and_leave_no_question(name: str) -> None:
    lesson = read_lesson(name)
    told = review(PlanText(exercise(lesson), "exercise.plan", no_file), book(), DAY)
    case = case_of(lesson)
    assert ((), (), (), ()) == (told.mistakes, told.questions, case.mistakes, case.questions)


@pytest.mark.parametrize("name", LESSONS)
def test_the_case_that_is_drawn_shows_a_fault_that_the_lesson_teaches(name: str) -> None:
    lesson = read_lesson(name)
    assert {ruling.rule for ruling in case_of(lesson).rulings} & set(lesson.rules)


@pytest.mark.parametrize("name", LESSONS)
def test_a_lesson_has_all_its_parts_and_not_the_key(name: str) -> None:
    page, lesson = page_of(name), read_lesson(name)
    outline = Outline(page)
    assert [] == outline.open
    assert {"principle", "picture", "worked", "failures", "exercise", "check"} <= set(outline.ids)
    assert len(set(outline.ids)) == len(outline.ids)
    assert len(lesson.check) >= 3
    assert "script" not in outline.tags
    from markupsafe import escape

    key = [ruling.message for comment in answers(lesson, book(), DAY, "imperial") for ruling in comment.rulings]
    assert [] == [message for message in key if str(escape(message)) in page or message in page]


@pytest.mark.parametrize("name", LESSONS)
def test_the_page_counts_the_comments_of_the_key(name: str) -> None:
    key = answers(read_lesson(name), book(), DAY, "imperial")
    places = {ruling.element for comment in key for ruling in comment.rulings}
    many = f"{len(key)} comments, on {len(places)} element{'s' if len(places) > 1 else ''}."
    assert many in part(page_of(name), "exercise", "check")


@pytest.mark.parametrize("name", LESSONS)
def test_no_line_of_a_plan_that_the_trainee_lacks_is_named(name: str) -> None:
    assert [] == re.findall(r"\bline \d+", part(page_of(name), "picture", "failures"))


@pytest.mark.parametrize("name", LESSONS)
def test_numbers_of_the_house_are_filled_in_and_not_written_by_hand(name: str) -> None:
    lesson = read_lesson(name)
    written = " ".join((*lesson.reading, *(text for pair in lesson.check for text in pair)))
    bare = re.sub(r"\{[^{}]*\}", "", written)
    page = part(page_of(name), "worked", "failures")
    assert ([], []) == (re.findall(r"\d\"|\d'|\d,\d{3}", bare), re.findall(r"\{(?:sound|faulty)", page))


def test_a_number_that_a_lesson_quotes_follows_the_house_and_the_units() -> None:
    told = [part(page_of("splash-and-ground", system=system), "worked", "failures") for system in SYSTEMS]
    assert [True, True] == ['starts at 42"' in told[0], "starts at 1067 mm" in told[1]]


@pytest.mark.parametrize("name", LESSONS)
def test_every_limit_of_a_rule_is_told_in_the_reader_s_units_with_its_standing(name: str) -> None:
    rules = [taught(rule, book(), (), "metric") for rule in map(book().named, read_lesson(name).rules) if rule]
    told = part(page_of(name, system="metric"), "failures", "exercise")
    rows = [" ".join(" ".join(row).split()) for rule in rules for row in rule.limits]
    assert [] == [row for row in rows if row not in told]
    assert [] == [row for row in rows if '"' in row.split(" (")[0].split(":")[0]]


@pytest.mark.parametrize("name", LESSONS)
def test_every_rule_names_the_words_of_the_plan_or_what_is_worked_out(name: str) -> None:
    rules = [taught(rule, book(), (), "imperial") for rule in map(book().named, read_lesson(name).rules) if rule]
    assert len(read_lesson(name).rules) == len(rules)
    assert [] == [rule.name for rule in rules if not (rule.words or rule.computed) or not rule.broken or not rule.cured]


def test_words_of_a_rule_are_those_of_its_condition_and_its_cure() -> None:
    rule = book().named("mulch-against-sill")
    assert rule is not None
    words = [(word.name, word.of) for word in taught(rule, book(), (), "imperial").words]
    assert [("ground", "wall"), ("mulch", "planting"), ("distance", "planting")] == words


def test_a_limit_tells_what_becomes_of_not_meeting_it() -> None:
    rule = book().named("sill-too-near-grade")
    assert rule is not None
    rows = [row[:3] for row in taught(rule, book(), (), "imperial").limits]
    assert [
        ("code floor", '8"', "settle before release"),
        ("good practice", '12"', "should be improved"),
        ("advice", '18"', "worth knowing"),
    ] == rows


def test_a_rule_of_the_lesson_is_linked_and_another_is_told_with_its_title() -> None:
    text = "see `sill-too-near-grade`, `rake-too-short` and `grade` <b>"
    assert (
        'see <a href="#rule-sill-too-near-grade">Wood starts too near the ground</a>, '
        "“Rake too short” (<code>rake-too-short</code>) and <code>grade</code> &lt;b&gt;"
    ) == str(linked(text, book(), ("sill-too-near-grade",)))


def test_a_rule_page_that_points_to_another_rule_names_it() -> None:
    names = {rule.name for rule in book().rules}
    pointing, nameless = 0, []
    for rule in book().rules:
        page = read_page(shipped("rules").joinpath(f"{rule.name}.md").read_text(encoding="utf-8"), rule.page)
        for heading, text in page.sections.items():
            for line in text.splitlines() if heading != "Sources" else ():
                if POINTS_AWAY.search(line):
                    pointing += 1
                    if not names & set(re.findall(r"`([^`]+)`", line)):
                        nameless.append(f"{rule.name}: {line}")
    assert (True, []) == (pointing > 0, nameless)


@pytest.mark.parametrize("plan", ["cedar-spit", "starter", "high-desert-cabin"])
def test_a_plan_of_one_s_own_is_drawn_and_reckoned_beside_the_house_of_the_lesson(plan: str) -> None:
    assert f"Your plan, {plan}.plan" in part(page_of("water-from-above", plan), "own", "failures")


def test_the_exercise_tells_nothing_by_its_comments() -> None:
    lines = exercise(read_lesson("water-from-above")).splitlines()
    assert [0] == [at for at, line in enumerate(lines) if "#" in line]


def test_a_plant_that_does_not_fit_the_plan_is_refused() -> None:
    lesson = Lesson("x", "X", (), "", (), (), (), ((("no such text", "y"),),), (), (), ())
    with pytest.raises(UnusableLesson, match="no such text"):
        exercise(lesson)


def test_an_unknown_lesson_is_an_error_of_lookup() -> None:
    with pytest.raises(LookupError):
        read_lesson("../secrets")


def test_a_plan_of_a_lesson_uses_no_other_file() -> None:
    with pytest.raises(CannotRead):
        no_file("house.plan")


def test_no_lesson_plants_an_eave_that_dies_where_the_head_of_a_roof_meets_the_wall() -> None:
    for name in LESSONS:
        for junction in re.findall(r"junction \w+ \{[^}]*\}", exercise(read_lesson(name))):
            assert (name, False) == (name, "type head" in junction and "eave dies yes" in junction)


def test_two_lists_are_told_by_what_differs() -> None:
    sound, faulty = apart("1 dig\n2 pour\n3 lay\n", "1 dig\n2 bore\n3 pour\n4 lay\n")
    assert (0, ["> 2 bore"]) == (sound.count("dig"), [line for line in faulty.splitlines()[1:] if line[:1] == ">"])
    page = part(page_of("order-of-work"), "picture", "worked")
    assert 1 == page.count("have buried services found and marked")
