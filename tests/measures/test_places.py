"""One wall in three places: cover lowers the rain, the light and the exposure to decay, and nothing else is changed."""

from __future__ import annotations

import pytest

from speclint.outputs.letter import text_of
from speclint.outputs.places import placed, places_lines
from tests.measures.sheets import sheet
from tests.measures.test_exposure import BOSTON, WALLS

STATED = (
    "species eastern white pine; treatment none; joint rounded; checks filled; scribed yes; kerf none; "
    "finish semitransparent stain"
)
LOGS = WALLS.replace('build log round 10"', f'build log round 10"; {STATED}')
PORCH = "porch p { along west; depth 4'; length 20'; roof height 7'; roof pitch 2:12 }"


@pytest.mark.parametrize("measure", ["rain on wall", "rain exposure", "ultraviolet share", "decay exposure"])
def test_more_cover_gives_less(measure: str) -> None:
    plans = placed(sheet(BOSTON + LOGS + PORCH), sheet(BOSTON + LOGS + PORCH)["wall west"])
    found = [plan["wall west"][measure] for plan in plans.values()]
    assert found[0] > found[1] > found[2] > 0


def test_a_porch_makes_a_coat_last_longer() -> None:
    plans = placed(sheet(BOSTON + LOGS), sheet(BOSTON + LOGS)["wall south"])
    lives = [plan["wall south"]["likely finish life"] for plan in plans.values()]
    assert lives[0] < lives[1] < lives[2]


def test_the_other_walls_stay_as_they_are() -> None:
    facts = sheet(BOSTON + LOGS + PORCH)
    for plan in placed(facts, facts["wall west"]).values():
        assert facts["wall south"]["rain share"] == plan["wall south"]["rain share"]


def test_it_is_told_in_columns() -> None:
    facts = sheet(BOSTON + LOGS)
    told = text_of(places_lines(facts, facts["wall south"], "imperial"))
    assert "in the open" in told
    assert "under a porch" in told
    assert "not known" not in told.replace("against what the wood resists", "")
