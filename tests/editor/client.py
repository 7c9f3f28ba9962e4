"""A small client of the Language Server Protocol: the whole program as a process, and raw messages to it."""

from __future__ import annotations

import json
import queue
import subprocess
import sys
import threading
import time
from pathlib import Path
from typing import Any, Self

PATIENCE = 60.0


class Client:
    """A session with `speclint editor`."""

    def __init__(self, *words: str) -> None:
        command = [sys.executable, "-m", "speclint", "editor", *words]
        pipes = {"stdin": subprocess.PIPE, "stdout": subprocess.PIPE, "stderr": subprocess.PIPE}
        self.process = subprocess.Popen(command, **pipes)  # type: ignore[call-overload]
        self.came: queue.Queue[dict[str, Any] | None] = queue.Queue()
        self.said: list[str] = []
        self.number = 0
        self.answers: dict[Any, dict[str, Any]] = {}
        self.told: dict[str, list[dict[str, Any]]] = {}
        self.ears = [threading.Thread(target=work, daemon=True) for work in (self._listen, self._overhear)]
        for ear in self.ears:
            ear.start()

    def __enter__(self) -> Self:
        return self

    def __exit__(self, *_: object) -> None:
        self.process.kill()
        self.process.wait()
        for ear in self.ears:
            ear.join(10)  # they read to the end of what was said
        for stream in (self.process.stdin, self.process.stdout, self.process.stderr):
            try:
                stream.close()
            except BrokenPipeError:
                continue

    def _listen(self) -> None:
        out = self.process.stdout
        while header := out.readline():
            size = int(header.split(b":")[1])
            while out.readline().strip():
                continue
            self.came.put(json.loads(out.read(size)))
        self.came.put(None)

    def _overhear(self) -> None:
        self.said += [line.decode() for line in self.process.stderr]

    def raw(self, sent: bytes) -> None:
        """Send bytes as they are."""
        self.process.stdin.write(sent)
        self.process.stdin.flush()

    def send(self, message: Any) -> None:
        """Send a message."""
        body = json.dumps(message).encode()
        self.raw(b"Content-Length: %d\r\n\r\n%s" % (len(body), body))

    def notify(self, method: str, **params: Any) -> None:
        """Send a notification."""
        self.send({"jsonrpc": "2.0", "method": method, "params": params})

    def ask(self, method: str, **params: Any) -> Any:
        """The result of a request.

        Raises:
            AssertionError: If it is refused; the argument is the error.
        """
        answer = self.answer(method, params)
        assert "error" not in answer, answer["error"]
        return answer["result"]

    def answer(self, method: str, params: Any) -> dict[str, Any]:
        """The whole answer to a request."""
        self.number += 1
        self.send({"jsonrpc": "2.0", "id": self.number, "method": method, "params": params})
        return self.until(self.number)

    def until(self, number: Any) -> dict[str, Any]:
        """The answer that bears a number, as soon as it comes."""
        while number not in self.answers:
            self.take()
        return self.answers.pop(number)

    def take(self, patience: float = PATIENCE) -> dict[str, Any]:
        """The next message."""
        message = self.came.get(timeout=patience)
        assert message is not None, f"the server is gone: {self.process.wait()} {self.said}"
        if message.get("method") == "textDocument/publishDiagnostics":
            self.told.setdefault(message["params"]["uri"], []).append(message["params"])
        elif isinstance(message.get("id"), int | str):
            self.answers[message["id"]] = message
        return message

    def diagnostics(self, uri: str, version: int | None) -> list[dict[str, Any]]:
        """What is told of a text of a version, as soon as it is."""
        while not any(found.get("version") == version for found in self.told.get(uri, [])):
            self.take()
        return [found for found in self.told[uri] if found.get("version") == version][-1]["diagnostics"]

    def quiet(self, seconds: float) -> None:
        """Take what comes until nothing comes for a while."""
        while True:
            try:
                self.take(seconds)
            except queue.Empty:
                return

    def begin(self, **capabilities: Any) -> dict[str, Any]:
        """Set the session up; what the server can do."""
        result = self.ask("initialize", processId=None, rootUri=None, capabilities=capabilities)
        self.notify("initialized")
        return result["capabilities"]

    def open(self, uri: str, text: str, version: int = 1) -> None:
        """Open a text."""
        self.notify(
            "textDocument/didOpen",
            textDocument={"uri": uri, "languageId": "speclint", "version": version, "text": text},
        )

    def change(self, uri: str, version: int, *changes: dict[str, Any]) -> None:
        """Change a text."""
        self.notify("textDocument/didChange", textDocument={"uri": uri, "version": version}, contentChanges=changes)

    def at(self, method: str, uri: str, line: int, character: int, **more: Any) -> Any:
        """The result of a request about a position."""
        position = {"line": line, "character": character}
        return self.ask(f"textDocument/{method}", textDocument={"uri": uri}, position=position, **more)

    def end(self) -> int:
        """End the session in the proper order; the exit status."""
        self.ask("shutdown")
        self.notify("exit")
        return self.process.wait(PATIENCE)


def wait_for_end(client: Client, seconds: float) -> int:
    """The exit status of a process that is to end by itself."""
    start = time.monotonic()
    while client.process.poll() is None and time.monotonic() - start < seconds:
        time.sleep(0.01)
    status = client.process.poll()
    assert status is not None, "the server did not end"
    return status


def address(path: Path) -> str:
    """The address of a file."""
    return path.as_uri()
