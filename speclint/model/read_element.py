"""One element's statements to its settings, with a mistake for each that cannot be read."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, field, replace
from functools import lru_cache
from typing import Any

from speclint.language.atoms import Mistake, Statement
from speclint.language.items import Item, Items
from speclint.language.nearest import did_you_mean
from speclint.model.element import Element, Given, How, settings_of
from speclint.model.guesses import guessed_setting, guessed_value
from speclint.model.settings import Setting
from speclint.model.values import BadValue, read_value
from speclint.span import Span

LONGEST_MESSAGE = 300


@dataclass(slots=True)
class Reference:
    """A part that a setting names, before it is known whether the plan holds it."""

    kind: str
    name: str
    item: Item


@dataclass(slots=True)
class Draft:
    """An element while its statements are read."""

    model: type[Element]
    name: str
    place: Span
    values: dict[str, Any] = field(default_factory=dict)
    given: dict[str, Given] = field(default_factory=dict)
    references: dict[str, list[Reference]] = field(default_factory=dict)
    like: Item | None = None

    @property
    def label(self) -> str:
        """The element as the plan calls it."""
        return f"{self.model.kind} {self.name}" if self.name else self.model.kind

    def take_over(self, other: Draft) -> None:
        """Let what another draft states win over what this one states."""
        for setting in other.given:
            self.references.pop(setting, None)
            self.values.pop(setting.replace(" ", "_"), None)
        self.values.update(other.values)
        self.given.update(other.given)
        self.references.update(other.references)
        self.like = other.like or self.like

    def copy_as(self, name: str) -> Draft:
        """The same statements under another name, for several like elements stated together."""
        return replace(
            self, name=name, values=dict(self.values), given=dict(self.given), references=dict(self.references)
        )


@lru_cache(maxsize=64)
def _names(model: type[Element]) -> frozenset[str]:
    return frozenset([*settings_of(model), "like"])


def read_statement(draft: Draft, statement: Statement, how: How, tell: Callable[[Mistake], None]) -> None:
    """Read one statement of an element's block into the draft."""
    items = Items(statement)
    settings = settings_of(draft.model)
    first = True
    while (item := items.peek()) is not None:
        if item.kind == "COMMA":
            items.take()
            first = True
            continue
        name = items.take_longest(_names(draft.model)) if first else ""
        if not name:
            tell(_not_a_setting(draft, items, item))
            _skip(items, _names(draft.model))
            continue
        if name == "like":
            if items.peek() is None:
                help = f"write the name of a typical {draft.model.kind} after it"
                tell(mistake_at(draft.place.file, item, "“like” names no typical", help))
                return
            draft.like = items.take()
            first = False
            continue
        try:
            _read_with_followers(draft, settings, settings[name], item, items, how, tell)
        except BadValue as trouble:
            help = _guess_at_value(draft, name, items, trouble) or trouble.help
            tell(mistake_at(draft.place.file, trouble.item or item, trouble.message, help))
            draft.given.setdefault(name, Given(_span(draft, item), "", "unreadable"))
            _skip(items, _names(draft.model))
        first = False


def _skip(items: Items, known: frozenset[str]) -> None:
    """Pass over what cannot be read, up to a comma that a known setting follows, or to the end."""
    while (item := items.peek()) is not None:
        here = items.at
        items.take()
        if item.kind == "COMMA" and items.take_longest(known):
            items.at = here
            return


def mistake_at(file: str, item: Item, message: str, help: str) -> Mistake:
    """A mistake about one item of a statement."""
    if len(message) > LONGEST_MESSAGE:
        message = f"{message[: LONGEST_MESSAGE - 100]} … {message[-90:]}"
    return Mistake(file, item.line, item.column, max(1, len(item.text.split("\n")[0])), message, help)


def unclosed(file: str, item: Item | None) -> Mistake | None:
    """The mistake of a text whose quotation mark is not closed, where the item is one."""
    if item is None or item.kind != "UNCLOSED":
        return None
    return mistake_at(file, item, "the quotation mark opened here is not closed", 'close it with " on the same line')


def _guess_at_value(draft: Draft, name: str, items: Items, trouble: BadValue) -> str:
    if trouble.item not in items.items:
        return ""
    said = " ".join(item.text for item in items.items[items.items.index(trouble.item) :])
    return guessed_value(draft.model.kind, name, said, settings_of(draft.model))


def _not_a_setting(draft: Draft, items: Items, item: Item) -> Mistake:
    if (open_text := unclosed(draft.place.file, item)) is not None:
        return open_text
    got = " ".join(items.words_ahead(4)) or item.text
    known = tuple(settings_of(draft.model))
    help = guessed_setting(draft.model.kind, items.rest(), known) or did_you_mean(got, known)
    help = help or f"`speclint explain {draft.model.kind}` lists the settings"
    return mistake_at(draft.place.file, item, f"“{got}” is not a setting of a {draft.model.kind}", help)


def _read_with_followers(
    draft: Draft,
    settings: dict[str, Setting],
    setting: Setting,
    item: Item,
    items: Items,
    how: How,
    tell: Callable[[Mistake], None],
) -> None:
    """Read a setting, what may follow it without a comma, and filler such as “above grade”."""
    _read_setting(draft, setting, settings, item, items, how, tell)
    then = setting.then
    while (nxt := items.peek()) is not None and nxt.kind != "COMMA":
        follower = _follower(then, items)
        if follower is None:
            raise BadValue(
                f"“{items.rest()}” is not expected after “{setting.name}”",
                "end the note with ; or a new line, or put a comma before the next setting",
                nxt,
            )
        if follower:
            _read_setting(draft, settings[follower], settings, nxt, items, how, tell)
            then += settings[follower].then


def _follower(then: tuple[tuple[str, str], ...], items: Items) -> str | None:
    """The setting that the next items belong to; "" for filler words, nothing where none fits."""
    words = " ".join(items.words_ahead()) + " "
    for connecting, follower in then:
        if not follower and words.startswith(connecting + " "):
            items.at += len(connecting.split())
            return ""
        if follower and connecting and words.startswith(connecting + " "):
            items.at += 1
            return follower
        if follower and not connecting and words == " ":
            return follower
    return None


def _read_setting(
    draft: Draft,
    setting: Setting,
    settings: dict[str, Setting],
    item: Item,
    items: Items,
    how: How,
    tell: Callable[[Mistake], None],
) -> None:
    if setting.name in draft.given:
        says = f"“{setting.name}” is stated twice for {draft.label}"
        tell(mistake_at(draft.place.file, item, says, "keep one of the two; the first is used"))
        draft = Draft(draft.model, draft.name, draft.place)  # the second is read for its own mistakes and let go
    start = items.at
    words = items.words_ahead(1)
    if words == ["unknown"]:
        items.take()
        _keep(draft, setting, None, Given(_span(draft, item), "unknown", "unknown"))
    else:
        if words == ["assumed"]:
            items.take()
            how = "assumed in the plan"
        if setting.dimension == "part":
            _read_parts(draft, setting, items, settings)
            value = None
        else:
            value = read_value(setting, items)
        written = " ".join(found.text for found in items.items[start : items.at])
        _keep(draft, setting, value, Given(_span(draft, item), written, how))


def _keep(draft: Draft, setting: Setting, value: object, given: Given) -> None:
    if setting.dimension != "part":
        draft.values[setting.attribute] = value
    draft.given[setting.name] = given


def _read_parts(draft: Draft, setting: Setting, items: Items, settings: dict[str, Setting]) -> None:
    found: list[Reference] = []
    while True:
        item = items.peek()
        if item is None or item.kind not in ("WORDS", "TEXT", "QUANTITY"):
            raise BadValue(f"“{setting.name}” names no part", f"example: {setting.name} {setting.example}", item)
        kind = items.take_longest(frozenset(setting.refers))
        nxt = items.peek()
        if nxt is None or nxt.kind == "COMMA":
            found.append(Reference(kind, "", item))
        else:
            items.take()
            found.append(Reference(kind, nxt.text.strip('"'), nxt))
        comma, word = items.peek(), items.peek(1)
        if not (setting.many and comma and comma.kind == "COMMA" and word and word.kind != "COMMA"):
            break
        if word.text in settings or word.text == "like":
            break
        items.take()
    draft.references[setting.name] = found


def _span(draft: Draft, item: Item) -> Span:
    return Span(draft.place.file, item.line, item.column, len(item.text))
