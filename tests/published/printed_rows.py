"""The printed rows in `cases/`, as test parameters."""

from __future__ import annotations

import csv
from pathlib import Path
from typing import Any

import pytest

FOLDER = Path(__file__).parent / "cases"


def rows(name: str) -> list[dict[str, str]]:
    """The rows of one file of cases."""
    with (FOLDER / f"{name}.csv").open(encoding="utf-8", newline="") as file:
        return list(csv.DictReader(file))


def cases(name: str) -> list[Any]:
    """The rows of one file of cases; a row with a known disagreement is expected to fail.

    Raises:
        LookupError: If the file holds no row.
    """
    found = [
        pytest.param(
            row,
            id=row["case"],
            marks=[pytest.mark.xfail(strict=True, reason=row["disagrees"])] if row.get("disagrees") else [],
        )
        for row in rows(name)
    ]
    if not found:
        raise LookupError(f"wanted rows in {name}.csv; got none")
    return found
