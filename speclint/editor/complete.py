"""What can stand at the cursor: elements, settings, choices, stations, species, names and rules."""

from __future__ import annotations

from collections.abc import Iterable
from functools import lru_cache
from itertools import islice

from lsprotocol import types as lsp

from speclint.editor.notes import kind_of, longest_setting, stated_in, targets_of
from speclint.editor.pieces import Look, Piece, every_note, look
from speclint.editor.reading import Reading
from speclint.editor.words import about, range_of
from speclint.model.build import STRUCTURE
from speclint.model.element import settings_of
from speclint.model.kinds import KINDS
from speclint.model.settings import Setting

MOST = 60
Kind = lsp.CompletionItemKind
_STRUCTURE = {
    "typical": "what holds for every element of a kind that does not state it",
    "alternate": "the same plan with a change",
    "variance": "an accepted finding, with its reason, who accepts it and until when",
    "use": "read another file in the folder of the plan",
}
_VARIANCE = {"because": 'because "…"', "accepted by": 'accepted by "…"', "until": "until 2027-06-30"}


def completions(reading: Reading, offset: int) -> lsp.CompletionList:
    """What can stand at an offset of a plan, at most `MOST` of each list of names."""
    typed = look(reading.document.text[:offset])
    if typed.last is not None and typed.last.kind == "comment" and typed.last.end == offset:
        return lsp.CompletionList(False, [])
    return _Cursor(reading, offset, typed).answer()


class _Cursor:
    """The cursor: what is typed before it in its note, and the block it stands in."""

    def __init__(self, reading: Reading, offset: int, typed: Look) -> None:
        self.reading, self.offset, self.typed = reading, offset, typed
        self.items: list[lsp.CompletionItem] = []
        self.more = False
        pieces = typed.note.pieces
        touching = bool(pieces) and pieces[-1].end == offset and pieces[-1].kind in ("word", "number", "open")
        self.partial = pieces[-1] if touching else None
        self.done = pieces[:-1] if touching else pieces

    def answer(self) -> lsp.CompletionList:
        head = self.typed.heads[-1] if self.typed.heads else None
        first = head.words[:1] if head else []
        if first in ([], ["alternate"]):
            self._top(inside=bool(first))
        elif first == ["variance"]:
            self._offer(self.done, _VARIANCE.items(), Kind.Property)
        elif head is not None and (kind := kind_of(head)[0]):
            self._block(kind)
        return lsp.CompletionList(self.more, self.items)

    def _offer(
        self, before: list[Piece], choices: Iterable[tuple[str, str]], kind: Kind, told: str = "", order: str = "1"
    ) -> None:
        """Offer those phrases that begin with what is typed: the pieces before the partial word, and that word."""
        start = before[0].start if before else self.partial.start if self.partial else self.offset
        typed = " ".join([*(piece.text for piece in before), self.partial.text if self.partial else ""]).lower()
        where = self.reading.lines.range(start, self.offset)
        for phrase, detail in choices:
            if phrase.lower().startswith(typed) and phrase.lower() != typed.strip():
                edit = lsp.TextEdit(where, phrase)
                self.items.append(
                    lsp.CompletionItem(
                        phrase, kind=kind, detail=detail, documentation=told or None, sort_text=order + phrase,
                        filter_text=phrase, text_edit=edit,
                    )
                )  # fmt: skip

    def _top(self, inside: bool) -> None:
        words = [piece.text for piece in self.done]
        if not words:
            there = {name.kind for name in self.reading.names.names if name.role == "element"} if not inside else set()
            kinds = (kind for kind in KINDS if not (KINDS[kind].single and kind in there))
            self._offer([], ((kind, about(kind)) for kind in kinds), Kind.Class)
            if not inside:
                self._offer([], ((word, _STRUCTURE[word]) for word in STRUCTURE), Kind.Keyword)
        elif inside and words[0] in KINDS:
            self._restated(words[0], words[1:])
        elif words == ["typical"]:
            self._offer([], ((kind, about(kind)) for kind in KINDS), Kind.Class)
        elif words == ["variance"]:
            self._offer([], ((rule.name, rule.title) for rule in self.reading.settled.book.rules), Kind.Reference)
        elif words[0] == "variance" and len(words) == 2:
            self._offer([], [("on", "the element it is accepted for")], Kind.Keyword)
        elif words[0] == "variance" and words[2:3] == ["on"]:
            labels = self.reading.names.labels(*KINDS)
            self._offer(self.done[3:], ((f"{kind} {name}".strip(), about(kind)) for kind, name in labels), Kind.Value)

    def _restated(self, kind: str, before: list[str]) -> None:
        """The elements of the plan that an alternate may restate: one, or several with commas between."""
        if before and before[-1] != ",":
            return
        names = (name for _, name in self.reading.names.labels(kind) if name and name not in before)
        self._offer([], ((name, f"the {kind} of the plan, with other settings") for name in names), Kind.Reference)

    def _block(self, kind: str) -> None:
        comma = max((at for at, piece in enumerate(self.done) if piece.kind == "comma"), default=-1)
        before, tail = self.done[: comma + 1], self.done[comma + 1 :]
        listed = stated_in(before, kind)[-1:] if before else []
        if listed and listed[0].setting.many:
            self._parts(listed[0].setting, tail)
        size = longest_setting(tail, kind)
        in_text = self.partial is not None and self.partial.kind == "open"
        if not in_text:
            self._settings(kind, tail)
        if size:
            self._value(kind, tail, size)
        elif [piece.text for piece in tail] == ["like"]:
            named = (name.name for name in self.reading.names.names if name.role == "typical" and name.kind == kind)
            self._offer([], ((name, f"a typical {kind}") for name in dict.fromkeys(named) if name), Kind.Interface)

    def _settings(self, kind: str, tail: list[Piece]) -> None:
        there = self._stated(kind)
        settings = (setting for setting in settings_of(KINDS[kind]).values() if setting.name not in there)
        self._offer(tail, ((setting.name, setting.meaning) for setting in settings), Kind.Property)
        if "like" not in there:
            self._offer(tail, [("like", f"the typical {kind} it is like")], Kind.Keyword, order="2")

    def _stated(self, kind: str) -> set[str]:
        """The settings that the block of the cursor states in notes other than that of the cursor."""
        block = self.typed.heads[-1].block
        for note in every_note(self.reading.look.root):
            if block is None or note.block is None or note.block.start != block.start:
                continue
            others = [
                inner.pieces
                for inner in note.block.notes
                if inner.pieces and not inner.pieces[0].start <= self.offset <= inner.pieces[-1].end
            ]
            found = {stated.setting.name for pieces in others for stated in stated_in(pieces, kind)}
            found |= {stated.setting.name for stated in stated_in(self.done, kind)}
            return found | {"like" for pieces in others if pieces[0].text == "like"}
        return set()

    def _value(self, kind: str, tail: list[Piece], size: int) -> None:
        stated = stated_in(tail, kind)[-1]
        value = stated.value
        assumed = bool(value) and value[0].text == "assumed"
        value = value[1:] if assumed else value
        setting = stated.setting
        if setting.dimension == "part":
            self._parts(setting, value)
        elif setting.dimension in ("station", "record"):
            self._titles(setting, value)
        elif setting.dimension == "species":
            self._offer(value, _species(), Kind.EnumMember)
        elif setting.choices:
            self._offer(value, setting.choices.items(), Kind.EnumMember, order="0")
        elif not value:
            self._offer([], [(setting.example, "for example")], Kind.Value, range_of(setting, self.reading.system))
        if not value and not (self.partial and self.partial.kind == "open"):
            self._offer([], [("unknown", "nobody knows yet; the review asks")], Kind.Keyword, order="8")
            if not assumed:
                self._offer([], [("assumed", "not certain; the review lists it")], Kind.Keyword, order="8")
        if value and _joined(value) in (setting.choices or {}):
            self._behind(kind, setting)
        if value:
            connecting = [(word, name or "what it is measured from") for word, name in setting.then if word]
            begun = (value[cut:] for cut in range(1, len(value)))
            here = next((tail for tail in begun if any(word.startswith(_joined(tail)) for word, _ in connecting)), [])
            self._offer(here, connecting, Kind.Keyword, order="3")

    def _behind(self, kind: str, setting: Setting) -> None:
        """An example of the setting whose value may stand behind a choice without a word between."""
        for name in (name for word, name in setting.then if not word and name):
            further = settings_of(KINDS[kind])[name]
            self._offer([], [(further.example, f"{name}, for example")], Kind.Value, further.meaning, order="2")

    def _parts(self, setting: Setting, value: list[Piece]) -> None:
        own = targets_of(self.typed.heads[-1]) if self.typed.heads else []
        named = [one for one in self.reading.names.labels(*setting.refers) if f"{one[0]} {one[1]}".strip() not in own]
        names = [name for _, name in named]
        choices = [
            (name if name and names.count(name) == 1 and name not in setting.refers else f"{kind} {name}".strip(), kind)
            for kind, name in named
        ]
        if value and value[0].text in setting.refers:
            choices = [(f"{kind} {name}".strip(), kind) for kind, name in named]
        self._offer(value, islice(choices, MOST * 4), Kind.Reference, order="0")

    def _titles(self, setting: Setting, value: list[Piece]) -> None:
        """Stations or records in quotes, found by the beginning of their name in whatever spelling."""
        from speclint.tables.station_names import station_key

        if value:
            return
        partial = self.partial
        quoted = partial is not None and partial.kind == "open"
        key = station_key(partial.text.strip('"')) if partial else ""
        found = [title for known, title in _keyed(setting.dimension) if known.startswith(key)]
        self.more = self.more or bool(found)  # the spelling is free, so that no editor can narrow them down itself
        start = partial.start + quoted if partial else self.offset
        closing = '"' if self.reading.document.text[self.offset : self.offset + 1] != '"' else ""
        where = self.reading.lines.range(start, self.offset)
        typed = partial.text.lstrip('"') if partial else ""
        for title in found[:MOST]:
            new = f"{title}{closing}" if quoted else f'"{title}"'
            self.items.append(
                lsp.CompletionItem(
                    title, kind=Kind.Value, detail=setting.meaning, sort_text="0" + title,
                    filter_text=typed or title, text_edit=lsp.TextEdit(where, new),
                )
            )  # fmt: skip


def _joined(pieces: list[Piece]) -> str:
    return " ".join(piece.text for piece in pieces)


@lru_cache(maxsize=2)
def _keyed(dimension: str) -> tuple[tuple[str, str], ...]:
    """The titles of stations or of hourly records, each behind the form in which names are compared."""
    from speclint.tables.rain_record import record_titles
    from speclint.tables.station_names import station_key
    from speclint.tables.stations import station_titles

    titles = station_titles() if dimension == "station" else record_titles()
    return tuple((station_key(title), title) for title in sorted(titles))


@lru_cache(maxsize=1)
def _species() -> tuple[tuple[str, str], ...]:
    from speclint.tables.decks import grouped_species
    from speclint.tables.species import all_species

    found = {species.name: f"decay resistance of heartwood: {species.decay_resistance}" for species in all_species()}
    return tuple({**dict.fromkeys(grouped_species(), "of the deck tables"), **found}.items())
