"""Porches, posts, beams, decks, ledgers, rails and stairs."""

from __future__ import annotations

from typing import ClassVar

from speclint.model import settings as say
from speclint.model import words
from speclint.model.element import Element, element
from speclint.model.settings import Section


@element
class Porch(Element):
    """A roofed porch along a wall."""

    kind: ClassVar[str] = "porch"

    along: tuple[str, ...] | None = say.parts("the walls it runs along", ("wall",), "south")
    depth: float | None = say.length("from the wall to the drip edge of its roof, measured level", "10'", high=15)
    length: float | None = say.length("length along the wall", "40'", low=0.3)
    from_left: float | None = say.length(
        "its left end from the left end of the wall, seen from outside; negative where it runs past", "3'", low=-20
    )
    roof_height: float | None = say.length(
        "underside of its roof at the wall, above the wall's lowest wood", "8'", high=12
    )
    roof_pitch: float | None = say.slope("slope of its roof", "4:12", low=-0.5, high=2)
    hung_on: str | None = say.choice(
        "what carries its roof at the house",
        {"wall": "a ledger on the wall", "posts": "posts of its own", "main roof": "the main roof carries on over it"},
    )
    floor: str | None = say.choice(
        "its floor", {"slab": "concrete or stone", "boards": "boards on joists", "ground": "the ground"}
    )
    floor_below_wood: float | None = say.length("its floor below the lowest wood of the wall", '4"', low=-0.5, high=3)
    ceiling: str | None = say.choice("its ceiling", {"flat": "a level ceiling", "open": "open rafters"})
    gutters: str | None = say.choice("gutter at its eave", {"yes": "a gutter", "none": "a free eave"})
    engineered: str | None = say.yes_no("whether a licensed engineer designs its frame, posts and footings")


@element
class Post(Element):
    """A post or a row of like posts."""

    kind: ClassVar[str] = "post"

    under: tuple[str, ...] | None = say.parts("what it carries", ("porch", "deck", "beam", "roof"), "porch lake")
    count: float | None = say.count("how many alike", "6", 1, 200)
    spacing: float | None = say.length("centre to centre", "8'", low=0.1, high=15)
    size: Section | None = say.section("its section", "8x8")
    height: float | None = say.length("from its foot to what it carries", "8'", low=0.1, high=20)
    species: str | None = say.species("its species")
    wood: str | None = say.choice("heartwood or sapwood", words.HEARTWOOD)
    seasoning: str | None = say.choice("how it was dried", words.SEASONING, then=[("to", "moisture")])
    moisture: float | None = say.number("percent", "moisture content when it is set", "15%", 3, 200)
    treatment: str | None = say.choice("preservative treatment", words.TREATMENTS)
    base: str | None = say.choice(
        "what its foot stands in",
        {
            "standoff": "a metal base that holds the end grain clear",
            "direct": "straight on the surface below",
            "cup": "a shoe or stone socket that holds water",
            "in concrete": "cast in concrete",
            "in soil": "set in the ground",
        },
        then=[("", "foot"), ("on", "stands on")],
    )
    foot: float | None = say.length("end grain above the surface it stands on", '1"', high=2)
    stands_on: str | None = say.choice(
        "the surface below",
        {
            "pier": "a masonry or concrete pier",
            "slab": "a slab",
            "deck framing": "blocked framing down to a footing",
            "deck boards": "deck boards",
            "wall": "a foundation wall",
            "soil": "the ground",
        },
    )
    foot_above_grade: float | None = say.length("end grain above the soil beside it", '12"', low=-1, high=10)
    inset: float | None = say.length(
        "its outer face inside the drip line above; negative outside", '12"', low=-5, high=15
    )
    adjuster: str | None = say.choice(
        "what lets it follow a settling wall",
        {"jack": "a screw jack that can be reached", "shims": "a stack of shims to take out", "none": "nothing"},
        then=[("", "travel")],
    )
    travel: float | None = say.length("how far the adjuster can come down", '4"', high=1)
    footing: float | None = say.length("bottom of its footing below grade", '48"', high=5)
    footing_width: float | None = say.length("diameter of its round footing, or side of a square one", '24"', high=3)
    top: str | None = say.choice("its top", {**words.CAPS, "under a beam": "covered by what it carries"})
    base_metal: str | None = say.choice("metal of the base and its fasteners", words.METALS)
    finish: str | None = say.choice("finish", words.FINISHES)
    temporary: str | None = say.yes_no("whether it is a support to be taken out")


@element
class Beam(Element):
    """A beam, or a row of like beams."""

    kind: ClassVar[str] = "beam"

    on: tuple[str, ...] | None = say.parts("what it bears on", ("post", "wall", "beam"), "post lake")
    under: tuple[str, ...] | None = say.parts("what it carries", ("porch", "deck", "roof"), "porch lake")
    size: Section | None = say.section("its section", "8x8")
    span: float | None = say.length("clear span", "8'", high=20)
    material: str | None = say.choice(
        "what it is",
        {"log": "a log", "sawn timber": "one sawn piece", "glulam": "glued laminated", "built-up": "plies"},
    )
    species: str | None = say.species("its species")
    wood: str | None = say.choice("heartwood or sapwood", words.HEARTWOOD)
    seasoning: str | None = say.choice("how it was dried", words.SEASONING, then=[("to", "moisture")])
    moisture: float | None = say.number("percent", "moisture content when it is set", "15%", 3, 200)
    treatment: str | None = say.choice("preservative treatment", words.TREATMENTS)
    past_edge: float | None = say.length(
        "how far its end reaches past the roof edge above; negative inside", '-12"', low=-15, high=5
    )
    through_wall: str | None = say.yes_no("whether it runs out from inside through a wall")
    cap: str | None = say.choice("its top", {**words.CAPS, "covered": "under a roof or floor"})
    pocket_gap: float | None = say.length("air at top, sides and end where it sits in masonry", '1/2"', high=0.3)
    end_grain: str | None = say.choice("what closes its ends", words.ENDS)


@element
class Deck(Element):
    """A deck or the framed floor of a porch."""

    kind: ClassVar[str] = "deck"

    along: tuple[str, ...] | None = say.parts("the walls it lies along", ("wall",), "south")
    under: str | None = say.part("the porch that roofs it, if any", ("porch",), "lake")
    height: float | None = say.length("walking surface above grade, at its highest", "4'", high=15)
    depth: float | None = say.length("from the wall to its outer edge", "12'", high=15)
    below_wood: float | None = say.length(
        "walking surface below the lowest wood of the wall beside it; negative above", '4"', low=-3, high=5
    )
    held_by: str | None = say.choice(
        "what holds its inner edge", {"ledger": "a ledger on the house", "posts": "posts of its own, free-standing"}
    )
    gap: float | None = say.length("clear gap to the wall where it is free-standing", '1"', high=1)
    joists: Section | None = say.section("joist size", "2x12", then=[("at", "joist spacing")])
    joist_spacing: float | None = say.length("joists centre to centre", '16"', low=0.05, high=1.3)
    joist_span: float | None = say.length("clear span of the joists", "11'", low=0.1, high=10)
    joist_species: str | None = say.species("species of the joists")
    hangers: str | None = say.choice("metal of the joist hangers", words.METALS)
    fasteners: str | None = say.choice("metal of its nails and screws", words.METALS)
    treatment: str | None = say.choice("treatment of its frame", words.TREATMENTS)
    joist_tops: str | None = say.choice("tops of the joists", {"taped": "tape or metal caps", "bare": "bare wood"})
    boards: str | None = say.choice(
        "deck boards",
        {
            "five-quarter": "nominal 5/4 in boards",
            "two-inch": "nominal 2 in boards",
            "composite": "composite boards",
            "solid": "watertight",
        },
    )
    board_gap: float | None = say.length("gap between boards", '1/8"', high=0.05)
    finish: str | None = say.choice("finish of the walking surface", words.FINISHES)
    lateral_ties: str | None = say.choice(
        "what ties it to the house sideways",
        {"two": "two hold-down ties", "four": "four smaller ties", "engineered": "by an engineer", "none": "none"},
    )
    above_soil: float | None = say.length("its lowest wood above the soil", '18"', low=-0.5, high=10)
    extra_load: str | None = say.choice(
        "what else it carries",
        {"none": "people only", "hot tub": "a hot tub", "roof": "roof posts on its framing", "planters": "planters"},
    )
    engineered: str | None = say.yes_no("whether a licensed engineer designs its frame")


@element
class Ledger(Element):
    """A board that hangs a deck or porch roof on the house."""

    kind: ClassVar[str] = "ledger"

    carries: str | None = say.part("the deck or porch it carries", ("deck", "porch"), "deck lake")
    on: str | None = say.choice(
        "what it is fixed to",
        {
            "band joist": "the band joist of the floor",
            "foundation": "the foundation wall",
            "stacked logs": "a wall of stacked logs",
            "timber frame": "posts or sills of the frame",
            "veneer": "stone or brick veneer",
            "cantilever": "a floor that hangs past its support",
        },
    )
    flashing: str | None = say.choice(
        "flashing over it",
        {"metal": "metal behind the wall and over the ledger", "membrane": "membrane only", "none": "none"},
    )
    sheet_metal: str | None = say.choice("metal of the flashing", words.METALS)
    fastener: str | None = say.choice(
        "what holds it",
        {
            "lag screw": "half-inch lag screws",
            "bolt": "half-inch bolts",
            "bolt with spacers": "half-inch bolts through washers",
        },
        then=[("at", "spacing")],
    )
    spacing: float | None = say.length("fasteners centre to centre", '16"', low=0.02, high=2)
    fastener_metal: str | None = say.choice("metal of the fasteners", words.METALS)
    slots: str | None = say.yes_no("whether its holes are slotted so that the wall can settle past it")
    engineered: str | None = say.yes_no("whether a licensed engineer details it")
    treatment: str | None = say.choice("preservative treatment", words.TREATMENTS)


@element
class Rail(Element):
    """A guard or rail."""

    kind: ClassVar[str] = "rail"

    on: str | None = say.part("the deck, porch or stair it guards", ("deck", "porch", "stair"), "deck lake")
    height: float | None = say.length("top above the walking surface", '36"', low=0.1, high=2)
    opening: float | None = say.length("largest clear gap", '3 1/2"', high=0.5)
    lifts_out: str | None = say.yes_no("whether its panels lift out for refinishing")
    weeps: str | None = say.choice("drain holes in the bottom rail and sockets", {"drilled": "drilled", "none": "none"})
    top: str | None = say.choice("its top", words.CAPS)
    posts: str | None = say.choice(
        "how its posts are held",
        {
            "bolted": "through-bolted with hold-downs inside the frame",
            "notched": "notched at the frame",
            "nailed": "nailed or screwed in end grain",
            "surface base": "a drained metal base on the surface",
        },
    )
    into_wall: str | None = say.choice(
        "its end at a log wall",
        {"clear": "ends at a post clear of the wall", "bracket": "a slotted bracket", "socket": "a socket in the logs"},
    )
    finish: str | None = say.choice("finish", words.FINISHES)


@element
class Stair(Element):
    """An outside stair."""

    kind: ClassVar[str] = "stair"

    to: str | None = say.part("the deck or porch it reaches", ("deck", "porch"), "deck lake")
    riser: float | None = say.length("height of a step", '7 1/2"', low=0.02, high=0.5)
    tread: float | None = say.length("depth of a step", '11"', low=0.05, high=1)
    risers: float | None = say.count("number of risers", "4", 1, 60)
    width: float | None = say.length("clear width", '36"', low=0.2, high=10)
    handrail: str | None = say.choice("handrail", {"yes": "a rail that can be grasped", "none": "none"})
    foot: float | None = say.length("cut ends of the stringers above the soil", '6"', low=-0.5, high=2)
    foot_on: str | None = say.choice(
        "what the stringers stand on", {"pad": "a pad", "soil": "the ground", "hung": "nothing; hung"}
    )
    treatment: str | None = say.choice("preservative treatment", words.TREATMENTS)
    leaves: str | None = say.choice(
        "where it leaves the deck",
        {"front": "at the outer edge, under the drip of a roof over the deck", "end": "at one end, clear of the drip"},
    )
    top_fixed_to: str | None = say.choice(
        "its top",
        {"settling wall": "fixed to a wall that settles", "deck": "fixed to a deck", "slotted": "a slotted bracket"},
    )
