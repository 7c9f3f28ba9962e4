"""The repository about itself. Each guard is shown to fail on a planted fault, and to have looked at something."""

from __future__ import annotations

import os
import shutil
import subprocess
import sys
from pathlib import Path

import pytest

from speclint.paths import SHIPPED
from tests.guards import source
from tests.guards.generated import GENERATED

ROOT = source.ROOT
TOP = {
    "README.md", "DEVELOPERS.md", "pyproject.toml", "speclint", "grammar", "rules", "tests", "specs", "shared",
    "LICENSE", "CHANGELOG.md", "constraints.txt", "benchmarks", "docs",
}  # fmt: skip


def test_no_module_holds_state() -> None:
    looked = source.modules()
    assert 50 < len(looked)
    assert {} == {path.name: found for path in looked if (found := source.module_state(path.read_text("utf-8")))}


@pytest.mark.parametrize("fault", ["CACHE = {}", "seen: list[str] = []", "def f():\n    global x\n    x = 1"])
def test_the_guard_against_module_state_bites(fault: str) -> None:
    assert source.module_state(fault)


def test_no_error_is_swallowed() -> None:
    assert {} == {path.name: found for path in source.modules() if (found := source.swallowed(path.read_text("utf-8")))}


def test_the_guard_against_swallowed_errors_bites() -> None:
    assert [3] == source.swallowed("try:\n    f()\nexcept Exception:\n    pass\n")


def test_every_test_can_fail() -> None:
    looked = source.test_modules()
    assert 10 < len(looked)
    assert {} == {path.name: found for path in looked if (found := source.toothless(path.read_text("utf-8")))}


@pytest.mark.parametrize(
    "fault",
    [
        "def test_a():\n    if x:\n        return\n    assert y\n",
        "import pytest\npytest.skip('no')\n",
        "import pytest\n@pytest.mark.xfail(reason='x')\ndef test_a():\n    assert 1 == 2\n",
    ],
)
def test_the_guard_against_toothless_tests_bites(fault: str) -> None:
    assert source.toothless(fault)


def test_no_module_is_longer_than_the_ceiling() -> None:
    long = {
        path.name: n for path in source.modules() if (n := len(path.read_text("utf-8").splitlines())) > source.LONGEST
    }
    assert {} == long


def test_no_file_names_a_machine_or_a_registry() -> None:
    looked = source.project_files()
    assert 100 < len(looked)
    assert {} == {
        str(path.relative_to(ROOT)): found
        for path in looked
        if (found := source.forbidden_words(path.read_text("utf-8")))
    }


def test_the_guard_against_machine_paths_bites() -> None:
    assert source.forbidden_words("see /wo" + "rk/main")


def test_the_top_of_the_repository_is_as_agreed() -> None:
    listed = subprocess.run(["git", "ls-files"], cwd=ROOT, capture_output=True, text=True, check=True).stdout
    assert TOP == {name.split("/")[0] for name in listed.splitlines() if not name.startswith(".")}


@pytest.mark.parametrize("name", sorted(GENERATED))
def test_generated_files_are_up_to_date(name: str) -> None:
    assert GENERATED[name]() == (ROOT / name).read_text(encoding="utf-8")


def lint_imports(folder: Path) -> subprocess.CompletedProcess[str]:
    command = shutil.which("lint-imports", path=f"{Path(sys.executable).parent}{os.pathsep}{os.environ['PATH']}")
    assert command is not None
    return subprocess.run(
        [command, "--no-cache"],
        cwd=folder,
        capture_output=True,
        text=True,
        env={**os.environ, "PYTHONPATH": str(folder)},
    )


@pytest.mark.parametrize(
    ("module", "line"),
    [
        ("science/ice.py", "from speclint.units import show"),
        ("model/home.py", "from speclint.review.judge import judge"),
        ("review/judge.py", "import networkx"),
        ("unplaced.py", "pass"),
    ],
)
def test_the_import_contracts_bite(tmp_path: Path, module: str, line: str) -> None:
    shutil.copytree(ROOT / "speclint", tmp_path / "speclint", ignore=shutil.ignore_patterns("__pycache__"))
    shutil.copy(ROOT / ".importlinter", tmp_path)
    target = tmp_path / "speclint" / module
    target.write_text((target.read_text("utf-8") if target.exists() else "") + f"\n{line}\n", encoding="utf-8")
    assert 0 != lint_imports(tmp_path).returncode


def run_from(folder: Path, where: Path) -> str:
    code = (
        "import speclint; from speclint.commands.main import main; print(speclint.__file__); main(['review', '--demo'])"
    )
    environment = {**os.environ, "PYTHONPATH": str(folder), "SPECLINT_CACHE": str(where / "cache")}
    done = subprocess.run(
        [sys.executable, "-P", "-c", code], cwd=where, env=environment, capture_output=True, text=True, check=True
    )
    return done.stdout


@pytest.mark.parametrize("kind", ["wheel", "sdist"])
def test_a_built_package_finds_all_that_ships_with_it(tmp_path: Path, kind: str) -> None:
    built = tmp_path / "built"
    command = [sys.executable, "-m", "build", "--no-isolation", "--outdir", str(built), str(ROOT)]
    if kind == "wheel":
        command.insert(3, "--wheel")
    subprocess.run(command, check=True, capture_output=True)
    (wheel,) = built.glob("*.whl")
    target = tmp_path / "site"
    shutil.unpack_archive(wheel, target, "zip")
    told = run_from(target, tmp_path)
    assert (str(target), True) == (str(Path(told.splitlines()[0]).parents[1]), "PLAN REVIEW" in told)


def test_a_wheel_holds_every_shipped_folder(tmp_path: Path) -> None:
    command = [sys.executable, "-m", "build", "--no-isolation", "--wheel", "--outdir", str(tmp_path), str(ROOT)]
    subprocess.run(command, check=True, capture_output=True)
    (wheel,) = tmp_path.glob("*.whl")
    shutil.unpack_archive(wheel, tmp_path / "site", "zip")
    assert set(SHIPPED) <= {entry.name for entry in (tmp_path / "site" / "speclint" / "_data").iterdir()}
