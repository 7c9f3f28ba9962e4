"""Reviews kept between runs: the same answer, sooner; and never an old one."""

from __future__ import annotations

import os
import subprocess
import sys
from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest

from speclint import kept
from speclint.commands.asked import asked_of, state_of_program
from speclint.commands.told import SHELF
from speclint.commands.words import parser
from tests.commands.conftest import ROOT, Run, Told

LOW = 'wall west { build log round 10"; starts 4" }\n'
USES = 'use "shared.plan"\nwall west { starts 4" }\n'


@pytest.fixture
def cache(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """An empty cache of its own."""
    place = tmp_path / "cache"
    monkeypatch.setenv("SPECLINT_CACHE", str(place))
    return place


@pytest.fixture
def reviews(monkeypatch: pytest.MonkeyPatch) -> Callable[[], int]:
    """How many reviews were made since the last time that this was asked."""
    from speclint.commands import pieces

    made: list[int] = []
    whole = pieces.review

    def counted(*words: Any) -> Any:
        made.append(1)
        return whole(*words)

    def since() -> int:
        count = len(made)
        made.clear()
        return count

    monkeypatch.setattr(pieces, "review", counted)
    return since


def entries(cache: Path) -> list[Path]:
    return sorted((cache / SHELF).iterdir())


@pytest.mark.parametrize("form", [(), ("--brief",), ("--json",), ("--sarif",), ("--junit",), ("--colour", "always")])
def test_what_was_kept_is_told_again_word_for_word(
    run: Run, cache: Path, reviews: Callable[[], int], form: tuple[str, ...]
) -> None:
    first, second = (run("review", "a.plan", *form, a=LOW) for _ in range(2))
    assert (first, 1, 1) == (second, first.status, reviews())


CHANGES: list[tuple[tuple[str, ...], tuple[str, ...]]] = [
    ((), ("--today", "2031-01-01")),
    ((), ("--units", "metric")),
    ((), ("--brief",)),
    ((), ("--json",)),
    (("--json",), ("--sarif",)),
    ((), ("--colour", "always")),
    ((), ("--afresh",)),
    (("--junit",), ("--junit", "--hold-at", "note")),
    ((), ("--house-rules", "rules")),
    ((), ("--house-limits", "limits.txt")),
]


@pytest.mark.parametrize(("before", "after"), CHANGES)
def test_whatever_else_is_asked_is_reviewed_anew(
    run: Run, cache: Path, reviews: Callable[[], int], tmp_path: Path, before: tuple[str, ...], after: tuple[str, ...]
) -> None:
    (tmp_path / "rules").mkdir()
    (tmp_path / "limits.txt").write_text("")
    for words in (before, after):
        run("review", "a.plan", *words, a=LOW)
    assert 2 == reviews()


def test_another_text_of_the_plan_is_reviewed_anew(run: Run, cache: Path) -> None:
    low, high = (run("review", "a.plan", a=text) for text in (LOW, LOW.replace("4", "40")))
    assert (True, False) == ("[sill-too-near-grade]" in low.out, "[sill-too-near-grade]" in high.out)


def test_the_same_text_under_another_name_is_told_with_that_name(run: Run, cache: Path) -> None:
    assert ["a.plan", "b.plan"] == [
        run("review", name, a=LOW, b=LOW).out.splitlines()[0].split()[-1] for name in ("a.plan", "b.plan")
    ]


def test_the_same_limits_file_with_other_limits_is_read_anew(run: Run, cache: Path, tmp_path: Path) -> None:
    told = []
    for grade in ("note", "revise"):
        (tmp_path / "limits.txt").write_text(f"rule sill-too-near-grade {{ grade {grade} }}")
        told.append(run("review", "a.plan", "--house-limits", "limits.txt", "--junit", a=LOW).out)
    assert (True, True) == ("note: wall west starts" in told[0], "revise: wall west starts" in told[1])


def test_a_used_file_that_changed_is_reviewed_anew(run: Run, cache: Path, reviews: Callable[[], int]) -> None:
    first = run("review", "a.plan", a=USES, shared='typical wall { build log round 10" }')
    same = run("review", "a.plan")
    assert (first, 1) == (same, reviews())
    changed = run("review", "a.plan", shared="typical wall { build stone }")
    assert (True, 1) == (changed != first, reviews())


def test_a_used_file_that_appears_is_read(run: Run, cache: Path) -> None:
    before = run("review", "a.plan", a=USES)
    after = run("review", "a.plan", shared='typical wall { build log round 10" }')
    assert (2, 1) == (before.status, after.status)


def test_a_used_file_that_is_gone_is_missed(run: Run, cache: Path, tmp_path: Path) -> None:
    run("review", "a.plan", a=USES, shared='typical wall { build log round 10" }')
    (tmp_path / "shared.plan").unlink()
    assert 2 == run("review", "a.plan").status


def test_a_file_used_by_a_used_file_counts_too(run: Run, cache: Path) -> None:
    files = {"a": 'use "b.plan"\n' + LOW, "b": 'use "c.plan"\n', "c": "typical wall { }"}
    run("review", "a.plan", **files)
    assert 2 == run("review", "a.plan", c="typical wall { heigth 9' }").status


def test_a_rain_record_of_the_users_own_that_changed_is_read_anew(run: Run, cache: Path, tmp_path: Path) -> None:
    plan = 'site { weather "Duluth, MN"; rain record "own.csv" }\n' + LOW
    before = run("review", "a.plan", a=plan)
    (tmp_path / "own.csv").write_text("nonsense")
    after = run("review", "a.plan")
    assert (True, True) == ("there is no such file" in before.out, before.out != after.out)


def damaged(raw: bytes) -> list[bytes]:
    middle = len(raw) // 2
    flipped = raw[:middle] + bytes([raw[middle] ^ 1]) + raw[middle + 1 :]
    return [b"", raw[:10], raw[:middle], raw + b"x", flipped, b"\xff" * 400]


def test_what_was_damaged_is_made_anew(run: Run, cache: Path, reviews: Callable[[], int]) -> None:
    first = run("review", "a.plan", a=LOW)
    (entry,) = entries(cache)
    raw = entry.read_bytes()
    for bad in damaged(raw):
        entry.write_bytes(bad)
        assert first == run("review", "a.plan")
        assert raw == entry.read_bytes()
    assert 1 + len(damaged(raw)) == reviews()


@pytest.mark.parametrize("value", [None, 7, (), ("x",), [1, 2, 3, 4]])
def test_what_is_sound_and_not_a_review_is_made_anew(run: Run, cache: Path, value: object) -> None:
    first = run("review", "a.plan", a=LOW)
    (entry,) = entries(cache)
    kept.shelve(SHELF, entry.name, value)
    assert first == run("review", "a.plan")


@pytest.mark.parametrize("made", ["file", "closed"])
def test_a_cache_that_cannot_be_used_is_no_news(run: Run, cache: Path, made: str) -> None:
    if made == "file":
        cache.write_text("no folder")
    else:
        cache.mkdir()
        (cache / SHELF).write_text("no shelf")
    told = run("review", "a.plan", a=LOW)
    assert (1, "") == (told.status, told.err)


def test_a_plan_that_cannot_be_opened_leaves_nothing(run: Run, cache: Path) -> None:
    assert (2, False) == (run("review", "gone.plan").status, (cache / SHELF).exists())


def test_an_alternate_that_is_not_there_leaves_nothing(run: Run, cache: Path) -> None:
    told = [run("review", "a.plan", "--alternate", "x", a=LOW) for _ in range(2)]
    assert (3, told[0], False) == (told[1].status, told[1], (cache / SHELF).exists())


def test_runs_at_the_same_time_tell_the_same_and_leave_nothing_half_done(cache: Path, tmp_path: Path) -> None:
    (tmp_path / "a.plan").write_text(LOW)
    environment = {**os.environ, "PYTHONPATH": str(ROOT), "SPECLINT_CACHE": str(cache)}
    command = [sys.executable, "-m", "speclint", "review", "a.plan", "--afresh"]
    begun = [
        subprocess.Popen(command, cwd=tmp_path, env=environment, stdout=subprocess.PIPE, stderr=subprocess.PIPE)
        for _ in range(4)
    ]
    told = [one.communicate(timeout=120) for one in begun]
    assert ([told[0]] * 4, b"", 1) == (told, told[0][1], len(entries(cache)))


HEAVY = ("lark", "speclint.pipeline", "speclint.rulebook", "speclint.model", "speclint.measures", "speclint.ruling")


def test_a_kept_review_imports_nothing_of_the_review(start: Run, cache: Path, tmp_path: Path) -> None:
    (tmp_path / "a.plan").write_text(LOW)
    environment = {**os.environ, "PYTHONPATH": str(ROOT), "SPECLINT_CACHE": str(cache)}
    code = (
        "import sys; from speclint.commands.main import main; main(['review', 'a.plan']);"
        f"print([name for name in {HEAVY} if name in sys.modules], file=sys.stderr)"
    )
    told = [
        subprocess.run([sys.executable, "-c", code], cwd=tmp_path, env=environment, capture_output=True, text=True)
        for _ in range(2)
    ]
    loaded = [one.stderr.strip() for one in told]
    assert (str(list(HEAVY)), "[]", told[0].stdout) == (loaded[0], loaded[1], told[1].stdout)


def test_the_state_of_the_program_changes_with_a_house_rule(tmp_path: Path) -> None:
    stated = parser().parse_args(["review", "a.plan", "--house-rules", str(tmp_path)])
    asked = asked_of(stated, "2026-11-25")
    before = state_of_program(asked)
    (tmp_path / "own.md").write_text("one")
    between = state_of_program(asked)
    (tmp_path / "own.md").write_text("two")
    assert 3 == len({before, between, state_of_program(asked)})


def test_the_state_of_the_program_changes_with_a_file_of_its_own(monkeypatch: pytest.MonkeyPatch) -> None:
    asked = asked_of(parser().parse_args(["review", "a.plan"]), "2026-11-25")
    before = state_of_program(asked)
    scandir = os.scandir

    class Aged:
        def __init__(self, entry: Any) -> None:
            self.entry, self.name, self.path, self.is_dir = entry, entry.name, entry.path, entry.is_dir

        def stat(self) -> Any:
            state = list(self.entry.stat())
            return os.stat_result([*state[:6], state[6] + (self.name == "judge.py"), *state[7:]])

    assert before == state_of_program(asked)
    monkeypatch.setattr(os, "scandir", lambda folder: [Aged(entry) for entry in scandir(folder)])
    assert before != state_of_program(asked)


def test_a_shelf_keeps_the_newest(cache: Path) -> None:
    for at in range(6):
        kept.shelve("things", f"key{at}", "x" * 100)
        os.utime(cache / "things" / f"key{at}", (at, at))
    kept.clear_shelf("things", 4, 10_000)
    assert ["key2", "key3", "key4", "key5"] == sorted(path.name for path in (cache / "things").iterdir())
    kept.clear_shelf("things", 4, 300)
    assert ["key4", "key5"] == sorted(path.name for path in (cache / "things").iterdir())


def test_a_shelf_that_is_not_there_is_cleared_already(cache: Path) -> None:
    kept.clear_shelf("nothing", 1, 1)
    assert (None, False) == (kept.shelved("nothing", "key"), cache.exists())


def test_what_is_shelved_comes_back(cache: Path) -> None:
    value = {"a": (1, None, True, "é\ud800"), "b": [b"x"]}
    kept.shelve("things", "key", value)
    assert value == kept.shelved("things", "key")


def test_the_demo_and_standard_input_are_kept_too(start: Run, tmp_path: Path) -> None:
    environment = {"SPECLINT_CACHE": str(tmp_path / "cache")}
    told: list[Told] = [start("review", "--demo", environment=environment) for _ in range(2)]
    told += [start("review", "-", given=LOW.encode(), environment=environment) for _ in range(2)]
    assert (told[0], told[2], 2) == (told[1], told[3], len(entries(tmp_path / "cache")))
