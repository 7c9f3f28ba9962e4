"""The command that cures: offers, writing, refusing."""

from __future__ import annotations

import json
import re
from pathlib import Path

import pytest

from speclint.commands import cure
from speclint.commands.main import main
from speclint.language.edit import CannotEdit
from tests.commands.conftest import Run

SPECS = Path(__file__).parents[2] / "specs"
DAY = ["--today", "2026-11-25"]


@pytest.fixture
def plan(tmp_path: Path) -> Path:
    place = tmp_path / "house.plan"
    place.write_bytes((SPECS / "tamarack-point.plan").read_bytes())
    return place


def holds(path: Path, capsys: pytest.CaptureFixture[str]) -> set[str]:
    main(["review", str(path), "--json", *DAY])
    found = json.loads(capsys.readouterr().out)
    return {f"{one['rule']} on {one['element']}" for one in found["rulings"] if one["grade"] == "hold"}


def test_the_letter_numbers_findings_as_the_review_does(capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["cure", "--demo", *DAY]) == 0
    out = capsys.readouterr().out
    assert "  5. hold   Chimney with no cricket behind it" in out
    assert 'change  chimney hearth: cricket 20" (now 0")' in out
    assert "TOGETHER" in out
    assert "invented rates" in out


def test_json_tells_the_edits(plan: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["cure", str(plan), "chimney-without-cricket", "--json", *DAY]) == 0
    found = json.loads(capsys.readouterr().out)
    (finding,) = found["findings"]
    (edit,) = finding["choices"][0]["edits"]
    assert plan.read_text()[edit["start"] : edit["end"]] == '0"'
    assert edit["text"] == '20"'
    assert finding["number"] == 5


def test_writing_the_set_clears_the_holds_and_keeps_the_rest(plan: Path, capsys: pytest.CaptureFixture[str]) -> None:
    before = plan.read_text()
    was = holds(plan, capsys)
    assert main(["cure", str(plan), "--write", *DAY]) == 0
    told = capsys.readouterr()
    assert "not all is cured" in told.err
    assert "ledger-on-stacked-logs on ledger lake" in told.err
    after = plan.read_text()
    remain = holds(plan, capsys)
    assert remain < was
    assert len(before.splitlines()) == len(after.splitlines())
    assert [line.split("#")[1:] for line in before.splitlines()] == [line.split("#")[1:] for line in after.splitlines()]


def test_writing_one_rule_and_choice(plan: Path, capsys: pytest.CaptureFixture[str]) -> None:
    words = ["cure", str(plan), "purlin-end-exposed", "purlin", "ridge", "--write", "--choice", "2", *DAY]
    assert main(words) == 0
    told = capsys.readouterr()
    assert "end grain capped" in told.out
    assert "licensed engineer" in told.err
    assert 'reach 16";  end grain capped' in plan.read_text()


LOW = """
wall west {{ build log round 10"; starts {height}"; faces W; length 30' }}
wall east {{ build log round 10"; starts 6"; faces E; length 30' }}
{more}
"""


def test_a_finding_that_is_only_made_milder_is_told_as_such(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    place = tmp_path / "low.plan"
    place.write_text(LOW.format(height=6, more=""))
    words = "still told as revise: sill-too-near-grade on wall west, wall east"
    assert main(["cure", str(place), *DAY]) == 0
    assert words in " ".join(capsys.readouterr().out.split())
    assert main(["cure", str(place), "--json", *DAY]) == 0
    milder = json.loads(capsys.readouterr().out)["together"]["milder"]
    assert {"grade": "revise", "finding": "sill-too-near-grade on wall west"} in milder
    assert main(["cure", str(place), "--write", *DAY]) == 0
    assert words in capsys.readouterr().err


def test_a_finding_that_is_accepted_is_left_with_the_reason(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    accepted = 'variance sill-too-near-grade on wall west { because "a"; accepted by "A. Tester"; until 2027-01-01 }'
    place = tmp_path / "low.plan"
    place.write_text(LOW.format(height=4, more=accepted))
    assert main(["cure", str(place), "sill-too-near-grade", "wall", "west", *DAY]) == 3
    assert "sill-too-near-grade on wall west: accepted by variance" in capsys.readouterr().err


def test_what_a_written_cure_brings_is_told(plan: Path, capsys: pytest.CaptureFixture[str]) -> None:
    plan.write_text(
        'site { weather "Marquette, MI";  terrain wooded;  rain wind SW }\n'
        'wall south { faces S;  length 46\';  height 9\'-6";  starts 20";  build log round 10";  '
        "species eastern white pine }\n"
        "roof main { covers south;  form shed;  pitch 10:12;  eaves 1'-0\" }\n"
    )
    assert main(["cure", str(plan), "--write", *DAY]) == 0
    told = capsys.readouterr()
    assert 'roof main: eaves 18" in place of 1\'-0"\n' == told.out
    assert "house.plan: brings revise: wall-outgrows-its-eave on wall south\n" in told.err


def test_an_alternate_is_added_at_the_end(plan: Path, capsys: pytest.CaptureFixture[str]) -> None:
    before = plan.read_text()
    assert main(["cure", str(plan), "--as-alternate", "cured", *DAY]) == 0
    after = plan.read_text()
    assert after.startswith(before)
    capsys.readouterr()
    assert main(["review", str(plan), "--alternate", "cured", *DAY]) == 1
    assert "alternate “cured”" in capsys.readouterr().out
    assert main(["cure", str(plan), "--as-alternate", "cured", *DAY]) == 3
    assert "already there" in capsys.readouterr().err


@pytest.mark.parametrize(
    ("words", "status", "says"),
    [
        (["cure"], 3, "name a plan"),
        (["cure", "--demo", "--write"], 3, "written into a plan file"),
        (["cure", "PLAN", "no-such-rule"], 3, "there is no rule"),
        (["cure", "PLAN", "rake-too-short", "wall", "south"], 3, "it trips on wall east"),
        (["cure", "PLAN", "rake-too-short", "--write", "--choice", "7"], 3, "1 to choose from"),
        (["cure", "PLAN", "--write", "--choice", "2"], 3, "--choice goes with a rule"),
        (["cure", "--demo", "--choice", "2"], 3, "--choice goes with a rule"),
        (["cure", "--demo", "no-such-rule", "--choice", "2"], 3, "there is no rule"),
        (["cure", "PLAN", "--as-alternate", 'a "b"'], 3, "plain words"),
        (["cure", "missing.plan", "--write"], 2, "there is no such file"),
        (["cure", "rake-too-short", "PLAN", "--write"], 3, "the plan comes first, then the rule: speclint cure /"),
        (["cure", "--as-alternate", "PLAN"], 3, "--as-alternate wants a name before the plan: --as-alternate NAME /"),
        (["cure", "PLAN", "--rates", "missing.txt"], 3, "cannot be read"),
    ],
)
def test_wrong_use_is_told(
    words: list[str], status: int, says: str, plan: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    before = plan.read_bytes()
    given = [str(plan) if word == "PLAN" else word for word in words]
    assert main([*given, *DAY]) == status
    assert says in capsys.readouterr().err
    assert plan.read_bytes() == before


def test_a_plan_that_cannot_be_read_whole_is_not_written(plan: Path, capsys: pytest.CaptureFixture[str]) -> None:
    plan.write_text(plan.read_text() + "\nwall broken { faces nowhere }\n")
    before = plan.read_bytes()
    assert main(["cure", str(plan), "--write", *DAY]) == 2
    assert "nowhere” is not a bearing" in capsys.readouterr().err
    assert plan.read_bytes() == before


def test_a_plan_changed_meanwhile_is_kept_and_so_is_the_result(
    plan: Path, capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch
) -> None:
    real = cure.cure_set

    def meanwhile(*given: object) -> object:
        plan.write_text("# somebody else was here\n")
        return real(*given)  # type: ignore[arg-type]

    monkeypatch.setattr(cure, "cure_set", meanwhile)
    assert main(["cure", str(plan), "--write", *DAY]) == 3
    assert "changed by somebody else" in capsys.readouterr().err
    assert plan.read_text() == "# somebody else was here\n"
    assert 'cricket 20"' in (plan.parent / "house.plan.cured").read_text()


SITE = 'site { weather "Marquette, MI";  ground snow 70 psf;  frost depth 60" }\n'
WOOD = 'build log round 10";  species eastern white pine;  seasoning kiln-dried to 15%'
WEST = "wall west  { faces W;  length 30';  starts 20\" above grade; height 9'-6\" }\n"
ROOF = (
    "roof main { covers south, west, north;  gables west;  form gable;  pitch 10:12;  eaves 2'-0\";  rakes 2'-0\" }\n"
)
SOUTH_NORTH = "wall south, north { length 46';  height 9'-6\"; starts 6\" above grade }\n"
PAST = 'variance rake-too-short on wall south { because "x"; accepted by "J. M."; until 2020-01-01 }\n'


@pytest.mark.parametrize(
    "behind",
    [
        "  wall north { faces N;  length 46';  starts 30\" above grade; height 9'-6\" }\n",
        "  # was 10'-0\"\nwall north { faces N;  length 46';  starts 30\" above grade; height 9'-6\" }\n",
    ],
)
def test_a_cure_is_written_into_the_block_of_its_wall(behind: str, run: Run, tmp_path: Path) -> None:
    south = "wall south { faces S;  length 46';  height 9'-6\" }"
    text = f'{SITE}typical wall {{ {WOOD};  starts 6" above grade }}\n{south}{behind}{WEST}{ROOF}'
    told = run("cure", "p.plan", "sill-too-near-grade", "wall", "south", "--write", *DAY, p=text)
    cured = text.replace(south, south.replace(" }", ';  starts 20" }'))
    assert (0, 'wall south: starts 20" in place of 6"\n', "", cured) == (
        told.status,
        told.out,
        told.err,
        read(tmp_path),
    )


def read(folder: Path) -> str:
    return (folder / "p.plan").read_text(encoding="utf-8")


def test_findings_of_one_block_that_want_two_values_get_that_which_clears_both(run: Run, tmp_path: Path) -> None:
    roof = "form shed;  pitch 3:12;  rakes 1'-0\"; covering standing seam; gutters none"
    text = (
        f"{SITE}typical wall {{ {WOOD} }}\n"
        "wall south, west { length 30'; height 9'-6\"; starts 9\" above grade; ground paving }\n"
        f"roof main {{ covers south; eaves 1'-0\"; run 12'; {roof} }}\n"
        f"roof shed {{ covers west; eaves 2'-0\"; run 10'; {roof} }}\n"
    )
    told = run("cure", "p.plan", "snow-banked-against-wood", "--write", *DAY, p=text)
    printed = "".join(f'wall {name}: starts 40" in place of 9"\n' for name in ("south", "west"))
    assert (0, text.replace('starts 9"', 'starts 40"')) == (told.status, read(tmp_path))
    assert told.err.startswith("Care: Snow guards")
    assert told.out.startswith(printed)


def test_an_alternate_states_a_change_of_every_element_of_the_block(run: Run, tmp_path: Path) -> None:
    text = f"{SITE}typical wall {{ {WOOD} }}\n{SOUTH_NORTH}{WEST}{ROOF}"
    run("cure", "p.plan", "--as-alternate", "fix", *DAY, p=text)
    assert text + '\nalternate "fix" {\n    wall south { starts 8" }\n    wall north { starts 8" }\n}\n' == read(
        tmp_path
    )
    found = json.loads(run("review", "p.plan", "--alternate", "fix", "--json", *DAY).out)["rulings"]
    holds = [one["rule"] for one in found if (one["grade"], one["outcome"]) == ("hold", "trips")]
    assert ["site-facts-missing"] == holds


def test_findings_are_numbered_as_in_a_review_that_tells_of_a_variance(run: Run) -> None:
    text = f"{SITE}typical wall {{ {WOOD} }}\n{SOUTH_NORTH}{WEST}{ROOF}{PAST}"
    letter = run("review", "p.plan", *DAY, p=text).out
    cures = run("cure", "p.plan", *DAY).out
    found = json.loads(run("cure", "p.plan", "--json", *DAY).out)["findings"]
    numbers = {rule: int(number) for number, rule in re.findall(r"^ +(\d+)\. .*\[(.+)\]$", letter, re.MULTILINE)}
    told = {rule: int(number) for number, rule in re.findall(r"^ +(\d+)\. .*\[(.+)\]$", cures, re.MULTILINE)}
    assert 3 == numbers.pop("variance-expired")
    assert (numbers, numbers) == (told, {one["rule"]: one["number"] for one in found})


YOURS = "wall {0} stands in walls.plan, so it is yours to write there; --as-alternate states it beside the plan"


def test_what_stands_in_another_file_is_told_and_can_stand_in_an_alternate(run: Run, tmp_path: Path) -> None:
    walls = f"typical wall {{ {WOOD} }}\n{SOUTH_NORTH}{WEST}"
    text = f'use "walls.plan"\n{SITE}{ROOF}'
    told = run("cure", "p.plan", "--write", *DAY, p=text, walls=walls)
    for name in ("south", "north"):
        assert f"  sill-too-near-grade on wall {name}: {YOURS.format(name)}\n" in told.err
    assert (0, "", text) == (told.status, told.out, read(tmp_path))
    refused = run("cure", "p.plan", "sill-too-near-grade", "--write", *DAY)
    says = f'speclint: state starts 20" for wall south: {YOURS.format("south")}\n'
    assert (3, "", says, text) == (refused.status, refused.out, refused.err, read(tmp_path))


@pytest.mark.parametrize(("rule", "value"), [((), '8"'), (("sill-too-near-grade",), '20"')])
def test_an_alternate_restates_what_stands_in_another_file(
    rule: tuple[str, ...], value: str, run: Run, tmp_path: Path
) -> None:
    walls = f"typical wall {{ {WOOD} }}\n{SOUTH_NORTH}{WEST}"
    text = f'use "walls.plan"\n{SITE}{ROOF}'
    assert 0 == run("cure", "p.plan", *rule, "--as-alternate", "fix", *DAY, p=text, walls=walls).status
    rows = "".join(f"    wall {name} {{ starts {value} }}\n" for name in ("south", "north"))
    assert (f'{text}\nalternate "fix" {{\n{rows}}}\n', walls) == (read(tmp_path), (tmp_path / "walls.plan").read_text())
    found = json.loads(run("review", "p.plan", "--alternate", "fix", "--json", *DAY).out)["rulings"]
    assert "sill-too-near-grade" not in {one["rule"] for one in found if one["grade"] == "hold"}


def test_what_a_terminal_would_obey_is_written_out_in_json(run: Run) -> None:
    place = "house \u009b31m\u2028.plan"
    Path(place).write_text(f"{SITE}typical wall {{ {WOOD} }}\n{SOUTH_NORTH}{WEST}{ROOF}", encoding="utf-8")
    out = run("cure", place, "--json", *DAY).out
    assert (True, place) == (out.replace("\n", "").isprintable(), json.loads(out)["plan"])


def test_a_plan_into_which_changes_cannot_be_written_is_left_as_it_is(
    plan: Path, capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch
) -> None:
    before = plan.read_bytes()
    monkeypatch.setattr(cure, "with_edits", cannot)
    assert 3 == main(["cure", str(plan), "--write", *DAY])
    told = capsys.readouterr()
    assert ("", f"speclint: {plan}: two changes want the same place; nothing is written\n") == (told.out, told.err)
    assert before == plan.read_bytes()


def cannot(*given: object) -> str:
    raise CannotEdit("two changes want the same place")
