"""Whole sessions with the program over its standard input and output."""

from __future__ import annotations

import datetime
import json
from pathlib import Path
from random import Random
from typing import Any

import pytest
from lsprotocol import converters
from lsprotocol import types as lsp

from speclint.commands.files import open_plan
from speclint.editor.diagnose import diagnostics
from speclint.editor.positions import Lines
from speclint.language.layout import tidied
from speclint.language.uses import CannotRead
from speclint.pipeline import PlanText, review
from tests.editor.client import Client, address, wait_for_end
from tests.editor.given import PLAN, SPECS, book

DEMO = (SPECS / "tamarack-point.plan").read_text(encoding="utf-8")
URI = "file:///plans/house.plan"
Told = list[dict[str, Any]]


def no_file(name: str) -> str:
    raise CannotRead("there is no such file")


def cold(text: str, encoding: str = "utf-16") -> Told:
    """What a review of its own tells of a text."""
    today = datetime.date.today().isoformat()
    result = review(PlanText(text, "house.plan", no_file), book(), today)
    converter = converters.get_converter()
    told = diagnostics(result, lambda file: Lines(text, encoding))["house.plan"]
    return [json.loads(json.dumps(converter.unstructure(one))) for one in told]


@pytest.fixture
def client() -> Any:
    with Client() as begun:
        begun.begin()
        yield begun


def test_what_is_told_of_the_demo_plan_is_what_a_review_finds(client: Client) -> None:
    client.open(URI, DEMO)
    told = client.diagnostics(URI, 1)
    result = review(PlanText(DEMO, "house.plan", no_file), book(), datetime.date.today().isoformat())
    assert [(one.rule, one.place.line - 1) for one in result.rulings] == [
        (one["code"], one["range"]["start"]["line"]) for one in told
    ]
    assert cold(DEMO) == told


def test_a_session_ends_in_order(client: Client) -> None:
    client.open(URI, DEMO)
    assert (0, []) == (client.end(), client.said)


def test_an_exit_without_shutdown_and_an_end_of_input_end_the_program() -> None:
    with Client() as leaving:
        leaving.begin()
        leaving.notify("exit")
        assert 1 == wait_for_end(leaving, 20)
    with Client() as gone:
        gone.begin()
        gone.open(URI, DEMO)
        gone.process.stdin.close()
        assert 1 == wait_for_end(gone, 20)


def test_a_shutdown_without_exit_ends_with_the_input(client: Client) -> None:
    client.ask("shutdown")
    refused = client.answer(
        "textDocument/hover", {"textDocument": {"uri": URI}, "position": {"line": 0, "character": 0}}
    )
    client.process.stdin.close()
    assert (-32600, 0) == (refused["error"]["code"], wait_for_end(client, 20))


class Typist:
    """Somebody who types, deletes and pastes, and knows the text without asking."""

    def __init__(self, text: str, seed: int, encoding: str) -> None:
        self.text, self.random, self.encoding = text, Random(seed), encoding
        self.pieces = [
            *"{};,\"'#\n",
            "\r\n",
            "wall ",
            "9'-6\"",
            "10′",
            "\N{WOOD}",
            "finish ",
            "unknown",
            "like x",
            "é",
            "\u2028",
        ]

    def edit(self) -> dict[str, Any]:
        """The next edit, made in the text too."""
        at = self.random.randrange(len(self.text) + 1)
        end = min(len(self.text), at + self.random.choice([0, 0, 0, 1, 2, 9]))
        new = self.random.choice(self.pieces) if self.random.random() < 0.8 else ""
        lines = Lines(self.text, self.encoding)
        # a position between the two characters of an end of line is none
        at, end = (one - (self.text[max(0, one - 1) : one + 1] == "\r\n") for one in (at, end))
        where = {
            name: {"line": place.line, "character": place.character}
            for name, place in (("start", lines.position(at)), ("end", lines.position(end)))
        }
        self.text = self.text[:at] + new + self.text[end:]
        return {"range": where, "text": new}


@pytest.mark.parametrize(("seed", "encoding"), [(1, "utf-16"), (2, "utf-32")])
def test_after_a_storm_of_edits_the_last_text_is_told_of_as_if_it_were_read_cold(seed: int, encoding: str) -> None:
    with Client() as client:
        able = client.begin(general={"positionEncodings": [encoding, "utf-16"]})
        client.open(URI, DEMO)
        typist = Typist(DEMO, seed, encoding)
        for version in range(2, 302):
            client.change(URI, version, *(typist.edit() for _ in range(1 + version % 3)))
            if version % 50 == 0:
                client.diagnostics(URI, version)
        told = client.diagnostics(URI, 301)
        client.quiet(0.3)
        assert encoding == able["positionEncoding"]
        assert cold(typist.text, encoding) == told == client.told[URI][-1]["diagnostics"]
        assert 0 == client.end()
        assert [] == client.said


def test_a_text_with_ends_of_lines_of_two_characters_is_told_of_in_the_same_places(client: Client) -> None:
    client.open(URI, DEMO.replace("\n", "\r\n"))
    assert cold(DEMO) == client.diagnostics(URI, 1)


BROKEN = [
    b"Content-Length: 3\r\n\r\n{a}",
    b"Content-Length: 2\r\n\r\n[]",
    b"Content-Length: 4\r\n\r\nnull",
    b"Content-Length: 2\r\n\r\n{}",
    b"Content-Length: 4\r\n\r\n\xff\xfe\xfd\xfc",
    b"Content-Length: 0\r\n\r\n",
    b"Content-Length: -5\r\n\r\n",
    b"Content-Length: many\r\n\r\n",
    b"\r\n\r\n\r\n",
    b"GET / HTTP/1.1\r\n\r\n",
    b"Content-Length: 20000\r\n\r\n" + b"[" * 20000,
    b"Content-Length: 70000000\r\n\r\n" + b" " * 70_000_000,
]


@pytest.mark.parametrize("sent", BROKEN, ids=range(len(BROKEN)))
def test_a_message_that_is_none_does_no_harm(client: Client, sent: bytes) -> None:
    client.raw(sent)
    client.open(URI, PLAN)
    assert cold(PLAN) == client.diagnostics(URI, 1)
    assert not any("Traceback" in line for line in client.said)


def test_a_length_in_another_case_is_understood(client: Client) -> None:
    body = json.dumps({"jsonrpc": "2.0", "id": "a", "method": "shutdown"}).encode()
    client.raw(b"content-type: x\r\ncontent-length:%d\r\n\r\n%s" % (len(body), body))
    assert None is client.until("a")["result"]


WRONG: list[tuple[str, Any, int]] = [
    ("textDocument/nonsense", {}, -32601),
    ("textDocument/hover", {}, -32602),
    ("textDocument/hover", None, -32602),
    ("textDocument/hover", {"textDocument": {"uri": 5}, "position": "here"}, -32602),
    ("textDocument/completion", {"textDocument": {"uri": URI}, "position": {"line": -1, "character": "x"}}, -32602),
    ("textDocument/rename", {"textDocument": {"uri": URI}, "position": {"line": 0, "character": 0}}, -32602),
    ("workspace/executeCommand", {"command": "no such"}, -32602),
]


@pytest.mark.parametrize(("method", "params", "code"), WRONG)
def test_a_request_that_is_wrong_is_answered_with_an_error(client: Client, method: str, params: Any, code: int) -> None:
    client.open(URI, PLAN)
    assert code == client.answer(method, params)["error"]["code"]
    assert cold(PLAN) == client.diagnostics(URI, 1)


def test_a_request_before_the_session_is_set_up_is_refused() -> None:
    with Client() as early:
        params = {"textDocument": {"uri": URI}, "position": {"line": 0, "character": 0}}
        assert -32002 == early.answer("textDocument/hover", params)["error"]["code"]
        early.open(URI, PLAN)
        assert "positionEncoding" in early.begin()


def test_notifications_that_fit_nothing_are_let_go(client: Client) -> None:
    client.change("file:///plans/other.plan", 5, {"text": "wall a"})
    client.notify("textDocument/didClose", textDocument={"uri": "file:///plans/other.plan"})
    client.notify("textDocument/didClose", nonsense=1)
    client.notify("$/cancelRequest", id=99)
    client.notify("no/such", a=1)
    client.open(URI, PLAN)
    assert cold(PLAN) == client.diagnostics(URI, 1)


@pytest.mark.parametrize("uri", ["untitled:Untitled-1", "https://[::1/a.plan", "", "git:/a.plan?x#y"])
def test_a_text_that_is_no_file_is_reviewed_too(client: Client, uri: str) -> None:
    client.open(uri, 'wall a { hieght 9\' }\nuse "shared.plan"')
    found = [one["message"].split("\n")[0] for one in client.diagnostics(uri, 1) if one["code"] == "mistake"]
    assert [
        "“hieght” is not a setting of a wall",
        '"shared.plan" cannot be read: a plan that is not saved can use no other file',
    ] == found


def test_a_closed_text_is_told_of_no_more(client: Client) -> None:
    client.open(URI, PLAN)
    client.diagnostics(URI, 1)
    client.notify("textDocument/didClose", textDocument={"uri": URI})
    assert [] == client.diagnostics(URI, None)
    assert None is client.at("hover", URI, 0, 0)


def test_a_used_file_is_judged_as_a_part_of_the_plan_that_uses_it(client: Client, tmp_path: Path) -> None:
    (tmp_path / "shared.plan").write_text("typical wall { hieght 9' }", encoding="utf-8")
    (tmp_path / "house.plan").write_text('use "shared.plan"\nwall a { faces S }', encoding="utf-8")
    house, shared = (address(tmp_path / name) for name in ("house.plan", "shared.plan"))
    client.open(house, (tmp_path / "house.plan").read_text())
    told = client.diagnostics(shared, None)
    assert ["“hieght” is not a setting of a wall\ndid you mean “height”?"] == [one["message"] for one in told]
    client.open(shared, 'typical wall { build log round 10";  starts 2";  ground lawn }', version=7)
    found = client.diagnostics(shared, 7)
    while not found or {one["code"] for one in found} != {"sill-too-near-grade"}:
        client.take()
        found = client.told[shared][-1]["diagnostics"]
    assert "wall a starts 2" in found[0]["message"]
    params = {"textDocument": {"uri": shared}, "range": found[0]["range"], "context": {"diagnostics": found}}
    (action,) = client.ask("textDocument/codeAction", **params)
    assert ("(in house.plan)", [house]) == (action["title"][-15:], list(action["edit"]["changes"]))
    assert "starts" in action["edit"]["changes"][house][0]["newText"]
    assert open_plan(str(tmp_path / "house.plan")).read("shared.plan") == "typical wall { hieght 9' }"


def test_a_used_file_that_changes_on_disk_is_read_again(client: Client, tmp_path: Path) -> None:
    house, shared = tmp_path / "house.plan", tmp_path / "shared.plan"
    shared.write_text("typical wall { hieght 9' }", encoding="utf-8")
    client.open(address(house), 'use "shared.plan"\nwall a { faces S }')
    assert ["mistake"] == [one["code"] for one in client.diagnostics(address(shared), None)]
    shared.write_text("typical wall { height 9' }", encoding="utf-8")
    client.notify("workspace/didChangeWatchedFiles", changes=[{"uri": address(shared), "type": 2}])
    while client.told[address(shared)][-1]["diagnostics"]:
        client.take()
    assert [] == client.told[address(shared)][-1]["diagnostics"]


def test_names_are_followed_and_changed_over_the_files_of_a_plan(client: Client, tmp_path: Path) -> None:
    texts = {
        "house": 'use "shared.plan"\nwall south { like bare }',
        "shared": "typical wall bare { }\ncorner a { of south, b }",
    }
    uris = {name: address(tmp_path / f"{name}.plan") for name in texts}
    for name, text in texts.items():
        (tmp_path / f"{name}.plan").write_text(text, encoding="utf-8")
        client.open(uris[name], text)
        client.diagnostics(uris[name], 1)
    client.quiet(0.3)
    (found,) = client.at("definition", uris["shared"], 1, 15)
    assert (uris["house"], 1) == (found["uri"], found["range"]["start"]["line"])
    both = client.at("references", uris["shared"], 1, 15, context={"includeDeclaration": True})
    assert {uris["house"], uris["shared"]} == {one["uri"] for one in both}
    edit = client.at("rename", uris["shared"], 1, 15, newName="front")
    assert {uris["house"]: 1, uris["shared"]: 1} == {uri: len(edits) for uri, edits in edit["changes"].items()}
    assert {"line": 1, "character": 14} == client.at("prepareRename", uris["shared"], 1, 15)["start"]


def test_a_rename_that_is_refused_says_why(client: Client) -> None:
    client.open(URI, PLAN)
    position = {"line": 3, "character": 6}
    answer = client.answer(
        "textDocument/rename", {"textDocument": {"uri": URI}, "position": position, "newName": "east"}
    )
    assert (-32803, "wall east is already there; give it another name") == (
        answer["error"]["code"],
        answer["error"]["message"],
    )


def test_edits_are_bound_to_a_version_where_the_editor_can_take_that() -> None:
    with Client() as client:
        client.begin(workspace={"workspaceEdit": {"documentChanges": True}})
        client.open(URI, PLAN, version=4)
        edit = client.at("rename", URI, 3, 6, newName="front")
        (change,) = edit["documentChanges"]
        assert ({"uri": URI, "version": 4}, 4) == (change["textDocument"], len(change["edits"]))


def test_a_quick_fix_clears_what_it_settles(client: Client) -> None:
    client.open(URI, DEMO)
    told = [one for one in client.diagnostics(URI, 1) if one["code"] == "chimney-without-cricket"]
    params = {"textDocument": {"uri": URI}, "range": told[0]["range"], "context": {"diagnostics": told}}
    action = client.ask("textDocument/codeAction", **params)[0]
    (edit,) = action["edit"]["changes"][URI]
    client.change(URI, 2, {"range": edit["range"], "text": edit["newText"]})
    after = client.diagnostics(URI, 2)
    assert ("quickfix", told, True) == (action["kind"], action["diagnostics"], action["isPreferred"])
    assert "chimney-without-cricket" not in {one["code"] for one in after}


def test_why_there_is_no_quick_fix_is_told_to_editors_that_can_show_it() -> None:
    able = {"codeAction": {"disabledSupport": True}}
    for capabilities, expected in (({}, []), ({"textDocument": able}, ["a fact of the lot"])):
        with Client() as client:
            client.begin(**capabilities)
            client.open(URI, PLAN)
            told = [one for one in client.diagnostics(URI, 1) if one["code"] == "site-facts-missing"]
            params = {"textDocument": {"uri": URI}, "range": told[0]["range"], "context": {"diagnostics": told}}
            found = client.ask("textDocument/codeAction", **params)
            assert expected == [one["disabled"]["reason"].split(": ")[-1].split(",")[0] for one in found]


def test_hovering_in_plain_text_for_editors_that_want_it() -> None:
    with Client() as client:
        client.begin(textDocument={"hover": {"contentFormat": ["plaintext"]}})
        client.open(URI, PLAN)
        found = client.at("hover", URI, 3, 6)
        assert ("plaintext", True) == (found["contents"]["kind"], found["contents"]["value"].startswith("wall south\n"))


def test_outline_folding_and_completion_come_over_the_wire(client: Client) -> None:
    client.open(URI, DEMO)
    where: dict[str, Any] = {"textDocument": {"uri": URI}}
    assert "wall west" in {one["name"] for one in client.ask("textDocument/documentSymbol", **where)}
    assert {"startLine": 3, "endLine": 14} in client.ask("textDocument/foldingRange", **where)
    assert "step" in {item["label"] for item in client.at("completion", URI, 2, 0)["items"]}


def test_layout_is_that_of_the_program(client: Client) -> None:
    text = "wall a {height 9';\r\n\r\n\r\n faces S   # the lake side\r\n}"
    where = {"textDocument": {"uri": URI}, "options": {"tabSize": 4, "insertSpaces": True}}
    client.open(URI, text)
    (edit,) = client.ask("textDocument/formatting", **where)
    client.change(URI, 2, {"text": edit["newText"]})
    assert (tidied(text), []) == (edit["newText"], client.ask("textDocument/formatting", **where))
    client.change(URI, 3, {"text": "wall a { height 9'"})
    assert [] == client.ask("textDocument/formatting", **where)


def test_messages_torn_at_random_leave_the_session_alive(client: Client) -> None:
    random = Random(5)
    methods = [name for name in lsp.METHOD_TO_TYPES if name not in ("exit", "shutdown", "initialize")]
    values: list[Any] = [
        None,
        -1,
        10**30,
        "",
        URI,
        [],
        {},
        True,
        {"line": 0},
        {"uri": URI},
        [{"text": 1}],
        "\ud800",
        0.5,
    ]
    keys = [
        "textDocument",
        "position",
        "contentChanges",
        "context",
        "newName",
        "range",
        "id",
        "settings",
        "uri",
        "token",
    ]
    asked: set[int | str] = set()
    client.open(URI, PLAN)
    for at in range(400):
        params = {random.choice(keys): random.choice(values) for _ in range(random.randrange(5))}
        message = {
            "jsonrpc": "2.0",
            "method": random.choice(methods),
            "params": random.choice([params, params, *values]),
        }
        if random.random() < 0.7:
            message["id"] = random.choice([at + 1000, f"n{at}", None, 1.5, [], {}])
        if random.random() < 0.1:
            message.pop(random.choice(list(message)))
        if {"jsonrpc", "method"} <= set(message) and isinstance(message.get("id"), int | str):
            asked.add(message["id"])
        client.send(message)
    client.change(URI, 2, {"text": DEMO})
    assert cold(DEMO) == client.diagnostics(URI, 2)
    client.quiet(0.3)
    assert (asked, True) == (asked & set(client.answers), len(asked) > 50)
    assert 0 == client.end()
    assert not any("Traceback" in line for line in client.said)


@pytest.mark.parametrize("seed", range(3))
def test_noise_ends_the_program_in_its_own_time_and_not_in_a_fault(seed: int) -> None:
    random = Random(seed)
    with Client() as client:
        client.raw(random.randbytes(100_000) + b"Content-Length: 12\r\n\r\n" + random.randbytes(5))
        client.process.stdin.close()
        assert 1 == wait_for_end(client, 20)
        assert not any("Traceback" in line for line in client.said)


def test_units_and_house_rules_are_taken_as_a_review_takes_them() -> None:
    with Client("--units", "metric") as client:
        client.begin()
        client.open(URI, PLAN)
        told = " ".join(one["message"] for one in client.diagnostics(URI, 1))
        assert (True, False) == (" mm" in told, "2'-0\"" in told)


def test_an_unusable_rulebook_is_refused_before_the_session_begins(tmp_path: Path) -> None:
    with Client("--house-rules", str(tmp_path / "absent")) as client:
        assert 3 == wait_for_end(client, 20)
        assert None is client.came.get(timeout=20)
    assert "speclint: the rulebook cannot be used:\n" == client.said[0]
