"""What a run asks of every plan, and the key under which what is told of a plan is kept between runs.

Light: the key is made before anything of the review is imported, so that a kept review starts at once.
"""

from __future__ import annotations

import argparse
import hashlib
import os
import sys
from collections.abc import Iterator
from pathlib import Path
from typing import NamedTuple

from speclint import __version__
from speclint.commands.files import bytes_of, inside
from speclint.commands.screen import coloured, width
from speclint.paths import shipped

DEMO, PIPED = "--demo", "-"
DEMO_NAME = "tamarack-point.plan"
SEVERITIES = ("hold", "revise", "note")


class Asked(NamedTuple):
    """What a run asks of every plan.

    Attributes:
        form: letter, json, sarif or junit.
        width: Columns of the letter.
        brief: Whether the letter is brief.
        colour: Whether the letter is in colour.
        today: The day of the review, as an ISO date.
        alternate: The alternate under review, or empty.
        units: The units asked for, or empty for those of each plan.
        hold_at: The mildest grade that fails.
        cures: Whether changes are suggested.
        house_rules: The folder of house rules, or empty.
        house_limits: The file of house limits, or empty.
    """

    form: str
    width: int
    brief: bool
    colour: bool
    today: str
    alternate: str
    units: str
    hold_at: str
    cures: bool
    house_rules: str
    house_limits: str


def asked_of(stated: argparse.Namespace, today: str) -> Asked:
    """What the command line asks; what a form does not show is left out, so that it is kept once."""
    form = next((name for name in ("json", "sarif", "junit") if getattr(stated, name)), "letter")
    letter = form == "letter"
    return Asked(
        form,
        width() if letter else 0,
        stated.brief and letter,
        letter and not stated.into and coloured(stated),
        today,
        stated.alternate,
        stated.units or "",
        stated.hold_at if form == "junit" else "",
        stated.with_cures,
        stated.house_rules or "",
        stated.house_limits or "",
    )


def grave(hold_at: str) -> tuple[str, ...]:
    """The grades that fail where the mildest of them is this."""
    return SEVERITIES[: SEVERITIES.index(hold_at) + 1]


def state_of_program(asked: Asked) -> str:
    """A digest of all that decides a review besides the plan: the program, its data, house rules and limits.

    Raises:
        OSError: If house rules or limits cannot be read.
    """
    digest = hashlib.blake2b(f"{__version__} {sys.version}".encode(), digest_size=16)
    package = os.path.dirname(os.path.dirname(os.path.abspath(__file__)))
    for folder in (package, *(str(shipped(name)) for name in ("grammar", "rules", "shared"))):
        for line in _states(folder):
            digest.update(line.encode("utf-8", "surrogateescape"))
    for page in sorted(Path(asked.house_rules).iterdir()) if asked.house_rules else ():
        if page.name.endswith(".md"):
            digest.update(f"{page.name}\n".encode("utf-8", "surrogateescape") + page.read_bytes())
    if asked.house_limits:
        digest.update(b"limits\n" + Path(asked.house_limits).read_bytes())
    return digest.hexdigest()


def _states(folder: str) -> Iterator[str]:
    """Name, size and time of every file below a folder, without what Python compiles."""
    for entry in sorted(os.scandir(folder), key=lambda entry: entry.name):
        if entry.is_dir():
            if entry.name not in ("__pycache__", "_data"):
                yield from _states(entry.path)
        else:
            state = entry.stat()
            yield f"{entry.path} {state.st_size} {state.st_mtime_ns}\n"


def key_of(asked: Asked, state: str, name: str, uri: str, raw: bytes) -> str:
    """The key of what is told of a plan.

    Args:
        asked: What the run asks.
        state: The state of the program.
        name: What messages call the plan.
        uri: The place of the plan as logs name it.
        raw: The bytes of the plan.
    """
    told = "\n".join((repr(tuple(asked)), state, repr(name), repr(uri)))
    digest = hashlib.blake2b(told.encode("utf-8", "surrogateescape"), digest_size=20)
    digest.update(b"\n" + raw)
    return digest.hexdigest()


def state_of_used(plan: str, used: str) -> str:
    """A digest of a file that a plan uses, or why it cannot be read; for a key and not for people."""
    if plan in (DEMO, PIPED):
        return ""
    try:
        place = inside(Path(plan).parent, used)
        if place is None:
            return "outside"
        if not place.is_file():
            return f"{place.exists()} {place.is_dir()}"
        raw = bytes_of(place)
    except (OSError, ValueError) as trouble:
        return f"{type(trouble).__name__} {getattr(trouble, 'errno', '')}"
    return hashlib.blake2b(raw, digest_size=16).hexdigest()
