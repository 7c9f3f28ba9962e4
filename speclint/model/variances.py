"""Variances: accepted deviations, with the reason, who accepted and until when."""

from __future__ import annotations

from collections.abc import Callable

from speclint.language.atoms import Mistake, Statement
from speclint.language.items import Item, Items
from speclint.language.nearest import did_you_mean
from speclint.model.home import Variance
from speclint.model.read_element import mistake_at, unclosed
from speclint.span import Span
from speclint.units import NotAQuantity, read_quantity, show

_SETTINGS = frozenset(("because", "accepted by", "until"))


def read_variance(items: Items, statement: Statement, file: str, tell: Callable[[Mistake], None]) -> Variance | None:
    """The variance that a statement states, or nothing where it names no rule."""
    rule = items.peek()
    first = items.items[0]
    if rule is None or rule.kind != "WORDS" or rule.text == "on":
        help = 'write: variance RULE on wall east { because "…"; accepted by "…"; until 2027-06-30 }'
        tell(mistake_at(file, first, "a variance needs the name of a rule", help))
        return None
    items.take()
    element = ""
    if items.words_ahead(1) == ["on"]:
        items.take()
        element = items.rest()
    elif items.peek() is not None:
        help = "write for example: variance RULE on wall east { … }"
        tell(mistake_at(file, items.take(), "a variance names one rule, then “on” and the element", help))
    stated = _settings(statement, file, tell)
    for missing in sorted(_SETTINGS - stated.keys()):
        says = f"the variance on {rule.text} does not state “{missing}”"
        tell(
            mistake_at(
                file, rule, says, f"add: {missing} {'2027-06-30' if missing == 'until' else chr(34) + '…' + chr(34)}"
            )
        )
    place = Span(file, rule.line, rule.column, len(rule.text))
    return Variance(
        rule.text, element, stated.get("because", ""), stated.get("accepted by", ""), stated.get("until", ""), place
    )


def _settings(statement: Statement, file: str, tell: Callable[[Mistake], None]) -> dict[str, str]:
    stated: dict[str, str] = {}
    for line in statement.body or ():
        items = Items(line)
        start = items.peek() or Item("", "{", line.line, line.column)
        name = items.take_longest(_SETTINGS)
        item = items.peek()
        if (open_text := unclosed(file, item if name else start)) is not None:
            tell(open_text)
            stated[name] = ""
        elif not name:
            got = " ".join(items.words_ahead(3)) or start.text
            help = did_you_mean(got, _SETTINGS) or "a variance has: because, accepted by, until"
            tell(mistake_at(file, start, f"“{got}” is not a setting of a variance", help))
        elif item is None or (name != "until" and item.kind != "TEXT"):
            needs = "a date" if name == "until" else "a text in quotes"
            help = "write for example: until 2027-06-30" if name == "until" else f'write: {name} "…"'
            tell(mistake_at(file, item or start, f"“{name}” needs {needs}", help))
            stated[name] = ""
        elif name == "until":
            day = _day(item)
            if not day:
                tell(mistake_at(file, item, f"“{item.text}” is not a date", "write a date such as 2027-06-30"))
            stated[name] = day
        else:
            stated[name] = item.text.strip('"').strip()
            if not stated[name]:
                tell(mistake_at(file, item, f"“{name}” of the variance is empty", f'write: {name} "…"'))
        if name and (more := items.peek(1)) is not None:
            says = f"“{more.text}” is not expected after “{name}”"
            tell(mistake_at(file, more, says, "end the note with ; or a new line"))
    return stated


def _day(item: Item) -> str:
    """The day that an item names as an ISO date, or nothing where it names none."""
    try:
        value = read_quantity(item.text)
    except NotAQuantity:
        return ""
    return show(value.number, "date") if value.dimension == "date" else ""
