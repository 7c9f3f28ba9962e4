"""The order of work: a table without contradictions, jobs from the parts of a plan, and steps held against it."""

from __future__ import annotations

import networkx
import pytest
from hypothesis import given, settings

from speclint.language.parse import parse
from speclint.measures.facts import Sheet
from speclint.measures.work_order import work_of
from speclint.model.build import build
from speclint.model.kinds import KINDS
from speclint.relations.work import in_order, reasons
from speclint.tables.work import STAGES, pairs, tasks
from tests.laws.houses import PLANS, example, read
from tests.measures.sheets import found, sheet
from tests.model.plans import plans


def test_every_pair_names_two_tasks_and_every_task_is_in_a_pair_or_stands_alone_at_a_stage() -> None:
    names = {task.name for task in tasks()}
    assert {pair.first for pair in pairs()} | {pair.then for pair in pairs()} <= names
    assert len(names) == len(tasks())


def test_every_task_has_a_stage_and_a_kind_that_the_language_knows() -> None:
    assert {task.stage for task in tasks()} == set(STAGES)
    assert {task.about for task in tasks()} <= {*KINDS, "home"}


def test_no_pairs_of_the_table_contradict_one_another() -> None:
    graph = networkx.DiGraph([(pair.first, pair.then) for pair in pairs()])
    assert [] == list(networkx.simple_cycles(graph))


def test_every_pair_has_a_reason_and_says_where_it_stands() -> None:
    assert [] == [pair for pair in pairs() if not pair.why or not str(pair.citation)]


def test_the_pairs_are_more_than_the_forty_eight_of_the_trade_list() -> None:
    assert len(pairs()) > 48


@pytest.mark.parametrize("name", PLANS)
def test_the_order_of_an_example_keeps_every_tie(name: str) -> None:
    from speclint.pipeline import PlanText, read_home

    facts, _ = read_home(PlanText(example(name), f"{name}.plan", read))
    work = work_of(facts)
    place = {job.name: at for at, job in enumerate(in_order(work))}
    assert [] == [tie for tie in work.web.ties if place[tie.source] >= place[tie.target]]
    assert len(work.jobs) == len(place)


@given(plans())
@settings(max_examples=40, deadline=None)
def test_the_work_of_a_generated_home_can_be_put_in_order(text: str) -> None:
    home, _ = build([parse(text, "a.plan")], "a.plan")
    work = work_of(Sheet(home))
    assert () == work.web.circle()
    assert len(work.jobs) == len(in_order(work))


BLOCKED = {
    "a chase bored after its beam is set": (
        "beam lake { size 8x8 }\nchase lamp { inside beam lake }\n"
        'step set { does "set the beam";  on beam lake }\n'
        'step late { does "bore for wires";  on chase lamp;  after set }'
    ),
    "stone behind a deck already framed": (
        "wall south { build log round }\ndeck sun { along south }\nstone south { at wall south }\n"
        'step deck { does "frame the deck";  on deck sun }\n'
        'step late { does "lay stone";  on stone south;  after deck }'
    ),
    "a wall face that can no longer be coated": (
        "wall south { finish solid stain }\ndeck sun { along south }\n"
        'step deck { does "frame the deck";  on deck sun }\n'
        'step late { does "coat and flash behind the deck";  on deck sun;  after deck }'
    ),
    "treatment after the ends are sealed": (
        "wall south { build log round }\ncorner sw { of south;  end grain sealed }\n"
        'step seal { does "seal ends";  on corner sw;  ends sealed }\n'
        'step late { does "treat ends";  on corner sw;  after seal;  ends field treated }'
    ),
    "boards before the frame is seen": (
        "deck sun { joist tops taped }\n"
        'step boards { does "lay the boards";  on deck sun }\n'
        'step late { does "tape joists";  on deck sun;  after boards }'
    ),
    "a rail hung before it is coated": (
        "rail sun { finish solid stain }\n"
        'step hang { does "hang the rail";  on rail sun }\n'
        'step late { does "coat the rail";  on rail sun;  after hang }'
    ),
    "by way of a step between": (
        "rail sun { finish solid stain }\nplanting fern { distance 3' }\n"
        'step hang { does "hang the rail";  on rail sun }\n'
        'step dig { does "dig a bed";  on planting fern;  after hang }\n'
        'step late { does "coat the rail";  on rail sun;  after dig }'
    ),
}


@pytest.mark.parametrize("text", BLOCKED.values(), ids=BLOCKED)
def test_blocked_work_is_told_with_its_reason(text: str) -> None:
    assert "no" == found("step late", "order kept", text).value
    told = found("step late", "wrong order", text).value
    wanted = ("must come before", "yet step late follows")
    assert [] == [words for words in wanted if words not in told]


@pytest.mark.parametrize("text", BLOCKED.values(), ids=BLOCKED)
def test_the_same_steps_turned_round_are_in_order(text: str) -> None:
    lines = [line.split(";  after")[0].rstrip(" }") + " }" for line in text.splitlines()]
    steps = [at for at, line in enumerate(lines) if line.startswith("step")]
    first, last = steps[0], steps[-1]
    lines[first] = lines[first].rstrip(" }") + ";  after late }"
    assert [] == work_of(sheet("\n".join(lines))).conflicts
    assert last > first


def order_of(text: str) -> list[str]:
    return [job.task.name for job in in_order(work_of(sheet(text))) if job.task is not None]


PORCH = "wall south { build log round }\nporch lake { along south; hung on wall }\n"


def test_step_flashing_at_a_side_is_laid_before_the_lower_roof_is_closed() -> None:
    order = order_of(PORCH + "junction lake { roof porch lake; wall south; type side }")
    assert order.index("flash side") < order.index("cover porch")


def test_the_apron_at_a_head_is_laid_over_the_covering_of_the_lower_roof() -> None:
    order = order_of(PORCH + "junction lake { roof porch lake; wall south; type head }")
    assert order.index("cover porch") < order.index("flash head")


def test_the_roof_over_the_wall_need_not_wait_for_the_flashing_of_a_lower_roof() -> None:
    text = (
        "wall south { build log round }\nroof main { covers south; form gable }\nroof annex { form shed }\n"
        "junction annex { roof annex; wall south; type side }"
    )
    musts = {(tie.source, tie.target) for tie in work_of(sheet(text)).web.ties}
    flash = "lay the step flashing of junction annex with the covering, a piece to each course"
    assert (True, False) == (
        (flash, "cover roof annex and close it to rain") in musts,
        (flash, "cover roof main and close it to rain") in musts,
    )


def test_a_kickout_is_set_before_the_piece_that_laps_over_it() -> None:
    order = order_of(PORCH + "junction lake { roof porch lake; wall south; kickout fitted }")
    assert order.index("kickout") < order.index("flash junction")


def test_log_ends_are_sealed_in_the_shop_after_they_are_treated() -> None:
    order = order_of("wall south { build log round; finish solid stain }\ncorner sw { of south; end grain sealed }")
    at = [order.index(name) for name in ("treat log ends", "seal log ends", "stack", "wait dry", "coat wall")]
    assert sorted(at) == at


LOGS = "foundation main { type basement }\nwall south { build log round }\nwindow bay { wall south }\n"
LOGS += "roof main { covers south; form gable }\npurlin ridge { wall south; end grain sealed }"


@pytest.mark.parametrize(
    ("first", "then"),
    [
        ("brace foundation", "backfill"),
        ("treat window cuts", "set windows"),
        ("set windows", "see gaps"),
        ("see gaps", "trim openings"),
        ("seal purlin ends", "close roof"),
        ("water test", "see first year"),
    ],
)
def test_what_is_hidden_later_is_done_first(first: str, then: str) -> None:
    order = order_of(LOGS)
    assert order.index(first) < order.index(then)


def test_steps_on_other_sides_of_the_house_do_not_close_each_other_in() -> None:
    text = (
        "wall south { build log round }\nwall north { build log round }\nstone south { at wall south }\n"
        'chase power { inside wall north }\nstep lay { does "lay stone";  on stone south }\n'
        'step bore { does "bore chases";  on chase power;  after lay }'
    )
    assert "yes" == found("step bore", "order kept", text).value


def test_steps_in_a_circle_are_told_once() -> None:
    text = 'step a { does "one";  after b }\nstep b { does "two";  after a }'
    told = [found(label, "step circle", text).value for label in ("step a", "step b")]
    assert ["step a, then step b, then step a", "none"] == told


def test_a_step_that_is_no_known_task_keeps_its_own_place() -> None:
    text = (
        'roof main { form gable }\nstep lamp { does "hang a lantern" }\n'
        'step roof { does "close the roof";  on roof main;  after lamp }'
    )
    names = [job.name for job in in_order(work_of(sheet(text)))]
    assert names.index("hang a lantern") < names.index("cover roof main and close it to rain")


def test_a_reason_that_a_longer_way_makes_needless_is_left_out() -> None:
    work = work_of(sheet("roof main { form gable }\nwall south { build log round }"))
    read = next(job for job in work.jobs.values() if job.task is not None and job.task.name == "wait dry")
    before = [tie.source for tie in work.web.into(read.name)]
    told = [tie.source for tie in reasons(work, read)]
    assert ["cover roof main and close it to rain"] == [name for name in before if name not in told]
