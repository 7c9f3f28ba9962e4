"""The marks of pins on a sheet: a ring for one finding, a longer one for a large number or for several of one part."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from speclint.drawing.paper import RADIUS, Paper, half_pin
from speclint.drawing.pins import Pin, Point, Spot
from speclint.drawing.room import Room, settle

CROWD = 40  # pins on one drawing: where there are more, those of a part share a mark
LONG = 12  # letters that a mark holds at the most
APART = 5.0  # pixels between marks in a row


@dataclass(frozen=True, slots=True)
class Mark:
    """A mark with the numbers of one finding or more.

    Attributes:
        pins: What it stands for, by their numbers.
        at: The point of the fault; nothing beside the drawing. [m]
    """

    pins: tuple[Pin, ...]
    at: Point | None = None

    @property
    def told(self) -> str:
        """Its numbers."""
        return ranges([pin.number for pin in self.pins])

    @property
    def hold(self) -> bool:
        """Whether any of its findings holds the release."""
        return any(pin.hold for pin in self.pins)

    @property
    def half(self) -> float:
        """Half its width. [px]"""
        return half_pin(self.told)

    def put(self, paper: Paper, x: float, y: float, link: str) -> None:
        """Draw it about a point in pixels; its link is that of the first of its findings."""
        label = "; ".join(f"{pin.number}: {pin.title}, {pin.element}" for pin in self.pins)
        paper.pin(x, y, self.told, self.hold, link.replace("{number}", str(self.pins[0].number)), label)


def ranges(numbers: Sequence[int]) -> str:
    """Numbers in words: those that follow one another as a range."""
    runs: list[list[int]] = []
    for one in sorted(set(numbers)):
        if runs and one == runs[-1][-1] + 1:
            runs[-1].append(one)
        else:
            runs.append([one])
    words = [f"{run[0]}-{run[-1]}" if len(run) > 2 else ", ".join(map(str, run)) for run in runs]
    return ", ".join(words)


def crowded(found: Sequence[Spot]) -> bool:
    """Whether so many pins have a place on a drawing that those of a part share a mark."""
    return sum(spot.at is not None for spot in found) > CROWD


def by_part(found: Sequence[Spot]) -> list[tuple[str, Mark]]:
    """Marks for all pins that have a place, part by part: for a sheet that is too small for a crowd."""
    parts: dict[str, list[Pin]] = {}
    for spot in found:
        if spot.at is not None:
            parts.setdefault(spot.pin.element, []).append(spot.pin)
    return [(part, Mark(own)) for part, pins in parts.items() for own in _short(pins)]


def marks_of(found: Sequence[Spot]) -> list[Mark]:
    """A mark for each pin that has a place; in a crowd one for all pins of a part at a place."""
    placed = [spot for spot in found if spot.at is not None]
    if not crowded(found):
        return [Mark((spot.pin,), spot.at) for spot in placed]
    groups: dict[tuple[str, Point | None], list[Pin]] = {}
    for spot in placed:
        groups.setdefault((spot.pin.element, spot.at), []).append(spot.pin)
    return [Mark(pins, at) for (_, at), every in groups.items() for pins in _short(every)]


def _short(pins: list[Pin]) -> Iterator[tuple[Pin, ...]]:
    """The pins of a part in as few marks as their length allows."""
    own: list[Pin] = []
    for pin in sorted(pins, key=lambda pin: pin.number):
        if own and len(ranges([one.number for one in (*own, pin)])) > LONG:
            yield tuple(own)
            own = []
        own.append(pin)
    yield tuple(own)


def place(paper: Paper, marks: Sequence[Mark], within: tuple[float, float, float, float], link: str) -> Room:
    """Marks at their faults, apart from one another, with a leader where there was no room; what they take."""
    room, placed = Room(), []
    for mark in marks:
        if mark.at is not None:
            x, y = paper.x(mark.at[0]), paper.y(mark.at[1])
            placed.append((mark, (x, y), settle(room, x, y, within, mark.half)))
    for _, fault, at in placed:
        if abs(fault[0] - at[0]) + abs(fault[1] - at[1]) > 2:
            ends = f'x1="{fault[0]:.1f}" y1="{fault[1]:.1f}" x2="{at[0]:.1f}" y2="{at[1]:.1f}"'
            paper.put(f'<line class="under" {ends}/><line class="leader" {ends}/>')
            paper.put(f'<circle class="solid" cx="{fault[0]:.1f}" cy="{fault[1]:.1f}" r="2.4"/>')
    for mark, _, at in placed:
        mark.put(paper, *at, link)
    return room


def rows_of(pins: Sequence[Pin], wide: float) -> list[list[Mark]]:
    """Marks for pins beside the drawing, as many to a row as its width holds. [px]"""
    rows: list[list[Mark]] = []
    left = 0.0
    for pin in pins:
        mark = Mark((pin,))
        if not rows or left + 2 * mark.half > wide:
            rows.append([])
            left = 0.0
        rows[-1].append(mark)
        left += 2 * mark.half + APART
    return rows


def row(paper: Paper, marks: Sequence[Mark], x: float, y: float, link: str) -> float:
    """Draw marks in a row from a left end and a top in pixels; where the next would begin."""
    for mark in marks:
        mark.put(paper, x + mark.half, y + RADIUS, link)
        x += 2 * mark.half + APART
    return x
