"""Adjusters that the upkeep needs, and how far a porch roof runs into the eave above it."""

from __future__ import annotations

import pytest

from speclint.units import INCH
from tests.measures.sheets import found

HOUSE = """
wall south { length 30'; height 10' }
wall east { length 30' }
roof main { covers south, east; gables east; form gable; pitch 12:12; eaves 1' }
"""


@pytest.mark.parametrize(("height", "inches"), [("8'", 0.0), ("9'", 0.0), ("9'-6\"", 6.0)])
def test_a_porch_roof_runs_above_the_drip_by_what_the_room_lacks(height: str, inches: float) -> None:
    text = f"{HOUSE}porch p {{ along south; hung on wall; roof height {height} }}"
    assert inches * INCH == pytest.approx(found("porch p", "above eave", text).value)


@pytest.mark.parametrize(
    ("posts", "drawn"),
    [("post a { adjuster none }", 0.0), ("post a { adjuster jack }\npost b { adjuster shims }", 2.0), ("", 0.0)],
)
def test_adjusters_are_counted_by_the_posts_that_have_one(posts: str, drawn: float) -> None:
    assert drawn == found("care", "adjusters drawn", f"{posts}\ncare {{ jacks 180 days }}").value


def test_a_post_beside_a_settling_wall_wants_an_adjuster() -> None:
    text = (
        "wall south { build log round 10\"; height 10'; species white oak; seasoning green }\n"
        "porch p { along south; hung on wall; roof height 9' }\npost a { under p; height 8'; adjuster none }\ncare { }"
    )
    assert 1.0 == found("care", "adjusters wanted", text).value


def test_the_ice_barrier_from_the_outer_face_leaves_the_wall_out() -> None:
    text = "wall n { build log round 10\" }\nroof m { covers n; form gable; pitch 0:12; eaves 2' }"
    inner, least = (found("roof m", name, text).value for name in ("ice barrier need", "ice barrier least"))
    assert (10 * INCH, 48 * INCH) == pytest.approx((inner - least, least))
