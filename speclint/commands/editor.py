"""`speclint editor`."""

from __future__ import annotations

import argparse
import datetime
import sys
from contextlib import redirect_stdout
from functools import partial

from speclint.commands.common import rulebook_of, tell, units_of
from speclint.commands.files import Refused, read_used


def run(stated: argparse.Namespace) -> int:
    """Serve an editor over standard input and output until it ends the session.

    Raises:
        Refused: If the language server is not installed, or nobody but a person at a terminal is there to be served.
    """
    try:
        from speclint.editor.reading import Settled
        from speclint.editor.server import serve
    except ModuleNotFoundError as missing:
        raise Refused(f"{missing.name} is not installed: install speclint[editor] for the language server", 3) from None
    if sys.stdin is None or sys.stdout is None:
        raise Refused("an editor speaks over standard input and output, and they are closed", 3)
    if sys.stdin.isatty():
        raise Refused("an editor starts this command and speaks to it over standard input; it is not for typing", 3)
    settled = Settled(rulebook_of(stated), partial(units_of, stated), lambda: datetime.date.today().isoformat())
    streams = (sys.stdin.buffer, sys.stdout.buffer)
    with redirect_stdout(sys.stderr):  # a stray print would garble the messages
        ended = serve(settled, read_used, lambda message: tell(f"speclint: {message}"), streams)
    return 0 if ended else 1
