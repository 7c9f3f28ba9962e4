"""The command line: finds the command, runs it, and turns trouble into a message and an exit status."""

from __future__ import annotations

import gc
import os
import sys
from collections.abc import Sequence
from contextlib import suppress
from typing import Any, NoReturn

STATUS = """exit status:
  0  done; of a review: nothing holds the release
  1  of a review: something holds it
  2  the plan could not be read, or not all of it; what could be read was used
  3  wrong use, or a rulebook that cannot be used"""


SELDOM = 200_000  # new objects between two looks


def main(words: Sequence[str] | None = None) -> int:
    """Run speclint with the given words, or those of the command line.

    Returns:
        The exit status: 0 done and nothing holds, 1 something holds, 2 unreadable plan, 3 wrong use or broken rulebook.
    """
    given = list(sys.argv[1:] if words is None else words)
    if given == ["--version"]:
        from speclint import __version__

        print(f"speclint {__version__}")
        return 0
    collect_seldom()
    return _run(given)


def entry() -> NoReturn:
    """Run speclint and leave at once: nothing is left to be put away, and to take a program down piece by piece takes
    a tenth of a review."""
    status = main()
    for stream in (sys.stdout, sys.stderr):
        with suppress(OSError, ValueError, AttributeError):
            stream.flush()
    os._exit(status)


def collect_seldom() -> None:
    """Look for circular garbage seldom: a review makes many small objects, and next to none in circles."""
    gc.set_threshold(SELDOM, 20, 20)


def _run(given: list[str]) -> int:
    from speclint.commands.words import parser

    status = 0
    try:
        try:
            stated, rest = parser(given[0] if given else "").parse_known_args(given)
            _take_rest(stated, rest)
            status = stated.run(stated)
        except SystemExit as stop:
            status = 0 if stop.code in (0, None) else 3
        if sys.stdout is not None:
            sys.stdout.flush()
    except BrokenPipeError:  # who reads has gone: of no account to what was found
        from speclint.commands.screen import let_go_of_output

        let_go_of_output()
    except KeyboardInterrupt:
        print("stopped", file=sys.stderr)
        return 3
    except Exception as trouble:
        told = _told(trouble)
        if told is None:
            raise
        from speclint.commands.screen import let_go_of_output, tell

        if isinstance(trouble, OSError):
            let_go_of_output()
        tell(f"speclint: {told[0]}")
        return told[1]
    return status


def _take_rest(stated: Any, rest: list[str]) -> None:
    """Words that stand behind an option belong to the words before it; an unknown option is refused."""
    unknown = [word for word in rest if word.startswith("-")]
    words = next((name for name in ("element", "words", "plans") if hasattr(stated, name)), None)
    if rest and (unknown or words is None):
        print(f"speclint: {' '.join(unknown or rest)} is not expected here\nTry `speclint --help`.", file=sys.stderr)
        raise SystemExit(3)
    if words is not None:
        setattr(stated, words, [*getattr(stated, words), *rest])


def _told(trouble: Exception) -> tuple[str, int] | None:
    """The message and exit status of a trouble that is the user's to mend; nothing for a fault of the program."""
    import errno

    from speclint.commands.files import Refused
    from speclint.rulebook.rule import BrokenRulebook

    if isinstance(trouble, Refused):
        return str(trouble), trouble.status
    if isinstance(trouble, BrokenRulebook):
        return f"the rulebook cannot be used:\n{trouble}", 3
    if isinstance(trouble, OSError) and trouble.errno in (errno.ENOSPC, errno.EIO, errno.EDQUOT):
        return f"the result cannot be written: {trouble.strerror}", 3
    return None
