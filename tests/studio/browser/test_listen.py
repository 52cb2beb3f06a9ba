"""Captions dropped, chosen or pasted: the draft beside the words, each points at the other, doubts at their second, a design out of it."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path
from typing import TYPE_CHECKING

import pytest

if TYPE_CHECKING:
    from playwright.sync_api import Locator, Page
    from served import Served

Open = Callable[..., "Page"]
LESSONS = Path(__file__).parents[2] / "outside" / "lessons"
HAT = LESSONS / "bulrush_hat.vtt"
VIEWS = [(1440, 900, False), (1440, 900, True), (820, 1180, False), (390, 844, True), (320, 640, False), (320, 256, True)]
COOKING = "WEBVTT\n\n00:01.000 --> 00:04.000\nfold the flour into the egg whites\n\n00:04.000 --> 00:08.000\nstir it round three times and bake it\n"
DROP = """([name, text]) => {
  const carried = new DataTransfer();
  carried.items.add(new File([text], name, {type: "text/vtt"}));
  const at = document.querySelector("main") ?? document.body;
  for (const kind of ["dragover", "drop"]) at.dispatchEvent(new DragEvent(kind, {dataTransfer: carried, bubbles: true, cancelable: true}));
}"""


def choose_file(at: Locator, name: str, data: bytes) -> None:
    at.set_input_files({"name": name, "mimeType": "text/plain", "buffer": data})


def drop(made: Page, name: str, text: str) -> None:
    made.evaluate(DROP, [name, text])


def drafted(made: Page) -> Page:
    made.wait_for_selector(".draft .rowline")
    return made


def taken_down(made: Page, file: Path = HAT) -> Page:
    made.wait_for_selector(".captions-in")
    made.locator(".captions-in input[type=file]").set_input_files(str(file))
    return drafted(made)


@pytest.mark.parametrize("place", ["/", "/write/samphire-beanie.txt", "/sizes/samphire-beanie.txt", "/swatches", "/camera/samphire-beanie.txt"])
def test_captions_dropped_on_any_window_open_a_draft(studio: Served, page: Open, place: str) -> None:
    made = page(studio, place)
    made.wait_for_selector("main")
    was = (studio.folder / "samphire-beanie.txt").read_text()
    drop(made, "lesson.vtt", HAT.read_text())
    drafted(made)
    assert made.url.endswith("/listen")
    assert made.locator(".listen h1").inner_text() == "Bulrush Hat"
    assert (studio.folder / "samphire-beanie.txt").read_text() == was
    made.go_back()
    made.wait_for_function("place => location.pathname === place", arg=place)


def test_another_file_that_is_dropped_does_not_take_the_place_of_the_studio(studio: Served, page: Open) -> None:
    made = page(studio)
    made.wait_for_selector(".stand")
    drop(made, "picture.png", "x")
    made.wait_for_timeout(200)
    assert made.locator(".stand").count() == 1


def test_a_row_shows_its_words_and_words_show_their_row(studio: Served, page: Open) -> None:
    made = taken_down(page(studio, "/listen"))
    row = made.locator(".rowline", has_text="Rnd 4:")
    row.click()
    assert row.get_attribute("aria-pressed") == "true"
    words = " ".join(made.locator(".said-words .mk").all_inner_texts())
    assert "four" in words.lower()
    assert row.inner_text().startswith("6:05")
    assert made.locator(".cue.at").bounding_box() is not None
    assert "heard at 6:05" in made.locator(".sr[aria-live]").inner_text()
    made.locator(".cue", has_text="Round eight, chain one").locator("[data-line]").last.click()
    assert made.locator(".rowline[aria-pressed=true]").inner_text().split("\n")[-1].startswith("Rnd 8:")


def test_words_are_walked_by_keys(studio: Served, page: Open) -> None:
    made = taken_down(page(studio, "/listen"))
    made.locator(".cue[tabindex='0']").focus()
    for _ in range(3):
        made.keyboard.press("PageDown")
    made.keyboard.press("ArrowDown")
    assert made.evaluate("[...document.querySelectorAll('.cue')].indexOf(document.activeElement)") == 31
    assert made.locator(".rowline[aria-pressed=true]").count() == 1
    assert made.locator(".cue[tabindex='0']").count() == 1


def test_doubts_stand_at_their_row_with_their_second_and_what_was_assumed(studio: Served, page: Open) -> None:
    made = taken_down(page(studio, "/listen"))
    doubt = made.locator(".draft .note", has_text="until your hat measures sixteen")
    assert "Assumed." in doubt.inner_text()
    doubt.locator(".second").click()
    made.locator(".cue.at", has_text="sixteen").wait_for()  # words out of sight are not rendered: they come in sight in the next frame
    made.wait_for_function("() => { const r = document.querySelector('.cue.at').getBoundingClientRect(); return r.top >= 0 && r.bottom <= innerHeight; }")


def test_the_draft_becomes_a_design_and_its_times_a_log(empty_studio: Served, page: Open) -> None:
    (empty_studio.folder / "Bulrush Hat.txt").write_text("mine\n")
    made = taken_down(page(empty_studio, "/listen"))
    made.get_by_role("button", name="Make it a design").click()
    made.wait_for_selector(".cm-content")
    assert made.url.endswith("/write/Bulrush%20Hat%202.txt")
    assert (empty_studio.folder / "Bulrush Hat.txt").read_text() == "mine\n"
    assert (empty_studio.folder / "Bulrush Hat 2.txt").read_text().startswith("Bulrush Hat\n")
    made.get_by_role("link", name="Film").click()
    made.wait_for_selector(".shot")
    made.get_by_role("button", name="From the log").click()
    made.wait_for_selector(".chapters li")
    assert "Band" in made.locator(".chapters").inner_text()
    made.go_back()
    made.go_back()
    drafted(made)


def test_cooking_gets_a_word_and_no_rows(studio: Served, page: Open) -> None:
    made = page(studio, "/listen")
    made.wait_for_selector(".captions-in")
    made.get_by_label("Captions", exact=True).fill(COOKING)
    made.get_by_role("button", name="Take them down").click()
    made.wait_for_selector("[role=alert]")
    assert "No row was heard" in made.locator("[role=alert]").inner_text()
    assert made.locator(".rowline").count() == 0
    assert made.get_by_role("button", name="Make it a design").count() == 0


def test_a_file_that_is_too_long_or_no_text_is_told(studio: Served, page: Open) -> None:
    made = page(studio, "/listen")
    made.wait_for_selector(".captions-in")
    files = made.locator(".captions-in input[type=file]")
    choose_file(files, "long.srt", b"x" * 2_000_001)
    made.wait_for_selector("[role=alert]:has-text('2,000,000 bytes')")
    choose_file(files, "odd.srt", b"\xff\xfe1\x00")
    made.wait_for_selector("[role=alert]:has-text('no text in UTF-8')")


def test_script_in_captions_stays_words(studio: Served, page: Open) -> None:
    made = page(studio, "/listen")
    made.wait_for_selector(".captions-in")
    bad = "0:01 crochet <img src=x onerror=alert(1)> round one six single crochet in a magic ring\n0:09 &lt;script&gt;alert(2)&lt;/script&gt; round two two single crochet in each stitch around twelve\n"
    made.get_by_label("Captions", exact=True).fill(bad)
    made.get_by_role("button", name="Take them down").click()
    drafted(made)
    assert made.locator(".said-words img, .said-words script, .draft img, .draft script").count() == 0
    assert "<script>" in made.locator(".said-words").inner_text()


def test_a_lesson_is_there_again_after_a_reload(studio: Served, page: Open) -> None:
    made = taken_down(page(studio, "/listen"))
    made.reload()
    drafted(made)
    made.get_by_role("button", name="Put them away").click()
    made.wait_for_selector(".captions-in")
    made.reload()
    made.wait_for_selector(".captions-in")
    assert made.locator(".rowline").count() == 0


@pytest.mark.parametrize(("width", "height", "dark"), VIEWS)
def test_axe_finds_nothing_and_nothing_goes_off_the_page(studio: Served, page: Open, axe: Callable[[Page], list[str]], width: int, height: int, dark: bool) -> None:
    made = page(studio, "/listen", width=width, height=height, dark=dark, bypass_csp=True)
    made.wait_for_selector(".captions-in")
    found = axe(made)
    taken_down(made)
    made.locator(".rowline").nth(8).click()
    found += axe(made)
    assert found == []
    assert made.evaluate("document.documentElement.scrollWidth") == width
