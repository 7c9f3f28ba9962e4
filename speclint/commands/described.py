"""Rules as a log in SARIF describes them, kept between runs."""

from __future__ import annotations

import argparse
import hashlib
from pathlib import Path
from typing import Any

from speclint.commands.asked import Asked, state_of_program
from speclint.commands.told import SHELF
from speclint.kept import shelve, shelved


def descriptors(asked: Asked) -> dict[str, Any]:
    """What is known of every rule, by name, in the order of the rulebook, and then of what a review finds in notes."""
    key = _key(asked)
    found = shelved(SHELF, key) if key else None
    if isinstance(found, dict):
        return found
    made = _made(asked)
    if key and key == _key(asked):
        shelve(SHELF, key, made)
    return made


def _key(asked: Asked) -> str:
    try:
        state = state_of_program(asked)
    except OSError:
        return ""
    return hashlib.blake2b(f"rules {state}".encode(), digest_size=20).hexdigest()


def _made(asked: Asked) -> dict[str, Any]:
    from speclint.commands.common import rulebook_of
    from speclint.outputs.sarif_rules import own_descriptor, rule_descriptor
    from speclint.paths import shipped
    from speclint.review.own_rules import OWN_RULES
    from speclint.rulebook.page import read_page

    book = rulebook_of(argparse.Namespace(house_rules=asked.house_rules, house_limits=asked.house_limits))
    found = {}
    for rule in book.rules:
        own = Path(asked.house_rules) / Path(rule.page).name if asked.house_rules else None
        place = own if own and own.is_file() else shipped("rules") / Path(rule.page).name
        page = read_page(place.read_text(encoding="utf-8-sig"), rule.page)
        found[rule.name] = rule_descriptor(rule, page)
    return found | {rule.name: own_descriptor(rule) for rule in OWN_RULES}
