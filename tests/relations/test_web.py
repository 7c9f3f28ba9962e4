"""A web of nodes and ties: ways, circles and flows, by hand and against networkx."""

from __future__ import annotations

import networkx
import pytest
from hypothesis import given
from hypothesis import strategies as st

from speclint.relations.flow import Flow
from speclint.relations.web import Node, Tie, Web, told


def web(*ties: Tie, **own: float | None) -> Web:
    names = dict.fromkeys(name for tie in ties for name in (tie.source, tie.target))
    return Web([Node(name, "stop", own=own.get(name, 0.0)) for name in names], ties)


TIES = st.lists(
    st.tuples(st.integers(0, 7), st.integers(0, 7)).filter(lambda pair: pair[0] != pair[1]), max_size=16, unique=True
)


def drawn(pairs: list[tuple[int, int]]) -> Web:
    return Web([Node(str(name), "stop", own=1.0) for name in range(8)], [Tie(str(a), str(b), "to") for a, b in pairs])


@given(TIES)
def test_a_web_has_a_circle_where_networkx_finds_one(pairs: list[tuple[int, int]]) -> None:
    found = drawn(pairs)
    assert networkx.is_directed_acyclic_graph(found.graph()) is (found.circle() == ())


@given(TIES)
def test_a_web_without_the_last_tie_of_its_circles_has_none(pairs: list[tuple[int, int]]) -> None:
    plain, circles = drawn(pairs).unrolled()
    assert ((), len(pairs)) == (plain.circle(), len(plain.ties) + len(circles))


@given(TIES, st.integers(0, 7), st.integers(0, 7))
def test_a_way_is_as_short_as_the_shortest_of_networkx(pairs: list[tuple[int, int]], start: int, end: int) -> None:
    found = drawn(pairs)
    graph = found.graph()
    wanted = 0
    if networkx.has_path(graph, str(start), str(end)):
        wanted = networkx.shortest_path_length(graph, str(start), str(end))
    assert wanted == len(found.way(str(start), str(end)))


@given(TIES)
def test_all_that_is_put_in_comes_to_an_end(pairs: list[tuple[int, int]]) -> None:
    plain, _ = drawn(pairs).unrolled()
    split = [Tie(t.source, t.target, t.words, 1 / len(plain.out_of(t.source))) for t in plain.ties]
    flow = Flow(Web(plain.nodes.values(), split))
    assert pytest.approx(8.0) == sum(flow.at[node.name].amount for node in flow.web.ends())


def test_a_way_is_told_as_one_sentence_that_passes_slopes() -> None:
    way = (
        Tie("roof main", "slope of roof main over wall south", "sheds by the"),
        Tie("slope of roof main over wall south", "eave of roof main over wall south", "runs to the"),
        Tie("eave of roof main over wall south", "gutter south", "falls into"),
    )
    assert "roof main runs to the eave of roof main over wall south, which falls into gutter south" == told(way)


def test_no_way_is_told_as_nothing() -> None:
    assert "" == told(())


def test_the_most_at_one_spot_is_divided_among_the_spots() -> None:
    flow = Flow(web(Tie("roof", "pipe", "by"), Tie("pipe", "ground", "on", kind="point", spots=2.0), roof=80.0))
    assert (80.0, 40.0) == (flow.at["ground"].amount, flow.at["ground"].at_points)


def test_what_is_not_known_is_named_downstream() -> None:
    flow = Flow(web(Tie("roof", "eave", "to"), Tie("eave", "ground", "on"), roof=None))
    assert ("roof",) == flow.at["ground"].unknown
