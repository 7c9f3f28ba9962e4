"""A quantity unfolded to its inputs, as an indented tree of lines."""

from __future__ import annotations

from speclint.outputs.letter import Line, Part
from speclint.quantity import Absent, Quantity
from speclint.units import System


def unfold(quantity: Quantity | Absent, system: System, depth: int = 0, seen: set[str] | None = None) -> list[Line]:
    """The lines that tell a quantity, what it came from, and where each step is published."""
    indent = "  " * depth
    if isinstance(quantity, Absent):
        wants = ", ".join(f"{missing.setting} of {missing.element}" for missing in quantity.missing)
        why = quantity.reason or f"the plan does not say: {wants}"
        return [
            (Part(f"{indent}{quantity.name}  ", "element"), Part("not known", "revise"), Part(f"  ({why})", "quiet"))
        ]
    seen = set() if seen is None else seen
    key = f"{quantity.element} {quantity.name}"
    place = f", line {quantity.place.line}" if quantity.how in ("stated", "typical") and quantity.place.line else ""
    bounds = quantity.shown_range(system)
    head = (
        Part(f"{indent}{quantity.name}", "element"),
        Part(f" of {quantity.element}  ", "quiet"),
        Part(quantity.shown(system), "title"),
        *([Part(f" ({bounds})")] if bounds else []),
        Part(f"  {quantity.how}{place}", "quiet"),
    )
    if key in seen and quantity.inputs:
        return [(*head, Part("  (unfolded above)", "quiet"))]
    seen.add(key)
    lines: list[Line] = [head]
    spread = f"bounds: {quantity.spread}" if quantity.spread else ""
    for text in (quantity.words, spread, *quantity.notes):
        if text:
            lines.append((Part(f"{indent}    {text}", "quiet"),))
    for citation in quantity.citations:
        lines.append((Part(f"{indent}    after {citation}", "label"),))
    for part in quantity.inputs:
        lines += unfold(part, system, depth + 1, seen)
    return lines
