"""`upkeep`: the forecast as a page, rows, an object and a calendar; rates of the user's own; wrong use."""

from __future__ import annotations

import csv
import io
import json
import os
from pathlib import Path

import pytest

from speclint.outputs.upkeep import every_words
from tests.commands.conftest import Run
from tests.forecast.test_outlook import HOUSE

DAY = ("--today", "2026-11-25")
PLAN = HOUSE + "alternate \"wide eaves\" { roof main { eaves 4'; rakes 4' } }\ncare { refinish 9 years }\n"


def test_the_page_tells_what_when_how_and_at_what_cost(run: Run) -> None:
    result = run("upkeep", "a.plan", *DAY, a=PLAN)
    assert (0, "") == (result.status, result.err)
    for told in (
        "30 years from 2026",
        "DEMONSTRATION RATES",
        "wall south",
        "semitransparent stain",
        "from a scaffold or lift",
        "Life-cycle cost of these coats",
        "every 9 years",
        "When, at the likely lives",
        "wash from the bottom up",
        "trained people with fall protection",
    ):
        assert told in " ".join(result.out.split()), told


def test_the_same_words_give_the_same_page(run: Run) -> None:
    assert run("upkeep", "a.plan", *DAY, a=PLAN).out == run("upkeep", "a.plan", *DAY, a=PLAN).out


def test_rates_of_ones_own_take_the_place_of_the_demonstration(run: Run, tmp_path: Path) -> None:
    (tmp_path / "my.rates").write_text('rates { labour 0; stain gallon 0; currency "EUR" }', encoding="utf-8")
    result = run("upkeep", "a.plan", "--rates", "my.rates", *DAY, a=PLAN)
    assert (0, True) == (result.status, "EUR" in result.out)
    assert "DEMONSTRATION RATES" not in result.out
    assert "but for demonstration: cleaner gallon" in " ".join(result.out.split())


def test_alternates_are_compared(run: Run) -> None:
    result = run("upkeep", "a.plan", "--alternates", *DAY, a=PLAN)
    assert (0, True) == (result.status, "wide eaves" in result.out)
    assert "->" in result.out


def test_the_object_and_the_rows_agree(run: Run) -> None:
    found = json.loads(run("upkeep", "a.plan", "--json", *DAY, a=PLAN).out)
    rows = list(csv.DictReader(io.StringIO(run("upkeep", "a.plan", "--csv", *DAY, a=PLAN).out)))
    coats = [row for row in rows if row["task"].startswith("coat")]
    assert sum(len(part["due"]) for part in found["parts"]) == len(coats)
    assert sum(found["by year"]) == pytest.approx(sum(float(row["cost [currency]"]) for row in coats), rel=0.01)
    assert all(part["days between coats"]["low"] <= part["days between coats"]["high"] for part in found["parts"])
    assert any("finish life" in str(part["evidence"]) for part in found["parts"])


def test_page_rows_and_calendar_name_the_same_years(run: Run) -> None:
    rows = csv.DictReader(io.StringIO(run("upkeep", "a.plan", "--csv", *DAY, a=PLAN).out))
    of_rows = {(row["part"], row["year"]) for row in rows if row["task"].startswith("coat")}
    days = run("upkeep", "a.plan", "--calendar", *DAY, a=PLAN).out.replace("\r", "").replace("\n ", "")
    of_days = {
        (event.split("SUMMARY:Look at ")[1].split(":")[0], event.split("VALUE=DATE:")[1][:4])
        for event in days.split("BEGIN:VEVENT")
        if "is likely to be due" in event
    }
    page = run("upkeep", "a.plan", *DAY, a=PLAN).out.split("When, at the likely lives")[1].split("  Season")[0]
    assert of_rows == of_days
    assert {year for _, year in of_rows} == {row.split()[0] for row in page.strip().splitlines()}


def test_no_row_lies_before_the_start(run: Run) -> None:
    rows = csv.DictReader(io.StringIO(run("upkeep", "a.plan", "--csv", *DAY, a=PLAN).out))
    assert min((int(row["year"]), int(row["month"])) for row in rows) >= (2026, 11)


def test_the_calendar_goes_into_a_file(run: Run, tmp_path: Path) -> None:
    result = run("upkeep", "a.plan", "--calendar", "--into", "home.ics", *DAY, a=PLAN)
    assert (0, "") == (result.status, result.out)
    assert (tmp_path / "home.ics").read_bytes().startswith(b"BEGIN:VCALENDAR\r\nVERSION:2.0\r\n")


@pytest.mark.parametrize(
    ("words", "status", "told"),
    [
        (("upkeep",), 3, "name a plan, or ask for --demo"),
        (("upkeep", "none.plan"), 2, "there is no such file"),
        (("upkeep", "a.plan", "--years", "0"), 3, "a forecast runs 1 to 60 years"),
        (("upkeep", "a.plan", "--years", "500"), 3, "a forecast runs 1 to 60 years"),
        (("upkeep", "a.plan", "--years", "many"), 3, "--years"),
        (("upkeep", "a.plan", "--rates", "none.rates"), 3, "none.rates: cannot be read"),
        (("upkeep", "a.plan", "--today", "tomorrow"), 3, "write the day as 2026-11-25"),
        (("upkeep", "a.plan", "--today", "9990-01-01"), 3, "a day in the years 1900 to 2200 is wanted"),
        (("upkeep", "a.plan", "--today", "0001-01-01"), 3, "a day in the years 1900 to 2200 is wanted"),
        (("upkeep", "--demo", "a.plan"), 3, "a.plan: --demo takes the demo plan"),
        (("upkeep", "--demo", "none.plan"), 3, "none.plan: --demo takes the demo plan"),
        (("upkeep", "--demo", "wall"), 3, "--demo takes the demo plan"),
        (("upkeep", "a.plan", "--alternate", "none"), 3, "there is no alternate “none”"),
        (("upkeep", "a.plan", "--csv", "--json"), 3, "not allowed with"),
    ],
)
def test_wrong_use_is_told(run: Run, words: tuple[str, ...], status: int, told: str) -> None:
    result = run(*words, a=PLAN)
    assert (status, True) == (result.status, told in result.err), result.err


def test_a_rates_file_with_a_mistake_is_told_at_its_place(run: Run, tmp_path: Path) -> None:
    (tmp_path / "my.rates").write_text("rates { labour lots }", encoding="utf-8")
    result = run("upkeep", "a.plan", "--rates", "my.rates", a=PLAN)
    assert (3, True) == (result.status, "my.rates:1:16: “labour” needs a plain number" in result.err)


def test_parts_that_cannot_be_forecast_are_named(run: Run) -> None:
    result = run("upkeep", "a.plan", *DAY, a=PLAN.replace("faces S; ", ""))
    assert (0, True) == (result.status, "faces of wall south" in result.out)


@pytest.mark.parametrize(
    "words",
    [
        ("sequence", "--demo", "a.plan"),
        ("draw", "--demo", "a.plan", "--into", "x"),
        ("report", "--demo", "a.plan", "--to", "x.html"),
        ("measures", "--demo", "a.plan"),
        ("exposure", "--demo", "a.plan"),
        ("trace", "--demo", "a.plan"),
        ("cure", "--demo", "a.plan"),
        ("explain", "rain", "a.plan", "--demo"),
    ],
)
def test_no_command_passes_over_a_plan_beside_the_demo(run: Run, words: tuple[str, ...]) -> None:
    result = run(*words, a=PLAN)
    assert (3, True) == (result.status, "a.plan: --demo takes the demo plan" in result.err), result


def test_a_part_of_the_demo_plan_can_still_be_named(run: Run) -> None:
    assert 0 == run("measures", "--demo", "wall", "west").status
    assert 0 == run("explain", "upkeep", "cost", "--demo", "rail", "lake").status


def flat(text: str) -> str:
    return " ".join(text.split())


def page_of(run: Run, *words: str, plan: str = PLAN) -> str:
    result = run("upkeep", "a.plan", *DAY, *words, a=plan)
    assert 0 == result.status, result.err
    return flat(result.out)


UNTOLD = PLAN.replace("wall west {", "wall west { finish clear film;")


def alternate(run: Run, change: str, plan: str = PLAN) -> str:
    """The row of an alternate that makes a change, and what is told of its parts."""
    text = plan + f'alternate "other" {{ {change} }}\n'
    page = run("upkeep", "a.plan", "--alternates", *DAY, a=text).out
    (row,) = (line for line in page.splitlines() if line.startswith("other "))
    return flat(row + page.split("  other\n")[1])


def test_the_page_tells_how_many_parts_it_holds(run: Run) -> None:
    assert "Parts told, 2 of 2 $" in page_of(run)
    assert "Parts told, 1 of 2 $" in page_of(run, plan=UNTOLD)
    assert "Whole house" not in page_of(run)


def test_the_page_tells_what_it_leaves_out(run: Run) -> None:
    more = (
        "corner sw { of south, west }\npurlin ridge { wall west }\nbeam b { size 8x8 }\nstair s { risers 4 }\n"
        "deck d { boards composite; finish none }\n"
    )
    page = page_of(run, plan=PLAN + more)
    assert "Not counted log ends (sw), purlin ends (ridge), beams (b), stairs (s), frames of windows" in page
    assert "washing between coats" in page
    assert "deck d: composite boards, finish none" in page


def test_the_page_tells_from_when_it_counts_and_why_it_does_not_add_up(run: Run) -> None:
    page = page_of(run)
    assert "counted as if it were coated on 2026-11-25" in page
    assert "rows, years and total do not add up" in page
    assert "Season May to Sep, the months at Duluth, MN" in page


def test_a_bare_wall_is_mentioned(run: Run) -> None:
    assert "wall west: finish none: its wood is left bare" in page_of(
        run, plan=PLAN.replace("wall west {", "wall west { finish none;")
    )


def test_a_part_that_falls_due_twice_in_a_year_is_named_once(run: Run) -> None:
    short = PLAN.replace("finish semitransparent stain; coats 2", "finish water repellent; coats 2")
    page = run("upkeep", "a.plan", *DAY, a=short.replace("eaves 2'; rakes 1'", "eaves 0'; rakes 0'")).out
    rows = page.split("When, at the likely lives")[1].split("  Season")[0].splitlines()
    assert any("twice" in row for row in rows), rows
    assert all(row.count("wall west") < 2 for row in rows)


@pytest.mark.parametrize(
    ("care", "told"),
    [
        ("lift access yes", "the plan keeps level ground for one (lift access yes)"),
        ("lift access no", "the plan has no level ground for one (lift access no): its hire is priced all the same"),
        ("wash 1 year", "the plan does not say whether one can stand there"),
        ("reach step ladder", "beyond the owner's step ladder (reach): to be hired out"),
    ],
)
def test_lift_work_is_priced_with_what_the_plan_says_of_it(run: Run, care: str, told: str) -> None:
    page = page_of(run, plan=PLAN.replace("refinish 9 years", f"refinish 9 years; {care}"))
    assert "from a scaffold or lift at $320 a day" in page
    assert told in page


def test_what_the_plan_leaves_open_is_asked(run: Run) -> None:
    deck = (
        "deck d { along south; depth 10'; below wood 4\"; finish semitransparent stain }\n"
        'rail r { on deck d; height 36"; finish semitransparent stain }\n'
    )
    asks = page_of(run, plan=PLAN + deck).split("To be told")[1].split("Every year")[0]
    for told in ("top of rail r: a flat bare top", "lifts out of rail r", "lift access of care", "reach of care"):
        assert told in asks, told
    stated = PLAN.replace("refinish 9 years", "refinish 9 years; lift access no; reach step ladder")
    assert "To be told" not in page_of(run, plan=stated)


def test_intervals_of_the_plan_are_told(run: Run) -> None:
    care = PLAN.replace("refinish 9 years", "refinish 1 year; wash 180 days")
    page = page_of(run, plan=care)
    assert "the plan means to refinish every year" in page
    assert "no suds show (the plan says every 180 days)" in page
    assert "1 years" not in page_of(run, "--years", "1", plan=care)


@pytest.mark.parametrize(
    ("stated", "told"),
    [("1 year", "every year"), ("1 days", "every day"), ("180 days", "every 180 days"), ("10 years", "every 10 years")],
)
def test_an_interval_of_one_is_told_without_its_number(stated: str, told: str) -> None:
    assert told == every_words(stated)


def test_an_alternate_with_a_wall_that_is_not_told_is_not_compared(run: Run) -> None:
    page = alternate(run, "wall west { finish clear film }")
    assert "cannot be compared: wall west not told" in page
    assert "saves" not in page
    assert "not told (the handbook table has no life for clear film)" in page


def test_an_alternate_that_changes_the_weather_of_a_wall_that_is_not_told_is_not_compared(run: Run) -> None:
    page = alternate(run, "roof main { rakes 4' }", UNTOLD)
    assert "cannot be compared: wall west not told" in page
    assert "cannot be compared" not in alternate(run, "care { refinish 3 years }", UNTOLD)


def test_an_alternate_that_leaves_a_wall_bare_saves_nothing(run: Run) -> None:
    page = alternate(run, "wall west { finish none }")
    assert "cannot be compared: wall west left bare" in page
    assert "saves" not in page
    back = alternate(run, "wall west { finish paint }", PLAN.replace("wall west {", "wall west { finish none;"))
    assert "cannot be compared: wall west left bare" in back


def test_a_belt_of_masonry_is_not_nothing(run: Run) -> None:
    page = alternate(run, "stone belt { at wall south }")
    assert "cannot be compared: how much of wall south stone belt covers is not told" in page
    assert "no coat that is told changes; the alternate is about: stone belt" in page
    assert "nothing that is coated" not in page


def test_a_wall_in_stone_saves_its_coats(run: Run) -> None:
    page = alternate(run, "wall west { build framed with stone; finish none }")
    assert "1 of 1" in page
    assert "saves $" in page
    assert "-> no coat (its outside is stone)" in page


def test_what_costs_more_is_not_a_negative_saving(run: Run) -> None:
    page = alternate(run, "roof main { eaves 0'; rakes 0' }")
    assert " more" in page.split("wall south")[0]
    assert "costs $" in page
    assert "$-" not in page
    assert "$ -" not in page


@pytest.mark.parametrize(
    ("plan", "told"),
    [
        ('site { weather "Duluth, MN" }', "the plan has no wall, deck, rail or post"),
        (PLAN.replace("finish semitransparent stain", "finish none"), "nothing is coated"),
        (PLAN.replace("finish semitransparent stain", "finish clear film"), "no coat can be forecast"),
    ],
)
def test_a_forecast_without_coats_says_why(run: Run, plan: str, told: str) -> None:
    page = page_of(run, plan=plan)
    assert told in page.lower()
    assert "Parts told" not in page
    for form in ("--csv", "--json", "--calendar"):
        result = run("upkeep", "a.plan", form, *DAY, a=plan)
        assert (0, True) == (result.status, told in result.err), form


def test_the_heads_of_the_rows_name_their_units(run: Run) -> None:
    head = run("upkeep", "a.plan", "--csv", *DAY, a=PLAN).out.splitlines()[0]
    assert "plan,year,month,part,task,area [m2],reached from,finish [L],work [h],cost [currency],currency" == head


@pytest.mark.parametrize("units", ["imperial", "metric"])
def test_pages_are_no_wider_than_the_screen(run: Run, units: str) -> None:
    for words in ((), ("--alternates",)):
        told = run("upkeep", "--demo", *DAY, *words, "--units", units).out
        assert max(len(line) for line in told.splitlines()) <= 110


@pytest.mark.parametrize(
    ("topic", "told"),
    [
        ("interval", ("Equation: interval =", "Table 16-5 (published)", "Table 16-4 (memory)", "ours: wear by sun")),
        ("cost", ("Equation: cost =", "(second-hand)", "common practice: coverage", "ours: rates for demonstration")),
    ],
)
def test_the_figures_unfold(run: Run, topic: str, told: tuple[str, ...]) -> None:
    page = flat(run("explain", "upkeep", topic).out)
    assert [] == [words for words in told if words not in page]


def test_the_figures_of_a_part_unfold(run: Run) -> None:
    cost = flat(run("explain", "upkeep", "cost", "a.plan", "wall west", a=PLAN).out)
    object = json.loads(run("upkeep", "a.plan", "--json", *DAY, a=PLAN).out)
    (part,) = (part for part in object["parts"] if part["part"] == "wall west")
    assert f"wall west ${part['cost']:,.0f} a coat of semitransparent stain" in cost
    assert f"work: {part['hours']:.1f} h x $45 = ${part['cost by what it pays']['work']:,.0f}" in cost
    assert "wall south" not in cost
    interval = flat(run("explain", "upkeep", "interval", "a.plan", "wall west", a=PLAN).out)
    assert "likely finish life of wall west" in interval
    assert "finish of wall west semitransparent stain typical" in interval
    bare = flat(run("explain", "upkeep", "cost", "a.plan", "wall west", a=UNTOLD).out)
    assert "wall west: not told: the handbook table has no life for clear film" in bare


def test_a_plan_without_coats_is_told_so(run: Run) -> None:
    result = run("upkeep", "a.plan", *DAY, a='site { weather "Duluth, MN" }')
    assert (0, True) == (result.status, "nothing is coated" in result.out)


def test_a_plan_of_which_the_name_is_no_text_has_a_calendar(run: Run, tmp_path: Path) -> None:
    name = os.fsdecode(b"b\xff.plan")
    (tmp_path / name).write_text(PLAN, encoding="utf-8")
    told = run("upkeep", name, "--calendar")
    assert (0, True) == (told.status, told.out.startswith("BEGIN:VCALENDAR"))
