"""Draws the picture of the README: the demo review as a terminal shows it. `sh .ci/tasks picture` runs it."""

from __future__ import annotations

import io
from pathlib import Path

from rich.console import Console
from rich.text import Text

from speclint.commands.files import demo_plan
from speclint.outputs.letter import Frame, letter
from speclint.outputs.terminal import styled
from speclint.pipeline import review
from speclint.rulebook.book import load_rulebook

LINES = 46
WIDTH = 104


def main() -> None:
    """Write the picture beside this file."""
    result = review(demo_plan(), load_rulebook(), "2026-11-25")
    text = styled(letter(result, Frame(WIDTH, "2026-11-25"))[:LINES], WIDTH)
    console = Console(record=True, width=WIDTH, file=io.StringIO())
    console.print(Text.from_ansi("$ speclint review --demo\n" + text))
    console.save_svg(str(Path(__file__).parent / "review-demo.svg"), title="speclint", unique_id="review-demo")


if __name__ == "__main__":
    main()
