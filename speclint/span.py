"""Places in the user's files."""

from __future__ import annotations

import os
from typing import NamedTuple


class Span(NamedTuple):
    """A stretch of one line of a file; lines and columns count from 1, columns in code points."""

    file: str
    line: int
    column: int
    length: int = 1

    def __str__(self) -> str:
        return f"{self.file}:{self.line}:{self.column}"


NOWHERE = Span("", 0, 0, 0)


def path_beside(plan: str, file: str) -> str:
    """A file of a plan, the plan itself or one that it uses, by the path that leads to it from where the command runs.

    Args:
        plan: The plan as it was named.
        file: The plan, or a file that it uses, named relative to the folder of the plan; empty for the plan.
    """
    return plan if file in ("", plan) else os.path.join(os.path.dirname(plan), file).replace(os.sep, "/")
