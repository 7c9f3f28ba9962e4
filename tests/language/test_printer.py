"""The canonical text of a plan, and that it says what the plan said."""

from __future__ import annotations

import pytest

from speclint.language.parse import parse
from speclint.language.printer import print_plan
from tests.language.meaning import meaning
from tests.specs.expected import SPECS

PLANS = sorted(str(path.relative_to(SPECS)) for path in SPECS.rglob("*.plan"))


def printed(text: str) -> str:
    return print_plan(parse(text, "a.plan").statements)


@pytest.mark.parametrize(
    ("given", "expected"),
    [
        ("", ""),
        ("wall a{height 9';length 3 m}", "wall a {\n    height 9'\n    length 3 m\n}\n"),
        ("wall a { }", "wall a { }\n"),
        ("wall a", "wall a\n"),
        ("roof r { covers a ,\n  b , c }", "roof r {\n    covers a, b, c\n}\n"),
        ('step s { does  "bore   # wires" } # a note', 'step s {\n    does "bore   # wires"\n}\n'),
        ("alternate \"x\" { wall a { storeys 2 } }", 'alternate "x" {\n    wall a {\n        storeys 2\n    }\n}\n'),
        ("x,;y", "x,;\ny\n"),
        ("x, }", "x,;\n"),
        ("{ x }", "{\n    x\n}\n"),
    ],
)  # fmt: skip
def test_a_plan_is_printed_one_note_a_line(given: str, expected: str) -> None:
    assert expected == printed(given)


@pytest.mark.parametrize("name", PLANS)
def test_an_example_plan_says_the_same_when_it_is_printed(name: str) -> None:
    text = (SPECS / name).read_text(encoding="utf-8")
    assert meaning(parse(text, name).statements) == meaning(parse(printed(text), name).statements)


@pytest.mark.parametrize("name", PLANS)
def test_a_printed_plan_is_printed_the_same_again(name: str) -> None:
    once = printed((SPECS / name).read_text(encoding="utf-8"))
    assert once == printed(once)


def test_blocks_in_blocks_without_end_are_printed() -> None:
    assert 2000 == printed("{" * 2000 + "}" * 2000).count("{")
