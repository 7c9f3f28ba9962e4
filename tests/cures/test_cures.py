"""Cures clear what they say they clear, in the home as tried and in the text as written."""

from __future__ import annotations

from functools import lru_cache
from pathlib import Path

import pytest

from speclint.commands.files import open_plan
from speclint.cures.change import Change
from speclint.cures.desk import Desk
from speclint.cures.effect import Effects
from speclint.cures.gather import Gathered
from speclint.cures.left import MEANT, PROFESSIONAL, refusal
from speclint.cures.offer import offers
from speclint.cures.together import cure_set
from speclint.cures.values import read, steps
from speclint.cures.write import alternate_text
from speclint.forecast.rates import demo_rates
from speclint.language.edit import CannotEdit, with_edits
from speclint.language.uses import CannotRead
from speclint.model.element import settings_of
from speclint.model.kinds import KINDS
from speclint.pipeline import PlanText, review
from speclint.rulebook.book import Rulebook, load_rulebook
from speclint.rulebook.rule import GRADES

SPECS = Path(__file__).parents[2] / "specs"
PLANS = sorted(path.stem for path in SPECS.glob("*.plan"))
CALM = [name for name in PLANS if name != "teaching-house"]  # which has a fault of nearly every kind
DAY = "2026-11-25"


@lru_cache(maxsize=1)
def book() -> Rulebook:
    return load_rulebook()


@lru_cache(maxsize=16)
def desk(name: str) -> Desk:
    return Desk(open_plan(str(SPECS / f"{name}.plan")), book(), DAY, "imperial")


def plan_of(text: str) -> PlanText:
    def read_none(used: str) -> str:
        raise CannotRead("there is no such file")

    return PlanText(text, "a.plan", read_none)


def marks(text: str, name: str) -> dict[str, str]:
    plan = PlanText(text, name, desk(Path(name).stem).plan.read)
    found = review(plan, book(), DAY)
    assert not found.mistakes
    return {ruling.mark: ruling.grade for ruling in found.rulings}


@pytest.mark.parametrize("name", CALM)
def test_every_offer_clears_its_finding_and_raises_no_hold(name: str) -> None:
    at = desk(name)
    for ruling in at.findings.values():
        found, none = at.offers(ruling)
        assert bool(found) != (none is not None)
        for offer in found:
            after = at.found_with(offer.cure.changes)
            assert ruling.mark not in after
            new = set(after) - set(at.findings)
            assert not [mark for mark in new if after[mark].grade == "hold"]
            assert {one.mark for one in offer.brings} >= new


@pytest.mark.parametrize("name", CALM)
def test_the_text_as_written_says_what_was_tried(name: str) -> None:
    at = desk(name)
    seen = set()
    for ruling in at.findings.values():
        for offer in at.offers(ruling)[0]:
            if offer.cure.edits and offer.cure.changes not in seen:
                seen.add(offer.cure.changes)
                text = with_edits(at.plan.text, offer.cure.edits)
                tried = {mark: one.grade for mark, one in at.found_with(offer.cure.changes).items()}
                assert marks(text, at.plan.name) == tried, offer.cure.changes


@pytest.mark.parametrize(
    ("name", "grade"), [*((name, "hold") for name in CALM), ("tamarack-point", "revise"), ("cedar-spit", "note")]
)
def test_the_set_clears_leaves_and_needs_each_of_its_changes(name: str, grade: str) -> None:
    at = desk(name)
    whole = cure_set(at, grade)  # type: ignore[arg-type]
    after = marks(with_edits(at.plan.text, at.writer.edits(whole.changes)), at.plan.name)
    least = GRADES.index(grade)  # type: ignore[arg-type]
    remain = {mark for mark, found in after.items() if GRADES.index(found) <= least}  # type: ignore[arg-type]
    assert remain == {f"{none.rule} on {none.element}" for none in whole.left}
    assert not [mark for mark in after if after[mark] == "hold" and mark not in at.findings]
    for change in whole.changes:
        fewer = at.found_with([other for other in whole.changes if other.element != change.element])
        assert len([one for one in fewer.values() if GRADES.index(one.grade) <= least]) > len(remain)


def test_a_cure_of_a_number_is_the_least_in_its_increments() -> None:
    at = desk("tamarack-point")
    ruling = at.findings["chimney-without-cricket on chimney hearth"]
    (offer,), _ = at.offers(ruling)
    (change,) = offer.cure.changes
    assert change == Change("chimney hearth", "cricket", '20"', '0"')
    less = Change("chimney hearth", "cricket", '18"', '0"')
    assert ruling.mark in at.found_with([less])


def test_settings_of_one_element_go_together_where_neither_is_enough() -> None:
    at = desk("tamarack-point")
    ruling = at.findings["log-end-past-drip-line on corner sw"]
    (offer,), _ = at.offers(ruling)
    assert [change.setting for change in offer.cure.changes] == ["ends", "lowest ends"]
    for change in offer.cure.changes:
        assert ruling.mark in at.found_with([change])


def test_what_a_professional_decides_is_never_changed() -> None:
    for name in CALM:
        at = desk(name)
        changes = [
            change for ruling in at.findings.values() for offer in at.offers(ruling)[0] for change in offer.cure.changes
        ]
        assert changes or name == "quiet-harbor"
        for change in changes:
            kind = change.element.split(" ")[0]
            assert (kind, change.setting) not in PROFESSIONAL
            assert change.setting != "engineered"
            assert kind != "site"


def test_the_settings_left_to_others_are_settings() -> None:
    for kind, setting in PROFESSIONAL | MEANT:
        assert setting in settings_of(KINDS[kind]), (kind, setting)
    assert "licensed engineer" in refusal("porch", "engineered")
    assert "fact of the lot" in refusal("site", "soil")
    assert refusal("roof", "eaves") == ""


def test_no_wood_is_told_to_be_drier_than_it_comes() -> None:
    assert refusal("wall", "moisture") == "what the house is, and no small change"


def test_a_refused_finding_says_who_decides() -> None:
    at = desk("tamarack-point")
    found, none = at.offers(at.findings["ledger-on-stacked-logs on ledger lake"])
    assert found == []
    assert none is not None
    assert "licensed engineer" in none.why


@pytest.mark.parametrize(
    ("stated", "mark", "says"),
    [
        ("ground snow 70 psf; frost depth 60\"", "site-facts-missing", "“weather”, “termites” and “ice barrier” of"),
        ("weather \"Marquette, MI\"; ground snow 70 psf; frost depth 60\"; ice barrier yes", "site-facts-missing",
         "“termites” of site"),
        ("weather \"Marquette, MI\"", "weather-record-far-off", "“weather”, “rain wind”"),
    ],
)  # fmt: skip
def test_a_refusal_names_what_is_left_out_where_that_is_the_finding(stated: str, mark: str, says: str) -> None:
    at = Desk(plan_of(f"site {{ {stated} }}"), book(), DAY, "imperial")
    found, none = at.offers(at.findings[f"{mark} on site"])
    assert found == []
    assert none is not None
    assert none.why.startswith(says)
    assert "of site: a fact of the lot" in none.why


HOUSE = """
site { weather "Marquette, MI"; ground snow 70 psf; frost depth 60"; termites slight; ice barrier yes }
typical wall { build log round 10"; species eastern white pine; starts 9" above grade }
wall south { faces S; length 40'; height 9' }
wall north { faces N; length 40'; height 9'; starts 20" }
"""


def test_what_a_variance_accepts_is_left_alone() -> None:
    accepted = (
        'variance sill-too-near-grade on wall south { because "stone skirt"; accepted by "J. Moreau"; '
        "until 2099-01-01 }\n"
    )
    before = Desk(plan_of(HOUSE), book(), DAY, "imperial")
    after = Desk(plan_of(HOUSE + accepted), book(), DAY, "imperial")
    assert "sill-too-near-grade on wall south" in before.findings
    assert "sill-too-near-grade on wall south" not in after.findings
    changed = {
        (change.element, change.setting)
        for ruling in after.findings.values()
        for offer in after.offers(ruling)[0]
        for change in offer.cure.changes
    }
    assert ("wall south", "starts") not in changed


def test_a_value_of_a_typical_is_overridden_in_the_element() -> None:
    at = Desk(plan_of(HOUSE), book(), DAY, "imperial")
    cure = offers(at.plan, book(), DAY, "imperial", at.findings["sill-too-near-grade on wall south"])[0]
    text = with_edits(HOUSE, cure.edits)
    assert f"height 9';  starts {cure.changes[0].text} }}" in text
    assert 'typical wall { build log round 10"; species eastern white pine; starts 9" above grade }' in text


def test_an_alternate_makes_the_same_changes() -> None:
    at = desk("tamarack-point")
    whole = cure_set(at, "hold")
    text = at.plan.text + alternate_text("cured", at.widened(whole.changes))
    found = review(PlanText(text, at.plan.name, at.plan.read), book(), DAY, alternate="cured")
    assert not found.mistakes
    assert {ruling.mark for ruling in found.rulings} == set(at.found_with(whole.changes))


TWO_ROOFS = """
site { weather "Marquette, MI"; ground snow 70 psf; frost depth 60" }
typical wall { build log round 10"; species eastern white pine; seasoning kiln-dried to 15% }
wall south, west { length 30'; height 9'-6"; starts 9" above grade; ground paving }
roof main { covers south; form shed; pitch 3:12; eaves 1'-0"; rakes 1'-0"; covering standing seam; run 12' }
roof shed { covers west; form shed; pitch 3:12; eaves 2'-0"; rakes 1'-0"; covering standing seam; run 10' }
"""
SOUTH, WEST = (f"snow-banked-against-wood on wall {name}" for name in ("south", "west"))


def test_a_change_is_told_of_every_element_of_its_block() -> None:
    at = Desk(plan_of(TWO_ROOFS), book(), DAY, "imperial")
    assert (Change("wall south", "starts", '20"'), Change("wall west", "starts", '20"')) == at.widened(
        [Change("wall west", "starts", '20"')]
    )
    assert (Change("roof main", "eaves", "2'"),) == at.widened([Change("roof main", "eaves", "2'")])


@pytest.mark.parametrize("marks", [(SOUTH, WEST), (WEST, SOUTH)])
def test_of_two_values_of_one_block_that_which_clears_both_is_taken(marks: tuple[str, str]) -> None:
    at = Desk(plan_of(TWO_ROOFS), book(), DAY, "imperial")
    gathered = Gathered(at)
    for mark in marks:
        assert "" == gathered.take(mark, at.offers(at.findings[mark])[0][0].cure.changes)
    wanted = {at.offers(at.findings[mark])[0][0].cure.changes[0].text for mark in marks}
    (change,) = gathered.changes
    assert (2, '40"', set()) == (len(wanted), change.text, set(marks) & set(at.found_with(gathered.changes)))


@pytest.mark.parametrize(
    ("change", "says"),
    [
        (
            Change("wall west", "starts", '8"'),
            'wall west wants starts 8" and wall south starts 40", and no one value clears both; '
            "give each a block of its own",
        ),
        (Change("wall south", "starts", '8"'), 'wants starts 8", and another finding starts 40"; cure them in turn'),
        (
            Change("roof main", "eaves", "2'"),
            "its cure does not stand together with those of the others; cure them in turn",
        ),
    ],
)
def test_cures_that_clash_are_told_and_not_taken(change: Change, says: str) -> None:
    at = Desk(plan_of(TWO_ROOFS), book(), DAY, "imperial")
    gathered = Gathered(at)
    first = (Change("wall south", "starts", '40"'),)
    assert "" == gathered.take(SOUTH, first)
    assert says == gathered.take("site-facts-missing on site", (change,))
    assert (first, (SOUTH,)) == (gathered.changes, gathered.cleared)


def test_one_block_is_not_made_to_state_two_values() -> None:
    at = Desk(plan_of(TWO_ROOFS), book(), DAY, "imperial")
    for setting, texts in (("starts", ('8"', '20"')), ("top", ('8"', '20"'))):
        changes = [Change("wall south", setting, texts[0]), Change("wall west", setting, texts[1])]
        with pytest.raises(CannotEdit, match=f'one block cannot state both {setting} 8" and {setting} 20"'):
            at.writer.edits(changes)


def test_a_set_changes_each_setting_of_a_block_once() -> None:
    at = Desk(plan_of(TWO_ROOFS), book(), DAY, "imperial")
    changes = cure_set(at, "note").changes
    assert len({at.written_at(change) for change in changes}) == len(changes) > 1
    after = review(plan_of(with_edits(TWO_ROOFS, at.writer.edits(changes))), book(), DAY)
    assert set(at.found_with(changes)) == {ruling.mark for ruling in after.rulings}


@pytest.mark.parametrize(
    "variance", ["", 'variance rake-too-short on wall south { because "x"; accepted by "J. M."; until 2020-01-01 }\n']
)
def test_the_rulings_on_the_desk_are_those_of_the_review(variance: str) -> None:
    plan = plan_of(f"{TWO_ROOFS}{variance}")
    at = Desk(plan, book(), DAY, "imperial")
    told = [ruling.mark for ruling in review(plan, book(), DAY).rulings]
    assert (told, bool(variance)) == ([ruling.mark for ruling in at.rulings], set(told) > set(at.findings))


def test_increments_stay_in_the_writers_units() -> None:
    eaves = settings_of(KINDS["roof"])["eaves"]
    up, down = steps(eaves, 0.4572, "1'-6\"", "imperial")
    assert [up(1), up(2), down(1)] == ['20"', '22"', '16"']
    up, down = steps(eaves, 0.45, "450 mm", "imperial")
    assert [up(1), down(1)] == ["500 mm", "400 mm"]
    starts = settings_of(KINDS["wall"])["starts"]
    up, down = steps(starts, 9 * 0.0254, '9"', "imperial")
    assert [up(1), down(1)] == ['12"', '8"']


def test_every_step_can_be_read_again() -> None:
    for kind, model in KINDS.items():
        for setting in settings_of(model).values():
            for way in steps(setting, 0.3, setting.example.split(" on ")[0], "imperial"):
                value = read(setting, way(3))
                assert value is None or isinstance(value, float | int), (kind, setting.name, way(3))


def test_effects_tell_what_a_wider_rake_does() -> None:
    at = desk("tamarack-point")
    effects = Effects(at.sheet, demo_rates(), 30, "imperial")
    assert effects.of(at.sheet).shifts == ()
    assert effects.of(at.sheet).upkeep == 0
    effect = effects.of(at.trial([Change("roof main", "rakes", "3'", "1'-0\"")]))
    rain = {shift.element: shift for shift in effect.shifts if shift.measure == "rain share"}
    assert rain["wall west"].better
    assert effect.upkeep is not None
    assert effect.upkeep < 0
