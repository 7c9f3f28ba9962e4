"""Plans as a git repository holds them, read by the `git` program, which is asked to tell and never to change."""

from __future__ import annotations

import os
import posixpath
import re
import subprocess
from collections.abc import Iterable
from dataclasses import dataclass
from pathlib import Path
from typing import NamedTuple

from speclint.commands.files import MOST_BYTES, Refused, decoded
from speclint.language.nearest import did_you_mean
from speclint.language.uses import CannotRead
from speclint.pipeline import PlanText

_SECONDS = 120
_SHA = re.compile(r"[0-9a-f]{40,64}")
# Messages in English; no questions, no fetching, no lock; a path is a path and not a pattern; no program of its own.
_SETTINGS = {
    "LC_ALL": "C",
    "GIT_TERMINAL_PROMPT": "0",
    "GIT_NO_LAZY_FETCH": "1",
    "GIT_OPTIONAL_LOCKS": "0",
    "GIT_LITERAL_PATHSPECS": "1",
}


class _Entry(NamedTuple):
    """A file as a revision holds it."""

    mode: str
    name: str
    size: int


@dataclass(frozen=True, slots=True)
class Repository:
    """A git repository, by the folder at its top."""

    top: Path

    def commit(self, named: str) -> str | None:
        """The commit that a revision names, or nothing where it names none."""
        if not named or named.startswith("-") or not named.isprintable():
            return None
        asked = ("rev-parse", "--verify", "--quiet", "--end-of-options", f"{named}^{{commit}}")
        status, told, _ = _git(self.top, *asked)
        found = told.decode("ascii", "replace").strip().rpartition("\n")[2]
        return found if status == 0 and _SHA.fullmatch(found) else None

    def no_revision(self, named: str) -> Refused:
        """To raise where a revision names no commit."""
        known = _told(self.top, "for-each-ref", "--format=%(refname:short)").decode("utf-8", "replace").split("\n")
        help = did_you_mean(named, [name for name in known if name])
        if not help and _told(self.top, "rev-parse", "--is-shallow-repository").strip() == b"true":
            help = "this copy of the repository is shallow; fetch the revision first"
        return Refused(f"“{named}” is no revision of this repository" + (f" ({help})" if help else ""), 3)

    def inside(self, path: str) -> str:
        """The path of a file or folder on disk as the repository calls it; empty for its top.

        Raises:
            Refused: If it lies outside the repository.
        """
        if "\0" in path:
            raise Refused(f"“{path}” is not the name of a file", 3)
        whole = Path(os.path.abspath(path))
        whole = Path(os.path.realpath(whole.parent)) / whole.name if whole.name else whole
        if os.path.isdir(whole):
            whole = Path(os.path.realpath(whole))
        if not whole.is_relative_to(self.top):
            raise Refused(f"{path}: lies outside the git repository {self.top.name}", 3)
        found = whole.relative_to(self.top).as_posix()
        return "" if found == "." else found

    def at(self, commit: str, named: str) -> PastFiles:
        """The files of a commit."""
        return PastFiles(self, commit, named)

    def files_on_disk(self, folder: str) -> list[str]:
        """The files in a folder that git knows or would take, as the repository calls them."""
        asked = ("ls-files", "--cached", "--others", "--exclude-standard", "-z", "--", folder or ".")
        names = [os.fsdecode(name) for name in _told(self.top, *asked).split(b"\0") if name]
        return [name for name in dict.fromkeys(names) if os.path.isfile(self.top / name)]


class PastFiles:
    """The files of one commit.

    Args:
        repository: The repository.
        commit: The commit.
        named: How the user named it, for messages.
    """

    def __init__(self, repository: Repository, commit: str, named: str) -> None:
        self.repository, self.commit, self.named = repository, commit, named
        self._listed: dict[str, dict[str, _Entry]] = {}
        self._texts: dict[str, str] = {}

    def files(self, path: str) -> dict[str, _Entry]:
        """The files at a path or in the folder there, by their names in the repository."""
        if path not in self._listed:
            asked = ("ls-tree", "-r", "-l", "-z", "--full-tree", self.commit, "--", path or ".")
            self._listed[path] = dict(_entries(_told(self.repository.top, *asked)))
        return self._listed[path]

    def plan(self, path: str, shown: str) -> PlanText:
        """A plan as the commit holds it; files that it uses are read in its own folder at the same commit.

        Args:
            path: The plan as the repository calls it.
            shown: The plan as the user calls it.

        Raises:
            Refused: If it cannot be read.
        """
        name = f"{self.named}:{shown}"
        try:
            text = self._text(path, path)
        except CannotRead as trouble:
            raise Refused(f"{name}: cannot be read: {trouble}", 2) from None
        return PlanText(text, name, lambda used: self._used(posixpath.dirname(path), used))

    def _used(self, folder: str, used: str) -> str:
        path = posixpath.normpath(posixpath.join(folder, used))
        if posixpath.isabs(path) or posixpath.relpath(path, folder or ".").startswith(".."):
            raise CannotRead("it lies outside the folder of the plan")
        return self._text(path, folder)

    def _text(self, path: str, within: str) -> str:
        entry = self.files(within).get(path)
        if entry is None:
            raise CannotRead(f"there is no such file in {self.named}")
        if entry.mode.startswith("12"):
            raise CannotRead(f"it is a symbolic link in {self.named}")
        if entry.size < 0:
            raise CannotRead(f"it is another repository in {self.named}")
        if entry.size > MOST_BYTES:
            raise CannotRead(f"it is too large; the most that is read is {MOST_BYTES / 1e6:.0f} MB")
        if entry.name not in self._texts:
            self._texts[entry.name] = decoded(_told(self.repository.top, "cat-file", "blob", entry.name))
        return self._texts[entry.name]


def repository_here() -> Repository:
    """The repository that the present folder is in.

    Raises:
        Refused: If it is in none, or git cannot tell.
    """
    status, told, trouble = _git(Path.cwd(), "rev-parse", "--show-toplevel")
    if status == 0:
        return Repository(Path(os.path.realpath(os.fsdecode(told.rstrip(b"\r\n")))))
    if "not a git repository" in trouble:
        raise Refused("this folder is in no git repository; without --revisions two files or folders are compared", 3)
    raise Refused(f"the git repository cannot be read: {trouble}", 3)


def _entries(raw: bytes) -> Iterable[tuple[str, _Entry]]:
    for row in raw.split(b"\0"):
        if row:
            about, _, path = row.partition(b"\t")
            mode, _, name, size = about.decode("ascii").split()
            yield os.fsdecode(path), _Entry(mode, name, int(size) if size.isdigit() else -1)


def _told(folder: Path, *words: str) -> bytes:
    status, told, trouble = _git(folder, *words)
    if status != 0:
        raise Refused(f"the git repository cannot be read: {trouble}", 3)
    return told


def _git(folder: Path, *words: str) -> tuple[int, bytes, str]:
    """Ask git something: its exit status, its answer, and the first line of its trouble."""
    asked = ["git", "-c", "core.fsmonitor=false", "--no-pager", *words]
    try:
        done = subprocess.run(
            asked,
            cwd=folder,
            stdin=subprocess.DEVNULL,
            capture_output=True,
            env={**os.environ, **_SETTINGS},
            timeout=_SECONDS,
            check=False,
        )
    except FileNotFoundError:
        raise Refused(
            "the git program is not found; without --revisions two files or folders are compared", 3
        ) from None
    except (OSError, subprocess.TimeoutExpired) as trouble:
        raise Refused(
            f"the git program does not answer: {getattr(trouble, 'strerror', '') or 'out of time'}", 3
        ) from None
    first = done.stderr.decode("utf-8", "replace").strip().split("\n")[0].removeprefix("fatal: ")
    return done.returncode, done.stdout, first
