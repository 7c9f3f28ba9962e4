"""Metric sizes against limits in inches: a customary rounded size is taken as the inches it stands for.

A plan drawn in millimetres says 300 mm where one in inches says 12". What counts is how the value of the plan is
written, not the units of the reader. Limits of rules that allow no variance are kept to the letter.
"""

from __future__ import annotations

from typing import Any

from speclint.quantity import Quantity
from speclint.rulebook.rule import Limit

ROUNDING = 0.03  # share of a limit by which a rounded metric size may miss it; ours
FINE, COARSE, QUARTERS = 5, 10, 25  # steps of customary sizes: below 100 mm, above it, and boards by 25 mm; ours
_METRIC = ("mm", "cm", " m")
_SAME = 0.01  # mm


def may_round(limit: Limit) -> bool:
    """Whether a limit is a length in inches or feet that a rounded metric size may stand for."""
    return limit.dimension == "length" and not limit.exact and not limit.text.endswith(_METRIC)


def taken_as_met(sign: str, quantity: Any, bound: float) -> bool:
    """Whether a rounded metric length misses a limit in inches by no more than rounding does.

    Args:
        sign: `>=` or `<=`.
        quantity: What is held against the limit.
        bound: The limit. [m]
    """
    if not isinstance(quantity, Quantity) or not isinstance(quantity.value, float | int):
        return False
    value = float(quantity.value)
    near = value >= bound * (1 - ROUNDING) if sign == ">=" else value <= bound * (1 + ROUNDING)
    return near and bound > 0 and _customary(value * 1000) and _written_metric(quantity)


def _customary(millimetres: float) -> bool:
    steps = (FINE,) if millimetres < 100 else (COARSE, QUARTERS)
    return any(abs(millimetres - round(millimetres / step) * step) < _SAME for step in steps)


def _written_metric(quantity: Quantity) -> bool:
    """Whether every length that the plan states for it is written in metric units, and there is one."""
    texts = list(_lengths(quantity))
    return bool(texts) and all(text.endswith(_METRIC) for text in texts)


def _lengths(quantity: Quantity) -> list[str]:
    if quantity.inputs:
        return [text for part in quantity.inputs for text in _lengths(part)]
    return [quantity.text] if quantity.dimension == "length" and quantity.text else []
