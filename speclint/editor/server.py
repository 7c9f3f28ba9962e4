"""The language server: binds what the other modules know to the Language Server Protocol."""

from __future__ import annotations

import asyncio
import gc
import json
import logging
from collections.abc import Callable
from concurrent.futures import ThreadPoolExecutor
from typing import Any, BinaryIO, TypeVar, cast

from lsprotocol import types as lsp
from pygls.exceptions import FeatureRequestError, JsonRpcException
from pygls.lsp.server import LanguageServer

from speclint import __version__
from speclint.editor.bindings import bind_changes, bind_questions, bind_texts
from speclint.editor.documents import Documents, ReadFile
from speclint.editor.reading import Reading, Settled
from speclint.editor.reviews import Reviews
from speclint.editor.wire import Input, Output, Protocol

T = TypeVar("T")
OWN = (lsp.TEXT_DOCUMENT_DID_OPEN, lsp.TEXT_DOCUMENT_DID_CHANGE, lsp.TEXT_DOCUMENT_DID_CLOSE)


class Server(LanguageServer):
    """One session with one editor.

    Texts are kept by `Documents` and not by pygls, which counts more characters as ends of lines than editors do.
    """

    def __init__(self, settled: Settled, read: ReadFile, trouble: Callable[[str], None]) -> None:
        super().__init__("speclint", __version__, protocol_cls=Protocol)
        self.say = trouble
        self.ended = False
        self.documents = Documents(read)
        self.reviews = Reviews(self.documents, settled, self._publish, self._fault)
        self.cures = ThreadPoolExecutor(1, "cures")
        for method in OWN:
            self.protocol.fm.builtin_features.pop(method)
        bind_texts(self)
        bind_questions(self)
        bind_changes(self)

    async def ask(self, uri: str, work: Callable[[Reading], T]) -> T | None:
        """What some work finds in the text of an address as it stands now, found in the thread of the reviews."""
        reading = self.reviews.reading(uri)
        if reading is None:
            return None
        return await asyncio.get_running_loop().run_in_executor(self.reviews.thread, work, reading)

    def roots(self, uri: str) -> list[Reading]:
        """The plans to which a text belongs: the open plans that use it, or itself where none does."""
        found = [self.reviews.reading(one) for one in self.reviews.users(uri) or [uri]]
        return [reading for reading in found if reading is not None]

    def report_server_error(self, error: Exception, source: Any) -> None:
        """Say on standard error what went wrong, and go on; a refused request is answered, and not told twice."""
        refused = isinstance(error, JsonRpcException) and error.code != lsp.ErrorCodes.InternalError.value
        if source is FeatureRequestError and refused:
            return
        if isinstance(error, json.JSONDecodeError | UnicodeDecodeError | RecursionError):
            cast(Protocol, self.protocol).refuse_text(error)
        what = error.message if isinstance(error, JsonRpcException) else f"{type(error).__name__}: {error}"
        self.say(f"a message was not understood or not answered: {what}")

    def stop(self) -> None:
        """Begin nothing more."""
        self.reviews.stop()
        self.cures.shutdown(wait=False, cancel_futures=True)

    def _publish(self, uri: str, told: list[lsp.Diagnostic], version: int | None) -> None:
        self.text_document_publish_diagnostics(lsp.PublishDiagnosticsParams(uri, told, version))

    def _fault(self, fault: BaseException) -> None:
        self.say(f"a text could not be reviewed: {type(fault).__name__}: {fault}")


def serve(settled: Settled, read: ReadFile, trouble: Callable[[str], None], streams: tuple[BinaryIO, BinaryIO]) -> bool:
    """Hold one session over two streams until the editor ends it or goes away.

    Args:
        settled: What holds for the whole session.
        read: Reads a file from disk; raises `CannotRead`.
        trouble: Tells the user, or the log of the editor, of trouble.
        streams: Where messages come from and where they go.

    Returns:
        Whether the editor ended the session in the proper order.
    """
    logging.getLogger("pygls").setLevel(logging.CRITICAL + 1)  # its traces are no news to the user; trouble is told
    server = Server(settled, read, trouble)
    gc.disable()  # circular garbage is let go between reviews, never within one
    try:
        server.start_io(cast(BinaryIO, Input(streams[0])), cast(BinaryIO, Output(streams[1])))
    finally:
        server.stop()
        gc.unfreeze()
        gc.enable()
    return server.ended
