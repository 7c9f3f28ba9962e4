"""A storm of damaged plans: `python -m tests.hard.storm --inputs 1000000 --seed 7 --minutes 480`.

Every text is read and built; every third is reviewed in both units and told as a letter and as JSON; every 150th goes
through each command that takes a plan. A fault is told with its seed and number, and with the smallest text that still
shows it. `--only NUMBER` prints one text of a seed.
"""

from __future__ import annotations

import argparse
import os
import resource
import sys
import tempfile
import time
from collections.abc import Callable, Iterator
from concurrent.futures import FIRST_COMPLETED, Future, ProcessPoolExecutor, wait
from dataclasses import dataclass
from functools import partial
from pathlib import Path

from tests.hard.holds import SECONDS, fault_of, is_read, is_reviewed, is_told_by_every_command
from tests.hard.texts import text_of

BLOCK = 300
MEMORY = 3_000_000_000  # bytes that one process may take
SHRINKING = 30.0  # seconds spent on making one text smaller


@dataclass(frozen=True, slots=True)
class Shares:
    """Every how-manyth text is reviewed, and every how-manyth goes through all commands; 0 is none."""

    reviews: int = 3
    commands: int = 150


@dataclass(frozen=True, slots=True)
class Found:
    """A fault: what names it, the number of its text, the text, and all that is known of it."""

    name: str
    number: int
    text: str
    told: str


def storm(seed: int, first: int, many: int, shares: Shares, folder: Path) -> list[Found]:
    """The faults that the texts of some numbers show."""
    found = []
    for number in range(first, first + many):
        text = text_of(seed, number)
        name, told = fault_of(text, is_read)
        if not name and shares.reviews and number % shares.reviews == 0:
            name, told = fault_of(text, is_reviewed, 3 * SECONDS)  # three reviews
        if not name and shares.commands and number % shares.commands == 0:
            name, told = fault_of(text, partial(is_told_by_every_command, folder=folder), 60 * SECONDS)
        if name:
            found.append(Found(name, number, text, told))
    return found


def smallest(found: Found, folder: Path) -> str:
    """The smallest text found that shows the same fault: halves, then quarters, down to characters are left out."""
    checks: tuple[Callable[[str], None], ...] = (
        is_read, is_reviewed, partial(is_told_by_every_command, folder=folder),
    )  # fmt: skip
    check = next((one for one in checks if fault_of(found.text, one, 60 * SECONDS)[0] == found.name), None)
    if check is None:
        return found.text
    until = time.monotonic() + SHRINKING
    text = found.text
    size = max(1, len(text) // 2)
    while time.monotonic() < until:
        for shorter in _without(text, size):
            if fault_of(shorter, check, 60 * SECONDS)[0] == found.name:
                text = shorter
                break
            if time.monotonic() > until:
                break
        else:
            if size == 1:
                break
            size //= 2
    return text


def _without(text: str, size: int) -> Iterator[str]:
    for at in range(0, len(text), size):
        yield text[:at] + text[at + size :]


def _block(seed: int, first: int, many: int, shares: Shares) -> list[Found]:
    resource.setrlimit(resource.RLIMIT_AS, (MEMORY, resource.getrlimit(resource.RLIMIT_AS)[1]))
    with tempfile.TemporaryDirectory() as folder:
        return storm(seed, first, many, shares, Path(folder))


def main(words: list[str] | None = None) -> int:
    """Run the storm; exit status 1 where anything was found."""
    stated = _parser().parse_args(words)
    if stated.only is not None:
        print(text_of(stated.seed, stated.only))
        return 0
    shares = Shares(stated.review_every, stated.commands_every)
    began = time.monotonic()
    until = began + stated.minutes * 60 if stated.minutes else float("inf")
    done, found = 0, dict[str, Found]()
    counts: dict[str, int] = {}
    starts = iter(range(stated.first, stated.first + stated.inputs, BLOCK))
    with ProcessPoolExecutor(stated.cores, max_tasks_per_child=50) as pool:
        waiting: set[Future[list[Found]]] = set()
        while True:
            while len(waiting) < 2 * stated.cores and time.monotonic() < until:
                first = next(starts, None)
                if first is None:
                    break
                many = min(BLOCK, stated.first + stated.inputs - first)
                waiting.add(pool.submit(_block, stated.seed, first, many, shares))
                done += many
            if not waiting:
                break
            ready, waiting = wait(waiting, return_when=FIRST_COMPLETED)
            for one in (each for future in ready for each in future.result()):
                counts[one.name] = counts.get(one.name, 0) + 1
                if one.name not in found or len(one.text) < len(found[one.name].text):
                    found[one.name] = one
                    print(f"seed {stated.seed}, number {one.number}: {one.name}", flush=True)
    _tell(found, counts, stated.seed)
    print(f"seed {stated.seed}: {done:,} texts in {time.monotonic() - began:.0f} s; kinds of fault: {len(found)}")
    return 1 if found else 0


def _tell(found: dict[str, Found], counts: dict[str, int], seed: int) -> None:
    with tempfile.TemporaryDirectory() as folder:
        for name, one in sorted(found.items(), key=lambda pair: -counts[pair[0]]):
            print(f"\n== {name}: {counts[name]} times; smallest of seed {seed}, number {one.number}:")
            print(repr(smallest(one, Path(folder))))
            print(one.told)


def _parser() -> argparse.ArgumentParser:
    parser = argparse.ArgumentParser(prog="python -m tests.hard.storm", description=__doc__)
    parser.add_argument("--inputs", type=int, default=10_000, help="how many texts")
    parser.add_argument("--seed", type=int, default=1)
    parser.add_argument("--first", type=int, default=0, help="number of the first text")
    parser.add_argument("--minutes", type=float, default=0.0, help="begin nothing new after this long")
    parser.add_argument("--cores", type=int, default=os.cpu_count() or 1)
    parser.add_argument("--review-every", type=int, default=Shares().reviews)
    parser.add_argument("--commands-every", type=int, default=Shares().commands)
    parser.add_argument("--only", type=int, help="print the text of this number")
    return parser


if __name__ == "__main__":
    sys.exit(main())
