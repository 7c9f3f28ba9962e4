"""What a syntax tree says, its places and its spacing left out, so that two trees can be compared."""

from __future__ import annotations

from typing import Any

from speclint.language.atoms import Statement
from speclint.language.items import Items


def meaning(statements: tuple[Statement, ...]) -> list[Any]:
    """The words of each statement and what its block says."""
    return [
        (
            [(item.kind, "," if item.kind == "COMMA" else item.text) for item in Items(statement).items],
            None if statement.body is None else meaning(statement.body),
        )
        for statement in statements
    ]
