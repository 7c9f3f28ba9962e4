"""Webs for programs: one object, or a graph in the DOT language."""

from __future__ import annotations

from typing import Any

from speclint.measures.facts import Sheet
from speclint.measures.heights import height_of
from speclint.measures.moving import moving_of
from speclint.measures.water_path import flow_of
from speclint.outputs.data import as_json
from speclint.quantity import Quantity
from speclint.relations.web import Web
from speclint.science.roof_water import runoff


def dot_text(web: Web, title: str) -> str:
    """A web in the DOT language; names are quoted, so that no text of a plan can end its string."""
    lines = [f"digraph {_quoted(title)} {{", "    rankdir = TB", "    node [shape = box]"]
    for node in web.nodes.values():
        label = f"{node.name}\n{node.says}" if node.says else node.name
        lines.append(f"    {_quoted(node.name)} [label = {_quoted(label)}]")
    for tie in web.ties:
        lines.append(f"    {_quoted(tie.source)} -> {_quoted(tie.target)} [label = {_quoted(tie.words)}]")
    return "\n".join([*lines, "}"]) + "\n"


def _quoted(text: str) -> str:
    plain = text.replace("\\", "\\\\").replace('"', '\\"').replace("\n", "\\n")
    return '"' + "".join(letter if letter.isprintable() else " " for letter in plain) + '"'


def water_object(sheet: Sheet) -> str:
    """The way of water as JSON, in SI units."""
    flow = flow_of(sheet)
    rain = sheet.quantity(sheet["site"], "design rain")
    known = rain.value if isinstance(rain, Quantity) else None
    nodes: list[dict[str, Any]] = []
    for node in flow.drawn.nodes.values():
        carried = flow.at[node.name]
        nodes.append(
            {
                "name": node.name,
                "kind": node.kind,
                "element": node.element or None,
                "says": node.says or None,
                "own area": node.own,
                "area": carried.amount,
                "area at one spot": carried.at_points,
                "area not known of": list(carried.unknown),
                "flow": runoff(carried.amount, known) if known is not None else None,
                "height": height_of(sheet, node),
            }
        )
    ties = [
        {
            "from": tie.source,
            "to": tie.target,
            "words": tie.words,
            "kind": tie.kind or "spread",
            "share": tie.share,
            "spots": tie.spots,
            "area": flow.by(tie),
        }
        for tie in flow.drawn.ties
    ]
    return as_json(
        {
            "plan": sheet.home.name,
            "design rain": known,
            "units": {"area": "m2", "flow": "m3/s", "height": "m", "design rain": "mm/h"},
            "nodes": nodes,
            "ties": ties,
            "circles": [list(circle) for circle in flow.circles],
        }
    )


def bearing_object(sheet: Sheet, web: Web) -> str:
    """What bears on what and what moves past what, as JSON, in SI units."""
    _, circles = web.unrolled()
    return as_json(
        {
            "plan": sheet.home.name,
            "units": {"down": "m", "room": "m"},
            "nodes": [
                {"name": node.name, "kind": node.kind, "element": node.element or None, "says": node.says or None}
                for node in web.nodes.values()
            ],
            "ties": [{"from": tie.source, "to": tie.target, "words": tie.words} for tie in web.ties],
            "circles": [list(circle) for circle in circles],
            "moving": [
                {
                    "part": one.part,
                    "past": one.past,
                    "held": one.how,
                    "down": one.down,
                    "room": one.room,
                    "enough": one.enough,
                }
                for one in moving_of(sheet)
            ],
        }
    )
