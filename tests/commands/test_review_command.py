"""`speclint review`: what goes in, what comes out, and the exit status."""

from __future__ import annotations

import io
import json
import re
import sys
from pathlib import Path

import jsonschema
import pytest

from speclint.commands.main import main
from speclint.paths import shipped
from tests.commands.conftest import LOT, Run

LOW = 'wall west { build log round 10"; starts 4" }\n'
GOOD = "care { refinish 3 years }\n" + LOT
WORSE = re.compile(r"\x1b\[[0-9;]*m")


@pytest.mark.parametrize(
    ("text", "expected"),
    [
        (GOOD, 0),
        (LOW, 1),
        ("wall a { heigth 9' }\n", 2),
        (LOW + "wall a { heigth 9' }\n", 2),
        ("", 1),
        ("# only a note", 1),
        ("wall a {", 2),
        ('wall west { build log round 10"; starts 4" ', 2),
    ],
)
def test_the_exit_status_tells_what_was_found(run: Run, text: str, expected: int) -> None:
    assert expected == run("review", "a.plan", a=text).status


@pytest.mark.parametrize(("at", "expected"), [("hold", 0), ("revise", 1), ("note", 1)])
def test_the_grade_that_holds_can_be_set_milder(run: Run, at: str, expected: int) -> None:
    text = 'wall west { build log round 10"; starts 10" }\n' + LOT
    assert expected == run("review", "a.plan", "--hold-at", at, a=text).status


@pytest.mark.parametrize(
    ("raw", "told"),
    [
        (b"\x7fELF\0\0\1", "it is not a text file"),
        ("wall a { }".encode("utf-16"), "it is stored as UTF-16; save it as UTF-8"),
        (b"wall a { }\n\nwall b\xff", "line 3 holds bytes that are not UTF-8 text; save the file as UTF-8"),
        (b"#" * 4_000_001, "it is too large; the most that is read is 4 MB"),
    ],
    ids=["binary", "UTF-16", "wrong bytes", "too large"],
)
def test_a_file_that_is_no_plan_is_refused_in_words(run: Run, raw: bytes, told: str) -> None:
    result = run("review", "a.plan", a=raw)
    assert (2, "", f"speclint: a.plan: cannot be read: {told}\n") == (result.status, result.out, result.err)


@pytest.mark.parametrize(
    ("name", "told"),
    [
        ("gone.plan", "there is no such file"),
        ("x" * 300, "File name too long"),
        ("a\0b", "it cannot be opened"),
    ],
)
def test_a_name_that_is_no_file_is_refused_in_words(run: Run, name: str, told: str) -> None:
    result = run("review", name)
    shown = name.replace("\0", "\\x00")
    assert (2, f"speclint: {shown}: cannot be read: {told}\n") == (result.status, result.err)


@pytest.mark.parametrize(
    "raw",
    [f"\ufeff{LOW}".encode(), LOW.replace("\n", "\r\n").encode(), LOW.replace("; ", "\n\t").encode(), LOW.encode()],
    ids=["BOM", "CRLF", "tabs", "plain"],
)  # fmt: skip
def test_a_plan_reads_the_same_however_its_editor_stores_it(run: Run, raw: bytes) -> None:
    result = run("review", "a.plan", "--json", a=raw)
    told = [(one["rule"], one["grade"], one["stated"]) for one in json.loads(result.out)["rulings"]]
    assert (1, True) == (result.status, ("sill-too-near-grade", "hold", 4.0) in told)


def test_a_plan_comes_from_standard_input(run: Run, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(sys, "stdin", io.TextIOWrapper(io.BytesIO(LOW.encode())))
    result = run("review", "-")
    assert (1, True) == (result.status, result.out.startswith("PLAN REVIEW  standard input\n"))


@pytest.mark.parametrize(
    ("raw", "told"),
    [
        (b"\xff\xfe", "it is stored as UTF-16; save it as UTF-8"),
        (b"#" * 4_000_001, "it is too large; the most that is read is 4 MB"),
    ],
    ids=["UTF-16", "too large"],
)
def test_what_standard_input_holds_is_refused_as_a_file_is(
    run: Run, monkeypatch: pytest.MonkeyPatch, raw: bytes, told: str
) -> None:
    monkeypatch.setattr(sys, "stdin", io.TextIOWrapper(io.BytesIO(raw)))
    result = run("review", "-")
    assert (2, f"speclint: standard input: cannot be read: {told}\n") == (result.status, result.err)


def test_a_plan_from_standard_input_can_use_no_file(run: Run, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(sys, "stdin", io.TextIOWrapper(io.BytesIO(b'use "b.plan"')))
    told = '"b.plan" cannot be read: a plan from standard input can use no other file'
    assert told in run("review", "-", b="wall a { }").out


def test_without_a_standard_input_an_empty_plan_is_read(run: Run, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(sys, "stdin", None)
    told = run("review", "-")
    assert (1, True) == (told.status, "site-facts-missing" in told.out)


@pytest.mark.parametrize(
    ("words", "told"),
    [
        (("review",), "speclint: name a plan to review, or ask for --demo\n"),
        (("review", "--demo", "--today", "soon"), "speclint: “soon” is not a date such as 2027-06-30\n"),
        (("review", "--demo", "--today", "2027-02-30"), "speclint: “2027-02-30” is not a date such as 2027-06-30\n"),
        (
            ("review", "--demo", "--alternate", "narrow"),
            "speclint: tamarack-point.plan: there is no alternate “narrow”; alternates: wide eaves, "
            "west porch, stone west wall, rails that lift out\n",
        ),
    ],
)
def test_wrong_use_is_told_and_gives_status_3(run: Run, words: tuple[str, ...], told: str) -> None:
    result = run(*words)
    assert (3, "", told) == (result.status, result.out, result.err)


def test_an_alternate_is_named_in_the_letter(run: Run) -> None:
    out = run("review", "--demo", "--alternate", "wide eaves").out
    assert "PLAN REVIEW  tamarack-point.plan, alternate “wide eaves”" == out.splitlines()[0]


def test_the_day_of_the_review_can_be_set(run: Run) -> None:
    assert run("review", "--demo", "--today", "2031-01-02").out.splitlines()[1].startswith("2031-01-02, ")


def test_several_plans_are_reviewed_in_one_run_and_the_gravest_status_stands(run: Run) -> None:
    result = run("review", "a.plan", "gone.plan", "b.plan", a=GOOD, b=LOW)
    heads = [line for line in result.out.splitlines() if line.startswith("PLAN REVIEW")]
    assert (2, ["PLAN REVIEW  a.plan", "PLAN REVIEW  b.plan"]) == (result.status, heads)


def test_several_plans_give_a_list_of_objects_even_where_one_cannot_be_read(run: Run) -> None:
    found = json.loads(run("review", "a.plan", "gone.plan", "--json", a=GOOD).out)
    assert ["a.plan", "gone.plan"] == [one["plan"] for one in found]


def test_the_json_of_a_plan_has_its_published_form_and_the_keys_that_were_promised(run: Run) -> None:
    found = json.loads(run("review", "a.plan", "--json", a=LOW + 'variance x { }\nwall b { heigth "\u009b" }').out)
    schema = json.loads(shipped("shared").joinpath("schemas/review.schema.json").read_text(encoding="utf-8"))
    jsonschema.validate(found, schema)
    ruling = next(one for one in found["rulings"] if one["rule"] == "sill-too-near-grade")
    top = {"plan", "rulings", "questions", "variances", "assumed", "cautions"}
    each = {
        "rule", "grade", "outcome", "element", "place", "stated", "needed", "margin", "unit", "message", "because",
        "cures", "basis",
    }  # fmt: skip
    assert (set(), set()) == (top - found.keys(), each - ruling.keys())


def test_a_ruling_in_json_tells_what_is_stated_what_is_needed_and_the_margin(run: Run) -> None:
    found = json.loads(run("review", "a.plan", "--json", a=LOW).out)["rulings"]
    ruling = next(one for one in found if one["rule"] == "sill-too-near-grade")
    told = {key: ruling[key] for key in ("grade", "outcome", "element", "place", "stated", "needed", "margin", "unit")}
    assert {
        "grade": "hold",
        "outcome": "trips",
        "element": "wall west",
        "place": {"file": "a.plan", "line": 1, "column": 34},
        "stated": 4.0,
        "needed": 8.0,
        "margin": -4.0,
        "unit": "in",
    } == told


@pytest.mark.parametrize(("units", "expected"), [("metric", ["102 mm", "204 mm"]), ("imperial", ['4"', '8"'])])
def test_the_reader_has_the_units_that_are_asked_for(run: Run, units: str, expected: list[str]) -> None:
    out = run("review", "a.plan", "--units", units, a=LOW).out
    assert expected == [text for text in expected if f"starts {text}" in out or f"; {text} is wanted" in out]


def test_a_metric_plan_is_answered_in_metric(run: Run) -> None:
    assert "starts 100 mm" in run("review", "a.plan", a=LOW.replace('4"', "100 mm").replace('10"', "250 mm")).out


def test_colour_changes_no_word_of_the_letter(run: Run) -> None:
    plain, colour = (run("review", "--demo", "--colour", word).out for word in ("never", "always"))
    assert (True, plain) == ("\x1b[" in colour, re.sub(r" +\n", "\n", WORSE.sub("", colour)))


def test_a_brief_letter_has_findings_and_cures_only(run: Run) -> None:
    out = run("review", "--demo", "--brief").out
    assert (True, False, False, False) == tuple(word in out for word in ("Cure", "Why", "Basis", "CAUTIONS"))


def test_the_letter_into_a_file_is_the_letter(run: Run, tmp_path: Path) -> None:
    shown = run("review", "--demo", "--today", "2026-01-01").out
    told = run("review", "--demo", "--today", "2026-01-01", "--into", "letter.txt", "--colour", "always")
    assert ("", shown) == (told.out, (tmp_path / "letter.txt").read_text(encoding="utf-8"))


def test_a_letter_written_again_replaces_the_old_one_and_leaves_nothing_beside_it(run: Run, tmp_path: Path) -> None:
    (tmp_path / "letter.txt").write_text("old")
    run("review", "--demo", "--into", "letter.txt")
    assert (["letter.txt"], False) == (
        sorted(path.name for path in tmp_path.iterdir()),
        "old" == (tmp_path / "letter.txt").read_text(encoding="utf-8"),
    )


def test_a_letter_that_cannot_be_put_in_place_keeps_what_is_there(
    run: Run, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    def no(*_: object) -> None:
        raise OSError(28, "No space left on device")

    (tmp_path / "letter.txt").write_text("old")
    monkeypatch.setattr("os.replace", no)
    result = run("review", "--demo", "--into", "letter.txt")
    told = (result.status, result.err.endswith("letter.txt: cannot be written: No space left on device\n"))
    assert ((3, True), ["letter.txt"], "old") == (
        told,
        [path.name for path in tmp_path.iterdir()],
        (tmp_path / "letter.txt").read_text(),
    )


@pytest.mark.parametrize("name", ["gone/letter.txt", "a.plan/letter.txt", "folder", ".", "/", "x" * 300, "a\0b"])
def test_a_place_that_cannot_be_written_is_told(run: Run, tmp_path: Path, name: str) -> None:
    (tmp_path / "folder").mkdir()
    result = run("review", "a.plan", "--into", name, a=GOOD)
    assert (3, 1, ["a.plan", "folder"]) == (
        result.status,
        result.err.count("\n"),
        sorted(path.name for path in tmp_path.iterdir()),
    )


def test_a_letter_into_a_link_is_written_where_the_link_leads(run: Run, tmp_path: Path) -> None:
    (tmp_path / "real.txt").write_text("old")
    (tmp_path / "link.txt").symlink_to("real.txt")
    run("review", "--demo", "--into", "link.txt")
    assert (True, True) == (
        (tmp_path / "link.txt").is_symlink(),
        (tmp_path / "real.txt").read_text(encoding="utf-8").startswith("PLAN REVIEW"),
    )


HOSTILE = """wall a\x1b[31m { }
variance sill-too-near-grade { because "\x1b]0;owned\x07\u202e\x9b"; accepted by "a"; until 2027-01-01 }
"""


@pytest.mark.parametrize("more", [(), ("--json",), ("--brief",), ("--colour", "always")])
def test_what_a_terminal_would_obey_is_written_out(run: Run, more: tuple[str, ...]) -> None:
    out = WORSE.sub("", run("review", "a.plan", *more, a=HOSTILE).out)
    assert set() == set(out) & {"\x1b", "\x07", "\u202e", "\x9b"}


def test_a_control_character_is_shown_by_its_number(run: Run) -> None:
    assert "“\\x1b” is not expected in the name of a wall" in run("review", "a.plan", a=HOSTILE).out


def test_a_name_of_a_file_is_shown_without_what_a_terminal_would_obey(run: Run) -> None:
    assert "speclint: \\x1b[31m.plan: cannot be read: there is no such file\n" == run("review", "\x1b[31m.plan").err


def test_a_plan_of_a_thousand_walls_is_reviewed(run: Run) -> None:
    text = "".join(f'wall w{number} {{ starts 4"; build log round 10" }}\n' for number in range(1000))
    found = json.loads(run("review", "a.plan", "--json", a=text).out)["rulings"]
    assert 1000 == len({one["element"] for one in found if one["rule"] == "sill-too-near-grade"})


@pytest.mark.parametrize("text", ["wall a {" * 10_000, "{" * 10_000, "}" * 10_000, "x\n" * 5_000, "a" * 300_000])
def test_a_plan_made_to_hurt_gets_a_letter(run: Run, text: str) -> None:
    result = run("review", "a.plan", a=text)
    assert (2, "") == (result.status, result.err)


def test_a_fault_of_the_program_is_not_hidden(monkeypatch: pytest.MonkeyPatch) -> None:
    def fault(*_: object, **__: object) -> None:
        raise ZeroDivisionError

    monkeypatch.setattr("speclint.commands.pieces.review", fault)
    with pytest.raises(ZeroDivisionError):
        main(["review", "--demo", "--afresh"])
