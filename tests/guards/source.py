"""Checks of the source text, as functions, so that each can be shown to fail on a planted fault."""

from __future__ import annotations

import ast
import re
from pathlib import Path

ROOT = Path(__file__).resolve().parents[2]
EMPTY_CALLS = ("dict", "list", "set", "defaultdict", "Counter")
LONGEST = 400
TEXT_FILES = (".py", ".md", ".lark", ".plan", ".csv", ".toml", ".txt", ".json", "")


def modules() -> list[Path]:
    """Every module of the package."""
    return sorted((ROOT / "speclint").rglob("*.py"))


def test_modules() -> list[Path]:
    """Every module of the tests."""
    return sorted((ROOT / "tests").rglob("*.py"))


def module_state(source: str) -> list[str]:
    """Names at module level that are bound to an empty container to be filled, or declared global in a function."""
    tree = ast.parse(source)
    found = [name for node in ast.walk(tree) if isinstance(node, ast.Global) for name in node.names]
    for node in tree.body:
        value = getattr(node, "value", None)
        if isinstance(node, ast.Assign | ast.AnnAssign) and _is_empty(value):
            targets = node.targets if isinstance(node, ast.Assign) else [node.target]
            found += [ast.unparse(target) for target in targets]
    return found


def _is_empty(value: ast.expr | None) -> bool:
    if isinstance(value, ast.Dict | ast.List | ast.Set):
        return not (value.keys if isinstance(value, ast.Dict) else value.elts)
    return isinstance(value, ast.Call) and ast.unparse(value.func).split(".")[-1] in EMPTY_CALLS and not value.args


def swallowed(source: str) -> list[int]:
    """Lines with an `except` that names no error, or one so broad that it hides faults of the program."""
    found = []
    for node in ast.walk(ast.parse(source)):
        if isinstance(node, ast.ExceptHandler):
            bare = node.type is None or ast.unparse(node.type) in ("Exception", "BaseException")
            if bare and not any(isinstance(part, ast.Raise) for part in ast.walk(node)):
                found.append(node.lineno)
    return found


def toothless(source: str) -> list[str]:
    """Tests that can skip a case, cannot fail, or expect failure without a reason."""
    found = []
    for node in ast.walk(ast.parse(source)):
        if isinstance(node, ast.FunctionDef) and node.name.startswith("test_"):
            own = [part for part in ast.walk(node) if not isinstance(part, ast.FunctionDef) or part is node]
            if any(isinstance(part, ast.Return) and part.value is None for part in own):
                found.append(f"{node.name} returns early")
            if not any(isinstance(part, ast.Assert | ast.With | ast.Call) for part in own):
                found.append(f"{node.name} asserts nothing")
        if isinstance(node, ast.Call):
            called = ast.unparse(node.func)
            if called.endswith((".skip", ".skipif", "importorskip")):
                found.append(f"line {node.lineno}: {called}")
            if called.endswith(".xfail"):
                words = {keyword.arg for keyword in node.keywords}
                if not {"strict", "reason"} <= words:
                    found.append(f"line {node.lineno}: xfail without strict and reason")
    return found


def project_files() -> list[Path]:
    """Every text file that belongs to the project."""
    import subprocess

    listed = subprocess.run(
        ["git", "ls-files", "--cached", "--others", "--exclude-standard"], cwd=ROOT, capture_output=True, text=True
    )
    names = listed.stdout.splitlines()
    return [ROOT / name for name in names if Path(name).suffix in TEXT_FILES and (ROOT / name).is_file()]


# Paths of a machine and hosts of registries; written apart so that this file does not hold them.
FORBIDDEN = re.compile(
    "|".join(("/wo" + r"rk/", "/tm" + r"p/[a-z]", "pypi" + r"\.org", "registry" + r"\.npm", "deb" + r"\.debian"))
)


def forbidden_words(text: str) -> list[str]:
    """Paths of a machine and addresses of registries in a text."""
    return FORBIDDEN.findall(text)
