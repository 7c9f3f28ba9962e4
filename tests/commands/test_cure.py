"""The command that cures: offers, writing, refusing."""

from __future__ import annotations

import json
from pathlib import Path

import pytest

from speclint.commands.main import main

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
    assert "  4. hold   Chimney with no cricket behind it" in out
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
    assert finding["number"] == 4


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
    from speclint.commands import cure

    real = cure.cure_set

    def meanwhile(*given: object) -> object:
        plan.write_text("# somebody else was here\n")
        return real(*given)  # type: ignore[arg-type]

    monkeypatch.setattr(cure, "cure_set", meanwhile)
    assert main(["cure", str(plan), "--write", *DAY]) == 3
    assert "changed by somebody else" in capsys.readouterr().err
    assert plan.read_text() == "# somebody else was here\n"
    assert 'cricket 20"' in (plan.parent / "house.plan.cured").read_text()
