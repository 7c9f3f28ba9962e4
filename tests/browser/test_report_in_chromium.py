"""The report in a real browser: layers switch, links work, nothing is asked, it prints, fits a phone, can be read."""

from __future__ import annotations

from pathlib import Path

import pytest
from axe_playwright_python.sync_playwright import Axe

from speclint.report.build import report_page
from tests.browser.conftest import Seen
from tests.laws.houses import example
from tests.report.test_lessons import page_of
from tests.report.test_report import HOSTILE, material

LAYERS = ("rain", "sun", "finish", "decay")


def layers_seen(seen: Seen) -> set[str]:
    """The layers of the first elevation that are shown."""
    found = set()
    for layer in LAYERS:
        if seen.page.locator(f"#elevations figure >> nth=0 >> g.layer-{layer} >> nth=0").is_visible():
            found.add(layer)
    return found


def test_layers_switch_by_pointer_and_by_keyboard(seen: Seen, house: Path) -> None:
    seen.page.goto(house.as_uri())
    assert {"rain"} == layers_seen(seen)
    seen.page.get_by_label("Life of the finish").check()
    assert {"finish"} == layers_seen(seen)
    seen.page.keyboard.press("ArrowRight")
    assert {"decay"} == layers_seen(seen)
    seen.page.get_by_label("nothing").check()
    assert set() == layers_seen(seen)


def test_a_pin_leads_to_its_finding_and_the_finding_back_to_the_wall(seen: Seen, house: Path) -> None:
    seen.page.goto(house.as_uri())
    seen.page.locator('#wall-wall-west a[href="#finding-2"] >> nth=0').click()
    assert seen.page.url.endswith("#finding-2")
    assert seen.page.locator("#finding-2").is_visible()
    seen.page.locator("#finding-2").get_by_role("link", name="wall west").click()
    assert seen.page.url.endswith("#wall-wall-west")


def test_the_console_stays_silent_and_nothing_is_asked_of_the_network(seen: Seen, house: Path) -> None:
    seen.page.goto(house.as_uri())
    seen.page.get_by_role("radio", name="Sun").check()
    seen.page.locator("summary >> nth=0").click()
    assert ([], [house.as_uri()]) == (seen.said, seen.asked)


@pytest.mark.parametrize("width", [360, 820, 1280])
def test_no_violation_of_accessibility_at_any_width(seen: Seen, house: Path, width: int) -> None:
    seen.page.set_viewport_size({"width": width, "height": 800})
    seen.page.goto(house.as_uri())
    found = Axe().run(seen.page)
    assert 0 == found.violations_count, found.generate_report()


def test_an_open_finding_has_no_violation_either(seen: Seen, house: Path) -> None:
    seen.page.goto(house.as_uri())
    for summary in seen.page.locator("#findings summary").all():
        summary.click()
    seen.page.locator("#numbers summary >> nth=0").click()
    assert 0 == Axe().run(seen.page).violations_count


def test_a_phone_is_never_scrolled_sideways(seen: Seen, house: Path) -> None:
    seen.page.set_viewport_size({"width": 360, "height": 740})
    seen.page.goto(house.as_uri())
    assert 360 == seen.page.evaluate("document.documentElement.scrollWidth")


def test_a_telephone_gets_drawings_of_its_own_width_with_pins_that_a_finger_hits(seen: Seen, house: Path) -> None:
    seen.page.set_viewport_size({"width": 360, "height": 740})
    seen.page.goto(house.as_uri())
    boxes = [pin.bounding_box() for pin in seen.page.locator("#elevations .slim svg a").all()]
    assert len(boxes) > 25
    assert min(min(box["width"], box["height"]) for box in boxes if box) >= 24
    drawing = seen.page.locator("#wall-wall-south .slim svg").bounding_box()
    legend = seen.page.locator("#wall-wall-south .legend-rain").bounding_box()
    assert drawing is not None
    assert legend is not None
    assert drawing["x"] + drawing["width"] <= 360
    assert legend["y"] >= drawing["y"] + drawing["height"]
    assert not seen.page.locator("#wall-wall-south .wide svg").is_visible()


def test_on_paper_drawings_are_lettered_in_six_points_and_two_elevations_fit_a_page(seen: Seen, house: Path) -> None:
    seen.page.set_viewport_size({"width": 688, "height": 1047})  # what a sheet of A4 leaves within its margins
    seen.page.goto(house.as_uri())
    seen.page.emulate_media(media="print")
    sizes = seen.page.evaluate(
        """() => [...document.querySelectorAll(".wide svg text, #sections svg text, #water svg text, #upkeep svg text")]
        .filter(text => text.getBoundingClientRect().width > 0)
        .map(text => parseFloat(getComputedStyle(text).fontSize) * text.getScreenCTM().a * 0.75)"""
    )
    assert len(sizes) > 100
    assert min(sizes) >= 6
    tall = [figure.bounding_box() for figure in seen.page.locator("#elevations figure").all()]
    assert sum(box["height"] for box in tall[1:3] if box) < 1047


def test_the_key_beside_an_elevation_shows_the_lines_that_it_explains(seen: Seen, house: Path) -> None:
    seen.page.goto(house.as_uri())
    strokes = seen.page.evaluate(
        "() => [...document.querySelectorAll('.key line')].map(line => getComputedStyle(line).stroke)"
    )
    assert len(strokes) > 4
    assert "none" not in strokes


def test_in_print_the_ways_about_are_left_out_and_the_findings_are_whole(seen: Seen, house: Path) -> None:
    seen.page.goto(house.as_uri())
    seen.page.emulate_media(media="print")
    assert (False, False) == (seen.page.locator("nav").is_visible(), seen.page.locator("#numbers").is_visible())
    assert seen.page.locator("#finding-1").is_visible()
    assert seen.page.pdf(format="A4").startswith(b"%PDF")


def test_every_control_is_reached_by_the_tab_key_with_a_mark_where_it_is(seen: Seen, house: Path) -> None:
    seen.page.goto(house.as_uri())
    seen.page.keyboard.press("Tab")
    assert "Skip to the summary" == seen.page.evaluate("document.activeElement.textContent")
    for _ in range(40):
        seen.page.keyboard.press("Tab")
        assert "none" != seen.page.evaluate("getComputedStyle(document.activeElement).outlineStyle")


def test_the_page_can_be_used_without_scripts(browser: object, house: Path) -> None:
    context = browser.new_context(java_script_enabled=False)  # type: ignore[attr-defined]
    page = context.new_page()
    page.goto(house.as_uri())
    assert page.locator("#elevations figure >> nth=0 >> g.layer-rain >> nth=0").is_visible()
    context.close()


def test_mark_up_in_a_plan_does_not_run(seen: Seen, tmp_path: Path) -> None:
    evil = HOSTILE.replace('"', "'")
    text = example("tamarack-point").replace("hedge is the neighbour's; trimmed twice a year", evil)
    path = tmp_path / "evil.html"
    path.write_text(report_page(material(text.replace('"wide eaves"', f'"{evil}"'))), encoding="utf-8")
    alarms: list[str] = []
    seen.page.on("dialog", lambda dialog: (alarms.append(dialog.message), dialog.dismiss()))
    seen.page.goto(path.as_uri())
    seen.page.wait_for_timeout(200)
    assert ([], [path.as_uri()]) == (alarms, seen.asked)


@pytest.mark.parametrize("name", ["posts-and-bases", "order-of-work", "upkeep-within-reach"])
@pytest.mark.parametrize("width", [360, 1280])
def test_a_lesson_has_no_violation_and_asks_nothing(seen: Seen, tmp_path: Path, name: str, width: int) -> None:
    path = tmp_path / "lesson.html"
    path.write_text(page_of(name), encoding="utf-8")
    seen.page.set_viewport_size({"width": width, "height": 800})
    seen.page.goto(path.as_uri())
    assert (0, [path.as_uri()]) == (Axe().run(seen.page).violations_count, seen.asked)
    assert width == seen.page.evaluate("document.documentElement.scrollWidth")


def test_on_paper_notes_are_smaller_than_the_text_and_findings_stay_whole(seen: Seen, house: Path) -> None:
    seen.page.goto(house.as_uri())
    seen.page.emulate_media(media="print")
    size = "found => parseFloat(getComputedStyle(found).fontSize)"
    body = seen.page.locator("body").evaluate(size)
    assert max(note.evaluate(size) for note in seen.page.locator("p.quiet").all()) < body
    inside = "found => getComputedStyle(found).breakInside"
    assert {"avoid"} == {card.evaluate(inside) for card in seen.page.locator("#findings .finding").all()}
