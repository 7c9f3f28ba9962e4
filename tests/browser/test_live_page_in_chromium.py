"""The live page in a real browser: it follows a saved plan within a second, and survives a broken edit."""

from __future__ import annotations

import subprocess
import sys
from collections.abc import Iterator
from pathlib import Path

import pytest

from tests.browser.conftest import Seen
from tests.laws.houses import example


@pytest.fixture
def served(tmp_path: Path) -> Iterator[tuple[str, Path]]:
    """A running `speclint watch`: its address, and the plan that it follows."""
    plan = tmp_path / "house.plan"
    plan.write_text(example("tamarack-point"), encoding="utf-8")
    command = [sys.executable, "-m", "speclint", "watch", str(plan)]
    with subprocess.Popen(command, stdout=subprocess.PIPE, text=True) as running:
        assert running.stdout is not None
        yield running.stdout.readline().strip(), plan
        running.terminate()


def test_a_saved_change_is_seen_and_the_layer_is_kept(seen: Seen, served: tuple[str, Path]) -> None:
    address, plan = served
    seen.page.goto(address)
    seen.page.get_by_role("radio", name="Sun").check()
    west = "wall west  { faces W 10 S;  length "
    plan.write_text(example("tamarack-point").replace(f"{west}30'", f"{west}37'"))
    seen.page.locator("#wall-wall-west", has_text="37'-0").wait_for(timeout=9000)
    assert seen.page.get_by_role("radio", name="Sun").is_checked()


def test_a_broken_edit_keeps_the_last_good_page_with_the_mistake(seen: Seen, served: tuple[str, Path]) -> None:
    address, plan = served
    seen.page.goto(address)
    plan.write_text(example("tamarack-point").replace("gables east, west", "gablez east, west"))
    seen.page.wait_for_selector(".broken:not([hidden])", timeout=8000)
    assert "gablez" in seen.page.locator(".broken").inner_text()
    assert seen.page.locator("#finding-1").is_visible()
    plan.write_text(example("tamarack-point"))
    seen.page.wait_for_selector(".broken", state="hidden", timeout=8000)
