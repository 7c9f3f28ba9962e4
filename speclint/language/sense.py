"""What a tree says, whatever its places and blanks are."""

from __future__ import annotations

from collections.abc import Iterator

from speclint.language.atoms import Atom, Statement, Tree


def atoms_of(tree: Tree) -> Iterator[Atom]:
    """Every atom of a tree, in the order of the text."""
    waiting: list[Statement] = list(tree.statements[::-1])
    while waiting:
        statement = waiting.pop()
        yield from statement.atoms
        waiting += (statement.body or ())[::-1]


def sense(kind: str, text: str) -> tuple[str, str]:
    """What an atom says, whatever blanks and new lines are in it."""
    return kind, "," if kind == "COMMA" else " ".join(text.split()) if kind == "WORDS" else text


def sense_of(tree: Tree) -> list[tuple[str, str]]:
    """What a tree says, places and blanks left out: its atoms, the ends of its notes, its braces."""
    found: list[tuple[str, str]] = []
    waiting: list[Statement | str] = list(tree.statements[::-1])
    while waiting:
        step = waiting.pop()
        if isinstance(step, str):
            found.append((step, step))
            continue
        found += [sense(atom.kind, atom.text) for atom in step.atoms]
        if step.body is None:
            waiting.append(";")
        else:
            found.append(("{", "{"))
            waiting += ["}", *step.body[::-1]]
    return found
