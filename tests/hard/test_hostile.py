"""Plans made to break speclint, at a small size; `python -m tests.hard.hostile` runs them at a large one."""

from __future__ import annotations

import pytest

from tests.hard.hostile import plans, tried

SIZE = 60
SECONDS = 60.0  # of work, for all commands together


@pytest.mark.parametrize("name", plans(SIZE))
def test_a_hostile_plan_breaks_no_command(name: str) -> None:
    outcome = tried(plans(SIZE)[name](), SECONDS)
    assert outcome.well, outcome.said
    assert outcome.memory < 700


def test_what_breaks_a_command_is_told() -> None:
    """A plan that cannot be told in time is not well: the bounds are there."""
    outcome = tried(plans(1500)["walls under one roof"](), 1.0)
    assert not outcome.well
