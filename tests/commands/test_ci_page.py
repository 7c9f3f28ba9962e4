"""What the page for build servers shows runs, and the hook is what it says."""

from __future__ import annotations

import re
import shlex
import subprocess
from pathlib import Path

import pytest

from speclint.commands.main import main
from speclint.commands.words import parser
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


def test_the_hook_names_a_command_and_the_files_that_it_is_for() -> None:
    told = dict(re.findall(r"^[- ] (\w+): (.+)$", (ROOT / ".pre-commit-hooks.yaml").read_text("utf-8"), re.MULTILINE))
    stated = parser().parse_args([*told["entry"].split()[1:], "a.plan", "b/c.plan"])
    assert ("speclint-review", "python", ["a.plan", "b/c.plan"], True) == (
        told["id"],
        told["language"],
        stated.plans,
        stated.brief,
    )
    assert [True, True, False] == [bool(re.search(told["files"], name)) for name in ("a.plan", "b/c.plan", "plan.md")]
