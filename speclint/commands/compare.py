"""`speclint compare`."""

from __future__ import annotations

import argparse
import datetime
from collections.abc import Sequence
from dataclasses import dataclass, replace

from speclint.commands.common import put, rendered, rulebook_of, tell, units_of, width
from speclint.commands.files import Refused
from speclint.commands.moved import moved_plans
from speclint.commands.plan_sets import Opener, Recorder, Side, same_text, sides_of_revisions, sides_on_disk
from speclint.commands.results import write_result
from speclint.outputs.compare import Compared, plan_lines, summary, worse_alone
from speclint.outputs.compare_object import Told, comparison_object
from speclint.outputs.letter import Line, Part, text_of
from speclint.pipeline import PlanText, read_home, review
from speclint.review.judge import judge
from speclint.review.revisions import Comparison, Revision, all_new, compare, unchanged
from speclint.rulebook.book import Rulebook
from speclint.rulebook.rule import GRADES
from speclint.ruling import Review
from speclint.units import System


@dataclass(frozen=True, slots=True)
class _Desk:
    """What every plan of the run is compared by."""

    stated: argparse.Namespace
    book: Rulebook
    today: str
    day_of_old: str


def run(stated: argparse.Namespace) -> int:
    """Compare the plans of two sides; the exit status is the gravest of them."""
    old, new = _sides(stated)
    today = _day(stated.today, datetime.date.today().isoformat())
    desk = _Desk(stated, rulebook_of(stated), today, _day(stated.day_of_old, today))
    plans: list[Compared] = []
    troubles: list[tuple[str, str]] = []
    status = 0
    moved = moved_plans(old.plans, new.plans)
    for name in sorted({*old.plans, *new.plans} - {*moved.values()}):
        before = old.plans.get(moved.get(name, name))
        try:
            plans.append(replace(_compared(name, before, new.plans.get(name), desk), moved=moved.get(name, "")))
        except Refused as trouble:
            tell(f"speclint: {trouble}")
            troubles.append((name, str(trouble)))
            status = max(status, trouble.status)
    status = max([status, *(_status(one.comparison, stated) for one in plans if one.comparison)])
    text = _text(Told(old.title, old.commit, new.title, new.commit, today, tuple(plans), tuple(troubles), status), desk)
    if stated.into:
        write_result(stated.into, text, stated, (*old.files, *new.files))
    else:
        put(text)
    return status


def _day(stated: str | None, otherwise: str) -> str:
    if stated is None:
        return otherwise
    try:
        return datetime.date.fromisoformat(stated).isoformat()
    except ValueError:
        raise Refused(f"“{stated}” is not a date such as 2027-06-30", 3) from None


def _sides(stated: argparse.Namespace) -> tuple[Side, Side]:
    if stated.revisions:
        return sides_of_revisions(stated.words)
    if len(stated.words) != 2:
        raise Refused("name two plans or two folders, the old and the new, or ask for --revisions", 3)
    return sides_on_disk(*stated.words)


def _compared(name: str, old: Opener | None, new: Opener | None, desk: _Desk) -> Compared:
    """One plan compared.

    Raises:
        Refused: If either side of it cannot be read.
    """
    if new is None:
        return Compared(name, "removed", None)
    after = new()
    system = units_of(desk.stated, after.text)
    if old is None:
        return Compared(name, "added", all_new(review(after, desk.book, desk.today, system)))
    before = old()
    recorder = Recorder(after.read)
    told = review(PlanText(after.text, after.name, recorder), desk.book, desk.today, system)
    if desk.today == desk.day_of_old and same_text(before, after, recorder.asked):
        return Compared(name, "both", unchanged(told))
    then = review(before, desk.book, desk.day_of_old, system)
    was = _revision(before, then, desk, system, desk.day_of_old)
    now = _revision(after, told, desk, system, desk.today)
    return Compared(name, "both", compare(was, now, desk.book, system))


def _revision(plan: PlanText, told: Review, desk: _Desk, system: System, day: str) -> Revision:
    """A plan with its alternates, as of a day."""
    sheet, _ = read_home(plan)
    others = {}
    for name in sheet.home.alternates:
        other, _ = read_home(plan, name)
        found = review(plan, desk.book, day, system, name)
        others[name] = Revision(other, found, tuple(judge(other, desk.book, system)[0]))
    return Revision(sheet, told, tuple(judge(sheet, desk.book, system)[0]), others)


def _status(found: Comparison, stated: argparse.Namespace) -> int:
    """2 where the new plan cannot be read whole, else 1 where it holds, or with --worse where it got worse."""
    if found.review.mistakes:
        return 2
    at = stated.hold_at or ("revise" if stated.worse else "hold")
    grave = GRADES[: GRADES.index(at) + 1]
    if stated.worse:
        return 1 if found.got("worse", grave) else 0
    return 1 if any(ruling.grade in grave for ruling in found.review.rulings) else 0


def _worth_telling(plans: Sequence[Compared], stated: argparse.Namespace) -> list[Compared]:
    """The plans that changed, or the only one, and those that decide the exit status.

    With --worse those that got worse, and of them that alone.
    """
    found: list[Compared] = []
    for one in plans:
        told = one.comparison
        if told is None or (one.moved and not stated.worse):
            found += [] if stated.worse else [one]
            continue
        left = worse_alone(told) if stated.worse else told
        if not left.nothing or _status(told, stated) or (len(plans) == 1 and not stated.worse):
            found.append(replace(one, comparison=left))
    return found


def _text(told: Told, desk: _Desk) -> str:
    stated = desk.stated
    if stated.json:
        return comparison_object(told)
    if stated.markdown:
        from speclint.outputs.compare_markdown import comparison_markdown

        return comparison_markdown(told)
    lines: list[Line] = [
        (Part("COMPARISON", "title"), Part(f"  {told.old} to {told.new}", "title")),
        (Part(f"{told.day}, {len(desk.book.rules)} rules", "quiet"),),
    ]
    plans = _worth_telling(told.plans, stated)
    for one in plans:
        lines += [(), *plan_lines(one, width(), "got worse" if stated.worse else "changed")]
    lines += [(), summary(told.plans, len(told.troubles))]
    if stated.worse:
        lines += [(Part("What got worse is told here; the same without --worse tells the rest.", "quiet"),)]
    return text_of(lines) if stated.into else rendered(lines, stated)
