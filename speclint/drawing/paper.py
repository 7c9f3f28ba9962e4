"""A drawing sheet: metres in, SVG out, with the line weights, lettering and title strip of the project's drawings."""

from __future__ import annotations

import textwrap
from collections.abc import Sequence
from html import escape

Point = tuple[float, float]

_STYLE = """
.paper { fill: #ffffff }
.cut { stroke: #1b1b1b; stroke-width: 2.2; fill: none }
.edge { stroke: #1b1b1b; stroke-width: 1.3; fill: none; stroke-linejoin: round }
.thin { stroke: #4a4a4a; stroke-width: 0.7; fill: none }
.hair { stroke: #8a8a8a; stroke-width: 0.5; fill: none }
.joint-light { stroke: #ffffff; stroke-width: 1.5; stroke-opacity: 0.6; fill: none }
.joint { stroke: #2b2b2b; stroke-width: 0.6; fill: none }
.hidden { stroke: #4a4a4a; stroke-width: 0.8; fill: none; stroke-dasharray: 5 3 }
.untold { stroke: #4a4a4a; stroke-width: 0.8; fill: none; stroke-dasharray: 1.5 2.5 }
.sheltered { stroke: #1b1b1b; stroke-width: 1.6; fill: none; stroke-dasharray: 10 3 2 3 }
.splash { stroke: #1b1b1b; stroke-width: 1.6; fill: none; stroke-dasharray: 2 3 }
.under { stroke: #ffffff; stroke-width: 3.4; stroke-opacity: 0.85; fill: none }
.water { stroke: #1f4e79; stroke-width: 1.6; fill: none }
.sun { stroke: #7a4b00; stroke-width: 1.1; fill: none; stroke-dasharray: 6 3 }
.barrier { stroke: #1b1b1b; stroke-width: 3.6; fill: none }
.leader { stroke: #1b1b1b; stroke-width: 0.9; fill: none }
.blank { fill: #ffffff; stroke: none }
.solid { fill: #1b1b1b; stroke: none }
.roof { fill: #e9e7e2 }
.masonry { fill: #d9d6cf }
.glass { fill: #f5f8fa }
.wood { fill: #efe6d6 }
.leaf { fill: #ffffff; fill-opacity: 0.7 }
text { font-family: "Helvetica Neue", Arial, "Liberation Sans", sans-serif; fill: #1b1b1b; font-size: 12px }
.small { font-size: 11px }
.note { font-size: 11.5px; fill: #333333 }
.title { font-size: 15px; font-weight: bold; letter-spacing: 0.4px }
.number { font-size: 11px; paint-order: stroke; stroke-width: 3px; stroke-linejoin: round }
.clear { paint-order: stroke; stroke: #ffffff; stroke-width: 3.5px; stroke-linejoin: round }
.petal { fill: #516792; stroke: #ffffff; stroke-width: 0.8 }
.halo { fill: #ffffff; stroke: none }
.pin { fill: #ffffff; stroke: #1b1b1b; stroke-width: 1.6 }
.pin-hold { fill: #1b1b1b; stroke: #1b1b1b; stroke-width: 1.6 }
.pin-text { font-size: 11.5px; font-weight: bold; text-anchor: middle }
.pin-hold-text { font-size: 11.5px; font-weight: bold; text-anchor: middle; fill: #ffffff }
.zone { fill: #ffffff; stroke: #1b1b1b; stroke-width: 1 }
.zone-text { font-size: 11px; font-weight: bold; text-anchor: middle }
""".strip()
# Every selector is of a drawing only: a style in an SVG holds for the whole of a page that the SVG stands in.
STYLE = "\n".join(f".drawing {rule}" for rule in _STYLE.splitlines())

RADIUS = 12.0  # of a pin: 24 pixels across, the least that a finger should have to hit
STRIP = 34.0  # height of the title strip [px]
ROW = 14.0  # from row to row of its words [px]
# pixels to a letter of lettering in a wide face, which stands in where the one asked for is missing
SMALL_LETTER, LETTER, TITLE_LETTER = 6.0, 6.4, 10.2


def number(value: float) -> str:
    """A coordinate, to a tenth, without needless zeros: the same bytes on every machine."""
    return f"{value:.1f}".rstrip("0").rstrip(".").replace("-0", "0") if abs(value) < 0.05 else f"{value:.1f}"


def half_pin(told: str) -> float:
    """Half the width of a pin with a number or several: a ring as far as two figures go, longer beyond. [px]"""
    return RADIUS if len(told) < 3 else RADIUS + 4.0 * (len(told) - 2) + 1


def _ring(x: float, y: float, half: float, tall: float, look: str) -> str:
    if half - tall < 0.1:
        return f'<circle class="{look}" cx="{number(x)}" cy="{number(y)}" r="{number(tall)}"/>'
    return (
        f'<rect class="{look}" x="{number(x - half)}" y="{number(y - tall)}" width="{number(2 * half)}" '
        f'height="{number(2 * tall)}" rx="{number(tall)}"/>'
    )


class Paper:
    """A sheet that grows as it is drawn on; points are in metres, x to the right and y up.

    Args:
        left: Least x that is drawn. [m]
        bottom: Least y that is drawn. [m]
        right: Greatest x that is drawn. [m]
        top: Greatest y that is drawn. [m]
        scale: Pixels to the metre.
        margin: Free strip at the left, top, right and bottom. [px]
        least: Width that the sheet has at the least. [px]
    """

    def __init__(
        self,
        left: float,
        bottom: float,
        right: float,
        top: float,
        scale: float,
        margin: tuple[float, float, float, float] = (40, 30, 40, 40),
        least: float = 420.0,
    ) -> None:
        self.least = least
        self.left, self.top, self.scale, self.margin = left, top, scale, margin
        self.width = (right - left) * scale + margin[0] + margin[2]
        self.height = (top - bottom) * scale + margin[1] + margin[3]
        self.parts: list[str] = []

    def grow(self, bottom: float) -> None:
        """Make the sheet tall enough for what ends at a height. [px]"""
        self.height = max(self.height, bottom)

    def x(self, metres: float) -> float:
        """Pixels from the left edge."""
        return (metres - self.left) * self.scale + self.margin[0]

    def y(self, metres: float) -> float:
        """Pixels from the top edge."""
        return (self.top - metres) * self.scale + self.margin[1]

    def put(self, text: str) -> None:
        """SVG as it is."""
        self.parts.append(text)

    def open(self, name: str, label: str = "", **more: str) -> None:
        """Begin a group of a class; `label` is read aloud and shown under the pointer."""
        attributes = "".join(f' {key.replace("_", "-")}="{escape(value)}"' for key, value in more.items())
        self.put(f'<g class="{escape(name)}"{attributes}>')
        if label:
            self.put(f"<title>{escape(label)}</title>")

    def close(self) -> None:
        """End the group."""
        self.put("</g>")

    def line(self, start: Point, end: Point, look: str = "thin") -> None:
        """A straight line."""
        (x1, y1), (x2, y2) = (self._pixels(point) for point in (start, end))
        self.put(f'<line class="{look}" x1="{x1}" y1="{y1}" x2="{x2}" y2="{y2}"/>')

    def path(self, points: Sequence[Point], look: str = "edge", closed: bool = False, fill: str = "") -> None:
        """A line through points, or a closed shape with a fill."""
        drawn = " ".join(",".join(self._pixels(point)) for point in points)
        kind = "polygon" if closed else "polyline"
        filled = f' style="fill: {fill}"' if fill else ""
        self.put(f'<{kind} class="{look}" points="{drawn}"{filled}/>')

    def box(self, left: float, bottom: float, right: float, top: float, look: str = "edge", fill: str = "") -> None:
        """An upright rectangle."""
        x, y = self._pixels((left, top))
        width, height = number((right - left) * self.scale), number((top - bottom) * self.scale)
        filled = f' style="fill: {fill}"' if fill else ""
        self.put(f'<rect class="{look}" x="{x}" y="{y}" width="{width}" height="{height}"{filled}/>')

    def text(self, at: Point, words: str, look: str = "", anchor: str = "start", shift: Point = (0, 0)) -> None:
        """Lettering at a point, shifted by pixels."""
        x, y = number(self.x(at[0]) + shift[0]), number(self.y(at[1]) + shift[1])
        named = f' class="{look}"' if look else ""
        anchored = f' text-anchor="{anchor}"' if anchor != "start" else ""
        self.put(f'<text{named} x="{x}" y="{y}"{anchored}>{escape(words)}</text>')

    def circle(self, at: Point, radius: float, look: str = "edge") -> None:
        """A circle with a radius in pixels."""
        x, y = self._pixels(at)
        self.put(f'<circle class="{look}" cx="{x}" cy="{y}" r="{number(radius)}"/>')

    def across(self, left: float, right: float, y: float, words: str, drop: float = 0.0) -> None:
        """A dimension line across, `drop` pixels below a height, with ticks and its words above it."""
        at = self.y(y) + drop
        x1, x2 = self.x(left), self.x(right)
        self._dimension(x1, at, x2, at)
        self.put(f'<text class="small clear" x="{number((x1 + x2) / 2)}" y="{number(at - 4)}" text-anchor="middle">'
                 f"{escape(words)}</text>")  # fmt: skip

    def upward(self, x: float, bottom: float, top: float, words: str, out: float = 0.0) -> None:
        """A dimension line upward, `out` pixels to the right of an x (left where below zero), with its words beside."""
        at = self.x(x) + out
        y1, y2 = self.y(bottom), self.y(top)
        self._dimension(at, y1, at, y2)
        side, anchor = (5, "start") if out >= 0 else (-5, "end")
        self.put(f'<text class="small clear" x="{number(at + side)}" y="{number((y1 + y2) / 2 + 3)}" '
                 f'text-anchor="{anchor}">{escape(words)}</text>')  # fmt: skip

    def _dimension(self, x1: float, y1: float, x2: float, y2: float) -> None:
        drawn = f'x1="{number(x1)}" y1="{number(y1)}" x2="{number(x2)}" y2="{number(y2)}"'
        self.put(f'<line class="thin" {drawn}/>')
        for x, y in ((x1, y1), (x2, y2)):
            self.put(f'<line class="thin" x1="{number(x - 4)}" y1="{number(y + 4)}" x2="{number(x + 4)}" '
                     f'y2="{number(y - 4)}"/>')  # fmt: skip

    def pin(self, x: float, y: float, told: str, hold: bool, link: str = "", label: str = "") -> None:
        """A numbered pin of a finding, its middle in pixels: filled where it holds the release, open otherwise."""
        look, half = "pin-hold" if hold else "pin", half_pin(told)
        mark = _ring(x, y, half + 1, RADIUS + 1, "halo") + _ring(x, y, half - 0.8, RADIUS - 0.8, look)
        mark += f'<text class="{look}-text" x="{number(x)}" y="{number(y + 4)}">{escape(told)}</text>'
        title = f"<title>{escape(label)}</title>" if label else ""
        if link:
            mark = f'<a href="{escape(link)}" aria-label="{escape(label or told)}">{title}{mark}</a>'
        else:
            mark = f"<g>{title}{mark}</g>"
        self.put(mark)

    def scale_bar(self, system: str, x: float, y: float) -> None:
        """A bar of ten feet or three metres in two halves, its left end at a place in pixels."""
        whole, words = (3.048, "10 ft") if system == "imperial" else (3.0, "3 m")
        half = whole * self.scale / 2
        self.put(f'<rect class="solid" x="{number(x)}" y="{number(y)}" width="{number(half)}" height="5"/>')
        self.put(f'<rect class="thin" x="{number(x + half)}" y="{number(y)}" width="{number(half)}" height="5"/>')
        self.put(f'<text class="small" x="{number(x + 2 * half + 6)}" y="{number(y + 6)}">{words}</text>')

    def _pixels(self, point: Point) -> tuple[str, str]:
        return number(self.x(point[0])), number(self.y(point[1]))

    def svg(self, title: str, about: str, strip: Sequence[str] = (), name: str = "", role: str = "img") -> str:
        """The sheet as SVG, with a title strip below.

        Args:
            title: What is drawn, as the title strip says.
            about: What a person who does not see it should be told.
            strip: Further words for the strip: plan, scale and the like.
            name: Identity within a page, so that several can stand on one.
            role: What it is to a screen reader: one picture, or a `group` with links in it.
        """
        wide = max(self.width, self.least)
        words = " · ".join(strip)
        beside = len(title) * TITLE_LETTER + len(words) * LETTER + 44 <= wide
        rows = [words] if beside else textwrap.wrap(words, int((wide - 28) / LETTER), break_on_hyphens=False)
        tall = self.height + (STRIP + (0 if beside else ROW * len(rows)) if strip else 0)
        called = f' id="{escape(name)}"' if name else ""
        head = (
            f'<svg xmlns="http://www.w3.org/2000/svg"{called} class="drawing" viewBox="0 0 {number(wide)} '
            f'{number(tall)}" width="{number(wide)}" height="{number(tall)}" role="{role}" '
            f'aria-label="{escape(f"{title}. {about}")}">'
        )
        lines = [head, f"<style>{STYLE}</style>", f"<title>{escape(title)}</title>", f"<desc>{escape(about)}</desc>"]
        lines.append(f'<rect class="paper" x="0" y="0" width="{number(wide)}" height="{number(tall)}"/>')
        lines += self.parts
        if strip:
            lines += self._strip(title, rows, wide, beside)
        return "\n".join([*lines, "</svg>"]) + "\n"

    def _strip(self, title: str, rows: list[str], wide: float, beside: bool) -> list[str]:
        """The title strip: the title, and beside or below it what else is to be known of the sheet."""
        top = self.height
        found = [
            f'<line class="cut" x1="12" y1="{number(top + 4)}" x2="{number(wide - 12)}" y2="{number(top + 4)}"/>',
            f'<text class="title" x="14" y="{number(top + 22)}">{escape(title)}</text>',
        ]
        for row, words in enumerate(rows):
            at = f'x="14" y="{number(top + 38 + ROW * row)}"'
            if beside:
                at = f'x="{number(wide - 14)}" y="{number(top + 22)}" text-anchor="end"'
            found.append(f'<text class="note" {at}>{escape(words)}</text>')
        return found
