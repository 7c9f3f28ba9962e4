"""The plans that a run is about: files as they are named, and the plans of folders."""

from __future__ import annotations

import os
import re
from collections.abc import Callable, Iterable, Iterator

from speclint.commands.files import MOST_BYTES, Refused

ENDING = ".plan"
ENVIRONMENT = "pyvenv.cfg"  # the file by which a virtual environment of Python is known
# Words, a number of inches among them; texts in quotes; comments; what ends a note or a block.
_PIECE = re.compile(r'[^\s{};"#]*\d"|"[^"\n]*"?|#[^\n]*|[{};\n]|[^\s{};"#]+')


def plans_of(named: Iterable[str]) -> tuple[list[str], list[Refused], bool]:
    """The plans to review, each once: files as named, folders walked in the order of names.

    A file of a folder that another of them uses, and that holds typicals only, is reviewed with the plans that use it.

    Args:
        named: Files and folders.

    Returns:
        The plans, what kept folders from being read, and whether any folder was named.
    """
    found: dict[str, bool] = {}
    troubles: list[Refused] = []
    folders = [path for path in named if _is_folder(path)]
    for path in named:
        if path not in folders:
            found[path] = True
            continue
        walked = list(_walked(path, troubles))
        for file in walked:
            found.setdefault(file, False)
        if not walked:
            troubles.append(Refused(f"{path}: there is no plan in it (a file whose name ends in {ENDING})", 3))
    if folders:
        shared = _shared([path for path, as_named in found.items() if not as_named])
        found = {path: as_named for path, as_named in found.items() if as_named or path not in shared}
    return list(found), troubles, bool(folders)


def _is_folder(path: str) -> bool:
    try:
        return os.path.isdir(path)
    except ValueError:  # a name that no file can have
        return False


def _walked(folder: str, troubles: list[Refused]) -> Iterator[str]:
    """The plans below a folder, as the user would type them."""

    def tell(trouble: OSError) -> None:
        troubles.append(Refused(f"{trouble.filename}: cannot be listed: {trouble.strerror}", 2))

    for name in plans_below(folder, tell):
        yield os.path.normpath(os.path.join(folder, name)).replace(os.sep, "/")


def plans_below(folder: str, tell: Callable[[OSError], None] | None = None) -> Iterator[str]:
    """The plans below a folder by their paths in it, in the order of names.

    Hidden folders and files, virtual environments and what is no file are left alone, and links to folders are not
    followed.

    Args:
        folder: The folder.
        tell: Takes what keeps a folder from being listed.
    """
    for where, below, files in os.walk(folder, onerror=tell):
        below[:] = sorted(name for name in below if not (name.startswith(".") or _is_environment(where, name)))
        for name in sorted(files):
            path = os.path.join(where, name)
            if is_plan(name) and (os.path.isfile(path) or not os.path.exists(path)):  # a broken link is told
                yield os.path.relpath(path, folder).replace(os.sep, "/")


def _is_environment(where: str, name: str) -> bool:
    """Whether a folder is a virtual environment of Python, whose packages may hold plans of their own."""
    return os.path.exists(os.path.join(where, name, ENVIRONMENT))


def is_plan(path: str) -> bool:
    """Whether a path, parted by /, names a plan that is not hidden."""
    return path.endswith(ENDING) and not any(part.startswith(".") for part in path.split("/"))


def _shared(paths: Iterable[str]) -> set[str]:
    """The files among these that others of them use and that hold typicals only."""
    used: set[str] = set()
    bare: set[str] = set()
    for path in paths:
        begins = _begins_of(path)
        used |= {os.path.normpath(os.path.join(os.path.dirname(path), rest)) for word, rest in begins if word == "use"}
        if begins and {word for word, _ in begins} <= {"typical", "use"}:
            bare.add(path)
    return {path for path in bare if os.path.normpath(path) in used}


def files_named_in(path: str) -> tuple[list[str], list[str]]:
    """What a plan file names to use, and all that it has in quotes, which may be a file too, such as a rain record."""
    text = _text_of(path)
    used = [rest for word, rest in _beginnings(text) if word == "use"]
    return used, [piece.strip('"') for piece in _PIECE.findall(text) if piece[0] == '"']


def _text_of(path: str) -> str:
    """The text of a plan file; nothing of one that cannot be read, which is told when it is reviewed."""
    if not os.path.isfile(path):
        return ""
    try:
        with open(path, encoding="utf-8", errors="replace") as opened:
            return opened.read(MOST_BYTES)
    except OSError:
        return ""


def _begins_of(path: str) -> list[tuple[str, str]]:
    """How the notes of a plan file begin, where that may be of account."""
    text = _text_of(path)
    return list(_beginnings(text)) if "use" in text or "typical" in text else []


def _beginnings(text: str) -> Iterator[tuple[str, str]]:
    """The first two pieces of every note of a plan that stands outside all blocks, the second without its quotes."""
    depth, note = 0, list[str]()
    for piece in _PIECE.findall(text):
        if piece[0] == "#":
            continue
        if piece in "{};\n":
            if note and depth == 0:
                yield note[0], note[1].strip('"') if len(note) > 1 else ""
            note = []
            depth = max(0, depth + (piece == "{") - (piece == "}"))
        else:
            note.append(piece)
    if note and depth == 0:
        yield note[0], note[1].strip('"') if len(note) > 1 else ""
