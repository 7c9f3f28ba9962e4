"""The documents are true: their plans are read without a mistake, their commands run."""

from __future__ import annotations

import re
from io import BytesIO, TextIOWrapper
from pathlib import Path

import pytest

from speclint.commands.main import main
from speclint.language.parse import parse
from speclint.model.build import build
from speclint.model.kinds import KINDS
from tests.guards.generated import ROOT, readme_plan

FENCE = re.compile(r"```plan\n(.*?)```", re.DOTALL)


def plans(name: str) -> list[str]:
    return FENCE.findall((ROOT / name).read_text(encoding="utf-8"))


def mistakes(text: str) -> list[str]:
    tree = parse(text, "a document")
    return [mistake.message for mistake in (*tree.mistakes, *build([tree], "a document")[1])]


def test_the_plan_of_the_readme_is_read_without_a_mistake() -> None:
    assert [] == mistakes(readme_plan())


def test_every_plan_of_the_language_reference_is_read_without_a_mistake() -> None:
    shown = plans("grammar/language-reference.md")
    stands_alone = "wall east { }\nroof main { }\n"
    assert (3, []) == (len(shown), [told for text in shown for told in mistakes(stands_alone + text)])


def commands() -> list[str]:
    return re.findall(r"^\| `(speclint [^`]+)` \|", (ROOT / "README.md").read_text(encoding="utf-8"), re.MULTILINE)


def test_the_readme_shows_every_command() -> None:
    from speclint.commands.completion import _commands

    assert set(_commands()) == {command.split()[1] for command in commands()}


@pytest.mark.parametrize("command", commands())
def test_every_command_of_the_readme_runs(command: str, tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.chdir(tmp_path)
    words = command.replace("NAME", "sill-too-near-grade").split()[1:]
    if words[0] != "begin":
        (tmp_path / "house.plan").write_text(readme_plan(), encoding="utf-8")
    monkeypatch.setattr("sys.stdin", TextIOWrapper(BytesIO()))  # an editor that has gone
    monkeypatch.setattr("uvicorn.Server.run", lambda server, sockets: [held.close() for held in sockets])  # no end else
    assert main(words) in (0, 1)


@pytest.mark.parametrize("kind", KINDS)
def test_every_kind_of_element_can_be_explained(kind: str, capsys: pytest.CaptureFixture[str]) -> None:
    assert 0 == main(["explain", kind])
    assert capsys.readouterr().out.startswith(kind)
