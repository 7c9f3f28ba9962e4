"""Walls, their corners, and the ground at their foot."""

from __future__ import annotations

from typing import ClassVar

from speclint.model import settings as say
from speclint.model import words
from speclint.model.element import Element, element


@element
class Wall(Element):
    """An outside wall, from its lowest wood to the roof above it, with the ground at its foot."""

    kind: ClassVar[str] = "wall"

    faces: float | None = say.bearing("the way the outside face looks", "S 10 E")
    length: float | None = say.length("length along the ground", "46'", low=0.3)
    height: float | None = say.length(
        "from the lowest wood to the eave; on a gable wall to the plate", "9'-6\"", low=0.3
    )
    peak: float | None = say.length("height of a gable wall from its lowest wood to the ridge", "22'", low=0.3)
    storeys: float | None = say.count(
        "full storeys under the eave", "1", 1, 4, default="1", reason="one storey where the plan does not say"
    )
    build: str | None = say.choice(
        "what the wall is made of",
        {
            "log round": "stacked round logs",
            "log square": "stacked squared logs",
            "log D": "stacked logs, round outside and flat inside",
            "timber frame": "posts and beams with infill",
            "framed with siding": "stud framing clad with wood siding",
            "framed with stone": "stud framing clad with stone",
        },
        then=[("", "log size")],
    )
    log_size: float | None = say.length("diameter or height of a log", '10"', low=0.05, high=1.0)
    course: float | None = say.length("height that each course of logs adds", '9"', low=0.05, high=1.0)
    scribed: str | None = say.yes_no("whether each log is coped over the one below")
    joint: str | None = say.choice(
        "the outside shape of the joint between courses",
        {
            "rounded": "round profile, no shelf",
            "beveled": "shelf sloped outward 15 degrees or more",
            "chinked": "chinking tooled to slope out",
            "flat shelf": "a level shelf on the lower log",
        },
    )
    gable_build: str | None = say.choice(
        "what a gable over stacked logs is built of above the plate",
        {"logs": "logs up to the peak, which settle with the wall", "framed": "framing, which does not settle"},
    )
    infill_joint: str | None = say.choice(
        "the joint between the timbers of a frame and its infill",
        {
            "covered": "boards or metal over frame and joint",
            "drained": "an open joint with a flashed way out for water",
            "sealed": "sealant, mortar or a gasket alone",
        },
    )
    species: str | None = say.species("species of the logs or siding")
    wood: str | None = say.choice("heartwood or sapwood", words.HEARTWOOD)
    bark: str | None = say.choice("bark on the logs", {"peeled": "all bark off", "left on": "decorative bark left on"})
    kerf: str | None = say.choice(
        "where the relief kerf of a log is",
        {
            "none": "no kerf",
            "on top": "on top, under the course above",
            "underneath": "underneath",
            "on the face": "on the open face",
        },
    )
    checks: str | None = say.choice(
        "what is done about checks that open upward",
        {
            "filled": "backer and flexible sealant from 1/4 in wide",
            "turned down": "logs laid so that checks face down",
            "open": "nothing",
        },
    )
    seasoning: str | None = say.choice("how the wood was dried", words.SEASONING, then=[("to", "moisture")])
    moisture: float | None = say.number("percent", "moisture content when the wall is stacked", "15%", 3, 200)
    settling: float | None = say.number(
        "percent", "allowance for settling that the shop states, as a share of the height", "3%", 0, 15
    )
    starts: float | None = say.length(
        "lowest wood above the ground beside it, at the worst point", '20"', low=-1, high=10, then=[("above grade", "")]
    )
    ground: str | None = say.choice("surface of the ground under the drip line", words.SURFACES)
    grade: float | None = say.slope("fall of the ground away from the wall over ten feet", "5%", low=-0.5, high=1)
    paving: float | None = say.slope("fall of paving away from the wall", '1/4" per ft', low=-0.5, high=1)
    overhang: float | None = say.length(
        "how far the roof edge reaches past this wall, where it differs from the roof's eaves or rakes", "3'", high=12
    )
    upper_storey: float | None = say.length(
        "how far an upper storey stands out over this wall", '18"', high=4, then=[("at", "upper storey height")]
    )
    upper_storey_height: float | None = say.length(
        "underside of that storey above the lowest wood of the wall", "9'", low=0.3, high=15
    )
    treatment: str | None = say.choice("preservative treatment", words.TREATMENTS)
    surface: str | None = say.choice("surface of the wood outside", words.WOOD_SURFACES)
    finish: str | None = say.choice("finish outside", words.FINISHES)
    coats: float | None = say.count("coats of finish", "2", 0, 10)
    colour: str | None = say.choice("depth of colour", words.COLOURS)
    back_primed: str | None = say.yes_no("whether siding is coated on its back before it goes up")
    sheen: str | None = say.choice("shine of a solid stain or paint", words.SHEENS)
    sheltered_by: tuple[str, ...] | None = say.parts("porches that roof over this wall", ("porch",), "lake")
    fasteners: str | None = say.choice("metal of nails and screws outside", words.METALS)
    horizontal_trim: str | None = say.choice(
        "belly bands, water tables and other level trim", {**words.CAPS, "no trim": "there is none"}
    )
    inspection_strip: float | None = say.length("bare foundation left in sight below the wood", '6"')


@element
class Corner(Element):
    """A corner of stacked logs and the log ends that stand out from it."""

    kind: ClassVar[str] = "corner"

    of: tuple[str, ...] | None = say.parts("the two walls that meet", ("wall",), "south, west")
    ends: float | None = say.length("how far the longest log ends stand out past the wall face", '14"', high=3)
    lowest_ends: float | None = say.length("how far the lowest log ends stand out past the wall face", '14"', high=3)
    end_grain: str | None = say.choice("what closes the end grain", words.ENDS)
    notch: str | None = say.choice(
        "the notch",
        {
            "saddle": "cut in the underside of the upper log",
            "dovetail": "sloped faces that shed outward",
            "butt and pass": "one log butts, the next passes",
            "cupped": "cut in the top of the lower log",
            "post": "logs run into a corner post",
        },
    )
    slides: str | None = say.yes_no(
        "whether its logs can slide past what they meet, where one of its walls settles and the other stands still"
    )
    downspout: str | None = say.choice(
        "roof water at this corner",
        {
            "none": "none comes down here",
            "clear": "a closed pipe clear of the ends",
            "open": "an open end or spout above the ends",
        },
    )


@element
class Opening(Element):
    """A window or door; see the two kinds."""

    wall: str | None = say.part("the wall it is in", ("wall",), "south")
    under: str | None = say.part(
        "the porch over it; one along most of the wall need not be named", ("porch",), "porch entry"
    )
    count: float | None = say.count("how many alike", "4", 1, 200)
    from_left: float | None = say.length("its middle from the left end of the wall, seen from outside", "6'")
    width: float | None = say.length("width of the frame", "3'", low=0.1, high=20)
    height: float | None = say.length("height of the frame", "5'", low=0.1, high=12)
    sill: float | None = say.length("sill or threshold above the lowest wood of the wall", "3'", low=-1, high=30)
    headspace: float | None = say.length("settling gap left over the frame", '3"', high=1)
    frame: str | None = say.choice(
        "how the frame is held in stacked logs",
        {
            "slip": "keys or splines, slotted fixings",
            "fixed": "screwed through to the logs",
            "not in logs": "in framing",
        },
    )
    head: str | None = say.choice(
        "flashing over the head",
        {
            "metal cap": "bent metal with end dams and drip",
            "two-part cap": "metal let into the logs, lapping metal on the frame",
            "sealant": "sealant only",
            "none": "nothing",
        },
    )
    pan: str | None = say.choice("pan under the sill", {"sloped pan": "drains outward", "none": "no pan"})
    sill_slope: float | None = say.slope("outward slope of the sill", "15 deg", low=-0.5, high=2)


@element
class Window(Opening):
    """A window, or a row of like windows."""

    kind: ClassVar[str] = "window"


@element
class Door(Opening):
    """An outside door, or a row of like doors."""

    kind: ClassVar[str] = "door"

    step: float | None = say.length("step down from the threshold to the surface outside", '4"', low=-0.2, high=1)
    swings: str | None = say.choice("the way it opens", {"in": "inward", "out": "outward", "sliding": "sideways"})
    hood: float | None = say.length("depth of a hood or recess over the door, where no porch covers it", "3'", high=10)
    outside: str | None = say.choice("surface outside the threshold", words.SURFACES)
    egress: str | None = say.yes_no("whether it is the required way out")
