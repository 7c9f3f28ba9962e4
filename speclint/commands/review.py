"""`speclint review`."""

from __future__ import annotations

import argparse
import datetime
from collections.abc import Iterable

from speclint.commands.asked import DEMO, Asked, asked_of, grave
from speclint.commands.files import Refused
from speclint.commands.many import processors, told_of
from speclint.commands.results import write_result
from speclint.commands.screen import put, tell
from speclint.commands.told import Piece, Unread
from speclint.commands.walk import plans_of


def run(stated: argparse.Namespace) -> int:
    """Review the plans; the exit status is the gravest of them."""
    if stated.json_schema:
        put(_schema())
        return 0
    _check(stated)
    named = [*stated.plans, *([DEMO] if stated.demo else [])]
    paths, troubles, folders = plans_of(named)
    asked = asked_of(stated, _day(stated.today))
    workers = processors() if stated.workers is None else stated.workers
    answers = list(zip(paths, told_of(paths, asked, workers, stated.afresh), strict=True))
    unread = [(path, told) for path, told in answers if isinstance(told, Unread)]
    unread += [("", Unread(str(trouble), trouble.status)) for trouble in troubles]
    for _, trouble in unread:
        tell(f"speclint: {trouble.message}")
    found = [(path, told) for path, told in answers if isinstance(told, Piece)]
    status = max([trouble.status for _, trouble in unread], default=0)
    status = max([status, *(_status(told, grave(stated.hold_at)) for _, told in found)])
    text = _text(found, unread, asked, len(named) > 1 or folders)
    if stated.into:
        write_result(stated.into, text, stated, paths)
    elif text:
        put(text)
    return status


def _check(stated: argparse.Namespace) -> None:
    """Refuse what cannot be asked.

    Raises:
        Refused: If it cannot.
    """
    if not stated.plans and not stated.demo:
        raise Refused("name a plan to review, or ask for --demo", 3)
    if stated.workers is not None and stated.workers < 1:
        raise Refused(f"--workers {stated.workers}: at least one has to work", 3)
    if stated.with_cures and not stated.sarif:
        raise Refused("--with-cures suggests changes in the log of --sarif; `speclint cure` shows and writes them", 3)
    if stated.with_cures and stated.alternate:
        raise Refused("--with-cures works on the plan as drawn, not on an alternate", 3)


def _status(told: Piece, grades: Iterable[str]) -> int:
    return 2 if told.mistakes else int(any(grade in told.grades for grade in grades))


def _text(found: list[tuple[str, Piece]], unread: list[tuple[str, Unread]], asked: Asked, several: bool) -> str:
    """The whole output."""
    bodies = [told.body for _, told in found]
    if asked.form == "sarif":
        return _log(found, unread, asked)
    if asked.form == "junit":
        from speclint.outputs.junit import Suite, unread_suite, whole

        suites = [unread_suite(path or "folders", trouble.message) for path, trouble in unread]
        return whole([*(Suite(*body) for body in bodies), *suites])
    if asked.form == "json":
        return _objects([*bodies, *(_unread(path or "folders", trouble.message) for path, trouble in unread)], several)
    return "\n\n".join(bodies)


def _objects(bodies: list[str], several: bool) -> str:
    """The objects of a run: one, or a list where several plans or a folder were named."""
    if not several:
        return "\n\n".join(bodies)
    each = ("\n".join(f"  {line}" for line in body.splitlines()) for body in bodies)
    return "[\n" + ",\n".join(each) + "\n]\n"


def _unread(plan: str, message: str) -> str:
    from speclint.outputs.data import as_json, unread_object

    return as_json(unread_object(plan, message))


def _log(found: list[tuple[str, Piece]], unread: list[tuple[str, Unread]], asked: Asked) -> str:
    from speclint import __version__
    from speclint.commands.described import descriptors
    from speclint.outputs.sarif import log

    troubles = [trouble.message for _, trouble in unread]
    return log([told.body for _, told in found], descriptors(asked), __version__, troubles)


def _schema() -> str:
    from speclint.paths import shipped

    return shipped("shared").joinpath("schemas", "review.schema.json").read_text(encoding="utf-8")


def _day(stated: str | None) -> str:
    if stated is None:
        return datetime.date.today().isoformat()
    try:
        return datetime.date.fromisoformat(stated).isoformat()
    except ValueError:
        raise Refused(f"“{stated}” is not a date such as 2027-06-30", 3) from None
