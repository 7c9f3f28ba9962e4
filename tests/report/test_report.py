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
from speclint.report.build import Material, report_page
from speclint.report.gather import material_of
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
    assert told.trouble[0].startswith("Wall west: 91% of the driving rain")
    assert told.help[0].startswith("Wall west: a porch")
    assert any("“stone west wall” saves about" in sentence for sentence in told.saves)


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
