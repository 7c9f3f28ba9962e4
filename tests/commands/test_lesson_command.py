"""`lesson`: the list, the page, the exercise, the key, and wrong use."""

from __future__ import annotations

from pathlib import Path

import pytest

from tests.commands.conftest import Run


def test_the_topics_are_listed(run: Run) -> None:
    result = run("lesson")
    assert (0, True) == (result.status, "posts-and-bases" in result.out)


def test_a_lesson_and_its_exercise_are_written_and_the_exercise_can_be_reviewed(run: Run, tmp_path: Path) -> None:
    result = run("lesson", "posts-and-bases", "--to", "l.html", "--exercise", "e.plan", "--today", "2026-11-25")
    assert (0, "e.plan\nl.html\n") == (result.status, result.out)
    assert "Posts and their bases" in (tmp_path / "l.html").read_text(encoding="utf-8")
    told = run("review", "e.plan", "--today", "2026-11-25")
    assert (1, True) == (told.status, "post-base-holds-water" in told.out)


def test_the_key_is_what_the_review_says(run: Run) -> None:
    key = run("lesson", "posts-and-bases", "--answers", "--today", "2026-11-25").out
    run("lesson", "posts-and-bases", "--exercise", "e.plan")
    letter = run("review", "e.plan", "--today", "2026-11-25").out
    comments = [line for line in letter.splitlines() if line.endswith("]")]
    assert comments == [line for line in key.splitlines() if line.endswith("]")]


@pytest.mark.parametrize(
    ("asked", "told"),
    [
        (("lesson", "posts"), "there is no lesson on “posts”"),
        (("lesson", "posts-and-bases"), "say what to write"),
        (("lesson", "posts-and-bases", "none.plan", "--to", "x.html"), "cannot be read"),
        (("lesson", "posts-and-bases", "--to", "no/folder/x.html"), "cannot be written"),
    ],
)
def test_wrong_use_is_told(run: Run, asked: tuple[str, ...], told: str) -> None:
    result = run(*asked)
    assert (True, True) == (result.status in (2, 3), told in result.err)
