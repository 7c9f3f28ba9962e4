"""What is told of one plan, in the form asked for; made where nothing was kept."""

from __future__ import annotations

import argparse
from functools import lru_cache
from io import BytesIO
from typing import Any

from speclint.commands.asked import DEMO, PIPED, Asked, grave, state_of_program, state_of_used
from speclint.commands.common import rulebook_of, units_of
from speclint.commands.files import Refused, demo_plan, open_plan, piped_plan, plan_of
from speclint.commands.told import SHELF, Piece, Task, Unread
from speclint.kept import shelve
from speclint.pipeline import PlanText, review
from speclint.rulebook.book import Rulebook
from speclint.rulebook.rule import GRADES
from speclint.ruling import Review
from speclint.units import System


def piece_of(task: Task, asked: Asked) -> Piece | Unread:
    """What is told of a plan, kept for the next run."""
    return maker_of(asked, task.state).piece(task)


@lru_cache(maxsize=1)
def maker_of(asked: Asked, state: str) -> Maker:
    """The maker of what a run asks in a state of the program; one a process, and another where the state changed."""
    return Maker(asked, state)


class Maker:
    """Makes pieces: holds the rulebook that the run asks for.

    Args:
        asked: What the run asks.
        state: The state of the program when the run began; where it has changed since, nothing is kept.

    Raises:
        BrokenRulebook: If a page or the file of limits cannot be used.
        Refused: If a page or the file of limits cannot be read.
    """

    def __init__(self, asked: Asked, state: str) -> None:
        self.asked = asked
        self.stated = argparse.Namespace(
            house_rules=asked.house_rules, house_limits=asked.house_limits, units=asked.units
        )
        self.book: Rulebook = rulebook_of(self.stated)
        try:
            self.keeps = bool(state) and state == state_of_program(asked)
        except OSError:
            self.keeps = False

    def piece(self, task: Task) -> Piece | Unread:
        """What is told of a plan."""
        try:
            opened = _opened(task)
            reader = _Recorder(opened, task.path)
            plan = PlanText(opened.text, opened.name, reader)
            system = units_of(self.stated, plan.text)
            found = self._reviewed(plan, system)
        except Refused as trouble:
            return Unread(str(trouble), trouble.status)
        grades = {ruling.grade for ruling in found.rulings}
        body = self._body(found, plan, system, task.uri)
        piece = Piece(body, tuple(one for one in GRADES if one in grades), bool(found.mistakes))
        if task.key and self.keeps and reader.unchanged():
            shelve(SHELF, task.key, (tuple(reader.seen.items()), *piece))
        return piece

    def _reviewed(self, plan: PlanText, system: System) -> Review:
        try:
            return review(plan, self.book, self.asked.today, system, self.asked.alternate)
        except LookupError as trouble:
            named = self.asked.alternate
            raise Refused(f"{plan.name}: there is no alternate “{named}”; alternates: {trouble.args[0]}", 3) from None

    def _body(self, found: Review, plan: PlanText, system: System, uri: str) -> Any:
        asked = self.asked
        if asked.form == "json":
            from speclint.outputs.data import as_json, review_object

            return as_json(review_object(found, system))
        if asked.form == "sarif":
            from speclint.outputs.sarif import results

            changes = {}
            if asked.cures:
                from speclint.commands.suggested import suggested

                changes = suggested(plan, self.book, asked.today, system)
            return uri, results(found, uri, plan.text, changes)
        if asked.form == "junit":
            from speclint.outputs.junit import suite

            return tuple(suite(found, grave(asked.hold_at)))
        return self._letter(found)

    def _letter(self, found: Review) -> str:
        from speclint.outputs.letter import Frame, letter, text_of

        lines = letter(found, Frame(self.asked.width, self.asked.today, self.asked.brief))
        if not self.asked.colour:
            return text_of(lines)
        from speclint.outputs.terminal import styled

        return styled(lines, self.asked.width)


def _opened(task: Task) -> PlanText:
    if task.path == DEMO:
        return demo_plan()
    if task.path == PIPED:
        return piped_plan(BytesIO(task.raw or b""))
    return open_plan(task.path) if task.raw is None else plan_of(task.raw, task.path)


class _Recorder:
    """Reads the files that a plan uses, and notes the state of each before it is read."""

    def __init__(self, plan: PlanText, path: str) -> None:
        self.plan, self.path = plan, path
        self.seen: dict[str, str] = {}

    def __call__(self, used: str) -> str:
        self.seen.setdefault(used, state_of_used(self.path, used))
        return self.plan.read(used)

    def unchanged(self) -> bool:
        """Whether every file is still as it was before it was read."""
        return all(state_of_used(self.path, used) == state for used, state in self.seen.items())
