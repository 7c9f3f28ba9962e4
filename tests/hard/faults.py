"""Small faults put into source text on purpose, one at a time, so that tests can be tried against them.

Comparisons are turned or their bound is shifted, signs and numbers changed, `and` and `or`, `max` and `min` and the
like swapped, `not` dropped, conditions forced, results replaced, the values of two keywords exchanged. Left alone are
docstrings, annotations, decorators, texts, what is raised, and what only adds words to a result.
"""

from __future__ import annotations

import ast
from collections.abc import Iterator
from typing import NamedTuple

TURNED: dict[type[ast.cmpop], tuple[str, ...]] = {
    ast.Lt: ("<=", ">="), ast.LtE: ("<", ">"), ast.Gt: (">=", "<="), ast.GtE: (">", "<"), ast.Eq: ("!=",),
    ast.NotEq: ("==",), ast.Is: ("is not",), ast.IsNot: ("is",), ast.In: ("not in",), ast.NotIn: ("in",),
}  # fmt: skip
SWAPPED: dict[type[ast.operator], str] = {
    ast.Add: "-", ast.Sub: "+", ast.Mult: "/", ast.Div: "*", ast.FloorDiv: "/", ast.Mod: "*", ast.Pow: "*",
}  # fmt: skip
PAIRS = {"max": "min", "min": "max", "any": "all", "all": "any", "floor": "ceil", "ceil": "floor"}
WORDS = ("note", "cite", "absent", "missing", "lru_cache", "Citation", "TypeVar", "cast")  # calls that only tell
MORE = 1.1  # a number is made so much greater


class Fault(NamedTuple):
    """A change of one place of a text.

    Attributes:
        line: Its line, from 1.
        start: Where it starts in the text, in characters.
        end: Where it ends.
        put: What is put there.
    """

    line: int
    start: int
    end: int
    put: str

    def made_in(self, text: str) -> str:
        """The text with the fault."""
        return text[: self.start] + self.put + text[self.end :]

    def told(self, text: str) -> str:
        """The fault in one line: what was there, and what is put."""
        return f"{text[self.start : self.end]} -> {self.put}".replace("\n", " ")


def faults_of(text: str) -> list[Fault]:
    """Every fault that can be put into a module, in the order of the text."""
    finder = _Finder(text)
    finder.visit(ast.parse(text))
    return sorted(dict.fromkeys(finder.found), key=lambda fault: (fault.start, fault.end, fault.put))


def places_of(text: str) -> dict[int, str]:
    """By line, the innermost function that holds it, as a call of it is named; lines outside functions have none."""
    found: dict[int, str] = {}

    def go(node: ast.AST, before: str) -> None:
        for child in ast.iter_child_nodes(node):
            inside = before
            if isinstance(child, ast.FunctionDef | ast.ClassDef):
                name = before + child.name
                inside = f"{name}.<locals>." if isinstance(child, ast.FunctionDef) else f"{name}."
                if isinstance(child, ast.FunctionDef):
                    found.update((line, name) for line in range(child.lineno, (child.end_lineno or child.lineno) + 1))
            go(child, inside)

    go(ast.parse(text), "")
    return found


class _Finder(ast.NodeVisitor):
    """Finds the places of a module that can be made faulty."""

    def __init__(self, text: str) -> None:
        self.text = text
        self.found: list[Fault] = []
        self.rows = [0]
        for row in text.splitlines(keepends=True):
            self.rows.append(self.rows[-1] + len(row))
        self.lines = text.splitlines()

    def visit_FunctionDef(self, node: ast.FunctionDef) -> None:
        for one in (*node.args.defaults, *(default for default in node.args.kw_defaults if default)):
            self.visit(one)
        for statement in node.body:
            self.visit(statement)

    def visit_ClassDef(self, node: ast.ClassDef) -> None:
        for statement in node.body:
            self.visit(statement)

    def visit_AnnAssign(self, node: ast.AnnAssign) -> None:
        if node.value is not None:
            self.visit(node.value)

    def visit_Raise(self, node: ast.Raise) -> None:
        pass

    def visit_Assert(self, node: ast.Assert) -> None:
        pass

    def visit_JoinedStr(self, node: ast.JoinedStr) -> None:
        pass

    def visit_If(self, node: ast.If) -> None:
        if ast.unparse(node.test) != "TYPE_CHECKING":
            self._forced(node.test)
            self.generic_visit(node)

    def visit_IfExp(self, node: ast.IfExp) -> None:
        self._forced(node.test)
        self.generic_visit(node)

    def visit_comprehension(self, node: ast.comprehension) -> None:
        for test in node.ifs:
            self._forced(test)
        self.generic_visit(node)

    def visit_Call(self, node: ast.Call) -> None:
        name = getattr(node.func, "attr", getattr(node.func, "id", ""))
        if name in WORDS:
            return
        if name in PAIRS:
            end = self._at(node.func.end_lineno, node.func.end_col_offset)
            self._put(node, end - len(name), end, PAIRS[name])
        for one, other in zip(node.keywords, node.keywords[1:], strict=False):
            if one.arg is not None and other.arg is not None:
                self._swapped(one.value, other.value)
        self.generic_visit(node)

    def visit_Compare(self, node: ast.Compare) -> None:
        left = node.left
        for sign, right in zip(node.ops, node.comparators, strict=True):
            start = self._at(left.end_lineno, left.end_col_offset)
            end = self._at(right.lineno, right.col_offset)
            between = self.text[start:end]
            opening, closing = between.find("("), between.rfind(")")
            head = between[: closing + 1] if closing >= 0 else ""
            tail = between[opening:] if opening >= 0 else ""
            for other in TURNED[type(sign)]:
                self._put(node, start, end, f"{head} {other} {tail}")
            left = right
        self.generic_visit(node)

    def visit_BinOp(self, node: ast.BinOp) -> None:
        texts = any(isinstance(one, ast.JoinedStr) or _is_text(one) for one in (node.left, node.right))
        sign = SWAPPED.get(type(node.op))
        if sign is not None and not texts:
            start = self._at(node.left.end_lineno, node.left.end_col_offset)
            end = self._at(node.right.lineno, node.right.col_offset)
            between = self.text[start:end]
            at = next(place for place, letter in enumerate(between) if letter in "+-*/%")
            self._put(node, start + at, start + at + len(_written(node.op)), sign)
        self.generic_visit(node)

    def visit_BoolOp(self, node: ast.BoolOp) -> None:
        word, other = ("and", "or") if isinstance(node.op, ast.And) else ("or", "and")
        for left, right in zip(node.values, node.values[1:], strict=False):
            start = self._at(left.end_lineno, left.end_col_offset)
            between = self.text[start : self._at(right.lineno, right.col_offset)]
            at = start + between.index(word)
            self._put(node, at, at + len(word), other)
        self.generic_visit(node)

    def visit_UnaryOp(self, node: ast.UnaryOp) -> None:
        if isinstance(node.op, ast.Not | ast.USub):
            start = self._at(node.lineno, node.col_offset)
            self._put(node, start, start + len("not " if isinstance(node.op, ast.Not) else "-"), "")
        self.generic_visit(node)

    def visit_Constant(self, node: ast.Constant) -> None:
        value = node.value
        if isinstance(value, bool):
            self._whole(node, str(not value))
        elif isinstance(value, int):
            self._whole(node, str(value + 1))
        elif isinstance(value, float):
            self._whole(node, repr(value * MORE if value else 1.0))

    def visit_Return(self, node: ast.Return) -> None:
        if node.value is not None and ast.unparse(node.value) not in ("None", "()", "[]", "{}", "''"):
            self._whole(node.value, "None")
        self.generic_visit(node)

    def _at(self, line: int | None, column: int | None) -> int:
        """A place of the tree, whose columns count bytes, as characters from the start."""
        assert line is not None
        assert column is not None
        return self.rows[line - 1] + len(self.lines[line - 1].encode()[:column].decode())

    def _forced(self, test: ast.expr) -> None:
        """A condition that always holds, and one that never does."""
        for put in ("True", "False"):
            if ast.unparse(test) != put:
                self._whole(test, f"({put})")

    def _swapped(self, left: ast.expr, right: ast.expr) -> None:
        """The values of two keywords of a call, each in the other's place."""
        start, between = self._at(left.lineno, left.col_offset), self._at(left.end_lineno, left.end_col_offset)
        after, end = self._at(right.lineno, right.col_offset), self._at(right.end_lineno, right.end_col_offset)
        one, other = self.text[start:between], self.text[after:end]
        if one != other and not (_is_text(left) or _is_text(right)):
            self._put(left, start, end, other + self.text[between:after] + one)

    def _whole(self, node: ast.expr, put: str) -> None:
        start, end = self._at(node.lineno, node.col_offset), self._at(node.end_lineno, node.end_col_offset)
        self._put(node, start, end, put)

    def _put(self, node: ast.expr, start: int, end: int, put: str) -> None:
        self.found.append(Fault(node.lineno, start, end, put))


def _is_text(node: ast.expr) -> bool:
    return isinstance(node, ast.Constant) and isinstance(node.value, str)


def _written(sign: ast.operator) -> str:
    return "//" if isinstance(sign, ast.FloorDiv) else "**" if isinstance(sign, ast.Pow) else "+"


def modules_of(package: str) -> Iterator[tuple[str, str]]:
    """The modules of a package of speclint: name, and text."""
    from pathlib import Path

    folder = Path(__file__).resolve().parents[2] / "speclint" / package
    for path in sorted(folder.glob("*.py")):
        if path.stem != "__init__":
            yield f"speclint.{package}.{path.stem}", path.read_text(encoding="utf-8")
