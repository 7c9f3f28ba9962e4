"""Reviews while a plan is typed: in a thread, a moment after the last change, and only the latest text is told."""

from __future__ import annotations

import asyncio
import gc
from collections.abc import Callable
from concurrent.futures import ThreadPoolExecutor
from typing import Any

from lsprotocol import types as lsp

from speclint.editor.diagnose import diagnostics
from speclint.editor.documents import Documents
from speclint.editor.reading import Reading, Settled

DEBOUNCE = 0.003  # seconds without a change before a review begins
Found = dict[str, list[lsp.Diagnostic]]
Publish = Callable[[str, list[lsp.Diagnostic], int | None], None]


class Reviews:
    """The reviews of every open plan.

    Everything but the reviewing itself happens on the loop of the server, so nothing here is locked. What a plan finds
    in a file that it uses is told there; a file that an open plan uses is not told of as a plan of its own.
    """

    def __init__(
        self, documents: Documents, settled: Settled, publish: Publish, trouble: Callable[[BaseException], None]
    ) -> None:
        self.documents, self.settled, self.publish, self.trouble = documents, settled, publish, trouble
        self.thread = ThreadPoolExecutor(1, "review")
        self.readings: dict[str, Reading] = {}
        self.found: dict[str, Found] = {}
        self.timers: dict[str, asyncio.TimerHandle] = {}
        self.running: set[str] = set()

    def reading(self, uri: str) -> Reading | None:
        """The reading of a text as it stands now; nothing where it is not open."""
        document = self.documents.open.get(uri)
        if document is None:
            return None
        known = self.readings.get(uri)
        if known is None or known.turn != self.documents.turn:
            known = self.readings[uri] = Reading(document, self.documents, self.settled)
        return known

    def users(self, uri: str) -> list[str]:
        """The other open plans that use a file, as they were when last reviewed."""
        return [user for user, found in self.found.items() if user != uri and uri in found]

    def changed(self, uri: str) -> None:
        """Review a text, and the open plans that use it, in a moment."""
        for one in (uri, *self.users(uri)):
            self._later(one)

    def everything(self) -> None:
        """Review every open text anew: files on disk have changed."""
        self.documents.turn += 1
        for uri in self.documents.open:
            self._later(uri)

    def closed(self, uri: str) -> None:
        """Take back what was told of a text that is closed, and review what it used or what uses it."""
        if timer := self.timers.pop(uri, None):
            timer.cancel()
        self.readings.pop(uri, None)
        before = self.found.pop(uri, {})
        for address in {uri, *before}:
            self._tell(address)
        for one in {*before, *self.users(uri)} & set(self.documents.open):
            self._later(one)

    def stop(self) -> None:
        """Begin nothing more."""
        for timer in self.timers.values():
            timer.cancel()
        self.thread.shutdown(wait=False, cancel_futures=True)

    def _later(self, uri: str) -> None:
        if timer := self.timers.pop(uri, None):
            timer.cancel()
        self.timers[uri] = asyncio.get_running_loop().call_later(DEBOUNCE, self._begin, uri)

    def _begin(self, uri: str) -> None:
        del self.timers[uri]
        reading = self.reading(uri)
        if reading is None:
            return
        if uri in self.running:  # what runs is stale by now; begin again when it is done
            self._later(uri)
            return
        self.running.add(uri)
        done = asyncio.get_running_loop().run_in_executor(self.thread, _found, reading)
        done.add_done_callback(lambda future: self._done(reading, future))

    def _done(self, reading: Reading, future: asyncio.Future[Any]) -> None:
        document = reading.document
        self.running.discard(document.uri)
        if future.cancelled():
            return
        self.thread.submit(_let_go_of_garbage)
        if (fault := future.exception()) is not None:
            self.trouble(fault)
        elif self.documents.open.get(document.uri) is not document:
            return
        elif reading.shelf.is_stale(self.documents):  # a file changed before it was known that this plan uses it
            self._later(document.uri)
        else:
            before = self.found.get(document.uri, {})
            self.found[document.uri] = future.result()
            for address in dict.fromkeys((document.uri, *before, *future.result())):
                self._tell(address)

    def _tell(self, address: str) -> None:
        """Publish all that is found in a file, by whichever plan."""
        users = self.users(address)
        sources = users or [address]
        told: list[lsp.Diagnostic] = []
        for source in sources:
            told += [one for one in self.found.get(source, {}).get(address, []) if one not in told]
        document = self.documents.open.get(address)
        self.publish(address, told, document.version if document else None)


def _let_go_of_garbage() -> None:
    """Look for circular garbage; what the first review leaves (rules, tables) stays, and is not looked at again."""
    gc.collect()
    if not gc.get_freeze_count():
        gc.freeze()


def _found(reading: Reading) -> Found:
    """What the review of a reading tells, by address, with an empty list for a used file without findings."""
    told = diagnostics(reading.review, reading.lines_of)
    found: Found = {address: [] for address in reading.shelf.addresses.values() if address}
    for file, here in told.items():
        found.setdefault(reading.address(file), []).extend(here)
    return found
