"""The command line: finds the command, runs it, and turns trouble into a message and an exit status."""

from __future__ import annotations

import sys
from collections.abc import Sequence

STATUS = """exit status:
  0  nothing holds the release
  1  something holds it
  2  the plan could not be read, or not all of it; what could be read was reviewed
  3  wrong use, or a rulebook that cannot be used"""


def main(words: Sequence[str] | None = None) -> int:
    """Run speclint with the given words, or those of the command line.

    Returns:
        The exit status: 0 nothing holds, 1 something holds, 2 unreadable plan, 3 wrong use or broken rulebook.
    """
    given = list(sys.argv[1:] if words is None else words)
    if given == ["--version"]:
        from speclint import __version__

        print(f"speclint {__version__}")
        return 0
    return _run(given)


def _run(given: list[str]) -> int:
    import os

    from speclint.commands.words import parser

    os.environ.setdefault("PYDANTIC_DISABLE_PLUGINS", "__all__")  # no other package alters our model; starts faster
    try:
        stated = parser().parse_args(given)
    except SystemExit as stop:
        return 0 if stop.code in (0, None) else 3
    try:
        status: int = stated.run(stated)
        sys.stdout.flush()
    except BrokenPipeError:
        os.dup2(os.open(os.devnull, os.O_WRONLY), sys.stdout.fileno())
        return 0
    except KeyboardInterrupt:
        print("stopped", file=sys.stderr)
        return 3
    except Exception as trouble:
        told = _told(trouble)
        if told is None:
            raise
        print(f"speclint: {told[0]}", file=sys.stderr)
        return told[1]
    return status


def _told(trouble: Exception) -> tuple[str, int] | None:
    """The message and exit status of a trouble that is the user's to mend; nothing for a fault of the program."""
    from speclint.commands.files import Refused
    from speclint.rulebook.rule import BrokenRulebook

    if isinstance(trouble, Refused):
        return str(trouble), trouble.status
    if isinstance(trouble, BrokenRulebook):
        return f"the rulebook cannot be used:\n{trouble}", 3
    return None
