"""`trace` and `sequence`: what they print for people and for programs, and what slips of a plan look like."""

from __future__ import annotations

import json
import re
from pathlib import Path

import pytest

from tests.commands.conftest import Run

PLAN = """site { rain intensity 3 in/h;  frost depth 4' }
foundation main { type crawl space;  drain daylight }
wall south { length 40';  height 9';  starts 20";  build log round 10";  settling 4%;  grade 5%;  ground lawn }
roof main { covers south;  form shed;  low side south;  pitch 8:12;  run 18';  eaves 2';  rakes 1' }
gutter south { on roof main;  over south;  length 40';  profile ogee 6";  fall 1/16" per ft }
downspout south { gutter south;  count 2;  size 3x4;  ends splash block;  distance 3' }
porch lake { along south;  depth 8';  length 20';  roof height 8';  roof pitch 3:12;  hung on wall }
post lake { under porch lake;  stands on pier;  footing 60";  adjuster none }
step lay { does "stack the logs";  on wall south }
"""


def words(text: str) -> str:
    return " ".join(text.split())


def test_the_water_of_every_roof_is_told_with_area_flow_and_height(run: Run) -> None:
    result = run("trace", "a.plan", a=PLAN)
    assert (0, "") == (result.status, result.err)
    for told in (
        "design rain 3.0 in/h",
        "840 ft2 26.2 gpm roof main",
        "840 ft2 26.2 gpm 10'-8\" │ └ runs to the eave over wall south",
        "falls into gutter south, 35% of what it can carry",
        "840 ft2 26.2 gpm led away ground away from the house",
        "420 ft2 13.1 gpm downspout south lets go (splash block) on ground along wall south, each of 2",
    ):
        assert told.replace("│ ", "") in words(result.out).replace("│ ", ""), told


def test_one_element_is_told_with_what_reaches_it(run: Run) -> None:
    out = words(run("trace", "a.plan", "gutter", "south", a=PLAN).out)
    assert "reaches gutter south roof main runs to the eave of roof main over wall south, which falls into" in out
    assert "WHERE IT ENDS" not in out


def test_an_element_without_water_says_so(run: Run) -> None:
    assert "no roof water in the plan passes post lake" in run("trace", "a.plan", "post lake", a=PLAN).out


def test_loads_are_told_to_the_soil_with_what_moves(run: Run) -> None:
    out = words(run("trace", "a.plan", "--bearing", a=PLAN).out)
    assert "stands on a pier and footing of post lake, 5'-0\" deep where frost reaches 4'-0\"" in out
    assert "post lake at porch lake: " in out
    assert "fixed, TOO LITTLE" in out


def test_the_object_holds_every_node_and_tie_in_si(run: Run) -> None:
    found = json.loads(run("trace", "a.plan", "--json", a=PLAN).out)
    nodes = {node["name"]: node for node in found["nodes"]}
    assert pytest.approx(840 * 0.3048**2) == nodes["gutter south"]["area"]
    assert {tie["from"] for tie in found["ties"]} | {tie["to"] for tie in found["ties"]} <= set(nodes)
    bearing = json.loads(run("trace", "a.plan", "--bearing", "--json", a=PLAN).out)
    assert ["post lake"] == [one["part"] for one in bearing["moving"]]


DOT = re.compile(
    r'digraph "(?:[^"\\]|\\.)*" \{\n    rankdir = TB\n    node \[shape = box\]\n'
    r'(?:    "(?:[^"\\]|\\.)*"(?: -> "(?:[^"\\]|\\.)*")? \[label = "(?:[^"\\]|\\.)*"\]\n)*\}\n'
)


@pytest.mark.parametrize("asked", [("trace",), ("trace", "--bearing"), ("sequence",)], ids=" ".join)
def test_the_graph_is_whole_dot_whatever_a_plan_says(run: Run, asked: tuple[str, ...]) -> None:
    plan = PLAN.replace("stack the logs", "stack \\\\ the logs ]; evil")
    out = run(asked[0], "a.plan", *asked[1:], "--dot", a=plan).out
    assert DOT.fullmatch(out)


def test_a_result_can_go_into_a_file(run: Run, tmp_path: Path) -> None:
    assert ("", 0) == (run("trace", "a.plan", "--into", "w.txt", a=PLAN).out, 0)
    assert "WATER" in (tmp_path / "w.txt").read_text(encoding="utf-8")


SLIPS = {
    "gutter": ("gutter s { on roof main;  over south }", "ENDS NOWHERE gutter s: the plan has no downspout for it"),
    "downspout": (
        "gutter s { on roof main }\ndownspout s { gutter s;  ends deck }",
        "ENDS NOWHERE a deck that is not drawn: the plan has no deck for it to end on",
    ),
    "circle": (
        "gutter s { on porch p }\ndownspout s { gutter s;  onto porch p;  ends lower roof }\n"
        "porch p { along south;  depth 8';  length 9' }",
        "GOES ROUND porch p to eave of porch p to gutter s to downspout s to porch p",
    ),
}
WALL = "wall south { length 40' }\nroof main { covers south;  form shed;  low side south;  run 9';  eaves 1' }\n"


@pytest.mark.parametrize(("text", "told"), SLIPS.values(), ids=SLIPS)
def test_a_way_that_breaks_off_is_told_in_the_words_of_the_plan(run: Run, text: str, told: str) -> None:
    result = run("trace", "a.plan", a=WALL + text)
    assert (0, "") == (result.status, result.err)
    assert told in words(result.out)


def test_parts_that_bear_on_each_other_are_told(run: Run) -> None:
    out = run("trace", "a.plan", "--bearing", a="beam a { on beam b }\nbeam b { on beam a }\n").out
    assert "GOES ROUND  beam a on beam b on beam a" in out


def test_the_review_holds_for_every_such_slip(run: Run) -> None:
    text = WALL + SLIPS["circle"][0] + "\nbeam a { on beam b }\nbeam b { on beam a }\ngutter e { on roof main }\n"
    text += 'downspout e { gutter e;  ends deck }\nstep x { does "x";  after y }\nstep y { does "y";  after x }\n'
    result = run("review", "a.plan", a=text)
    wanted = ("roof-water-in-a-circle", "parts-bear-on-each-other", "downspout-ends-in-nothing", "steps-in-a-circle")
    assert (1, []) == (result.status, [rule for rule in wanted if rule not in result.out])


def test_the_order_of_work_is_told_by_stage_with_holds_and_reasons(run: Run) -> None:
    result = run("sequence", "a.plan", a=PLAN)
    assert (0, "") == (result.status, result.err)
    out = words(result.out)
    stages = ["GROUND", "FOUNDATION", "SHOP", "RAISING", "ROOF", "COATS", "WATER AND GRADE", "HANDOVER"]
    assert stages == sorted(stages, key=out.index)
    for told in ("HOLD footing of post lake", "after", "(the hole is seen open)", "the plan's step lay", "holds."):
        assert told in out, told


def test_work_that_the_plan_orders_wrongly_is_told_first(run: Run) -> None:
    plan = PLAN + 'step cut { does "cut and notch the logs";  on wall south;  after lay }\n'
    out = words(run("sequence", "a.plan", a=plan).out)
    assert "CANNOT BE DONE AS THE PLAN ORDERS IT step cut follows step lay, yet “cut, notch and drill" not in out
    plan = PLAN + "corner a { of south }\n"
    plan += 'step treat { does "treat the cut ends";  on corner a;  after lay }\n'
    out = words(run("sequence", "a.plan", a=plan).out)
    assert "CANNOT BE DONE AS THE PLAN ORDERS IT step treat follows step lay, yet “treat the cut ends" in out


def test_the_object_of_the_order_holds_jobs_conflicts_and_reasons(run: Run) -> None:
    found = json.loads(run("sequence", "a.plan", "--json", a=PLAN).out)
    place = {job["job"]: at for at, job in enumerate(found["jobs"])}
    wrong = [job for job in found["jobs"] for tie in job["after"] if place[tie["before"]] >= place[job["job"]]]
    assert ([], [], []) == (wrong, found["conflicts"], found["circle"])


@pytest.mark.parametrize("command", ["trace", "sequence"])
def test_wrong_use_is_told(run: Run, command: str) -> None:
    assert (3, True) == ((told := run(command)).status, "name a plan, or ask for --demo" in told.err)
    assert 3 == run(command, "none.plan").status or 2 == run(command, "none.plan").status
    assert (3, True) == ((told := run(command, "--demo", "--alternate", "x")).status, "no alternate" in told.err)


@pytest.mark.parametrize("command", ["trace", "sequence"])
def test_a_plan_with_a_mistake_is_told_and_gone_on_with(run: Run, command: str) -> None:
    result = run(command, "a.plan", a=PLAN + "wall x { heigth 9' }\n")
    assert (2, True, True) == (result.status, "heigth" in result.err, len(result.out) > 500)
