"""What a publication printed: it equals every number that rounds to the printed digits, and no other."""

from __future__ import annotations

from decimal import Decimal

NOISE = Decimal("1e-9")
"""Share of the last printed digit that binary arithmetic may be off."""


class Printed:
    """A number as printed; its tolerance is half a unit of its last digit."""

    __hash__ = None  # type: ignore[assignment]

    def __init__(self, text: str, value: Decimal, unit: Decimal) -> None:
        self.text = text
        self.value = value
        self.unit = unit

    def __eq__(self, other: object) -> bool:
        if isinstance(other, bool) or not isinstance(other, int | float):
            return NotImplemented
        return abs(Decimal(other) - self.value) <= self.unit * (Decimal("0.5") + NOISE)

    def __repr__(self) -> str:
        return f"printed {self.text}"


def printed(text: str) -> Printed:
    """The printed number `text`, such as 872.6, -0.004 or 1.5E+2 where only two digits were meant."""
    value = Decimal(text)
    return Printed(text, value, Decimal(1).scaleb(int(value.as_tuple().exponent)))


def printed_feet(text: str) -> Printed:
    """A printed span such as 13-1 (feet and whole inches), which equals a number of inches."""
    feet, inches = text.split("-")
    return Printed(text, Decimal(12 * int(feet) + int(inches)), Decimal(1))
