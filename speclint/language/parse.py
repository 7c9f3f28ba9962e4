"""Text to syntax tree. The only door to lark for plans."""

from __future__ import annotations

from functools import lru_cache
from typing import TYPE_CHECKING, Any

from speclint.language.atoms import Atom, Mistake, Place, Statement, Tree
from speclint.paths import cache_folder, shipped

if TYPE_CHECKING:
    from lark import Lark, Token

MOST_CHARACTERS = 2_000_000
MOST_MISTAKES = 2_000  # of braces in one file that are told


class _Builder:
    """Builds statements while lark parses, so that no tree of lark's is made."""

    def statement(self, parts: list[Any]) -> Statement:
        body: tuple[Statement, ...] | None = None
        braces: tuple[Place, Place] | None = None
        if type(parts[-1]) is tuple:
            braces, body = parts.pop()
        atoms = tuple(
            [Atom(t.type, t.value.rstrip() if t.type == "WORDS" else t.value, t.line, t.column) for t in parts]
        )
        line, column = (atoms[0].line, atoms[0].column) if atoms or braces is None else braces[0]
        return Statement(atoms, body, line, column, braces)

    def block(self, parts: list[Any]) -> tuple[tuple[Place, Place], tuple[Statement, ...]]:
        opened, closed = parts[0], parts[-1]
        return (Place(opened.line, opened.column), Place(closed.line, closed.column)), _statements(parts)

    def start(self, parts: list[Any]) -> tuple[tuple[Statement, ...], list[Token]]:
        return _statements(parts), [part for part in parts if type(part) is not Statement]


def _statements(parts: list[Any]) -> tuple[Statement, ...]:
    return tuple([part for part in parts if type(part) is Statement])


@lru_cache(maxsize=1)
def _parser() -> Lark:
    import logging

    from lark import Lark

    logging.getLogger("lark").setLevel(logging.CRITICAL)  # a cache that cannot be written is no news to the user
    grammar = shipped("grammar").joinpath("plan.lark").read_text(encoding="utf-8")
    options: dict[str, Any] = {"parser": "lalr", "lexer": "contextual", "transformer": _Builder()}
    try:
        folder = cache_folder()
        folder.mkdir(parents=True, exist_ok=True)
        return Lark(grammar, cache=str(folder / "plan-grammar.bin"), **options)
    except OSError:
        return Lark(grammar, **options)


def parse(text: str, file: str) -> Tree:
    """The syntax tree of a plan's text, and every mistake in its syntax.

    Args:
        text: The plan.
        file: The name by which messages call it.
    """
    if len(text) > MOST_CHARACTERS:
        says = f"the plan is {len(text):,} characters long; the most that is read is {MOST_CHARACTERS:,}"
        return Tree(file, (), (Mistake(file, 1, 1, 1, says),))
    text = text.removeprefix("\ufeff").replace("\r\n", "\n").replace("\r", "\n")
    from lark import UnexpectedToken

    mistakes: list[Mistake] = []
    try:
        statements, strays = _read(text)
    except UnexpectedToken:
        mistakes = _unclosed_blocks(text, file)
        statements, strays = _read(text + "\n" + "}" * len(mistakes))
    mistakes += [_stray_brace(token, file) for token in strays]
    return Tree(file, statements, tuple(sorted(mistakes, key=lambda m: (m.line, m.column))[:MOST_MISTAKES]))


def _read(text: str) -> tuple[tuple[Statement, ...], list[Token]]:
    """The statements, and the braces that close nothing."""
    result: Any = _parser().parse(text)
    statements, strays = result
    return statements, strays


def _stray_brace(token: Token, file: str) -> Mistake:
    return Mistake(
        file,
        token.line or 1,
        token.column or 1,
        1,
        "“}” closes a block that was not opened",
        "take it out, or open the block it belongs to",
    )


def _unclosed_blocks(text: str, file: str) -> list[Mistake]:
    """A mistake for each block that the text opens and does not close, at its opening brace."""
    open_braces: list[tuple[Token, str]] = []
    words: list[str] = []
    for token in _parser().lex(text):
        if token.type == "LBRACE":
            open_braces.append((token, " ".join(words)))
            words = []
        elif token.type == "RBRACE":
            if open_braces:
                open_braces.pop()
            words = []
        elif token.type == "_SEP":
            words = []
        else:
            words.append(token.rstrip() if token.type == "WORDS" else str(token))
    return [
        Mistake(
            file,
            brace.line or 1,
            brace.column or 1,
            1,
            f"the block of “{name or 'no name'}” opened here is not closed",
            "add a closing } where the block ends",
        )
        for brace, name in open_braces
    ]
