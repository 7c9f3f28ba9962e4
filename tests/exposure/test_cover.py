"""Roof edges over a point: straight lines past reach and ends."""

from __future__ import annotations

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from speclint.exposure.cover import Edge, sky_left, slant_passed
from speclint.science import sun_on_walls

LENGTHS = st.floats(0.05, 20.0)
TURNS = st.floats(-80.0, 80.0)


def passed(edges: list[Edge], turn: float) -> float:
    return slant_passed(edges, math.cos(math.radians(turn)), math.sin(math.radians(turn)))


def test_in_the_open_every_ray_passes() -> None:
    assert math.inf == passed([], 10.0)


def test_straight_at_the_wall_the_slant_is_drop_over_reach() -> None:
    assert 2.5 == pytest.approx(passed([Edge(0.8, 2.0)], 0.0))


def test_a_ray_passes_under_the_end_of_a_roof() -> None:
    """From 45 degrees on the left a ray drifts as far along as out, and the end is nearer than the edge."""
    edge = Edge(3.0, 2.0, left=1.0, right=50.0)
    assert 2.0 * math.sin(math.radians(45)) / 1.0 == pytest.approx(passed([edge], 45.0))
    assert 2.0 * math.cos(math.radians(45)) / 3.0 == pytest.approx(passed([edge], -45.0))


@given(LENGTHS, LENGTHS, LENGTHS, TURNS)
def test_a_wider_edge_lets_no_more_through(reach: float, more: float, drop: float, turn: float) -> None:
    assert passed([Edge(reach + more, drop)], turn) <= passed([Edge(reach, drop)], turn)


@given(LENGTHS, LENGTHS, LENGTHS, TURNS)
def test_a_lower_place_is_reached_by_more(reach: float, drop: float, more: float, turn: float) -> None:
    assert passed([Edge(reach, drop)], turn) <= passed([Edge(reach, drop + more)], turn)


@given(LENGTHS, LENGTHS, LENGTHS, LENGTHS, TURNS)
def test_every_edge_must_be_passed(reach: float, drop: float, other: float, lower: float, turn: float) -> None:
    one, two = Edge(reach, drop), Edge(other, lower)
    assert min(passed([one], turn), passed([two], turn)) == passed([one, two], turn)


@given(LENGTHS, LENGTHS, LENGTHS, LENGTHS, TURNS)
def test_left_and_right_mirror(reach: float, drop: float, left: float, right: float, turn: float) -> None:
    one, mirrored = Edge(reach, drop, left, right), Edge(reach, drop, right, left)
    assert passed([one], turn) == pytest.approx(passed([mirrored], -turn))


@given(LENGTHS, LENGTHS)
def test_the_sky_left_is_that_of_the_published_geometry(reach: float, drop: float) -> None:
    assert sun_on_walls.sky_left(drop, reach) == pytest.approx(sky_left([Edge(reach, drop)]))


def test_a_skyline_takes_from_the_sky() -> None:
    assert 1 - math.sin(math.radians(30)) == pytest.approx(sky_left([], 30.0))
    assert sky_left([Edge(2.0, 0.5)], 30.0) == 0.0
