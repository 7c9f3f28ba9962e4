"""What bears on what: every roof, floor and stair down to the soil, and what it passes on the way."""

from __future__ import annotations

from speclint.model.element import Element
from speclint.model.home import Home
from speclint.model.porch import Beam, Deck, Ledger, Porch, Post, Rail, Stair
from speclint.model.roof import Roof
from speclint.model.wall import Wall
from speclint.relations.web import Node, Tie, Web

SOIL = "the soil"
PASSES = ("veneer", "deck boards", "cantilever")
NOT_DRAWN = "not drawn"
CARRIERS = (Post, Beam)


def bearing_web(home: Home) -> Web:
    """What bears on what. Nodes of a kind in `PASSES` carry no load as they should; ends are soil, or are not drawn."""
    drawing = _Drawing(home)
    for element in home.elements.values():
        match element:
            case Roof():
                drawing.roof(element)
            case Porch():
                drawing.porch(element)
            case Wall():
                drawing.put(element)
                drawing.on_foundation(element.label)
            case Beam():
                drawing.beam(element)
            case Post():
                drawing.post(element)
            case Deck():
                drawing.deck(element)
            case Ledger():
                drawing.ledger(element)
            case Stair():
                drawing.stair(element)
            case Rail():
                drawing.put(element)
                drawing.on_parts(element.label, (element.on,) if element.on else (), "stands on")
            case _:
                pass
    return Web(drawing.nodes.values(), drawing.ties)


class _Drawing:
    """The web while it is drawn."""

    def __init__(self, home: Home) -> None:
        self.home = home
        self.nodes: dict[str, Node] = {}
        self.ties: dict[Tie, None] = {}
        self.carriers: dict[str, list[Post | Beam]] = {}
        for element in home.elements.values():
            if isinstance(element, CARRIERS):
                for carried in dict.fromkeys(element.under or ()):
                    self.carriers.setdefault(carried, []).append(element)

    def put(self, element: Element) -> None:
        """The node of an element."""
        self.nodes[element.label] = Node(element.label, element.kind, element.label)

    def on_parts(self, label: str, parts: tuple[str, ...], words: str) -> bool:
        """A tie to each part; whether there was any."""
        for part in parts:
            self._tie(label, Node(part, self.home.elements[part].kind, part), words)
        return bool(parts)

    def on_foundation(self, label: str, words: str = "stands on") -> None:
        """A tie to the foundation, which stands on the soil."""
        house = next(self.home.of_kind("foundation"), None)
        if house is None:
            self._not_drawn(label, "a foundation that is not drawn", words)
            return
        self._tie(label, Node(house.label, "foundation", house.label), words)
        self._tie(house.label, Node(SOIL, "soil"), "stands on")

    def roof(self, roof: Roof) -> None:
        """A roof on its walls, and on posts and beams that carry it."""
        self.put(roof)
        drawn = self.on_parts(roof.label, roof.covers or (), "bears on")
        if not self.on_parts(roof.label, self._carriers(roof.label), "bears on") and not drawn:
            self._not_drawn(roof.label, "walls that are not stated", "bears on")

    def porch(self, porch: Porch) -> None:
        """The roof of a porch, at the house and at its outer edge."""
        self.put(porch)
        label, walls = porch.label, porch.along or ()
        if porch.hung_on == "wall":
            self.on_parts(label, walls, "hangs on")
        elif porch.hung_on == "main roof":
            over = (roof for roof in self.home.of_kind("roof") if isinstance(roof, Roof))
            roofs = [roof.label for roof in over if set(walls) & set(roof.covers or ())]
            self.on_parts(label, tuple(roofs), "carries on from")
        rows = self._carriers(label)
        if not self.on_parts(label, rows, "bears on"):
            self._not_drawn(label, f"posts of {label} that are not drawn", "bears on")
        elif porch.hung_on == "posts" and len(rows) < 2:
            self._not_drawn(label, f"a row of posts at the house under {label} that is not drawn", "bears on")

    def beam(self, beam: Beam) -> None:
        """A beam on what it names, or on the posts that name it."""
        self.put(beam)
        on = tuple(dict.fromkeys([*(beam.on or ()), *self._carriers(beam.label)]))
        if not self.on_parts(beam.label, on, "bears on"):
            self._not_drawn(beam.label, f"supports of {beam.label} that are not drawn", "bears on")

    def post(self, post: Post) -> None:
        """A post, its footing and the soil, or what else it stands on."""
        self.put(post)
        label = post.label
        if post.stands_on in ("pier", "slab", "soil") or (post.stands_on is None and post.base == "in soil"):
            footing = f"footing of {label}"
            says = "" if post.footing is not None else "its depth is not stated"
            words = "stands on" if post.stands_on in (None, "soil") else f"stands on a {post.stands_on} and"
            self._tie(label, Node(footing, "footing", label, says), words)
            self._tie(footing, Node(SOIL, "soil"), "stands on")
        elif post.stands_on == "wall":
            self.on_foundation(label)
        elif post.stands_on in ("deck framing", "deck boards"):
            self._post_on_deck(post)
        else:
            self._not_drawn(label, f"what {label} stands on is not stated", "ends:")

    def _post_on_deck(self, post: Post) -> None:
        porches = {part for part in post.under or () if part.startswith("porch ")}
        over = (self.home.elements[porch] for porch in porches)
        walls = {wall for porch in over if isinstance(porch, Porch) for wall in porch.along or ()}
        decks = [
            deck.label
            for deck in self.home.of_kind("deck")
            if isinstance(deck, Deck) and (deck.under in porches or walls & set(deck.along or ()))
        ]
        if not decks:
            self._not_drawn(post.label, f"a deck under {post.label} that is not drawn", "stands on")
            return
        deck = decks[0]
        if post.stands_on == "deck boards":
            boards = f"boards of {deck}"
            self._tie(post.label, Node(boards, "deck boards", deck), "stands on the")
            self._tie(boards, Node(deck, "deck", deck), "lie on")
        else:
            self._tie(post.label, Node(deck, "deck", deck), "stands on the framing of")

    def deck(self, deck: Deck) -> None:
        """A deck at the house and at its outer edge."""
        self.put(deck)
        label = deck.label
        if deck.held_by == "ledger":
            ledgers = tuple(
                ledger.label
                for ledger in self.home.of_kind("ledger")
                if isinstance(ledger, Ledger) and ledger.carries == label
            )
            if not self.on_parts(label, ledgers, "hangs on"):
                self._not_drawn(label, f"a ledger of {label} that is not drawn", "hangs on")
        elif deck.held_by is None:
            self._not_drawn(label, f"what holds {label} at the house is not stated", "ends:")
        if not self.on_parts(label, self._carriers(label), "bears on"):
            self._not_drawn(label, f"posts or beams of {label} that are not drawn", "bears on")

    def ledger(self, ledger: Ledger) -> None:
        """A ledger on the house."""
        self.put(ledger)
        label = ledger.label
        carried = self.home.elements.get(ledger.carries or "")
        walls = tuple(getattr(carried, "along", None) or ())
        match ledger.on:
            case "band joist":
                band = f"the band joist behind {label}"
                self._tie(label, Node(band, "band joist"), "is fixed to")
                self.on_foundation(band)
            case "foundation":
                self.on_foundation(label, "is fixed to")
            case "stacked logs" | "timber frame":
                if not self.on_parts(label, walls, "is fixed to"):
                    self._not_drawn(label, f"a wall behind {label} that is not stated", "is fixed to")
            case "veneer":
                stone = f"the veneer behind {label}"
                self._tie(label, Node(stone, "veneer"), "is fixed to")
                self._not_drawn(stone, "nothing that a veneer may pass a load to", "hands on to")
            case "cantilever":
                floor = f"the overhanging floor behind {label}"
                self._tie(label, Node(floor, "cantilever"), "is fixed to")
                self.on_parts(floor, walls, "hangs out from")
            case _:
                self._not_drawn(label, f"what {label} is fixed to is not stated", "ends:")

    def stair(self, stair: Stair) -> None:
        """A stair at its top and its foot."""
        self.put(stair)
        self.on_parts(stair.label, (stair.to,) if stair.to else (), "leans on")
        if stair.foot_on in ("pad", "soil"):
            foot = "a pad" if stair.foot_on == "pad" else "the ground"
            self._tie(stair.label, Node(SOIL, "soil"), f"stands on {foot} and")

    def _carriers(self, label: str) -> tuple[str, ...]:
        """The posts and beams that say they carry a part; of posts under a beam that also does, the beam alone."""
        named = self.carriers.get(label, ())
        beams = {beam.label: set(beam.on or ()) for beam in named if isinstance(beam, Beam)}
        held = set().union(*beams.values()) if beams else set()
        return tuple(element.label for element in named if element.label not in held)

    def _not_drawn(self, label: str, name: str, words: str) -> None:
        self._tie(label, Node(name, NOT_DRAWN), words)

    def _tie(self, source: str, target: Node, words: str) -> None:
        self.nodes.setdefault(target.name, target)
        self.ties.setdefault(Tie(source, target.name, words))
