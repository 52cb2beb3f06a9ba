"""Write: the marker, the very row at hand, notes and mends, all sizes, finding rows, other names, lists of sizes."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path
from typing import TYPE_CHECKING

import pytest
from served import Served
from waiting import until

from loopwright.workshop.live import Live
from loopwright.workshop.views import stitches

if TYPE_CHECKING:
    from playwright.sync_api import Page

Open = Callable[..., "Page"]
ROOT = Path(__file__).parents[3]

TEAL = """Teal Hat
Sizes: small, medium, large
Worked in: medium
Gauge: 17 hdc and 13 rnds = 10 cm, 4 mm hook
Yarn: worsted, wool, 100 g = 200 m
Special stitches: bean st = (sc, ch 1, sc) in same st

Crown
Rnd 1: Ch 1, 8 hdc in magic ring; join with sl st to first hdc. (8 hdc)
Rnd 2: Ch 1, 2 hdc in each st around; join. (16 hdc)
Rnd 3: Ch 1, *hdc in next st, 2 hdc in next st; rep from * around; join. (25 hdc)
Rnd 4: Ch 1, *hdc in each of next 2 sts, 2 hdc in next st; rep from * around; join. (32 hdc)

Brim
Rnd 1: Ch 1, hdc in next 4 (8, 12) sts, sc in each st around; join. (32 sts)
"""


def sheet(made: Page) -> Page:
    """Waits until the sheet is read and its words are linked to their stitches."""
    made.wait_for_selector(".sheet[data-linked=true] .tape .count", state="attached")
    return made


def drawn(label: str, number: int) -> int:
    """The stitch of the beanie that is so-and-so many in its row, by its number in the order of making."""
    seen = Live("beanie").see((ROOT / "designs" / "samphire-beanie.txt").read_text(encoding="utf-8"))
    found = stitches(seen, seen.sample)
    row = next(r for r in found["rows"] if r["label"] == label)
    counted = [s for s in range(row["start"], row["end"]) if found["kinds"][found["kind"][s]]["key"] not in ("ch", "sl st")]
    return counted[number - 1]


def text(made: Page) -> str:
    return "\n".join(line.replace("\n", "") for line in made.locator(".cm-line").all_inner_texts())


@pytest.fixture
def teal(empty_studio: Served) -> Served:
    (empty_studio.folder / "teal-hat.txt").write_text(TEAL, encoding="utf-8")
    return empty_studio


def tape(made: Page) -> list[str]:
    return made.locator(".tape .fig").all_inner_texts()


def test_a_stitch_of_the_chart_is_marked_in_the_words_and_its_own_row_is_at_hand(studio: Served, page: Open) -> None:
    made = sheet(page(studio, "/write/samphire-beanie.txt"))
    made.keyboard.press("Escape")
    made.locator(f".drawing [data-stitch='{drawn('Rnd 5', 15)}']").first.click(force=True)
    made.wait_for_selector(".tag")
    made.wait_for_selector(".w-marker")
    assert made.locator(".corner b").inner_text() == "Rnd 5, child"
    assert made.locator(".corner .fig").inner_text() == "40"
    assert made.locator(".w-marker").first.inner_text().startswith("Rnds 4-")
    assert made.locator(".tag p").inner_text().startswith("Rnd 5, stitch 15 of 40. An hdc")
    assert made.locator(".station .fig").first.text_content() == "40"  # the smallest size ends with this very round
    assert made.locator(".drawing .lit").count() == 1
    assert made.evaluate("document.activeElement.className") == "drawing"


def test_walking_goes_down_into_what_a_stitch_was_worked_into(studio: Served, page: Open) -> None:
    made = sheet(page(studio, "/write/samphire-beanie.txt"))
    made.keyboard.press("Escape")
    made.locator(f".drawing [data-stitch='{drawn('Rnd 5', 15)}']").first.click(force=True)
    made.wait_for_selector(".tag")
    made.keyboard.press("ArrowDown")
    assert made.locator(".tag p b").inner_text().startswith("Rnd 4, stitch 12 of 32")
    made.keyboard.press("ArrowUp")
    assert made.locator(".tag p b").inner_text().startswith("Rnd 5, stitch 14 of 40")


def test_with_the_pen_up_a_click_on_words_marks_the_stitch_they_made(teal: Served, page: Open) -> None:
    made = sheet(page(teal, "/write/teal-hat.txt"))
    made.keyboard.press("Escape")
    made.locator(".w-stitch", has_text="2 hdc in next st").first.click()
    assert made.locator(".tag p b").inner_text() == "Rnd 3, stitch 2 of 24."
    assert made.evaluate("document.activeElement.className").split()[0] == "sheet"
    made.keyboard.press("Enter")
    assert "cm-content" in made.evaluate("document.activeElement.className")


def test_the_sheet_is_left_while_a_list_of_words_is_still_asked_for(teal: Served, page: Open) -> None:
    made = sheet(page(teal, "/write/teal-hat.txt"))
    made.evaluate("""() => { const send = WebSocket.prototype.send;
        WebSocket.prototype.send = function (m) { if (m.includes('"known"')) window.held = true; else send.call(this, m); }; }""")  # the list does not come
    made.locator(".cm-line").last.click()
    made.keyboard.type(" ho")
    until(made, "window.held")
    made.keyboard.press("Escape")
    until(made, "document.activeElement.classList.contains('sheet')")


def test_several_rows_are_called_as_the_chosen_size_has_them(studio: Served, page: Open) -> None:
    made = sheet(page(studio, "/write/samphire-beanie.txt"))
    made.locator(".cm-line", has_text="Continue as established").click()
    assert made.locator(".corner b").inner_text() == "Rnds 4-9"
    made.keyboard.press("Escape")
    made.keyboard.press(".")
    until(made, "document.querySelector('.corner b').innerText === 'Rnds 4-10'")


def test_a_mend_is_one_step_that_undo_takes_back(teal: Served, page: Open) -> None:
    made = sheet(page(teal, "/write/teal-hat.txt"))
    made.locator(".note .act.main", has_text="Write (24)").click()
    until(made, "!document.querySelector('.claim')")
    assert "around; join. (24 hdc)" in text(made)
    made.keyboard.press("Control+z")
    made.wait_for_selector(".claim")
    assert "(25 hdc)" in text(made)


def test_a_finding_is_left_with_a_reason_kept_in_the_heading(teal: Served, page: Open) -> None:
    made = sheet(page(teal, "/write/teal-hat.txt"))
    made.locator(".note", has_text="prints 25").locator(".act.leave").click()
    made.keyboard.type("the last stitch is decrease enough")
    made.keyboard.press("Enter")
    until(made, "![...document.querySelectorAll('.note')].some((n) => n.innerText.includes('prints 25'))")
    line = "Left as it is: W001 in Rnd 3, because the last stitch is decrease enough"
    assert line in text(made).split("\n")
    until(made, "document.querySelector('.state').innerText.includes('Saved')")
    _until_saved(made, teal.folder / "teal-hat.txt", line)


def _until_saved(made: Page, file: Path, line: str) -> None:
    for _ in range(50):
        if line in file.read_text(encoding="utf-8"):
            return
        made.wait_for_timeout(100)
    raise AssertionError(file.read_text(encoding="utf-8"))


def test_all_sizes_unroll_beside_the_rows_under_their_stations(studio: Served, page: Open) -> None:
    made = sheet(page(studio, "/write/samphire-beanie.txt"))
    made.locator(".cm-line", has_text="Continue as established").click()
    made.keyboard.press("Escape")
    made.keyboard.press("t")
    roll = made.locator(".sizes .cm-gutterElement.here .cell")
    assert [c.split("\n")[0] for c in roll.all_inner_texts()][:3] == ["40", "40", "48"]
    assert "to Rnd 5" in roll.first.inner_text()
    for i, station in enumerate(made.locator(".station").all()):
        above, below = station.bounding_box(), roll.nth(i).bounding_box()
        assert above is not None
        assert below is not None
        assert abs(above["x"] - below["x"]) < 3
    made.keyboard.press("t")
    assert made.locator(".sizes").count() == 0


def test_a_row_is_found_by_its_number(studio: Served, page: Open) -> None:
    made = sheet(page(studio, "/write/samphire-beanie.txt"))
    made.keyboard.press("Escape")
    made.keyboard.press("f")
    made.keyboard.type("7")
    made.keyboard.press("Enter")
    assert made.locator(".corner b").inner_text() == "Rnds 4-9"
    assert made.locator(".over").count() == 0


def test_a_section_gets_another_name_everywhere(teal: Served, page: Open) -> None:
    made = sheet(page(teal, "/write/teal-hat.txt"))
    made.locator(".cm-line.l-section", has_text="Brim").click()
    made.keyboard.press("F2")
    made.wait_for_selector(".over input:focus")
    made.keyboard.type("Edge")
    made.keyboard.press("Enter")
    made.wait_for_selector(".over", state="detached")
    assert "Edge" in text(made).split("\n")
    assert "Brim" not in text(made)


def test_the_number_of_the_chosen_size_is_marked_and_brackets_stay(teal: Served, page: Open) -> None:
    made = sheet(page(teal, "/write/teal-hat.txt"))
    made.locator(".cm-line", has_text="4 (8, 12)").click()
    made.keyboard.press("Home")
    for _ in range(len("Rnd 1: Ch 1, hdc in next 4 (")):
        made.keyboard.press("ArrowRight")
    assert made.locator(".w-chosen").inner_text() == "8"
    assert made.locator(".tip-size").inner_text() == "medium"
    made.keyboard.press("Backspace")
    assert "4 (8, 12)" in text(made)


def test_stitches_are_completed_in_her_terms_and_enter_stays_a_new_line(teal: Served, page: Open) -> None:
    made = sheet(page(teal, "/write/teal-hat.txt"))
    made.locator(".cm-line", has_text="32 sts").click()
    made.keyboard.press("End")
    made.keyboard.press("Enter")
    made.keyboard.type("Rnd 2: Ch 1, bea", delay=40)
    made.wait_for_selector(".cm-tooltip-autocomplete li")
    assert "bean st" in made.locator(".cm-tooltip-autocomplete li").first.inner_text()
    made.keyboard.press("Enter")
    assert any(line.endswith(" bea") for line in text(made).split("\n"))


def test_script_in_a_pattern_is_text(empty_studio: Served, page: Open) -> None:
    (empty_studio.folder / "odd.txt").write_text("<img src=x onerror=\"document.title='run'\">\nRnd 1: 6 sc in magic ring. (7 sc)\n", encoding="utf-8")
    made = sheet(page(empty_studio, "/write/odd.txt"))
    made.wait_for_selector(".note")
    assert made.locator(".cm-line img, .note img, .name img").count() == 0
    assert made.title() != "run"
