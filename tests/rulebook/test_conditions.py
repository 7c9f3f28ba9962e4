"""What each form of a condition answers, by all three readings of it, and what is told of it; worked by hand."""

from __future__ import annotations

from typing import Any

import pytest

from speclint.language.parse import parse
from speclint.measures.facts import Sheet
from speclint.model.build import build
from speclint.rulebook.book import read_rulebook
from speclint.rulebook.compile import SLACK, pick
from speclint.rulebook.lacking import Lacking
from speclint.rulebook.names import choices_of, relation
from speclint.rulebook.page import read_page
from speclint.rulebook.rule import BrokenRulebook
from speclint.rulebook.weigh import Answer, Weigher
from tests.rulebook.test_rule_language import HEAD, TAIL, book, page, refused, ruled

PLAN = """
site { frost depth 60" }
wall a { height 9'; starts 18"; length 40'; build log round 10"; scribed yes; grade 5%; course 0.3 m }
wall bare { height 9' }
window one { wall a; sill 3'; height 4' }
window two { wall a; sill 2'; height 5' }
door front { wall a; sill 0"; height 7' }
window open { wall bare; height 4' }
roof main { covers a; pitch 6:12; eaves 2' }
"""
LIMITS = """limit low 8' ours "x"
limit high 10' ours "x"
limit small 4 ft2 ours "x"
limit flat 4% ours "x"
limit steep 60% ours "x"
"""


def weighed(condition: str, label: str = "wall a", kind: str = "wall") -> Answer:
    """The answer of a condition for an element, the same by all readings of it."""
    made = book(f"about {kind}\n{LIMITS}require {condition} otherwise hold")
    rule = made.rules[0]
    home, mistakes = build([parse(PLAN, "plan")], "plan")
    assert () == mistakes
    facts = Sheet(home)
    limits = {limit.name: limit for limit in rule.limits}
    answer = Weigher(limits).condition(rule.tiers[0].condition, facts[label])
    holds, lost = Lacking(rule).tiers[0](facts[label])
    judged = made.judges[kind](facts[label])
    assert (answer.holds, answer.missing) == (holds, lost)
    assert ([] if holds else [(0, 0, holds, True)]) == judged
    return answer


@pytest.mark.parametrize(
    ("condition", "holds"),
    [
        ("height >= low", True),
        ("height <= low", False),
        ("height > low", True),
        ("height < low", False),
        ("height < high", True),
        ("height > high", False),
        ("height + starts > high", True),
        ("height - starts < low", True),
        ("height - starts + starts >= low", True),
        ("height * 2 > high", True),
        ("height / 2 < low", True),
        ("2 * height > high", True),
        ("height * starts > small", True),
        ("height * starts < small", False),
        ("height / starts > 5.9", True),
        ("height / starts < 6.1", True),
        ("height / starts > 6.1", False),
        ("length * grade < low", True),  # 2 ft
        ("grade >= flat", True),
        ("grade > steep", False),
        ("flat <= grade", True),
        ("larger (height, length) > high", True),
        ("smaller (height, length) > high", False),
        ("larger (starts, height) < high", True),
        ("smaller (starts, height) < low", True),
        ("largest sill of windows < low", True),
        ("largest sill of windows > starts", True),
        ("largest sill of windows > smallest sill of windows", True),
        ("smallest sill of windows > starts * 2", False),
        ("smallest sill of windows * 2 > starts", True),
        ("number of windows > 1", True),
        ("number of windows >= 2", True),
        ("number of windows > 2", False),
        ("number of doors < 2", True),
        ("number of porches >= 1", False),
        ("every windows has ( sill > starts of wall )", True),
        ("every windows has ( height <= sill )", False),
        ("some windows has ( height * 2 > low )", True),
        ("some windows has ( sill < starts of wall )", False),
        ("every porches has ( depth > low )", True),
        ("some porches has ( depth > low )", False),
        ("scribed is yes", True),
        ("scribed is no", False),
        ("scribed is not no", True),
        ("scribed is not yes", False),
        ("build is one of log round, log square", True),
        ("build is one of log D, log square", False),
        ("height is stated", True),
        ("height is not stated", False),
        ("bark is stated", False),
        ("bark is not stated", True),
        ("bark is peeled", None),
        ("bark is not peeled", None),
        ("not scribed is yes", False),
        ("not scribed is no", True),
        ("not bark is peeled", None),
        ("peak > low", None),
        ("peak + height > low", None),
        ("height + peak > low", None),
        ("larger (peak, height) > low", None),
        ("smaller (height, peak) > low", None),
        ("pitch of roof > steep", False),
        ("pitch of roof < steep", True),
        ("eaves of roof < low", True),
        ("roof is stated", True),
        ("frost depth of site < low", True),
        ("width of chimney > low", None),
        ("height >= 0", True),
        ("height > 0 and scribed is yes and build is log round", True),
        ("scribed is no or scribed is yes or bark is peeled", True),
        ("scribed is no or bark is peeled", None),
        ("scribed is yes and bark is peeled", None),
        ("scribed is no and bark is peeled", False),
    ],
)
def test_a_condition_answers_the_same_by_all_three_readings(condition: str, holds: bool | None) -> None:
    assert holds is weighed(condition).holds


@pytest.mark.parametrize(
    ("condition", "holds"),
    [
        ("every windows has ( sill > height )", None),
        ("largest sill of windows > low", None),
        ("some windows has ( sill > height )", None),
        ("height / number of doors > low", None),
        ("number of windows / number of windows >= 1", True),
    ],
)
def test_what_is_not_known_of_a_related_part_is_not_known(condition: str, holds: bool | None) -> None:
    assert holds is weighed(condition, "wall bare").holds


@pytest.mark.parametrize(
    ("condition", "missing"),
    [
        ("peak > low", ["peak of wall a"]),
        ("peak > starts * grade", ["peak of wall a"]),
        ("peak > overhang", ["peak of wall a", "overhang of wall a"]),
        ("peak + overhang > low", ["peak of wall a", "overhang of wall a"]),
        ("larger (peak, overhang) > low", ["peak of wall a", "overhang of wall a"]),
        ("peak > low and scribed is yes and overhang > low", ["peak of wall a", "overhang of wall a"]),
        ("peak > low or overhang > low", ["peak of wall a", "overhang of wall a"]),
        ("rakes of roof > low", ["rakes of roof main"]),
    ],
)
def test_all_that_a_condition_lacks_is_told(condition: str, missing: list[str]) -> None:
    assert missing == [f"{one.setting} of {one.element}" for one in weighed(condition).missing]


def _sides(answer: Answer) -> tuple[Any, str, Any]:
    stated, needed = (None if side is None else side.value for side in (answer.stated, answer.needed))
    return stated, answer.sign, needed


FOOT = 0.3048


@pytest.mark.parametrize(
    ("condition", "stated", "sign", "needed"),
    [
        ("height >= low", 9 * FOOT, ">=", 8 * FOOT),
        ("height > high", 9 * FOOT, ">", 10 * FOOT),
        ("scribed is yes and height > high", 9 * FOOT, ">", 10 * FOOT),
        ("scribed is no or height > low", 9 * FOOT, ">", 8 * FOOT),
        ("scribed is no or height > high", 9 * FOOT, ">", 10 * FOOT),  # neither holds: the one with a size is told
        ("height > low and starts > low", 1.5 * FOOT, ">", 8 * FOOT),
        ("not height > low", 9 * FOOT, "", 8 * FOOT),
        ("scribed is no", "yes", "", "no"),
        ("scribed is not yes", "yes", "", "other than yes"),
        ("build is one of log D, log square", "log round", "", "log D or log square"),
        ("largest height of windows < low", 5 * FOOT, "<", 8 * FOOT),
        ("smallest height of windows < low", 4 * FOOT, "<", 8 * FOOT),
        ("larger (starts, height) < high", 9 * FOOT, "<", 10 * FOOT),
        ("smaller (starts, height) < high", 1.5 * FOOT, "<", 10 * FOOT),
        ("number of windows > 3", 2.0, ">", 3.0),
        ("height is not stated", 9 * FOOT, "", "not stated"),
        ("bark is stated", None, "", "stated"),
        ("height - starts < low", 7.5 * FOOT, "<", 8 * FOOT),
    ],
)
def test_what_is_stated_and_what_is_needed_are_told(condition: str, stated: Any, sign: str, needed: Any) -> None:
    found = _sides(weighed(condition))
    assert (stated, sign, needed) == (
        found[0] if not isinstance(stated, float) else pytest.approx(found[0]),
        found[1],
        found[2] if not isinstance(needed, float) else pytest.approx(found[2]),
    )


@pytest.mark.parametrize(
    ("condition", "part"),
    [
        ("every windows has ( height <= sill )", "window one"),
        ("every windows has ( sill >= height + sill )", "window one"),
        ("some windows has ( sill * 2 <= height )", "window two"),
        ("every windows has ( sill > starts of wall )", "window one"),
        ("some windows has ( sill < starts of wall )", "window one"),
        ("every porches has ( depth > low )", None),
    ],
)
def test_the_part_that_decides_is_told(condition: str, part: str | None) -> None:
    found = weighed(condition).part
    assert part == (None if found is None else found.label)


def test_where_there_is_none_of_a_kind_that_is_told() -> None:
    for words, holds in (("every", True), ("some", False)):
        answer = weighed(f"{words} porches has ( depth > low )")
        assert (holds, "no porche") == (answer.holds, answer.stated.value if answer.stated else "")


def test_all_comparisons_that_fail_together_are_told_and_none_where_one_suffices() -> None:
    both = weighed("height > high and starts > low and scribed is no and course > high")
    assert [1.5 * FOOT, 0.3] == [pytest.approx(one.stated.value) for one in both.also if one.stated]
    assert () == weighed("height > low or starts < low").also


@pytest.mark.parametrize(("sign", "inches"), [(">=", [0, 1, 1]), ("<=", [1, 1, 0]), (">", [0, 0, 1]), ("<", [1, 0, 0])])
def test_lengths_a_thousandth_of_a_millimetre_apart_are_one(sign: str, inches: list[int]) -> None:
    assert 1e-6 == SLACK
    rule = f'about wall\nlimit low 1000 mm ours "x"\nrequire starts {sign} low otherwise hold'
    for off, holds in zip((-0.01, 0.0, 0.01), inches, strict=True):
        for fine in (0.0,) if off else (-0.0005, 0.0, 0.0005):
            trips, _ = ruled(rule, f"wall a {{ starts {1000 + off + fine:.4f} mm }}")
            assert holds == 1 - len(trips)


def test_the_least_or_greatest_of_nothing_or_of_what_is_not_known_is_not_known() -> None:
    assert (None, None, 1, 3) == (pick(max, []), pick(max, [1, None]), pick(min, [3, 1]), pick(max, (3, 1)))


@pytest.mark.parametrize(
    ("rule", "told"),
    [
        ("require height + 2 > low otherwise hold", "a length cannot be compared or added to a count"),
        ("require height + grade > low otherwise hold", "a length cannot be compared or added to a slope"),
        ("require height / grade > low otherwise hold", "a length cannot be divided by a slope"),
        ("require grade / height > 1 otherwise hold", "a slope cannot be divided by a length"),
        ("require height * faces > small otherwise hold", "a length cannot be multiplied by an angle"),
        ("require 2 / height > 1 otherwise hold", "a count cannot be divided by a length"),
        ("require height > flat otherwise hold", "a length cannot be compared or added to a percent"),
        (
            "require 2 * grade > 3 otherwise hold",
            "a bare number cannot be compared with a quantity that has a unit",
        ),
        ("require 3 > height otherwise hold", "a bare number cannot be compared with a quantity that has a unit"),
        ("require bark > bark otherwise hold", "a choice has no size to compare"),
        ("require number of window > 1 otherwise hold", "“window” is one element; many are needed here"),
        ("require largest sill of window > low otherwise hold", "“window” is one element; many are needed here"),
        ("require every windows has ( depth > low ) otherwise hold", "a window has no “depth”"),
        ("require largest depth of windows > low otherwise hold", "a window has no “depth”"),
        ("require faces is south otherwise hold", "“faces” is an angle, not a word"),
        ("require scribed is one of yes, perhaps otherwise hold", "“scribed” is never “perhaps”"),
    ],
)
def test_what_has_no_sense_is_refused(rule: str, told: str) -> None:
    found = refused(f"about wall\n{LIMITS}{rule}")
    assert [told] == [one.split(" ", 1)[1] for one in found]


@pytest.mark.parametrize(
    "rule",
    [
        "require height / height > 1 otherwise hold",
        "require height * 2 / 3 > low otherwise hold",
        "require 2 * grade > flat otherwise hold",
        "require number of windows + 1 > 2 otherwise hold",
        "require height * length / length > low otherwise hold",
        "require 0 < height otherwise hold",
    ],
)
def test_what_has_sense_is_taken(rule: str) -> None:
    text = f"about wall\n{LIMITS}{rule}"
    if "length / length" in rule:
        assert ["an area cannot be divided by a length"] == [one.split(" ", 1)[1] for one in refused(text)]
    else:
        assert 1 == len(book(text).rules)


def test_a_rule_about_two_kinds_needs_its_names_in_both() -> None:
    assert 1 == len(book("about window, door\nrequire sill >= 0 otherwise hold").rules)
    assert ["8:9 a window has no “step”"] == refused("about door, window\nrequire step >= 0 otherwise hold")


def test_three_requirements_are_asked_in_turn() -> None:
    rule = (
        f"about wall\n{LIMITS}require height >= low otherwise hold\n"
        "require starts >= low otherwise revise\nrequire length >= low otherwise note"
    )
    told = {
        plan: ([one.grade for one in trips], [one.grade for one in open_])
        for plan in (
            "height 1'; starts 1'; length 1'",
            "height 9'; starts 1'; length 1'",
            "height 9'; starts 9'; length 1'",
            "height 9'; starts 9'; length 9'",
            "starts 9'; length 9'",
            "height 9'; length 9'",
            "length 9'",
            "height 9'; starts 9'",
            "height 9'",
            "starts 1'",
            "length 1'",
            "height 1'",
            "",
        )
        for trips, open_ in [ruled(rule, f"wall a {{ {plan} }}")]
    }
    assert {
        "height 1'; starts 1'; length 1'": (["hold"], []),
        "height 9'; starts 1'; length 1'": (["revise"], []),
        "height 9'; starts 9'; length 1'": (["note"], []),
        "height 9'; starts 9'; length 9'": ([], []),
        "starts 9'; length 9'": ([], ["hold"]),
        "height 9'; length 9'": ([], ["revise"]),
        "length 9'": ([], ["hold"]),
        "height 9'; starts 9'": ([], ["note"]),
        "height 9'": ([], ["revise"]),
        "starts 1'": (["revise"], ["hold"]),
        "length 1'": (["note"], ["hold"]),
        "height 1'": (["hold"], []),
        "": ([], ["hold"]),
    } == told


def test_where_that_is_not_known_is_asked() -> None:
    rule = f"about wall where scribed is yes\n{LIMITS}require height >= low otherwise hold"
    grades = {
        plan: (len(trips), len(open_))
        for plan in ("scribed yes; height 1'", "scribed no; height 1'", "height 1'", "height 9'", "scribed yes")
        for trips, open_ in [ruled(rule, f"wall a {{ {plan} }}")]
    }
    assert {
        "scribed yes; height 1'": (1, 0),
        "scribed no; height 1'": (0, 0),
        "height 1'": (0, 1),
        "height 9'": (0, 0),
        "scribed yes": (0, 1),
    } == grades


def test_a_page_is_taken_apart_by_its_headings_and_fences() -> None:
    text = (
        "# The title\nlead\n## One\na\n\nb\n```plan\nx\n```\n## Trips it\n```plan\none\ntwo\n```\n"
        "```plan\nthree\n```\n## Cured\n```\nfour\n```\n```rule\nrule r\n```\n```rule\nrule s\n```\n"
    )
    found = read_page(text, "r.md")
    assert ("The title", "r.md") == (found.title, found.file)
    assert {"One": "a\n\nb", "Trips it": "", "Cured": ""} == found.sections
    assert [("one\ntwo\n", 12), ("three\n", 16)] == [(one.text, one.line) for one in found.trips]
    assert [("four\n", 20)] == [(one.text, one.line) for one in found.cured]
    assert found.rule is not None
    assert ("rule r\n", 23) == (found.rule.text, found.rule.line)


@pytest.mark.parametrize(
    ("old", "new", "told"),
    [
        ("## Limits\nx\n", "", "2:1 the page has no heading “Limits”"),
        ("## Cured\n```plan\nwall a { height 9' }\n```\n", "## Cured\nx\n", "2:1 the page needs a plan that trips"),
        ("rule a-rule", "rule b-rule", "2:6 the rule is called “b-rule” and its page “a-rule”"),
        ('group "log walls and courses"', 'group "log wals"', "3:7 “log wals” is no group of the rulebook"),
        ('basis ours "a test"', 'basis irc-2021 "x" rumour', "6:20 “rumour” is no standing"),
        ('because "why"', 'because "{nothing}"', "5:9 nothing is called “nothing” here"),
    ],
)
def test_a_page_that_is_not_whole_is_refused_at_its_place(old: str, new: str, told: str) -> None:
    text = page("about wall\nrequire height >= starts otherwise hold").decode()
    assert old in text
    raw = {"a-rule": ("a-rule.md", text.replace(old, new).encode())}
    with pytest.raises(BrokenRulebook) as trouble:
        read_rulebook(raw)
    assert [True] == [f"{one.line}:{one.column} {one.message}".startswith(told) for one in trouble.value.troubles][:1]


def test_rules_stand_in_the_order_of_groups_and_then_of_names() -> None:
    def text(group: str, name: str) -> bytes:
        head = HEAD.replace("log walls and courses", group)
        return f"```rule\nrule {name}\n{head}about wall\nrequire height >= starts otherwise hold\n```\n{TAIL}".encode()

    pages = {
        "c": "log walls and courses",
        "a": "openings",
        "b": "log walls and courses",
        "d": "site, grade and ground cover",
    }
    made = read_rulebook({name: (f"{name}.md", text(group, name)) for name, group in pages.items()})
    assert ["d", "b", "c", "a"] == [rule.name for rule in made.rules]
    assert ("b", None) == (getattr(made.named("b"), "name", None), made.named("z"))


@pytest.mark.parametrize(
    ("kind", "name", "found"),
    [
        ("wall", "windows", (("window",), True)),
        ("wall", "window", (("window",), False)),
        ("wall", "porches", (("porch",), True)),
        ("wall", "walls", (("wall",), True)),
        ("wall", "height", None),
        ("wall", "cellar", None),
        ("window", "under", (("porch",), False)),
    ],
)
def test_relations_lead_to_one_or_to_many(kind: str, name: str, found: Any) -> None:
    assert found == relation(kind, name)


def test_choices_are_those_of_the_model() -> None:
    assert None is choices_of("wall", "height")
    assert None is choices_of("wall", "no such")
    assert "log round" in (choices_of("wall", "build") or ())
