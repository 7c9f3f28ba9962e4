"""Alternates of a plan side by side: what each does to the rain and sun on every wall."""

from __future__ import annotations

from collections.abc import Mapping

from speclint.measures.facts import Facts, Sheet
from speclint.outputs.letter import Line, Part, Role
from speclint.quantity import Quantity
from speclint.units import System

# measure and heading; less of each is better
COMPARED = (
    ("rain share", "strikes wood"),
    ("rain on wall", "rain on the wood a year"),
    ("rain exposure", "of bare wall"),
    ("rain class", "class"),
    ("ultraviolet share", "UV"),
)
COLUMN = 28


def alternates_lines(base: Sheet, others: Mapping[str, Sheet], system: System, only: Facts | None = None) -> list[Line]:
    """The walls of a plan and of each of its alternates, measure by measure."""
    lines: list[Line] = [(Part(f"{base.home.name}: alternates compared", "title"),), ()]
    if not others:
        return [*lines, (Part("  the plan has no alternate", "quiet"),)]
    walls = dict.fromkeys(wall.label for sheet in (base, *others.values()) for wall in sheet.of_kind("wall"))
    labels = [only.label] if only else list(walls)
    size = max([8, *(len(label.removeprefix("wall ")) + 2 for label in labels)])
    for measure, heading in COMPARED:
        lines.append((Part(heading, "label"), Part(f"  {measure}", "quiet")))
        names = "".join(_column(name) for name in ("as drawn", *others))
        lines.append((Part(f"{'wall':<{size}}{names}", "label"),))
        for label in labels:
            first = _found(base, label, measure)
            cells = [
                Part(label.removeprefix("wall "), "element"),
                Part(" " * (size - len(label.removeprefix("wall ")))),
            ]
            cells.append(Part(_column(first.shown(system) if first else "-")))
            for sheet in others.values():
                cells.append(_cell(first, _found(sheet, label, measure), system, _same_lot(base, sheet)))
            lines.append(tuple(cells))
        lines.append(())
    if not all(_same_lot(base, sheet) for sheet in others.values()):
        lines.append(
            (
                Part(
                    "  an alternate changes the site: what is told against the lot's own walls is not comparable",
                    "quiet",
                ),
            )
        )
    return lines


def _column(text: str) -> str:
    return f"{text if len(text) < COLUMN - 1 else text[: COLUMN - 3] + '…':<{COLUMN}}"


def _same_lot(base: Sheet, other: Sheet) -> bool:
    """Whether two sheets stand on the same lot."""
    return base.home.elements.get("site") == other.home.elements.get("site")


def _found(sheet: Sheet, label: str, measure: str) -> Quantity | None:
    facts = sheet.facts.get(label)
    quantity = sheet.quantity(facts, measure) if facts else None
    return quantity if isinstance(quantity, Quantity) else None


def _cell(first: Quantity | None, other: Quantity | None, system: System, same_lot: bool) -> Part:
    if other is None:
        return Part(_column("-"), "quiet")
    if first is None or not same_lot:
        return Part(_column(other.shown(system)))
    if isinstance(other.value, str):
        return Part(_column(other.value), "plain" if other.value == first.value else "number")
    change = float(other.value) - float(first.value)
    if first.shown(system) == other.shown(system):
        return Part(_column("the same"), "quiet")
    role: Role = "good" if change < 0 else "hold"
    return Part(_column(f"{other.shown(system)}  {'less' if change < 0 else 'more'}"), role)
