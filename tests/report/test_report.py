"""The report as a page: what it tells, that all of it is escaped, and that nothing on it asks the network."""

from __future__ import annotations

import datetime
import re
from html.parser import HTMLParser

import pytest

from speclint.commands.upkeep import forecast_of
from speclint.forecast.rates import demo_rates
from speclint.language.uses import CannotRead
from speclint.pipeline import PlanText
from speclint.report.advice import count
from speclint.report.build import Material, report_page
from speclint.report.gather import material_of, titles_of
from speclint.report.story import story
from tests.laws.houses import example, read
from tests.specs.expected import book

TODAY = datetime.date(2026, 11, 25)
VOID = {"meta", "input", "br", "link", "img"}


def material(text: str, alternate: str = "") -> Material:
    plan = PlanText(text, "a.plan", read)
    return material_of(
        plan, book(), lambda sheet: forecast_of(sheet, demo_rates(), 30, TODAY), TODAY, "imperial", alternate
    )


@pytest.fixture(scope="module")
def lake() -> Material:
    return material(example("tamarack-point"))


@pytest.fixture(scope="module")
def spit() -> Material:
    return material(example("cedar-spit"))


@pytest.fixture(scope="module")
def page(lake: Material) -> str:
    return report_page(lake)


class Outline(HTMLParser):
    """Identities, links, and whether every element that is opened is closed."""

    def __init__(self, text: str) -> None:
        super().__init__()
        self.ids: list[str] = []
        self.links: list[str] = []
        self.open: list[str] = []
        self.tags: list[str] = []
        self.feed(text)

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        self.tags.append(tag)
        told = dict(attrs)
        if told.get("id"):
            self.ids.append(str(told["id"]))
        if tag == "a" and told.get("href"):
            self.links.append(str(told["href"]))
        if tag not in VOID:
            self.open.append(tag)

    def handle_startendtag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        self.handle_starttag(tag, attrs)
        if tag not in VOID:
            self.open.pop()

    def handle_endtag(self, tag: str) -> None:
        assert self.open.pop() == tag


def test_every_element_is_closed_and_every_identity_is_used_once(page: str) -> None:
    outline = Outline(page)
    assert [] == outline.open
    assert len(outline.ids) == len(set(outline.ids))


def test_every_link_leads_to_a_place_on_the_page(page: str) -> None:
    outline = Outline(page)
    assert [] == [link for link in outline.links if not link.startswith("#") or link[1:] not in outline.ids]


def test_findings_and_drawings_link_to_each_other(page: str, lake: Material) -> None:
    outline = Outline(page)
    assert "#finding-1" in outline.links
    assert "#wall-wall-west" in outline.links
    numbers = {f"finding-{at}" for at in range(1, 26)}
    assert numbers == {name for name in outline.ids if name.startswith("finding-")}


def test_nothing_on_the_page_asks_the_network(page: str) -> None:
    outside = set(re.findall(r"(?:https?:)?//[a-z0-9.-]+\.[a-z]{2,}[^\"'<\s]*", page)) - {"http://www.w3.org/2000/svg"}
    assert set() == outside
    assert "link" not in Outline(page).tags
    assert "img" not in Outline(page).tags


def test_the_summary_says_which_wall_why_what_to_change_and_what_it_saves(lake: Material) -> None:
    told = story(lake.sheet, lake.review, lake.forecast, lake.others, "imperial")
    assert told.trouble[0].startswith("Walls from most weather to least: west, east, north, south.")
    assert told.trouble[1].startswith("Wall west: it takes 1.46 times the rain of a bare wall here")
    assert told.trouble[2].startswith("Wall east: it takes 0.40 times")
    assert told.help[0].startswith("Look first at the alternate “stone west wall” (wall west: build framed with stone")
    assert "cost of building not included" in told.help[1]


def test_walls_that_are_all_over_are_told_together_with_the_worst(lake: Material) -> None:
    told = story(lake.sheet, lake.review, lake.forecast, lake.others, "imperial")
    assert told.trouble[-1].startswith(
        "By the decay guide all 4 walls stand beyond what their wood resists: west is worst"
    )


def test_what_holds_the_release_is_named_in_a_line_each(lake: Material) -> None:
    told = story(lake.sheet, lake.review, lake.forecast, lake.others, "imperial")
    assert len({ruling.rule for ruling in lake.review.rulings if ruling.grade == "hold"}) == len(told.blockers)
    assert "Log ends reach past the drip line" == told.blockers[1].title
    assert "corner sw, corner se, corner nw, corner ne" == told.blockers[1].elements


def test_recoating_is_called_so_beside_what_the_plan_states(lake: Material, page: str) -> None:
    told = story(lake.sheet, lake.review, lake.forecast, lake.others, "imperial")
    assert told.costs[0].startswith("Recoating each part when its coat wears out")
    assert "The plan itself states recoating every 6 years" in told.costs[1]
    assert "the rows do not add up to the total" in page


def test_an_alternate_tells_its_dimensions_in_the_words_of_the_plan(lake: Material) -> None:
    told = {other.name: other.changes for other in lake.others}
    assert ("roof main: eaves 3', rakes 3'",) == told["wide eaves"]
    assert told["west porch"][0].startswith("porch west (new): along west, depth 8', length 28'")


def test_one_number_is_told_for_a_measure(lake: Material, page: str) -> None:
    told = story(lake.sheet, lake.review, lake.forecast, lake.others, "imperial")
    assert not any("a porch 8'" in sentence for sentence in told.help)  # the alternate's own porch is told instead
    assert "1.46 to 0.80" in page


def test_without_alternates_more_cover_is_told_for_the_worst_wall() -> None:
    text = re.sub(r"(?m)^alternate .*?\n(?=alternate|variance)", "", example("tamarack-point"), flags=re.DOTALL)
    found = material(text)
    told = story(found.sheet, found.review, found.forecast, found.others, "imperial")
    assert () == found.others
    assert told.help[0].startswith("Wall west: a porch 8'-0\" deep along all of it would bring its rain from 1.46")
    assert told.help[0].endswith("cost of building not included.")


def test_a_client_is_told_no_options_lines_or_file_names_as_titles(page: str) -> None:
    shown = re.sub(r"<details.*?</details>|<style>.*?</style>|<script>.*?</script>", "", page, flags=re.DOTALL)
    assert "<h1>Tamarack Point</h1>" in page
    assert [] == [word for word in ("--rates", "(line ", "dots to the inch", "verdict over") if word in shown]


@pytest.mark.parametrize(
    ("text", "name", "title"),
    [
        ("# Gull Rock: a hut\nsite { }", "a.plan", ("Gull Rock", "a hut")),
        ("site { }", "folder/high-desert_cabin.plan", ("High desert cabin", "")),
        (f"# {'long ' * 30}\nsite {{ }}", "a.plan", ("A", "")),
    ],
)
def test_the_page_is_called_by_the_name_of_the_house(text: str, name: str, title: tuple[str, str]) -> None:
    assert title == titles_of(PlanText(text, name, read))


def test_no_open_questions_still_tell_what_was_assumed(page: str, lake: Material) -> None:
    assert () == lake.review.questions
    assert "but for what is assumed below" in page
    assert "storeys 1 (wall south, wall north, wall east, wall west)" in page


def test_the_numbers_of_the_alternates_are_those_of_reviews_and_forecasts_of_their_own(lake: Material) -> None:
    told = {other.name: other for other in lake.others}
    alone = material(example("tamarack-point"), "stone west wall")
    assert told["stone west wall"].spent == alone.forecast.outlook.spent.likely
    holds = {ruling.rule for ruling in alone.review.rulings if ruling.grade == "hold"}
    assert told["stone west wall"].holds == len(holds)


def test_the_report_of_an_alternate_says_so(lake: Material) -> None:
    assert "alternate “wide eaves”" in report_page(material(example("tamarack-point"), "wide eaves"))


HOSTILE = '"><script>alert(1)</script><img src=x onerror=alert(2)>&lt;'


def test_no_text_of_a_plan_becomes_mark_up() -> None:
    evil = HOSTILE.replace('"', "'")
    text = example("tamarack-point").replace("hedge is the neighbour's; trimmed twice a year", evil)
    text = text.replace('accepted by "J. Moreau"', f'accepted by "{evil}"').replace('"wide eaves"', f'"{evil}"')
    shown = report_page(material(text))
    tags = Outline(shown).tags
    assert 1 == tags.count("script")
    assert 0 == tags.count("img")
    assert "&lt;script&gt;alert(1)" in shown


def test_a_plan_name_with_mark_up_is_escaped() -> None:
    plan = PlanText(example("starter"), f"{HOSTILE}.plan", read)
    told = material_of(plan, book(), lambda sheet: forecast_of(sheet, demo_rates(), 30, TODAY), TODAY, "metric")
    assert 1 == Outline(report_page(told)).tags.count("script")


@pytest.mark.parametrize("text", ["", "wall a { height 9' }", "site { }", "stair s { }", "wall a { heigth 2 m }"])
def test_a_plan_that_says_little_still_gives_a_page(text: str) -> None:
    def none(name: str) -> str:
        raise CannotRead(name)

    plan = PlanText(text, "a.plan", none)
    told = material_of(plan, book(), lambda sheet: forecast_of(sheet, demo_rates(), 30, TODAY), TODAY, "imperial")
    assert [] == Outline(report_page(told)).open


@pytest.mark.parametrize("name", ["cedar-spit", "high-desert-cabin", "quiet-harbor", "teaching-house"])
def test_every_example_has_a_report(name: str) -> None:
    assert [] == Outline(report_page(material(example(name)))).open


def test_a_page_stays_under_five_megabytes(page: str) -> None:
    assert len(page.encode()) < 5_000_000


def test_an_alternate_that_helps_the_worst_wall_is_told_before_the_one_that_clears_most() -> None:
    spit = material(example("cedar-spit"))
    told = story(spit.sheet, spit.review, spit.forecast, spit.others, "imperial")
    assert told.help[0].startswith(
        "For wall west, which stands worst, the alternate “belt roof on the west gable” brings"
    )
    assert told.help[1].startswith("Most findings are cleared by the alternate “all stainless”")
    assert "no change in upkeep" in told.help[2]
    assert "$0" not in " ".join(told.help)
    assert told.costs[0].endswith(", without wall west (the handbook table has no life for clear film).")


def test_what_is_told_of_a_whole_wall_says_mean_or_worst(page: str) -> None:
    assert "Wall as a whole" not in page
    assert {"Mean of the wall", "Worst course of the wall"} <= set(
        re.findall(r"(?:Mean|Worst course) of the wall", page)
    )
    assert "its wood bears</th>" in page


@pytest.mark.parametrize("house", ["lake", "spit"])
def test_the_findings_of_an_alternate_are_those_as_drawn_less_the_cleared_with_the_raised(
    house: str, request: pytest.FixtureRequest
) -> None:
    told: Material = request.getfixturevalue(house)
    drawn = sum(count(told.review, grade) for grade in ("hold", "revise", "note"))
    sums = [drawn - len(other.cured) + len(other.raised) for other in told.others]
    assert sums == [other.holds + other.revises + other.notes for other in told.others] != []
