"""A company's own limits: a file in the plan language that changes limits and grades of rules, or sets rules aside."""

from __future__ import annotations

from speclint.language.atoms import Statement
from speclint.language.items import Item, Items
from speclint.language.nearest import did_you_mean
from speclint.language.parse import parse
from speclint.rulebook.book import Rulebook
from speclint.rulebook.rule import GRADES, Basis, BrokenRulebook, PageTrouble, Rule, Tier
from speclint.units import NotAQuantity, read_quantity


def with_house_limits(book: Rulebook, text: str, file: str) -> Rulebook:
    """The rulebook with the limits, grades and exclusions that a file states.

    The file holds statements such as `rule sill-too-near-grade { code floor 10"; grade revise }` and
    `rule bark-left-on { set aside "we peel every log" }`.

    Raises:
        BrokenRulebook: If the file cannot be used, with every trouble found.
    """
    tree = parse(text, file)
    troubles = [PageTrouble(file, m.line, m.column, m.message, m.help) for m in tree.mistakes]
    changed = {rule.name: rule for rule in book.rules}
    for statement in tree.statements:
        _read(statement, file, changed, troubles)
    if troubles:
        raise BrokenRulebook(troubles)
    return book.with_rules(tuple(changed[rule.name] for rule in book.rules))


def _read(statement: Statement, file: str, rules: dict[str, Rule], troubles: list[PageTrouble]) -> None:
    items = Items(statement)
    first = items.peek() or Item("", "{", statement.line, statement.column)
    name = items.peek(1)
    if first.text != "rule" or name is None:
        help = 'write for example: rule sill-too-near-grade { code floor 10" }'
        troubles.append(PageTrouble(file, first.line, first.column, f"“{first.text}” does not name a rule", help))
        return
    rule = rules.get(name.text)
    if rule is None:
        help = did_you_mean(name.text, rules) or "`speclint rulebook` lists the rules"
        troubles.append(PageTrouble(file, name.line, name.column, f"“{name.text}” is no rule of the rulebook", help))
        return
    for line in statement.body or ():
        rule = _changed(rule, line, file, troubles)
    rules[rule.name] = rule


def _changed(rule: Rule, line: Statement, file: str, troubles: list[PageTrouble]) -> Rule:
    items = Items(line)
    first = items.peek() or Item("", "{", line.line, line.column)
    known = frozenset([*(limit.name for limit in rule.limits), "grade", "set aside"])
    name = items.take_longest(known)
    item = items.peek()
    if not name or item is None:
        got = " ".join(items.words_ahead(4)) or first.text
        help = did_you_mean(got, known) or f"this rule has: {', '.join(sorted(known))}"
        troubles.append(PageTrouble(file, first.line, first.column, f"“{got}” is no limit of {rule.name}", help))
        return rule
    extra = items.peek(1)
    if extra is not None:
        says = f"“{extra.text}” is not expected after the value"
        troubles.append(PageTrouble(file, extra.line, extra.column, says, "one limit to a line, or part them with ;"))
        return rule
    if name == "set aside":
        return rule._replace(tiers=(), says=item.text.strip('"'))
    if name == "grade":
        if item.text not in GRADES:
            help = f"one of: {', '.join(GRADES)}"
            troubles.append(PageTrouble(file, item.line, item.column, f"“{item.text}” is not a grade", help))
            return rule
        return rule._replace(tiers=tuple(Tier(tier.condition, item.text) for tier in rule.tiers))
    return _with_limit(rule, name, item, file, troubles)


def _with_limit(rule: Rule, name: str, item: Item, file: str, troubles: list[PageTrouble]) -> Rule:
    limit = next(limit for limit in rule.limits if limit.name == name)
    try:
        value = read_quantity(item.text)
    except NotAQuantity as trouble:
        troubles.append(PageTrouble(file, item.line, item.column, str(trouble)))
        return rule
    if (value.dimension, limit.dimension) == ("percent", "slope"):
        value = value._replace(number=value.number / 100, dimension="slope")
    if value.dimension != limit.dimension:
        says = f"“{item.text}” does not fit “{name}”, which is {limit.text}"
        troubles.append(PageTrouble(file, item.line, item.column, says, f"needs a {limit.dimension}"))
        return rule
    ours = limit._replace(value=value.number, text=item.text, basis=Basis("", f"house limit in {file}", "ours"))
    return rule._replace(limits=tuple(ours if one is limit else one for one in rule.limits))
