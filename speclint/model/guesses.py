"""Words that designers guess, and the help that each needs.

What stands in “ ” in a help can be written as it is: a setting of the element, a whole statement of it, an element, or
with “of a roof” after it a setting of that element. A test reads every one of them.
"""

from __future__ import annotations

from collections.abc import Container, Mapping
from types import MappingProxyType

_Helps = Mapping[str, str]

_OVERHANG = "a roof states “eaves” and “rakes”; where one wall differs, state the “overhang” of that wall"
_FRAME = {
    "size": "state “width” and “height”",
    "header": "“head” is the flashing over it, “headspace” the settling gap",
    "flashing": "“head” is the flashing over it, “pan” the one under it",
    "in": "state the wall it is in, such as “wall south”",
    "on": "state the wall it is in, such as “wall south”",
    "settling": "“headspace” is the settling gap left over the frame",
    "buck": "“frame” says how it is held in stacked logs",
    "quantity": "state how many are alike as “count 4”",
}
_NEXT_TO = "state the walls it lies along, such as “along south”"

SETTINGS: Mapping[str, _Helps] = MappingProxyType(
    {
        "site": {
            "snow": "state the snow load as “ground snow 70 psf”",
            "snow load": "state the snow load as “ground snow 70 psf”",
            "frost": 'state the frost line as “frost depth 48"”',
            "frost line": 'state the frost line as “frost depth 48"”',
            "location": "state “weather” by the nearest station, or “latitude” and “longitude”",
            "city": 'state “weather” by the nearest station, such as “weather "Marquette, MI"”',
            "climate": 'state “weather” by the nearest station, such as “weather "Marquette, MI"”',
            "altitude": "state the height above the sea as “elevation”",
            "exposure": "“terrain” is what the wind crosses before it reaches the house",
            "rain": "state “rain intensity” for gutters, “rain wind” for the side rain comes from",
        },
        "foundation": {
            "height": 'state how high it stands as “top 18" above grade”',
            "above grade": 'state how high it stands as “top 18" above grade”',
            "insulation": "“foam” is the insulation outside",
            "drainage": "“drain” is the perimeter drain",
            "sill gasket": "write “capillary break gasket”",
        },
        "wall": {
            "logs": 'state what the wall is made of, then the log, such as “build log round 10"”',
            "material": 'state what the wall is made of, such as “build log round 10"”',
            "siding": "write “build framed with siding”",
            "orientation": "state the way its outside looks as “faces S 10 E”",
            "azimuth": "state the way its outside looks as “faces S 10 E”",
            "direction": "state the way its outside looks as “faces S 10 E”",
            "facing": "state the way its outside looks as “faces S 10 E”",
            "eaves": "the roof states its “eaves” of a roof; where this wall differs, state “overhang”",
            "width": "state “length” along the ground; “log size” for the log",
            "profile": "“build” is the shape of the log, “joint” the shape between courses",
            "gable": "state the height of the gable as “peak”; the roof names it among the “gables” of a roof",
            "porch": "state “sheltered by” and the name of the porch",
            "under": "state “sheltered by” and the name of the porch",
            "above grade": 'state its lowest wood as “starts 20" above grade”',
        },
        "corner": {
            "overhang": "“ends” is how far the log ends stand out",
            "type": "state the “notch”",
            "walls": "name the two walls as “of south, west”",
        },
        "window": _FRAME,
        "door": {**_FRAME, "threshold": "“sill” is the height of the threshold", "swing": "write “swings in”"},
        "roof": {
            "overhang": _OVERHANG,
            "overhangs": _OVERHANG,
            "eave": _OVERHANG,
            "slope": "write “pitch 10:12”",
            "over": "name the walls under it as “covers north, south”",
            "walls": "name the walls under it as “covers north, south”",
            "type": "“form” is its shape, “covering” what sheds the water",
            "shape": "“form” is its shape",
            "material": "“covering” is what sheds the water",
            "shingles": "write “covering asphalt shingle”",
            "span": "“run” is the level distance from wall to ridge",
        },
        "chimney": {"saddle": 'write its height as “cricket 15"”', "on": "name the roof as “roof main”"},
        "purlin": {"overhang": "“reach” is how far its end stands out", "length": "“reach” is how far it stands out"},
        "gutter": {
            "slope": 'write “fall 1/16" per ft”',
            "pitch": 'write “fall 1/16" per ft”',
            "width": "“size” is its width across the top",
            "guard": "“screen” is the debris screen",
        },
        "downspout": {
            "length": "“distance” is from the foundation to where the water is let go",
            "run": "“distance” is from the foundation to where the water is let go",
            "extension": "write “ends extension”, then the “distance”",
            "on": "name the gutter it empties as “gutter south”",
        },
        "porch": {
            "pitch": "write “roof pitch 4:12”",
            "slope": "write “roof pitch 4:12”",
            "width": "state “length” along the wall and “depth” out from it",
            "height": "“roof height” is the underside of its roof at the wall",
            "against": _NEXT_TO,
            "attached": _NEXT_TO,
            "attached to": _NEXT_TO,
            "wall": _NEXT_TO,
            "overhang": "“depth” reaches from the wall to the drip edge of its roof",
            "posts": "posts are elements of their own: “post lake { under porch lake }”",
        },
        "post": {
            "diameter": 'write “size 10"”',
            "supports": "state what it carries as “under porch lake”",
            "pier": "write “stands on pier”",
            "jack": 'write “adjuster jack 4"”',
            "on": "state the surface below it as “stands on pier”",
        },
        "beam": {"length": "“span” is its clear span", "overhang": "“past edge” is its reach past the roof edge above"},
        "deck": {
            "joist": 'write “joists 2x10 at 16"”',
            "size": 'write “joists 2x10 at 16"” for its joists, “depth” for how far it reaches',
            "spacing": 'write “joists 2x10 at 16"”',
            "width": "“depth” is from the wall to its outer edge",
            "against": _NEXT_TO,
            "attached": "“held by” says what holds its inner edge, “along” the walls it lies along",
            "decking": "“boards” are the deck boards",
            "ledger": "write “held by ledger”; the ledger is an element of its own, “ledger”",
        },
        "ledger": {"bolts": 'write “fastener bolt at 16"”', "for": "state what it carries as “carries deck lake”"},
        "rail": {
            "gap": "“opening” is the largest clear gap",
            "spacing": "“opening” is the largest clear gap",
            "balusters": "“opening” is the largest clear gap between them",
        },
        "stair": {
            "rise": "“riser” is the height of a step",
            "run": "“tread” is the depth of a step",
            "count": "write the number of steps as “risers 4”",
            "steps": "write the number of steps as “risers 4”",
            "railing": "state the “handrail”; a guard is an element of its own, “rail”",
        },
        "stone": {"on": "name what it clads as “at wall south”", "gap": "“cavity” is the clear air space behind"},
        "planting": {"spacing": "“distance” is from the wall", "wall": "name the wall as “along south”"},
    }
)

# For every kind of element that has the setting: the guessed word, the setting, the help.
SHARED: Mapping[str, tuple[str, str]] = MappingProxyType(
    {
        "color":        ("colour", "write “colour”"),
        "stories":      ("storeys", "write “storeys”"),
        "story":        ("storeys", "write “storeys”"),
        "stain":        ("finish", "write “finish semitransparent stain”"),
        "paint":        ("finish", "write “finish paint”"),
        "coating":      ("finish", "state the “finish”"),
        "sealer":       ("finish", "state the “finish”, such as “finish water repellent”"),
        "timber":       ("species", "state the “species”"),
        "dried":        ("seasoning", "state how it was dried as “seasoning kiln-dried to 15%”"),
        "qty":          ("count", "state how many are alike as “count 4”"),
        "number":       ("count", "state how many are alike as “count 4”"),
        "borate":       ("treatment", "write “treatment borate”"),
        "preservative": ("treatment", "write “treatment”"),
    }
)  # fmt: skip

_A_SITE = "a plan needs no {} around its elements; start with “site { … }”, then its walls and roofs"
ELEMENTS: _Helps = MappingProxyType(
    {
        **{word: _A_SITE.replace("{}", word, 1) for word in ("house", "building", "home", "cabin", "plan", "project")},
        "room": "rooms are not read; state the outside, such as “wall south { … }”",
        "garage": "state the garage by its own parts, such as “wall garage-south { … }” and “roof garage { … }”",
        "siding": "siding belongs to its wall: “wall south { build framed with siding }”",
        "logs": "logs belong to their wall: “wall south { build log round 10\" }”",
        "glass": "state the panes of a glass wall as “window”, with “count” of a window",
        "column": "write “post”",
        "pier": "a pier belongs to its post: “post lake { stands on pier }”",
        "footing": "a footing belongs to its post: “post lake { footing 48\" }”; under the house it is a “foundation”",
        "joist": "joists belong to their deck: “deck lake { joists 2x10 at 16\" }”",
        "joists": "joists belong to their deck: “deck lake { joists 2x10 at 16\" }”",
        "gable": "state the “peak” of a wall, and name that wall in the “gables” of a roof",
        "eave": "eaves belong to their roof: “roof main { eaves 2' }”",
        "eaves": "eaves belong to their roof: “roof main { eaves 2' }”",
        "overhang": "state the “eaves” of a roof and the “rakes” of a roof",
        "hip": "write “roof main { form hip }”",
        "ridge": "a ridge belongs to its roof; a ridge log that comes through a gable wall is a “purlin”",
        "dormer": "state a dormer by its own parts: “roof dormer { … }”, “wall dormer { … }” and a “junction”",
        "flashing": "where a roof meets a wall is a “junction”; over a window it is the “head” of a window",
        "railing": "write “rail”",
        "guard": "write “rail”",
        "stairs": "write “stair”; a “step” is a step of the work",
        "steps": "write “stair”; a “step” is a step of the work",
        "veneer": "write “stone”",
        "skirt": "write “stone”",
        "slab": "write “foundation main { type slab }”; for a porch state the “floor” of a porch",
        "basement": "write “foundation main { type basement }”",
        "patio": "ground beside a wall is the “ground” of a wall; a roofed one is a “porch”",
        "verandah": "write “porch”",
        "veranda": "write “porch”",
        "plant": "write “planting”",
        "shrub": "write “planting”",
        "maintenance": "write “care”",
    }
)  # fmt: skip

_ON_PIER = 'name the base, then what it stands on: “base standoff 1" on pier”, or only “stands on pier”'
# By element and setting: how a guessed value begins, and the help.
VALUES: Mapping[tuple[str, str], _Helps] = MappingProxyType(
    {
        ("foundation", "drain"): {"to daylight": "write “drain daylight”", "to sump": "write “drain sump”"},
        ("post", "base"): dict.fromkeys(("stone pier", "pier", "stone", "concrete pier", "on pier"), _ON_PIER),
        ("site", "wind"): {"speed": "write “wind 115 mph”"},
        ("window", "sill"): {"height": "write “sill 3'”"},
        ("door", "sill"): {"height": "write “sill 3'”"},
        ("wall", "wood"): {"species": "write “species eastern white pine”"},
        ("post", "wood"): {"species": "write “species eastern white pine”"},
    }
)

_COUNTED = MappingProxyType(
    {"coats": "coats", "coat": "coats", "storeys": "storeys", "stories": "storeys", "story": "storeys"}
    | {"risers": "risers", "steps": "risers"}
)


def guessed_setting(kind: str, said: str, settings: Container[str]) -> str:
    """The help for what begins with a guessed word for a setting; nothing where no guess is known."""
    for phrase in _beginnings(said):
        if phrase in SETTINGS.get(kind, {}):
            return SETTINGS[kind][phrase]
        if phrase in SHARED and SHARED[phrase][0] in settings:
            return SHARED[phrase][1]
    counted = _counted(said, settings)
    return f"write “{counted}”" if counted else ""


def guessed_value(kind: str, setting: str, said: str, settings: Container[str]) -> str:
    """The help for what begins with a guessed value of a setting; nothing where no guess is known."""
    helps = VALUES.get((kind, setting), {})
    found = next((helps[phrase] for phrase in _beginnings(said) if phrase in helps), "")
    counted = _counted(said, settings)
    return found or (f"put a comma before it and write “{counted}”" if counted else "")


def guessed_element(said: str) -> str:
    """The help for what begins with a guessed word for an element; nothing where no guess is known."""
    return next((ELEMENTS[phrase] for phrase in _beginnings(said) if phrase in ELEMENTS), "")


def _beginnings(said: str) -> list[str]:
    words = said.lower().split()[:4]
    return [" ".join(words[:size]) for size in range(len(words), 0, -1)]


def _counted(said: str, settings: Container[str]) -> str:
    """A number before its setting, such as “3 coats”, put the right way round."""
    number, _, word = " ".join(said.lower().replace(",", " ").split()[:2]).partition(" ")
    setting = _COUNTED.get(word, "")
    return f"{setting} {number}" if number.isdecimal() and setting in settings else ""
