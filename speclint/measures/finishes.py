"""How long a finish lasts on each wall."""

from __future__ import annotations

from speclint.measures.facts import Facts, Working
from speclint.measures.register import measure
from speclint.science.finish import finish_life, finish_life_adjusted

# The finish as the plan names it, and the row of the handbook's table.
FAMILIES = {
    "water repellent": "water repellent",
    "tinted clear": "tinted clear",
    "semitransparent stain": "semitransparent stain",
    "solid stain": "solid stain",
    "paint": "paint",
}
YEAR = 365.25


def _life(wall: Facts, work: Working) -> tuple[float, float]:
    finish = work.need(wall, "finish")
    if finish not in FAMILIES:
        raise work.absent(f"the handbook table has no life for {finish}")
    low, high = work.call(finish_life, family=FAMILIES[finish])
    work.note(f"handbook range for {finish} on upright wood: {low:g} to {high:g} years")
    found = work.call(
        finish_life_adjusted,
        low=low,
        high=high,
        orientation=work.need(wall, "faces"),
        cover=work.need(wall, "cover ratio"),
        dark=work.maybe(wall, "colour") == "dark",
    )
    work.note(f"times {found[0] / low:.2g} for the sun on it, its cover and its colour")
    return float(found[0]) * YEAR, float(found[1]) * YEAR


@measure("wall", "finish life", "duration", "time until its finish needs the next coat, at the least")
def shortest_life(wall: Facts, work: Working) -> float:
    """The low end of the handbook's range, with our factors for sun, cover and colour."""
    return _life(wall, work)[0]


@measure("wall", "longest finish life", "duration", "time until its finish needs the next coat, at best")
def longest_life(wall: Facts, work: Working) -> float:
    """The high end of the handbook's range, with our factors for sun, cover and colour."""
    return _life(wall, work)[1]
