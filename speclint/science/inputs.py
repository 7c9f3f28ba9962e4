"""What an input must be to make sense at all; anything less than impossible is only noted, not refused."""

from __future__ import annotations

from collections.abc import Collection


def above_zero(**inputs: float) -> None:
    """Refuse inputs that are not above zero.

    Raises:
        ValueError: If one of them is not.
    """
    for name, value in inputs.items():
        if not value > 0:
            raise ValueError(f"{_words(name)}: wanted a number above 0; got {value:g}")


def not_negative(**inputs: float) -> None:
    """Refuse inputs below zero.

    Raises:
        ValueError: If one of them is.
    """
    for name, value in inputs.items():
        if not value >= 0:
            raise ValueError(f"{_words(name)}: wanted 0 or more; got {value:g}")


def between(low: float, high: float, **inputs: float) -> None:
    """Refuse inputs outside the possible span from `low` to `high`.

    Raises:
        ValueError: If one of them is.
    """
    for name, value in inputs.items():
        if not low <= value <= high:
            raise ValueError(f"{_words(name)}: wanted {low:g} to {high:g}; got {value:g}")


def known(choices: Collection[str], **inputs: str) -> None:
    """Refuse words that are not among the choices.

    Raises:
        ValueError: If one of them is not.
    """
    for name, value in inputs.items():
        if value not in choices:
            raise ValueError(f"{_words(name)}: wanted one of {', '.join(choices)}; got {value!r}")


def _words(name: str) -> str:
    return name.replace("_", " ")
