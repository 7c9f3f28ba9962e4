"""The text of a rule to a checked rule. The rulebook's only door to lark."""

from __future__ import annotations

import re
from collections.abc import Sequence
from functools import lru_cache
from typing import TYPE_CHECKING, Any

from speclint.citation import STANDINGS, publications
from speclint.language.nearest import did_you_mean
from speclint.model.kinds import KINDS
from speclint.paths import shipped
from speclint.rulebook.check import Checker, Refused
from speclint.rulebook.names import dimensions_of
from speclint.rulebook.page import HEADINGS, Page
from speclint.rulebook.rule import GRADES, Basis, Limit, PageTrouble, Rule, Tier
from speclint.units import NotAQuantity, read_quantity

if TYPE_CHECKING:
    from lark import Lark

NEEDED = ("name", "group", "about", "require", "says", "because", "basis")
_HOLE = re.compile(r"\{([^{}]*)\}")


@lru_cache(maxsize=1)
def _parser() -> Lark:
    from lark import Lark

    grammar = shipped("grammar").joinpath("rule.lark").read_text(encoding="utf-8")
    return Lark(grammar, parser="lalr", lexer="contextual")


def read_rule(page: Page, groups: tuple[str, ...]) -> tuple[Rule | None, list[PageTrouble]]:
    """The rule of a page, and every trouble with it.

    Args:
        page: The page, taken apart.
        groups: The groups a rule can belong to.
    """
    from lark import UnexpectedInput

    if page.rule is None:
        return None, [PageTrouble(page.file, 1, 1, "the page has no fenced rule", "start one with ```rule")]
    try:
        tree = _parser().parse(page.rule.text)
    except UnexpectedInput as trouble:
        line, column = max(1, trouble.line), max(1, trouble.column)
        lines = page.rule.text.splitlines()
        near = lines[min(line, len(lines)) - 1].strip() if lines else ""
        message = f"the rule cannot be read near “{near}”"
        help = "each clause starts at the margin with a word such as about, require, says; carry on by indenting"
        return None, [PageTrouble(page.file, page.rule.line + line - 1, column, message, help)]
    return _Reader(page, groups).rule(list(tree.children))


class _Reader:
    """Reads the clauses of one rule."""

    def __init__(self, page: Page, groups: tuple[str, ...]) -> None:
        self.page, self.groups = page, groups
        self.troubles: list[PageTrouble] = []

    def rule(self, clauses: list[Any]) -> tuple[Rule | None, list[PageTrouble]]:
        """The rule that the clauses make, unless a trouble stands in its way."""
        found: dict[str, list[Any]] = {}
        for clause in clauses:
            found.setdefault(str(clause.data), []).append(clause)
        for name in NEEDED:
            if name not in found:
                clause = "rule" if name == "name" else name
                self._tell(None, f"the rule has no “{clause}”", "see the recipe for a rule page in DEVELOPERS.md")
        for heading in HEADINGS:
            if heading not in self.page.sections:
                self._tell(None, f"the page has no heading “{heading}”", "")
        if not self.page.trips or not self.page.cured:
            self._tell(None, "the page needs a plan that trips the rule and one that is cured", "fence them as ```plan")
        if self.troubles:
            return None, self.troubles
        try:
            rule = self._rule(found)
        except Refused as trouble:
            self._tell(trouble.token, trouble.message, trouble.help)
            return None, self.troubles
        return (None if self.troubles else rule), self.troubles

    def _tell(self, token: Any, message: str, help: str) -> None:
        start = self.page.rule.line if self.page.rule else 1
        line, column = (token.line, token.column) if token is not None and hasattr(token, "line") else (1, 1)
        self.troubles.append(PageTrouble(self.page.file, start + line - 1, column, message, help))

    def _rule(self, found: dict[str, list[Any]]) -> Rule:
        for token in found["about"][0].children[0].children:
            if str(token) not in KINDS:
                help = did_you_mean(str(token), KINDS) or f"one of: {', '.join(KINDS)}"
                raise Refused(f"“{token}” is not a kind of element", token, help)
        kinds = tuple(str(token) for token in found["about"][0].children[0].children)
        name_token = found["name"][0].children[0]
        stem = self.page.file.rsplit("/", 1)[-1].removesuffix(".md")
        if str(name_token) != stem:
            self._tell(name_token, f"the rule is called “{name_token}” and its page “{stem}”", "give both one name")
        group = self._text(found, "group")
        if group not in self.groups:
            help = did_you_mean(group, self.groups) or f"one of: {'; '.join(self.groups)}"
            self._tell(found["group"][0].children[0], f"“{group}” is no group of the rulebook", help)
        limits = {limit.name: limit for limit in map(self._limit, found.get("limit", ()))}
        if any(str(clause.children[0]) == "none" for clause in found.get("variance", ())):
            limits = {name: limit._replace(exact=True) for name, limit in limits.items()}
        checker = Checker(kinds, limits)
        where = found["about"][0].children[1]
        tiers = tuple(self._tier(checker, clause) for clause in found["require"])
        rule = Rule(
            name=str(name_token),
            group=group,
            kinds=kinds,
            where=None if where is None else checker.condition(where),
            tiers=tiers,
            says=self._text(found, "says"),
            because=self._text(found, "because"),
            cures=tuple(_unquoted(clause.children[0]) for clause in found.get("cure", ())),
            basis=tuple(self._basis(clause.children[0]) for clause in found["basis"]),
            page=self.page.file,
            title=self.page.title,
            limits=tuple(limits.values()),
            stated=checker.value(found["stated"][0].children[0]) if "stated" in found else None,
            needed=checker.value(found["needed"][0].children[0]) if "needed" in found else None,
            adjust=tuple(
                " of ".join(map(str, path.children)) for clause in found.get("adjust", ()) for path in clause.children
            ),
            defer=self._text(found, "defer") if "defer" in found else "",
            variance="none" not in (barred := self._variance(found.get("variance", ()))),
            hold_variance=not barred,
            supersedes=tuple(str(token) for clause in found.get("supersedes", ()) for token in clause.children),
            dimensions=tuple(sorted(dimensions_of(kinds[0]).items())),
        )
        self._check_holes(found, rule)
        return rule

    def _variance(self, clauses: Sequence[Any]) -> list[str]:
        """What no variance can set aside: `none` at all, or `no hold`."""
        for clause in clauses:
            if str(clause.children[0]) not in ("none", "no hold"):
                help = "write: variance none, or: variance no hold"
                self._tell(clause.children[0], f"“{clause.children[0]}” is not expected here", help)
        return [str(clause.children[0]) for clause in clauses]

    def _text(self, found: dict[str, list[Any]], name: str) -> str:
        return _unquoted(found[name][0].children[0])

    def _tier(self, checker: Checker, clause: Any) -> Tier:
        grade = str(clause.children[1])
        if grade not in GRADES:
            raise Refused(f"“{grade}” is not a grade", clause.children[1], f"one of: {', '.join(GRADES)}")
        return Tier(checker.condition(clause.children[0]), grade)

    def _limit(self, clause: Any) -> Limit:
        name, amount, basis = clause.children
        token = amount.children[0]
        try:
            value = read_quantity(str(token))
        except NotAQuantity as trouble:
            raise Refused(str(trouble), token) from None
        return Limit(str(name), value.number, value.dimension, str(token).strip(), self._basis(basis))

    def _basis(self, clause: Any) -> Basis:
        key_token, place, standing_token = clause.children
        key = str(key_token)
        if key in ("ours", "common-practice"):
            return Basis("", _unquoted(place), key.replace("-", " "))
        standing = "published" if standing_token is None else str(standing_token)
        if standing not in STANDINGS:
            self._tell(standing_token, f"“{standing}” is no standing", f"one of: {', '.join(STANDINGS)}")
        if key not in publications():
            help = did_you_mean(key, publications()) or "register it in shared/citations.csv"
            self._tell(key_token, f"“{key}” is not a registered publication", help)
        return Basis(key, _unquoted(place), standing)

    def _check_holes(self, found: dict[str, list[Any]], rule: Rule) -> None:
        known = {"element", "stated", "needed", "margin", "part", "missing", *(name for name, _ in rule.dimensions)}
        known |= {limit.name for limit in rule.limits}
        for clause_name in ("says", "because", "cure"):
            for clause in found.get(clause_name, ()):
                for hole in _HOLE.findall(str(clause.children[0])):
                    if hole not in known:
                        help = did_you_mean(hole, known) or "use {element}, {stated}, {needed} or a setting"
                        self._tell(clause.children[0], f"nothing is called “{hole}” here", help)


def _unquoted(token: Any) -> str:
    return " ".join(str(token).strip('"').split())
