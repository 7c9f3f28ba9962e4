"""Texts to throw at speclint: plans drawn from the model, pieces of the example plans, and both of them damaged.

Plain `random` and not hypothesis, because a night takes millions of them: the same seed and number give the same text.
"""

from __future__ import annotations

import math
import re
from functools import lru_cache
from random import Random

from speclint.model.element import settings_of
from speclint.model.kinds import KINDS
from speclint.model.settings import Setting
from speclint.units import UNITS
from tests.model.plans import SPECIES, STATIONS, WRITTEN
from tests.specs.expected import SPECS, book

WORDS = (
    *KINDS, "typical", "alternate", "variance", "use", "like", "unknown", "assumed", "height", "build", "faces", "on",
    "covers", "along", "under", "because", "accepted by", "until", "{", "}", ";", "\n", ",", '"', "'", "9'", '6"',
    "9'-6 1/2\"", "8x8", "10:12", "S 10 E", "a", "#", "&", "1/0", "-", "log round", "2027-02-30", '"x"', "a, b, a",
    'use "standards/coast.plan"', 'use "../a.plan"', 'rain record "a.csv"', "rain share", "}\n}", "{ {", "site { }",
)  # fmt: skip
NUMBERS = (
    "0", "-0", "-1", "1", "1e400", "9" * 18, "9" * 70, "0." + "0" * 30 + "1", "1000000000", "999999999.9", "1/0", "0/1",
    "1/3", "500", "501", "20000", "0.0001", "1e9", "-500", "360", "90", "100", "3,000", "1.", ".5", "٣", "½", "1x0",
)  # fmt: skip
MARKS = "\x00\x07\x08\x0b\x0c\x1b\x1c\x7f\x85\x9b\xa0\xad\u200b\u200e\u2028\u202e\u2066\ufeff\ufffd😀é中ﬁ²Ⅷ'″`<&>\\"
OPENING = re.compile(rf"^[ \t]*(?:typical[ \t]+)?({'|'.join(KINDS)})\b[^{{}};\n\"]*\{{", re.MULTILINE)


def text_of(seed: int, number: int) -> str:
    """The text of a number; the same for the same seed."""
    chance = Random(f"{seed}:{number}")
    text = chance.choices((drawn, excerpt, heap, whole), (50, 35, 10, 5))[0](chance)
    for _ in range(chance.choice((0, 0, 1, 1, 2, 4))):
        text = chance.choice(DAMAGES)(chance, text)
    return text


def drawn(chance: Random) -> str:
    """A plan drawn from the model; its parts name one another at random, circles included."""
    kinds = chance.choices(tuple(KINDS), k=chance.randint(1, 9))
    if chance.random() < 0.7:
        kinds += ["site", "wall", "roof", *chance.choices(("wall", "porch", "post", "deck", "gutter", "beam"), k=2)]
    numbers = range(len(kinds))
    labels = list(dict.fromkeys(k if KINDS[k].single else f"{k} k{at}" for at, k in zip(numbers, kinds, strict=True)))
    parts = [f"{label} {{ {notes(chance, label.split()[0], labels)} }}" for label in labels]
    if chance.random() < 0.3:
        kind = chance.choice(kinds)
        parts.append(f"typical {kind} {{ {notes(chance, kind, labels)} }}")
    if chance.random() < 0.3:
        label = chance.choice(labels)
        parts.append(f'alternate "b" {{ {label} {{ {notes(chance, label.split()[0], labels)} }} }}')
    if chance.random() < 0.2:
        rule = chance.choice(book().rules).name
        parts.append(f'variance {rule} {{ because "a"; accepted by "b"; until {chance.randint(2020, 2030)}-06-30 }}')
    chance.shuffle(parts)
    return "\n".join(parts)


def notes(chance: Random, kind: str, labels: list[str]) -> str:
    """Settings of a kind of element with values, as the inside of a block."""
    settings = list(settings_of(KINDS[kind]).values())
    most = chance.choice((1, 5, len(settings)))
    chosen = chance.sample(settings, min(most, len(settings)))
    found = [f"{setting.name} {value}" for setting in chosen if (value := written(chance, setting, labels))]
    return "; ".join(found)


def written(chance: Random, setting: Setting, labels: list[str]) -> str:
    """A value of a setting, nearly always one that it can have; empty where the plan has no part that fits."""
    lot = chance.random()
    if lot < 0.03:
        return "unknown"
    if lot < 0.05:
        return chance.choice(NUMBERS)
    value = _part(chance, setting, labels) if setting.dimension == "part" else _value(chance, setting)
    return f"assumed {value}" if value and lot > 0.97 else value


def _part(chance: Random, setting: Setting, labels: list[str]) -> str:
    known = [label for label in labels if label.split()[0] in setting.refers]
    many = chance.randint(1, 4) if setting.many else 1
    return ", ".join(chance.sample(known, min(many, len(known))))


def _value(chance: Random, setting: Setting) -> str:
    if setting.choices is not None:
        return chance.choice(tuple(setting.choices))
    match setting.dimension:
        case "text":
            return f'"{chance.choice(("a", "", "<b>", "é😀", "x" * 300))}"'
        case "station":
            return f'"{chance.choice(STATIONS)}"'
        case "record":
            return chance.choice(('"Boston, MA"', '"Eugene, OR"', '"none.csv"'))
        case "species":
            return chance.choice(SPECIES)
        case "angle":
            return chance.choice(("N", "SSW", "W 10 S", "N 90 E", f"{chance.randint(0, 360)} deg"))
        case "shares":
            return chance.choice(("S 100%", "N 25%, S 10 E 75%", "SW 33%, W 33%, NW 34%", "N 0%, S 100%"))
        case "skyline":
            return chance.choice(("S 12 deg", "E 3 deg, S 20 W 89 deg", "N 0 deg"))
        case "section":
            return chance.choice(("8x8", "2x12", "200x200 mm", '10"', "1/2x60", "0.5x0.5", "60x60", "2-2x10"))
    return _number(chance, setting)


def _number(chance: Random, setting: Setting) -> str:
    """A number in one of its units: the least, the greatest, nought, or something between, most often a small one."""
    low, high = setting.low or 0.0, 100.0 if setting.high is None else min(setting.high, 1e8)
    amount = chance.choice((low, high, 0.0, chance.uniform(low, high), low + (high - low) * chance.random() ** 4))
    if setting.dimension == "count":
        return f"{math.floor(amount)}"
    if setting.dimension == "slope":
        return f"{amount * 100:.6f}%"
    if setting.dimension in ("ratio", "index"):
        return f"{amount:.6f}"
    unit = chance.choice(WRITTEN[setting.dimension])
    return f"{amount / UNITS[unit.strip()][1]:.6f}{unit}"


@lru_cache(maxsize=1)
def examples() -> tuple[str, ...]:
    """The example plans that ship."""
    return tuple(path.read_text(encoding="utf-8") for path in sorted(SPECS.glob("*.plan")))


@lru_cache(maxsize=16)
def blocks_of(plan: str) -> tuple[str, ...]:
    """The statements of a plan that begin at its margin."""
    return tuple(re.split(r"\n(?=[a-z])", plan))


def excerpt(chance: Random) -> str:
    """Some of the parts of one or two example plans, in order or not; names that are not there stay dangling."""
    parts = [*blocks_of(chance.choice(examples()))]
    if chance.random() < 0.2:
        parts += blocks_of(chance.choice(examples()))
    chosen = sorted(chance.sample(range(len(parts)), min(len(parts), chance.randint(1, 12))))
    if chance.random() < 0.3:
        chance.shuffle(chosen)
    return "\n".join(parts[at] for at in chosen)


def whole(chance: Random) -> str:
    """A whole example plan, changed in a few settings."""
    return restated(chance, chance.choice(examples()))


def heap(chance: Random) -> str:
    """A heap of words of the language."""
    return chance.choice(("", " ")).join(chance.choices((*WORDS, *NUMBERS, *MARKS), k=chance.randint(0, 60)))


def restated(chance: Random, text: str) -> str:
    """Some settings stated before those that are there, and so in their place."""
    labels = [found[0].split("{")[0].strip() for found in OPENING.finditer(text)]
    for _ in range(chance.randint(1, 6)):
        openings = list(OPENING.finditer(text))
        if not openings:
            return text
        found = chance.choice(openings)
        setting = chance.choice(tuple(settings_of(KINDS[found[1]]).values()))
        text = f"{text[: found.end()]} {setting.name} {written(chance, setting, labels)}; {text[found.end() :]}"
    return text


def atoms_moved(chance: Random, text: str) -> str:
    """Atoms lost, put in, doubled, or taking one another's place."""
    atoms = re.findall(r"\s+|[{};,]|[^\s{};,]+", text)
    for _ in range(chance.randint(1, 4)):
        if not atoms:
            break
        at, other = chance.randrange(len(atoms)), chance.randrange(len(atoms))
        match chance.randrange(4):
            case 0:
                del atoms[at]
            case 1:
                atoms.insert(at, f" {chance.choice((*WORDS, *NUMBERS))} ")
            case 2:
                atoms.insert(at, atoms[other])
            case _:
                atoms[at], atoms[other] = atoms[other], atoms[at]
    return "".join(atoms)


def characters_moved(chance: Random, text: str) -> str:
    """Characters lost or put in."""
    for _ in range(chance.randint(1, 4)):
        at = chance.randint(0, len(text))
        put = chance.choice(("", chance.choice(MARKS), chr(chance.randrange(32, 127)), chr(chance.randrange(0xD7FF))))
        text = text[:at] + put + text[at + chance.randint(0, 2) :]
    return text


def bytes_flipped(chance: Random, text: str) -> str:
    """Bits turned over in the stored bytes; what is no text any more is marked as such, as an editor would."""
    raw = bytearray(text.encode("utf-8", "replace"))
    for _ in range(chance.randint(1, 3) if raw else 0):
        raw[chance.randrange(len(raw))] ^= 1 << chance.randrange(8)
    return raw.decode("utf-8", "replace")


def numbers_changed(chance: Random, text: str) -> str:
    """Some numbers made enormous, minute, negative, or none at all."""
    return re.sub(r"\d+(?:\.\d+)?", lambda old: chance.choice(NUMBERS) if chance.random() < 0.15 else old[0], text)


def cut_short(chance: Random, text: str) -> str:
    """The text typed half way, or its latter half."""
    at = chance.randint(0, len(text))
    return text[:at] if chance.random() < 0.7 else text[at:]


def names_made_one(chance: Random, text: str) -> str:
    """Two words of the text made one, so that parts come to name themselves and one another."""
    words = sorted(set(re.findall(r"[a-z]{2,}", text)))
    if len(words) < 2:
        return text
    old, new = chance.sample(words, 2)
    return re.sub(rf"\b{old}\b", new, text)


DAMAGES = (
    restated, restated, atoms_moved, characters_moved, bytes_flipped, numbers_changed, cut_short, names_made_one,
)  # fmt: skip
