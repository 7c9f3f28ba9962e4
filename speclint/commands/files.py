"""The outermost door to files: plans are read here, and results are written beside and then put in place."""

from __future__ import annotations

import errno
import os
import stat
from contextlib import suppress
from pathlib import Path
from typing import BinaryIO, NamedTuple

from speclint.plan_text import CannotRead, PlanText

MOST_BYTES = 4_000_000
WAIT = 3.0  # seconds for somebody to come and write into a pipe
_MARK = b"\xef\xbb\xbf"  # of byte order, with which some editors begin a file


class Refused(Exception):
    """Wrong use, a file that cannot be read or written: a message for the user and the exit status."""

    def __init__(self, message: str, status: int) -> None:
        super().__init__(message)
        self.status = status


def read_text(path: Path) -> str:
    """The text of a file.

    Raises:
        CannotRead: If there is no such file, or it is no text that speclint can read; says why in the user's words.
    """
    try:
        if path.is_dir():
            raise CannotRead("it is a folder; name a file in it")
        raw = _within_bound(bytes_of(path))
    except FileNotFoundError:
        raise CannotRead("there is no such file") from None
    except PermissionError:
        raise CannotRead("it may not be opened (permission)") from None
    except (OSError, ValueError) as trouble:
        raise CannotRead(getattr(trouble, "strerror", None) or "it cannot be opened") from None
    return decoded(raw)


def bytes_of(path: str | Path) -> bytes:
    """The bytes of a file, and not without end where it has none; a pipe that nobody writes into is given up.

    Raises:
        OSError: If it cannot be opened, or nobody writes into it.
        ValueError: If its name is none.
    """
    at_once = getattr(os, "O_NONBLOCK", 0)  # a pipe is opened whether or not somebody is at its other end
    with open(path, "rb", buffering=0, opener=lambda name, flags: os.open(name, flags | at_once)) as opened:
        piped = bool(at_once) and stat.S_ISFIFO(os.fstat(opened.fileno()).st_mode)
        raw = _first_of_pipe(opened.fileno()) if piped else b""
        if at_once:
            os.set_blocking(opened.fileno(), True)
        while len(raw) <= MOST_BYTES and (more := opened.read(MOST_BYTES + 1 - len(raw))):
            raw += more
    return raw


def _first_of_pipe(pipe: int) -> bytes:
    """What can be read of a pipe once somebody has come to write; nothing yet where he is slow."""
    import select

    came, _, _ = select.select([pipe], [], [], WAIT)
    try:
        first = os.read(pipe, 1)
    except BlockingIOError:
        return b""
    if not first and not came:
        raise OSError(errno.EPIPE, "nobody writes into this pipe")
    return first


def _at_most(opened: BinaryIO) -> bytes:
    """The bytes of an open file, and not without end where it has none."""
    return _within_bound(opened.read(MOST_BYTES + 1))


def _within_bound(raw: bytes) -> bytes:
    if len(raw) > MOST_BYTES:
        raise CannotRead(f"it is too large; the most that is read is {MOST_BYTES / 1e6:.0f} MB")
    return raw


def decoded(raw: bytes) -> str:
    if raw.startswith((b"\xff\xfe", b"\xfe\xff")):
        raise CannotRead("it is stored as UTF-16; save it as UTF-8")
    if b"\0" in raw[:65536]:
        raise CannotRead("it is not a text file")
    try:
        return raw.decode("utf-8-sig")
    except UnicodeDecodeError as trouble:
        line = raw[: trouble.start].count(b"\n") + 1
        raise CannotRead(f"line {line} holds bytes that are not UTF-8 text; save the file as UTF-8") from None


def open_plan(path: str) -> PlanText:
    """A plan ready for review; the files it uses are read from its own folder only.

    Raises:
        Refused: If the plan cannot be read.
    """
    try:
        text = read_text(Path(path))
    except CannotRead as trouble:
        raise Refused(f"{path}: cannot be read: {trouble}", 2) from None
    return PlanText(text, path, lambda used: _read_used(Path(path).parent, used))


def plan_of(raw: bytes, path: str) -> PlanText:
    """A plan whose bytes were read already; the files it uses are read from its own folder only.

    Raises:
        Refused: If it is no text that speclint can read.
    """
    try:
        return PlanText(decoded(_within_bound(raw)), path, lambda used: _read_used(Path(path).parent, used))
    except CannotRead as trouble:
        raise Refused(f"{path}: cannot be read: {trouble}", 2) from None


def piped_plan(opened: BinaryIO) -> PlanText:
    """A plan from standard input; it can use no other file.

    Raises:
        Refused: If it is no text that speclint can read.
    """

    def read(used: str) -> str:
        raise CannotRead("a plan from standard input can use no other file")

    try:
        return PlanText(decoded(_at_most(opened)), "standard input", read)
    except CannotRead as trouble:
        raise Refused(f"standard input: cannot be read: {trouble}", 2) from None


def _read_used(folder: Path, used: str) -> str:
    target = inside(folder, used)
    if target is None:
        raise CannotRead("it lies outside the folder of the plan")
    return read_used(target)


def read_used(path: Path) -> str:
    """The text of a file that a plan uses.

    Raises:
        CannotRead: If there is no such file, it is a pipe or a device, or it is no text that speclint can read.
    """
    if _is_special(path):
        raise CannotRead("it is no ordinary file")
    return read_text(path)


def _is_special(path: str | Path) -> bool:
    """Whether a path leads to a pipe, a device or the like."""
    return os.path.exists(path) and not os.path.isfile(path) and not os.path.isdir(path)


def inside(folder: Path, used: str) -> Path | None:
    """The file that a plan of a folder uses, links followed; nothing where it lies outside that folder."""
    within = Path(os.path.realpath(folder))
    target = Path(os.path.realpath(within / used))
    return target if target.is_relative_to(within) else None


def demo_plan() -> PlanText:
    """The demo plan that ships with the program."""
    from speclint.paths import shipped

    name = "tamarack-point.plan"

    def read(used: str) -> str:
        raise CannotRead(f"the demo plan uses no other file; got {used}")

    return PlanText(shipped("specs").joinpath(name).read_text(encoding="utf-8"), name, read)


def refuse_two(plan: str | None, *, alone: bool = True) -> None:
    """Refuse a plan named beside --demo, which would be passed over.

    Args:
        plan: The word in the place of a plan.
        alone: Whether it can be nothing but a plan; else it may name an element of the demo plan.

    Raises:
        Refused: If it names a plan.
    """
    if plan is not None and (alone or plan.endswith(".plan") or os.path.isfile(plan)):
        raise Refused(f"{plan}: --demo takes the demo plan; name a plan or ask for --demo, not both", 3)


def write_file(path: Path, content: str | bytes) -> None:
    """Write a file beside its place and then put it there, so that a stop in between loses nothing.

    Raises:
        Refused: If it cannot be written.
    """
    if not path.name or "\0" in path.name:
        raise Refused(f"“{path}” is not the name of a file to write", 3)
    special = _is_special(path)
    if not special:  # a pipe or a terminal is written straight to
        path = Path(os.path.realpath(path))
    beside = path if special else path.with_name(f".{path.name}.{os.getpid()}")
    try:
        beside.write_bytes(content if isinstance(content, bytes) else content.encode("utf-8", "backslashreplace"))
        if beside != path:
            with suppress(OSError):
                beside.chmod(path.stat().st_mode & 0o7777)  # who may read and write it stays as it was
            os.replace(beside, path)
    except OSError as trouble:
        if beside != path:
            with suppress(OSError):
                beside.unlink()
        raise Refused(f"{path}: cannot be written: {trouble.strerror or trouble}", 3) from None


class PlanFile(NamedTuple):
    """A plan file that is to be written anew: what it held when it was read, byte by byte."""

    path: Path
    raw: bytes

    @property
    def text(self) -> str:
        """Its text, line ends as they are, without the mark of byte order."""
        return self.raw.removeprefix(_MARK).decode("utf-8")

    def write(self, text: str, beside: str) -> bool:
        """Put a text in its place, unless somebody else has changed the file since it was read.

        Args:
            text: The new text.
            beside: Ending of the name under which the text is kept where the file was changed meanwhile.

        Returns:
            Whether anything was written.

        Raises:
            Refused: If the file was changed meanwhile, or cannot be written; both texts are kept.
        """
        after = (_MARK if self.raw.startswith(_MARK) else b"") + text.encode("utf-8")
        if after == self.raw:
            return False
        try:
            now = self.path.read_bytes()
        except OSError:
            now = b""
        if now != self.raw:
            kept = self.path.with_name(f"{self.path.name}.{beside}")
            write_file(kept, after)
            says = f"{self.path}: was changed by somebody else meanwhile and is left as it is; the result is in {kept}"
            raise Refused(says, 3)
        write_file(self.path, after)
        return True


def open_to_rewrite(path: str) -> PlanFile:
    """A plan file that is to be written anew.

    Raises:
        Refused: If it cannot be read, or is no file of its own.
    """
    if _is_special(path):
        raise Refused(f"{path}: cannot be written anew: it is no ordinary file", 3)
    plan = open_plan(path)  # for its messages
    place = Path(path)
    try:
        raw = place.read_bytes()
    except OSError as trouble:
        raise Refused(f"{path}: cannot be read: {trouble.strerror}", 2) from None
    if raw.removeprefix(_MARK) != plan.text.encode("utf-8"):
        raise Refused(f"{path}: was changed while it was read; try again", 3)
    return PlanFile(place, raw)
