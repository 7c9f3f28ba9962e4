"""What lies where on the roof plan: eaves, the areas of slopes, and what is under each drip edge."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any, NamedTuple, TypeVar

from speclint.model.element import Element
from speclint.model.home import Home
from speclint.model.porch import Deck, Porch, Post, Stair
from speclint.model.roof import Gutter, Junction, Roof, Valley
from speclint.model.wall import Corner

Ask = Callable[[str, str], Any]
E = TypeVar("E", bound=Element)

STEEP = ("gable", "hip", "shed")
RIM = 0.1524  # m: outside the edge of a deck, within which a drip still wets its rim and rail; ours


class Below(NamedTuple):
    """What lies under a drip edge: its label, the share of what is left that it takes, and how the water comes to it.

    On the rim of a deck the water runs down its edge.
    """

    label: str
    share: float
    words: str
    rim: bool = False


class SlopeArea(NamedTuple):
    """The level area of a slope, and the facts it is made of."""

    area: float | None
    reads: tuple[tuple[str, str], ...]


def slope_area(run: float, reach: float, length: float, rake: float, hipped: bool) -> float:
    """Level area of the slope of a roof over one wall, drip edges counted in.

    Args:
        run: Level distance from the wall to the ridge. [m]
        reach: Of the eave past the wall. [m]
        length: Of the wall. [m]
        rake: Reach of the roof past either end of the wall. [m]
        hipped: Whether the slope runs to a hip at both ends, which takes a triangle off each.

    Returns:
        Area. [m2]

    Sources:
        ours: plan geometry of a rectangular roof of one pitch.
    """
    deep, wide = run + reach, length + 2 * rake
    return max(deep * (wide - deep), deep * wide / 2) if hipped else deep * wide


def low_wall(roof: Roof) -> str | None:
    """The wall at the low eave of a roof of one slope: as stated, or the only one under it that is no gable."""
    if roof.low_side:
        return roof.low_side
    walls = [wall for wall in roof.covers or () if wall not in (roof.gables or ())]
    return walls[0] if len(walls) == 1 else None


class RoofPlan:
    """The roofs, porches and decks of a home as seen from above; numbers are asked for where they are wanted."""

    def __init__(self, home: Home, ask: Ask) -> None:
        self.home, self.ask = home, ask

    def eave_walls(self, roof: Roof) -> list[str]:
        """The walls over which a roof has eaves."""
        covers = list(roof.covers or ())
        if roof.form == "shed":
            low = low_wall(roof)
            return [low] if low else []
        if roof.form == "gable" and not roof.gables:
            return []
        return [wall for wall in covers if wall not in (roof.gables or ())] if roof.form in STEEP else []

    def slope_area(self, roof: Roof, wall: str) -> SlopeArea:
        """The level area of a slope; what a gutter states for it goes before what is reckoned."""
        stated = [gutter for gutter in self.of(Gutter) if gutter.on == roof.label and gutter.over == wall]
        if stated and all(gutter.drains is not None for gutter in stated):
            reads = tuple((gutter.label, "drains") for gutter in stated)
            return SlopeArea(sum(gutter.drains or 0.0 for gutter in stated), reads)
        reads = ((roof.label, "run"), (wall, "roof reach"), (wall, "length"))
        run, reach, length = (self.ask(label, name) for label, name in reads)
        if run is None or reach is None or length is None:
            return SlopeArea(None, reads)
        hipped = roof.form == "hip"
        rake = reach if hipped else roof.rakes or 0.0
        return SlopeArea(slope_area(run, reach, length, rake, hipped), (*reads, (roof.label, "rakes")))

    def wall_of(self, label: str) -> str:
        """The first wall over which a roof or along which a porch has its eave."""
        element = self.home.elements.get(label)
        if isinstance(element, Porch):
            return (element.along or ("",))[0]
        return (self.eave_walls(element) or [""])[0] if isinstance(element, Roof) else ""

    def below(self, label: str, wall: str) -> list[Below]:
        """What lies under the drip edge of a roof over a wall, with the share of what is left that each takes."""
        element = self.home.elements.get(label)
        if element is None:
            return []
        if isinstance(element, Porch):
            return self._below_porch(element)
        along = self.ask(wall, "length")
        found: list[Below] = []
        covered = 0.0
        for porch in self.of(Porch):
            if wall in (porch.along or ()):
                part = porch.length / along if porch.length and along else 1.0
                words = "carries on over" if porch.hung_on == "main roof" else "drips free on the roof of"
                found.append(Below(porch.label, part / max(1e-9, 1 - covered), words))
                covered = min(1.0, covered + part)
        for junction in self.of(Junction):
            if junction.wall == wall and junction.roof not in (None, label, *(name for name, *_ in found)):
                lower = junction.roof or ""
                if isinstance(self.home.elements[lower], Roof):
                    part = self._widest(lower) / along if along and self._widest(lower) else 1.0
                    found.append(Below(lower, part / max(1e-9, 1 - covered), "drips free on"))
                    covered = min(1.0, covered + part)
        reach = self.ask(wall, "roof reach")
        for deck in self.of(Deck):
            if wall in (deck.along or ()) and not deck.under and (deck.depth is None or deck.depth > (reach or 0.0)):
                found.append(Below(deck.label, 1.0, "drips free on"))
        return found

    def _below_porch(self, porch: Porch) -> list[Below]:
        found: list[Below] = []
        for post in self.of(Post):
            if porch.label in (post.under or ()) and post.inset is not None and post.inset < 0 and porch.length:
                side = post.size[1] if post.size else 0.0
                found.append(Below(post.label, (post.count or 1.0) * side / porch.length, "drips on the"))
        for stair in self.of(Stair):
            deck = self.home.elements.get(stair.to or "")
            reached = stair.to == porch.label or (isinstance(deck, Deck) and deck.under == porch.label)
            if reached and stair.leaves == "front" and stair.width and porch.length:
                found.append(Below(stair.label, stair.width / porch.length, "drips free on"))
        for deck in self.of(Deck):
            beside = deck.under == porch.label or set(deck.along or ()) & set(porch.along or ())
            if beside and deck.depth and porch.depth and deck.depth > porch.depth - RIM + 1e-9:
                rim = deck.depth <= porch.depth + 0.025
                found.append(Below(deck.label, 1.0, "drips free on the" if rim else "drips free on", rim))
        return found

    def _widest(self, roof: str) -> float:
        walls = self.home.elements[roof]
        assert isinstance(walls, Roof)
        return max((self.ask(wall, "length") or 0.0 for wall in walls.covers or ()), default=0.0)

    def first_below(self, label: str, wall: str, decks: bool) -> str | None:
        """The deck or lower roof under an eave, where the plan does not name it."""
        if decks:
            beside = [deck for deck in self.of(Deck) if wall in (deck.along or ()) or deck.under == label]
            return beside[0].label if beside else None
        lower = [one.label for one in self.below(label, wall)] if label in self.home.elements else []
        lower = [name for name in lower if isinstance(self.home.elements[name], Porch | Roof)]
        return lower[0] if lower else None

    def met(self, valley: Valley, roof: str, wall: str) -> str | None:
        """The first part of the plan that a valley can mean by what it says of its foot."""
        kinds: dict[str, list[str]] = {
            "gutter": [gutter.label for gutter in self.of(Gutter) if gutter.on == roof],
            "wall": [wall] if wall else [],
            "chimney": [other.label for other in self.home.of_kind("chimney")],
            "log corner": [corner.label for corner in self.of(Corner) if not wall or wall in (corner.of or ())],
            "post": [post.label for post in self.of(Post)],
            "lower roof": [
                one.label for one in self.below(roof, wall) if not isinstance(self.home.elements[one.label], Deck)
            ]
            if roof in self.home.elements
            else [],
        }
        found = kinds.get(valley.foot or "", [])
        over = [name for name in found if getattr(self.home.elements[name], "over", None) in (valley.between or ())]
        return next(iter(over or found), None)

    def guttered(self, label: str) -> bool:
        element = self.home.elements[label]
        return element.gutters == "yes" if isinstance(element, Porch) else self.ask(label, "gutters") == "all eaves"

    def gutter_shares(self, label: str, wall: str, gutters: list[Gutter]) -> dict[str, float]:
        """The share of an eave that each of its gutters takes: by length, all of it where lengths are not known."""
        element = self.home.elements[label]
        along = element.length if isinstance(element, Porch) else self.ask(wall, "length") if wall else None
        lengths = {gutter.label: gutter.length for gutter in gutters}
        whole = sum(length or 0.0 for length in lengths.values())
        if not along or None in lengths.values() or not whole:
            return {name: 1 / len(lengths) for name in lengths}
        return {name: (length or 0.0) / max(along, whole) for name, length in lengths.items()}

    def of(self, model: type[E]) -> list[E]:
        """The elements of a kind, in the order of the plan."""
        return [element for element in self.home.of_kind(model.kind) if isinstance(element, model)]
