"""Benchmarks: ratios measured in one run against stated floors. `sh .ci/tasks bench` runs them.

Each row names what is measured, its floor, the ratio, and the bound of the project. Nothing here is a test.
"""

from __future__ import annotations

import os
import resource
import statistics
import subprocess
import sys
import tempfile
import time
from collections.abc import Callable
from pathlib import Path

ROOT = Path(__file__).resolve().parents[1]
ROUNDS = 15


def process(words: list[str], environment: dict[str, str]) -> float:
    """Seconds that one process takes."""
    start = time.perf_counter()
    subprocess.run([sys.executable, *words], env=environment, stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL)
    return time.perf_counter() - start


def best(work: Callable[[], object], rounds: int = 7) -> float:
    """The least of several timings of some work, in seconds."""
    found = []
    for _ in range(rounds):
        start = time.perf_counter()
        work()
        found.append(time.perf_counter() - start)
    return min(found)


def start_up(plan: Path) -> None:
    """Whole processes against `python -c pass`, interleaved."""
    with tempfile.TemporaryDirectory() as cache:
        environment = {key: value for key, value in os.environ.items() if key != "PYTHONDONTWRITEBYTECODE"}
        environment |= {"SPECLINT_CACHE": cache, "PYTHONPATH": str(ROOT)}
        jobs = {
            "version": ["-m", "speclint", "--version"],
            "review of a 200-line plan, afresh": ["-m", "speclint", "review", str(plan), "--afresh"],
            "review of a 200-line plan, kept": ["-m", "speclint", "review", str(plan)],
        }
        process(jobs["review of a 200-line plan, afresh"], environment)
        process(jobs["review of a 200-line plan, kept"], environment)
        times: dict[str, list[float]] = {name: [] for name in ("pass", *jobs)}
        for _ in range(ROUNDS):
            times["pass"].append(process(["-c", "pass"], environment))
            for name, words in jobs.items():
                times[name].append(process(words, environment))
        floor = statistics.median(times["pass"])
        for name, bound in zip(jobs, (3, 20, 6), strict=True):
            took = statistics.median(times[name])
            row(name, "python -c pass", f"{took / floor:.1f} x", f"at most {bound} x", f"{took * 1000:.0f} ms")


def row(what: str, floor: str, found: str, bound: str, note: str = "") -> None:
    """Print one row."""
    print(f"{what:<42} {floor:<26} {found:>16}   {bound:<26} {note}")


def reading(text: str) -> None:
    """Parsing against json.loads of the same statements."""
    import json

    from speclint.language.parse import parse

    big = text * 10
    lines = big.count("\n")
    tree = parse(big, "big.plan")
    same = json.dumps([[atom.text for atom in statement.atoms] for statement in tree.statements])
    took, floor = best(lambda: parse(big, "big.plan")), best(lambda: json.loads(same))
    row("parsing", "json.loads", f"{took / floor:.0f} x", "-", f"{lines} lines")
    row("parsing", "-", f"{lines / took:,.0f} lines/s", "at least 20,000 lines/s")


def judging(text: str) -> None:
    """Rule evaluations on prepared facts."""
    from speclint.language.parse import parse
    from speclint.measures.facts import Sheet
    from speclint.model.build import build
    from speclint.rulebook.book import load_rulebook

    book = load_rulebook()
    home, _ = build([parse(text, "demo.plan")], "demo.plan")
    sheet = Sheet(home)
    judge_of = book.judges
    rules = {kind: sum(kind in rule.kinds for rule in book.rules) for kind in judge_of}
    pairs = [(judge_of[f.element.kind], f) for f in sheet.facts.values() if f.element.kind in judge_of]
    evaluations = sum(rules[f.element.kind] for _, f in pairs)

    def once() -> None:
        for judge, facts in pairs:
            judge(facts)

    took = best(lambda: [once() for _ in range(50)]) / 50

    def plain() -> None:
        stated, needed = 9.0, 12.0
        for _ in range(evaluations):
            stated >= needed  # noqa: B015

    floor = best(lambda: [plain() for _ in range(50)]) / 50
    row("rule evaluation", "a bare comparison in Python", f"{took / floor:.1f} x", "-", f"{evaluations} evaluations")
    row("rule evaluation", "-", f"{evaluations / took:,.0f} /s", "at least 3,000,000 /s")


def engines() -> None:
    """Our compiled rules against general engines, where they are installed."""
    from benchmarks.engines import BY_HAND, rows

    found = rows()
    for name, each in found:
        share, told = f"{each / found[0][1]:.2f} x", f"{each / 1e6:.2f} M/s"
        bound = "-" if name == BY_HAND else "no engine above 1 x"
        row(f"50 rules on 1,000 walls: {name}", "the compiled rulebook", share, bound, told)


def typing(text: str) -> None:
    """From an edit in an editor to what is told of it."""
    from benchmarks.editor import edit_to_diagnostics, percentile

    times = edit_to_diagnostics(text)
    floor = statistics.median(process(["-c", "pass"], dict(os.environ)) for _ in range(ROUNDS)) * 1000
    late = percentile(times, 95)
    row(
        "edit to diagnostics, 95th percentile",
        "python -c pass",
        f"{late / floor:.1f} x",
        "at most 50 ms",
        f"{late:.0f} ms",
    )


def many_at_once() -> None:
    """Two thousand plans in one command over the cores, afresh and kept."""
    from benchmarks.many import plans, run

    with tempfile.TemporaryDirectory() as made:
        folder, cache = Path(made, "plans"), Path(made, "cache")
        folder.mkdir()
        lines = plans(folder, 2000)
        run(folder, cache, "--afresh", "--workers", "1")  # so that the rulebook is compiled
        alone, _ = run(folder, cache, "--afresh", "--workers", "1")
        took, _ = run(folder, cache, "--afresh")
        again, _ = run(folder, cache)
        told = f"{os.cpu_count()} cores, {lines} lines each"
        row("2,000 plans in one command, afresh", "one worker", f"{alone / took:.2f} x", "-", told)
        row("2,000 plans in one command, afresh", "-", f"{2000 / took:.0f} plans/s", "at least 200 plans/s", told)
        row("2,000 plans in one command, kept", "-", f"{2000 / again:.0f} plans/s", "-", told)


def evaluating(text: str) -> None:
    """All rules on a plan of two hundred lines: on facts at hand, and with every measure and graph computed anew."""
    from speclint.language.parse import parse
    from speclint.measures.facts import Sheet
    from speclint.model.build import build
    from speclint.review.judge import judge
    from speclint.rulebook.book import load_rulebook

    book = load_rulebook()
    home, _ = build([parse(text, "long.plan")], "long.plan")
    sheet = Sheet(home)
    judge(sheet, book, "imperial")
    found = best(lambda: judge(sheet, book, "imperial"), 20)
    anew = best(lambda: judge(Sheet(home), book, "imperial"), 20)
    floor = best(lambda: [element.label for element in home.elements.values()], 20)
    told = f"{len(book.rules)} pages, {len(home.elements)} elements"
    row("rules and their findings, 200 lines", "naming the elements", f"{found / floor:.0f} x", "at most 15 ms",
        f"{found * 1000:.1f} ms; {told}")  # fmt: skip
    row(
        "the same, measures and graphs anew",
        "naming the elements",
        f"{anew / floor:.0f} x",
        "-",
        f"{anew * 1000:.1f} ms",
    )


def page(plan: Path) -> None:
    """The whole report as a process of its own, and the refresh of a page that follows a plan."""
    import argparse

    from speclint.commands.watch import live_page

    with tempfile.TemporaryDirectory() as folder:
        environment = os.environ | {"SPECLINT_CACHE": folder, "PYTHONPATH": str(ROOT)}
        out = Path(folder) / "house.html"
        words = ["-m", "speclint", "report", str(plan), "--to", str(out)]
        process(words, environment)
        took = statistics.median(process(words, environment) for _ in range(5))
        floor = statistics.median(process(["-c", "pass"], environment) for _ in range(5))
        row("report of the demo plan, cold", "python -c pass", f"{took / floor:.0f} x", "under 2 s, 5 MB",
            f"{took:.2f} s, {out.stat().st_size / 1e6:.1f} MB")  # fmt: skip
        copy = Path(folder) / "house.plan"
        copy.write_text(plan.read_text(encoding="utf-8"), encoding="utf-8")
        stated = argparse.Namespace(
            plan=str(copy), rates=None, today=None, house_rules=None, house_limits=None, units=None
        )
        live = live_page(stated, lambda number: "")
        live.refresh()
        times = []
        for inches in range(20, 26):
            text = plan.read_text(encoding="utf-8").replace("foundation main", f"# {inches}\nfoundation main")
            copy.write_text(text.replace("depth 8'", f'depth {80 + inches}"'), encoding="utf-8")
            start = time.perf_counter()
            live.refresh()
            times.append(time.perf_counter() - start)
        took = statistics.median(times)
        row(
            "a live page after a save",
            "python -c pass",
            f"{took / floor:.0f} x",
            "under 1 s with the look",
            f"{took:.2f} s",
        )


def many(text: str) -> None:
    """A thousand plans in one process."""
    from speclint.commands.main import collect_seldom
    from speclint.pipeline import PlanText, review
    from speclint.rulebook.book import load_rulebook

    collect_seldom()  # as the command does
    book = load_rulebook()

    def read(name: str) -> str:
        raise FileNotFoundError(name)

    def plans_a_second(count: int, plan_of: Callable[[int], str]) -> float:
        start = time.perf_counter()
        for number in range(count):
            review(PlanText(plan_of(number), f"{number}.plan", read), book, "2026-11-25", "metric")
        return count / (time.perf_counter() - start)

    found = plans_a_second(1000, lambda number: text.replace("cabin", f"cabin{number % 10}"))
    row("1,000 revisions of a house in one process", "-", f"{found:.0f} plans/s", "at least 100 plans/s")
    found = plans_a_second(200, lambda number: text.replace("height 2.7 m", f"height {2700 + number} mm"))
    row("200 houses of other walls in one process", "-", f"{found:.0f} plans/s", "-")
    memory = resource.getrusage(resource.RUSAGE_SELF).ru_maxrss / 1024
    row("memory for all of that", "-", f"{memory:.0f} MB", "under 200 MB")


def twelve_walls() -> str:
    """A plan of twelve walls of twenty bands, each with every setting that rain and sun need."""
    walls = [
        f"wall w{at} {{ faces {at * 30} deg; length 9 m; height 6 m; starts 500 mm; ground lawn; "
        "build framed with siding }"
        for at in range(12)
    ]
    names = ", ".join(f"w{at}" for at in range(12))
    roof = f"roof main {{ covers {names}; form hip; pitch 8:12; eaves 600 mm; gutters none }}"
    site = 'site { weather "Boston, MA"; terrain suburban; rain record "Boston, MA" }'
    return "\n".join([site, *walls, roof])


def weather() -> None:
    """Rain and sun on every band of twelve walls against one numpy pass over a year of hours."""
    import numpy

    from speclint.exposure.courses import courses_in
    from speclint.exposure.sunned import sunned_courses
    from speclint.language.parse import parse
    from speclint.measures.facts import Sheet
    from speclint.measures.register import measures
    from speclint.model.build import build

    home, mistakes = build([parse(twelve_walls(), "walls.plan")], "walls.plan")
    assert not mistakes, mistakes
    names = [name for name, measure in measures()["wall"].items() if measure.function.__module__.endswith(WEATHER)]

    def once() -> int:
        courses_in.cache_clear()  # every face is summed anew
        sunned_courses.cache_clear()
        sheet = Sheet(home)
        walls = sheet.of_kind("wall")
        for wall in walls:
            for name in names:
                sheet.quantity(wall, name)
        return sum(len(sheet.quantity(sheet[wall.label], "courses").value.rows) for wall in walls)  # type: ignore[union-attr]

    bands = once()  # reduces the record and the sun once
    took = best(once, 5)
    random = numpy.random.default_rng(1)
    speed, rain, direction = random.uniform(0, 12, 8760), random.uniform(0, 4, 8760), random.uniform(0, 6.28, 8760)

    def pass_over_hours() -> float:
        free = 2 / 9 * speed * rain ** (8 / 9) * numpy.clip(numpy.cos(direction - 1.0), 0, None)
        return float(free.sum())

    floor = best(pass_over_hours, 20)
    row(
        f"{len(names)} weather measures, {bands} bands",
        "one numpy pass over hours",
        f"{took / floor:.0f} x",
        "at most 150 ms",
        f"{took * 1000:.0f} ms against {floor * 1000:.2f} ms",
    )


def upkeep(text: str) -> None:
    """Two thousand cases of thirty years for the demo home against as many bare draws."""
    from random import Random

    from speclint.forecast.jobs import jobs_of
    from speclint.forecast.outlook import SAMPLES, outlook
    from speclint.forecast.rates import demo_rates
    from speclint.language.parse import parse
    from speclint.measures.facts import Sheet
    from speclint.model.build import build

    home, _ = build([parse(text, "demo.plan")], "demo.plan")
    jobs, _ = jobs_of(Sheet(home), demo_rates())
    took = best(lambda: outlook(jobs, demo_rates(), 30), 5)
    draw = Random(1)
    floor = best(lambda: [draw.triangular(1.0, 3.0, 2.0) for _ in range(SAMPLES * len(jobs))], 5)
    found = f"{took * 1000:.0f} ms for {len(jobs)} parts"
    row("upkeep, 2,000 cases of 30 years", "bare draws", f"{took / floor:.1f} x", "under 1 s", found)


WEATHER = (".exposure", ".sun", ".faces")


def two_hundred_lines(text: str) -> str:
    """The demo plan, lengthened to two hundred lines by further windows."""
    lines = text.rstrip().splitlines()
    number = 0
    while len(lines) < 200:
        number += 1
        lines.append(f"window more{number} {{ wall north;  width 3';  height 4';  sill 3' }}")
    return "\n".join(lines) + "\n"


def main() -> None:
    """Run every benchmark and print the table."""
    sys.path.insert(0, str(ROOT))
    demo = (ROOT / "specs" / "tamarack-point.plan").read_text(encoding="utf-8")
    cabin = (ROOT / "specs" / "high-desert-cabin.plan").read_text(encoding="utf-8")
    row("what", "floor", "found", "bound")
    with tempfile.TemporaryDirectory() as folder:
        plan = Path(folder) / "long.plan"
        plan.write_text(two_hundred_lines(demo), encoding="utf-8")
        start_up(plan)
    reading(demo)
    judging(demo)
    engines()
    evaluating(two_hundred_lines(demo))
    weather()
    upkeep(demo)
    page(ROOT / "specs" / "tamarack-point.plan")
    many(cabin)
    many_at_once()
    typing(two_hundred_lines(demo))


if __name__ == "__main__":
    main()
