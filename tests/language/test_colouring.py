"""The grammar for colouring plans: its expressions, run over lines of plans, colour what they should."""

from __future__ import annotations

import json
import re
from functools import lru_cache
from typing import Any

import pytest

from speclint.model.element import settings_of
from speclint.model.kinds import KINDS
from speclint.outputs.colouring import colouring
from speclint.paths import shipped
from tests.specs.expected import SPECS

HEAD, NAME, SETTING, STRUCTURE = "storage.type", "entity.name.type", "variable.parameter", "keyword.control"
NUMBER, BEARING, CHOICE, TEXT = (
    "constant.numeric",
    "constant.numeric.bearing",
    "constant.language",
    "string.quoted.double",
)
COMMENT, DOUBT, OPEN, RULE = "comment.line.number-sign", "keyword.other", "invalid.unclosed", "entity.name.function"


@lru_cache(maxsize=1)
def grammar() -> dict[str, Any]:
    found: dict[str, Any] = json.loads(colouring())
    return found


@lru_cache(maxsize=1)
def rules() -> list[tuple[re.Pattern[str], dict[str, Any]]]:
    named = [pattern["include"].removeprefix("#") for pattern in grammar()["patterns"]]
    return [(re.compile(grammar()["repository"][name]["match"]), grammar()["repository"][name]) for name in named]


def coloured(line: str) -> list[tuple[str, str]]:
    """What is coloured in a line, and how; punctuation left out."""
    found: list[tuple[str, str]] = []
    at = 0
    while at < len(line):
        matches = [(match.start(), order, match, rule) for order, (expression, rule) in enumerate(rules())
                   if (match := expression.search(line, at)) and match.end() > at]  # fmt: skip
        if not matches:
            break
        _, _, match, rule = min(matches, key=lambda one: one[:2])
        groups = {0: rule} if "name" in rule else {int(key): value for key, value in rule["captures"].items()}
        found += [(match[key], scope["name"].removesuffix(".speclint")) for key, scope in groups.items() if match[key]]
        at = match.end()
    return [(text, scope) for text, scope in found if scope != "punctuation.separator"]


@pytest.mark.parametrize(
    ("line", "expected"),
    [
        (
            "wall south { faces S 10 E;  length 46' }   # the lake",
            [("wall", HEAD), ("south", NAME), ("faces", SETTING), ("S 10 E", BEARING), ("length", SETTING),
             ("46'", NUMBER), ("# the lake", COMMENT)],
        ),
        ("typical wall {", [("typical", STRUCTURE), ("wall", HEAD)]),
        ("wall east, west {", [("wall", HEAD), ("east, west", NAME)]),
        ("window back { wall north;  count 4 }", [("window", HEAD), ("back", NAME), ("wall", SETTING),
                                                  ("count", SETTING), ("4", NUMBER)]),
        ('    weather  "Duluth, MN"  # near', [("weather", SETTING), ('"Duluth, MN"', TEXT), ("# near", COMMENT)]),
        ("    rain intensity 4 in/h", [("rain intensity", SETTING), ("4 in/h", NUMBER)]),
        ("    build log round 10\"", [("build", SETTING), ("log round", CHOICE), ('10"', NUMBER)]),
        ("    finish semitransparent stain, coats 2", [("finish", SETTING), ("semitransparent stain", CHOICE),
                                                      ("coats", SETTING), ("2", NUMBER)]),
        ("    height assumed 9'-6 1/2\"", [("height", SETTING), ("assumed", DOUBT), ("9'-6 1/2\"", NUMBER)]),
        ("    soil unknown", [("soil", SETTING), ("unknown", DOUBT)]),
        ('alternate "wide" { roof main { eaves 3\' } }', [("alternate", STRUCTURE), ('"wide"', TEXT), ("roof", HEAD),
                                                         ("main", NAME), ("eaves", SETTING), ("3'", NUMBER)]),
        ("variance rake-too-short on wall east {", [("variance", STRUCTURE), ("rake-too-short", RULE),
                                                    ("on", STRUCTURE), ("wall east", NAME)]),
        ('    accepted by "J. Moreau"', [("accepted by", SETTING), ('"J. Moreau"', TEXT)]),
        ("    until 2027-06-30", [("until", SETTING), ("2027-06-30", NUMBER)]),
        ('use "coast.plan"', [("use", STRUCTURE), ('"coast.plan"', TEXT)]),
        ('    because "no end; x', [("because", SETTING), ('"no end', OPEN)]),
        ("    heighten 5; walls x {", [("5", NUMBER)]),
        ('step s { does "a # b" }', [("step", HEAD), ("s", NAME), ("does", SETTING), ('"a # b"', TEXT)]),
    ],
)  # fmt: skip
def test_a_line_is_coloured(line: str, expected: list[tuple[str, str]]) -> None:
    assert expected == coloured(line)


@pytest.mark.parametrize("kind", KINDS)
def test_every_kind_and_every_setting_is_coloured(kind: str) -> None:
    names = list(settings_of(KINDS[kind]))
    expected = [(kind, HEAD), ("a", NAME), *((name, SETTING) for name in names)]
    assert expected == [part for part in coloured(f"{kind} a {{ {'; '.join(names)} }}") if part[1] != CHOICE]


def test_no_word_of_the_demo_plan_is_taken_for_an_open_text() -> None:
    lines = (SPECS / "tamarack-point.plan").read_text(encoding="utf-8").splitlines()
    scopes = {scope for line in lines for _, scope in coloured(line)}
    assert {HEAD, NAME, SETTING, STRUCTURE, NUMBER, BEARING, CHOICE, TEXT, COMMENT, RULE} == scopes


def test_every_scope_ends_in_the_name_of_the_language() -> None:
    scopes = re.findall(r'"(?:name|scopeName)": "([a-z.-]+)"', colouring())
    assert (True, "source.speclint") == (all(scope.endswith(".speclint") for scope in scopes), grammar()["scopeName"])


@pytest.mark.parametrize("word", [r"\(\?P", r"\(\?\(", r"\\Z", r"\\A", r"\(\?[aiLmsux]", r"(?<!\\)\*\+"])
def test_no_expression_uses_what_only_one_of_the_two_engines_reads(word: str) -> None:
    assert [] == [expression.pattern for expression, _ in rules() if re.search(word, expression.pattern)]


def test_the_grammar_ships_as_it_is_made() -> None:
    assert colouring() == shipped("grammar").joinpath("plan.tmLanguage.json").read_text(encoding="utf-8")
