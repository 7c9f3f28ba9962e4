"""Shared files that a plan uses, found inside the folder of the plan and nowhere else."""

from __future__ import annotations

from pathlib import PurePosixPath

from speclint.language.atoms import Mistake, Statement, Tree
from speclint.language.items import Items
from speclint.language.parse import parse
from speclint.plan_text import CannotRead as CannotRead
from speclint.plan_text import Reader as Reader

MOST_FILES = 200


def trees_of(text: str, file: str, read: Reader) -> tuple[list[Tree], list[Mistake]]:
    """The trees of the files a plan uses, in the order in which they count, and of the plan itself, last.

    Args:
        text: The text of the plan.
        file: The name by which messages call it.
        read: Reads a file named relative to the folder of the plan; raises `CannotRead`.
    """
    walk = _Walk(read)
    walk.visit(text, file, "", (PurePosixPath(file.replace("\\", "/")).name,))
    return walk.trees, walk.mistakes


class _Walk:
    def __init__(self, read: Reader) -> None:
        self.read = read
        self.trees: list[Tree] = []
        self.mistakes: list[Mistake] = []
        self.done: set[str] = set()

    def visit(self, text: str, file: str, folder: str, above: tuple[str, ...]) -> None:
        """Read the files that a text uses, then the text."""
        tree = parse(text, file)
        self.mistakes += tree.mistakes
        for statement in tree.statements:
            items = Items(statement)
            if items.take_longest(frozenset(("use",))):
                self._use(items, statement, file, folder, above)
        self.trees.append(tree)

    def _use(self, items: Items, statement: Statement, file: str, folder: str, above: tuple[str, ...]) -> None:
        def tell(message: str, help: str) -> None:
            self.mistakes.append(Mistake(file, item.line, item.column, len(item.text), message, help))

        item = items.peek() or items.items[0]
        if item.kind != "TEXT":
            tell("“use” needs the name of a file in quotes", 'write for example: use "house-standards.plan"')
            return
        if (more := items.peek(1)) is not None:
            says = f"“{more.text}” is not expected after {item.text}"
            help = "one “use” names one file"
            self.mistakes.append(Mistake(file, more.line, more.column, len(more.text), says, help))
        path = _inside(folder, item.text.strip('"'))
        if path is None:
            tell(f"{item.text} lies outside the folder of the plan", "keep shared files beside the plan or below it")
        elif path in above:
            tell(f"{item.text} uses itself: {' uses '.join([*above, path])}", "take one of the uses out")
        elif path not in self.done:
            if len(self.done) >= MOST_FILES:
                tell(f"{item.text} is not read: {MOST_FILES} files are in use already", "join some of them")
                return
            self.done.add(path)
            try:
                text = self.read(path)
            except CannotRead as trouble:
                tell(f"{item.text} cannot be read: {trouble}", "")
                return
            self.visit(text, path, str(PurePosixPath(path).parent), (*above, path))


def _inside(folder: str, name: str) -> str | None:
    """The path of a used file relative to the folder of the plan, or nothing where it would leave it."""
    plain = name.replace("\\", "/")
    if not plain or plain.startswith("/") or ":" in plain or "\0" in plain:
        return None
    parts: list[str] = []
    for part in (PurePosixPath(folder) / plain).parts:
        if part == "..":
            if not parts:
                return None
            parts.pop()
        elif part != ".":
            parts.append(part)
    return "/".join(parts) or None
