"""A company's own pages and limits on the command line."""

from __future__ import annotations

import json
from pathlib import Path

import pytest

from speclint.paths import shipped
from tests.commands.conftest import LOT, Run

LOW = 'wall west { build log round 10"; starts 9" }\n' + LOT
PAGE = shipped("rules").joinpath("sill-too-near-grade.md").read_text(encoding="utf-8")


def grade(run: Run, *words: str, **files: str | bytes) -> tuple[int, str | None]:
    """The exit status, and the grade of the finding on the sill."""
    result = run("review", "a.plan", "--json", *words, a=LOW, **files)
    found = json.loads(result.out)["rulings"]
    return result.status, next((one["grade"] for one in found if one["rule"] == "sill-too-near-grade"), None)


@pytest.mark.parametrize(
    ("limits", "expected"),
    [
        ("", (0, "revise")),
        ('rule sill-too-near-grade { code floor 10" }', (1, "hold")),
        ("rule sill-too-near-grade { code floor 300 mm }", (1, "hold")),
        ("rule sill-too-near-grade { grade note }", (0, "note")),
        ('rule sill-too-near-grade { set aside "we raise every house" }', (0, None)),
        ('rule sill-too-near-grade { good practice 8"; advice 8" }', (0, None)),
    ],
)
def test_house_limits_change_what_is_found(run: Run, limits: str, expected: tuple[int, str | None]) -> None:
    assert expected == grade(run, "--house-limits", "ours.plan", ours=limits)


def test_a_house_limit_is_told_as_the_basis(run: Run) -> None:
    limits = 'rule sill-too-near-grade { code floor 10" }'
    assert "house limit in ours.plan" in run("review", "a.plan", "--house-limits", "ours.plan", a=LOW, ours=limits).out


def test_a_rule_set_aside_is_told_in_the_cautions(run: Run) -> None:
    limits = 'rule sill-too-near-grade { set aside "we raise every house" }'
    out = run("review", "a.plan", "--house-limits", "ours.plan", a=LOW, ours=limits).out
    assert "Set aside by house limits: sill-too-near-grade (we raise every house)." in " ".join(out.split())


@pytest.mark.parametrize(
    ("limits", "told"),
    [
        (
            'rule sil-too-near-grade { code floor 10" }',
            "1:6: “sil-too-near-grade” is no rule of the rulebook (did you mean “sill-too-near-grade”",
        ),
        ('rule sill-too-near-grade { floor 10" }', "1:28: “floor” is no limit of sill-too-near-grade"),
        (
            "rule sill-too-near-grade { code floor 10 psf }",
            '1:39: “10 psf” does not fit “code floor”, which is 8" (needs a length)',
        ),
        ("rule sill-too-near-grade { grade stern }", "1:34: “stern” is not a grade (one of: hold, revise, note)"),
        (
            "rule sill-too-near-grade {",
            "1:26: the block of “rule sill-too-near-grade” opened here is not closed",
        ),
        ("wall a { }", "1:1: “wall” does not name a rule"),
    ],
)
def test_house_limits_that_cannot_be_used_are_told_with_their_place(run: Run, limits: str, told: str) -> None:
    result = run("review", "a.plan", "--house-limits", "ours.plan", a=LOW, ours=limits)
    assert (3, "", True) == (result.status, result.out, f"ours.plan:{told}" in result.err)


@pytest.mark.parametrize(
    ("name", "told"), [("gone.txt", "there is no such file"), (".", "it is a folder; name a file in it")]
)
def test_house_limits_that_cannot_be_read_are_told(run: Run, name: str, told: str) -> None:
    result = run("review", "a.plan", "--house-limits", name, a=LOW)
    assert (3, f"speclint: {name}: cannot be read: {told}\n") == (result.status, result.err)


def test_a_house_rule_takes_the_place_of_the_shipped_one(run: Run, tmp_path: Path) -> None:
    (tmp_path / "ours").mkdir()
    page = PAGE.replace("otherwise revise", "otherwise hold")
    (tmp_path / "ours" / "sill-too-near-grade.md").write_text(page, encoding="utf-8")
    assert (1, "hold") == grade(run, "--house-rules", "ours")


def test_a_house_rule_stands_beside_the_shipped_ones(run: Run, tmp_path: Path) -> None:
    (tmp_path / "ours").mkdir()
    page = PAGE.replace("sill-too-near-grade", "our-own-floor").replace("supersedes", "basis ours")
    (tmp_path / "ours" / "our-own-floor.md").write_text(page, encoding="utf-8")
    told = run("explain", "our-own-floor", "--house-rules", "ours")
    assert (0, True) == (told.status, "[our-own-floor]" in told.out)


@pytest.mark.parametrize(
    ("old", "new", "told"),
    [
        ("starts >= code floor ", "starrts >= code floor ", "8:10: a wall has no “starrts” (did you mean “starts”?)"),
        ("starts >= code floor ", "species >= code floor ", "8:"),
        ("```rule", "```", "1:1: the page has no fenced rule"),
        ("rule sill-too-near-grade", "rule another-name", "2:"),
        ("second-hand", "hearsay", "5:"),
    ],
)
def test_a_house_rule_that_cannot_be_used_is_told_with_its_place(
    run: Run, tmp_path: Path, old: str, new: str, told: str
) -> None:
    (tmp_path / "ours").mkdir()
    (tmp_path / "ours" / "sill-too-near-grade.md").write_text(PAGE.replace(old, new, 1), encoding="utf-8")
    result = run("review", "a.plan", "--house-rules", "ours", a=LOW)
    assert (3, "", True, True) == (
        result.status,
        result.out,
        result.err.startswith("speclint: the rulebook cannot be used:\n"),
        f"ours/sill-too-near-grade.md:{told}" in result.err,
    )


def test_a_folder_of_house_rules_that_is_not_there_is_told(run: Run) -> None:
    result = run("review", "a.plan", "--house-rules", "gone", a=LOW)
    assert (3, True) == (result.status, "gone:1:1: this is not a folder of rule pages" in result.err)


def test_a_house_rule_that_is_a_folder_is_told(run: Run, tmp_path: Path) -> None:
    (tmp_path / "ours" / "a.md").mkdir(parents=True)
    result = run("review", "a.plan", "--house-rules", "ours", a=LOW)
    assert (3, "speclint: ours/a.md: cannot be read: Is a directory\n") == (result.status, result.err)
