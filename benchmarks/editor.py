"""How long an editor waits from an edit to what is told of it, measured through the whole program.

`python benchmarks/editor.py` types into a plan of two hundred lines, one edit at a time as a person does, and prints
the median and the 95th percentile. Nothing here is a test.
"""

from __future__ import annotations

import statistics
import sys
import time
from pathlib import Path

ROOT = Path(__file__).resolve().parents[1]
EDITS = 200
PAUSE = 0.03  # seconds between what is told and the next edit
BOUND = 50  # milliseconds, of the 95th percentile


def edit_to_diagnostics(text: str, edits: int = EDITS) -> list[float]:
    """Milliseconds from each edit of a plan to the diagnostics of that version, on a warm process.

    Args:
        text: The plan; it holds a line that begins with “wall south”, in which digits are typed.
        edits: How many edits to make.
    """
    from tests.editor.client import Client

    rows = text.splitlines()
    line = next(at for at, row in enumerate(rows) if row.startswith("wall south"))
    column = rows[line].index("length ") + len("length ")
    times = []
    with Client() as client:
        client.begin()
        client.open("file:///plans/house.plan", text)
        client.diagnostics("file:///plans/house.plan", 1)
        for version in range(2, edits + 2):
            where = {"line": line, "character": column}
            digit = {"range": {"start": where, "end": where | {"character": column + 1}}, "text": str(version % 6 + 1)}
            start = time.perf_counter()
            client.change("file:///plans/house.plan", version, digit)
            client.diagnostics("file:///plans/house.plan", version)
            times.append((time.perf_counter() - start) * 1000)
            time.sleep(PAUSE)
    return times[10:]  # the first edits warm the process


def percentile(times: list[float], percent: int) -> float:
    """The percentile of some times."""
    return statistics.quantiles(times, n=100, method="inclusive")[percent - 1]


def main() -> None:
    """Measure and print."""
    sys.path.insert(0, str(ROOT))
    from benchmarks.run import two_hundred_lines

    text = two_hundred_lines((ROOT / "specs" / "tamarack-point.plan").read_text(encoding="utf-8"))
    times = edit_to_diagnostics(text)
    told = f"median {statistics.median(times):.0f} ms, 95th percentile {percentile(times, 95):.0f} ms, "
    print(f"edit to diagnostics, {len(text.splitlines())} lines: {told}at most {BOUND} ms; {len(times)} edits")


if __name__ == "__main__":
    main()
