"""The walls of a report: their drawings, and the legends, zones and numbers told beside them."""

from __future__ import annotations

from typing import Any

from speclint.drawing.elevation import View, elevation
from speclint.drawing.layers import WHOLE, Layer, layers_of
from speclint.drawing.marks import classes_of, ground_words, key_of, zone_words
from speclint.drawing.pins import Pin, spots
from speclint.drawing.section import section
from speclint.drawing.wall_frame import wall_frame
from speclint.measures.facts import Facts, Sheet
from speclint.report.story import ranked, told_of
from speclint.units import System, show

COMPARED = 0.01  # ours: a change of rain exposure that is drawn


def walls_of(sheet: Sheet, pins: tuple[Pin, ...], system: System) -> list[dict[str, Any]]:
    """Every wall, in the order of the summary."""
    order = dict.fromkeys([*ranked(sheet), *sheet.of_kind("wall")])
    return [_wall(sheet, wall, pins, system) for wall in order]


def _wall(sheet: Sheet, wall: Facts, pins: tuple[Pin, ...], system: System) -> dict[str, Any]:
    """The drawings of a wall, and what is told beside them."""
    from markupsafe import Markup

    name = wall.label.replace(" ", "-")
    frame = wall_frame(sheet, wall)
    cut = section(sheet, wall, system, f"section-{name}")
    told: dict[str, Any] = {
        "label": wall.label,
        "name": name,
        "elevation": "",
        "narrow": "",
        "section": Markup(cut) if cut else "",
        "numbers": [],
        "told": told_of(wall, system),
        "note": "",
        "legends": [_legend(layer) for layer in layers_of(sheet, wall)],
        "key": [],
    }
    if frame is None:
        return told
    for kind, narrow in (("elevation", False), ("narrow", True)):
        view = View(system, "rain", False, pins, "#finding-{number}", f"{kind}-{name}", False, narrow)
        told[kind] = Markup(elevation(sheet, wall, view) or "")
    facing = f"faces {show(wall['faces'], 'angle', system)}" if wall["faces"] is not None else "bearing not stated"
    taken = [f"taken, not stated: {', '.join(frame.guessed)}"] if frame.guessed else []
    told["note"] = "; ".join([facing, ground_words(frame), *taken])
    told["numbers"] = sorted({spot.pin.number for spot in spots(frame, pins)})
    told["key"] = key_of(frame, system)
    return told


def _legend(layer: Layer) -> dict[str, Any]:
    """The legend of a layer for one wall."""
    zones = [] if layer.missing else zone_words(layer)
    return {
        "name": layer.name,
        "title": layer.title,
        "missing": layer.missing,
        "classes": classes_of(layer),
        "whole": layer.whole,
        "of": WHOLE[layer.name],
        "zones": zones,
    }


def pairs_of(base: Sheet, changed: tuple[tuple[str, Sheet], ...], system: System) -> list[dict[str, Any]]:
    """For each alternate, the wall whose rain it changes most, before and after."""
    from markupsafe import Markup

    found = []
    for name, sheet in changed:
        best = max(sheet.of_kind("wall"), key=lambda wall: _change(base, sheet, wall.label), default=None)
        if best is None or _change(base, sheet, best.label) < COMPARED or best.label not in base.facts:
            continue
        key = f"{name} {best.label}".replace(" ", "-")
        drawn = {}
        for when, of in (("before", base), ("after", sheet)):
            for wide, narrow in (("wide", False), ("narrow", True)):
                view = View(system, name=f"{when}-{wide}-{key}", legend=False, narrow=narrow)
                drawn[f"{when}_{wide}"] = Markup(elevation(of, of[best.label], view) or "")
        if all(drawn.values()):
            bare = base.value(best.label, "wooden") == "yes" and best["wooden"] == "no"
            note = "no wood is left outside; the shade is rain on what took its place" if bare else ""
            found.append({"name": name, "wall": best.label, "note": note, **drawn})
    return found


def _change(base: Sheet, other: Sheet, label: str) -> float:
    """How far the rain on a wall changes, against the mean open wall; all of it where its wood goes."""
    if base.value(label, "wooden") != other.value(label, "wooden"):
        return 1.0
    was, now = base.value(label, "rain exposure"), other.value(label, "rain exposure")
    return 0.0 if was is None or now is None else abs(float(was) - float(now))
