"""Many plans in one run: what was kept is taken as it is, and the rest is reviewed on several processors."""

from __future__ import annotations

import os
import sys
from collections.abc import Iterator, Sequence

from speclint.commands.asked import DEMO, DEMO_NAME, PIPED, Asked, key_of, state_of_program, state_of_used
from speclint.commands.files import MOST_BYTES, Refused, bytes_of
from speclint.commands.told import SHELF, Piece, Task, Unread
from speclint.kept import clear_shelf, shelved
from speclint.paths import shipped

MOST_KEPT, MOST_KEPT_BYTES = 5_000, 256_000_000
FEWEST_SHARED = 8  # plans that are worth the start of other processes


def told_of(paths: Sequence[str], asked: Asked, workers: int, afresh: bool) -> list[Piece | Unread]:
    """What is told of each plan, in the order given and the same whatever the number of workers.

    Args:
        paths: The plans, as they are named.
        asked: What the run asks.
        workers: How many processes may work at once.
        afresh: Whether what was kept is passed over.
    """
    state = _state(asked)
    tasks = [_task(path, asked, state) for path in paths]
    states = _States()
    found: dict[int, Piece | Unread] = {}
    for at, task in enumerate(tasks):
        kept = None if afresh else _kept(task, states)
        if kept is not None:
            found[at] = kept
    left = [at for at in range(len(tasks)) if at not in found]
    if left:
        counter = _Counter(len(tasks), len(found))
        made = _made([tasks[at] for at in left], asked, workers)
        try:
            for at, told in zip(left, made, strict=True):
                found[at] = told
                counter.one()
        finally:
            counter.end()
        clear_shelf(SHELF, MOST_KEPT, MOST_KEPT_BYTES)
    return [found[at] for at in range(len(tasks))]


def _state(asked: Asked) -> str:
    try:
        return state_of_program(asked)
    except OSError:
        return ""  # told when the rulebook is read


def _task(path: str, asked: Asked, state: str) -> Task:
    """A plan with its bytes and its key; without a key nothing is kept of it."""
    raw = _raw(path)
    uri = ""
    if asked.form == "sarif":
        from speclint.outputs.uris import uri_of

        uri = uri_of({DEMO: DEMO_NAME, PIPED: "standard input"}.get(path, path))
    key = key_of(asked, state, path, uri, raw) if state and raw is not None else ""
    return Task(path, raw, uri, key, state)


def _raw(path: str) -> bytes | None:
    try:
        if path == DEMO:
            return shipped("specs").joinpath(DEMO_NAME).read_bytes()
        if path == PIPED:
            return sys.stdin.buffer.read(MOST_BYTES + 1) if sys.stdin else b""
        return bytes_of(path)
    except (OSError, ValueError):
        return None  # told when it is opened again


class _States:
    """The states of used files; plans of a folder often use the same ones."""

    def __init__(self) -> None:
        self.known: dict[tuple[str, str], str] = {}

    def of(self, path: str, used: str) -> str:
        """The state of a file that a plan uses."""
        where = (path if path in (DEMO, PIPED) else os.path.dirname(path), used)
        if where not in self.known:
            self.known[where] = state_of_used(path, used)
        return self.known[where]


def _kept(task: Task, states: _States) -> Piece | None:
    """What was kept of a plan, if every file that it uses is as it was."""
    value = shelved(SHELF, task.key) if task.key else None
    if not isinstance(value, tuple) or len(value) != 1 + len(Piece._fields):
        return None
    used, *told = value
    return Piece(*told) if all(states.of(task.path, name) == state for name, state in used) else None


def _made(tasks: list[Task], asked: Asked, workers: int) -> Iterator[Piece | Unread]:
    """What is told of each task, in their order."""
    from speclint.commands.pieces import maker_of, piece_of

    maker_of(
        asked, tasks[0].state
    )  # a rulebook that cannot be used is told once, here; processes that are forked have it already
    workers = min(workers, 2 * len(tasks) // FEWEST_SHARED)
    if len(tasks) < FEWEST_SHARED or workers < 2:
        return (piece_of(task, asked) for task in tasks)
    return _shared(tasks, asked, workers)


def _shared(tasks: list[Task], asked: Asked, workers: int) -> Iterator[Piece | Unread]:
    from concurrent.futures import ProcessPoolExecutor
    from concurrent.futures.process import BrokenProcessPool
    from functools import partial

    from speclint.commands.pieces import piece_of

    pool = ProcessPoolExecutor(workers, initializer=_begin)
    at_once = max(1, min(16, len(tasks) // (4 * workers)))
    try:
        yield from pool.map(partial(piece_of, asked=asked), tasks, chunksize=at_once)
    except BrokenProcessPool:
        raise Refused("a process that reviews was stopped from outside; `--workers 1` does without them", 3) from None
    finally:
        pool.shutdown(wait=True, cancel_futures=True)


def _begin() -> None:
    """Begin a process that reviews: what stops the run is told once, by the process that started it."""
    import signal

    from speclint.commands.main import collect_seldom

    signal.signal(signal.SIGINT, signal.SIG_IGN)
    collect_seldom()


def processors() -> int:
    """How many processors this process may use."""
    if hasattr(os, "sched_getaffinity"):
        return len(os.sched_getaffinity(0))
    return os.cpu_count() or 1


class _Counter:
    """Counts plans on standard error, where that is a terminal and there are many."""

    def __init__(self, whole: int, done: int) -> None:
        self.whole, self.done = whole, done
        self.shown = whole - done >= FEWEST_SHARED and sys.stderr is not None and sys.stderr.isatty()

    def one(self) -> None:
        """One more is done."""
        self.done += 1
        self._show(f"\r{self.done} of {self.whole} plans")

    def end(self) -> None:
        """Take the count away."""
        self._show(f"\r{' ' * len(f'{self.whole} of {self.whole} plans')}\r")

    def _show(self, text: str) -> None:
        if self.shown:
            sys.stderr.write(text)
            sys.stderr.flush()
