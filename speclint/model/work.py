"""Stone, chases, planting, upkeep and the order of work."""

from __future__ import annotations

from typing import ClassVar

from speclint.model import settings as say
from speclint.model import words
from speclint.model.element import Element, element

ANY_PART = (
    "wall", "corner", "window", "door", "roof", "valley", "junction", "chimney", "purlin", "gutter", "downspout",
    "porch", "post", "beam", "deck", "ledger", "rail", "stair", "stone", "chase", "foundation", "planting",
)  # fmt: skip


@element
class Stone(Element):
    """Stone veneer on a wall, a skirt below logs, a pier or a chimney."""

    kind: ClassVar[str] = "stone"

    at: str | None = say.part("what it clads", ("wall", "chimney", "foundation", "post"), "wall south")
    type: str | None = say.choice(
        "its kind", {"anchored": "full stone on ties", "adhered": "adhered veneer, in mortar"}
    )
    weeps: float | None = say.length("weep holes centre to centre; 0 where there are none", '24"', high=10)
    flashing: str | None = say.choice("flashing at its base", {"through": "metal out past the face", "none": "none"})
    cavity: float | None = say.length("clear air space behind", '1"', high=0.5)
    cap: float | None = say.slope("outward slope of its top", "15 deg", low=-0.5, high=3)
    cap_flashing: str | None = say.choice(
        "flashing at its top", {"let in": "let in under the wood above", "none": "none"}
    )
    above_soil: float | None = say.length("its bottom edge above the soil", '4"', low=-1, high=5)
    behind_deck: str | None = say.yes_no("whether it carries on behind a deck or ledger")
    joined_to_logs: str | None = say.choice(
        "how it meets stacked logs",
        {
            "slip gap": "a gap that lets the logs move",
            "keyed": "mortared or tied to the logs",
            "apart": "does not touch",
        },
    )


@element
class Chase(Element):
    """A bored way for wires or pipes through timber, logs or stone."""

    kind: ClassVar[str] = "chase"

    inside: str | None = say.part("what it runs through", ("wall", "post", "beam", "stone"), "wall south")
    made: str | None = say.choice(
        "when it is made",
        {"before": "while the timber is on the ground or with each course", "after": "after the timber is set"},
    )
    opens: str | None = say.choice(
        "where it comes out",
        {"inside": "indoors", "under cover": "outside under a roof", "weather side": "on a face that rain reaches"},
    )
    hood: str | None = say.choice("what covers the outlet", {"hooded": "a gasketed hood or box", "none": "nothing"})
    slope: float | None = say.slope("fall to the outside", "2%", low=-0.5, high=1)


@element
class Planting(Element):
    """Shrubs or a bed near a wall."""

    kind: ClassVar[str] = "planting"

    along: str | None = say.part("the wall it stands near", ("wall",), "south")
    distance: float | None = say.length(
        "clear gap from the face of the wall to the nearest leaves of the grown plant, where its mulch begins too",
        '36"',
        low=-1,
        high=50,
    )
    mulch: str | None = say.choice(
        "its mulch", {"organic": "bark, straw or wood chips", "stone": "stone", "none": "none"}
    )


@element
class Care(Element):
    """The upkeep the owner is told to expect. One to a plan."""

    kind: ClassVar[str] = "care"
    single: ClassVar[bool] = True

    refinish: float | None = say.number("duration", "interval between coats on walls", "4 years", 1, 15000)
    refinish_decks: float | None = say.number(
        "duration", "interval between coats on decks, rails and posts, where they have their own", "2 years", 1, 15000
    )
    wash: float | None = say.number("duration", "interval between washings", "1 year", 1, 15000)
    gutters: float | None = say.number("duration", "interval between cleanings of gutters", "180 days", 1, 15000)
    jacks: float | None = say.number("duration", "interval between adjustments of jacks", "180 days", 1, 15000)
    reach: str | None = say.choice(
        "what the owner can work from without hiring",
        {
            "step stool": "the ground or a step stool",
            "step ladder": "a step ladder",
            "extension ladder": "a long ladder",
        },
    )
    lift_access: str | None = say.yes_no("whether a lift or scaffold can stand level beside every high wall")
    wash_pressure: float | None = say.number("pressure", "water pressure at the wood", "500 psi", 0, 5e7)
    coating_moisture: float | None = say.number(
        "percent", "highest moisture content at which a coat goes on", "15%", 3, 100
    )
    coating_temperature: float | None = say.number(
        "temperature", "lowest temperature of the day and the night after it in which a coat goes on", "50 F", -30, 60
    )
    first_coat: float | None = say.number(
        "duration", "longest time that bare wood waits for its first coat", "14 days", 0, 3000
    )
    cleaner_goes: str | None = say.choice(
        "which way cleaner is put on a wall", {"bottom up": "from the foot to the eave", "top down": "from the eave"}
    )
    rinse_goes: str | None = say.choice(
        "which way it is rinsed off", {"top down": "from the eave to the foot", "bottom up": "from the foot"}
    )
    drying: float | None = say.number("duration", "dry weather between a washing and a coat", "3 days", 0, 400)


@element
class Obstruction(Element):
    """Trees, a building or a bank that stands before a wall and keeps wind, rain or sun off it."""

    kind: ClassVar[str] = "obstruction"

    before: tuple[str, ...] | None = say.parts("the walls it stands before", ("wall",), "west")
    type: str | None = say.choice(
        "what it is",
        {
            "evergreens": "trees in leaf all year",
            "leafy trees": "trees that drop their leaves",
            "building": "a house, barn or tight fence",
            "bank": "a bank or a cut in the hill",
        },
    )
    distance: float | None = say.length("level distance from the wall", "40'", low=0.3, high=2000)
    height: float | None = say.length("its height above the grade at the wall", "50'", low=0.1, high=150)
    width: float | None = say.length("its width, where it does not fill the view", "60'", low=0.3, high=2000)


@element
class Step(Element):
    """A task, where the plan states the order of work."""

    kind: ClassVar[str] = "step"

    does: str | None = say.text("what is done", '"bore wire chases"')
    on: tuple[str, ...] | None = say.parts("the parts it is done to", ANY_PART, "post lake")
    after: tuple[str, ...] | None = say.parts("the steps it follows", ("step",), "stack")
    ends: str | None = say.choice("treatment of cut ends", {**words.ENDS, "field treated": "preservative brushed on"})
