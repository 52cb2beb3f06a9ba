"""Editing: the proof with its notes, mends in one step and back, what is left with its reason, the folder, the printed report."""

from __future__ import annotations

from collections.abc import Callable
from typing import TYPE_CHECKING

import pytest
from served import Served

if TYPE_CHECKING:
    from playwright.sync_api import Page

Open = Callable[..., "Page"]
VIEWS = [(1440, 900, False), (1440, 900, True), (820, 1180, False), (390, 844, True), (320, 640, False)]
COWL = (
    "Sedge Cowl\nTerms: US\nYarn: DK, wool\nHook: 4 mm\nGauge: 16 sc and 18 rows = 10 cm\nFinished size: 20 cm deep\n"
    "Abbreviations: ch = chain, st(s) = stitch(es), dtr = double treble crochet, rep = repeat\n\nCowl\nCh 13.\n"
    "Row 1: Sc in 2nd ch from hook and in each ch across, turn. (12 sc)\nRow 2: Ch 1, *sc in next st; rep from * across. (13 sc)\n"
)


@pytest.fixture
def cowl(empty_studio: Served) -> Served:
    (empty_studio.folder / "sedge-cowl.txt").write_text(COWL, encoding="utf-8")
    return empty_studio


def proof(made: Page) -> Page:
    made.wait_for_selector(".noted .margin-note")
    return made


def saved(made: Page, of: Served) -> str:
    made.wait_for_timeout(800)
    return str((of.folder / "sedge-cowl.txt").read_text(encoding="utf-8"))


def test_notes_stand_beside_their_rows_and_count_in_the_corner(cowl: Served, page: Open) -> None:
    made = proof(page(cowl, "/editing/sedge-cowl.txt"))
    notes = made.locator(".margin-note").count()
    assert made.locator(".corner .fig").inner_text() == str(notes)
    assert made.locator(".notes-arm .station").count() == notes
    row = made.locator(".line", has_text="Row 2:").first
    assert "said 13" in row.locator(".count").inner_text()
    assert row.locator(".pu.look").inner_text() == "13 sc"


def test_all_safe_ones_are_mended_in_one_step_and_taken_back_in_one(cowl: Served, page: Open) -> None:
    made = proof(page(cowl, "/editing/sedge-cowl.txt"))
    made.get_by_role("button", name="Mend the").click()
    made.wait_for_selector("button:has-text('Take back')")
    after = saved(made, cowl)
    assert "sc = single crochet" in after
    assert "dtr" not in after
    assert "(13 sc)" in after
    made.get_by_role("button", name="Take back").click()
    assert saved(made, cowl) == COWL


def test_one_mend_states_its_edit_and_writes_it(cowl: Served, page: Open) -> None:
    made = proof(page(cowl, "/editing/sedge-cowl.txt"))
    made.get_by_role("button", name="Write (12)").click()
    assert "(12 sc)\nRow 2: Ch 1, *sc in next st; rep from * across. (12 sc)" in saved(made, cowl)


def test_a_finding_is_left_with_a_reason_that_stands_in_the_design(cowl: Served, page: Open) -> None:
    made = proof(page(cowl, "/editing/sedge-cowl.txt"))
    note = made.locator(".margin-note", has_text="makes 12")
    note.get_by_role("button", name="Leave it, because").click()
    made.keyboard.type("the thirteenth is the join")
    made.keyboard.press("Enter")
    made.wait_for_function("() => ![...document.querySelectorAll('.margin-note')].some((n) => n.textContent.includes('makes 12'))")
    assert "Left as it is: W001 in Row 2, because the thirteenth is the join" in saved(made, cowl)
    made.select_option("select[aria-label='what is shown']", "left")
    made.wait_for_selector(".because")
    assert made.locator(".because").inner_text() == "Left, because the thirteenth is the join."
    made.select_option("select[aria-label='what is shown']", "all")
    made.keyboard.press("z")


def test_kinds_can_be_shown_alone(cowl: Served, page: Open) -> None:
    made = proof(page(cowl, "/editing/sedge-cowl.txt"))
    made.select_option("select[aria-label='what is shown']", "kind count-disagrees")
    made.wait_for_function("() => document.querySelectorAll('.margin-note').length === 1")
    assert made.locator(".corner .fig").inner_text() == "1"


def test_what_was_found_right_is_said_once(studio: Served, page: Open) -> None:
    made = page(studio, "/editing/samphire-beanie.txt")
    made.wait_for_selector(".found p")
    said = made.locator(".found p").inner_text()
    assert "things checked and found right" in said
    assert "stitches worked in 10 sizes" in said


def test_the_folder_lists_every_design_and_mends_the_others(cowl: Served, page: Open) -> None:
    (cowl.folder / "reed-cowl.txt").write_text(COWL.replace("Sedge", "Reed"), encoding="utf-8")
    made = proof(page(cowl, "/editing/sedge-cowl.txt"))
    made.select_option("select[aria-label=where]", "folder")
    made.wait_for_selector(".pen-top")
    assert [t for t in made.locator(".sect h2").all_inner_texts() if t] == ["Reed Cowl", "Sedge Cowl"]
    made.get_by_role("button", name="safe ones of 1 design").click()
    made.wait_for_selector("button:has-text('Take back what was mended')")
    assert "sc = single crochet" in (cowl.folder / "reed-cowl.txt").read_text(encoding="utf-8")
    assert (cowl.folder / "sedge-cowl.txt").read_text(encoding="utf-8") == COWL
    made.get_by_role("button", name="Take back what was mended").click()
    made.wait_for_selector("button:has-text('Take back what was mended')", state="detached")
    assert (cowl.folder / "reed-cowl.txt").read_text(encoding="utf-8") == COWL.replace("Sedge", "Reed")


def test_notes_are_walked_and_mended_with_plain_keys(cowl: Served, page: Open) -> None:
    made = proof(page(cowl, "/editing/sedge-cowl.txt"))
    places = made.locator(".notes-arm .station b").all_inner_texts()
    made.keyboard.press("n")
    made.wait_for_function("(at) => document.querySelector('.notes-arm [aria-current] b')?.textContent === at", arg=places[1 % len(places)])
    while "makes 12" not in made.locator(".line.here").inner_text():
        before = made.locator(".line.here").inner_text()
        made.keyboard.press("n")
        made.wait_for_function("(was) => document.querySelector('.line.here')?.innerText !== was", arg=before)
    made.keyboard.press("m")
    assert "across. (12 sc)" in saved(made, cowl)
    made.keyboard.press("z")
    assert saved(made, cowl) == COWL


def test_printed_the_notes_stand_and_the_tools_do_not(cowl: Served, page: Open) -> None:
    made = proof(page(cowl, "/editing/sedge-cowl.txt"))
    made.emulate_media(media="print")
    assert not made.locator(".hem").is_visible()
    assert not made.locator(".margin-note .act").first.is_visible()
    assert made.locator(".margin-note .say").first.is_visible()
    assert made.evaluate("document.querySelector('.proof').scrollHeight <= document.querySelector('.proof').clientHeight")


@pytest.mark.parametrize(("width", "height", "dark"), VIEWS)
def test_axe_finds_nothing_and_nothing_goes_off_the_page(cowl: Served, page: Open, axe: Callable[[Page], list[str]], width: int, height: int, dark: bool) -> None:
    made = proof(page(cowl, "/editing/sedge-cowl.txt", width=width, height=height, dark=dark, bypass_csp=True))
    made.locator(".leave").first.click()
    assert axe(made) == []
    assert made.evaluate("document.documentElement.scrollWidth") == width
    made.select_option("select[aria-label=where]", "folder")
    made.wait_for_selector(".pen-top")
    assert axe(made) == []
