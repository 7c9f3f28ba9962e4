"""The screen: how wide it is, whether it takes colour, and printing to it. Light: a kept review starts at once."""

from __future__ import annotations

import argparse
import os
import shutil
import sys
from contextlib import suppress

from speclint.commands.files import Refused

WIDEST = 110


def coloured(stated: argparse.Namespace) -> bool:
    """Whether to use colour: as asked, else on a terminal unless NO_COLOR is set."""
    if stated.colour != "auto":
        return bool(stated.colour == "always")
    return (
        sys.stdout is not None
        and sys.stdout.isatty()
        and not os.environ.get("NO_COLOR")
        and os.environ.get("TERM") != "dumb"
    )


def width() -> int:
    """Columns to write in."""
    return min(WIDEST, max(40, shutil.get_terminal_size((96, 24)).columns))


# What the trade's marks become where a terminal knows plain letters only.
_PLAIN = str.maketrans(
    {
        "“": '"',
        "”": '"',
        "‘": "'",
        "’": "'",
        "′": "'",
        "″": '"',
        "–": "-",
        "…": "...",
        "°": " deg",
        "├": "|",
        "│": "|",
        "└": "`",
    }
)


def put(text: str) -> None:
    """Print text; characters that the terminal cannot show are replaced, and who has gone needs none: neither is fatal.

    Raises:
        Refused: If there is nowhere to print to.
    """
    if sys.stdout is None:
        raise Refused("the result cannot be written: standard output is closed", 3)
    try:
        sys.stdout.write(text)
    except UnicodeEncodeError:
        encoding = sys.stdout.encoding or "ascii"
        sys.stdout.write(text.translate(_PLAIN).encode(encoding, "replace").decode(encoding))
    except BrokenPipeError:
        let_go_of_output()


def let_go_of_output() -> None:
    """Send what is still to be printed nowhere, so that the end of the program does not fail on it again."""
    os.dup2(os.open(os.devnull, os.O_WRONLY), sys.stdout.fileno())


def tell(message: str) -> None:
    """Print a message to standard error, where there is one, with control characters written out."""
    from speclint.outputs.letter import visible

    if sys.stderr is not None:
        with suppress(BrokenPipeError):
            print("\n".join(visible(line) for line in message.split("\n")), file=sys.stderr)
