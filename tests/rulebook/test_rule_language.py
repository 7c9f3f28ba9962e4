"""The rule language: what is refused and where, three-valued answers, inference of what is stated and needed."""

from __future__ import annotations

from itertools import product

import pytest

from speclint.language.parse import parse
from speclint.measures.facts import Sheet
from speclint.model.build import build
from speclint.review.judge import judge, ruling_of, without_superseded
from speclint.rulebook.book import Rulebook, read_rulebook
from speclint.rulebook.compile import every, some
from speclint.rulebook.rule import BrokenRulebook
from speclint.ruling import Ruling

HEAD = """group "log walls and courses"
says "{element} has {stated}; {needed} is needed"
because "why"
basis ours "a test"
"""
TAIL = """
# A title
## What it finds
x
## Why it matters
x
## How to cure it
x
## When to accept it
x
## Trips it
```plan
wall a { height 1' }
```
## Cured
```plan
wall a { height 9' }
```
## Limits
x
## Sources
x
"""


def page(rule: str, name: str = "a-rule") -> bytes:
    return f"```rule\nrule {name}\n{HEAD}{rule}\n```\n{TAIL}".encode()


def book(rule: str, name: str = "a-rule", **others: str) -> Rulebook:
    pages = {name: (f"{name}.md", page(rule, name))}
    pages |= {
        other.replace("_", "-"): (f"{other}.md", page(text, other.replace("_", "-"))) for other, text in others.items()
    }
    return read_rulebook({stem: (f"{stem}.md", raw) for stem, (_, raw) in pages.items()})


def refused(rule: str) -> list[str]:
    with pytest.raises(BrokenRulebook) as trouble:
        book(rule)
    return [f"{one.line}:{one.column} {one.message}" for one in trouble.value.troubles]


def ruled(rule: str, plan: str, **others: str) -> tuple[list[Ruling], list[Ruling]]:
    home, mistakes = build([parse(plan, "plan")], "plan")
    assert () == mistakes
    made = book(rule, **others)
    trips, unanswered = judge(Sheet(home), made, "imperial")
    return without_superseded(trips, made), unanswered


@pytest.mark.parametrize(
    ("rule", "told"),
    [
        ("about wall\nrequire heigth >= starts otherwise hold", ["8:9 a wall has no “heigth”"]),
        ("about wal\nrequire height >= starts otherwise hold", ["7:7 “wal” is not a kind of element"]),
        (
            "about wall\nrequire height >= faces otherwise hold",
            ["8:16 a length cannot be compared or added to an angle"],
        ),
        ('about wall\nrequire height >= 8" otherwise hold', ['8:19 “8"” stands bare in a condition']),
        (
            "about wall\nrequire height >= 8 otherwise hold",
            ["8:16 a bare number cannot be compared with a quantity that has a unit"],
        ),
        ("about wall\nrequire build is brick otherwise hold", ["8:18 “build” is never “brick”"]),
        ("about wall\nrequire height is tall otherwise hold", ["8:9 “height” is a length, not a word"]),
        ("about wall\nrequire build >= finish otherwise hold", ["8:15 a choice has no size to compare"]),
        ("about wall\nrequire height >= starts otherwise forbid", ["8:36 “forbid” is not a grade"]),
        (
            "about wall\nrequire every window has ( sill >= 0 ) otherwise hold",
            ["8:15 “window” is one element; many are needed here"],
        ),
        ("about wall\nrequire sill of windows >= 0 otherwise hold", ["8:17 “windows” can be many; one is needed here"]),
        ("about wall\nrequire height of cellar >= 0 otherwise hold", ["8:19 “cellar” is no relation of a wall"]),
        (
            'about wall\nlimit low 1" made-up "x"\nrequire height >= low otherwise hold',
            ["8:14 “made-up” is not a registered publication"],
        ),
        (
            'about wall\nrequire height >= starts otherwise hold\ncure "to {heigth}"',
            ["9:6 nothing is called “heigth” here"],
        ),
        ("about wall\nrequire height >=\nstated height", ["8:18 the rule cannot be read near “require height >=”"]),
    ],
)
def test_a_rule_that_cannot_hold_is_refused_at_its_place(rule: str, told: list[str]) -> None:
    assert told == refused(rule)


def test_a_rule_without_its_clauses_is_refused_with_each_that_is_missing() -> None:
    with pytest.raises(BrokenRulebook) as trouble:
        read_rulebook({"a-rule": ("a-rule.md", b"```rule\nrule a-rule\n```\n" + TAIL.encode())})
    told = [one.message for one in trouble.value.troubles]
    assert [
        f"the rule has no “{clause}”" for clause in ("group", "about", "require", "says", "because", "basis")
    ] == told


def test_a_page_without_a_rule_is_refused() -> None:
    with pytest.raises(BrokenRulebook) as trouble:
        read_rulebook({"a-rule": ("a-rule.md", b"# Nothing here\n")})
    assert ["the page has no fenced rule"] == [one.message for one in trouble.value.troubles]


def test_a_page_that_is_no_text_is_refused() -> None:
    with pytest.raises(BrokenRulebook) as trouble:
        read_rulebook({"a-rule": ("a-rule.md", b"\xff\xfe\x00")})
    assert ["the page is not text in UTF-8"] == [one.message for one in trouble.value.troubles]


def test_a_rule_trips_with_what_is_stated_and_what_is_needed() -> None:
    trips, _ = ruled('about wall\nlimit low 8\' ours "x"\nrequire height >= low otherwise hold', "wall a { height 7' }")
    assert [("hold", "wall a has 7'; 8' is needed", 84.0, 96.0, -12.0, "in")] == [
        (r.grade, r.message, r.stated_number, r.needed_number, r.margin, r.unit) for r in trips
    ]


def test_the_first_requirement_that_fails_gives_the_grade() -> None:
    rule = (
        'about wall\nlimit low 6\' ours "x"\nlimit high 9\' ours "x"\n'
        "require height >= low otherwise hold\nrequire height >= high otherwise note"
    )
    plans = ("wall a { height 5' }", "wall a { height 7' }", "wall a { height 9' }")
    assert [["hold"], ["note"], []] == [[r.grade for r in ruled(rule, plan)[0]] for plan in plans]


def test_a_missing_fact_is_a_question_and_never_a_pass() -> None:
    trips, unanswered = ruled("about wall\nrequire height >= starts otherwise hold", "wall a { height 9' }")
    assert ([], [("wall a", "starts")]) == (trips, [(m.element, m.setting) for r in unanswered for m in r.missing])


def test_an_unknown_value_is_a_question_too() -> None:
    _, unanswered = ruled("about wall\nrequire height >= starts otherwise hold", "wall a { height 9'; starts unknown }")
    assert ["starts"] == [m.setting for r in unanswered for m in r.missing]


def test_where_keeps_a_rule_from_elements_it_is_not_about() -> None:
    rule = "about wall where build is log round\nrequire height >= starts otherwise hold"
    assert ([], []) == ruled(rule, "wall a { build framed with siding; height 1'; starts 2' }")


def test_a_rule_over_related_elements_names_the_one_that_fails() -> None:
    rule = 'about wall\nlimit least 2\' ours "x"\nrequire every windows has ( sill >= least ) otherwise revise'
    plan = "wall a { height 9' }\nwindow low { wall a; sill 1' }\nwindow high { wall a; sill 3' }"
    assert [("window", "low")] == [(r.place.line == 2 and "window", "low") for r in ruled(rule, plan)[0]]


def test_a_rule_that_supersedes_another_keeps_it_from_the_same_element_only() -> None:
    graver = 'about wall\nlimit low 3\' ours "x"\nrequire height >= low otherwise hold\nsupersedes b-rule'
    milder = 'about wall\nlimit high 9\' ours "x"\nrequire height >= high otherwise note'
    trips, _ = ruled(graver, "wall a { height 2' }\nwall b { height 5' }", b_rule=milder)
    assert [("a-rule", "wall a"), ("b-rule", "wall b")] == [(r.rule, r.element) for r in trips]


def test_a_milder_finding_never_hides_a_graver_one() -> None:
    milder = 'about wall\nlimit high 9\' ours "x"\nrequire height >= high otherwise note\nsupersedes b-rule'
    graver = 'about wall\nlimit low 3\' ours "x"\nrequire height >= low otherwise hold'
    trips, _ = ruled(milder, "wall a { height 2' }", b_rule=graver)
    assert ["b-rule", "a-rule"] == [r.rule for r in trips]


def test_superseding_a_rule_that_is_not_there_is_refused() -> None:
    assert ["1:1 it supersedes “no-such”, which is no rule"] == refused(
        "about wall\nrequire height >= starts otherwise hold\nsupersedes no-such"
    )


TRUTH = (True, False, None)


def kleene(words: str, one: bool | None, other: bool | None) -> str:
    def text(value: bool | None) -> str:
        return {True: "scribed is yes", False: "scribed is no", None: "bark is peeled"}[value]

    return f"about wall\nrequire {text(one)} {words} {text(other)} otherwise hold"


@pytest.mark.parametrize(("one", "other"), list(product(TRUTH, TRUTH)))
@pytest.mark.parametrize("words", ["and", "or"])
def test_and_and_or_follow_the_logic_of_three_values(words: str, one: bool | None, other: bool | None) -> None:
    if words == "and":
        wanted = False if False in (one, other) else None if None in (one, other) else True
    else:
        wanted = True if True in (one, other) else None if None in (one, other) else False
    trips, unanswered = ruled(kleene(words, one, other), "wall a { scribed yes }")
    assert {True: (0, 0), False: (1, 0), None: (0, 1)}[wanted] == (len(trips), len(unanswered))


@pytest.mark.parametrize("values", list(product(TRUTH, repeat=3)))
def test_every_and_some_follow_it_too(values: tuple[bool | None, ...]) -> None:
    wanted_every = False if False in values else None if None in values else True
    wanted_some = True if True in values else None if None in values else False
    assert (wanted_every, wanted_some) == (every(values, lambda v: v), some(values, lambda v: v))


def test_inches_and_millimetres_of_one_length_compare_as_equal() -> None:
    rule = 'about wall\nlimit low 8" ours "x"\nrequire starts >= low otherwise hold'
    assert ([], []) == ruled(rule, "wall a { starts 203.2 mm }")


def test_a_requirement_that_cannot_be_answered_does_not_hide_a_milder_one_that_fails() -> None:
    rule = (
        'about wall\nlimit high 9\' ours "x"\n'
        "require height >= starts otherwise hold\nrequire height >= high otherwise note"
    )
    trips, unanswered = ruled(rule, "wall a { height 7' }")
    assert (["note"], ["hold"]) == ([r.grade for r in trips], [r.grade for r in unanswered])


def test_a_limit_in_percent_can_be_compared_with_a_slope() -> None:
    rule = 'about wall\nlimit fall 5% ours "x"\nrequire grade >= fall otherwise hold'
    trips, _ = ruled(rule, "wall a { grade 2% }")
    assert ["wall a has 2%; 5% is needed"] == [r.message for r in trips]


def test_every_comparison_that_fails_together_is_told() -> None:
    rule = (
        'about stair\nlimit most 7" ours "x"\nlimit least 11" ours "x"\n'
        "require riser <= most and tread >= least otherwise hold"
    )
    trips, _ = ruled(rule, 'stair a { riser 8"; tread 9" }')
    assert ['stair a has 8"; 7" is needed; tread 9", where 11" or more is wanted'] == [r.message for r in trips]


def test_a_message_can_name_what_is_not_stated() -> None:
    rival = "[starts is stated or grade is stated]"
    rule = f"about wall\nrequire height is stated and {rival} and build is stated otherwise hold"
    page_text = page(rule).decode().replace("{element} has {stated}; {needed} is needed", "{element} lacks {missing}")
    made = read_rulebook({"a-rule": ("a-rule.md", page_text.encode())})
    home, _ = build([parse("wall a { height 9' }", "plan")], "plan")
    assert ["wall a lacks starts and build"] == [r.message for r in judge(Sheet(home), made, "imperial")[0]]


def test_what_cannot_be_judged_says_so_in_place_of_its_message() -> None:
    _, unanswered = ruled("about wall\nrequire height >= starts otherwise hold", "wall a { height 9' }")
    assert ["cannot be judged: the plan does not state starts of wall a"] == [
        ruling_of(one).message for one in unanswered
    ]


def test_a_clause_on_variances_can_only_say_none() -> None:
    assert ["8:10 “allowed” is not expected here"] == refused(
        "about wall\nvariance allowed\nrequire height >= starts otherwise hold"
    )
