"""The numbers by which rule pages judge their own plans: `python -m tests.rules.expected` writes them anew.

For each snippet of a page: every measure that its rule asks for, and what that is computed from, in SI and five digits.
"""

from __future__ import annotations

import sys
from pathlib import Path

from speclint.language.parse import parse
from speclint.measures.facts import Sheet
from speclint.measures.register import measures
from speclint.model.build import build
from speclint.quantity import Quantity
from speclint.rulebook.lacking import Lacking
from speclint.rulebook.page import read_page
from speclint.rulebook.rule import Rule
from tests.specs.expected import book, told_of

NUMBERS = Path(__file__).resolve().parent / "numbers.txt"


def numbers() -> str:
    """The numbers of all pages."""
    rows: list[str] = []
    for rule in book().rules:
        page = read_page((NUMBERS.parents[2] / "rules" / f"{rule.name}.md").read_text(encoding="utf-8"), rule.name)
        for kind, snippets in (("trips", page.trips), ("cured", page.cured)):
            for number, snippet in enumerate(snippets, 1):
                found = _asked(Sheet(build([parse(snippet.text, "a.plan")], "a.plan")[0]), rule)
                if found:
                    rows += [f"\n{rule.name}, {kind} {number}", *found]
    return "\n".join(rows).lstrip() + "\n"


def _asked(sheet: Sheet, rule: Rule) -> list[str]:
    """The measures that are asked for when a rule is read for every element that it is about."""
    lacking = Lacking(rule)
    conditions = [rule.where] if rule.where else []
    conditions += [tier.condition for tier in rule.tiers]
    for facts in (one for kind in rule.kinds for one in sheet.of_kind(kind)):
        for condition in conditions:
            lacking.asks(condition)(facts)
    return [
        f"  {facts.label}, {name}: {told_of(found)}"
        for facts in sheet.facts.values()
        for name, found in sorted(facts.told.items())
        if isinstance(found, Quantity) and name in measures().get(facts.element.kind, {})
    ]


if __name__ == "__main__":
    sys.exit(NUMBERS.write_text(numbers(), encoding="utf-8") < 1)
