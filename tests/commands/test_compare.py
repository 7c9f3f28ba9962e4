"""`speclint compare`: files, folders and revisions of a repository; what is printed, and the exit status."""

from __future__ import annotations

import json
import os
import subprocess
from pathlib import Path

import jsonschema
import pytest

from speclint.commands.repository import Repository
from speclint.outputs.compare_markdown import escaped
from speclint.paths import shipped
from tests.commands.conftest import LOT, Run

LOW = 'wall west { build log round 10"; starts 4"; faces W }\n'
LOWER = LOW.replace('4"', '3"')
HIGH = LOW.replace('4"', '40"')
CLEAN = "care { refinish 3 years }\n" + LOT


def git(folder: Path, *words: str) -> str:
    told = subprocess.run(
        ["git", "-c", "user.name=A", "-c", "user.email=a@example.org", "-c", "init.defaultBranch=main", *words],
        cwd=folder,
        check=True,
        capture_output=True,
        text=True,
    )
    return told.stdout.strip()


def write(folder: Path, **files: str | bytes) -> None:
    for name, text in files.items():
        path = folder / f"{name.replace('__', '/')}.plan"
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_bytes(text if isinstance(text, bytes) else text.encode())


@pytest.fixture
def repository(tmp_path: Path) -> Path:
    """A repository whose first commit, tagged `first`, holds a low wall; the commit at `main` lowers it."""
    git(tmp_path, "init", "-q")
    write(tmp_path, house=LOW)
    git(tmp_path, "add", ".")
    git(tmp_path, "commit", "-qm", "first")
    git(tmp_path, "tag", "first")
    write(tmp_path, house=LOWER)
    git(tmp_path, "commit", "-qam", "lower")
    return tmp_path


def object_of(out: str) -> dict[str, object]:
    found: dict[str, object] = json.loads(out)
    schema = json.loads(shipped("shared").joinpath("schemas/compare.schema.json").read_text(encoding="utf-8"))
    jsonschema.Draft202012Validator.check_schema(schema)
    jsonschema.validate(found, schema)
    return found


def changes(out: str) -> list[tuple[str, str]]:
    plans = object_of(out)["plans"]
    assert isinstance(plans, list)
    return [(turn["change"], turn["finding"]) for plan in plans for turn in plan.get("findings", [])]


@pytest.mark.parametrize(
    ("old", "new", "words", "expected"),
    [
        (LOW, LOW, (), 1),
        (LOW, LOW, ("--worse",), 0),
        (LOW, LOWER, ("--worse",), 1),
        (LOWER, LOW, ("--worse",), 0),
        (HIGH, LOW, ("--worse",), 1),
        (CLEAN, CLEAN, (), 0),
        (LOW, LOW + "wall b { heigth 9' }\n", ("--worse",), 2),
        (LOW + "wall b { heigth 9' }\n", LOW, ("--worse",), 0),
    ],
)
def test_the_exit_status_tells_how_the_new_plan_stands_or_whether_it_got_worse(
    run: Run, old: str, new: str, words: tuple[str, ...], expected: int
) -> None:
    assert expected == run("compare", "a.plan", "b.plan", *words, a=old, b=new).status


@pytest.mark.parametrize(("at", "expected"), [("hold", 0), ("revise", 1), ("note", 1), (None, 1)])
def test_the_grade_that_counts_as_worse_can_be_set(run: Run, at: str | None, expected: int) -> None:
    revise = LOW.replace('4"', '10"') + LOT
    words = ("--hold-at", at) if at else ()
    assert expected == run("compare", "a.plan", "b.plan", "--worse", *words, a=HIGH + LOT, b=revise).status


def test_the_letter_of_a_comparison_names_the_change_the_finding_and_its_rule(run: Run) -> None:
    rows = run("compare", "a.plan", "b.plan", "--today", "2026-11-25", a=LOW, b=LOWER).out.splitlines()
    assert "COMPARISON  a.plan to b.plan" == rows[0]
    assert "2026-11-25, " == rows[1][:12]
    assert any(row.startswith('  more lacking, hold    wall west starts 3" above the ground') for row in rows)
    assert '  wall west: starts 4" to 3"' in rows
    assert rows[-1].startswith("1 plan compared; 1 worse in 1 finding")


def test_a_plan_that_did_not_change_is_one_line(run: Run) -> None:
    rows = run("compare", "a.plan", "b.plan", a=CLEAN, b="# a note\n" + CLEAN).out.splitlines()
    assert [row for row in rows if row.startswith("b.plan: nothing changed; as it stands now: ")] == rows[3:4]


OTHERS = CLEAN + HIGH + 'alternate "low" { wall west { starts 20" } }\nalternate "old" { wall west { starts 30" } }\n'


@pytest.mark.parametrize("form", [(), ("--markdown",), ("--json",)])
def test_a_change_of_an_alternate_alone_is_told_in_every_form(run: Run, form: tuple[str, ...]) -> None:
    new = OTHERS.replace('20"', '3"').replace('"old"', '"new"')
    told = run("compare", "a.plan", "b.plan", *form, a=OTHERS, b=new)
    assert "nothing changed" not in told.out
    assert run("compare", "a.plan", "b.plan", "--worse").status == 0
    for words in ("new", "old", "low", "wall west starts 3", "sill-too-near-grade"):
        assert words in told.out, words


def test_with_worse_nothing_else_is_told_and_what_is_left_out_is_counted(run: Run, tmp_path: Path) -> None:
    write(tmp_path, old__a=LOW, old__b=LOWER, old__c=CLEAN, old__d=LOW)
    write(tmp_path, new__a=LOWER, new__b=LOW, new__c=CLEAN, new__d=LOW.replace("faces W", "faces NW"))
    worse, whole = (run("compare", "old", "new", *words) for words in (("--worse",), ()))
    assert (1, 1) == (worse.status, whole.status)
    assert (
        "4 plans compared; 1 worse in 1 finding; 1 better in 1 finding; 1 changed otherwise; 1 unchanged" in worse.out
    )
    shown = [[name for name in ("a.plan", "b.plan", "c.plan", "d.plan") if name in told.out] for told in (worse, whole)]
    assert [["a.plan"], ["a.plan", "b.plan", "d.plan"]] == shown
    assert ("BETTER" in worse.out, "IN THE PLAN" in worse.out, "WORSE" in worse.out) == (False, False, True)
    assert ("BETTER" in whole.out, "IN THE PLAN" in whole.out, "WORSE" in whole.out) == (True, True, True)


def test_a_plan_that_decides_the_status_is_told_of_though_it_is_as_before(run: Run, tmp_path: Path) -> None:
    unread = HIGH + "wall b { heigth 9' }\n"
    write(tmp_path, old__a=CLEAN, old__b=unread, old__c=LOW, new__a=CLEAN, new__b=unread, new__c=LOW)
    worse, whole = (run("compare", "old", "new", *words) for words in (("--worse",), ()))
    assert (2, 2) == (worse.status, whole.status)
    assert ("b.plan: nothing got worse; as it stands now: " in worse.out, "c.plan" in worse.out) == (True, False)
    assert all(f"{name}.plan: nothing changed; as it stands now: " in whole.out for name in "bc")
    assert "a.plan" not in whole.out


def test_a_part_that_a_setting_names_is_told_by_its_name_alone(run: Run) -> None:
    walls = HIGH + HIGH.replace("west", "east").replace("faces W", "faces E")
    doors = [f"{walls}door front {{ wall {side}; height 7' }}\n" for side in ("west", "east")]
    assert "  door front: wall west to east" in run("compare", "a.plan", "b.plan", a=doors[0], b=doors[1]).out


def test_what_lacks_more_is_told_with_both_values(run: Run) -> None:
    assert '(now 3", was 4")' in " ".join(run("compare", "a.plan", "b.plan", a=LOW, b=LOWER).out.split())


def test_the_object_holds_the_alternates_that_changed(run: Run) -> None:
    new = OTHERS.replace('20"', '3"').replace('"old"', '"new"')
    found = object_of(run("compare", "a.plan", "b.plan", "--json", a=OTHERS, b=new).out)
    assert isinstance(found["plans"], list)
    told = found["plans"][0]["alternates"]
    assert [("low", "both"), ("new", "added"), ("old", "removed")] == [(one["alternate"], one["state"]) for one in told]
    assert "sill-too-near-grade on wall west" in [one["finding"] for one in told[0]["findings"]]


def test_folders_are_matched_by_path_and_added_and_removed_plans_are_told(run: Run, tmp_path: Path) -> None:
    write(tmp_path, old__deep__a=LOW, old__b=LOW, new__deep__a=LOWER, new__c=HIGH)
    found = object_of(run("compare", "old", "new", "--json").out)
    assert isinstance(found["plans"], list)
    assert [("b.plan", "removed"), ("c.plan", "added"), ("deep/a.plan", "both")] == [
        (plan["plan"], plan["state"]) for plan in found["plans"]
    ]


HOUSE = CLEAN + LOW + 'wall east { starts 20"; faces E }\n'


def moves(out: str) -> list[tuple[str, str, str | None]]:
    plans = object_of(out)["plans"]
    assert isinstance(plans, list)
    return [(plan["plan"], plan["state"], plan["moved from"]) for plan in plans]


def test_a_plan_that_was_moved_is_compared_with_what_it_was(run: Run, tmp_path: Path) -> None:
    write(tmp_path, old__a=HOUSE, old__b=LOWER, new__deep__a=HOUSE, new__c=LOWER)
    told = run("compare", "old", "new", "--worse", "--json")
    assert (0, [("c.plan", "both", "b.plan"), ("deep/a.plan", "both", "a.plan")]) == (told.status, moves(told.out))
    rows = run("compare", "old", "new").out.splitlines()
    assert any(row.startswith("deep/a.plan: moved from a.plan; nothing changed; as it stands now: ") for row in rows)
    assert rows[-1] == "2 plans compared; 2 unchanged; 2 moved."
    assert "#### deep/a.plan (moved from a.plan)" in run("compare", "old", "new", "--markdown").out


def test_a_plan_that_was_moved_and_changed_is_known_by_its_likeness(run: Run, tmp_path: Path) -> None:
    write(tmp_path, old__a=HOUSE, new__b="# another note\n\n" + HOUSE.replace('4"', '3"'))
    told = run("compare", "old", "new", "--worse", "--json")
    assert (1, [("b.plan", "both", "a.plan")]) == (told.status, moves(told.out))
    assert ("more lacking", "sill-too-near-grade on wall west") in changes(told.out)
    assert "b.plan: moved from a.plan" in run("compare", "old", "new").out.splitlines()


def test_a_plan_unlike_any_other_is_removed_and_not_moved(run: Run, tmp_path: Path) -> None:
    write(tmp_path, old__a=HOUSE, old__empty="# nothing\n", new__b=HIGH, new__void="# nothing\n")
    told = [("a.plan", "removed"), ("b.plan", "added"), ("empty.plan", "removed"), ("void.plan", "added")]
    assert [(*one, None) for one in told] == moves(run("compare", "old", "new", "--json").out)


def test_of_equal_plans_those_that_keep_the_name_of_their_file_are_matched_first(run: Run, tmp_path: Path) -> None:
    write(tmp_path, old__a=HOUSE, old__b=HOUSE, new__deep__b=HOUSE, new__c=HOUSE)
    expected = [("c.plan", "both", "a.plan"), ("deep/b.plan", "both", "b.plan")]
    assert expected == moves(run("compare", "old", "new", "--json").out)


def test_a_moved_plan_that_cannot_be_read_is_told_and_not_matched(run: Run, tmp_path: Path) -> None:
    write(tmp_path, old__a=HOUSE, new__b=b"\0")
    told = run("compare", "old", "new", "--json")
    assert (2, [("a.plan", "removed", None)]) == (told.status, moves(told.out))


def test_a_plan_that_was_moved_in_a_repository_is_known_there(run: Run, repository: Path) -> None:
    write(repository, house=HOUSE)
    git(repository, "commit", "-qam", "a house")
    (repository / "lake").mkdir()
    git(repository, "mv", "house.plan", "lake/cabin.plan")
    moved = [(os.path.join("lake", "cabin.plan"), "both", "house.plan")]
    assert moved == moves(run("compare", "--revisions", "main", "--json").out)
    git(repository, "commit", "-qam", "moved")
    assert moved == moves(run("compare", "--revisions", "HEAD~1", "HEAD", "--worse", "--json").out)


def test_a_file_that_only_others_use_is_no_plan_of_its_own(run: Run, tmp_path: Path) -> None:
    typical = 'typical wall { build log round 10"; starts 20" }\n'
    user = 'use "std.plan"\nwall west { faces W }\n'
    write(tmp_path, old__std=typical, old__a=user, new__std=typical.replace('20"', '4"'), new__a=user)
    result = run("compare", "old", "new", "--json")
    assert [("new", "sill-too-near-grade on wall west")] == [
        one for one in changes(result.out) if one[1].startswith("sill")
    ]
    assert '"plan": "std.plan"' not in result.out


def test_one_plan_that_cannot_be_read_does_not_keep_the_others_from_being_compared(run: Run, tmp_path: Path) -> None:
    write(tmp_path, old__a=b"\0", new__a=LOW, old__b=LOW, new__b=LOWER)
    result = run("compare", "old", "new", "--json")
    path = os.path.join("old", "a.plan")
    told = f"{path}: cannot be read: it is not a text file"
    assert (2, f"speclint: {told}\n") == (result.status, result.err)
    assert [{"plan": "a.plan", "message": told}] == object_of(result.out)["unread"]
    assert [("more lacking", "sill-too-near-grade on wall west")] == changes(result.out)


@pytest.mark.parametrize(
    ("words", "status", "told"),
    [
        (("compare",), 3, "name two plans or two folders, the old and the new, or ask for --revisions"),
        (("compare", "a.plan"), 3, "name two plans or two folders, the old and the new, or ask for --revisions"),
        (("compare", "a.plan", "gone.plan"), 2, "gone.plan: cannot be read: there is no such file"),
        (("compare", "gone.plan", "a.plan"), 2, "gone.plan: cannot be read: there is no such file"),
        (("compare", "a.plan", "."), 3, ". is a folder and the other is not: name two of a kind"),
        (("compare", "empty", "empty"), 3, "neither empty nor empty holds a plan (a file whose name ends in .plan)"),
        (("compare", "a.plan", "a.plan", "--today", "soon"), 3, "“soon” is not a date such as 2027-06-30"),
        (("compare", "--revisions"), 3, "name a revision to compare with, such as: speclint compare --revisions main"),
        (
            ("compare", "--revisions", "main"),
            3,
            "this folder is in no git repository; without --revisions two files or folders are compared",
        ),
    ],
)
def test_wrong_use_is_told_in_words(run: Run, tmp_path: Path, words: tuple[str, ...], status: int, told: str) -> None:
    (tmp_path / "empty").mkdir()
    result = run(*words, a=LOW)
    assert (status, f"speclint: {told}\n") == (result.status, result.err)


def test_without_the_git_program_the_way_out_is_named(run: Run, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setenv("PATH", "")
    told = "speclint: the git program is not found; without --revisions two files or folders are compared\n"
    result = run("compare", "--revisions", "main")
    assert (3, told) == (result.status, result.err)


def test_two_revisions_are_compared_for_the_plans_of_the_folder(run: Run, repository: Path) -> None:
    result = run("compare", "--revisions", "first", "main", "--json")
    found = object_of(result.out)
    assert [("more lacking", "sill-too-near-grade on wall west")] == changes(result.out)
    assert {"name": "first", "commit": git(repository, "rev-parse", "first")} == found["old"]


@pytest.mark.parametrize("words", [("main",), ("main", "house.plan"), ("main", "."), ("HEAD~0", "./house.plan")])
def test_without_a_new_revision_the_files_on_disk_are_compared(
    run: Run, repository: Path, words: tuple[str, ...]
) -> None:
    write(repository, house=HIGH)
    result = run("compare", "--revisions", *words, "--json")
    assert [("cured", "sill-too-near-grade on wall west")] == [one for one in changes(result.out) if "sill" in one[1]]


def test_only_the_plans_named_are_compared_and_by_the_name_the_user_gave(run: Run, repository: Path) -> None:
    write(repository, sub__other=LOW)
    git(repository, "add", ".")
    git(repository, "commit", "-qm", "more")
    os.chdir(repository / "sub")
    result = run("compare", "--revisions", "first", "main", "../house.plan")
    assert os.path.join("..", "house.plan") in result.out
    assert result.out.rstrip().splitlines()[-1].startswith("1 plan compared")


def test_a_plan_that_only_one_revision_holds_is_told(run: Run, repository: Path) -> None:
    write(repository, more=HIGH)
    git(repository, "add", ".")
    git(repository, "rm", "-q", "house.plan")
    git(repository, "commit", "-qm", "another house")
    result = run("compare", "--revisions", "first", "main", "house.plan", "more.plan")
    assert ("house.plan: the plan was removed", "more.plan: a new plan") == tuple(
        row for row in result.out.splitlines() if row.startswith(("house.plan", "more.plan"))
    )


def test_used_files_are_read_at_the_same_revision(run: Run, repository: Path) -> None:
    write(repository, in__std='typical wall { starts 20" }\n', in__a='use "std.plan"\nwall b { build log round 10" }\n')
    git(repository, "add", ".")
    git(repository, "commit", "-qm", "typicals")
    write(repository, in__std='typical wall { starts 4" }\n')
    there = run("compare", "--revisions", "main", "main", "in/a.plan", "--json")
    now = run("compare", "--revisions", "main", "in/a.plan", "--json")
    assert ([], [("new", "sill-too-near-grade on wall b")]) == (
        changes(there.out),
        [one for one in changes(now.out) if "sill" in one[1]],
    )


@pytest.mark.parametrize("used", ["../house.plan", "/etc/hostname", "gone.plan"])
def test_a_used_file_outside_the_folder_of_the_plan_is_not_read_at_a_revision(
    run: Run, repository: Path, used: str
) -> None:
    write(repository, in__a=f'use "{used}"\nwall b {{ starts 30" }}\n')
    git(repository, "add", ".")
    git(repository, "commit", "-qm", "a use")
    result = run("compare", "--revisions", "main", "main", "in/a.plan")
    assert (2, True) == (result.status, "1 place cannot be read" in result.out)


@pytest.mark.parametrize(
    ("words", "told"),
    [
        (("mains",), "“mains” is no revision of this repository (did you mean “main”?)"),
        (("main", "frist"), "“frist” is no revision of this repository (did you mean “first”?)"),
        (("0000000000000000000000000000000000000000",), f"“{'0' * 40}” is no revision of this repository"),
        (("main:house.plan",), "“main:house.plan” is no revision of this repository"),
        (("--", "--output=x"), "“--output=x” is no revision of this repository"),
        (("--", "-p", "main"), "“-p” is no revision of this repository"),
        (("main", "x.plan"), "x.plan: there is no such plan, neither in main nor on disk"),
        (("first", "main", "x.plan"), "x.plan: there is no such plan, neither in first nor in main"),
        (("main", "main", "../out.plan"), "../out.plan: lies outside the git repository "),
    ],
)
def test_a_revision_or_a_plan_that_is_not_there_is_told(
    run: Run, repository: Path, words: tuple[str, ...], told: str
) -> None:
    result = run("compare", "--revisions", *words)
    more = f"{told}{repository.name}" if told.endswith("repository ") else told
    assert (3, f"speclint: {more}\n") == (result.status, result.err)


def test_a_word_that_is_a_revision_and_a_folder_is_refused(run: Run, repository: Path) -> None:
    write(repository, main__a=LOW)
    result = run("compare", "--revisions", "first", "main")
    told = "speclint: “main” is a revision and a file: write ./main for the file, or heads/main\n"
    assert (3, told) == (result.status, result.err)


@pytest.mark.parametrize(
    ("raw", "told"),
    [
        (b"\x7fELF\0\0\1", "it is not a text file"),
        (b"wall a { }\n\nwall b\xff", "line 3 holds bytes that are not UTF-8 text; save the file as UTF-8"),
        (b"#" * 4_000_001, "it is too large; the most that is read is 4 MB"),
    ],
    ids=["binary", "wrong bytes", "too large"],
)
def test_what_is_no_plan_in_a_revision_is_refused_as_on_disk(run: Run, repository: Path, raw: bytes, told: str) -> None:
    write(repository, house=raw)
    git(repository, "commit", "-qam", "no plan")
    result = run("compare", "--revisions", "main", "first", "house.plan")
    assert (2, f"speclint: main:house.plan: cannot be read: {told}\n") == (result.status, result.err)


def test_a_symbolic_link_in_a_revision_is_not_followed(run: Run, repository: Path) -> None:
    (repository / "link.plan").symlink_to("house.plan")
    git(repository, "add", ".")
    git(repository, "commit", "-qm", "a link")
    result = run("compare", "--revisions", "main", "main", "link.plan")
    told = "speclint: main:link.plan: cannot be read: it is a symbolic link in main\n"
    assert (2, told) == (result.status, result.err)


def test_what_git_would_not_take_is_no_plan_on_disk(run: Run, repository: Path) -> None:
    (repository / ".gitignore").write_text("built/\n")
    write(repository, built__a=LOW, more=LOW)
    found = object_of(run("compare", "--revisions", "main", "--json").out)
    assert isinstance(found["plans"], list)
    assert ["house.plan", "more.plan"] == [plan["plan"] for plan in found["plans"]]


def test_no_program_that_a_repository_names_is_run(run: Run, repository: Path, tmp_path: Path) -> None:
    trap = tmp_path / "trap.sh"
    trap.write_text(f"#!/bin/sh\ntouch '{tmp_path}/sprung'\n")
    trap.chmod(0o755)
    for setting in ("core.fsmonitor", "core.pager", "diff.external", "diff.trap.textconv"):
        git(repository, "config", setting, str(trap))
    (repository / ".gitattributes").write_text("*.plan diff=trap\n")
    assert run("compare", "--revisions", "first").status == 1
    assert run("compare", "--revisions", "first", "main").status == 1
    assert not (tmp_path / "sprung").exists()


def test_names_with_spaces_marks_and_letters_of_all_kinds_are_found_in_a_revision(run: Run, repository: Path) -> None:
    name = '*h[ü]s "a"\n b.plan'
    (repository / name).write_text(LOW)
    git(repository, "add", ".")
    git(repository, "commit", "-qm", "a name")
    (repository / name).write_text(LOWER)
    found = object_of(run("compare", "--revisions", "main", name, "--json").out)
    assert isinstance(found["plans"], list)
    assert [(name, True)] == [(plan["plan"], plan["changed"]) for plan in found["plans"]]


def test_a_shallow_copy_says_that_the_revision_may_have_to_be_fetched(
    run: Run, repository: Path, tmp_path: Path
) -> None:
    copy = tmp_path / "copy"
    git(tmp_path, "clone", "-q", "--depth", "1", repository.as_uri(), str(copy))
    os.chdir(copy)
    result = run("compare", "--revisions", "v0.1")
    told = "“v0.1” is no revision of this repository (this copy of the repository is shallow; fetch the revision first)"
    assert (3, f"speclint: {told}\n") == (result.status, result.err)


def test_a_folder_of_the_repository_is_its_top_by_any_path(repository: Path) -> None:
    link = repository.parent / f"{repository.name}-link"
    link.symlink_to(repository)
    held = Repository(Path(os.path.realpath(repository)))
    assert ("", "house.plan") == (held.inside(str(link)), held.inside(str(link / "house.plan")))


def test_a_variance_that_expired_since_is_told_by_the_day_of_the_old_side(run: Run) -> None:
    text = LOW + 'variance sill-too-near-grade { because "a"; accepted by "A. Tester"; until 2026-06-30 }\n'
    days = ("--today", "2026-07-01", "--day-of-old", "2026-06-01")
    result = run("compare", "a.plan", "a.plan", "--worse", "--json", *days, a=text)
    assert (1, True) == (result.status, ("back", "sill-too-near-grade on wall west") in changes(result.out))


def test_units_are_those_asked_for(run: Run) -> None:
    out = run("compare", "a.plan", "b.plan", "--units", "metric", a=LOW, b=LOWER).out
    assert "  wall west: starts 102 mm to 76 mm" in out.splitlines()


def test_the_result_can_be_written_to_a_file(run: Run, tmp_path: Path) -> None:
    assert "" == run("compare", "a.plan", "b.plan", "--markdown", "--into", "told.md", a=LOW, b=LOWER).out
    assert (tmp_path / "told.md").read_text(encoding="utf-8").startswith("### Plan comparison\n")


def test_house_limits_are_those_of_the_review(run: Run, tmp_path: Path) -> None:
    (tmp_path / "limits").write_text('rule sill-too-near-grade { set aside "a test" }\n')
    result = run("compare", "a.plan", "b.plan", "--json", "--house-limits", "limits", a=LOW, b=LOWER)
    assert [] == [one for one in changes(result.out) if "sill-too-near-grade" in one[1]]


def test_the_markdown_has_a_table_of_what_changed_and_folds_the_rest(run: Run) -> None:
    rows = run("compare", "a.plan", "b.plan", "--markdown", a=LOW, b=LOWER).out.splitlines()
    assert "| change | element | finding | rule |" in rows
    assert any(row.startswith("| more lacking, hold | wall west | wall west starts 3") for row in rows)
    assert "<details><summary>In the plan: 1 changes</summary>" not in rows
    assert "<details><summary>In the plan: 1 change</summary>" in rows
    assert rows.count("</details>") == sum(row.startswith("<details>") for row in rows)


def test_mark_up_in_a_variance_is_shown_and_not_obeyed(run: Run) -> None:
    reason = "<img src=x> | [a](https://example.org) `b` @someone #1 \u202e www.example.org"
    text = LOW + f'variance sill-too-near-grade {{ because "{reason}"; accepted by "*A*"; until 2027-06-30 }}\n'
    out = run("compare", "a.plan", "b.plan", "--markdown", "--today", "2026-11-25", a=LOW, b=text).out
    (row,) = (row for row in out.splitlines() if row.startswith("| accepted, hold"))
    assert ("<img" in out, "[a](" in out, "@someone" in out, "://" in out, "#1" in out, "\u202e" in out) == (False,) * 6
    assert 5 == row.replace("\\|", "").count("|")


@pytest.mark.parametrize(
    ("text", "expected"),
    [
        ("a | b", "a \\| b"),
        ("<b>&amp;", "&lt;b&gt;&amp;amp;"),
        ("wall_a *b* `c`", "wall\\_a \\*b\\* \\`c\\`"),
        ("two\nlines", "two lines"),
        ("@a", "@&#8203;a"),
        ("http://a", "http:&#8203;//a"),
        ("#12", "\\#&#8203;12"),
        ("6\" of 8' at 1/4", "6\" of 8' at 1/4"),
    ],
)
def test_text_is_escaped_for_markdown(text: str, expected: str) -> None:
    assert expected == escaped(text)
