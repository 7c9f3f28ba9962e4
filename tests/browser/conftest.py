"""Debian's chromium, driven without a network: one browser for all tests, a fresh page for each."""

from __future__ import annotations

import shutil
from collections.abc import Iterator
from dataclasses import dataclass, field
from pathlib import Path

import pytest
from playwright.sync_api import Browser, Page, sync_playwright

from speclint.report.build import report_page
from tests.laws.houses import example
from tests.report.test_report import material

QUIET = [
    "--no-sandbox",
    "--disable-gpu",
    "--disable-quic",
    "--no-first-run",
    "--disable-background-networking",
    "--disable-component-update",
    "--disable-sync",
]


@pytest.fixture(scope="session")
def browser() -> Iterator[Browser]:
    found = shutil.which("chromium")
    assert found, "these tests need Debian's chromium: apt-get install chromium, or sh .ci/tasks setup as root"
    with sync_playwright() as playwright:
        opened = playwright.chromium.launch(executable_path=found, args=QUIET)
        yield opened
        opened.close()


@dataclass
class Seen:
    """A page, with all that it said on its console and asked of the network."""

    page: Page
    said: list[str] = field(default_factory=list)
    asked: list[str] = field(default_factory=list)


@pytest.fixture
def seen(browser: Browser) -> Iterator[Seen]:
    page = browser.new_page(viewport={"width": 1280, "height": 900})
    found = Seen(page)
    page.on("console", lambda message: found.said.append(message.text))
    page.on("pageerror", lambda trouble: found.said.append(str(trouble)))
    page.on("request", lambda request: found.asked.append(request.url))
    yield found
    page.close()


@pytest.fixture(scope="session")
def house(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The report of the demo plan, as a file."""
    path = tmp_path_factory.mktemp("report") / "house.html"
    path.write_text(report_page(material(example("tamarack-point"))), encoding="utf-8")
    return path
