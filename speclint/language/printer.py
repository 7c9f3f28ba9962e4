"""The canonical text of a syntax tree: one note a line, blocks indented, comments let go."""

from __future__ import annotations

from collections.abc import Iterable

from speclint.language.atoms import Atom, Statement

INDENT = "    "


def print_plan(statements: Iterable[Statement]) -> str:
    """The canonical text of statements; it parses to the same statements, at places of its own.

    Args:
        statements: The statements of a tree, or of a part of one.
    """
    lines: list[str] = []
    open_blocks = [iter(statements)]
    while open_blocks:
        indent = INDENT * (len(open_blocks) - 1)
        statement = next(open_blocks[-1], None)
        if statement is None:
            open_blocks.pop()
            if open_blocks:
                lines.append(f"{INDENT * (len(open_blocks) - 1)}}}")
        elif statement.body:
            lines.append(f"{indent}{_head(statement)}{{")
            open_blocks.append(iter(statement.body))
        elif statement.body is not None:
            lines.append(f"{indent}{_head(statement)}{{ }}")
        else:
            lines.append(f"{indent}{_note(statement.atoms)}")
    return "".join(f"{line}\n" for line in lines)


def _head(statement: Statement) -> str:
    """What stands before the brace of a block."""
    return f"{_note(statement.atoms, ends=False)} " if statement.atoms else ""


def _note(atoms: tuple[Atom, ...], ends: bool = True) -> str:
    """The atoms of a note; a comma at its end is shut off, else the list would go on in the next line."""
    text = ""
    for atom in atoms:
        written = {"WORDS": " ".join(atom.text.split()), "COMMA": ","}.get(atom.kind, atom.text)
        text += written if atom.kind == "COMMA" or not text else f" {written}"
    return f"{text};" if ends and text.endswith(",") and atoms[-1].kind == "COMMA" else text
