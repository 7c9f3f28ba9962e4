"""Alternates of a plan side by side: what each does to the rain and sun on every wall."""

from __future__ import annotations

from collections.abc import Mapping

from speclint.measures.facts import Facts, Sheet
from speclint.outputs.letter import Line, Part, Role
from speclint.quantity import Quantity
from speclint.units import System

# measure, heading, and whether less of it is better
COMPARED = (("rain share", "strikes wood"), ("rain exposure", "of open wall"), ("ultraviolet share", "UV"))
SAME = 0.005  # a difference that does not show


def alternates_lines(base: Sheet, others: Mapping[str, Sheet], system: System, only: Facts | None = None) -> list[Line]:
    """The walls of a plan and of each of its alternates, measure by measure."""
    lines: list[Line] = [(Part(f"{base.home.name}: alternates compared", "title"),), ()]
    if not others:
        return [*lines, (Part("  the plan has no alternate", "quiet"),)]
    labels = (
        [only.label]
        if only
        else list(dict.fromkeys(w.label for s in (base, *others.values()) for w in s.of_kind("wall")))
    )
    for measure, heading in COMPARED:
        lines.append((Part(f"{heading}", "label"), Part(f"  ({measure})", "quiet")))
        names = "".join(f"{name[:22]:<24}" for name in ("as drawn", *others))
        lines.append((Part(f"{'wall':<12}{names}", "label"),))
        for label in labels:
            first = _found(base, label, measure)
            cells = [Part(f"{label.removeprefix('wall ')[:11]:<12}", "element")]
            cells.append(Part(f"{first.shown(system) if first else '-':<24}"))
            for sheet in others.values():
                cells.append(_cell(first, _found(sheet, label, measure), system))
            lines.append(tuple(cells))
        lines.append(())
    return lines


def _found(sheet: Sheet, label: str, measure: str) -> Quantity | None:
    facts = sheet.facts.get(label)
    quantity = sheet.quantity(facts, measure) if facts else None
    return quantity if isinstance(quantity, Quantity) else None


def _cell(first: Quantity | None, other: Quantity | None, system: System) -> Part:
    if other is None:
        return Part(f"{'-':<24}", "quiet")
    if first is None:
        return Part(f"{other.shown(system):<24}")
    change = float(other.value) - float(first.value)
    if abs(change) < SAME:
        return Part(f"{'the same':<24}", "quiet")
    role: Role = "good" if change < 0 else "hold"
    told = f"{other.shown(system)}  ({'less' if change < 0 else 'more'} by {_points(change, other.dimension)})"
    return Part(f"{told:<24}", role)


def _points(change: float, dimension: str) -> str:
    return f"{abs(change) * 100:.0f} points" if dimension == "share" else f"{abs(change):.2f}"
