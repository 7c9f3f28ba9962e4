"""`explain`, `rulebook`, `measures`, `begin`, `completion`, and the command line itself."""

from __future__ import annotations

import json
import shutil
import subprocess
from pathlib import Path

import pytest

from speclint import __version__
from speclint.commands.completion import _commands
from speclint.model.element import settings_of
from speclint.model.kinds import KINDS
from tests.commands.conftest import Run
from tests.specs.expected import book

LOW = 'wall west { build log round 10"; starts 4" }\n'


@pytest.mark.parametrize(
    ("words", "told"),
    [
        (("revue",), "invalid choice"),
        (("review", "--demo", "--loud"), "--loud is not expected here"),
        (("review", "--demo", "--hold-at", "maybe"), "invalid choice"),
        (("explain",), "the following arguments are required: NAME"),
        (("completion", "tcsh"), "invalid choice"),
        (("begin",), "the following arguments are required: FILE"),
    ],
)
def test_words_that_speclint_does_not_know_give_status_3(run: Run, words: tuple[str, ...], told: str) -> None:
    result = run(*words)
    assert (3, "", True) == (result.status, result.out, told in result.err)


def test_nothing_asked_shows_the_help_and_gives_status_3(run: Run) -> None:
    result = run()
    assert (3, True) == (result.status, "exit status:" in result.out)


@pytest.mark.parametrize("words", [("--help",), ("review", "--help"), ("explain", "-h")])
def test_help_that_is_asked_for_gives_status_0(run: Run, words: tuple[str, ...]) -> None:
    result = run(*words)
    assert (0, True) == (result.status, "wrong use, or a rulebook that cannot be used" in result.out)


def test_the_version_is_told(run: Run) -> None:
    assert (0, f"speclint {__version__}\n") == (run("--version").status, run("--version").out)


def test_explain_teaches_a_rule_with_its_cures_its_limits_and_its_basis(run: Run) -> None:
    result = run("explain", "sill-too-near-grade")
    wanted = (
        "Why it matters",
        "How to cure it",
        "When to accept it",
        "code floor",
        "Basis",
        "second-hand",
        "A plan that trips it",
    )
    assert (0, []) == (result.status, [word for word in wanted if word not in result.out])


@pytest.mark.parametrize("kind", KINDS)
def test_explain_teaches_every_setting_of_a_kind(run: Run, kind: str) -> None:
    out = run("explain", kind).out
    assert [] == [name for name in settings_of(KINDS[kind]) if name not in out]


@pytest.mark.parametrize(
    ("name", "told"),
    [
        ("sheltered height", "sheltered height of a wall"),
        ("eaves", "reach past the wall face at the eaves, measured level to the drip"),
        ("species", "eastern white pine"),
    ],
)
def test_explain_teaches_a_measure_a_setting_and_the_species(run: Run, name: str, told: str) -> None:
    result = run("explain", *name.split())
    assert (0, True) == (result.status, told in result.out)


@pytest.mark.parametrize(
    ("name", "told"),
    [
        ("sil-too-near-grade", "did you mean “sill-too-near-grade”"),
        ("windwo", "did you mean “window”"),
        ("sheltred height", "did you mean “sheltered height”"),
        ("zzzzzz", "`speclint rulebook` lists the rules"),
    ],
)
def test_explain_names_what_is_nearest_to_a_word_it_does_not_know(run: Run, name: str, told: str) -> None:
    result = run("explain", name)
    assert (3, "", True) == (result.status, result.out, f"knows nothing called “{name}”: {told}" in result.err)


@pytest.mark.parametrize(
    ("words", "told"),
    [
        (("sill-too-near-grade", "a.plan"), "wall west starts 4\" above the ground"),
        (("sill-too-near-grade", "a.plan", "wall west"), "starts of wall west"),
        (("starts", "a.plan"), "4\"  stated, line 1"),
        (("roof", "a.plan"), "nothing there has it"),
        (("eave-too-short", "a.plan", "wall.west"), "the plan does not say"),
    ],
)  # fmt: skip
def test_explain_shows_the_numbers_of_a_plan(run: Run, words: tuple[str, ...], told: str) -> None:
    result = run("explain", *words, a=LOW)
    assert (0, True) == (result.status, told in result.out)


@pytest.mark.parametrize(
    ("words", "status", "told"),
    [
        (("explain", "starts", "a.plan", "wall", "wst"), 3, "did you mean “wall west”?"),
        (("explain", "starts", "gone.plan"), 2, "there is no such file"),
        (("measures",), 3, "name a plan, or ask for --demo"),
        (("measures", "a.plan", "wall", "wst"), 3, "did you mean “wall west”?"),
        (("measures", "gone.plan"), 2, "gone.plan: cannot be read: there is no such file"),
        (("measures", "--demo", "--alternate", "narrow"), 3, "there is no alternate “narrow”; alternates: wide eaves"),
        (("rulebook", "--about", "wal"), 3, "“wal” is not a kind of element: did you mean “wall”?"),
    ],
)
def test_a_name_that_is_not_there_is_told(run: Run, words: tuple[str, ...], status: int, told: str) -> None:
    result = run(*words, a=LOW)
    assert (status, "", True) == (result.status, result.out, told in result.err)


def test_measures_lists_the_numbers_of_every_element(run: Run) -> None:
    out = run("measures", "--demo").out
    assert ["site", "wall south", "gutter north"] == [
        label for label in ("site", "wall south", "gutter north") if f"\n{label}\n" in f"\n{out}"
    ]


@pytest.mark.parametrize("label", ["wall west", "wall.west"])
def test_measures_unfolds_one_element_to_inputs_and_citations(run: Run, label: str) -> None:
    out = run("measures", "--demo", *label.split()).out
    wanted = (
        "sheltered height of wall west",
        "    after ",
        "  stated, line ",
        "is fixed to wall west",
        "wall west stands on foundation main",
    )
    assert ["is fixed to wall west"] == [word for word in wanted if word not in out]


def test_measures_of_a_plan_with_a_mistake_tell_it_and_go_on(run: Run) -> None:
    result = run("measures", "a.plan", a="wall a { heigth 9' }")
    assert (2, "a.plan:1:10: “heigth” is not a setting of a wall (did you mean “height”?)\n", True) == (
        result.status,
        result.err,
        "wall a\n" in result.out,
    )


def test_measures_as_json_unfold_to_inputs(run: Run) -> None:
    found = json.loads(run("measures", "--demo", "--json", "wall", "west").out)
    height = next(one for one in found["elements"]["wall west"] if one["name"] == "sheltered height")
    assert ("computed", True, True) == (height["how"], bool(height["inputs"]), bool(height["citations"]))


def test_the_rulebook_lists_every_rule_once(run: Run) -> None:
    names = [one["name"] for one in json.loads(run("rulebook", "--json").out)]
    assert sorted(rule.name for rule in book().rules) == sorted(names)


def test_the_rulebook_is_filtered_by_words_grade_and_element(run: Run) -> None:
    words = ("rulebook", "grade", "--grade", "hold", "--about", "wall", "--json")
    found = json.loads(run(*words).out)
    assert (True, []) == (
        "sill-too-near-grade" in [one["name"] for one in found],
        [one["name"] for one in found if "hold" not in one["grades"] or "wall" not in one["about"]],
    )


def test_the_rulebook_as_text_ends_with_the_count(run: Run) -> None:
    assert f"{len(book().rules)} rules; `speclint explain NAME` teaches one" == run("rulebook").out.splitlines()[-1]


def test_begin_writes_a_plan_that_has_no_mistake(run: Run, tmp_path: Path) -> None:
    told = run("begin", "house")
    assert (0, True, True) == (
        told.status,
        (tmp_path / "house.plan").is_file(),
        run("review", "house.plan").status in (0, 1),
    )


def test_begin_leaves_alone_what_is_there(run: Run) -> None:
    result = run("begin", "a.plan", a="mine")
    assert (3, "speclint: a.plan is already there; it was left as it is\n", "mine") == (
        result.status,
        result.err,
        Path("a.plan").read_text(),
    )


@pytest.mark.parametrize("name", ["", ".", "/", "gone/house", "a.plan/house", "x" * 300, "a\0b"])
def test_begin_tells_where_it_cannot_write(run: Run, name: str) -> None:
    result = run("begin", name, a="mine")
    assert (3, ["a.plan"], 1) == (result.status, [path.name for path in Path().iterdir()], result.err.count("\n"))


@pytest.mark.parametrize("shell", ["bash", "zsh", "fish"])
def test_completion_knows_every_command_and_option(run: Run, shell: str) -> None:
    result = run("completion", shell)
    wanted = [*_commands(), *(option.lstrip("-") for options in _commands().values() for option in options)]
    assert (0, []) == (result.status, [word for word in wanted if word not in result.out])


@pytest.mark.parametrize("shell", ["bash", "zsh"])
def test_the_completion_script_is_one_that_bash_can_read(run: Run, shell: str) -> None:
    bash = shutil.which("bash")
    assert bash is not None
    done = subprocess.run([bash, "-n"], input=run("completion", shell).out, capture_output=True, text=True)
    assert (0, "") == (done.returncode, done.stderr)


def test_bash_completes_commands_and_options(run: Run) -> None:
    bash = shutil.which("bash")
    assert bash is not None
    script = run("completion", "bash").out + (
        "COMP_WORDS=(speclint re); COMP_CWORD=1; _speclint; echo ${COMPREPLY[@]}\n"
        "COMP_WORDS=(speclint review --al); COMP_CWORD=2; _speclint; echo ${COMPREPLY[@]}\n"
    )
    done = subprocess.run([bash, "--norc"], input=script, capture_output=True, text=True)
    assert "review report\n--alternate\n" == done.stdout


def test_of_many_walls_the_first_are_compared(run: Run, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr("speclint.commands.explain.MOST_COMPARED", 2)
    told = run("explain", "seasoning", "a.plan", a='wall a, b, c { build log round 10"; species lodgepole pine }')
    named = run("explain", "seasoning", "a.plan", "wall", "c")
    assert (0, True) == (told.status, told.out.endswith("  the first 2 of 3 walls; name another to compare it\n"))
    assert (True, False) == ("wall b: " in told.out, "wall c: " in told.out)
    assert (True, False) == ("wall c: " in named.out, "the first" in named.out)
