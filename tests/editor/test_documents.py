"""Texts that are open, and the files a plan uses."""

from __future__ import annotations

from pathlib import Path

import pytest
from lsprotocol import types as lsp

from speclint.commands.files import read_text
from speclint.editor.documents import NO_FOLDER, Document, Documents, Shelf, path_of
from speclint.language.uses import CannotRead

URI = "file:///plans/house.plan"


def edit(start: tuple[int, int], end: tuple[int, int], text: str) -> lsp.TextDocumentContentChangePartial:
    return lsp.TextDocumentContentChangePartial(lsp.Range(lsp.Position(*start), lsp.Position(*end)), text)


def changed(text: str, *changes: lsp.TextDocumentContentChangeEvent, encoding: str = "utf-16") -> str:
    documents = Documents(read_text)
    documents.encoding = encoding
    documents.put(Document(URI, text, 1))
    document = documents.change(URI, 2, changes)
    assert document is not None
    return document.text


def test_changes_are_made_one_after_the_other() -> None:
    assert "wall b\r\nroof" == changed("wall a\r\n", edit((1, 0), (1, 0), "roof"), edit((0, 5), (0, 6), "b"))


def test_a_change_behind_an_emoji_counts_its_units() -> None:
    assert "\N{WOOD}b" == changed("\N{WOOD}a", edit((0, 2), (0, 3), "b"))
    assert "\N{WOOD}b" == changed("\N{WOOD}a", edit((0, 1), (0, 2), "b"), encoding="utf-32")


def test_a_whole_text_takes_the_place_of_the_old() -> None:
    assert "new" == changed("old", lsp.TextDocumentContentChangeWholeDocument("new"))


def test_a_range_that_runs_backwards_is_turned_round() -> None:
    assert "ad" == changed("abcd", edit((0, 3), (0, 1), ""))


def test_a_change_of_a_text_that_is_not_open_is_let_go() -> None:
    documents = Documents(read_text)
    assert (None, False) == (documents.change(URI, 2, [edit((0, 0), (0, 0), "a")]), documents.close(URI))


def used(documents: Documents, plan: Path, name: str) -> str:
    document = Document(plan.as_uri(), "", 1)
    documents.put(document)
    return Shelf(document, documents).read(name)


def test_a_used_file_is_read_from_disk_until_it_is_open(tmp_path: Path) -> None:
    (tmp_path / "shared.plan").write_text("on disk", encoding="utf-8")
    documents = Documents(read_text)
    first = used(documents, tmp_path / "house.plan", "shared.plan")
    documents.put(Document((tmp_path / "shared.plan").as_uri(), "in the editor", 1))
    assert ("on disk", "in the editor") == (first, used(documents, tmp_path / "house.plan", "shared.plan"))


def test_a_file_outside_the_folder_of_the_plan_is_not_read_even_where_it_is_open(tmp_path: Path) -> None:
    documents = Documents(read_text)
    documents.put(Document((tmp_path / "secret.plan").as_uri(), "secret", 1))
    (tmp_path / "plans").mkdir()
    with pytest.raises(CannotRead, match=r"^it lies outside the folder of the plan$"):
        used(documents, tmp_path / "plans" / "house.plan", "../secret.plan")


def test_a_link_out_of_the_folder_is_not_followed(tmp_path: Path) -> None:
    (tmp_path / "plans").mkdir()
    (tmp_path / "secret.plan").write_text("secret", encoding="utf-8")
    (tmp_path / "plans" / "shared.plan").symlink_to(tmp_path / "secret.plan")
    with pytest.raises(CannotRead, match=r"^it lies outside the folder of the plan$"):
        used(Documents(read_text), tmp_path / "plans" / "house.plan", "shared.plan")


def test_a_plan_that_is_not_saved_uses_no_file() -> None:
    documents = Documents(read_text)
    with pytest.raises(CannotRead, match=f"^{NO_FOLDER}$"):
        Shelf(Document("untitled:Untitled-1", "", 1), documents).read("shared.plan")


@pytest.mark.parametrize(
    ("uri", "name"),
    [
        ("untitled:Untitled-1", "Untitled-1"),
        ("file:///plans/my%20house.plan", "my house.plan"),
        ("https://[::1", "1"),
        ("", "the plan"),
        ("file:///", "the plan"),
        ("memory://x/", "the plan"),
    ],
)
def test_every_text_has_a_name(uri: str, name: str) -> None:
    assert name == Document(uri, "").name


@pytest.mark.parametrize("uri", ["https://[::1", "file:///a%00b", "", "git:/plans/a.plan"])
def test_an_address_of_no_file_has_no_path(uri: str) -> None:
    assert None is path_of(uri)
