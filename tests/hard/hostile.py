"""Plans made to break speclint: `python -m tests.hard.hostile --size 10000` runs each through every command.

Each plan has a process of its own, with a bound on memory and on work; `--size` is about how many elements or how many
thousand characters a plan has.
"""

from __future__ import annotations

import argparse
import os
import resource
import subprocess
import sys
import tempfile
import time
from collections.abc import Callable, Iterator
from pathlib import Path
from typing import NamedTuple

from tests.hard.holds import NAME, all_commands_end_well
from tests.specs.expected import SPECS

ROOT = Path(__file__).resolve().parents[2]
MEMORY = 1_500_000_000  # bytes
WALL = "faces S; length 40'; height 9'; build log round 10\"; starts 10\"; finish paint"
STEERING = (
    "<script>alert(1)</script>", "<img src=x onerror=q>", "a\x1b[31m", "a\u202eb", "]]>", "--><b>", "'&", "\x9b31m",
    "a\x07", "&amp;", "{{7*7}}", "$(id)", "`id`", "=1+1", "%s%n", "../../x", "\u200e", "\ufeff",
)  # fmt: skip


class Outcome(NamedTuple):
    """How a plan went: whether all commands ended well, what was said, and what it took."""

    well: bool
    said: str
    seconds: float
    memory: float  # megabytes


def plans(size: int) -> dict[str, Callable[[], str]]:
    """The hostile plans, each made when it is asked for."""
    many = range(size)
    long = size * 190
    demo = (SPECS / "tamarack-point.plan").read_text(encoding="utf-8")
    return {
        "braces": lambda: "wall a " + "{" * (10 * size),
        "blocks in blocks": lambda: "wall a {" * size + "}" * size,
        "alternates in alternates": lambda: 'alternate "x" {' * size,
        "walls": lambda: rows(f"wall w{at} {{ {WALL} }}" for at in many) + '\nstep s { does "stack the logs" }',
        "walls under one roof": lambda: (
            f"wall {', '.join(f'w{at}' for at in many)} {{ {WALL} }}\nroof a {{ form gable; pitch 10:12; run 15'; "
            f"eaves 2'; covers {', '.join(f'w{at}' for at in many)} }}"
        ),
        "houses": lambda: rows(house(at) for at in range(size // 6)),
        "one word": lambda: "wall " + "a" * long,
        "a name without end": lambda: f"wall {'a' * long} {{ {WALL} }}\nroof b {{ covers {'a' * 300} }}",
        "a text without end": lambda: f'step a {{ does "{"b" * long}" }}\nwall a {{ {WALL}; species "{"c" * long}" }}',
        "numbers without end": lambda: (
            f"wall a {{ height 1e400'; length {'9' * 1000}'; starts {'9' * long}\" }}\n"
            f"post a {{ count {'9' * 1000}; size {'9' * 500}x2; height 1/{'0' * 1000}' }}"
        ),
        "500 of everything": lambda: counted(demo),
        "mistakes": lambda: rows(f"wal w{at} {{ heigth 9' }}" for at in many) + "wall a {" + "\nheigth 9'" * size + "}",
        "words": lambda: f"wall a {{ {'height ' * (long // 7)}}}",
        "commas": lambda: f"wall a {{ {',' * long}}}",
        "quotes": lambda: '"' * long,
        "empty notes": lambda: ";" * long + f"wall a {{ {WALL} }}" + " " * long,
        "remarks": lambda: "#\n" * (long // 2) + "#" * long,
        "alternates": lambda: demo + rows(f'alternate "a{at}" {{ roof main {{ eaves {at % 30}" }} }}' for at in many),
        "typicals": lambda: rows(f"typical wall t{at} {{ height 9' }}" for at in many) + "\nwall a { like t7 }",
        "variances": lambda: (
            f"wall a {{ {WALL} }}\n"
            + 'variance sill-too-near-grade on wall a { because "x"; accepted by "y"; until 2027-06-30 }\n' * size
        ),
        "water in circles": lambda: "roof r { form shed }\n" + rows(
            f"gutter g{at} {{ on roof r }}\ndownspout d{at} {{ gutter g{at}; ends lower roof }}" for at in many
        ),
        "beams on beams": lambda: rows(f"beam b{at} {{ on beam b{at + 1} }}" for at in many),
        "a ring of beams": lambda: rows(f"beam b{at} {{ on beam b{(at + 1) % size} }}" for at in many),
        "a tower of decks": lambda: rows(
            f"deck d{at} {{ held by posts; under d{at + 1}; height {at % 30}' }}\n"
            f"post p{at} {{ under deck d{at}; stands on deck framing; height 8' }}"
            for at in range(size // 2)
        ),
        "steps in a row": lambda: rows(f"step s{at} {{ after s{at + 1} }}" for at in many),
        "a ring of steps": lambda: rows(f'step s{at} {{ does "x{at}"; after s{(at + 1) % size} }}' for at in many),
        "steps against the order": lambda: f"wall a {{ {WALL}; treatment borate }}\n" + rows(
            f'step s{at} {{ does "{("coat the wall a", "stack the logs of wall a")[at % 2]}"; after s{at - 1} }}'
            for at in many
        ),
        "steering names": lambda: rows(steered(at, name) for at, name in enumerate(STEERING)),
    }  # fmt: skip


def rows(found: Iterator[str]) -> str:
    """Statements, one a line."""
    return "\n".join(found)


def house(at: int) -> str:
    """Six parts that name one another."""
    return (
        f"wall w{at} {{ {WALL} }}\nroof r{at} {{ covers w{at}; eaves 1'; pitch 10:12; form gable; run 15' }}\n"
        f"porch p{at} {{ along w{at}; depth 8'; length 20'; roof height 8'; roof pitch 3:12 }}\n"
        f"post o{at} {{ under p{at}; count 6; size 8x8; height 8' }}\n"
        f"deck d{at} {{ along w{at}; under p{at}; height 30\"; depth 8' }}\nwindow i{at} {{ wall w{at}; height 4' }}"
    )


def counted(plan: str) -> str:
    """A plan with 500 of all that can be counted."""
    import re

    return re.sub(r"\bcount \d+", "count 500", plan)


def steered(at: int, name: str) -> str:
    """Parts whose texts would steer a terminal or a page."""
    return (
        f'wall x{at}{name} {{ {WALL}; starts 4" }}\nwall y{at} {{ {WALL}; finish "{name}" }}\n'
        f'step q{at} {{ does "{name}" }}\nalternate "{name}" {{ wall y{at} {{ height 8\' }} }}\n'
        f'variance sill-too-near-grade on wall y{at} {{ because "{name}"; accepted by "{name}"; until 2027-06-30 }}'
    )


def tried(text: str, seconds: float) -> Outcome:
    """A plan run through every command in a process of its own."""
    with tempfile.TemporaryDirectory() as folder:
        (Path(folder) / NAME).write_text(text, encoding="utf-8", newline="")
        began, before = time.monotonic(), resource.getrusage(resource.RUSAGE_CHILDREN)
        done = subprocess.run(
            [sys.executable, "-m", "tests.hard.hostile", "--inside", folder],
            cwd=ROOT,
            capture_output=True,
            text=True,
            errors="replace",
            preexec_fn=bounds(seconds),
        )
        after = resource.getrusage(resource.RUSAGE_CHILDREN)
        took = after.ru_utime - before.ru_utime
        said = done.stderr[-2000:] or f"status {done.returncode} after {time.monotonic() - began:.0f} s"
        return Outcome(done.returncode == 0, said, took, after.ru_maxrss / 1024)


def bounds(seconds: float) -> Callable[[], None]:
    """What a process sets for itself before it starts: bounds on memory and on work."""

    def bound() -> None:
        resource.setrlimit(resource.RLIMIT_AS, (MEMORY, MEMORY))
        resource.setrlimit(resource.RLIMIT_CPU, (int(seconds), int(seconds) + 5))

    return bound


def main(words: list[str] | None = None) -> int:
    """Run the plans; exit status 1 where one of them breaks anything."""
    parser = argparse.ArgumentParser(prog="python -m tests.hard.hostile", description=__doc__)
    parser.add_argument("names", nargs="*", help="only these plans")
    parser.add_argument("--size", type=int, default=10_000)
    parser.add_argument("--seconds", type=float, default=900.0, help="of work that all commands together may take")
    parser.add_argument("--inside", metavar="FOLDER", help=argparse.SUPPRESS)
    stated = parser.parse_args(words)
    if stated.inside:
        all_commands_end_well(Path(stated.inside), stated.seconds)
        return 0
    broken = 0
    for name, made in plans(stated.size).items():
        if stated.names and name not in stated.names:
            continue
        outcome = tried(made(), stated.seconds)
        broken += not outcome.well
        print(f"{name:<28} {'well' if outcome.well else 'BROKEN'} {outcome.seconds:7.1f} s", flush=True)
        if not outcome.well:
            print(outcome.said)
    return 1 if broken else 0


if __name__ == "__main__":
    os.environ.setdefault("SPECLINT_CACHE", os.path.join(tempfile.gettempdir(), "speclint-hard"))
    sys.exit(main())
