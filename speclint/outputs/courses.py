"""The courses of a wall as a table, top course first, as the wall stands."""

from __future__ import annotations

from speclint.measures.course_table import CourseTable
from speclint.outputs.letter import Line, Part, Role
from speclint.quantity import shown
from speclint.units import System

HEAD = (
    ("course", 8), ("above grade", 14), ("rain strikes", 20), ("worst", 8), ("driven", 10), ("hours", 8),
    ("sun", 14), ("UV", 6), ("splash", 8), ("60-degree line", 0),
)  # fmt: skip


def course_lines(table: CourseTable, system: System) -> list[Line]:
    """The table of one wall."""
    lines: list[Line] = [(Part(f"{table.wall}, course by course", "title"),)]
    for absent in table.absent:
        wants = ", ".join(f"{missing.setting} of {missing.element}" for missing in absent.missing)
        why = absent.reason or f"the plan does not say: {wants}"
        lines.append((Part(f"  {absent.name} "), Part("not known: ", "revise"), Part(why, "quiet")))
    if not table.rows:
        return [*lines, ()]
    lines.append((Part("  " + "".join(f"{name:<{size}}" for name, size in HEAD).rstrip(), "label"),))
    for number, row in reversed(list(enumerate(table.rows, 1))):
        share = float(row["rain share"] or 0.0)
        role: Role = "hold" if share > 0.6 else "revise" if share > 0.25 else "good"
        cells = [
            str(number),
            shown(float(row["bottom"] or 0.0) + (table.starts or 0.0), "length", system),
            f"{_percent(row['rain share'])} ({_percent(row['rain share low'])}-{_percent(row['rain share high'])})",
            _percent(row["rain share worst place"]),
            _shown(row["driving rain"], "depth", system),
            _shown(row["rain hours"], "hours", system),
            _shown(row["sun dose"], "sun dose", system),
            _percent(row["ultraviolet share"]),
            "-" if row["splash dose"] is None else f"{float(row['splash dose']):.2f}",
            {"yes": "covered", "in part": "in part", "no": "open"}.get(str(row["under the angle rule"]), "-"),
        ]
        told = [f"{cell:<{size}}" for cell, (_, size) in zip(cells, HEAD, strict=True)]
        lines.append((Part("  " + told[0], "element"), Part(told[1]), Part(told[2], role), Part("".join(told[3:]))))
    above = "bottom of the course above grade" if table.starts is not None else "bottom of the course above its wood"
    lines.append((Part(f"  above grade: {above}; worst: the worst place along the course;", "quiet"),))
    lines.append((Part("  splash: 1 is a wall's foot on the drip line over paving; it only ranks", "quiet"),))
    return [*lines, ()]


def _percent(value: float | str | None) -> str:
    return "-" if value is None else f"{float(value) * 100:.0f}%"


def _shown(value: float | str | None, dimension: str, system: System) -> str:
    return "-" if value is None else shown(float(value), dimension, system)
