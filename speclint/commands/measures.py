"""`speclint measures`."""

from __future__ import annotations

import argparse

from speclint.commands.common import put, rendered, tell_mistakes, units_of
from speclint.commands.files import Refused, demo_plan, open_plan, refuse_two
from speclint.language.nearest import did_you_mean
from speclint.measures.course_table import course_table
from speclint.measures.facts import Facts, Sheet
from speclint.measures.register import measures
from speclint.outputs.courses import course_lines
from speclint.outputs.letter import Line, Part
from speclint.outputs.unfold import unfold
from speclint.pipeline import PlanText, read_home
from speclint.quantity import Quantity
from speclint.relations.bearing import SOIL
from speclint.units import System


def run(stated: argparse.Namespace) -> int:
    """Show what is computed for a plan."""
    plan, named = plan_asked(stated, stated.element)
    system = units_of(stated, plan.text)
    sheet, status = sheet_of(plan, stated.alternate)
    chosen = [element_of(sheet, named)] if named else list(sheet.facts.values())
    if stated.json or stated.csv:
        from speclint.outputs.measured import as_csv, as_object

        put(as_csv(chosen, sheet, stated.courses) if stated.csv else as_object(chosen, sheet, system))
        return status
    lines: list[Line] = []
    for facts in chosen:
        if not stated.courses:
            lines += _unfolded(facts, sheet, system) if named else _table(facts, sheet, system)
        if facts.element.kind == "wall" and (stated.courses or named):
            lines += course_lines(course_table(sheet, facts), system)
    if stated.courses and not lines:
        raise Refused("only walls have courses: name a wall, or no element", 3)
    put(rendered(lines, stated))
    return status


def plan_asked(stated: argparse.Namespace, named: list[str] | None = None) -> tuple[PlanText, str]:
    """The plan that the words of the command line ask for, and the element named after it.

    Args:
        stated: The words of the command line.
        named: Words after the plan; nothing where the command takes a plan alone.

    Raises:
        Refused: If no plan is asked for, two are, or it cannot be read.
    """
    if stated.demo:
        refuse_two(stated.plan, alone=named is None)
        return demo_plan(), " ".join([stated.plan, *(named or [])] if stated.plan is not None else named or [])
    if stated.plan is None:
        raise Refused("name a plan, or ask for --demo", 3)
    return open_plan(stated.plan), " ".join(named or [])


def sheet_of(plan: PlanText, alternate: str = "") -> tuple[Sheet, int]:
    """The facts of a plan; its mistakes go to standard error.

    Raises:
        Refused: If the plan has no such alternate.
    """
    try:
        sheet, mistakes = read_home(plan, alternate)
    except LookupError as trouble:
        raise Refused(f"{plan.name}: there is no alternate “{alternate}”; alternates: {trouble.args[0]}", 3) from None
    tell_mistakes(plan.name, mistakes)
    return sheet, 2 if mistakes else 0


def element_of(sheet: Sheet, label: str) -> Facts:
    """The element of that label; `wall.west` is read as `wall west`.

    Raises:
        Refused: If the plan holds none.
    """
    plain = " ".join(label.replace(".", " ").split())
    found = sheet.facts.get(plain) or sheet.facts.get(f"wall {plain}")
    if found is None:
        help = did_you_mean(plain, sheet.facts) or f"the plan has: {', '.join(list(sheet.facts)[:12])}"
        raise Refused(f"there is no “{plain}” in the plan: {help}", 3)
    return found


def _table(facts: Facts, sheet: Sheet, system: System) -> list[Line]:
    known = measures().get(facts.element.kind, {})
    if not known:
        return []
    lines: list[Line] = [(Part(facts.label, "title"),)]
    for name in known:
        quantity = sheet.quantity(facts, name)
        if isinstance(quantity, Quantity):
            bounds = quantity.shown_range(system)
            value = f"{quantity.shown(system)} ({bounds})" if bounds else quantity.shown(system)
            lines.append((Part(f"  {name:<22}"), Part(f"{value:<30}  ", "number"), Part(known[name].meaning, "quiet")))
        elif quantity.missing:
            wants = ", ".join(f"{missing.setting} of {missing.element}" for missing in quantity.missing)
            lines.append((Part(f"  {name:<22}"), Part("not known: ", "revise"), Part(f"needs {wants}", "quiet")))
        else:
            lines.append((Part(f"  {name:<22}"), Part("does not apply: ", "quiet"), Part(quantity.reason, "quiet")))
    return [*lines, ()]


def _unfolded(facts: Facts, sheet: Sheet, system: System) -> list[Line]:
    lines: list[Line] = [(Part(facts.label, "title"),), *_relations(facts.label, sheet), ()]
    seen: set[str] = set()
    for name in measures().get(facts.element.kind, {}):
        lines += [*unfold(sheet.quantity(facts, name), system, 0, seen), ()]
    return lines


def _relations(label: str, sheet: Sheet) -> list[Line]:
    """What covers the element, what it bears on, and where its water goes."""
    from speclint.measures.bearing import bearing_of
    from speclint.measures.water_path import flow_of
    from speclint.relations.cover import covers
    from speclint.relations.web import told

    bearing, water = bearing_of(sheet)[0], flow_of(sheet).drawn
    named = (("cover", covers(sheet.home)), ("bearing", bearing.ties), ("water", water.ties))
    lines: list[Line] = []
    for name, ties in named:
        for tie in ties:
            if label in (tie.source, tie.target):
                lines.append((Part(f"  {name:<9}", "label"), Part(told((tie,)))))
    way = bearing.way(label, SOIL) if label in bearing.nodes and SOIL in bearing.nodes else ()
    if len(way) > 1:
        lines.append((Part(f"  {'down':<9}", "label"), Part(told(way))))
    return lines
