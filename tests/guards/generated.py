"""The texts that are made from the model and the rules: `python -m tests.guards.generated` writes them anew."""

from __future__ import annotations

import sys
from collections.abc import Callable
from pathlib import Path

from speclint.outputs.colouring import colouring, language_words
from speclint.outputs.reference import glossary, language_reference, rulebook_index
from speclint.rulebook.book import load_rulebook

ROOT = Path(__file__).resolve().parents[2]
BEGIN, END = "<!-- glossary: made from the register of measures -->\n", "<!-- end of glossary -->\n"


def _developers() -> str:
    """DEVELOPERS.md with its glossary made anew."""
    text = (ROOT / "DEVELOPERS.md").read_text(encoding="utf-8")
    before, rest = text.split(BEGIN)
    return before + BEGIN + glossary() + END + rest.split(END)[1]


REVIEW_BEGIN = "<!-- review of the plan above: made by `sh .ci/tasks reference` -->\n"
REVIEW_END = "<!-- end of review -->\n"


def readme_plan() -> str:
    """The plan that the README shows."""
    return (ROOT / "README.md").read_text(encoding="utf-8").split("```plan\n")[1].split("```")[0]


def _readme() -> str:
    """README.md with the review of its plan made anew."""
    from speclint.outputs.letter import Frame, letter, text_of
    from speclint.pipeline import PlanText, review

    def read(name: str) -> str:
        raise AssertionError(name)

    text = (ROOT / "README.md").read_text(encoding="utf-8")
    result = review(PlanText(readme_plan(), "house.plan", read), load_rulebook(), "2026-11-25")
    told = text_of(letter(result, Frame(100, "2026-11-25", brief=True)))
    before, rest = text.split(REVIEW_BEGIN)
    shown = f"```\n$ speclint review --brief house.plan\n{told}```\n"
    return before + REVIEW_BEGIN + shown + REVIEW_END + rest.split(REVIEW_END)[1]


EXPOSURE_BEGIN = "<!-- exposure of the plan above: made by `sh .ci/tasks reference` -->\n"
EXPOSURE_END = "<!-- end of exposure -->\n"


def _readme_whole() -> str:
    """README.md with the review and the exposure of its plan made anew."""
    from speclint.outputs.exposure import exposure_lines
    from speclint.outputs.letter import text_of
    from speclint.pipeline import PlanText, read_home

    def read(name: str) -> str:
        raise AssertionError(name)

    plan = readme_plan().replace("site {", "site {\n    terrain wooded;  rain wind SW", 1)
    sheet, mistakes = read_home(PlanText(plan, "house.plan", read))
    assert not mistakes, mistakes
    lines = exposure_lines(sheet, "imperial")
    told = text_of(lines[: next(at for at, line in enumerate(lines) if line and line[0].text == "Read with care")])
    before, rest = _readme().split(EXPOSURE_BEGIN)
    shown = f"```\n$ speclint exposure house.plan\n{told.rstrip()}\n```\n"
    return before + EXPOSURE_BEGIN + shown + EXPOSURE_END + rest.split(EXPOSURE_END)[1]


TRACE_BEGIN = "<!-- trace and sequence of the demo: made by `sh .ci/tasks reference` -->\n"
TRACE_END = "<!-- end of trace and sequence -->\n"


def _readme_with_graphs() -> str:
    """README.md with its generated parts, the water and the work of the demo plan among them."""
    from speclint.commands.files import demo_plan
    from speclint.measures.work_order import work_of
    from speclint.outputs.letter import text_of
    from speclint.outputs.sequence import sequence_lines
    from speclint.outputs.trace import water_lines
    from speclint.pipeline import read_home

    plan = demo_plan()
    sheet, _ = read_home(plan)
    water = text_of(water_lines(sheet, "imperial")).rstrip()
    work = text_of(sequence_lines(work_of(sheet), plan.name, 100)).split("\nFOUNDATION")[0].rstrip()
    shown = f"```\n$ speclint trace --demo\n{water}\n```\n\n```\n$ speclint sequence --demo\n{work}\n…\n```\n"
    before, rest = _readme_whole().split(TRACE_BEGIN)
    return before + TRACE_BEGIN + shown + TRACE_END + rest.split(TRACE_END)[1]


CURE_BEGIN = "<!-- cure of the plan above: made by `sh .ci/tasks reference` -->\n"
CURE_END = "<!-- end of cure -->\n"


def _readme_with_cures() -> str:
    """README.md with all its generated parts."""
    from speclint.cures.desk import Desk
    from speclint.cures.effect import Effects
    from speclint.cures.letter import Cured, cure_lines, numbered, told_of
    from speclint.cures.together import cure_set
    from speclint.forecast.rates import demo_rates
    from speclint.language.uses import CannotRead
    from speclint.outputs.letter import text_of
    from speclint.pipeline import PlanText

    def read(name: str) -> str:
        raise CannotRead("the plan uses no other file")

    desk = Desk(PlanText(readme_plan(), "house.plan", read), load_rulebook(), "2026-11-25", "imperial")
    effects = Effects(desk.sheet, demo_rates(), 30, "imperial")
    told = told_of(desk, effects, list(desk.findings.values()))
    whole = cure_set(desk, "hold")
    effect = effects.of(desk.trial(whole.changes))
    numbers = numbered(list(desk.findings.values()))
    lines = cure_lines(Cured("house.plan", numbers, told, whole, effect, "hold", 30, True), 100)
    shown = f"```\n$ speclint cure house.plan\n{text_of(lines).rstrip()}\n```\n"
    before, rest = _readme_with_graphs().split(CURE_BEGIN)
    return before + CURE_BEGIN + shown + CURE_END + rest.split(CURE_END)[1]


GENERATED: dict[str, Callable[[], str]] = {
    "grammar/language-reference.md": language_reference,
    "grammar/words.json": language_words,
    "grammar/plan.tmLanguage.json": colouring,
    "rules/README.md": lambda: rulebook_index(load_rulebook()),
    "DEVELOPERS.md": _developers,
    "README.md": _readme_with_cures,
}


def write_all() -> None:
    """Write every generated text."""
    for name, make in GENERATED.items():
        (ROOT / name).write_text(make(), encoding="utf-8")
        print(name)


if __name__ == "__main__":
    sys.exit(write_all())
