"""How many plans a second a run reviews: 2,000 plans of about 40 lines, made from the plan of the README.

`python benchmarks/many.py [COUNT]` reviews them with one worker, with one for each processor, and from what was kept,
and says whether all three gave the same bytes.
"""

from __future__ import annotations

import hashlib
import os
import subprocess
import sys
import tempfile
import time
from pathlib import Path

ROOT = Path(__file__).resolve().parents[1]
MORE = """
wall north {{ faces N;  length 46';  height 9'-6";  starts {north}" above grade }}
wall east {{
    faces E;  length 30';  height 9'-6";  peak 22'
    starts {east}" above grade
    ground washed stone;  finish semitransparent stain, coats 2
}}
corner south-west {{ of south, west;  ends {ends}" }}
window lake {{ wall south;  width 6';  height 5';  sill 30" }}
window porch {{ wall south;  width 3';  height 4' }}
window loft {{ wall west;  width 3';  height 3' }}
door front {{ wall north;  width 3'-6";  height 7' }}
porch lake {{
    along south;  depth {depth}';  length 30'
    roof height 9';  roof pitch 3:12
    hung on posts
}}
post lake {{
    under porch lake
    size 8x8;  species Douglas-fir
    foot above grade {foot}"
}}
deck lake {{ along south;  depth 8';  height 24" }}
gutter south {{ on roof main;  over south }}
downspout south {{ gutter south }}
chimney great {{ roof main }}
"""


def plans(folder: Path, count: int) -> int:
    """Write the plans, each with numbers of its own; returns how many lines one has."""
    text = (ROOT / "README.md").read_text(encoding="utf-8").split("```plan\n")[1].split("```")[0]
    for at in range(count):
        own = text + MORE.format(
            north=4 + at % 30, east=6 + at % 24, ends=6 + at % 20, depth=4 + at % 9, foot=1 + at % 12
        )
        (folder / f"house-{at:05d}.plan").write_text(own, encoding="utf-8")
    return len(own.splitlines())


def run(folder: Path, cache: Path, *more: str) -> tuple[float, str]:
    """Seconds of a run, and a digest of what it printed."""
    environment = {**os.environ, "PYTHONPATH": str(ROOT), "SPECLINT_CACHE": str(cache)}
    start = time.perf_counter()
    words = [sys.executable, "-m", "speclint", "review", ".", "--today", "2026-11-25", *more]
    done = subprocess.run(words, cwd=folder, env=environment, capture_output=True)
    took = time.perf_counter() - start
    assert done.returncode in (0, 1), done.stderr.decode()
    return took, hashlib.sha256(done.stdout).hexdigest()[:12]


def main() -> None:
    """Measure, and print one row a run."""
    count = int(sys.argv[1]) if len(sys.argv) > 1 else 2000
    with tempfile.TemporaryDirectory() as made:
        folder, cache = Path(made, "plans"), Path(made, "cache")
        folder.mkdir()
        lines = plans(folder, count)
        print(f"{count} plans of {lines} lines")
        run(folder, cache, "--workers", "1", "--brief")  # so that the rulebook is compiled
        for what, more in (
            ("one worker", ("--afresh", "--workers", "1")),
            ("a worker for each processor", ("--afresh",)),
            ("kept", ()),
        ):
            took, told = run(folder, cache, *more)
            print(f"{what:<28} {took:6.2f} s  {count / took:7.0f} plans/s  output {told}")


if __name__ == "__main__":
    main()
