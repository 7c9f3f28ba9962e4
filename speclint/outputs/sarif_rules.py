"""Rules as a log in SARIF describes them: their page as help, their group and their gravest grade."""

from __future__ import annotations

import re
from typing import Any

from speclint.outputs.sarif import LEVELS, plain
from speclint.review.own_rules import GROUP, OwnRule
from speclint.rulebook.page import Page
from speclint.rulebook.rule import GRADES, Rule

HELP = ("What it finds", "Why it matters", "How to cure it", "When to accept it", "Limits", "Sources")
_MARKS = re.compile(r"`([^`\n]+)`|\*\*([^*\n]+)\*\*|\[([^\]\n]+)\]\([^)\n]*\)")


def rule_descriptor(rule: Rule, page: Page) -> dict[str, Any]:
    """A rule of the rulebook."""
    grades = {tier.grade for tier in rule.tiers}
    grade = next((one for one in GRADES if one in grades), "note")
    sections = {name: page.sections[name] for name in HELP if page.sections.get(name)}
    finds = sections.get("What it finds") or rule.because
    return _descriptor(rule.name, rule.title or rule.name, finds, sections, rule.group, grade)


def own_descriptor(rule: OwnRule) -> dict[str, Any]:
    """What a review finds in the notes of a plan."""
    sections = {
        "What it finds": rule.finds,
        "Why it matters": rule.because,
        "How to cure it": "\n".join(f"- {cure}" for cure in rule.cures),
    }
    return _descriptor(rule.name, rule.title, rule.finds, sections, GROUP, rule.grade)


def _descriptor(name: str, title: str, finds: str, sections: dict[str, str], group: str, grade: str) -> dict[str, Any]:
    told = "\n\n".join(f"{heading}\n{_bare(text)}" for heading, text in sections.items())
    marked = "\n\n".join(f"## {heading}\n\n{text}" for heading, text in sections.items())
    return {
        "id": name,
        "shortDescription": {"text": plain(_bare(title))},
        "fullDescription": {"text": plain(_bare(finds))},
        "help": {"text": plain(told), "markdown": marked},
        "defaultConfiguration": {"level": LEVELS[grade]},
        "properties": {"group": group, "grade": grade},
    }


def _bare(text: str) -> str:
    """A text of a page without its marks of Markdown."""
    return _MARKS.sub(lambda found: found[1] or found[2] or found[3], text)
