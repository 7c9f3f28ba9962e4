"""Syntax trees to a home. A bad value becomes a mistake with its place; the rest is still built."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Mapping
from dataclasses import replace
from functools import lru_cache
from types import MappingProxyType
from typing import Any

from speclint.language.atoms import Mistake, Statement, Tree
from speclint.language.items import Item, Items
from speclint.language.nearest import did_you_mean
from speclint.model.element import Element, Given, How, settings_of
from speclint.model.guesses import guessed_element
from speclint.model.home import Assumed, Home, Variance
from speclint.model.kinds import KINDS
from speclint.model.read_element import Draft, Reference, mistake_at, read_statement, unclosed
from speclint.model.settings import Setting
from speclint.model.values import read_value
from speclint.model.variances import read_variance
from speclint.span import Span

STRUCTURE = ("typical", "alternate", "variance", "use")
_HEADS = frozenset([*KINDS, *STRUCTURE])
EXAMPLE_NAMES: Mapping[str, str] = MappingProxyType(
    dict.fromkeys(("wall", "window", "gutter", "downspout", "chase", "planting", "stone", "junction"), "south")
    | dict.fromkeys(("porch", "post", "beam", "deck", "ledger", "rail", "stair"), "lake")
    | {"corner": "southwest", "door": "entry", "chimney": "hearth", "purlin": "east", "step": "stack"}
)
MOST_ELEMENTS = 2_000
MOST_ALTERNATES = 100  # each costs as much as a plan
LONGEST_NAME = 200  # characters
MOST_MISTAKES = 2_000  # after which nothing more is read
DEEPEST = 20


def build(trees: Iterable[Tree], name: str, alternate: str = "") -> tuple[Home, tuple[Mistake, ...]]:
    """The home that the trees describe, the shared files first and the plan itself last.

    Args:
        trees: Syntax trees, in the order in which typicals are to be read; later ones win.
        name: What the plan is called.
        alternate: Name of the alternate to build; the base plan where it is empty.

    Returns:
        The home and every mistake met in building it.

    Raises:
        LookupError: If there is no such alternate; its argument names those there are.
    """
    work = _Work()
    for tree in trees:
        for statement in tree.statements:
            work.read(statement, tree.file)
    if alternate:
        if alternate not in work.alternates:
            raise LookupError(", ".join(work.alternates) or "the plan has none")
        work.apply(alternate)
    for other in work.alternates:
        work.mistakes += work.trial(other) if other != alternate else ()
    return work.home(name), tuple(work.mistakes)


class _Work:
    """What has been read so far."""

    def __init__(self) -> None:
        self.mistakes: list[Mistake] = []
        self.drafts: dict[str, Draft] = {}
        self.typicals: dict[tuple[str, str], Draft] = {}
        self.alternates: dict[str, tuple[str, tuple[Statement, ...]]] = {}
        self.variances: list[Variance] = []
        self.depth = 0
        self.full = False

    def apply(self, alternate: str) -> None:
        """Read an alternate over what the plan states."""
        file, body = self.alternates[alternate]
        for statement in body:
            self.read(statement, file, "alternate")

    def trial(self, alternate: str) -> list[Mistake]:
        """The mistakes in an alternate that is not asked for, found on a copy."""
        copy = _Work()
        copy.drafts = {label: draft.copy_as(draft.name) for label, draft in self.drafts.items()}
        copy.alternates = self.alternates
        copy.apply(alternate)
        resolve = _Resolver(copy.drafts, copy.mistakes.append)
        for draft in copy.drafts.values():
            for name, references in draft.references.items():
                if draft.given[name].how == "alternate":
                    resolve.labels(settings_of(draft.model)[name], references, draft)
        return copy.mistakes

    def read(self, statement: Statement, file: str, how: How = "stated") -> None:
        """Read a statement that stands at the top of a plan or of an alternate."""
        if self._enough(statement, file):
            return
        items = Items(statement)
        tell = self.mistakes.append
        first = items.peek()
        if first is None:
            where = Item("", "{", statement.line, statement.column)
            tell(mistake_at(file, where, "this block has no name before its {", "write for example: wall south { … }"))
            return
        head = items.take_longest(_HEADS)
        if head in ("variance", "alternate", "use") and how == "alternate":
            tell(mistake_at(file, first, f"“{head}” cannot stand inside an alternate", "move it out"))
        elif head == "use":
            if statement.body is not None:
                tell(mistake_at(file, first, "“use” takes no block", "end it after the name of the file"))
        elif head == "variance":
            found = read_variance(items, statement, file, tell)
            self.variances += [found] if found else []
        elif head == "alternate":
            self._alternate(items, statement, file, first)
        elif head == "typical":
            self._typical(items, statement, file, first)
        elif head:
            self._element(head, items, statement, file, how, first)
        else:
            tell(_no_such_kind(items, statement, file, first))

    def _enough(self, statement: Statement, file: str) -> bool:
        """Whether so much is wrong that reading on is no use; it is told once."""
        if len(self.mistakes) < MOST_MISTAKES:
            return False
        if len(self.mistakes) == MOST_MISTAKES:
            where = Item("", "", statement.line, statement.column)
            help = "mend some of them and review again"
            self.mistakes.append(
                mistake_at(file, where, f"more than {MOST_MISTAKES:,} mistakes; it is read no further", help)
            )
        return True

    def _alternate(self, items: Items, statement: Statement, file: str, first: Item) -> None:
        item = items.peek()
        name = items.rest().strip('"')
        if (open_text := unclosed(file, item)) is not None:
            self.mistakes.append(open_text)
        elif not name or statement.body is None:
            help = 'write for example: alternate "wide eaves" { roof main { eaves 3\' } }'
            self.mistakes.append(mistake_at(file, first, "an alternate needs a name and a block", help))
        elif name in self.alternates:
            self.mistakes.append(mistake_at(file, first, f"the alternate “{name}” is stated twice", "rename one"))
        elif len(name) > LONGEST_NAME:
            says = f"the name of this alternate is {len(name):,} characters long"
            self.mistakes.append(mistake_at(file, first, says, f"the most that is read is {LONGEST_NAME}"))
        elif len(self.alternates) == MOST_ALTERNATES:
            says = f"more than {MOST_ALTERNATES} alternates"
            self.mistakes.append(mistake_at(file, first, says, "put some of them into a plan of their own"))
        else:
            self.alternates[name] = (file, statement.body)

    def _typical(self, items: Items, statement: Statement, file: str, first: Item) -> None:
        kind = items.take_longest(frozenset(KINDS))
        if not kind or statement.body is None:
            help = "write for example: typical wall { species eastern white pine }"
            self.mistakes.append(mistake_at(file, first, "a typical needs a kind of element and a block", help))
            return
        name = items.take().text if items.peek() else ""
        place = Span(file, first.line, first.column, len(first.text))
        draft = self.typicals.setdefault((kind, name), Draft(KINDS[kind], name, place))
        draft = replace(draft, place=place)
        fresh = Draft(draft.model, name, place)
        if (more := items.peek()) is not None:
            says = f"“{more.text}” is not expected in the name of a typical {kind}"
            self.mistakes.append(mistake_at(file, more, says, "a name is one word"))
        self._body(fresh, statement.body, "typical")
        if fresh.like is not None:
            says = f"a typical {kind} cannot be like another"
            self.mistakes.append(mistake_at(file, fresh.like, says, "state its settings here"))
        draft.take_over(fresh)

    def _element(self, kind: str, items: Items, statement: Statement, file: str, how: How, first: Item) -> None:
        names = self._element_names(kind, items, file, first)
        if names is None:
            return
        place = Span(file, first.line, first.column, len(first.text))
        if len(self.drafts) + len(names) > MOST_ELEMENTS:
            if not self.full:
                self.full = True
                self.mistakes.append(mistake_at(file, first, f"more than {MOST_ELEMENTS:,} elements", "split the plan"))
            return
        fresh = Draft(KINDS[kind], names[0], place)
        self._body(fresh, statement.body or (), how)
        for name in names:
            draft = fresh.copy_as(name)
            there = self.drafts.get(draft.label)
            if there is None:
                self.drafts[draft.label] = draft
            elif how == "alternate":
                there.take_over(draft)
            else:
                where = f" of {there.place.file}" if there.place.file != file else ""
                says = f"{draft.label} is already there, in line {there.place.line}{where}"
                self.mistakes.append(mistake_at(file, first, says, "give one of them another name"))

    def _element_names(self, kind: str, items: Items, file: str, first: Item) -> list[str] | None:
        names: list[str] = []
        while (item := items.peek()) is not None:
            items.take()
            if item.kind == "COMMA" and names:
                continue
            if item.kind not in ("WORDS", "QUANTITY") or (names and items.items[items.at - 2].kind != "COMMA"):
                says = f"“{item.text}” is not expected in the name of a {kind}"
                help = "a name is one word; put several names apart with commas, and settings inside { }"
                self.mistakes.append(mistake_at(file, item, says, help))
                names = names or [f"at line {first.line}"]
                break
            if len(item.text) > LONGEST_NAME:
                says = f"the name of this {kind} is {len(item.text):,} characters long"
                self.mistakes.append(mistake_at(file, item, says, f"the most that is read is {LONGEST_NAME}"))
            names.append(item.text[:LONGEST_NAME])
        if KINDS[kind].single:
            return [""]
        if not names:
            help = f"write for example: {kind} {EXAMPLE_NAMES.get(kind, 'main')} {{ … }}"
            self.mistakes.append(mistake_at(file, first, f"this {kind} has no name", help))
            return [f"at line {first.line}"]
        return names

    def _body(self, draft: Draft, body: tuple[Statement, ...], how: How) -> None:
        tell = self.mistakes.append
        told = False  # one brace forgotten puts every later block inside; it is told once
        for statement in body:
            if self._enough(statement, draft.place.file):
                return
            if statement.body is None:
                read_statement(draft, statement, how, tell)
                continue
            if not told:
                where = Item("", "{", statement.line, statement.column)
                says = f"a block cannot stand inside {draft.label}"
                tell(mistake_at(draft.place.file, where, says, "is a closing } missing before it?"))
            told = True
            if Items(statement).take_longest(_HEADS) and how != "typical" and self.depth < DEEPEST:
                self.depth += 1
                self.read(statement, draft.place.file, how)
                self.depth -= 1

    def home(self, name: str) -> Home:
        """The home that all drafts make, with typicals applied and references resolved; it always has a site."""
        if "site" not in self.drafts:
            self.drafts["site"] = Draft(KINDS["site"], "", Span(name, 1, 1, 1))
        for draft in self.drafts.values():
            self._apply_typicals(draft)
        elements: dict[str, Element] = {}
        assumed: list[Assumed] = []
        resolve = _Resolver(self.drafts, self.mistakes.append)
        for label, draft in self.drafts.items():
            values = dict(draft.values)
            _apply_defaults(draft, values)
            for setting_name, references in draft.references.items():
                setting = settings_of(draft.model)[setting_name]
                values[setting.attribute] = resolve.labels(setting, references, draft)
            elements[label] = draft.model(name=draft.name, place=draft.place, given=draft.given, **values)
            assumed += [
                Assumed(label, setting, given.text, given.reason, given.span)
                for setting, given in draft.given.items()
                if given.how in ("assumed in the plan", "assumed by speclint")
            ]
        self._check_map(self.drafts["site"])
        return Home(name, elements, tuple(self.variances), tuple(self.alternates), tuple(assumed))

    def _check_map(self, site: Draft) -> None:
        """A mistake where the lot lies so far from every weather station that a sign or a digit must be wrong."""
        latitude, longitude = site.values.get("latitude"), site.values.get("longitude")
        if latitude is None or longitude is None or site.values.get("weather") is not None:
            return
        from speclint.tables.stations import TOO_FAR, nearest_station

        station, away, _ = nearest_station(latitude, longitude)
        if away > TOO_FAR:
            place = site.given["longitude"].span
            turned = nearest_station(latitude, -longitude)[1] <= TOO_FAR
            help = f"did you mean longitude {-longitude:g}?" if turned else "the table holds stations of North America"
            says = (
                f"no weather station is within {TOO_FAR:.0f} km; the nearest, {station.title}, is {away:,.0f} km away"
            )
            self.mistakes.append(Mistake(place.file, place.line, place.column, place.length, says, help))

    def _apply_typicals(self, draft: Draft) -> None:
        names = [""]
        if draft.like is not None:
            if (draft.model.kind, draft.like.text) in self.typicals:
                names.insert(0, draft.like.text)
            else:
                known = [name for kind, name in self.typicals if kind == draft.model.kind and name]
                says = f"there is no typical {draft.model.kind} “{draft.like.text}”"
                help = (
                    did_you_mean(draft.like.text, known)
                    or f"write: typical {draft.model.kind} {draft.like.text} {{ … }}"
                )
                self.mistakes.append(mistake_at(draft.place.file, draft.like, says, help))
        for name in names:
            typical = self.typicals.get((draft.model.kind, name))
            if typical is None:
                continue
            for setting, given in typical.given.items():
                if setting in draft.given:
                    continue
                draft.given[setting] = given
                attribute = setting.replace(" ", "_")
                if setting in typical.references:
                    draft.references[setting] = typical.references[setting]
                else:
                    draft.values[attribute] = typical.values.get(attribute)


@lru_cache(maxsize=64)
def _defaults(model: type[Element]) -> tuple[tuple[Setting, Any], ...]:
    from speclint.language.parse import parse

    found = []
    for setting in settings_of(model).values():
        if setting.default:
            statement = parse(setting.default, "").statements[0]
            found.append((setting, read_value(setting, Items(statement))))
    return tuple(found)


def _apply_defaults(draft: Draft, values: dict[str, Any]) -> None:
    for setting, value in _defaults(draft.model):
        if setting.name not in draft.given:
            values[setting.attribute] = value
            draft.given[setting.name] = Given(draft.place, setting.default, "assumed by speclint", setting.reason)


class _Resolver:
    """Finds the elements that settings name."""

    def __init__(self, drafts: dict[str, Draft], tell: Callable[[Mistake], None]) -> None:
        self.drafts, self.tell = drafts, tell

    def labels(self, setting: Setting, references: list[Reference], draft: Draft) -> Any:
        """The label of the part a setting names, or the labels where it names several."""
        found = [label for reference in references if (label := self._label(setting, reference, draft))]
        return tuple(found) if setting.many else (found[0] if found else None)

    def _label(self, setting: Setting, reference: Reference, draft: Draft) -> str:
        kinds = (reference.kind,) if reference.kind else setting.refers
        found = [label for kind in kinds if (label := f"{kind} {reference.name}".strip()) in self.drafts]
        if not found and not reference.name:
            found = [label for label, other in self.drafts.items() if other.model.kind == reference.kind][:1]
        if len(found) == 1:
            return found[0]
        file = draft.given[setting.name].span.file or draft.place.file
        if found:
            says = f"“{reference.name}” could be {' or '.join(found)}"
            self.tell(mistake_at(file, reference.item, says, "write its kind before its name"))
            return ""
        known = [other.name for other in self.drafts.values() if other.model.kind in kinds]
        called = f"{reference.kind or ' or '.join(setting.refers[:3])} “{reference.name}”"
        help = did_you_mean(reference.name, known) or (
            f"there is {', '.join(known[:6])}" if known else f"the plan has no {' or '.join(kinds[:3])} yet"
        )
        self.tell(mistake_at(file, reference.item, f"“{setting.name}” names a {called} that is not in the plan", help))
        return ""


def _no_such_kind(items: Items, statement: Statement, file: str, first: Item) -> Mistake:
    got = " ".join(items.words_ahead(3)) or first.text
    if (open_text := unclosed(file, first)) is not None:
        return open_text
    if first.kind == "STRAY":
        return mistake_at(file, first, f"“{first.text}” means nothing here", "take it out")
    if statement.body is None:
        says = f"“{got}” stands outside any element"
        help = "settings belong inside the { } of an element, such as wall south { height 9' }"
        return mistake_at(file, first, says, guessed_element(got) or did_you_mean(got, _HEADS) or help)
    help = guessed_element(got) or did_you_mean(got, _HEADS) or f"the elements are: {', '.join(KINDS)}"
    return mistake_at(file, first, f"“{got}” is not an element that speclint knows", help)
