"""A parsed rule to a checked one: names found, dimensions compared, every trouble told with its place.

Forms of a checked expression:
    ("field", relations, name, dimension)      ("limit", name, dimension)       ("number", value, dimension)
    ("sum", sign, left, right, dimension)      ("product", sign, left, right, dimension)
    ("larger"|"smaller", left, right, dimension)
    ("largest"|"smallest", relations, name, dimension)                          ("count", relations)
    ("compare", sign, left, right)             ("is", field, phrases, wanted)   ("known", field, wanted)
    ("every"|"some", relations, condition)     ("not", condition)               ("both"|"either", conditions)
"""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

from speclint.language.nearest import did_you_mean
from speclint.model.kinds import KINDS
from speclint.rulebook.names import choices_of, dimensions_of, known_names, relation
from speclint.rulebook.rule import Expression, Limit
from speclint.units import NotAQuantity, read_quantity

if TYPE_CHECKING:
    from lark import Token, Tree

PLAIN = frozenset(("count", "ratio", "index", "share"))


class Refused(Exception):
    """A rule text that cannot be used: the message, the help and the token it is about."""

    def __init__(self, message: str, token: Any, help: str = "") -> None:
        super().__init__(message)
        self.message, self.token, self.help = message, token, help


def dimension_of(expression: Expression) -> str:
    """The dimension of a checked expression that has a value."""
    return "count" if expression[0] == "count" else str(expression[-1])


class Checker:
    """Checks the expressions of one rule."""

    def __init__(self, kinds: tuple[str, ...], limits: dict[str, Limit]) -> None:
        self.limits = limits
        self.kinds = kinds

    def condition(self, tree: Tree[Token]) -> Expression:
        """A checked condition.

        Raises:
            Refused: If a name is not known or dimensions do not fit.
        """
        kind = tree.data
        if kind in ("either", "both"):
            parts = tuple(self.condition(child) for child in tree.children)  # type: ignore[arg-type]
            return parts[0] if len(parts) == 1 else (str(kind), parts)
        children: list[Any] = tree.children
        if kind == "negated":
            return ("not", self.condition(children[0]))
        if kind == "compare":
            return self._compare(children)
        if kind in ("is_stated", "is_not_stated"):
            return ("known", self._field(children[0]), kind == "is_stated")
        if kind in ("is_word", "is_not_word", "is_one_of"):
            return self._is(children, kind != "is_not_word")
        if kind in ("every", "some"):
            return self._quantified(str(kind), children)
        raise Refused("a condition is expected here", _first(tree), "compare two values, or write: NAME is WORD")

    def value(self, tree: Tree[Token]) -> Expression:
        """A checked value.

        Raises:
            Refused: If a name is not known or dimensions do not fit.
        """
        children: list[Any] = tree.children
        match tree.data:
            case "added" | "multiplied":
                return self._chain(str(tree.data), children)
            case "path":
                return self._path(tree)
            case "quantity":
                return self._literal(children[0])
            case "larger" | "smaller":
                left, right = self.value(children[0]), self.value(children[1])
                self._same(left, right, _first(tree))
                return (str(tree.data), left, right, dimension_of(left))
            case "largest" | "smallest":
                return self._extreme(str(tree.data), children[0])
            case "number_of":
                relations, _ = self._relations([str(name) for name in children[0].children], children[0], many=True)
                return ("count", relations)
        raise Refused("a value is expected here", _first(tree))

    def _compare(self, children: list[Any]) -> Expression:
        left, sign, right = self.value(children[0]), str(children[1]), self.value(children[2])
        left, right = self._as_slope(left, right), self._as_slope(right, left)
        for one, other in ((left, right), (right, left)):
            if one[0] == "number" and dimension_of(other) not in PLAIN and one[1] != 0:
                raise Refused(
                    "a bare number cannot be compared with a quantity that has a unit",
                    children[1],
                    "state it as a limit of the rule, with its basis",
                )
        self._same(left, right, children[1])
        return ("compare", sign, left, right)

    def _as_slope(self, one: Expression, other: Expression) -> Expression:
        """A limit in percent, read as the slope that it is compared with."""
        if one[0] != "limit" or one[2] != "percent" or dimension_of(other) != "slope":
            return one
        limit = self.limits[one[1]]
        self.limits[one[1]] = limit._replace(value=limit.value / 100, dimension="slope")
        return ("limit", one[1], "slope")

    def _same(self, left: Expression, right: Expression, token: Any) -> None:
        one, other = dimension_of(left), dimension_of(right)
        zero = any(side[0] == "number" and side[1] == 0 for side in (left, right))
        if one == other or {one, other} <= PLAIN or zero:
            if one in ("choice", "text", "station", "species", "section", "yes or no"):
                raise Refused(f"{_a(one)} has no size to compare", token, "write: NAME is WORD")
            return
        raise Refused(f"{_a(one)} cannot be compared or added to {_a(other)}", token)

    def _chain(self, data: str, children: list[Any]) -> Expression:
        result = self.value(children[0])
        for sign, child in zip(children[1::2], children[2::2], strict=True):
            right = self.value(child)
            if data == "added":
                self._same(result, right, sign)
                result = ("sum", str(sign), result, right, dimension_of(result))
            else:
                result = ("product", str(sign), result, right, self._product(str(sign), result, right, sign))
        return result

    def _product(self, sign: str, left: Expression, right: Expression, token: Any) -> str:
        one, other = dimension_of(left), dimension_of(right)
        if other in PLAIN:
            return one
        if sign == "*" and one in PLAIN:
            return other
        if sign == "*" and other == "slope":
            return one
        if sign == "*" and one == other == "length":
            return "area"
        if sign == "/" and one == other:
            return "ratio"
        raise Refused(f"{_a(one)} cannot be {'multiplied' if sign == '*' else 'divided'} by {_a(other)}", token)

    def _literal(self, token: Token) -> Expression:
        try:
            value = read_quantity(str(token))
        except NotAQuantity as trouble:
            raise Refused(str(trouble), token) from None
        if value.dimension != "count":
            raise Refused(
                f"“{token}” stands bare in a condition", token, f'name it: limit NAME {token}  KEY "place" standing'
            )
        return ("number", value.number, "count")

    def _path(self, tree: Tree[Token]) -> Expression:
        names = [str(token) for token in tree.children]
        if len(names) == 1 and names[0] in self.limits:
            return ("limit", names[0], self.limits[names[0]].dimension)
        return self._field(tree)

    def _field(self, tree: Tree[Token]) -> Expression:
        names = [str(token) for token in tree.children]
        if len(names) == 1 and relation(self.kinds[0], names[0]) and names[0] not in dimensions_of(self.kinds[0]):
            return ("field", (), names[0], "part")
        relations, kinds = self._relations(names[1:], tree, many=False)
        return ("field", relations, names[0], self._dimension(kinds, names[0], tree.children[0]))

    def _dimension(self, kinds: tuple[str, ...], name: str, token: Any) -> str:
        for kind in kinds:
            dimension = dimensions_of(kind).get(name)
            if dimension is None:
                known = [*known_names(kind), *self.limits]
                help = did_you_mean(name, known) or f"`speclint explain {kind}` lists what there is"
                raise Refused(f"a {kind} has no “{name}”", token, help)
        return dimensions_of(kinds[0])[name]

    def _relations(self, names: list[str], tree: Tree[Token], many: bool) -> tuple[tuple[str, ...], tuple[str, ...]]:
        """The relations to follow from the element, nearest first, and the kinds they lead to."""
        kinds = self.kinds
        followed = []
        for name in reversed(names):
            found = relation(kinds[0], name)
            token = next(token for token in tree.children if str(token) == name)
            if found is None:
                help = did_you_mean(name, KINDS) or "name a kind of element, in the plural for all of them"
                raise Refused(f"“{name}” is no relation of a {kinds[0]}", token, help)
            last = name == names[0]
            if found[1] and not (many and last):
                raise Refused(
                    f"“{name}” can be many; one is needed here",
                    token,
                    f"write: every {name} has ( … ), or largest … of",
                )
            if many and last and not found[1]:
                raise Refused(f"“{name}” is one element; many are needed here", token, f"write “{name}s”")
            followed.append(name)
            kinds = found[0]
        return tuple(followed), kinds

    def _is(self, children: list[Any], wanted: bool) -> Expression:
        field = self._field(children[0])
        phrases = tuple(str(word.children[0]).strip('"') for word in children[1:])
        if field[3] not in ("choice", "yes or no", "text", "station", "species"):
            raise Refused(
                f"“{field[2]}” is {_a(field[3])}, not a word", _first(children[0]), "compare it with >= or <="
            )
        kinds = self._relations([str(t) for t in children[0].children[1:]], children[0], many=False)[1]
        known = choices_of(kinds[0], field[2])
        for phrase, word in zip(phrases, children[1:], strict=True):
            if known is not None and phrase not in known:
                help = did_you_mean(phrase, known) or f"one of: {', '.join(known)}"
                raise Refused(f"“{field[2]}” is never “{phrase}”", word.children[0], help)
        return ("is", field, phrases, wanted)

    def _quantified(self, data: str, children: list[Any]) -> Expression:
        names = [str(token) for token in children[0].children]
        relations, kinds = self._relations(names, children[0], many=True)
        before, self.kinds = self.kinds, kinds
        try:
            return (data, relations, self.condition(children[1]))
        finally:
            self.kinds = before

    def _extreme(self, data: str, tree: Tree[Token]) -> Expression:
        names = [str(token) for token in tree.children]
        relations, kinds = self._relations(names[1:], tree, many=True)
        return (data, relations, names[0], self._dimension(kinds, names[0], tree.children[0]))


def _a(word: str) -> str:
    """A word with its article."""
    return f"an {word}" if word[0] in "aeiou" else f"a {word}"


def _first(tree: Any) -> Any:
    """The first token of a tree, to place a message."""
    while not hasattr(tree, "line"):
        if not tree.children:
            return None
        tree = tree.children[0]
    return tree
