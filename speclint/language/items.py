"""The atoms of a statement, one word at a time."""

from __future__ import annotations

import re
from typing import NamedTuple

from speclint.language.atoms import Atom, Statement

_WORD = re.compile(r"\S+")


class Item(NamedTuple):
    """One word, quantity, bearing, text or comma of a statement, with its place."""

    kind: str
    text: str
    line: int
    column: int


class Items:
    """The items of a statement, read from left to right."""

    __slots__ = ("at", "end", "items")

    def __init__(self, statement: Statement) -> None:
        self.items = _split(statement.atoms)
        self.at = 0
        self.end = len(self.items)

    def peek(self, ahead: int = 0) -> Item | None:
        """The item `ahead` places on, or nothing past the end."""
        index = self.at + ahead
        return self.items[index] if index < self.end else None

    def take(self) -> Item:
        """The next item."""
        item = self.items[self.at]
        self.at += 1
        return item

    def words_ahead(self, most: int = 8) -> list[str]:
        """The run of words that comes next, at most `most` of them."""
        words = []
        for item in self.items[self.at : self.at + most]:
            if item.kind != "WORDS":
                break
            words.append(item.text)
        return words

    def take_longest(self, known: frozenset[str]) -> str:
        """Take the longest run of words that is in `known`; nothing is taken where none is."""
        words = self.words_ahead()
        for size in range(len(words), 0, -1):
            phrase = " ".join(words[:size])
            if phrase in known:
                self.at += size
                return phrase
        return ""

    def rest(self) -> str:
        """What is left, as text."""
        left = self.items[self.at :]
        return "".join(["," if item.kind == "COMMA" else f" {item.text}" for item in left]).strip()


def _split(atoms: tuple[Atom, ...]) -> list[Item]:
    items: list[Item] = []
    for kind, text, line, column in atoms:
        if kind == "WORDS" and (" " in text or "\t" in text):
            items += [Item(kind, found[0], line, column + found.start()) for found in _WORD.finditer(text)]
        else:
            items.append(Item(kind, text, line, column))
    return items
