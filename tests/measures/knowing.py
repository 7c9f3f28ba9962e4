"""Measures of a plan some of whose other measures are taken as known, so that the bounds between answers can be met."""

from __future__ import annotations

from typing import Any

from speclint.measures.facts import Sheet
from speclint.quantity import Absent, Quantity
from speclint.span import NOWHERE
from tests.measures.sheets import sheet

Known = dict[tuple[str, str], Any]


def taking(text: str, known: Known) -> Sheet:
    """The facts of a plan, in which what is told of a part under a name has these values, in SI."""
    facts = sheet(text)
    for (label, name), value in known.items():
        facts[label].told[name] = Quantity(name, label, value, "ratio", "computed", NOWHERE)
        facts[label][name] = value
    return facts


def found_knowing(label: str, name: str, text: str, known: Known) -> Quantity:
    """A measure that is computed from what is known."""
    facts = taking(text, known)
    quantity = facts.quantity(facts[label], name)
    assert isinstance(quantity, Quantity), quantity
    return quantity


def absent_knowing(label: str, name: str, text: str, known: Known) -> Absent:
    """What a measure lacks in spite of what is known."""
    facts = taking(text, known)
    quantity = facts.quantity(facts[label], name)
    assert isinstance(quantity, Absent), quantity
    return quantity
