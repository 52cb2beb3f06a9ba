"""Publish: editions as a sentence, pages before anything is written, the folder, versions and errata."""

from __future__ import annotations

from collections.abc import Callable
from typing import TYPE_CHECKING

import pytest
from served import PATTERN, Served

if TYPE_CHECKING:
    from playwright.sync_api import Page

Open = Callable[..., "Page"]
VIEWS = [(1440, 900, False), (1440, 900, True), (820, 1180, False), (390, 844, True), (320, 640, False)]
LONG_MS = 90_000


@pytest.fixture
def coaster(empty_studio: Served) -> Served:
    (empty_studio.folder / "sedge-coaster.txt").write_text(PATTERN, encoding="utf-8")
    return empty_studio


def planned(made: Page) -> Page:
    made.wait_for_selector(".files li")
    return made


def choose(made: Page, slot: str, *names: str) -> None:
    made.locator(".publish button.slot", has_text=slot).click()
    for name in names:
        made.locator(".choose").get_by_label(name, exact=True).click()
    made.locator(".choose").get_by_role("button", name="Done").click()


def test_the_sentence_says_what_is_made_and_the_corner_counts_it(studio: Served, page: Open) -> None:
    made = planned(page(studio, "/publish/samphire-beanie.txt"))
    choose(made, "A4", "Letter")
    made.wait_for_function("() => document.querySelector('.corner .fig').textContent === '4'")
    assert "on A4 and Letter , in US terms" in " ".join(made.locator(".publish .sentence").inner_text().split()).replace("Letter,", "Letter ,")
    assert "samphire-beanie-letter.pdf" in made.locator(".files").inner_text()
    made.get_by_role("checkbox", name="child: 0 files").click()
    made.wait_for_function("() => document.querySelector('.files').textContent.includes('samphire-beanie-child-a4.pdf')")
    assert "Makers get child as" in " ".join(made.locator(".publish .sentence").inner_text().split())


def test_what_is_missing_is_told(coaster: Served, page: Open) -> None:
    made = planned(page(coaster, "/publish/sedge-coaster.txt"))
    assert "No version is told" in made.locator(".missing").inner_text()
    assert "There is no photograph" in made.locator(".missing").inner_text()


def test_pages_are_seen_before_anything_is_written(coaster: Served, page: Open) -> None:
    made = planned(page(coaster, "/publish/sedge-coaster.txt"))
    made.get_by_role("button", name="See it").first.click()
    made.wait_for_selector(".sheets img", timeout=LONG_MS)
    made.wait_for_function("() => document.querySelector('.sheets img').naturalWidth > 400", timeout=LONG_MS)
    assert not list(coaster.folder.rglob("*.pdf"))


def test_files_are_written_into_a_folder_and_the_next_version_is_compared(coaster: Served, page: Open) -> None:
    made = planned(page(coaster, "/publish/sedge-coaster.txt"))
    choose(made, "pages, a web page", "pages", "a web page")
    made.wait_for_function("() => document.querySelector('.corner .fig').textContent === '1'")
    made.get_by_role("button", name="Write 1 file").click()
    made.wait_for_selector("text=Done: 1 file, in the folder Sedge Coaster", timeout=LONG_MS)
    assert (coaster.folder / "Sedge Coaster" / "sedge-coaster.txt").is_file()
    (coaster.folder / "sedge-coaster.txt").write_text(PATTERN.replace("6 sc in magic ring. (6", "8 sc in magic ring. (8").replace("(12", "(16").replace("(18", "(24"), encoding="utf-8")
    made.reload()
    planned(made)
    made.get_by_role("button", name="Compare with the kept one").click()
    made.wait_for_selector(".errata li")
    assert "Rnd 1" in made.locator(".errata").inner_text()
    assert made.get_by_role("button", name="Copy the errata").is_visible()


def test_files_are_packed_and_taken_away(coaster: Served, page: Open) -> None:
    made = planned(page(coaster, "/publish/sedge-coaster.txt"))
    choose(made, "pages, a web page", "pages")
    made.wait_for_function("() => document.querySelector('.corner .fig').textContent === '2'")
    made.get_by_role("button", name="Pack them").click()
    made.wait_for_selector("a:has-text('Take 2 files away')", timeout=LONG_MS)
    with made.expect_download() as taken:
        made.get_by_role("link", name="Take 2 files away").click()
    assert taken.value.suggested_filename == "sedge-coaster.zip"


@pytest.mark.parametrize(("width", "height", "dark"), VIEWS)
def test_axe_finds_nothing_and_nothing_goes_off_the_page(studio: Served, page: Open, axe: Callable[[Page], list[str]], width: int, height: int, dark: bool) -> None:
    made = planned(page(studio, "/publish/samphire-beanie.txt", width=width, height=height, dark=dark, bypass_csp=True))
    made.locator(".publish button.slot").first.click()
    made.wait_for_selector(".choose")
    assert axe(made) == []
    assert made.evaluate("document.documentElement.scrollWidth") == width
