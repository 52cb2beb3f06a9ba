"""Undo across everything: what is done in any place is taken back in any place, step by step; older texts; two texts compared."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path
from typing import TYPE_CHECKING

import pytest
from served import Served, start
from waiting import until, wait_for

if TYPE_CHECKING:
    from playwright.sync_api import Page

Open = Callable[..., "Page"]
HAT = "teal-hat.txt"
TEXT = """Teal Hat
Sizes: child, teen, adult
Worked in: child
Version: 1
Gauge: 17 hdc and 13 rnds = 10 cm, 4 mm hook
Yarn: worsted, wool, 100 g = 200 m
Hook: 4 mm

Fit
{body sts}: sts to go around head circumference less 3 cm, multiple of 4

Crown
Rnd 1: Ch 1, 8 hdc in magic ring; join. (8 hdc)
Rnd 2: Ch 1, 2 hdc in each st around; join. (17 hdc)

Body
Ch {body sts}; join with sl st to form a ring.
Rnd 1: Ch 1, hdc in each ch around; join. ({body sts} hdc)
"""


@pytest.fixture
def hat(empty_studio: Served) -> Served:
    (empty_studio.folder / HAT).write_text(TEXT, encoding="utf-8")
    return empty_studio


def on_disk(of: Served) -> str:
    return Path(of.folder / HAT).read_text(encoding="utf-8")


def test_what_was_done_in_four_places_is_taken_back_in_one(hat: Served, page: Open) -> None:
    made = page(hat, f"/write/{HAT}")
    made.wait_for_selector(".sheet[data-linked=true]")
    made.locator(".cm-line").first.click()
    made.keyboard.press("End")
    made.keyboard.type(" of Reeds")
    wait_for(made, lambda: "Teal Hat of Reeds\n" in on_disk(hat))
    made.get_by_role("link", name="Sizes").click()
    made.locator(".sz-cell .fig").first.wait_for()
    made.locator(".sz-row", has_text="around").locator(".sz-cell").nth(1).click()
    made.locator(".sz-near button:not([aria-pressed=true])").first.click()
    wait_for(made, lambda: "in teen: " in on_disk(hat))
    made.get_by_role("link", name="Editing").click()
    made.locator(".margin-note .fix", has_text="Write (").first.click()
    wait_for(made, lambda: "(17 hdc)" not in on_disk(hat))
    made.get_by_role("link", name="Questions").click()
    made.locator("button", has_text="Add a note to").click()
    made.locator(".noting textarea").fill("Count before you join.")
    made.get_by_role("button", name="Put it there").click()
    wait_for(made, lambda: "(Note: Count before you join.)" in on_disk(hat))
    assert made.locator("button", has_text="Take back: a note below Rnd 1").count() == 1
    made.locator(".line.old").first.click()
    made.evaluate("document.activeElement.blur()")
    steps: list[Callable[[str], bool]] = [
        lambda t: "Note:" not in t, lambda t: "(17 hdc)" in t, lambda t: "in teen" not in t, lambda t: "Reeds" not in t,
    ]
    for is_back in steps:
        made.keyboard.press("Control+z")
        _until_back(made, hat, is_back)
    assert on_disk(hat) == TEXT
    made.keyboard.press("Control+y")
    wait_for(made, lambda: "Teal Hat of Reeds\n" in on_disk(hat))


def _until_back(made: Page, of: Served, is_back: Callable[[str], bool]) -> None:
    wait_for(made, lambda: is_back(on_disk(of)))


def test_typing_is_taken_back_after_the_sheet_was_left(hat: Served, page: Open) -> None:
    made = page(hat, f"/write/{HAT}")
    made.wait_for_selector(".sheet[data-linked=true]")
    made.locator(".cm-line").last.click()
    made.keyboard.press("Control+End")
    made.keyboard.type("Fasten off.")
    made.get_by_role("link", name="Sizes").click()
    made.locator(".sz-cell .fig").first.wait_for()
    made.get_by_role("link", name="Write").click()
    made.wait_for_selector(".sheet[data-linked=true]")
    assert "Fasten off." in "".join(made.locator(".cm-line").all_inner_texts())
    made.locator(".cm-line").last.click()
    made.keyboard.press("Control+z")
    until(made, "![...document.querySelectorAll('.cm-line')].some((l) => l.innerText.includes('Fasten'))")
    wait_for(made, lambda: on_disk(hat) == TEXT)
    made.keyboard.press("Control+Shift+Z")
    wait_for(made, lambda: "Fasten off." in on_disk(hat))


def test_an_older_text_is_compared_taken_and_taken_back(hat: Served, page: Open) -> None:
    made = page(hat, f"/write/{HAT}")
    made.wait_for_selector(".sheet[data-linked=true]")
    made.locator(".cm-line", has_text="Rnd 1: Ch 1, hdc").click()
    made.keyboard.press("End")
    made.keyboard.type(" Fasten off.")
    wait_for(made, lambda: "Fasten off." in on_disk(hat))
    until(made, "document.querySelector('.state').innerText.includes('Saved')")
    made.keyboard.press("Escape")
    until(made, "document.activeElement.classList.contains('sheet')")
    made.keyboard.press("v")
    made.locator(".older li button").first.click()
    assert "Fasten off." in made.locator(".compared ins").inner_text()
    assert "Fasten off." not in made.locator(".compared del").inner_text()
    made.locator(".older .act.main").click()
    wait_for(made, lambda: on_disk(hat) == TEXT)
    made.keyboard.press("z")
    wait_for(made, lambda: "Fasten off." in on_disk(hat))


def test_older_texts_are_reached_by_a_button_on_a_phone(hat: Served, page: Open) -> None:
    place = hat.folder / ".loopwright" / "history" / HAT
    place.mkdir(parents=True)
    (place / "000001 2026-11-28T10-00-00Z work.txt").write_text(TEXT.replace("Teal", "Reed"), encoding="utf-8")
    made = page(hat, f"/write/{HAT}", width=360, height=780, has_touch=True)
    made.wait_for_selector(".sheet[data-linked=true]")
    made.get_by_role("button", name="The chart").tap()
    made.get_by_role("button", name="Older texts").tap()
    made.locator(".older li button").first.tap()
    assert made.locator(".compared del").inner_text() == "Reed Hat"
    made.locator(".older .act.main").tap()
    wait_for(made, lambda: on_disk(hat).startswith("Reed Hat"))
    until(made, "document.querySelector('h1').innerText === 'Reed Hat' && !document.querySelector('.older')")
    assert made.evaluate("document.documentElement.scrollWidth") == 360


def test_a_text_changed_elsewhere_is_compared_in_any_place_and_taking_it_can_be_taken_back(hat: Served, page: Open) -> None:
    made = page(hat, f"/sizes/{HAT}")
    made.locator(".sz-cell .fig").first.wait_for()
    theirs = TEXT.replace("Teal Hat", "Reed Hat")
    (hat.folder / HAT).write_text(theirs, encoding="utf-8")
    made.get_by_role("button", name="Compare them").click()
    assert made.locator(".compared ins").inner_text() == "Teal Hat"
    assert made.locator(".compared del").inner_text() == "Reed Hat"
    made.get_by_role("button", name="Take what is on disk").click()
    until(made, "document.querySelector('h1').innerText === 'Reed Hat'")
    made.keyboard.press("Control+z")
    wait_for(made, lambda: on_disk(hat) == TEXT)


@pytest.mark.parametrize(("width", "height", "dark"), [(1440, 900, False), (820, 1180, True), (390, 844, False), (320, 640, True)])
def test_axe_finds_nothing_in_what_lies_over_the_sheet_and_in_the_views(
    hat: Served, page: Open, axe: Callable[[Page], list[str]], width: int, height: int, dark: bool,
) -> None:
    made = page(hat, f"/write/{HAT}", width=width, height=height, dark=dark)
    made.wait_for_selector(".sheet[data-linked=true]")
    (hat.folder / HAT).write_text(TEXT.replace("Teal", "Reed"), encoding="utf-8")
    made.get_by_role("button", name="Compare them").click()
    made.wait_for_selector(".compared ins")
    assert axe(made) == []
    assert made.evaluate("document.documentElement.scrollWidth") <= width
    made.get_by_role("button", name="Keep mine").click()
    made.wait_for_selector(".twotexts", state="detached")
    made.locator(".cm-content").press("Escape")
    made.keyboard.press("v")
    made.locator(".older li button").first.click()
    made.wait_for_selector(".compared")
    assert axe(made) == []
    assert made.evaluate("document.documentElement.scrollWidth") <= width
    made.locator(".older").get_by_role("button", name="Back").click()
    if width <= 600:
        made.get_by_role("button", name="The chart").click()
    for view in ("Shape", "Words"):
        made.get_by_role("button", name=view, exact=True).click()
        made.locator(".choices select").first.wait_for()
        made.wait_for_timeout(400)
        assert axe(made) == []
        assert made.evaluate("document.documentElement.scrollWidth") <= width


def test_a_name_is_another_everywhere_also_in_the_plural_and_at_the_beginning(empty_studio: Served, page: Open) -> None:
    (empty_studio.folder / HAT).write_text(
        "Teal Hat\nSpecial stitches: bean st = (sc, ch 1, sc) in same st\n\nBody\nCh 9.\n"
        "Row 1: Bean st in next st, bean st in each of next 2 sts; 3 bean sts are made.\n", encoding="utf-8",
    )
    made = page(empty_studio, f"/write/{HAT}")
    made.wait_for_selector(".sheet .cm-line")
    made.locator(".cm-line", has_text="Special stitches").click()
    made.keyboard.press("F2")
    made.wait_for_selector(".over input:focus")
    assert "4 places" in made.locator(".over").inner_text()
    made.keyboard.type("pea st")
    made.keyboard.press("Enter")
    wait_for(made, lambda: "Pea st in next st, pea st in each of next 2 sts; 3 pea sts are made." in on_disk(empty_studio))
    assert "bean" not in on_disk(empty_studio)


def test_a_studio_only_for_reading_says_so_and_not_that_another_window_writes(hat: Served, page: Open) -> None:
    reading = start(hat.folder, "--read-only")
    try:
        made = page(reading, f"/write/{HAT}")
        made.wait_for_selector(".sheet[data-linked=true]")
        assert made.locator(".state").inner_text().strip().endswith("Only to read")
        assert made.get_by_role("button", name="Write here instead").count() == 0
    finally:
        reading.end()
