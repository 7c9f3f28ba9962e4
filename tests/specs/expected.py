"""What is expected of each example plan: `python -m tests.specs.expected` writes it anew, on purpose only.

The review stands beside the plan; every measure of its parts, in SI, in the folder `measures` here.
"""

from __future__ import annotations

import sys
from functools import lru_cache
from pathlib import Path

from speclint.commands.files import read_text
from speclint.measures.register import measures
from speclint.outputs.letter import Frame, letter, text_of
from speclint.pipeline import PlanText, read_home, review
from speclint.quantity import Quantity
from speclint.rulebook.book import Rulebook, load_rulebook
from speclint.units import System

MEASURES = Path(__file__).resolve().parent / "measures"
ODD = Path(__file__).resolve().parent / "odd"
SPECS = Path(__file__).resolve().parents[2] / "specs"
DAY = "2026-11-25"
UNITS: dict[str, System] = {"high-desert-cabin": "metric"}


@lru_cache(maxsize=1)
def book() -> Rulebook:
    return load_rulebook()


def names() -> list[str]:
    """The example plans, without the files that only others use."""
    return sorted(path.stem for path in SPECS.glob("*.plan"))


def letter_of(name: str) -> str:
    """The letter of an example plan, at a fixed width and day."""
    plan = PlanText(read_text(SPECS / f"{name}.plan"), f"{name}.plan", lambda used: read_text(SPECS / used))
    result = review(plan, book(), DAY, UNITS.get(name, "imperial"))
    return text_of(letter(result, Frame(100, DAY)))


def measured() -> list[Path]:
    """The plans whose measures are held: the example plans, and plans of parts that those have not."""
    return [*(SPECS / f"{name}.plan" for name in names()), *sorted(ODD.glob("*.plan"))]


def measures_of(path: Path) -> str:
    """Every measure of a plan that can be told, with its bounds, in SI and five digits."""
    plan = PlanText(read_text(path), path.name, lambda used: read_text(path.parent / used))
    sheet, mistakes = read_home(plan)
    assert not mistakes, mistakes
    rows: list[str] = []
    for facts in sheet.facts.values():
        rows.append(f"\n{facts.label}")
        for one in measures().get(facts.element.kind, {}):
            found = sheet.quantity(facts, one)
            if isinstance(found, Quantity):
                rows.append(f"  {one}: {told_of(found)}")
            elif found.reason:
                rows.append(f"  {one}: none, {found.reason}")
    return "\n".join(rows).lstrip() + "\n"


def told_of(found: Quantity) -> str:
    """A value, its bounds in brackets, and in braces how many notes it has."""
    bounds = "" if found.low is None else f" ({_digits(found.low)} to {_digits(found.high)})"
    notes = f" {{{len(found.notes)}}}" if found.notes else ""
    return f"{_digits(found.value)}{bounds}{notes}"


def _digits(value: object) -> str:
    return f"{value:.5g}" if isinstance(value, float) else str(value)


def write_all() -> None:
    """Write all that is expected."""
    MEASURES.mkdir(exist_ok=True)
    for name in names():
        (SPECS / f"{name}.review.txt").write_text(letter_of(name), encoding="utf-8")
        print(name)
    for path in measured():
        (MEASURES / f"{path.stem}.txt").write_text(measures_of(path), encoding="utf-8")


if __name__ == "__main__":
    sys.exit(write_all())
