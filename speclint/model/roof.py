"""Roofs, their junctions and valleys, chimneys and purlins."""

from __future__ import annotations

from typing import ClassVar

from speclint.model import settings as say
from speclint.model import words
from speclint.model.element import Element, element
from speclint.model.settings import Section


@element
class Roof(Element):
    """A roof over walls. Porch roofs belong to their porch."""

    kind: ClassVar[str] = "roof"

    covers: tuple[str, ...] | None = say.parts("the walls under it", ("wall",), "north, south, east, west")
    gables: tuple[str, ...] | None = say.parts("those of its walls that are gable ends", ("wall",), "east, west")
    form: str | None = say.choice(
        "its shape",
        {"gable": "two slopes", "hip": "eaves on every side", "shed": "one slope", "flat": "drained level"},
    )
    pitch: float | None = say.slope("its slope", "10:12", low=0, high=4)
    low_side: str | None = say.part("the wall at its low eave, where it has one slope", ("wall",), "north")
    eaves: float | None = say.length("reach past the wall face at the eaves, measured level to the drip", "2'", high=12)
    rakes: float | None = say.length(
        "reach past the wall face at the gables, measured level to the drip", "2'", high=12
    )
    edge_drop: float | None = say.length(
        "how far the drip edge at the eaves hangs below the top of the wall", '8"', low=-0.6, high=3
    )
    run: float | None = say.length("level distance from wall to ridge", "15'", high=60)
    covering: str | None = say.choice(
        "what sheds the water",
        {
            "asphalt shingle": "asphalt shingles",
            "wood shingle": "sawn wood shingles",
            "wood shake": "split wood shakes",
            "slate": "slate",
            "tile": "clay or concrete tile",
            "standing seam": "standing-seam metal",
            "lapped metal": "lapped metal panels",
            "membrane": "a membrane",
        },
    )
    gutters: str | None = say.choice(
        "gutters at its eaves", {"none": "free eaves", "all eaves": "a gutter on every eave", "some eaves": "as drawn"}
    )
    drip_edge: str | None = say.choice(
        "metal at the roof edge",
        {"eaves and rakes": "on both", "eaves only": "not on the rakes", "none": "none"},
    )
    ice_barrier: float | None = say.length(
        "width of the ice barrier, measured up the slope from the edge", '72"', high=10
    )
    snow_guards: str | None = say.yes_no("whether snow is held on the roof")
    rafter_tails: str | None = say.choice(
        "rafter or outlooker tails",
        {
            "covered": "inside the roof edge",
            "past the edge": "bare ends past the roofing",
            "boxed": "behind soffit and fascia",
        },
    )
    engineered: str | None = say.yes_no("whether a licensed engineer designs its overhangs")
    trees: float | None = say.length("nearest tree crown to the roof edge", "20'", high=200)


@element
class Valley(Element):
    """Where two roof slopes meet and their water runs together."""

    kind: ClassVar[str] = "valley"

    of: str | None = say.part("the roof it is on", ("roof",), "main")
    foot: str | None = say.choice(
        "what its water meets at the foot",
        {
            "free eave": "runs off a free eave",
            "gutter": "a gutter",
            "wall": "a wall",
            "chimney": "a chimney",
            "log corner": "log ends at a corner",
            "post": "a post",
            "lower roof": "a lower roof",
        },
    )
    between: tuple[str, ...] | None = say.parts("the walls under the two slopes that meet", ("wall",), "south, east")
    into: str | None = say.part(
        "what its water falls into or on, where several could be meant",
        ("gutter", "roof", "porch", "deck", "wall", "corner", "post", "chimney"),
        "gutter south",
    )
    area: float | None = say.number("area", "level area that drains to it", "250 ft2", 0, 5000)
    lining: float | None = say.length("width of its metal lining", '24"', high=3)
    splash_guard: str | None = say.yes_no("whether a guard keeps its water in the gutter")


@element
class Junction(Element):
    """Where a roof runs into a wall."""

    kind: ClassVar[str] = "junction"

    roof: str | None = say.part("the roof or porch whose roof meets the wall", ("roof", "porch"), "porch lake")
    wall: str | None = say.part("the wall it meets", ("wall",), "south")
    type: str | None = say.choice(
        "how they meet",
        {"side": "the slope runs along the wall", "head": "the top of the slope meets the wall"},
    )
    eave_dies: str | None = say.yes_no("whether an eave line ends against the wall")
    kickout: str | None = say.choice(
        "kickout flashing at the low end", {"fitted": "one piece, turned out", "none": "no kickout"}
    )
    step_flashing: float | None = say.length("each leg of the flashing", '4"', high=1)
    clearance: float | None = say.length("wood of the wall above the roof surface", '2"', high=2)
    slip: float | None = say.length("lap by which two-part flashing can slide; 0 where it is one piece", '4"', high=1)


@element
class Chimney(Element):
    """A chimney or another large thing through a roof."""

    kind: ClassVar[str] = "chimney"

    roof: str | None = say.part("the roof it comes through", ("roof",), "main")
    material: str | None = say.choice(
        "what it is made of", {"masonry": "stone, brick or block", "metal": "a metal pipe"}
    )
    width: float | None = say.length("width measured along the ridge", '36"', low=0.05, high=10)
    at: str | None = say.choice("where on the roof", {"ridge": "through the ridge", "slope": "on the slope"})
    cricket: float | None = say.length("height of the cricket behind it; 0 where there is none", '15"', high=5)
    slip: float | None = say.length("lap by which two-part flashing can slide; 0 where it is one piece", '4"', high=1)
    against: str | None = say.part("the wall it stands against, if any", ("wall",), "west")


@element
class Purlin(Element):
    """A purlin, ridge pole or plate log that runs out through a gable."""

    kind: ClassVar[str] = "purlin"

    wall: str | None = say.part("the gable wall it comes through", ("wall",), "east")
    count: float | None = say.number("count", "how many alike", "3", 1, 50)
    reach: float | None = say.length("how far its end stands out past the wall face", '20"', high=12)
    species: str | None = say.species("its species, where its wall is not of logs")
    wood: str | None = say.choice("heartwood or sapwood", words.HEARTWOOD)
    end_grain: str | None = say.choice("what closes the end", words.ENDS)
    treatment: str | None = say.choice("preservative treatment", words.TREATMENTS)


@element
class Gutter(Element):
    """A gutter along one eave."""

    kind: ClassVar[str] = "gutter"

    on: str | None = say.part("the roof or porch it serves", ("roof", "porch"), "main")
    over: str | None = say.part("the wall it runs over", ("wall",), "south")
    profile: str | None = say.choice(
        "its section",
        {"half-round": "half round", "ogee": "the common ogee shape", "rectangular": "a plain box"},
        then=[("", "size")],
    )
    size: float | None = say.length("width across the top", '6"', low=0.02, high=0.6)
    length: float | None = say.length("length", "46'", low=0.1)
    fall: float | None = say.slope("fall along its length", '1/16" per ft', low=-0.1, high=0.2)
    drains: float | None = say.number("area", "level roof area that drains to it", "700 ft2", 0, 5000)
    screen: str | None = say.choice("debris screen", {"fitted": "a screen", "none": "no screen"})
    below_roof_line: str | None = say.yes_no("whether its front lip hangs below the line of the roof slope")


@element
class Downspout(Element):
    """A pipe that leads a gutter's water down."""

    kind: ClassVar[str] = "downspout"

    gutter: str | None = say.part("the gutter it empties", ("gutter",), "south")
    count: float | None = say.number("count", "how many alike on that gutter", "2", 1, 50)
    size: Section | None = say.number("section", "inside section", "3x4", 0.01, 1)
    ends: str | None = say.choice(
        "where it lets go of the water",
        {
            "splash block": "a splash block at the foot",
            "extension": "an extension over the ground",
            "daylight": "a buried pipe to daylight",
            "drywell": "a buried pit",
            "lower roof": "the roof below",
            "deck": "a deck",
            "at the wall": "straight down at the foundation",
        },
    )
    onto: str | None = say.part(
        "the roof or deck below that takes its water, where several could be meant",
        ("roof", "porch", "deck", "gutter"),
        "porch lake",
    )
    distance: float | None = say.length("from the foundation to where the water is let go", "6'", high=200)
