"""The documentation site: its commands run, and its made pages hold what the program knows."""

from __future__ import annotations

import csv
import importlib.util
import re
import shlex
from pathlib import Path
from types import ModuleType

import pytest

from speclint.commands.main import main
from speclint.measures.register import measures
from tests.guards.generated import ROOT, readme_plan

FENCE = re.compile(r"```sh\n(.*?)```", re.DOTALL)


def site() -> ModuleType:
    spec = importlib.util.spec_from_file_location("make_site", ROOT / "docs" / "make.py")
    assert spec is not None
    assert spec.loader is not None
    found = importlib.util.module_from_spec(spec)
    spec.loader.exec_module(found)
    return found


def pages() -> list[str]:
    return sorted(path.name for path in (ROOT / "docs" / "pages").glob("*.md"))


@pytest.mark.parametrize("page", ["designer.md", "reviewer.md", "trainer.md"])
def test_every_command_of_a_tutorial_runs(page: str, tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.chdir(tmp_path)
    (tmp_path / "house.plan").write_text(readme_plan(), encoding="utf-8")
    text = (ROOT / "docs" / "pages" / page).read_text(encoding="utf-8")
    commands = [line for block in FENCE.findall(text) for line in block.splitlines()]
    assert len(commands) >= 3
    assert [] == [line for line in commands if main(shlex.split(line)[1:]) not in (0, 1)]


def test_the_page_of_trust_counts_every_checked_value() -> None:
    rows = 0
    for path in (ROOT / "tests" / "published" / "cases").glob("*.csv"):
        with path.open(encoding="utf-8", newline="") as opened:
            rows += len(list(csv.DictReader(opened)))
    counted = re.findall(r"^\| [^|]+ \| (\d+) \| \d+ \w", site().trust_page(), re.MULTILINE)
    assert rows == sum(map(int, counted))


def test_the_page_of_measures_holds_every_quantity_and_every_equation() -> None:
    page = site().measures_page()
    assert [] == [name for found in measures().values() for name in found if f"| {name} |" not in page]
    assert page.count("Sources:") >= 150


def test_every_page_of_the_site_is_in_its_list() -> None:
    listed = set(re.findall(r": ([\w/]+\.md)$", (ROOT / "docs" / "mkdocs.yml").read_text("utf-8"), re.MULTILINE))
    assert listed == {*pages(), "language.md", "measures.md", "trust.md", "rules/README.md"}
