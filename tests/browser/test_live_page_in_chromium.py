"""The live page in a real browser: it follows a saved plan within a second, and survives a broken edit."""

from __future__ import annotations

import subprocess
import sys
from collections.abc import Iterator
from pathlib import Path

import pytest
from playwright.sync_api import Route

from tests.browser.conftest import Seen
from tests.laws.houses import example

BROKEN = example("tamarack-point").replace("gables east, west", "gablez east, west")


@pytest.fixture
def served(tmp_path: Path, request: pytest.FixtureRequest) -> Iterator[tuple[str, Path]]:
    """A running `speclint watch`: its address, and the plan that it follows."""
    plan = tmp_path / "house.plan"
    plan.write_text(getattr(request, "param", example("tamarack-point")), encoding="utf-8")
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
    plan.write_text(BROKEN)
    seen.page.wait_for_selector(".broken:not([hidden])", timeout=8000)
    assert "gablez" in seen.page.locator(".broken").inner_text()
    assert seen.page.locator("#finding-1").is_visible()
    plan.write_text(example("tamarack-point"))
    seen.page.wait_for_selector(".broken", state="hidden", timeout=8000)


@pytest.mark.parametrize("served", [BROKEN], indirect=True)
def test_a_plan_that_was_never_whole_is_followed_too(seen: Seen, served: tuple[str, Path]) -> None:
    address, plan = served
    seen.page.goto(address)
    seen.page.wait_for_selector(".broken:not([hidden])", timeout=8000)
    assert "this page shows what could be read" in seen.page.locator(".broken").inner_text()
    west = "wall west  { faces W 10 S;  length "
    plan.write_text(BROKEN.replace(f"{west}30'", f"{west}37'"))
    seen.page.locator("#wall-wall-west", has_text="37'-0").wait_for(timeout=9000)


def test_a_change_before_the_page_is_connected_is_seen(seen: Seen, served: tuple[str, Path]) -> None:
    address, plan = served
    west = "wall west  { faces W 10 S;  length "

    def save_first(route: Route) -> None:
        plan.write_text(example("tamarack-point").replace(f"{west}30'", f"{west}37'"))
        seen.page.wait_for_timeout(3000)
        route.continue_()

    seen.page.route("**/changes", save_first, times=1)
    seen.page.goto(address)
    seen.page.locator("#wall-wall-west", has_text="37'-0").wait_for(timeout=9000)
