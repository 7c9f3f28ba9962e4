"""Where a wooden part stands: the rain on it, the ground below it, and how its details trap water.

What the plan states is put into the guide's five classes of detailing; the mapping is ours.
"""

from __future__ import annotations

from collections.abc import Mapping
from types import MappingProxyType

from speclint.citation import Citation
from speclint.measures.facts import Facts, Working
from speclint.measures.frames import with_all_above
from speclint.science.decay_design import DETAILS, NEAR_GROUND

Table = Mapping[str, str]
SLACK = 1e-9  # m: heights in inches are no round numbers in metres

_CAP = {"metal": "good", "board": "good", "bevel": "medium", "membrane": "medium", "none": "fair", "covered": "good"}
_END = {"capped": "good", "sealed": "medium", "none": "fair"}
DETAIL_OF: Mapping[str, Mapping[str, Table]] = MappingProxyType(
    {
        "log wall": {
            "joint": {"rounded": "medium", "beveled": "medium", "chinked": "medium", "flat shelf": "fair"},
            "checks": {"filled": "medium", "turned down": "medium", "open": "fair"},
        },
        "corner": {
            "end grain": _END,
            "notch": {
                "saddle": "medium", "dovetail": "medium", "butt and pass": "fair", "post": "fair", "cupped": "poor",
            },
            "downspout": {"none": "good", "clear": "good", "open": "poor"},
        },
        "post": {
            "base": {"standoff": "good"} | dict.fromkeys(("direct", "cup", "in concrete", "in soil"), "poor"),
            "top": _CAP | {"under a beam": "good"},
        },
        "beam": {"cap": _CAP, "end grain": _END},
        "purlin": {"end grain": _END},
        "rail": {
            "top": _CAP,
            "weeps": {"drilled": "good", "none": "poor"},
            "posts": {"bolted": "medium", "surface base": "good", "notched": "fair", "nailed": "fair"},
        },
        "deck": {"joist tops": {"taped": "medium", "bare": "fair"}},
        "stair": {"foot on": {"hung": "fair", "pad": "poor", "soil": "poor"}},
    }
)  # fmt: skip
"""Class of detailing that each statement allows; the worst statement decides. Ours."""

DETAILED = Citation("", "classes of detailing, exposure and consequence read from the plan", "ours")


def worst_detail(part: Facts, work: Working, tables: Mapping[str, Table]) -> str:
    """The worst class that a statement allows; where none is poor, every statement is asked for."""
    order = list(DETAILS)
    stated = {setting: work.maybe(part, setting) for setting in tables}
    found = [tables[setting][str(value)] for setting, value in stated.items() if value is not None]
    if order[-1] not in found:
        for setting, value in stated.items():
            if value is None:
                work.need(part, setting)
    return max(found, key=order.index)


def rain_on(part: Facts, work: Working) -> tuple[float, float, float]:
    """Share of the rain that strikes its wettest wood: as taken, at the least and at the most. [-]"""
    kind = part.element.kind
    if kind == "wall":
        rows = work.need(part, "courses").rows
        return max(r.rain for r in rows), max(r.rain_low for r in rows), max(r.rain_high for r in rows)
    if kind == "stair":
        work.assume("rain", 1.0, "share", "a stair stands in the open", DETAILED)
        return 1.0, 1.0, 1.0
    deck = deck_on(part) if kind == "beam" else None
    names = {"post": ("foot rain",), "purlin": ("rain share",), "corner": ("rain share", "rain on top")}
    found = max(float(work.need(deck or part, name)) for name in names.get(kind, ("rain on top",)))
    return found, found, found


def deck_on(beam: Facts) -> Facts | None:
    """The deck that a beam carries, if any."""
    return next((above for above in with_all_above(beam) if above.element.kind == "deck"), None)


def clearance_of(part: Facts, work: Working) -> float | None:
    """Its lowest wood above the ground; nothing for parts that stand high. [m]"""
    kind = part.element.kind
    if kind == "corner":
        if not part["of"]:
            raise work.missing(part, "of")
        return min(float(work.need(wall, "starts")) for wall in part["of"])
    if kind == "post" and work.maybe(part, "base") in ("in soil", "in concrete"):
        return 0.0
    if kind == "beam":
        deck = deck_on(part)
        return None if deck is None else float(work.need(deck, "above soil"))
    names = {"wall": "starts", "post": "foot above grade", "deck": "above soil", "stair": "foot"}
    return float(work.need(part, names[kind])) if kind in names else None


def wet_from_below(part: Facts, clearance: float | None, work: Working) -> bool:
    """Whether splash or the damp of the ground reaches it, whatever the roof keeps off."""
    if clearance is None:
        return False
    splash = work.maybe(part, "splash height") if part.element.kind == "wall" else None
    return clearance <= NEAR_GROUND or (splash is not None and clearance < float(splash) - SLACK)
