"""The compiled rulebook is made anew whenever something changes that it was made from."""

from __future__ import annotations

import os
from pathlib import Path

import pytest

from speclint.rulebook import book


def test_the_key_looks_at_all_that_decides_what_a_page_is_read_as() -> None:
    looked = {f"{path.parent.name}/{path.name}" for path in book._makers()}
    wanted = {
        "speclint/units.py", "speclint/citation.py", "language/parse.py", "language/nearest.py", "rulebook/compile.py",
        "measures/frames.py", "model/kinds.py", "grammar/rule.lark", "shared/citations.csv",
    }  # fmt: skip
    assert set() == wanted - looked


def test_a_file_that_grows_or_is_written_again_gives_another_key(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    made = tmp_path / "rule.lark"
    monkeypatch.setattr(book, "_makers", lambda: [made])
    keys = []
    for text, time in (("a", 1), ("a", 1), ("a", 2), ("ab", 2)):
        made.write_text(text, encoding="utf-8")
        os.utime(made, ns=(time, time))
        keys.append(book._key({}))
    assert (True, 3) == (keys[0] == keys[1], len(set(keys)))
