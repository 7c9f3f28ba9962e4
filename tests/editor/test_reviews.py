"""Reviews while texts change: the last word is about the last texts."""

from __future__ import annotations

import asyncio
from concurrent.futures import ThreadPoolExecutor
from typing import Any

from lsprotocol import types as lsp

from speclint.editor.documents import Document, Documents
from speclint.editor.reviews import Reviews
from tests.editor.given import nothing_on_disk, settled

HOUSE, SHARED = "file:///plans/house.plan", "file:///plans/shared.plan"


class Desk:
    """Two open texts, and what was told of them last."""

    def __init__(self) -> None:
        self.told: dict[str, list[str]] = {}
        self.faults: list[BaseException] = []
        self.documents = Documents(nothing_on_disk)
        self.reviews = Reviews(self.documents, settled(), self.publish, self.faults.append)

    def publish(self, uri: str, told: list[lsp.Diagnostic], version: int | None) -> None:
        self.told[uri] = [one.message.split("\n")[0] for one in told if one.code == "mistake"]

    def put(self, uri: str, text: str) -> None:
        """Put a text in the place of another, as an editor does."""
        self.documents.put(Document(uri, text, 1))
        self.reviews.changed(uri)

    async def rest(self) -> None:
        """Wait until nothing is under way."""
        while self.reviews.timers or self.reviews.running:
            await asyncio.sleep(0.001)


def told_after(change: Any) -> dict[str, list[str]]:
    """What is told in the end where a change is made while a plan is reviewed that has just come to use a file."""

    async def work() -> Desk:
        desk = Desk()
        desk.put(HOUSE, "wall a { faces S }")
        desk.put(SHARED, "typical wall { hieght 9' }")
        await desk.rest()
        desk.put(HOUSE, 'use "shared.plan"\nwall a { faces S }')
        while HOUSE not in desk.reviews.running:
            await asyncio.sleep(0)
        change(desk)
        await desk.rest()
        desk.reviews.stop()
        return desk

    with ThreadPoolExecutor(1) as threads:  # a thread in which no other test's event loop runs
        desk = threads.submit(lambda: asyncio.run(work())).result()
    assert [] == desk.faults
    return desk.told


def test_a_used_file_is_told_of_as_it_was_read() -> None:
    found = told_after(lambda desk: None)
    assert {HOUSE: [], SHARED: ["“hieght” is not a setting of a wall"]} == found


def test_a_file_that_changes_while_a_plan_comes_to_use_it_is_read_again() -> None:
    found = told_after(lambda desk: desk.put(SHARED, "typical wall { lenght 9' }"))
    assert {HOUSE: [], SHARED: ["“lenght” is not a setting of a wall"]} == found
