"""Heights of the stops of water above the ground at the wall, worked by hand."""

from __future__ import annotations

import pytest

from speclint.measures.heights import height_of
from speclint.relations.web import Node
from tests.measures.sheets import sheet

HOUSE = """
wall south { length 40'; height 9'; starts 18" }
wall north { length 40'; height 9' }
wall east { length 30'; starts 18" }
roof main { covers south, north, east; edge drop 12" }
roof shed { covers south }
porch p { along south; depth 8'; roof height 8'; roof pitch 3:12 }
porch bare { along south; depth 8'; roof height 8' }
porch loose { depth 8'; roof height 8'; roof pitch 3:12 }
porch high { along north; depth 8'; roof height 8'; roof pitch 3:12 }
deck d { along south; height 14" }
deck e { along south }
gutter main { on roof main; over south }
gutter porch { on porch p }
gutter none { length 9' }
gutter adrift { on roof main }
"""


@pytest.mark.parametrize(
    ("kind", "name", "element", "feet"),
    [
        ("ground", "ground", "", 0.0),
        ("away", "away", "", 0.0),
        ("stays", "stays", "", 0.0),
        ("ground", "ground at wall south", "wall south", 0.0),
        ("deck", "deck d", "deck d", 14 / 12),
        ("deck", "deck e", "deck e", None),
        ("wood", "rim of deck d", "deck d", 14 / 12),
        ("wood", "frame of deck d", "deck d", None),
        ("eave", "roof main over wall south", "roof main", 1.5 + 9 - 1),
        ("eave", "roof shed over wall south", "roof shed", 1.5 + 9),
        ("eave", "roof main over wall north", "roof main", None),
        ("eave", "roof main over wall east", "roof main", None),
        ("eave", "roof main over wall west", "roof main", None),
        ("eave", "porch p", "porch p", 1.5 + 8 - 2),
        ("eave", "porch bare", "porch bare", None),
        ("eave", "porch loose", "porch loose", None),
        ("eave", "porch high", "porch high", None),
        ("gutter", "gutter main", "gutter main", 1.5 + 9 - 1),
        ("gutter", "gutter porch", "gutter porch", 1.5 + 8 - 2),
        ("gutter", "gutter none", "gutter none", None),
        ("gutter", "gutter adrift", "gutter adrift", None),
        ("deck", "deck x", "deck x", None),
        ("wood", "boards of deck d", "deck d", None),
        ("downspout", "deck d", "deck d", None),
    ],
)
def test_a_stop_of_water_is_as_high_as_its_part(kind: str, name: str, element: str, feet: float | None) -> None:
    found = height_of(sheet(HOUSE), Node(name, kind, element))
    assert found == (None if feet is None else pytest.approx(feet * 0.3048))
