"""Whole journeys as a designer goes them, once by mouse and once with nothing but keys; nothing is looked up behind her back."""

from __future__ import annotations

from collections.abc import Callable
from functools import partial
from typing import TYPE_CHECKING

import pytest
from pasting import paste
from served import Served
from waiting import saved_with, until

if TYPE_CHECKING:
    from playwright.sync_api import Page

Open = Callable[..., "Page"]
LONG_MS = 90_000

DESIGN = """Teal Hat
Sizes: child, teen, adult
Worked in: child
Version: 1
Gauge: 17 hdc and 13 rnds = 10 cm, 4 mm hook
Yarn: worsted, wool, 100 g = 200 m
Hook: 4 mm

Fit
{body sts}: sts to go around head circumference less 3 cm, multiple of 4
{body rounds}: rnds until hat measures hat height less 4 cm

Crown
Rnd 1: Ch 1, 8 hdc in magic ring; join. (8 hdc)
Rnd 2: Ch 1, 2 hdc in each st around; join. (17 hdc)

Body
Ch {body sts}; join with sl st to form a ring.
Rnd 1: Ch 1, hdc in each ch around; join. ({body sts} hdc)
Work even for {body rounds} rnds.
"""
PLAIN = """Teal Hat
Gauge: 17 hdc and 13 rnds = 10 cm, 4 mm hook
Size: child

Body
Ch 84; join with sl st to form a ring.
Rnd 1: Ch 1, hdc in each ch around; join. (84 hdc)
Rnds 2-20: Ch 1, hdc in each st around; join. (84 hdc)
"""


def focused(made: Page) -> str:
    return str(made.evaluate("(document.activeElement.getAttribute('aria-label') || document.activeElement.innerText || '').trim()"))


def tab_to(made: Page, name: str, *, most: int = 120, key: str = "Tab") -> None:
    """Goes from place to place with one key until the one with this name has the focus."""
    for _ in range(most):
        if focused(made).startswith(name):
            return
        made.keyboard.press(key)
    raise AssertionError(f"{name} was not reached; at {focused(made)}")


def test_paste_mend_grade_publish_by_mouse(empty_studio: Served, page: Open) -> None:
    made = page(empty_studio)
    made.wait_for_selector(".stand button")
    paste(made, DESIGN)
    made.locator(".note .act.main", has_text="Write (").first.click()
    until(made, "!document.querySelector('.claim')")
    made.get_by_role("link", name="Sizes").click()
    made.wait_for_selector(".sz-cell .fig")
    made.locator(".sz-row", has_text="around").locator(".sz-cell").nth(1).click()
    number = made.locator(".sz-near button:not([aria-pressed=true])").first
    number.click()
    until(made, "document.querySelector('.sz-cell .kept')")
    made.get_by_role("link", name="Publish").click()
    made.get_by_role("button", name="Write 3 files").wait_for(timeout=LONG_MS)
    made.get_by_role("button", name="Write 3 files").click()
    made.locator(".publish", has_text="Done: 3 files").wait_for(timeout=2 * LONG_MS)
    assert len(list(empty_studio.folder.glob("Teal Hat/*.pdf"))) == 1
    text = next(empty_studio.folder.glob("Teal Hat/*.txt")).read_text(encoding="utf-8")
    assert "(16 hdc)" in text


def test_paste_mend_grade_publish_with_keys(empty_studio: Served, page: Open) -> None:
    made = page(empty_studio)
    made.wait_for_selector(".stand button")
    paste(made, DESIGN)
    made.wait_for_selector(".note .act.main")
    for _ in range(20):
        if focused(made).startswith("Write ("):
            break
        made.keyboard.press("F8")
        made.wait_for_timeout(80)
    made.keyboard.press("Enter")
    until(made, "!document.querySelector('.claim')")
    made.keyboard.press("Escape")
    tab_to(made, "Sizes")
    made.keyboard.press("Enter")
    made.wait_for_selector(".sz-cell .fig")
    for _ in range(60):
        if made.evaluate("document.activeElement.matches('.sz-cell')"):
            break
        made.keyboard.press("Tab")
    made.keyboard.press("ArrowRight")
    until(made, "document.activeElement.matches('.sz-cell') && document.activeElement.innerText.startsWith('teen:')")
    made.keyboard.press("Enter")  # to the numbers that would do instead
    until(made, "document.activeElement.closest('.sz-near')")
    made.keyboard.press("Enter")
    until(made, "document.querySelector('.sz-cell .kept')")
    made.keyboard.press("Control+z")
    until(made, "!document.querySelector('.sz-cell .kept')")
    tab_to(made, "Publish")
    made.keyboard.press("Enter")
    made.get_by_role("button", name="Write 3 files").wait_for(timeout=LONG_MS)
    tab_to(made, "Write 3 files")
    made.keyboard.press("Enter")
    made.locator(".publish", has_text="Done: 3 files").wait_for(timeout=2 * LONG_MS)
    assert len(list(empty_studio.folder.glob("Teal Hat/*.pdf"))) == 1


def pressed(made: Page, name: str, *, keys: bool) -> None:
    """One of the things to press, by mouse or by key."""
    if keys:
        tab_to(made, name)
        made.keyboard.press("Enter")
    else:
        made.get_by_role("button", name=name).or_(made.get_by_role("link", name=name)).first.click()


def begun(made: Page, *, keys: bool) -> None:
    """The plain pattern is read, its reasons are taken as they are proposed, and it is opened as a sheet."""
    if keys:
        for _ in range(20):
            if made.evaluate("document.activeElement.id") == "bg-text":
                break
            made.keyboard.press("Tab")
        made.keyboard.insert_text(PLAIN)
    else:
        made.locator("#bg-text").fill(PLAIN)
    for name in ("Read it", "Look for the reasons", "Open it as a new sheet"):
        made.get_by_role("button", name=name).wait_for(timeout=LONG_MS)
        pressed(made, name, keys=keys)
    made.wait_for_selector(".tape .count")


@pytest.mark.parametrize("keys", [False, True])
def test_begin_swatch_sizes_pages(empty_studio: Served, page: Open, keys: bool) -> None:
    """From a pattern in one size, over a swatch and the table of sizes, to a PDF that is taken away."""
    made = page(empty_studio)
    press = partial(pressed, made, keys=keys)
    made.wait_for_selector(".stand button")
    press("Make a design out of a pattern in one size")
    made.wait_for_selector("#bg-text")
    begun(made, keys=keys)
    saved_with(made, empty_studio, "Fit")
    press("Swatches")
    made.wait_for_selector("h1:has-text('Swatches')")
    press("A new swatch")
    made.wait_for_selector(".sw-form")
    made.get_by_label("Stitches", exact=True).fill("16")
    made.get_by_label("Rows or rounds", exact=True).fill("12")
    press("Put it on the shelf")
    press("Use it for Teal Hat")
    saved_with(made, empty_studio, "Gauge: 16 ")
    press("Sizes")
    made.wait_for_selector(".sz-cell .fig")
    assert made.locator("[aria-label='Stitches to 10 cm']").input_value() == "16"
    press("Publish")
    made.get_by_role("button", name="Pack them to take away").wait_for(timeout=LONG_MS)
    press("Pack them to take away")
    made.get_by_role("link", name="Take 3 files away").wait_for(timeout=2 * LONG_MS)
    with made.expect_download() as took:
        press("Take 3 files away")
    assert took.value.suggested_filename.endswith(".zip")


def test_a_question_is_answered_copied_and_kept_by_mouse(empty_studio: Served, page: Open) -> None:
    (empty_studio.folder / "teal-hat.txt").write_text(PLAIN, encoding="utf-8")
    made = page(empty_studio)
    made.locator(".stand li a").click()
    made.wait_for_selector(".tape .count")
    made.get_by_role("link", name="Questions").click()
    made.wait_for_selector("select[aria-label=row] option", state="attached")
    made.locator("select[aria-label=row]").select_option(label="Rnd 3")
    made.locator("[aria-label='her count']").click()
    made.keyboard.type("85")
    made.locator(".cause h3").first.wait_for()
    assert "slip stitch of the join" in made.locator(".cause h3").first.inner_text()
    assert "Rnd 3 of size child makes 84 sts" in made.locator(".letter textarea").input_value()
    made.get_by_role("button", name="Keep with Rnd 3").click()
    made.locator(".line.kept", has_text="85, not 84").wait_for()
