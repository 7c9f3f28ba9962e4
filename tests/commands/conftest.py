"""Running speclint: in this process, and as a program of its own."""

from __future__ import annotations

import os
import subprocess
import sys
from collections.abc import Callable
from dataclasses import dataclass
from pathlib import Path
from typing import Any

import pytest

from speclint.commands.main import main

ROOT = Path(__file__).resolve().parents[2]
# All the facts of a lot that the rulebook wants, on one line behind the plan proper, so that places stay as they are.
LOT = (
    'site { weather "Duluth, MN"; rain intensity 4 in/h; ground snow 60 psf; frost depth 60"; ice barrier yes; '
    "termites slight }\n"
)


@dataclass(frozen=True, slots=True)
class Told:
    """What a run gave: exit status, standard output, standard error."""

    status: int
    out: str
    err: str


Run = Callable[..., Told]


@pytest.fixture
def run(capsys: pytest.CaptureFixture[str], tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Run:
    """Run speclint in this process, in an empty folder; named texts and bytes are written there as files first."""
    monkeypatch.chdir(tmp_path)

    def ran(*words: str, **files: str | bytes) -> Told:
        for name, text in files.items():
            path = tmp_path / f"{name}.plan"
            path.write_bytes(text if isinstance(text, bytes) else text.encode())
        status = main(list(words))
        told = capsys.readouterr()
        return Told(status, told.out, told.err)

    return ran


@pytest.fixture
def start(tmp_path: Path) -> Run:
    """Run speclint as a program of its own, in an empty folder."""

    def ran(*words: str, given: bytes = b"", environment: dict[str, str] | None = None, **more: Any) -> Told:
        done = subprocess.run(
            [sys.executable, "-m", "speclint", *words],
            cwd=tmp_path,
            input=given,
            capture_output=True,
            env={**os.environ, "PYTHONPATH": str(ROOT), "PYTHONIOENCODING": "utf-8", **(environment or {})},
            timeout=120,
            **more,
        )
        return Told(done.returncode, done.stdout.decode("utf-8", "replace"), done.stderr.decode("utf-8", "replace"))

    return ran
