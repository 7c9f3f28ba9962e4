"""A page that follows a plan: built anew when the plan or a file it uses changes, never lost to a broken edit."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from pathlib import Path

Stamp = tuple[int, int, int]
Follow = Callable[[Path], None]  # names a file that is about to be read


class CannotBuild(Exception):
    """A plan of which no page can be made at all; says why in the user's words."""


@dataclass(frozen=True, slots=True)
class Built:
    """A page, and what of the plan could not be read, in words."""

    page: str
    mistakes: tuple[str, ...]


class LivePage:
    """The last page of a plan that could be read whole, and what is wrong with the plan since.

    Readers in other threads read `version` or `number` first: what is read after it is then no older.

    Attributes:
        version: Rises with every change that was taken up.
        number: Rises with every page that is shown; 0 until one could be made.
        page: The page to show; empty until one could be made.
        whole: Whether the page to show is that of a plan that could be read whole.
        trouble: What is wrong with the plan as it stands now; empty where nothing is.
    """

    def __init__(self, build: Callable[[int, Follow], Built]) -> None:
        """A page that `build` makes, given the number that the page will have and whom to tell of files it reads."""
        self._build = build
        self._stamps: dict[Path, Stamp] = {}
        self.version = 0
        self.number = 0
        self.page = ""
        self.whole = False
        self.trouble: tuple[str, ...] = ()

    def refresh(self) -> bool:
        """Take up a change of the files, if there is one; whether there was.

        What counts is how a file stood before it was read, so that a save amid the building is taken up next.
        """
        stamps = {path: _stamp(path) for path in self._stamps}
        if self.version and stamps == self._stamps:
            return False
        self._stamps = stamps
        try:
            built = self._build(self.number + 1, self._follow)
        except CannotBuild as trouble:
            self.trouble = (str(trouble),)
        else:
            self._take(built)
        self.version += 1
        return True

    def _follow(self, path: Path) -> None:
        if path not in self._stamps:
            self._stamps[path] = _stamp(path)

    def _take(self, built: Built) -> None:
        self.trouble = built.mistakes
        if not built.mistakes or not self.whole:
            self.page, self.whole = built.page, not built.mistakes
            self.number += 1


def _stamp(path: Path) -> Stamp:
    """How a file stands, to see whether it was written since."""
    try:
        status = path.stat()
    except (OSError, ValueError):
        return 0, 0, -1
    return status.st_ino, status.st_mtime_ns, status.st_size
