"""Ten thousand damaged plans: none breaks anything, and the storm would find what does."""

from __future__ import annotations

from pathlib import Path

import pytest

from tests.hard.storm import Shares, smallest, storm
from tests.hard.texts import text_of

SEED, PARTS, TEXTS = 2026, 20, 10_000


@pytest.mark.parametrize("part", range(PARTS))
def test_no_damaged_plan_breaks_anything(part: int, tmp_path: Path) -> None:
    many = TEXTS // PARTS
    found = storm(SEED, part * many, many, Shares(reviews=8, commands=500), tmp_path)
    assert not found, f"seed {SEED}, number {found[0].number}: {found[0].name}\n{found[0].told}\n{found[0].text!r}"


def test_the_same_seed_and_number_give_the_same_text() -> None:
    assert [text_of(3, number) for number in range(20)] == [text_of(3, number) for number in range(20)]
    assert 20 == len({text_of(3, number) for number in range(20)})


def test_a_fault_is_found_named_and_made_small(monkeypatch: pytest.MonkeyPatch, tmp_path: Path) -> None:
    def broken(mistake: object, *more: object, **named: object) -> object:
        raise ZeroDivisionError("planted")

    monkeypatch.setattr("speclint.model.read_element.mistake_at", broken)
    found = storm(SEED, 0, 60, Shares(0, 0), tmp_path)
    assert found
    assert all(one.name.startswith("ZeroDivisionError in ") for one in found)
    shortest = min(found, key=lambda one: len(one.text))
    small = smallest(shortest, tmp_path)
    assert 0 < len(small) < len(shortest.text)
