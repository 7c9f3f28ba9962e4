"""One wall of a plan in kiln-dried, air-dried and green logs, side by side."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass, replace
from types import MappingProxyType

from speclint.measures.facts import Facts, Sheet
from speclint.measures.moisture import SEASONED
from speclint.measures.movement import JackCalendar, porches_on
from speclint.model.element import Given
from speclint.model.wall import Wall
from speclint.outputs.letter import Line, Part, Role
from speclint.quantity import Absent, Quantity
from speclint.tables.rows import UnknownRow
from speclint.tables.species import find_species
from speclint.units import System, show

# moisture content when stacked, percent; ours, where the plan does not state it for its own seasoning
LIKELY: Mapping[str, float] = MappingProxyType({name: SEASONED[name] for name in ("kiln-dried", "air-dried", "green")})
COATED = 19.0  # percent: limit of the trade for a first coat
WIDE, COLUMN = 34, 24
PARTS = (
    ("shrinkage part", "by drying, by the standard"),
    ("bedding part", "and by slumping"),
    ("builders allowance", "builders allow, all told"),
    ("settlement", "settlement reckoned with"),
)
ROLES: Mapping[str, Role] = MappingProxyType({"low": "good", "moderate": "revise", "high": "hold"})


@dataclass(frozen=True, slots=True)
class Seasoned:
    """A plan in which one wall is of logs dried in one way.

    Attributes:
        seasoning: How the logs are dried.
        moisture: Moisture content when stacked. [%]
        as_drawn: Whether the plan states just this for the wall.
        sheet: The facts of the plan so changed.
    """

    seasoning: str
    moisture: float
    as_drawn: bool
    sheet: Sheet


def seasoned(sheet: Sheet, wall: Facts) -> list[Seasoned]:
    """The plan with the wall in each of the three seasonings; nothing else of it is changed."""
    return [_seasoned(sheet, wall, seasoning) for seasoning in LIKELY]


def _seasoned(sheet: Sheet, wall: Facts, seasoning: str) -> Seasoned:
    element = wall.element
    if not isinstance(element, Wall):
        raise TypeError(f"wanted a wall; got {wall.label}")
    drawn = element.seasoning == seasoning
    if drawn and element.moisture is not None:
        moisture = element.moisture
    else:
        moisture = max(LIKELY[seasoning], _saturation(element)) if seasoning == "green" else LIKELY[seasoning]
    given = {name: one for name, one in element.given.items() if name != "settling"}
    for name, text in (("seasoning", seasoning), ("moisture", f"{moisture:g}%")):
        if not drawn or name not in given:
            given[name] = Given(element.place, text, "assumed by speclint", "to compare")
    changes = {"seasoning": seasoning, "moisture": moisture, "settling": None, "given": given}
    elements = {**sheet.home.elements, element.label: replace(element, **changes)}
    other = Sheet(replace(sheet.home, elements=elements), sheet.records)
    return Seasoned(seasoning, moisture, drawn, other)


def _saturation(wall: Wall) -> float:
    """Moisture content of green logs that counts for shrinking. [%]"""
    try:
        return find_species(wall.species or "").fibre_saturation
    except UnknownRow:
        return LIKELY["green"]


def seasonings_lines(sheet: Sheet, wall: Facts, system: System) -> list[Line]:
    """What each seasoning of a wall's logs means for settling, headspace, jacks, checks and the first coat."""
    lines: list[Line] = [(Part(f"{wall.label}: kiln-dried, air-dried and green logs compared", "title"),)]
    if wall["stacked"] != "yes":
        return [*lines, (Part("  only stacked logs settle: nothing to compare", "quiet"),), ()]
    plans = seasoned(sheet, wall)
    lines.append((Part(" " * WIDE), *(Part(f"{_head(plan):<{COLUMN}}", "label") for plan in plans)))
    lines.append(_row("moisture when stacked", plans, lambda plan: f"{plan.moisture:g}%"))
    for name, words in PARTS:
        lines.append(_row(words, plans, _shows(wall.label, name, system)))
        if name == "shrinkage part":
            lines.append(_row("  rings one way or the other", plans, _shows_bounds(wall.label, name, system)))
    for label in _openings(sheet, wall):
        lines.append(_row(f"headspace, {label}", plans, _shows(label, "headspace need", system)))
    for label in _posts(sheet, wall):
        lines.append(_row(f"jack travel, {label}", plans, _shows(label, "travel need", system)))
        lines.append(_row("  lowered in the first year", plans, _shows_first_year(label, system)))
    lines.append(_row("log shrinks in thickness by", plans, _shows(wall.label, "log shrinkage", system)))
    lines.append(_row("checks, all in one", plans, _shows(wall.label, "check opening", system)))
    risks = [_told(plan.sheet, wall.label, "check risk", system) for plan in plans]
    cells = (Part(f"{risk:<{COLUMN}}", ROLES.get(risk, "plain")) for risk in risks)
    lines += [(Part(f"  {'check risk':<{WIDE - 2}}", "element"), *cells)]
    lines.append(_row("first coat lasts", plans, _shows(wall.label, "likely finish life", system)))
    lines += [_row("later coats last", plans, _shows_later(wall.label, system)), ()]
    lines += [(Part("First coat", "label"),)]
    lines += [(Part(f"  {plan.seasoning:<12}", "element"), Part(first_coat(plan.moisture))) for plan in plans]
    return [*lines, (), *_limits(sheet, wall, plans, system)]


def first_coat(moisture: float) -> str:
    """When logs stacked at a moisture content get their first coat, and of what. [%]"""
    if moisture <= COATED:
        return "once a meter shows 19% or less, best 12 to 15%, on a clean face; the label decides"
    if moisture < LIKELY["green"]:
        return "after a dry season under roof, at 19% or less by a meter; first a finish that soaks in, no film"
    return "not before the face is at 19% or less, a year or more under roof; soaking finishes only until checks rest"


def _shows_later(label: str, system: System) -> Callable[[Seasoned], str]:
    """The likely life of coats on wood that has dried."""

    def tell(plan: Seasoned) -> str:
        life, share = (plan.sheet[label][name] for name in ("likely finish life", "first coat share"))
        return show(life / share, "duration", system) if life and share else "not known"

    return tell


def _head(plan: Seasoned) -> str:
    return f"{plan.seasoning} (as drawn)" if plan.as_drawn else plan.seasoning


def _row(words: str, plans: list[Seasoned], tell: Callable[[Seasoned], str]) -> Line:
    cells = (Part(f"{tell(plan):<{COLUMN}}") for plan in plans)
    return (Part(f"  {words:<{WIDE - 2}}", "element"), *cells)


def _shows(label: str, name: str, system: System) -> Callable[[Seasoned], str]:
    return lambda plan: _told(plan.sheet, label, name, system)


def _told(sheet: Sheet, label: str, name: str, system: System) -> str:
    found = sheet.quantity(sheet[label], name)
    return "not known" if isinstance(found, Absent) else found.shown(system)


def _shows_bounds(label: str, name: str, system: System) -> Callable[[Seasoned], str]:
    def tell(plan: Seasoned) -> str:
        found = plan.sheet.quantity(plan.sheet[label], name)
        return found.shown_range(system) if isinstance(found, Quantity) else "not known"

    return tell


def _shows_first_year(label: str, system: System) -> Callable[[Seasoned], str]:
    def tell(plan: Seasoned) -> str:
        found = plan.sheet.quantity(plan.sheet[label], "jack calendar")
        if not isinstance(found, Quantity) or not isinstance(found.value, JackCalendar):
            return "not known"
        first = [lower for month, lower in found.value.turns if month <= 12]
        return f"{show(sum(first), 'length', system)} in {len(first)} turns"

    return tell


def _openings(sheet: Sheet, wall: Facts) -> list[str]:
    return [opening.label for kind in ("window", "door") for opening in sheet.of_kind(kind) if opening["wall"] is wall]


def _posts(sheet: Sheet, wall: Facts) -> list[str]:
    """The lasting posts that share a porch roof with the wall."""
    return [
        post.label
        for post in sheet.of_kind("post")
        if post["temporary"] != "yes"
        and any(wall in (porch["along"] or ()) and porch["hung on"] != "posts" for porch in porches_on(post))
    ]


def _limits(sheet: Sheet, wall: Facts, plans: list[Seasoned], system: System) -> list[Line]:
    lines: list[Line] = [
        (Part("  settlement: the larger of what builders allow, and shrinkage with bedding down", "quiet"),),
        (Part("  the moisture of logs that the plan does not state is ours: 19, 24 and 30%", "quiet"),),
        (Part("  posts keep their length: the wall comes down past them", "quiet"),),
    ]
    stated = sheet.quantity(wall, "settling")
    if isinstance(stated, Quantity):
        told = f"  the {stated.shown(system)} that the shop states is left out here, since it goes with one seasoning"
        lines.append((Part(told, "quiet"),))
    for plan in plans[:1]:
        missing = plan.sheet.quantity(plan.sheet[wall.label], "shrinkage part")
        if isinstance(missing, Absent):
            wants = ", ".join(f"{one.setting} of {one.element}" for one in missing.missing)
            lines.append((Part(f"  not known: {missing.reason or f'the plan does not say: {wants}'}", "revise"),))
    return lines
