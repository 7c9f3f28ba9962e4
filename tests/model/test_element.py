"""Elements: frozen, stated by name, equal by what they state."""

from __future__ import annotations

from dataclasses import FrozenInstanceError, fields, replace

import pytest

from speclint.model.element import settings_of
from speclint.model.kinds import KINDS
from speclint.model.wall import Wall


def test_an_element_cannot_be_changed() -> None:
    wall = Wall(name="west", length=9.0)
    with pytest.raises(FrozenInstanceError, match="length of wall west"):
        wall.length = 10.0  # type: ignore[misc]


def test_a_copy_keeps_what_is_not_changed() -> None:
    wall = Wall(name="west", length=9.0)
    other = replace(wall, height=3.0)
    assert (other.name, other.length, other.height, wall.height) == ("west", 9.0, 3.0, None)
    assert other != wall
    assert replace(other, height=None) == wall
    assert wall != "wall west"


def test_a_field_that_no_kind_has_is_refused() -> None:
    with pytest.raises(TypeError, match="a wall has no storeys_high"):
        Wall(storeys_high=2)  # type: ignore[call-arg]


@pytest.mark.parametrize("kind", KINDS)
def test_every_field_but_three_is_a_setting(kind: str) -> None:
    model = KINDS[kind]
    names = [one.name for one in fields(model) if one.name not in ("name", "place", "given")]
    assert [setting.attribute for setting in settings_of(model).values()] == names
    assert all(getattr(model(), name) is None for name in names)
