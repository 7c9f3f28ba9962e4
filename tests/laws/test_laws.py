"""Laws of the whole: what must hold of every plan, whatever its numbers."""

from __future__ import annotations

import random

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from speclint.language.parse import parse
from speclint.language.printer import print_plan
from tests.laws.houses import PLANS, STATIONS, example, gravest, metric, said, worse

EAVES = ("eave-too-short", "overhang-short-for-height")
RAKES = ("rake-too-short", "overhang-short-for-height")
HOUSE = """
site {{ weather "{station}"; rain wind SW; ground snow 40 psf; frost depth 3'; ice barrier yes; rain intensity 4 in/h }}
foundation main {{ type crawl space; top 20" above grade }}
typical wall {{ build {build}; starts {starts}"; species eastern white pine; wood mixed; seasoning air-dried to 19% }}
wall south {{ faces S; length 40'; height {height}'; storeys {storeys} }}
wall west {{ faces W; length 28'; height {height}'; peak 24'; storeys {storeys} }}
roof main {{
    covers south, west; gables west; form gable; pitch {pitch}:12; run 14'; eaves {eaves}"; rakes {rakes}"
    covering standing seam; gutters all eaves
}}
gutter south {{ on main; over south; profile {profile} {size}"; length 40'; fall 1/8" per ft; drains {drains} ft2 }}
downspout south {{ gutter south; count {count}; size 3x4; ends daylight; distance 8' }}
window south {{ wall south; count 2; width 3'; height 4'; sill 3'; headspace {headspace}"; frame slip }}
deck south {{ along south; height 3'; depth 10'; joists 2x10 at {spacing}"; joist span 9' }}
"""
HOUSES = st.fixed_dictionaries(
    {
        "station": st.sampled_from(STATIONS),
        "build": st.sampled_from(['log round 10"', 'log D 8"', "timber frame", "framed with siding"]),
        "starts": st.integers(0, 40),
        "height": st.integers(8, 24),
        "storeys": st.integers(1, 2),
        "pitch": st.integers(2, 14),
        "eaves": st.integers(0, 60),
        "rakes": st.integers(0, 60),
        "profile": st.sampled_from(["half-round", "ogee", "rectangular"]),
        "size": st.integers(3, 8),
        "drains": st.integers(100, 3000),
        "count": st.integers(1, 4),
        "headspace": st.integers(0, 5),
        "spacing": st.sampled_from([12, 16, 24]),
    }
)
# A number that may only do good as it grows, and the rules that speak of it.
BETTER = [
    ("starts", 20, ("sill-too-near-grade",)),
    ("eaves", 60, EAVES),
    ("rakes", 60, RAKES),
    ("size", 6, ("gutter-too-small",)),
    ("headspace", 6, ("headspace-too-small",)),
]


@pytest.mark.parametrize(("number", "most", "family"), BETTER, ids=[row[0] for row in BETTER])
@given(house=HOUSES, more=st.integers(1, 1000))
def test_a_better_number_never_adds_a_finding_of_its_family(
    number: str, most: int, family: tuple[str, ...], house: dict[str, object], more: int
) -> None:
    better = {**house, number: int(str(house[number])) + 1 + more % most}
    before, after = gravest(HOUSE.format(**house), family), gravest(HOUSE.format(**better), family)
    assert {} == worse(before, after)


@pytest.mark.parametrize(
    ("number", "least", "family"), [(*row[:1], 0, row[2]) for row in BETTER], ids=[r[0] for r in BETTER]
)
def test_the_family_of_a_law_does_speak_of_the_number(number: str, least: int, family: tuple[str, ...]) -> None:
    house = {
        "station": "Mobile, AL", "build": 'log round 10"', "starts": 20, "height": 9, "storeys": 1, "pitch": 8,
        "eaves": 48, "rakes": 48, "profile": "half-round", "size": 6, "drains": 900, "count": 2, "headspace": 5,
        "spacing": 16,
    }  # fmt: skip
    bad = {**house, number: 3 if number == "size" else least}
    assert gravest(HOUSE.format(**bad), family)


@pytest.mark.parametrize("name", PLANS)
@pytest.mark.parametrize("seed", range(6))
def test_the_order_of_elements_does_not_matter(name: str, seed: int) -> None:
    statements = list(parse(example(name), name).statements)
    random.Random(seed).shuffle(statements)
    assert said(example(name)) == said(print_plan(statements))


@given(HOUSES, st.randoms(use_true_random=False))
@settings(max_examples=40)
def test_the_order_of_elements_of_a_drawn_house_does_not_matter(house: dict[str, object], order: random.Random) -> None:
    text = HOUSE.format(**house)
    statements = list(parse(text, "a.plan").statements)
    order.shuffle(statements)
    assert said(text) == said(print_plan(statements))


@pytest.mark.parametrize("name", PLANS)
def test_the_order_of_settings_does_not_matter(name: str) -> None:

    statements = parse(example(name), name).statements
    turned = [one._replace(body=None if one.body is None else one.body[::-1]) for one in statements]
    assert said(example(name)) == said(print_plan(turned))


@pytest.mark.parametrize("name", PLANS)
def test_inches_and_millimetres_of_an_example_plan_agree(name: str) -> None:
    text = example(name)
    assert (True, said(text)) == (text != metric(text) or "mm" in text, said(metric(text)))


@given(HOUSES)
@settings(max_examples=40)
def test_inches_and_millimetres_of_a_drawn_house_agree(house: dict[str, object]) -> None:
    text = HOUSE.format(**house)
    assert said(text) == said(metric(text))


@pytest.mark.parametrize("name", PLANS)
def test_comments_and_spacing_do_not_matter(name: str) -> None:
    assert said(example(name)) == said(print_plan(parse(example(name), name).statements))


@given(HOUSES)
@settings(max_examples=40)
def test_a_second_review_says_the_same(house: dict[str, object]) -> None:
    text = HOUSE.format(**house)
    assert said(text) == said(text)


FAMILY = ("gutter-drains-nowhere", "gutter-too-small", "downspout-too-small", "outlets-too-far-apart")


@given(house=HOUSES, ends=st.sampled_from(["daylight", "drywell"]))
def test_another_outlet_never_adds_a_finding_of_its_family(house: dict[str, object], ends: str) -> None:
    text = HOUSE.format(**house)
    more = f"downspout more {{ gutter south; size 3x4; ends {ends}; distance 8' }}\n"
    before, after = gravest(text, FAMILY), gravest(text + more, FAMILY)
    assert {} == worse(before, {element: grave for element, grave in after.items() if element != "downspout more"})
    assert after.get("downspout more", 0) <= max(before.get("downspout south", 0), after.get("downspout south", 0))
