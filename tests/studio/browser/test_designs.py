"""Designs: the folder, the first run, a pattern that is pasted, and the whole way with nothing but keys."""

from __future__ import annotations

from collections.abc import Callable
from typing import TYPE_CHECKING

import pytest
from pasting import paste
from served import Served
from waiting import until

if TYPE_CHECKING:
    from playwright.sync_api import Page

Open = Callable[..., "Page"]

PASTED = """Sizes: small, medium
Gauge: 17 hdc and 13 rnds = 10 cm, 4 mm hook

Rnd 1: Ch 1, 8 hdc in magic ring; join with sl st to first hdc. (8 hdc)
Rnd 2: Ch 1, 2 hdc in each st around; join. (16 hdc)
Rnd 3: Ch 1, *hdc in next st, 2 hdc in next st; rep from * around; join. (25 hdc)
Rnd 4: Ch 1, *hdc in each of next 2 sts, 2 hdc in next st; rep from * around; join. (32 hdc)
"""
VIEWS = [(1440, 900, False), (1440, 900, True), (820, 1180, False), (390, 844, True), (320, 256, False)]


def test_every_design_stands_there_with_its_state_in_words(studio: Served, page: Open) -> None:
    made = page(studio)
    made.wait_for_selector(".stand li a")
    assert made.locator(".corner .fig").inner_text() == str(len(list(studio.folder.glob("*.txt"))))
    hat = made.locator(".stand li", has_text="Samphire Beanie").last
    hat.get_by_text("rows").wait_for()
    assert "10 sizes, 30 rows" in hat.inner_text()
    made.locator("input[type=search]").fill("mitts")
    assert made.locator(".stand li").all_inner_texts()[0].startswith("Sandpiper Mitts")
    assert made.locator(".stand li").count() == 1


def test_an_empty_folder_offers_paper_shapes_and_the_demo(empty_studio: Served, page: Open) -> None:
    made = page(empty_studio)
    made.wait_for_selector(".stand button")
    assert made.evaluate("document.activeElement.id") == "paste"
    assert {"Bonnet", "Toy", "Shawl"} <= set(made.locator(".stand b").all_inner_texts())
    made.locator(".stand button", has_text="Shawl").click()
    made.wait_for_selector(".tape .count")
    assert "/write/" in made.url


def test_the_whole_way_with_nothing_but_keys(empty_studio: Served, page: Open) -> None:
    made = page(empty_studio)
    made.wait_for_selector(".stand button")
    paste(made, PASTED)
    made.wait_for_selector(".note .act.main")
    until(made, "document.querySelector('.sr').innerText.includes('rows read')")
    for _ in range(12):  # from finding to finding, to the one with a way out
        made.keyboard.press("F8")
        made.wait_for_timeout(60)
        if made.evaluate("document.activeElement.innerText") == "Write (24)":
            break
    made.keyboard.press("Enter")
    until(made, "!document.querySelector('.claim') && document.querySelector('.sheet[data-linked=true]')")
    until(made, "document.querySelector('.sr').innerText.startsWith('Written. 24')")
    made.keyboard.press("Escape")
    made.keyboard.press(".")
    assert made.locator(".station[aria-checked=true]").inner_text().startswith("medium")
    made.keyboard.press("f")
    made.keyboard.type("2")
    made.keyboard.press("Enter")
    until(made, "document.querySelector('.corner .fig').innerText === '16'")
    made.keyboard.press("ArrowRight")
    made.wait_for_selector(".tag")
    first = made.locator(".tag b").inner_text()
    made.keyboard.press("ArrowRight")
    assert made.locator(".tag b").inner_text() != first
    made.keyboard.press("ArrowDown")
    until(made, "document.querySelector('.tag b').innerText.startsWith('Rnd 1')")
    made.keyboard.press("h")
    made.wait_for_selector(".hand")
    assert made.url.startswith(f"http://{empty_studio.host}/hand/")


@pytest.mark.parametrize(("width", "height", "dark"), VIEWS)
@pytest.mark.parametrize("place", ["/", "/write/samphire-beanie.txt", "/write/avocet-bonnet.txt", "/hand/samphire-beanie.txt"])
def test_axe_finds_nothing(
    studio: Served, page: Open, axe: Callable[[Page], list[str]], place: str, width: int, height: int, dark: bool,
) -> None:
    made = page(studio, place, width=width, height=height, dark=dark)
    made.wait_for_selector({"/": ".stand li a", "/hand/samphire-beanie.txt": ".pick .act"}.get(place, ".sheet[data-linked=true]"))
    made.wait_for_timeout(500)
    assert axe(made) == []
    assert made.evaluate("document.documentElement.scrollWidth") <= width


def test_the_empty_folder_has_nothing_for_axe(empty_studio: Served, page: Open, axe: Callable[[Page], list[str]]) -> None:
    made = page(empty_studio)
    made.wait_for_selector(".stand button")
    assert axe(made) == []
