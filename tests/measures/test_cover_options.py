"""Ways to cover a wall better, and what a porch misses."""

from __future__ import annotations

from typing import Any

import pytest

from speclint.measures.cover_options import Option, Options
from tests.measures.knowing import found_knowing
from tests.measures.sheets import absent, found
from tests.measures.test_exposure import BOSTON, WALLS

HOUSE = BOSTON + WALLS
PORCH = "porch p { along south; depth 8'; length 40'; roof height 8'; roof pitch 2:12 }\n"


def _options(*exposures: float) -> Options:
    return Options(tuple(Option(str(at), 0.0, 0.0, exposure) for at, exposure in enumerate(exposures)))


@pytest.mark.parametrize(
    ("exposures", "enough"),
    [((0.75, 0.5), None), ((0.76, 0.75), "1"), ((0.9, 0.76, 0.7, 0.2), "2"), ((0.9, 0.8), None)],
)
def test_the_first_way_that_brings_a_wall_down_to_three_quarters_is_enough(
    exposures: tuple[float, ...], enough: str | None
) -> None:
    way = _options(*exposures).enough
    assert enough == (None if way is None else way.kind)


def test_a_wall_is_tried_with_wider_edges_and_with_a_porch_unless_it_has_one_along_all_of_it() -> None:
    bare = found("wall south", "cover options", HOUSE)
    ways = [(way.kind, round(way.more / 0.0254)) for way in bare.value.ways]
    assert [("as drawn", 0), ("wider", 6), ("wider", 12), ("wider", 24), ("porch", 96), ("both", 96)] == ways
    shares = [way.share for way in bare.value.ways]
    assert shares[0] > shares[1] > shares[2] > shares[3] > shares[5]
    assert shares[4] > shares[5]
    assert shares[0] == pytest.approx(found("wall south", "rain share", HOUSE).value)
    assert bare.value.ways[0].exposure == pytest.approx(found("wall south", "rain exposure", HOUSE).value)
    covered = found("wall south", "cover options", HOUSE + PORCH).value.ways
    assert ["as drawn", "wider", "wider", "wider"] == [way.kind for way in covered]
    short = found("wall south", "cover options", HOUSE + PORCH.replace("length 40'", "length 39'")).value.ways
    assert ["porch", "both"] == [way.kind for way in short[4:]]


def test_without_rain_nothing_is_exposed() -> None:
    known: dict[tuple[str, str], Any] = {("wall south", "mean open wall"): 0.0}
    assert {0.0} == {way.exposure for way in found_knowing("wall south", "cover options", HOUSE, known).value.ways}


def _known(**rain: float) -> dict[tuple[str, str], Any]:
    known: dict[tuple[str, str], Any] = {}
    for name, amount in rain.items():
        known |= {
            (f"wall {name}", "rain on wall"): amount,
            (f"wall {name}", "rain class"): "exposed" if amount > 10 else "partly",
            (f"wall {name}", "free driving rain"): amount * 2,
            (f"wall {name}", "rain share"): 0.5,
        }
    return known


@pytest.mark.parametrize(
    ("rain", "label", "misses"),
    [
        ({"south": 90, "west": 40, "north": 30}, "wall west", 40 / 180),
        ({"south": 9, "west": 40, "north": 50}, "wall north", 50 / 18),
        ({"south": 90, "west": 9, "north": 20}, "wall north", 20 / 180),
    ],
)
def test_a_porch_misses_the_rain_of_the_wettest_exposed_wall_without_one(
    rain: dict[str, float], label: str, misses: float
) -> None:
    text = HOUSE + PORCH
    assert label == found_knowing("porch p", "wettest bare wall", text, _known(**rain)).value
    assert misses == pytest.approx(found_knowing("porch p", "rain it misses", text, _known(**rain)).value)


def test_where_no_exposed_wall_is_bare_nothing_is_missed() -> None:
    known = _known(south=90, west=9, north=9)
    assert 0.0 == found_knowing("porch p", "rain it misses", HOUSE + PORCH, known).value
    known = _known(south=0, west=40, north=9)
    assert 0.0 == found_knowing("porch p", "rain it misses", HOUSE + PORCH, known).value
    loose = PORCH.replace("along south; ", "")
    assert ["along"] == [one.setting for one in absent("porch p", "rain it misses", HOUSE + loose).missing]
