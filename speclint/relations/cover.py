"""What keeps the sky off what."""

from __future__ import annotations

from speclint.model.home import Home
from speclint.model.porch import Deck, Porch, Post
from speclint.model.roof import Roof
from speclint.model.wall import Door, Wall, Window
from speclint.relations.web import Tie


def covers(home: Home) -> list[Tie]:
    """Roofs over walls, porches over walls, decks and posts, walls over their openings."""
    ties: list[Tie] = []
    for label, element in home.elements.items():
        if isinstance(element, Roof):
            ties += [Tie(label, wall, "roofs over") for wall in element.covers or ()]
        elif isinstance(element, Porch):
            ties += [Tie(label, wall, "runs along") for wall in element.along or ()]
        elif isinstance(element, Wall):
            ties += [Tie(porch, label, "shelters") for porch in element.sheltered_by or ()]
        elif isinstance(element, Deck) and element.under:
            ties.append(Tie(element.under, label, "roofs over"))
        elif isinstance(element, Post):
            ties += [Tie(above, label, "stands over") for above in element.under or () if above.startswith("porch ")]
        elif isinstance(element, Window | Door) and element.wall:
            ties.append(Tie(element.wall, label, "holds"))
    return list(dict.fromkeys(ties))
