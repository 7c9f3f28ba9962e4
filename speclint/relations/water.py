"""The way of water: from every slope of every roof, by eaves, gutters, lower roofs and decks, to where it ends."""

from __future__ import annotations

from speclint.model.home import Home
from speclint.model.porch import Beam, Deck, Porch, Post, Stair
from speclint.model.roof import Downspout, Gutter, Junction, Roof, Valley
from speclint.relations.roof_plan import Ask, RoofPlan, SlopeArea
from speclint.relations.web import Node, Tie, Web

STRIP = 5 * 0.3048  # width of the strip of ground that counts as at the house; R401.3 and R801.3 speak of 5 and 10 ft
KICKOUT_STRIP = 0.3048  # ours: the foot of slope beside a wall whose water runs down that wall where nothing turns it


def water_web(home: Home, ask: Ask) -> Web:
    """The way of water through a home.

    The own amount of a node is the level area of roof or deck on which its rain falls [m2]; shares of ties sum to one
    for every node that is not an end.

    Args:
        home: The home.
        ask: The value of a fact by label and name, nothing where it is not known.
    """
    drawing = _Drawing(home, ask)
    for element in home.elements.values():
        match element:
            case Roof():
                drawing.roof(element)
            case Porch():
                drawing.porch(element)
            case Gutter():
                drawing.gutter(element)
            case Downspout():
                drawing.downspout(element)
            case Valley():
                drawing.valley(element)
            case Deck():
                drawing.deck(element)
            case _:
                pass
    return Web(drawing.nodes.values(), drawing.ties)


def eave_of(label: str, wall: str = "") -> str:
    """The name of the eave of a roof or porch, over a wall where there are several."""
    return f"eave of {label} over {wall}" if wall else f"eave of {label}"


class _Drawing:
    """The web while it is drawn."""

    def __init__(self, home: Home, ask: Ask) -> None:
        self.home, self.ask, self.plan = home, ask, RoofPlan(home, ask)
        self.nodes: dict[str, Node] = {}
        self.ties: dict[Tie, None] = {}
        self.sources: set[str] = set()

    def roof(self, roof: Roof) -> None:
        """A roof, its slopes and their eaves."""
        label = roof.label
        walls = self.plan.eave_walls(roof)
        if not walls:
            says = "its form, gables or low side are not stated, so its eaves are not known"
            self._put(Node(label, "roof", label, says, own=None, reads=((label, "covers"), (label, "form"))))
            return
        areas = {wall: self.plan.slope_area(roof, wall) for wall in walls}
        own = [found.area for found in areas.values()]
        whole = None if None in own else sum(area for area in own if area is not None)
        reads = tuple(dict.fromkeys(read for found in areas.values() for read in found.reads))
        self._put(Node(label, "roof", label, own=whole, reads=reads))
        for wall, found in areas.items():
            slope = f"slope of {label} over {wall}"
            share = found.area / whole if whole and found.area is not None else 1 / len(walls)
            self._tie(label, Node(slope, "slope", label), "sheds by the", share)
            self._slope(roof, wall, slope, areas)

    def _slope(self, roof: Roof, wall: str, slope: str, areas: dict[str, SlopeArea]) -> None:
        """What leaves a slope: a part by valleys, the rest by the eave."""
        rest = 1.0
        for valley in self.plan.of(Valley):
            if valley.of == roof.label and (not valley.between or wall in valley.between):
                fed = [areas[name].area for name in valley.between or areas if name in areas]
                total = sum(area for area in fed if area)
                share = min(rest, valley.area / total) if valley.area and total else 0.0
                self._tie(slope, Node(valley.label, "valley", valley.label), "gathers in", share)
                rest -= share
        eave = eave_of(roof.label, wall)
        self._tie(slope, Node(eave, "eave", roof.label), "runs to the", rest)
        self._eave(roof.label, wall, eave)

    def porch(self, porch: Porch) -> None:
        """The roof of a porch, with the rain on it, and its eave."""
        label = porch.label
        depth, length = porch.depth, porch.length
        own = depth * length if depth and length else None
        self._put(Node(label, "porch roof", label, own=own, reads=((label, "depth"), (label, "length"))))
        eave = eave_of(label)
        self._tie(label, Node(eave, "eave", label), "runs to the", 1.0)
        self._eave(label, (porch.along or ("",))[0], eave)

    def _eave(self, label: str, wall: str, eave: str) -> None:
        """Where the water of an eave goes: down a wall where it dies there undiverted, into gutters, else down free."""
        rest = 1.0 - self._down_walls(label, wall, eave)
        gutters = [gutter for gutter in self.plan.of(Gutter) if gutter.on == label and gutter.over in (None, wall)]
        free = self.plan.gutter_shares(label, wall, gutters)
        for gutter, share in free.items():
            self._tie(eave, Node(gutter, "gutter", gutter), "falls into", share * rest)
        taken = sum(free.values())
        if not gutters and self.plan.guttered(label):
            says = "the gutter and its downspouts are not drawn"
            self._tie(eave, self._end(f"gutter of the {eave}", "not known", says), "falls into the", rest)
        elif taken < 1:
            self._drip(label, wall, eave, (1 - taken) * rest)

    def _down_walls(self, label: str, wall: str, eave: str) -> float:
        """The share of an eave that runs down walls where the eave dies with no diverter."""
        element = self.home.elements[label]
        along = element.length if isinstance(element, Porch) else self.ask(wall, "length") if wall else None
        taken = 0.0
        for junction in self.plan.of(Junction):
            if junction.roof == label and junction.eave_dies == "yes" and junction.kickout == "none" and junction.wall:
                share = min(1.0, KICKOUT_STRIP / along) if along else 0.0
                bare = Node(
                    f"{junction.wall} below {junction.label}", "wood", junction.wall, "no kickout flashing turns it out"
                )
                self._tie(eave, bare, "runs with nothing to turn it down", share, "point")
                self._onward(bare.name, junction.wall, 1.0)
                taken += share
        return taken

    def _drip(self, label: str, wall: str, source: str, share: float, kind: str = "") -> None:
        """Water that leaves a roof edge free: onto lower roofs, feet of posts or decks below, else onto the ground."""
        for below in self.plan.below(label, wall):
            part = min(below.share, 1.0) * share
            if part > 0:
                node = self._rim(below.label) if below.rim else self._node_of(below.label)
                self._tie(source, node, below.words, part, kind)
                share -= part
        if share > 1e-9:
            self._to_ground(source, wall, label, share, kind)

    def gutter(self, gutter: Gutter) -> None:
        """A gutter and the downspouts that empty it."""
        label = gutter.label
        spouts = [spout for spout in self.plan.of(Downspout) if spout.gutter == label]
        says = "" if spouts else "the plan has no downspout for it"
        self._put(Node(label, "gutter", label, says))
        outlets = sum(spout.count or 1.0 for spout in spouts)
        for spout in spouts:
            self._tie(label, Node(spout.label, "downspout", spout.label), "empties by", (spout.count or 1.0) / outlets)

    def downspout(self, spout: Downspout) -> None:
        """A downspout and where it lets go of its water."""
        label = spout.label
        self._put(Node(label, "downspout", label))
        gutter = self.home.elements.get(spout.gutter or "")
        on = gutter.on if isinstance(gutter, Gutter) else None
        wall = (gutter.over if isinstance(gutter, Gutter) else None) or self.plan.wall_of(on or "")
        if spout.ends in ("lower roof", "deck") or spout.onto:
            below = spout.onto or self.plan.first_below(on or "", wall, spout.ends == "deck")
            if below is None:
                says = f"the plan has no {spout.ends} for it to end on"
                self._tie(label, self._end(f"a {spout.ends} that is not drawn", "nowhere", says), "empties on", 1.0)
                return
            self._tie(label, self._node_of(below), "empties on", 1.0, "point")
        elif spout.ends in ("daylight", "drywell"):
            far = {"daylight": "the end of a buried pipe", "drywell": "a buried pit"}[spout.ends]
            self._tie(label, self._end(far, "away", "led off under ground"), "leads to", 1.0, "point")
        elif spout.ends is None:
            says = f"where {label} ends is not stated"
            self._tie(label, self._end(f"the foot of {label}", "not known", says), "leads to", 1.0, "point")
        elif spout.ends != "at the wall" and spout.distance is not None and spout.distance >= STRIP:
            self._tie(label, self._away(), f"lets go by its {spout.ends} on", 1.0, "point")
        else:
            self._to_ground(label, wall, on or "", 1.0, "point", f"lets go ({spout.ends}) on")

    def valley(self, valley: Valley) -> None:
        """A valley and what its stream meets at the foot."""
        label = valley.label
        self._put(Node(label, "valley", label))
        roof = valley.of or ""
        wall = (valley.between or (self.plan.wall_of(roof),))[0]
        if valley.foot in (None, "free eave") and not valley.into:
            if valley.foot is None:
                self._tie(label, self._end(f"the foot of {label}", "not known", "it is not stated"), "runs to", 1.0)
            else:
                self._drip(roof, wall, label, 1.0, "point")
            return
        below = valley.into or self.plan.met(valley, roof, wall)
        if below is None:
            says = f"the plan has no {valley.foot} for it"
            self._tie(label, self._end(f"a {valley.foot} that is not drawn", "nowhere", says), "runs to", 1.0, "point")
            return
        if self.home.elements[below].kind in ("wall", "corner", "post", "chimney"):
            element = self.home.elements[below]
            struck = Node(f"{below} at the foot of {label}", "wood", below, f"{label} is aimed at it")
            if element.kind == "chimney":
                struck = Node(struck.name, "chimney", below)
            self._tie(label, struck, "is aimed at", 1.0, "point")
            self._onward(struck.name, below if element.kind == "wall" else wall, 1.0)
            return
        self._tie(label, self._node_of(below), "runs to", 1.0, "point")

    def deck(self, deck: Deck) -> None:
        """A deck, with the rain on it where no roof keeps it off, its frame, and the ground under it."""
        label = deck.label
        lengths = [self.ask(wall, "length") for wall in deck.along or ()]
        known = deck.depth is not None and lengths and None not in lengths
        own = 0.0 if deck.under else deck.depth * sum(lengths) if known and deck.depth is not None else None
        reads = ((label, "depth"), *((wall, "length") for wall in deck.along or ()))
        self._put(Node(label, "deck", label, own=own, reads=() if deck.under else reads))
        under = f"ground under {label}"
        if deck.boards == "solid":
            edge = f"ground at the edge of {label}"
            self._tie(label, self._end(edge, "away", "it falls past the deck"), "runs off its edge to the", 1.0)
            return
        frame = f"frame of {label}"
        bare = "the tops of its joists are bare" if deck.joist_tops == "bare" else ""
        self._tie(label, Node(frame, "wood", label, bare), "drips through on the", 1.0)
        rest = 1.0
        for beam in self.plan.of(Beam):
            if label in (beam.under or ()) and beam.size and deck.depth:
                share = min(rest, beam.size[0] / deck.depth)
                bare = "its top has no cap" if beam.cap in (None, "none") else ""
                top = f"top of {beam.label}"
                self._tie(frame, Node(top, "wood", beam.label, bare), "drips on the", share)
                self._tie(top, self._end(under, "away", "it soaks in, away from the wall"), "drips on the", 1.0)
                rest -= share
        self._tie(frame, self._end(under, "away", "it soaks in, away from the wall"), "drips on the", rest)

    def _to_ground(self, source: str, wall: str, label: str, share: float, kind: str = "", words: str = "") -> None:
        """The last step of water to the ground along a wall, or at the edge of a porch."""
        element = self.home.elements.get(label)
        if isinstance(element, Porch) and not words and (element.depth or 0.0) >= STRIP:
            edge = self._end(f"ground at the edge of {label}", "away", "it lands clear of the house")
            self._tie(source, edge, "drips free on the", share, kind)
            return
        if not wall:
            where = self._end(f"the ground below {source}", "not known", "the plan does not say along which wall")
            self._tie(source, where, words or "drips free on", share, kind)
            return
        self._tie(source, self._strip(wall), words or "drips free on the", share, kind)

    def _strip(self, wall: str) -> Node:
        """The strip of ground along a wall, tied to where its fall leads and to the wood that its splash reaches."""
        name = f"ground along {wall}"
        if name in self.nodes:
            return self.nodes[name]
        strip = Node(name, "ground", wall)
        self._put(strip)
        falls = self.ask(wall, "paving" if self.ask(wall, "ground") == "paving" else "grade")
        if falls is None:
            end = self._end(f"ground along {wall}, fall not known", "not known", f"the fall of the ground at {wall}")
            self._tie(name, end, "stays on", 1.0)
        elif falls > 0:
            self._tie(name, self._away(), "falls to the", 1.0)
        else:
            self._to_drain(name)
        splash, starts = self.ask(wall, "splash height"), self.ask(wall, "starts")
        if splash is not None and starts is not None and splash > starts and self.ask(wall, "wooden") == "yes":
            wet = Node(f"lowest wood of {wall}", "wood", wall, "it stands lower than the splash reaches")
            self._tie(name, wet, "splashes the", 0.0, "splash")
        return strip

    def _to_drain(self, name: str) -> None:
        house = next(self.home.of_kind("foundation"), None)
        drain = self.ask(house.label, "drain") if house else None
        if drain in ("daylight", "sump"):
            end = self._end(f"the foundation drain to {drain}", "away", "the drain leads it off")
            self._tie(name, end, "falls back to the house, down to", 1.0)
        else:
            end = self._end("the foundation", "stays", "the ground falls toward it and no drain leads water off")
            self._tie(name, end, "falls back to", 1.0)

    def _onward(self, name: str, wall: str, share: float) -> None:
        """Water that has run down a wall goes on to the ground at its foot."""
        if name not in self.sources:
            self._to_ground(name, wall, "", share, "", "runs down to the")

    def _rim(self, deck: str) -> Node:
        """The outer edge of a deck, from which a drip runs down to the ground."""
        node = Node(f"rim of {deck}", "wood", deck)
        self._put(node)
        self._tie_once(
            node, self._end(f"ground along the rim of {deck}", "away", "it falls past the deck"), "drips to the"
        )
        return node

    def _away(self) -> Node:
        return self._end("ground away from the house", "away", "it falls away")

    def _end(self, name: str, kind: str, says: str) -> Node:
        node = self.nodes.get(name)
        return node if node is not None else Node(name, kind, says=says)

    def _node_of(self, label: str) -> Node:
        """The node of an element that takes water; the full one replaces it when its turn comes."""
        element = self.home.elements[label]
        if isinstance(element, Post):
            bare = element.base in ("direct", "cup", "in concrete", "in soil")
            says = f"its base is {element.base}" if bare else ""
            node = Node(f"foot of {label}", "wood", label, says)
            self._put(node)
            self._tie_once(node, self._away(), "drips to the")
            return node
        if isinstance(element, Stair):
            node = Node(label, "wood", label, "its treads stand under the drip")
            self._put(node)
            self._tie_once(node, self._away(), "runs down to the")
            return node
        return self.nodes.get(label) or Node(label, element.kind, label)

    def _tie_once(self, node: Node, end: Node, words: str) -> None:
        if node.name not in self.sources:
            self._tie(node.name, end, words, 1.0)

    def _put(self, node: Node) -> None:
        self.nodes[node.name] = node

    def _tie(self, source: str, target: Node, words: str, share: float, kind: str = "") -> None:
        self.nodes.setdefault(target.name, target)
        spots = getattr(self.home.elements.get(source), "count", None) or 1.0 if kind == "point" else 1.0
        tie = Tie(source, target.name, words, share, kind, spots)
        if share > 0 or kind == "splash":
            self.ties.setdefault(tie)
            self.sources.add(source)
