"""Facts of a plan given as text, for the tests of measures."""

from __future__ import annotations

from speclint.language.parse import parse
from speclint.measures.facts import Sheet
from speclint.model.build import build
from speclint.quantity import Absent, Quantity


def sheet(text: str) -> Sheet:
    home, mistakes = build([parse(text, "a.plan")], "a.plan")
    assert () == mistakes
    return Sheet(home)


def found(label: str, name: str, text: str) -> Quantity:
    facts = sheet(text)
    quantity = facts.quantity(facts[label], name)
    assert isinstance(quantity, Quantity), quantity
    return quantity


def absent(label: str, name: str, text: str) -> Absent:
    facts = sheet(text)
    quantity = facts.quantity(facts[label], name)
    assert isinstance(quantity, Absent), quantity
    return quantity
