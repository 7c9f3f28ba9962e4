"""The nearest known words to words that are not known."""

from __future__ import annotations

from collections.abc import Iterable

NEAR_ENOUGH = 0.76  # “house” is 0.75 alike to “use”, “porsh” 0.80 to “porch”


def nearest(got: str, known: Iterable[str], most: int = 3) -> list[str]:
    """The known words nearest to `got`, best first."""
    import difflib

    lower = {name.lower(): name for name in known}
    words = got.lower().split()
    found: list[str] = []
    for size in range(len(words), 0, -1):
        for match in difflib.get_close_matches(" ".join(words[:size]), lower, most, NEAR_ENOUGH):
            if lower[match] not in found:
                found.append(lower[match])
        if found:
            break
    return found[:most]


def did_you_mean(got: str, known: Iterable[str]) -> str:
    """A help line that names the nearest known words, or nothing where none is near."""
    found = nearest(got, known)
    return f"did you mean {' or '.join(f'“{name}”' for name in found)}?" if found else ""
