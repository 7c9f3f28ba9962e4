"""A page that follows a plan: built anew when the plan or a file it uses changes, never lost to a broken edit."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from pathlib import Path

Stamp = tuple[tuple[str, int, int], ...]


class CannotBuild(Exception):
    """A plan of which no page can be made at all; says why in the user's words."""


@dataclass(frozen=True, slots=True)
class Built:
    """A page, and what of the plan could not be read, in words."""

    page: str
    mistakes: tuple[str, ...]


class LivePage:
    """The last page of a plan that could be read whole, and what is wrong with the plan since.

    Attributes:
        version: Rises with every change that was taken up.
        page: The page to show; empty until one could be made.
        trouble: What is wrong with the plan as it stands now; empty where nothing is.
    """

    def __init__(self, build: Callable[[], Built], files: Callable[[], tuple[Path, ...]]) -> None:
        self._build, self._files = build, files
        self._stamp: Stamp | None = None
        self._whole = False
        self.version = 0
        self.page = ""
        self.trouble: tuple[str, ...] = ()

    def refresh(self) -> bool:
        """Take up a change of the files, if there is one; whether there was."""
        stamp = self._read_stamp()
        if stamp == self._stamp:
            return False
        self._stamp = stamp
        try:
            built = self._build()
        except CannotBuild as trouble:
            self.trouble = (str(trouble),)
        else:
            self.trouble = built.mistakes
            if not built.mistakes or not self._whole:
                self.page, self._whole = built.page, not built.mistakes
        self._stamp = self._read_stamp()
        self.version += 1
        return True

    def _read_stamp(self) -> Stamp:
        found = []
        for path in self._files():
            try:
                status = path.stat()
            except OSError:
                found.append((str(path), 0, -1))
            else:
                found.append((str(path), status.st_mtime_ns, status.st_size))
        return tuple(found)
