"""`speclint tidy`."""

from __future__ import annotations

import argparse
import os
import sys
from collections.abc import Iterable
from io import BytesIO
from pathlib import Path

from speclint.commands.files import MOST_BYTES, Refused, open_plan, open_to_rewrite, piped_plan
from speclint.commands.screen import put, tell
from speclint.language.atoms import Mistake, Tree
from speclint.language.items import Item
from speclint.language.layout import is_whole, tidied
from speclint.language.parse import parse
from speclint.language.sense import atoms_of, sense_of
from speclint.language.written import MARK

ENDING = ".plan"
PIPE = "-"
PIPED = "standard input"


def run(stated: argparse.Namespace) -> int:
    """Lay plans out; the exit status is the gravest of them."""
    paths = _paths(stated.plans)
    if not paths:
        raise Refused("name a plan or a folder to lay out", 3)
    if stated.show and len(paths) > 1:
        raise Refused("--show prints one plan; name one", 3)
    status = loose = 0
    for path in paths:
        try:
            found = _tidy(path, stated)
            loose += found
            status = max(status, found)
        except Refused as trouble:
            tell(f"speclint: {trouble}")
            status = max(status, trouble.status)
    if loose:
        are = "plan is" if loose == 1 else "plans are"
        tell(f"speclint: {loose} {are} not in the usual layout; without --ask it is made so")
    return status


def _paths(stated: Iterable[str]) -> list[str]:
    """The plans that are named, and those in the folders that are; each once."""
    found: dict[str, str] = {}
    for path in stated:
        if path == PIPE or not os.path.isdir(path):
            found.setdefault(path if path == PIPE else os.path.realpath(path), path)
            continue
        inside = _plans_below(Path(path))
        if not inside:
            raise Refused(f"{path}: the folder holds no plan (a file whose name ends in {ENDING})", 3)
        for plan in inside:
            found.setdefault(os.path.realpath(plan), str(plan))
    return list(found.values())


def _plans_below(folder: Path) -> list[Path]:
    """Every plan in a folder and below it, but for hidden ones."""
    return sorted(
        path
        for path in folder.rglob(f"*{ENDING}")
        if path.is_file() and not any(part.startswith(".") for part in path.relative_to(folder).parts)
    )


def _tidy(path: str, stated: argparse.Namespace) -> int:
    """Lay a plan out, or where it is only asked after, name it if it is not; whether that was so."""
    if path == PIPE:
        before = _piped()
    elif stated.ask:
        before = open_plan(path).text
    else:
        file = open_to_rewrite(path)
        before = file.raw.decode("utf-8") if stated.show else file.text
    after = _laid_out(before, PIPED if path == PIPE else path)
    if stated.ask:
        if after != before:
            put(f"{PIPED if path == PIPE else path}\n")
        return int(after != before)
    if path == PIPE or stated.show:
        _print(after)
    else:
        file.write(after, "tidied")
    return 0


def _piped() -> str:
    raw = sys.stdin.buffer.read(MOST_BYTES + 1) if sys.stdin else b""
    text = piped_plan(BytesIO(raw)).text
    return MARK + text if raw.startswith(MARK.encode()) else text


def _laid_out(text: str, name: str) -> str:
    """The plan in its layout.

    Raises:
        Refused: If it cannot be read whole, or would not say the same afterwards.
    """
    tree = parse(text, name)
    if not is_whole(tree):
        for mistake in _mistakes(tree):
            told = f"{mistake.file}:{mistake.line}:{mistake.column}: {mistake.message}"
            tell(f"{told} ({mistake.help})" if mistake.help else told)
        raise Refused(f"{name}: cannot be laid out until it can be read whole; it is left as it is", 2)
    after = tidied(text)
    if sense_of(parse(after, name)) != sense_of(tree):
        raise Refused(f"{name}: its layout would change what it says, a fault of speclint; it is left as it is", 3)
    return after


def _mistakes(tree: Tree) -> list[Mistake]:
    from speclint.model.read_element import unclosed

    found = [unclosed(tree.file, Item(*atom)) for atom in atoms_of(tree)]
    return sorted([*tree.mistakes, *filter(None, found)], key=lambda mistake: (mistake.line, mistake.column))


def _print(text: str) -> None:
    """Print a text to the byte, so that it can be piped on; on a terminal with what would steer it written out."""
    if sys.stdout is None:
        raise Refused("the result cannot be written: standard output is closed", 3)
    if sys.stdout.isatty():
        from speclint.outputs.letter import visible

        put("\n".join(visible(line) for line in text.replace("\r\n", "\n").split("\n")))
        return
    sys.stdout.flush()
    sys.stdout.buffer.write(text.encode("utf-8"))
