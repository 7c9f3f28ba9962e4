"""Another name for an element."""

from __future__ import annotations

import re

import pytest

from speclint.editor.documents import Document, Documents
from speclint.editor.reading import Reading
from speclint.editor.rename import CannotRename, renamable, renamed
from speclint.language.edit import with_edits
from tests.editor.given import PLAN, marked, read, settled


def after(text: str, new: str, **used: str) -> dict[str, str]:
    """The files that a rename changes, as they are after it."""
    reading, offset = read(text, **used)
    changes = renamed(reading, reading.place(offset), new)
    return {file: with_edits(reading.shelf.texts[file], edits) for file, edits in changes.items()}


@pytest.mark.parametrize(
    ("before", "behind", "word", "times"),
    [
        ("wall sou", "th", r"\bsouth\b", 4),
        ("of sou", "th", r"\bsouth\b", 4),
        ("corner s", "e {", r"\bse\b", 2),
        ("on corner s", "e {", r"\bse\b", 2),
        ("roof ma", "in { covers", r"\bmain\b", 2),
        ("like ba", "re", r"\bbare\b", 2),
    ],
)
def test_every_place_that_names_it_is_changed_and_nothing_else(before: str, behind: str, word: str, times: int) -> None:
    changed, count = re.subn(word, "sun-side", PLAN)
    assert (times, {"house.plan": changed}) == (count, after(marked(PLAN, before, behind), "sun-side"))


def test_a_name_in_quotes_keeps_its_quotes() -> None:
    text = 'wall a { }\ncorner c { of "a", a }'
    assert {"house.plan": 'wall b { }\ncorner c { of "b", b }'} == after(marked(text, "wall ", "a"), "b")


def test_a_used_file_that_is_open_is_changed_with_the_plan() -> None:
    text = 'use "shared.plan"\nwall ‸south { }'
    assert {"shared.plan": "corner a { of b, north }", "house.plan": 'use "shared.plan"\nwall b { }'} == after(
        text, "b", shared="corner a { of south, north }"
    )


def test_a_used_file_that_is_not_open_is_not_left_behind() -> None:
    documents = Documents(lambda path: "corner a { of south, north }")
    plan = Document("file:///plans/house.plan", 'use "shared.plan"\nwall south { }', 1)
    documents.put(plan)
    reading = Reading(plan, documents, settled())
    with pytest.raises(CannotRename, match=r"^shared.plan names it too; open that file first, so that it is changed"):
        renamed(reading, reading.place(plan.text.rindex("south")), "b")


@pytest.mark.parametrize(
    ("new", "says"),
    [
        ("east", "wall east is already there; give it another name"),
        ("two words", "“two words” is not one word; a name is one word, hyphens allowed"),
        ("", "“” is not one word; a name is one word, hyphens allowed"),
        ("a;b", "“a;b” is not one word; a name is one word, hyphens allowed"),
        ("-a", "“-a” is not one word; a name is one word, hyphens allowed"),
        ("porch", "“porch” is a word of the plan language; take another name"),
        ("like", "“like” is a word of the plan language; take another name"),
        ("height", "“height” is the name of a setting; take another name"),
    ],
)
def test_a_name_that_cannot_be_is_refused(new: str, says: str) -> None:
    with pytest.raises(CannotRename) as refused:
        after(marked(PLAN, "wall sou", "th"), new)
    assert says == str(refused.value)


def test_a_name_that_would_be_read_as_another_part_is_refused() -> None:
    text = "wall south { }\nchimney hearth { }\nstone skirt { at south }"
    with pytest.raises(CannotRename, match=r"“hearth” could be wall hearth or chimney hearth"):
        after(marked(text, "wall so", "uth"), "hearth")


def test_what_has_no_name_is_refused() -> None:
    with pytest.raises(CannotRename, match=r"^nothing here has a name of its own$"):
        after(marked(PLAN, "si", "te {"), "lot")


def test_only_a_name_is_offered_for_change() -> None:
    found = {}
    for before, behind in (
        ("wall sou", "th"),
        ("wa", "ll south"),
        ("si", "te {"),
        ("len", "gth 46'"),
        ("log-end", "-past"),
    ):
        reading, offset = read(marked(PLAN, before, behind))
        found[before] = renamable(reading, reading.place(offset))
    at = PLAN.index("wall south") + 5
    assert {"wall sou": (at, at + 5), "wa": None, "si": None, "len": None, "log-end": None} == found
