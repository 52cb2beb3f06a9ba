"""The way from a swatch to the sizes, and from a pattern in one size to a design, as she goes it."""

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
HAT, WORKED = "samphire-beanie.txt", "samphire-as-worked.txt"
WIDTHS = [(1440, 900, False), (820, 1180, True), (390, 844, False), (320, 256, True)]


@pytest.fixture
def own(tmp_path: Path) -> Iterator[Served]:
    """A studio whose designs may be changed."""
    folder = tmp_path / "saltmarsh"
    folder.mkdir()
    for name in (HAT, WORKED):
        shutil.copy(DESIGNS / name, folder)
    served = start(folder)
    yield served
    served.end()


def put_a_swatch(made: Page, stitches: str, rows: str, hook: str) -> None:
    made.get_by_role("button", name="A new swatch").click()
    made.get_by_label("Stitches", exact=True).fill(stitches)
    made.get_by_label("Rows or rounds", exact=True).fill(rows)
    made.get_by_label("Rows or rounds, worked as").select_option("rounds")
    made.get_by_label("Hook, mm").fill(hook)
    made.get_by_role("button", name="Put it on the shelf").click()
    made.get_by_role("button", name="A new swatch").wait_for()


def test_a_swatch_is_put_on_the_shelf_compared_and_picked_for_a_design(own: Served, page: Open) -> None:
    made = page(own, f"/swatches/{HAT}")
    made.get_by_role("button", name="A new yarn").click()
    made.get_by_label("The yarn is called").fill("Reedmace")
    made.get_by_label("Grams of a ball").fill("100")
    made.get_by_label("Metres of a ball").fill("200")
    made.get_by_role("button", name="Put it on the shelf").click()
    made.wait_for_selector(".yarns li")
    put_a_swatch(made, "17", "13", "4")
    made.wait_for_selector("text=17 hdc and 13 rnds = 10 cm")
    put_a_swatch(made, "16", "12,5", "4.5")
    made.wait_for_selector("text=16 hdc and 12.5 rnds = 10 cm")
    for _ in range(2):
        made.get_by_role("button", name="Lay beside").first.click()
    made.wait_for_selector("table.sw-compare")
    assert "6.3 in 100 more" in made.locator("table.sw-compare").inner_text()
    made.get_by_role("button", name="Use it for Samphire Beanie").first.click()
    text = own.folder / HAT
    wait_for(made, lambda: "Gauge: 16 hdc and 12.5 rnds = 10 cm, 4.5 mm hook\nHook: 4.5 mm (7)\nYarn: Reedmace, 100 g = 200 m\n" in text.read_text(encoding="utf-8"))
    made.get_by_role("button", name="Take back").click()
    wait_for(made, lambda: "Gauge: 17 hdc and 13 rnds = 10 cm, 4 mm hook" in text.read_text(encoding="utf-8"))


def test_what_is_taken_off_is_taken_back(own: Served, page: Open) -> None:
    made = page(own, "/swatches")
    put_a_swatch(made, "20", "22", "3.5")
    made.wait_for_selector(".sw-list li")
    made.get_by_role("button", name="Take off").click()
    made.wait_for_selector("text=No swatch yet")
    made.keyboard.press("z")
    made.wait_for_selector("text=20 hdc and 22 rnds = 10 cm")
    made.get_by_role("button", name="Change", exact=True).click()
    made.get_by_label("Stitches", exact=True).fill("21")
    made.get_by_role("button", name="Write it").click()
    made.wait_for_selector("text=21 hdc and 22 rnds = 10 cm")


def test_a_pattern_in_one_size_becomes_a_design_on_a_new_sheet(own: Served, page: Open) -> None:
    made = page(own, "/begin")
    made.get_by_role("button", name="Samphire Beanie, as worked").click()
    made.get_by_role("button", name="Look for the reasons").click()
    made.wait_for_selector("h2:has-text('4 numbers depend on the size')")
    assert made.locator(".bg-blank").first.inner_text().startswith("9\nrnds, hers")
    made.locator(".bg-blank").first.get_by_role("radio").nth(1).check()
    wait_for(made, lambda: made.locator("section[aria-busy=false]").count() == 1 and "three tenths" in (made.locator(".bg-pre").text_content() or ""))
    made.get_by_role("button", name="Open it as a new sheet").click()
    made.wait_for_selector(".tape .count")
    assert "/write/Samphire%20Beanie.txt" in made.url
    assert "{crown rounds}: rnds until crown measures three tenths" in (own.folder / "Samphire Beanie.txt").read_text(encoding="utf-8")


@pytest.mark.parametrize(("width", "height", "dark"), WIDTHS)
def test_axe_and_reflow(own: Served, page: Open, axe: Callable[[Page], list[str]], width: int, height: int, dark: bool) -> None:
    made = page(own, f"/swatches/{HAT}", width=width, height=height, dark=dark)
    put_a_swatch(made, "17", "13", "4")
    made.wait_for_selector(".sw-list li")
    made.get_by_role("button", name="A new swatch").click()
    made.wait_for_selector(".sw-form")
    assert axe(made) == []
    assert made.evaluate("document.documentElement.scrollWidth - innerWidth") <= 0
    made.goto(f"http://{own.host}/begin")
    made.get_by_role("button", name="Samphire Beanie, as worked").click()
    made.get_by_role("button", name="Look for the reasons").click()
    made.wait_for_selector(".bg-table")
    assert axe(made) == []
    assert made.evaluate("document.documentElement.scrollWidth - innerWidth") <= 0
