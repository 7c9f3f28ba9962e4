"""`speclint explain`."""

from __future__ import annotations

import argparse
import os
import textwrap
from pathlib import Path

from speclint.commands.common import put, rendered, rulebook_of, units_of, width, wrapped
from speclint.commands.files import Refused, demo_plan, open_plan, refuse_two
from speclint.commands.measures import element_of, sheet_of
from speclint.language.nearest import did_you_mean
from speclint.measures.facts import Facts, Sheet
from speclint.measures.register import measures
from speclint.model.element import settings_of
from speclint.model.kinds import KINDS
from speclint.outputs.letter import Line, Part
from speclint.outputs.topics import GENERAL, topic, topic_in_plan
from speclint.outputs.unfold import unfold
from speclint.review.judge import basis_line, judge
from speclint.review.own_rules import GROUP, OWN_RULES, OwnRule, own_rule
from speclint.rulebook.book import Rulebook
from speclint.rulebook.page import HEADINGS, read_page
from speclint.rulebook.rule import Rule
from speclint.units import System

MOST_COMPARED = 60  # walls; each is held in five plans of its own


def run(stated: argparse.Namespace) -> int:
    """Teach what is asked for; with a plan, show its numbers."""
    name, path, label = _parted(stated.words)
    book = rulebook_of(stated)
    rule, own = book.named(name), own_rule(name)
    lines: list[Line] = []
    if rule is not None:
        lines = _rule(rule, stated)
    elif name in KINDS:
        lines = _kind(name)
    elif name == "species":
        lines = _species()
    elif own is not None:
        lines = _own_rule(own)
    elif taught := topic(name):
        lines = wrapped(taught)
    else:
        lines = [*_measure(name, bool(path or stated.demo)), *_setting(name)]
    if not lines:
        raise Refused(f"speclint knows nothing called “{name}”: {_near(name, book)}", 3)
    status = 0
    if (path or stated.demo) and own is None:
        if stated.demo:
            refuse_two(path or None)
        plan = open_plan(path) if path else demo_plan()
        sheet, status = sheet_of(plan)
        only = element_of(sheet, label) if label else None
        lines += [(), (Part(f"In {plan.name}", "title"),)]
        system = units_of(stated, plan.text)
        if name == "seasoning" and rule is None:
            lines += wrapped(_seasonings(sheet, only, system))
        elif name in GENERAL and rule is None:
            lines += wrapped(topic_in_plan(name, sheet, only, system))
        else:
            lines += _in_plan(name, rule, book, sheet, only, system)
    put(rendered(lines, stated))
    return status


def _seasonings(sheet: Sheet, only: Facts | None, system: System) -> list[Line]:
    """Kiln-dried, air-dried and green logs side by side, for a wall or for every wall of stacked logs."""
    from speclint.outputs.places import places_lines
    from speclint.outputs.seasonings import seasonings_lines

    walls = [only] if only else [wall for wall in sheet.of_kind("wall") if wall["stacked"] == "yes"]
    walls = [wall for wall in walls if wall.element.kind == "wall"]
    lines: list[Line] = []
    for wall in walls[:MOST_COMPARED]:
        lines += [*seasonings_lines(sheet, wall, system), (), *places_lines(sheet, wall, system), ()]
    if len(walls) > MOST_COMPARED:
        lines += [(Part(f"  the first {MOST_COMPARED} of {len(walls):,} walls; name another to compare it", "quiet"),)]
    return lines or [(Part("  the plan has no wall of stacked logs", "quiet"),)]


def _parted(words: list[str]) -> tuple[str, str, str]:
    """The name, the plan and the element that the words of the command line mean."""
    for at, word in enumerate(words):
        if at and (word.endswith(".plan") or os.path.isfile(word)):
            return " ".join(words[:at]), word, " ".join(words[at + 1 :])
    for at in range(len(words), 1, -1):  # with the demo plan no plan parts the name from the element
        if " ".join(words[: at - 1]) in GENERAL:
            return " ".join(words[: at - 1]), "", " ".join(words[at - 1 :])
    return " ".join(words), "", ""


def _near(name: str, book: Rulebook) -> str:
    known = [rule.name for rule in book.rules] + [rule.name for rule in OWN_RULES] + list(KINDS) + list(GENERAL)
    known += [measure for found in measures().values() for measure in found]
    known += [setting for model in KINDS.values() for setting in settings_of(model)]
    return did_you_mean(name, dict.fromkeys(known)) or "`speclint rulebook` lists the rules"


def _rule(rule: Rule, stated: argparse.Namespace) -> list[Line]:
    page = read_page(_page_text(rule, stated), rule.page)
    lines: list[Line] = [(Part(page.title, "title"), Part(f"  [{rule.name}]", "quiet")), (Part(rule.group, "quiet"),)]
    for heading in HEADINGS:
        if heading in ("Trips it", "Cured"):
            continue
        lines += [(), (Part(heading, "label"),), *_text(page.sections.get(heading, ""))]
    if rule.limits:
        lines += [(), (Part("Limits you can change with --house-limits", "label"),)]
        for limit in rule.limits:
            lines.append((Part(f"  {limit.name:<24} {limit.text:<10}"), Part(basis_line(limit.basis), "quiet")))
    lines += [(), (Part("Basis", "label"),)]
    lines += [(Part(f"  {basis_line(basis)}", "quiet"),) for basis in rule.basis]
    if rule.defer:
        lines += [(), (Part("Caution", "label"),), *_text(rule.defer)]
    for title, snippets in (("A plan that trips it", page.trips), ("Its cured twin", page.cured)):
        for snippet in snippets[:1]:
            lines += [(), (Part(title, "label"),)]
            lines += [(Part(f"  {row}", "quiet"),) for row in snippet.text.rstrip().splitlines()]
    return lines


def _own_rule(rule: OwnRule) -> list[Line]:
    """What a review finds in the notes of a plan."""
    lines: list[Line] = [(Part(rule.title, "title"), Part(f"  [{rule.name}]", "quiet")), (Part(GROUP, "quiet"),)]
    for heading, texts in (
        ("What it finds", [rule.finds]),
        ("Why it matters", [rule.because]),
        ("How to cure it", [f"- {cure}" for cure in rule.cures]),
    ):
        lines += [(), (Part(heading, "label"),), *_text("\n".join(texts))]
    lines += [(), (Part("Basis", "label"),), (Part(f"  {rule.basis}", "quiet"),)]
    return [*lines, (), (Part("`speclint review` shows what it finds in a plan", "quiet"),)]


def _page_text(rule: Rule, stated: argparse.Namespace) -> str:
    from speclint.paths import shipped

    stem = rule.page.rsplit("/", 1)[-1]
    if stated.house_rules and (Path(stated.house_rules) / stem).is_file():
        return (Path(stated.house_rules) / stem).read_text(encoding="utf-8")
    return shipped("rules").joinpath(stem).read_text(encoding="utf-8")


def _text(text: str) -> list[Line]:
    lines: list[Line] = []
    for row in text.splitlines():
        for piece in textwrap.wrap(row, width() - 4) or [""]:
            lines.append((Part(f"  {piece}"),))
    return lines


def _kind(kind: str) -> list[Line]:
    model = KINDS[kind]
    about = (model.__doc__ or "").strip().splitlines()[0]
    lines: list[Line] = [(Part(kind, "title"), Part(f"  {about}")), (), (Part("Settings", "label"),)]
    for setting in settings_of(model).values():
        lines.append((Part(f"  {setting.name:<22}", "element"), Part(f"{setting.example:<24}"), Part(setting.meaning)))
        if setting.choices and setting.dimension == "choice":
            for row in textwrap.wrap(" | ".join(setting.choices), width() - 28):
                lines.append((Part(" " * 26 + row, "quiet"),))
    if kind in measures():
        lines += [(), (Part("Computed", "label"),)]
        for measure in measures()[kind].values():
            lines.append((Part(f"  {measure.name:<22}", "element"), Part(measure.meaning)))
    return lines


def _measure(name: str, in_plan: bool) -> list[Line]:
    lines: list[Line] = []
    for kind, found in measures().items():
        if name not in found:
            continue
        measure = found[name]
        told = " ".join((measure.function.__doc__ or "").split())
        lines += [(Part(f"{name} of a {kind}", "title"),), (Part(f"  {measure.meaning} ({measure.dimension})"),)]
        lines += [(Part(f"  {told}", "quiet"),)]
    if lines and not in_plan:
        lines.append((Part("  name a plan after it to see the number and what it came from", "quiet"),))
    return lines


def _setting(name: str) -> list[Line]:
    lines: list[Line] = []
    for kind, model in KINDS.items():
        setting = settings_of(model).get(name)
        if setting is None:
            continue
        lines.append((Part(f"{name} of a {kind}", "title"),))
        lines.append((Part(f"  {setting.meaning}; for example: {name} {setting.example}"),))
        for choice, meaning in (setting.choices or {}).items():
            lines.append((Part(f"    {choice:<26}", "element"), Part(meaning, "quiet")))
    return lines


def _species() -> list[Line]:
    from speclint.tables.species import all_species

    head = f"  {'species':<28} {'shrinkage radial/tangential':<30} decay resistance of heartwood"
    lines: list[Line] = [(Part("Species of the reference table", "title"),), (Part(head, "label"),)]
    for species in all_species():
        shrinks = f"{species.radial_shrinkage:g} / {species.tangential_shrinkage:g} %"
        lines.append((Part(f"  {species.name:<28} {shrinks:<30} {species.decay_resistance}"),))
    return lines


def _in_plan(
    name: str, rule: Rule | None, book: Rulebook, sheet: Sheet, only: Facts | None, system: System
) -> list[Line]:
    lines: list[Line] = []
    if rule is not None:
        return _rule_in_plan(rule, book, sheet, only, system)
    for facts in [only] if only else list(sheet.facts.values()):
        kind = facts.element.kind
        known = name in measures().get(kind, {}) or name in settings_of(KINDS[kind])
        if kind == name or known:
            names = list(measures().get(kind, {})) if kind == name else [name]
            for one in names:
                lines += [*unfold(sheet.quantity(facts, one), system), ()]
    return lines or [(Part("  nothing there has it", "quiet"),)]


def _rule_in_plan(rule: Rule, book: Rulebook, sheet: Sheet, only: Facts | None, system: System) -> list[Line]:
    trips, unanswered = judge(sheet, book, system)
    lines: list[Line] = []
    about = [f for kind in rule.kinds for f in sheet.of_kind(kind) if only is None or f is only]
    for facts in about:
        told = next((one for one in trips if (one.rule, one.element) == (rule.name, facts.label)), None)
        asked = next((one for one in unanswered if (one.rule, one.element) == (rule.name, facts.label)), None)
        if told is not None:
            lines += [(Part(f"{told.grade}: ", told.grade), Part(told.message))]
            for quantity in told.evidence:
                lines += unfold(quantity, system, 2)
        elif asked is not None:
            wants = ", ".join(f"{missing.setting} of {missing.element}" for missing in asked.missing)
            lines += [(Part(f"{facts.label}: ", "element"), Part(f"the plan does not say: {wants}", "revise"))]
        else:
            lines += [(Part(f"{facts.label}: ", "element"), Part("met, or does not apply", "good"))]
        lines.append(())
    return lines or [(Part(f"  the plan has no {' or '.join(rule.kinds)}", "quiet"),)]
