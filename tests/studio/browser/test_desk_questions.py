"""Questions: a sentence with blanks, causes with their place drawn, the text to send, what is kept, a note in the pattern."""

from __future__ import annotations

from collections.abc import Callable
from typing import TYPE_CHECKING

import pytest
from served import Served

if TYPE_CHECKING:
    from playwright.sync_api import Page

Open = Callable[..., "Page"]
VIEWS = [(1440, 900, False), (1440, 900, True), (820, 1180, False), (390, 844, True), (320, 640, False)]
HAT = """Teal Hat
Sizes: small, medium
Worked in: medium
Gauge: 17 hdc and 13 rnds = 10 cm, 4 mm hook
Yarn: worsted, wool, 100 g = 200 m
Version: 3

Crown
Rnd 1: Ch 1, 8 hdc in magic ring; join with sl st to first hdc. (8 hdc)
Rnd 2: Ch 1, 2 hdc in each st around; join. (16 hdc)
Rnd 3: Ch 1, *hdc in next st, 2 hdc in next st; rep from * around; join. (24 hdc)
Rnd 4: Ch 1, *hdc in each of next 2 sts, 2 hdc in next st; rep from * around; join. (32 hdc)
"""


@pytest.fixture
def hat(empty_studio: Served) -> Served:
    (empty_studio.folder / "teal-hat.txt").write_text(HAT, encoding="utf-8")
    return empty_studio


def ask(made: Page, have: str, row: str = "Rnd 3") -> Page:
    made.wait_for_selector("select[aria-label=row] option", state="attached")
    made.select_option("select[aria-label=row]", label=row)
    made.fill("[aria-label='her count']", have)
    made.wait_for_selector(".cause, .letter")
    return made


def test_one_over_is_answered_with_its_place_drawn(hat: Served, page: Open) -> None:
    made = ask(page(hat, "/questions/teal-hat.txt"), "25")
    assert made.locator(".answer h2").first.inner_text() == "One over. Most likely:"
    assert "slip stitch of the join" in made.locator(".cause h3").first.inner_text()
    assert made.locator(".cause").first.locator("svg .wrong").count() == 1
    assert made.locator(".corner .fig").inner_text() == "24"
    assert made.locator(".line.here .claim").inner_text() == "25, hers"


def test_the_text_to_send_goes_into_uk_terms_and_back(hat: Served, page: Open) -> None:
    made = ask(page(hat, "/questions/teal-hat.txt"), "23")
    letter = made.locator(".letter textarea")
    assert " hdc" in letter.input_value()
    made.get_by_role("button", name="In UK terms").click()
    made.wait_for_function("() => document.querySelector('.letter textarea').value.includes(' htr')")
    assert " hdc" not in letter.input_value()
    made.get_by_role("button", name="In US terms").click()
    made.wait_for_function("() => document.querySelector('.letter textarea').value.includes(' hdc')")


def test_a_kept_question_stands_with_its_row_size_and_version_also_later(hat: Served, page: Open) -> None:
    made = ask(page(hat, "/questions/teal-hat.txt"), "25")
    made.get_by_role("button", name="Keep with Rnd 3").click()
    made.wait_for_selector(".line.kept")
    made.reload()
    assert "Rnd 3: 25, not 24. Asked once, medium, version 3." in made.locator(".line.kept").inner_text()
    made.locator(".line.kept summary").click()
    made.get_by_role("button", name="Let it go").click()
    made.wait_for_selector(".line.kept", state="detached")


def test_a_note_is_put_below_its_row_and_taken_back(hat: Served, page: Open) -> None:
    made = ask(page(hat, "/questions/teal-hat.txt"), "25")
    made.get_by_role("button", name="Add a note to Rnd 3").click()
    assert made.locator(".noting textarea").input_value() == "Join into the first st of the round, not into the slip stitch."
    made.get_by_role("button", name="Put it there").click()
    made.wait_for_selector("text=Take back")
    file = hat.folder / "teal-hat.txt"
    made.wait_for_function("() => !document.querySelector('.square').classList.contains('stale')")
    made.wait_for_timeout(600)
    assert "(24 hdc)\n(Note: Join into the first st of the round, not into the slip stitch.)\nRnd 4" in file.read_text(encoding="utf-8")
    made.get_by_role("button", name="Take back").click()
    made.wait_for_timeout(800)
    assert file.read_text(encoding="utf-8") == HAT


@pytest.mark.parametrize(("button", "blanks", "word"), [
    ("my gauge is …", {"stitches to 10 cm": "16", "rows to 10 cm": "12"}, "smaller hook"), ("I have … m of yarn", {"how much yarn": "600"}, "It will do"),
    ("I want it … around", {"the measure she wants": "30"}, "nearest"),
])
def test_the_other_questions_are_answered(hat: Served, page: Open, button: str, blanks: dict[str, str], word: str) -> None:
    made = page(hat, "/questions/teal-hat.txt")
    made.get_by_role("button", name=button).click()
    for name, value in blanks.items():
        made.get_by_label(name, exact=True).fill(value)
    made.wait_for_selector(".letter")
    assert word in made.locator(".answer").inner_text()


def test_what_is_no_number_waits_and_a_mistake_has_a_word(hat: Served, page: Open) -> None:
    made = page(hat, "/questions/teal-hat.txt")
    made.wait_for_selector("select[aria-label=row] option", state="attached")
    made.fill("[aria-label='her count']", "many")
    made.wait_for_timeout(500)
    assert made.locator(".cause").count() == 0
    assert "The answer appears with her count" in made.locator(".answer").inner_text()


def test_another_size_on_the_across_arm_asks_of_that_size(studio: Served, page: Open) -> None:
    made = ask(page(studio, "/questions/samphire-beanie.txt"), "57", "Rnd 7")
    made.get_by_role("radio", name="teen").click()
    made.wait_for_function("() => document.querySelector('.letter textarea')?.value.includes('size teen')")
    assert made.locator(".corner b").inner_text() == "Rnd 7, teen"


def test_the_question_is_asked_with_nothing_but_keys(hat: Served, page: Open) -> None:
    made = page(hat, "/questions/teal-hat.txt")
    made.wait_for_selector("select[aria-label=row] option", state="attached")
    for _ in range(30):
        made.keyboard.press("Tab")
        if made.evaluate("document.activeElement.getAttribute('aria-label')") == "her count":
            break
    made.keyboard.type("9")
    made.keyboard.press("Tab")
    made.keyboard.press("Home")
    made.wait_for_function("() => document.querySelector('.answer h2')?.textContent.startsWith('One over')")
    for _ in range(30):
        made.keyboard.press("Tab")
        if made.evaluate("document.activeElement.textContent") == "Keep with Rnd 1":
            break
    made.keyboard.press("Enter")
    made.wait_for_selector(".line.kept")


@pytest.mark.parametrize(("width", "height", "dark"), VIEWS)
def test_axe_finds_nothing_and_nothing_goes_off_the_page(studio: Served, page: Open, axe: Callable[[Page], list[str]], width: int, height: int, dark: bool) -> None:
    made = ask(page(studio, "/questions/samphire-beanie.txt", width=width, height=height, dark=dark, bypass_csp=True), "57", "Rnd 7")
    assert axe(made) == []
    assert made.evaluate("document.documentElement.scrollWidth") == width
