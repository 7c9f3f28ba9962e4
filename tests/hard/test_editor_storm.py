"""Storms of edits on the language server, at a small size; `python -m tests.hard.editor_storm` sends long ones."""

from __future__ import annotations

import pytest

from tests.hard import editor_storm
from tests.hard.editor_storm import HOUSE, Typist, cold, storm
from tests.hard.holds import Fault


@pytest.mark.parametrize("seed", range(10))
def test_after_a_storm_of_edits_each_text_is_told_of_as_if_it_were_read_cold(seed: int) -> None:
    assert storm(seed, edits=60, every=20) >= 1


def test_what_is_told_otherwise_is_a_fault(monkeypatch: pytest.MonkeyPatch) -> None:
    def other(texts: dict[str, str], encoding: str) -> editor_storm.Told:
        return {name: told[1:] for name, told in cold(texts, encoding).items()}

    monkeypatch.setattr(editor_storm, "cold", other)
    with pytest.raises(Fault, match=r"house\.plan \d+ of \d+: \{'told and not found': \['"):
        storm(1, edits=20, every=10)


def test_the_same_seed_types_the_same() -> None:
    def typed(seed: int) -> list[object]:
        typist = Typist(seed, "utf-16")
        return [(typist.edit(HOUSE), typist.question(HOUSE)) for _ in range(30)]

    assert typed(4) == typed(4) != typed(5)
