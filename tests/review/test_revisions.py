"""Two revisions of a plan compared: names and lines may move, causes are counted once, and the two sides mirror."""

from __future__ import annotations

import re
from dataclasses import replace

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from speclint.pipeline import PlanText, read_home, review
from speclint.review.judge import judge
from speclint.review.renames import match_elements
from speclint.review.revisions import Comparison, Revision, all_new, compare
from speclint.review.turns import Turn, turn_word
from speclint.ruling import Ruling
from speclint.units import System
from tests.laws.houses import PLANS, example
from tests.laws.houses import read as read_example
from tests.model.plans import plans
from tests.specs.expected import DAY, book

LOW = 'wall west { build log round 10"; starts 4"; faces W; length 30\' }\n'
VARIANCE = 'variance sill-too-near-grade on wall west { because "a"; accepted by "A. Tester"; until 2027-01-01 }\n'


def revision(text: str, day: str = DAY, system: System = "imperial") -> Revision:
    plan = PlanText(text, "a.plan", read_example)
    sheet, _ = read_home(plan)
    return Revision(sheet, review(plan, book(), day, system), tuple(judge(sheet, book(), system)[0]))


def compared(old: str, new: str, old_day: str = DAY, new_day: str = DAY) -> Comparison:
    return compare(revision(old, old_day), revision(new, new_day), book(), "imperial")


def of_rule(found: Comparison, rule: str) -> list[tuple[str, str]]:
    return [(turn.word, turn.told.element) for turn in found.turns if turn.told.rule == rule]


def turn_of(found: Comparison, rule: str) -> Turn:
    (turn,) = (turn for turn in found.turns if turn.told.rule == rule)
    return turn


def test_a_lower_wall_lacks_more_and_a_higher_one_less() -> None:
    lower, higher = compared(LOW, LOW.replace('4"', '3"')), compared(LOW, LOW.replace('4"', '5"'))
    assert ([("more lacking", "wall west")], [("less lacking", "wall west")]) == (
        of_rule(lower, "sill-too-near-grade"),
        of_rule(higher, "sill-too-near-grade"),
    )


def test_a_margin_that_moves_within_rounding_is_the_same() -> None:
    found = compared(LOW, LOW.replace('4"', "101.6004 mm"))
    assert ([], []) == (of_rule(found, "sill-too-near-grade"), list(found.notes))


@pytest.mark.parametrize(
    ("old", "new", "expected"),
    [('4"', '10"', "milder"), ('10"', '4"', "graver"), ('4"', '40"', "cured"), ('40"', '4"', "new")],
)
def test_a_grade_that_changes_is_told_as_such(old: str, new: str, expected: str) -> None:
    found = compared(LOW.replace('4"', old), LOW.replace('4"', new))
    assert [(expected, "wall west")] == of_rule(found, "sill-too-near-grade")


def test_a_setting_taken_out_is_no_cure_but_a_finding_that_cannot_be_judged_any_more() -> None:
    found = compared(LOW, LOW.replace('starts 4"; ', ""))
    turn = turn_of(found, "sill-too-near-grade")
    assert ("not judged", "worse", ("wall west", "starts", '4"')) == (
        turn.word,
        turn.way,
        next((one.element, one.setting, one.answer) for one in found.opened if one.setting == "starts"),
    )


def test_a_question_that_is_answered_is_told_with_the_answer() -> None:
    found = compared(LOW, LOW.replace("faces W", "faces W; bark peeled"))
    assert ([("wall west", "bark", "peeled")], []) == (
        [(one.element, one.setting, one.answer) for one in found.answered],
        [one for one in found.opened if one.setting == "bark"],
    )


def test_a_finding_that_an_answer_brings_says_that_it_could_not_be_judged_before() -> None:
    found = compared(LOW.replace('starts 4"; ', ""), LOW)
    assert "could not be judged before" == turn_of(found, "sill-too-near-grade").why


@pytest.mark.parametrize("name", PLANS)
def test_a_plan_compared_with_itself_is_unchanged_though_its_lines_move(name: str) -> None:
    text = example(name)
    assert compared(text, "# a note\n\n\n" + text).nothing


def test_a_wall_by_another_name_is_the_same_wall_and_what_names_it_follows() -> None:
    text = example("tamarack-point")
    found = compared(text, re.sub(r"\bwest\b", "lakeside", text))
    assert ({"wall west": "wall lakeside"}, (), (), (), ()) == (
        dict(found.elements.renamed),
        found.elements.added,
        found.elements.removed,
        found.turns,
        found.notes,
    )


@pytest.mark.parametrize(("until", "rule"), [("2020-01-01", "variance-expired"), ("2099-01-01", "variance-too-broad")])
def test_a_finding_on_a_variance_follows_the_element_by_its_new_name(until: str, rule: str) -> None:
    old = LOW + VARIANCE.replace("2027-01-01", until)
    found = compared(old, old.replace("west", "lakeside"))
    assert ({"wall west": "wall lakeside"}, (), ()) == (dict(found.elements.renamed), found.turns, found.variances)
    assert any(one.rule == rule for one in found.review.rulings)


def test_a_variance_on_another_element_is_another_finding() -> None:
    old = LOW + LOW.replace("west", "east") + VARIANCE.replace("2027-01-01", "2020-01-01")
    found = compared(old, old.replace("on wall west", "on wall east"))
    told = [(turn.word, turn.told.element) for turn in found.turns if turn.told.rule == "variance-expired"]
    element = "variance sill-too-near-grade on wall {}"
    assert [("new", element.format("east")), ("cured", element.format("west"))] == told


def test_of_two_renamed_walls_each_finds_the_one_that_is_most_like_it() -> None:
    old = "wall a { faces N; length 30'; height 9' }\nwall b { faces S; length 46'; height 9' }\n"
    new = "wall c { faces S; length 46'; height 10' }\nwall d { faces N; length 30'; height 9' }\n"
    assert {"wall a": "wall d", "wall b": "wall c"} == dict(compared(old, new).elements.renamed)


def test_equally_alike_walls_are_matched_in_the_order_of_the_plan() -> None:
    old, new = ("".join(f"wall {name} {{ length 30' }}\n" for name in names) for names in ("ab", "cd"))
    assert {"wall a": "wall c", "wall b": "wall d"} == dict(compared(old, new).elements.renamed)


def test_a_wall_unlike_any_other_is_gone_and_not_renamed() -> None:
    found = compared("wall a { faces N; length 30' }\n", "wall b { faces S; length 46' }\n")
    assert ((), ("wall b",), ("wall a",)) == (
        tuple(found.elements.renamed),
        found.elements.added,
        found.elements.removed,
    )


def test_what_a_typical_gives_to_all_does_not_make_two_walls_alike() -> None:
    typical = 'typical wall { build log round 10"; starts 20"; ground gravel }\n'
    found = compared(f"{typical}wall a {{ faces N; length 30' }}\n", f"{typical}wall b {{ faces S; length 46' }}\n")
    assert (("wall b",), ("wall a",)) == (found.elements.added, found.elements.removed)


def test_an_element_of_another_kind_is_never_the_same() -> None:
    found = compared("window a { width 3'; height 5' }\n", "door a { width 3'; height 5' }\n")
    assert (("door a",), ("window a",)) == (found.elements.added, found.elements.removed)


def test_a_finding_of_an_element_that_is_gone_is_cured_and_says_why() -> None:
    kept = "wall far { faces E; length 12' }\n"
    turn = turn_of(compared(LOW + kept, kept), "sill-too-near-grade")
    assert ("cured", "wall west is gone") == (turn.word, turn.why)


def test_a_changed_setting_is_told_before_and_after_in_the_units_of_the_reader() -> None:
    found = compared(LOW, LOW.replace('starts 4"', "starts 254 mm"))
    assert [("wall west", "starts", '4"', '10"')] == [
        (note.element, note.setting, note.before, note.after) for note in found.notes
    ]


def test_an_assumption_that_is_settled_is_a_change_though_the_value_is_the_same() -> None:
    found = compared(LOW.replace('starts 4"', 'starts assumed 4"'), LOW)
    assert [('assumed 4"', '4"')] == [(note.before, note.after) for note in found.notes]


def test_parts_named_in_another_order_are_the_same_parts() -> None:
    walls = "wall a { length 30' }\nwall b { length 46' }\n"
    assert () == compared(f"{walls}roof main {{ covers a, b }}", f"{walls}roof main {{ covers b, a }}").notes


def test_a_variance_takes_the_finding_out_of_what_counts() -> None:
    found = compared(LOW, LOW + VARIANCE)
    assert ([("accepted", "wall west")], [], [("sill-too-near-grade", "wall west")]) == (
        of_rule(found, "sill-too-near-grade"),
        [turn for turn in found.got("worse") if turn.told.rule == "sill-too-near-grade"],
        [(one.rule, one.element) for one in found.variances if one.before is None],
    )


def test_a_finding_that_a_variance_covers_and_that_grows_worse_is_told_and_not_counted() -> None:
    found = compared(LOW + VARIANCE, LOW.replace('4"', '2"') + VARIANCE)
    assert ([("more lacking", "wall west")], []) == (
        of_rule(found, "sill-too-near-grade"),
        [turn for turn in found.got("worse") if turn.told.rule == "sill-too-near-grade"],
    )


@pytest.mark.parametrize(
    ("new", "day", "why"),
    [(LOW, DAY, "the variance was taken out"), (LOW + VARIANCE, "2027-02-01", "the variance expired on 2027-01-01")],
)
def test_a_finding_is_back_when_its_variance_is_taken_out_or_expires(new: str, day: str, why: str) -> None:
    turn = turn_of(compared(LOW + VARIANCE, new, DAY, day), "sill-too-near-grade")
    assert ("back", "worse", why) == (turn.word, turn.way, why if why in turn.why else turn.why)


def test_a_variance_that_says_another_day_is_told() -> None:
    (turn,) = compared(LOW + VARIANCE, LOW + VARIANCE.replace("2027-01-01", "2028-01-01")).variances
    assert turn.before is not None
    assert turn.after is not None
    assert ("2027-01-01", "2028-01-01") == (turn.before.variance.until, turn.after.variance.until)


HIDDEN = (
    'site { weather "Marquette, MI" }\n'
    'wall west { build log round 10"; starts 6"; height 9\'; ground paving; paving 2%; faces W }\n'
    "roof main { covers west; form gable; eaves 1'; gutters none }\n"
)


def test_a_cause_that_another_rule_tells_is_neither_new_nor_cured() -> None:
    bare = HIDDEN.replace("ground paving", "ground gravel")
    out, back = compared(HIDDEN, bare), compared(bare, HIDDEN)
    rules = ("sill-too-near-grade", "hard-surface-under-free-eave")
    expected = [("told anew", rules[1], rules[0])], [("told anew", rules[0], rules[1])]
    assert expected == (_anew(out, rules), _anew(back, rules))


EAVES = """
site {{ weather "Marquette, MI"; terrain open water; rain wind SW }}
wall south {{ faces S; length 40'; height 9'; starts 20"; build log round 10"; overhang {reach} }}
roof main {{ covers south; form gable; pitch 8:12; eaves 2'; rakes 1'; gutters none }}
"""


@pytest.mark.parametrize(
    ("old", "new", "way"), [("1'-8\"", '12"', "worse"), ('12"', "1'-8\"", "better"), ("2'", '12"', "worse")]
)
def test_a_finding_that_lacks_more_got_worse_whatever_rule_tells_it_now(old: str, new: str, way: str) -> None:
    found = compared(EAVES.format(reach=old), EAVES.format(reach=new))
    assert [] != [turn for turn in found.turns if turn.way == way]


def test_a_variance_that_takes_out_one_rule_makes_what_it_hid_no_better() -> None:
    accepted = HIDDEN + VARIANCE.replace("sill-too-near-grade", "hard-surface-under-free-eave")
    found = compared(HIDDEN, accepted)
    assert [("told anew", ""), ("accepted", "")] == [(turn.word, turn.way) for turn in found.turns]


def _anew(found: Comparison, rules: tuple[str, ...]) -> list[tuple[str, str, str]]:
    return [
        (turn.word, turn.before.rule if turn.before else "", turn.after.rule if turn.after else "")
        for turn in found.turns
        if turn.told.rule in rules
    ]


def test_a_wider_eave_makes_the_weather_on_a_wall_better_and_a_narrower_one_worse() -> None:
    text = example("tamarack-point")
    wide = text.replace("eaves 1'-6\"", "eaves 3'-0\"")
    ways = [
        {shift.better for shift in found.shifts if (shift.element, shift.measure) == ("wall north", "rain share")}
        for found in (compared(text, wide), compared(wide, text))
    ]
    assert [{True}, {False}] == ways


def test_a_mistake_is_new_wherever_lines_have_gone_and_the_old_one_is_not() -> None:
    found = compared("wall a { heigth 9' }\n", "\n\nwall a { heigth 9' }\nwall b { lenght 9' }\n")
    assert (1, 0, 4) == (len(found.mistakes), len(found.mended), found.mistakes[0].line)


def test_in_a_plan_that_was_not_there_before_every_finding_is_new() -> None:
    new = revision(LOW).review
    assert [("new", ruling.mark) for ruling in new.rulings] == [
        (turn.word, turn.told.mark) for turn in all_new(new).turns
    ]


def a_ruling() -> Ruling:
    return next(one for one in revision(LOW).review.rulings if one.rule == "sill-too-near-grade")


def test_a_margin_against_something_else_is_neither_better_nor_worse() -> None:
    one = a_ruling()
    other = one._replace(margin=-1.0, stated="7 in", stated_number=7.0, evidence=())
    assert "otherwise" == turn_word(one, other)


def test_a_rule_that_forbids_counts_the_size_of_its_margin() -> None:
    one = a_ruling()._replace(margin=4.0)
    assert "more lacking" == turn_word(one, one._replace(margin=5.0, stated="3 in", stated_number=3.0))


@given(plans())
@settings(max_examples=25)
def test_any_plan_compared_with_itself_has_not_changed(text: str) -> None:
    found = revision(text)
    assert compare(found, found, book(), "imperial").nothing


MIRRORED = {"new": "cured", "graver": "milder", "more lacking": "less lacking", "told anew": "told anew"}


def mirrors(one: str, other: str) -> None:
    """Hold a comparison against the comparison the other way round."""
    old, new = revision(one), revision(other)
    there, back = compare(old, new, book(), "imperial"), compare(new, old, book(), "imperial")
    names = there.elements.kept
    assert {new: old for old, new in names.items()} == dict(back.elements.kept)
    for came, went in (*MIRRORED.items(), *((went, came) for came, went in MIRRORED.items())):
        assert marks(there, came, {}) == marks(back, went, names), (came, went)
    assert {(one.element, one.setting) for one in there.opened} == {
        (names.get(one.element, one.element), one.setting) for one in back.answered
    }
    assert {(one.element, one.setting, one.before, one.after) for one in there.notes} == {
        (names[one.element], one.setting, one.after, one.before) for one in back.notes
    }


def marks(found: Comparison, word: str, names: dict[str, str]) -> set[str]:
    """The findings that a comparison tells under a word, apart from those that an answer brought or took."""
    rulings = [
        turn.before if word == "told anew" and names else turn.told
        for turn in found.turns
        if turn.word == word and turn.why != "could not be judged before"
    ]
    return {f"{one.rule} on {names.get(one.element, one.element)}" for one in rulings if one is not None}


@given(plans(), plans())
@settings(max_examples=30)
def test_the_two_sides_of_any_two_plans_mirror_each_other(one: str, other: str) -> None:
    mirrors(one, other)


LINES = example("tamarack-point").splitlines(keepends=True)


def without(taken: set[int]) -> str:
    return "".join(line for at, line in enumerate(LINES) if at not in taken or line.rstrip().endswith(("{", "}")))


@given(st.sets(st.integers(0, len(LINES) - 1), max_size=12), st.sets(st.integers(0, len(LINES) - 1), max_size=12))
def test_the_two_sides_of_a_house_mirror_each_other_whatever_lines_it_lacks(one: set[int], other: set[int]) -> None:
    mirrors(without(one), without(other))


@given(plans(), plans())
@settings(max_examples=30)
def test_elements_are_matched_one_to_one_and_within_their_kind(one: str, other: str) -> None:
    old, new = revision(one), revision(other)
    found = match_elements(old.sheet, new.sheet)
    assert len(set(found.kept.values())) == len(found.kept)
    assert all(before.split()[0] == after.split()[0] for before, after in found.kept.items())
    assert {*found.kept, *found.removed} == set(old.sheet.home.elements)
    assert {*found.kept.values(), *found.added} == set(new.sheet.home.elements)


ALTERNATES = 'alternate "low" { wall west { starts 5" } }\nalternate "east" { wall east { starts 20" } }\n'


def with_alternates(text: str) -> Revision:
    plan = PlanText(text, "a.plan", read_example)
    others = {}
    for name in read_home(plan)[0].home.alternates:
        sheet, _ = read_home(plan, name)
        told = review(plan, book(), DAY, "imperial", name)
        others[name] = Revision(sheet, told, tuple(judge(sheet, book(), "imperial")[0]))
    return replace(revision(text), alternates=others)


def alternates_of(old: str, new: str) -> list[tuple[str, str, list[tuple[str, str]], list[tuple[str, str]]]]:
    found = compare(with_alternates(old), with_alternates(new), book(), "imperial")
    assert found.nothing is not bool(found.alternates or found.turns or found.notes)
    return [
        (
            one.name,
            one.state,
            [(turn.word, turn.told.element) for turn in one.turns if turn.told.rule == "sill-too-near-grade"],
            [(note.before, note.after) for note in one.notes],
        )
        for one in found.alternates
    ]


def test_an_alternate_that_changed_alone_is_told_with_its_findings() -> None:
    new = ALTERNATES.replace('5"', '3"')
    assert [("low", "both", [("more lacking", "wall west")], [('5"', '3"')])] == alternates_of(
        LOW + ALTERNATES, LOW + new
    )


def test_an_alternate_that_is_new_or_gone_is_told_by_its_name() -> None:
    old = LOW + ALTERNATES
    assert [("tall", "added", [], []), ("low", "removed", [], [])] == alternates_of(old, old.replace('"low"', '"tall"'))


def test_what_changed_in_the_plan_as_drawn_is_not_told_once_more_for_every_alternate() -> None:
    old = LOW + ALTERNATES
    assert [] == alternates_of(old, old.replace("faces W; length 30'", "faces W; length 31'"))
    assert [] == alternates_of(old, old.replace('starts 4"', 'starts 3"'))


def test_alternates_that_stay_as_they_are_are_no_change() -> None:
    assert [] == alternates_of(LOW + ALTERNATES, "# a note\n" + LOW + ALTERNATES)


def test_an_element_that_an_alternate_alone_adds_is_told() -> None:
    new = ALTERNATES.replace("wall east { s", "deck low { surface 4' above grade }; wall east { s")
    found = compare(with_alternates(LOW + ALTERNATES), with_alternates(LOW + new), book(), "imperial")
    assert [("east", ("deck low",), ())] == [(one.name, one.added, one.removed) for one in found.alternates]
