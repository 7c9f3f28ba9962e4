"""What the page for build servers shows runs, and the hook is what it says."""

from __future__ import annotations

import re
import shlex
import subprocess
from pathlib import Path

import pytest

from speclint.commands.main import main
from tests.commands.conftest import ROOT

PLAN = 'wall west { build log round 10"; starts 4" }\n'
FENCE = re.compile(r"```sh\n(.*?)```", re.DOTALL)


def commands() -> list[list[str]]:
    text = (ROOT / "docs" / "pages" / "ci.md").read_text(encoding="utf-8")
    lines = [line for block in FENCE.findall(text) for line in block.splitlines()]
    shown = [line.replace("\"$(date -d '+30 days' +%F)\"", "2027-03-01") for line in lines if "speclint " in line]
    return [shlex.split(line[line.index("speclint ") :]) for line in shown if "install" not in line]


@pytest.mark.parametrize("words", commands(), ids=" ".join)
def test_every_command_of_the_page_runs(words: list[str], tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.chdir(tmp_path)
    for name in ("plans", "plans-as-released"):
        (tmp_path / name).mkdir()
        (tmp_path / name / "house.plan").write_text(PLAN)
    git = ["git", "-c", "user.name=A", "-c", "user.email=a@example.org"]
    for asked in (["init", "-q", "-b", "main"], ["add", "."], ["commit", "-q", "-m", "plans"]):
        subprocess.run([*git, *asked], check=True)
    named = words[1:] if any(word.startswith("plans") for word in words) else [*words[1:], "plans"]
    expected = 0 if "--worse" in words else 1
    assert expected == main(named)


def test_the_page_shows_commands() -> None:
    assert len(commands()) >= 6


def hooks() -> list[dict[str, str]]:
    text = (ROOT / ".pre-commit-hooks.yaml").read_text("utf-8")
    return [dict(re.findall(r"^ *(\w+): (.+)$", one, re.MULTILINE)) for one in re.split(r"^- ", text, flags=re.M)[1:]]


def test_the_hooks_are_two_and_made_with_python() -> None:
    assert ["speclint-review", "speclint-worse"] == [one["id"] for one in hooks()]
    assert {("python", "false")} == {(one["language"], one["pass_filenames"]) for one in hooks()}
    for one in hooks():
        assert [True, True, False] == [
            bool(re.search(one["files"], name)) for name in ("a.plan", "b/c.plan", "plan.md")
        ]


TYPICALS = 'typical wall { build log round 10"; starts 20" }\n'


@pytest.mark.parametrize("hook", hooks(), ids=[one["id"] for one in hooks()])
def test_a_hook_judges_the_plan_that_uses_what_changed(
    hook: dict[str, str], tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    monkeypatch.chdir(tmp_path)
    shared = tmp_path / "typicals.plan"
    shared.write_text(TYPICALS)
    (tmp_path / "house.plan").write_text('use "typicals.plan"\nwall west { faces W }\n')
    packages = tmp_path / "venv" / "lib"
    packages.mkdir(parents=True)
    (tmp_path / "venv" / "pyvenv.cfg").write_text("")
    (packages / "other.plan").write_text(PLAN)
    git = ["git", "-c", "user.name=A", "-c", "user.email=a@example.org"]
    for asked in (["init", "-q"], ["add", "house.plan", "typicals.plan"], ["commit", "-q", "-m", "plans"]):
        subprocess.run([*git, *asked], check=True)
    shared.write_text(TYPICALS.replace('20"', '4"'))
    assert main(hook["entry"].split()[1:]) == 1
    told = capsys.readouterr().out
    assert ("sill-too-near-grade" in told, "typicals.plan: " in told, "other.plan" in told) == (True, False, False)
