"""Outline and folding."""

from __future__ import annotations

from lsprotocol import types as lsp

from speclint.editor.outline import folds, symbols
from speclint.editor.pieces import look
from speclint.editor.positions import Lines
from tests.editor.given import PLAN


def named(found: list[lsp.DocumentSymbol]) -> list[object]:
    return [(one.name, named(list(one.children))) if one.children else one.name for one in found]


def test_the_outline_lists_what_stands_in_the_plan() -> None:
    assert [
        "site",
        "typical wall",
        "typical wall bare",
        "wall south",
        "wall east, west",
        "corner se",
        "roof main",
        "deck lake",
        ('alternate "wide eaves"', ["roof main"]),
        "variance log-end-past-drip-line on corner se",
    ] == named(symbols(look(PLAN), Lines(PLAN)))


def test_a_symbol_reaches_from_its_kind_to_its_brace() -> None:
    text = "wall a {\n  height 9'\n}\n"
    (one,) = symbols(look(text), Lines(text))
    assert (lsp.Range(lsp.Position(0, 0), lsp.Position(2, 1)), lsp.Range(lsp.Position(0, 0), lsp.Position(0, 6))) == (
        one.range,
        one.selection_range,
    )


def test_an_element_behind_a_forgotten_brace_is_in_the_outline() -> None:
    text = "wall a {\n  height 9'\nwall b { height 9' }\n"
    assert [("wall a", ["wall b"])] == named(symbols(look(text), Lines(text)))


def test_blocks_and_runs_of_comments_fold() -> None:
    text = "# one\n# two\nwall a {\r\n  height 9'  # three\n  # four\n}\nwall b { }\n"
    found = [(one.start_line, one.end_line, one.kind) for one in folds(look(text), Lines(text))]
    assert [(2, 5, None), (0, 1, lsp.FoldingRangeKind.Comment)] == found
