"""The live page: follows the plan and the files it uses, survives broken edits, and keeps to this machine and token."""

from __future__ import annotations

import argparse
import asyncio
import json
from concurrent.futures import ThreadPoolExecutor
from pathlib import Path

import pytest
from starlette.requests import Request
from starlette.testclient import TestClient

from speclint.commands.files import Refused
from speclint.commands.watch import _listening, live_page
from speclint.report.live import Built, Follow, LivePage
from speclint.report.server import _told, live_app, live_script

PLAN = "use \"more.plan\"\nwall south { length 30'; height 9' }\n"


def asked(path: Path) -> argparse.Namespace:
    return argparse.Namespace(
        plan=str(path), rates=None, today="2026-11-25", house_rules=None, house_limits=None, units=None
    )


def no_script(number: int) -> str:
    return ""


@pytest.fixture
def plan(tmp_path: Path) -> Path:
    (tmp_path / "more.plan").write_text('typical wall { starts 20" }\n', encoding="utf-8")
    path = tmp_path / "house.plan"
    path.write_text(PLAN, encoding="utf-8")
    return path


def test_a_page_is_built_and_nothing_is_done_while_nothing_changes(plan: Path) -> None:
    live = live_page(asked(plan), no_script)
    assert (True, False, 1) == (live.refresh(), live.refresh(), live.version)
    assert "Wall south" in live.page


def test_a_change_of_the_plan_or_of_a_file_it_uses_is_taken_up(plan: Path) -> None:
    live = live_page(asked(plan), no_script)
    live.refresh()
    plan.write_text(PLAN.replace("30'", "44'"), encoding="utf-8")
    assert (True, True) == (live.refresh(), "44&#39;" in live.page or "44&#x27;-0" in live.page or "44'-0" in live.page)
    (plan.parent / "more.plan").write_text('typical wall { starts 31" }\n', encoding="utf-8")
    assert (True, True) == (live.refresh(), "2&#x27;-7&quot;" in live.page or "31" in live.page)


def test_a_broken_edit_keeps_the_last_good_page_and_tells_the_mistake(plan: Path) -> None:
    live = live_page(asked(plan), no_script)
    live.refresh()
    good = live.page
    plan.write_text(PLAN.replace("height", "heigth"), encoding="utf-8")
    live.refresh()
    assert (good, 1, True) == (live.page, len(live.trouble), "heigth" in live.trouble[0])
    plan.write_text(PLAN, encoding="utf-8")
    live.refresh()
    assert () == live.trouble


def test_a_plan_that_is_gone_for_a_moment_is_told_and_found_again(plan: Path) -> None:
    live = live_page(asked(plan), no_script)
    live.refresh()
    good = live.page
    plan.unlink()
    live.refresh()
    assert (good, True) == (live.page, "there is no such file" in live.trouble[0])
    plan.write_text(PLAN, encoding="utf-8")
    live.refresh()
    assert () == live.trouble


def test_a_plan_that_was_never_whole_shows_what_can_be_shown() -> None:
    live = LivePage(lambda number, follow: Built("half", ("mistake",)))
    live.refresh()
    assert ("half", ("mistake",)) == (live.page, live.trouble)


def test_a_save_made_while_the_page_is_being_built_is_taken_up_next(tmp_path: Path) -> None:
    plan, used = tmp_path / "a.plan", tmp_path / "b.plan"
    later = iter(["second", "third"])

    def build(number: int, follow: Follow) -> Built:
        read = []
        for path in (plan, used):
            follow(path)
            read.append(path.read_text(encoding="utf-8"))
            path.write_text(next(later, read[-1]), encoding="utf-8")
        return Built(" ".join(read), ())

    for path in (plan, used):
        path.write_text("a much longer first", encoding="utf-8")
    live = LivePage(build)
    assert (True, "a much longer first a much longer first") == (live.refresh(), live.page)
    assert (True, "second third") == (live.refresh(), live.page)


def test_every_page_has_a_number_and_one_that_is_not_shown_takes_none() -> None:
    made = iter([("half", ("x",)), ("half", ("y",)), ("whole", ()), ("half", ("z",)), ("whole", ())])
    numbers: list[int] = []
    stamps = iter(range(100))

    def build(number: int, follow: Follow) -> Built:
        numbers.append(number)
        return Built(*next(made))

    live = LivePage(build)
    shown = []
    for _ in range(5):
        live._stamps[Path(f"gone-{next(stamps)}")] = (1, 1, 1)  # a file that changes
        live.refresh()
        shown.append((live.number, live.whole, live.page))
    expected = [(1, False, "half"), (2, False, "half"), (3, True, "whole"), (3, True, "whole"), (4, True, "whole")]
    assert (expected, [1, 2, 3, 4, 4]) == (shown, numbers)


def test_the_page_knows_its_number() -> None:
    assert ("const shown = 7;", False) == (live_script(7).splitlines()[1], "PAGE_NUMBER" in live_script(7))


def test_a_change_between_the_look_and_the_wait_wakes_the_stream() -> None:
    live = LivePage(lambda number, follow: Built("page", ()))
    live.refresh()

    async def told() -> list[int]:
        event = asyncio.Event()
        stream = _told(live, lambda: event, _Staying())
        found = [json.loads((await anext(stream))[6:])["version"]]
        live.version, old, event = 2, event, asyncio.Event()  # while the first message is on its way
        old.set()
        found.append(json.loads((await asyncio.wait_for(anext(stream), 5))[6:])["version"])
        return found

    with ThreadPoolExecutor(1) as apart:  # a browser test may have left a loop of its own in this thread
        assert [1, 2] == apart.submit(lambda: asyncio.run(told())).result()


class _Staying(Request):
    """A request of a reader who stays."""

    def __init__(self) -> None:
        super().__init__({"type": "http"})

    async def is_disconnected(self) -> bool:
        return False


def client(live: LivePage, host: str = "127.0.0.1") -> TestClient:
    return TestClient(live_app(live, "secret"), base_url=f"http://{host}")


def test_the_page_is_shown_to_who_knows_the_token_and_to_nobody_else() -> None:
    live = LivePage(lambda number, follow: Built("<p>page</p>", ()))
    live.refresh()
    with client(live) as seen:
        assert (200, "<p>page</p>") == ((told := seen.get("/secret/")).status_code, told.text)
        assert [404, 404, 404] == [seen.get(path).status_code for path in ("/guess/", "/guess/changes", "/")]
        assert "no-store" == told.headers["cache-control"]


def test_another_host_is_refused() -> None:
    live = LivePage(lambda number, follow: Built("page", ()))
    live.refresh()
    with client(live, "evil.example") as seen:
        assert 400 == seen.get("/secret/").status_code


def test_changes_are_pushed_with_the_trouble_there_is() -> None:
    live = LivePage(lambda number, follow: Built("page", ("a.plan:1:1: mistake",)))
    live.refresh()
    with client(live) as seen, seen.stream("GET", "/secret/changes") as stream:
        line = next(line for line in stream.iter_lines() if line.startswith("data: "))
        expected = {"version": 1, "page": 1, "whole": False, "trouble": ["a.plan:1:1: mistake"]}
        assert expected == json.loads(line[6:])


def test_a_port_in_use_is_refused_in_words() -> None:
    held = _listening(0)
    with pytest.raises(Refused, match="cannot be had"):
        _listening(held.getsockname()[1])
    held.close()


def test_the_server_listens_on_this_machine_only() -> None:
    found = _listening(0)
    assert "127.0.0.1" == found.getsockname()[0]
    found.close()
