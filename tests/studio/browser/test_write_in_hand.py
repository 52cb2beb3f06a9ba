"""In hand: row by row with one key, the place kept for each size."""

from __future__ import annotations

from collections.abc import Callable
from typing import TYPE_CHECKING

from served import Served
from waiting import until

if TYPE_CHECKING:
    from playwright.sync_api import Page


def test_rows_go_by_and_the_place_is_kept_for_each_size(studio: Served, page: Callable[..., Page]) -> None:
    made = page(studio, "/hand/samphire-beanie.txt")
    made.locator(".pick .act", has_text="child").click()
    until(made, "document.querySelector('.big .n')?.innerText.startsWith('8')")
    for key in ("Space", "PageDown", "Enter"):
        made.keyboard.press(key)
    assert made.locator(".big .n").inner_text().startswith("32")
    assert made.locator(".big .do").inner_text().startswith("hdc in next 2 sts, 2 hdc in next st, 8 times in all")
    assert made.locator(".across .station").count() == 8
    made.keyboard.press("ArrowRight")
    assert made.locator(".station[aria-checked=true]").inner_text() == "2"
    made.reload()
    until(made, "document.querySelector('.big .n')?.innerText.startsWith('32')")
    assert made.locator(".station[aria-checked=true]").inner_text() == "2"
    made.locator(".corner").click()
    made.locator(".pick .act", has_text="teen").click()
    until(made, "document.querySelector('.big .n')?.innerText.startsWith('8')")
    made.keyboard.press("Escape")
    made.wait_for_selector(".sheet")


def test_the_count_can_be_read_from_afar_and_the_button_be_hit(studio: Served, page: Callable[..., Page]) -> None:
    made = page(studio, "/hand/samphire-beanie.txt", width=390, height=844)
    made.locator(".pick .act", has_text="child").click()
    made.wait_for_selector(".big .n")
    assert made.evaluate("parseFloat(getComputedStyle(document.querySelector('.big .n')).fontSize)") >= 180
    done = made.locator(".feet .act.ink").bounding_box()
    assert done is not None
    assert done["height"] >= 76
