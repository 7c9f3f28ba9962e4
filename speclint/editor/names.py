"""What names what: every place of a plan and its used files where an element, a typical, a rule or a file is named.

The settings are read by the reader that builds the home, so that a reference here is a reference there.
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass, field
from typing import Literal

from speclint.language.atoms import Mistake, Statement, Tree
from speclint.language.items import Item, Items
from speclint.model.build import DEEPEST, STRUCTURE
from speclint.model.element import Given, settings_of
from speclint.model.kinds import KINDS
from speclint.model.read_element import Draft, Reference, read_statement
from speclint.span import Span

Role = Literal["element", "typical", "part", "like", "on", "rule", "use"]
_HEADS = frozenset([*KINDS, *STRUCTURE])


@dataclass(frozen=True, slots=True)
class Name:
    """A place where something is named.

    Attributes:
        role: An element or a typical where it is described; a part that a setting names; the typical after `like`; the
            element after `on` of a variance; a rule; a file.
        target: The label of the element, such as `wall west`; of a typical `typical wall` or `typical wall bare`; the
            name of the rule; the path of the file. Empty where the plan holds no such thing.
        place: The word that names it; the word of its kind where it has no name of its own.
        kind: The kind of element.
        name: Its own name; empty where it has none.
        head: The word with which the note begins.
    """

    role: Role
    target: str
    place: Span
    kind: str = ""
    name: str = ""
    head: Span | None = None


@dataclass(frozen=True, slots=True)
class Owner:
    """An element or a typical, where it is described: which typical it is like, and what its block states."""

    target: str
    kind: str
    like: str
    given: dict[str, Given]


@dataclass(slots=True)
class Names:
    """All names of a plan and the files it uses, in their order."""

    names: list[Name] = field(default_factory=list)
    owners: list[Owner] = field(default_factory=list)

    def at(self, file: str, line: int, column: int) -> Name | None:
        """The name at a place; behind its last character counts as on it."""
        found = [name for name in self.names if _covers(name.place, file, line, column)]
        return found[-1] if found else None

    def head_at(self, file: str, line: int, column: int) -> Name | None:
        """The element or typical whose first word is at a place."""
        return next((name for name in self.names if name.head and _covers(name.head, file, line, column)), None)

    def of(self, target: str) -> list[Name]:
        """Every place that names an element or a typical."""
        return [name for name in self.names if target and name.target == target]

    def declared(self, target: str) -> list[Name]:
        """The places where an element or a typical is described."""
        return [name for name in self.of(target) if name.role in ("element", "typical")]

    def labels(self, *kinds: str) -> list[tuple[str, str]]:
        """Kind and name of every element of the kinds, each once."""
        found = ((name.kind, name.name) for name in self.names if name.role == "element" and name.kind in kinds)
        return list(dict.fromkeys(found))

    def typical(self, kind: str, like: str, setting: str) -> Given | None:
        """Where a typical states a setting: the one that the element is like, before the general one."""
        for target in ([f"typical {kind} {like}"] if like else []) + [f"typical {kind}"]:
            for owner in reversed(self.owners):
                if owner.target == target and setting in owner.given:
                    return owner.given[setting]
        return None

    def like(self, target: str) -> str:
        """The typical that an element is like; empty where it is like none."""
        return next((owner.like for owner in self.owners if owner.target == target and owner.like), "")


def _covers(span: Span, file: str, line: int, column: int) -> bool:
    return span.file == file and span.line == line and span.column <= column <= span.column + span.length


def names_of(trees: Iterable[Tree]) -> Names:
    """The names of a plan.

    Args:
        trees: The files it uses and the plan itself, last.
    """
    work = _Work()
    for tree in trees:
        for statement in tree.statements:
            work.visit(statement, tree.file, 0)
    return work.resolved()


class _Work:
    def __init__(self) -> None:
        self.found: list[Name | tuple[str, str, Reference]] = []  # a reference with its file and setting, as KIND.NAME
        self.owners: list[Owner] = []

    def visit(self, statement: Statement, file: str, depth: int) -> None:
        """Keep the names of a statement and of its block."""
        items = Items(statement)
        first = items.peek()
        head = items.take_longest(_HEADS)
        if first is None or depth > DEEPEST:
            return
        if head == "use":
            self._one(items.peek(), file, "use")
        elif head == "variance":
            self._variance(items, file)
        elif head == "alternate":
            for inner in statement.body or ():
                self.visit(inner, file, depth + 1)
        elif head == "typical":
            kind = items.take_longest(frozenset(KINDS))
            if kind:
                named = items.peek()
                target = f"typical {kind} {named.text if named else ''}".strip()
                self._keep("typical", target, file, named or first, kind, named, first)
                self._body([target], kind, statement, file, depth, typical=True)
        elif head:
            self._body(self._element(head, items, file, first), head, statement, file, depth)

    def _one(self, item: Item | None, file: str, role: Role) -> None:
        if item is not None and item.kind in ("TEXT", "WORDS"):
            self.found.append(Name(role, item.text.strip('"'), _span(file, item)))

    def _variance(self, items: Items, file: str) -> None:
        self._one(items.peek(), file, "rule")
        if items.peek():
            items.take()
        if items.words_ahead(1) != ["on"]:
            return
        items.take()
        target = items.rest()
        kind = items.take_longest(frozenset(KINDS))
        named = items.peek()
        if kind:
            place = named or items.items[items.at - 1]
            self.found.append(Name("on", target, _span(file, place), kind, named.text if named else ""))

    def _element(self, kind: str, items: Items, file: str, first: Item) -> list[str]:
        if KINDS[kind].single:
            self._keep("element", kind, file, first, kind, None, first)
            return [kind]
        targets = []
        while (item := items.peek()) is not None:
            items.take()
            if item.kind == "COMMA":
                continue
            if item.kind not in ("WORDS", "QUANTITY"):
                break
            targets.append(f"{kind} {item.text}")
            self._keep("element", targets[-1], file, item, kind, item, first)
        return targets

    def _keep(self, role: Role, target: str, file: str, item: Item, kind: str, named: Item | None, first: Item) -> None:
        name = named.text if named else ""
        self.found.append(Name(role, target, _span(file, item), kind, name, _span(file, first)))

    def _body(
        self, targets: list[str], kind: str, statement: Statement, file: str, depth: int, typical: bool = False
    ) -> None:
        given: dict[str, Given] = {}
        like = ""
        for inner in statement.body or ():
            if inner.body is not None:
                if not typical:
                    self.visit(inner, file, depth + 1)
                continue
            draft = Draft(KINDS[kind], "", Span(file, inner.line, inner.column))
            read_statement(draft, inner, "stated", _let_go)
            for setting, stated in draft.given.items():
                given.setdefault(setting, stated)
            for setting, references in draft.references.items():
                self.found += [(file, f"{kind}.{setting}", reference) for reference in references]
            if draft.like is not None:
                like = draft.like.text
                self.found.append(Name("like", f"typical {kind} {like}", _span(file, draft.like), kind, like))
        self.owners += [Owner(target, kind, like, given) for target in targets]

    def resolved(self) -> Names:
        """The names, with each reference bound to the element it means."""
        labels = [name.target for name in self.found if isinstance(name, Name) and name.role == "element"]
        known = dict.fromkeys(labels)
        result = Names(owners=self.owners)
        for entry in self.found:
            if isinstance(entry, Name):
                result.names.append(entry)
                continue
            file, owner, reference = entry
            kind, setting = owner.split(".")
            kinds = (reference.kind,) if reference.kind else settings_of(KINDS[kind])[setting].refers
            found = [label for one in kinds if (label := f"{one} {reference.name}".strip()) in known]
            if not found and not reference.name:
                found = [label for label in known if label.split(" ")[0] == reference.kind][:1]
            target = found[0] if len(found) == 1 else ""
            named = target.split(" ")[0] if target else reference.kind
            result.names.append(Name("part", target, _span(file, reference.item), named, reference.name))
        return result


def _let_go(mistake: Mistake) -> None:
    """The review tells mistakes; names are kept of what can be read."""


def _span(file: str, item: Item) -> Span:
    return Span(file, item.line, item.column, len(item.text.split("\n")[0]))
