"""The command before and behind a session."""

from __future__ import annotations

import io
import sys
from concurrent.futures import ThreadPoolExecutor

import pytest

from speclint.commands.main import main


class Standard(io.StringIO):
    """A standard stream with bytes below it."""

    def __init__(self, raw: bytes = b"", terminal: bool = False) -> None:
        super().__init__()
        self.buffer, self.terminal = io.BytesIO(raw), terminal

    def isatty(self) -> bool:
        return self.terminal


def status_of_a_session() -> int:
    """The status of a session in a thread of its own, where no other test's event loop runs."""
    with ThreadPoolExecutor(1) as threads:
        return threads.submit(main, ["editor"]).result()


def test_a_person_at_a_terminal_is_told_what_it_is_for(
    monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    monkeypatch.setattr(sys, "stdin", Standard(terminal=True))
    status = main(["editor"])
    told = "speclint: an editor starts this command and speaks to it over standard input; it is not for typing\n"
    assert (3, told) == (status, capsys.readouterr().err)


def test_without_the_language_server_the_extra_is_named(
    monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    for name in [name for name in sys.modules if name.startswith("speclint.editor")]:
        monkeypatch.delitem(sys.modules, name)
    monkeypatch.setitem(sys.modules, "pygls", None)
    monkeypatch.setitem(sys.modules, "lsprotocol", None)
    status = main(["editor"])
    told = "speclint: lsprotocol is not installed: install speclint[editor] for the language server\n"
    assert (3, told) == (status, capsys.readouterr().err)


def test_an_input_that_is_at_its_end_ends_the_program(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(sys, "stdin", Standard())
    monkeypatch.setattr(sys, "stdout", Standard())
    assert 1 == status_of_a_session()


def test_an_input_that_cannot_be_read_ends_the_program(monkeypatch: pytest.MonkeyPatch) -> None:
    closed = Standard()
    closed.buffer.close()
    monkeypatch.setattr(sys, "stdin", closed)
    monkeypatch.setattr(sys, "stdout", Standard())
    assert 1 == status_of_a_session()


def test_other_commands_load_nothing_of_it() -> None:
    import subprocess

    code = "import sys; from speclint.commands.main import main; main(['review', '--demo', '--brief']); "
    code += "sys.exit(any(name.startswith(('pygls', 'lsprotocol', 'speclint.editor')) for name in sys.modules))"
    assert 0 == subprocess.run([sys.executable, "-c", code], capture_output=True).returncode
