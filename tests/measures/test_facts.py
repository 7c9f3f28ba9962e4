"""What a measure keeps while it computes, and what is told where an input is missing."""

from __future__ import annotations

import pytest

from speclint.citation import Citation
from speclint.measures.facts import NotStated, Working
from speclint.quantity import Absent, Quantity
from speclint.science.overhang import cover_ratio, overhang_need
from tests.measures.sheets import sheet

HOUSE = """
site { weather "Boston, MA" }
wall south { height 9'; starts unknown }
wall north { length 9' }
window one { wall south }
window two { wall south }
porch p { along south, north }
"""


def working() -> Working:
    facts = sheet(HOUSE)
    return Working(facts, facts["wall south"], "reach", "length", "how far")


def test_a_citation_and_a_note_are_kept_once_in_the_order_in_which_they_came() -> None:
    work = working()
    one, other = Citation("", "one", "ours"), Citation("", "other", "ours")
    for citation in (one, other, one):
        work.cite(citation)
    for words in ("a", "b", "a"):
        work.note(words)
    told = work.quantity(2.0)
    assert ((one, other), ("a", "b")) == (told.citations, told.notes)
    assert ("reach", "wall south", 2.0, "length", "computed") == told[:5]


def test_inputs_are_kept_where_they_are_known() -> None:
    work = working()
    assert 9 * 0.3048 == pytest.approx(work.need(work.facts, "height"))
    assert None is work.maybe(work.facts, "starts")
    assert None is work.maybe(None, "starts")
    assert 0.5 == work.assume("margin", 0.5, "length", "a half", Citation("", "x", "ours"))
    assert [("height", "stated"), ("margin", "assumed by speclint")] == [(one.name, one.how) for one in work.inputs]


@pytest.mark.parametrize(
    ("label", "name", "kind", "missing"),
    [
        ("wall south", "starts", "", ("wall south", "starts")),
        ("", "eaves", "roof", ("wall south", "roof")),
        ("", "eaves", "", ("wall south", "eaves")),
    ],
)
def test_what_is_needed_and_not_there_is_told(label: str, name: str, kind: str, missing: tuple[str, str]) -> None:
    work = working()
    with pytest.raises(NotStated) as trouble:
        work.need(work.sheet[label] if label else None, name, kind)
    assert [missing] == [(one.element, one.setting) for one in trouble.value.absent.missing]


def test_a_call_cites_its_source_and_notes_what_lies_outside_its_range() -> None:
    work = working()
    assert 0.25 == work.call(cover_ratio, projection=0.5, height_below=2.0)
    work.call(overhang_need, index=30.0)
    assert "hud-durability-2002" in [citation.key for citation in work.citations]
    before = list(work.notes)
    work.call(overhang_need, index=900.0)
    assert all("outside the range" in note for note in work.notes[len(before) :])


def test_bounds_are_kept_with_their_words() -> None:
    work = working()
    work.range(1.0, 3.0, "from there to there")
    told = work.quantity(2.0)
    assert (1.0, 3.0, "from there to there") == (told.low, told.high, told.spread)


def test_relations_are_one_part_or_many() -> None:
    facts = sheet(HOUSE)
    wall = facts["wall south"]
    assert ["window one", "window two"] == [part.label for part in wall["windows"]]
    assert "window one" == wall["window"].label
    assert ["porch p"] == [part.label for part in wall["porches"]]
    assert (None, ()) == (wall["door"], wall["doors"])
    assert facts["site"] is wall["site"]
    assert ["wall south", "wall north"] == [part.label for part in facts["porch p"]["along"]]
    assert facts["window one"]["wall"] is wall
    assert None is wall["foundation"]


def test_a_fact_is_told_once_and_forgotten_with_its_sheet() -> None:
    facts = sheet(HOUSE)
    told = facts.quantity(facts["wall south"], "height")
    assert isinstance(told, Quantity)
    assert told is facts.quantity(facts["wall south"], "height")
    assert isinstance(facts.quantity(facts["wall south"], "starts"), Absent)
    assert (9 * 0.3048, None) == (pytest.approx(facts.value("wall south", "height")), facts.value("wall x", "height"))
    facts.let_go()
    assert ({}, {}) == (facts.facts, facts.drawn)
