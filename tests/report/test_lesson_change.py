"""What a lesson shows of the change that makes its house faulty."""

from __future__ import annotations

from speclint.report.lesson_page import _change

SOUND = """
roof main {
    covers south
    eaves 4'
}
deck lake {
    held by posts
}
post lake { base standoff }
"""


def test_a_changed_line_is_told_in_its_block() -> None:
    faulty = SOUND.replace("eaves 4'", "eaves 1'")
    assert ("roof main {\n    eaves 4'\n}", "roof main {\n    eaves 1'\n}") == _change(SOUND, faulty)


def test_lines_of_several_blocks_are_told_each_in_its_own() -> None:
    faulty = (
        SOUND.replace("eaves 4'", "eaves 1'").replace("held by posts", "held by ledger").replace("standoff", "wood")
    )
    had, has = _change(SOUND, faulty)
    assert "roof main {\n    eaves 4'\n}\ndeck lake {\n    held by posts\n}\npost lake { base standoff }" == had
    assert "roof main {\n    eaves 1'\n}\ndeck lake {\n    held by ledger\n}\npost lake { base wood }" == has


def test_a_block_that_is_added_is_told_whole_and_once() -> None:
    ledger = "ledger lake {\n    carries deck lake\n}\n"
    faulty = SOUND.replace("held by posts", "held by ledger").replace("post lake", f"{ledger}post lake")
    assert _change(SOUND, faulty)[1] == f"deck lake {{\n    held by ledger\n}}\n{ledger.rstrip()}"


def test_what_is_left_out_is_said_to_be() -> None:
    assert ("post lake { base standoff }", "(left out)") == _change(
        SOUND, SOUND.replace("post lake { base standoff }", "")
    )
