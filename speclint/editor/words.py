"""Words about kinds, settings and values, as hovering and completion tell them."""

from __future__ import annotations

from speclint.model.kinds import KINDS
from speclint.model.settings import Setting
from speclint.units import NEEDED_AS, System, read_quantity, show


def about(kind: str) -> str:
    """What a kind of element is."""
    return " ".join((KINDS[kind].__doc__ or "").split())


def range_of(setting: Setting, system: System) -> str:
    """What a setting reads: its choices, or its bounds and how they are written, in the reader's units."""
    if setting.choices:
        return "one of: " + ", ".join(setting.choices)
    if setting.dimension == "part":
        named = ", ".join(setting.refers) if len(setting.refers) < 8 else "any part"
        return f"{'names of' if setting.many else 'the name of a'} {named}"
    written = NEEDED_AS.get(setting.dimension, "a species of the table" if setting.dimension == "species" else "")
    if setting.low is None or setting.high is None or setting.dimension in ("angle", "skyline"):
        return written or "a text in quotes"
    dimension = {"section": "length", "shares": "percent"}.get(setting.dimension, setting.dimension)
    bounds = " to ".join(show(bound, dimension, system) for bound in (setting.low, setting.high))
    return f"{written}; from {bounds}" if written else f"from {bounds}"


def example_of(setting: Setting, system: System) -> str:
    """The typical example of a setting, in the reader's units."""
    if system == "imperial" or setting.dimension not in ("length", "pressure", "area", "rain rate", "speed"):
        return f"{setting.name} {setting.example}"
    value = read_quantity(setting.example)
    return f"{setting.name} {show(value.number, value.dimension, system)}"


def plain(text: str) -> str:
    """A text of the user's, safe inside Markdown."""
    return "".join(f"\\{character}" if character in "\\`*_{}[]<>#|~!" else character for character in text)
