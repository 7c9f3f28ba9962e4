"""What the notes of a block state: the kind of element that a head begins, and settings with their values."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, field

from speclint.editor.pieces import Note, Piece
from speclint.model.element import settings_of
from speclint.model.kinds import KINDS
from speclint.model.settings import Setting


@dataclass(frozen=True, slots=True)
class Stated:
    """A setting in a note: the words that name it, and the pieces of its value."""

    setting: Setting
    name: tuple[Piece, ...]
    value: list[Piece] = field(default_factory=list)


def kind_of(head: Note) -> tuple[str, bool]:
    """The kind of element whose settings a block holds, and whether it is a typical; no kind where it holds others."""
    words = head.words
    typical = words[:1] == ["typical"]
    kind = next(iter(words[1:] if typical else words), "")
    return (kind if kind in KINDS else ""), typical


def targets_of(head: Note) -> list[str]:
    """What the block of a head describes, as `Name.target` calls it."""
    kind, typical = kind_of(head)
    names = [piece.text for piece in head.pieces[1 + typical :] if piece.kind in ("word", "number")]
    if typical:
        return [" ".join(["typical", kind, *names[:1]])]
    return [kind] if not names else [f"{kind} {name}" for name in names]


def longest_setting(pieces: Sequence[Piece], kind: str) -> int:
    """How many of the first pieces make the name of a setting; 0 where they make none."""
    known = settings_of(KINDS[kind])
    for size in range(min(len(pieces), 8), 0, -1):
        if " ".join(piece.text for piece in pieces[:size]) in known:
            return size
    return 0


def follower(stated: Stated, piece: Piece) -> str:
    """The setting that a connecting word begins behind a value; empty where it begins none."""
    if not stated.value:
        return ""
    return next((name for word, name in stated.setting.then if word and name and word == piece.text), "")


def stated_in(pieces: Sequence[Piece], kind: str) -> list[Stated]:
    """The settings that the pieces of a note state, in their order."""
    settings = settings_of(KINDS[kind])
    found: list[Stated] = []
    at, fresh = 0, True
    while at < len(pieces):
        piece = pieces[at]
        size = longest_setting(pieces[at : at + 8], kind) if fresh else 0
        if size:
            name = " ".join(word.text for word in pieces[at : at + size])
            found.append(Stated(settings[name], tuple(pieces[at : at + size])))
        elif found and (other := follower(found[-1], piece)) and other in settings:
            found.append(Stated(settings[other], (piece,)))
        elif found:
            found[-1].value.append(piece)
        fresh = piece.kind == "comma"
        at += size or 1
    return found
