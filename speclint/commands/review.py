"""`speclint review`."""

from __future__ import annotations

import argparse
import datetime
import sys
from io import BytesIO
from pathlib import Path

from speclint.commands.common import put, rendered, rulebook_of, tell, units_of, width
from speclint.commands.files import Refused, demo_plan, open_plan, piped_plan, write_file
from speclint.outputs.letter import Frame, letter, text_of
from speclint.pipeline import PlanText, review
from speclint.rulebook.book import Rulebook
from speclint.rulebook.rule import GRADES
from speclint.ruling import Review
from speclint.units import System


def run(stated: argparse.Namespace) -> int:
    """Review the plans; the exit status is the gravest of them."""
    if not stated.plans and not stated.demo:
        raise Refused("name a plan to review, or ask for --demo", 3)
    today = _day(stated.today)
    book = rulebook_of(stated)
    status = 0
    found: list[tuple[Review, System]] = []
    for path in [*stated.plans, *(["--demo"] if stated.demo else [])]:
        try:
            plan = _plan(path)
            system = units_of(stated, plan.text)
            found.append((_reviewed(plan, book, today, system, stated.alternate), system))
        except Refused as trouble:
            tell(f"speclint: {trouble}")
            status = max(status, trouble.status)
    text = _text(found, today, stated)
    if stated.into:
        write_file(Path(stated.into), text)
    elif text:
        put(text)
    grave = GRADES[: GRADES.index(stated.hold_at) + 1]
    for result, _ in found:
        holds = any(ruling.grade in grave for ruling in result.rulings)
        status = max(status, 2 if result.mistakes else 1 if holds else 0)
    return status


def _plan(path: str) -> PlanText:
    if path == "--demo":
        return demo_plan()
    if path == "-":
        return piped_plan(sys.stdin.buffer if sys.stdin else BytesIO())
    return open_plan(path)


def _reviewed(plan: PlanText, book: Rulebook, today: str, system: System, alternate: str) -> Review:
    try:
        return review(plan, book, today, system, alternate)
    except LookupError as trouble:
        raise Refused(f"{plan.name}: there is no alternate “{alternate}”; alternates: {trouble.args[0]}", 3) from None


def _text(found: list[tuple[Review, System]], today: str, stated: argparse.Namespace) -> str:
    if stated.json:
        from speclint.outputs.data import as_json, review_object

        objects = [review_object(result, system) for result, system in found]
        if not objects:
            return ""
        return as_json(objects[0] if len(stated.plans) + stated.demo == 1 else objects)
    frame = Frame(width(), today, stated.brief)
    letters = [letter(result, frame) for result, _ in found]
    if stated.into:
        return "\n\n".join(text_of(lines) for lines in letters)
    return "\n\n".join(rendered(lines, stated) for lines in letters)


def _day(stated: str | None) -> str:
    if stated is None:
        return datetime.date.today().isoformat()
    try:
        return datetime.date.fromisoformat(stated).isoformat()
    except ValueError:
        raise Refused(f"“{stated}” is not a date such as 2027-06-30", 3) from None
