"""Draws the picture of the README: the demo review as a terminal shows it. `sh .ci/tasks picture` runs it."""

from __future__ import annotations

from html import escape
from pathlib import Path

from speclint.commands.files import demo_plan
from speclint.outputs.letter import Frame, Line, Part, letter
from speclint.pipeline import review
from speclint.rulebook.book import load_rulebook

DAY = "2026-11-25"
LINES, COLUMNS = 52, 100
ROW, COLUMN, MARGIN = 19, 8.43, 18
PAPER, INK = "#14181c", "#d8dde2"
LOOKS = {
    "title": 'font-weight="bold" fill="#ffffff"',
    "hold": 'font-weight="bold" fill="#14181c"',
    "revise": 'font-weight="bold" fill="#e6c229"',
    "note": 'font-weight="bold" fill="#6cc4dd"',
    "number": 'font-weight="bold"',
    "element": 'text-decoration="underline"',
    "label": 'font-weight="bold" fill="#86a9d6"',
    "quiet": 'fill="#8b949e"',
    "good": 'font-weight="bold" fill="#6cc4dd"',
}


def drawn(lines: list[Line]) -> str:
    """The lines as an SVG: one text a line, one span a part, a bar behind what holds."""
    width, height = COLUMNS * COLUMN + 2 * MARGIN, len(lines) * ROW + 2 * MARGIN
    rows = [
        f'<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 {width:.0f} {height}" font-size="14" '
        'font-family="ui-monospace, DejaVu Sans Mono, monospace" role="img">',
        "<title>The review of the demo plan on a terminal</title>",
        f'<rect width="100%" height="100%" rx="6" fill="{PAPER}"/>',
    ]
    for number, line in enumerate(lines):
        y, at = MARGIN + ROW * (number + 1) - 5, 0
        for part in line:
            x = MARGIN + at * COLUMN
            long = len(part.text) * COLUMN
            if part.role == "hold":
                rows.append(
                    f'<rect x="{x - 4:.1f}" y="{y - 14}" width="{long + 8:.1f}" height="{ROW}" fill="#e8edf2"/>'
                )
            look = LOOKS.get(part.role, f'fill="{INK}"')
            look = look if "fill=" in look else f'{look} fill="{INK}"'
            if part.text.strip():
                rows.append(
                    f'<text xml:space="preserve" x="{x:.1f}" y="{y}" textLength="{long:.1f}" {look}>'
                    f"{escape(part.text)}</text>"
                )
            at += len(part.text)
    return "\n".join([*rows, "</svg>"]) + "\n"


def main() -> None:
    """Write the picture beside this file."""
    result = review(demo_plan(), load_rulebook(), DAY)
    prompt: Line = (Part("$ speclint review --demo", "quiet"),)
    lines = [prompt, (), *letter(result, Frame(COLUMNS, DAY))[:LINES]]
    (Path(__file__).parent / "review-demo.svg").write_text(drawn(lines), encoding="utf-8")


if __name__ == "__main__":
    main()
