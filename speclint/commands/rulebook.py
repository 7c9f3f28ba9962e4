"""`speclint rulebook`."""

from __future__ import annotations

import argparse
from itertools import groupby

from speclint.commands.common import put, rendered, rulebook_of
from speclint.commands.files import Refused
from speclint.language.nearest import did_you_mean
from speclint.model.kinds import KINDS
from speclint.outputs.letter import Line, Part
from speclint.review.judge import basis_line
from speclint.rulebook.rule import GRADES, Rule


def run(stated: argparse.Namespace) -> int:
    """List the rules that are asked for."""
    if stated.about is not None and stated.about not in KINDS:
        help = did_you_mean(stated.about, KINDS) or f"the kinds are: {', '.join(KINDS)}"
        raise Refused(f"“{stated.about}” is not a kind of element: {help}", 3)
    rules = [rule for rule in rulebook_of(stated).rules if _wanted(rule, stated)]
    if stated.json:
        from speclint.outputs.data import as_json

        put(as_json([_object(rule) for rule in rules]))
        return 0
    lines: list[Line] = []
    for group, members in groupby(rules, key=lambda rule: rule.group):
        lines += [(Part(group.upper(), "title"),)]
        for rule in members:
            grades = "/".join(grades_of(rule)) or "set aside"
            name = f"  {rule.name:<38}"
            lines.append((Part(name, "element"), Part(f" {grades:<18}", "number"), Part(f" {rule.title}")))
        lines.append(())
    total = f"{len(rules)} {'rule' if len(rules) == 1 else 'rules'}; `speclint explain NAME` teaches one"
    put(rendered([*lines, (Part(total, "quiet"),)], stated))
    return 0


def grades_of(rule: Rule) -> list[str]:
    """The grades a rule can give, gravest first."""
    given = {tier.grade for tier in rule.tiers}
    return [grade for grade in GRADES if grade in given]


def _wanted(rule: Rule, stated: argparse.Namespace) -> bool:
    text = f"{rule.name} {rule.title} {rule.group}".lower()
    return (
        all(word.lower() in text for word in stated.words)
        and (stated.grade is None or stated.grade in grades_of(rule))
        and (stated.about is None or stated.about in rule.kinds)
    )


def _object(rule: Rule) -> dict[str, object]:
    return {
        "name": rule.name,
        "title": rule.title,
        "group": rule.group,
        "about": list(rule.kinds),
        "grades": grades_of(rule),
        "limits": [
            {"name": limit.name, "value": limit.text, "basis": basis_line(limit.basis)} for limit in rule.limits
        ],
        "basis": [basis_line(basis) for basis in rule.basis],
        "supersedes": list(rule.supersedes),
    }
