"""Standard input and output as the Language Server Protocol runs over them, whatever comes in.

A header in another case or behind stray bytes is understood; a message too large to hold is passed over; a message that
cannot be understood is answered with an error where it has a number, and otherwise let go.
"""

from __future__ import annotations

import json
import re
from typing import Any, BinaryIO

from lsprotocol import types as lsp
from pygls.exceptions import JsonRpcException, JsonRpcInvalidRequest
from pygls.protocol import LanguageServerProtocol

MOST_BYTES = 64_000_000
_LONGEST_HEADER = 65_536
_LENGTH = re.compile(rb"content-length[ \t]*:[ \t]*(\d{1,18})[ \t]*\r?\n?\Z", re.IGNORECASE)
_TOO_LARGE = b'"a message too large to hold"'


class Input:
    """Messages from standard input; a stream that fails is one that has ended."""

    def __init__(self, stream: BinaryIO) -> None:
        self._stream = stream

    def readline(self) -> bytes:
        """The next line of a header, the length of a message in the form that the protocol prescribes."""
        try:
            line = self._stream.readline(_LONGEST_HEADER)
        except (OSError, ValueError):
            return b""
        found = _LENGTH.search(line)
        return b"Content-Length: " + found[1] + b"\r\n" if found else line

    def read(self, size: int) -> bytes:
        """The next message."""
        try:
            if size <= MOST_BYTES:
                return self._stream.read(size)
            while size > 0 and (passed := self._stream.read(min(size, 1_000_000))):
                size -= len(passed)
        except (OSError, ValueError):
            return b""
        return _TOO_LARGE


class Output:
    """Messages to standard output; an editor that has gone away hears nothing more."""

    def __init__(self, stream: BinaryIO) -> None:
        self._stream = stream
        self.gone = False

    def write(self, message: bytes) -> None:
        """Send a message."""
        if self.gone:
            return
        try:
            self._stream.write(message)
            self._stream.flush()
        except (OSError, ValueError):
            self.gone = True

    def flush(self) -> None:
        """Nothing is held back."""

    def close(self) -> None:
        """Send nothing more; the stream itself is closed by who opened it."""
        self.gone = True


class Protocol(LanguageServerProtocol):
    """The protocol, with an answer to every request, also to one that cannot be understood or comes at a wrong time."""

    def structure_message(self, data: dict[str, Any]) -> Any:
        """A message from its plain form.

        Raises:
            JsonRpcException: If it is none; who asked is told.
        """
        number = data.get("id")
        asks = isinstance(number, int | str) and "method" in data and "jsonrpc" in data
        try:
            message = super().structure_message(data)
            if asks and not hasattr(message, "id"):
                raise JsonRpcInvalidRequest(f"“{data['method']}” is told and not asked; it takes no number")
            return message
        except JsonRpcException as trouble:
            if asks:
                what = trouble.message if isinstance(trouble, JsonRpcInvalidRequest) else ""
                self._refuse(number, trouble.code, what or f"“{data['method']}” cannot be understood")
            raise

    def handle_message(self, message: Any) -> None:
        """Hand a message on, unless it comes before the session is set up or after it is ended."""
        number, method = getattr(message, "id", None), getattr(message, "method", None)
        early = self._workspace is None and method not in (lsp.INITIALIZE, lsp.EXIT)
        if early and number is not None and method is not None:
            self._refuse(number, lsp.ErrorCodes.ServerNotInitialized, "the session is not set up yet")
        elif self._shutdown and number is not None and method is not None:
            self._refuse(number, lsp.ErrorCodes.InvalidRequest, "the session is ended")
        elif not early:
            super().handle_message(message)

    def refuse_text(self, trouble: json.JSONDecodeError | UnicodeDecodeError | RecursionError) -> None:
        """Answer a message that is no JSON."""
        self._refuse(None, lsp.ErrorCodes.ParseError, f"the message is no JSON: {trouble}")

    def _refuse(self, number: int | str | None, code: int, says: str) -> None:
        error = lsp.ResponseError(int(code), says)
        self._send_data(lsp.ResponseErrorMessage(number, error))
