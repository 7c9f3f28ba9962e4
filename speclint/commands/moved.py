"""Plans that were moved or renamed between the two sides of a comparison: known by their text."""

from __future__ import annotations

import os
from collections import Counter
from collections.abc import Mapping

from speclint.commands.files import Refused
from speclint.commands.plan_sets import Opener

LIKE_ENOUGH = 0.5  # share of the lines that must agree for a plan to be the same one elsewhere; ours
MOST_PAIRS = 40_000  # of gone and new plans; where there are more, only those of equal text are looked for


def moved_plans(old: Mapping[str, Opener], new: Mapping[str, Opener]) -> dict[str, str]:
    """The old names of plans that go by another name now, by their new ones.

    Those of equal text are matched first, then those that are most alike; of those equally alike the ones that keep
    the name of their file, then in the order of names.

    Args:
        old: How to open each plan of the old side, by its name.
        new: The same of the new side.
    """
    gone = _texts({name: opener for name, opener in old.items() if name not in new})
    come = _texts({name: opener for name, opener in new.items() if name not in old})
    scores = []
    for before, text in gone.items():
        for after, other in come.items():
            likeness = 2.0 if text == other else _likeness(text, other, len(gone) * len(come))
            if likeness >= LIKE_ENOUGH:
                renamed = os.path.basename(before) != os.path.basename(after)
                scores.append((-likeness, renamed, before, after))
    found: dict[str, str] = {}
    taken: set[str] = set()
    for _, _, before, after in sorted(scores):
        if after not in found and before not in taken:
            found[after] = before
            taken.add(before)
    return found


def _texts(plans: Mapping[str, Opener]) -> dict[str, tuple[str, ...]]:
    """The lines of plans that can be read, without comments, blank lines and layout; plans without any are left out."""
    found = {}
    for name, opener in plans.items():
        try:
            lines = (" ".join(line.split()) for line in opener().text.splitlines())
        except Refused:
            continue  # told when it is compared
        if told := tuple(line for line in lines if line and not line.startswith("#")):
            found[name] = told
    return found


def _likeness(one: tuple[str, ...], other: tuple[str, ...], pairs: int) -> float:
    """Share of the lines that both have, in whatever order."""
    if pairs > MOST_PAIRS:
        return 0.0
    return 2 * (Counter(one) & Counter(other)).total() / (len(one) + len(other))
