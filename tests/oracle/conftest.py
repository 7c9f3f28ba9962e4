"""Tests against other programs run only when this folder is named, since they need more than the project does."""

from __future__ import annotations

from pathlib import Path

import pytest


def pytest_ignore_collect(collection_path: Path, config: pytest.Config) -> bool | None:
    named = any(Path(__file__).parent.name in Path(word.split("::")[0]).parts for word in config.args)
    return None if named else True
