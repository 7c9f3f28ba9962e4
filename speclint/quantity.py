"""Numbers that can be unfolded: a value, its dimension, and where it comes from."""

from __future__ import annotations

from typing import Any, NamedTuple

from speclint.citation import Citation
from speclint.span import Span
from speclint.units import System, show


class Missing(NamedTuple):
    """A setting that the plan does not state, and of which element."""

    element: str
    setting: str
    place: Span


class Quantity(NamedTuple):
    """A value of an element, with the inputs, equation and citations it came from.

    `how` is "stated", "typical", "assumed ...", "computed" or "looked up"; `words` tells the step in plain words.
    `low` and `high` bound what the value may be, where that is known; `spread` tells where the bounds come from.
    """

    name: str
    element: str
    value: Any
    dimension: str
    how: str
    place: Span
    text: str = ""
    words: str = ""
    inputs: tuple[Quantity, ...] = ()
    citations: tuple[Citation, ...] = ()
    notes: tuple[str, ...] = ()
    low: float | None = None
    high: float | None = None
    spread: str = ""

    def shown(self, system: System = "imperial") -> str:
        """The value as the reader writes it; what was stated in the reader's units stays as it was written."""
        return shown(self.value, self.dimension, system, self.text)

    def shown_range(self, system: System = "imperial") -> str:
        """The bounds in the reader's units, as `0.3 to 0.6`; empty where none are known."""
        if self.low is None or self.high is None:
            return ""
        return f"{shown(self.low, self.dimension, system)} to {shown(self.high, self.dimension, system)}"


class Absent(NamedTuple):
    """A value that cannot be had: which settings are missing, or why it does not apply."""

    name: str
    element: str
    missing: tuple[Missing, ...]
    reason: str = ""


def shown(value: Any, dimension: str, system: System, text: str = "") -> str:
    """A value in the reader's units, or as plain words where it is no number."""
    if isinstance(value, bool):
        return "yes" if value else "no"
    if isinstance(value, float | int):
        return text if text and _written_in(text, system) else show(float(value), dimension, system, text)
    if isinstance(value, tuple) and len(value) == 3 and isinstance(value[2], str):
        return value[2]
    return text or str(value)


def _written_in(text: str, system: System) -> bool:
    metric = text.rstrip("2").endswith(("mm", " m", "cm", "kPa", "mm/h", "m/s", "km"))
    imperial = text.endswith(('"', "'", "ft", "in", "psf", "in/h", "mph", "mi", "ft2", "psi"))
    return not (metric if system == "imperial" else imperial)
