"""The expected review beside each example plan: `python -m tests.specs.expected` writes them anew, on purpose only."""

from __future__ import annotations

import sys
from functools import lru_cache
from pathlib import Path

from speclint.commands.files import read_text
from speclint.outputs.letter import Frame, letter, text_of
from speclint.pipeline import PlanText, review
from speclint.rulebook.book import Rulebook, load_rulebook
from speclint.units import System

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


def write_all() -> None:
    """Write every expected review."""
    for name in names():
        (SPECS / f"{name}.review.txt").write_text(letter_of(name), encoding="utf-8")
        print(name)


if __name__ == "__main__":
    sys.exit(write_all())
