"""Bearing: every load followed to the soil, what it passes, and what settles unlike."""

from __future__ import annotations

import pytest
from hypothesis import given, settings

from speclint.language.parse import parse
from speclint.measures.bearing import bearing_of
from speclint.measures.facts import Sheet
from speclint.measures.moving import moving_of
from speclint.model.build import build
from tests.measures.sheets import absent, found, sheet
from tests.model.plans import plans

FOOT = "foundation main { type crawl space }\n"
LOGS = "wall south { build log round 10\";  height 9';  settling 4% }\n"
POST = 'post lake { stands on pier;  footing 48";  adjuster none }\n'


@pytest.mark.parametrize(
    ("label", "text", "way"),
    [
        ("post lake", POST, "post lake stands on a pier and footing of post lake, which stands on the soil"),
        (
            "beam lake",
            POST + "beam lake { on post lake }",
            "beam lake bears on post lake, which stands on a pier and footing of post lake, which stands on the soil",
        ),
        (
            "roof main",
            FOOT + LOGS + "roof main { covers south }",
            "roof main bears on wall south, which stands on foundation main, which stands on the soil",
        ),
        (
            "ledger lake",
            FOOT + "deck lake { held by ledger }\nledger lake { carries deck lake;  on band joist }",
            "ledger lake is fixed to the band joist behind ledger lake, which stands on foundation main, "
            "which stands on the soil",
        ),
    ],
)
def test_a_load_is_followed_to_the_soil(label: str, text: str, way: str) -> None:
    assert way == found(label, "bearing way", text).value


@pytest.mark.parametrize(
    ("label", "text", "through"),
    [
        (
            "deck lake",
            "deck lake { held by ledger }\nledger lake { carries deck lake;  on veneer }",
            "veneer",
        ),
        ("deck lake", "deck lake { held by ledger }\nledger lake { carries deck lake;  on cantilever }", "cantilever"),
        (
            "porch lake",
            FOOT
            + LOGS
            + "porch lake { along south;  hung on posts }\npost lake { under porch lake;  stands on deck boards }\n"
            "deck lake { along south;  held by posts }",
            "deck boards",
        ),
        ("post lake", POST, "nothing"),
    ],
)
def test_what_should_carry_no_load_is_named(label: str, text: str, through: str) -> None:
    home, _ = build([parse(text, "a.plan")], "a.plan")
    facts = Sheet(home)
    assert through == facts[label]["bears through"]


def test_what_the_plan_does_not_draw_is_named() -> None:
    text = "deck lake { held by posts }"
    assert ("no", "posts or beams of deck lake that are not drawn") == (
        found("deck lake", "carried", text).value,
        found("deck lake", "missing support", text).value,
    )


def test_beams_that_bear_on_each_other_are_told_once() -> None:
    text = "beam one { on beam two }\nbeam two { on beam one }"
    told = [found(label, "bearing circle", text).value for label in ("beam one", "beam two")]
    assert ["beam one on beam two on beam one", "none"] == told


def test_a_beam_that_a_wall_lowers_and_a_post_holds_is_uneven_by_the_settling() -> None:
    text = LOGS + POST + "beam lake { on wall south, post lake }"
    assert '4 5/16"' == found("beam lake", "uneven settling", text).shown()  # 4 % of 108 in is 4.32 in


def test_an_adjuster_takes_up_its_travel_of_that() -> None:
    text = LOGS + POST.replace("adjuster none", 'adjuster jack 3"') + "beam lake { on wall south, post lake }"
    assert pytest.approx(1.32 * 0.0254) == found("beam lake", "uneven settling", text).value


def test_a_roof_on_logs_and_framing_is_uneven() -> None:
    text = LOGS + "wall north { build framed with siding;  height 9' }\nroof main { covers south, north;  form hip }"
    assert pytest.approx(0.04 * 9 * 0.3048) == found("roof main", "uneven settling", text).value


def test_one_support_is_never_uneven() -> None:
    assert "one support" in absent("beam lake", "uneven settling", POST + "beam lake { on post lake }").reason


def test_what_moves_past_what_is_listed_with_the_room_it_has() -> None:
    text = LOGS + "window low { wall south;  height 5';  headspace 1\";  frame slip }\n"
    text += "window high { wall south;  height 5';  headspace 3\";  frame slip }\n"
    text += "window nailed { wall south;  height 5';  headspace 3\";  frame fixed }\n"
    text += "window open { wall south;  height 5' }\n"
    told = [(one.part, one.how, one.enough) for one in moving_of(sheet(text))]
    assert [
        ("window low", "slides", False),
        ("window high", "slides", True),
        ("window nailed", "fixed", False),
        ("window open", "not stated", None),
    ] == told


@given(plans())
@settings(max_examples=60, deadline=None)
def test_every_load_of_a_generated_home_comes_to_an_end_that_has_a_name(text: str) -> None:
    home, _ = build([parse(text, "a.plan")], "a.plan")
    web, _ = bearing_of(Sheet(home))
    assert () == web.circle()
    kinds = {node.kind for node in web.ends()}
    assert kinds <= {"soil", "not drawn", *home_kinds(home.elements)}


def home_kinds(elements: object) -> set[str]:
    """Kinds of parts at which a circle may have been cut open."""
    return {"post", "beam", "deck", "roof", "porch", "wall", "stair", "rail", "ledger", "foundation", "cantilever"}
