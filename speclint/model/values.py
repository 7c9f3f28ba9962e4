"""Items of a statement to the value of a setting."""

from __future__ import annotations

import math
from functools import lru_cache

from speclint.language.items import Item, Items
from speclint.language.nearest import did_you_mean
from speclint.model.settings import ByBearing, Section, Setting
from speclint.units import NEEDED_AS, NotAQuantity, System, Value, read_bearing, read_quantity, show

PlainValue = float | str | Section | ByBearing


class BadValue(Exception):
    """A value that a setting cannot have: the message, the help, and the item it is about."""

    def __init__(self, message: str, help: str, item: Item | None) -> None:
        super().__init__(message)
        self.message, self.help, self.item = message, help, item


@lru_cache(maxsize=512)
def _phrases(setting: Setting) -> frozenset[str]:
    return frozenset(setting.choices or ())


def read_value(setting: Setting, items: Items) -> PlainValue:
    """The value that the next items state for a setting other than a part.

    Raises:
        BadValue: If they state none that the setting can have.
    """
    item = items.peek()
    if item is None:
        raise BadValue(f"“{setting.name}” has no value", f"write for example: {setting.name} {setting.example}", None)
    if item.kind == "UNCLOSED":
        raise BadValue("the quotation mark opened here is not closed", 'close it with " on the same line', item)
    if item.kind == "STRAY":
        raise BadValue(
            f"“{item.text}” means nothing here", f"write for example: {setting.name} {setting.example}", item
        )
    if setting.dimension in ("choice", "yes or no"):
        return _choice(setting, items, item)
    if setting.dimension == "text":
        return _text(setting, items, item)
    if setting.dimension == "station":
        return _station(setting, items, item)
    if setting.dimension == "record":
        return _record(setting, items, item)
    if setting.dimension == "species":
        return _species(setting, items, item)
    if setting.dimension == "angle":
        return _bearing(setting, items, item)
    if setting.dimension in ("shares", "skyline"):
        return _by_bearing(setting, items)
    return _quantity(setting, items, item)


def _by_bearing(setting: Setting, items: Items) -> ByBearing:
    """Pairs of a bearing and a number, parted by commas that another bearing follows."""
    found: dict[float, float] = {}
    unit = "percent" if setting.dimension == "shares" else "angle"
    while True:
        item = items.peek()
        azimuth = read_bearing(item.text) if item and item.kind in ("BEARING", "WORDS") else None
        if item is None or azimuth is None:
            got = item.text if item else "nothing"
            raise BadValue(f"“{got}” is not a bearing", f"needs {NEEDED_AS[setting.dimension]}", item)
        items.take()
        if azimuth in found:
            raise BadValue(f"“{item.text}” is named twice in “{setting.name}”", "name each bearing once", item)
        amount = items.peek()
        value = _read(amount) if amount and amount.kind == "QUANTITY" else None
        if amount is None or value is None or value.dimension != unit:
            got = amount.text if amount else "nothing"
            raise BadValue(
                f"“{got}” does not fit after “{item.text}”", f"needs {NEEDED_AS[setting.dimension]}", amount or item
            )
        items.take()
        found[azimuth] = _within(setting, value.number, amount)
        comma, after = items.peek(), items.peek(1)
        more = after is not None and after.kind in ("BEARING", "WORDS") and read_bearing(after.text) is not None
        if comma is None or comma.kind != "COMMA" or not more:
            break
        items.take()
    total = sum(found.values())
    if setting.dimension == "shares" and abs(total - 100) > 1:
        raise BadValue(f"the shares of “{setting.name}” add to {total:g}%", "they must add to 100%", item)
    return tuple(sorted(found.items()))


def _choice(setting: Setting, items: Items, item: Item) -> str:
    phrase = items.take_longest(_phrases(setting))
    if phrase:
        return phrase
    known = tuple(setting.choices or ())
    got = " ".join(items.words_ahead(4)) or item.text
    raise BadValue(
        f"“{got}” is not a value for “{setting.name}”",
        did_you_mean(got, known) or f"one of: {', '.join(known)}",
        item,
    )


def _text(setting: Setting, items: Items, item: Item) -> str:
    if item.kind != "TEXT":
        raise BadValue(
            f"“{setting.name}” needs a text in quotes", f"write for example: {setting.name} {setting.example}", item
        )
    return items.take().text[1:-1]


def _station(setting: Setting, items: Items, item: Item) -> str:
    from speclint.tables.rows import UnknownRow
    from speclint.tables.stations import find_station

    named = _text(setting, items, item)
    try:
        find_station(named)
    except UnknownRow as unknown:
        near = " or ".join(f"“{name}”" for name in unknown.nearest)
        help = f"did you mean {near}?" if near else "or state latitude and longitude in place of it"
        raise BadValue(f"there is no weather station “{named}” in the reference table", help, item) from None
    return named


def _record(setting: Setting, items: Items, item: Item) -> str:
    from speclint.tables.rain_record import find_record
    from speclint.tables.rows import UnknownRow

    named = _text(setting, items, item)
    if named.lower().endswith(".csv"):
        return named
    try:
        find_record(named)
    except UnknownRow as unknown:
        near = " or ".join(f"“{name}”" for name in unknown.nearest)
        help = f"did you mean {near}?" if near else "or name a CSV file beside the plan"
        raise BadValue(f"there is no hourly rain record “{named}”", help, item) from None
    return named


def _species(setting: Setting, items: Items, item: Item) -> str:
    from speclint.tables.species import species_key

    ahead = items.items[items.at : items.at + 6]  # a comma can stand inside a name: redwood, old-growth
    for size in range(len(ahead), 0, -1):
        part = ahead[:size]
        named = " ".join(one.text for one in part).replace(" ,", ",")
        words = all(one.kind in ("WORDS", "COMMA") for one in part) and part[-1].kind == "WORDS"
        if words and species_key(named) in _species_keys():
            items.at += size
            return named
    got = " ".join(items.words_ahead(4)) or item.text
    raise BadValue(
        f"“{got}” is not a species of the reference table",
        did_you_mean(got, _species_keys()) or "`speclint explain species` lists the table",
        item,
    )


@lru_cache(maxsize=1)
def _species_keys() -> frozenset[str]:
    from speclint.tables.decks import grouped_species
    from speclint.tables.species import all_species, species_key

    named = [name for species in all_species() for name in (species.name, *species.aliases)]
    return frozenset(species_key(name) for name in (*named, *grouped_species()))


def _bearing(setting: Setting, items: Items, item: Item) -> float:
    azimuth: float | None = None
    if item.kind in ("BEARING", "WORDS"):
        azimuth = read_bearing(item.text)
    elif item.kind == "QUANTITY":
        value = _read(item)
        if value.dimension in ("angle", "count"):
            azimuth = _within(setting, value.number, item)
    if azimuth is None:
        raise BadValue(f"“{item.text}” is not a bearing", f"needs {NEEDED_AS['angle']}", item)
    items.take()
    return azimuth % 360


def _read(item: Item) -> Value:
    try:
        return read_quantity(item.text)
    except NotAQuantity as trouble:
        raise BadValue(str(trouble), "", item) from None


def _quantity(setting: Setting, items: Items, item: Item) -> PlainValue:
    if item.kind != "QUANTITY":
        got = " ".join(items.words_ahead(3)) or item.text
        raise BadValue(f"“{got}” is not a value for “{setting.name}”", f"needs {NEEDED_AS[setting.dimension]}", item)
    value = _read(item)
    number = _as_dimension(setting.dimension, value)
    if number is None:
        unit = items.peek(1)
        got = f"{item.text} {unit.text}" if unit and unit.kind == "WORDS" and value.dimension == "count" else item.text
        raise BadValue(f"“{got}” does not fit “{setting.name}”", f"needs {NEEDED_AS[setting.dimension]}", item)
    items.take()
    _within(setting, number, item)
    if setting.dimension == "section":
        other = value.second or number  # a single measure is both sides
        return Section(number, _within(setting, other, item), value.text.strip())
    return number


def _as_dimension(dimension: str, value: Value) -> float | None:
    if value.dimension == dimension:
        return value.number if dimension != "count" or value.number == int(value.number) else None
    if dimension == "slope":
        if value.dimension == "percent":
            return value.number / 100
        if value.dimension == "angle" and abs(value.number) < 89:
            return math.tan(math.radians(value.number))
    if dimension == "section" and value.dimension == "length":
        return value.number
    if dimension in ("ratio", "index") and value.dimension == "count":
        return value.number
    if value.number == 0 and value.dimension == "count" and dimension in ("length", "slope", "area", "pressure"):
        return 0.0
    return None


def _within(setting: Setting, number: float, item: Item) -> float:
    low, high = setting.low, setting.high
    if (low is not None and number < low) or (high is not None and number > high):
        bounds = " to ".join(
            "any" if bound is None else show(bound, setting.dimension, _system(item.text)) for bound in (low, high)
        )
        raise BadValue(f"“{item.text}” is out of range for “{setting.name}”", f"speclint reads {bounds} here", item)
    return number


def _system(text: str) -> System:
    return "metric" if text.rstrip("2").endswith(("m", "kPa", "mm/h", "m/s", "C")) else "imperial"
