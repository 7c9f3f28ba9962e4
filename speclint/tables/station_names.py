"""How names of weather stations are compared: spelled-out words, no marks, no airport words."""

from __future__ import annotations

import re

SPELLED_OUT = {
    "ft": "fort",
    "st": "saint",
    "ste": "sainte",
    "mt": "mount",
    "mtn": "mountain",
    "ctr": "center",
    "vly": "valley",
    "spgs": "springs",
    "jct": "junction",
    "junct": "junction",
    "lk": "lake",
    "intl": "international",
    "muni": "municipal",
    "rgnl": "regional",
    "fld": "field",
    "mem": "memorial",
    "ap": "airport",
    "co": "county",
}

# Words after a town's name that say only that the instruments stand at its airport.
# fmt: off
AIRPORT_WORDS = frozenset((
    "a", "airport", "international", "municipal", "regional", "county", "metro", "field", "memorial",
    "executive",
))
# fmt: on

# The same, and other words for where in or near the town they stand.
# fmt: off
INSTRUMENT_WORDS = AIRPORT_WORDS | frozenset((
    "wso", "wfo", "wsfo", "nwsfo", "afb", "nas", "naf", "aaf", "exp", "experiment", "stn", "farm", "rs", "hq",
    "wwtp", "wtp", "plt", "sewage", "water", "wtr", "wks", "radio", "fire", "univ", "pwr", "ph", "dot", "cars",
    "n", "s", "e", "w", "ne", "nw", "se", "sw", "nne", "ene", "ese", "sse", "ssw", "wsw", "wnw", "nnw",
))
# fmt: on
COMPASS = re.compile(r"(\d+(?:\.\d+)?)\s*(?:[nesw]{1,3})?$")


def station_key(name: str) -> str:
    """A station's name in the form in which names are compared."""
    plain = re.sub(r"['’.#]", "", name.casefold())
    words = re.sub(r"[^a-z0-9&]+", " ", plain).split()
    return re.sub(r"\bmc (?=[a-z])", "mc", " ".join(SPELLED_OUT.get(word, word) for word in words))


def place_key(key: str) -> str:
    """The town in a station's key: words for where it stands, and distances such as `2 w`, are taken off its end."""
    words = key.split()
    while len(words) > 1 and (words[-1] in INSTRUMENT_WORDS or COMPASS.fullmatch(words[-1])):
        words.pop()
    return " ".join(words)


def without_airport(key: str) -> str:
    """A key less the airport words at its end."""
    words = key.split()
    while len(words) > 1 and words[-1] in AIRPORT_WORDS:
        words.pop()
    return " ".join(words)


def miles_from_place(key: str) -> float:
    """How far from its town a station stands, by the number in its key; 0 where it gives none. [mile]"""
    found = re.search(r" (\d+(?:\.\d+)?) ?[nesw]{1,3}\b", key)
    return float(found.group(1)) if found else 0.0
