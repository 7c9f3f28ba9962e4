"""What must hold of every text, however damaged: what is done with it, and what would be a fault."""

from __future__ import annotations

import io
import json
import os
import re
import signal
import sys
import traceback
from collections.abc import Callable, Iterator
from contextlib import contextmanager, redirect_stderr, redirect_stdout
from html.parser import HTMLParser
from pathlib import Path
from types import FrameType
from typing import NoReturn
from xml.etree import ElementTree

from speclint.commands.main import main
from speclint.language.atoms import Mistake
from speclint.language.uses import CannotRead
from speclint.outputs.data import as_json, review_object
from speclint.outputs.letter import Frame, letter, text_of
from speclint.pipeline import PlanText, read_home, review
from speclint.ruling import Review
from speclint.units import System
from tests.specs.expected import DAY, SPECS, book

SECONDS = 2.0  # of work; waiting for other programs does not count
NAME = "a.plan"
RAW = re.compile(r"[\x00-\x08\x0b\x0c\x0e-\x1f\x7f-\x9f\u200e\u200f\u2028-\u202e\u2066-\u2069]")
PASSING = ("call", "_quantity", "quantity", "need", "maybe")  # that a fault comes through, whatever it is
COMMANDS = (
    ("review", NAME, "--json"), ("measures", NAME), ("measures", NAME, "--json"), ("measures", NAME, "--csv"),
    ("exposure", NAME, "--alternates"), ("upkeep", NAME, "--today", DAY), ("upkeep", NAME, "--calendar"),
    ("upkeep", NAME, "--json"), ("trace", NAME), ("trace", NAME, "--bearing"), ("trace", NAME, "--dot"),
    ("sequence", NAME), ("sequence", NAME, "--dot"), ("draw", NAME, "--into", "drawn"),
    ("report", NAME, "--to", "report.html", "--today", DAY), ("explain", "settlement", NAME),
    ("explain", "seasoning", NAME), ("explain", "rain share", NAME),
)  # fmt: skip


class Fault(Exception):
    """Something that must hold and does not."""


class TooLong(Exception):
    """A text took too much work."""


def read(used: str) -> str:
    """A file that a text uses: one beside the example plans, or none."""
    try:
        return (SPECS / used).read_text(encoding="utf-8")
    except (OSError, ValueError):
        raise CannotRead("there is no such file") from None


def is_read(text: str) -> None:
    """A text is read and built, and every mistake stands inside it.

    Raises:
        Fault: If one does not.
    """
    _, mistakes = read_home(PlanText(text, NAME, read))
    _stand_inside(mistakes, text)


def is_reviewed(text: str) -> None:
    """A text is reviewed in either units, told as a letter and as JSON, and so is its first alternate.

    Raises:
        Fault: If a mistake stands nowhere, a character would steer a terminal, or the JSON is none.
    """
    plan = PlanText(text, NAME, read)
    alternates = read_home(plan)[0].home.alternates
    asked: list[tuple[System, str]] = [("imperial", ""), ("metric", ""), *(("metric", name) for name in alternates[:1])]
    for system, alternate in asked:
        result = review(plan, book(), DAY, system, alternate)
        if not isinstance(result, Review):
            raise Fault(f"no review but {result!r}")
        _stand_inside(result.mistakes, text)
        _is_plain(text_of(letter(result, Frame(96, DAY))), "letter")
        told = as_json(review_object(result, system))
        _is_plain(told, "JSON")
        json.loads(told, parse_constant=_no_number)


def is_told_by_every_command(text: str, folder: Path) -> None:
    """Every command that takes a plan ends with a message and a status, and what it writes is whole.

    Raises:
        Fault: If one does not.
    """
    (folder / NAME).write_text(text, encoding="utf-8", errors="replace", newline="")
    all_commands_end_well(folder, 20 * SECONDS)


def all_commands_end_well(folder: Path, seconds: float) -> None:
    """The same for the plan that lies in a folder; no command may take more than so many seconds of work.

    Raises:
        Fault: If one does not end well.
    """
    for words in COMMANDS:
        _is_told(_in_folder(words, folder), words, seconds)
    if (folder / "report.html").exists():
        _Page((folder / "report.html").read_text(encoding="utf-8")).is_ours()
    for drawing in (folder / "drawn").glob("*.svg"):
        ElementTree.parse(drawing)
        drawing.unlink()


def _in_folder(words: tuple[str, ...], folder: Path) -> list[str]:
    places = {NAME, "drawn", "report.html"}
    return [str(folder / word) if word in places else word for word in words]


class _Page(HTMLParser):
    """The elements and attributes of a page."""

    def __init__(self, page: str) -> None:
        super().__init__()
        self.found: set[str] = set()
        self.feed(page)

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        self.found |= {tag, *(name for name, _ in attrs if name.startswith("on"))}

    def is_ours(self) -> None:
        """Refuse a page on which a text of the plan has become an element or an order.

        Raises:
            Fault: If there is one.
        """
        if foreign := self.found & {"img", "iframe", "object", "embed", "onerror", "onload", "onclick"}:
            raise Fault(f"the report holds {foreign}")


def _is_told(words: list[str], about: tuple[str, ...], seconds: float) -> None:
    out, err = io.StringIO(), io.StringIO()
    with redirect_stdout(out), redirect_stderr(err), at_most(seconds):
        try:
            status = main(words)
        except Exception as trouble:
            trouble.add_note(" ".join(about))
            raise
    _is_plain(out.getvalue() + err.getvalue(), " ".join(about))
    if status not in (0, 1, 2) and "there is nothing to draw yet" not in err.getvalue():
        raise Fault(f"{' '.join(about)} gives {status}: {err.getvalue()[:200]}")
    if "--json" in about and (status in (0, 1) or out.getvalue()):  # of a file that is no text nothing is told
        json.loads(out.getvalue(), parse_constant=_no_number)


def _stand_inside(mistakes: tuple[Mistake, ...], text: str) -> None:
    for mistake in mistakes:
        held = text if mistake.file == NAME else read(mistake.file)
        rows = held.removeprefix("\ufeff").replace("\r\n", "\n").replace("\r", "\n").split("\n")
        if not (1 <= mistake.line <= len(rows) and 1 <= mistake.column <= len(rows[mistake.line - 1]) + 1):
            raise Fault(f"stands nowhere: {mistake}")


def _is_plain(told: str, where: str) -> None:
    if found := RAW.search(told):
        raise Fault(f"{where} holds {found[0]!r}: {told[max(0, found.start() - 60) : found.end() + 20]!r}")


def _no_number(constant: str) -> NoReturn:
    raise Fault(f"JSON holds {constant}")


@contextmanager
def at_most(seconds: float) -> Iterator[None]:
    """Stop what takes more processor time than this, where the system can."""

    def stop(number: int, frame: FrameType | None) -> NoReturn:
        raise TooLong(f"more than {seconds:g} s of work")

    before = signal.signal(signal.SIGPROF, stop)
    signal.setitimer(signal.ITIMER_PROF, seconds)
    try:
        yield
    finally:
        signal.setitimer(signal.ITIMER_PROF, 0)
        signal.signal(signal.SIGPROF, before)


def fault_of(text: str, check: Callable[[str], None], seconds: float = SECONDS) -> tuple[str, str]:
    """What names a fault wherever it comes up again, and all that is known of it; empty where all holds."""
    try:
        with at_most(seconds):
            check(text)
    except TooLong as trouble:
        return "too long", f"{trouble}\n{traceback.format_exc(limit=-6)}"
    except Fault as trouble:
        return re.sub(r"\W.*", "", str(trouble)[:40]) + " " + str(trouble).split(":")[0][:60], str(trouble)
    except Exception as trouble:
        frames = [f for f in traceback.extract_tb(sys.exc_info()[2]) if f"{os.sep}speclint{os.sep}" in f.filename]
        at = " < ".join(f"{Path(f.filename).name}:{f.name}" for f in frames[:-6:-1] if f.name not in PASSING)
        return f"{type(trouble).__name__} in {at}", traceback.format_exc(limit=-6)
    return "", ""
