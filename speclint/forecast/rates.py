"""Rates: what work and goods cost an owner, from a file of the owner's own or, marked as such, for demonstration."""

from __future__ import annotations

from dataclasses import dataclass
from typing import NamedTuple

from speclint.language.atoms import Mistake, Statement
from speclint.language.items import Item, Items
from speclint.language.nearest import did_you_mean
from speclint.language.parse import parse
from speclint.units import NotAQuantity, read_quantity

GALLON = 3.785411784  # L
SQUARE_FOOT = 0.09290304  # m2


class Entry(NamedTuple):
    """A rate as a rates file may state it.

    Attributes:
        meaning: What it is, in one line.
        demo: The value taken for demonstration; ours, invented. In the unit of the file.
        low: Least that is read.
        high: Greatest that is read.
        scale: Factor from the unit of the file to ours.
    """

    meaning: str
    demo: float
    low: float
    high: float
    scale: float = 1.0


# In US units as the trade works; each has its metric twin below.
ENTRIES: dict[str, Entry] = {
    "labour":           Entry("money for an hour of work", 45.0, 0.0, 1000.0),
    "stain gallon":     Entry("money for a gallon of finish", 60.0, 0.0, 2000.0, 1 / GALLON),
    "cleaner gallon":   Entry("money for a gallon of cleaner", 25.0, 0.0, 1000.0, 1 / GALLON),
    "step ladder":      Entry("money for a day of a step ladder", 0.0, 0.0, 10000.0),
    "extension ladder": Entry("money for a day of a long ladder", 20.0, 0.0, 10000.0),
    "lift":             Entry("money for a day of a lift or of scaffold", 320.0, 0.0, 50000.0),
    "day":              Entry("hours of work in a day", 8.0, 1.0, 24.0),
    "wash feet":        Entry("square feet washed in an hour, from the ground", 250.0, 1.0, 100000.0, SQUARE_FOOT),
    "prepare feet":     Entry("square feet made ready in an hour, from the ground", 120.0, 1.0, 100000.0, SQUARE_FOOT),
    "coat feet":        Entry("square feet coated once in an hour, from the ground", 150.0, 1.0, 100000.0, SQUARE_FOOT),
    "cleaner feet":     Entry("square feet that a gallon of cleaner washes", 400.0, 1.0, 1e5, SQUARE_FOOT / GALLON),
    "slower on a step ladder": Entry("times the hours from the ground", 1.2, 1.0, 20.0),
    "slower on a long ladder": Entry("times the hours from the ground", 1.8, 1.0, 20.0),
    "slower on a lift": Entry("times the hours from the ground", 1.5, 1.0, 20.0),
    "slower on a fixed rail": Entry("times the hours of a rail whose panels lift out", 1.6, 1.0, 20.0),
    "discount":         Entry("yearly discount rate over inflation", 3.0, 0.0, 15.0, 0.01),
    "unsure":           Entry("how far money and hours may be off, either way", 25.0, 0.0, 90.0, 0.01),
}  # fmt: skip
METRIC: dict[str, tuple[str, str]] = {  # the metric name: the entry it stands for, and what it means
    "stain litre":    ("stain gallon", "money for a litre of finish"),
    "cleaner litre":  ("cleaner gallon", "money for a litre of cleaner"),
    "wash metres":    ("wash feet", "square metres washed in an hour, from the ground"),
    "prepare metres": ("prepare feet", "square metres made ready in an hour, from the ground"),
    "coat metres":    ("coat feet", "square metres coated once in an hour, from the ground"),
    "cleaner metres": ("cleaner feet", "square metres that a litre of cleaner washes"),
}  # fmt: skip


@dataclass(frozen=True, slots=True)
class Rates:
    """Rates in our units: money, hours, litres, square metres.

    Attributes:
        currency: By which money is called.
        values: By the names of `ENTRIES`.
        demo: The names for which a demonstration value is taken.
    """

    currency: str
    values: dict[str, float]
    demo: tuple[str, ...]

    def __getitem__(self, name: str) -> float:
        return self.values[name]

    def money(self, amount: float) -> str:
        """An amount as the reader writes it."""
        return f"{self._mark}{amount:,.0f}"

    def price(self, name: str, amount: float = 1.0) -> str:
        """A rate for an amount of what it buys, to four figures."""
        return f"{self._mark}{self[name] * amount:.4g}"

    @property
    def _mark(self) -> str:
        """The currency as it stands before an amount: a letter keeps its distance, a sign does not."""
        return f"{self.currency} " if self.currency[-1:].isalnum() else self.currency


def demo_rates() -> Rates:
    """The rates for demonstration: invented, and said to be so wherever they are used."""
    return Rates("$", {name: entry.demo * entry.scale for name, entry in ENTRIES.items()}, tuple(ENTRIES))


def read_rates(text: str, file: str) -> tuple[Rates, list[Mistake]]:
    """The rates that a file states, and every mistake in it; what it leaves out is taken for demonstration.

    Args:
        text: The file: a block `rates { labour 52; stain gallon 71; currency "EUR" }` in the form of a plan.
        file: By which messages call it.
    """
    tree = parse(text, file)
    mistakes = list(tree.mistakes)
    demo = demo_rates()
    values, currency = dict(demo.values), demo.currency
    stated: dict[str, int] = {}  # the line by the name
    blocks = [one for one in tree.statements if one.atoms and one.atoms[0].text == "rates" and one.body is not None]
    for statement in tree.statements:
        if statement not in blocks:
            help = "write: rates { labour 52;  stain gallon 71 }"
            mistakes.append(
                Mistake(file, statement.line, statement.column, 1, "a rates file holds one block “rates”", help)
            )
    if not blocks and not mistakes:
        mistakes.append(
            Mistake(file, 1, 1, 1, f"{file} states no rates", "write: rates { labour 52;  stain gallon 71 }")
        )
    for statement in (one for block in blocks for one in block.body or ()):
        found = _entry(statement, file, mistakes)
        if found is None:
            continue
        name, value, words = found
        if name in stated:
            told = f"“{name}” is stated twice, first in line {stated[name]}"
            mistakes.append(Mistake(file, statement.line, statement.column, 1, told, _keep_one(name)))
            continue
        stated[name] = statement.line
        if name == "currency":
            currency = words
        else:
            values[name] = value
    return Rates(currency, values, tuple(name for name in ENTRIES if name not in stated)), mistakes


_NAMES = frozenset((*ENTRIES, *METRIC, "currency"))


def _keep_one(name: str) -> str:
    """What to do about a rate that is stated twice, perhaps under its metric name."""
    twins = [metric for metric, (ours, _) in METRIC.items() if ours == name]
    return f"keep one; “{twins[0]}” states the same" if twins else "keep one"


def _entry(statement: Statement, file: str, mistakes: list[Mistake]) -> tuple[str, float, str] | None:
    """The name, the value in our unit and the text of one statement; nothing where it cannot be read."""
    items = Items(statement)
    first = items.peek()
    name = items.take_longest(_NAMES)
    value = items.peek()
    if first is None:
        return None

    def tell(item: Item, message: str, help: str) -> None:
        mistakes.append(Mistake(file, item.line, item.column, len(item.text), message, help))

    if not name:
        got = " ".join(items.words_ahead(5)) or first.text
        tell(first, f"“{got}” is not a rate", did_you_mean(got, _NAMES) or f"the rates are: {', '.join(ENTRIES)}")
        return None
    if name == "currency":
        if value is None or value.kind != "TEXT" or not value.text.strip('" '):
            tell(value or first, "“currency” needs a text in quotes", 'write for example: currency "EUR"')
            return None
        return name, 0.0, value.text.strip('"').strip()
    ours, meaning = METRIC.get(name, (name, ""))
    entry = ENTRIES[ours]
    meaning = meaning or entry.meaning
    factor = 1.0 if name in METRIC else entry.scale
    number = _number(value)
    if value is None or number is None:
        demo = entry.demo * entry.scale / factor
        tell(value or first, f"“{name}” needs a plain number", f"{meaning}; for demonstration {demo:.4g}")
        return None
    low, high = (bound * entry.scale / factor for bound in (entry.low, entry.high))
    if not low <= number <= high:
        tell(value, f"“{value.text}” is out of range for “{name}”", f"speclint reads {low:g} to {high:g} here")
        return None
    items.take()
    if (more := items.peek()) is not None:
        tell(more, f"“{items.rest()}” is not expected after “{name}”", "end the note with ; or a new line")
        return None
    return ours, number * factor, ""


def _number(item: Item | None) -> float | None:
    """A plain number or a percentage, as written."""
    if item is None or item.kind != "QUANTITY":
        return None
    try:
        value = read_quantity(item.text)
    except NotAQuantity:
        return None
    return value.number if value.dimension in ("count", "percent") else None
