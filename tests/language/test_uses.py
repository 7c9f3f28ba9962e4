"""Shared files: read once, in order, from the folder of the plan and nowhere else."""

from __future__ import annotations

from collections.abc import Mapping
from pathlib import Path

import pytest

from speclint.commands.files import open_plan
from speclint.language.uses import MOST_FILES, CannotRead, trees_of
from speclint.pipeline import read_home


def told(files: Mapping[str, str], first: str = "a.plan") -> tuple[list[str], list[str]]:
    """The names of the trees in the order in which they count, and the mistakes with their places."""

    def read(name: str) -> str:
        if name not in files:
            raise CannotRead("there is no such file")
        return files[name]

    trees, mistakes = trees_of(files[first], first, read)
    return [tree.file for tree in trees], [f"{m.file}:{m.line}:{m.column} {m.message}" for m in mistakes]


def test_a_used_file_counts_before_the_plan() -> None:
    assert (["b.plan", "a.plan"], []) == told({"a.plan": 'use "b.plan"', "b.plan": ""})


def test_a_file_used_twice_is_read_once() -> None:
    files = {"a.plan": 'use "b.plan"\nuse "c.plan"', "b.plan": 'use "c.plan"', "c.plan": ""}
    assert (["c.plan", "b.plan", "a.plan"], []) == told(files)


def test_a_file_below_names_its_own_uses_from_its_own_folder() -> None:
    files = {"a.plan": 'use "x/b.plan"', "x/b.plan": 'use "c.plan"\nuse "../d.plan"', "x/c.plan": "", "d.plan": ""}
    assert (["x/c.plan", "d.plan", "x/b.plan", "a.plan"], []) == told(files)


@pytest.mark.parametrize(
    ("files", "expected"),
    [
        ({"a.plan": 'use "a.plan"'}, 'a.plan:1:5 "a.plan" uses itself: a.plan uses a.plan'),
        (
            {"a.plan": '\n use "b.plan"', "b.plan": 'use "a.plan"'},
            'b.plan:1:5 "a.plan" uses itself: a.plan uses b.plan uses a.plan',
        ),
        (
            {"a.plan": 'use "x/b.plan"', "x/b.plan": 'use "./c.plan"', "x/c.plan": 'use "../x/b.plan"'},
            'x/c.plan:1:5 "../x/b.plan" uses itself: a.plan uses x/b.plan uses x/c.plan uses x/b.plan',
        ),
    ],
)
def test_a_circle_of_uses_is_told_where_it_closes(files: dict[str, str], expected: str) -> None:
    assert [expected] == told(files)[1]


@pytest.mark.parametrize("name", ["../b.plan", "/b.plan", "x/../../b.plan", "C:/b.plan", "..\\b.plan", "", "."])
def test_a_use_that_leaves_the_folder_is_told(name: str) -> None:
    assert [f'a.plan:1:5 "{name}" lies outside the folder of the plan'] == told({"a.plan": f'use "{name}"'})[1]


def test_a_use_of_nothing_is_told() -> None:
    assert ['a.plan:2:5 "b.plan" cannot be read: there is no such file'] == told({"a.plan": '\nuse "b.plan"'})[1]


def test_a_mistake_in_a_used_file_is_told_in_that_file() -> None:
    assert ["b.plan:1:9 “}” closes a block that was not opened"] == told(
        {"a.plan": 'use "b.plan"', "b.plan": "x { } x }"}
    )[1]


def test_more_files_than_are_read_are_told() -> None:
    files = {f"f{number}.plan": "" for number in range(MOST_FILES + 1)}
    files["a.plan"] = "\n".join(f'use "{name}"' for name in files)
    assert [f'a.plan:{MOST_FILES + 1}:5 "f{MOST_FILES}.plan" is not read: {MOST_FILES} files are in use already'] == (
        told(files)[1]
    )


def test_what_a_used_file_states_holds_in_the_plan(tmp_path: Path) -> None:
    (tmp_path / "standards.plan").write_text("typical wall { storeys 2 }")
    (tmp_path / "a.plan").write_text('use "standards.plan"\nwall a { }')
    sheet, mistakes = read_home(open_plan(str(tmp_path / "a.plan")))
    assert ((), 2.0) == (mistakes, sheet["wall a"]["storeys"])


def test_a_link_that_leads_to_itself_is_told(tmp_path: Path) -> None:
    (tmp_path / "link.plan").symlink_to(tmp_path / "link.plan")
    (tmp_path / "a.plan").write_text('use "link.plan"')
    _, mistakes = read_home(open_plan(str(tmp_path / "a.plan")))
    assert ['"link.plan" cannot be read: Too many levels of symbolic links'] == [one.message for one in mistakes]


def test_a_link_that_leads_out_of_the_folder_is_not_followed(tmp_path: Path) -> None:
    (tmp_path / "secret.plan").write_text("wall hidden { }")
    inside = tmp_path / "plans"
    inside.mkdir()
    (inside / "link.plan").symlink_to(tmp_path / "secret.plan")
    (inside / "a.plan").write_text('use "link.plan"')
    _, mistakes = read_home(open_plan(str(inside / "a.plan")))
    assert ['"link.plan" cannot be read: it lies outside the folder of the plan'] == [one.message for one in mistakes]


def test_an_element_that_a_used_file_states_already_is_told_with_that_file(tmp_path: Path) -> None:
    (tmp_path / "shared.plan").write_text("wall b { }\nwall a { }")
    (tmp_path / "a.plan").write_text('use "shared.plan"\nwall a { }')
    _, mistakes = read_home(open_plan(str(tmp_path / "a.plan")))
    assert ["wall a is already there, in line 2 of shared.plan"] == [one.message for one in mistakes]
