"""Sizes: walked by keys, numbers chosen and taken back, the gauge tried and written, a chart of her own; on every width, for axe."""

from __future__ import annotations

import shutil
from collections.abc import Callable, Iterator
from pathlib import Path
from typing import TYPE_CHECKING

import pytest
from served import Served, start
from waiting import wait_for

if TYPE_CHECKING:
    from playwright.sync_api import Page

Open = Callable[..., "Page"]
DESIGNS = Path(__file__).parents[3] / "designs"
HAT = "samphire-beanie.txt"
MANY = "preemie, newborn, 3 months, 6 months, 9 months, 12 months, 18 months, 2 years, 4 years, 6 years, child, teen, adult, adult large"
WIDTHS = [(1440, 900, False), (1440, 900, True), (820, 1180, True), (390, 844, False), (320, 256, False)]


@pytest.fixture
def own(tmp_path: Path) -> Iterator[Served]:
    """A studio whose designs may be changed."""
    folder = tmp_path / "saltmarsh"
    folder.mkdir()
    for name in (HAT, "plover-cardigan.txt"):
        shutil.copy(DESIGNS / name, folder)
    text = (folder / HAT).read_text(encoding="utf-8")
    sizes = next(line for line in text.split("\n") if line.startswith("Sizes: "))
    (folder / "fourteen.txt").write_text(text.replace(sizes, f"Sizes: {MANY}"), encoding="utf-8")
    served = start(folder)
    yield served
    served.end()


def sizes(page: Open, of: Served, name: str = HAT, **more: object) -> Page:
    made = page(of, f"/sizes/{name}", **more)
    made.wait_for_selector(".sz-cell.at")
    return made


def on_disk(of: Served, words: str, name: str = HAT) -> Callable[[], bool]:
    return lambda: words in (of.folder / name).read_text(encoding="utf-8")


def test_the_table_is_walked_with_the_arrows_as_a_grid(own: Served, page: Open) -> None:
    made = sizes(page, own)
    made.locator(".sz-cell.at").focus()
    assert made.evaluate("document.activeElement.innerText.split('\\n')[0]") == "child: 9, 13.8 cm, 3 mm over"
    made.keyboard.press("ArrowDown")
    made.keyboard.press("ArrowRight")
    made.wait_for_timeout(100)
    assert made.evaluate("document.activeElement.innerText.split('\\n')[0]").startswith("teen: 84, ")
    assert made.locator(".corner .fig").inner_text() == "84"
    made.keyboard.press("Home")
    made.keyboard.press("PageUp")
    made.wait_for_timeout(100)
    assert made.evaluate("document.activeElement.getAttribute('aria-label')") == "preemie: 29.8 cm"
    assert made.locator("[role=grid] [tabindex='0']").count() == 1


def test_another_number_is_chosen_with_keys_and_taken_back(own: Served, page: Open) -> None:
    made = sizes(page, own)
    made.locator(".sz-cell.at").focus()
    made.keyboard.press("ArrowDown")
    made.wait_for_selector("h2:has-text('Why 80 for child?')")
    made.keyboard.press("Enter")
    assert made.evaluate("document.activeElement.innerText").startswith("76")
    made.keyboard.press("Tab")
    made.keyboard.press("Tab")
    made.keyboard.press("Enter")
    made.wait_for_selector("h2:has-text('Why 84 for child?')")
    wait_for(made, on_disk(own, "multiple of 4, in child: 84\n"))
    assert made.locator(".sz-cell.at em").inner_text() == "given here"
    made.keyboard.press("z")
    made.wait_for_selector("h2:has-text('Why 80 for child?')")
    wait_for(made, lambda: not on_disk(own, "in child: 84")())


def test_another_gauge_is_tried_without_being_written_and_then_written(own: Served, page: Open) -> None:
    made = sizes(page, own)
    before = (own.folder / HAT).read_text(encoding="utf-8")
    made.get_by_label("Stitches to 10 cm").fill("15")
    body = made.locator(".sz-row", has_text="Body, around")
    wait_for(made, lambda: body.locator(".sz-cell.on .fig").inner_text() == "68")
    assert (own.folder / HAT).read_text(encoding="utf-8") == before
    made.get_by_role("button", name="Back to the swatch").click()
    wait_for(made, lambda: body.locator(".sz-cell.on .fig").inner_text() == "80")
    made.get_by_label("Stitches to 10 cm").fill("15")
    made.get_by_role("button", name="Write it into the design").click()
    wait_for(made, on_disk(own, "Gauge: 15 hdc and 13 rnds = 10 cm, 4 mm hook\n"))


def test_the_ease_is_a_figure_in_its_sentence(own: Served, page: Open) -> None:
    made = sizes(page, own)
    made.locator(".sz-cell.on", has_text="80").click()
    ease = made.locator(".sz-slots .slot").first
    ease.fill("5")
    ease.press("Enter")
    made.wait_for_selector("h2:has-text('Why 76 for child?')")
    wait_for(made, on_disk(own, "less 5 cm, multiple of 4\n"))


def test_the_chart_becomes_hers_and_is_edited_in_place(own: Served, page: Open) -> None:
    made = sizes(page, own)
    made.get_by_role("button", name="Make this chart mine").click()
    wait_for(made, on_disk(own, "\nSize chart\nsize "))
    made.wait_for_selector("text=the pattern's own chart")
    head = made.locator(".sz-row.thin", has_text="Head circumference").locator(".sz-cell.on")
    head.click()
    made.keyboard.press("Enter")
    made.keyboard.type("54")
    made.keyboard.press("Enter")
    wait_for(made, lambda: made.locator(".sz-row", has_text="Body, around").locator(".sz-cell.on .fig").inner_text() == "88")


def test_more_sizes_than_there_is_room_for_slide_past_with_their_names(own: Served, page: Open) -> None:
    made = sizes(page, own, "fourteen.txt")
    shown = made.locator(".sz-name").all_inner_texts()
    assert len(shown) == 12
    assert shown[-1] == "adult large"
    made.locator(".sz-cell.at").focus()
    made.keyboard.press("Home")
    made.wait_for_timeout(150)
    assert made.locator(".sz-name").first.inner_text() == "preemie"


@pytest.mark.parametrize(("width", "height", "dark"), WIDTHS)
@pytest.mark.parametrize("name", [HAT, "plover-cardigan.txt", "fourteen.txt"])
def test_axe_and_reflow(own: Served, page: Open, axe: Callable[[Page], list[str]], name: str, width: int, height: int, dark: bool) -> None:
    made = sizes(page, own, name, width=width, height=height, dark=dark)
    made.wait_for_selector(".nest")
    assert axe(made) == []
    assert made.evaluate("document.documentElement.scrollWidth - innerWidth") <= 0
