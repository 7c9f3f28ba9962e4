"""The compiled rules against general engines that evaluate expressions: the same rules, the same facts, one process.

Fifty rules, each of two comparisons, are judged on a thousand walls. The engines are no part of the project; those that
are installed are measured, and each must find what the rulebook finds.
"""

from __future__ import annotations

import sys
import time
from collections.abc import Callable
from importlib import import_module
from pathlib import Path
from random import Random
from typing import Any

ROOT = Path(__file__).resolve().parents[1]
RULES, WALLS = 50, 1000
BY_HAND = "written by hand"
FEW = 20  # walls on which a slow engine is measured

PAGE = """```rule
rule     bench-{number}
group    "log walls and courses"
about    wall
limit    long  {long:.4f} m  ours "for this benchmark"
limit    high  {high:.4f} m  ours "for this benchmark"
require  length >= long and height <= high  otherwise note
says     "bench"
because  "Bench."
cure     "bench"
basis    ours "for this benchmark"
```

# Bench

## What it finds

A wall made for this benchmark.

## Why it matters

It does not.

## How to cure it

Not at all.

## When to accept it

Always.

## Trips it

```plan
wall a {{ length 1' }}
```

## Cured

```plan
wall a {{ length 90' }}
```

## Limits

None.

## Sources

None.
"""


def limits() -> list[tuple[float, float]]:
    """The two limits of every rule. [m]"""
    draw = Random(1)
    return [(round(draw.uniform(4, 14), 4), round(draw.uniform(2, 5), 4)) for _ in range(RULES)]


def walls() -> list[dict[str, float]]:
    """The facts of every wall. [m]"""
    draw = Random(2)
    return [{"length": draw.uniform(3, 15), "height": draw.uniform(2, 5)} for _ in range(WALLS)]


def ours() -> Callable[[list[dict[str, float]]], int]:
    """The rulebook's own way: rule pages, read, checked and compiled. Gives the number of rules that are met."""
    from speclint.rulebook.book import compile_rules
    from speclint.rulebook.compile import judges
    from speclint.rulebook.page import read_page
    from speclint.rulebook.read_rule import read_rule

    rules = []
    for number, (long, high) in enumerate(limits()):
        name = f"bench-{number}.md"
        rule, troubles = read_rule(
            read_page(PAGE.format(number=number, long=long, high=high), name), ("log walls and courses",)
        )
        assert rule is not None, troubles
        rules.append(rule)
    judge = judges(compile_rules(rules), rules)["wall"]
    return lambda facts: sum(RULES - len(judge(one)) for one in facts)


def closures() -> Callable[[list[dict[str, float]]], int]:
    """A function written by hand for each rule: no engine, and it knows no answer but yes and no."""
    made = [eval(f"lambda f: f['length'] >= {long} and f['height'] <= {high}") for long, high in limits()]
    return lambda facts: sum(bool(rule(one)) for one in facts for rule in made)


def rule_engine() -> Callable[[list[dict[str, float]]], int]:
    """The package rule-engine."""
    engine = import_module("rule_engine")
    made = [engine.Rule(f"length >= {long} and height <= {high}") for long, high in limits()]
    return lambda facts: sum(rule.matches(one) for one in facts for rule in made)


def cel() -> Callable[[list[dict[str, float]]], int]:
    """The package cel, in Rust, with a context for each wall."""
    engine = import_module("cel")
    made = [engine.compile(f"length >= {long} && height <= {high}") for long, high in limits()]

    def count(facts: list[dict[str, float]]) -> int:
        met = 0
        for one in facts:
            context = engine.Context(one)
            met += sum(rule.execute(context) for rule in made)
        return met

    return count


def simpleeval() -> Callable[[list[dict[str, float]]], int]:
    """The package simpleeval, with every expression parsed before."""
    engine = import_module("simpleeval").SimpleEval()
    made = [
        (text, engine.parse(text)) for text in (f"length >= {long} and height <= {high}" for long, high in limits())
    ]

    def count(facts: list[dict[str, float]]) -> int:
        met = 0
        for one in facts:
            engine.names = one
            met += sum(engine.eval(text, parsed) for text, parsed in made)
        return met

    return count


def rate(count: Callable[[list[dict[str, float]]], int], facts: list[dict[str, float]], wanted: int) -> float:
    """Evaluations a second, of the best of five."""
    found = []
    for _ in range(5):
        start = time.perf_counter()
        assert count(facts) == wanted
        found.append(time.perf_counter() - start)
    return RULES * len(facts) / min(found)


def rows() -> list[tuple[str, float]]:
    """The rate of each way that can be had here, ours first. [1/s]"""
    facts = walls()
    own = ours()
    found = [("compiled rulebook", rate(own, facts, own(facts)))]
    others: list[tuple[str, Callable[[], Any], int]] = [
        (BY_HAND, closures, WALLS),
        ("cel", cel, WALLS),
        ("rule-engine", rule_engine, FEW),
        ("simpleeval", simpleeval, FEW),
    ]
    for name, make, most in others:
        try:
            count = make()
        except ImportError:
            continue
        found.append((name, rate(count, facts[:most], own(facts[:most]))))
    return found


def main() -> None:
    """Measure and print."""
    sys.path.insert(0, str(ROOT))
    found = rows()
    for name, each in found:
        print(f"{name:<20} {each / 1e6:8.3f} M/s   {each / found[0][1]:6.3f} of the rulebook")


if __name__ == "__main__":
    main()
