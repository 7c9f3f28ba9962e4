"""Results put into files: an earlier result may be replaced, and never a plan or anything else that the run reads."""

from __future__ import annotations

import argparse
import os
from collections.abc import Iterable, Iterator
from contextlib import suppress
from pathlib import Path

from speclint.commands.files import Refused, write_file
from speclint.commands.walk import ENDING, files_named_in


def write_result(target: str, content: str | bytes, stated: argparse.Namespace, plans: Iterable[str] = ()) -> None:
    """Write a result to a file; an earlier result there is replaced.

    Args:
        target: The file, as it was named.
        content: The result.
        stated: What is asked; the plan, rates, rules and limits that it names are read.
        plans: Plans that are read besides.

    Raises:
        Refused: If the file is read by the run or is a plan, or it cannot be written.
    """
    refuse_loss(target, stated, plans)
    write_file(Path(target), content)


def refuse_loss(target: str, stated: argparse.Namespace, plans: Iterable[str] = ()) -> None:
    """Refuse a file for a result that would take the place of a plan, or of anything else that the run reads.

    Raises:
        Refused: If it would.
    """
    if not os.path.isfile(target):
        return  # nothing is there, or what is written straight to
    for path in _read(stated, plans):
        if _is_same(path, target):
            raise Refused(f"{target}: is read by this run and was left as it is; name another file to write", 3)
    if any(name.casefold().endswith(ENDING) for name in (target, os.path.realpath(target))):
        raise Refused(f"{target}: is a plan and was left as it is; name another file to write", 3)


def refuse_one_file(first: str, second: str) -> None:
    """Refuse one file for two results, of which the second would take the place of the first.

    Raises:
        Refused: If the two are one.
    """
    if (os.path.isfile(first) and _is_same(first, second)) or os.path.realpath(first) == os.path.realpath(second):
        raise Refused(f"{second}: two results would be written to it; name two files", 3)


def _read(stated: argparse.Namespace, plans: Iterable[str]) -> Iterator[str]:
    """The files that a run reads besides those of the program."""
    named = getattr(stated, "plan", None)
    for plan in (*plans, *([named] if named else [])):
        yield plan
        yield from _used(plan)
    yield from (path for name in ("rates", "house_limits") if (path := getattr(stated, name, None)))
    if pages := getattr(stated, "house_rules", None):
        with suppress(OSError):
            yield from (os.path.join(pages, name) for name in os.listdir(pages))


def _used(plan: str) -> Iterator[str]:
    """The files that a plan uses, those that they use, and whatever else they name."""
    seen = {plan}
    left = [plan]
    while left:
        path = left.pop()
        uses, texts = files_named_in(path)
        for name in uses:
            used = os.path.normpath(os.path.join(os.path.dirname(path), name))
            if used not in seen:
                seen.add(used)
                left.append(used)
                yield used
        yield from (os.path.join(os.path.dirname(plan), text) for text in texts)


def _is_same(one: str, other: str) -> bool:
    with suppress(OSError, ValueError):
        return os.path.samefile(one, other)
    return False
