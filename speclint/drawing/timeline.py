"""Thirty years of upkeep as a chart: when each part falls due, and what each year costs."""

from __future__ import annotations

from html import escape

from speclint.drawing.paper import LETTER, Paper
from speclint.forecast.outlook import Outlook, PartOutlook

ROW, YEAR = 24.0, 22.0  # pixels
NARROW, SIDE = (10.0, 38.0), 14.0  # pixels: a year and a row, and the left edge, on a sheet for a telephone
LEAST, MOST = 26, 44  # letters beside a row that there is room for, at the least and at the most


def timeline(plan: str, found: Outlook, currency: str, start_year: int, name: str = "", narrow: bool = False) -> str:
    """The chart as SVG.

    Args:
        plan: Name of the plan, for the title strip.
        found: The outlook.
        currency: Of its money.
        start_year: From which years are counted.
        name: Identity within a page.
        narrow: Whether the sheet is for the width of a telephone, where words stand over their line.
    """
    step, tall = NARROW if narrow else (YEAR, ROW)
    rows = len(found.parts)
    told = [_told(part) for part in found.parts]
    most = max((len(words) for words in told), default=0)
    left = SIDE if narrow else max(LEAST, most) * LETTER + 16
    wide, bars = found.years * step, 90.0
    paper = Paper(0, 0, wide, rows * tall + bars + 56, 1.0, (left, 34, 30, 20), 300.0 if narrow else 420.0)
    for year in range(found.years + 1):
        x = left + year * step
        heavy = year % 5 == 0
        end = 34 + rows * tall + bars + 34
        paper.put(f'<line class="{"thin" if heavy else "hair"}" x1="{x:.1f}" y1="34" x2="{x:.1f}" y2="{end:.1f}"/>')
        if year % (10 if narrow else 5) == 0:
            paper.put(f'<text class="small" x="{x:.1f}" y="26" text-anchor="middle">{start_year + year}</text>')
    for at, part in enumerate(found.parts):
        y = 34 + at * tall + (tall - 10 if narrow else tall / 2)
        words = told[at]
        place = (
            f'x="{left:.1f}" y="{y - 10:.1f}"' if narrow else f'x="{left - 8:.1f}" y="{y + 4:.1f}" text-anchor="end"'
        )
        paper.put(f'<text class="note clear" {place}>{escape(words)}</text>')
        paper.put(f'<line class="hair" x1="{left:.1f}" y1="{y:.1f}" x2="{left + wide:.1f}" y2="{y:.1f}"/>')
        for due in part.due:
            x = left + due * step
            paper.put(f'<path class="solid" d="M {x:.1f} {y - 6:.1f} l 6 6 l -6 6 l -6 -6 z"><title>'
                      f"{escape(words)}, {start_year + due:.0f}</title></path>")  # fmt: skip
    _bars(paper, found, currency, (left, 34 + rows * tall + 24), (step, bars))
    likely = f"{currency} {found.spent.likely:,.0f} of today"
    about = f"{rows} parts over {found.years} years; money {likely}, likely"
    return paper.svg("Upkeep, year by year", about, [plan, f"recoating as coats wear out, likely {likely}"], name)


def _told(part: PartOutlook) -> str:
    """A part and what is done to it, in as many letters as there is room for."""
    words = f"{part.job.part}: {part.job.what}"
    return words if len(words) <= MOST else f"{words[: MOST - 1].rstrip()}…"


def _bars(paper: Paper, found: Outlook, currency: str, at: tuple[float, float], size: tuple[float, float]) -> None:
    """The money of each year; `size` is the width of a year and the height of the greatest sum."""
    (left, top), (step, tall) = at, size
    most = max(found.by_year, default=0.0) or 1.0
    base = top + tall
    if left == SIDE:
        words = f"{escape(currency)} a year; greatest {most:,.0f}"
        paper.put(f'<text class="small clear" x="{left:.1f}" y="{top - 4:.1f}">{words}</text>')
    else:
        paper.put(f'<text class="note" x="{left - 8:.1f}" y="{base - tall / 2:.1f}" text-anchor="end">'
                  f"{escape(currency)} a year</text>")  # fmt: skip
        paper.put(f'<text class="small" x="{left - 8:.1f}" y="{top + 8:.1f}" text-anchor="end">{most:,.0f}</text>')
    paper.put(
        f'<line class="edge" x1="{left:.1f}" y1="{base:.1f}" x2="{left + found.years * step:.1f}" y2="{base:.1f}"/>'
    )
    for year, amount in enumerate(found.by_year):
        height = tall * amount / most
        if height > 0.5:
            paper.put(f'<rect class="solid" x="{left + year * step + 0.14 * step:.1f}" y="{base - height:.1f}" '
                      f'width="{0.72 * step:.1f}" height="{height:.1f}">'
                      f"<title>{escape(currency)} {amount:,.0f}</title></rect>")  # fmt: skip
