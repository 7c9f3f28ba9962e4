"""From syntax trees to a home: typicals, rows, followers, what is assumed and unknown, alternates and variances."""

from __future__ import annotations

from typing import Any

import pytest

from speclint.language.parse import parse
from speclint.model.build import build
from speclint.model.element import settings_of
from speclint.model.home import Home, Variance
from speclint.model.kinds import KINDS
from speclint.model.settings import Section
from speclint.span import Span


def home(text: str, alternate: str = "") -> Home:
    tree = parse(text, "a.plan")
    found, mistakes = build([tree], "a.plan", alternate)
    assert [] == [mistake.message for mistake in (*tree.mistakes, *mistakes)]
    return found


def stated(text: str, label: str, setting: str, alternate: str = "") -> Any:
    return getattr(home(text, alternate).elements[label], setting.replace(" ", "_"))


@pytest.mark.parametrize(
    ("text", "setting", "expected"),
    [
        ("wall a { height 9'-6\" }", "height", 2.8956),
        ("wall a { height 2.4 m }", "height", 2.4),
        ("wall a { faces S 10 E }", "faces", 170.0),
        ("wall a { faces 360 deg }", "faces", 0.0),
        ("wall a { grade 5% }", "grade", 0.05),
        ('wall a { paving 1/4" per ft }', "paving", 0.25 / 12),
        ('wall a { build log round 10" }', "build", "log round"),
        ('wall a { build log round 10" }', "log size", 0.254),
        ("wall a { seasoning kiln-dried to 15% }", "moisture", 15.0),
        ("wall a { finish semitransparent stain, coats 2 }", "coats", 2.0),
        ('wall a { starts 9" above grade }', "starts", 0.2286),
        ("wall a { species eastern white pine }", "species", "eastern white pine"),
        ("wall a { height unknown }", "height", None),
        ("wall a { height assumed 3 m }", "height", 3.0),
        ("wall a { }", "height", None),
        ("wall a { }", "storeys", 1.0),
        ("wall a { storeys 2 }", "storeys", 2.0),
        ("wall a { scribed yes }", "scribed", "yes"),
        ("wall b { }\nwall a { like x }\ntypical wall x { height 3 m }", "height", 3.0),
        ("typical wall { height 3 m }\nwall a { }", "height", 3.0),
        ("wall a { }\ntypical wall { height 3 m }", "height", 3.0),
        ("typical wall { height 3 m }\nwall a { height 4 m }", "height", 4.0),
        ("typical wall { height 3 m }\nwall a { height unknown }", "height", None),
        ("typical wall { height 3 m }\ntypical wall tall { height 5 m }\nwall a { like tall }", "height", 5.0),
        ("typical wall { height 3 m }\ntypical wall dry { storeys 2 }\nwall a { like dry }", "height", 3.0),
        ("typical wall { height 3 m }\ntypical wall { height 5 m }\nwall a { }", "height", 5.0),
        ("porch p { }\ntypical wall { sheltered by p }\nwall a { }", "sheltered by", ("porch p",)),
        ("porch p { }\nporch q { }\nwall a { sheltered by q, porch p }", "sheltered by", ("porch q", "porch p")),
        ("wall b, a { height 3 m }", "height", 3.0),
        ("wall b,\n  a { height 3 m }", "height", 3.0),
    ],
)
def test_a_wall_holds_what_the_plan_says_of_it(text: str, setting: str, expected: Any) -> None:
    assert expected == pytest.approx(stated(text, "wall a", setting))


@pytest.mark.parametrize(
    ("text", "label", "setting", "expected"),
    [
        ("post a { size 8x8 }", "post a", "size", Section(0.2032, 0.2032, "8x8")),
        ("post a { size 200x150 mm }", "post a", "size", Section(0.2, 0.15, "200x150 mm")),
        ('post a { base standoff 1" on pier }', "post a", "stands on", "pier"),
        ('post a { base standoff 1" on pier }', "post a", "foot", 0.0254),
        ('post a { adjuster jack 4" }', "post a", "travel", 0.1016),
        ('deck a { joists 2x10 at 16" }', "deck a", "joist spacing", 0.4064),
        ("wall s { }\nwindow a { wall s }", "window a", "wall", "wall s"),
        ("deck d { }\nporch d { }\nrail a { on porch d }", "rail a", "on", "porch d"),
        ('site { elevation 1,400 ft }', "site", "elevation", 426.72),
        ('site { latitude 46.5, longitude -87.4 }', "site", "longitude", -87.4),
        ('step a { does "bore; wires" }', "step a", "does", "bore; wires"),
    ],
)  # fmt: skip
def test_an_element_holds_what_the_plan_says_of_it(text: str, label: str, setting: str, expected: Any) -> None:
    assert expected == pytest.approx(stated(text, label, setting))


@pytest.mark.parametrize("kind", KINDS)
def test_the_example_of_every_setting_can_be_read(kind: str) -> None:
    """The language reference shows these; parts are named after elements that the plan need not hold."""
    label = kind if KINDS[kind].single else f"{kind} x"
    text = "".join(
        f"{label} {{ {setting.name} {setting.example} }}\n"
        for setting in settings_of(KINDS[kind]).values()
        if setting.dimension != "part"
    )
    told = [mistake.message for one in text.splitlines() for mistake in build([parse(one, "")], "")[1]]
    assert [] == told


def test_a_plan_always_has_a_site() -> None:
    assert ["site"] == list(home("").elements)


def test_the_first_of_two_statements_of_a_setting_is_used_with_its_own_words() -> None:
    wall = build([parse('wall a { starts 3"; starts 20" }', "a.plan")], "a.plan")[0].elements["wall a"]
    assert (0.0762, '3"') == (pytest.approx(wall.starts), wall.given["starts"].text)  # type: ignore[attr-defined]


def test_the_first_of_two_statements_of_a_part_is_used() -> None:
    text = "porch p { }\nporch q { }\nwall a { sheltered by p; sheltered by q }"
    wall = build([parse(text, "a.plan")], "a.plan")[0].elements["wall a"]
    assert ("porch p",) == wall.sheltered_by  # type: ignore[attr-defined]


def test_a_part_that_an_alternate_leaves_unknown_is_not_kept_from_the_base_plan() -> None:
    text = 'wall s { }\nwindow a { wall s }\nalternate "x" { window a { wall unknown } }'
    assert stated(text, "window a", "wall", "x") is None


def test_a_value_keeps_its_place_at_the_first_word_of_its_setting() -> None:
    given = home("site {\n  rain wind SW\n}").elements["site"].given["rain wind"]
    assert (Span("a.plan", 2, 3, 4), "SW", "stated") == (given.span, given.text, given.how)


def test_a_value_from_a_typical_keeps_the_place_in_the_typical() -> None:
    given = home("typical wall { height 3 m }\nwall a { }").elements["wall a"].given["height"]
    assert (Span("a.plan", 1, 16, 6), "typical") == (given.span, given.how)


def test_what_is_assumed_in_the_plan_and_by_the_program_is_listed() -> None:
    told = [(one.element, one.setting, one.value) for one in home("wall a { height assumed 3 m }").assumed]
    assert [("wall a", "height", "assumed 3 m"), ("wall a", "storeys", "1")] == told


@pytest.mark.parametrize(
    ("alternate", "expected"),
    [("", (0.5, None)), ("wide eaves", (0.9, None)), ("tall", (0.5, 12.0))],
)
def test_an_alternate_changes_what_it_states_and_adds_what_is_new(alternate: str, expected: tuple[Any, Any]) -> None:
    text = (
        "roof main { eaves 0.5 m; rakes 0.4 m }\n"
        'alternate "wide eaves" { roof main { eaves 0.9 m } }\n'
        "alternate tall { wall b { peak 12 m } }"
    )
    found = home(text, alternate).elements
    told = (found["roof main"].eaves, found["wall b"].peak if "wall b" in found else None)  # type: ignore[attr-defined]
    assert expected == told


def test_an_alternate_can_be_like_another_typical() -> None:
    text = 'typical wall x { height 3 m }\nwall a { }\nalternate "y" { wall a { like x } }'
    assert stated(text, "wall a", "height", "y") == 3.0


def test_an_alternate_that_is_not_there_is_refused_with_those_there_are() -> None:
    with pytest.raises(LookupError, match="wide eaves, tall"):
        home('alternate "wide eaves" { }\nalternate tall { }', "narrow")


@pytest.mark.parametrize("day", ["2027-06-03", "2027-6-3", "2027-06-3"])
def test_a_variance_ends_on_a_day_of_the_calendar(day: str) -> None:
    text = f'variance a-rule on wall a {{ because "x"; accepted by "y"; until {day} }}'
    place = Span("a.plan", 1, 10, 6)
    assert (Variance("a-rule", "wall a", "x", "y", "2027-06-03", place),) == home(text).variances


def test_a_list_is_called_as_it_is_written() -> None:
    text = 'variance a-rule on wall a, wall b { because "x"; accepted by "y"; until 2027-06-03 }\nalternate "a , b" { }'
    assert (["wall a, wall b"], ["a , b"]) == (
        [one.element for one in home(text).variances],
        list(home(text).alternates),
    )


@pytest.mark.parametrize("empty", ["because", "accepted by"])
def test_a_variance_with_an_empty_text_is_as_one_without_it(empty: str) -> None:
    text = 'variance a-rule on wall a { because "x"; accepted by "y"; until 2027-06-03 }'
    before = {"because": '"x"', "accepted by": '"y"'}[empty]
    _, mistakes = build([parse(text.replace(before, '" "'), "a.plan")], "a.plan")
    assert [f"“{empty}” of the variance is empty"] == [one.message for one in mistakes if "empty" in one.message]


def test_elements_of_a_kind_come_in_the_order_of_the_plan() -> None:
    found = home("wall b { }\nporch p { }\nwall a { }")
    assert ["wall b", "wall a", "porch p"] == [
        *(wall.label for wall in found.of_kind("wall")),
        *(porch.label for porch in found.of_kind("porch")),
    ]


def test_elements_of_two_kinds_come_in_the_order_of_the_plan() -> None:
    found = home("wall b { }\nporch p { }\nwall a { }").of_kind("porch", "wall")
    assert ["wall b", "porch p", "wall a"] == [element.label for element in found]
