"""`upkeep`: the forecast as a page, rows, an object and a calendar; rates of the user's own; wrong use."""

from __future__ import annotations

import csv
import io
import json
from pathlib import Path

import pytest

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
        "Life-cycle cost of the coats",
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
    assert sum(found["by year"]) == pytest.approx(sum(float(row["cost"]) for row in coats), rel=0.01)
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
    page = run("upkeep", "a.plan", *DAY, a=PLAN).out.split("When, at the likely lives")[1].split("Every year")[0]
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


def test_a_plan_without_coats_is_told_so(run: Run) -> None:
    result = run("upkeep", "a.plan", *DAY, a='site { weather "Duluth, MN" }')
    assert (0, True) == (result.status, "nothing is coated" in result.out)
