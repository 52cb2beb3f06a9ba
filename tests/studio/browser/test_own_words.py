"""Publish: her own words in another language, each with a field; kept beside the design, taken away, brought in, seen on the pages."""

from __future__ import annotations

from collections.abc import Callable
from typing import TYPE_CHECKING

import pytest
from served import PATTERN, Served
from waiting import wait_for

from loopwright.wording.translations import from_table

if TYPE_CHECKING:
    from pathlib import Path

    from playwright.sync_api import Page, Route

Open = Callable[..., "Page"]
LONG_MS = 90_000
FIRM, PEG = "Stuff it firmly.", "Hang it on a peg of 2 cm."
FEST = "Fest ausstopfen."


@pytest.fixture
def coaster(empty_studio: Served) -> Served:
    (empty_studio.folder / "sedge-coaster.txt").write_text(f"{PATTERN}{FIRM}\n{PEG}\n", encoding="utf-8")
    return empty_studio


def kept(of: Served) -> dict[str, str]:
    path = of.folder / "sedge-coaster.de.tsv"
    return from_table(path.read_text(encoding="utf-8")) if path.exists() else {}


def in_german(made: Page) -> Page:
    """Publish with a German edition asked for, its list there."""
    made.wait_for_selector(".files li")
    made.locator(".publish button.slot", has_text="English").click()
    made.locator(".choose").get_by_label("German", exact=True).check()
    made.locator(".choose").get_by_label("English", exact=True).uncheck()
    made.locator(".choose").get_by_role("button", name="Done").click()
    made.locator(".own-words li").first.wait_for()
    made.locator(".files li", has_text="-de").first.wait_for()  # the list of files follows what is asked for
    return made


def test_words_are_kept_as_they_are_typed_and_the_pages_have_them(coaster: Served, page: Open) -> None:
    made = in_german(page(coaster, "/publish/sedge-coaster.txt"))
    assert "2 phrases of this pattern stand in English" in made.locator(".own-words").inner_text()
    made.get_by_role("button", name="See it").first.click()
    made.locator(".sheets img").first.wait_for(timeout=LONG_MS)
    before = made.locator(".sheets img").first.get_attribute("src")
    made.get_by_label(FIRM).fill(FEST)
    wait_for(made, lambda: kept(coaster) == {FIRM: FEST})
    made.locator(".own-words .kept-in", has_text="Kept in sedge-coaster.de.tsv").wait_for()
    assert "1 of 2 phrases stands in English" in made.locator(".own-words").inner_text()
    made.get_by_role("button", name="See it with them").click()
    made.locator(".pages .acts", has_text="Other words were written since").wait_for(state="detached")
    made.locator(".sheets img").first.wait_for(timeout=LONG_MS)
    assert made.locator(".sheets img").first.get_attribute("src") != before
    made.reload()
    in_german(made)
    assert made.get_by_label(FIRM).input_value() == FEST


def test_a_number_that_is_lost_is_said_and_a_filled_list_is_brought_in(coaster: Served, page: Open, tmp_path: Path) -> None:
    made = in_german(page(coaster, "/publish/sedge-coaster.txt"))
    peg = made.get_by_label("Hang it on a peg of {1} cm.")
    peg.fill("An einen Haken.")
    made.locator(".own-words .paper", has_text="{1} stands in the English words and not here").wait_for()
    with made.expect_download() as took:
        made.get_by_role("link", name="Take the list away").click()
    assert took.value.suggested_filename == "sedge-coaster.de.tsv"
    filled = tmp_path / "filled.tsv"
    filled.write_text(took.value.path().read_text(encoding="utf-8").replace("An einen Haken.", "An einen Haken von {1} cm."), encoding="utf-8")
    made.locator(".own-words input[type=file]").set_input_files(filled)
    made.locator(".own-words", has_text="1 phrase was taken in, 1 in place of what stood here").wait_for()
    assert peg.input_value() == "An einen Haken von {1} cm."
    assert kept(coaster) == {"Hang it on a peg of {1} cm.": "An einen Haken von {1} cm."}


@pytest.mark.parametrize(("width", "height", "dark"), [(1440, 900, False), (820, 1180, True), (390, 844, False), (320, 640, True)])
def test_axe_finds_nothing_in_the_list(studio: Served, page: Open, axe: Callable[[Page], list[str]], width: int, height: int, dark: bool) -> None:
    made = in_german(page(studio, "/publish/samphire-beanie.txt", width=width, height=height, dark=dark, bypass_csp=True))
    assert axe(made) == []
    assert made.evaluate("document.documentElement.scrollWidth") == width


def test_a_file_of_the_list_that_still_stands_is_looked_at_as_it_was_listed(coaster: Served, page: Open) -> None:
    made = page(coaster, "/publish/sedge-coaster.txt")
    made.wait_for_selector(".files li")
    held: list[Route] = []
    made.route("**/plan*", lambda route: held.append(route))  # noqa: PLW0108 - it takes no built-in; the next list does not come yet
    made.locator(".publish button.slot", has_text="English").click()
    made.locator(".choose").get_by_label("German", exact=True).check()
    made.locator(".choose").get_by_label("English", exact=True).uncheck()
    made.locator(".choose").get_by_role("button", name="Done").click()
    wait_for(made, lambda: bool(held))
    made.get_by_role("button", name="See it: sedge-coaster-a4.pdf").click()
    made.locator(".sheets img").first.wait_for(timeout=LONG_MS)
    assert str(made.locator(".sheets img").first.get_attribute("alt")).endswith("sedge-coaster-a4.pdf")
    for route in held:
        route.continue_()
    made.locator(".files li", has_text="-de").first.wait_for()
