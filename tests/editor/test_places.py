"""Where things are described, and who names them."""

from __future__ import annotations

from pathlib import Path

import pytest

from speclint.editor.places import definitions, references, typical_setting
from speclint.model.element import Element, settings_of
from tests.editor.given import PLAN, SPECS, marked, read


def words(text: str, before: str, behind: str, **used: str) -> list[str]:
    """The line and the word of each place to which the thing at the mark leads."""
    reading, offset = read(marked(text, before, behind), **used)
    found = definitions(reading, reading.place(offset)) or typical_setting(reading, offset)
    return [shown(text, used, one) for one in found]


def shown(text: str, used: dict[str, str], location: object) -> str:
    uri, span = location.uri, location.range  # type: ignore[attr-defined]
    name = uri.rsplit("/", 1)[-1].removesuffix(".plan")
    line = used.get(name, text).split("\n")[span.start.line]
    return f"{name} {span.start.line + 1}: {line[span.start.character : span.end.character]}"


@pytest.mark.parametrize(
    ("before", "behind", "expected"),
    [
        ("of so", "uth", ["house 4: south"]),
        ("of south, ea", "st", ["house 5: east"]),
        ("on corner s", "e {", ["house 6: se"]),
        ("like ba", "re", ["house 3: bare"]),
        ("wa", "ll south", ["house 2: typical"]),
        ("wa", "ll east", ["house 3: bare", "house 2: typical"]),
        ("roof ma", "in { eaves", ["house 7: main", "house 9: main"]),
        ("site { wea", "ther", []),
        ("log-end-past", "-drip", []),
    ],
)
def test_a_name_leads_to_where_it_is_described(before: str, behind: str, expected: list[str]) -> None:
    assert expected == words(PLAN, before, behind)


def test_a_setting_leads_to_the_typical_that_states_it_too() -> None:
    text = PLAN.replace("like bare }", 'like bare;  starts 9" }').replace("ground lawn }", 'starts 8" }')
    assert (["house 3: starts"], ["house 2: starts"]) == (
        words(text, "like bare;  star", "ts"),
        words(text, "height 10';  star", "ts"),
    )


def test_a_used_file_leads_there_and_so_do_its_names() -> None:
    text = 'use "./shared.plan"\nwall south { like bare }'
    used = {"shared": "# of the firm\ntypical wall bare { }"}
    assert (["shared 1: "], ["shared 2: bare"]) == (
        words(text, "./shared", ".plan", **used),
        words(text, "like ba", "re", **used),
    )


def test_a_used_file_that_is_not_there_leads_nowhere() -> None:
    assert [] == words('use "absent.plan"', "absent", ".plan")


def test_everything_that_names_an_element_is_found_once() -> None:
    reading, offset = read(marked(PLAN, "wall sou", "th"))
    place = reading.place(offset)
    text = reading.document.text
    assert (
        ["house 4: south", "house 6: south", "house 7: south", "house 8: south"],
        ["house 6: south", "house 7: south", "house 8: south"],
    ) == tuple([shown(text, {}, one) for one in references(reading, place, declared)] for declared in (True, False))


def test_references_are_found_in_used_files() -> None:
    text, used = 'use "shared.plan"\nwall south { }', {"shared": "corner a { of south, north }"}
    reading, offset = read(marked(text, "wall sou", "th"), **used)
    found = references(reading, reading.place(offset), True)
    assert ["shared 1: south", "house 2: south"] == [shown(text, used, one) for one in found]


@pytest.mark.parametrize("plan", sorted(SPECS.glob("*.plan")), ids=lambda path: path.stem)
def test_every_name_of_a_shipped_plan_is_bound_to_what_the_home_holds(plan: Path) -> None:
    shared = {f"standards/{one.stem}": one.read_text(encoding="utf-8") for one in (SPECS / "standards").glob("*.plan")}
    reading, _ = read(plan.read_text(encoding="utf-8"), **shared)
    home = reading.sheet.home
    used = {label for element in home.elements.values() for label in _parts(element)}
    bound = {name.target for name in reading.names.names if name.role == "part"}
    described = {name.target for name in reading.names.names if name.role == "element"}
    assert (set(), set(), True) == (used - bound, bound - described, "" not in bound)
    assert set(home.elements) <= described


def _parts(element: Element) -> list[str]:
    found: list[str] = []
    for setting in settings_of(type(element)).values():
        value = getattr(element, setting.attribute)
        if setting.dimension == "part" and value:
            found += value if setting.many else [value]
    return found
